// @ts-check
import { maybe, near } from "./dom.js";

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
  /** On the stand it is a line, which is drawn. @param {Event} event */
  const pointed = (event) => near(event, "[data-tape]", Element)?.getAttribute("data-tape") ?? undefined;
  /** @param {Event} event */
  const named = (event) => pointed(event) ?? near(event, ".tape", Element)?.querySelector("input")?.id.replace("tape-", "");
  place.addEventListener("focusin", (event) => light(named(event)));
  place.addEventListener("pointerover", (event) => { const name = named(event); if (name) light(name); });
  place.addEventListener("click", (event) => {
    const name = pointed(event);
    if (name) maybe(place, `#tape-${CSS.escape(name)}`, HTMLElement)?.focus();
  });
}
