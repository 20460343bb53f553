// What somebody knits from this site: kept on this device alone, each project by itself, and as a file to take along.
"use strict";

reader.projects = (() => {
  const FORM = 1;
  const FORMAT = "sizewright knitting";
  const MOST = 500; // projects in a file
  const top = new URL(reader.top, location.href);
  const shelf = `knitting ${reader.top} `;
  const unkept = new Map(); // where storage is refused or full: as long as the page is open

  const isText = (value) => typeof value === "string" && value.length <= 4000;
  const isPlace = (value) => Number.isSafeInteger(value) && value >= 0;
  const isId = (value) => typeof value === "string" && /^[\w-]{1,40}$/.test(value);
  const TEXTS = ["name", "needle", "gauge", "note", "title", "page", "size", "sizeName", "now", "begun", "touched"];

  const isSegment = (row, words) =>
    Array.isArray(row) && row.length === 6 && row.every(Number.isSafeInteger) && row[2] > 0 &&
    [row[0], row[1], row[5]].every((place) => place in words);
  const isRun = (run, words) =>
    Array.isArray(run) && isPlace(run[0]) && Array.isArray(run[1]) && run[1].length > 0 &&
    run[1].every((row) => isSegment(row, words));
  const isLeg = (leg, words) =>
    Array.isArray(leg) && leg.length === 8 && isPlace(leg[1]) &&
    [leg[0], leg[2], leg[3], leg[4]].every((place) => isPlace(place) && place in words) &&
    (leg[5] === null || Number.isSafeInteger(leg[5])) && isPlace(leg[6]) && Array.isArray(leg[7]) &&
    leg[7].every((run) => isRun(run, words));
  const isCourse = (course) =>
    Array.isArray(course?.words) && course.words.every(isText) && Array.isArray(course.legs) &&
    (course.base === undefined || (Array.isArray(course.base) && course.base.length === course.words.length &&
      course.base.every(isText))) &&
    course.legs.every((leg) => isLeg(leg, course.words));

  // Whether a value that was kept or comes from a file is a project; one of a later form is none that we could read.
  const sound = (value) =>
    value !== null && typeof value === "object" && value.form === FORM && isId(value.id) &&
    TEXTS.every((name) => isText(value[name])) &&
    /^([a-z-]+\/)?$/i.test(value.folder ?? "") && /^[^:?#\\]+\.html$/.test(value.page) && !/^\/|\.\./.test(value.page) &&
    [undefined, true, false].includes(value.rounds) && [value.at, value.rows, value.done].every(isPlace) && Array.isArray(value.undo) && value.undo.every(isPlace) &&
    Array.isArray(value.changes) && value.changes.every(isText) && isCourse(value.course);

  const read = (id) => unkept.get(id) ?? reader.kept(shelf + id).read(sound);
  const write = (project) => {
    project.touched = new Date().toISOString();
    const held = reader.kept(shelf + project.id).write(project);
    if (held) unkept.delete(project.id);
    else unkept.set(project.id, structuredClone(project));
    return held;
  };
  const remove = (id) => {
    unkept.delete(id);
    reader.kept(shelf + id).write(null);
  };

  // All projects, the one touched last first.
  const all = () => {
    const ids = reader.names(shelf).map((name) => name.slice(shelf.length)).filter(isId);
    const found = [...new Set([...ids, ...unkept.keys()])].map(read).filter(Boolean);
    return found.sort((one, other) => (one.touched < other.touched ? 1 : -1));
  };

  const newId = () => `${Date.now().toString(36)}-${Math.random().toString(36).slice(2, 8)}`;
  const begin = (given) => ({
    form: FORM, id: newId(), name: "", needle: "", gauge: "", note: "", title: "", page: "", size: "", sizeName: "",
    at: 0, undo: [], rows: 0, done: 0, now: "", changes: [], touched: "", begun: new Date().toISOString(), ...given,
  });

  // Where a project's page is, in the language it was knitted in last.
  const address = (project) => {
    const url = new URL((project.folder ?? "") + project.page, top);
    if (project.size) url.searchParams.set("size", project.size);
    url.hash = `knit=${project.id}`;
    return url.href;
  };

  const far = ({ done, rows, rounds }) => {
    const parts = { n: done + 1, rows, part: rows ? Math.floor((100 * done) / rows) : 0 };
    if (rounds) return done < rows ? tr("round {n} of {rows}, {part} %", parts) : tr("all {rows} rounds worked", parts);
    return done < rows ? tr("row {n} of {rows}, {part} %", parts) : tr("all {rows} rows worked", parts);
  };

  // Something as a file of the device.
  const save = (projects, name) => {
    const text = JSON.stringify({ format: FORMAT, form: FORM, projects }, null, 1);
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
    const words = name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? ["project"];
    link.download = `${words.join("-")}.knitting.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  };

  // The projects of a file, or in words why it has none.
  const opened = (text, file) => {
    let told = null;
    try {
      told = JSON.parse(text);
    } catch {
      return tr("“{file}” is not whole, or is no file of projects. Nothing has been changed.", { file });
    }
    if (told?.format !== FORMAT) return tr("“{file}” is no file of projects. Nothing has been changed.", { file });
    if (Number.isInteger(told.form) && told.form > FORM) {
      return tr(
        "“{file}” was made by a later version of this site; load this page anew and try again. Nothing has been changed.",
        { file },
      );
    }
    const many = Array.isArray(told.projects) ? told.projects.length : 0;
    const whole = told.form === FORM && many && many <= MOST && told.projects.every(sound);
    return whole ? told.projects : tr("“{file}” is damaged. Nothing has been changed.", { file });
  };

  const same = (one, other) => JSON.stringify({ ...one, touched: "" }) === JSON.stringify({ ...other, touched: "" });

  // Takes in the projects of a file, all of it or nothing, and says what became of it. What is here already stays.
  const load = async (file) => {
    const large = file.size > 20_000_000 && tr("“{file}” is too large. Nothing has been changed.", { file: file.name });
    const found = large || opened(await file.text().catch(() => ""), file.name);
    if (typeof found === "string") return { words: found, added: [] };
    const added = [];
    for (const project of found) {
      const here = read(project.id);
      if (here && same(here, project)) continue;
      added.push(here ? { ...project, id: newId(), name: tr("{name} (from a file)", project).slice(0, 200) } : project);
    }
    const kept = added.map(write).every(Boolean);
    const n = found.length - added.length;
    const taken = trMany("{n} project was taken in", "{n} projects were taken in", added.length);
    const here = n ? tr("already here and just the same: {n}", { n }) : "";
    const lasts = kept ? "" : tr("But this browser does not keep them: they last as long as this page.");
    const whole = [taken, here].filter(Boolean).join("; ");
    return { words: [`${whole}.`, lasts].filter(Boolean).join(" "), added };
  };

  // Told when another tab has changed a project: its name, "" where all may be changed.
  const heard = (then) => addEventListener("storage", ({ key }) => {
    const place = reader.placeOf(shelf);
    if (key === null || key.startsWith(place)) then(key === null ? "" : key.slice(place.length));
  });

  return { read, write, remove, all, begin, address, far, save, load, heard, unkept };
})();
