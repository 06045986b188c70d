// @ts-check
import { maybe, near } from "./dom.js";
import { Refused, ask, excuse } from "./send.js";

/** Edges and their allowances: choosing the one shows the other; the map of the sheets, when it is asked for.
 * @param {HTMLElement} place @param {HTMLElement} drawing @param {(labels: string[]) => void} point @param {(words: string) => void} say */
export function finish(place, drawing, point, say) {
  place.addEventListener("focusin", (event) => {
    const edge = near(event, "*", HTMLElement)?.dataset.edge;
    if (edge) point([edge]);
  });
  drawing.addEventListener("click", (event) => {
    if (document.body.dataset.place !== "finish") return;
    const mark = near(event, "[data-step]", SVGElement)?.dataset.step;
    const field = mark ? document.getElementById(`allow-${mark}`) : null;
    if (field) { field.scrollIntoView({ block: "center" }); field.focus(); }
  });
  place.addEventListener("click", (event) => { if (near(event, "#ask-run", HTMLElement)) void sizes(place, say); });
  place.addEventListener("click", async (event) => {
    const map = place.querySelector("#map");
    if (!map || !near(event, "#ask-map", HTMLElement)) return;
    map.textContent = "The sheets are being laid …";
    try {
      map.innerHTML = (await ask("map")).html;
    } catch (error) {
      const refused = error instanceof Refused;
      map.textContent = refused ? "" : excuse(error);
      if (refused) say(excuse(error));
    }
  });
}

/** The docket in the sizes that are typed, shown below them.
 * @param {HTMLElement} place @param {(words: string) => void} say */
async function sizes(place, say) {
  const into = maybe(place, "#run", HTMLElement), typed = maybe(place, "#run-sizes", HTMLInputElement);
  const meet = maybe(place, "#run-meet", HTMLSelectElement), rest = maybe(place, "#run-go-on", HTMLInputElement);
  if (!into || !typed || !meet) return;
  into.textContent = "The sizes are being drafted …";
  try {
    into.classList.remove("told");
    into.innerHTML = (await ask("sizes", { sizes: typed.value, meet: meet.value, go_on: rest?.checked ? "yes" : "" })).html;
  } catch (error) {
    into.classList.add("told");
    into.textContent = excuse(error);
    say("The sizes could not be made.");
  }
}
