// What the scripts of a page share: what is kept on this device, what is said to the reader, and the chosen size.
"use strict";

globalThis.reader = (() => {
  const said = document.getElementById("reader-says");
  let refused = false;

  // Read aloud as well as shown; the same words said again are heard again.
  const say = (words) => {
    if (!said) return;
    said.textContent = "";
    requestAnimationFrame(() => {
      said.textContent = words;
    });
  };

  // Storage may be full or refused (private windows, pages opened from disk): what is chosen lasts as long as the page.
  const cannotKeep = () => {
    if (refused) return;
    refused = true;
    say(tr("This browser keeps nothing for this page: what you choose or tick off is lost when you close it."));
  };

  const placeOf = (name) => `sizewright ${name}`;

  // A value of JSON kept under a name. One that cannot be read, or is not `sound` where that is asked, is put aside under
  // another name, never thrown away.
  const kept = (name) => {
    const place = placeOf(name);
    const aside = (text) => {
      if (write(text, `${place}, not readable`)) write(null);
      say(tr("What was kept on this device for this page could not be read. It was put aside, and you begin anew."));
      return null;
    };
    const read = (sound = () => true) => {
      let text = null;
      try {
        text = localStorage.getItem(place);
      } catch {
        return null;
      }
      if (text === null) return null;
      try {
        const value = JSON.parse(text);
        return sound(value) ? value : aside(text);
      } catch {
        return aside(text);
      }
    };
    const write = (value, where = place) => {
      try {
        if (value === null) localStorage.removeItem(where);
        else localStorage.setItem(where, JSON.stringify(value));
        return true;
      } catch {
        if (value !== null) cannotKeep();
        return false;
      }
    };
    return { read, write: (value) => write(value) };
  };

  // The names that begin so and have something kept under them.
  const names = (beginning) => {
    try {
      const places = Object.keys(localStorage).filter((place) => place.startsWith(placeOf(beginning)));
      return places.map((place) => place.slice(placeOf("").length));
    } catch {
      return [];
    }
  };

  // Tells the style sheets by classes of the whole page which answers are chosen: "on--size--z0", "off--size--all". They ask
  // the fields themselves where no script runs; but to ask is up to half the styling of a long page, being done anew for
  // each part of it that is laid out.
  const answers = [...document.querySelectorAll('input:is([type="radio"], [type="checkbox"])[id], option[id]')];
  const root = document.documentElement;
  const chosen = () => {
    const others = [...root.classList].filter((name) => !/^(on|off)-/.test(name));
    const told = answers.map(({ id, checked, selected }) => `${(selected ?? checked) ? "on" : "off"}--${id}`);
    root.className = [...others, "on-off", ...told].join(" ");
  };
  document.addEventListener("change", chosen, { capture: true });
  addEventListener("pageshow", chosen);
  chosen();

  // What nobody waits for is set up in its turn, each in a task of its own, so that a tap in between is heard.
  const inTurn = (work) => setTimeout(work);

  // The word of the chosen size in an address ("adult-m"), "" for all sizes; "reader:size" is heard when it changes.
  const size = () => document.querySelector('.choose [name="size"]:checked')?.value ?? "";
  const sized = () => document.dispatchEvent(new CustomEvent("reader:size", { detail: size() }));

  // A form measures in the unit that the page shows, until the reader chooses one in the form or types a number, which is
  // not to mean another length: a form that `turns` what is typed into the other unit follows even so. Gives what makes an
  // emptied form follow the page again; `told` is called when it does.
  const measuring = (form, name, { told = () => {}, turns = false } = {}) => {
    const units = form.elements[name];
    const usual = [...units].find(({ defaultChecked }) => defaultChecked).value;
    let chosen = false;
    const typed = () => [...form.querySelectorAll("input:not([type=radio])")].some(({ value }) => value.trim());
    const follow = () => {
      if (chosen || (typed() && !turns)) return;
      const shown = document.querySelector('.display [name="units"]:checked')?.value;
      units.value = { metric: "cm", imperial: "in" }[shown] ?? usual;
      told();
    };
    form.addEventListener("change", ({ target }) => {
      chosen ||= target.name === name;
    });
    document.querySelector(".display")?.addEventListener("change", follow);
    follow();
    return () => {
      chosen = false;
      follow();
    };
  };

  // The address of this page without its language ("/site/de/patterns/hat.html"): what is kept for it is kept for all.
  const top = new URL("..", document.currentScript.src).pathname;
  const within = location.pathname.startsWith(top) ? location.pathname.slice(top.length) : location.pathname;
  const folder = `${document.documentElement.lang}/`;
  const page = within.startsWith(folder) ? within.slice(folder.length) : within;
  const path = within === location.pathname ? page : top + page;

  // The other languages are read at the same place, with the same sizes chosen; `reader.at` may tell a better place.
  for (const link of document.querySelectorAll(".languages a")) {
    link.addEventListener("click", () => {
      link.search = location.search;
      link.hash = globalThis.reader.at() || location.hash;
    });
  }

  const places = { top, page, path, folder: page === within ? "" : folder };
  return { kept, names, placeOf, say, chosen, inTurn, size, sized, measuring, at: () => "", ...places };
})();
