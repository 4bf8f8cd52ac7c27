// The device's database. Every write is on the disk before its promise is kept.
const NAME = "scrubline";
const VERSION = 2;

const STORES = {
  vaults: { keyPath: "person" },
  taps: { keyPath: "order", autoIncrement: true },
  packages: { keyPath: ["person", "sheet"] },
  drafts: { keyPath: ["person", "sheet"] },
  cases: { keyPath: ["person", "place"] },
};

const promised = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

const create = (database) => {
  Object.entries(STORES)
    .filter(([name]) => !database.objectStoreNames.contains(name))
    .forEach(([name, options]) => database.createObjectStore(name, options));
};

// A newer version in another tab asks this one to let go; what was kept stays.
export const open = async () => {
  const request = indexedDB.open(NAME, VERSION);
  request.onupgradeneeded = () => create(request.result);
  const database = await promised(request);
  database.onversionchange = () => database.close();
  return database;
};

// work gets the stores by name and may await nothing but their requests.
export const write = (database, names, work) => new Promise((resolve, reject) => {
  const transaction = database.transaction(names, "readwrite", { durability: "strict" });
  let result;
  transaction.oncomplete = () => resolve(result?.result ?? result);
  transaction.onabort = () => reject(transaction.error ?? new DOMException("nothing was kept", "AbortError"));
  result = work(Object.fromEntries(names.map((name) => [name, transaction.objectStore(name)])));
});

// Without keys, everything in the store.
export const all = (database, name, keys) => promised(database.transaction(name).objectStore(name).getAll(keys));

export const one = (database, name, key) => promised(database.transaction(name).objectStore(name).get(key));
