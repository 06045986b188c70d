// @ts-check
import { maybe, near, need } from "./dom.js";
import { Refused, ask, excuse } from "./send.js";
/** @typedef {{n: number, said: string, rows: [string, string][], problem: string, laying: boolean}} Told the lay, in words */

/** Words for who listens come no oftener. */
const QUIET_MS = 4000;

/** The lay on the page: asked for, watched while it becomes shorter, stopped, taken away.
 * @param {HTMLElement} place where it is shown @param {(words: string) => void} say */
export function lay(place, say) {
  /** @type {EventSource | null} */
  let news = null;
  let told = 0, shown = -1;

  place.addEventListener("click", async (event) => {
    if (near(event, "#ask-lay", HTMLElement)) await open();
    else if (near(event, "#lay-stop", HTMLElement)) {
      need(place, "#lay-stop", HTMLButtonElement).disabled = true;
      try { await post("stop", {}); } catch (error) { say(excuse(error)); }
    }
  });
  place.addEventListener("submit", async (event) => {
    event.preventDefault();
    const form = near(event, "#lay-form", HTMLFormElement);
    if (!form) return;
    try {
      show(await post("start", Object.fromEntries(new FormData(form))));
      watch();
    } catch (error) { words(excuse(error)); }
  });

  async function open() {
    const inside = need(place, "#lay-inside", HTMLElement);
    try {
      const made = await ask("lay");
      inside.innerHTML = made.html;
      shown = -1;
      show(made.told);
      if (made.told.laying) watch();
      need(inside, "#lay-cloth", HTMLSelectElement).focus();
    } catch (error) { inside.textContent = ""; say(excuse(error)); }
  }

  /** Follow the news; the browser opens the stream again by itself when it ends. */
  function watch() {
    news?.close();
    told = 0;
    const stream = news = new EventSource("/lay/news");
    stream.addEventListener("message", (event) => {
      const now = /** @type {Told} */ (JSON.parse(event.data));
      if (!now.laying) stream.close();
      show(now);
    });
  }

  /** @param {Told} now */
  function show(now) {
    const plan = maybe(place, "#lay-plan", HTMLElement);
    if (!plan) return;
    need(place, "#lay-start", HTMLButtonElement).disabled = now.laying;
    need(place, "#lay-stop", HTMLButtonElement).disabled = !now.laying;
    plan.hidden = !now.n;
    if (now.n && now.n !== shown) {
      shown = now.n;
      const picture = need(plan, "#lay-picture", HTMLImageElement);
      picture.src = `/lay/picture?n=${now.n}&at=${Date.now()}`;
      picture.alt = now.said;
      need(plan, "#lay-rows", HTMLElement).replaceChildren(...now.rows.map(row));
    }
    if (now.problem) words(now.problem);
    else if (!now.laying) words(now.n ? `Done. ${now.said}.` : "");
    else if (Date.now() - told > QUIET_MS) {
      told = Date.now();
      words(now.n ? `Laying. So far ${now.said}.` : "Laying …");
    }
  }

  /** @param {string} text */
  function words(text) {
    const said = maybe(place, "#lay-said", HTMLElement);
    if (said && said.textContent !== text) said.textContent = text;
  }
}

/** @param {[string, string]} pair */
function row([name, value]) {
  const line = document.createElement("tr"), head = document.createElement("th"), cell = document.createElement("td");
  head.scope = "row";
  head.textContent = name;
  cell.textContent = value;
  line.append(head, cell);
  return line;
}

/** @param {string} what @param {object} asked @returns {Promise<Told>} @throws {Refused} */
async function post(what, asked) {
  const answer = await fetch(`/lay/${what}`, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(asked) });
  const said = await answer.json();
  if (!answer.ok) throw new Refused(said.problem ?? answer.statusText);
  return said;
}
