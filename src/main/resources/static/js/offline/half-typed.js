// Keeps what is being typed while it is no answer yet, so that a lock, a crash or a dead battery in mid-sentence costs
// nothing. It is put back where it stood and goes out like any other answer once the field is left.
const FIELDS = ["strength", "nextStep", "event.action"];
const PAUSE = 300;

const typed = (form) => FIELDS.map((name) => [name, form.elements[name]]);

export const halfTyped = async (form, view, { sheet, store }) => {
  let timer = 0;
  const words = await store.draft(sheet);

  const keep = async () => {
    await store.keepDraft(sheet, words);
    Object.keys(words).forEach((name) => view.state({ fields: { [name]: "" } }, "draft"));
  };

  for (const [name, field] of typed(form)) {
    if (words[name] !== undefined) {
      field.value = words[name];
      field.closest("details:not([open])")?.setAttribute("open", "");
      view.state({ fields: { [name]: "" } }, "draft");
    }
    field.addEventListener("input", () => {
      words[name] = field.value;
      clearTimeout(timer);
      timer = setTimeout(keep, PAUSE);
    });
  }

  // Fields that have become an answer.
  return (fields) => {
    const answered = Object.keys(fields).map((name) => name.replace(".pick", "")).filter((name) => name in words);
    answered.forEach((name) => { delete words[name]; });
    if (answered.length > 0) {
      clearTimeout(timer);
      store.keepDraft(sheet, words);
    }
  };
};
