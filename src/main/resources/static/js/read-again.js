// Beside a text that was not kept because it may point to a patient: one button to send it again as it is. Without this
// module the whole sheet is saved again.
const words = document.getElementById("timer-words").dataset;
const form = document.getElementById("sheet");

const offer = (feedback) => {
  const text = feedback.querySelector("textarea");
  const refused = feedback.querySelector(".save-state")?.dataset.state === "refused";
  const offered = feedback.querySelector(".again");
  if (!refused || text.value === "") {
    offered?.remove();
  } else if (!offered) {
    const button = Object.assign(document.createElement("button"), { type: "button", className: "button again", textContent: words.again });
    button.addEventListener("click", () => text.dispatchEvent(new Event("change", { bubbles: true })));
    text.after(button);
  }
};

for (const feedback of form.querySelectorAll(".feedback")) {
  new MutationObserver(() => offer(feedback)).observe(feedback.querySelector("label"), {
    childList: true, subtree: true, attributes: true, attributeFilter: ["data-state"],
  });
}
