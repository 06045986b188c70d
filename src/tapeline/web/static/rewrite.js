// @ts-check
/** Writing a part of the page anew without taking away what stays: the field that is being typed in, the slider that is
 * held and every line that did not move are left where they are, so the browser lays out no more than has changed. */

/** What the maker has opened stays open, and what a script has laid out stays where it is until it is laid out anew:
 * taken away and given again, even the same place makes the browser lay out every line of the drawing. */
const STAYS = new Set(["open", "viewBox", "transform", "style", "x", "y", "data-place", "data-order", "data-dressed"]);

/** Make what is inside an element what the HTML says. @param {Element} host @param {string} html */
export function rewrite(host, html) {
  const fresh = document.createElement("template");
  fresh.innerHTML = html;
  inside(host, fresh.content);
}

/** Each new child takes the place of the next old one of its kind; old ones that are passed over go.
 * @param {Element} old @param {ParentNode & Node} fresh */
function inside(old, fresh) {
  let next = old.firstChild;
  for (let child = fresh.firstChild; child; ) {
    const following = child.nextSibling, kin = akin(next, child);
    if (kin) {
      while (next && next !== kin) { const gone = next; next = next.nextSibling; gone.remove(); }
      next = kin.nextSibling;
      alike(kin, child);
    } else old.insertBefore(child, next);
    child = following;
  }
  while (next) { const gone = next; next = next.nextSibling; gone.remove(); }
}

/** The first of some siblings that can become a node: the same element, text for text.
 * @param {ChildNode | null} from @param {ChildNode} fresh */
function akin(from, fresh) {
  for (let one = from; one; one = one.nextSibling) {
    if (one.nodeName === fresh.nodeName && name(one) === name(fresh)) return one;
    // Text is no reason to give up the elements before it.
    if (fresh.nodeType !== Node.ELEMENT_NODE) return null;
  }
  return null;
}

/** @param {Node} node */
const name = (node) => (node instanceof Element ? node.id : "");

/** @param {ChildNode} old @param {ChildNode} fresh */
function alike(old, fresh) {
  if (!(old instanceof Element && fresh instanceof Element)) {
    if (old.nodeValue !== fresh.nodeValue) old.nodeValue = fresh.nodeValue;
    return;
  }
  for (const { name, value } of fresh.attributes) if (old.getAttribute(name) !== value) old.setAttribute(name, value);
  if (old.attributes.length > fresh.attributes.length) for (const { name } of [...old.attributes]) if (!fresh.hasAttribute(name) && !STAYS.has(name)) old.removeAttribute(name);
  if (!old.hasAttribute("data-dressed")) inside(old, fresh);
  filled(old);
}

/** A field shows what the page says, except where the maker is at work in it. @param {Element} field */
function filled(field) {
  if (field instanceof HTMLInputElement) {
    if (field.type === "radio" || field.type === "checkbox") field.checked = field.defaultChecked;
    else if (field !== document.activeElement && field.type !== "file" && field.value !== field.defaultValue) field.value = field.defaultValue;
  } else if (field instanceof HTMLTextAreaElement) {
    if (field !== document.activeElement && field.value !== field.defaultValue) field.value = field.defaultValue;
  } else if (field instanceof HTMLOptionElement) field.selected = field.defaultSelected;
}
