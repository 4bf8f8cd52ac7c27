// One case being typed. Every answer is kept as it is given, so that a lock, a crash or a dead battery costs nothing; the
// case goes to the server only once its trainee says so.
import { phases } from "../phases.js";
import { onTheClock, readings } from "./case-log-end.js";
import { answers, fill, showReasons } from "./case-log-fields.js";
import { againstCase, drawReference } from "./case-log-rule.js";

const PAUSE = 300;

const parsed = (html) => document.importNode(new DOMParser().parseFromString(html, "text/html").querySelector("main"), true);

class CaseForm {
  constructor(form, item, { log, store, leave }) {
    Object.assign(this, { form, item, log, store, leave });
    this.changes = 0;
    this.kept = form.querySelector("#draft-kept");
  }

  // Nothing is kept before the levels of before are on the page again.
  start() {
    const { form, item } = this;
    fill(form, item.fields ?? this.fresh());
    this.askWhichEnd(item.fields?.endedOffset?.[0]);
    this.saving = this.showSteps(item.fields ?? {});
    this.sayBand();
    form.addEventListener("input", (event) => this.typed(event.target));
    form.addEventListener("submit", (event) => this.submitted(event));
    showReasons(form, item.reasons ?? []);
  }

  // A form nothing was typed into, with what the device can know: a reference, the usual site, the time.
  fresh() {
    const site = this.form.elements.site.value;
    const zone = this.log.zones[site] ?? this.log.zone;
    return { ...answers(this.form), reference: [drawReference()], endedAt: [onTheClock(Date.now(), zone)] };
  }

  async typed(control) {
    this.changes += 1;
    this.kept.style.visibility = "hidden";
    if (control.name === "procedure") {
      await this.showSteps({});
    }
    if (control.name === "site" || control.name === "endedAt") {
      this.askWhichEnd();
    }
    if (control.name === "procedure" || control.name === "factors") {
      this.sayBand();
    }
    clearTimeout(this.timer);
    const pause = control.type === "text" ? PAUSE : 0;
    this.timer = setTimeout(() => this.save(), pause);
  }

  // The steps of the procedure chosen, each for a level of one's own.
  async showSteps(fields) {
    const place = this.form.querySelector("#level-steps");
    const kept = await this.store.kept(`steps ${this.form.elements.procedure.value}`);
    place.replaceChildren(...(kept ? parsed(kept.html).querySelectorAll(".phase") : []));
    this.form.querySelector("#no-steps").hidden = kept !== null;
    for (const [name, [value]] of Object.entries(fields).filter(([one]) => one.startsWith("level."))) {
      place.querySelector(`input[name="${CSS.escape(name)}"][value="${CSS.escape(value)}"]`)?.setAttribute("checked", "");
    }
    phases(place);
    place.querySelectorAll("input[checked]").forEach((input) => input.dispatchEvent(new Event("change", { bubbles: true })));
  }

  // What the factors ticked amount to, as the server says it. A form kept by an older release does not know.
  sayBand() {
    const place = this.form.querySelector("#band");
    if (!place || !this.log.bands) {
      return;
    }
    const { points, plain, early, earlyProcedures } = this.log.bands;
    const ticked = [...this.form.querySelectorAll("input[name=factors]:checked")];
    const sum = ticked.reduce((all, { value }) => all + points[value], 0);
    const sentences = earlyProcedures.includes(this.form.elements.procedure.value) ? early : plain;
    place.textContent = sentences[Math.min(sum, sentences.length - 1)];
  }

  // Asked only for a time the site's clock showed twice.
  askWhichEnd(chosen = "") {
    const { elements } = this.form;
    const asked = this.form.querySelector("#endedOffset");
    const found = readings(elements.endedAt.value, this.log.zones[elements.site.value] ?? this.log.zone) ?? [];
    asked.hidden = found.length !== 2;
    asked.querySelectorAll("label").forEach((label, at) => {
      const input = label.querySelector("input");
      input.value = found[at]?.value ?? "";
      input.checked = found.length === 2 && input.value === chosen;
      label.querySelector("span").textContent = found[at]?.label ?? "";
    });
  }

  // "kept", "full" where the device has no room, or "gone" where another tab sent the case on its way or removed it.
  save(more = {}) {
    this.saving = this.saving.then(() => this.keep({ fields: answers(this.form), ...more })).catch(() => "full");
    return this.saving.then((outcome) => this.said(outcome));
  }

  async keep(change) {
    const { id } = this.item;
    const upTo = this.changes;
    const kept = await this.store.change(id, (now) => {
      const mine = now ? now.state === "draft" || now.state === "refused" : !this.saved;
      return mine ? { id, programme: this.log.programme, state: "draft", ...now, ...change } : null;
    });
    this.saved = true;
    this.keptUpTo = upTo;
    return kept ? "kept" : "gone";
  }

  said(outcome) {
    if (outcome === "kept") {
      this.kept.hidden = false;
      this.kept.style.visibility = this.keptUpTo === this.changes ? "" : "hidden";
    }
    if (outcome === "full") {
      showReasons(this.form, [{ field: "", message: this.form.dataset.full }]);
    }
    if (outcome === "gone") {
      this.leave();
    }
    return outcome;
  }

  async submitted(event) {
    event.preventDefault();
    clearTimeout(this.timer);
    if (event.submitter?.name === "remove") {
      await this.remove(event.submitter);
      return;
    }
    const reasons = againstCase(answers(this.form), this.log);
    showReasons(this.form, reasons);
    const outcome = await this.save(reasons.length > 0 ? { reasons } : { state: "waiting", reasons: [], at: this.clock() });
    if (outcome === "kept" && reasons.length === 0) {
      this.leave();
    }
  }

  clock() {
    return {
      device: new Date().toISOString(),
      zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
      page: Math.round(performance.now()),
      origin: performance.timeOrigin,
    };
  }

  // Asked once more, since nothing of it is anywhere else.
  async remove(button) {
    if (!button.dataset.asked) {
      button.dataset.asked = "true";
      button.textContent = button.dataset.really;
      return;
    }
    await this.saving;
    await this.store.drop(`item ${this.item.id}`);
    this.leave();
  }
}

// log: a kept form of a programme; item: {id} or a case kept before; leave(): back to the list.
export const openCase = (place, item, options) => {
  const page = parsed(options.log.html);
  place.append(page);
  const form = new CaseForm(page.querySelector("form"), item, options);
  form.start();
  return form;
};
