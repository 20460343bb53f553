// The rows of one size: read from the data of the page, found by their number, matched when the pattern changes.
"use strict";

reader.course = (() => {
  const FORM = 1;

  // The data of one size alone, its texts numbered anew: { words, legs }. Two are alike if and only if their JSON is. A
  // translated pattern has `base` too, its texts as the source has them: by those rows are known again in every language.
  const cut = (data, key) => {
    const legs = data?.form === FORM ? data.sizes[key] : undefined;
    if (!legs) return null;
    const [words, base] = [[""], [""]];
    const places = new Map([[0, 0]]);
    const place = (old) => {
      if (places.has(old)) return places.get(old);
      words.push(data.words[old]);
      base.push(data.base?.[old]);
      places.set(old, places.size);
      return places.size - 1;
    };
    const segment = ([label, words, times, change, rows, pattern]) => [
      place(label), place(words), times, change, rows, place(pattern),
    ];
    const own = legs.map(([heading, block, label, words, count, before, again, runs]) => [
      place(heading), block, place(label), place(words), place(count), before, again,
      runs.map(([times, segments]) => [times, segments.map(segment)]),
    ]);
    return data.base ? { words, base, legs: own } : { words, legs: own };
  };

  const sum = (all, of) => all.reduce((total, one) => total + of(one), 0);

  // One leg with its texts. A leg without rows is one tick; a tick of a run is one working of a row.
  const withTexts = (words, [heading, block, label, told, count, before, again, runs]) => {
    const texts = { part: words[heading], label: words[label], words: words[told], count: words[count] };
    const leg = { ...texts, block, before, again };
    leg.runs = runs.map(([times, segments]) => {
      const rows = segments.map(([name, row, alike, change, weight, pattern]) => (
        { label: words[name], words: words[row], alike, change, weight, pattern: words[pattern] }
      ));
      return { times, rows, ticks: sum(rows, (row) => row.alike), worked: sum(rows, (row) => row.alike * row.weight) };
    });
    leg.ticks = sum(leg.runs, (run) => run.times * run.ticks) || 1;
    leg.rows = sum(leg.runs, (run) => run.times * run.worked);
    return leg;
  };
  const opened = ({ words, base = words }, told) => {
    const leg = withTexts(words, told);
    leg.base = base === words ? leg : withTexts(base, told);
    const { part, label, words: own, count, again, runs } = leg.base;
    leg.rounds = /\b(rnd|round)/i.test(`${runs[0]?.rows[0].label} ${own}`);
    leg.key = JSON.stringify([part, again, label, own, count, runs]);
    leg.name = `${part}|${again}|${label || own.replace(/[\d¼½¾⅛]+/g, "#")}`;
    return leg;
  };

  const open = (kept) => {
    const course = { legs: kept.legs.map((leg) => opened(kept, leg)), starts: [], rowStarts: [] };
    course.ticks = course.rows = 0;
    for (const leg of course.legs) {
      course.starts.push(course.ticks);
      course.rowStarts.push(course.rows);
      course.ticks += leg.ticks;
      course.rows += leg.rows;
    }
    course.rounds = course.legs.every((leg) => leg.rounds || !leg.rows);
    return course;
  };

  // Which leg a tick belongs to, from 0; behind the last one, the number of legs.
  const legAt = (course, at) => {
    const behind = course.starts.findIndex((start) => start > at);
    return at >= course.ticks ? course.legs.length : (behind < 0 ? course.legs.length : behind) - 1;
  };

  // A run that a tick of a leg falls into: how often it is through, the row, and rows and stitches until then.
  const inRun = (run, tick) => {
    const through = Math.floor(tick / run.ticks);
    const change = sum(run.rows, (row) => row.alike * row.change);
    const found = { through, rows: through * run.worked, change: through * change, at: tick % run.ticks };
    let left = found.at;
    for (const row of run.rows) {
      const done = Math.min(left, row.alike);
      found.rows += done * row.weight;
      found.change += done * row.change;
      if (left < row.alike) return { ...found, row };
      left -= done;
    }
    return found;
  };

  // What is worked at a tick: its leg, run and row, the stitches before and behind it, the rows worked until then.
  const find = (course, at) => {
    const number = legAt(course, at);
    const leg = course.legs[number];
    if (!leg) return { number, rows: course.rows };
    const tick = at - course.starts[number];
    let left = tick;
    let rows = course.rowStarts[number];
    let count = leg.before;
    for (const run of leg.runs) {
      const inside = Math.min(left, run.times * run.ticks);
      const found = inRun(run, inside);
      rows += found.rows;
      if (count !== null) count += found.change;
      if (left < run.times * run.ticks) {
        const after = count === null ? null : count + found.row.change;
        return { number, leg, tick, run, repeat: found.through, at: found.at, row: found.row, rows, after };
      }
      left -= inside;
    }
    return { number, leg, tick, rows };
  };

  // The tick with which a row of the whole begins, from 0.
  const tickOfRow = (course, row) => {
    const number = course.legs.findIndex((leg, place) => leg.rows && course.rowStarts[place] + leg.rows > row);
    if (number < 0) return course.ticks;
    let at = course.starts[number];
    const end = at + course.legs[number].ticks - 1;
    while (at < end && find(course, at + 1).rows <= row) at += 1;
    return at;
  };

  // The longest list of legs that both have in the same order, as pairs of places.
  const common = (old, fresh) => {
    const lengths = Array.from({ length: old.length + 1 }, () => new Uint16Array(fresh.length + 1));
    for (let a = old.length - 1; a >= 0; a -= 1) {
      for (let b = fresh.length - 1; b >= 0; b -= 1) {
        const same = old[a].key === fresh[b].key;
        lengths[a][b] = same ? lengths[a + 1][b + 1] + 1 : Math.max(lengths[a + 1][b], lengths[a][b + 1]);
      }
    }
    const pairs = new Map();
    for (let a = 0, b = 0; a < old.length && b < fresh.length;) {
      if (old[a].key === fresh[b].key) pairs.set(a++, b++);
      else if (lengths[a + 1][b] >= lengths[a][b + 1]) a += 1;
      else b += 1;
    }
    return pairs;
  };

  // Which leg of a republished pattern is which one of before: the same, moved, or of the same name with other words.
  const match = (old, fresh) => {
    const pairs = common(old.legs, fresh.legs);
    const taken = new Set(pairs.values());
    const moved = [];
    const changed = [];
    const pair = (of, list) => {
      for (const [a, leg] of old.legs.entries()) {
        if (pairs.has(a)) continue;
        const b = fresh.legs.findIndex((other, place) => !taken.has(place) && of(leg) === of(other));
        if (b < 0) continue;
        pairs.set(a, b);
        taken.add(b);
        list.push([a, b]);
      }
    };
    pair((leg) => leg.key, moved);
    pair((leg) => leg.name, changed);
    const gone = [...old.legs.keys()].filter((a) => !pairs.has(a));
    const added = [...fresh.legs.keys()].filter((b) => !taken.has(b));
    const begin = (b) => (b < fresh.legs.length ? fresh.starts[b] : fresh.ticks);

    // Where somebody is who was at a tick of the old course: in the same leg, else where the next one begins.
    const placed = (at) => {
      const number = legAt(old, at);
      if (pairs.has(number)) {
        const b = pairs.get(number);
        return fresh.starts[b] + Math.min(at - old.starts[number], fresh.legs[b].ticks - 1);
      }
      for (let a = number + 1; a < old.legs.length; a += 1) if (pairs.has(a)) return begin(pairs.get(a));
      for (let a = number - 1; a >= 0; a -= 1) if (pairs.has(a)) return begin(pairs.get(a) + 1);
      return 0;
    };
    return { moved, changed, gone, added, placed };
  };

  return { cut, open, find, tickOfRow, match };
})();
