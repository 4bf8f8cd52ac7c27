// A random UUID of version 4; crypto.randomUUID is missing where the page is not on a secure address.
export const randomUuid = () => {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return [[0, 8], [8, 12], [12, 16], [16, 20], [20, 32]].map(([from, to]) => hex.slice(from, to)).join("-");
};
