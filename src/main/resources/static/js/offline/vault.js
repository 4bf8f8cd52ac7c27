// Whose work may be read on this device now. A vault is opened by its owner's phrase and stays open in the one tab until
// it is locked: by its owner, after three minutes without a touch, or after three minutes out of sight.
import { all, open, write } from "./database.js";
import { newLock, openLock, openTab } from "./seal.js";

const IDLE = 3 * 60 * 1000;
const FREE_TRIES = 3;
const LONGEST_PAUSE = 15 * 60 * 1000;
const TAB = "scrubline-tab";
const SHORTEST_PHRASE = 6;

const base64 = (bytes) => btoa(String.fromCharCode(...bytes));
const fromBase64 = (text) => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

export const longEnough = (phrase) => [...phrase.trim()].length >= SHORTEST_PHRASE;

export const vaults = async () => (await all(await open(), "vaults")).sort((one, other) => one.place - other.place);

const update = async (person, change) => {
  const vault = (await vaults()).find((one) => one.person === person);
  await write(await open(), ["vaults"], (stores) => stores.vaults.put({ ...vault, ...change }));
};

// Vaults are told apart by their number on this device: nothing about a person is readable while they are shut.
export const setUp = async (person, phrase) => {
  const place = Math.max(0, ...(await vaults()).map((vault) => vault.place)) + 1;
  const lock = await newLock(phrase);
  await write(await open(), ["vaults"], (stores) => stores.vaults.add({ person, place, lock, wrong: 0, notBefore: 0 }));
  return unlock(person, phrase);
};

const remember = (person, opened) => sessionStorage.setItem(TAB, JSON.stringify({
  person,
  secret: base64(opened.secret),
  iv: base64(opened.tab.iv),
  key: base64(opened.tab.key),
  at: Date.now(),
}));

// {key, person} or {wait}: milliseconds until the next try, which grow with every wrong phrase.
export const unlock = async (person, phrase) => {
  const vault = (await vaults()).find((one) => one.person === person);
  const wait = vault.notBefore - Date.now();
  // A longer wait than any was set by a clock that has been put back since.
  if (wait > 0 && wait <= LONGEST_PAUSE) {
    return { wait };
  }
  const opened = await openLock(vault.lock, phrase);
  const wrong = opened ? 0 : vault.wrong + 1;
  const pause = wrong < FREE_TRIES ? 0 : Math.min(LONGEST_PAUSE, 1000 * 2 ** (wrong - FREE_TRIES + 1));
  await update(person, { wrong, notBefore: pause === 0 ? 0 : Date.now() + pause });
  if (!opened) {
    return { wait: pause };
  }
  remember(person, opened);
  return { key: opened.key, person };
};

const tab = () => JSON.parse(sessionStorage.getItem(TAB) ?? "null");

export const lock = () => sessionStorage.removeItem(TAB);

// The key this tab was given before, unless it has been left alone for too long since.
export const stillOpen = async () => {
  const kept = tab();
  const idle = kept ? Date.now() - kept.at : 0;
  if (!kept || idle < 0 || idle > IDLE) {
    lock();
    return null;
  }
  return {
    person: kept.person,
    key: await openTab({ iv: fromBase64(kept.iv), key: fromBase64(kept.key) }, fromBase64(kept.secret)),
  };
};

const touch = () => {
  const kept = tab();
  if (kept) {
    sessionStorage.setItem(TAB, JSON.stringify({ ...kept, at: Date.now() }));
  }
};

// Calls shut() once when the vault has to be locked. Time asleep or hidden counts like time without a touch.
export const watch = (shut) => {
  const events = ["pointerdown", "keydown", "input"];
  events.forEach((event) => addEventListener(event, touch, { passive: true, capture: true }));
  const look = () => {
    const kept = tab();
    if (!kept || Math.abs(Date.now() - kept.at) > IDLE) {
      clearInterval(timer);
      lock();
      shut();
    }
  };
  const timer = setInterval(look, 1000);
  addEventListener("visibilitychange", look);
};
