// Brings taps to the server: of one sheet strictly one after the other, each until the server has answered for that very
// tap. A tap leaves the device only after the server, asked again, has named it among those it has.
const LONGEST_WAIT = 15000;

const pause = (work, milliseconds) => setTimeout(work, milliseconds);
const nobody = { request: (name, options, work) => work(true) };

// Whose turn it is with a sheet: whoever sends its taps or puts it in here anew waits for the other.
export const turn = (sheet) => `scrubline ${sheet}`;

// store: a DeviceStore or PageStore. transport: send(tap, version) and receipt(sheet), see transport.js.
// tell({tap, state, reasons, answer, problem, elsewhere}): what became of a tap, or a problem of the whole queue; channel:
// where other pages of this device say the same of taps in the same store.
export class Outbox {
  constructor({ store, transport, tell, channel = null, locks = navigator.locks ?? nobody, later = pause, random = Math.random }) {
    Object.assign(this, { store, transport, tell, channel, locks, later, random });
    channel?.addEventListener("message", ({ data }) => tell({ ...data, elsewhere: true }));
    this.tries = 0;
    this.timers = new Map();
    this.loose = [];
    this.bases = new Map();
    this.again = new Set();
  }

  say(said) {
    this.tell(said);
    this.channel?.postMessage(said);
  }

  // Kept before it is said to be. Where the device has no room, the page alone keeps it, and says so.
  async add(tap) {
    const last = (await this.waiting(tap.sheet)).pop();
    if (last && last.id !== this.onTheWay && tap.key.startsWith("measure.") && last.key === tap.key) {
      await this.store.change(tap.sheet, { changed: [{ ...last, fields: tap.fields }] });
      return last;
    }
    try {
      await this.store.add({ ...tap, state: "waiting" });
      this.channel?.postMessage({ tap, state: "waiting" });
    } catch (error) {
      const loose = { ...tap, state: "waiting", loose: true };
      this.loose.push(loose);
      this.tell({ tap: loose, problem: "full", error });
      return loose;
    }
    return tap;
  }

  async taps(sheet) {
    return [...(await this.store.taps(sheet)), ...this.loose.filter((tap) => tap.sheet === sheet)];
  }

  async waiting(sheet) {
    return (await this.taps(sheet)).filter((tap) => tap.state === "waiting");
  }

  // Everything that is not on the server yet, or not read back from it.
  async unfinished(sheet) {
    return (await this.taps(sheet)).filter((tap) => tap.state === "waiting" || tap.state === "sent");
  }

  async update(sheet, { changed = [], removed = [], base = null }) {
    this.loose = this.loose.map((tap) => changed.find((one) => one.id === tap.id) ?? tap)
      .filter((tap) => !removed.includes(tap.id));
    try {
      await this.store.change(sheet, { changed: changed.filter((tap) => !tap.loose), removed, base });
      this.bases.delete(sheet);
    } catch (error) {
      // A device without room: the page goes on from what the server said, and asks again for what it could not note.
      this.bases.set(sheet, base ?? (await this.base(sheet)));
    }
  }

  // The sheet as the server said last.
  async base(sheet) {
    return this.bases.get(sheet) ?? (await this.store.package(sheet)).base;
  }

  // Sends what waits. Only one tab sends at a time; another one's turn comes when it asks again.
  async drain(sheet) {
    clearTimeout(this.timers.get(sheet));
    await this.locks.request(turn(sheet), { ifAvailable: true }, async (mine) => {
      if (!mine || this.sending) {
        this.again.add(sheet);
        return;
      }
      this.sending = true;
      try {
        await this.sendAll(sheet);
      } finally {
        this.sending = false;
      }
    });
    if (this.again.delete(sheet)) {
      this.after(sheet, 300);
    }
  }

  async sendAll(sheet) {
    for (let [tap] = await this.waiting(sheet); tap; [tap] = await this.waiting(sheet)) {
      if (!(await this.sendOne(sheet, tap))) {
        return;
      }
    }
    await this.readBack(sheet);
  }

  async sendOne(sheet, tap) {
    const base = await this.base(sheet);
    this.onTheWay = tap.id;
    const result = await this.transport.send(tap, base.version).catch(() => ({ kind: "nothing" }));
    this.onTheWay = null;
    await this[`on_${result.kind}`](sheet, tap, result);
    const noted = (await this.waiting(sheet))[0]?.id !== tap.id;
    if (!noted && result.kind === "done") {
      this.pause(sheet, tap, "failed");
    }
    return noted && (result.kind === "done" || result.kind === "refused");
  }

  async on_done(sheet, tap, { answer }) {
    this.tries = 0;
    const here = this.store.durable && !tap.loose;
    const next = here ? { changed: [{ ...tap, state: "sent" }] } : { removed: [tap.id] };
    await this.update(sheet, { ...next, base: answer.sheet });
    this.say({ tap, state: here ? "sent" : "saved", answer });
  }

  // Put aside with its reason, never dropped.
  async on_refused(sheet, tap, { reasons }) {
    this.tries = 0;
    const next = this.store.durable ? { changed: [{ ...tap, state: "refused", reasons }] } : { removed: [tap.id] };
    await this.update(sheet, next);
    this.say({ tap, state: "refused", reasons });
  }

  async on_stale(sheet, tap, result) {
    const waiting = await this.waiting(sheet);
    await this.update(sheet, { changed: waiting.map((one) => ({ ...one, state: "parked", reasons: result.reasons })) });
    waiting.forEach((one) => this.say({ tap: one, state: "refused", reasons: [] }));
    this.say({ tap, problem: result.gone ? "gone" : "stale", reasons: result.reasons });
  }

  async on_login(sheet, tap) {
    this.pause(sheet, tap, "login");
  }

  async on_nothing(sheet, tap) {
    this.pause(sheet, tap, "failed");
  }

  pause(sheet, tap, problem) {
    this.say({ tap, state: "waiting", problem });
    const wait = Math.min(LONGEST_WAIT, 1000 * 2 ** this.tries);
    this.tries += 1;
    this.after(sheet, wait * (0.5 + this.random() / 2));
  }

  after(sheet, milliseconds) {
    clearTimeout(this.timers.get(sheet));
    this.timers.set(sheet, this.later(() => this.drain(sheet), milliseconds));
  }

  // What was sent is let go once the server, asked anew, says that it has it.
  async readBack(sheet) {
    const sent = (await this.store.taps(sheet)).filter((tap) => tap.state === "sent");
    if (sent.length === 0) {
      return;
    }
    const receipt = await this.transport.receipt(sheet).catch(() => null);
    if (!receipt) {
      this.after(sheet, LONGEST_WAIT);
      return;
    }
    const there = sent.filter((tap) => receipt.taps.includes(tap.id));
    await this.update(sheet, { removed: there.map((tap) => tap.id) });
    there.forEach((tap) => this.say({ tap, state: "saved" }));
  }

  // A person's decision about what was put aside: on top of the sheet as it is now, or not at all.
  async resume(sheet, base) {
    const parked = (await this.taps(sheet)).filter((tap) => tap.state === "parked");
    await this.update(sheet, { changed: parked.map((tap) => ({ ...tap, state: "waiting" })), base });
    await this.drain(sheet);
  }

  async giveUp(sheet, states) {
    const given = (await this.taps(sheet)).filter((tap) => states.includes(tap.state));
    await this.update(sheet, { removed: given.map((tap) => tap.id) });
  }
}
