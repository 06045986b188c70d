// @ts-check
import { maybe, near, need } from "./dom.js";
import { dress } from "./points.js";
/** @import { View } from "./drawing.js" */
/** @import { Marks } from "./marks.js" */

/** Playing the construction: each step draws its lines and points, and says its words below the drawing.
 * @param {HTMLElement} drawing @param {Marks} told
 * @param {View} view */
export function steps(drawing, told, view) {
  /** @type {ReturnType<typeof setInterval> | undefined} */
  let playing;
  let at = Infinity, sheet = "";
  const player = need(document, "#player", HTMLElement), slider = need(player, "#step", HTMLInputElement);
  const bare = need(document, "#no-line", HTMLElement), button = need(player, "[data-play=play]", HTMLElement), number = need(player, "#step-number", HTMLElement), total = need(player, "#step-count", HTMLElement);
  const still = () => matchMedia("(prefers-reduced-motion: reduce)").matches;
  const count = () => told.rows().size;

  /** Hide what is not drawn yet. */
  function veil() {
    const building = at < count(), was = drawing.classList.contains("building");
    drawing.classList.toggle("building", building);
    if (!building && !was && slider.max === String(count())) { slider.value = slider.max; return building; }
    let drawn = 0;
    for (const [label, row] of told.rows()) {
      drawn++;
      row.classList.toggle("later", drawn > at);
      if (building && drawn === at) row.setAttribute("aria-current", "step"); else row.removeAttribute("aria-current");
      if (row.dataset.sheet) for (const mark of told.drawn(label)) { mark.classList.toggle("later", drawn > at); mark.classList.toggle("now", building && drawn === at); }
    }
    dress(drawing);
    slider.max = String(Math.max(1, count()));
    slider.value = String(Math.min(at, count()));
    slider.setAttribute("aria-valuetext", `step ${slider.value} of ${slider.max}`);
    number.textContent = slider.value;
    total.textContent = slider.max;
    return building;
  }
  /** @param {number} step @param {boolean} [scroll] */
  function to(step, scroll = true) {
    const was = drawing.classList.contains("building");
    at = Math.max(1, step >= count() ? Infinity : step);
    const building = veil();
    bare.hidden = !building || [...told.rows()].slice(0, at).some(([, row]) => row.dataset.sheet);
    if (was !== building) view.relay();
    if (!building) { sheet = ""; told.light(""); if (was) view.all(true); return; }
    const [label, row] = [...told.rows()][at - 1] ?? [];
    if (!label || !row) return;
    told.light(label);
    if (scroll) row.scrollIntoView({ block: "nearest" });
    const on = row.dataset.sheet ?? "";
    if (on && on !== sheet) { sheet = on; view.piece(on); }
    if (!still()) for (const mark of told.drawn(label)) pen(mark);
  }
  /** The line runs out from its start as a pencil draws it. @param {Element} mark */
  function pen(mark) {
    const line = maybe(mark, "path:not(.hit)", SVGPathElement);
    if (!line) return;
    const long = line.getTotalLength() / view.per;
    line.animate([{ strokeDasharray: `0 ${long}` }, { strokeDasharray: `${long} 0` }], { duration: 420, easing: "ease-in-out" });
  }
  function stop() {
    clearInterval(playing); playing = undefined;
    button.setAttribute("aria-pressed", "false"); button.textContent = "Play";
  }
  function play() {
    if (playing) { stop(); return; }
    if (at >= count()) to(1);
    button.setAttribute("aria-pressed", "true"); button.textContent = "Pause";
    playing = setInterval(() => { if (at >= count()) stop(); else to(at + 1); }, 900);
  }
  slider.addEventListener("input", () => { stop(); to(Number(slider.value)); });
  player.addEventListener("click", (event) => {
    const what = near(event, "button", HTMLElement)?.dataset.play;
    if (what === "play") play();
    else if (what) { stop(); to(Math.min(at, count()) + (what === "on" ? 1 : -1)); }
  });
  return {
    to, stop,
    /** To the step of a label. @param {string} label */
    find(label) { stop(); const step = [...told.rows().keys()].indexOf(label) + 1; if (step) to(step, false); },
    /** The drawing is new: it is veiled as before. */
    renew() { player.hidden = document.body.dataset.place !== "draft" || !count(); veil(); },
    /** Another place of the day is shown. @param {string} place */
    place(place) { player.hidden = place !== "draft" || !count(); if (place !== "draft" && at < Infinity) { stop(); to(Infinity); } },
  };
}
