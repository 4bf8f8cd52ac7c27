// The sheets that lie on this device, and the one that is open. The address of the page says which.
import { phases } from "../phases.js";
import { steppers } from "../stepper.js";
import { openSheet } from "./sheet-page.js";
import { replayed } from "./sheet-twin.js";
import { answer } from "./sheet-answer.js";

const element = (tag, text, properties = {}) => Object.assign(document.createElement(tag), { textContent: text }, properties);

export class SheetList {
  constructor(main, store, transport) {
    Object.assign(this, { main, store, transport });
    this.place = document.getElementById("sheet-place");
    addEventListener("hashchange", () => this.turn());
    this.turned = this.turn();
  }

  async show() {
    await this.turned;
    const packages = await this.store.packages();
    const taps = await this.store.taps();
    const lines = packages.map((one) => this.line(one, taps.filter((tap) => tap.sheet === one.sheet)));
    this.main.querySelector("#sheets").replaceChildren(...lines);
    this.main.querySelector("#no-sheets").hidden = lines.length > 0;
  }

  line({ sheet, caption, base, facts }, taps) {
    const line = element("li", "");
    const words = element("span", "");
    const open = taps.filter((tap) => tap.state !== "refused" && tap.state !== "sent");
    words.append(element("a", caption, { href: `#${sheet}` }));
    for (const [state, pattern] of [["waiting", this.main.dataset.waiting], ["parked", this.main.dataset.parked]]) {
      const count = taps.filter((tap) => tap.state === state).length;
      if (count > 0) {
        words.append(" ", element("span", pattern.replace("{0}", count), { className: "soft" }));
      }
    }
    const { done, total } = answer(facts, replayed(facts, base, open));
    const progress = this.main.dataset.progress.replace("{0}", done).replace("{1}", total);
    line.append(words, element("b", progress, { className: "number" }));
    return line;
  }

  async turn() {
    const sheet = location.hash.slice(1);
    const found = sheet ? await this.store.package(sheet) : null;
    if (this.page && !found) {
      location.reload();
      return;
    }
    if (found && this.page?.sheet !== sheet) {
      await this.open(found);
    }
  }

  async open({ sheet, html, facts }) {
    const page = new DOMParser().parseFromString(html, "text/html").querySelector("main");
    this.main.hidden = true;
    this.place.append(document.importNode(page, true));
    this.place.hidden = false;
    const form = this.place.querySelector("#sheet");
    phases(this.place);
    steppers(this.place);
    this.page = await openSheet(form, {
      sheet, facts, store: this.store, transport: this.transport, review: () => this.review(sheet),
    });
  }

  // The review is the server's; without one the sheet waits here, complete.
  async review(sheet) {
    const session = await this.transport.session().catch(() => null);
    if (session?.person && (await this.page.outbox.waiting(sheet)).length === 0) {
      location.assign(`/sheets/${sheet}/review`);
    } else {
      this.page.view.notice(this.main.dataset.kept);
    }
  }
}
