// @ts-check
import { need } from "./dom.js";

/** The scale check: a bank card (ISO/IEC 7810 ID-1, 85.60 by 53.98 mm) held to the screen tells how large a pixel is.
 * @param {(per: number) => void} show shows so many mm for a pixel */
export function scale(show) {
  const WIDE_MM = 85.6, HIGH_MM = 53.98, KEPT = "tapeline.pixels-for-a-millimetre";
  const slider = need(document, "#card-size", HTMLInputElement), says = need(document, "#card-says", HTMLElement);
  const card = need(document, ".card", HTMLElement), button = need(document, "[data-scale=true]", HTMLButtonElement);
  let known = false;
  try { const kept = Number(localStorage.getItem(KEPT)); if (kept > 0) { slider.value = String(kept); known = true; } } catch { /* without a store, it is asked each time */ }
  function draw() {
    const pixels = Number(slider.value);
    // Upright, so that it has room on a phone.
    card.style.width = `${HIGH_MM * pixels}px`;
    card.style.height = `${WIDE_MM * pixels}px`;
    slider.setAttribute("aria-valuetext", `${pixels.toFixed(2)} pixels for a millimetre`);
    says.textContent = known ? "This screen has been checked with a card." : "Not checked on this screen yet: true size is a guess until then.";
  }
  slider.addEventListener("input", () => {
    known = true;
    try { localStorage.setItem(KEPT, slider.value); } catch { /* as above */ }
    draw();
  });
  button.addEventListener("click", () => show(1 / Number(slider.value)));
  draw();
}
