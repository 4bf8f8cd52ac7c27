// Reads what a tap sends into changes of the sheet: only what differs from it, and every reason why not. The twin of
// SheetReading; one table of cases holds the two together.
import { blank, decimal, tidy } from "./text.js";

const PARTS = ["WHOLE_CASE", "PARTS", "ASSISTED"];
const SUPERVISIONS = ["SCRUBBED", "IN_ROOM", "NEARBY"];
const REASONS = ["TEACHING", "TIME", "SAFETY"];
const STATES = ["BY_SUPERVISOR", "NOT_PART", "NOT_SEEN"];
const PHASES = ["PREPARATION", "EXPOSURE", "ANTIMETABOLITE", "FLAP", "ENTRY", "CLOSURE", "FINAL_CHECKS"];
const IDENTITY = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;

export const shown = (answer = "") => (answer === "AFTER_TAKEOVER" ? "BY_SUPERVISOR" : answer);

// What the sheet itself would send.
const stored = (facts, sheet) => {
  const fields = { strength: sheet.strength, nextStep: sheet.nextStep };
  for (const name of ["part", "supervision"].filter((one) => sheet[one])) {
    fields[name] = sheet[name];
  }
  for (const step of facts.steps) {
    fields[`step.${step.code}`] = shown(sheet.steps[step.code]);
    for (const measure of step.measures) {
      fields[`measure.${step.code}.${measure.code}`] = sheet.measures[measure.code] ?? "";
    }
  }
  return fields;
};

class Reading {
  constructor(fields, facts, sheet) {
    this.sent = fields;
    this.facts = facts;
    this.stored = stored(facts, sheet);
    this.changes = [];
    this.refusals = [];
  }

  text(field) {
    return this.sent[field] ?? "";
  }

  says(field) {
    return !blank(this.text(field));
  }

  changed(field) {
    return field in this.sent && this.sent[field] !== (this.stored[field] ?? "");
  }

  merged(field) {
    return this.sent[field] ?? this.stored[field] ?? "";
  }

  refuse(field, key) {
    this.refusals.push({ field, key, values: [] });
    return null;
  }

  constant(field, names, name) {
    return names.includes(name) ? name : this.refuse(field, `sheet.refusal.choice.${field}`);
  }

  state(field, answer) {
    return STATES.includes(answer) ? answer : this.refuse(field, "sheet.refusal.answer");
  }

  role() {
    if (this.text("role") === "AS_LOGGED") {
      this.changes.push({ kind: "role", part: this.facts.part, supervision: this.facts.supervision });
    } else if (this.changed("part") || this.changed("supervision")) {
      const part = this.constant("part", PARTS, this.merged("part"));
      const supervision = this.constant("supervision", SUPERVISIONS, this.merged("supervision"));
      if (part && supervision) {
        this.changes.push({ kind: "role", part, supervision });
      }
    }
  }

  step(name) {
    const answer = /^[1-5]$/.test(this.text(name)) ? this.text(name) : this.state(name, this.text(name));
    if (answer) {
      this.changes.push({ kind: "step", code: name.slice("step.".length), answer });
    }
  }

  measure(name) {
    const code = name.slice(name.lastIndexOf(".") + 1);
    const text = tidy(this.text(name)).replaceAll(",", ".");
    const value = text === "" ? null : decimal(text);
    if (text !== "" && value === null) {
      this.refuse(name, "sheet.refusal.number");
    } else {
      this.changes.push({ kind: "measure", code, value });
    }
  }

  steps() {
    for (const name of Object.keys(this.sent).sort()) {
      if (name.startsWith("step.") && this.says(name) && this.changed(name)) {
        this.step(name);
      } else if (name.startsWith("measure.") && this.changed(name)) {
        this.measure(name);
      }
    }
  }

  clear() {
    if (this.says("clear")) {
      this.changes.push({ kind: "step", code: this.text("clear"), answer: "" });
    }
  }

  removeEvent() {
    const id = this.text("event.remove");
    if (this.says("event.remove") && IDENTITY.test(id)) {
      this.changes.push({ kind: "remove", id: id.toLowerCase() });
    } else if (this.says("event.remove")) {
      this.refuse("event.remove", "sheet.refusal.event-gone");
    }
  }

  addEvent() {
    if (this.says("event.code")) {
      const reason = this.says("event.reason") ? this.constant("event.reason", REASONS, this.text("event.reason")) : null;
      const step = this.says("event.step") ? this.text("event.step") : null;
      this.changes.push({ kind: "event", code: this.text("event.code"), step, reason, action: this.text("event.action") });
    } else if (this.says("event.step") || this.says("event.action")) {
      this.refuse("event.code", "sheet.refusal.event");
    }
  }

  rest() {
    if (this.says("rest")) {
      const [first, ...others] = this.text("rest").split(":");
      const phase = this.constant("rest", PHASES, first);
      const answer = this.state("rest", others.join(":"));
      if (phase && answer) {
        this.changes.push({ kind: "blanks", phase, answer });
      }
    }
  }

  sentence(field) {
    const picked = this.text(`${field}.pick`);
    return tidy(blank(picked) ? this.merged(field) : picked);
  }

  feedback() {
    const [strength, nextStep] = [this.sentence("strength"), this.sentence("nextStep")];
    if (strength !== this.stored.strength || nextStep !== this.stored.nextStep) {
      this.changes.push({ kind: "feedback", strength, nextStep });
    }
  }
}

// {changes, refusals}; a refusal is {field, key, values}.
export const read = (fields, facts, sheet) => {
  const reading = new Reading(fields, facts, sheet);
  reading.role();
  reading.steps();
  reading.clear();
  reading.removeEvent();
  reading.addEvent();
  reading.rest();
  reading.feedback();
  return { changes: reading.changes, refusals: reading.refusals };
};
