// @ts-check
import { docket } from "./docket.js";
import { every, near, need } from "./dom.js";
import { finish } from "./finish.js";
import { lay } from "./lay.js";
import { measure } from "./measure.js";
import { rewrite } from "./rewrite.js";
import { seams } from "./seams.js";
import { ask, excuse, queue, tried, whole } from "./send.js";
import { shown, style } from "./style.js";
import { table } from "./table.js";
/** @import { Drawn, State } from "./send.js" */

const $ = (/** @type {string} */ what) => need(document, what, HTMLElement);
const undo = need(document, "#undo", HTMLButtonElement), redo = need(document, "#redo", HTMLButtonElement);
/** Something is typed or set there. @param {Element | null} one @returns {one is HTMLInputElement | HTMLTextAreaElement} */
const isField = (one) => one instanceof HTMLInputElement || one instanceof HTMLTextAreaElement;
/** @type {State} */
let state = JSON.parse($("#state").textContent ?? "{}");

const writing = docket($("#docket"), {
  text: () => state.text,
  use: (text) => line.add("/text", { base: state.version, text }),
  tell: (words) => cutting.say(words),
  name: () => `${state.title.toLowerCase().replace(/[^a-z0-9]+/g, "-")}.toml`,
});

const place = () => document.body.dataset.place ?? "";
const line = queue((next) => { if (whole(next)) paint(next); else drawn(next); }, (why, again) => {
  if (again) { $("#offline").hidden = false; setTimeout(() => void line.again(), 1000); } else cutting.say(why.message);
}, () => `/state?${new URLSearchParams({ place: place() })}`);
const laid = seams($("#true"));
const cutting = table(set);
/** Write a value: its drawing comes first, then the place in view, and the others when nothing else waits.
 * @param {string[]} keys @param {string} value @param {boolean} done */
function set(keys, value, done) { line.add("/edit", { keys, value, done, place: place(), first: true }, keys.join(".")); }

/** @type {Record<string, string>} */
const written = {};
let rest = 0, trying = -1;
/** An answer to an edit has the place in view only: the others are fetched when nothing else waits. */
async function others() {
  if (!line.idle) return;
  try {
    /** @type {Record<string, string>} */
    const made = {};
    // One by one, so that a key that is pressed meanwhile does not wait for all of them.
    for (const name of every(document, "nav a", HTMLElement).map((link) => link.dataset.place ?? "")) {
      const one = await ask("state", { place: name });
      if (!line.idle || one.version !== state.version) return;
      Object.assign(made, one.places);
    }
    paint({ ...state, places: made });
  } catch { /* the next edit says so */ }
}

/** Show a state: every place anew, but where the maker is typing stays as it is.
 * @param {State} next */
function paint(next) {
  state = next;
  if (next.problem) writing.refused();
  const active = document.activeElement, id = active?.id, typed = isField(active) ? active.value : null;
  const from = isField(active) ? active.selectionStart : null;
  for (const [name, html] of Object.entries(next.places)) {
    const inside = $(`[data-inside=${name}]`);
    if (name === "docket" && writing.written) continue;
    if (written[name] !== html) rewrite(inside, (written[name] = html));
  }
  clearTimeout(rest);
  if (Object.keys(next.places).length === 1) rest = setTimeout(others, 400);
  if (id) {
    const now = document.getElementById(id);
    if (now && now !== document.activeElement) {
      now.focus({ preventScroll: true });
      if (typed !== null && isField(now) && !["range", "radio", "file"].includes(now.type)) { now.value = typed; if (from !== null) now.setSelectionRange(from, from); }
    }
  }
  shown($("#style"));
  drawn(next);
  $("#count").textContent = next.errors ? `${next.errors} to mend` : next.doubts ? `${next.doubts} to look at` : "all true";
  if (next.problem) cutting.say(`${next.problem}: ${writing.written ? "your text is kept, and not used yet" : "what it wrote is shown"}.`);
  writing.painted();
  laid();
}
/** Show the drawing, and all that is known with it. @param {Drawn} next */
function drawn(next) {
  Object.assign(state, next);
  $("#offline").hidden = true;
  // What is tried stays in view while the places are fetched, and until something is written.
  if (trying !== next.version) { trying = -1; cutting.show(next); }
  undo.disabled = !next.undo;
  redo.disabled = !next.redo;
  $("#title").textContent = next.title;
  document.title = `${next.title} · Tapeline`;
  document.body.dataset.version = String(next.version);
}

/** @param {Event} event @param {boolean} done */
function edit(event, done) {
  const field = near(event, "[data-keys]", HTMLElement), { keys, last } = field?.dataset ?? {};
  if (!keys || !(isField(field) || field instanceof HTMLSelectElement)) return;
  set([...keys.split("."), ...(last ? [last] : [])], field.value, done);
}

document.addEventListener("input", (event) => edit(event, false));
document.addEventListener("change", (event) => edit(event, true));
document.addEventListener("click", (event) => {
  const button = near(event, "button", HTMLElement);
  if (!button) return;
  if (button.id === "undo") line.add("/undo", {});
  else if (button.id === "redo") line.add("/redo", {});
  else if (button.dataset.try) void tryOut(button.dataset.try.split("."), button.dataset.value ?? "");
  else if (button.dataset.compare === "drop" && trying >= 0) { trying = -1; cutting.show(state); cutting.say("The docket's drawing again."); }
  else if (button.dataset.show) cutting.point(button.dataset.show.split(" "));
  else if (button.dataset.set) set(button.dataset.set.split("."), button.dataset.value ?? "", true);
});
document.addEventListener("keydown", (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
  if (near(event, "#text", HTMLElement)) return;
  event.preventDefault();
  line.add(event.shiftKey ? "/redo" : "/undo", {});
});
function go() {
  const links = every(document, "nav a", HTMLElement), names = links.map((link) => link.dataset.place ?? "");
  const name = names.includes(location.hash.slice(2)) ? location.hash.slice(2) : "measure";
  for (const section of every(document, "main section", HTMLElement)) section.hidden = section.id !== name;
  for (const link of links) if (link.dataset.place === name) link.setAttribute("aria-current", "page"); else link.removeAttribute("aria-current");
  document.body.dataset.place = name;
  // What was tried is for Measure alone: whoever goes on sees the docket's own drawing.
  if (trying >= 0) { trying = -1; cutting.show(state); }
  cutting.place(name);
  writing.shown();
  laid();
}
// Each place begins at its top, whether the window scrolls or the place itself.
addEventListener("hashchange", () => { go(); window.scrollTo(0, 0); $("#place").scrollTop = 0; });
document.addEventListener("visibilitychange", async () => {
  if (document.hidden || !line.idle) return;
  try { const now = await ask("state"); if (now.version !== state.version) paint(now); } catch { $("#offline").hidden = false; }
});
/** Show the drawing with one value changed; nothing is written. @param {string[]} keys @param {string} value */
async function tryOut(keys, value) {
  let drawing;
  try { ({ drawing } = await tried(keys, value)); } catch (error) { cutting.say(excuse(error)); return; }
  if (!drawing) { cutting.say("With that value nothing can be drawn either."); return; }
  trying = state.version;
  cutting.tryOut(drawing, `${keys.at(-1)?.replaceAll("_", " ")} ${value}`);
}

measure($("#measure"));
style($("#style"));
lay($("#lay"), cutting.say);
finish($("#finish"), $("#drawing"), cutting.point, cutting.say);
go();
paint(state);
