// The collection: hides what does not fit the search, says on each card what fits, and keeps it all in the address. The
// choices of the selects are hidden by the style sheet alone, and work without this.
"use strict";

(() => {
  const form = document.getElementById("filters");
  const count = document.querySelector("[data-count]");
  if (!form || !count) return;
  const near = document.querySelector("[data-near]");
  const cards = [...document.querySelectorAll(".card")];
  const told = JSON.parse(document.getElementById("find--data").textContent);
  const own = told.map(({ words }) => find.words(words));
  const parts = told.map(({ words }) => find.compounds(words));
  const field = (name) => form.elements[name];
  const value = (name) => field(name)?.value ?? "";
  const ROOM = 100; // letters of an address that are taken over into a box
  const NAMES = ["q", "kind", "size", "weight", "have", "in", "all", "body", "measure", "unit"];
  const WITH = { in: "have", all: "have", body: "measure", unit: "measure" }; // what means nothing without the other

  const wrong = (name, words) => {
    const box = field(name);
    const line = document.getElementById(`find--${name}-wrong`);
    if (!box || !line) return;
    box.setAttribute("aria-invalid", words ? "true" : "false");
    line.hidden = !words;
    if (line.textContent !== words) line.textContent = words;
  };

  // What is asked, with what cannot be understood left out and said beside its box.
  const question = () => {
    const text = value("q").trim();
    const measure = value("measure").trim();
    const have = value("have").trim();
    const yarn = have ? find.amount(have, value("in")) : null;
    const amiss = measure ? find.unmeasured(measure, value("unit")) : "";
    wrong("have", yarn?.wrong ?? "");
    wrong("measure", amiss);
    if (yarn?.unit && yarn.unit !== value("in")) field("in").value = yarn.unit;
    return { words: find.words(text), text, yarn: yarn?.wrong ? null : yarn, measure: amiss ? "" : measure };
  };

  // One card: whether it fits, and the sentences that say why.
  const judge = (card, at, { words, yarn, measure }) => {
    const said = [];
    let places = card.sizes.map((_, place) => place).filter((place) => !value("size") || card.sizes[place].key === value("size"));
    if (!find.fits(own[at], words, parts[at])) return { fits: false, said };
    if (measure) {
      const found = find.body(card, value("body"), measure, value("unit"));
      places = places.filter((place) => found.places.includes(place));
      if (!places.length) return { fits: false, said };
      said.push(found.words);
    }
    if (!yarn) return { fits: true, said };
    const found = find.yarn(card, yarn, { weight: value("weight"), all: field("all").checked, places });
    return { fits: found.kind !== "none", untold: found.kind === "untold", said: [...said, found.words] };
  };

  const show = (card, { fits, said }) => {
    card.hidden = !fits;
    card.querySelector("[data-finds]").replaceChildren(
      ...said.map((words) => Object.assign(document.createElement("p"), { textContent: words })),
    );
  };

  const sum = (judged, { words, text }) => {
    const seen = judged.filter((_, at) => cards[at].checkVisibility());
    const untold = seen.filter((one) => one.untold).length;
    const shown = seen.length - untold;
    const meant = shown || !words.length ? "" : find.meant(words, own, told.map((card) => card.words).join(" "));
    near.hidden = !meant;
    near.querySelector("button").textContent = meant ? tr("Search for “{words}”", { words: meant }) : "";
    near.dataset.near = meant;
    const all =
      shown === cards.length
        ? trMany("{n} pattern", "All {n} patterns", shown)
        : trMany("{shown} of {n} pattern fits", "{shown} of {n} patterns fit", cards.length, { shown });
    const lacking = trMany("{n} more does not tell how much yarn", "{n} more do not tell how much yarn", untold);
    const more = untold ? `; ${lacking}` : "";
    const hint = meant ? tr("Nothing is called “{text}”; did you mean “{meant}”?", { text, meant }) : "";
    const verdict = [`${all}${more}`, hint].filter(Boolean).join(". ");
    if (count.textContent !== verdict) count.textContent = verdict;
  };

  const address = () => {
    const url = new URL(location.href);
    for (const name of NAMES) {
      const box = field(name);
      const given = box?.type === "checkbox" ? (box.checked ? "yes" : "") : value(name).trim();
      if (given && (!WITH[name] || value(WITH[name]).trim())) url.searchParams.set(name, given);
      else url.searchParams.delete(name);
    }
    try {
      history.replaceState(history.state, "", url);
    } catch {
      // Some browsers keep the address of a page opened from disk as it is.
    }
  };

  const changed = () => {
    clearTimeout(waiting);
    const now = question();
    const judged = told.map((card, at) => judge(card, at, now));
    judged.forEach((one, at) => show(cards[at], one));
    form.classList.toggle("narrowed", Boolean(now.words.length || now.yarn || now.measure));
    sum(judged, now);
  };

  // Typing is answered when it pauses, so that a screen reader is not told of every letter.
  let waiting = 0;
  const soon = () => {
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      changed();
      address();
    }, 300);
  };
  const now = () => {
    changed();
    address();
  };

  const given = new URLSearchParams(location.search);
  for (const name of NAMES) {
    const box = field(name);
    const wanted = (given.get(name) ?? "").slice(0, ROOM);
    if (!box || !wanted) continue;
    if (box.type === "checkbox") box.checked = wanted === "yes";
    else if (!box.options || [...box.options].some((option) => option.value === wanted)) box.value = wanted;
  }
  for (const part of form.querySelectorAll("[data-asked]")) part.hidden = false;
  for (const name of ["have", "measure"]) {
    const around = value(name) ? field(name).closest("details") : null;
    if (around) around.open = true;
  }
  changed();
  form.addEventListener("input", (event) => (event.target.matches("[type=text], [type=search]") ? soon() : now()));
  form.addEventListener("change", now);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    now();
  });
  form.addEventListener("reset", () => setTimeout(now));
  near.querySelector("button").addEventListener("click", () => {
    field("q").value = near.dataset.near;
    now();
    field("q").focus();
  });
})();
