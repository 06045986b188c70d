// @ts-check
/** Which fields of own numbers the maker has opened, though the docket still says a word. @type {Set<string>} */
const open = new Set();

/** "Own numbers" opens the fields behind a word; choosing a word closes them.
 * @param {HTMLElement} place */
export function style(place) {
  place.addEventListener("change", (event) => {
    const radio = /** @type {HTMLInputElement} */ (event.target);
    if (radio.type !== "radio") return;
    if (radio.dataset.opens) {
      open.add(radio.dataset.opens);
      shown(place);
    } else {
      open.delete(`${radio.name}-own`);
      for (const fields of place.querySelectorAll(".own")) if (fields.id === `${radio.name}-own`) /** @type {HTMLElement} */ (fields).hidden = true;
    }
  });
  place.addEventListener("click", (event) => {
    const button = /** @type {Element} */ (event.target).closest(".reset");
    if (button) open.delete(button.id.replace(/-reset$/, "-own"));
  });
}

/** What was open stays open when the place is written anew.
 * @param {HTMLElement} place */
export function shown(place) {
  for (const id of open) {
    const fields = document.getElementById(id), radio = place.querySelector(`[data-opens="${id}"]`);
    if (fields) fields.hidden = false;
    if (radio) /** @type {HTMLInputElement} */ (radio).checked = true;
  }
}
