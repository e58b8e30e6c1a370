// A map's text while it is being changed: checked as one writes, kept on this device
// until it is saved, and carried along by every button of the page.

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

let asked = 0;
async function check() {
  const box = document.querySelector("[data-faults]");
  if (!box || !text()) return;
  const turn = ++asked;
  const body = new URLSearchParams({ map: form().dataset.draft, base: form().dataset.base, text: text().value });
  try {
    const answer = await fetch("/maps/check", { method: "POST", body });
    if (!answer.ok || turn !== asked) return;
    const told = new DOMParser().parseFromString(await answer.text(), "text/html");
    box.replaceChildren(...told.body.childNodes);
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
document.addEventListener("click", (event) => {
  if (event.target.closest("form[data-draft] button[data-commands]")) setTimeout(check, 1500);
});

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
  words.textContent = "You changed this map on this device and did not keep it.";
  const ways = document.createElement("div");
  ways.className = "presses even";
  ways.append(
    press("Take it up again", () => {
      text().value = left;
      copy();
      document.getElementById("edit")?.requestSubmit();
    }),
    press("Leave it", () => storage.removeItem(key())),
  );
  box.replaceChildren(words, ways);
  box.hidden = false;
}

offer();
