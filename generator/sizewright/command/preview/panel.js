// Waits for the next state of the preview and loads the page again when it is there.
"use strict";
{
  const { shown } = document.currentScript.dataset;
  const changes = new EventSource(`/-preview/changes?shown=${encodeURIComponent(shown)}`);
  changes.addEventListener("message", () => {
    changes.close();
    location.reload();
  });
  addEventListener("pagehide", () => changes.close());
}
