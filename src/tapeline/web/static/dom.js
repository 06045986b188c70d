// @ts-check
/** Looking things up in the page, each with the kind that it must be of.
 * A kind is a class such as HTMLInputElement, so that what is found is what its type says. */

/** What the page cannot do without: when it is not there, the page and its modules do not fit each other.
 * @template {Element} T @param {ParentNode} inside @param {string} what @param {new () => T} kind @returns {T}
 * @throws {Error} that says which element is missing, or of which other kind it is */
export function need(inside, what, kind) {
  const found = inside.querySelector(what);
  if (found instanceof kind) return found;
  throw new Error(found ? `${what} is a ${found.constructor.name} here, not a ${kind.name}` : `The page has no ${what}`);
}

/** What may be there or not.
 * @template {Element} T @param {ParentNode} inside @param {string} what @param {new () => T} kind @returns {T | null} */
export function maybe(inside, what, kind) {
  const found = inside.querySelector(what);
  return found instanceof kind ? found : null;
}

/** All that are there, in the order of the page.
 * @template {Element} T @param {ParentNode | null} inside @param {string} what @param {new () => T} kind @returns {T[]} */
export function every(inside, what, kind) {
  return [...(inside?.querySelectorAll(what) ?? [])].filter((/** @returns {one is T} */ (one) => one instanceof kind));
}

/** Give an element an attribute, unless it has it already: written again, even the same place makes the browser lay it
 * out anew. @param {Element} one @param {string} name @param {string} value */
export function put(one, name, value) {
  if (one.getAttribute(name) !== value) one.setAttribute(name, value);
}

/** What an event happened at, or the nearest round it, that answers to these words; null where there is none.
 * @template {Element} T @param {Event} event @param {string} what @param {new () => T} kind @returns {T | null} */
export function near(event, what, kind) {
  const found = event.target instanceof Element ? event.target.closest(what) : null;
  return found instanceof kind ? found : null;
}
