// Text and numbers as the server reads them, so that what is refused there is refused here. White space is what Java
// calls so: no-break spaces are text.
const SPACE = "[\\t-\\r\\x1c-\\x20\\u1680\\u2000-\\u2006\\u2008-\\u200a\\u2028\\u2029\\u205f\\u3000]";
const OUTER = new RegExp(`^${SPACE}+|${SPACE}+$`, "g");
const BLANK = new RegExp(`^${SPACE}*$`);
const FORBIDDEN = /[\p{Cc}\p{Cs}]/u;
const NUMBER = /^([+-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d{1,10}))?$/;
const LONGEST_NUMBER = 20;

export const tidy = (raw) => (raw ?? "").normalize("NFC").replaceAll("\r\n", "\n").replace(OUTER, "");

export const blank = (text) => BLANK.test(text ?? "");

// Why a tidied text cannot be kept: a list of none or one refusal.
export const textRefusals = (field, text, maximum) => {
  const length = [...text].length;
  if (FORBIDDEN.test(text.replace(/[\t\n\r]/g, ""))) {
    return [{ field, key: "refusal.text.characters", values: [] }];
  }
  return length > maximum ? [{ field, key: "refusal.text.length", values: [length, maximum] }] : [];
};

// A decimal number {negative, whole, fraction} of digits without outer zeros, or null for what is none.
export const decimal = (text) => {
  const found = text.length > LONGEST_NUMBER ? null : NUMBER.exec(text);
  if (!found || (found[2] + (found[3] ?? "")) === "") {
    return null;
  }
  const [, sign, before, after = "", exponent = "0"] = found;
  const digits = (before + after).replace(/^0+/, "");
  return digits === "" ? { negative: false, whole: "", fraction: "", far: 0 }
    : placed(sign === "-", before + after, before.length + Number(exponent));
};

// far: digits before the point where there are too many to write out.
const placed = (negative, digits, point) => {
  const lead = digits.length - digits.replace(/^0+/, "").length;
  const bare = digits.slice(lead).replace(/0+$/, "");
  const at = point - lead;
  if (Math.abs(at) > 50) {
    return { negative, whole: "", fraction: at < 0 ? "0".repeat(50) + bare : "", far: Math.max(at, 0) };
  }
  const padded = at < 0 ? "0".repeat(-at) + bare : bare.padEnd(at, "0");
  const split = Math.max(at, 0);
  return { negative, whole: padded.slice(0, split), fraction: padded.slice(split), far: 0 };
};

// One form for each number: no zeros in front or behind, no exponent.
export const plain = ({ negative, whole, fraction }) =>
  (negative ? "-" : "") + (whole || "0") + (fraction ? `.${fraction}` : "");

export const above = ({ whole, fraction, far }, limit) =>
  far > 0 || BigInt(whole || "0") > BigInt(limit) || (BigInt(whole || "0") === BigInt(limit) && fraction !== "");
