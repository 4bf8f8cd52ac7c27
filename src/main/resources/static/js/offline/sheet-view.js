// What the score sheet shows: the state of each tap beside what it answered, and the sheet as it stands. The server's
// answer and the device's own have one shape, so the page follows both alike.
const element = (tag, text, properties = {}) => Object.assign(document.createElement(tag), { textContent: text }, properties);

// What the state of a tap with these fields is said beside: the step, the phase's rest, the section's heading.
const place = (form, [name, value]) => {
  const [kind, code] = name.split(".");
  const step = kind === "step" || kind === "measure" ? code : kind === "clear" ? value : null;
  if (step !== null) {
    return form.querySelector(`#step-${CSS.escape(step)} legend`);
  }
  if (kind === "rest") {
    return form.querySelector(`#phase-${CSS.escape(value.split(":")[0])} .rest`);
  }
  if (kind === "strength" || kind === "nextStep") {
    return form.querySelector(`[name=${kind}]`).closest(".feedback").querySelector("label");
  }
  return form.querySelector(kind === "event" ? "#events h2" : ".role h2");
};

// A list whose lines stay the same is left alone: each one put in again is laid out and painted again.
const lines = (list, children) => {
  const same = list.children.length === children.length
    && children.every((child, at) => child.isEqualNode(list.children[at]));
  if (!same) {
    list.replaceChildren(...children);
  }
};

export const sheetView = (form) => {
  const words = form.dataset;
  const bar = form.querySelector(".verdict-bar");
  let following = false;

  const home = (tap) => place(form, Object.entries(tap.fields)[0]) ?? form.querySelector("h2");

  // While the newest tap of a place is being saved, nothing good is said there of an earlier one: a queue that tries again
  // would say "kept" of its first tap, and it would be read as being about the last.
  const state = (tap, name, detail = "") => {
    const at = home(tap);
    const mark = at.querySelector(".save-state") ?? at.appendChild(element("span", "", { className: "save-state" }));
    if (name === "saving" || name === "draft" || mark.dataset.newest === tap.id) {
      mark.dataset.newest = name === "saving" ? tap.id : "";
    } else if (mark.dataset.newest && name !== "refused") {
      return;
    }
    mark.dataset.state = name;
    mark.textContent = detail ? `${words[name]}: ${detail}` : words[name];
  };

  const notice = (text, ...controls) => {
    bar.querySelector(".unsaved")?.remove();
    if (text) {
      const line = element("p", `${text} `, { className: "unsaved", role: "alert" });
      line.append(...controls);
      bar.prepend(line);
    }
  };

  const button = (text, act) => {
    const one = element("button", text, { type: "button", className: "button" });
    one.addEventListener("click", act);
    return one;
  };

  const link = (text, href) => element("a", text, { href });

  const warn = (sent, warnings) => {
    const at = home(sent).closest("section, details");
    at.querySelector(".reread")?.remove();
    if (warnings.length > 0) {
      at.append(element("p", [words.reread, ...warnings].join(" "), { className: "notice notice-careful reread" }));
    }
  };

  // A step with a tap still on its way keeps what the hand said.
  const followStep = (code, answer, cause, waiting = []) => {
    const radios = [...form.querySelectorAll(`input[name="step.${code}"]`)];
    const awaited = waiting.some((one) => `step.${code}` in one.fields || one.fields.clear === code);
    const before = radios.find((radio) => radio.checked)?.value ?? "";
    const card = document.getElementById(`step-${code}`);
    card.querySelector(".cause")?.remove();
    if (cause) {
      card.querySelector(".says").append(element("span", cause, { className: "cause" }));
    }
    if (awaited || before === answer) {
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

  const picks = (name, sentences) => lines(form.querySelector(`[data-picks="${name}"]`), sentences.map(
    (sentence) => element("button", sentence, { type: "submit", className: "pick", name, value: sentence })));

  const followFoot = (answer) => {
    bar.querySelector(".number").textContent = answer.progress;
    bar.querySelector(".verdict").textContent = answer.verdict;
    const list = bar.querySelector("ul") ?? bar.querySelector("[role=status]").appendChild(element("ul", ""));
    lines(list, answer.reasons.map((reason) => {
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

  const follow = (answer, waiting = []) => {
    following = true;
    Object.entries(answer.answers).forEach(([code, said]) => followStep(code, said, answer.causes[code], waiting));
    form.querySelectorAll("details.phase").forEach(followRest);
    followRole(answer);
    followFoot(answer);
    lines(form.querySelector(".recorded"), answer.events.map(eventLine));
    form.querySelector(".none-recorded").hidden = answer.events.length > 0;
    form.querySelectorAll(".pieces").forEach((hint) => { hint.textContent = answer.pieces; });
    picks("strength.pick", answer.strengths);
    picks("nextStep.pick", answer.nextSteps);
    following = false;
  };

  // Fields that no answer to a tap says: only where the page starts from something other than what the server rendered.
  const fill = (sheet) => {
    form.querySelectorAll("[name^='measure.']").forEach((input) => {
      input.value = sheet.measures[input.name.split(".").pop()] ?? "";
    });
    form.elements.strength.value = sheet.strength;
    form.elements.nextStep.value = sheet.nextStep;
  };

  // Puts a step back to what it was, without another tap.
  const restore = (code, answer) => {
    following = true;
    followStep(code, answer);
    following = false;
  };

  return { words, state, notice, button, link, warn, follow, fill, restore, isFollowing: () => following };
};
