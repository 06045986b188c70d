// @ts-check
/** Talking with the server: what it answers, what changes the docket, and what is only asked.
 * @typedef {{version: number, text: string, undo: boolean, redo: boolean, drawing: string | null, title: string}} Drawn the docket and its drawing
 * @typedef {Drawn & {places: Record<string, string>, errors: number, doubts: number, problem?: string}} State the docket, as the page shows it
 * @typedef {{tape: string, mm: number, out: number, up: number, per: string}} Mover how far a tape moves a place, mm for each centimetre more
 * @typedef {{move: [number, number, number, number, number, number], touch: [number, number], mark: number | null, words: string}} SeamPlace the rolling edge at one place of a seam's walk
 * @typedef {{state: State, template: {text: string}, map: {html: string}, sizes: {html: string}, lay: {html: string, told: {n: number, said: string, rows: [string, string][], problem: string, laying: boolean}}, seam: {html: string, places: SeamPlace[]}, explain: {what: string, movers: Mover[]}}} Answers by what is asked
 * @typedef {{keys: string[], value: string, done: boolean, place?: string, first?: boolean}} Edit one value of the docket; the drawing may come first
 * @typedef {Edit | {base: number, text: string} | Record<string, never>} Change */

/** What the server will not do, in its own words. */
export class Refused extends Error {}

/** Send a change and read the answer; a refusal with a state (another window was first) is an answer too.
 * @param {string} where @param {Change | null} what nothing, where it is only asked @returns {Promise<Drawn | State>} @throws {Refused} */
async function send(where, what) {
  const answer = await (what ? post(where, what) : fetch(where));
  const state = await answer.json();
  if (!answer.ok && !state.places) throw new Refused(state.problem ?? answer.statusText);
  return state;
}

/** Ask for something that is only read.
 * @template {keyof Answers} K @param {K} what @param {Record<string, string>} [about] @returns {Promise<Answers[K]>} @throws {Refused} */
export async function ask(what, about = {}) {
  return read(await fetch(`/${what}?${new URLSearchParams(about)}`));
}

/** The drawing as it would be with one value changed; nothing is written.
 * @param {string[]} keys @param {string} value @returns {Promise<{drawing: string | null}>} @throws {Refused} */
export async function tried(keys, value) {
  return read(await post("/try", { keys, value }));
}

/** What to tell the maker when something could not be had. @param {unknown} error */
export const excuse = (error) => (error instanceof Refused ? error.message : "Tapeline does not answer.");

/** @param {string} where @param {object} what */
const post = (where, what) => fetch(where, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(what) });

/** @param {Response} answer */
async function read(answer) {
  const said = await answer.json();
  if (!answer.ok) throw new Refused(said.problem ?? answer.statusText);
  return said;
}

/** When the next frame is on its way to the screen; a window out of sight has none, and does not wait for it. */
const frame = () => new Promise((/** @type {(value?: unknown) => void} */ go) => { requestAnimationFrame(() => setTimeout(go)); setTimeout(go, 100); });

/** Whether an answer is whole, or the drawing alone. @param {Drawn | State} state @returns {state is State} */
export const whole = (state) => "places" in state;

/** One request under way; of the edits to one value that wait, only the newest is sent. After a drawing that came first
 * the rest is asked for, unless something else is to be written: that answer is newer.
 * @param {(state: Drawn | State) => void} done @param {(why: Error, again: boolean) => void} failed @param {() => string} rest where to ask */
export function queue(done, failed, rest) {
  /** @type {{where: string, what: Change | null, key: string}[]} */
  const waiting = [];
  let busy = false;
  async function run() {
    if (busy) return;
    busy = true;
    try {
      for (let next = waiting[0]; next; next = waiting[0]) {
        if (next.what === null) {
          // The browser and the server would get in each other's way: first the drawing is seen.
          await frame();
          if (waiting.length > 1) { waiting.shift(); continue; }
        }
        let state;
        try { state = await send(next.where, next.what); } catch (error) {
          const lost = !(error instanceof Refused);
          failed(error instanceof Error ? error : new Error(String(error)), lost);
          if (lost) return;
        }
        waiting.shift();
        if (!state) continue;
        if (!whole(state) && !waiting.length) waiting.push({ where: rest(), what: null, key: "" });
        // Painted even while a newer change waits: a handle that is dragged without a pause is followed live.
        // A fault in painting is no lost answer: it goes on to the console, and the next change is sent all the same.
        done(state);
      }
    } finally { busy = false; }
  }
  return {
    /** @param {string} where @param {Change} what @param {string} [key] */
    add(where, what, key = "") {
      const last = waiting.at(-1), sent = busy && waiting.length === 1;
      if (last && !sent && (last.what === null || (key && last.key === key))) waiting.pop();
      waiting.push({ where, what, key });
      void run();
    },
    again: run,
    get idle() { return !busy && !waiting.length; },
  };
}
