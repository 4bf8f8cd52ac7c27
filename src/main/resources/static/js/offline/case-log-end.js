// The end of a case by the clock of its site: what that clock says now, and which instants a time on it can mean.
const parts = (instant, zone) => Object.fromEntries(new Intl.DateTimeFormat("en-GB", {
  timeZone: zone, hourCycle: "h23", year: "numeric", month: "2-digit", day: "2-digit", hour: "2-digit", minute: "2-digit",
}).formatToParts(instant).map(({ type, value }) => [type, value]));

// Such as 2026-03-12T18:40.
export const onTheClock = (instant, zone) => {
  const { year, month, day, hour, minute } = parts(instant, zone);
  return `${year.padStart(4, "0")}-${month}-${day}T${hour}:${minute}`;
};

const DAY = 24 * 60 * 60 * 1000;
const WRITTEN = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?$/;

// Local time as if it were UTC, in milliseconds; NaN for what is no time, such as the 30th of February.
const bare = (local) => {
  const at = WRITTEN.test(local) ? Date.parse(`${local.slice(0, 16)}Z`) : NaN;
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(local.slice(0, 16)) ? at : NaN;
};

const offsetAt = (instant, zone) => bare(onTheClock(instant, zone)) - Math.floor(instant / 60000) * 60000;

const written = (offset) => {
  const minutes = Math.abs(offset) / 60000;
  const two = (number) => String(number).padStart(2, "0");
  return minutes === 0 ? "Z" : `${offset < 0 ? "-" : "+"}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
};

const named = (instant, zone) => new Intl.DateTimeFormat("en-GB", {
  timeZone: zone, hour: "2-digit", minute: "2-digit", timeZoneName: "short",
}).format(instant);

// Every reading {value, label} of a time on this clock, the earlier first: none for a time the clock skipped, two for one
// it showed twice; null for what is no time at all.
export const readings = (local, zone) => {
  const at = bare(local);
  if (Number.isNaN(at)) {
    return null;
  }
  const offsets = [...new Set([at - DAY, at + DAY].map((around) => offsetAt(around, zone)))];
  return offsets.map((offset) => ({ offset, instant: at - offset }))
    .filter(({ instant }) => onTheClock(instant, zone) === local.slice(0, 16))
    .sort((one, other) => one.instant - other.instant)
    .map(({ offset, instant }) => ({ value: written(offset), label: `${named(instant, zone)} (${written(offset)})` }));
};

// The clock before and after the hour it skipped, around such a time.
export const gap = (local, zone) => {
  const at = bare(local);
  const [before, after] = [at - DAY, at + DAY].map((around) => offsetAt(around, zone));
  const minutes = Array.from({ length: 2 * 1440 }, (one, n) => at - DAY + n * 60000 - before);
  const change = minutes.find((instant) => offsetAt(instant, zone) === after);
  const clock = (instant, offset) => new Date(instant + offset).toISOString().slice(11, 16);
  return [clock(change, before), clock(change, after)];
};
