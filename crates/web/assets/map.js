// A map's text while it is being changed: checked as one writes, kept on this device
// until it is saved, and carried along by every button of the page.

import { say } from "./phrases.js";

const storage = window.localStorage;
const text = () => document.querySelector("[data-text]");
const form = () => document.querySelector("form[data-draft]");
const key = () => `draft:${form().dataset.draft}`;

// The buttons of the other form send the text as it stands here.
function copy() {
  for (const other of document.querySelectorAll("textarea[data-copy]")) other.value = text().value;
}

function keep() {
  try {
    storage.setItem(key(), text().value);
  } catch {
    // A device without room still edits; it only can't bring the draft back later.
  }
}

// What was typed into the fields counts as if they had been set.
function asSent() {
  const fields = document.getElementById("edit");
  const body = new URLSearchParams(fields ? new FormData(fields) : undefined);
  body.set("map", form().dataset.draft);
  body.set("base", form().dataset.base);
  body.set("text", text().value);
  body.set("act", JSON.stringify(["enter"]));
  return body;
}

// Each message beside the field that it is about.
function beside(box) {
  const typed = (name) => document.querySelector(`#edit [name="${name}"]`)?.value.trim() ?? "";
  const open = typed("item");
  const [item, before] = open ? [typed("name") || open, ""] : [typed("new-name"), "new-"];
  const says = new Map();
  for (const fault of box.querySelectorAll("[data-at]")) {
    const name = before + fault.dataset.at;
    if (fault.dataset.item === item && !says.has(name)) says.set(name, fault.dataset.says);
  }
  for (const one of document.querySelectorAll("[data-wrong]")) {
    const words = says.get(one.dataset.wrong) ?? "";
    if (one.textContent !== words) one.textContent = words;
    const field = one.parentElement.querySelector("input, select");
    if (words) field?.setAttribute("aria-invalid", "true");
    else field?.removeAttribute("aria-invalid");
  }
}

let asked = 0;
async function check() {
  const box = document.querySelector("[data-faults]");
  if (!box || !text()) return;
  const turn = ++asked;
  try {
    const answer = await fetch("/maps/check", { method: "POST", body: asSent() });
    if (!answer.ok || turn !== asked) return;
    const told = new DOMParser().parseFromString(await answer.text(), "text/html");
    box.replaceChildren(...told.body.childNodes);
    beside(box);
  } catch {
    // Out of reach: the next letter asks again.
  }
}

let waiting = 0;
function later() {
  clearTimeout(waiting);
  waiting = setTimeout(check, 400);
}

document.addEventListener("input", (event) => {
  if (event.target.closest?.("#edit")) return later();
  if (!event.target.closest?.("[data-text]")) return;
  copy();
  keep();
  later();
});

document.addEventListener("change", async (event) => {
  const into = event.target.dataset?.readInto;
  const file = into && event.target.files?.[0];
  if (!file) return;
  text().value = await file.text();
  event.target.value = "";
  copy();
  keep();
  check();
});

// Somebody may have kept another version meanwhile: then the page says who, and shows it.
document.addEventListener("news", later);

// What was not kept the last time is offered again.
function offer() {
  if (!form()) return;
  const box = document.querySelector("[data-unkept]");
  const left = storage.getItem(key());
  if (form().dataset.changed) {
    keep();
    // News must not take the draft away: the page counts as being typed into.
    const value = text().value;
    text().value = value;
    text().defaultValue = "";
    return;
  }
  if (left === null || left === text().value) return storage.removeItem(key());
  const press = (words, act) => {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "press";
    button.textContent = words;
    button.addEventListener("click", () => {
      act();
      box.hidden = true;
    });
    return button;
  };
  const words = document.createElement("p");
  words.className = "wait gap";
  words.textContent = say("map_not_kept");
  const ways = document.createElement("div");
  ways.className = "presses even";
  ways.append(
    press(say("take_it_up_again"), () => {
      text().value = left;
      copy();
      document.getElementById("edit")?.requestSubmit();
    }),
    press(say("leave_it"), () => storage.removeItem(key())),
  );
  box.replaceChildren(words, ways);
  box.hidden = false;
}

offer();
