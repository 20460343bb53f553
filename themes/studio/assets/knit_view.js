// How knitting along is shown: the row in hand in large type, the list of all rows, what was changed since.
"use strict";

reader.knitView = (() => {
  const section = document.getElementById("part--knit");
  if (!section) return null;
  const part = (name) => section.querySelector(`.knit-${name}`);
  const blocks = [...document.querySelectorAll(".instructions .work")];

  const make = (tag, name, ...inside) => {
    const element = document.createElement(tag);
    if (name) element.className = name;
    element.append(...inside);
    return element;
  };

  // What is told twice, in both unit systems or in US and UK terms, has signs around it; each becomes an element of its
  // own, as in the page, whose style sheet leaves one away. A terms' pair has nothing between.
  const MARKED = /([\ue000\ue001\ue004])([^\ue002]*)\ue002([^\ue003]*)\ue003/g;
  const KINDS = { "\ue000": ["metric", "imperial"], "\ue001": ["imperial", "metric"], "\ue004": ["us", "uk"] };
  const ukFirst = () => document.querySelector("#terms--uk:checked, .terms-uk:not(:has(#terms--us:checked))");
  const plain = (text) => text.replace(MARKED, (all, sign, one, other) => {
    if (sign !== "\ue004") return `${one} / ${other}`;
    return ukFirst() ? other : one;
  });
  // No line ends at the hyphen of an abbreviation such as "zus-str", which English does not have.
  const TWO_PARTS = /(?<![\p{L}\p{N}-])([\p{L}\p{N}]{1,4}-[\p{L}\p{N}]{1,4})(?![\p{L}\p{N}-])/u;
  const whole = (text) =>
    language.startsWith("en") ? [text] : text.split(TWO_PARTS).map((part, at) => (at % 2 ? make("span", "whole", part) : part));
  const worded = (text) => {
    const found = [];
    let from = 0;
    for (const { 0: all, 1: sign, 2: first, 3: second, index } of text.matchAll(MARKED)) {
      const [one, other] = KINDS[sign];
      found.push(...whole(text.slice(from, index)), make("span", one, first));
      if (sign !== "\ue004") found.push(make("span", "between", " / "));
      found.push(make("span", other, second));
      from = index + all.length;
    }
    return [...found, ...whole(text.slice(from))];
  };

  const labelled = (label) => (label ? [make("b", "", ...worded(label)), " "] : []);

  const heading = (leg) => {
    const parts = { part: leg.part, n: leg.again + 1 };
    if (!leg.again) return leg.part;
    const few = [tr("{part}, second time", parts), tr("{part}, third time", parts), tr("{part}, fourth time", parts)];
    return few[leg.again - 1] ?? tr("{part}, {n}th time", parts);
  };
  const sts = (count) => trMany("{n} st", "{n} sts", count);

  // "Row 5 of 12", "2nd of 6 repeats, row 1 of 2": which working of how many this one is.
  const which = ({ leg, tick, run, repeat, at }) => {
    if (!run || leg.ticks < 2) return "";
    const whole = tr("{n} of {all}", { n: tick + 1, all: leg.ticks });
    if (run.times < 2 || run.ticks < 2) return whole;
    const parts = { repeat: repeat + 1, times: run.times, row: at + 1, rows: run.ticks };
    const inside = leg.rounds
      ? tr("repeat {repeat} of {times}, round {row} of {rows}", parts)
      : tr("repeat {repeat} of {times}, row {row} of {rows}", parts);
    return [whole, inside].join(" · ");
  };

  // What is worked now, in words: for the eye as parts, for the ear as one sentence.
  const told = (found, { rounds }) => {
    const { leg, row } = found;
    const over = rounds ? tr("Every round is worked.") : tr("Every row is worked.");
    if (!leg) return { label: "", words: over, within: "", which: "", count: "" };
    const own = !row || (row.words === leg.words && row.label === leg.label);
    const known = row && found.after !== null;
    const count = known ? (row.change ? tr("then {count}", { count: sts(found.after) }) : sts(found.after)) : "";
    return {
      label: row ? row.label : leg.label,
      words: row ? row.words : leg.words,
      within: own ? "" : leg.words,
      which: which(found),
      count,
    };
  };

  // Text of the page that stands before a block of instructions, or behind the last one: "Change to the larger needles."
  const beside = (block, step) => {
    const found = [];
    for (let one = blocks[block]?.[step]; one; one = one[step]) {
      if (one.matches(".work, h1, h2, h3, h4") || one.querySelector(".work")) break;
      if (one.matches("p:not(.hint), ul, ol, .only") && !one.querySelector("button:not(.told)")) found.push(one.cloneNode(true));
    }
    const named = found.flatMap((copy) => [copy, ...copy.querySelectorAll("[id]")]);
    for (const one of named) one.removeAttribute("id");
    return step === "previousElementSibling" ? found.reverse() : found;
  };
  const notes = (found, course) => {
    if (!found.leg) return beside(blocks.length - 1, "nextElementSibling");
    const before = course.legs[found.number - 1];
    const first = !before || before.block !== found.leg.block || before.again !== found.leg.again;
    return first && found.tick === 0 ? beside(found.leg.block, "previousElementSibling") : [];
  };

  const share = (done, all) => (all ? Math.floor((100 * done) / all) : 100);

  const now = (project, course, found) => {
    const { label, words, within, which: turn, count } = told(found, course);
    const tick = part("tick");
    const line = make("span", "knit-words", ...labelled(label), ...worded(words));
    const small = (name, ...inside) => (inside.join("") ? [make("span", name, ...inside)] : []);
    tick.replaceChildren(
      ...(within ? [make("span", "knit-within", ...worded(within))] : []),
      line,
      make("span", "knit-counts", ...small("knit-turn", turn), ...small("count", count)),
    );
    tick.disabled = !found.leg;
    part("name").textContent = project.name;
    part("part").textContent = found.leg ? heading(found.leg) : "";
    const done = found.rows;
    const parts = { n: done + 1, rows: course.rows, part: share(done, course.rows) };
    const far = course.rounds
      ? done < course.rows ? tr("Round {n} of {rows}, {part} %", parts) : tr("All {rows} rounds, {part} %", parts)
      : done < course.rows ? tr("Row {n} of {rows}, {part} %", parts) : tr("All {rows} rows, {part} %", parts);
    part("far").textContent = far;
    const bar = part("bar");
    bar.setAttribute("aria-valuemax", course.rows);
    bar.setAttribute("aria-valuenow", done);
    bar.setAttribute("aria-valuetext", far);
    bar.firstElementChild.style.width = `${share(done, course.rows)}%`;
    part("before").replaceChildren(...notes(found, course));
    return plain([label, words, turn, count].filter(Boolean).join(" "));
  };

  const passes = ({ rounds, ticks }) =>
    rounds ? trMany("{n} rnd", "{n} rnds", ticks) : trMany("{n} row", "{n} rows", ticks);
  // "Work 25 rows even." tells already how many there are.
  const counted = (leg) => [passes(leg), `${leg.ticks} rounds`].some((rows) => (
    ` ${plain(leg.words).replace(/[.,;:()]/g, " ")} `.includes(` ${rows} `)
  ));
  const list = (course) => {
    const lines = [];
    let last = "";
    for (const [number, leg] of course.legs.entries()) {
      if (heading(leg) !== last) lines.push(make("li", "knit-heading", heading(leg)));
      last = heading(leg);
      const button = make("button", "knit-row", ...labelled(leg.label), ...worded(leg.words));
      button.type = "button";
      button.dataset.leg = number;
      if (leg.ticks > 1 && !counted(leg)) button.append(" ", make("span", "knit-turn", passes(leg)));
      if (leg.count) button.append(" ", make("span", "count", ...worded(leg.count)));
      lines.push(make("li", "", button));
    }
    part("rows").replaceChildren(...lines);
  };

  const mark = (number) => {
    for (const button of part("rows").querySelectorAll("button")) {
      const leg = Number(button.dataset.leg);
      const current = leg === number;
      button.classList.toggle("worked", leg < number);
      if (current) button.setAttribute("aria-current", "step");
      else button.removeAttribute("aria-current");
      button.tabIndex = current || (number >= leg && !button.closest("li").nextElementSibling) ? 0 : -1;
      const rows = part("rows");
      if (current && rows.clientHeight) rows.scrollTop = button.offsetTop - rows.clientHeight / 3;
    }
  };

  // "Rnd 12 (Crown) now reads ...": what a republished pattern says otherwise, at most so many lines.
  const TOLD = 12;
  const changes = (old, fresh, { moved, changed, gone, added }, at) => {
    const name = (leg) => {
      const parts = { label: plain(leg.label).replace(/:$/, ""), part: heading(leg) };
      return parts.label ? tr("{label} ({part})", parts) : tr("A line ({part})", parts);
    };
    const behind = (place) => fresh.starts[place] + fresh.legs[place].ticks <= at;
    const passed = (words, place) => [words, behind(place) && tr("You have passed it.")].filter(Boolean).join(" ");
    const text = (leg) => plain([leg.words, leg.count].filter(Boolean).join(" "));
    const told = (leg) => ({ line: name(leg), text: text(leg) });
    const otherwise = ({ rounds }, after) =>
      rounds ? tr("{line} has other rounds than before.", after) : tr("{line} has other rows than before.", after);
    const reads = ([a, b]) => {
      const [before, after] = [text(old.legs[a]), told(fresh.legs[b])];
      const words =
        text(old.legs[a].base) === text(fresh.legs[b].base)
          ? otherwise(fresh.legs[b], after)
          : tr("{line} now reads: “{text}” Before: “{before}”", { ...after, before });
      return passed(words, b);
    };
    const found = [
      ...changed.map(reads),
      ...added.map((b) => passed(tr("New: {line}: “{text}”", told(fresh.legs[b])), b)),
      ...gone.map((a) => tr("Gone: {line}: “{text}”", told(old.legs[a]))),
      ...moved.map(([, b]) => passed(tr("{line} has moved.", told(fresh.legs[b])), b)),
    ];
    const n = found.length - TOLD;
    return n > 0 ? [...found.slice(0, TOLD), tr("and {n} more.", { n })] : found;
  };
  const changed = (lines) => {
    part("changed").hidden = lines.length === 0;
    part("changed").querySelector("ul").replaceChildren(...lines.map((line) => make("li", "", line)));
  };

  // What the page says of rows, and in its place of rounds where a piece has no rows.
  const inRounds = (rounds) => {
    for (const one of section.querySelectorAll("[data-rounds]")) {
      one.dataset.rows ??= one.textContent;
      one.textContent = rounds ? one.dataset.rounds : one.dataset.rows;
    }
  };

  return { section, part, make, plain, heading, told, now, counted, list, mark, changes, changed, inRounds };
})();
