// Keys at the desk: an underlined letter opens its page, a digit what stands in that stall,
// a slash goes to the field that finds, Escape leads back to the day, a question mark lists all.
// Letters and digits can be turned off, and never act while somebody types.

const storage = window.localStorage;
const list = () => document.querySelector("[data-keys]");
const on = () => storage.letters !== "off";

const typing = (target) =>
  target instanceof Element && target.closest("input, textarea, select, [contenteditable]");

function show() {
  const dialog = list();
  if (!dialog || dialog.open) return;
  dialog.querySelector("[data-letters]").checked = on();
  dialog.showModal();
}

function opens(key) {
  const seen = (link) => link.getClientRects().length > 0;
  const named = [...document.querySelectorAll(`[data-key="${CSS.escape(key)}"]`)].find(seen);
  if (named) return named;
  const stall = document.querySelectorAll("[data-stall]");
  return [...stall].find((link) => link.dataset.stall === key);
}

document.addEventListener("keydown", (event) => {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return;
  if (list()?.open) return;
  if (typing(event.target)) {
    if (event.key === "Escape") event.target.blur();
    return;
  }
  if (event.key === "Escape") {
    if (location.pathname !== "/") location.assign("/");
    return;
  }
  if (!on() && event.key !== "?") return;
  if (event.key === "?") {
    show();
  } else if (event.key === "/") {
    const find = document.querySelector("[data-find]");
    if (!find?.getClientRects().length) return;
    find.focus();
  } else {
    const link = opens(event.key.toLowerCase());
    if (!link) return;
    link.click();
  }
  event.preventDefault();
});

document.addEventListener("click", (event) => {
  if (event.target.closest?.("[data-keys-open]")) show();
});

document.addEventListener("change", (event) => {
  if (event.target.matches?.("[data-letters]")) {
    if (event.target.checked) delete storage.letters;
    else storage.letters = "off";
  }
});
