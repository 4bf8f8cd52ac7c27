// Keys and seals of what lies on the device. One data key (AES-GCM) a person, wrapped by a key made of the person's own
// phrase; in use it cannot be read out of the browser again.
const ITERATIONS = 600000;

const bytes = (length) => crypto.getRandomValues(new Uint8Array(length));
const utf8 = (text) => new TextEncoder().encode(text);

const phraseKey = async (phrase, salt, iterations) => crypto.subtle.deriveKey(
  { name: "PBKDF2", hash: "SHA-256", salt, iterations },
  await crypto.subtle.importKey("raw", utf8(phrase.normalize("NFKC")), "PBKDF2", false, ["deriveKey"]),
  { name: "AES-GCM", length: 256 }, false, ["wrapKey", "unwrapKey"]);

const wrapped = async (key, by) => {
  const iv = bytes(12);
  return { iv, key: new Uint8Array(await crypto.subtle.wrapKey("raw", key, by, { name: "AES-GCM", iv })) };
};

const unwrapped = ({ iv, key }, by, readable) => crypto.subtle.unwrapKey(
  "raw", key, by, { name: "AES-GCM", iv }, { name: "AES-GCM" }, readable, ["encrypt", "decrypt"]);

// What the device keeps of a new key, to be opened by the phrase alone.
export const newLock = async (phrase) => {
  const salt = bytes(16);
  const key = await crypto.subtle.generateKey({ name: "AES-GCM", length: 256 }, true, ["encrypt", "decrypt"]);
  return { salt, iterations: ITERATIONS, wrapped: await wrapped(key, await phraseKey(phrase, salt, ITERATIONS)) };
};

const tabKey = (secret) => crypto.subtle.importKey("raw", secret, "AES-GCM", false, ["wrapKey", "unwrapKey"]);

// {key, tab, secret}: the key in use, and the same wrapped for this tab; null when the phrase is another.
export const openLock = async (lock, phrase) => {
  try {
    const readable = await unwrapped(lock.wrapped, await phraseKey(phrase, lock.salt, lock.iterations), true);
    const secret = bytes(32);
    const tab = await wrapped(readable, await tabKey(secret));
    return { key: await unwrapped(tab, await tabKey(secret), false), tab, secret };
  } catch (error) {
    if (error.name === "OperationError") {
      return null;
    }
    throw error;
  }
};

export const openTab = async (tab, secret) => unwrapped(tab, await tabKey(secret), false);

// The place of a sealed record is part of the seal, so that none can be put in place of another.
export const seal = async (key, place, value) => {
  const iv = bytes(12);
  const sealed = await crypto.subtle.encrypt({ name: "AES-GCM", iv, additionalData: utf8(place) }, key, utf8(JSON.stringify(value)));
  return { iv, sealed: new Uint8Array(sealed) };
};

export const unseal = async (key, place, { iv, sealed }) => JSON.parse(new TextDecoder().decode(
  await crypto.subtle.decrypt({ name: "AES-GCM", iv, additionalData: utf8(place) }, key, sealed)));
