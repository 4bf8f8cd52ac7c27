// Lets a passkey complete the form its button stands in: it signs the challenge of the page (or is made for it), its
// answer goes into the hidden field and the form is sent. Without this module the buttons stay hidden.
const bytes = (text) =>
  Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (letter) => letter.charCodeAt(0));

const text = (buffer) =>
  btoa(String.fromCharCode(...new Uint8Array(buffer))).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");

const known = (data) =>
  (data.credentials ?? "").split(" ").filter(Boolean).map((id) => ({ type: "public-key", id: bytes(id) }));

const get = (data) =>
  navigator.credentials.get({
    publicKey: {
      challenge: bytes(data.challenge),
      rpId: data.rp,
      allowCredentials: known(data),
      userVerification: "required",
    },
  });

// -7 ES256, -8 EdDSA, -257 RS256: the numbers of the COSE registry, the same the server accepts.
const create = (data) =>
  navigator.credentials.create({
    publicKey: {
      challenge: bytes(data.challenge),
      rp: { id: data.rp, name: "Scrubline" },
      user: { id: bytes(data.user), name: data.username, displayName: data.display },
      pubKeyCredParams: [-7, -8, -257].map((alg) => ({ type: "public-key", alg })),
      excludeCredentials: known(data),
      authenticatorSelection: { residentKey: "required", requireResidentKey: true, userVerification: "required" },
      attestation: "none",
    },
  });

// Every member of the response that holds bytes, by the name the standard's JSON gives it.
const members = ["clientDataJSON", "attestationObject", "authenticatorData", "signature", "userHandle"];

const json = (credential) => {
  const response = {};
  for (const name of members.filter((member) => credential.response[member])) {
    response[name] = text(credential.response[name]);
  }
  return JSON.stringify({
    id: credential.id,
    rawId: text(credential.rawId),
    type: credential.type,
    response,
    clientExtensionResults: {},
  });
};

// What the form says as it stands is put into its one canonical form, and hashed, by the server that will do it again.
const challenge = async (form, box, button) => {
  const typed = new FormData(form);
  typed.delete("password");
  typed.set(box.querySelector("[data-act]").name, button.value);
  const answer = await fetch(box.dataset.from, { method: "POST", body: new URLSearchParams(typed) });
  if (!answer.ok) {
    throw new Error(answer.statusText);
  }
  return (await answer.json()).challenge;
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
    box.querySelector("[data-answer]").value = json(credential);
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
