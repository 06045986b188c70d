// @ts-check
/** The points of the drawing. The page holds where each is and what it is called; how it looks (a dot, its name, the way
 * the hand went to it, a place to point at) is made when it is first to be seen: most of them never are. */
import { every } from "./dom.js";
import { pair } from "./numbers.js";

const SPACE = "http://www.w3.org/2000/svg";

/** Give every point that is to be seen now its looks, where it lies now. @param {HTMLElement} drawing */
export function dress(drawing) {
  const all = drawing.matches(".points, .building");
  for (const point of every(drawing, all ? ".paper .point" : ".paper :is(.asked, .source, .effect).point", SVGElement)) {
    const { at = "", from = "", dressed } = point.dataset, now = `${at} ${from}`;
    if (dressed === now) continue;
    point.dataset.dressed = now;
    const [x, y] = pair(at), place = { cx: x, cy: y };
    const name = part("text", { x, y, dx: "0.6em", dy: "-0.4em" });
    name.textContent = (point.dataset.step ?? "").split(".").at(-1)?.replaceAll("_", " ") ?? "";
    const reach = from ? [part("path", { class: "reach", d: `M${from}L${at}` })] : [];
    point.replaceChildren(...reach, part("circle", { class: "hit", ...place }), part("circle", { class: "dot", ...place }), name);
  }
}

/** @param {string} kind @param {Record<string, string | number>} looks */
function part(kind, looks) {
  const made = document.createElementNS(SPACE, kind);
  for (const [name, value] of Object.entries(looks)) made.setAttribute(name, String(value));
  return made;
}
