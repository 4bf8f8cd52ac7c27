// Counts the answers of each phase as they come, and opens the next phase when one is complete. A phase opens below the
// thumb and none closes by itself, so nothing on screen moves. Without this module phases are opened by hand.
//
// The answer is painted first and the phase opened after it: laying one out takes a slow phone a tenth of a second.
const afterPaint = (work) => requestAnimationFrame(() => setTimeout(work));

const count = (phase) => {
  const questions = [...phase.querySelectorAll(".step fieldset")];
  const done = questions.filter((question) => question.querySelector("input[type=radio]:checked")).length;
  phase.querySelectorAll(".ticks i").forEach((tick, at) => tick.classList.toggle("cut", at < done));
  const text = phase.querySelector("[data-progress]");
  text.textContent = text.dataset.progress.replace("{done}", done);
  return done === questions.length;
};

export const phases = (root) => {
  const all = [...root.querySelectorAll("details.phase")];
  all.forEach((phase, at) => {
    phase.addEventListener("change", (event) => {
      if (event.target.type === "radio" && count(phase) && at + 1 < all.length) {
        afterPaint(() => { all[at + 1].open = true; });
      }
    });
  });
};

phases(document);
