// Sends each tap by itself, strictly one after the other, and says "saved" only once the server has answered that the
// change is committed. Each tap carries an id, so one whose answer was lost can be sent again without being applied
// twice. Without this module the sheet is one form with a button to save it.
const form = document.getElementById("sheet");
const words = form.dataset;
const bar = form.querySelector(".verdict-bar");
const LONGEST_WAIT = 15000;

const queue = [];
let version = Number(words.version);
let sending = false;
let halted = false;
let following = false;
let wait = 1000;
let timer = 0;
let afterwards = null;

const element = (tag, text, properties = {}) => Object.assign(document.createElement(tag), { textContent: text }, properties);

const identity = () => {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return [[0, 8], [8, 12], [12, 16], [16, 20], [20, 32]].map(([from, to]) => hex.slice(from, to)).join("-");
};

// Where the state of a tap is said: the step's heading, the group of buttons or the section's heading.
const home = (control) =>
  control.closest(".rest") ?? control.closest(".step")?.querySelector("legend")
  ?? control.closest(".feedback")?.querySelector("label") ?? control.closest("section")?.querySelector("h2");

const state = (tap, name, detail = "") => {
  let mark = tap.home.querySelector(".save-state");
  if (!mark) {
    mark = tap.home.appendChild(element("span", "", { className: "save-state" }));
  }
  mark.dataset.state = name;
  mark.textContent = detail ? `${words[name]}: ${detail}` : words[name];
};

const notice = (text, button) => {
  bar.querySelector(".unsaved")?.remove();
  if (text) {
    const line = element("p", text + " ", { className: "unsaved", role: "alert" });
    if (button) {
      line.append(button);
    }
    bar.prepend(line);
  }
};

const retryButton = () => {
  const button = element("button", words.retry, { type: "button", className: "button" });
  button.addEventListener("click", () => send());
  return button;
};

// The token of a session that was renewed in another window.
const renewToken = async () => {
  const page = new DOMParser().parseFromString(await (await fetch(words.back)).text(), "text/html");
  const token = page.querySelector("meta[name=csrf-token]");
  if (token) {
    document.querySelector("meta[name=csrf-token]").content = token.content;
    form.querySelector("input[name=_csrf]").value = token.content;
  }
};

// What the server said: its status (0 when it sent to the log-in page) and its JSON where it sent some.
const post = async (tap) => {
  const meta = (name) => document.querySelector(`meta[name=${name}]`).content;
  const response = await fetch(words.taps, {
    method: "POST",
    redirect: "manual",
    headers: { "Content-Type": "application/json", Accept: "application/json", [meta("csrf-header")]: meta("csrf-token") },
    body: JSON.stringify({ tap: tap.id, version, fields: tap.fields }),
    signal: AbortSignal.timeout(LONGEST_WAIT),
  });
  const spoken = [200, 400, 404, 409, 422].includes(response.status);
  return { status: response.status, body: spoken ? await response.json() : null };
};

const later = (text) => {
  state(queue[0], "waiting");
  notice(text, retryButton());
  clearTimeout(timer);
  timer = setTimeout(send, wait);
  wait = Math.min(wait * 2, LONGEST_WAIT);
};

const accept = (tap, answer) => {
  queue.shift();
  wait = 1000;
  version = answer.version;
  form.elements.version.value = answer.version;
  state(tap, "saved");
  notice("");
  follow(answer);
  warn(tap, answer.warnings);
  tap.done?.();
};

const refuse = (tap, problem) => {
  queue.shift();
  state(tap, "refused", problem.reasons.join(" "));
  tap.refused?.();
  notice("");
};

const halt = (text, href) => {
  halted = true;
  queue.forEach((waiting) => state(waiting, "refused"));
  notice(text, href ? element("a", words.reload, { href }) : null);
};

const handle = (tap, { status, body }) => {
  if (status === 200) {
    accept(tap, body);
  } else if (status === 422 || status === 400) {
    refuse(tap, body);
  } else if (status === 409) {
    halt([words.stale, ...body.reasons].join(" "), words.back);
  } else if (status === 404) {
    halt(body.reasons.join(" "));
  } else if (status === 0 || status === 401 || status === 403) {
    renewToken().catch(() => {});
    later(words.login);
  } else {
    later(words.failed);
  }
};

const send = async () => {
  if (sending || halted || queue.length === 0) {
    return;
  }
  sending = true;
  clearTimeout(timer);
  const tap = queue[0];
  state(tap, "saving");
  const answer = await post(tap).catch(() => ({ status: 503 }));
  sending = false;
  handle(tap, answer);
  if (queue.length === 0) {
    afterwards?.();
  } else if (queue[0] !== tap) {
    send();
  }
};

// A measure turned several times while its first turn is on the way is sent once more, with its last value.
const tap = (control, fields, then = {}) => {
  const key = Object.keys(fields).join();
  const last = queue[queue.length - 1];
  if (last && queue.length > 1 && key.startsWith("measure.") && last.key === key) {
    last.fields = fields;
    return;
  }
  const one = { id: identity(), fields, key, home: home(control), ...then };
  queue.push(one);
  state(one, halted ? "refused" : "saving");
  send();
};

const warn = (sent, warnings) => {
  const place = sent.home.closest("section, details");
  place.querySelector(".reread")?.remove();
  if (warnings.length > 0) {
    place.append(element("p", [words.reread, ...warnings].join(" "), { className: "notice notice-careful reread" }));
  }
};

