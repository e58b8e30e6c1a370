// Files made on the page: a signature drawn on a sheet, a photo made smaller, a few spoken words.
//
// A photo is drawn anew before it is sent. That makes it small enough to be kept on the
// device, and leaves behind what a camera writes into it: the place, the time, the owner.

import { say } from "./phrases.js";

const LONGEST_SIDE_PX = 1600;
const LARGEST_BYTES = 4 * 1024 * 1024;
const PEN_PX = 2.5;

/// The files that the templates name, read and ready to send: a map from the field's name
/// to its list of {file, media}.
export async function filesIn(templates, form) {
  const files = new Map();
  for (const name of namesIn(templates, new Set())) files.set(name, await filesOf(form, name));
  return files;
}

function namesIn(template, found) {
  if (template === null || typeof template !== "object") return found;
  if ("$file" in template) found.add(template.$file);
  if ("$files" in template) found.add(template.$files);
  for (const part of Object.values(template)) namesIn(part, found);
  return found;
}

async function filesOf(form, name) {
  const sheet = form?.querySelector(`canvas[data-draw="${name}"]`);
  if (sheet?.dataset.inked) return [await toSend(await drawn(sheet))];
  const field = form?.elements.namedItem(name);
  return Promise.all([...(field?.files ?? [])].map(async (file) => toSend(await smaller(file))));
}

const drawn = (sheet) => new Promise((done) => sheet.toBlob(done, "image/png"));

async function smaller(file) {
  if (file.type.startsWith("audio/")) return file;
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return file;
  const share = Math.min(1, LONGEST_SIDE_PX / Math.max(picture.width, picture.height));
  const sheet = document.createElement("canvas");
  sheet.width = Math.max(1, Math.round(picture.width * share));
  sheet.height = Math.max(1, Math.round(picture.height * share));
  sheet.getContext("2d").drawImage(picture, 0, 0, sheet.width, sheet.height);
  return new Promise((done) => sheet.toBlob(done, "image/jpeg", 0.75));
}

async function toSend(blob) {
  if (blob.size > LARGEST_BYTES) {
    throw new Error(say("file_too_large", { bytes: blob.size, most: LARGEST_BYTES }));
  }
  const bytes = new Uint8Array(await blob.arrayBuffer());
  const letters = [];
  for (let at = 0; at < bytes.length; at += 0x8000) {
    letters.push(String.fromCharCode(...bytes.subarray(at, at + 0x8000)));
  }
  return { file: btoa(letters.join("")), media: blob.type || "application/octet-stream" };
}

// ---- a sheet to draw on ---------------------------------------------------------

const pen = { sheet: null, last: null };

function at(event) {
  const place = pen.sheet.getBoundingClientRect();
  const share = pen.sheet.width / place.width;
  return { x: (event.clientX - place.left) * share, y: (event.clientY - place.top) * share };
}

function stroke(to) {
  const ink = pen.sheet.getContext("2d");
  ink.strokeStyle = "#000";
  ink.lineWidth = PEN_PX * (pen.sheet.width / pen.sheet.getBoundingClientRect().width);
  ink.lineCap = ink.lineJoin = "round";
  ink.beginPath();
  ink.moveTo(pen.last.x, pen.last.y);
  ink.lineTo(to.x, to.y);
  ink.stroke();
  pen.last = to;
}

document.addEventListener("pointerdown", (event) => {
  const sheet = event.target.closest?.("canvas[data-draw]");
  if (!sheet) return;
  event.preventDefault();
  if (!sheet.dataset.inked) {
    const place = sheet.getBoundingClientRect();
    sheet.width = place.width * window.devicePixelRatio;
    sheet.height = place.height * window.devicePixelRatio;
  }
  sheet.setPointerCapture(event.pointerId);
  sheet.dataset.inked = "yes";
  pen.sheet = sheet;
  pen.last = at(event);
  stroke(pen.last);
});

document.addEventListener("pointermove", (event) => {
  if (!pen.sheet) return;
  for (const one of event.getCoalescedEvents?.() ?? [event]) stroke(at(one));
});

for (const end of ["pointerup", "pointercancel"]) {
  document.addEventListener(end, () => (pen.sheet = null));
}

document.addEventListener("click", (event) => {
  const name = event.target.closest?.("[data-clear]")?.dataset.clear;
  if (name) clear(event.target.closest("form").querySelector(`canvas[data-draw="${name}"]`));
});

/// Wipes a sheet.
export function clear(sheet) {
  sheet.width = sheet.width; // setting the size wipes it
  delete sheet.dataset.inked;
}

/// Whether something is drawn or chosen that has not been sent.
export const unsent = () =>
  document.querySelector("main [data-inked]") !== null ||
  [...document.querySelectorAll('main input[type="file"]')].some((field) => field.files.length);
