// Asks once for the phrase that will lock this person's work on this device.
import { longEnough, setUp } from "./vault.js";

export const setUpForm = (words, person) => new Promise((resolve) => {
  const section = document.getElementById("set-up");
  const form = section.querySelector("form");
  const said = section.querySelector("[role=alert]");
  section.hidden = false;
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const { phrase, again } = form.elements;
    const wrong = !longEnough(phrase.value) ? words.short : phrase.value !== again.value ? words.differ : "";
    said.textContent = wrong;
    if (wrong) {
      phrase.focus();
      return;
    }
    const opened = await setUp(person, phrase.value);
    form.reset();
    const safe = await navigator.storage?.persist?.().catch(() => false);
    section.hidden = safe === true;
    form.hidden = true;
    said.textContent = safe === true ? "" : words.evictable;
    resolve(opened);
  });
});
