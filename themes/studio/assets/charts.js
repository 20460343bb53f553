// Charts: the row in hand is framed and told in words, and a chart is made larger or smaller. All is kept on the device.
"use strict";

reader.inTurn(() => {
  const kept = reader.kept(`charts ${reader.path}`);
  const hand = reader.kept("left-handed");
  const read = kept.read();
  const state = read !== null && typeof read === "object" && !Array.isArray(read) ? read : {};
  const SIZES = [0.5, 0.75, 1, 1.25, 1.5, 2, 3, 4];
  const AS_DRAWN = SIZES.indexOf(1);
  const EM = 18; // the size of a letter of the page, in the pixels the drawings are made in

  const prepare = (charted) => {
    const name = charted.dataset.name;
    const lines = [...charted.querySelectorAll(".chart-words li")];
    const views = [...charted.querySelectorAll(".chart-view")];
    const said = charted.querySelector(".chart-row");
    const [before, next, smaller, larger] = charted.querySelectorAll(".chart-tools button");
    let row = -1;
    let size = AS_DRAWN;

    const keep = () => {
      state[name] = { row: lines[row]?.dataset.row ?? null, size };
      kept.write(state);
    };

    // The row, or the first, is brought into view within its chart, from where it begins; the page stays where it is.
    const show = () => {
      for (const view of views) {
        const frame = view.querySelectorAll(".row-mark")[Math.max(row, 0)];
        view.scrollLeft = frame.classList.contains("from-left") ? 0 : view.scrollWidth;
        const least = frame.offsetTop + frame.offsetHeight + 8 - view.clientHeight;
        view.scrollTop = Math.min(frame.offsetTop - 8, Math.max(least, view.scrollTop));
      }
    };

    const mark = (place) => {
      row = place;
      for (const [at, line] of lines.entries()) {
        if (at === row) line.setAttribute("aria-current", "true");
        else line.removeAttribute("aria-current");
      }
      for (const view of views) {
        const frames = [...view.querySelectorAll(".row-mark")];
        for (const [at, frame] of frames.entries()) frame.hidden = at !== row;
      }
      said.replaceChildren(...(lines[row]?.cloneNode(true).childNodes ?? []));
    };
    const choose = (place) => {
      mark(place);
      show();
      keep();
    };

    // Behind the last row comes the first again.
    const step = (by) => choose(row < 0 && by < 0 ? lines.length - 1 : (row + by + lines.length) % lines.length);

    // What is in the middle stays there.
    const zoom = (to) => {
      const before = size;
      size = Math.min(SIZES.length - 1, Math.max(0, to));
      smaller.disabled = size === 0;
      larger.disabled = size === SIZES.length - 1;
      if (size === before) return;
      for (const view of views) {
        const { clientWidth: wide, clientHeight: tall } = view;
        const across = (view.scrollLeft + wide / 2) / view.scrollWidth;
        const down = (view.scrollTop + tall / 2) / view.scrollHeight;
        for (const drawing of view.querySelectorAll(".sheet > svg")) {
          drawing.style.width = `${(drawing.getAttribute("width") * SIZES[size]) / EM}rem`;
        }
        view.scrollLeft = across * view.scrollWidth - wide / 2;
        view.scrollTop = down * view.scrollHeight - tall / 2;
      }
    };
    const resize = (to) => {
      zoom(to);
      keep();
    };

    const keys = {
      ArrowUp: () => step(1),
      ArrowDown: () => step(-1),
      "+": () => resize(size + 1),
      "-": () => resize(size - 1),
      0: () => resize(AS_DRAWN),
    };
    const pressed = (event) => {
      if (event.ctrlKey || event.metaKey || event.altKey || !Object.hasOwn(keys, event.key)) return;
      event.preventDefault();
      keys[event.key]();
    };
    const tapped = (event) => {
      const sheet = event.currentTarget.querySelector(".sheet");
      const { top, height } = sheet.getBoundingClientRect();
      const share = (100 * (event.clientY - top)) / height;
      const found = [...sheet.querySelectorAll(".row-mark")].findIndex(({ style }) => {
        const below = share - parseFloat(style.top);
        return below >= 0 && below < parseFloat(style.height);
      });
      if (found >= 0) choose(found);
    };
    for (const view of views) {
      view.addEventListener("keydown", pressed);
      view.addEventListener("click", tapped);
    }
    before.addEventListener("click", () => step(-1));
    next.addEventListener("click", () => step(1));
    smaller.addEventListener("click", () => resize(size - 1));
    larger.addEventListener("click", () => resize(size + 1));
    for (const [at, line] of lines.entries()) line.addEventListener("click", () => choose(at));

    const placed = (number) => lines.findIndex((line) => line.dataset.row === String(number));
    // Whoever counts rows for the reader tells which row of a stitch pattern comes: { name, row }.
    document.addEventListener("reader:row", ({ detail }) => {
      if (detail.name.toLowerCase() === name.toLowerCase()) choose(placed(detail.row));
    });

    for (const hidden of charted.querySelectorAll(".chart-tools, .chart-keys")) hidden.hidden = false;
    const mine = Object.hasOwn(state, name) ? state[name] : null;
    zoom(Number.isInteger(mine?.size) ? mine.size : AS_DRAWN);
    mark(placed(mine?.row));
    // What is far from view is not laid out yet, and asking where a row lies would lay it out.
    const near = new IntersectionObserver((seen) => {
      if (!seen.some(({ isIntersecting }) => isIntersecting)) return;
      near.disconnect();
      show();
    });
    near.observe(charted);
    return show;
  };

  const boxes = [...document.querySelectorAll(".left-handed")];
  const mirror = (left) => {
    for (const box of boxes) box.checked = left;
  };
  mirror(hand.read() === true);
  const shown = [...document.querySelectorAll(".charted")].map(prepare);
  for (const box of boxes) {
    box.addEventListener("change", () => {
      mirror(box.checked);
      for (const show of shown) show();
      hand.write(box.checked || null);
    });
  }
});
