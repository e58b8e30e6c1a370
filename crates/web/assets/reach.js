// What this device takes along where the network does not reach: for each order in work the
// pages of the stages that follow, and its photos. Where a stage is confirmed, the next one comes, whether the
// shop's program answered or not.
//
// The pages after a stage name its moves before anybody made them. What they came to be called
// here is put in their place when such a page's press is made; what was left out of a stage
// falls back on what had been seen before it.

import { say, spoken } from "./phrases.js";

const storage = window.localStorage;
const key = (number) => `reach:${number}`;
const known = (number) => JSON.parse(storage.getItem(key(number)) ?? "null");
const note = (number, reach) => storage.setItem(key(number), JSON.stringify(reach));
const numberOf = (path) => path.match(/^\/o\/(\d+)/)?.[1] ?? "";
const trusted = "caches" in window && "serviceWorker" in navigator;

const page = (text) =>
  new Response(text, { headers: { "content-type": "text/html; charset=utf-8" } });

async function setNow(number, now) {
  if (!trusted) return;
  const reach = await caches.open("reach");
  await reach.put(`/reach/${number}/now`, new Response(String(now)));
}

// What is taken along of an order is behind where something was done to it that is no stage of
// what lies here: then a slow answer is better waited for.
async function setBehind(number) {
  if (!trusted) return;
  const reach = await caches.open("reach");
  await reach.put(`/reach/${number}/behind`, new Response(""));
}

async function take(number) {
  const before = storage.getItem(key(number));
  const answer = await fetch(`/api/orders/${number}/reach`);
  if (!answer.ok) return;
  const bundle = await answer.json();
  // Meanwhile somebody may have gone on with what lies here.
  if (storage.getItem(key(number)) !== before) return;
  const reach = await caches.open("reach");
  const put = (name, text) => reach.put(`/reach/${number}/${name}`, page(text));
  await Promise.all(bundle.stages.map((stage, nth) => put(nth, stage.page)));
  await put("off", bundle.off);
  await put("snag", bundle.snag);
  await setNow(number, 0);
  await reach.delete(`/reach/${number}/behind`);
  await reach.put(`/reach/${number}/left`, new Response(String(bundle.photos_left)));
  const of = JSON.parse(before ?? "null");
  note(number, {
    photos: bundle.photos.map(({ file }) => file),
    left: bundle.photos_left,
    pictured: false,
    seq: bundle.seq,
    // Where another asking brought no more, there is no more to be had.
    whole: bundle.whole || (of?.seq === bundle.seq && of.stages.length >= bundle.stages.length),
    now: 0,
    stages: bundle.stages.map(({ name, names }) => ({ name, names })),
    made: {},
    described: [],
    last: null,
  });
}

// Photos come after the pages of every order, since they are larger; those that lie here already
// are not asked for again. What finds no room on the device is told with the others.
async function takePhotos(number) {
  const { photos = [], pictured = true, seq, left } = known(number) ?? {};
  if (pictured) return;
  const reach = await caches.open("reach");
  let full = 0;
  for (const file of photos) {
    const path = `/file/${file}`;
    if (await reach.match(path)) continue;
    const answer = await fetch(path);
    if (!answer.ok) continue;
    try {
      await reach.put(path, answer);
    } catch (error) {
      if (error.name !== "QuotaExceededError") throw error;
      full += 1;
    }
  }
  await reach.put(`/reach/${number}/left`, new Response(String(left + full)));
  // Meanwhile a stage may have been confirmed, or other pages been taken along.
  const now = known(number);
  if (now?.seq === seq) note(number, { ...now, pictured: true });
}

// A photo that no order here has any more was taken back, was erased, or is of a job that is over.
async function leavePhotos() {
  const numbers = Object.keys(storage).filter((name) => name.startsWith("reach:"));
  const wanted = new Set(numbers.flatMap((name) => known(name.slice("reach:".length))?.photos ?? []));
  const reach = await caches.open("reach");
  for (const request of await reach.keys()) {
    const [, file] = new URL(request.url).pathname.match(/^\/file\/(.+)$/) ?? [];
    if (file && !wanted.has(file)) await reach.delete(request);
  }
}

async function leave(number) {
  const reach = await caches.open("reach");
  for (const request of await reach.keys()) {
    if (new URL(request.url).pathname.startsWith(`/reach/${number}/`)) await reach.delete(request);
  }
  storage.removeItem(key(number));
}

let taking = null;

/// Takes along what is in work now; not while something waits to be sent, since what was taken
/// along is further on than what the shop's program knows.
export function takeAlong(waiting) {
  if (!trusted || !document.body.dataset.who) return;
  taking ??= takeOver().then(() => takeAll(waiting)).catch(() => {}).finally(() => (taking = null));
}

// The pages are of whoever they were made for: the next person takes along their own.
async function takeOver() {
  const { who } = document.body.dataset;
  if (storage.reachOf && storage.reachOf !== who) await leaveAll();
  storage.reachOf = who;
  // What the service worker says, where there is no page to ask.
  const reach = await caches.open("reach");
  await reach.put("/reach/language", new Response(spoken()));
}

