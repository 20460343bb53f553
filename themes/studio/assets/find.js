// What fits a search of the collection: words, yarn at hand, a measure of the body. It touches no page: filter.js shows it.
// Sums are exact (exact.js), and a size is found for a body as on the page of its pattern (fit.js).
"use strict";

globalThis.find = (() => {
  const { of, parse, add, mul, div, sign, compare, printed } = exact;
  const MOST = of(1000000);

  // Letters without what accents and capitals make of them; "ø" and the like have no accent to take off.
  const PLAIN = { ß: "ss", æ: "ae", œ: "oe", ø: "o", đ: "d", ð: "d", ł: "l", þ: "th", ı: "i" };
  const folded = (text) =>
    text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase().replace(/[ßæœøđðłþı]/g, (letter) => PLAIN[letter]);
  const WRITTEN = /[\p{L}\p{N}\p{M}]+/gu;
  const words = (text) => folded(text).match(/[\p{L}\p{N}]+/gu) ?? [];

  // One and several of a thing: "cowls" is "cowl", "scarf" is "scarves", "Mützen" are "Mütze". Not every form is a word; each is only
  // compared with whole words.
  const PLURALS = { en: ["s", "es"], de: ["n", "en", "e", "er", "s", "es"] };
  const forms = (word) => {
    if (word.length < 4) return [word];
    const endings = PLURALS[language.slice(0, 2)] ?? [];
    const singles = endings.filter((one) => word.endsWith(one)).map((one) => word.slice(0, -one.length));
    const others = [word.replace(/ves$/, "f"), word.replace(/f$/, "ves")];
    return [word, ...singles, ...(endings.length === 2 ? others : [])].filter((one) => one.length > 2);
  };
  // What a word may be put together of ends in what it is: "Rundschal", "washcloth". Of nouns, which German writes with a
  // capital, so much shorter ends are words; elsewhere "ring" would be found in "measuring".
  const compounds = (text) =>
    (text.match(WRITTEN) ?? [])
      .map((one) => ({ forms: forms(folded(one)), noun: language.startsWith("de") && /^\p{Lu}/u.test(one) }))
      .filter((one) => one.forms[0].length > 6);
  const ends = ({ forms: own, noun }, asked) => {
    const [before, least] = noun ? [3, 4] : [4, 5];
    return own.some((one) => asked.length >= least && one.length - asked.length >= before && one.endsWith(asked));
  };

  // Every word that is asked for begins one of the pattern, is one of its words in another number, or the end of a compound.
  const fits = (own, asked, parts = []) =>
    asked.every((word) => {
      if (own.some((one) => one.startsWith(word))) return true;
      const all = forms(word);
      return own.some((one) => all.includes(one)) || parts.some((part) => all.some((one) => ends(part, one)));
    });

  // Letters to put in, leave out, change or swap with their neighbours, to make one word of another.
  const apart = (one, other) => {
    let [before, last] = [[], [...Array(other.length + 1).keys()]];
    for (let i = 1; i <= one.length; i += 1) {
      const now = [i];
      for (let j = 1; j <= other.length; j += 1) {
        const change = last[j - 1] + (one[i - 1] === other[j - 1] ? 0 : 1);
        now[j] = Math.min(now[j - 1] + 1, last[j] + 1, change);
        const swapped = i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1];
        if (swapped) now[j] = Math.min(now[j], before[j - 2] + 1);
      }
      [before, last] = [last, now];
    }
    return last[other.length];
  };
  const nearest = (word, known) => {
    const most = word.length < 4 ? 1 : 2;
    const near = known
      .filter((one) => one.length > 2 && Math.abs(one.length - word.length) <= most)
      .map((one) => [apart(word, one), one])
      .filter(([far]) => far <= most)
      .sort(([a, one], [b, other]) => a - b || (one < other ? -1 : 1));
    return near.length ? near[0][1] : "";
  };
  // The search with every word that no pattern has put right, as it is written in `text`, capitals aside; "" where nothing
  // is near, or nothing is wrong.
  const meant = (asked, all, text) => {
    const known = [...new Set(all.flat())];
    const parts = compounds(text);
    const right = asked.map((word) => (fits(known, [word], parts) ? word : nearest(word, known)));
    if (!right.every(Boolean) || right.every((word, at) => word === asked[at])) return "";
    const written = (text.match(WRITTEN) ?? []).map((one) => one.toLowerCase());
    return right.map((word) => written.find((one) => folded(one) === word) ?? word).join(" ");
  };

  const UNITS = {
    m: { of: "length", in: of(100), at: 0 },
    yd: { of: "length", in: of(9144, 100), at: 1 },
    g: { of: "mass", in: of(1), at: 0 },
    oz: { of: "mass", in: of(28349523125n, 1000000000n), at: 1 },
    balls: { of: "balls", in: of(1) },
  };
  const SPELLED = [
    [/^m(et(re|er)[sn]?)?$/, "m"],
    [/^(yds?|yards?)$/, "yd"],
    [/^(g|grams?|gramm(e|es)?)$/, "g"],
    [/^(oz|ounces?|unzen?)$/, "oz"],
    [/^(balls?|knäuel)$/, "balls"],
  ];
  // An amount of yarn as typed, "180" or "180 m"; what is wrong with it in `wrong`, for the reader.
  const amount = (typed, chosen) => {
    const [, number, word] = /^(.*?)\s*(\p{L}*)\.?$/u.exec(typed.trim());
    const unit = word ? SPELLED.find(([spelling]) => spelling.test(word.toLowerCase()))?.[1] : chosen;
    const value = unit ? parse(number) : null;
    if (!value) return { wrong: tr("“{typed}” is no amount of yarn. Write a number, such as 180 or 180.5.", { typed: typed.trim() }) };
    if (sign(value) <= 0) return { wrong: tr("Nothing can be made with no yarn. Write an amount above 0.") };
    if (compare(value, MOST) > 0) return { wrong: tr("That is more than any pattern takes. Is a figure too many?") };
    return { value, unit };
  };

  const told = (values, yarn, unit) => {
    const { of: kind, at } = UNITS[unit];
    if (kind !== "balls") {
      const { unit: name, values: texts } = printed.bought(values, kind)[at];
      return texts.map((text) => `${text}\u00a0${exact.unit(name)}`);
    }
    const { ball } = yarn ?? {};
    return values.map(({ n }) =>
      ball
        ? trMany("{n}\u00a0ball of {ball}", "{n}\u00a0balls of {ball}", Number(n), { ball })
        : trMany("{n}\u00a0ball", "{n}\u00a0balls", Number(n)),
    );
  };

  const either = (one, other) => tr("{one} or {other}", { one, other });
  const besideOther = (some, last) => tr("{some} and {last}", { some, last });

  // Sizes as a reader counts them: "S", "S and M", "S to L"; those that stand apart one by one.
  const runs = (sizes, places) => {
    const parts = [];
    for (const place of places) {
      const run = parts.at(-1);
      if (run && run.at(-1) === place - 1) run.push(place);
      else parts.push([place]);
    }
    const names = parts.map((run) => {
      const [first, last] = [sizes[run[0]].name, sizes[run.at(-1)].name];
      return run.length === 1 ? first : run.length === 2 ? besideOther(first, last) : tr("{first} to {last}", { first, last });
    });
    return names.join(", ");
  };

  const summed = (yarns, kind) =>
    yarns.map((yarn) => yarn[kind].map((value) => of(value))).reduce((one, other) => one.map((v, i) => add(v, other[i])));
  const named = ({ name }) => tr("{name} yarn", { name: `${trWithin(name.charAt(0))}${name.slice(1)}` });

  // Other yarns that a pattern takes: each with the most that one of the sizes needs of it.
  const besides = (yarns, unit, places) =>
    yarns.map((yarn) => {
      const kind = [UNITS[unit].of, "length", "mass"].find((one) => yarn[one]);
      if (!kind) return named(yarn);
      const values = places.map((place) => of(yarn[kind][place]));
      const most = values.reduce((one, other) => (compare(other, one) > 0 ? other : one));
      const [text] = told([most], yarn, kind === UNITS[unit].of ? unit : kind === "mass" ? "g" : "m");
      const parts = { amount: text, yarn: named(yarn) };
      return places.length > 1 ? tr("up to {amount} of {yarn}", parts) : tr("{amount} of {yarn}", parts);
    });

  // Which of some sizes (by their places) an amount suffices for. `weight` is that of the yarn at hand, "" for any; `all`
  // counts all yarns of that weight together. A pattern that does not tell its yarn is neither in nor out.
  const yarn = (card, { value, unit }, { weight = "", all = false, places = card.sizes.map((_, place) => place) } = {}) => {
    const { of: kind, in: factor } = UNITS[unit];
    const own = card.yarns.filter((one) => !weight || one.weight === weight);
    const counted = all ? own : own.slice(0, 1);
    const others = card.yarns.filter((one) => !counted.includes(one));
    if (!counted.length || !counted.every((one) => one[kind])) {
      const any = counted.some((one) => one.length || one.mass);
      const name = unit === "balls" ? tr("balls") : exact.unit(unit);
      const words = any ? tr("It does not tell its yarn in {unit}.", { unit: name }) : tr("It does not tell how much yarn it takes.");
      return { kind: "untold", words };
    }
    const needs = summed(counted, kind);
    const enough = (place) => compare(needs[place], mul(value, factor)) <= 0;
    const sure = (place) => counted.every(({ least }) => !least[place]);
    const yes = places.filter((place) => enough(place) && sure(place));
    const perhaps = places.filter((place) => enough(place) && !sure(place));
    const no = places.filter((place) => !enough(place));
    const some = yes.length ? yes : perhaps;
    if (!some.length) return { kind: "none", words: "" };
    const texts = told(needs, counted.length === 1 ? counted[0] : null, unit);
    const whole = yes.length === card.sizes.length;
    const parts = [];
    if (whole) parts.push(yes.length > 1 ? tr("enough for every size") : tr("enough"));
    else if (yes.length) parts.push(tr("enough for {sizes}", { sizes: runs(card.sizes, yes) }));
    const unsure = { sizes: runs(card.sizes, perhaps) };
    if (perhaps.length) parts.push(tr("perhaps enough for {sizes}, as not all of it could be counted", unsure));
    if (no.length) parts.push(tr("{size} needs {amount}", { size: card.sizes[no[0]].name, amount: texts[no[0]] }));
    const lead = card.yarns.length === 1 ? tr("Yarn") : counted.length > 1 ? tr("All its yarns together") : counted[0].name;
    const also = others.length ? besides(others, unit, some).reduce(besideOther) : "";
    const more = also ? tr("It also takes {yarns}.", { yarns: also }) : "";
    return { kind: yes.length ? "enough" : "perhaps", words: [`${lead}: ${parts.join("; ")}.`, more].filter(Boolean).join(" "), places: some };
  };

  // The sizes a pattern proposes for a body, none where it proposes none or is not made by that measure.
  const body = (card, key, typed, chosen) => {
    const measure = card.measures.find((one) => one.key === key);
    if (!measure) return { places: [], words: "" };
    const found = fit.answer(measure, typed, chosen);
    if (!found.proposed?.length) return { places: [], words: "" };
    const made = found.proposed.map((place) => {
      const one = found.all[place];
      const room = one.finished ? `, ${trWithin(measure.label)} ${fit.length(one.finished, found.unit)}` : "";
      const parts = { size: card.sizes[place].name, body: fit.length(one.body, found.unit) };
      const made = card.sizes.length > 1 ? tr("size {size} for {body}", parts) : tr("made for {body}", parts);
      return `${made}${room}`;
    });
    const parts = { measure: measure.name, value: fit.own(found.value, found.unit), sizes: made.reduce(either) };
    return { places: found.proposed, words: tr("Your {measure}, {value}: {sizes}.", parts) };
  };

  // What is wrong with a measure, "" where nothing is.
  const unmeasured = (typed, chosen) => {
    const given = fit.read(typed, chosen);
    if (!given) return tr("“{typed}” is no measure. Write a number, such as 56 or 22 1/4 in.", { typed: typed.trim() });
    const cm = given.unit === "in" ? mul(given.value, exact.INCH) : given.value;
    return compare(div(cm, of(300)), of(1)) >= 0 ? tr("That is longer than any body. Is it in the right unit?") : "";
  };

  return { words, compounds, fits, meant, amount, yarn, body, unmeasured };
})();
