// Asks for the phrase of this device in place of the page. Resolves with what it opened; nothing of the page or of another
// person is to be seen before.
import { unlock } from "./vault.js";

const template = () => document.getElementById("lock-screen").content.firstElementChild.cloneNode(true);

const seconds = (milliseconds) => Math.ceil(milliseconds / 1000);

export const lockScreen = (vaults) => new Promise((resolve) => {
  const screen = template();
  const form = screen.querySelector("form");
  const said = screen.querySelector("[role=alert]");
  const choice = form.querySelector("select");
  const button = form.querySelector("button");
  vaults.forEach(({ person, place }) => choice.append(new Option(form.dataset.place.replace("{0}", place), person)));
  choice.closest(".field").hidden = vaults.length === 1;
  const behind = [...document.body.children].filter((one) => one.tagName !== "TEMPLATE" && !one.hidden);
  behind.forEach((one) => { one.hidden = true; });
  document.body.append(screen);
  form.elements.phrase.focus();
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    said.textContent = "";
    button.disabled = true;
    const result = await unlock(choice.value, form.elements.phrase.value);
    form.elements.phrase.value = "";
    button.disabled = false;
    if (result.key) {
      screen.remove();
      behind.forEach((one) => { one.hidden = false; });
      resolve(result);
    } else {
      said.textContent = result.wait > 0 ? form.dataset.wait.replace("{0}", seconds(result.wait)) : form.dataset.wrong;
    }
  });
});
