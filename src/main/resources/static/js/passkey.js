// Lets a passkey complete the form its button stands in: it signs the challenge of the page (or is made for it), its
// answer goes into the hidden field and the form is sent. Without this module the buttons stay hidden.
import * as answer from "./passkey-answer.js";

const ids = (data) => (data.credentials ?? "").split(" ").filter(Boolean);

const get = (data) => answer.get(answer.bytes(data.challenge), data.rp, ids(data));

// -7 ES256, -8 EdDSA, -257 RS256: the numbers of the COSE registry, the same the server accepts.
const create = (data) =>
  navigator.credentials.create({
    publicKey: {
      challenge: answer.bytes(data.challenge),
      rp: { id: data.rp, name: "Scrubline" },
      user: { id: answer.bytes(data.user), name: data.username, displayName: data.display },
      pubKeyCredParams: [-7, -8, -257].map((alg) => ({ type: "public-key", alg })),
      excludeCredentials: answer.known(ids(data)),
      authenticatorSelection: { residentKey: "required", requireResidentKey: true, userVerification: "required" },
      attestation: "none",
    },
  });

// What the form says as it stands is put into its one canonical form, and hashed, by the server that will do it again.
const challenge = async (form, box, button) => {
  const typed = new FormData(form);
  typed.delete("password");
  typed.set(box.querySelector("[data-act]").name, button.value);
  const response = await fetch(box.dataset.from, { method: "POST", body: new URLSearchParams(typed) });
  if (!response.ok) {
    throw new Error(response.statusText);
  }
  return (await response.json()).challenge;
};

const sign = async (data, form, box, button) => {
  const credential = await get({ ...data, challenge: await challenge(form, box, button) });
  const act = box.querySelector("[data-act]");
  act.value = button.value;
  act.disabled = false;
  return credential;
};

const ways = { create, get, sign };

// A password is not needed here, everything else is.
const complete = (form, box) =>
  box.dataset.passkey === "get" ||
  [...form.elements]
    .filter((field) => field.type !== "password" || box.dataset.passkey === "create")
    .every((field) => field.reportValidity());

const run = async (box, button) => {
  const form = box.closest("form");
  const said = box.querySelector("[role=status]");
  if (!complete(form, box)) {
    return;
  }
  button.disabled = true;
  said.textContent = box.dataset.sayWaiting;
  try {
    const credential = await ways[box.dataset.passkey](box.dataset, form, box, button);
    box.querySelector("[data-answer]").value = answer.json(credential);
    form.submit();
  } catch (error) {
    said.textContent = box.getAttribute(`data-say-${error.name.toLowerCase()}`) ?? box.dataset.sayFailed;
    button.disabled = false;
    button.focus();
  }
};

// The page may have come back from the browser's memory as it was left.
const ready = (box, buttons) => {
  box.hidden = false;
  const barred = location.origin !== box.dataset.origin ? "sayPlace"
    : window.PublicKeyCredential === undefined ? "sayUnsupported" : null;
  for (const button of buttons) {
    button.hidden = barred !== null;
    button.disabled = false;
  }
  box.querySelector("[data-answer]").value = "";
  box.querySelector("[role=status]").textContent = barred === null ? "" : box.dataset[barred];
};

for (const box of document.querySelectorAll("[data-passkey]")) {
  const buttons = box.querySelectorAll("button");
  const button = buttons[0];
  ready(box, buttons);
  for (const one of buttons) {
    one.addEventListener("click", () => run(box, one));
  }
  if (box.dataset.passkey === "create") {
    box.closest("form").addEventListener("submit", (event) => {
      event.preventDefault();
      button.click();
    });
  }
  window.addEventListener("pageshow", () => ready(box, buttons));
}