const followStep = (code, answer, cause) => {
  const radios = [...form.querySelectorAll(`input[name="step.${code}"]`)];
  const waiting = queue.some((one) => `step.${code}` in one.fields || one.fields.clear === code);
  const before = radios.find((radio) => radio.checked)?.value ?? "";
  const card = document.getElementById(`step-${code}`);
  card.querySelector(".cause")?.remove();
  if (cause) {
    card.querySelector(".says").append(element("span", cause, { className: "cause" }));
  }
  if (waiting || before === answer) {
    return;
  }
  radios.forEach((radio) => { radio.checked = radio.value === answer; });
  radios[0].dispatchEvent(new Event("change", { bubbles: true }));
};

const followRole = (answer) => {
  const said = form.querySelector(".role-said");
  said.textContent = answer.role;
  said.hidden = answer.role === "";
  form.querySelector(".role-ask").hidden = answer.role !== "";
  for (const name of ["part", "supervision"]) {
    form.querySelectorAll(`input[name=${name}]`).forEach((radio) => {
      radio.checked = answer[name] === "" ? radio.checked : radio.value === answer[name];
    });
  }
};

const eventLine = (event) => {
  const line = element("li", "");
  const button = element("button", words.remove, { type: "submit", className: "button", name: "event.remove", value: event.id });
  button.append(element("span", ` ${event.text}`, { className: "visually-hidden" }));
  line.append(element("span", event.text), button);
  return line;
};

const picks = (name, sentences) => form.querySelector(`[data-picks="${name}"]`).replaceChildren(
  ...sentences.map((sentence) => element("button", sentence, { type: "submit", className: "pick", name, value: sentence })));

const followFoot = (answer) => {
  bar.querySelector(".number").textContent = answer.progress;
  bar.querySelector(".verdict").textContent = answer.verdict;
  const list = bar.querySelector("ul") ?? bar.querySelector("[role=status]").appendChild(element("ul", ""));
  list.replaceChildren(...answer.reasons.map((reason) => {
    const line = element("li", "");
    line.append(element("a", reason.text, { href: reason.href }));
    return line;
  }));
};

// Once every step of a phase is answered there is no rest to answer for.
const followRest = (phase) => {
  const open = [...phase.querySelectorAll(".step fieldset")].some((step) => !step.querySelector("input:checked"));
  phase.querySelector(".rest").hidden = !open;
};

const follow = (answer) => {
  following = true;
  Object.entries(answer.answers).forEach(([code, said]) => followStep(code, said, answer.causes[code]));
  form.querySelectorAll("details.phase").forEach(followRest);
  followRole(answer);
  followFoot(answer);
  form.querySelector(".recorded").replaceChildren(...answer.events.map(eventLine));
  form.querySelector(".none-recorded").hidden = answer.events.length > 0;
  form.querySelectorAll(".pieces").forEach((hint) => { hint.textContent = answer.pieces; });
  picks("strength.pick", answer.strengths);
  picks("nextStep.pick", answer.nextSteps);
  following = false;
};

const recordEvent = (button) => {
  const fields = { "event.code": "", "event.step": button.value, "event.action": form.elements["event.action"].value };
  for (const name of ["event.code", "event.reason"]) {
    const chosen = form.querySelector(`input[name="${name}"]:checked`);
    // A reason chosen for a takeover and left behind when another event was chosen does not go with it.
    if (chosen && (name === "event.code" || fields["event.code"] === "TAKEOVER")) {
      fields[name] = chosen.value;
    }
  }
  tap(button, fields, { done: emptyEvent });
};

const emptyEvent = () => {
  form.querySelectorAll("input[name^='event.'][type=radio]").forEach((radio) => { radio.checked = false; });
  form.elements["event.action"].value = "";
  form.querySelector(".add-event").open = false;
};

const pick = (button) => {
  const field = button.name.replace(".pick", "");
  form.elements[field].value = button.value;
  tap(button, { [field]: button.value });
};

// A refused answer goes back to what is stored; the reason stays beside it.
const answerStep = (radio) => {
  const saved = radio.closest(".step").dataset.saved ?? "";
  tap(radio, { [radio.name]: radio.value }, {
    done: () => { radio.closest(".step").dataset.saved = radio.value; },
    refused: () => {
      following = true;
      followStep(radio.name.slice("step.".length), saved);
      following = false;
    },
  });
};

const confirmRole = (radio) => {
  const chosen = ["part", "supervision"].map((name) => [name, form.querySelector(`input[name=${name}]:checked`)?.value]);
  if (chosen.every(([, value]) => value)) {
    tap(radio, Object.fromEntries(chosen));
  }
};

form.addEventListener("change", (event) => {
  const control = event.target;
  if (following) {
    return;
  }
  if (control.name.startsWith("step.")) {
    answerStep(control);
  } else if (control.name === "part" || control.name === "supervision") {
    confirmRole(control);
  } else if (control.name.startsWith("measure.") || control.name === "strength" || control.name === "nextStep") {
    tap(control, { [control.name]: control.value });
  }
});

const review = () => {
  if (queue.length === 0) {
    location.assign(`${words.back}/review`);
  } else {
    afterwards = review;
    notice(words.unsaved, retryButton());
    send();
  }
};

form.addEventListener("submit", (event) => {
  event.preventDefault();
  const button = event.submitter;
  if (button.name === "next") {
    review();
  } else if (button.name === "event.step") {
    recordEvent(button);
  } else if (button.name.endsWith(".pick")) {
    pick(button);
  } else if (button.name) {
    tap(button, { [button.name]: button.value });
  }
});

for (const card of form.querySelectorAll(".step")) {
  card.dataset.saved = card.querySelector("input[type=radio]:checked")?.value ?? "";
}
form.querySelector(".save").hidden = true;
addEventListener("online", () => send());
addEventListener("beforeunload", (event) => {
  if (queue.length > 0) {
    event.preventDefault();
  }
});
