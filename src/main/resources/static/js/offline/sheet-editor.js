// Makes the next sheet from one sheet and one tap's changes. A change refused anywhere is refused as a whole, with every
// reason. The twin of SheetEditor, EventCheck and MeasureCheck; one table of cases holds them together.
import { above, plain, textRefusals, tidy } from "./text.js";

const TAKEOVER = "TAKEOVER";
const FEEDBACK_LENGTH = 1000;
const ACTION_LENGTH = 500;
const EVENTS = 40;
const DECIMALS = 3;
const LARGEST = { YES_NO: 1, COUNT: 99, NUMBER: 9999, DURATION: 9999 };

const measureRefusals = (field, { kind, name }, value) => {
  const largest = LARGEST[kind];
  const outside = value.negative || above(value, largest);
  const refusal = (key, ...values) => [{ field, key: `sheet.refusal.${key}`, values: [name, ...values] }];
  if (kind === "YES_NO" && (value.fraction !== "" || outside)) {
    return refusal("yes-no");
  }
  if (kind === "COUNT" && value.fraction !== "") {
    return refusal("count");
  }
  if (outside) {
    return refusal("range", String(largest));
  }
  return value.fraction.length > DECIMALS ? refusal("decimals", DECIMALS) : [];
};

class Editor {
  constructor(facts, sheet, eventId) {
    this.facts = facts;
    this.eventId = eventId;
    this.sheet = structuredClone(sheet);
    this.refusals = [];
  }

  refuse(field, key, ...values) {
    this.refusals.push({ field, key: `sheet.refusal.${key}`, values });
  }

  step(code) {
    return this.facts.steps.find((step) => step.code === code);
  }

  takenOver(code) {
    return this.sheet.events.some((event) => event.code === TAKEOVER && event.step === code);
  }

  phaseTakenOver(phase) {
    return this.facts.steps.some((step) => step.phase === phase && this.takenOver(step.code));
  }

  apply(change) {
    this[`apply_${change.kind}`](change);
  }

  apply_role({ part, supervision }) {
    Object.assign(this.sheet, { part, supervision });
  }

  apply_step({ code, answer }) {
    const step = this.step(code);
    if (!step) {
      this.refuse("", "step", code);
    } else if (this.takenOver(code) && answer !== "1") {
      this.refuse(`step.${code}`, "taken-over", step.name);
    } else if (answer === "") {
      delete this.sheet.steps[code];
    } else {
      this.sheet.steps[code] = answer;
    }
  }

  apply_blanks({ phase, answer }) {
    this.facts.steps
      .filter((step) => step.phase === phase && !(step.code in this.sheet.steps))
      .forEach((step) => { this.sheet.steps[step.code] = answer; });
  }

  apply_measure({ code, value }) {
    const step = this.facts.steps.find((one) => one.measures.some((measure) => measure.code === code));
    if (!step) {
      this.refuse("", "measure", code);
    } else if (value === null) {
      delete this.sheet.measures[code];
    } else {
      const measure = step.measures.find((one) => one.code === code);
      const refusals = measureRefusals(`measure.${step.code}.${code}`, measure, value);
      this.refusals.push(...refusals);
      this.sheet.measures[code] = plain(value);
    }
  }

  apply_event(event) {
    const refused = this.refusals.length;
    this.checkEvent(event);
    if (this.refusals.length > refused) {
      return;
    }
    const { code, step, reason } = event;
    this.sheet.events.push({ id: this.eventId, code, step, reason, action: tidy(event.action) });
    if (code === TAKEOVER) {
      this.sheet.steps[step] = "1";
      this.apply_blanks({ phase: this.step(step).phase, answer: "AFTER_TAKEOVER" });
    }
  }

  checkEvent({ code, step, reason, action }) {
    const kind = this.facts.events.find((one) => one.code === code);
    if (!kind) {
      this.refuse("event.code", "event", code);
    } else if (code === TAKEOVER) {
      this.checkTakeover(step, reason);
    } else {
      this.checkOther(kind, reason, action);
    }
    if (step !== null && !this.step(step)) {
      this.refuse("event.step", "step", step);
    }
    if (this.sheet.events.length >= EVENTS) {
      this.refuse("event.code", "events", EVENTS);
    }
    this.refusals.push(...textRefusals("event.action", tidy(action), ACTION_LENGTH));
  }

  checkTakeover(step, reason) {
    if (step === null) {
      this.refuse("event.step", "takeover-step");
    }
    if (reason === null) {
      this.refuse("event.reason", "takeover-reason");
    }
  }

  checkOther(kind, reason, action) {
    if (reason !== null) {
      this.refuse("event.reason", "reason-without-takeover");
    }
    if (kind.needsReason && tidy(action) === "") {
      this.refuse("event.action", "event-words", kind.name);
    }
  }

  // A takeover taken back takes its consequences with it.
  apply_remove({ id }) {
    const event = this.sheet.events.find((one) => one.id === id);
    if (!event) {
      this.refuse("", "event-gone");
      return;
    }
    this.sheet.events = this.sheet.events.filter((one) => one !== event);
    if (event.code === TAKEOVER && event.step !== null) {
      this.undoTakeover(event.step);
    }
  }

  undoTakeover(code) {
    if (!this.takenOver(code)) {
      delete this.sheet.steps[code];
    }
    const { phase } = this.step(code);
    if (!this.phaseTakenOver(phase)) {
      this.facts.steps
        .filter((step) => step.phase === phase && this.sheet.steps[step.code] === "AFTER_TAKEOVER")
        .forEach((step) => { delete this.sheet.steps[step.code]; });
    }
  }

  apply_feedback({ strength, nextStep }) {
    for (const [field, raw] of Object.entries({ strength, nextStep })) {
      this.sheet[field] = tidy(raw);
      this.refusals.push(...textRefusals(field, this.sheet[field], FEEDBACK_LENGTH));
    }
  }
}

// Steps that belong to the case only after a conversion are not part of it until there was one.
export const complete = (facts, sheet) => {
  const later = facts.converted ? [] : facts.steps.filter((step) => step.onlyWhenConverted);
  later.forEach((step) => { sheet.steps[step.code] ??= "NOT_PART"; });
  return sheet;
};

// {sheet, refusals}; the sheet is the old one where there are refusals. eventId: what a recorded event is known by.
export const edit = (facts, sheet, changes, eventId) => {
  const editor = new Editor(facts, sheet, eventId);
  changes.forEach((change) => editor.apply(change));
  return editor.refusals.length > 0
    ? { sheet, refusals: editor.refusals }
    : { sheet: complete(facts, editor.sheet), refusals: [] };
};
