// What one trainee keeps of a case log on this device, sealed, each by its place: "form ID" of a programme, "steps CODE" of
// a procedure, "item ID" of a case that is not on the server yet, "note ID" of one that is.
import { all, one, write } from "./database.js";
import { NewerWork } from "./device-store.js";
import { seal, unseal } from "./seal.js";

// Form of what is sealed here. A change of it raises the number and says how the older form is read.
const FORM = 1;

export class CaseLogStore {
  constructor({ database, person, key }) {
    Object.assign(this, { database, person, key });
  }

  async record(place, value) {
    const sealed = await seal(this.key, `${this.person} case log ${place}`, value);
    return { person: this.person, place, form: FORM, ...sealed };
  }

  read(record) {
    if (record.form > FORM) {
      throw new NewerWork("kept by a newer version");
    }
    return unseal(this.key, `${this.person} case log ${record.place}`, record);
  }

  async keep(place, value) {
    await this.instead(place, place, value);
  }

  // Takes the place of another record, both or neither.
  async instead(old, place, value) {
    const record = await this.record(place, value);
    await write(this.database, ["cases"], ({ cases }) => {
      cases.delete([this.person, old]);
      cases.put(record);
    });
  }

  async drop(place) {
    await write(this.database, ["cases"], ({ cases }) => cases.delete([this.person, place]));
  }

  async kept(place) {
    const record = await one(this.database, "cases", [this.person, place]);
    return record ? this.read(record) : null;
  }

  // Everything whose place begins so, in the order of the places.
  async all(beginning) {
    const keys = IDBKeyRange.bound([this.person, beginning], [this.person, `${beginning}\uffff`]);
    const mine = await all(this.database, "cases", keys);
    return Promise.all(mine.map((record) => this.read(record)));
  }

  // Changes one case while no other tab can: work gets it, or null, and answers what is to be kept; null leaves it alone.
  change(id, work) {
    return navigator.locks.request(`scrubline case ${id}`, async () => {
      const after = work(await this.kept(`item ${id}`));
      if (after) {
        await this.keep(`item ${id}`, after);
      }
      return after;
    });
  }
}
