// Forms that ask the same of several things: another row by a press, and places that are tapped
// into the next row. Without this a form has two rows, and one more each time it is sent.

import { say } from "./phrases.js";

const rowsOf = (block) => [...block.querySelectorAll(":scope > fieldset")];
const named = (row, name) => row.querySelector(`[name^="${name}-"]`);

// The same row once more, empty, under the next number.
function another(block) {
  const rows = rowsOf(block);
  const nth = rows.length + 1;
  if (nth > Number(block.dataset.most)) return null;
  const last = rows[rows.length - 1];
  const row = last.cloneNode(true);
  const renumber = (text) => text.replace(/-\d+$/, `-${nth}`);
  row.id = renumber(row.id);
  for (const told of row.querySelectorAll(".no")) told.remove();
  for (const field of row.querySelectorAll("[name]")) {
    field.name = renumber(field.name);
    field.removeAttribute("aria-invalid");
    if (field.type !== "radio" && field.type !== "checkbox") field.value = "";
  }
  const first = new Set();
  for (const field of row.querySelectorAll("[type=radio]")) {
    field.checked = !first.has(field.name);
    first.add(field.name);
  }
  row.querySelector("[data-nth]").textContent = String(nth);
  row.querySelector("legend .soft")?.remove();
  last.after(row);
  return row;
}

const millimetres = (text) => {
  const found = /^\s*([-+−]?\d+(?:[.,]\d+)?)\s*(?:mm)?\s*$/.exec(text);
  return found && Number(found[1].replace("−", "-").replace(",", "."));
};

function block(places) {
  return places.closest("form").querySelector(`[data-rows="${places.dataset.places}"]`);
}

// The places that are written, as numbered dots joined in sequence.
function draw(places) {
  const svg = places.querySelector("svg");
  const marks = svg.querySelector("g");
  const { across, up } = places.dataset;
  const points = rowsOf(block(places)).flatMap((row, nth) => {
    const x = millimetres(named(row, across).value);
    const y = millimetres(named(row, up).value);
    return x === null || y === null || !named(row, across).value ? [] : [{ x, y: -y, nth: nth + 1 }];
  });
  const make = (name, attributes, text) => {
    const one = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const [key, value] of Object.entries(attributes)) one.setAttribute(key, value);
    if (text) one.textContent = text;
    return one;
  };
  const path = points.map((point) => `${point.x},${point.y}`).join(" ");
  marks.replaceChildren(
    make("polyline", { points: path }),
    ...points.map((point) => make("circle", { cx: point.x, cy: point.y, r: 26 })),
    ...points.map((point) => make("text", { x: point.x, y: point.y + 11 }, String(point.nth))),
  );
}

function tapped(places, event) {
  const svg = places.querySelector("svg");
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
  const { across, up } = places.dataset;
  const empty = (row) => !named(row, across).value && !named(row, up).value;
  const rows = block(places);
  const row = rowsOf(rows).find(empty) ?? another(rows);
  if (!row) return;
  const round = (value) => `${Math.round(value / 10) * 10} mm`;
  named(row, across).value = round(at.x);
  named(row, up).value = round(-at.y);
  draw(places);
}

function takeBack(places) {
  const { across, up } = places.dataset;
  const written = rowsOf(block(places)).filter((row) => named(row, across).value);
  const last = written.length > 1 && written[written.length - 1];
  if (!last) return;
  for (const field of last.querySelectorAll("input[type=text]")) field.value = "";
  draw(places);
}

export function rows() {
  for (const places of document.querySelectorAll("[data-places]")) {
    places.hidden = false;
    draw(places);
  }
  for (const more of document.querySelectorAll("[data-rows] > p")) {
    const press = document.createElement("button");
    press.type = "button";
    press.className = "press";
    press.dataset.another = "";
    press.textContent = say("another_row");
    const presses = document.createElement("div");
    presses.className = "presses";
    presses.append(press);
    more.replaceWith(presses);
  }
}

document.addEventListener("click", (event) => {
  const press = event.target.closest("[data-another]");
  if (press) {
    const added = another(press.closest("[data-rows]"));
    added?.querySelector("input")?.focus();
  }
  const places = event.target.closest("[data-places]");
  if (!places) return;
  if (event.target.closest("[data-back]")) takeBack(places);
  else if (event.target.closest("svg")) tapped(places, event);
});
document.addEventListener("input", (event) => {
  const form = event.target.closest("form");
  for (const places of form?.querySelectorAll("[data-places]") ?? []) draw(places);
});
rows();
