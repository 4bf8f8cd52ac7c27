// Keeps the one page without data and its files, nothing else: no page of a record ever lies in its caches. SHELL is
// written in front of this text by the server: number and version of the page, and its files.
const CACHE = `scrubline-shell-${SHELL.version}`;
const RULES = "scrubline-rules";
const PAGE = "/at-the-table";
const PATIENCE = 3000;

const keep = async () => {
  const cache = await caches.open(CACHE);
  await cache.addAll([...SHELL.files, new Request(PAGE, { cache: "reload", credentials: "omit" })]);
};

// The oldest page the server still allows, as it last said. What it has ruled out is not shown again.
const oldest = async () => {
  const rule = await (await caches.open(RULES)).match(PAGE);
  return rule ? Number(await rule.text()) : 0;
};

const obey = async (response) => {
  const rule = await response.json().catch(() => ({}));
  if (rule.scrubline !== "session") {
    return;
  }
  await (await caches.open(RULES)).put(PAGE, new Response(String(rule.oldest)));
  if (rule.off || rule.oldest > SHELL.number) {
    await caches.delete(CACHE);
    await self.registration.update();
  }
};

const kept = async (request) => (SHELL.number < (await oldest()) ? undefined : (await caches.open(CACHE)).match(request));

const inTime = (request) => Promise.race([
  fetch(request),
  new Promise((resolve, reject) => { setTimeout(() => reject(new Error("too slow")), PATIENCE); }),
]);

const nothingKept = () => new Response("", { status: 504, statusText: "No connection" });

// The server's page while it answers, the kept one while it does not. Anything but the page itself is no answer.
const page = async (request) => {
  const answer = await inTime(request).catch(() => null);
  const ours = answer?.headers.get("X-Scrubline-Shell");
  return ours || answer?.status === 404 ? answer : (await kept(PAGE)) ?? answer ?? nothingKept();
};

const session = async (request) => {
  const answer = await fetch(request);
  await obey(answer.clone());
  return answer;
};

// Another page that cannot be reached leads to the one that can.
const elsewhere = async (request) => {
  try {
    return await fetch(request);
  } catch (error) {
    return (await kept(PAGE)) ? Response.redirect(PAGE) : nothingKept();
  }
};

const answer = (request, url) => {
  if (url.pathname === "/at-the-table/session") {
    return session(request);
  }
  if (SHELL.files.includes(url.pathname)) {
    return kept(request).then((found) => found ?? fetch(request));
  }
  if (request.mode === "navigate") {
    return url.pathname === PAGE ? page(request) : elsewhere(request);
  }
  return null;
};

self.addEventListener("install", (event) => event.waitUntil(keep().then(() => self.skipWaiting())));

self.addEventListener("activate", (event) => event.waitUntil((async () => {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => ![CACHE, RULES].includes(name)).map((name) => caches.delete(name)));
  await self.clients.claim();
})()));

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  const said = event.request.method === "GET" && url.origin === location.origin ? answer(event.request, url) : null;
  if (said) {
    event.respondWith(said);
  }
});
