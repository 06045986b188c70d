// @ts-check
/** Edges and their allowances: choosing the one shows the other; the map of the sheets, when it is asked for.
 * @param {HTMLElement} place @param {HTMLElement} drawing @param {(labels: string[]) => void} point @param {(words: string) => void} say */
export function finish(place, drawing, point, say) {
  place.addEventListener("focusin", (event) => {
    const edge = /** @type {HTMLElement} */ (event.target).dataset.edge;
    if (edge) point([edge]);
  });
  drawing.addEventListener("click", (event) => {
    if (document.body.dataset.place !== "finish") return;
    const mark = /** @type {HTMLElement | null} */ (/** @type {Element} */ (event.target).closest("[data-step]"))?.dataset.step;
    const field = mark ? document.getElementById(`allow-${mark}`) : null;
    if (field) { field.scrollIntoView({ block: "center" }); field.focus(); }
  });
  place.addEventListener("click", async (event) => {
    if (/** @type {Element} */ (event.target).id !== "ask-map") return;
    const map = place.querySelector("#map");
    if (!map) return;
    map.textContent = "The sheets are being laid …";
    try {
      const answer = await (await fetch("/map")).json();
      if (answer.html) map.innerHTML = answer.html; else { map.textContent = ""; say(answer.problem); }
    } catch { map.textContent = "Tapeline does not answer."; }
  });
}
