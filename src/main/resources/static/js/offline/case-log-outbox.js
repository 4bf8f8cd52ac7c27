// Brings kept cases to the server, one after the other. A case leaves the device only after the server, asked again, has
// named the very content that was kept here.
const FIRST_WAIT = 500;
const LONGEST_WAIT = 15000;

const sorted = (key, value) => (value && typeof value === "object" && !Array.isArray(value)
  ? Object.fromEntries(Object.keys(value).sort().map((name) => [name, value[name]])) : value);

// As the server hashes it: canonical JSON in normal form C.
export const contentHash = async (person, fields) => {
  const text = JSON.stringify({ fields, person }, sorted).normalize("NFC");
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
  return [...hash].map((byte) => byte.toString(16).padStart(2, "0")).join("");
};

// Time by a clock that nobody can set runs on only while the page is the same.
const waited = ({ page, origin }) => (origin === performance.timeOrigin ? Math.round(performance.now()) - page : null);

// The answer is about the content that was sent, whatever another tab has made of the case since.
const same = (now, item) => now?.state === "waiting" && JSON.stringify(now.fields) === JSON.stringify(item.fields);

export class CaseLogOutbox {
  // tell(): something became of a case.
  constructor(store, transport, tell) {
    Object.assign(this, { store, transport, tell });
    this.tries = 0;
  }

  async items(state) {
    return (await this.store.all("item ")).filter((item) => item.state === state);
  }

  // Only one tab sends at a time; another one's turn comes when it asks again.
  async drain() {
    clearTimeout(this.timer);
    await navigator.locks.request(`scrubline cases ${this.store.person}`, { ifAvailable: true }, async (mine) => {
      if (!mine) {
        this.after(FIRST_WAIT);
        return;
      }
      const done = (await this.sendAll()) && (await this.readBackAll());
      this.tries = done ? 0 : this.tries + 1;
      if (!done) {
        this.after(Math.min(LONGEST_WAIT, FIRST_WAIT * 2 ** this.tries));
      }
    });
  }

  after(milliseconds) {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.drain(), milliseconds);
  }

  async sendAll() {
    for (const item of await this.items("waiting")) {
      if (!(await this.send(item))) {
        return false;
      }
    }
    return true;
  }

  async send(item) {
    const first = await this.once(item);
    const result = first.kind === "login" && (await this.transport.renewed()) ? await this.once(item) : first;
    if (result.kind === "nothing" || result.kind === "login") {
      return false;
    }
    const { kind, reasons } = result;
    await this.store.change(item.id, (now) => (same(now, item) ? { ...now, state: kind, reasons } : null));
    await this.tell();
    return true;
  }

  async once({ id, fields, at }) {
    if (!this.transport.token) {
      return { kind: "login" };
    }
    const clock = { device: at.device, zone: at.zone, page: at.page, waited: waited(at) };
    const message = { submission: id, person: this.store.person, clock, fields };
    const { status, body } = await this.transport.post("/at-the-table/cases", message).catch(() => ({ status: null }));
    if (body?.scrubline !== "case" || (body.submission !== id && body.submission !== null)) {
      return { kind: status === 0 || status === 401 || status === 403 ? "login" : "nothing" };
    }
    const kinds = { 200: "sent", 400: "refused", 422: "refused" };
    return { kind: kinds[status] ?? "nothing", reasons: body.reasons };
  }

  async readBackAll() {
    const sent = await this.items("sent");
    const done = [];
    for (const item of sent) {
      done.push(await this.readBack(item));
    }
    return done.every(Boolean);
  }

  async readBack({ id, fields }) {
    const receipt = await this.transport.get(`/at-the-table/cases/${id}`, "case-receipt").catch(() => null);
    const hash = await contentHash(this.store.person, fields);
    if (receipt?.submission !== id) {
      return false;
    }
    const found = receipt.contents.find((content) => content.hash === hash);
    if (!found) {
      await this.store.change(id, (now) => (now?.state === "sent" ? { ...now, state: "waiting" } : null));
      return false;
    }
    await this.store.instead(`item ${id}`, `note ${id}`, { id, at: Date.now(), ...found });
    await this.tell();
    return true;
  }
}
