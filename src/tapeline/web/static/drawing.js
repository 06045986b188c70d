// @ts-check
/** The sheet: pieces laid out for the window, seen through a view that pans and zooms by mouse, touch and keyboard. */
import { arrange } from "./arrange.js";
import { every, maybe, near, put } from "./dom.js";
import { box as read, pair } from "./numbers.js";
import { retouch } from "./retouch.js";
import { rulers } from "./rulers.js";
/** @import { Box, Place } from "./numbers.js" */
/** @typedef {ReturnType<typeof drawingView>} View */

const GAP_MM = 40, GRIP_GAP_MM = 75, ROOM_MM = 12, EDGE_PX = 40, NARROW_EDGE_PX = 22, BAND_MM = 180, LEAST_PER = 0.02, MOST_PER = 8;

/** @param {HTMLElement} host */
export function drawingView(host) {
  let per = 1, x = 0, y = 0; // mm for a pixel, and the place at the upper left corner
  let whole = /** @type {import("./arrange.js").Layout} */ ({ places: [], width: 1, height: 1 }), fitted = true, names = "", zero = "", still = false;
  /** @type {Map<number, {x: number, y: number}>} */
  const fingers = new Map();
  /** @type {(() => void)[]} */
  const watching = [];
  const ruler = rulers(host);
  const sheet = document.createElement("div");
  sheet.className = "paper";
  host.prepend(sheet);
  const write = retouch(sheet);
  /** Where the pieces lie, and the boxes for which they were laid so. @type {{for: string, boxes: Box[], places: Place[]}} */
  let laid = { for: "", boxes: [], places: [] };
  /** @type {string | null} */
  let source = null;
  const svg = () => maybe(sheet, "svg.sheet", SVGSVGElement);
  /** In the order in which they are laid out; the one that is asked about lies on top. */
  const pieces = () => every(svg(), ":scope > .piece", SVGGElement).sort((a, b) => Number(a.dataset.order ?? 0) - Number(b.dataset.order ?? 0));
  // Asking the browser for a size while the page is being written makes it lay out everything: it is kept.
  let [seenW, seenH] = [sheet.clientWidth, sheet.clientHeight];
  /** @returns {Place} */
  const size = () => [Math.max(1, seenW), Math.max(1, seenH)];
  const wide = () => host.matches(".points, .building");
  /** @param {SVGElement} piece @param {boolean} [all] */
  const box = (piece, all = false) => read((all && piece.dataset.wide) || piece.dataset.box);
  /** @param {SVGElement} piece */
  const place = (piece) => pair(piece.dataset.place);

  function look() {
    const made = svg();
    if (!made) return;
    const [w, h] = size();
    put(made, "viewBox", `${x} ${y} ${w * per} ${h * per}`);
    if (made.style.getPropertyValue("--per") !== String(per)) made.style.setProperty("--per", String(per));
    host.classList.toggle("near", per < 0.75);
    const origin = pieces().find((p) => p.dataset.piece === zero) ?? pieces()[0];
    const [dx, dy] = origin ? place(origin) : [0, 0], [left, top] = origin ? box(origin) : [0, 0];
    ruler.draw({ per, x: x - dx - left, y: y - dy - top, w, h, unit: Number(made.dataset.unit), sign: made.dataset.sign ?? "", from: origin?.dataset.title ?? "" });
    for (const piece of pieces()) name(piece);
    for (const watch of watching) watch();
  }
  /** The title stands in the piece where there is room for it, and otherwise below; in a band its fold would run through it. @param {SVGGElement} piece */
  function name(piece) {
    const title = maybe(piece, ":scope > .title", SVGElement), [left, top, right, bottom] = box(piece);
    if (!title) return;
    const [tx = 0, ty = 0, room = 0] = (title.dataset.inside ?? "").split(" ").map(Number);
    const inside = room / per > (title.textContent ?? "").length * 11 && (bottom - top) / per > 48 && bottom - top > BAND_MM;
    put(title, "x", String(inside ? tx : (left + right) / 2));
    put(title, "y", String(inside ? ty : bottom + 19 * per));
    title.classList.toggle("below", !inside);
    title.classList.toggle("small", !inside && per > 2.6);
  }
  /** Pieces that have grown or shrunk by less than the room between them stay where they lie: only what has changed moves,
   * for the eye and for the browser, to which a piece in another place is a new drawing. @param {boolean} [anew] */
  function lay(anew = false) {
    const [w, h] = size(), list = pieces(), boxes = list.map((p) => box(p, wide())), gap = host.classList.contains("handles") ? GRIP_GAP_MM : GAP_MM;
    const now = `${gap} ${w} ${h} ${wide()} ${list.map((p) => p.dataset.piece).join(" ")}`;
    if (anew || now !== laid.for || boxes.some((one, i) => one.some((edge, k) => Math.abs(edge - (laid.boxes[i]?.[k] ?? Infinity)) > ROOM_MM))) {
      whole = arrange(boxes, w / h, gap);
      laid = { for: now, boxes, places: whole.places };
    }
    list.forEach((piece, i) => {
      const [dx, dy] = laid.places[i] ?? [0, 0];
      piece.dataset.place = `${dx} ${dy}`;
      for (const part of [piece, svg()?.querySelector(`:scope > .grips[data-on="${CSS.escape(piece.dataset.piece ?? "")}"]`)]) if (part) put(part, "transform", `translate(${dx.toFixed(2)} ${dy.toFixed(2)})`);
    });
  }
  /** @param {number} left @param {number} top @param {number} width @param {number} height @param {boolean} [slowly] */
  function fit(left, top, width, height, slowly = false) {
    const [w, h] = size();
    const edge = 2 * (Math.min(w, h) < 420 ? NARROW_EDGE_PX : EDGE_PX);
    const next = Math.max(width / Math.max(1, w - edge), height / Math.max(1, h - edge), LEAST_PER);
    go(next, left + width / 2 - (w * next) / 2, top + height / 2 - (h * next) / 2, slowly);
  }
  let moving = 0;
  /** @param {number} nextPer @param {number} nextX @param {number} nextY @param {boolean} slowly */
  function go(nextPer, nextX, nextY, slowly) {
    cancelAnimationFrame(moving);
    if (!slowly || matchMedia("(prefers-reduced-motion: reduce)").matches) { [per, x, y] = [nextPer, nextX, nextY]; look(); return; }
    const [fromPer, fromX, fromY] = [per, x, y], began = performance.now();
    const frame = (/** @type {number} */ now) => {
      const t = Math.min(1, (now - began) / 260), e = t * t * (3 - 2 * t);
      per = fromPer + (nextPer - fromPer) * e; x = fromX + (nextX - fromX) * e; y = fromY + (nextY - fromY) * e;
      look();
      if (t < 1) moving = requestAnimationFrame(frame);
    };
    moving = requestAnimationFrame(frame);
  }
  /** @param {boolean} [slowly] */
  function all(slowly = false) { lay(true); fitted = true; fit(0, 0, whole.width, whole.height, slowly); }
  /** Place on the sheet under a place of the window, mm. @param {number} clientX @param {number} clientY @returns {Place} */
  function at(clientX, clientY) {
    const frame = sheet.getBoundingClientRect();
    return [x + (clientX - frame.left) * per, y + (clientY - frame.top) * per];
  }
  /** @param {number} by @param {number} cx @param {number} cy */
  function zoom(by, cx, cy) {
    cancelAnimationFrame(moving);
    const next = Math.min(Math.max(per * by, LEAST_PER), MOST_PER);
    x = cx - ((cx - x) * next) / per; y = cy - ((cy - y) * next) / per;
    per = next; fitted = false;
    look();
  }
  /** @param {number} dx @param {number} dy in pixels */
  function pan(dx, dy) { cancelAnimationFrame(moving); x -= dx * per; y -= dy * per; fitted = false; look(); }
  const middle = (/** @type {number} */ by) => { const [w, h] = size(); zoom(by, x + (w * per) / 2, y + (h * per) / 2); };

  host.addEventListener("wheel", (event) => { if (!svg() || near(event, "#moved", HTMLElement)) return; event.preventDefault(); zoom(Math.exp(event.deltaY * (event.deltaMode ? 0.04 : 0.0014)), ...at(event.clientX, event.clientY)); }, { passive: false });
  sheet.addEventListener("pointerdown", (event) => { if (event.button === 0 && !still) fingers.set(event.pointerId, { x: event.clientX, y: event.clientY }); });
  for (const kind of /** @type {const} */ (["pointerup", "pointercancel"])) sheet.addEventListener(kind, (event) => { fingers.delete(event.pointerId); host.classList.remove("held"); });
  sheet.addEventListener("pointermove", (event) => {
    const before = fingers.get(event.pointerId), now = { x: event.clientX, y: event.clientY };
    if (!before || still || !svg()) return;
    const other = [...fingers].find(([id]) => id !== event.pointerId)?.[1];
    if (!other && Math.hypot(now.x - before.x, now.y - before.y) < 3 && !host.classList.contains("held")) return;
    host.classList.add("held");
    sheet.setPointerCapture(event.pointerId);
    if (other) {
      const gap = (/** @type {{x: number, y: number}} */ f) => Math.max(8, Math.hypot(f.x - other.x, f.y - other.y));
      pan((now.x - before.x) / 2, (now.y - before.y) / 2);
      zoom(gap(before) / gap(now), ...at((now.x + other.x) / 2, (now.y + other.y) / 2));
    } else pan(now.x - before.x, now.y - before.y);
    fingers.set(event.pointerId, now);
  });
  host.addEventListener("keydown", (event) => {
    if (event.target !== host || event.ctrlKey || event.metaKey || event.altKey) return;
    const step = 60, move = new Map(/** @type {[string, Place][]} */ ([["ArrowLeft", [step, 0]], ["ArrowRight", [-step, 0]], ["ArrowUp", [0, step]], ["ArrowDown", [0, -step]]])).get(event.key);
    if (move) pan(...move);
    else if (event.key === "+" || event.key === "=") middle(0.8);
    else if (event.key === "-") middle(1.25);
    else if (event.key === "0") all(true);
    else return;
    event.preventDefault();
  });
  new ResizeObserver(() => {
    const [w, h] = [sheet.clientWidth, sheet.clientHeight];
    if (w === seenW && h === seenH) return;
    [seenW, seenH] = [w, h];
    if (fitted) all(); else look();
  }).observe(sheet);

  return {
    /** A new drawing. The view stays where it was unless the pieces are others, or have outgrown it.
     * @param {string | null} next */
    show(next) {
      if (next === null || next === source) return;
      source = next;
      if (write(next)) every(svg(), ":scope > .piece", SVGGElement).forEach((piece, i) => { piece.dataset.order = String(i); });
      const now = `${svg()?.dataset.style}: ${pieces().map((p) => p.dataset.piece).join(" ")}`, before = whole;
      lay();
      const grown = Math.max(whole.width / before.width, before.width / whole.width, whole.height / before.height, before.height / whole.height);
      const outside = fitted && (whole.width > before.width * 1.02 || whole.height > before.height * 1.02);
      if (now !== names || (!still && (grown > 1.2 || outside))) all(); else look();
      names = now;
    },
    all, at, middle, svg, pieces, box, place, look,
    /** Bring one piece into view. @param {string} name */
    piece(name) {
      const piece = pieces().find((p) => p.dataset.piece === name);
      if (!piece) return;
      zero = name;
      const [dx, dy] = place(piece), [left, top, right, bottom] = box(piece, wide());
      fitted = false;
      fit(left + dx, top + dy, right - left, bottom - top, true);
    },
    /** Rulers measure from the corner of this piece. @param {string} name */
    from(name) {
      const piece = pieces().find((p) => p.dataset.piece === name);
      if (!piece) return;
      if (piece.nextElementSibling?.classList.contains("piece")) every(svg(), ":scope > .piece", SVGGElement).at(-1)?.after(piece);
      if (name !== zero) { zero = name; look(); }
    },
    /** While a handle is held, nothing else moves the view. @param {boolean} on */
    hold(on) { still = on; if (on) fingers.clear(); },
    /** So many mm of cloth for a pixel, about the middle. @param {number} wanted */
    scale(wanted) { middle(wanted / per); },
    /** @param {() => void} watch told after every change of the view */
    watch(watch) { watching.push(watch); },
    relay() { lay(); if (fitted) all(); else look(); },
    get per() { return per; },
  };
}
