// Keeps the collection's choices in the address and says how many patterns fit. The style sheet alone does the hiding.
"use strict";

(() => {
  const form = document.getElementById("filters");
  const count = document.querySelector("[data-count]");
  if (!form || !count) return;
  const questions = [...form.querySelectorAll("select")];
  const cards = [...document.querySelectorAll(".card")];

  const tell = () => {
    const shown = cards.filter((card) => card.checkVisibility()).length;
    count.textContent = shown === cards.length ? `All ${shown} patterns` : `${shown} of ${cards.length} patterns fit`;
  };
  const address = () => {
    const url = new URL(location.href);
    for (const { name, value } of questions) {
      if (value) url.searchParams.set(name, value);
      else url.searchParams.delete(name);
    }
    try {
      history.replaceState(history.state, "", url);
    } catch {
      // Some browsers keep the address of a page opened from disk as it is.
    }
  };
  const changed = () => {
    tell();
    address();
  };

  const asked = new URLSearchParams(location.search);
  for (const question of questions) {
    const value = asked.get(question.name);
    if ([...question.options].some((option) => option.value === value)) question.value = value;
  }
  tell();
  form.addEventListener("change", changed);
  form.addEventListener("reset", () => setTimeout(changed));
})();
