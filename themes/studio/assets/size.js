// Keeps the chosen sizes: in the address ("?size=adult-m&beside=adult-l"), which can be copied, and the own one for the next
// visit. The style sheet alone does the showing.
"use strict";

(() => {
  const form = document.querySelector(".choose");
  if (!form) return;
  const kept = reader.kept(`size ${reader.path}`);
  const own = [...form.elements.size];
  const beside = document.querySelector('[name="beside"]');
  const chosen = (name) => (name === "size" ? reader.size() : (beside?.value ?? ""));
  const NAMES = ["size", "beside"];

  const asked = (name) => {
    const inHash = new URLSearchParams(location.hash.slice(1)).get(name);
    return inHash ?? new URLSearchParams(location.search).get(name);
  };
  // A size that does not exist, as an address typed by hand may have it, leaves all of them shown.
  const choose = (name, value) => {
    const all = name === "size" ? own : [...(beside?.options ?? [])];
    const place = all.findIndex((one) => one.value === (value === "all" ? "" : value));
    if (name === "size") own[Math.max(place, 0)].checked = true;
    else if (beside) beside.selectedIndex = Math.max(place, 0);
    reader.chosen();
    return place >= 0;
  };
  const written = (url) => {
    for (const name of NAMES) url.searchParams.delete(name);
    for (const name of NAMES.filter(chosen)) url.searchParams.set(name, chosen(name));
    if (/^#(size|beside)=/.test(url.hash)) url.hash = "";
    return url;
  };
  const address = () => {
    try {
      history.replaceState(history.state, "", written(new URL(location.href)));
    } catch {
      location.hash = NAMES.filter(chosen).map((name) => `${name}=${chosen(name)}`).join("&");
    }
  };
  const tell = (name) => (name === "size" ? reader.sized() : document.dispatchEvent(new CustomEvent("reader:beside")));

  const share = form.querySelector(".share");
  const [said, byHand] = share.querySelectorAll("p:not(:first-child)");

  const NOT_FOUND = {
    size: (size) => tr("The address asks for the size “{size}”, which this pattern does not have. All sizes are shown.", { size }),
    beside: (size) => tr("The address asks to compare with the size “{size}”, which this pattern does not have.", { size }),
  };
  const short = (word) => (word.length > 40 ? `${word.slice(0, 40)}…` : word);
  const follow = (name) => {
    const word = asked(name);
    if (word === null || choose(name, word)) return word !== null;
    reader.say(NOT_FOUND[name](short(word)));
    return true;
  };

  const before = kept.read();
  if (!follow("size") && typeof before === "string" && !choose("size", before)) {
    const gone = { size: short(before) };
    reader.say(tr("The size kept for this pattern, “{size}”, is no longer in it. All sizes are shown.", gone));
  }
  follow("beside");
  document.addEventListener("change", ({ target }) => {
    if (!NAMES.includes(target.name)) return;
    if (target.name === "size") kept.write(chosen("size") || null);
    address();
    said.textContent = "";
    byHand.hidden = true;
    tell(target.name);
  });
  addEventListener("hashchange", () => {
    for (const name of NAMES.filter((one) => location.hash.includes(`${one}=`))) {
      follow(name);
      tell(name);
    }
  });

  // The address to give to others, without what only leads to a place of the page.
  const copy = async () => {
    const url = written(new URL(location.href));
    url.hash = "";
    const name = own.find(({ checked }) => checked).closest("label").textContent.trim();
    byHand.hidden = true;
    said.textContent = "";
    try {
      await navigator.clipboard.writeText(url.href);
      said.textContent = tr("The link is copied. It opens this page at: {size}.", { size: name });
    } catch {
      said.textContent = tr("This browser did not let the link be copied. Here it is, to be copied by hand.");
      const field = byHand.querySelector("input");
      field.value = url.href;
      byHand.hidden = false;
      field.select();
    }
  };
  share.querySelector("button").addEventListener("click", copy);
  share.hidden = false;

  // There is room for the list of contents beside the text.
  if (matchMedia("(min-width: 64rem)").matches) document.querySelector(".contents details").open = true;
})();
