// Lays out what pattern.css leaves out of the first layout because it is far from view: a little at a time, so that nothing
// the reader does has to wait, and soon, so that it is there for a screen reader's list of headings or a search in the page.
"use strict";

(() => {
  const AT_ONCE = 60; // elements, which a slow phone lays out within the twentieth of a second that nobody notices
  const waiting = [...document.querySelectorAll(".content > section, .instructions > *")];
  const idle = globalThis.requestIdleCallback ?? ((then) => setTimeout(then, 30));

  const some = () => {
    for (let left = AT_ONCE; waiting.length && left > 0;) {
      const part = waiting.shift();
      part.classList.add("unfolded");
      // The instructions are as many parts, each waiting its turn.
      if (!part.matches("section.instructions")) left -= part.getElementsByTagName("*").length;
    }
    if (waiting.length) requestAnimationFrame(() => idle(some));
  };
  // Whoever goes to a place on the page comes there at once, so it lies where it will lie.
  const all = () => {
    for (const part of waiting.splice(0)) part.classList.add("unfolded");
  };
  if (location.hash) all();
  addEventListener("hashchange", all);
  document.addEventListener("click", ({ target }) => target.closest('a[href^="#"]') && all(), { capture: true });
  addEventListener("load", () => idle(some));
})();
