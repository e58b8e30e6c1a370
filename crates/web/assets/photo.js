// A photo of the sheet is sent as it was taken, and the answer is drawn over it. The photo itself
// stays on the device until somebody keeps it.

import { say } from "./phrases.js";

const LONGEST_SIDE_PX = 2048;
const LARGEST_BYTES = 5 * 1024 * 1024;

// What the program reads by itself goes as it is; anything else is drawn anew first.
async function readable(file) {
  const known = ["image/jpeg", "image/png"].includes(file.type);
  if (known && file.size <= LARGEST_BYTES) return file;
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return file;
  const share = Math.min(1, LONGEST_SIDE_PX / Math.max(picture.width, picture.height));
  const sheet = document.createElement("canvas");
  sheet.width = Math.max(1, Math.round(picture.width * share));
  sheet.height = Math.max(1, Math.round(picture.height * share));
  sheet.getContext("2d").drawImage(picture, 0, 0, sheet.width, sheet.height);
  return new Promise((done) => sheet.toBlob(done, "image/jpeg", 0.92));
}

async function count(form) {
  const photo = form.elements.namedItem("photo").files[0];
  const line = form.elements.namedItem("line").value.trim();
  const body = await readable(photo);
  const asked = new URLSearchParams();
  if (line) asked.set("line", line);
  const ticked = [...form.querySelectorAll("input[name=of]:checked")].map((box) => box.value);
  if (ticked.length) asked.set("of", ticked.join(" "));
  const answer = await fetch(`${form.action}?${asked}`, {
    method: "POST",
    headers: { "Content-Type": body.type || "application/octet-stream" },
    body,
  });
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const main = document.querySelector("main");
  main.replaceChildren(...page.querySelector("main").childNodes);
  const shown = main.querySelector("[data-photo-shown]");
  if (shown) shown.src = URL.createObjectURL(photo);
  const kept = main.querySelector("[data-photo-kept]");
  if (kept) {
    const files = new DataTransfer();
    files.items.add(photo);
    kept.files = files.files;
  }
  window.scrollTo(0, 0);
}

document.addEventListener("submit", async (event) => {
  const form = event.target;
  if (!form.matches?.("form[data-photo]")) return;
  event.preventDefault();
  const press = form.querySelector("button[type=submit]");
  press.disabled = true;
  press.textContent = say("counting");
  try {
    await count(form);
  } catch {
    press.textContent = say("count_again");
    press.disabled = false;
  }
});
