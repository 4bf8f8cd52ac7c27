// Shows the two buttons beside a measure and lets them turn it. Without this module the number is typed.
// An empty measure stays empty until the first turn, which starts at the lower end of its range.
const turn = (button) => {
  const input = document.getElementById(button.dataset.for);
  if (input.value === "") {
    input.value = input.min === "" ? "0" : input.min;
  } else if (button.dataset.turn === "1") {
    input.stepUp();
  } else {
    input.stepDown();
  }
  input.dispatchEvent(new Event("input", { bubbles: true }));
  input.dispatchEvent(new Event("change", { bubbles: true }));
};

export const steppers = (root) => {
  for (const button of root.querySelectorAll("button[data-turn]")) {
    button.hidden = false;
    button.addEventListener("click", () => turn(button));
  }
};

steppers(document);
