// @ts-check
const LEAST_MM = 0.05;

/** `3.2 out, 1.0 down`: out is away from the centre, on whichever side the place lies.
 * @param {number} right mm @param {number} up mm @param {number} side 1 to the right of the centre, -1 to the left */
export function ways(right, up, side) {
  const out = right * side;
  return [
    Math.abs(out) >= LEAST_MM ? `${Math.abs(out).toFixed(1)} ${out > 0 ? "out" : "in"}` : "",
    Math.abs(up) >= LEAST_MM ? `${Math.abs(up).toFixed(1)} ${up > 0 ? "up" : "down"}` : "",
  ].filter(Boolean).join(", ");
}
