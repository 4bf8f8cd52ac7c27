// One score sheet at work: taps go through the outbox, and the page follows. With a device to keep them, each is kept
// before it is said to be, and the verdict follows at once; without, they wait on the page for the server.
import { Outbox } from "./outbox.js";
import { answer } from "./sheet-answer.js";
import { halfTyped } from "./half-typed.js";
import { sheetHands } from "./sheet-hands.js";
import { eventId, replayed, tapped } from "./sheet-twin.js";
import { sheetView } from "./sheet-view.js";
import { randomUuid } from "./uuid.js";

// Several pages of one browser share one store, and tell each other what became of the taps in it.
export const channelOf = (store) => (store.durable && window.BroadcastChannel ? new BroadcastChannel("scrubline") : null);

// Answers given before this module was at work: put back, to be given again once it is.
const early = (form) => {
  const radios = [...form.querySelectorAll("input[type=radio]:checked")]
    .filter((radio) => !radio.defaultChecked && !radio.name.startsWith("event."));
  radios.forEach((radio) => {
    form.querySelectorAll(`input[name="${radio.name}"]`).forEach((one) => { one.checked = one.defaultChecked; });
  });
  return radios;
};

class SheetPage {
  // review(): goes on to the review; facts: null where the server alone judges.
  constructor(form, { sheet, store, transport, facts, review }) {
    Object.assign(this, { form, sheet, store, facts, leave: review });
    this.view = sheetView(form);
    this.outbox = new Outbox({ store, transport, channel: channelOf(store), tell: (said) => this.heard(said) });
    this.thens = new Map();
    this.adding = Promise.resolve();
    this.making = new Set();
    this.paints = 0;
    this.halted = false;
  }

  async start() {
    const given = early(this.form);
    // The first look at the zone takes a slow phone a tenth of a second: here it costs no tap.
    this.clock();
    if (this.facts) {
      const base = await this.outbox.base(this.sheet);
      this.view.fill(await this.now());
      await this.paint();
      this.form.elements.version.value = base.version;
    }
    (await this.outbox.taps(this.sheet)).forEach((tap) => this.said(tap));
    this.answered = this.store.durable ? await halfTyped(this.form, this.view, this) : () => {};
    sheetHands(this.form, this.view, (fields, then) => this.tap(fields, then), () => this.review());
    given.forEach((radio) => radio.click());
    addEventListener("online", () => this.send());
    addEventListener("visibilitychange", () => document.hidden || this.send());
    this.send();
  }

  said(tap) {
    const shown = { parked: "refused", waiting: this.store.durable && !tap.loose ? "kept" : "waiting" };
    this.view.state(tap, shown[tap.state] ?? tap.state, (tap.reasons ?? []).join(" "));
  }

  // The sheet with everything that waits. Both are asked for at once: the server's answer to a tap changes both, and between
  // two questions that tap would be in neither.
  async now() {
    const [base, taps] = await Promise.all([this.outbox.base(this.sheet), this.outbox.taps(this.sheet)]);
    return replayed(this.facts, base, taps.filter((tap) => tap.state === "waiting" || tap.state === "parked"));
  }

  // Shows the sheet as it is kept. Of two paints at once the one that began to read last is shown.
  async paint(waiting = []) {
    this.paints += 1;
    const turn = this.paints;
    const sheet = await this.now();
    if (turn === this.paints) {
      this.show(answer(this.facts, sheet), waiting);
    }
  }

  // A tap still being made is in nothing that was read: its step keeps what the hand said.
  show(said, waiting) {
    this.view.follow(said, [...waiting, ...this.making]);
  }

  tap(fields, then = {}) {
    const id = randomUuid();
    const made = { id, sheet: this.sheet, fields, key: Object.keys(fields).join(), at: this.clock() };
    this.view.state(made, this.halted ? "refused" : "saving");
    if (this.halted) {
      return;
    }
    this.making.add(made);
    this.adding = this.adding.then(() => this.keep(made, then)).finally(() => this.making.delete(made));
  }

  // The same, done when it is kept or refused.
  kept(fields) {
    return new Promise((done) => { this.tap(fields, { done, refused: done }); });
  }

  clock() {
    return { device: new Date().toISOString(), zone: Intl.DateTimeFormat().resolvedOptions().timeZone, since: Math.round(performance.now()) };
  }

