// @ts-check
/** Numbers that the server writes into attributes, side by side. What was not written counts as nothing.
 * @typedef {[number, number]} Place across and down, mm
 * @typedef {[number, number, number, number]} Box left, top, right, bottom in mm */

/** @param {string | null | undefined} text @returns {Place} */
export function pair(text) {
  const [x = 0, y = 0] = (text ?? "").split(" ").map(Number);
  return [x, y];
}

/** @param {string | undefined} text @returns {Box} */
export function box(text) {
  const [left = 0, top = 0, right = 1, bottom = 1] = (text ?? "").split(" ").map(Number);
  return [left, top, right, bottom];
}
