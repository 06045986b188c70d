// @ts-check
/** Laying pieces out so that they are as large as the window allows.
 * @typedef {{places: Place[], width: number, height: number}} Layout */
/** @import { Box, Place } from "./numbers.js" */

const MOST = 9;

/** In rows or in columns, in their order; of all the ways to break them, the one that shows them largest.
 * @param {Box[]} boxes @param {number} ratio width of the window over its height @param {number} gap @returns {Layout} */
export function arrange(boxes, ratio, gap) {
  /** @type {Layout | null} */
  let best = null;
  let most = Infinity;
  for (const groups of breaks(boxes.length)) for (const rows of [true, false]) {
    const made = lay(boxes, groups, rows, gap);
    // Of two that show the pieces equally large, the one that takes less room.
    const needed = Math.max(made.width / ratio, made.height) + 0.02 * Math.min(made.width / ratio, made.height);
    if (needed < most - 0.5) { best = made; most = needed; }
  }
  return best ?? { places: [], width: 1, height: 1 };
}

/** @param {number} count @returns {number[][]} sizes of the groups, in order */
function breaks(count) {
  if (count > MOST) { const side = Math.ceil(Math.sqrt(count)); return [Array.from({ length: Math.ceil(count / side) }, (_, i) => Math.min(side, count - i * side))]; }
  const found = [];
  for (let mask = 0; mask < 2 ** Math.max(0, count - 1); mask++) {
    const sizes = [];
    let size = 1;
    for (let i = 0; i < count - 1; i++) if (mask & (1 << i)) { sizes.push(size); size = 1; } else size++;
    found.push([...sizes, size]);
  }
  return found;
}

/** @param {Box[]} boxes @param {number[]} groups @param {boolean} rows @param {number} gap @returns {Layout} */
function lay(boxes, groups, rows, gap) {
  /** @type {Place[]} */
  const places = [];
  let index = 0, across = 0, longest = 0;
  for (const size of groups) {
    let along = 0, deep = 0;
    for (const [left, top, right, bottom] of boxes.slice(index, index + size)) {
      const [w, h] = [right - left, bottom - top];
      places.push(rows ? [along - left, across - top] : [across - left, along - top]);
      along += (rows ? w : h) + gap;
      deep = Math.max(deep, rows ? h : w);
    }
    index += size;
    longest = Math.max(longest, along - gap);
    across += deep + gap;
  }
  return rows ? { places, width: longest, height: across - gap } : { places, width: across - gap, height: longest };
}
