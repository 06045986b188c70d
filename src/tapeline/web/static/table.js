// @ts-check
/** Everything about the drawing: seen, pointed at, played, pulled, compared. */
import { comb } from "./comb.js";
import { compare } from "./compare.js";
import { drawingView } from "./drawing.js";
import { handles } from "./handles.js";
import { marks } from "./marks.js";
import { scale } from "./scale.js";
import { steps } from "./steps.js";

/** @param {(keys: string[], value: string, done: boolean) => void} edit writes a value into the docket */
export function table(edit) {
  const $ = (/** @type {string} */ what) => /** @type {HTMLElement} */ (document.querySelector(what));
  const drawing = $("#drawing");
  const view = drawingView(drawing), told = marks(drawing, view.from), play = steps(drawing, told, view);
  const say = told.say;
  const pull = handles(drawing, view, edit, say), old = compare(drawing, view, told.pin);
  const ticked = (/** @type {string} */ id) => /** @type {HTMLInputElement} */ ($(id)).checked;
  scale(view.scale);

  function shown() {
    drawing.classList.toggle("points", ticked("#show-points"));
    drawing.classList.toggle("handles", ticked("#show-handles"));
    comb(drawing, ticked("#show-comb"));
  }
  for (const id of ["#show-points", "#show-handles", "#show-comb"]) $(id).addEventListener("change", () => { shown(); if (id === "#show-points") view.relay(); });
  document.addEventListener("click", (event) => {
    const target = /** @type {HTMLElement} */ (event.target), button = target.closest("button");
    const more = /** @type {HTMLDetailsElement} */ ($("details.more"));
    if (more.open && !more.contains(target)) more.open = false;
    if (!button) return;
    if (button.dataset.view) { if (button.dataset.view === "all") view.all(true); else view.middle(button.dataset.view === "in" ? 0.75 : 1.33); }
    else if (button.classList.contains("step")) play.find(/** @type {HTMLElement} */ (button.closest("li"))?.dataset.label ?? "");
    else if (button.id === "ask-size") size(button.dataset.size ?? "");
  });
  document.addEventListener("focusin", (event) => {
    const field = /** @type {HTMLElement} */ (event.target);
    if (field.id.startsWith("size-")) told.pin(field.id.slice(5));
  });
  document.addEventListener("keydown", (event) => { const more = /** @type {HTMLDetailsElement} */ ($("details.more")); if (event.key === "Escape" && more.open) { more.open = false; more.querySelector("summary")?.focus(); } });
  /** The field of a size, in its place of the day. @param {string} name */
  function size(name) {
    location.hash = "#/draft";
    // The place is shown when the address has changed, which is told a moment later.
    setTimeout(() => { const field = document.getElementById(`size-${name}`); field?.scrollIntoView({ block: "center" }); field?.focus(); }, 60);
  }
  shown();
  return {
    say,
    /** Light several lines at once, and bring the drawing into view. @param {string[]} labels */
    point(labels) { told.several(labels); drawing.scrollIntoView({ block: "nearest" }); },
    /** @param {{drawing: string | null, errors: number}} state */
    show(state) {
      pull.before();
      view.show(state.drawing);
      const drawn = view.pieces().length > 0, stale = state.drawing === null && drawn;
      $("#no-drawing").hidden = drawn;
      drawing.classList.toggle("old", stale);
      $("#old-drawing").hidden = !stale;
      if (stale) $("#old-drawing").textContent = "This is the drawing from before: what was written last cannot be drafted yet.";
      told.renew();
      play.renew();
      old.renew();
      comb(drawing, ticked("#show-comb"));
      pull.renew();
    },
    /** Another place of the day. @param {string} name */
    place(name) {
      play.place(name);
      const box = /** @type {HTMLInputElement} */ ($("#show-handles"));
      if (box.dataset.asked !== "yes") { box.checked = name === "style"; shown(); }
    },
  };
}
document.querySelector("#show-handles")?.addEventListener("change", (event) => { /** @type {HTMLElement} */ (event.target).dataset.asked = "yes"; });
