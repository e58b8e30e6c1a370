// What a page does on a tap: fill in the command it carries, keep it on this device,
// send it, and show what is true now. No command is lost: it stays in the queue, under
// the same id, until the shop's program has answered.

const storage = window.localStorage;
const device = (sessionStorage.device ??= crypto.randomUUID());
const queueKey = `queue:${device}`;

const main = () => document.querySelector("main");
const status = document.querySelector("[data-status]");

// ---- filling in a command -------------------------------------------------------

const hex = (bytes) => [...bytes].map((b) => b.toString(16).padStart(2, "0")).join("");
const salt = () => hex(crypto.getRandomValues(new Uint8Array(32)));

function valueOf(form, name) {
  if (!form) return "";
  const found = form.elements.namedItem(name);
  if (!found) return "";
  if (found instanceof RadioNodeList) return found.value.trim();
  if (found.type === "checkbox") return found.checked ? found.value : "";
  return found.value.trim();
}

// A template is a command with holes: {"$field": name} the field's value or null;
// {"$text": name} words, with a salt made here; {"$document": name, media} the same for a
// text too long for words; {"$new": name} a new name, the same for
// the whole tap; {"$map": name, to: {...}} a value that depends on a field; and
// {"$when": name, is, then} something left out unless the field says so.
const GONE = Symbol("gone");
function fill(template, form, names) {
  if (Array.isArray(template)) {
    return template.map((part) => fill(part, form, names)).filter((part) => part !== GONE);
  }
  if (template === null || typeof template !== "object") return template;
  if ("$field" in template) return valueOf(form, template.$field) || null;
  if ("$flag" in template) return valueOf(form, template.$flag) !== "";
  if ("$pieces" in template) {
    const count = Math.min(Math.max(Number(valueOf(form, template.$pieces)) || 1, 1), 200);
    return Array.from({ length: count }, (_, nth) => ({ position: nth + 1, length: null }));
  }
  if ("$number" in template) return Number(valueOf(form, template.$number)) || 0;
  if ("$text" in template) {
    const text = valueOf(form, template.$text) || template.or || "";
    return text ? { text, salt: salt() } : null;
  }
  if ("$words" in template) return { text: template.$words, salt: salt() };
  if ("$document" in template) {
    const bytes = new TextEncoder().encode(valueOf(form, template.$document));
    const file = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
    return { file, media: template.media ?? "text/plain", salt: salt() };
  }
  if ("$new" in template) return (names[template.$new] ??= crypto.randomUUID());
  if ("$time" in template) {
    const value = valueOf(form, template.$time);
    return value ? new Date(value).toISOString() : null;
  }
  if ("$map" in template) return template.to[valueOf(form, template.$map)] ?? template.else ?? null;
  if ("$when" in template) {
    const value = valueOf(form, template.$when);
    const holds = "is" in template ? template.is.includes(value) : value !== "";
    return holds ? fill(template.then, form, names) : GONE;
  }
  if ("$join" in template) return template.$join.map((part) => fill(part, form, names)).join("");
  const out = {};
  for (const [key, part] of Object.entries(template)) {
    const filled = fill(part, form, names);
    if (filled !== GONE) out[key] = filled;
  }
  return out;
}

// ---- the queue ------------------------------------------------------------------

const read = (key) => JSON.parse(storage.getItem(key) ?? "[]");
const write = (key, list) =>
  list.length ? storage.setItem(key, JSON.stringify(list)) : storage.removeItem(key);
const waiting = () =>
  Object.keys(storage)
    .filter((key) => key.startsWith("queue:"))
    .reduce((sum, key) => sum + read(key).length, 0);

function enqueue(part) {
  const seq = Number(sessionStorage.seq ?? 0) + 1;
  sessionStorage.seq = seq;
  const command = {
    command_id: crypto.randomUUID(),
    device,
    device_seq: seq,
    happened_at: new Date().toISOString(),
    who: document.body.dataset.who,
    ...part,
  };
  write(queueKey, [...read(queueKey), command]);
  return command;
}

let sending = null;
function send() {
  sending ??= sendAll().finally(() => (sending = null));
  return sending;
}

async function sendAll() {
  for (const key of Object.keys(storage).filter((key) => key.startsWith("queue:"))) {
    for (let list = read(key); list.length; list = read(key)) {
      let answer;
      try {
        answer = await fetch("/api/commands", {
          method: "POST",
          headers: { "content-type": "application/json" },
          body: JSON.stringify(list[0]),
        });
      } catch {
        tell();
        return;
      }
      if (answer.status >= 500) {
        tell("The shop's program could not write it down. It is kept here and sent again.");
        return;
      }
      const trouble = answer.ok ? null : await answer.json().catch(() => ({}));
      write(key, read(key).filter((command) => command.command_id !== list[0].command_id));
      if (trouble) refused(list[0], trouble);
      tell();
    }
  }
}

