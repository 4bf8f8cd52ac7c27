// Talks to the server. Only JSON that carries our mark and names what it answers counts as an answer: a network in between
// may say anything with any status.
const LONGEST = 15000;

const meta = (name) => document.querySelector(`meta[name=${name}]`)?.content ?? "";

export class Transport {
  constructor(person) {
    this.person = person;
    this.header = meta("csrf-header");
    this.token = meta("csrf-token");
  }

  async get(path, mark) {
    const response = await fetch(path, {
      headers: { Accept: "application/json" }, redirect: "manual", cache: "no-store", signal: AbortSignal.timeout(LONGEST),
    });
    const body = response.status === 200 ? await response.json().catch(() => null) : null;
    return body?.scrubline === mark ? body : null;
  }

  // Who is logged in here now, and the token of that session; null while nobody is, or the server cannot be asked.
  async session() {
    const session = await this.get("/at-the-table/session", "session");
    if (session?.person) {
      this.header = session.header;
      this.token = session.token;
      document.querySelectorAll("meta[name=csrf-token]").forEach((tag) => { tag.content = session.token; });
      document.querySelectorAll("input[name=_csrf]").forEach((input) => { input.value = session.token; });
    }
    return session;
  }

  // True once the session is this person's; another one's session must never carry this person's work.
  async renewed() {
    const session = await this.session().catch(() => null);
    return Boolean(session?.person) && (!this.person || session.person === this.person);
  }

  async post(path, body) {
    const response = await fetch(path, {
      method: "POST",
      redirect: "manual",
      headers: { "Content-Type": "application/json", Accept: "application/json", [this.header || "X-CSRF-TOKEN"]: this.token },
      body: JSON.stringify(body),
      signal: AbortSignal.timeout(LONGEST),
    });
    return { status: response.status, body: await response.json().catch(() => null) };
  }

  async once(tap, version) {
    const { status, body } = await this.post(`/sheets/${tap.sheet}/taps`, { tap: tap.id, version, fields: tap.fields, person: this.person });
    const ours = body?.scrubline === "tap" && (body.tap === tap.id || body.tap === null);
    if (!ours) {
      return { kind: status === 0 || status === 401 || status === 403 ? "login" : "nothing" };
    }
    const kinds = { 200: "done", 400: "refused", 422: "refused", 404: "stale", 409: "stale" };
    return { kind: kinds[status] ?? "nothing", answer: body, reasons: body.reasons, gone: status === 404 };
  }

  async send(tap, version) {
    if (!this.token && !(await this.renewed())) {
      return { kind: "login" };
    }
    const first = await this.once(tap, version);
    return first.kind === "login" && await this.renewed() ? this.once(tap, version) : first;
  }

  // A signature made on this device, with its clock as it is now, so that the server can compare the two.
  async signOnce(sheet, { at, zone, hash, answer }) {
    const sent = new Date().toISOString();
    const { status, body } = await this.post(`/sheets/${sheet}/signing`, { person: this.person, at, zone, sent, hash, answer });
    if (body?.scrubline !== "signed" || (body.sheet !== null && body.sheet !== sheet)) {
      return { kind: status === 0 || status === 401 || status === 403 ? "login" : "nothing" };
    }
    const kinds = { 200: "done", 400: "refused", 404: "refused", 409: "refused", 422: "refused" };
    return { kind: kinds[status] ?? "nothing", record: body.record, reasons: body.reasons };
  }

  async sign(sheet, signature) {
    const first = await this.signOnce(sheet, signature);
    return first.kind === "login" && await this.renewed() ? this.signOnce(sheet, signature) : first;
  }

  async receipt(sheet) {
    const receipt = await this.get(`/sheets/${sheet}/receipt`, "receipt");
    return receipt?.sheet === sheet ? receipt : null;
  }
}
