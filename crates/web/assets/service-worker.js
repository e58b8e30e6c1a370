// Shows pages where the network does not reach: the stages that were taken along, and the files
// of every page. What is tapped is no business of its own; the page keeps and sends it.

// THE PHRASES

const FILES_OF = "files-" + "THE VERSION";
const FILES = ["THE FILES"];
const REACH = "reach";

// A phone at the edge of the network waits for ever; a technician does not.
const PATIENCE_MS = 4000;
const LATE = new Error("late");

self.addEventListener("install", (event) => {
  event.waitUntil(
    caches.open(FILES_OF).then((files) => files.addAll(FILES)).then(() => self.skipWaiting()),
  );
});

self.addEventListener("activate", (event) => {
  const old = (name) => name.startsWith("files-") && name !== FILES_OF;
  event.waitUntil(
    caches.keys()
      .then((names) => Promise.all(names.filter(old).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const { pathname, origin } = new URL(request.url);
  if (request.method !== "GET" || origin !== location.origin || pathname.startsWith("/api/")) return;
  if (pathname.startsWith("/assets/")) return event.respondWith(file(request));
  if (pathname.startsWith("/file/")) return event.respondWith(photo(request, pathname));
  if (request.mode === "navigate" || request.headers.get("accept")?.includes("text/html")) {
    event.respondWith(page(request, pathname));
  }
});

// Files change with the program: the newest where it is in reach, else those that belong together.
async function file(request) {
  const asked = fetch(request);
  try {
    return await within(asked);
  } catch {
    return (await caches.match(request, { cacheName: FILES_OF, ignoreSearch: true })) ?? asked;
  }
}

// A photo that was taken along; what was erased meanwhile is not kept.
async function photo(request, pathname) {
  const asked = fetch(request);
  try {
    const answer = await within(asked);
    if (answer.status === 404) await (await caches.open(REACH)).delete(pathname);
    return answer;
  } catch {
    return (await caches.match(pathname, { cacheName: REACH })) ?? asked;
  }
}

async function page(request, pathname) {
  const asked = fetch(request);
  try {
    const answer = await within(asked);
    // A device that was put out keeps nothing of the shop.
    if (answer.status === 401) await caches.delete(REACH);
    return answer;
  } catch (error) {
    // A program that is busy is waited for, unless the page lies here and is not behind.
    if (error !== LATE || !(await isBehind(pathname))) {
      const page = await taken(pathname);
      if (page) return page;
    }
    return asked.catch(async () => (await taken(pathname)) ?? outOfReach(pathname));
  }
}

async function isBehind(pathname) {
  const [, number] = pathname.match(/^\/o\/(\d+)/) ?? [];
  const reach = await caches.open(REACH);
  return number !== undefined && (await reach.match(`/reach/${number}/behind`)) !== undefined;
}

function within(answer) {
  const late = new Promise((_, fail) => setTimeout(() => fail(LATE), PATIENCE_MS));
  return Promise.race([answer, late]);
}

const said = async (reach, path) => (await reach.match(path))?.text();

// The page that was taken along: the stage that comes now, or the plain one for what else
// happened.
async function taken(pathname) {
  const [, number, rest] = pathname.match(/^\/o\/(\d+)(\/.*)?$/) ?? [];
  if (!number) return null;
  const reach = await caches.open(REACH);
  const now = await said(reach, `/reach/${number}/now`);
  if (now === undefined) return null;
  if (rest === "/off") return reach.match(`/reach/${number}/off`);
  if (rest === "/snag") return reach.match(`/reach/${number}/snag`);
  if (rest === undefined || rest === "/stage") return reach.match(`/reach/${number}/${now}`);
  return null;
}

async function outOfReach(pathname) {
  const reach = await caches.open(REACH);
  const keys = (await reach.keys()).map((request) => new URL(request.url).pathname);
  const numbers = keys.map((path) => path.match(/^\/reach\/(\d+)\/now$/)?.[1]).filter(Boolean);
  const language = known((await said(reach, "/reach/language")) ?? navigator.language);
  const words = (name, holes) => say(name, holes, language);
  const rows = await Promise.all(numbers.map(async (number) => {
    const left = Number(await said(reach, `/reach/${number}/left`));
    const photos = left ? `<span class="soft line">${words("photos_left", { left })}</span>` : "";
    return `<a class="row" href="/o/${number}/stage"><span class="what"><span class="strong line">${words("order", { number })}</span>${photos}</span><span>${words("next_stage")}</span></a>`;
  }));
  const why = words(pathname.startsWith("/o/") ? "page_is_with_program" : "this_is_with_program");
  const html = `<!doctype html><html lang="${language}"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1"><title>${words("out_of_reach")} \u00b7 buttonup</title>
<link rel="stylesheet" href="/assets/app.css"><script type="module" src="/assets/app.js"></script></head>
<body data-who="" data-position="0"><main><div class="trouble" role="alert" data-trouble hidden></div>
<h1>${words("out_of_reach")}</h1><p class="gap">${why}</p>
${rows.length ? `<h2>${words("taken_along")}</h2>${rows.join("")}` : ""}</main>
<footer class="status"><button class="row" type="button" data-undo><span class="what"><span class="line" data-status role="status"></span><span class="soft line short" data-last aria-hidden="true"></span></span><span class="strong">${words("undo_last")}</span></button></footer>
</body></html>`;
  return new Response(html, { status: 503, headers: { "content-type": "text/html; charset=utf-8" } });
}
