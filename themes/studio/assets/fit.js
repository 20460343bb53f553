// Which size fits a measure, and with how much ease: reckoned with the very numbers that the page prints, so that the answer
// and the table of sizes never contradict each other. It touches no page: measure.js shows what is said here.
"use strict";

globalThis.fit = (() => {
  const { of, parse, add, sub, mul, div, abs, sign, compare, decimal, quarters, printed, INCH } = exact;
  const TYPED = /^(.*?)\s*(cm|[cz]entimet(?:re|er)[sn]?|mm|ins?|inch(?:es)?|zoll|["″”“]|'')?\.?$/i;
  const NONE = of(0);
  const least = (values) => values.reduce((one, other) => (compare(other, one) < 0 ? other : one));
  const most = (values) => values.reduce((one, other) => (compare(other, one) > 0 ? other : one));
  const same = (one, other) => compare(one, other) === 0;

  // What is typed, in the unit that stands behind it, else in the one that was chosen; null where it is no measure.
  const read = (typed, chosen) => {
    const [, number, word] = TYPED.exec(typed.trim()) ?? [];
    const value = number ? parse(number) : null;
    if (!value || sign(value) <= 0) return null;
    if (/^mm$/i.test(word)) return { value: div(value, of(10)), unit: "cm" };
    return { value, unit: word ? (/^(c|ze)/i.test(word) ? "cm" : "in") : chosen };
  };

  // Of a length that is printed: nearest half centimetre or quarter inch, as base/printing.py has it.
  const length = (value, unit) => `${unit === "cm" ? decimal(value, 1) : quarters(value)}\u00a0${exact.unit(unit)}`;
  // Of the reader's own measure: all that was typed.
  const own = (value, unit) => {
    const told = unit === "in" && same(parse(quarters(value)), value) ? quarters(value) : decimal(value, 4);
    return `${told}\u00a0${exact.unit(unit)}`;
  };
  const ease = (value, unit) => {
    const far = length(abs(value), unit);
    if (!sign(value)) return tr("no ease");
    return sign(value) < 0 ? tr("{far} of negative ease", { far }) : tr("{far} of positive ease", { far });
  };

  const inPrint = (values, unit) => {
    const exactly = values.map((value) => of(value));
    return exactly.length ? printed.length(exactly).find((one) => one.unit === unit).values.map(parse) : [];
  };

  // The ease that is meant on such a body, null where the pattern does not say.
  const range = ({ meant }, value, unit) => {
    if (!meant) return null;
    const scaled = (end) => (meant.of === "body" ? mul(of(end), value) : div(of(end), unit === "in" ? INCH : of(1)));
    return { least: scaled(meant.least), most: scaled(meant.most) };
  };

  // A size on a body: its ease, and how far (`off`) that is from the ease meant; above zero there is more room.
  const on = (measure, value, unit) => {
    const body = inPrint(measure.body, unit);
    const finished = inPrint(measure.finished, unit);
    const meant = range(measure, value, unit);
    return body.map((made, size) => {
      const here = finished.length ? sub(finished[size], value) : null;
      if (!here || !meant) return { size, body: made, finished: finished[size], ease: here, off: sub(made, value) };
      const over = sub(here, most([meant.least, least([meant.most, here])]));
      const middle = abs(sub(here, div(add(meant.least, meant.most), of(2))));
      return { size, body: made, finished: finished[size], ease: here, off: over, middle };
    });
  };

  // Sizes made for the measure; else those next to it on either side; beyond the table its last ones.
  const candidates = (all, value) => {
    const side = (fits, end) => {
      const those = all.filter(({ body }) => fits(compare(body, value)));
      const edge = those.length ? end(those.map(({ body }) => body)) : null;
      return those.filter(({ body }) => same(body, edge));
    };
    const made = side((order) => order === 0, least);
    const below = side((order) => order < 0, most);
    const above = side((order) => order > 0, least);
    if (made.length) return { kind: "made", those: made };
    return { kind: below.length && above.length ? "between" : "outside", those: [...below, ...above] };
  };

  const nearer = (one, other) =>
    compare(abs(one.off), abs(other.off)) || compare(one.middle ?? NONE, other.middle ?? NONE);
  const nearest = (those) => those.filter((one) => those.every((other) => nearer(one, other) <= 0));

  // The other unit, where the number would be within the table in it: "22" typed for 22 in.
  const elsewhere = (measure, { value, unit }) => {
    const other = unit === "in" ? "cm" : "in";
    return candidates(on(measure, value, other), value).kind === "outside" ? "" : other;
  };

  const answer = (measure, typed, chosen) => {
    const given = read(typed, chosen);
    if (!given) return { kind: "unread" };
    const { value, unit } = given;
    if (compare(unit === "in" ? mul(value, INCH) : value, of(300)) >= 0) return { kind: "absurd", value, unit };
    const all = on(measure, value, unit);
    const { kind, those } = candidates(all, value);
    const fits = kind !== "outside" || (measure.meant && those.some(({ off }) => sign(off) === 0));
    const proposed = fits ? nearest(those).map(({ size }) => size) : [];
    const meant = range(measure, value, unit);
    return { kind, value, unit, measure, all, those, proposed, meant, other: fits ? "" : elsewhere(measure, given) };
  };

  // All measures together: of the sizes that one of them leads to, that whose worst ease is nearest to the one meant.
  const together = (answers) => {
    if (answers.some(({ proposed }) => !proposed.length)) return { proposed: [], sizes: [] };
    const sizes = [...new Set(answers.flatMap(({ those }) => those.map(({ size }) => size)))].sort((a, b) => a - b);
    const far = ({ all, unit }, size) => mul(abs(all[size].off), unit === "in" ? INCH : of(1));
    const worst = sizes.map((size) => most(answers.map((one) => far(one, size))));
    const best = least(worst);
    return { proposed: sizes.filter((_, at) => same(worst[at], best)), sizes, worst: best };
  };

  return { read, answer, together, length, own, ease };
})();
