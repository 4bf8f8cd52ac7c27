// The page at the table: opens what its owner keeps on this device, brings sheets here while there is a network, and lets
// them be scored with or without one.
import { CaseLog } from "./case-log.js";
import { DeviceStore, NewerWork } from "./device-store.js";
import { lockScreen } from "./lock-screen.js";
import { Outbox } from "./outbox.js";
import { refreshAll } from "./packages.js";
import { setUpForm } from "./set-up.js";
import { SheetList } from "./sheet-list.js";
import { dropReceived, sendSignatures } from "./signatures.js";
import { channelOf } from "./sheet-page.js";
import { Transport } from "./transport.js";
import { lock, stillOpen, vaults, watch } from "./vault.js";

// Must match the number the server gives its pages.
const SHELL = 1;
const ROUND = 20000;

const main = document.getElementById("table");
const words = main.dataset;
const line = document.getElementById("said");

const say = (text, label, href) => {
  line.textContent = `${text} `;
  line.hidden = text === "";
  if (label) {
    line.append(Object.assign(document.createElement("a"), { textContent: label, href }));
  }
};

class Table {
  constructor(opened, store) {
    this.transport = new Transport(opened.person);
    this.person = opened.person;
    this.store = store;
    this.outbox = new Outbox({ store, transport: this.transport, channel: channelOf(store), tell: () => this.list.show() });
    this.list = new SheetList(main, store, this.transport, () => this.round());
    this.cases = new CaseLog(main, store, this.transport);
  }

  async start() {
    document.getElementById("work").hidden = false;
    document.getElementById("lock").addEventListener("click", () => this.lock());
    addEventListener("online", () => this.round());
    addEventListener("offline", () => say(words.offline));
    addEventListener("visibilitychange", () => document.hidden || this.round());
    setInterval(() => this.round(), ROUND);
    await dropReceived(this.store);
    await this.list.show();
    await this.cases.show();
    await this.round();
  }

  lock() {
    lock();
    location.reload();
  }

  // Sends what waits and fetches what is new, as far as the server can be asked and knows the person.
  async round() {
    const session = await this.transport.session().catch(() => null);
    report(session, this.person);
    if (session?.person === this.person && session.oldest <= SHELL) {
      const taps = await this.store.taps();
      for (const sheet of new Set(taps.map((tap) => tap.sheet))) {
        await this.outbox.drain(sheet);
      }
      await sendSignatures(this.store, this.transport);
      await refreshAll(this.store, this.transport, () => this.list.show());
      await this.cases.round();
    }
    await this.list.show();
  }
}

const report = (session, person) => {
  if (!session) {
    say(words.offline);
  } else if (session.off) {
    say(words.off);
  } else if (session.oldest > SHELL) {
    say(words.update, words.updateLink, "/at-the-table");
  } else if (!session.person) {
    say(words.login, words.loginLink, "/login");
  } else {
    say(session.person === person ? "" : words.other);
  }
};

const opened = async (session, all) => {
  const mine = session?.person ? all.filter((vault) => vault.person === session.person) : all;
  const open = await stillOpen();
  return open && mine.some((vault) => vault.person === open.person) ? open : lockScreen(mine);
};

const newcomer = async (session) => {
  if (session?.person) {
    return setUpForm(words, session.person);
  }
  say(words.nobody, words.loginLink, "/login");
  return null;
};

const start = async () => {
  if (!window.isSecureContext) {
    say(words.insecure);
    return;
  }
  navigator.serviceWorker?.register("/service-worker.js");
  const session = await new Transport(null).session().catch(() => null);
  const all = await vaults();
  const known = session?.person ? all.some((vault) => vault.person === session.person) : all.length > 0;
  const open = await (known ? opened(session, all) : newcomer(session));
  if (open) {
    watch(() => location.reload());
    await new Table(open, await DeviceStore.of(open)).start();
  }
};

start().catch((error) => {
  const newer = error instanceof NewerWork || error.name === "VersionError";
  if (!newer) {
    throw error;
  }
  say(words.newer, words.updateLink, "/at-the-table");
});
