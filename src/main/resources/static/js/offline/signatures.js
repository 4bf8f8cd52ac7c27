// Brings signatures made here to the server: each after every tap of its sheet, and until the server, asked anew, names the
// record it led to.
import { pendingSignature } from "./sign-page.js";

const settled = async (transport, { sheet, signature }) => {
  const result = await transport.sign(sheet, signature).catch(() => ({ kind: "nothing" }));
  if (result.kind === "refused") {
    return { ...signature, state: "refused", reasons: result.reasons };
  }
  if (result.kind !== "done") {
    return signature;
  }
  const facts = await transport.get(`/sheets/${sheet}/signing`, "signing").catch(() => null);
  const there = facts?.signed?.record === result.record && facts.signed.hash === signature.hash;
  return there ? { ...signature, state: "received", record: result.record } : signature;
};

export const sendSignatures = async (store, transport) => {
  for (const kept of (await store.packages()).filter(pendingSignature)) {
    const open = (await store.taps(kept.sheet)).filter((tap) => tap.state !== "refused");
    if (open.length === 0) {
      const signature = await settled(transport, kept);
      await store.keepPackage({ ...(await store.package(kept.sheet)), signature });
    }
  }
};

// What the server has needs no place here any more.
export const dropReceived = async (store) => {
  for (const { sheet } of (await store.packages()).filter((kept) => kept.signature?.state === "received")) {
    await store.dropPackage(sheet);
  }
};
