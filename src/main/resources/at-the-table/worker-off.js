// Takes itself away with all its caches. What lies in the device's database is not touched: it goes out from the server's
// own pages. SHELL is written in front of this text by the server and not used.
self.addEventListener("install", (event) => event.waitUntil(self.skipWaiting()));

self.addEventListener("activate", (event) => event.waitUntil((async () => {
  await Promise.all((await caches.keys()).map((name) => caches.delete(name)));
  await self.registration.unregister();
})()));
