// @ts-check
/** Writing the drawing anew where it is the same drawing with other numbers, as it is after nearly every key and every
 * move of a slider: only the attributes that changed are set, and nothing is read, made or looked through besides. */
import { rewrite } from "./rewrite.js";

/** @typedef {{tag: string, names: string[], values: string[]}} Start the start of an element, taken apart */
const PARTS = /<[^>]*>|[^<]+/g, ATTRIBUTE = /([\w:-]+)="([^"]*)"/g, SIGN = /&(#?\w+);/g;
/** @type {Record<string, string>} */
const SIGNS = { amp: "&", lt: "<", gt: ">", quot: '"', "#x27": "'", "#39": "'" };

/** Writes markup into an element, again and again.
 * @param {Element} host @returns {(html: string) => boolean} whether elements were made or taken away */
export function retouch(host) {
  /** @type {string[]} */
  let parts = [];
  /** The element that a start stands for, the text that a text stands for. @type {(Node | null)[] | null} */
  let nodes = null;

  /** @param {string[]} now @returns {(() => void)[] | null} what is to be done; nothing where it is another drawing */
  function changes(now) {
    if (!nodes || now.length !== parts.length) return null;
    /** @type {(() => void)[]} */
    const found = [];
    for (let i = 0; i < now.length; i++) {
      const before = parts[i] ?? "", after = now[i] ?? "", node = nodes[i];
      if (before === after) continue;
      if (node instanceof Text && !after.startsWith("<")) { const text = read(after); found.push(() => { node.nodeValue = text; }); continue; }
      const old = start(before), next = start(after);
      if (!(node instanceof Element) || !old || !next || old.tag !== next.tag || old.names.join() !== next.names.join()) return null;
      for (const [k, name] of next.names.entries()) {
        const value = next.values[k] ?? "";
        if (value === old.values[k]) continue;
        // Another name is another thing: what was pointed at or held must not become it.
        if (name === "id") return null;
        found.push(() => node.setAttribute(name, read(value)));
      }
    }
    return found;
  }
  /** Which node each part has become; none where the browser has read it otherwise. @param {string[]} now */
  function found(now) {
    const walk = document.createTreeWalker(host, NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT, {
      // What a script has put into a point is its own.
      acceptNode: (node) => (node.parentElement !== host && node.parentElement?.hasAttribute("data-dressed") ? NodeFilter.FILTER_REJECT : NodeFilter.FILTER_ACCEPT),
    });
    /** @type {(Node | null)[]} */
    const made = [];
    for (const part of now) {
      if (part.startsWith("</")) { made.push(null); continue; }
      const node = walk.nextNode(), name = part.startsWith("<") ? start(part)?.tag : "#text";
      if (!node || node.nodeName.toLowerCase() !== name?.toLowerCase()) return null;
      made.push(node);
    }
    return walk.nextNode() ? null : made;
  }
  return (html) => {
    const now = html.match(PARTS) ?? [], todo = changes(now);
    if (todo) for (const change of todo) change();
    else { rewrite(host, html); nodes = found(now); }
    parts = now;
    return !todo;
  };
}

/** @param {string} part @returns {Start | null} */
function start(part) {
  const tag = /^<([\w:-]+)/.exec(part)?.[1];
  if (!tag) return null;
  const pairs = [...part.matchAll(ATTRIBUTE)];
  return { tag, names: pairs.map(([, name = ""]) => name), values: pairs.map(([, , value = ""]) => value) };
}

/** What a text in markup says. @param {string} text */
const read = (text) => (text.includes("&") ? text.replace(SIGN, (sign, name) => SIGNS[name] ?? sign) : text);
