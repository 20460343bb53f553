// What scripts show and say is a message: English, and its own key. On a page in another language publishing tells before
// a script what its messages are there: globalThis.translated, with the rule of plurals under "".
"use strict";

(() => {
  const known = () => globalThis.translated ?? {};
  const PART = /\{(\w+)\}/;
  const filled = (words, parts) => words.split(PART).map((one, at) => (at % 2 ? parts[one] : one));
  const forms = (one, many) => known()[one] ?? [one, many];
  const plural = (n) => (known()[""] ?? ((m) => Number(m !== 1)))(n);

  // A message with its `{name}` filled in; a message for a number, which fills in `{n}`.
  globalThis.tr = (message, parts = {}) => filled(known()[message] ?? message, parts).join("");
  globalThis.trMany = (one, many, n, parts = {}) => {
    const all = forms(one, many);
    return filled(all[plural(n)] ?? all.at(-1), { n, ...parts }).join("");
  };
  // A message whose parts may be elements: what it is made of, in the order of the language.
  globalThis.trNodes = (message, parts) => filled(known()[message] ?? message, parts);
  // "S, M and L"
  globalThis.trList = (words) => {
    const last = words.at(-1) ?? "";
    return words.length > 1 ? tr("{some} and {last}", { some: words.slice(0, -1).join(", "), last }) : last;
  };
  // A label within a sentence, where English writes no capital.
  globalThis.language = globalThis.document?.documentElement.lang || "en";
  globalThis.trWithin = (label) => (/^en\b/.test(language) ? label.toLowerCase() : label);
})();
