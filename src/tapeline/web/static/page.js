// @ts-check
import { docket } from "./docket.js";
import { finish } from "./finish.js";
import { measure } from "./measure.js";
import { queue } from "./send.js";
import { shown, style } from "./style.js";
import { table } from "./table.js";
/** @import { State } from "./send.js" */

const $ = (/** @type {string} */ what) => /** @type {HTMLElement} */ (document.querySelector(what));
/** @type {State} */
let state = JSON.parse($("#state").textContent ?? "{}");

const writing = docket($("#docket"), {
  text: () => state.text,
  use: (text) => line.add("/text", { base: state.version, text }),
  tell: (words) => cutting.say(words),
  name: () => `${state.title.toLowerCase().replace(/[^a-z0-9]+/g, "-")}.toml`,
});

const line = queue(paint, (why, again) => {
  if (again) { $("#offline").hidden = false; setTimeout(() => void line.again(), 1000); } else cutting.say(why.message);
});
const place = () => document.body.dataset.place ?? "";
const cutting = table((keys, value, done) => line.add("/edit", { keys, value, done, place: place() }, keys.join(".")));

/** @type {Record<string, string>} */
const written = {};
let rest = 0;
/** @type {HTMLElement | null} */
let slider = null;
document.addEventListener("pointerdown", (event) => { const field = /** @type {HTMLElement} */ (event.target); slider = field.matches("input[type=range]") ? field : null; });
for (const kind of ["pointerup", "pointercancel"]) document.addEventListener(kind, () => { if (slider) { slider = null; clearTimeout(rest); rest = setTimeout(others, 400); } });
/** An answer to an edit has the place in view only: the others are fetched when nothing else waits. */
async function others() {
  if (!line.idle) return;
  try { const all = await (await fetch("/state")).json(); if (line.idle && all.version === state.version) paint(all); } catch { /* the next edit says so */ }
}

/** Show a state: every place anew, but where the maker is typing stays as it is.
 * @param {State} next */
function paint(next) {
  state = next;
  $("#offline").hidden = true;
  if (next.problem) writing.refused();
  const active = /** @type {HTMLInputElement | null} */ (document.activeElement);
  const id = active?.id, typed = active && "value" in active ? active.value : null;
  const from = active?.selectionStart ?? null, opened = [...document.querySelectorAll("details[open]")].map((d) => d.previousElementSibling?.id);
  for (const [name, html] of Object.entries(next.places)) {
    const inside = $(`[data-inside=${name}]`);
    if (name === "docket" && writing.written) continue;
    // A slider that is held would be lost with its place; when it is let go, the place is written anew.
    if (slider && inside.contains(slider)) continue;
    if (written[name] !== html) inside.innerHTML = written[name] = html;
  }
  clearTimeout(rest);
  if (Object.keys(next.places).length === 1) rest = setTimeout(others, 400);
  for (const before of opened) { const details = before ? document.getElementById(before)?.nextElementSibling : null; if (details instanceof HTMLDetailsElement) details.open = true; }
  if (id) {
    const now = /** @type {HTMLInputElement | null} */ (document.getElementById(id));
    if (now && now !== document.activeElement) {
      now.focus({ preventScroll: true });
      if (typed !== null && !["range", "radio"].includes(now.type) && now.tagName !== "SELECT" && now.tagName !== "BUTTON") { now.value = typed; if (from !== null) now.setSelectionRange(from, from); }
    }
  }
  shown($("#style"));
  cutting.show(next);
  /** @type {HTMLButtonElement} */ ($("#undo")).disabled = !next.undo;
  /** @type {HTMLButtonElement} */ ($("#redo")).disabled = !next.redo;
  $("#title").textContent = next.title;
  document.title = `${next.title} · Tapeline`;
  $("#count").textContent = next.errors ? `${next.errors} to mend` : next.doubts ? `${next.doubts} to look at` : "all true";
  if (next.problem) cutting.say(`${next.problem}: ${writing.written ? "your text is kept, and not used yet" : "what it wrote is shown"}.`);
  document.body.dataset.version = String(next.version);
  writing.painted();
}

/** @param {HTMLElement} field @param {boolean} done */
function edit(field, done) {
  const { keys, last } = field.dataset;
  if (!keys) return;
  const path = [...keys.split("."), ...(last ? [last] : [])];
  line.add("/edit", { keys: path, value: /** @type {HTMLInputElement} */ (field).value, done, place: place() }, path.join("."));
}

document.addEventListener("input", (event) => {
  const field = /** @type {HTMLInputElement} */ (event.target);
  if (field.dataset.keys) edit(field, false);
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
  else if (button.dataset.try) void tryOut(button.dataset.try.split("."), button.dataset.value ?? "");
  else if (button.dataset.show) cutting.point(button.dataset.show.split(" "));
  else if (button.dataset.set) line.add("/edit", { keys: button.dataset.set.split("."), value: button.dataset.value ?? "", done: true });
});
document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
  if (/** @type {HTMLElement} */ (event.target).id === "text") return;
  event.preventDefault();
  line.add(event.shiftKey ? "/redo" : "/undo", {});
});
function go() {
  const names = [...document.querySelectorAll("nav a")].map((a) => /** @type {HTMLElement} */ (a).dataset.place ?? "");
  const name = names.includes(location.hash.slice(2)) ? location.hash.slice(2) : "measure";
  for (const section of document.querySelectorAll("main section")) /** @type {HTMLElement} */ (section).hidden = section.id !== name;
  for (const link of document.querySelectorAll("nav a")) if (/** @type {HTMLElement} */ (link).dataset.place === name) link.setAttribute("aria-current", "page"); else link.removeAttribute("aria-current");
  document.body.dataset.place = name;
  cutting.place(name);
}
addEventListener("hashchange", () => { go(); window.scrollTo(0, 0); });
document.addEventListener("visibilitychange", async () => {
  if (document.hidden || !line.idle) return;
  try { const now = await (await fetch("/state")).json(); if (now.version !== state.version) paint(now); } catch { $("#offline").hidden = false; }
});
/** Show the drawing with one value changed; nothing is written. @param {string[]} keys @param {string} value */
async function tryOut(keys, value) {
  const answer = await fetch("/try", { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify({ keys, value }) });
  const tried = await answer.json();
  if (!tried.drawing) { cutting.say(tried.problem ?? "With that value nothing can be drawn either."); return; }
  cutting.show({ ...state, drawing: tried.drawing });
  cutting.say(`Shown with ${keys.at(-1)?.replaceAll("_", " ")} ${value}. Nothing is written: use it, or change something to go back.`);
}

measure($("#measure"));
style($("#style"));
finish($("#finish"), $("#drawing"), cutting.point, cutting.say);
go();
paint(state);
