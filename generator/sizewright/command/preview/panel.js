// Waits for the next state of the preview and loads the page again when it is there. A panel that was folded stays so
// for as long as it says the same, and the page is made longer by its height, so that all of it can be read.
"use strict";
{
  const { shown } = document.currentScript.dataset;
  const changes = new EventSource(`/-preview/changes?shown=${encodeURIComponent(shown)}`);
  changes.addEventListener("message", () => {
    changes.close();
    location.reload();
  });
  addEventListener("pagehide", () => changes.close());

  const panel = document.getElementById("sizewright-panel")?.shadowRoot?.querySelector("section");
  if (panel) {
    const details = panel.querySelector("details");
    const state = () => JSON.stringify([panel.textContent, details.open]);
    const kept = sessionStorage.getItem("sizewright-panel");
    if (kept && JSON.parse(kept)[0] === panel.textContent) details.open = JSON.parse(kept)[1];
    details.addEventListener("toggle", () => sessionStorage.setItem("sizewright-panel", state()));
    new ResizeObserver(() => {
      document.documentElement.style.paddingBottom = `${panel.offsetHeight}px`;
    }).observe(panel);
  }
}
