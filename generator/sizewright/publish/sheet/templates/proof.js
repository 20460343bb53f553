// Sorts and narrows the tables of a proof sheet. Without it every table stands whole.
"use strict";

(() => {
  const form = document.querySelector(".tools");
  if (!form) return;
  const { size, sort, look } = form.elements;
  const said = form.querySelector("output");
  const table = document.querySelector(".quantities");
  const quantities = table ? [...table.tBodies] : [];
  const parts = [...document.querySelectorAll("table:not(.plain) > tbody, .ledger tbody > tr")];

  const by = {
    place: (one, other) => one.dataset.place - other.dataset.place,
    name: (one, other) => one.dataset.name.localeCompare(other.dataset.name),
    moved: (one, other) => other.dataset.moved - one.dataset.moved || by.place(one, other),
    growing: (one, other) => other.dataset.growing - one.dataset.growing || by.place(one, other),
  };

  // A body of the ledger is looked at for its rows; its heading stays as long as one of them does.
  const asks = (part) => "look" in part.dataset || Boolean(part.querySelector("[data-look]")) || (part.matches(".ledger .about") && Boolean(part.parentElement.querySelector("[data-look]")));
  const narrow = () => {
    for (const part of parts) part.hidden = look.checked && !asks(part);
    const left = quantities.filter((one) => !one.hidden).length;
    said.textContent = look.checked ? `${left} of ${quantities.length} quantities` : "";
  };

  form.hidden = false;
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("change", () => {
    if (size) document.documentElement.dataset.size = size.value;
    if (table) table.append(...quantities.sort(by[sort.value]));
    narrow();
  });

  // A link to what is hidden shows it.
  const shown = () => {
    const target = document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (target?.hidden || target?.closest("[hidden]")) {
      look.checked = false;
      narrow();
      target.scrollIntoView();
    }
  };
  addEventListener("hashchange", shown);
})();
