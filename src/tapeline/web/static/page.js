// @ts-check
import { drawingView } from "./drawing.js";
import { queue } from "./send.js";
import { steps } from "./steps.js";
/** @import { State } from "./send.js" */

const $ = (/** @type {string} */ what) => /** @type {HTMLElement} */ (document.querySelector(what));
const drawing = $("#drawing"), told = $("#told");
const view = drawingView(drawing), construction = steps(drawing, told);
/** @type {State} */
let state = JSON.parse($("#state").textContent ?? "{}");

const line = queue(paint, (why, again) => {
  if (again) { $("#offline").hidden = false; setTimeout(() => void line.again(), 1000); } else told.textContent = why.message;
});

/** Show a state: every place anew, but where the maker is typing stays as it is.
 * @param {State} next */
function paint(next) {
  state = next;
  $("#offline").hidden = true;
  const active = /** @type {HTMLInputElement | null} */ (document.activeElement);
  const id = active?.id, typed = active && "value" in active ? active.value : null;
  const from = active?.selectionStart ?? null, opened = [...document.querySelectorAll("details[open]")].map((d) => d.previousElementSibling?.id);
  for (const [name, html] of Object.entries(next.places)) {
    const inside = $(`[data-inside=${name}]`);
    if (name === "docket" && id === "text") continue;
    if (inside.innerHTML !== html) inside.innerHTML = html;
  }
  for (const before of opened) { const details = before ? document.getElementById(before)?.nextElementSibling : null; if (details instanceof HTMLDetailsElement) details.open = true; }
  if (id) {
    const now = /** @type {HTMLInputElement | null} */ (document.getElementById(id));
    if (now && now !== document.activeElement) {
      now.focus({ preventScroll: true });
      if (typed !== null && now.type !== "range" && now.tagName !== "SELECT" && now.tagName !== "BUTTON") { now.value = typed; if (from !== null) now.setSelectionRange(from, from); }
    }
  }
  view.show(next.drawing);
  $("#no-drawing").hidden = drawing.innerHTML !== "";
  construction.to(Infinity);
  /** @type {HTMLButtonElement} */ ($("#undo")).disabled = !next.undo;
  /** @type {HTMLButtonElement} */ ($("#redo")).disabled = !next.redo;
  $("#title").textContent = next.title;
  document.title = `${next.title} · Tapeline`;
  $("#count").textContent = next.errors ? `${next.errors} to mend` : next.doubts ? `${next.doubts} to look at` : "all true";
  if (next.problem) told.textContent = `${next.problem}: what it wrote is shown.`;
  document.body.dataset.version = String(next.version);
}

/** @param {HTMLElement} field @param {boolean} done */
function edit(field, done) {
  const { keys, last } = field.dataset;
  if (!keys) return;
  const path = [...keys.split("."), ...(last ? [last] : [])];
  line.add("/edit", { keys: path, value: /** @type {HTMLInputElement} */ (field).value, done }, path.join("."));
}

document.addEventListener("input", (event) => {
  const field = /** @type {HTMLInputElement} */ (event.target);
  if (field.id === "step") construction.to(Number(field.value));
  else if (field.id === "show-points") drawing.classList.toggle("points", field.checked);
  else if (field.dataset.keys) edit(field, false);
});
document.addEventListener("change", (event) => {
  const field = /** @type {HTMLElement} */ (event.target);
  if (field.dataset.keys) edit(field, true);
});
document.addEventListener("click", (event) => {
  const button = /** @type {HTMLElement} */ (event.target).closest("button");
  if (!button) return;
  if (button.id === "undo") line.add("/undo", {});
  else if (button.id === "redo") line.add("/redo", {});
  else if (button.id === "take-text") line.add("/text", { base: state.version, text: /** @type {HTMLTextAreaElement} */ ($("#text")).value });
  else if (button.dataset.set) line.add("/edit", { keys: button.dataset.set.split("."), value: button.dataset.value ?? "", done: true });
  else if (button.dataset.view) { if (button.dataset.view === "all") view.all(); else view.middle(button.dataset.view === "in" ? 0.8 : 1.25); }
  else if (button.dataset.play === "play") construction.play();
  else if (button.dataset.play) { construction.stop(); construction.to(construction.number() + (button.dataset.play === "on" ? 1 : -1)); }
  else if (button.classList.contains("step")) construction.ask(button.closest("li")?.dataset.label ?? "");
});
document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
  if (/** @type {HTMLElement} */ (event.target).id === "text") return;
  event.preventDefault();
  line.add(event.shiftKey ? "/redo" : "/undo", {});
});
for (const kind of /** @type {const} */ (["pointerover", "focusin"])) drawing.addEventListener(kind, (event) => {
  const mark = /** @type {Element} */ (event.target).closest("[data-step]");
  if (mark) construction.ask(/** @type {HTMLElement} */ (mark).dataset.step ?? "");
});
drawing.addEventListener("pointerleave", () => construction.clear());

function go() {
  const names = [...document.querySelectorAll("nav a")].map((a) => /** @type {HTMLElement} */ (a).dataset.place ?? "");
  const name = names.includes(location.hash.slice(2)) ? location.hash.slice(2) : "measure";
  for (const section of document.querySelectorAll("main section")) /** @type {HTMLElement} */ (section).hidden = section.id !== name;
  for (const link of document.querySelectorAll("nav a")) if (/** @type {HTMLElement} */ (link).dataset.place === name) link.setAttribute("aria-current", "page"); else link.removeAttribute("aria-current");
}
addEventListener("hashchange", () => { go(); window.scrollTo(0, 0); });
document.addEventListener("visibilitychange", async () => {
  if (document.hidden || !line.idle) return;
  try { const now = await (await fetch("/state")).json(); if (now.version !== state.version) paint(now); } catch { $("#offline").hidden = false; }
});
go();
paint(state);
