// Folds or unfolds all notes for learners, as the reader had them last; what is unfolded is also printed.
"use strict";

(() => {
  const place = document.querySelector(".notes-switch");
  if (!place) return;
  const button = place.querySelector("button");
  const notes = [...document.querySelectorAll("details.learners")];
  const kept = reader.kept("notes");

  const told = () => button.setAttribute("aria-pressed", String(notes.every((note) => note.open)));
  const all = (open) => {
    for (const note of notes) note.open = open;
    told();
  };

  button.addEventListener("click", () => {
    const open = button.getAttribute("aria-pressed") !== "true";
    all(open);
    kept.write(open || null);
  });
  for (const note of notes) note.addEventListener("toggle", told);
  if (kept.read() === true) all(true);
  place.hidden = false;
})();
