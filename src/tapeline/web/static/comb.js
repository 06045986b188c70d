// @ts-check
import { every } from "./dom.js";
/** @import { Place } from "./numbers.js" */

/** @typedef {[Place, Place, Place, Place]} Curve its ends, and between them the two that pull it */
/** The comb: teeth on the outer side of every curve, the longer the sharper it turns there. Even teeth make a fair line. */
const SPACE = "http://www.w3.org/2000/svg";
const TEETH = 24, MM_BETWEEN = 5, MM_FOR_CURVATURE = 1600, LONGEST_MM = 60, SHORTEST_MM = 15;

/** @param {HTMLElement} drawing @param {boolean} on */
export function comb(drawing, on) {
  for (const old of drawing.querySelectorAll(".comb")) old.remove();
  if (!on) return;
  for (const line of every(drawing, ".paper .piece > .line .seam-line", SVGPathElement)) {
    const made = teeth(line.getAttribute("d") ?? "");
    if (!made) continue;
    const path = document.createElementNS(SPACE, "path");
    path.setAttribute("class", "comb"); path.setAttribute("d", made);
    line.parentElement?.append(path);
  }
}

/** @param {string} d a path of M, L and C with absolute numbers */
function teeth(d) {
  /** @type {Place} */
  let at = [0, 0];
  let out = "", tips = "";
  for (const [, letter, rest = ""] of d.matchAll(/([MLC])([^MLC]*)/g)) {
    const places = along(rest), [first, second, end] = places;
    if (letter === "C" && first && second && end) {
      /** @type {Curve} */
      const curve = [at, first, second, end];
      const far = Math.hypot(end[0] - at[0], end[1] - at[1]), count = Math.min(TEETH, Math.ceil(far / MM_BETWEEN));
      // Where a corner is only rounded off, teeth would say nothing of the line.
      if (far >= SHORTEST_MM) for (let i = 0; i <= count; i++) {
        const found = tooth(curve, i / count);
        if (!found) continue;
        out += `M${found.root}L${found.tip}`;
        tips += `${i ? "L" : "M"}${found.tip}`;
      }
    }
    at = places.at(-1) ?? at;
  }
  return out + tips;
}

/** @param {string} text numbers by twos @returns {Place[]} */
function along(text) {
  const n = (text.match(/-?[\d.]+/g) ?? []).map(Number);
  return Array.from({ length: Math.floor(n.length / 2) }, (_, i) => [n[2 * i] ?? 0, n[2 * i + 1] ?? 0]);
}

/** The tooth at a share of the way, as words for a path. @param {Curve} p @param {number} t @returns {{root: string, tip: string} | null} */
function tooth(p, t) {
  const u = 1 - t;
  const mix = (/** @type {0 | 1} */ k) => u * u * u * p[0][k] + 3 * u * u * t * p[1][k] + 3 * u * t * t * p[2][k] + t * t * t * p[3][k];
  const first = (/** @type {0 | 1} */ k) => 3 * (u * u * (p[1][k] - p[0][k]) + 2 * u * t * (p[2][k] - p[1][k]) + t * t * (p[3][k] - p[2][k]));
  const second = (/** @type {0 | 1} */ k) => 6 * (u * (p[2][k] - 2 * p[1][k] + p[0][k]) + t * (p[3][k] - 2 * p[2][k] + p[1][k]));
  const [x, y, dx, dy, ddx, ddy] = [mix(0), mix(1), first(0), first(1), second(0), second(1)], speed = Math.hypot(dx, dy);
  if (speed < 1e-6) return null;
  const curvature = (dx * ddy - dy * ddx) / speed ** 3;
  const long = Math.max(-LONGEST_MM, Math.min(LONGEST_MM, curvature * MM_FOR_CURVATURE));
  const words = (/** @type {number[]} */ ...all) => all.map((v) => Number(v.toFixed(2))).join(" ");
  return { root: words(x, y), tip: words(x + (dy / speed) * long, y - (dx / speed) * long) };
}
