// What is said of a measure and of the sizes for it: sentences, from what fit.js has reckoned. It touches no page.
"use strict";

globalThis.fitWords = (() => {
  const { sign, abs, compare, sub } = exact;
  const far = (value, unit) => fit.length(abs(value), unit);
  // What prints as nothing is nothing.
  const nothing = (value, unit) => /^0\D/.test(far(value, unit));

  const worn = ({ measure }) => measure.finished.length > 0;
  const yours = (found) => {
    const parts = { measure: found.measure.name, value: fit.own(found.value, found.unit) };
    return worn(found) ? tr("Your {measure} {value}", parts) : tr("A {measure} of {value}", parts);
  };

  const from = ({ off }, unit) => {
    const parts = { far: far(off, unit) };
    if (nothing(off, unit)) return tr("as the pattern means");
    if (sign(off) > 0) return tr("{far} more room than the pattern means", parts);
    return tr("{far} less room than the pattern means", parts);
  };
  const item = (size, one, { unit }) => {
    if (one.ease) {
      const parts = { finished: fit.length(one.finished, unit), ease: fit.ease(one.ease, unit), off: from(one, unit) };
      return tr("{size} comes out at {finished}: {ease}, {off}.", { size, ...parts });
    }
    const parts = { size, body: fit.length(one.body, unit), far: far(one.off, unit) };
    if (!sign(one.off)) return tr("{size} is made for {body}.", parts);
    if (sign(one.off) > 0) return tr("{size} is made for {body}: {far} more.", parts);
    return tr("{size} is made for {body}: {far} less.", parts);
  };

  const outside = (found, made) => {
    const { those, value, unit, proposed, other } = found;
    const past = sub(value, those[0].body);
    const parts = { yours: yours(found), far: far(past, unit), sizes: trList(those.map(made)) };
    const lead =
      sign(past) > 0
        ? tr("{yours} is outside the table: {far} more than the largest, {sizes}.", parts)
        : tr("{yours} is outside the table: {far} less than the smallest, {sizes}.", parts);
    if (proposed.length) return lead;
    const within = other && tr("{value} would be within it: is the unit right?", { value: fit.own(value, other) });
    return [lead, tr("No size is proposed."), within].filter(Boolean).join(" ");
  };
  const lead = (names, found) => {
    const { kind, those, unit } = found;
    const made = ({ size, body }) => tr("{size} (made for {body})", { size: names[size], body: fit.length(body, unit) });
    if (kind === "outside") return outside(found, made);
    if (kind === "between") return tr("{yours} lies between {sizes}.", { yours: yours(found), sizes: trList(those.map(made)) });
    const parts = { yours: yours(found), sizes: trList(those.map(({ size }) => names[size])) };
    return trMany(
      "{yours} is what size {sizes} is made for.",
      "{yours} is what sizes {sizes} are made for.",
      those.length,
      parts,
    );
  };

  const verdict = (names, found) => {
    const { kind, those, proposed } = found;
    if (kind === "made" || !proposed.length) return "";
    if (kind === "outside") return tr("It still has the ease that the pattern means.");
    const sizes = trList(proposed.map((size) => names[size]));
    if (proposed.length > 1) {
      if (!worn(found)) return tr("{sizes} are equally near.", { sizes });
      return tr("{sizes} are equally near to the ease that the pattern means.", { sizes });
    }
    if (found.meant && those.filter(({ off }) => sign(off) === 0).length > 1) {
      return tr("Both have the ease that the pattern means; {size} is nearer to the middle of it.", { size: sizes });
    }
    if (!worn(found)) return tr("{size} is nearer.", { size: sizes });
    return tr("{size} is nearer to the ease that the pattern means.", { size: sizes });
  };

  // "2.8 cm to 8.4 cm of negative ease", the nearer to nothing first.
  const span = (least, most, unit) => {
    if (compare(least, most) === 0) return fit.ease(least, unit);
    const crossed = { least: fit.ease(least, unit), most: fit.ease(most, unit) };
    if (sign(least) < 0 && sign(most) > 0) return tr("{least} to {most}", crossed);
    const [near, end] = sign(most) > 0 ? [least, most] : [most, least];
    if (!sign(near)) return tr("no ease to {ease}", { ease: fit.ease(end, unit) });
    const parts = { near: far(near, unit), far: far(end, unit) };
    if (sign(end) < 0) return tr("{near} to {far} of negative ease", parts);
    return tr("{near} to {far} of positive ease", parts);
  };
  const meaning = (found) => {
    const { meant, measure, value, unit, those, proposed } = found;
    if (!worn(found) || !proposed.length) return "";
    if (meant) {
      const parts = { ease: span(meant.least, meant.most, unit), measure: measure.name, value: fit.own(value, unit) };
      return tr("The pattern means {ease} for a {measure} of {value}.", parts);
    }
    const own = those.map(({ finished, body }) => sub(finished, body)).sort(compare);
    return trMany(
      "The pattern means {ease}: that of this size on the body it is made for.",
      "The pattern means {ease}: that of these sizes, each on the body it is made for.",
      those.length,
      { ease: span(own[0], own.at(-1), unit) },
    );
  };

  const answer = (names, found, typed) => {
    if (found.kind === "unread") {
      const wrong = tr(
        "“{typed}” is no measure. Type a number, and cm or in behind it if you like: “56”, “56 cm”, “22,5”, “22 1/4 in”.",
        { typed },
      );
      return { lead: wrong, items: [] };
    }
    if (found.kind === "absurd") {
      const value = fit.own(found.value, found.unit);
      return { lead: tr("{value} is more than a tape has. Is the unit right?", { value }), items: [] };
    }
    const items = found.those.map((one) => item(names[one.size], one, found));
    return { lead: lead(names, found), items, verdict: verdict(names, found), meaning: meaning(found) };
  };

  // Of several measures: the size that is nowhere far from what is meant.
  const beside = (found, size) => {
    const { measure, unit, all } = found;
    const one = all[size];
    if (!one.ease) return `${measure.name} ${fit.length(one.body, unit)}`;
    return `${measure.name} ${fit.ease(one.ease, unit)}, ${from(one, unit)}`;
  };
  const nearest = (count, byEase, parts) =>
    byEase
      ? trMany(
          "All together, {sizes} comes nearest to the ease that the pattern means.",
          "All together, {sizes} come nearest to the ease that the pattern means.",
          count,
          parts,
        )
      : trMany(
          "All together, {sizes} comes nearest to your measures.",
          "All together, {sizes} come nearest to your measures.",
          count,
          parts,
        );
  const nearestBy = (count, byEase, parts) =>
    byEase
      ? trMany(
          "All together, {sizes} comes nearest to the ease that the pattern means, nowhere further than {far} from it.",
          "All together, {sizes} come nearest to the ease that the pattern means, nowhere further than {far} from it.",
          count,
          parts,
        )
      : trMany(
          "All together, {sizes} comes nearest to your measures, nowhere further than {far} from it.",
          "All together, {sizes} come nearest to your measures, nowhere further than {far} from it.",
          count,
          parts,
        );
  const together = (names, answers) => {
    const { proposed, sizes, worst } = fit.together(answers);
    if (!proposed.length) {
      return { lead: tr("Not all your measures lie within the table: no size is proposed for them together."), items: [] };
    }
    const { unit } = answers[0];
    const most = unit === "in" ? exact.div(worst, exact.INCH) : worst;
    const [count, byEase] = [proposed.length, answers.some(worn)];
    const parts = { sizes: trList(proposed.map((size) => names[size])), far: far(most, unit) };
    const all = nothing(most, unit) ? nearest(count, byEase, parts) : nearestBy(count, byEase, parts);
    const items = sizes.map((size) => `${names[size]}: ${answers.map((one) => beside(one, size)).join("; ")}.`);
    return { lead: all, items };
  };

  return { answer, together };
})();
