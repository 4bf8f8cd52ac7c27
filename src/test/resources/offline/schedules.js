// Seeded schedules of taps, failures and restarts against a server in memory that keeps the real server's promises: it
// applies a tap once by its id, only on the version it was made on, and forgets nothing. The outbox, the twin of the
// sheet's rules and the clockwork between them are the application's own.
import { Outbox } from "../outbox.js";
import { tapped } from "../sheet-twin.js";
import { randomUuid } from "../uuid.js";

const random = (seed) => () => {
  seed = (seed + 0x6d2b79f5) | 0;
  let mixed = Math.imul(seed ^ (seed >>> 15), 1 | seed);
  mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
  return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
};

export const canonical = (value) => JSON.stringify(value, (key, one) =>
  one && typeof one === "object" && !Array.isArray(one)
    ? Object.fromEntries(Object.entries(one).sort(([a], [b]) => (a < b ? -1 : 1))) : one);

// The device's disk: what was written outlives every restart.
class Disk {
  constructor(sheet, base) {
    Object.assign(this, { durable: true, list: [], bases: { [sheet]: base } });
  }

  async add(tap) {
    this.list.push(structuredClone(tap));
  }

  async taps(sheet) {
    return structuredClone(this.list.filter((tap) => tap.sheet === sheet));
  }

  async change(sheet, { changed = [], removed = [], base = null }) {
    this.list = this.list.map((tap) => structuredClone(changed.find((one) => one.id === tap.id) ?? tap))
      .filter((tap) => !removed.includes(tap.id));
    this.bases[sheet] = structuredClone(base ?? this.bases[sheet]);
  }

  async package(sheet) {
    return { base: structuredClone(this.bases[sheet]) };
  }
}

class Server {
  constructor(facts, sheet, base, chance) {
    Object.assign(this, { facts, id: sheet, sheet: structuredClone(base), made: new Map(), order: [], chance, faults: 0.4 });
  }

  apply(tap, version) {
    if (this.made.has(tap.id) && !this.forgetful) {
      return { kind: "done", answer: { sheet: { ...structuredClone(this.sheet), version: this.made.get(tap.id) } } };
    }
    if (version !== this.sheet.version) {
      return { kind: "stale", reasons: ["moved on"] };
    }
    const after = tapped(this.facts, this.sheet, tap);
    if (after.reasons.length > 0) {
      return { kind: "refused", reasons: after.reasons };
    }
    const changed = canonical(after.sheet) !== canonical(this.sheet);
    this.sheet = { ...after.sheet, version: this.sheet.version + (changed ? 1 : 0) };
    this.made.set(tap.id, this.sheet.version);
    this.order.push(tap.id);
    return { kind: "done", answer: { sheet: structuredClone(this.sheet) } };
  }

  async send(tap, version) {
    const luck = this.chance();
    if (luck < this.faults / 3) {
      throw new Error("request lost");
    }
    const result = this.apply(tap, version);
    if (luck < (2 * this.faults) / 3) {
      throw new Error("answer lost");
    }
    return luck < this.faults ? { kind: this.chance() < 0.5 ? "login" : "nothing" } : result;
  }

  async receipt() {
    return this.chance() < this.faults ? null : { sheet: this.id, taps: [...this.order] };
  }
}

const pick = (chance, list) => list[Math.floor(chance() * list.length)];

const fields = (chance, facts, events) => {
  const step = pick(chance, facts.steps);
  const kinds = [
    () => ({ [`step.${step.code}`]: pick(chance, ["1", "2", "3", "4", "5", "NOT_SEEN", "BY_SUPERVISOR"]) }),
    () => ({ rest: `${step.phase}:NOT_SEEN` }),
    () => ({ clear: step.code }),
    () => ({ role: "AS_LOGGED" }),
    () => ({ "event.code": "TAKEOVER", "event.step": step.code, "event.reason": pick(chance, ["TIME", "SAFETY"]) }),
    () => ({ strength: `word ${Math.floor(chance() * 9)}` }),
    () => (events.length === 0 ? { role: "AS_LOGGED" } : { "event.remove": pick(chance, events) }),
  ];
  return (chance() < 0.6 ? kinds[0] : pick(chance, kinds))();
};

// One schedule: null, or what went wrong.
export const run = async (seed, facts, start, forgetful) => {
  const chance = random(seed);
  const sheet = "5e3a7c10-0000-4000-8000-000000000001";
  const disk = new Disk(sheet, start);
  const server = new Server(facts, sheet, start, chance);
  server.forgetful = forgetful;
  const timers = [];
  const fresh = () => new Outbox({
    store: disk, transport: server, tell: () => {}, locks: { request: (name, options, work) => work(true) },
    later: (work) => timers.push(work), random: chance,
  });
  let outbox = fresh();
  let confirmed = start;
  const made = [];
  for (let number = 0; number < 5 + Math.floor(chance() * 20); number++) {
    const luck = chance();
    if (luck < 0.1) {
      outbox = fresh();
    } else if (luck < 0.3) {
      timers.splice(Math.floor(chance() * timers.length), 1).forEach((work) => work());
    } else {
      const id = randomUuid();
      const tap = { id, sheet, fields: fields(chance, facts, confirmed.events.map((one) => one.id)), key: "", eventId: id };
      const after = tapped(facts, confirmed, tap);
      if (after.reasons.length === 0) {
        confirmed = after.sheet;
        made.push(id);
        await outbox.add(tap);
      }
    }
    const draining = outbox.drain(sheet);
    if (chance() < 0.5) {
      await draining;
    }
  }
  await settle();
  server.faults = 0;
  outbox = fresh();
  for (let round = 0; round < 50 && disk.list.length > 0; round++) {
    await outbox.drain(sheet);
  }
  return verdictOf({ seed, disk, server, made, confirmed });
};

const settle = () => new Promise((resolve) => { setTimeout(resolve, 0); });

const verdictOf = ({ seed, disk, server, made, confirmed }) => {
  const bare = ({ version, ...rest }) => canonical(rest);
  const wrong = [
    disk.list.length > 0 && `${disk.list.length} taps never left`,
    canonical(server.order) !== canonical(made) && `made ${made.length}, there ${server.order.length}`,
    bare(server.sheet) !== bare(confirmed) && `differs: ${bare(confirmed)} / ${bare(server.sheet)}`,
  ].filter(Boolean);
  return wrong.length > 0 ? `seed ${seed}: ${wrong.join("; ")}` : null;
};

// forgetful: a server that applies a tap again when it comes again, to see that the check notices.
export const runAll = async (from, count, facts, start, forgetful) => {
  for (let seed = from; seed < from + count; seed++) {
    const wrong = await run(seed, facts, start, forgetful);
    if (wrong) {
      return wrong;
    }
  }
  return null;
};
