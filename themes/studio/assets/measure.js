// Finds a size by what a reader types: shows the answer of fit_words.js, and buttons that choose what it names.
"use strict";

(() => {
  const section = document.querySelector(".fit");
  if (!section) return;
  const form = section.querySelector(".measures");
  const shown = section.querySelector(".found");
  const { sizes, measures } = JSON.parse(document.getElementById("fit--data").textContent);
  const names = sizes.map(({ name }) => name);
  const unit = () => form.elements["measured in"].value;

  const made = (tag, words, inside = []) => {
    const element = document.createElement(tag);
    element.append(words, ...inside);
    return element;
  };

  // Choosing is the business of the page's own fields: they are set for the reader.
  const choose = (place) => {
    const radio = document.getElementById(`size--z${place}`);
    radio.checked = true;
    radio.dispatchEvent(new Event("change", { bubbles: true }));
  };
  const setBeside = (field, place) => {
    field.selectedIndex = place + 1;
    field.dispatchEvent(new Event("change", { bubbles: true }));
  };
  const pressed = (words, does) => {
    const button = made("button", words);
    button.type = "button";
    button.addEventListener("click", does);
    return button;
  };
  const done = (words) => {
    shown.replaceChildren(made("p", words));
    shown.focus();
  };
  const buttons = (proposed, others) => {
    if (!proposed.length) return [];
    const order = [...new Set([...proposed, ...others])];
    const all = order.map((size) =>
      pressed(tr("Show size {size}", { size: names[size] }), () => {
        choose(size);
        done(tr("Size {size} is chosen: only its numbers are shown.", { size: names[size] }));
      }),
    );
    const beside = document.getElementById("beside--with");
    if (order.length === 2 && beside) {
      all.push(
        pressed(tr("Set both side by side"), () => {
          choose(order[0]);
          setBeside(beside, order[1]);
          beside.focus();
        }),
      );
    }
    const row = made("p", "", all);
    row.className = "actions";
    return [row];
  };

  const paragraphs = ({ lead, items, verdict, meaning }) => {
    const list = items.length ? [made("ul", "", items.map((words) => made("li", words)))] : [];
    const after = [verdict, meaning].filter(Boolean).map((words) => made("p", words));
    if (verdict) after[0].className = "verdict";
    return [made("p", lead), ...list, ...after];
  };

  const look = () => {
    const typed = measures
      .map((measure) => ({ measure, field: form.elements[measure.key] }))
      .filter(({ field }) => field.value.trim());
    const found = typed.map(({ measure, field }) => ({ field, ...fit.answer(measure, field.value, unit()) }));
    for (const { field, kind } of found) field.setAttribute("aria-invalid", String(["unread", "absurd"].includes(kind)));
    if (!typed.length) {
      shown.replaceChildren(made("p", tr("Type a measure first.")));
      form.elements[measures[0].key].focus();
      return;
    }
    const parts = found.flatMap((one) => paragraphs(fitWords.answer(names, one, one.field.value.trim().slice(0, 40))));
    const read = found.filter(({ all }) => all);
    const together = found.length > 1 && read.length === found.length;
    if (together) parts.push(...paragraphs(fitWords.together(names, read)));
    const last = together ? fit.together(read) : { proposed: read[0]?.proposed ?? [], sizes: [] };
    const others = together || read[0]?.kind === "outside" ? [] : (read[0]?.those ?? []).map(({ size }) => size);
    if (read.length === found.length) parts.push(...buttons(last.proposed, others));
    shown.replaceChildren(...parts);
    found.find(({ all }) => !all)?.field.focus();
  };

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    look();
  });
  form.addEventListener("input", ({ target }) => target.removeAttribute("aria-invalid"));
  // Once a size is chosen, wherever that is done, nothing else is to be seen of the others.
  document.addEventListener("reader:size", () => {
    if (reader.size()) shown.replaceChildren();
  });
  reader.measuring(form, "measured in");
  section.hidden = false;
  for (const way of document.querySelectorAll(".by-measure")) way.hidden = false;
})();
