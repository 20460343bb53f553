// Installs the site's worker where the site is served, so that it can be read without a network; tells of new versions.
"use strict";

(() => {
  const top = new URL("..", document.currentScript.src);
  const worker = navigator.serviceWorker;
  if (!worker || !location.protocol.startsWith("http")) return;
  const HOUR = 3_600_000;

  const link = (rel, name) => {
    const element = document.createElement("link");
    element.rel = rel;
    element.href = new URL(name, top);
    document.head.append(element);
  };
  link("manifest", "site.webmanifest");

  // The text stays as it is under the reader's eyes until they ask for the new one.
  const tell = () => {
    if (document.querySelector(".new-version")) return;
    link("stylesheet", "theme/offline.css");
    const note = document.createElement("p");
    note.className = "new-version";
    note.setAttribute("role", "status");
    const button = document.createElement("button");
    button.type = "button";
    button.textContent = tr("Show it");
    button.addEventListener("click", () => location.reload());
    document.body.append(note);
    note.append(tr("There is a new version of this page."), " ", button);
  };
  worker.addEventListener("message", ({ data }) => {
    if (data?.changed) tell();
  });

  // Pages and papers that are to be read without a network, though nobody has opened them: gives those that are kept.
  const keep = async (addresses) => {
    const { active } = await worker.ready;
    const { port1, port2 } = new MessageChannel();
    return new Promise((answer) => {
      port1.onmessage = ({ data }) => answer(data.kept);
      active.postMessage({ seen: addresses }, [port2]);
    });
  };
  globalThis.offline = { keep };
  for (const hidden of document.querySelectorAll("[data-offline]")) hidden.hidden = false;

  const start = async () => {
    const registration = await worker.register(new URL("sw.js", top), { updateViaCache: "none" });
    const { active } = await worker.ready;
    const loaded = performance.getEntriesByType("resource").map(({ name }) => name);
    active.postMessage({ seen: [location.href, ...loaded].filter((name) => name.startsWith(top.href)) });
    let asked = Date.now();
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState !== "visible" || Date.now() - asked < HOUR) return;
      asked = Date.now();
      registration.update().catch(() => {});
    });
  };
  // Where a worker is not allowed the site is read as any other.
  start().catch(() => {});
})();
