// The verdict of a sheet, in the order the programme's rule gives. The twin of VerdictRule; one table of cases holds the
// two together.
const LEVEL = /^[1-5]$/;
const OTHER_STEPS_AT_3 = 2;

const reason = (step, key, ...values) => ({ field: step ? `step.${step.code}` : "", key: `verdict.reason.${key}`, values });

const names = (steps) => steps.map((step) => step.name).join(", ");

export const blocks = (facts, { code, reason: why }) =>
  facts.events.find((kind) => kind.code === code).blocking || (code === "TAKEOVER" && why === "SAFETY");

class Rule {
  constructor(facts, sheet) {
    this.facts = facts;
    this.sheet = sheet;
  }

  level(step) {
    const answer = this.sheet.steps[step.code] ?? "";
    return LEVEL.test(answer) ? Number(answer) : 0;
  }

  at(...levels) {
    return this.facts.steps.filter((step) => levels.includes(this.level(step)));
  }

  unsafe() {
    const low = this.at(1, 2).filter((step) => step.critical).map((step) => reason(step, "low", step.name, this.level(step)));
    const events = this.sheet.events.filter((event) => blocks(this.facts, event));
    const name = (event) => this.facts.events.find((kind) => kind.code === event.code).name;
    return [...low, ...events.map((event) => reason(null, "event", name(event)))];
  }

  unsettled() {
    return this.facts.steps
      .filter((step) => step.critical && this.sheet.steps[step.code] !== "NOT_PART" && this.level(step) === 0);
  }

  // Why the case, safe as it is, is not independent.
  dependent() {
    const threes = this.at(3).filter((step) => !step.critical);
    return [
      ...this.at(3).filter((step) => step.critical).map((step) => reason(step, "three", step.name)),
      ...this.at(1).map((step) => reason(step, "one", step.name)),
      ...(threes.length > OTHER_STEPS_AT_3 ? [reason(threes[0], "threes", threes.length, names(threes))] : []),
    ];
  }

  evaluate() {
    const unsafe = this.unsafe();
    if (unsafe.length > 0) {
      return { verdict: "NOT_YET_SAFE", reasons: unsafe };
    }
    const open = this.unsettled();
    if (open.length > 0) {
      return { verdict: "NO_VERDICT", reasons: [reason(open[0], "open", open.length, names(open))] };
    }
    const dependent = this.dependent();
    return dependent.length > 0
      ? { verdict: "SAFE_WITH_SUPERVISOR_SCRUBBED", reasons: dependent }
      : { verdict: "INDEPENDENT", reasons: [reason(null, "independent")] };
  }
}

// {verdict, reasons}; a reason is {field, key, values}.
export const verdict = (facts, sheet) => new Rule(facts, sheet).evaluate();
