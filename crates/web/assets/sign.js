// Who taps: the sign-in that stands on this device, the PIN before a decision, another person's
// PIN for one tap of theirs. Where the program serves its own machine alone, none of it shows.

import { say } from "./phrases.js";

const cookie = (name) =>
  document.cookie.split("; ").find((one) => one.startsWith(`${name}=`))?.slice(name.length + 1) ?? "";

/// The sign-in that a tap is made under; empty where nobody signs in.
export const signIn = () => cookie("sign-in");

const ask = (path, body) =>
  fetch(path, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(body),
  });

function field() {
  const input = document.createElement("input");
  Object.assign(input, { type: "password", inputMode: "numeric", autocomplete: "off", required: true, maxLength: 8, minLength: 4 });
  input.className = "pin";
  input.setAttribute("aria-label", say("pin"));
  return input;
}

const button = (words, type, kind) =>
  Object.assign(document.createElement("button"), { textContent: words, type, className: kind });

const capital = (words) => words.charAt(0).toUpperCase() + words.slice(1);

// Asks for a PIN until `check` takes it; null if it was left.
function askPin(heading, check) {
  const box = document.createElement("dialog");
  const title = Object.assign(document.createElement("h2"), { textContent: heading });
  const wrong = Object.assign(document.createElement("p"), { className: "alarm", hidden: true });
  wrong.setAttribute("role", "alert");
  const form = document.createElement("form");
  const pin = field();
  const presses = Object.assign(document.createElement("div"), { className: "presses two" });
  const leave = button(say("leave_it"), "button", "press");
  presses.append(button(say("go_on"), "submit", "press confirm"), leave);
  form.append(pin, pad(pin), presses);
  box.append(title, wrong, form);
  box.setAttribute("aria-label", heading);
  document.body.append(box);
  return new Promise((done) => {
    const end = (answer) => {
      box.close();
      box.remove();
      done(answer);
    };
    leave.addEventListener("click", () => end(null));
    box.addEventListener("cancel", (event) => {
      event.preventDefault();
      end(null);
    });
    form.addEventListener("submit", async (event) => {
      event.preventDefault();
      event.stopPropagation();
      try {
        const answer = await check(pin.value);
        if (answer.ok) return end(answer);
        const trouble = await answer.json();
        wrong.textContent = say("wrong_and_mend", { what: capital(trouble.what), mend: capital(trouble.mend) });
      } catch {
        wrong.textContent = say("program_out_of_reach");
      }
      wrong.hidden = false;
      pin.value = "";
      pin.focus();
    });
    box.showModal();
    pin.focus();
  });
}

/// The PIN of who is signed in, before a decision; whether it was right.
export const prove = async () =>
  Boolean(await askPin(say("decided_with_pin"), (pin) => ask("/api/pin", { pin })));

/// The sign-in of another person for one tap on this device; null if they did not.
export async function beside(person, name) {
  const answer = await askPin(say("pin_of", { name }), (pin) => ask("/api/pin/beside", { person, pin }));
  return answer ? (await answer.json()).sign_in : null;
}

// Ten digits and one back, for gloves.
function pad(pin) {
  const keys = Object.assign(document.createElement("div"), { className: "pad on-phone" });
  keys.setAttribute("aria-hidden", "true");
  for (const digit of ["1", "2", "3", "4", "5", "6", "7", "8", "9", "", "0", "\u232b"]) {
    if (!digit) {
      keys.append(document.createElement("span"));
      continue;
    }
    const key = button(digit === "\u232b" ? say("back_key") : digit, "button", "press");
    key.tabIndex = -1;
    key.addEventListener("click", () => press(pin, digit));
    keys.append(key);
  }
  return keys;
}

function press(pin, digit) {
  pin.value = digit === "\u232b" ? pin.value.slice(0, -1) : (pin.value + digit).slice(0, 8);
}

document.addEventListener("click", (event) => {
  const key = event.target.closest("[data-pad] [data-digit]");
  if (!key) return;
  const fields = [...key.closest("[data-pad]").querySelectorAll("input.pin")];
  const chosen = fields.find((one) => one === document.activeElement) ?? fields.find((one) => one.value.length < 4) ?? fields.at(-1);
  press(chosen, key.dataset.digit);
});
