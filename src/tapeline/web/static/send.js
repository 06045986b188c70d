// @ts-check
/** What the server answers. @typedef {{version: number, text: string, undo: boolean, redo: boolean, places: Record<string, string>,
 *  drawing: string | null, errors: number, doubts: number, title: string, problem?: string}} State */

/** Send something and read the answer; a refusal with a state (another window was first) is an answer too.
 * @param {string} where @param {unknown} what @returns {Promise<State>} */
export async function send(where, what) {
  const answer = await fetch(where, { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(what) });
  const state = await answer.json();
  if (!answer.ok && !state.places) throw new Refused(state.problem ?? answer.statusText);
  return state;
}

export class Refused extends Error {}

/** One request under way; of the edits to one value that wait, only the newest is sent.
 * @param {(state: State) => void} done @param {(why: Error, again: boolean) => void} failed */
export function queue(done, failed) {
  /** @type {{where: string, what: any, key: string}[]} */
  const waiting = [];
  let busy = false;
  async function run() {
    if (busy) return;
    busy = true;
    while (waiting.length) {
      const next = /** @type {{where: string, what: any, key: string}} */ (waiting[0]);
      try {
        const state = await send(next.where, next.what);
        waiting.shift();
        // Painted even while a newer change waits: a handle that is dragged without a pause is followed live.
        done(state);
      } catch (error) {
        const lost = !(error instanceof Refused);
        failed(/** @type {Error} */ (error), lost);
        if (lost) break;
        waiting.shift();
      }
    }
    busy = false;
  }
  return {
    /** @param {string} where @param {any} what @param {string} [key] */
    add(where, what, key = "") {
      const last = waiting.at(-1);
      if (key && last && last.key === key && (waiting.length > 1 || !busy)) last.what = what;
      else waiting.push({ where, what, key });
      void run();
    },
    again: run,
    get idle() { return !busy && !waiting.length; },
  };
}
