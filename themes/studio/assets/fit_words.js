// What is said of a measure and of the sizes for it: sentences, from what fit.js has reckoned. It touches no page.
"use strict";

globalThis.fitWords = (() => {
  const { sign, abs, compare, sub } = exact;
  const MEANT = "the ease that the pattern means";
  const listed = (words) => words.join(", ").replace(/, ([^,]*)$/, " and $1");
  const far = (value, unit) => fit.length(abs(value), unit);
  // What prints as nothing is nothing.
  const nothing = (value, unit) => /^0\D/.test(far(value, unit));

  const worn = ({ measure }) => measure.finished.length > 0;
  const yours = (found) =>
    `${worn(found) ? "Your" : "A"} ${found.measure.name} ${worn(found) ? "" : "of "}${fit.own(found.value, found.unit)}`;

  const from = ({ off }, unit) => {
    if (nothing(off, unit)) return "as the pattern means";
    return `${far(off, unit)} ${sign(off) > 0 ? "more" : "less"} room than the pattern means`;
  };
  const item = (name, one, { unit }) => {
    if (one.ease) {
      return `${name} comes out at ${fit.length(one.finished, unit)}: ${fit.ease(one.ease, unit)}, ${from(one, unit)}.`;
    }
    const apart = `: ${far(one.off, unit)} ${sign(one.off) > 0 ? "more" : "less"}`;
    return `${name} is made for ${fit.length(one.body, unit)}${sign(one.off) ? apart : ""}.`;
  };

  const outside = (found, made) => {
    const { those, value, unit, proposed, other } = found;
    const past = sub(value, those[0].body);
    const end = sign(past) > 0 ? "more than the largest" : "less than the smallest";
    const lead = `${yours(found)} is outside the table: ${far(past, unit)} ${end}, ${listed(those.map(made))}.`;
    if (proposed.length) return lead;
    return `${lead} No size is proposed.${other ? ` ${fit.own(value, other)} would be within it: is the unit right?` : ""}`;
  };
  const lead = (names, found) => {
    const { kind, those, unit } = found;
    const made = ({ size, body }) => `${names[size]} (made for ${fit.length(body, unit)})`;
    if (kind === "outside") return outside(found, made);
    if (kind === "between") return `${yours(found)} lies between ${listed(those.map(made))}.`;
    const several = those.length > 1;
    const which = listed(those.map(({ size }) => names[size]));
    return `${yours(found)} is what ${several ? "sizes" : "size"} ${which} ${several ? "are" : "is"} made for.`;
  };

  const verdict = (names, found) => {
    const { kind, those, proposed } = found;
    if (kind === "made" || !proposed.length) return "";
    if (kind === "outside") return `It still has ${MEANT}.`;
    const to = worn(found) ? ` to ${MEANT}` : "";
    if (proposed.length > 1) return `${listed(proposed.map((size) => names[size]))} are equally near${to}.`;
    const nearest = names[proposed[0]];
    const within = found.meant && those.filter(({ off }) => sign(off) === 0).length > 1;
    return within ? `Both have ${MEANT}; ${nearest} is nearer to the middle of it.` : `${nearest} is nearer${to}.`;
  };

  // "2.8 cm to 8.4 cm of negative ease", the nearer to nothing first.
  const span = (least, most, unit) => {
    if (compare(least, most) === 0) return fit.ease(least, unit);
    if (sign(least) < 0 && sign(most) > 0) return `${fit.ease(least, unit)} to ${fit.ease(most, unit)}`;
    const [near, end] = sign(most) > 0 ? [least, most] : [most, least];
    return `${sign(near) ? far(near, unit) : "no ease"} to ${fit.ease(end, unit)}`;
  };
  const meaning = (found) => {
    const { meant, measure, value, unit, those, proposed } = found;
    if (!worn(found) || !proposed.length) return "";
    if (meant) {
      return `The pattern means ${span(meant.least, meant.most, unit)} for a ${measure.name} of ${fit.own(value, unit)}.`;
    }
    const own = those.map(({ finished, body }) => sub(finished, body)).sort(compare);
    const whose = those.length > 1 ? "these sizes, each on the body it" : "this size on the body it";
    return `The pattern means ${span(own[0], own.at(-1), unit)}: that of ${whose} is made for.`;
  };

  const answer = (names, found, typed) => {
    if (found.kind === "unread") {
      const like = "“56”, “56 cm”, “22,5”, “22 1/4 in”";
      return { lead: `“${typed}” is no measure. Type a number, and cm or in behind it if you like: ${like}.`, items: [] };
    }
    if (found.kind === "absurd") {
      return { lead: `${fit.own(found.value, found.unit)} is more than a tape has. Is the unit right?`, items: [] };
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
  const together = (names, answers) => {
    const { proposed, sizes, worst } = fit.together(answers);
    if (!proposed.length) {
      return { lead: "Not all your measures lie within the table: no size is proposed for them together.", items: [] };
    }
    const { unit } = answers[0];
    const most = unit === "in" ? exact.div(worst, exact.INCH) : worst;
    const what = answers.some(worn) ? MEANT : "your measures";
    const which = listed(proposed.map((size) => names[size]));
    const nearest = `All together, ${which} ${proposed.length > 1 ? "come" : "comes"} nearest to ${what}`;
    const how = nothing(most, unit) ? "" : `, nowhere further than ${far(most, unit)} from it`;
    const items = sizes.map((size) => `${names[size]}: ${answers.map((one) => beside(one, size)).join("; ")}.`);
    return { lead: `${nearest}${how}.`, items };
  };

  return { answer, together };
})();
