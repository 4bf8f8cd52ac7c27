// Asks a passkey for its answer to a challenge, in the JSON form of Web Authentication Level 3.
export const bytes = (text) =>
  Uint8Array.from(atob(text.replaceAll("-", "+").replaceAll("_", "/")), (letter) => letter.charCodeAt(0));

export const text = (buffer) =>
  btoa(String.fromCharCode(...new Uint8Array(buffer))).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");

export const known = (credentials) => credentials.map((id) => ({ type: "public-key", id: bytes(id) }));

// credentials: ids of the passkeys that may answer; none when any may.
export const get = (challenge, rpId, credentials) =>
  navigator.credentials.get({
    publicKey: { challenge, rpId, allowCredentials: known(credentials), userVerification: "required" },
  });

// Every member of the response that holds bytes, by the name the standard's JSON gives it.
const members = ["clientDataJSON", "attestationObject", "authenticatorData", "signature", "userHandle"];

export const json = (credential) => {
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
