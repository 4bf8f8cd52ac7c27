// The sheet as the device makes it: one tap after the other on what the server said last.
import { edit } from "./sheet-editor.js";
import { read } from "./sheet-reading.js";
import { say } from "./words.js";

// The sheet after one tap, or why not, as sentences.
export const tapped = (facts, sheet, { fields, eventId }) => {
  const reading = read(fields, facts, sheet);
  const result = reading.refusals.length > 0 ? { sheet, refusals: reading.refusals }
    : edit(facts, sheet, reading.changes, eventId);
  const reasons = result.refusals.map(({ key, values }) => say(facts.words, key, ...values));
  return { ...result, reasons: [...new Set(reasons)] };
};

// What the taps that wait make of the sheet; one that is refused changes nothing.
export const replayed = (facts, sheet, taps) => taps.reduce((so, tap) => tapped(facts, so, tap).sheet, sheet);

// What the event of a tap is known by; made of both ids, the same on the server.
export const eventId = async (sheet, tap) => {
  const bytes = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(`${sheet}:${tap}`));
  const hash = [...new Uint8Array(bytes)].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hash.slice(0, 8), hash.slice(8, 12), `4${hash.slice(13, 16)}`, `a${hash.slice(17, 20)}`, hash.slice(20, 32)].join("-");
};
