// @ts-check
/** The docket as text: kept from being overwritten while it is written, with its lines numbered.
 * @param {HTMLElement} place @param {{ text: () => string, use: (text: string) => void, tell: (words: string) => void, name: () => string }} page */
export function docket(place, page) {
  const area = () => /** @type {HTMLTextAreaElement | null} */ (place.querySelector("#text"));
  let written = false, taken = false, seen = page.text();
  function number() {
    const numbers = place.querySelector("#numbers"), now = area();
    if (!numbers || !now) return;
    const count = now.value.split("\n").length;
    if (numbers.childElementCount !== count) numbers.replaceChildren(...Array.from({ length: count }, (_, i) => Object.assign(document.createElement("span"), { textContent: String(i + 1) })));
    /** @type {HTMLElement} */ (numbers).style.transform = `translateY(${-now.scrollTop}px)`;
  }
  place.addEventListener("input", (event) => { if (event.target === area()) { written = true; number(); } });
  place.addEventListener("scroll", number, true);
  place.addEventListener("change", async (event) => {
    const field = /** @type {HTMLInputElement} */ (event.target), file = field.files?.[0], now = area();
    if (field.id !== "open-text" || !file || !now) return;
    if (file.size > 900_000) { page.tell(`${file.name} is too large to be a docket.`); return; }
    now.value = await file.text(); written = true; number();
    page.tell(`${file.name} is shown; use it with "Use this text".`);
  });
  place.addEventListener("click", async (event) => {
    const button = /** @type {Element} */ (event.target).closest("button"), now = area();
    if (!button || !now) return;
    if (button.id === "take-text") { written = false; taken = true; page.use(now.value); }
    else if (button.id === "take-theirs") { written = false; now.value = page.text(); hide(true); number(); }
    else if (button.id === "save-text") await save(now.value, page.name());
    else if (button.id === "new-text") {
      const value = (/** @type {string} */ id) => /** @type {HTMLInputElement} */ (place.querySelector(id)).value;
      const asked = new URLSearchParams({ style: value("#new-style"), unit: value("#new-unit"), size: value("#new-size").trim() });
      const answer = await (await fetch(`/template?${asked}`)).json();
      if (answer.text === undefined) { page.tell(answer.problem); return; }
      now.value = answer.text; written = true; number(); now.focus(); now.setSelectionRange(0, 0);
    } else if (button.dataset.line) {
      const rows = now.value.split("\n"), line = Number(button.dataset.line) - 1;
      const start = rows.slice(0, line).join("\n").length + (line ? 1 : 0);
      now.focus(); now.setSelectionRange(start, start + (rows[line] ?? "").length);
      now.scrollTop = Math.max(0, line - 5) * (now.scrollHeight / rows.length);
    }
  });
  function hide(/** @type {boolean} */ hidden) { const told = place.querySelector("#changed"); if (told) /** @type {HTMLElement} */ (told).hidden = hidden; }
  return {
    /** Whether the place must not be painted over: somebody is writing there. */
    get written() { return written; },
    /** Another window was first: what was written here is kept, and not used. */
    refused() { if (taken) written = true; },
    /** After a paint. */
    painted() { taken = false; number(); if (written && page.text() !== seen) hide(false); seen = page.text(); },
  };
}

/** Save where the maker chooses, where the browser can ask; otherwise as a download.
 * @param {string} text @param {string} name */
async function save(text, name) {
  const picker = /** @type {any} */ (window).showSaveFilePicker;
  if (picker) {
    try {
      const file = await picker({ suggestedName: name, types: [{ description: "Docket", accept: { "application/toml": [".toml"] } }] });
      const stream = await file.createWritable();
      await stream.write(text); await stream.close();
      return;
    } catch (error) { if (/** @type {Error} */ (error).name === "AbortError") return; }
  }
  const link = Object.assign(document.createElement("a"), { href: URL.createObjectURL(new Blob([text], { type: "application/toml" })), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