// ---- what the page says ---------------------------------------------------------

function tell(words) {
  if (!status) return;
  const left = waiting();
  status.textContent = words ?? (left ? `Saved here · ${left} to send` : "Saved here · all sent");
}

const troubles = new Map();
function refused(command, trouble) {
  troubles.set(command.command_id, trouble);
  const box = document.querySelector("[data-trouble]");
  if (!box) return;
  const list = (trouble.reasons ?? []).map((reason) => {
    const item = document.createElement("li");
    item.textContent = reason;
    return item;
  });
  const heading = document.createElement("p");
  heading.className = "large";
  heading.textContent = trouble.what ?? "It was refused";
  const mend = document.createElement("p");
  mend.textContent = trouble.mend ?? "";
  const reasons = document.createElement("ul");
  reasons.append(...list);
  box.replaceChildren(heading, ...(list.length ? [reasons] : []), mend);
  box.hidden = false;
  box.scrollIntoView({ block: "center" });
}

const busyTyping = () =>
  [...document.querySelectorAll("main input, main textarea, main select")].some(
    (field) =>
      (field === document.activeElement && field.value !== field.defaultValue) ||
      (field.type === "text" && field.value !== field.defaultValue),
  );

let asked = 0;
async function refresh() {
  const turn = ++asked;
  try {
    const answer = await fetch(location.href, { headers: { accept: "text/html" } });
    if (!answer.ok || turn !== asked) return;
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const open = [...main().querySelectorAll("details[open][id]")].map((one) => one.id);
    main().replaceWith(page.querySelector("main"));
    document.body.dataset.position = page.body.dataset.position;
    for (const id of open) document.getElementById(id)?.setAttribute("open", "");
  } catch {
    tell();
  }
}

// ---- taps -----------------------------------------------------------------------

async function act(button) {
  const form = button.closest("form");
  if (form && !form.reportValidity()) return;
  const names = {};
  const commands = [JSON.parse(button.dataset.commands)]
    .flat()
    .map((template) => fill(template, form, names))
    .filter((command) => command !== GONE)
    .map(enqueue);
  const box = document.querySelector("[data-trouble]");
  if (box) box.hidden = true;
  const last = commands.filter((command) => command.fact).at(-1);
  if (last) sessionStorage.last = JSON.stringify({ id: last.command_id, stream: last.stream });
  tell();
  button.disabled = true;
  await send();
  button.disabled = false;
  if (commands.some((command) => troubles.has(command.command_id))) return;
  const next = button.dataset.next?.replace(/\{(\w+)\}/g, (_, name) => names[name] ?? "");
  if (next && waiting() === 0) location.assign(next);
  else {
    form?.reset();
    await refresh();
  }
}

function undo() {
  const last = JSON.parse(sessionStorage.last ?? "null");
  if (!last) return tell("Nothing on this device to take back");
  delete sessionStorage.last;
  enqueue({ stream: last.stream, fact: { undo: { command: last.id, part: null } } });
  tell();
  send().then(refresh);
}

document.addEventListener("click", (event) => {
  const button = event.target.closest("button[data-commands]");
  if (button) {
    event.preventDefault();
    act(button);
  }
  if (event.target.closest("[data-undo]")) undo();
});

document.addEventListener("submit", (event) => {
  const button = event.target.querySelector("button[data-commands]");
  if (!button) return;
  event.preventDefault();
  act(button);
});

// ---- what others do -------------------------------------------------------------

// A browser opens few connections to one program, and each watching page holds one: only
// a page that is seen watches, and it looks again when it comes back.
let live = null;
function watch() {
  const seen = document.visibilityState === "visible";
  if (seen && !live) {
    live = new EventSource("/api/live");
    live.addEventListener("message", (event) => {
      const behind = Number(event.data) > Number(document.body.dataset.position);
      if (behind && !sending && !busyTyping()) refresh();
    });
  } else if (!seen) away();
}
function away() {
  live?.close();
  live = null;
}
document.addEventListener("visibilitychange", watch);
window.addEventListener("pagehide", away);
window.addEventListener("pageshow", watch);

window.addEventListener("online", send);
window.addEventListener("storage", () => tell());
setInterval(() => waiting() && send(), 5_000);

watch();
tell();
if (waiting()) send().then(refresh);
