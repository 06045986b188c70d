// @ts-check
/** Pan and zoom of the drawing, by mouse, touch and keyboard; the view is kept when a new drawing comes.
 * @param {HTMLElement} host */
export function drawingView(host) {
  /** @type {[number, number, number, number] | null} */
  let view = null;
  /** @type {Map<number, PointerEvent>} */
  const fingers = new Map();
  const svg = () => /** @type {SVGSVGElement | null} */ (host.querySelector("svg"));
  const whole = () => /** @type {[number, number, number, number]} */ ((svg()?.dataset.whole ?? "0 0 1 1").split(" ").map(Number));
  function look() { if (view) svg()?.setAttribute("viewBox", view.join(" ")); }
  /** @param {PointerEvent | WheelEvent} event */
  function at(event) {
    const box = /** @type {SVGSVGElement} */ (svg()).getScreenCTM();
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(box?.inverse());
    return [point.x, point.y];
  }
  /** @param {number} by @param {number} x @param {number} y */
  function zoom(by, x, y) {
    if (!view) return;
    const [left, top, width, height] = view, all = whole();
    if (width * by > all[2] * 3 || width * by < 20) return;
    view = [x - (x - left) * by, y - (y - top) * by, width * by, height * by];
    look();
  }
  function all() { view = whole(); look(); }
  host.addEventListener("wheel", (event) => { if (!svg()) return; event.preventDefault(); const [x, y] = at(event); zoom(Math.exp(event.deltaY * 0.0012), x, y); }, { passive: false });
  host.addEventListener("pointerdown", (event) => { fingers.set(event.pointerId, event); });
  host.addEventListener("pointerup", (event) => fingers.delete(event.pointerId));
  host.addEventListener("pointercancel", (event) => fingers.delete(event.pointerId));
  host.addEventListener("pointermove", (event) => {
    const before = fingers.get(event.pointerId);
    if (!before || !view || !svg()) return;
    const [x0, y0] = at(before), [x1, y1] = at(event);
    if (fingers.size === 2) {
      const other = [...fingers.values()].find((f) => f.pointerId !== event.pointerId);
      if (other) {
        const gap = (/** @type {PointerEvent} */ f) => Math.hypot(f.clientX - other.clientX, f.clientY - other.clientY);
        const [cx, cy] = at(other);
        zoom(gap(before) / Math.max(1, gap(event)), cx, cy);
      }
    } else {
      host.setPointerCapture(event.pointerId);
      view = [view[0] + x0 - x1, view[1] + y0 - y1, view[2], view[3]];
      look();
    }
    fingers.set(event.pointerId, event);
  });
  host.addEventListener("keydown", (event) => {
    if (!view || event.target !== host) return;
    const step = view[2] / 12, [cx, cy] = [view[0] + view[2] / 2, view[1] + view[3] / 2];
    const move = /** @type {Record<string, number[]>} */ ({ ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] })[event.key];
    if (move) { view = [view[0] + move[0], view[1] + move[1], view[2], view[3]]; look(); }
    else if (event.key === "+" || event.key === "=") zoom(0.8, cx, cy);
    else if (event.key === "-") zoom(1.25, cx, cy);
    else if (event.key === "0") all();
    else return;
    event.preventDefault();
  });
  return {
    /** @param {string | null} source */
    show(source) {
      if (source === null) return;
      host.innerHTML = source.replace(/^<\?xml[^>]*>/, "");
      const made = svg();
      if (!made) return;
      made.dataset.whole = made.getAttribute("viewBox") ?? "";
      made.removeAttribute("width"); made.removeAttribute("height");
      if (view) look(); else all();
    },
    all,
    /** @param {number} by */
    middle(by) { if (view) zoom(by, view[0] + view[2] / 2, view[1] + view[3] / 2); },
  };
}
