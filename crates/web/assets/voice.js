// What is said into a device in place of typing it, up to half a minute. A recording becomes a
// chosen file of its form and goes the way of a photo: kept on the device until it was sent.

import { say } from "./phrases.js";

const LONGEST_S = 30;
// Speech is well understood at this, and half a minute takes some 120 000 bytes.
const BITS_A_SECOND = 32_000;
// What browsers can record, the smallest first.
const SORTS = ["audio/webm;codecs=opus", "audio/ogg;codecs=opus", "audio/mp4", "audio/webm"];
const LOOK_MS = 250;

const part = (box, what) => box.querySelector(what);
const tell = (box, words) => (part(box, "[data-told]").textContent = words);

// One recording at a time: where, by what, and when it has become a file.
let running = null;

async function begin(box) {
  if (!navigator.mediaDevices?.getUserMedia || !window.MediaRecorder) return tell(box, say("no_recording_here"));
  let sound;
  try {
    sound = await navigator.mediaDevices.getUserMedia({ audio: true });
  } catch (error) {
    const denied = /^(NotAllowed|Security)/.test(error.name);
    return tell(box, say(denied ? "microphone_not_allowed" : "no_microphone"));
  }
  await end();
  const sort = SORTS.find((one) => MediaRecorder.isTypeSupported(one));
  const recorder = new MediaRecorder(sound, { ...(sort ? { mimeType: sort } : {}), audioBitsPerSecond: BITS_A_SECOND });
  const pieces = [];
  recorder.addEventListener("dataavailable", (event) => event.data.size && pieces.push(event.data));
  const begun = performance.now();
  const press = part(box, "[data-record]");
  const look = () => {
    const seconds = Math.floor((performance.now() - begun) / 1000);
    press.textContent = say("stop_speaking", { seconds, most: LONGEST_S });
    if (seconds >= LONGEST_S) end();
  };
  const clock = setInterval(look, LOOK_MS);
  const ended = new Promise((done) => recorder.addEventListener("stop", done, { once: true })).then(() => {
    clearInterval(clock);
    for (const track of sound.getTracks()) track.stop();
    running = null;
    // The sort alone: what a browser says of the way it is packed is no part of its name.
    const [media] = (recorder.mimeType || sort || "").split(";");
    show(box, pieces.length ? new File(pieces, "said", { type: media }) : null);
    if (!pieces.length) tell(box, say("nothing_was_heard"));
  });
  running = { box, recorder, ended };
  // News of others leave it alone from here on.
  box.dataset.inked = "yes";
  tell(box, say("speak_now"));
  recorder.start();
  look();
}

async function end() {
  if (!running) return;
  const { recorder, ended } = running;
  if (recorder.state !== "inactive") recorder.stop();
  await ended;
}

// What the box holds: a recording, or none.
function show(box, file) {
  const chosen = new DataTransfer();
  if (file) chosen.items.add(file);
  part(box, "input").files = chosen.files;
  const heard = part(box, "audio");
  if (heard.src) URL.revokeObjectURL(heard.src);
  if (file) heard.src = URL.createObjectURL(file);
  else heard.removeAttribute("src");
  heard.hidden = part(box, "[data-unsaid]").hidden = !file;
  part(box, "[data-record]").textContent = say(file ? "speak_again" : "start_speaking");
  tell(box, file ? say("goes_with_it") : "");
  if (file) box.dataset.inked = "yes";
  else delete box.dataset.inked;
}

/// Whoever presses while they speak has said it: the recording ends, and goes with the press.
export async function settled(form) {
  if (running && form?.contains(running.box)) await end();
}

document.addEventListener("click", (event) => {
  const box = event.target.closest?.("[data-voice]");
  if (!box) return;
  if (event.target.closest("[data-record]")) running?.box === box ? end() : begin(box);
  if (event.target.closest("[data-unsaid]")) show(box, null);
});

document.addEventListener("reset", (event) => {
  for (const box of event.target.querySelectorAll("[data-voice]")) show(box, null);
});

// A phone that is put away has heard enough.
document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && end());

// What is there no more, or of a sort that this browser does not know, is said where it stands.
document.addEventListener(
  "error",
  (event) => {
    const unheard = event.target.closest?.(".voice")?.querySelector("[data-unheard]");
    if (unheard && event.target.tagName === "AUDIO") unheard.hidden = false;
  },
  true,
);
