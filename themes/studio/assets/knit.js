// Knitting along: the rows of a size ticked off one by one, kept on this device, in as many projects as there are.
"use strict";

reader.inTurn(() => {
  const view = reader.knitView;
  if (!view) return;
  const { section, part, make } = view;
  const { projects, course: courses } = reader;
  const data = JSON.parse(part("data").textContent);
  const { page } = reader;
  const open = { id: "", course: null };
  const MOST_UNDO = 100;

  const say = (words) => {
    part("says").textContent = words;
  };

  // Asking first
  const ask = (words, yes, no) => new Promise((answer) => {
    const dialog = part("ask");
    dialog.querySelector("p").textContent = words;
    const [stay, go] = dialog.querySelectorAll("button");
    [stay.textContent, go.textContent] = [no, yes];
    dialog.returnValue = "no";
    dialog.addEventListener("close", () => answer(dialog.returnValue === "yes"), { once: true });
    dialog.showModal();
  });

  // The chosen size
  const radios = () => [...document.querySelectorAll('.choose [name="size"]')];
  const sizeName = (key) => radios().find((radio) => radio.value === key)?.closest("label").textContent.trim() ?? "";
  const choose = (key) => {
    const radio = radios().find((one) => one.value === key);
    if (!radio || radio.checked) return;
    radio.checked = true;
    radio.dispatchEvent(new Event("change", { bubbles: true }));
  };
  const sized = () => reader.size() || !radios().length;

  // A project, read and written
  const current = () => projects.read(open.id);

  // What the list of projects tells without the page.
  const place = (project, found) => {
    project.done = found.rows;
    project.rows = open.course.rows;
    project.rounds = open.course.rounds;
    const { label, words } = view.told(found, open.course);
    const next = [found.leg && view.heading(found.leg), (label || words).replace(/:$/, "")].filter(Boolean);
    project.now = view.plain(next.join(", ")).slice(0, 300);
  };

  const keep = (project) => {
    if (projects.write(project)) return;
    const full = tr("This browser does not keep your place: its storage is full or switched off.");
    say([full, tr("Save the project as a file before you close this page.")].join(" "));
  };

  // Another tab may have changed it, so it is read, changed and written in one go.
  const change = (how) => {
    const project = current();
    if (!project) return leave(tr("This project is no longer on this device."));
    how(project);
    place(project, courses.find(open.course, project.at));
    keep(project);
    show();
  };
  const move = (to) => change((project) => {
    const at = Math.max(0, Math.min(open.course.ticks, to(project.at)));
    if (at === project.at) return;
    project.undo = [...project.undo, project.at].slice(-MOST_UNDO);
    project.at = at;
  });

  // The chart of the stitch pattern shows the same row.
  const row = ({ row: worked }) => {
    const number = worked?.pattern && worked.label.match(/\d+/);
    if (!number) return;
    const detail = { name: worked.pattern, row: Number(number[0]) };
    document.dispatchEvent(new CustomEvent("reader:row", { detail }));
  };

  const show = () => {
    const project = current();
    if (!project) return leave(tr("This project is no longer on this device."));
    const found = courses.find(open.course, project.at);
    view.now(project, open.course, found);
    view.mark(found.number);
    view.changed(project.changes);
    part("jump").elements.row.max = open.course.rows;
    section.querySelector('[data-do="undo"]').disabled = project.undo.length === 0;
    row(found);
  };

  // A republished pattern: the project goes on at the same row; what has changed is told until somebody has read it.
  const brought = (project) => {
    const fresh = courses.cut(data, project.size);
    if (!fresh) return tr("This pattern no longer has your size. Its instructions as they were are still here; knit on by them.");
    if (JSON.stringify(fresh) === JSON.stringify(project.course)) return "";
    const [old, now] = [courses.open(project.course), courses.open(fresh)];
    const found = courses.match(old, now);
    const at = found.placed(project.at);
    project.changes = [...view.changes(old, now, found, at), ...project.changes].slice(0, 30);
    project.undo = project.undo.map(found.placed);
    project.at = at;
    project.course = fresh;
    return "";
  };

  // Which project is open in this tab; where nothing may be kept it is chosen anew when the page is loaded again.
  const opened = (id) => {
    const name = `sizewright open ${reader.path}`;
    try {
      if (id !== undefined) sessionStorage.setItem(name, id);
      return sessionStorage.getItem(name);
    } catch {
      return "";
    }
  };

  // What it is called on this page, which may be in another language.
  const tellHere = (project) => {
    const { title } = section.dataset;
    if (project.name === project.title) project.name = title;
    const here = { title, sizeName: sizeName(project.size) || project.sizeName, folder: reader.folder };
    Object.assign(project, here);
  };

  const take = (id, { quietly = false } = {}) => {
    const project = projects.read(id);
    if (!project || project.page !== page) return leave(tr("This project is not on this device, or not for this pattern."));
    say(brought(project));
    tellHere(project);
    open.id = id;
    open.course = courses.open(project.course);
    choose(project.size);
    opened(id);
    place(project, courses.find(open.course, project.at));
    keep(project);
    part("start").hidden = true;
    part("work").hidden = false;
    for (const name of ["name", "needle", "gauge", "note"]) part("about").elements[name].value = project[name];
    view.inRounds(open.course.rounds);
    view.list(open.course);
    show();
    if (!quietly) {
      section.scrollIntoView();
      part("tick").focus({ preventScroll: true });
    }
  };

  const leave = (words = "") => {
    open.id = "";
    open.course = null;
    opened("");
    part("work").hidden = true;
    part("start").hidden = false;
    view.changed([]);
    say(words);
    begin();
  };

  // Before one is open
  const begin = () => {
    const mine = projects.all().filter((project) => project.page === page);
    part("projects").replaceChildren(...mine.map((project) => {
      const far = make("span", "knit-turn", projects.far(project));
      const button = make("button", "knit-row", make("b", "", project.name), ` ${project.sizeName} `, far);
      button.type = "button";
      button.addEventListener("click", () => take(project.id));
      return make("li", "", button);
    }));
    const form = part("new");
    const ready = sized();
    const size = reader.size() ? tr("In size {size}.", { size: sizeName(reader.size()) }) : "";
    part("size").textContent = ready ? size : tr("Choose your size first: its instructions are the ones that count.");
    form.querySelector("button").disabled = !ready;
    if (!form.elements.name.value) form.elements.name.value = section.dataset.title;
    if (!mine.length) form.closest("details").open = true;
  };
  part("new").addEventListener("submit", (event) => {
    event.preventDefault();
    const { name, needle, gauge, note } = Object.fromEntries(new FormData(event.target));
    const size = reader.size();
    const pattern = { page, size, sizeName: sizeName(size), title: section.dataset.title };
    const project = projects.begin({ name, needle, gauge, note, ...pattern, course: courses.cut(data, size) });
    event.target.reset();
    keep(project);
    take(project.id);
    reader.keep(say);
  });

  // The buttons
  const deeds = {
    tick: () => move((at) => at + 1),
    undo: () => change((project) => {
      if (project.undo.length) project.at = Math.min(open.course.ticks, project.undo.pop());
    }),
    awake: () => reader.awake(section.querySelector('[data-do="awake"]'), say),
    leave: () => leave(),
    seen: () => change((project) => {
      project.changes = [];
    }),
    save: () => projects.save([current()], current().name),
    offline: () => reader.keep(say),
    again: async () => {
      const words = tr("Start this project over, from the beginning? Undo takes you back here.");
      if (await ask(words, tr("Start over"), tr("Stay here"))) move(() => 0);
    },
    remove: async () => {
      const project = current();
      const words = tr("Remove “{name}” and its place from this device? This cannot be undone.", project);
      if (!(await ask(words, tr("Remove"), tr("Keep it")))) return;
      projects.remove(project.id);
      leave(tr("“{name}” was removed.", project));
    },
  };
  section.addEventListener("click", (event) => {
    const button = event.target.closest("button");
    if (button?.dataset.do) {
      say("");
      deeds[button.dataset.do]();
    } else if (button?.dataset.leg) {
      const leg = Number(button.dataset.leg);
      const found = courses.find(open.course, current()?.at ?? 0);
      move((at) => (found.number === leg ? at + 1 : open.course.starts[leg]));
      if (found.number !== leg) say(tr("You are now at the line you tapped. Undo takes you back."));
    }
  });
  part("jump").addEventListener("submit", (event) => {
    event.preventDefault();
    const at = courses.tickOfRow(open.course, event.target.elements.row.valueAsNumber - 1);
    event.target.reset();
    move(() => at);
    say(tr("Undo takes you back."));
  });
  part("about").addEventListener("submit", (event) => event.preventDefault());
  part("about").addEventListener("change", ({ target }) => change((project) => {
    if (target.name !== "name" || target.value.trim()) project[target.name] = target.value;
  }));

  // Arrows: on the row in hand forward and back, in the list from line to line.
  section.addEventListener("keydown", (event) => {
    const forward = event.key === "ArrowDown" || event.key === "ArrowRight";
    const back = event.key === "ArrowUp" || event.key === "ArrowLeft";
    if ((!forward && !back) || event.ctrlKey || event.metaKey || event.altKey) return;
    if (event.target.closest(".knit-tick")) {
      deeds[forward ? "tick" : "undo"]();
    } else if (event.target.closest(".knit-rows")) {
      const rows = [...part("rows").querySelectorAll("button")];
      rows[rows.indexOf(event.target) + (forward ? 1 : -1)]?.focus();
    } else return;
    event.preventDefault();
  });
  part("course").addEventListener("toggle", () => {
    const project = open.course && current();
    if (project) view.mark(courses.find(open.course, project.at).number);
  });

  // What happens elsewhere
  document.addEventListener("reader:size", async ({ detail }) => {
    if (!open.id) return begin();
    const project = current();
    if (!project || project.size === detail) return;
    choose(project.size);
    const words = tr("You are knitting “{name}” in size {sizeName}. Your place in it is kept anyway.", project);
    const other = detail ? tr("Show {size}", { size: sizeName(detail) }) : tr("Show all sizes");
    if (!(await ask(words, other, tr("Stay with {sizeName}", project)))) return;
    leave();
    choose(detail);
  });
  projects.heard((id) => (open.id ? (!id || id === open.id) && show() : begin()));
  addEventListener("hashchange", () => asked());

  // Asked for once: the address of the page may be given to others.
  const asked = () => {
    const id = new URLSearchParams(location.hash.slice(1)).get("knit");
    if (!id) return false;
    try {
      history.replaceState(history.state, "", location.pathname + location.search);
    } catch {
      // A page opened from disk may keep its address.
    }
    take(id);
    return true;
  };
  // In another language the project is at hand as well, at its row.
  reader.at = () => open.id && `knit=${open.id}`;
  const [any] = Object.keys(data.sizes).filter((key) => data.sizes[key].length);
  if (any === undefined) return;
  view.inRounds(courses.open(courses.cut(data, any)).rounds);
  for (const hidden of [section, ...document.querySelectorAll(".knit-to")]) hidden.hidden = false;
  begin();
  if (!asked()) {
    const last = opened();
    if (last && projects.read(last)) take(last, { quietly: true });
  }
});
