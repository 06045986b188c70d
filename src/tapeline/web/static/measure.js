// @ts-check
/** The stand and the tapes: pointing at one lights the other.
 * @param {HTMLElement} place */
export function measure(place) {
  /** @param {string | undefined} name */
  function light(name) {
    for (const lit of place.querySelectorAll(".lit")) lit.classList.remove("lit");
    const caption = place.querySelector(".stand figcaption");
    if (!name) { if (caption) caption.textContent = "Point at a tape, or go to its field, to see where it lies."; return; }
    for (const mark of place.querySelectorAll(`[data-tape="${CSS.escape(name)}"]`)) mark.classList.add("lit");
    const field = place.querySelector(`#tape-${CSS.escape(name)}`), row = field?.closest(".tape");
    row?.classList.add("lit");
    if (caption) caption.textContent = row?.querySelector("label")?.textContent ?? "";
  }
  const named = (/** @type {EventTarget | null} */ target) => {
    const element = /** @type {Element | null} */ (target);
    return /** @type {HTMLElement | null} */ (element?.closest("[data-tape]"))?.dataset.tape
      ?? element?.closest(".tape")?.querySelector("input")?.id.replace("tape-", "");
  };
  place.addEventListener("focusin", (event) => light(named(event.target)));
  place.addEventListener("pointerover", (event) => { const name = named(event.target); if (name) light(name); });
  place.addEventListener("click", (event) => {
    const name = /** @type {HTMLElement | null} */ (/** @type {Element} */ (event.target).closest("[data-tape]"))?.dataset.tape;
    if (name) /** @type {HTMLElement | null} */ (place.querySelector(`#tape-${CSS.escape(name)}`))?.focus();
  });
}
