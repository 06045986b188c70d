// @ts-check
import { every, near, put } from "./dom.js";
import { pair } from "./numbers.js";
/** @import { View } from "./drawing.js" */
/** @import { Place } from "./numbers.js" */

/** What is known of a handle that is moved: numbers in the docket's unit, `way` and `from` in mm.
 * @typedef {{id: string, path: string[], way: Place, start: number, from: Place, least: number, most: number, step: number, unit: number, value: number, words: string}} Grip */

/** Handles on points that a line of the docket governs: dragged, or moved by the arrow keys, they write into the docket.
 * @param {HTMLElement} drawing @param {View} view
 * @param {(keys: string[], value: string, done: boolean) => void} edit @param {(words: string) => void} say */
export function handles(drawing, view, edit, say) {
  /** @type {Grip | null} */
  let held = null;
  let focused = "", again = false;
  /** @param {SVGElement} handle @returns {Grip} */
  const read = (handle) => {
    const number = (/** @type {string} */ name) => Number(handle.getAttribute(name));
    return { id: handle.id, path: (handle.dataset.path ?? "").split("."), way: pair(handle.dataset.way), start: number("aria-valuenow"), from: [0, 0],
      least: number("aria-valuemin"), most: number("aria-valuemax"), step: Number(handle.dataset.stepSize), unit: Number(view.svg()?.dataset.unit ?? 10), value: number("aria-valuenow"), words: handle.dataset.says ?? "" };
  };
  /** An arrow that points the way it goes, clear of the point itself. @param {SVGElement} handle */
  function draw(handle) {
    const [x, y] = pair(handle.dataset.at), [dx, dy] = pair(handle.dataset.way);
    const turn = (Math.atan2(dy, dx) * 180) / Math.PI, per = view.per;
    put(handle, "transform", `translate(${x} ${y}) rotate(${turn}) scale(${per * (per > 2.6 ? 0.7 : 1)})`);
  }
  const renew = () => { for (const handle of every(drawing, ".paper .handle", SVGElement)) draw(handle); };
  view.watch(renew);

  /** @param {Grip} one @param {number} value @param {boolean} done */
  function set(one, value, done) {
    const asked = Math.round(value / one.step) * one.step;
    const now = Number(Math.min(Math.max(asked, one.least), one.most).toFixed(4));
    const sign = view.svg()?.dataset.sign ?? "", name = one.path.slice(1).join(" ").replaceAll("_", " ");
    const end = asked > one.most ? `; ${one.most} is as far as it goes` : asked < one.least ? `; ${one.least} is as far as it goes` : `, of ${one.least} to ${one.most}`;
    say(`${name}: ${now} ${sign}${end}. ${one.words[0]?.toUpperCase() ?? ""}${one.words.slice(1)}.`);
    if (now !== one.value || done) { one.value = now; edit(one.path, String(now), done); }
  }
  drawing.addEventListener("pointerdown", (event) => {
    const handle = near(event, ".handle", SVGElement);
    if (!handle || event.button !== 0) return;
    event.preventDefault();
    event.stopPropagation();
    held = { ...read(handle), from: view.at(event.clientX, event.clientY) };
    handle.focus();
    view.hold(true);
    drawing.classList.add("pulling");
    drawing.setPointerCapture(event.pointerId);
  }, true);
  drawing.addEventListener("pointermove", (event) => {
    if (!held) return;
    const [x, y] = view.at(event.clientX, event.clientY);
    set(held, held.start + ((x - held.from[0]) * held.way[0] + (y - held.from[1]) * held.way[1]) / held.unit, false);
  });
  for (const kind of /** @type {const} */ (["pointerup", "pointercancel"])) drawing.addEventListener(kind, () => {
    if (!held) return;
    if (held.value !== held.start) edit(held.path, String(held.value), true);
    held = null;
    view.hold(false);
    drawing.classList.remove("pulling");
  });
  drawing.addEventListener("keydown", (event) => {
    const handle = near(event, ".handle", SVGElement);
    if (!handle || event.ctrlKey || event.metaKey || event.altKey) return;
    const one = read(handle), [dx, dy] = one.way;
    const along = Math.abs(dx) > Math.abs(dy), forward = along ? dx > 0 : dy > 0;
    // Along its way an arrow key moves it as it looks; the other two keys add and take away.
    const by = /** @type {Record<string, number>} */ ({
      ArrowRight: along && !forward ? -1 : 1, ArrowLeft: along && !forward ? 1 : -1,
      ArrowDown: !along && forward ? 1 : -1, ArrowUp: !along && forward ? -1 : 1, PageUp: 10, PageDown: -10,
    })[event.key];
    if (event.key === "Home") set(one, one.least, true);
    else if (event.key === "End") set(one, one.most, true);
    else if (by) set(one, one.start + by * one.step * (event.shiftKey ? 10 : 1), true);
    else return;
    event.preventDefault();
  });
  drawing.addEventListener("focusin", (event) => {
    const handle = near(event, ".handle", SVGElement);
    focused = handle?.id ?? "";
    if (handle && !held && !again) { const one = read(handle); say(`${handle.getAttribute("aria-label")}: ${handle.getAttribute("aria-valuetext")}, of ${one.least} to ${one.most}. Drag it, or move it with the arrow keys.`); }
  });
  return {
    /** The drawing is about to be replaced: remember where the keyboard was. */
    before() { focused = document.activeElement?.closest(".handle")?.id ?? ""; },
    renew() { renew(); if (focused) { again = true; document.getElementById(focused)?.focus({ preventScroll: true }); again = false; } },
  };
}
