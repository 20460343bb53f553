// What the scripts of a page share: what is kept on this device, what is said to the reader, and the chosen size.
"use strict";

globalThis.reader = (() => {
  const said = document.getElementById("reader-says");
  let refused = false;

  // Read aloud as well as shown; the same words said again are heard again.
  const say = (words) => {
    if (!said) return;
    said.textContent = "";
    requestAnimationFrame(() => {
      said.textContent = words;
    });
  };

  // Storage may be full or refused (private windows, pages opened from disk): what is chosen lasts as long as the page.
  const cannotKeep = () => {
    if (refused) return;
    refused = true;
    say("This browser keeps nothing for this page: what you choose or tick off is lost when you close it.");
  };

  // A value of JSON kept under a name. One that cannot be read is put aside under another name, never thrown away.
  const kept = (name) => {
    const place = `sizewright ${name}`;
    const read = () => {
      let text = null;
      try {
        text = localStorage.getItem(place);
        return text === null ? null : JSON.parse(text);
      } catch (error) {
        if (error instanceof SyntaxError) {
          write(text, `${place}, not readable`);
          say("What was kept on this device for this page could not be read. It was put aside, and you begin anew.");
        }
        return null;
      }
    };
    const write = (value, where = place) => {
      try {
        if (value === null) localStorage.removeItem(where);
        else localStorage.setItem(where, JSON.stringify(value));
        return true;
      } catch {
        if (value !== null) cannotKeep();
        return false;
      }
    };
    return { read, write: (value) => write(value) };
  };

  // The word of the chosen size in an address ("adult-m"), "" for all sizes; "reader:size" is heard when it changes.
  const size = () => document.querySelector('.choose [name="size"]:checked')?.value ?? "";
  const sized = () => document.dispatchEvent(new CustomEvent("reader:size", { detail: size() }));

  return { kept, say, size, sized };
})();
