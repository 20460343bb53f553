// "My gauge": reads the reader's swatch and shows what swatch.js makes of it. What is typed is kept on this device.
"use strict";

(() => {
  const details = document.querySelector(".my-gauge");
  if (!details) return;
  const data = JSON.parse(document.getElementById("gauge--data").textContent);
  const form = details.querySelector("form");
  const [verdict, comesOut] = [".verdict", ".comes-out"].map((name) => details.querySelector(name));
  const kept = reader.kept(`gauge ${reader.path}`);
  const { of, sub, mul, div, abs, sign, compare, decimal, printed, parse, INCH } = exact;
  let shown = null; // the gauges that were compared last, by their places

  // ---- what is typed

  const fields = [...form.querySelectorAll("input:not([type]), select")];
  const field = (name, place) => fields.find(({ id }) => id === `gauge--${name}${place === undefined ? "" : `-${place}`}`);
  const unit = () => form.elements.unit.value;
  const refuse = (at, words) => {
    document.getElementById(`${at.id}-wrong`).textContent = words;
    if (words) at.setAttribute("aria-invalid", "true");
    else at.removeAttribute("aria-invalid");
  };
  // One count of a swatch: nothing where both of its fields are empty, else its gauge, put among those told.
  const readOne = (told, place, count, over, word) => {
    if (!count?.value.trim() && !over?.value.trim()) return;
    const found = swatch.counted(count.value, over.value, unit(), swatch.numbers(data.own[place])[0], word);
    if (found.gauge) told[place] = found.gauge;
    else refuse(found.field === "count" ? count : over, found.words);
  };
  // The length that is wanted in cm, null where none is.
  const readWanted = () => {
    const at = field("wanted");
    if (!at?.value.trim()) return null;
    const value = parse(at.value);
    if (value && sign(value) > 0 && compare(value, of(1000)) < 0) return unit() === "in" ? mul(value, INCH) : value;
    refuse(at, "Write a length above 0, such as 98 or 38½; or leave it empty.");
    return null;
  };
  // The gauges that are told, by their places; null where something is wrong, which is then said at its field.
  const read = () => {
    const told = [];
    for (const one of fields) if (one.tagName === "INPUT") refuse(one, "");
    data.fabrics.forEach(({ sts, rows, word }, place) => {
      readOne(told, sts, field("sts", place), field("wide", place), "sts");
      if (rows !== null) readOne(told, rows, field("rows", place), field("high", place), word);
    });
    readWanted();
    const wrong = () => form.querySelector("[aria-invalid]");
    if (!told.some(Boolean) && !wrong()) refuse(field("sts", 0), "Write how many stitches you counted: a number such as 22.");
    return wrong() ? null : told;
  };

  // ---- what is shown

  // The one word that is another in the UK: the page has it in both terms.
  const gauge = document.getElementById("gauge--word").content;
  const inTerms = (part) =>
    typeof part === "string" ? part.split(/(\bgauge\b)/).map((one) => (one === "gauge" ? gauge.cloneNode(true) : one)) : [part];
  const made = (tag, ...inside) => {
    const element = document.createElement(tag);
    element.append(...inside.flat(Infinity).flatMap(inTerms));
    return element;
  };
  const classed = (name, element) => Object.assign(element, { className: name });
  // A number of one size in both unit systems, each in an element of its own, as on the rest of the page.
  const both = (series, size = 0) =>
    series.map(({ unit: system, values }, place) => [
      place ? classed("between", made("span", " / ")) : "",
      classed(/[mg]$/.test(system) ? "metric" : "imperial", made("span", `${values[size]}\u00a0${system}`)),
    ]);
  const lengths = (values, size) => both(printed.length(values), size);
  const listed = (words) => words.join(", ").replace(/, ([^,]*)$/, " and $1");
  const counts = (many, word) => `${many} ${many === 1 ? word.slice(0, -1) : word}`;
  const percent = (part) => `${decimal(mul(abs(part), of(100)), 1)} %`;
  const nameOf = (size) => data.sizes[size]?.name ?? "";
  const many = data.sizes.length || 1;
  // The place of the size that is chosen, -1 for all of several.
  const chosen = () => (many === 1 ? 0 : data.sizes.findIndex(({ key }) => key === reader.size()));

  const compared = (place, gauge, word, fabric, needles) => {
    const own = swatch.numbers(data.own[place])[0];
    const off = sub(gauge, own);
    const gauges = [both(printed.gauge([gauge], word)), ". The pattern’s is ", both(printed.gauge([own], word)), ". "];
    const name = fabric.name ? `${fabric.name}: my gauge is ` : "My gauge is ";
    if (!sign(off)) return made("p", name, gauges, "They are the same.");
    const over = sign(off) > 0;
    const series = printed.gauge([abs(off)], `${word} too ${over ? "many" : "few"}`);
    const much = series.map(({ unit: words, values }) => ({ unit: values[0] === "1" ? words.replace("s ", " ") : words, values }));
    const what = needles ? `Take a ${over ? "larger" : "smaller"} needle and knit another swatch.` : "";
    return made("p", name, gauges, "That is ", made("strong", both(much)), ` (${percent(div(off, own))}). `, made("strong", what));
  };
  const verdicts = (told) =>
    data.fabrics.flatMap((fabric) => [
      told[fabric.sts] ? compared(fabric.sts, told[fabric.sts], "sts", fabric, true) : "",
      told[fabric.rows] ? compared(fabric.rows, told[fabric.rows], fabric.word, fabric, false) : "",
    ]);

  const row = (...cells) => made("tr", ...cells);
  const head = (scope, ...words) => Object.assign(made("th", ...words), { scope });
  const table = (heads, rows) => made("table", made("thead", row(heads.map((one) => head("col", one)))), made("tbody", rows));
  const labelled = (label, told) => {
    const cell = made("td", made("span", told));
    cell.dataset.label = label;
    return cell;
  };
  const ofOne = (all, size) =>
    table(
      ["Finished", "As printed", "At my gauge"],
      all.map(({ measure, before, after }) => {
        const same = after && !compare(after[size], before[size]);
        const told = !after ? "comes to nothing" : same ? "the same" : lengths(after, size);
        return row(head("row", measure.label), labelled("As printed", lengths(before, size)), labelled("At my gauge", told));
      }),
    );
  const ofAll = (all) => {
    const cells = (size) => all.map(({ after }) => made("td", after ? lengths(after, size) : "–"));
    const rows = data.sizes.map(({ name }, size) => row(head("row", name), cells(size)));
    const region = classed("wide", made("div", table(["Size", ...all.map(({ measure }) => measure.label)], rows)));
    region.tabIndex = 0;
    region.setAttribute("role", "region");
    region.setAttribute("aria-label", "All sizes at my gauge");
    return region;
  };
  // Other sizes are put into the page only when they are asked for.
  const unfolded = (words, inside) => {
    const fold = made("details", made("summary", words));
    fold.addEventListener("toggle", () => fold.children.length > 1 || fold.append(inside()), { once: true });
    return fold;
  };

  const nearest = (all, size) => {
    const { measure, before, after } = all[Number(field("measure")?.value ?? 0)];
    const target = readWanted() ?? before[size];
    if (many === 1 || !target || !after) return "";
    const found = swatch.nearest(after, target);
    const what = ["For ", made("b", measure.label.toLowerCase()), " of ", lengths([target])];
    const knit = [" knit ", made("strong", listed(found.map(nameOf))), found.length > 1 ? ", which are as near: " : ": "];
    return made("p", what, found.includes(size) ? " your size stays the nearest:" : knit, " ", lengths(after, found[0]), " at my gauge.");
  };

  const balls = (before, after) => {
    if (after === before) return `${counts(after, "balls")}, as many as before`;
    return `${counts(after, "balls")}, ${counts(Math.abs(after - before), "balls")} ${after > before ? "more" : "fewer"}`;
  };
  // What of a yarn changes: in the chosen size how much that is, else the sizes that take other balls than before.
  const amounts = (one, { before, after, balls: own, mine }, size) => {
    if (size >= 0) {
      const [was, is] = [before, after].map((all) => both(printed.bought([all[size]], one.kind)));
      return [one.least[size] ? ", at least " : ", ", is, " instead of ", was, own ? `; ${balls(own[size], mine[size])}.` : "."];
    }
    if (!own) return ".";
    const others = data.sizes.map(({ name }, place) => (own[place] === mine[place] ? "" : `${name}: ${balls(own[place], mine[place])}`));
    return others.some(Boolean) ? `. ${others.filter(Boolean).join("; ")}.` : ". As many balls as before in every size.";
  };
  const yarn = (one, told, size) => {
    const found = swatch.yarn(data, one, told);
    const name = one.label || "Yarn";
    if (!found) return made("li", `${name}: it is knitted in several fabrics, and nothing says by which it changes.`);
    const more = sub(found.after[0], found.before[0]);
    if (!sign(more)) return made("li", `${name}: as much as before.`);
    const part = `${percent(div(more, found.before[0]))} ${sign(more) > 0 ? "more" : "less"}`;
    return made("li", `${name}: about ${part}`, amounts(one, found, size));
  };

  const wordOf = (part) => data.fabrics.find(({ rows }) => rows === part.gauge)?.word ?? "rows";
  const heads = (told, size) =>
    data.parts
      .filter((part) => told[part.gauge] && part.rows[size] !== null)
      .flatMap((part) => {
        const own = swatch.headed(part, size, swatch.numbers(data.own[part.gauge])[0]);
        return swatch.headed(part, size, told[part.gauge]).map((one, place) => ({ ...one, own: own[place].length, word: wordOf(part) }));
      })
      .filter(({ counted, to }) => counted || to.length);
  const rowsOfOne = (told, size) =>
    heads(told, size).map(({ label, counted, length, own, to, word }) => {
      const fixed = to.map((one) => {
        const past = compare(one.reached, one.length) > 0 ? [" (the rows before it are ", lengths([one.reached]), " already)"] : "";
        return [" worked to ", lengths([one.length]), `, ${counts(one.rows, word)}, at my gauge about ${one.mine.n}`, past, "."];
      });
      const free = [` ${counts(counted, word)} by count, `, lengths([own]), ", at my gauge ", lengths([length]), "."];
      return made("li", made("b", `${label}:`), fixed, counted ? free : "");
    });
  const rowsOfAll = (told) => {
    const all = data.sizes.flatMap((_, size) => heads(told, size));
    const labels = (found) => listed([...new Set(all.filter(found).map(({ label }) => label))]) || "none";
    return [
      made("li", "Counted, so longer or shorter: ", labels(({ counted }) => counted > 0), "."),
      made("li", "Worked to a length, so as printed, with more or fewer rows: ", labels(({ to }) => to.length), "."),
    ];
  };

  const rowsTold = (told) => data.fabrics.some((fabric) => told[fabric.rows]);
  const title = (words) => made("h3", words);
  const results = (told) => {
    const size = chosen();
    const all = data.measures.map((measure) => ({
      measure,
      before: swatch.printed(data, measure),
      after: swatch.measured(data, measure, told),
    }));
    return [
      title(size >= 0 && many > 1 ? `${nameOf(size)} at my gauge` : "What it comes out at"),
      all.length ? (size >= 0 ? ofOne(all, size) : ofAll(all)) : "",
      all.length && size >= 0 && many > 1 ? unfolded("All sizes at my gauge", () => ofAll(all)) : "",
      all.length ? nearest(all, size) : "",
      data.yarns.length ? [title("Yarn at my gauge"), made("ul", data.yarns.map((one) => yarn(one, told, size)))] : "",
      heads(told, Math.max(size, 0)).length ? [title("Rows at my gauge"), made("ul", size >= 0 ? rowsOfOne(told, size) : rowsOfAll(told))] : "",
    ];
  };

  // ---- what happens

  const show = (told) => {
    shown = told;
    comesOut.replaceChildren(...(told ? results(told) : []).flat());
    for (const hint of details.querySelectorAll("[data-hint]")) hint.hidden = !told || (hint.dataset.hint === "rows" && rowsTold(told));
  };
  const work = () => {
    const told = read();
    verdict.replaceChildren(...(told ? verdicts(told) : []));
    show(told);
    return told;
  };
  const inUnit = () => form.querySelectorAll(".in-unit").forEach((one) => (one.textContent = `(${unit()})`));
  const typed = () => Object.fromEntries(fields.map((one) => [one.id, one.value]));

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (work()) kept.write({ unit: unit(), typed: typed() });
    else form.querySelector("[aria-invalid]").focus();
  });
  form.addEventListener("change", inUnit);
  form.querySelector(".clear").addEventListener("click", () => {
    form.reset();
    kept.write(null);
    inUnit();
    for (const one of fields) if (one.tagName === "INPUT") refuse(one, "");
    verdict.replaceChildren();
    show(null);
    fields[0].focus();
  });
  document.addEventListener("reader:size", () => shown && show(shown));

  // A reader who is shown inches measures in them, until something else is kept.
  const units = { metric: "cm", imperial: "in" }[document.querySelector('.display [name="units"]:checked')?.value];
  if (units) form.elements.unit.value = units;
  inUnit();
  // What was compared last stands there again; what is kept in another form than this is let be.
  const before = kept.read();
  if (typeof before?.typed === "object" && before.typed) {
    for (const one of fields) {
      const value = before.typed[one.id];
      if (typeof value === "string" && (one.tagName === "INPUT" || value in [...one.options])) one.value = value.slice(0, 40);
    }
    form.elements.unit.value = before.unit === "in" ? "in" : "cm";
    inUnit();
    details.open = Boolean(work());
  }
  details.hidden = false;
})();
