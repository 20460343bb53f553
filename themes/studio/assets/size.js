// Keeps the chosen size: in the address ("?size=adult-m") and for the next visit. The style sheet alone does the showing.
"use strict";

(() => {
  const form = document.querySelector(".choose");
  if (!form) return;
  const sizes = [...form.elements.size];
  const place = `sizewright size ${location.pathname}`;

  // Storage may be refused (private windows, pages opened from disk): the choice then lasts as long as the page.
  const stored = () => {
    try {
      return localStorage.getItem(place);
    } catch {
      return null;
    }
  };
  const store = (value) => {
    try {
      if (value) localStorage.setItem(place, value);
      else localStorage.removeItem(place);
    } catch {
      // Nothing to do.
    }
  };

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
  if (first === null || !choose(first)) choose(stored() ?? "");
  form.addEventListener("change", () => {
    const chosen = form.elements.size.value;
    store(chosen);
    address(chosen);
  });
  addEventListener("hashchange", () => choose(asked()));

  // There is room for the list of contents beside the text.
  if (matchMedia("(min-width: 64rem)").matches) document.querySelector(".contents details").open = true;
})();
