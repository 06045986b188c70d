// @ts-check
import { every, near, need } from "./dom.js";
import { pair } from "./numbers.js";
import { ways } from "./ways.js";
/** @import { View } from "./drawing.js" */
/** @import { Place } from "./numbers.js" */

/** A drawing as it was: the lines of each piece as class and course, and where the points were.
 * @typedef {{title: string, pieces: Record<string, [string, string][]>, points: Record<string, Place>}} Drawn */

const KEPT = "tapeline-before";

/** Before and after: a drawing that was kept lies under the new one, and the points that moved most are listed.
 * A drawing that is only tried lies over the docket's own in the same way, for as long as it is shown.
 * @param {HTMLElement} drawing @param {View} view @param {(label: string) => void} ask */
export function compare(drawing, view, ask) {
  const MOST = 10, SAID = 3;
  const panel = need(document, "#moved", HTMLDetailsElement), list = need(panel, ".list", HTMLElement), tools = need(document, "details.more", HTMLDetailsElement);
  const heading = need(panel, "summary", HTMLElement), away = need(panel, "[data-compare=drop]", HTMLElement), usual = [heading.textContent, away.textContent];
  const title = () => need(document, "#title", HTMLElement).textContent ?? "";
  /** It outlasts a reload of the window. @type {Drawn | null} */
  let kept = remembered();
  /** @type {{from: Drawn, name: string} | null} */
  let trial = null;
  // In a small window the list would lie over the pieces: there it opens when it is asked for.
  const roomy = () => drawing.clientWidth > 600;
  if (kept) panel.open = roomy();

  /** @returns {[string, Place][]} */
  const points = () => every(drawing, ".paper .point", SVGElement).map((point) => [point.dataset.step ?? "", pair(point.dataset.at)]);
  /** @returns {Drawn} */
  function now() {
    /** @type {Drawn} */
    const drawn = { title: title(), pieces: {}, points: {} };
    for (const piece of view.pieces()) {
      const lines = every(piece, ".seam-line, .fold-line, .cut-line", SVGElement).filter((line) => !line.closest(".before"));
      drawn.pieces[piece.dataset.piece ?? ""] = lines.map((line) => [line.getAttribute("class") ?? "", line.getAttribute("d") ?? ""]);
    }
    for (const [label, at] of points()) drawn.points[label] = at;
    return drawn;
  }
  /** @returns {Drawn | null} of this docket, when one was kept in this window */
  function remembered() {
    try { const drawn = JSON.parse(sessionStorage.getItem(KEPT) ?? "null"); return drawn?.title === title() && drawn.pieces && drawn.points ? drawn : null; } catch { return null; }
  }
  /** @param {Drawn | null} drawn */
  function keep(drawn) {
    kept = drawn;
    // A window that may store nothing keeps it until it is closed or loaded again.
    try { if (drawn) sessionStorage.setItem(KEPT, JSON.stringify(drawn)); else sessionStorage.removeItem(KEPT); } catch { /* said above */ }
    if (drawn) panel.open = roomy();
    renew();
  }
  /** @param {[string, string][]} lines */
  function layer(lines) {
    const SPACE = "http://www.w3.org/2000/svg", copy = document.createElementNS(SPACE, "g");
    copy.setAttribute("class", "before"); copy.setAttribute("aria-hidden", "true");
    for (const [kind, course] of lines) {
      const line = document.createElementNS(SPACE, "path");
      line.setAttribute("class", kind); line.setAttribute("d", course);
      copy.append(line);
    }
    return copy;
  }
  function renew() {
    const from = trial?.from ?? kept;
    for (const old of drawing.querySelectorAll(".before")) old.remove();
    panel.hidden = !from;
    heading.textContent = trial ? `Tried: ${trial.name}` : usual[0] ?? "";
    away.textContent = trial ? "Back to the docket's drawing" : usual[1] ?? "";
    if (!from) { list.replaceChildren(); return; }
    for (const piece of view.pieces()) {
      const lines = from.pieces[piece.dataset.piece ?? ""];
      if (lines) piece.querySelector(".cloth")?.after(layer(lines));
    }
    tell();
  }
  /** The points that are elsewhere now, furthest first. */
  function moves() {
    const from = trial?.from ?? kept;
    const moved = [];
    for (const [label, [x, y]] of points()) {
      const before = from?.points[label];
      if (!before) continue;
      const out = x - before[0], up = before[1] - y, far = Math.hypot(out, up);
      if (far >= 0.05) moved.push({ label, out, up, far, side: before[0] < -0.01 ? -1 : 1 });
    }
    return moved.sort((a, b) => b.far - a.far);
  }
  /** @param {string} label */
  const plain = (label) => label.replaceAll("_", " ").replace(".", ": ");
  function tell() {
    const moved = moves();
    if (!moved.length) { list.textContent = trial ? "It moves nothing." : "The old drawing lies under this one. Nothing has moved yet."; return; }
    const table = document.createElement("table");
    table.createCaption().textContent = `${trial ? "Dashed: as it is now. " : ""}${moved.length} points moved; furthest first, mm`;
    for (const one of moved.slice(0, MOST)) {
      const row = table.insertRow(), head = document.createElement("th"), button = document.createElement("button");
      head.scope = "row"; button.type = "button"; button.className = "small plain";
      button.textContent = plain(one.label);
      button.addEventListener("click", () => ask(one.label));
      head.append(button); row.append(head);
      row.insertCell().textContent = one.far.toFixed(1);
      row.insertCell().textContent = ways(one.out, one.up, one.side);
    }
    list.replaceChildren(table);
  }
  document.addEventListener("click", (event) => {
    const what = near(event, "button", HTMLElement)?.dataset.compare;
    if (what === "keep") { keep(now()); tools.open = false; }
    else if (what === "drop" && !trial) keep(null);
  });
  return {
    renew,
    /** What is shown next is only tried: it is laid over what is shown now. @param {string} name */
    begin(name) { trial = { from: trial?.from ?? now(), name }; panel.open = roomy(); },
    /** What is shown next is the docket's own again. */
    end() { trial = null; },
    /** The largest differences, in words; empty when there are none. */
    words() {
      return moves().slice(0, SAID).map((one) => `${plain(one.label)} ${ways(one.out, one.up, one.side)}`).join("; ");
    },
  };
}
