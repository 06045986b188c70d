// @ts-check
import { every, near, need } from "./dom.js";
import { pair } from "./numbers.js";
import { ways } from "./ways.js";
/** @import { View } from "./drawing.js" */
/** @import { Place } from "./numbers.js" */

/** Before and after: a drawing that was kept lies under the new one, and the points that moved most are listed.
 * @param {HTMLElement} drawing @param {View} view @param {(label: string) => void} ask */
export function compare(drawing, view, ask) {
  const MOST = 10;
  /** @type {{pieces: Map<string, SVGGElement>, points: Map<string, Place>} | null} */
  let kept = null;
  const panel = need(document, "#moved", HTMLDetailsElement), list = need(panel, ".list", HTMLElement), tools = need(document, "details.more", HTMLDetailsElement);
  const points = () => new Map(every(drawing, ".paper .point", SVGElement).map((p) => [p.dataset.step ?? "", pair(p.dataset.at)]));

  function keep() {
    /** @type {Map<string, SVGGElement>} */
    const pieces = new Map();
    for (const piece of view.pieces()) {
      const copy = document.createElementNS("http://www.w3.org/2000/svg", "g");
      copy.setAttribute("class", "before"); copy.setAttribute("aria-hidden", "true");
      for (const line of every(piece, ".seam-line, .fold-line, .cut-line", SVGElement)) {
        const one = line.cloneNode();
        if (one instanceof SVGElement) { one.removeAttribute("id"); copy.append(one); }
      }
      pieces.set(piece.dataset.piece ?? "", copy);
    }
    // In a small window it would lie over the pieces: there it opens when it is asked for.
    panel.open = drawing.clientWidth > 600;
    kept = { pieces, points: points() };
    renew();
  }
  function renew() {
    panel.hidden = !kept;
    if (!kept) { list.replaceChildren(); return; }
    for (const piece of view.pieces()) {
      const copy = kept.pieces.get(piece.dataset.piece ?? "");
      if (copy) piece.querySelector(".cloth")?.after(copy);
    }
    tell();
  }
  function tell() {
    if (!kept) return;
    const moved = [];
    for (const [label, [x, y]] of points()) {
      const before = kept.points.get(label);
      if (!before) continue;
      const out = x - before[0], up = before[1] - y, far = Math.hypot(out, up);
      if (far >= 0.05) moved.push({ label, out, up, far, side: before[0] < -0.01 ? -1 : 1 });
    }
    moved.sort((a, b) => b.far - a.far);
    if (!moved.length) { list.textContent = "The old drawing lies under this one. Nothing has moved yet."; return; }
    const table = document.createElement("table");
    table.createCaption().textContent = `${moved.length} points moved; furthest first, mm`;
    for (const one of moved.slice(0, MOST)) {
      const row = table.insertRow(), head = document.createElement("th"), button = document.createElement("button");
      head.scope = "row"; button.type = "button"; button.className = "small plain";
      button.textContent = one.label.replaceAll("_", " ").replace(".", ": ");
      button.addEventListener("click", () => ask(one.label));
      head.append(button); row.append(head);
      row.insertCell().textContent = one.far.toFixed(1);
      row.insertCell().textContent = ways(one.out, one.up, one.side);
    }
    list.replaceChildren(table);
  }
  document.addEventListener("click", (event) => {
    const what = near(event, "button", HTMLElement)?.dataset.compare;
    if (what === "keep") { keep(); tools.open = false; }
    else if (what === "drop") { kept = null; for (const old of drawing.querySelectorAll(".before")) old.remove(); renew(); }
  });
  return { renew };
}
