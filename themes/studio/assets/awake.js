// The screen kept on at somebody's request, until they ask otherwise or the page is closed.
"use strict";

(() => {
  let lock = null;
  let button = null;

  const pressed = () => button?.getAttribute("aria-pressed") === "true";
  const press = (on) => button.setAttribute("aria-pressed", String(on));

  const hold = async (say) => {
    try {
      lock = await navigator.wakeLock.request("screen");
    } catch {
      press(false);
      say(tr("This browser cannot keep the screen on. In the settings of your device you can let it darken later."));
    }
  };

  // On or off, by a button that shows which; where it cannot be done, `say` is told so.
  reader.awake = async (asked, say) => {
    button = asked;
    press(!pressed());
    if (pressed()) return hold(say);
    await lock?.release();
    lock = null;
  };

  // The browser lets go of it whenever the page is not to be seen.
  document.addEventListener("visibilitychange", () => {
    if (pressed() && document.visibilityState === "visible") hold(() => {});
  });
})();
