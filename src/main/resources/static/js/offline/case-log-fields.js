// The answers of a form as texts by name, and what is wrong with them beside the fields, as the server shows it.
const element = (tag, text, properties = {}) => Object.assign(document.createElement(tag), { textContent: text }, properties);

export const answers = (form) => {
  const fields = {};
  for (const [name, value] of new FormData(form)) {
    if (value !== "") {
      (fields[name] ??= []).push(value);
    }
  }
  return fields;
};

const ticks = (control) => control.type === "radio" || control.type === "checkbox";

export const fill = (form, fields) => {
  for (const control of form.elements) {
    const texts = fields[control.name] ?? [];
    if (ticks(control)) {
      control.checked = control.value !== "" && texts.includes(control.value);
    } else if (control.name && control.type !== "hidden") {
      control.value = texts[0] ?? "";
    }
  }
};

const clear = (form) => {
  form.parentElement.querySelector(".error-summary")?.remove();
  form.querySelectorAll(".error").forEach((error) => error.remove());
  for (const control of form.querySelectorAll("[data-wrong]")) {
    control.removeAttribute("aria-invalid");
    control.removeAttribute("data-wrong");
    describe(control, control.getAttribute("aria-describedby").replace(/\S+-error/, ""));
  }
};

const describe = (control, ids) => control.setAttribute("aria-describedby", ids.replace(/\s+/g, " ").trim());

const beside = (form, { field, message }) => {
  const control = form.querySelector(`#${CSS.escape(field)}`);
  if (!control || control.dataset.wrong) {
    return;
  }
  const error = element("p", message, { className: "error", id: `${field}-error` });
  if (control.matches("fieldset")) {
    control.querySelector("legend").after(error);
  } else if (control.matches("section")) {
    control.querySelector("h2").after(error);
  } else {
    control.before(error);
    control.setAttribute("aria-invalid", "true");
  }
  control.dataset.wrong = "true";
  describe(control, `${control.getAttribute("aria-describedby") ?? ""} ${error.id}`);
};

// The address of the page says which case is open, so a line leads to its field by hand.
const line = (form, { field, message }) => {
  const item = element("li", "");
  const control = field && form.querySelector(`#${CSS.escape(field)}`);
  item.append(control ? element("a", message, { href: `#${field}` }) : message);
  item.querySelector("a")?.addEventListener("click", (event) => {
    event.preventDefault();
    control.focus();
    control.scrollIntoView({ block: "center" });
  });
  return item;
};

// reasons: {field, message}, in the order of the form; none clears what was shown.
export const showReasons = (form, reasons) => {
  clear(form);
  if (reasons.length === 0) {
    return;
  }
  const summary = element("div", "", { className: "error-summary", tabIndex: -1 });
  summary.setAttribute("role", "alert");
  const list = element("ul", "");
  list.append(...reasons.map((reason) => line(form, reason)));
  summary.append(element("h2", form.dataset.look), list);
  form.parentElement.prepend(summary);
  reasons.forEach((reason) => beside(form, reason));
  summary.focus();
};
