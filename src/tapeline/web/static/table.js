// @ts-check
/** Everything about the drawing: seen, pointed at, played, pulled, compared. */
import { comb } from "./comb.js";
import { compare } from "./compare.js";
import { near, need } from "./dom.js";
import { drawingView } from "./drawing.js";
import { handles } from "./handles.js";
import { marks } from "./marks.js";
import { dress } from "./points.js";
import { scale } from "./scale.js";
import { steps } from "./steps.js";

/** @param {(keys: string[], value: string, done: boolean) => void} edit writes a value into the docket */
export function table(edit) {
  const drawing = need(document, "#drawing", HTMLElement), more = need(document, "details.more", HTMLDetailsElement);
  const missing = need(document, "#no-drawing", HTMLElement), before = need(document, "#old-drawing", HTMLElement);
  /** @param {string} id */
  const box = (id) => need(document, id, HTMLInputElement);
  const points = box("#show-points"), grips = box("#show-handles"), teeth = box("#show-comb");
  const view = drawingView(drawing), told = marks(drawing, view.from), play = steps(drawing, told, view);
  const say = told.say;
  const pull = handles(drawing, view, edit, say), old = compare(drawing, view, told.pin);
  scale(view.scale);

  function shown() {
    const wanted = { points: points.checked, handles: grips.checked };
    let room = false;
    for (const [name, on] of Object.entries(wanted)) { room ||= on !== drawing.classList.contains(name); drawing.classList.toggle(name, on); }
    dress(drawing);
    // Points outside the pieces and handles between them need room of their own.
    if (room) view.relay();
    comb(drawing, teeth.checked);
  }
  for (const one of [points, grips, teeth]) one.addEventListener("change", shown);
  grips.addEventListener("change", () => { grips.dataset.asked = "yes"; });
  document.addEventListener("click", (event) => {
    const button = near(event, "button", HTMLElement);
    if (more.open && event.target instanceof Node && !more.contains(event.target)) more.open = false;
    if (!button) return;
    if (button.dataset.view) { if (button.dataset.view === "all") view.all(true); else view.middle(button.dataset.view === "in" ? 0.75 : 1.33); }
    else if (button.classList.contains("step")) play.find(button.closest("li")?.dataset.label ?? "");
    else if (button.id === "ask-size") size(button.dataset.size ?? "");
  });
  document.addEventListener("focusin", (event) => {
    const field = near(event, "*", Element);
    if (field?.id.startsWith("size-")) told.pin(field.id.slice(5));
  });
  document.addEventListener("keydown", (event) => { if (event.key === "Escape" && more.open) { more.open = false; more.querySelector("summary")?.focus(); } });
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
    /** @param {{drawing: string | null}} state */
    show(state) { old.end(); draw(state); },
    /** Show a drawing that is not the docket's, over the docket's own. @param {string} drawing @param {string} name what was tried */
    tryOut(drawing, name) {
      old.begin(name);
      draw({ drawing });
      const most = old.words();
      say(`${name[0]?.toUpperCase()}${name.slice(1)} over the drawing as it is now (dashed). Nothing is written. ${most ? `It moves most, in mm: ${most}.` : "It moves nothing."}`);
    },
    /** Another place of the day. @param {string} name */
    place(name) {
      play.place(name);
      if (grips.dataset.asked !== "yes") { grips.checked = name === "style"; shown(); }
    },
  };
  /** @param {{drawing: string | null}} state */
  function draw(state) {
    pull.before();
    view.show(state.drawing);
    const drawn = view.pieces().length > 0, stale = state.drawing === null && drawn;
    missing.hidden = drawn;
    drawing.classList.toggle("old", stale);
    before.hidden = !stale;
    if (stale) before.textContent = "This is the drawing from before: what was written last cannot be drafted yet.";
    told.renew();
    play.renew();
    dress(drawing);
    old.renew();
    comb(drawing, teeth.checked);
    pull.renew();
  }
}
