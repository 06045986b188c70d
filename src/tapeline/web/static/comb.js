// @ts-check
/** The comb: teeth on the outer side of every curve, the longer the sharper it turns there. Even teeth make a fair line. */
const SPACE = "http://www.w3.org/2000/svg";
const TEETH = 24, MM_BETWEEN = 5, MM_FOR_CURVATURE = 1600, LONGEST_MM = 60, SHORTEST_MM = 15;

/** @param {HTMLElement} drawing @param {boolean} on */
export function comb(drawing, on) {
  for (const old of drawing.querySelectorAll(".comb")) old.remove();
  if (!on) return;
  for (const line of /** @type {NodeListOf<SVGPathElement>} */ (drawing.querySelectorAll(".paper .piece > .line .seam-line"))) {
    const made = teeth(line.getAttribute("d") ?? "");
    if (!made) continue;
    const path = document.createElementNS(SPACE, "path");
    path.setAttribute("class", "comb"); path.setAttribute("d", made);
    line.parentElement?.append(path);
  }
}

/** @param {string} d a path of M, L and C with absolute numbers */
function teeth(d) {
  let at = [0, 0], out = "", tips = "";
  for (const [, letter, rest] of d.matchAll(/([MLC])([^MLC]*)/g)) {
    const n = (rest.match(/-?[\d.]+/g) ?? []).map(Number);
    if (letter === "C") {
      const p = [at, [n[0], n[1]], [n[2], n[3]], [n[4], n[5]]];
      const far = Math.hypot(n[4] - at[0], n[5] - at[1]), count = Math.min(TEETH, Math.ceil(far / MM_BETWEEN));
      // Where a corner is only rounded off, teeth would say nothing of the line.
      if (far >= SHORTEST_MM) for (let i = 0; i <= count; i++) {
        const found = tooth(p, i / count);
        if (!found) continue;
        out += `M${found[0]} ${found[1]}L${found[2]} ${found[3]}`;
        tips += `${i ? "L" : "M"}${found[2]} ${found[3]}`;
      }
    }
    at = n.slice(-2);
  }
  return out + tips;
}

/** @param {number[][]} p @param {number} t */
function tooth(p, t) {
  const u = 1 - t;
  const mix = (/** @type {number} */ k) => u * u * u * p[0][k] + 3 * u * u * t * p[1][k] + 3 * u * t * t * p[2][k] + t * t * t * p[3][k];
  const first = (/** @type {number} */ k) => 3 * (u * u * (p[1][k] - p[0][k]) + 2 * u * t * (p[2][k] - p[1][k]) + t * t * (p[3][k] - p[2][k]));
  const second = (/** @type {number} */ k) => 6 * (u * (p[2][k] - 2 * p[1][k] + p[0][k]) + t * (p[3][k] - 2 * p[2][k] + p[1][k]));
  const [x, y, dx, dy, ddx, ddy] = [mix(0), mix(1), first(0), first(1), second(0), second(1)], speed = Math.hypot(dx, dy);
  if (speed < 1e-6) return null;
  const curvature = (dx * ddy - dy * ddx) / speed ** 3;
  const long = Math.max(-LONGEST_MM, Math.min(LONGEST_MM, curvature * MM_FOR_CURVATURE));
  return [x, y, x + (dy / speed) * long, y - (dx / speed) * long].map((v) => Number(v.toFixed(2)));
}
