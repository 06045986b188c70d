// @ts-check
const DEEP_PX = 22;

/** Rulers at the upper and left edge, in the docket's unit, measured from the corner of one piece.
 * @typedef {{per: number, x: number, y: number, w: number, h: number, unit: number, sign: string, from: string}} Seen
 * @param {HTMLElement} host */
export function rulers(host) {
  const top = document.createElement("canvas"), left = document.createElement("canvas");
  const corner = document.createElement("span");
  top.className = "ruler top"; left.className = "ruler left"; corner.className = "ruler corner";
  for (const part of [top, left, corner]) { part.setAttribute("aria-hidden", "true"); host.append(part); }

  let colour = getComputedStyle(top).color;
  /** @type {Seen | null} */
  let last = null;
  let drawn = "";
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", () => { colour = getComputedStyle(top).color; drawn = ""; if (last) draw(last); });

  /** @param {HTMLCanvasElement} canvas @param {boolean} level @param {Seen} seen */
  function strip(canvas, level, seen) {
    const long = level ? seen.w : seen.h, deep = DEEP_PX, dense = devicePixelRatio || 1;
    const [w, h] = level ? [long, deep] : [deep, long];
    if (canvas.width !== Math.round(w * dense) || canvas.height !== Math.round(h * dense)) { canvas.width = Math.round(w * dense); canvas.height = Math.round(h * dense); }
    const ink = canvas.getContext("2d");
    if (!ink) return;
    ink.setTransform(dense, 0, 0, dense, 0, 0);
    ink.clearRect(0, 0, w, h);
    ink.strokeStyle = ink.fillStyle = colour;
    ink.font = `10px system-ui, sans-serif`;
    ink.lineWidth = 1;
    const start = level ? seen.x : seen.y, [major, parts] = steps(seen.per, seen.unit);
    const minor = (major * seen.unit) / parts, first = Math.ceil(start / minor);
    ink.beginPath();
    for (let i = first; i * minor < start + long * seen.per; i++) {
      const at = Math.round((i * minor - start) / seen.per) + 0.5, whole = i % parts === 0, half = (i * 2) % parts === 0;
      const tick = whole ? deep * 0.5 : half ? deep * 0.35 : deep * 0.2;
      if (level) { ink.moveTo(at, deep); ink.lineTo(at, deep - tick); } else { ink.moveTo(deep, at); ink.lineTo(deep - tick, at); }
      if (!whole) continue;
      const text = String(Number(((i / parts) * major).toFixed(3)));
      if (level) ink.fillText(text, at + 3, 10);
      else { ink.save(); ink.translate(10, at - 3); ink.rotate(-Math.PI / 2); ink.fillText(text, 0, 0); ink.restore(); }
    }
    ink.stroke();
  }
  /** @param {Seen} seen */
  function draw(seen) {
    last = seen;
    // Less than half a pixel away from what is there is the same.
    const now = [seen.per, seen.w, seen.h, seen.unit, devicePixelRatio, Math.round((2 * seen.x) / seen.per), Math.round((2 * seen.y) / seen.per)].join(" ");
    corner.textContent = seen.sign;
    corner.title = `Rulers measure from the corner of: ${seen.from}`;
    if (now === drawn) return;
    drawn = now;
    strip(top, true, seen); strip(left, false, seen);
  }
  return { draw };
}

/** How far apart the numbers are, in units, and into how many parts they are divided.
 * @param {number} per @param {number} unit @returns {[number, number]} */
function steps(per, unit) {
  const inch = unit > 20;
  /** @type {[number, number][]} */
  const ladder = inch
    ? [[0.25, 4], [0.5, 4], [1, 8], [2, 4], [6, 6], [12, 12], [24, 4], [48, 4]]
    : [[0.1, 2], [0.5, 5], [1, 10], [2, 4], [5, 5], [10, 10], [20, 4], [50, 5], [100, 10]];
  /** @type {[number, number]} */
  let step = [1, 1];
  for (step of ladder) if ((step[0] * unit) / per >= 44) break;
  return step;
}
