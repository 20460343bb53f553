// Exact numbers for the scripts of a page: fractions of whole numbers, read as people type them and printed as the
// program prints them (base/printing.py: the same steps, the same ties). Lengths are in cm, masses in g, never rounded.
"use strict";

globalThis.exact = (() => {
  const size = (whole) => (whole < 0n ? -whole : whole);
  const common = (a, b) => (b ? common(b, a % b) : a);
  const floored = (over, under) => over / under - (over % under < 0n ? 1n : 0n); // under is above zero

  // Numbers, as { n, d } in lowest terms with d above zero. `of` takes whole numbers or text as data has it: "145/2".
  const ratio = (n, d) => {
    if (d === 0n) throw new RangeError("divided by nothing");
    const by = common(size(n), size(d)) * (d < 0n ? -1n : 1n);
    return { n: n / by, d: d / by };
  };
  const of = (over, under = 1) => {
    const [n, d] = typeof over === "string" ? over.split("/") : [over, under];
    return ratio(BigInt(n), BigInt(d ?? 1));
  };
  const text = ({ n, d }) => (d === 1n ? `${n}` : `${n}/${d}`);

  const add = (a, b) => ratio(a.n * b.d + b.n * a.d, a.d * b.d);
  const sub = (a, b) => ratio(a.n * b.d - b.n * a.d, a.d * b.d);
  const mul = (a, b) => ratio(a.n * b.n, a.d * b.d);
  const div = (a, b) => ratio(a.n * b.d, a.d * b.n);
  const abs = ({ n, d }) => ({ n: size(n), d });
  const sign = ({ n }) => (n > 0n) - (n < 0n);
  const compare = (a, b) => sign({ n: a.n * b.d - b.n * a.d });
  const floor = ({ n, d }) => of(floored(n, d));
  const ceil = ({ n, d }) => of(-floored(-n, d));
  const whole = ({ n, d }) => of(floored(2n * n + d, 2n * d)); // to the nearest; a tie goes up

  // What stands before decimals, as the language writes it. Asked when the first number is read or printed: the first
  // question of this kind takes a browser as long as all scripts of a page together.
  let known = "";
  const point = () => (known ||= (0.5).toLocaleString(language).charAt(1));
  const grouped = () => (point() === "," ? /\.\d{3}$/ : /,\d{3}$/);

  // As people type: "5", "5.5", "5,5", ".5", "5 1/2", "5-1/2", "5½", "−5"; null where it is no number. "1,000" might be one
  // or a thousand, so it is none, as is "1.000" where a comma stands before decimals. Twenty figures are more than anybody measures.
  const TYPED = /^([-−]?) *(?:(\d*)[.,](\d+)|(?:(\d+)[ -]+)?(\d+) ?\/ ?(\d+)|(\d+))$/;
  const parse = (typed) => {
    const plain = typed.replace(/[¼-¾⅐-⅞]/g, (glyph) => ` ${glyph.normalize("NFKD")} `).replace("⁄", "/");
    const found = plain.length <= 20 && !grouped().test(plain) ? TYPED.exec(plain.trim().replace(/\s+/g, " ")) : null;
    if (!found) return null;
    const [, minus, before, after, beside, over, under, alone] = found;
    if (under !== undefined && !Number(under)) return null;
    let value = of(alone ?? 0);
    if (after) value = of(BigInt(`${before}${after}`), 10n ** BigInt(after.length));
    else if (over) value = add(of(beside ?? 0), of(BigInt(over), BigInt(under)));
    return minus ? { n: -value.n, d: value.d } : value;
  };

  // The size of a value in halves, quarters, hundredths; a tie goes away from zero.
  const parts = ({ n, d }, per) => (2n * size(n) * per + d) / (2n * d);
  const signed = ({ n }, words) => (n < 0n ? `−${words}` : words);

  const decimal = (value, places = 2) => {
    if (value.d === 1n) return signed(value, `${size(value.n)}`);
    const scaled = parts(value, 10n ** BigInt(places));
    const digits = `${scaled}`.padStart(places + 1, "0");
    const part = places ? digits.slice(-places).replace(/0+$/, "") : "";
    const whole = places ? digits.slice(0, -places) : digits;
    const words = part ? whole + point() + part : whole;
    return scaled ? signed(value, words) : words;
  };

  const toParts = (value, per) => ratio((value.n < 0n ? -1n : 1n) * parts(value, per), per);
  // Inches to the nearest quarter; what would vanish is given in eighths, then in hundredths.
  const toQuarters = (value) => toParts(value, [4n, 8n].find((per) => parts(value, per)) ?? 100n);
  const EIGHTHS = { 1: "⅛", 2: "¼", 4: "½", 6: "¾" };
  const vulgar = (value) => {
    const { n, d } = abs(value);
    const glyph = 8n % d ? undefined : EIGHTHS[((n % d) * 8n) / d];
    if (n % d && !glyph) return decimal(value);
    return signed(value, n % d ? `${n / d || ""}${glyph}` : `${n / d}`);
  };
  const quarters = (value) => vulgar(toQuarters(value));

  const INCH = of(254, 100);
  const METRE = of(100);
  const YARD = mul(of(36), INCH);
  const OUNCE = of(28349523125n, 1000000000n);
  const below = (values, most) => values.every((value) => compare(abs(value), of(most)) < 0);
  const inTenths = (values) => values.every(({ d }) => 10n % d === 0n);

  // All sizes together: to a tenth where each is exact so or all are small, else to the half, as a tape is read.
  const toHalves = (values) => {
    if (inTenths(values) || below(values, 2)) return values.map((value) => toParts(value, 10n));
    return values.map(({ n, d }) => of(floored(4n * n + d, 2n * d), 2));
  };
  const inUnit = (values, factor, places) => values.map((value) => decimal(div(value, factor), places));
  const upTo = (value, step, places) => decimal(div(ceil(div(value, step)), of(10n ** places)), Number(places));

  // What is printed for the values of all sizes: [{ unit, values }], one text a size, metric first.
  const both = (metric, first, imperial, second) => [
    { unit: metric, values: first },
    { unit: imperial, values: second },
  ];
  const tape = (values) => {
    const inches = values.map((value) => quarters(div(value, INCH)));
    return both("cm", toHalves(values).map((value) => decimal(value, 1)), "in", inches);
  };
  const long = (values) => {
    const places = values.some((value) => compare(abs(value), of(2000)) < 0) ? 1 : 0;
    return both("m", inUnit(values, METRE, places), "yd", inUnit(values, YARD, places));
  };
  const length = (values) => (below(values, 300) ? tape(values) : long(values));
  // Exact as a gauge is stated over one of the lengths, else as it can be counted: "≈ 22¼".
  const overBoth = (value) => {
    const [metric, imperial] = [mul(value, of(10)), mul(value, mul(of(4), INCH))];
    const about = (count) => `≈ ${quarters(count)}`;
    const stated = !(4n % metric.d) || inTenths([metric]);
    const tenths = !stated && inTenths([imperial]);
    return [
      stated ? decimal(metric) : about(metric),
      4n % imperial.d ? (tenths ? decimal(imperial) : about(imperial)) : quarters(imperial),
    ];
  };
  const gauge = (values, word) => {
    const counts = values.map(overBoth);
    const over = (place) => counts.map((one) => one[place]);
    return both(`${word} in 10 cm`, over(0), `${word} in 4 in`, over(1));
  };
  // Yarn to buy, by its length or its mass, rounded up: never less in print than is needed.
  const bought = (values, kind) => {
    const up = (factor, places) => values.map((value) => upTo(value, div(factor, of(10n ** places)), places));
    return kind === "mass"
      ? both("g", up(of(1), 0n), "oz", up(OUNCE, 1n))
      : both("m", up(METRE, 0n), "yd", up(YARD, 0n));
  };

  const printed = { length, gauge, bought };
  // Units as they are written in the language, by their names in English.
  const NAMES = { cm: tr("cm"), in: tr("in"), m: tr("m"), yd: tr("yd"), g: tr("g"), oz: tr("oz") };
  const unit = (name) => NAMES[name];
  return { of, text, parse, add, sub, mul, div, abs, sign, compare, floor, ceil, whole, decimal, quarters, printed, unit, INCH };
})();
