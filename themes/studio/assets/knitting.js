// The page of everything that is knitted from this site: each project with its place, all of them as a file and back.
"use strict";

(() => {
  const { projects } = reader;
  const list = document.querySelector(".knitting-list");
  const save = document.querySelector(".knitting-save");
  const file = document.querySelector(".knitting-load input");

  const make = (tag, name, ...inside) => {
    const element = document.createElement(tag);
    if (name) element.className = name;
    element.append(...inside);
    return element;
  };

  const line = (project) => {
    const link = make("a", "", project.name);
    link.href = projects.address(project);
    const what = project.name === project.title ? project.sizeName : [project.title, project.sizeName].filter(Boolean).join(", ");
    const with_ = [project.needle, project.gauge].filter(Boolean).join(", ");
    const far = [projects.far(project), project.now && tr("Next: {now}", project)].filter(Boolean).join(". ");
    const lines = [what, far, with_, project.note];
    return make("li", "", link, ...lines.filter(Boolean).map((words) => make("span", "remark", words)));
  };

  const show = () => {
    const all = projects.all();
    list.replaceChildren(...all.map(line));
    document.querySelector(".knitting-none").hidden = all.length > 0;
    save.disabled = all.length === 0;
  };

  save.addEventListener("click", () => projects.save(projects.all(), tr("all projects")));
  file.addEventListener("change", async () => {
    if (!file.files.length) return;
    const { words } = await projects.load(file.files[0]);
    file.value = "";
    show();
    reader.say(words);
  });
  projects.heard(show);
  list.classList.add("links");
  document.querySelector(".knitting-scriptless").hidden = true;
  document.querySelector(".knitting-here").hidden = false;
  show();
})();
