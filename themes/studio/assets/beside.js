// Adds to two sizes that stand side by side what the second has more or less, from the very numbers that are shown.
"use strict";

reader.inTurn(() => {
  const table = document.querySelector(".compared table");
  if (!table) return;
  const own = [...document.querySelectorAll('.choose [name="size"]')];
  const other = document.querySelector('[name="beside"]');
  const names = [...other.options].slice(1).map(({ text }) => text);
  // Their places among the sizes, -1 where none is chosen.
  const mine = () => own.findIndex(({ checked }) => checked) - 1;
  const its = () => other.selectedIndex - 1;
  const NUMBER = /^([−-]?[\d.,]*[¼½¾⅛]?)(?=\s|$)(.*)$/;

  const cell = (tag, words) => {
    const made = document.createElement(tag);
    made.className = "difference";
    made.textContent = words;
    return made;
  };
  const heading = cell("th", tr("Difference"));
  heading.scope = "col";
  table.tHead.rows[0].append(heading);
  const lines = [...table.tBodies].flatMap((body) => [...body.rows]);
  const rows = lines.filter((row) => row.cells.length > 1);
  for (const row of rows) row.append(cell("td", ""));
  for (const row of lines.filter((line) => !rows.includes(line))) row.cells[0].colSpan += 1;

  // "51.5 cm" less "48 cm": in the figures of the unit. Where either is no number alone there is no difference to tell.
  const less = (one, other) => {
    const [a, b] = [one, other].map((words) => NUMBER.exec(words.replaceAll("\u00a0", " ").trim()));
    if (!a?.[1] || !b?.[1] || a[2] !== b[2]) return "–";
    const apart = exact.sub(exact.parse(b[1]), exact.parse(a[1]));
    const figures = a[2].split(" ")[1] === exact.unit("in") ? exact.quarters(apart) : exact.decimal(apart);
    if (!exact.sign(apart)) return tr("the same");
    return `${exact.sign(apart) > 0 ? "+" : ""}${figures}${a[2]}`.replace(/ (\S+)$/, "\u00a0$1");
  };
  // Each unit for itself, in the elements that hold them; a remark behind a number is left out.
  const units = (shown) => {
    const measures = [...shown.querySelectorAll(".measure")];
    return measures.length ? measures : [shown];
  };
  const words = (element) => [...element.childNodes].find((node) => node.textContent.trim())?.textContent ?? "";
  const difference = (target, one, other) => {
    const [from, to] = [units(one), units(other)];
    const told = from.map((unit, place) => (to[place] ? less(words(unit), words(to[place])) : "–"));
    const same = new Set(told).size === 1;
    target.replaceChildren(
      ...(same ? told.slice(0, 1) : told).map((text, place) => {
        const part = document.createElement("span");
        part.className = same ? "measure" : from[place].className;
        part.textContent = text;
        return part;
      }),
    );
  };

  const compare = () => {
    const [first, second] = [mine(), its()];
    if (first < 0 || second < 0) return false;
    table.caption.textContent = tr(
      "{one} and {other} side by side; the difference is what {other} has more or less",
      { one: names[first], other: names[second] },
    );
    for (const row of rows) difference(row.cells[row.cells.length - 1], row.cells[first + 1], row.cells[second + 1]);
    return true;
  };
  const tell = () => {
    if (!compare()) return;
    const parts = { one: names[mine()], other: names[its()] };
    reader.say(tr("{one} and {other} stand side by side below the table of sizes.", parts));
  };
  document.addEventListener("reader:beside", () => {
    if (its() >= 0) table.closest("details").open = true;
    tell();
  });
  document.addEventListener("reader:size", () => {
    // A size beside itself is no comparison.
    if (its() >= 0 && mine() === its()) {
      other.selectedIndex = 0;
      other.dispatchEvent(new Event("change", { bubbles: true }));
    }
    tell();
  });
  if (its() >= 0) table.closest("details").open = true;
  compare();
});
