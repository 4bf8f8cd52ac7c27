// The sheets that lie on this device, and the one that is open. The address of the page says which.
import { phases } from "../phases.js";
import { steppers } from "../stepper.js";
import { openSheet } from "./sheet-page.js";
import { pendingSignature, SignPage } from "./sign-page.js";
import { replayed } from "./sheet-twin.js";
import { answer } from "./sheet-answer.js";

const element = (tag, text, properties = {}) => Object.assign(document.createElement(tag), { textContent: text }, properties);

export class SheetList {
  // signed(): a signature was made here and can go out.
  constructor(main, store, transport, signed) {
    Object.assign(this, { main, store, transport });
    this.sign = new SignPage(store, signed);
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
    await this.sign.refresh();
  }

  line({ sheet, caption, base, facts, signature }, taps) {
    const line = element("li", "");
    const words = element("span", "");
    const open = taps.filter((tap) => tap.state !== "refused" && tap.state !== "sent");
    const received = signature?.state === "received";
    words.append(element("a", caption, { href: received ? `/signed/${signature.record}` : `#${sheet}` }));
    if (signature) {
      words.append(" ", element("span", this.main.dataset[`signature${signature.state}`], { className: "soft signature-state" }));
    }
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

  async open(kept) {
    if (pendingSignature(kept)) {
      this.page = { sheet: kept.sheet };
      this.main.hidden = true;
      await this.sign.open(kept, { now: () => this.now(kept.sheet), tap: null, leave: null });
      return;
    }
    await this.openForm(kept);
  }

  // The sheet with every tap of it that lies here.
  async now(sheet) {
    const [{ facts, base }, taps] = await Promise.all([this.store.package(sheet), this.store.taps(sheet)]);
    return replayed(facts, base, taps.filter((tap) => tap.state !== "refused" && tap.state !== "sent"));
  }

  async openForm({ sheet, html, facts, signature }) {
    const page = new DOMParser().parseFromString(html, "text/html").querySelector("main");
    this.main.hidden = true;
    this.place.append(document.importNode(page, true));
    this.place.hidden = false;
    const form = this.place.querySelector("#sheet");
    form.inert = true;
    phases(this.place);
    steppers(this.place);
    this.page = await openSheet(form, {
      sheet, facts, store: this.store, transport: this.transport, review: () => this.review(sheet),
    });
    form.inert = false;
    if (signature) {
      this.page.view.notice(signature.reasons.join(" "));
    }
  }

  // The review is the server's; without one the sheet is read and signed here.
  async review(sheet) {
    const session = await this.transport.session().catch(() => null);
    if (session?.person && (await this.page.outbox.waiting(sheet)).length === 0) {
      location.assign(`/sheets/${sheet}/review`);
    } else {
      await this.readHere(sheet);
    }
  }

  async readHere(sheet) {
    this.place.hidden = true;
    await this.sign.open(await this.store.package(sheet), {
      now: () => this.page.now(),
      tap: (fields) => this.page.kept(fields),
      leave: () => {
        this.sign.close();
        this.place.hidden = false;
      },
    });
  }
}
