// How a sheet stands, in the shape of the server's answer to a tap, so that the page follows a device as it follows the
// server.
import { shown } from "./sheet-reading.js";
import { verdict } from "./verdict-rule.js";
import { say } from "./words.js";

const AT_MOST = 3;
const STRONG_FROM = 4;

const foot = ({ steps, words, ...facts }, sheet) => {
  const judged = verdict({ steps, ...facts }, sheet);
  const done = steps.filter((step) => step.code in sheet.steps).length;
  const open = steps.filter((step) => step.critical && !(step.code in sheet.steps)).length;
  return {
    done,
    total: steps.length,
    progress: say(words, "components.verdict.progress", done, steps.length),
    verdict: judged.verdict === "NO_VERDICT" && open > 0
      ? say(words, "sheet.running.open", open)
      : say(words, "sheet.running", say(words, `verdict.${judged.verdict}`)),
    reasons: judged.reasons.map(({ field, key, values }) => ({
      text: say(words, key, ...values),
      href: field === "" ? "#events" : `#${field.replaceAll(".", "-")}`,
    })),
  };
};

const role = ({ words, trainee }, { part, supervision }) => part === "" || supervision === "" ? ""
  : say(words, "sheet.role", trainee, say(words, `sheet.part.${part}`), say(words, `sheet.supervision.${supervision}`));

// Said when the pieces counted out are not the pieces counted in.
const pieces = ({ steps, words }, { measures }) => {
  const counts = steps.flatMap((step) => step.measures).map((measure) => measure.code)
    .filter((code) => code.endsWith("-PIECES") && code in measures).map((code) => measures[code]);
  return counts.length === 2 && counts[0] !== counts[1] ? say(words, "sheet.pieces", ...counts) : "";
};

const told = ({ events, steps, words }, event) => {
  const parts = [
    events.find((kind) => kind.code === event.code).name,
    event.step === null ? "" : steps.find((step) => step.code === event.step).name,
    event.reason === null ? "" : say(words, `sheet.reason.${event.reason}`),
    event.action,
  ].filter((part) => part !== "");
  return { id: event.id, text: parts.reduce((all, next) => say(words, "sheet.event.line", all, next)) };
};

const level = (sheet, step) => Number(/^[1-5]$/.exec(sheet.steps[step.code] ?? "")?.[0] ?? 0);

// By level, critical steps first among equals, else in the order of the rubric.
const scored = ({ steps }, sheet, sign) => steps.filter((step) => level(sheet, step) > 0)
  .sort((one, other) => sign * (level(sheet, one) - level(sheet, other)) || other.critical - one.critical);

const strengths = (facts, sheet) => scored(facts, sheet, -1).filter((step) => level(sheet, step) >= STRONG_FROM)
  .slice(0, AT_MOST).map((step) => `${step.name}: ${step.levels[level(sheet, step) - 1]}`);

const nextSteps = (facts, sheet) => scored(facts, sheet, 1).filter((step) => level(sheet, step) < 5 && step.coaching !== "")
  .slice(0, AT_MOST).map((step) => `${step.name}: ${step.coaching}`);

const causes = ({ words }, { steps }) => Object.fromEntries(Object.entries(steps)
  .filter(([, answer]) => answer === "AFTER_TAKEOVER").map(([code]) => [code, say(words, "sheet.cause.AFTER_TAKEOVER")]));

export const answer = (facts, sheet) => ({
  version: sheet.version,
  ...foot(facts, sheet),
  answers: Object.fromEntries(facts.steps.map((step) => [step.code, shown(sheet.steps[step.code])])),
  causes: causes(facts, sheet),
  part: sheet.part,
  supervision: sheet.supervision,
  role: role(facts, sheet),
  pieces: pieces(facts, sheet),
  events: sheet.events.map((event) => told(facts, event)),
  strengths: strengths(facts, sheet),
  nextSteps: nextSteps(facts, sheet),
  warnings: [],
  sheet,
});
