// What the server would say of a case form at once, so that it is said here where it can be mended: what is missing, and a
// reference or an end of no form. Whether a reference is taken or an end is still to come only the server knows.
import { gap, readings } from "./case-log-end.js";
import { say } from "./words.js";

const REFERENCE = /^[A-Z][0-9]-[0-9]{3}$/;
const LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ";
const FORM = ["procedure", "eye", "site", "endedAt", "supervisor", "plannedSupervision", "claimedPart"];

const below = (limit) => crypto.getRandomValues(new Uint32Array(1))[0] % limit;

// As the server draws one: letter, digit, hyphen, three digits, at random.
export const drawReference = () =>
  `${LETTERS[below(LETTERS.length)]}${below(10)}-${String(below(1000)).padStart(3, "0")}`;

const first = (fields, name) => fields[name]?.[0] ?? "";

const againstEnd = (fields, zone, words) => {
  const local = first(fields, "endedAt");
  const found = readings(local, zone);
  const clock = local.slice(11, 16);
  if (!found) {
    return [{ field: "endedAt", message: say(words, "refusal.case.end.form") }];
  }
  if (found.length === 0) {
    return [{ field: "endedAt", message: say(words, "refusal.case.end.gap", clock, ...gap(local, zone)) }];
  }
  const chosen = found.length === 1 || found.some(({ value }) => value === first(fields, "endedOffset"));
  return chosen ? [] : [{ field: "endedOffset", message: say(words, "refusal.case.end.twice", clock) }];
};

// fields: texts by name. Reasons {field, message} in the order of the form.
export const againstCase = (fields, { zones, words }) => {
  const reference = first(fields, "reference").trim().toUpperCase();
  const form = REFERENCE.test(reference) ? [] : [{ field: "reference", message: say(words, "refusal.case.reference.form") }];
  const zone = zones[first(fields, "site")];
  return form.concat(FORM.flatMap((field) => {
    if (field === "endedAt") {
      return zone ? againstEnd(fields, zone, words) : [];
    }
    return first(fields, field) ? [] : [{ field, message: say(words, `refusal.case.missing.${field}`) }];
  }));
};
