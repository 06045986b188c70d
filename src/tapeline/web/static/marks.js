// @ts-check
import { every, near, need } from "./dom.js";
import { dress } from "./points.js";
import { ask, excuse } from "./send.js";
import { ways } from "./ways.js";
/** @import { Mover } from "./send.js" */
/** @typedef {ReturnType<typeof marks>} Marks */

/** Pointing at a line or point: it is lit, with what it comes from and what depends on it, and its reason is told.
 * @param {HTMLElement} drawing @param {(piece: string) => void} from told on which piece the asked mark lies */
export function marks(drawing, from) {
  const list = need(document, "#mark", HTMLSelectElement);
  const words = need(document, "#told-words", HTMLElement), key = need(document, "#told-key", HTMLElement), more = need(document, "#told-more", HTMLElement);
  const movers = need(document, "#ask-movers", HTMLButtonElement), size = need(document, "#ask-size", HTMLButtonElement);
  /** @type {Map<string, HTMLElement>} */
  let rows = new Map();
  /** @type {Map<string, string[]>} */
  let followers = new Map();
  const hint = words.textContent ?? "";
  let measuring = 0;
  /** @param {(string | Node)[]} parts */
  function put(...parts) { words.replaceChildren(...parts); words.classList.toggle("invites", parts[0] === hint); }
  /** @type {Element | null} */
  let before = null;
  let pinned = "", shown = "", listed = "", spoken = false;
  /** @type {Map<string, SVGElement>} */
  let index = new Map();
  /** The mark of a label, when it is drawn. @param {string} label */
  const drawn = (label) => { const mark = index.get(label); return mark ? [mark] : []; };
  /** @param {string} label */
  const needs = (label) => (rows.get(label)?.dataset.needs ?? "").split(" ").filter(Boolean);
  /** @param {string} label */
  const plain = (label) => label.replaceAll("_", " ").replace(".", ": ");

  /** What is next to a mark on one side; sizes are passed through to what is drawn. @param {string} label @param {(label: string) => string[]} next */
  function reach(label, next) {
    /** @type {Set<string>} */
    const found = new Set(), queue = [...next(label)];
    for (let one = queue.shift(); one !== undefined; one = queue.shift()) {
      if (found.has(one) || one === label) continue;
      found.add(one);
      if (rows.get(one)?.dataset.kind === "size") queue.push(...next(one));
    }
    return found;
  }
  function dark() { for (const mark of drawing.querySelectorAll(".asked, .source, .effect")) mark.classList.remove("asked", "source", "effect"); drawing.classList.remove("lit"); }
  /** @param {string} label @param {boolean} [quiet] */
  function light(label, quiet = false) {
    dark();
    shown = label;
    spoken = quiet;
    const row = rows.get(label);
    key.hidden = movers.disabled = !row;
    size.hidden = true;
    more.replaceChildren();
    if (!row) { if (!quiet) put(hint); return; }
    for (const one of reach(label, (l) => followers.get(l) ?? [])) for (const mark of drawn(one)) mark.classList.add("effect");
    for (const one of reach(label, needs)) for (const mark of drawn(one)) { mark.classList.remove("effect"); mark.classList.add("source"); }
    for (const mark of drawn(label)) mark.classList.add("asked");
    drawing.classList.add("lit");
    dress(drawing);
    from(row.dataset.sheet ?? "");
    if (!quiet) tell(label, row);
  }
  /** @param {string} label @param {HTMLElement} row */
  function tell(label, row) {
    const name = document.createElement("strong");
    name.textContent = plain(label);
    const lines = [...row.querySelectorAll(".says, .how, .formula")].map((part) => { const line = document.createElement("span"); line.className = part.className; line.textContent = part.textContent; return line; });
    // A redraw that changes no word is not read out again.
    const said = words.textContent;
    if ([name, ...lines].map((part) => part.textContent).join(" ") !== said) put(name, ...lines.flatMap((part) => [" ", part]));
    const settable = [label, ...needs(label)].find((one) => document.getElementById(`size-${one}`));
    size.hidden = !settable;
    if (settable) { size.dataset.size = settable; size.replaceChildren("Set ", called(settable), "by hand"); }
  }
  /** Its name, which a small window leaves out. @param {string} name */
  function called(name) {
    const span = document.createElement("span");
    span.className = "wordy"; span.textContent = `${name.replaceAll("_", " ")} `;
    return span;
  }
  async function explain() {
    const label = shown;
    more.textContent = "The garment is drafted with every tape a little longer …";
    try {
      const told = await ask("explain", { what: label });
      if (label === shown) more.replaceChildren(bars(told.movers));
    } catch (error) { if (label === shown) more.textContent = excuse(error); }
  }
  /** @param {Mover[]} rows */
  function bars(rows) {
    if (!rows.length) { const none = document.createElement("p"); none.textContent = "No tape moves it."; return none; }
    const table = document.createElement("table"), most = Math.max(...rows.map((r) => Math.abs(r.mm)));
    table.createCaption().textContent = "What moves it: millimetres for each centimetre more on a tape";
    for (const row of rows) {
      const line = table.insertRow(), head = document.createElement("th"), bar = document.createElement("span");
      head.scope = "row"; head.textContent = row.tape; line.append(head);
      bar.className = "bar"; bar.style.width = `${(Math.abs(row.mm) / most) * 100}%`;
      line.insertCell().append(bar);
      line.insertCell().textContent = `${row.mm.toFixed(1)} mm${row.per}`;
      const way = ways(row.out, row.up, side(shown));
      line.insertCell().textContent = way;
    }
    return table;
  }
  /** On which side of the centre a mark lies: 1 or -1. @param {string} label */
  function side(label) {
    const mark = drawn(label)[0], d = mark?.querySelector("path.hit")?.getAttribute("d");
    const x = Number(mark?.dataset.at?.split(" ")[0] ?? (d ?? "").match(/-?[\d.]+/)?.[0] ?? 0);
    return x < -0.01 ? -1 : 1;
  }
  movers.addEventListener("click", () => void explain());
  list.addEventListener("change", () => pin(list.value));
  /** @param {string} label */
  function pin(label) { pinned = label; list.value = rows.has(label) ? label : ""; light(label); }

  /** @param {Event} event */
  const under = (event) => near(event, ".mark", SVGElement)?.dataset.step ?? "";
  let lastPlace = "";
  drawing.addEventListener("pointerover", (event) => {
    // When the drawing changes below a pointer that stands still, nobody has pointed at anything.
    const here = `${event.clientX} ${event.clientY}`, moved = here !== lastPlace;
    lastPlace = here;
    if (!moved) return;
    const label = under(event); if (label && label !== shown && !drawing.matches(".held, .pulling")) light(label);
  });
  drawing.addEventListener("pointermove", (event) => { lastPlace = `${event.clientX} ${event.clientY}`; });
  drawing.addEventListener("pointerleave", () => { if (shown !== pinned && !spoken) light(pinned); });
  drawing.addEventListener("click", (event) => { const label = under(event); if (label) pin(label); });

  return {
    light, pin, plain,
    /** Light several marks at once. @param {string[]} labels */
    several(labels) {
      light("", true);
      for (const label of labels) for (const mark of drawn(label)) mark.classList.add("asked");
      dress(drawing);
      spoken = true; put(`Shown: ${labels.map(plain).join(", ")}.`);
    },
    /** Say something else there, until a mark is pointed at. @param {string} text */
    say(text) { spoken = true; more.replaceChildren(); put(text); },
    /** The places were written anew. */
    renew() {
      index = new Map(every(drawing, ".paper .mark", SVGElement).map((mark) => [mark.dataset.step ?? "", mark]));
      const first = document.querySelector("#draft .steps li");
      // The list is read again only when it was written again.
      if (first !== before) { before = first; read(); }
      if (!rows.has(shown)) { if (shown) light("", spoken); return; }
      const asked = more.childNodes.length > 0;
      light(shown, spoken);
      // Measuring takes longer than drawing: it waits until the drawing rests.
      clearTimeout(measuring);
      if (asked) { more.textContent = "…"; measuring = setTimeout(() => void explain(), 600); }
    },
    rows: () => rows, drawn,
    get shown() { return shown; },
  };
  function read() {
    rows = new Map(); followers = new Map();
    for (const row of every(document, "#draft .steps li", HTMLElement)) rows.set(row.dataset.label ?? "", row);
    for (const label of rows.keys()) for (const need of needs(label)) followers.set(need, [...(followers.get(need) ?? []), label]);
    const now = [...rows.keys()].join(" ");
    if (now !== listed) {
      listed = now;
      /** @type {Map<string, HTMLOptGroupElement>} */
      const groups = new Map();
      for (const [label, row] of rows) {
        const title = row.dataset.sheet || "sizes";
        if (!groups.has(title)) { const group = document.createElement("optgroup"); group.label = title; groups.set(title, group); }
        groups.get(title)?.append(new Option((row.dataset.sheet ? label.split(".").slice(1).join(".") : label).replaceAll("_", " "), label));
      }
      list.replaceChildren(new Option("choose one", ""), ...groups.values());
      list.value = rows.has(pinned) ? pinned : "";
    }
  }
}
