// Shows a page anew without taking anything away from under a hand. What goes on being there
// is the same element as before: a finger stays on its button, and what was typed, ticked,
// drawn or unfolded stays. News of others never moves, removes or rewrites what can be pressed
// while hands are on the page; they wait for a pause.

// ---- what can be pressed, where it is, and what it means --------------------------

const PRESSED = "a[href], button, summary, input, select, textarea";

const named = (one) => one.firstChild?.textContent?.trim() ?? "";
const chosen = (one) => one.type === "radio" || one.type === "checkbox";
const meaning = (one) =>
  [
    one.tagName,
    one.getAttribute("href"),
    one.dataset.named ?? one.name,
    chosen(one) ? one.value : "",
    one.dataset.commands,
    one.dataset.next,
    named(one),
  ].join("\n");

/// What can be pressed, by what it means, each with its place. Two may mean the same.
function places(root) {
  const found = new Map();
  for (const one of root.querySelectorAll(PRESSED)) {
    const { left, top, bottom, width } = one.getBoundingClientRect();
    const seen = width > 0 && bottom > 0 && top < window.innerHeight;
    const key = meaning(one);
    found.set(key, [...(found.get(key) ?? []), { one, left, top, seen }]);
  }
  return found;
}

const same = (a, b) => a && b && Math.abs(a.left - b.left) <= 1 && Math.abs(a.top - b.top) <= 1;

/// Whether something that can be pressed now would move, go away or mean something else.
export function wouldMove(main, next) {
  // Laid out in the same place, unseen, and taken away before anything is painted.
  const trial = document.importNode(next, true);
  for (const one of trial.querySelectorAll("[id]")) {
    if (one.tagName === "DETAILS" && document.getElementById(one.id)?.open) one.open = true;
    one.removeAttribute("id");
  }
  const box = main.getBoundingClientRect();
  trial.inert = true;
  Object.assign(trial.style, {
    position: "fixed",
    visibility: "hidden",
    left: `${box.left}px`,
    top: `${box.top}px`,
    width: `${box.width}px`,
    margin: "0",
  });
  // Of radio buttons of one name a browser lets only one be chosen, wherever they stand.
  for (const one of trial.querySelectorAll("[name]")) {
    one.dataset.named = one.getAttribute("name");
    one.removeAttribute("name");
  }
  main.after(trial);
  const then = places(trial);
  trial.remove();
  const goes = (key) => (place, nth) => place.seen && !same(place, then.get(key)?.[nth]);
  return [...places(main)].some(([key, all]) => all.some(goes(key)));
}

// ---- the same element goes on ------------------------------------------------------

const keyOf = (node) => {
  if (node.nodeType !== Node.ELEMENT_NODE) return `#${node.nodeType}`;
  const own = node.getAttribute("id") || node.getAttribute("href") || node.getAttribute("name") || node.dataset.stage;
  const value = node.type === "radio" || node.type === "checkbox" ? node.value : "";
  const words = node.tagName === "BUTTON" || node.tagName === "SUMMARY" ? named(node) : "";
  return [node.tagName, own ?? "", value, words].join("\n");
};

// Set here, on this device, and not by the page as it was sent.
const OWN = new Set(["open", "data-inked", "data-since", "aria-invalid"]);

function attributes(old, next) {
  for (const { name, value } of [...next.attributes]) {
    if (OWN.has(name) && old.getAttribute(name)) continue;
    if (name === "open" || old.getAttribute(name) === value) continue;
    old.setAttribute(name, value);
  }
  for (const { name } of [...old.attributes]) {
    if (!next.hasAttribute(name) && !OWN.has(name)) old.removeAttribute(name);
  }
}

/// Makes an element say what another says, and keeps what is the same in both.
export function become(old, next) {
  // What was drawn stays, and what was said of the last tap stands until the next one.
  const said = old.dataset && "trouble" in old.dataset && !old.hidden;
  if (said || old.dataset?.inked || old.isEqualNode(next)) return;
  attributes(old, next);
  const left = [...old.childNodes];
  let at = old.firstChild;
  for (const child of [...next.childNodes]) {
    const key = keyOf(child);
    const nth = left.findIndex((one) => keyOf(one) === key);
    if (nth < 0) {
      old.insertBefore(document.importNode(child, true), at);
      continue;
    }
    const [kept] = left.splice(nth, 1);
    if (kept === at) at = at.nextSibling;
    else old.insertBefore(kept, at);
    if (kept.nodeType === Node.ELEMENT_NODE) become(kept, child);
    else if (kept.nodeValue !== child.nodeValue) kept.nodeValue = child.nodeValue;
  }
  for (const one of left) one.remove();
}

// ---- whose hands are on it ---------------------------------------------------------

const PAUSE_MS = 3_000;
const fingers = new Set();
let touched = 0;
const touch = () => (touched = performance.now());
for (const name of ["pointerdown", "pointermove", "wheel", "scroll", "keydown"]) {
  window.addEventListener(name, touch, { capture: true, passive: true });
}
window.addEventListener("pointerdown", (event) => fingers.add(event.pointerId), true);
for (const name of ["pointerup", "pointercancel"]) {
  window.addEventListener(name, (event) => (fingers.delete(event.pointerId), touch()), true);
}

/// Whether somebody is about to press something, as far as a page can tell.
export const handsOn = () => fingers.size > 0 || (touched > 0 && performance.now() - touched < PAUSE_MS);

// A finger that was on its way when the page changed under it does not press what came there.
const ON_ITS_WAY_MS = 300;
let changedAt = -ON_ITS_WAY_MS;
let strange = new Set();

/// News of others, shown in place.
export function showNews(main, next) {
  const before = places(main);
  become(main, next);
  changedAt = performance.now();
  strange = new Set();
  for (const [key, all] of places(main)) {
    all.forEach((place, nth) => same(place, before.get(key)?.[nth]) || strange.add(place.one));
  }
}

let begun = 0;
window.addEventListener("pointerdown", (event) => (begun = event.timeStamp), true);

/// Whether this press was meant for what stood there before.
export const meantForAnother = (pressed) =>
  begun < changedAt + ON_ITS_WAY_MS && begun > changedAt - ON_ITS_WAY_MS && strange.has(pressed);
