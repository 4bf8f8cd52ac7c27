// Reading a sheet as it will be signed, and signing it on this device. The signature waits here until the server has it.
import { get, json } from "../passkey-answer.js";
import { answer } from "./sheet-answer.js";
import { clock, hash, hexadecimal, statement } from "./statement.js";
import { verdict } from "./verdict-rule.js";
import { say } from "./words.js";

const RETAINED = "SPONGE_RETAINED";

const element = (tag, text, properties = {}) => Object.assign(document.createElement(tag), { textContent: text, ...properties });

const lines = (texts) => texts.map((text) => element("li", text));

const pair = (label, text) => {
  const line = element("div", "");
  line.append(element("dt", label), element("dd", text));
  return line;
};

// What stands in the way, in sentences; the server's rules once more, as far as a device can know them.
const obstacles = (words, facts, sheet) => [
  ...(sheet.part === "" || sheet.supervision === "" ? [words.roleOpen] : []),
  ...(answer(facts, sheet).pieces !== "" && !sheet.events.some((event) => event.code === RETAINED) ? [words.pieces] : []),
  ...facts.steps.filter((step) => !(step.code in sheet.steps)).map((step) => words.blank.replace("{0}", step.name)),
];

export const pendingSignature = ({ signature }) => signature?.state === "pending";

export class SignPage {
  // changed(): a signature was made or taken back; leave(): back to the sheet.
  constructor(store, changed) {
    Object.assign(this, { store, changed, main: document.getElementById("sign") });
    this.words = this.main.dataset;
    this.part("back").addEventListener("click", () => this.back());
    this.part("now").addEventListener("click", () => this.sign());
    this.part("untouched").addEventListener("click", () => this.untouched());
    this.part("take-back").addEventListener("click", () => this.takeBack());
  }

  part(name) {
    return document.getElementById(`sign-${name}`);
  }

  // now(): the sheet as it stands; tap(fields): one tap on it, done when it is kept, or null once it is signed.
  async open(kept, { now, tap, leave }) {
    Object.assign(this, { kept, now, tap, leave });
    await this.show();
    this.main.hidden = false;
    this.main.focus();
    scrollTo(0, 0);
  }

  // To the list once it is signed, to the sheet before.
  back() {
    if (this.signed()) {
      location.hash = "";
    } else {
      this.leave();
    }
  }

  signed() {
    return this.tap === null || ["pending", "received"].includes(this.kept.signature?.state);
  }

  close() {
    this.main.hidden = true;
  }

  // What became of the signature meanwhile.
  async refresh() {
    if (!this.main.hidden && this.kept.signature) {
      this.kept = (await this.store.package(this.kept.sheet)) ?? this.kept;
      await this.show();
    }
  }

  async show() {
    const { kept, words } = this;
    const sheet = await this.now();
    this.part("caption").textContent = kept.caption;
    this.read(kept.facts, sheet);
    const open = obstacles(words, kept.facts, sheet);
    const { state = null, reasons = [] } = kept.signature ?? {};
    const signed = this.signed();
    this.part("obstacles").hidden = signed || open.length === 0;
    this.part("obstacles").querySelector("ul").replaceChildren(...lines(open));
    const blank = kept.facts.steps.filter((step) => !(step.code in sheet.steps)).length;
    this.part("untouched").hidden = blank === 0;
    this.part("untouched").textContent = words.untouched.replace("{0}", blank);
    this.part("here").hidden = signed || open.length > 0 || !kept.signing?.keys;
    this.part("meaning").textContent = kept.signing?.statement.meaning ?? "";
    this.part("pending").hidden = state !== "pending";
    this.say(state === "refused" ? reasons.join(" ") : words[state] ?? (kept.signing?.keys ? "" : words.noKey));
  }

  say(text) {
    const line = this.part("said");
    line.textContent = text;
    line.hidden = text === "";
  }

  read(facts, sheet) {
    const { words } = this;
    const said = answer(facts, sheet);
    this.part("verdict").textContent = say(facts.words, `verdict.${verdict(facts, sheet).verdict}`);
    this.part("reasons").replaceChildren(...lines(said.reasons.map((reason) => reason.text)));
    const feedback = [[words.strength, sheet.strength], [words.nextStep, sheet.nextStep]].filter(([, text]) => text !== "");
    this.part("feedback").replaceChildren(
      pair(words.role, said.role), ...feedback.map(([label, text]) => pair(label, text)));
    this.part("steps").replaceChildren(...facts.steps.map((step) => this.step(facts, sheet, step)));
    this.part("events").replaceChildren(...lines(said.events.length > 0 ? said.events.map((event) => event.text) : [words.none]));
  }

  step(facts, sheet, step) {
    const line = element("li", "");
    const name = element("p", "");
    name.append(element("b", step.name), ...(step.critical ? [" ", element("span", this.words.critical, { className: "critical" })] : []));
    const measures = step.measures.filter((measure) => measure.code in sheet.measures)
      .map((measure) => element("p", `${measure.name}: ${sheet.measures[measure.code]}`, { className: "soft" }));
    line.append(name, element("p", this.state(facts, step, sheet.steps[step.code])), ...measures);
    return line;
  }

  state(facts, step, given) {
    if (given === undefined) {
      return this.words.open;
    }
    if (given === "AFTER_TAKEOVER") {
      return say(facts.words, "sheet.cause.AFTER_TAKEOVER");
    }
    return /^[1-5]$/.test(given) ? `${given}: ${step.levels[given - 1]}` : say(facts.words, `sheet.state.${given}`);
  }

  // One tap for each phase with a step nothing was said about.
  async untouched() {
    const sheet = await this.now();
    const phases = new Set(this.kept.facts.steps.filter((step) => !(step.code in sheet.steps)).map((step) => step.phase));
    for (const phase of phases) {
      await this.tap({ rest: `${phase}:NOT_SEEN` });
    }
    await this.show();
  }

  async sign() {
    const { kept, words } = this;
    const { keys, statement: fixed } = kept.signing;
    if (keys.origin !== location.origin || !window.PublicKeyCredential) {
      this.say(words.place);
      return;
    }
    const button = this.part("now");
    button.disabled = true;
    try {
      const time = clock();
      const bytes = await hash(statement(fixed, kept.facts, await this.now(), time));
      const credential = await get(bytes, keys.rpId, keys.credentials);
      await this.keep({ state: "pending", ...time, hash: hexadecimal(bytes), answer: json(credential) });
      this.changed();
    } catch (error) {
      this.say(error.name === "NotAllowedError" ? words.stopped : words.failed);
      button.focus();
    } finally {
      button.disabled = false;
    }
  }

  // Until the server has it, its owner may still take it back and go on scoring.
  async takeBack() {
    await this.keep(null);
    location.reload();
  }

  async keep(signature) {
    this.kept = { ...(await this.store.package(this.kept.sheet)), signature };
    await this.store.keepPackage(this.kept);
    await this.show();
  }
}
