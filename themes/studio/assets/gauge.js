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
  const long = fields.filter(({ name }) => ["wide", "high", "wanted"].includes(name));
  const spans = swatch.lengths(long, unit());
  const refuse = (at, words) => {
    document.getElementById(`${at.id}-wrong`).textContent = words;
    if (words) at.setAttribute("aria-invalid", "true");
    else at.removeAttribute("aria-invalid");
  };
  // One count of a swatch: nothing where both of its fields are empty, else its gauge, put among those told.
  const readOne = (told, place, count, over, word) => {
    if (!count?.value.trim() && !over?.value.trim()) return;
    const own = spans.typed(over);
    const found = swatch.counted(count.value, own.text, own.unit, swatch.numbers(data.own[place])[0], word);
    if (found.gauge) told[place] = found.gauge;
    else refuse(found.field === "count" ? count : over, found.words);
  };
  // The length that is wanted in cm, null where none is.
  const readWanted = () => {
    const at = field("wanted");
    if (!at?.value.trim()) return null;
    const own = spans.typed(at);
    const value = parse(own.text);
    if (value && sign(value) > 0 && compare(value, of(1000)) < 0) return own.unit === "in" ? mul(value, INCH) : value;
    refuse(at, tr("Write a length above 0, such as 98 or 38½; or leave it empty."));
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
    if (!told.some(Boolean) && !wrong()) refuse(field("sts", 0), tr("Write how many stitches you counted: a number such as 22."));
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
  const withUnit = (value, unit) => `${value}\u00a0${exact.unit(unit)}`;
  const both = (series, size = 0, words = withUnit) =>
    series.map(({ unit: system, values }, place) => [
      place ? classed("between", made("span", " / ")) : "",
      classed(/[mg]$/.test(system) ? "metric" : "imperial", made("span", words(values[size], system))),
    ]);
  const lengths = (values, size) => both(printed.length(values), size);
  const ofGauge = (word, how) => (value, unit) => {
    const over = / 4 in$/.test(unit) ? `4 ${exact.unit("in")}` : `10 ${exact.unit("cm")}`;
    const parts = { n: value, what: swatch.COUNTED[word](/^(≈ )?1$/.test(value) ? 1 : 2), over };
    if (!how) return tr("{n}\u00a0{what} in {over}", parts);
    return how > 0 ? tr("{n}\u00a0{what} too many in {over}", parts) : tr("{n}\u00a0{what} too few in {over}", parts);
  };
  const counts = (n, word) => (word === "rnds" ? trMany("{n} rnd", "{n} rnds", n) : trMany("{n} row", "{n} rows", n));
  const ballsOf = (n) => trMany("{n} ball", "{n} balls", n);
  const percent = (part) => `${decimal(mul(abs(part), of(100)), 1)} %`;
  const nameOf = (size) => data.sizes[size]?.name ?? "";
  const many = data.sizes.length || 1;
  // The place of the size that is chosen, -1 for all of several.
  const chosen = () => (many === 1 ? 0 : data.sizes.findIndex(({ key }) => key === reader.size()));

  const compared = (place, gauge, word, fabric, needles) => {
    const own = swatch.numbers(data.own[place])[0];
    const off = sub(gauge, own);
    const told = (value, how = 0) => both(printed.gauge([value], word), 0, ofGauge(word, how));
    const parts = { fabric: fabric.name, mine: told(gauge), own: told(own) };
    const lead = fabric.name
      ? trNodes("{fabric}: my gauge is {mine}. The pattern’s is {own}.", parts)
      : trNodes("My gauge is {mine}. The pattern’s is {own}.", parts);
    if (!sign(off)) return made("p", lead, " ", tr("They are the same."));
    const much = made("strong", told(abs(off), sign(off)));
    const larger = tr("Take a larger needle and knit another swatch.");
    const smaller = tr("Take a smaller needle and knit another swatch.");
    const what = needles ? (sign(off) > 0 ? larger : smaller) : "";
    const apart = trNodes("That is {much} ({percent}).", { much, percent: percent(div(off, own)) });
    return made("p", lead, " ", apart, " ", made("strong", what));
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
      [tr("Finished"), tr("As printed"), tr("At my gauge")],
      all.map(({ measure, before, after }) => {
        const same = after && !compare(after[size], before[size]);
        const told = !after ? tr("comes to nothing") : same ? tr("the same") : lengths(after, size);
        return row(head("row", measure.label), labelled(tr("As printed"), lengths(before, size)), labelled(tr("At my gauge"), told));
      }),
    );
  const ofAll = (all) => {
    const cells = (size) => all.map(({ after }) => made("td", after ? lengths(after, size) : "–"));
    const rows = data.sizes.map(({ name }, size) => row(head("row", name), cells(size)));
    const region = classed("wide", made("div", table([tr("Size"), ...all.map(({ measure }) => measure.label)], rows)));
    region.tabIndex = 0;
    region.setAttribute("role", "region");
    region.setAttribute("aria-label", tr("All sizes at my gauge"));
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
    const what = { measure: made("b", trWithin(measure.label)), wanted: lengths([target]), mine: lengths(after, found[0]) };
    const parts = { ...what, sizes: made("strong", trList(found.map(nameOf))) };
    if (found.includes(size)) return made("p", trNodes("For the {measure} to be {wanted}, your size stays the nearest: {mine} at my gauge.", parts));
    if (found.length < 2) return made("p", trNodes("For the {measure} to be {wanted}, knit {sizes}: {mine} at my gauge.", parts));
    return made("p", trNodes("For the {measure} to be {wanted}, knit {sizes}, which are as near: {mine} at my gauge.", parts));
  };

  const balls = (before, after) => {
    const parts = { balls: ballsOf(after), other: ballsOf(Math.abs(after - before)) };
    if (after === before) return tr("{balls}, as many as before", parts);
    return after > before ? tr("{balls}, {other} more", parts) : tr("{balls}, {other} fewer", parts);
  };
  // What of a yarn changes: in the chosen size how much that is, else the sizes that take other balls than before.
  const amounts = (one, { before, after, balls: own, mine }, size) => {
    if (size >= 0) {
      const [was, is] = [before, after].map((all) => both(printed.bought([all[size]], one.kind)));
      const told = one.least[size] ? trNodes("at least {is} instead of {was}", { is, was }) : trNodes("{is} instead of {was}", { is, was });
      return [", ", told, own ? `; ${balls(own[size], mine[size])}.` : "."];
    }
    if (!own) return ".";
    const others = data.sizes.map(({ name }, place) => (own[place] === mine[place] ? "" : `${name}: ${balls(own[place], mine[place])}`));
    return others.some(Boolean) ? `. ${others.filter(Boolean).join("; ")}.` : [". ", tr("As many balls as before in every size.")];
  };
  const yarn = (one, told, size) => {
    const found = swatch.yarn(data, one, told);
    const name = one.label || tr("Yarn");
    if (!found) return made("li", tr("{yarn}: it is knitted in several fabrics, and nothing says by which it changes.", { yarn: name }));
    const more = sub(found.after[0], found.before[0]);
    if (!sign(more)) return made("li", tr("{yarn}: as much as before.", { yarn: name }));
    const parts = { yarn: name, part: percent(div(more, found.before[0])) };
    const about = sign(more) > 0 ? tr("{yarn}: about {part} more", parts) : tr("{yarn}: about {part} less", parts);
    return made("li", about, amounts(one, found, size));
  };

  const inRounds = data.fabrics.every(({ rows, word }) => rows === null || word === "rnds");
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
        const parts = { length: lengths([one.length]), rows: counts(one.rows, word), mine: `${one.mine.n}`, reached: lengths([one.reached]) };
        const past = compare(one.reached, one.length) > 0;
        if (!past) return [" ", trNodes("worked to {length}, {rows}, at my gauge about {mine}.", parts)];
        if (word === "rnds") return [" ", trNodes("worked to {length}, {rows}, at my gauge about {mine} (the rounds before it are {reached} already).", parts)];
        return [" ", trNodes("worked to {length}, {rows}, at my gauge about {mine} (the rows before it are {reached} already).", parts)];
      });
      const parts = { rows: counts(counted, word), own: lengths([own]), mine: lengths([length]) };
      const free = [" ", trNodes("{rows} by count, {own}, at my gauge {mine}.", parts)];
      return made("li", made("b", `${label}:`), fixed, counted ? free : "");
    });
  const rowsOfAll = (told) => {
    const all = data.sizes.flatMap((_, size) => heads(told, size));
    const labels = (found) => trList([...new Set(all.filter(found).map(({ label }) => label))]) || tr("none");
    const to = { parts: labels((one) => one.to.length) };
    return [
      made("li", tr("Counted, so longer or shorter: {parts}.", { parts: labels(({ counted }) => counted > 0) })),
      made("li", inRounds ? tr("Worked to a length, so as printed, with more or fewer rounds: {parts}.", to) : tr("Worked to a length, so as printed, with more or fewer rows: {parts}.", to)),
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
      title(size >= 0 && many > 1 ? tr("{size} at my gauge", { size: nameOf(size) }) : tr("What it comes out at")),
      all.length ? (size >= 0 ? ofOne(all, size) : ofAll(all)) : "",
      all.length && size >= 0 && many > 1 ? unfolded(tr("All sizes at my gauge"), () => ofAll(all)) : "",
      all.length ? nearest(all, size) : "",
      data.yarns.length ? [title(tr("Yarn at my gauge")), made("ul", data.yarns.map((one) => yarn(one, told, size)))] : "",
      heads(told, Math.max(size, 0)).length ? [title(inRounds ? tr("Rounds at my gauge") : tr("Rows at my gauge")), made("ul", size >= 0 ? rowsOfOne(told, size) : rowsOfAll(told))] : "",
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
  const each = (told) => Object.fromEntries(fields.map((one) => [one.id, told(spans.typed(one))]));
  const keep = () => kept.write({ unit: unit(), typed: each(({ text }) => text), units: each((one) => one.unit) });
  const inUnit = () => {
    spans.turn(unit());
    for (const one of form.querySelectorAll(".in-unit")) one.textContent = `(${exact.unit(unit())})`;
    if (shown) keep();
  };

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (work()) keep();
    else form.querySelector("[aria-invalid]").focus();
  });
  form.addEventListener("change", ({ target }) => target.name === "unit" && inUnit());
  form.querySelector(".clear").addEventListener("click", () => {
    form.reset();
    for (const one of fields) if (one.tagName === "INPUT") refuse(one, "");
    verdict.replaceChildren();
    show(null);
    kept.write(null);
    followed();
    fields[0].focus();
  });
  document.addEventListener("reader:size", () => shown && show(shown));

  const followed = reader.measuring(form, "unit", { told: inUnit, turns: true });
  // What was compared last stands there again; what is kept in another form than this is let be.
  const before = kept.read();
  if (typeof before?.typed === "object" && before.typed) {
    for (const one of fields) {
      const value = before.typed[one.id];
      if (typeof value === "string" && (one.tagName === "INPUT" || value in [...one.options])) one.value = value.slice(0, 40);
    }
    const known = (one) => (one === "in" ? "in" : "cm");
    form.elements.unit.value = known(before.unit);
    spans.turn(unit());
    for (const one of long) spans.put(one, { text: one.value, unit: known(before.units?.[one.id] ?? unit()) });
    inUnit();
    details.open = Boolean(work());
  }
  details.hidden = false;
})();
