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

// Logging out deletes nothing; somebody who goes with unsent work should know that it waits here.
const guardLogOut = (page) => {
  const leaving = document.querySelector("form[action$='/logout']");
  let said = false;
  leaving?.addEventListener("submit", async (event) => {
    event.preventDefault();
    if (said || (await page.outbox.waiting(sheet)).length === 0) {
      leaving.submit();
    } else {
      said = true;
      page.view.notice(page.store.durable ? form.dataset.leaving : form.dataset.unsaved);
    }
  });
};

const start = async () => {
  const device = await deviceFor(person, sheet).catch(() => null);
  const transport = new Transport(device ? person : null);
  const facts = device ? (await device.package(sheet)).facts : null;
  const store = device ?? new PageStore(sheet, { version: Number(version) });
  guardLogOut(await openSheet(form, { sheet, store, transport, facts, review }));
};

start();
