// What follows from what is being typed: a form that names parts of its page has them asked for
// anew as one types, and nothing else on the page changes.

const PAUSE_MS = 200;
const waits = new WeakMap();

async function follow(form) {
  const typed = [...new FormData(form)].filter(([, value]) => typeof value === "string" && value !== "");
  const asked = `${location.pathname}?${new URLSearchParams(typed)}`;
  form.dataset.asked = asked;
  let page;
  try {
    const answer = await fetch(asked, { headers: { accept: "text/html" } });
    if (!answer.ok) return;
    page = new DOMParser().parseFromString(await answer.text(), "text/html");
  } catch {
    // Out of reach nothing follows; what is typed stands.
    return;
  }
  // More was typed meanwhile: its own answer is on its way.
  if (form.dataset.asked !== asked) return;
  for (const id of form.dataset.follows.split(" ")) {
    const [shown, now] = [document.getElementById(id), page.getElementById(id)];
    if (shown && now && shown.innerHTML !== now.innerHTML) shown.replaceChildren(...now.childNodes);
  }
}

document.addEventListener("input", (event) => {
  const form = event.target.closest?.("form[data-follows]");
  if (!form) return;
  clearTimeout(waits.get(form));
  waits.set(form, setTimeout(() => follow(form), PAUSE_MS));
});
