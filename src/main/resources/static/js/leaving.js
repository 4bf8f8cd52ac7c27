// Logging out deletes nothing. Somebody who leaves cases on this device that the server does not have yet is told so once.
import { all, open } from "./offline/database.js";
import { Transport } from "./offline/transport.js";

const leaving = document.querySelector("form[action$='/logout']");

// How many there are can be read without the phrase, what they are cannot. The server is asked whose session this is only
// where there are any.
const unsent = async () => {
  const known = window.isSecureContext && (await indexedDB.databases?.())?.some(({ name }) => name === "scrubline");
  const records = known ? (await all(await open(), "cases")).filter(({ place }) => place.startsWith("item ")) : [];
  const session = records.length > 0 ? await new Transport(null).get("/at-the-table/session", "session") : null;
  return records.filter(({ person }) => person === session?.person).length;
};

const look = async () => {
  leaving.dataset.unsent = await unsent().catch(() => 0);
};

leaving?.addEventListener("submit", (event) => {
  if (Number(leaving.dataset.unsent) > 0 && !leaving.querySelector("[role=alert]")) {
    event.preventDefault();
    event.stopImmediatePropagation();
    const said = document.createElement("p");
    said.setAttribute("role", "alert");
    said.textContent = leaving.querySelector("button").dataset.unsent;
    leaving.prepend(said);
  }
}, true);

if (leaving) {
  addEventListener("focus", look);
  await look();
}
