// @ts-check
import { every, maybe, near } from "./dom.js";

/** Which fields of own numbers the maker has opened, though the docket still says a word. @type {Set<string>} */
const open = new Set();

/** "Own numbers" opens the fields behind a word; choosing a word closes them.
 * @param {HTMLElement} place */
export function style(place) {
  place.addEventListener("change", (event) => {
    const radio = near(event, "input[type=radio]", HTMLInputElement);
    if (!radio) return;
    if (radio.dataset.opens) {
      open.add(radio.dataset.opens);
      shown(place);
    } else {
      open.delete(`${radio.name}-own`);
      for (const fields of every(place, ".own", HTMLElement)) if (fields.id === `${radio.name}-own`) fields.hidden = true;
    }
  });
  place.addEventListener("click", (event) => {
    const button = near(event, ".reset", HTMLElement);
    if (button) open.delete(button.id.replace(/-reset$/, "-own"));
  });
}

/** What was open stays open when the place is written anew.
 * @param {HTMLElement} place */
export function shown(place) {
  for (const id of open) {
    const fields = document.getElementById(id), radio = maybe(place, `[data-opens="${CSS.escape(id)}"]`, HTMLInputElement);
    if (fields) fields.hidden = false;
    if (radio) radio.checked = true;
  }
}
