// Keeps how pages are shown, for every pattern on this device. The style sheet alone does the showing.
"use strict";

(() => {
  const form = document.querySelector(".display");
  if (!form) return;
  const kept = reader.kept("display");
  const questions = [...new Set([...form.elements].filter(({ type }) => type === "radio").map(({ name }) => name))];

  // What is kept may be of another version, or anything: only an answer that is offered here counts.
  const found = kept.read();
  const before = found !== null && typeof found === "object" && !Array.isArray(found) ? found : {};
  for (const name of questions) {
    const answer = [...form.elements[name]].find(({ value }) => value === before[name]);
    if (answer) answer.checked = true;
  }
  reader.chosen();
  form.addEventListener("change", () => {
    const chosen = questions.map((name) => [name, form.elements[name].value]);
    kept.write({ ...before, ...Object.fromEntries(chosen) });
  });
  form.querySelector("[data-kept]").hidden = false;
})();
