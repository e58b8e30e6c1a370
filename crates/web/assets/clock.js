// A person's clock on a stage. It runs from the stage's opening to the tap that confirms it,
// pauses while its page is left for another, and ends where another stage is opened instead.
// Nobody taps for it. It is kept on the device, so that a page shown anew goes on with the
// same stage; a phone that sleeps in a pocket pauses nothing, since the work goes on.

const storage = window.localStorage;
const key = `stage:${document.body.dataset.who}`;
const kept = () => JSON.parse(storage.getItem(key) ?? "null");
const keep = (stage) => storage.setItem(key, JSON.stringify(stage));
const shown = () => document.querySelector("main form[data-stage]");
const goesOn = () => {
  const before = kept();
  return before && shown()?.dataset.stage === before.stage ? before : null;
};

const tick = (stage, clock, at) => ({
  stream: stage.stream,
  fact: { timed: { stage: stage.id, clock, book_minutes: stage.minutes, words: null } },
  ...(at ? { happened_at: at } : {}),
});

/// What the page that is shown now tells of the clock: nothing while its stage goes on.
export function ticks() {
  const form = shown();
  const before = kept();
  if (goesOn()) {
    // Who stopped here by hand has not gone on by looking at it again.
    if (before.held) return [];
    keep({ ...before, paused: false, away: null });
    return before.paused ? [tick(before, "resumed")] : [];
  }
  if (!form) {
    if (!before || before.paused) return [];
    keep({ ...before, paused: true });
    return [tick(before, "paused", before.away)];
  }
  const { stage, stream, minutes } = form.dataset;
  const opened = { id: crypto.randomUUID(), stage, stream, minutes, paused: false, away: null };
  keep(opened);
  const left = before ? [tick(before, "left", before.paused ? null : before.away)] : [];
  return [...left, tick(opened, "opened")];
}

/// The name that the stage of a form goes by, where its clock runs.
export const stageOf = (form) => (form?.dataset.stage && goesOn() ? { stage: goesOn().id } : {});

/// These commands confirm the stage: its clock has run.
export function confirmed(commands) {
  const running = kept()?.id;
  const confirms = (command) => running && command.fact?.moved?.stage === running;
  if (commands.some(confirms)) storage.removeItem(key);
}

/// These commands stop it by hand: it stands until something is pressed in its stage.
export function held(commands) {
  const running = kept();
  const stops = ({ fact }) => running && fact?.timed?.clock === "paused" && fact.timed.stage === running.id;
  if (commands.some(stops)) keep({ ...running, paused: true, held: true });
}

document.addEventListener("click", (event) => {
  const running = goesOn();
  if (!running?.held || !event.target.closest?.("form[data-stage][data-name]")) return;
  keep({ ...running, held: false });
  document.dispatchEvent(new Event("goes-on"));
});

// When the page was left, for the pause that the next page tells.
window.addEventListener("pagehide", () => {
  const running = goesOn();
  if (running) keep({ ...running, away: new Date().toISOString() });
});
