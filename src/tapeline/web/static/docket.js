// @ts-check
import { maybe, near, need } from "./dom.js";
import { ask, excuse } from "./send.js";

/** The docket as text: kept from being overwritten while it is written, with its lines numbered.
 * @param {HTMLElement} place @param {{ text: () => string, use: (text: string) => void, tell: (words: string) => void, name: () => string }} page */
export function docket(place, page) {
  const area = () => maybe(place, "#text", HTMLTextAreaElement);
  let written = false, taken = false, seen = page.text();
  function number() {
    const numbers = maybe(place, "#numbers", HTMLElement), now = area();
    // Out of view it would only make the browser lay out the page in the middle of a change.
    if (!numbers || !now || document.body.dataset.place !== "docket") return;
    const count = now.value.split("\n").length;
    if (numbers.childElementCount !== count) numbers.replaceChildren(...Array.from({ length: count }, (_, i) => Object.assign(document.createElement("span"), { textContent: String(i + 1) })));
    numbers.style.transform = `translateY(${-now.scrollTop}px)`;
  }
  place.addEventListener("input", (event) => { if (event.target === area()) { written = true; number(); } });
  place.addEventListener("scroll", number, true);
  place.addEventListener("change", async (event) => {
    const file = near(event, "#open-text", HTMLInputElement)?.files?.[0], now = area();
    if (!file || !now) return;
    if (file.size > 900_000) { page.tell(`${file.name} is too large to be a docket.`); return; }
    now.value = await file.text(); written = true; number();
    page.tell(`${file.name} is shown; use it with "Use this text".`);
  });
  place.addEventListener("click", async (event) => {
    const button = near(event, "button", HTMLElement), now = area();
    if (!button || !now) return;
    if (button.id === "take-text") { written = false; taken = true; page.use(now.value); }
    else if (button.id === "take-theirs") { written = false; now.value = page.text(); hide(true); number(); }
    else if (button.id === "save-text") await save(now.value, page.name());
    else if (button.id === "new-text") {
      const chosen = (/** @type {string} */ id) => need(place, id, HTMLSelectElement).value;
      try {
        now.value = (await ask("template", { style: chosen("#new-style"), unit: chosen("#new-unit"), size: need(place, "#new-size", HTMLInputElement).value.trim() })).text;
      } catch (error) { page.tell(excuse(error)); return; }
      written = true; number(); now.focus(); now.setSelectionRange(0, 0);
    } else if (button.dataset.line) {
      const rows = now.value.split("\n"), line = Number(button.dataset.line) - 1;
      const start = rows.slice(0, line).join("\n").length + (line ? 1 : 0);
      now.focus(); now.setSelectionRange(start, start + (rows[line] ?? "").length);
      now.scrollTop = Math.max(0, line - 5) * (now.scrollHeight / rows.length);
    }
  });
  function hide(/** @type {boolean} */ hidden) { const told = maybe(place, "#changed", HTMLElement); if (told) told.hidden = hidden; }
  return {
    /** Whether the place must not be painted over: somebody is writing there. */
    get written() { return written; },
    /** Another window was first: what was written here is kept, and not used. */
    refused() { if (taken) written = true; },
    shown: number,
    /** After a paint. */
    painted() { taken = false; number(); if (written && page.text() !== seen) hide(false); seen = page.text(); },
  };
}

/** Save where the maker chooses, where the browser can ask; otherwise as a download.
 * @param {string} text @param {string} name */
async function save(text, name) {
  if (window.showSaveFilePicker) {
    try {
      const file = await window.showSaveFilePicker({ suggestedName: name, types: [{ description: "Docket", accept: { "application/toml": [".toml"] } }] });
      const stream = await file.createWritable();
      await stream.write(text); await stream.close();
      return;
    } catch (error) { if (error instanceof DOMException && error.name === "AbortError") return; }
  }
  const link = Object.assign(document.createElement("a"), { href: URL.createObjectURL(new Blob([text], { type: "application/toml" })), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