const isWhole = (number, seq) => {
  const reach = known(number);
  return reach?.seq === seq && reach.whole !== false;
};

async function takeAll(waiting) {
  const answer = await fetch("/api/reach");
  if (!answer.ok) return;
  const orders = await answer.json();
  const here = numberOf(location.pathname);
  orders.sort((a, b) => (String(b.number) === here) - (String(a.number) === here));
  for (const { number, seq } of orders) {
    if (isWhole(number, seq)) continue;
    let goesOn = true;
    while (goesOn) {
      if (waiting() > 0) return;
      const before = storage.getItem(key(number));
      await take(number);
      const came = storage.getItem(key(number)) !== before;
      goesOn = came && known(number)?.seq === seq && !isWhole(number, seq);
    }
  }
  const left = Object.keys(storage).filter((name) => name.startsWith("reach:"));
  for (const name of left) {
    const number = name.slice("reach:".length);
    if (!orders.some((one) => String(one.number) === number)) await leave(number);
  }
  await leavePhotos();
  for (const { number } of orders) await takePhotos(number);
}

/// Nothing of the shop stays on this device.
export async function leaveAll() {
  for (const name of Object.keys(storage).filter((name) => name.startsWith("reach:"))) storage.removeItem(name);
  if (trusted) await caches.delete("reach");
}

// ---- names of moves -----------------------------------------------------------------

const isName = (one) => one && typeof one === "object" && "command" in one && "nth" in one;

function named(one, made) {
  const command = made[one.command];
  if (!command) return [one];
  const move = command.moves[one.nth];
  if (!move) return [];
  const own = command.id !== null && move.nth !== null ? [{ command: command.id, nth: move.nth }] : [];
  return [...own, ...move.after];
}

function once(names) {
  return [...new Map(names.map((one) => [`${one.command} ${one.nth}`, one])).values()];
}

/// The same commands, with moves that were made here under the names they got.
export function withNames(templates) {
  const reach = known(numberOf(location.pathname));
  if (!reach || !(Object.keys(reach.made).length || reach.described.length)) return templates;
  const walk = (part) => {
    if (Array.isArray(part)) {
      return part.some(isName) ? once(part.flatMap((one) => (isName(one) ? named(one, reach.made) : [walk(one)]))) : part.map(walk);
    }
    if (part === null || typeof part !== "object") return part;
    return Object.fromEntries(Object.entries(part).map(([name, inner]) => [name, walk(inner)]));
  };
  // What a stage described stays described when the stage is taken back and done again.
  const described = (template) => reach.described.includes(inner(template)?.fact?.declared?.item?.id);
  return walk(templates).map((template) => (described(template) ? { $when: "", then: template } : template));
}

const inner = (part) => (part && typeof part === "object" && "$when" in part ? part.then : part);

/// A stage was confirmed with these commands, made of these templates; `left` says which part of
/// a template is left out. The next stage comes.
export async function stageDone(form, templates, commands, left) {
  const number = numberOf(location.pathname);
  const reach = known(number);
  const stage = reach?.stages[reach.now];
  if (!stage?.names.length || !form?.dataset.name || form.dataset.name !== stage.name) {
    if (reach) await setBehind(number);
    return;
  }
  templates.forEach((template, at) => {
    const command = commands[at];
    const moves = inner(template)?.fact?.moved?.moves ?? [];
    let nth = 0;
    const made = moves.map((move) => {
      const after = (inner(move).after ?? []).filter(isName);
      return { nth: !command || left(move) ? null : nth++, after };
    });
    const item = command?.fact?.declared?.item?.id;
    if (item) reach.described.push(item);
    if (stage.names[at]) reach.made[stage.names[at]] = { id: command?.command_id ?? null, moves: made };
  });
  reach.last = { commands: commands.filter(Boolean).map((one) => one.command_id), now: reach.now };
  reach.now += 1;
  note(number, reach);
  await setNow(number, reach.now);
}

/// A stage was taken back: it comes again.
export async function stageUndone(ids) {
  const number = numberOf(location.pathname);
  const reach = known(number);
  if (!reach?.last || !reach.last.commands.some((id) => ids.includes(id))) return;
  for (const name of reach.stages[reach.last.now].names) delete reach.made[name];
  reach.now = reach.last.now;
  reach.last = null;
  note(number, reach);
  await setNow(number, reach.now);
}

if (trusted) {
  navigator.serviceWorker.register("/service-worker.js").catch(() => {});
  // What is not sent yet is not cleared away to make room for pictures.
  navigator.storage?.persist?.();
}

// A photo that was not taken along says so where it would be.
document.addEventListener(
  "error",
  (event) => {
    if (!event.target.matches?.(".thumbnails img")) return;
    const said = document.createElement("span");
    said.className = "soft";
    said.textContent = say("photo_not_here", { what: event.target.alt });
    event.target.replaceWith(said);
  },
  true,
);

document.addEventListener("submit", (event) => {
  if (event.target.getAttribute("action") === "/sign-out") leaveAll();
});
