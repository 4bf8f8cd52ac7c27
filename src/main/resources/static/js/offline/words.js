// Says a message by its key as the server would: {0} is an argument, {0,choice,1#one|1<{0} of them} a form by number.
const forms = (text) => text.split("|").map((form) => {
  const [, limit, sign, words] = /^([^#<]*)([#<])([\s\S]*)$/.exec(form);
  return { limit: Number(limit), above: sign === "<", words };
});

const chosen = (text, number) => {
  const all = forms(text);
  return (all.filter(({ limit, above }) => (above ? number > limit : number >= limit)).pop() ?? all[0]).words;
};

// From "{" at the place given to the brace that closes it.
const closing = (pattern, from) => {
  let depth = 0;
  for (let at = from; at < pattern.length; at++) {
    depth += pattern[at] === "{" ? 1 : pattern[at] === "}" ? -1 : 0;
    if (depth === 0) {
      return at;
    }
  }
  throw new Error(`a message that is not closed: ${pattern}`);
};

const written = (value) => (typeof value === "number" ? value.toLocaleString("en") : value);

const filled = (pattern, values) => {
  const from = pattern.indexOf("{");
  if (from < 0) {
    return pattern;
  }
  const to = closing(pattern, from);
  const [, at, choice] = /^(\d+)(?:,choice,([\s\S]*))?$/.exec(pattern.slice(from + 1, to));
  const value = values[Number(at)];
  const said = choice === undefined ? written(value) : filled(chosen(choice, Number(value)), values);
  return pattern.slice(0, from) + said + filled(pattern.slice(to + 1), values);
};

// words: pattern by key. A key that is not there is a fault of the package, not of the person.
export const say = (words, key, ...values) => {
  if (!(key in words)) {
    throw new Error(`no words for ${key}`);
  }
  return values.length === 0 ? words[key] : filled(words[key], values);
};
