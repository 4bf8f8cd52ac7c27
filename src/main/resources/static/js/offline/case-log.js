// A trainee's case log on this device: the cases kept here, the one being typed, and what became of those that were sent.
// The address of the page says which case is open.
import { openCase } from "./case-log-form.js";
import { CaseLogOutbox } from "./case-log-outbox.js";
import { refreshCaseLog } from "./case-log-packages.js";
import { CaseLogStore } from "./case-log-store.js";
import { randomUuid } from "./uuid.js";

const NOTES_FOR = 24 * 60 * 60 * 1000;
const OPEN = /^#case-([0-9a-f-]{36})(?:-in-([0-9a-f-]{36}))?$/;

const element = (tag, text, properties = {}) => Object.assign(document.createElement(tag), { textContent: text }, properties);

export class CaseLog {
  constructor(main, opened, transport) {
    this.main = main;
    this.section = document.getElementById("cases");
    this.place = document.getElementById("case-place");
    this.store = new CaseLogStore(opened);
    this.transport = transport;
    this.channel = window.BroadcastChannel ? new BroadcastChannel("scrubline-cases") : null;
    this.outbox = new CaseLogOutbox(this.store, transport, () => this.changed());
    this.channel?.addEventListener("message", () => this.show());
    addEventListener("hashchange", () => this.turn().then(() => this.show()));
    addEventListener("online", () => this.outbox.drain());
    this.turned = this.turn();
  }

  async changed() {
    this.channel?.postMessage("changed");
    await this.show();
  }

  // While the server can be asked and knows this person.
  async round() {
    await this.outbox.drain();
    await refreshCaseLog(this.store, this.transport, () => this.show());
  }

  async show() {
    await this.turned;
    const [logs, items, notes] = await Promise.all(["form ", "item ", "note "].map((place) => this.store.all(place)));
    const recent = notes.filter((note) => Math.abs(Date.now() - note.at) < NOTES_FOR);
    const lines = [...items.map((item) => this.line(item, logs)), ...recent.map((note) => this.noted(note))];
    document.getElementById("case-list").replaceChildren(...lines);
    document.getElementById("no-cases").hidden = lines.length > 0;
    document.getElementById("case-new").replaceChildren(...logs.map((log) => this.begin(log, logs.length > 1)));
    this.section.hidden = logs.length + lines.length === 0;
    await Promise.all(notes.filter((note) => !recent.includes(note)).map((note) => this.store.drop(`note ${note.id}`)));
  }

  begin(log, several) {
    const { begin, beginIn } = this.section.dataset;
    const text = several ? beginIn.replace("{0}", log.name) : begin;
    return element("a", text, { className: "button button-main", href: `#case-${randomUuid()}-in-${log.programme}` });
  }

  line(item, logs) {
    const words = this.section.dataset;
    const title = logs.find((log) => log.programme === item.programme)?.procedures[item.fields.procedure?.[0]];
    const caption = [item.fields.reference?.[0] || words.noReference, title].filter(Boolean).join(", ");
    const open = item.state === "draft" || item.state === "refused";
    const line = element("li", "");
    const said = element("span", "");
    const state = element("span", words[item.state], { className: "soft" });
    state.dataset.state = item.state;
    said.append(open ? element("a", caption, { href: `#case-${item.id}` }) : caption, " ", state);
    line.append(said);
    return line;
  }

  noted({ reference, caseId, aside }) {
    const words = this.section.dataset;
    const line = element("li", "");
    const state = element("span", words[aside ? "aside" : "received"].replace("{0}", reference), { className: "soft" });
    state.dataset.state = aside ? "aside" : "received";
    const href = caseId ? `/cases/${caseId}` : "/my-cases";
    line.append(element("a", reference, { href }), " ", state);
    return line;
  }

  async turn() {
    const [, id, programme] = OPEN.exec(location.hash) ?? [];
    if (!id) {
      this.close();
    } else if (id !== this.open?.item.id) {
      await this.openOne(id, programme);
    }
  }

  async openOne(id, programme) {
    this.close();
    const item = (await this.store.kept(`item ${id}`)) ?? { id, programme };
    const log = await this.store.kept(`form ${item.programme}`);
    if (!log || item.state === "waiting" || item.state === "sent") {
      return;
    }
    this.main.hidden = true;
    this.place.hidden = false;
    this.open = openCase(this.place, item, { log, store: this.store, leave: () => this.leave() });
  }

  close() {
    if (this.open) {
      this.open = null;
      this.place.querySelector("main").remove();
      this.place.hidden = true;
      this.main.hidden = false;
    }
  }

  async leave() {
    history.replaceState(null, "", location.pathname);
    this.close();
    await this.changed();
    document.getElementById("cases-title").focus();
    await this.outbox.drain();
  }
}
