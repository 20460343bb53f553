// Keeps the chosen size: in the address ("?size=adult-m") and for the next visit. The style sheet alone does the showing.
"use strict";

(() => {
  const form = document.querySelector(".choose");
  if (!form) return;
  const sizes = [...form.elements.size];
  const kept = reader.kept(`size ${location.pathname}`);

  const asked = () => {
    const inHash = new URLSearchParams(location.hash.slice(1)).get("size");
    return inHash ?? new URLSearchParams(location.search).get("size");
  };
  const choose = (value) => {
    const found = sizes.find((size) => size.value === (value === "all" ? "" : value));
    if (found) found.checked = true;
    return Boolean(found);
  };
  const address = (value) => {
    const url = new URL(location.href);
    if (value) url.searchParams.set("size", value);
    else url.searchParams.delete("size");
    if (url.hash.startsWith("#size=")) url.hash = "";
    try {
      history.replaceState(history.state, "", url);
    } catch {
      location.hash = value ? `size=${value}` : "";
    }
  };

  const first = asked();
  if (first === null || !choose(first)) choose(kept.read() ?? "");
  form.addEventListener("change", (event) => {
    if (event.target.name !== "size") return;
    const chosen = reader.size();
    kept.write(chosen || null);
    address(chosen);
    reader.sized();
  });
  addEventListener("hashchange", () => {
    if (choose(asked())) reader.sized();
  });

  // There is room for the list of contents beside the text.
  if (matchMedia("(min-width: 64rem)").matches) document.querySelector(".contents details").open = true;
})();
