// What another gauge makes of a pattern, exact: the sums of grade/at_gauge.py and work/at_row_gauge.py once more. It touches
// no page: gauge.js shows what is said here. Gauges are counts to the cm, lengths are cm, one value a size.
"use strict";

globalThis.swatch = (() => {
  const { of, parse, add, sub, mul, div, abs, sign, compare, floor, ceil, whole, decimal, INCH } = exact;
  const NONE = of(0);
  const least = (one, other) => (compare(one, other) <= 0 ? one : other);
  const most = (one, other) => (compare(one, other) >= 0 ? one : other);
  const numbers = (text) => text.split(" ").map((one) => of(one));
  const spread = (values, many) => (values.length === 1 ? Array(many).fill(values[0]) : values);

  // Size by size; a value for all sizes meets each of the other's.
  const paired = (what) => (left, right) => {
    const many = Math.max(left.length, right.length);
    const others = spread(right, many);
    return spread(left, many).map((one, size) => what(one, others[size]));
  };
  const above = (what) =>
    paired((one, other) => {
      if (sign(other) <= 0) throw new RangeError("a divisor or step that is not above zero");
      return what(one, other);
    });
  const steps = (values) => (values.length > 1 ? values.slice(1).map((one, size) => sub(one, values[size])) : [NONE]);
  const DONE = {
    "+": paired(add),
    "-": paired(sub),
    "*": paired(mul),
    "/": paired(div),
    nearest: above((one, step) => mul(whole(div(one, step)), step)),
    "up to": above((one, step) => mul(ceil(div(one, step)), step)),
    "down to": above((one, step) => mul(floor(div(one, step)), step)),
    min: (...all) => all.reduce(paired(least)),
    max: (...all) => all.reduce(paired(most)),
    abs: (values) => values.map(abs),
    half: (values) => values.map((one) => div(one, of(2))),
    floor: (values) => values.map(floor),
    ceil: (values) => values.map(ceil),
    smallest: (values) => [values.reduce(least)],
    largest: (values) => [values.reduce(most)],
    finished: above(div),
    ease_of: paired(sub),
    to_next: (values) => (values.length > 1 ? [...steps(values), NONE] : [NONE]),
    smallest_step: (values) => [steps(values).reduce(least)],
    largest_step: (values) => [steps(values).reduce(most)],
    repeats: above((one, other) => floor(div(one, other))),
    left_over: above((one, other) => sub(one, mul(floor(div(one, other)), other))),
  };
  const worked = (one, gauges) => {
    if (typeof one === "string") return numbers(one);
    return typeof one === "number" ? gauges[one] : DONE[one[0]](...one.slice(1).map((part) => worked(part, gauges)));
  };

  // The gauges of a pattern, those in `told` (by their places) as the reader has them.
  const gauges = (data, told) => data.own.map((own, place) => (told[place] ? [told[place]] : numbers(own)));

  // What a finished measurement comes out at; null where it comes to nothing. See `at_gauge` for what is read back.
  const measured = (data, measure, told) => {
    const many = data.sizes.length || 1;
    const at = (one, here) => spread(worked(one, gauges(data, here)), many);
    try {
      const own = at(measure.own, told);
      const back = measure.back && at(measure.back, told);
      const before = back && at(measure.back, []);
      return back?.some((one, size) => compare(one, before[size])) ? back : own;
    } catch (error) {
      if (error instanceof RangeError) return null;
      throw error;
    }
  };
  const printed = (data, measure) => spread(numbers(measure.printed), data.sizes.length || 1);

  // How far up a row is, by the marks below it: rows behind the last of them are counted.
  const up = (marks, row, gauge) => {
    const [below, length] = marks.findLast(([mark]) => mark <= row);
    return add(length, div(of(row - below), gauge));
  };
  const marked = (stretches, gauge) => {
    const marks = [[0, NONE]];
    for (const [first, last, since, length] of stretches) {
      const start = up(marks, first, gauge);
      marks.push([first, start], [last, most(start, add(up(marks, since, gauge), of(length)))]);
    }
    return marks;
  };
  const tall = (rows, stretches, gauge) => up(marked(stretches, gauge), rows, gauge);

  // What stands below each heading of a part in one size: rows that are counted (`length` is theirs), and what is worked to
  // a length, with all rows from where that is measured; `reached` is how far they come, where that is further.
  const headed = (part, size, gauge) => {
    const stretches = part.worked[size];
    const marks = marked(stretches, gauge);
    const between = (first, last) => sub(up(marks, last, gauge), up(marks, first, gauge));
    const within = (row) => stretches.some(([, last, since]) => row >= since && row < last);
    return part.heads[size].map(([label, first], place, heads) => {
      const last = heads[place + 1]?.[1] ?? part.rows[size];
      const counted = Array.from({ length: last - first }, (_, row) => first + row).filter((row) => !within(row)).length;
      const to = stretches
        .filter((one) => one[0] >= first && one[0] < last)
        .map(([, end, since, length]) => {
          const reached = between(since, end);
          return { length: of(length), reached, rows: end - since, mine: whole(mul(reached, gauge)) };
        });
      return { label, counted, length: div(of(counted), gauge), to };
    });
  };

  // A stitch takes yarn in proportion to its width and height, to the mean of both; rows not told are taken to change as
  // stitches do. In plain knitting both go with the length of the loop (D. L. Munden, J. Textile Inst. 50, 1959; from memory);
  // the mean where they differ is common practice, no source. Rows more or fewer are taken to be as wide as all others. Null where it is not known which fabric tells.
  const share = (data, yarn, told) => {
    const { sts, rows } = data.fabrics[yarn.fabric] ?? {};
    if (sts === undefined) return null;
    const wide = told[sts] ? div(of(data.own[sts].split(" ")[0]), told[sts]) : of(1);
    const high = rows !== null && told[rows] ? div(of(data.own[rows].split(" ")[0]), told[rows]) : wide;
    return div(add(wide, high), of(2));
  };
  // How many rows there are in all, for those that are known: what is worked to a length takes more or fewer of them.
  const total = (data, told, size) => data.parts
    .filter((part) => part.rows[size] !== null)
    .map((part) => [part, gauges(data, told)[part.gauge][0]])
    .reduce((sum, [part, gauge]) => add(sum, mul(tall(part.rows[size], part.worked[size], gauge), gauge)), NONE);
  const yarn = (data, one, told) => {
    const by = share(data, one, told);
    if (!by) return null;
    const before = spread(numbers(one.amount), data.sizes.length || 1);
    const after = before.map((amount, size) => {
      const own = total(data, [], size);
      return mul(mul(amount, by), sign(own) ? div(total(data, told, size), own) : of(1));
    });
    const balls = (amounts) => one.ball && amounts.map((amount) => Number(ceil(div(amount, of(one.ball))).n));
    return { before, after, balls: balls(before), mine: balls(after) };
  };

  // The sizes that come nearest to a length, smaller ones first; several where they are as near.
  const nearest = (values, wanted) => {
    const off = values.map((value) => abs(sub(value, wanted)));
    const best = off.reduce(least);
    return off.flatMap((one, size) => (compare(one, best) ? [] : [size]));
  };

  // A swatch as it is typed: stitches or rows to the cm, or at which field what is wrong.
  const wrong = (field, words) => ({ field, words });
  // What is counted, by its name in the data.
  const COUNTED = {
    sts: (n) => trMany("st", "sts", n),
    rows: (n) => trMany("row", "rows", n),
    rnds: (n) => trMany("rnd", "rnds", n),
  };
  const counted = (typed, length, unit, own, word) => {
    const many = parse(typed);
    const what = COUNTED[word](2);
    if (!many || sign(many) <= 0) return wrong("count", tr("Write how many {what} you counted: a number such as 22 or 22½.", { what }));
    if (compare(many, of(1000)) > 0) return wrong("count", tr("That is more than anybody counts: 1000 at most."));
    const over = parse(length);
    if (!over || sign(over) <= 0) return wrong("length", tr("Write over how many {unit} you counted: a number above 0.", { unit: exact.unit(unit) }));
    const cm = unit === "in" ? mul(over, INCH) : over;
    if (compare(cm, of(1)) < 0 || compare(cm, of(300)) > 0) {
      const most = unit === "in" ? tr("Between ½ and 118 in can be measured.") : tr("Between 1 and 300 cm can be measured.");
      return wrong("length", most);
    }
    const gauge = div(many, cm);
    const times = div(gauge, own);
    if (compare(times, of(4)) > 0 || compare(times, of(1, 4)) < 0) {
      const [mine, asked] = [gauge, own].map((one) => decimal(mul(one, of(10))));
      const far = tr("That is {mine} {what} in 10 cm, and the pattern has {asked}. Count and measure once more.", { mine, what, asked });
      return wrong("count", far);
    }
    return { gauge };
  };

  // Lengths that are typed into fields: each stays the length it is when the unit is another one; it is shown rounded then,
  // and reckoned with as it was typed. A field is whatever has a `value`; what is no number stays as it is.
  const turned = (typed, from, to) => {
    const value = from === to ? null : parse(typed);
    if (!value) return typed;
    return decimal(to === "in" ? div(value, INCH) : mul(value, INCH));
  };
  const lengths = (fields, first) => {
    const meant = new Map();
    let now = first;
    const typed = (at) => (meant.get(at)?.shown === at.value ? meant.get(at) : { text: at.value, unit: now });
    const put = (at, { text, unit }) => {
      at.value = turned(text, unit, now);
      meant.set(at, { text, unit, shown: at.value });
    };
    const turn = (unit) => {
      const all = fields.map((at) => [at, typed(at)]);
      now = unit;
      for (const [at, own] of all) put(at, own);
    };
    return { typed, put, turn };
  };

  return { DONE, COUNTED, lengths, numbers, spread, gauges, measured, printed, tall, headed, yarn, nearest, counted };
})();
