// The device's part on a page of the server: opens what this person keeps here, asking for the phrase where it is shut.
import { DeviceStore } from "./device-store.js";
import { lockScreen } from "./lock-screen.js";
import { refreshed } from "./packages.js";
import { stillOpen, vaults, watch } from "./vault.js";
import { Transport } from "./transport.js";

// The store with this sheet's package in it, or null where this person keeps nothing on this device.
export const deviceFor = async (person, sheet) => {
  const mine = window.isSecureContext && (await vaults()).find((vault) => vault.person === person);
  if (!mine) {
    return null;
  }
  const open = await stillOpen();
  const opened = open?.person === person ? open : await lockScreen([mine]);
  watch(() => location.reload());
  const store = await DeviceStore.of(opened);
  await refreshed(store, new Transport(person), sheet).catch(() => null);
  return (await store.package(sheet)) ? store : null;
};
