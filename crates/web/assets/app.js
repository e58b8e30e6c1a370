// What a page does on a tap: fill in the command it carries, keep it on this device,
// send it, and show what is true now. No command is lost: it stays in the queue, under
// the same id, until the shop's program has answered.

import { become, handsOn, meantForAnother, showNews, wouldMove } from "./anew.js";
import { confirmed, held, stageOf, ticks } from "./clock.js";
import { clear, filesIn, unsent } from "./files.js";
import { forget, keep, whole } from "./kept.js";
import "./keys.js";
import "./map.js";
import "./photo.js";
import { say } from "./phrases.js";
import { queueOf } from "./queue.js";
import { stageDone, stageUndone, takeAlong, withNames } from "./reach.js";
import { rows } from "./rows.js";
import { beside, prove, signIn } from "./sign.js";
import "./typing.js";
import { settled } from "./voice.js";

const main = () => document.querySelector("main");
const status = document.querySelector("[data-status]");

// ---- filling in a command -------------------------------------------------------

const hex = (bytes) => [...bytes].map((b) => b.toString(16).padStart(2, "0")).join("");
const salt = () => hex(crypto.getRandomValues(new Uint8Array(32)));

const salted = (file) => ({ ...file, salt: salt() });

// A number as people write it, with a point as the record wants it: of a comma and a point the
// last one is the decimal sign; one of them alone before three digits stands between thousands, as it
// does on the pages.
export function plainNumber(text) {
  const bare = text.replace(/[\s\u00a0\u202f']/g, "").replace(/\u2212/g, "-");
  const [comma, point] = [bare.lastIndexOf(","), bare.lastIndexOf(".")];
  const german = document.documentElement.lang === "de";
  if (comma < 0) return german && /^-?[1-9]\d{0,2}(\.\d{3})+$/.test(bare) ? bare.replace(/\./g, "") : bare;
  if (point > comma || (!german && point < 0 && /^-?[1-9]\d{0,2}(,\d{3})+$/.test(bare))) return bare.replace(/,/g, "");
  return bare.replace(/\./g, "").replace(",", ".");
}

function valueOf(form, name) {
  if (!form) return "";
  const found = form.elements.namedItem(name);
  if (!found) return "";
  if (found instanceof RadioNodeList) return found.value.trim();
  if (found.type === "checkbox") return found.checked ? found.value : "";
  return "sum" in found.dataset ? plainNumber(found.value) : found.value.trim();
}

// A template is a command with holes: {"$field": name} the field's value or null;
// {"$text": name} words, with a salt made here; {"$document": name, media} the same for a
// text too long for words; {"$new": name} a new name, the same for
// the whole tap; {"$map": name, to: {...}} a value that depends on a field;
// {"$file": name} a file drawn or chosen, or null, {"$files": name} a list of them; and
// {"$numbers": name} the numbers in a field;
// {"$when": name, is, then} something left out unless the field says so;
// {"$changed": name, then} something left out unless the field was changed;
// {"$sum": [[name, name]]} what the products of fields come to.
const GONE = Symbol("gone");
function fill(template, form, made) {
  if (Array.isArray(template)) {
    return template.map((part) => fill(part, form, made)).filter((part) => part !== GONE);
  }
  if (template === null || typeof template !== "object") return template;
  if ("$field" in template) return valueOf(form, template.$field) || null;
  // A measured value: a bare number gets the unit that its field names.
  if ("$amount" in template) {
    const typed = valueOf(form, template.$amount);
    return typed && (/\d$/.test(typed) ? `${typed} ${template.unit}` : typed) || null;
  }
  if ("$flag" in template) return valueOf(form, template.$flag) !== "";
  if ("$pieces" in template) {
    const count = Math.min(Math.max(Number(valueOf(form, template.$pieces)) || 1, 1), 200);
    return Array.from({ length: count }, (_, nth) => ({ position: nth + 1, length: null }));
  }
  if ("$numbers" in template) return (valueOf(form, template.$numbers).match(/\d+/g) ?? []).map(Number);
  if ("$number" in template) return Number(valueOf(form, template.$number)) || 0;
  if ("$text" in template) {
    const before = (template.with ?? []).map(([label, name]) => [label, valueOf(form, name)]);
    const told = before.filter(([, value]) => value).map(([label, value]) => label + value);
    const own = valueOf(form, template.$text) || template.or;
    const text = [...told, ...(own ? [own] : [])].join("; ");
    return text ? { text, salt: salt() } : null;
  }
  if ("$file" in template) return made.files.get(template.$file)?.map(salted)[0] ?? null;
  if ("$files" in template) return made.files.get(template.$files)?.map(salted) ?? [];
  if ("$words" in template) return { text: template.$words, salt: salt() };
  if ("$document" in template) {
    // Byte for byte as it is: a text's last line end is part of it.
    const text = form?.elements.namedItem(template.$document)?.value ?? "";
    const bytes = new TextEncoder().encode(text);
    const file = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
    return { file, media: template.media ?? "text/plain", salt: salt() };
  }
  if ("$new" in template) return (made.names[template.$new] ??= crypto.randomUUID());
  if ("$time" in template) {
    const value = valueOf(form, template.$time);
    return value ? new Date(value).toISOString() : null;
  }
  if ("$map" in template) {
    return fill(template.to[valueOf(form, template.$map)] ?? template.else ?? null, form, made);
  }
  if ("$when" in template) {
    const value = valueOf(form, template.$when);
    const holds = "is" in template ? template.is.includes(value) : value !== "";
    return holds ? fill(template.then, form, made) : GONE;
  }
  // What several things come to, each so many at a price.
  if ("$sum" in template) {
    const each = template.$sum.map((names) => names.reduce((of, name) => of * Number(valueOf(form, name) || 0), 1));
    return String(Math.round(each.reduce((all, one) => all + one, 0) * 1e6) / 1e6);
  }
  if ("$changed" in template) {
    const field = form?.elements.namedItem(template.$changed);
    return field && changed(field) ? fill(template.then, form, made) : GONE;
  }
  if ("$join" in template) return template.$join.map((part) => fill(part, form, made)).join("");
  const out = {};
  for (const [key, part] of Object.entries(template)) {
    const filled = fill(part, form, made);
    if (filled !== GONE) out[key] = filled;
  }
  return out;
}

// ---- the queue ------------------------------------------------------------------

// At the edge of the network an answer may never come; photos take their time.
const SEND_MS = 60_000;
const ASK_MS = 4_000;

const queue = queueOf({
  storage: window.localStorage,
  session: window.sessionStorage,
  name: () => crypto.randomUUID(),
  stamp: () => ({
    happened_at: new Date().toISOString(),
    who: document.body.dataset.who,
    ...(signIn() ? { sign_in: signIn() } : {}),
  }),
  async post(command) {
    const answer = await fetch("/api/commands", {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(command),
      signal: AbortSignal.timeout(SEND_MS),
    });
    return { ok: answer.ok, status: answer.status, told: await answer.json() };
  },
  whole,
  forget,
  // (Browsers have locks only where the page is trusted.)
  lock: (work) => (navigator.locks ? navigator.locks.request("send", work) : work()),
  prove,
  tell: (what) => tell(what && say(what)),
  met: (command, trouble) => (queue.awaited.has(command.command_id) ? sayTrouble(trouble) : sayRefused()),
  took(command, told) {
    // Its own clock changes nothing on a page that is up to date.
    if (command.fact?.timed && told.position === position() + 1) position(told.position);
  },
});
const { awaited, enqueue, remember, send, troubles, waiting } = queue;

function settle(one, again) {
  queue.settle(one, again);
  if (again) send().then(refresh);
  sayRefused();
  tell();
}

// ---- what the page says ---------------------------------------------------------

function tell(words) {
  if (!status) return;
  const left = waiting();
  const waits = navigator.onLine && queue.reached ? "saved_to_send" : "kept_to_send";
  status.textContent = words ?? (left ? say(waits, { left }) : say(queue.reached ? "all_sent" : "out_of_reach"));
  sayUndo();
  // What is said in two lines makes the foot higher: what is pressed above it keeps its distance.
  const foot = status.closest(".status");
  if (foot) document.body.style.setProperty("--foot", `${foot.offsetHeight}px`);
}

const element = (name, words, ...inner) => {
  const one = document.createElement(name);
  if (words) one.textContent = words;
  one.append(...inner);
  return one;
};

function troubleWords(told) {
  // Whoever left the PIN decided nothing.
  const trouble = told.left ? { what: say("left_without_pin"), mend: say("nothing_was_done") } : told;
  const heading = element("p", trouble.what ?? say("was_refused"));
  heading.className = "large";
  const reasons = (trouble.reasons ?? []).map((reason) => element("li", reason));
  return [heading, ...(reasons.length ? [element("ul", "", ...reasons)] : []), element("p", trouble.mend)];
}

function sayTrouble(trouble) {
  const box = document.querySelector("[data-trouble]");
  if (!box) return;
  box.replaceChildren(...troubleWords(trouble));
  box.hidden = false;
  box.scrollIntoView({ block: "center" });
}

function sayRefused() {
  const box = document.querySelector("[data-refused]");
  if (!box) return;
  const press = (words, act) => {
    const button = element("button", words);
    button.type = "button";
    button.className = "press";
    button.addEventListener("click", act);
    return button;
  };
  const each = queue.refusedOnes().map((one) => {
    const when = new Date(one.command.happened_at).toLocaleString();
    const what = element("p", say("was_not_taken", { label: one.label ?? say("a_tap"), when }));
    // What can't be read is no better the second time, and what others have changed has to
    // be seen first: it is told anew on its page.
    const again = one.trouble.kind !== "unreadable" && !one.trouble.both;
    const ways = element(
      "div",
      "",
      ...(again ? [press(say("do_it_again"), () => settle(one, true))] : []),
      press(say("leave_it"), () => forget(one.command).then(() => settle(one, false))),
    );
    ways.className = "presses even";
    const page = element("a", say("page_it_came_from"));
    page.href = one.from ?? "/";
    page.className = "row";
    return element("section", "", what, ...troubleWords(one.trouble), page, ways);
  });
  box.replaceChildren(...each);
  box.hidden = each.length === 0;
}

const changed = (field) =>
  field.type === "checkbox" || field.type === "radio"
    ? field.checked !== field.defaultChecked
    : field.options
    ? field.value !== ([...field.options].find((one) => one.defaultSelected) ?? field.options[0])?.value
    : field.type !== "file" && field.value !== (field.defaultValue ?? field.value);
const busyTyping = () =>
  unsent() ||
  [...document.querySelectorAll("main input, main textarea, main select")].some(changed);

function position(told) {
  if (told) document.body.dataset.position = told;
  return Number(document.body.dataset.position);
}

function timeStage() {
  try {
    const facts = ticks();
    if (!facts.length) return;
    enqueue(facts);
    send().then(look);
  } catch {
    // No room on the device: a clock is not worth a word.
  }
}

// What was sent with a recording stands at no address: it cannot be asked for again.
function still() {
  const stands = main().querySelector("form[data-still]");
  if (stands) tell(say("news_page_stays"));
  return Boolean(stands);
}

let asked = 0;
async function refresh() {
  if (still()) return;
  const turn = ++asked;
  const page = await pageNow();
  if (!page) return tell();
  if (turn !== asked) return;
  become(main(), page.querySelector("main"));
  rows();
  position(page.body.dataset.position);
  timeStage();
}

// The page as it would be sent now; nothing if the program is out of reach.
async function pageNow() {
  try {
    const answer = await fetch(location.href, { headers: { accept: "text/html" } });
    return answer.ok ? new DOMParser().parseFromString(await answer.text(), "text/html") : null;
  } catch {
    return null;
  }
}

// What others did shows by itself. Where it would move or change what somebody is about to
// press, it waits until their hands pause.
const LOOK_AGAIN_MS = 700;
async function news() {
  if (still()) return;
  const turn = ++asked;
  const page = await pageNow();
  if (!page || turn !== asked) return;
  if (busyTyping()) return tell(say("news_once_sent"));
  const next = page.querySelector("main");
  if (handsOn() && wouldMove(main(), next)) {
    tell(say("news_when_you_pause"));
    setTimeout(look, LOOK_AGAIN_MS);
    return;
  }
  showNews(main(), next);
  rows();
  position(page.body.dataset.position);
  tell();
  timeStage();
}

// Who stopped here goes on with the first press in the stage.
document.addEventListener("goes-on", timeStage);

// ---- taps -----------------------------------------------------------------------

async function act(button) {
  const form = button.closest("form");
  await settled(form);
  for (const field of form?.querySelectorAll("[data-needed]") ?? []) {
    const [name, ...values] = field.dataset.needed.split(" ");
    field.required = values.includes(valueOf(form, name));
  }
  // What is folded away cannot be pointed at.
  form?.querySelectorAll(":invalid").forEach((field) => {
    const folded = field.closest("details");
    if (folded) folded.open = true;
  });
  if (form && !form.reportValidity()) return;
  for (const choice of form?.querySelectorAll("[data-one-of]") ?? []) {
    if (choice.querySelector("input:checked")) continue;
    choice.scrollIntoView({ block: "center" });
    choice.querySelector("input")?.focus();
    return sayTrouble({ what: choice.dataset.oneOf, mend: say("then_press_again") });
  }
  if (readingMissing(button, form)) return;
  const box = document.querySelector("[data-trouble]");
  if (box) box.hidden = true;
  button.disabled = true;
  try {
    await carryOut(button, form);
  } catch (error) {
    // Nothing was written down: the tap is still there to be made again.
    const full = error.name === "QuotaExceededError";
    const mend = full ? say("store_is_full") : error.message;
    sayTrouble({ what: say("could_not_be_kept"), mend });
  } finally {
    button.disabled = false;
  }
}

// A test that passed is asked once what it read; pressed again, it passed without a reading.
function readingMissing(button, form) {
  const asks = button.closest("[data-reading]");
  const field = asks && form?.elements.namedItem(asks.dataset.reading);
  if (!field || field.value.trim() || "asked" in button.dataset) return false;
  button.dataset.asked = "";
  sayTrouble({ what: asks.dataset.readingAsks, mend: say("write_or_press_again") });
  field.focus();
  return true;
}

async function carryOut(button, form) {
  const templates = withNames([JSON.parse(button.dataset.commands)].flat());
  const made = { names: stageOf(form), files: await filesIn(templates, form) };
  const filled = templates.map((template) => [template, fill(template, form, made)]);
  const said = filled.filter(([, part]) => part !== GONE);
  const kept = await Promise.all(said.map(([, part]) => keep(part)));
  const against = pressedBefore(templates, form) ?? (await refusal(kept, form));
  if (against && !(against.kind === "doubtful" && button.dataset.doubted === against.what)) {
    // What hardly can be so is kept if the same is pressed once more.
    button.dataset.doubted = against.kind === "doubtful" ? against.what : "";
    // Somebody else was quicker: what stands now is shown around what was typed.
    if (against.both) await refresh();
    return sayAtField(against, said.map(([template]) => template), form);
  }
  if (!(await othersSigned(kept, button))) return;
  const commands = enqueue(kept);
  const each = filled.map(([, part]) => (part === GONE ? null : commands[said.findIndex(([, own]) => own === part)]));
  await stageDone(form, templates, each, (part) => fill(part, form, made) === GONE);
  confirmed(commands);
  held(commands);
  for (const command of commands) {
    awaited.add(command.command_id);
    remember(command, button.firstChild?.textContent ?? "", location.pathname);
  }
  // A stage is taken back whole: what moved, the litres, the work. What it described stays.
  // So is a list of work that was done in one tap.
  const facts = commands.filter((command) => command.fact);
  const stage = facts.filter((command) => !command.fact.declared);
  const work = facts.every(({ fact }) => fact["work-done"] || fact["level-seen"]);
  const last = work || facts.some(({ fact }) => fact.moved) ? stage : facts.slice(-1);
  if (last.length)
    sessionStorage.last = JSON.stringify({
      order: orderOf(location.pathname),
      label: button.firstChild?.textContent ?? "",
      commands: last.map(({ command_id, stream }) => ({ id: command_id, stream })),
    });
  tell();
  await send();
  if (outOfReach(commands)) return;
  for (const command of commands) awaited.delete(command.command_id);
  const trouble = commands.map((command) => troubles.get(command.command_id)).find((one) => one);
  // Somebody else was quicker: what stands now is shown around what was typed, so that the
  // next press decides with both in view.
  if (trouble?.both) {
    await refresh();
    sayTrouble(trouble);
  }
  if (trouble) return;
  button.dataset.doubted = "";
  pressed.set(pressName(templates, form), new Date().toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" }));
  const next = button.dataset.next?.replace(/\{([\w-]+)\}/g, (_, name) => made.names[name] ?? "");
  if (next && (waiting() === 0 || navigator.serviceWorker?.controller)) return location.assign(next);
  form?.reset();
  form?.querySelectorAll("canvas[data-draw]").forEach(clear);
  await refresh();
}

// What is decided is decided now or not at all: it does not wait here for another day.
function outOfReach(commands) {
  const left = queue.left().filter(({ command_id }) => commands.some((one) => one.command_id === command_id));
  if (!left.some((command) => command.request)) return false;
  for (const command of left) {
    awaited.delete(command.command_id);
    queue.dropOwn(command);
  }
  sayTrouble({
    what: say("needs_the_program"),
    mend: say("nothing_was_decided"),
  });
  tell();
  return true;
}

// A tap of another person than the one who is signed in is theirs only with their PIN.
async function othersSigned(parts, button) {
  if (!signIn()) return true;
  const signed = new Map();
  for (const part of parts) {
    const who = part.who;
    if (!who || who === document.body.dataset.who) continue;
    if (!signed.has(who)) signed.set(who, await beside(who, button.dataset.whose ?? button.firstChild?.textContent ?? say("other_person")));
    part.sign_in = signed.get(who);
    if (!part.sign_in) return false;
  }
  return true;
}

// A reading and what follows from it are kept with one tap: the page that works it out is
// asked for, and what it offers to keep is kept. What is wrong is told there beside its field.
async function keepThrough(form) {
  if (!form.reportValidity()) return;
  const address = `${location.pathname}?${new URLSearchParams(new FormData(form))}`;
  try {
    const answer = await fetch(address, { headers: { accept: "text/html" } });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const keeps = page.querySelector("main button[data-commands]");
    if (keeps) await carryOut(keeps, null);
    else location.assign(address);
  } catch {
    sayTrouble({
      what: say("cant_be_worked_out"),
      mend: say("go_where_it_reaches"),
    });
  }
}

// The same press from the same page, as after “back”: a page that nothing was done on is shown
// at a newer position of the record.
const pressed = new Map();
const pressName = (templates, form) =>
  JSON.stringify([location.href, position(), templates, form ? [...new FormData(form)].map(String) : []]);
function pressedBefore(templates, form) {
  const at = pressed.get(pressName(templates, form));
  if (!at) return null;
  return {
    kind: "doubtful",
    what: say("pressed_before", { at }),
    mend: say("press_again_to_note"),
  };
}

// What would refuse a tap of several commands, or what was typed, is asked before anything is
// sent, so that a refused form writes nothing at all. Out of reach it goes without: facts are
// never refused.
async function refusal(parts, form) {
  if (parts.length < 2 && !form?.querySelector("input[type=text], textarea")) return null;
  try {
    const who = document.body.dataset.who;
    const answer = await fetch("/api/commands/check", {
      method: "POST",
      headers: { "content-type": "application/json" },
      // A file that waits on this device is named in its place: only what is said is judged.
      body: JSON.stringify(parts.map((part) => ({ who, ...part })), (_, value) =>
        value?.kept ? { words: "0".repeat(64), media: value.media } : value,
      ),
      signal: AbortSignal.timeout(ASK_MS),
    });
    return answer.ok || answer.status >= 500 ? null : await answer.json();
  } catch {
    return null;
  }
}

// The field that a trouble is about, by its path in what was sent: 1/odometer.reading.
function fieldOf(trouble, templates, form) {
  const [, nth, path] = (trouble.where ?? "").match(/^(\d+)\/(.+)$/) ?? [];
  let part = templates[nth];
  const down = (one) =>
    one && typeof one === "object" && ("$when" in one || "$changed" in one) ? down(one.then) : one;
  const said = ["fact", "vehicle_fact", "customer_fact", "shop_fact", "request"];
  part = down(part);
  part = part?.[said.find((one) => part && one in part)];
  for (const key of path?.split(".") ?? []) part = down(down(part)?.[key]);
  const name = part?.$field ?? part?.$amount ?? part?.$text;
  return name && form ? form.elements.namedItem(name) : null;
}

// Said beside the field, which keeps what was typed, as well as where troubles are told.
function sayAtField(trouble, templates, form) {
  sayTrouble(trouble);
  const field = fieldOf(trouble, templates, form);
  if (!field?.closest) return;
  const folded = field.closest("details");
  if (folded) folded.open = true;
  field.closest("label").querySelector("[role=alert]")?.remove();
  const what = trouble.what.charAt(0).toUpperCase() + trouble.what.slice(1);
  const said = element("span", `${what}: ${trouble.mend}`);
  said.className = "no";
  said.setAttribute("role", "alert");
  field.closest("label").append(said);
  field.setAttribute("aria-invalid", "true");
  field.focus();
  const over = () => {
    said.remove();
    field.removeAttribute("aria-invalid");
  };
  field.addEventListener("input", over, { once: true });
}

// ---- taking back ------------------------------------------------------------------

const orderOf = (path) => path.match(/^\/o\/(\d+)/)?.[1] ?? "";

function lastTap() {
  const last = JSON.parse(sessionStorage.last ?? "null");
  return Array.isArray(last?.commands) ? last : null;
}

// What the last tap was stands beside the button that takes it back, on the order it was done on.
function sayUndo() {
  const last = lastTap();
  const here = last?.order === orderOf(location.pathname) && last.label;
  for (const place of document.querySelectorAll("[data-last]")) {
    place.textContent = here ? say("last_tap", { label: last.label }) : "";
    // The button is still called “Undo last”: another press on the page may have the same words.
    place.closest("button").setAttribute("aria-description", place.textContent);
  }
}

function undo() {
  const last = lastTap();
  if (!last) return tell(say("nothing_to_take_back"));
  if (last.order !== orderOf(location.pathname)) {
    return tell(last.order ? say("last_was_on_order", { order: last.order }) : say("last_was_elsewhere"));
  }
  delete sessionStorage.last;
  stageUndone(last.commands.map(({ id }) => id));
  enqueue(
    last.commands.map(({ id, stream }) => ({ stream, fact: { undo: { command: id, part: null } } })),
  );
  tell();
  send().then(refresh);
}

document.addEventListener(
  "click",
  (event) => {
    const pressed = event.target.closest("a[href], button, summary, input, select, textarea");
    if (!pressed || !meantForAnother(pressed)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    tell(say("had_just_changed"));
  },
  true,
);

document.addEventListener("click", (event) => {
  const button = event.target.closest("button[data-commands]");
  if (button) {
    event.preventDefault();
    act(button);
  }
  const through = event.target.closest("button[data-through]");
  if (through) keepThrough(through.form);
  if (event.target.closest("[data-undo]")) undo();
  if (event.target.closest("[data-print]")) window.print();
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
let newest = 0;
function look() {
  if (newest <= position() || queue.sending()) return;
  if (busyTyping()) tell(say("news_once_sent"));
  else news();
}
function watch() {
  const seen = document.visibilityState === "visible";
  if (seen && !live) {
    live = new EventSource("/api/live");
    live.addEventListener("message", (event) => {
      newest = Math.max(newest, Number(event.data));
      look();
      document.dispatchEvent(new Event("news"));
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

// A link to what is folded away unfolds it. (While a page is read in, it has no target yet.)
function unfoldTarget() {
  const folded = location.hash && document.querySelector(`details#${CSS.escape(location.hash.slice(1))}`);
  if (folded) folded.open = true;
}
window.addEventListener("hashchange", unfoldTarget);
unfoldTarget();

// What was sent late shows at once, unless somebody is typing. (While it is sent, news of it
// is not looked at.)
const sendLate = () => send().then(() => busyTyping() || refresh());
window.addEventListener("online", sendLate);
window.addEventListener("storage", () => {
  tell();
  sayRefused();
});
setInterval(() => waiting() && sendLate(), 5_000);

watch();
tell();
sayRefused();
if (waiting()) send().then(refresh);
else timeStage();

// What is in work is taken along while the network reaches, once the page is quiet.
const QUIET_MS = 1_500;
const alongSoon = () => setTimeout(() => takeAlong(waiting), QUIET_MS);
document.addEventListener("news", alongSoon);
alongSoon();

// ---- calculators ------------------------------------------------------------------

// A file is read into the field beside it; what is no UTF-8 is taken as an old logger's letters.
document.addEventListener("change", async (event) => {
  const into = event.target.dataset?.into;
  const file = event.target.files?.[0];
  if (!into || !file) return;
  const bytes = await file.arrayBuffer();
  const read = (label) => new TextDecoder(label, { fatal: label === "utf-8" }).decode(bytes);
  let text;
  try {
    text = read("utf-8");
  } catch {
    text = read("windows-1252");
  }
  event.target.form.elements.namedItem(into).value = text;
});

// ---- at the coolant ---------------------------------------------------------------

// A button that fills a field, and a clock that runs from the tap that started it, or from
// the time that the page gives.
document.addEventListener("click", (event) => {
  const quick = event.target.closest("button[data-fill]");
  if (quick) {
    const field = quick.form.elements.namedItem(quick.dataset.fill);
    field.value = quick.dataset.value;
    field.dispatchEvent(new Event("input", { bubbles: true }));
  }
  const start = event.target.closest("button[data-clock]");
  const clock = document.querySelector("[data-since]");
  if (start && clock && start.form.checkValidity()) clock.dataset.since = new Date().toISOString();
});
setInterval(() => {
  const clock = document.querySelector("[data-since]");
  const since = Date.parse(clock?.dataset.since ?? "");
  if (Number.isNaN(since)) return;
  const seconds = Math.max(0, Math.floor((Date.now() - since) / 1000));
  clock.textContent = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`;
}, 500);