  async keep(made, then) {
    if (!this.facts) {
      this.thens.set((await this.add(made)).id, then);
      this.send();
      return;
    }
    const tap = { ...made, eventId: await eventId(this.sheet, made.id) };
    const after = tapped(this.facts, await this.now(), tap);
    if (after.reasons.length > 0) {
      this.view.state(tap, "refused", after.reasons.join(" "));
      then.refused?.();
      return;
    }
    const kept = await this.add(tap);
    this.making.delete(made);
    this.answered(tap.fields);
    this.said({ ...kept, state: "waiting" });
    await this.paint();
    then.done?.();
    this.send();
  }

  // A measure tapped on goes into the tap before, and what is heard of it from then on is heard under that one's name.
  async add(tap) {
    const kept = await this.outbox.add(tap);
    if (kept.id !== tap.id) {
      this.view.state(kept, "saving");
    }
    return kept;
  }

  send() {
    if (!this.halted) {
      this.outbox.drain(this.sheet);
    }
  }

  async heard({ tap, state, reasons = [], answer: said, problem, elsewhere = false }) {
    if (tap.sheet !== this.sheet) {
      return;
    }
    if (state) {
      this.said({ ...tap, state, reasons });
    }
    if (said) {
      await this.follow(tap, said);
    } else if (elsewhere && this.facts) {
      await this.paint();
    }
    if (state === "saved" || state === "refused") {
      this.settled(tap, state);
    }
    if (problem) {
      this.trouble(problem, reasons);
    } else if (state) {
      this.view.notice("");
    }
    if (this.reviewing) {
      this.review();
    }
  }

  async follow(tap, said) {
    this.form.elements.version.value = said.version;
    const waiting = await this.outbox.waiting(this.sheet);
    if (this.facts) {
      await this.paint(waiting);
    } else {
      this.show(said, waiting);
    }
    this.view.warn(tap, said.warnings);
  }

  settled(tap, state) {
    const then = this.thens.get(tap.id);
    this.thens.delete(tap.id);
    (state === "saved" ? then?.done : then?.refused)?.();
  }

  trouble(problem, reasons) {
    const { view } = this;
    const { words } = view;
    const retry = () => view.button(words.retry, () => this.send());
    if (problem === "stale") {
      this.stale(reasons);
    } else if (problem === "gone") {
      this.halted = true;
      view.notice(reasons.join(" "));
    } else if (problem === "login") {
      view.notice(words.login, retry());
    } else {
      view.notice(this.outbox.loose.length > 0 ? words.full : this.store.durable ? words.away : words.failed, retry());
    }
  }

  // The sheet changed elsewhere: a person decides which of the two goes on.
  stale(reasons) {
    const { view } = this;
    const { words } = view;
    this.halted = true;
    const open = view.link(words.reload, words.back);
    const mine = view.button(words.mine, () => this.putOnTop());
    const theirs = view.button(words.theirs, () => this.letGo());
    view.notice([words.stale, ...reasons].join(" "), ...(this.store.durable ? [mine, theirs] : [open]));
  }

  async putOnTop() {
    const fresh = await this.fresh();
    if (fresh) {
      this.halted = false;
      await this.outbox.resume(this.sheet, fresh.base);
    }
  }

  async letGo() {
    const fresh = await this.fresh();
    if (fresh) {
      await this.outbox.giveUp(this.sheet, ["parked"]);
      await this.store.keepPackage({ ...(await this.store.package(this.sheet)), ...fresh });
      location.reload();
    }
  }

  fresh() {
    return this.outbox.transport.get(`/sheets/${this.sheet}/package`, "package").catch(() => null);
  }

  async review() {
    await this.adding;
    if ((await this.outbox.waiting(this.sheet)).length === 0 || this.facts) {
      this.reviewing = false;
      this.leave();
    } else if (!this.reviewing) {
      this.reviewing = true;
      this.view.notice(this.view.words.unsaved, this.view.button(this.view.words.retry, () => this.send()));
      this.send();
    }
  }
}

export const openSheet = async (form, options) => {
  const page = new SheetPage(form, options);
  await page.start();
  addEventListener("beforeunload", (event) => {
    const unsafe = page.making.size > 0 || (page.store.list?.length ?? 0) > 0 || page.outbox.loose.length > 0;
    if (unsafe) {
      event.preventDefault();
    }
  });
  return page;
};
