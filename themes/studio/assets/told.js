// Remembers whether words of the instructions are marked; the style sheet alone does the rest.
"use strict";

(() => {
  const box = document.getElementById("told--on");
  if (!box) return;
  const kept = reader.kept("explained words");
  if (kept.read() === false) box.checked = false;
  reader.chosen();
  box.addEventListener("change", () => kept.write(box.checked ? null : false));
})();
