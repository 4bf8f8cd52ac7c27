// What one person keeps on this device, sealed: taps that wait for the server, sheets to go on with, half-typed words.
import { all, one, open, write } from "./database.js";
import { seal, unseal } from "./seal.js";

// Form of what is sealed. Older forms are brought up to date as they are read, newer ones are left alone.
export const FORMAT = 2;

const UPDATES = {
  // The first form had neither the device's clock nor the key by which taps of one measure are told.
  1: (kept) => (kept.fields ? { at: null, ...kept, key: Object.keys(kept.fields).join() } : kept),
};

export class NewerWork extends Error {}

const upToDate = (format, value) => {
  if (format > FORMAT) {
    throw new NewerWork("kept by a newer version");
  }
  return format === FORMAT ? value : upToDate(format + 1, UPDATES[format](value));
};

export class DeviceStore {
  constructor(database, { person, key }) {
    Object.assign(this, { database, person, key });
    this.durable = true;
  }

  static async of(opened) {
    return new DeviceStore(await open(), opened);
  }

  async sealed(place, value) {
    return { person: this.person, format: FORMAT, ...(await seal(this.key, `${this.person} ${place}`, value)) };
  }

  async read(place, record) {
    return upToDate(record.format, await unseal(this.key, `${this.person} ${place}`, record));
  }

  async add(tap) {
    const record = { ...(await this.sealed(tap.id, tap)), sheet: tap.sheet, id: tap.id };
    await write(this.database, ["taps"], ({ taps }) => taps.add(record));
  }

  async records(sheet) {
    const records = await all(this.database, "taps");
    return records.filter((record) => record.person === this.person && (!sheet || record.sheet === sheet));
  }

  // In the order they were made; of one sheet or, without, of all.
  async taps(sheet) {
    return Promise.all((await this.records(sheet)).map((record) => this.read(record.id, record)));
  }

  // Changed taps, removed ones and the sheet they lead to, all or none.
  async change(sheet, { changed = [], removed = [], base = null }) {
    const records = await this.records(sheet);
    const news = await Promise.all(changed.map(async (tap) => ({
      ...records.find((record) => record.id === tap.id), ...(await this.sealed(tap.id, tap)),
    })));
    const kept = base && await this.package(sheet);
    const next = kept && await this.packaged({ ...kept, base });
    await write(this.database, ["taps", "packages"], ({ taps, packages }) => {
      news.forEach((record) => taps.put(record));
      records.filter((record) => removed.includes(record.id)).forEach((record) => taps.delete(record.order));
      if (next) {
        packages.put(next);
      }
    });
  }

  async packaged(value) {
    return { ...(await this.sealed(`package ${value.sheet}`, value)), sheet: value.sheet };
  }

  async keepPackage(value) {
    const record = await this.packaged(value);
    await write(this.database, ["packages"], ({ packages }) => packages.put(record));
  }

  async package(sheet) {
    const record = await one(this.database, "packages", [this.person, sheet]);
    return record ? this.read(`package ${sheet}`, record) : null;
  }

  async packages() {
    const mine = (await all(this.database, "packages")).filter((record) => record.person === this.person);
    return Promise.all(mine.map((record) => this.read(`package ${record.sheet}`, record)));
  }

  async dropPackage(sheet) {
    await write(this.database, ["packages"], ({ packages }) => packages.delete([this.person, sheet]));
  }

  // Words typed on a sheet and not given as an answer yet: text by field.
  async keepDraft(sheet, words) {
    const record = { ...(await this.sealed(`draft ${sheet}`, words)), sheet };
    await write(this.database, ["drafts"], ({ drafts }) => drafts.put(record));
  }

  async draft(sheet) {
    const record = await one(this.database, "drafts", [this.person, sheet]);
    return record ? this.read(`draft ${sheet}`, record) : {};
  }
}

// The same for a page on which nothing is kept: gone when the page is left.
export class PageStore {
  constructor(sheet, base) {
    this.list = [];
    this.bases = { [sheet]: base };
    this.durable = false;
  }

  async add(tap) {
    this.list.push(tap);
  }

  async taps(sheet) {
    return this.list.filter((tap) => tap.sheet === sheet);
  }

  async change(sheet, { changed = [], removed = [], base = null }) {
    this.list = this.list.map((tap) => changed.find((one) => one.id === tap.id) ?? tap)
      .filter((tap) => !removed.includes(tap.id));
    this.bases[sheet] = base ?? this.bases[sheet];
  }

  async package(sheet) {
    return { base: this.bases[sheet] };
  }

  async keepDraft() {}

  async draft() {
    return {};
  }
}
