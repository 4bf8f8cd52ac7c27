// What a passkey signs here: everything scored, beside what the server said of case, rubric and meaning before. The
// server makes the same bytes from the sheet it has; another sheet would be another hash.
import { decimal, plain } from "./text.js";
import { verdict } from "./verdict-rule.js";

const sorted = (members) => Object.fromEntries(Object.entries(members).sort(([one], [other]) => (one < other ? -1 : 1)));

// Canonical JSON of RFC 8785 for objects, lists and text, which is all there is in it.
const canonical = (value) => JSON.stringify(value, (name, one) =>
  one && typeof one === "object" && !Array.isArray(one) ? sorted(one) : one);

const measures = (sheet) => Object.fromEntries(Object.entries(sheet.measures)
  .map(([code, value]) => [code, plain(decimal(value))]));

const events = (sheet) => sheet.events.map(({ code, step, reason, action }) =>
  ({ code, step: step ?? "", reason: reason ?? "", action }));

// The clock of the device in whole seconds, as both sides write it.
export const clock = () => ({
  at: `${new Date().toISOString().slice(0, 19)}Z`,
  zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
});

export const statement = (fixed, facts, sheet, { at, zone }) => ({
  ...fixed,
  part: sheet.part,
  supervision: sheet.supervision,
  steps: sheet.steps,
  measures: measures(sheet),
  events: events(sheet),
  strength: sheet.strength,
  nextStep: sheet.nextStep,
  verdict: verdict(facts, sheet).verdict,
  at,
  zone,
});

// The 32 bytes a passkey signs.
export const hash = async (said) =>
  new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(canonical(said).normalize("NFC"))));

export const hexadecimal = (bytes) => [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
