// What was tapped and waits to be sent. No command is lost: it stays here, under the same id,
// until the shop's program has answered, and what was refused while nobody waited for it stays
// until somebody has seen to it.
//
// It knows no page, no clock and no network: what it is kept in, whom it asks and who is told is
// handed in, so that a test runs the same lines without a browser.

const REFUSED = "refused";

/// The queue of one device:
/// `storage` and `session` keep texts by name, as a browser's own two stores do; `name()` makes a
/// new name; `stamp()` says when and by whom a tap is made; `post(command)` sends one and gives
/// {ok, status, told}, or fails where nobody answers; `whole(command)` puts its files in and
/// `forget(command)` lets them go; `lock(work)` lets one page send at a time; `prove()` asks for
/// the PIN; `tell(what)` and `met(trouble)` say how it goes, `took(command, told)` what was taken.
export function queueOf({ storage, session, name, stamp, post, whole, forget, lock, prove, tell, met, took }) {
  const device = (session.device ??= name());
  const own = `queue:${device}`;
  const read = (key) => JSON.parse(storage.getItem(key) ?? "[]");
  const write = (key, list) =>
    list.length ? storage.setItem(key, JSON.stringify(list)) : storage.removeItem(key);
  const queues = () => Object.keys(storage).filter((key) => key.startsWith("queue:"));

  // Commands whose answer somebody waits for, and what was wrong with them.
  const awaited = new Set();
  const troubles = new Map();

  // All of one tap, or nothing: a device may have no room left.
  function enqueue(parts) {
    let seq = Number(session.seq ?? 0);
    const commands = parts.map((part) => ({
      command_id: name(),
      device,
      device_seq: ++seq,
      // Whose tap it is stands fast now, whoever is signed in when it is sent.
      ...stamp(),
      ...part,
    }));
    write(own, [...read(own), ...commands]);
    session.seq = seq;
    return commands;
  }

  // One page sends at a time: a second one would send what the first has just sent, without
  // the files that it has let go of.
  let sending = null;
  function send() {
    sending ??= Promise.resolve(lock(sendAll)).finally(() => (sending = null));
    return sending;
  }

  async function sendAll() {
    // What one part of the record cannot take now waits here, and holds up nothing for another.
    const waits = new Set();
    let signFirst = false;
    for (const key of queues()) {
      const next = () => read(key).find((one) => !waits.has(one.stream));
      for (let command = next(); command; command = next()) {
        let answer;
        try {
          answer = await post(await whole(command));
          queue.reached = true;
        } catch {
          queue.reached = false;
          return tell();
        }
        const { ok, status, told } = answer;
        if (status === 503 && told.kind === "waits") {
          waits.add(command.stream);
          continue;
        }
        if (status === 429) return tell("sent_in_a_moment");
        // The PIN is asked of who stands here; what was tapped waits for it.
        if (status === 401) {
          if (told.kind === "pin" && awaited.has(command.command_id)) {
            if (await prove()) continue;
            refused(command, { ...told, left: true });
            drop(key, command);
            continue;
          }
          waits.add(command.stream);
          signFirst = true;
          continue;
        }
        if (status >= 500) return tell("could_not_write");
        // Somebody else may have answered in the program's place, such as a network's own page.
        if (ok && told.command_id !== command.command_id) return tell();
        // A refused one leaves the queue, so that it holds up nothing behind it, but is not lost.
        if (!ok) refused(command, told);
        else {
          forget(command);
          took(command, told);
        }
        drop(key, command);
        tell();
      }
    }
    if (signFirst) tell("sent_after_sign_in");
    else if (waits.size) tell("only_looked_at");
  }

  function drop(key, command) {
    write(key, read(key).filter((one) => one.command_id !== command.command_id));
    storage.removeItem(`said:${command.command_id}`);
  }

  function refused(command, trouble) {
    if (awaited.has(command.command_id)) troubles.set(command.command_id, trouble);
    else {
      const said = JSON.parse(storage.getItem(`said:${command.command_id}`) ?? "{}");
      write(REFUSED, [...read(REFUSED), { command, trouble, ...said }]);
    }
    met(command, trouble);
  }

  const queue = {
    device,
    /// Whether the shop's program answered when it was asked last.
    reached: true,
    awaited,
    troubles,
    enqueue,
    send,
    /// Whether something is being sent now.
    sending: () => sending !== null,
    /// How much waits on this device, whichever of its pages it was tapped on.
    waiting: () => queues().reduce((sum, key) => sum + read(key).length, 0),
    /// What waits of this page.
    left: () => read(own),
    /// Leaves one out that was tapped on this page.
    dropOwn: (command) => drop(own, command),
    /// What a tap was called, and the page it was made on.
    remember: (command, label, from) =>
      storage.setItem(`said:${command.command_id}`, JSON.stringify({ label, from })),
    /// What was refused while nobody waited for it.
    refusedOnes: () => read(REFUSED),
    /// Somebody has seen to one of them; where it is to be done again, it is tapped anew.
    settle(one, again) {
      write(
        REFUSED,
        read(REFUSED).filter((other) => other.command.command_id !== one.command.command_id),
      );
      if (!again) return;
      const { command_id, device: _, device_seq, happened_at, expected, sign_in, ...part } = one.command;
      for (const command of enqueue([part])) queue.remember(command, one.label, one.from);
    },
  };
  return queue;
}
