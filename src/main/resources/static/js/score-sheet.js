// The score sheet while its page is open. Sends each tap by itself and says "saved" only once the server has answered that
// the change is committed; where the person keeps work on this device, each tap is kept there first. Without this module
// the sheet is one form with a button to save it.
import { deviceFor } from "./offline/device.js";
import { PageStore } from "./offline/device-store.js";
import { openSheet } from "./offline/sheet-page.js";
import { Transport } from "./offline/transport.js";

const form = document.getElementById("sheet");
const { person, sheet, version, back } = form.dataset;
const review = () => location.assign(`${back}/review`);

const start = async () => {
  const device = await deviceFor(person, sheet).catch(() => null);
  const transport = new Transport(device ? person : null);
  const facts = device ? (await device.package(sheet)).facts : null;
  const store = device ?? new PageStore(sheet, { version: Number(version) });
  await openSheet(form, { sheet, store, transport, facts, review });
};

start();
