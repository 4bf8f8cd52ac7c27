// Reads what a hand does on the score sheet into the fields of taps. tap(fields, {done, refused}) takes each of them;
// review() is asked for by the button at the foot.
export const sheetHands = (form, view, tap, review) => {
  const recordEvent = (button) => {
    const fields = { "event.code": "", "event.step": button.value, "event.action": form.elements["event.action"].value };
    for (const name of ["event.code", "event.reason"]) {
      const chosen = form.querySelector(`input[name="${name}"]:checked`);
      // A reason chosen for a takeover and left behind when another event was chosen does not go with it.
      if (chosen && (name === "event.code" || fields["event.code"] === "TAKEOVER")) {
        fields[name] = chosen.value;
      }
    }
    tap(fields, { done: emptyEvent });
  };

  const emptyEvent = () => {
    form.querySelectorAll("input[name^='event.'][type=radio]").forEach((radio) => { radio.checked = false; });
    form.elements["event.action"].value = "";
    form.querySelector(".add-event").open = false;
  };

  const pick = (button) => {
    const field = button.name.replace(".pick", "");
    form.elements[field].value = button.value;
    tap({ [field]: button.value });
  };

  // A refused answer goes back to what is stored; the reason stays beside it.
  const answerStep = (radio) => {
    const saved = radio.closest(".step").dataset.saved ?? "";
    tap({ [radio.name]: radio.value }, {
      done: () => { radio.closest(".step").dataset.saved = radio.value; },
      refused: () => view.restore(radio.name.slice("step.".length), saved),
    });
  };

  const confirmRole = (radio) => {
    const chosen = ["part", "supervision"].map((name) => [name, form.querySelector(`input[name=${name}]:checked`)?.value]);
    if (chosen.every(([, value]) => value)) {
      tap(Object.fromEntries(chosen));
    }
  };

  form.addEventListener("change", (event) => {
    const control = event.target;
    if (view.isFollowing()) {
      return;
    }
    if (control.name.startsWith("step.")) {
      answerStep(control);
    } else if (control.name === "part" || control.name === "supervision") {
      confirmRole(control);
    } else if (control.name.startsWith("measure.") || control.name === "strength" || control.name === "nextStep") {
      tap({ [control.name]: control.value });
    }
  });


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
      tap({ [button.name]: button.value });
    }
  });

  for (const card of form.querySelectorAll(".step")) {
    card.dataset.saved = card.querySelector("input[type=radio]:checked")?.value ?? "";
  }
  form.querySelector(".save").hidden = true;
};
