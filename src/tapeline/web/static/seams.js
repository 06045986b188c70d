// @ts-check
import { every, maybe, near } from "./dom.js";
import { ask, excuse } from "./send.js";
/** @import { SeamPlace } from "./send.js" */

/** Seams laid edge on edge and walked: fetched when the maker opens one, and again when the docket has changed.
 * @param {HTMLElement} place @returns {() => void} to be called when the place was written anew or comes into view */
export function seams(place) {
  /** How far each open seam is walked, from 0 to 1. @type {Map<string, number>} */
  const open = new Map();
  /** @type {Map<string, SeamPlace[]>} */
  const walks = new Map();
  /** Which are laid right sides together. @type {Set<string>} */
  const together = new Set();
  const box = (/** @type {string} */ name) => maybe(place, `#laid-${CSS.escape(name)}`, HTMLElement);
  const slider = (/** @type {string} */ name) => maybe(place, `#walk-${CSS.escape(name)}`, HTMLInputElement);

  /** @param {string} name @param {boolean} [asked] just now, by the maker, who will look at it */
  async function lay(name, asked = false) {
    const now = document.body.dataset.version ?? "", into = box(name), over = together.has(name);
    if (!into || into.dataset.version === now) return;
    into.dataset.version = now;
    const focus = into.contains(document.activeElement) ? document.activeElement?.id : "";
    let answer;
    try { answer = await ask("seam", { name, together: over ? "yes" : "no" }); } catch (error) {
      // Asked again the next time: the answer was none.
      delete into.dataset.version;
      if (open.has(name)) into.textContent = excuse(error);
      return;
    }
    if (box(name) !== into || into.dataset.version !== now || !open.has(name) || together.has(name) !== over) return;
    into.innerHTML = answer.html;
    walks.set(name, answer.places);
    step(name, Math.round((open.get(name) ?? 0) * (answer.places.length - 1)));
    if (asked) into.scrollIntoView({ block: "nearest" });
    if (focus) document.getElementById(focus)?.focus({ preventScroll: true });
  }

  /** Lay the rolling side where it is at one place of the walk. @param {string} name @param {number} index */
  function step(name, index) {
    const places = walks.get(name), at = places?.[index], into = box(name), range = slider(name);
    if (!places || !at || !into || !range) return;
    open.set(name, index / (places.length - 1));
    const [a, b, c, d, e, f] = at.move;
    maybe(into, ".rolling", SVGElement)?.setAttribute("transform", `matrix(${at.move.join(" ")})`);
    for (const text of every(into, "text.rolls", SVGElement)) {
      const x = Number(text.dataset.x), y = Number(text.dataset.y);
      text.setAttribute("x", String(a * x + c * y + e));
      text.setAttribute("y", String(b * x + d * y + f));
    }
    const touch = maybe(into, ".touch", SVGElement);
    touch?.setAttribute("cx", String(at.touch[0]));
    touch?.setAttribute("cy", String(at.touch[1]));
    range.value = String(index);
    range.setAttribute("aria-valuetext", at.words);
    const says = maybe(into, ".says", HTMLElement);
    if (says) says.textContent = `${at.words}.`;
  }

  function painted(asked = "") {
    if (document.body.dataset.place !== "true") return;
    for (const button of every(place, "button[aria-controls^=laid-]", HTMLElement)) {
      const name = button.dataset.lay ?? "", into = box(name), is = open.has(name);
      button.setAttribute("aria-expanded", String(is));
      button.textContent = is ? "Put the edges away" : "Lay the edges on each other";
      if (into) into.hidden = !is;
      if (is) void lay(name, name === asked);
    }
  }

  place.addEventListener("input", (event) => {
    const range = near(event, ".laid input[type=range]", HTMLInputElement);
    if (range) step(range.id.replace(/^walk-/, ""), Number(range.value));
  });
  place.addEventListener("change", (event) => {
    const field = near(event, "[data-together]", HTMLInputElement), name = field?.dataset.together, into = name ? box(name) : null;
    if (!field || !name || !into) return;
    if (field.checked) together.add(name); else together.delete(name);
    delete into.dataset.version;
    void lay(name);
  });
  place.addEventListener("click", (event) => {
    const button = near(event, "button", HTMLElement), name = button?.dataset.lay;
    if (button?.dataset.walk) return toMark(button, Number(button.dataset.walk));
    if (!button || !name) return;
    const toggles = button.hasAttribute("aria-controls");
    if (toggles && open.has(name)) open.delete(name); else open.set(name, open.get(name) ?? 0);
    painted(toggles ? name : "");
    if (!toggles) {
      box(name)?.parentElement?.scrollIntoView({ block: "start" });
      maybe(place, `[aria-controls="laid-${CSS.escape(name)}"]`, HTMLElement)?.focus({ preventScroll: true });
    }
  });

  /** To the next pair of marks, or the one before. @param {HTMLElement} button @param {number} way */
  function toMark(button, way) {
    const name = button.id.replace(/^(before|next)-/, ""), places = walks.get(name), range = slider(name);
    if (!places || !range) return;
    let index = Number(range.value) + way;
    while (places[index]?.mark === null) index += way;
    step(name, index);
  }
  return painted;
}
