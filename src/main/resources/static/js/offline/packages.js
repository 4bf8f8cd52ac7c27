import { turn } from "./outbox.js";
import { pendingSignature } from "./sign-page.js";

// What a sheet needs to be scored without a network: fetched while there is one, renewed while nothing waits.
const main = async (sheet) => {
  const response = await fetch(`/sheets/${sheet}/table`, { cache: "no-store", redirect: "manual" });
  const page = response.status === 200 ? new DOMParser().parseFromString(await response.text(), "text/html") : null;
  if (!page?.querySelector(`main form[data-sheet="${sheet}"]`)) {
    return null;
  }
  page.querySelectorAll("main input[name=_csrf], main template").forEach((one) => one.remove());
  return page.querySelector("main").outerHTML;
};

const busy = async (store, sheet, here) =>
  pendingSignature(here) || (await store.taps(sheet)).some((tap) => tap.state !== "refused");

const same = (one, other) => JSON.stringify([one?.base, one?.signature]) === JSON.stringify([other?.base, other?.signature]);

// Fetches one sheet unless it is here already and something of it still waits. What was asked of the server before a tap
// must not take the place of what the tap led to: the next tap would be sent as if somebody else had changed the sheet.
export const refreshed = async (store, transport, sheet) => {
  const here = await store.package(sheet);
  if (here && await busy(store, sheet, here)) {
    return;
  }
  const fresh = await transport.get(`/sheets/${sheet}/package`, "package");
  const html = fresh && (here?.shape === fresh.shape ? here.html : await main(sheet));
  if (html) {
    const signing = await transport.get(`/sheets/${sheet}/signing`, "signing").catch(() => null);
    await navigator.locks.request(turn(sheet), async () => {
      const now = await store.package(sheet);
      if (same(here, now) && !(now && await busy(store, sheet, now))) {
        await store.keepPackage({ ...fresh, html, signing, signature: now?.signature ?? null });
      }
    });
  }
};

// All sheets this person may write on; those not here yet come first, and each is shown as soon as it has come. One that
// is not open any more goes, unless work of it is still here.
export const refreshAll = async (store, transport, show) => {
  const list = await transport.get("/at-the-table/sheets", "sheets");
  if (!list) {
    return false;
  }
  const here = new Set((await store.packages()).map((one) => one.sheet));
  for (const sheet of list.sheets.filter((one) => !here.has(one))) {
    await refreshed(store, transport, sheet);
    await show();
  }
  for (const sheet of list.sheets.filter((one) => here.has(one))) {
    await refreshed(store, transport, sheet);
  }
  for (const { sheet, signature } of await store.packages()) {
    const waits = ["pending", "received"].includes(signature?.state) || (await store.taps(sheet)).length > 0;
    if (!list.sheets.includes(sheet) && !waits) {
      await store.dropPackage(sheet);
    }
  }
  return true;
};
