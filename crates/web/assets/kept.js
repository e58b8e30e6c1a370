// Files that wait to be sent lie in the browser's own database: the store that the queue
// lies in holds about five million letters, and a few photos fill it. A command in the
// queue names its file as {kept, media, salt} in place of {file, media, salt}.

const open = () =>
  new Promise((done, fail) => {
    const ask = indexedDB.open("buttonup", 1);
    ask.onupgradeneeded = () => ask.result.createObjectStore("files");
    ask.onsuccess = () => done(ask.result);
    ask.onerror = () => fail(ask.error);
  });

// Done only when it is on the device's disk.
async function within(mode, work) {
  const database = await open();
  try {
    return await new Promise((done, fail) => {
      const turn = database.transaction("files", mode, { durability: "strict" });
      const asked = work(turn.objectStore("files"));
      turn.oncomplete = () => done(asked?.result);
      turn.onerror = turn.onabort = () => fail(turn.error);
    });
  } finally {
    database.close();
  }
}

const isFile = (part) => "file" in part && "media" in part && "salt" in part;
const isKept = (part) => "kept" in part && "media" in part && "salt" in part;

async function walked(part, change) {
  if (part === null || typeof part !== "object") return part;
  const changed = await change(part);
  if (changed) return changed;
  if (Array.isArray(part)) return Promise.all(part.map((inner) => walked(inner, change)));
  const inner = Object.entries(part).map(async ([key, value]) => [key, await walked(value, change)]);
  return Object.fromEntries(await Promise.all(inner));
}

/// The same with its files put aside.
export const keep = (part) =>
  walked(part, async (found) => {
    if (!isFile(found)) return null;
    const { file, ...rest } = found;
    const kept = crypto.randomUUID();
    await within("readwrite", (files) => files.put(file, kept));
    return { kept, ...rest };
  });

/// The same with its files in it again.
export const whole = (part) =>
  walked(part, async (found) => {
    if (!isKept(found)) return null;
    const { kept, ...rest } = found;
    return { file: (await within("readonly", (files) => files.get(kept))) ?? "", ...rest };
  });

/// Its files are needed no more.
export const forget = (part) =>
  walked(part, async (found) => {
    if (!isKept(found)) return null;
    await within("readwrite", (files) => void files.delete(found.kept));
    return found;
  });
