// A clock beside each measure of time. Its start is kept on this device, so it runs on through a locked screen, a
// reload and a dead network; stopping it fills the measure, to the second. Without this module the time is typed.
const words = document.getElementById("timer-words").dataset;
const SECOND = 1000;
const MINUTE = 60;

const place = (input) => `scrubline.timer.${location.pathname}.${input.id}`;

// A browser that keeps nothing still runs the clock until the page is left.
const memory = new Map();
const kept = {
  read: (key) => { try { return localStorage.getItem(key); } catch { return memory.get(key) ?? null; } },
  write: (key, value) => { try { localStorage.setItem(key, value); } catch { memory.set(key, value); } },
  remove: (key) => { try { localStorage.removeItem(key); } catch { memory.delete(key); } },
};

const fill = (text, ...values) => values.reduce((all, value, at) => all.replace(`{${at}}`, value), text);
const reading = (seconds) => fill(words.time, Math.floor(seconds / MINUTE), String(seconds % MINUTE).padStart(2, "0"));
const element = (tag, properties) => Object.assign(document.createElement(tag), properties);

const clock = (input) => {
  const inMinutes = input.dataset.unit === "min";
  const label = document.querySelector(`label[for="${input.id}"]`).firstChild.textContent.trim();
  const button = element("button", { type: "button", className: "button" });
  const shown = element("span", { className: "elapsed" });
  const said = element("span", { className: "visually-hidden" });
  shown.setAttribute("role", "timer");
  said.setAttribute("role", "status");
  let ticking = 0;

  const name = (verb) => button.replaceChildren(verb, element("span", { className: "visually-hidden", textContent: fill(words.of, label) }));
  const elapsed = () => Math.max(0, Math.round((Date.now() - Date.parse(kept.read(place(input)))) / SECOND));
  const tick = () => { shown.textContent = reading(elapsed()); };

  const run = () => {
    name(words.stop);
    tick();
    ticking = setInterval(tick, SECOND);
  };

  const rest = () => {
    name(words.start);
    const value = Number(input.value);
    shown.textContent = inMinutes && input.value !== "" ? reading(Math.round(value * MINUTE)) : "";
  };

  const stop = () => {
    const seconds = elapsed();
    clearInterval(ticking);
    kept.remove(place(input));
    input.value = inMinutes ? String(Math.round(seconds / MINUTE * 1000) / 1000) : String(seconds);
    input.dispatchEvent(new Event("input", { bubbles: true }));
    input.dispatchEvent(new Event("change", { bubbles: true }));
    rest();
    said.textContent = fill(words.filled, reading(seconds));
  };

  const start = () => {
    kept.write(place(input), new Date().toISOString());
    run();
    said.textContent = words.running;
  };

  button.addEventListener("click", () => (kept.read(place(input)) ? stop() : start()));
  input.addEventListener("change", () => { if (!kept.read(place(input))) { rest(); } });
  const row = element("span", { className: "timer" });
  row.append(shown, button, said);
  input.closest(".measure").append(row);
  if (kept.read(place(input))) {
    for (let part = input.closest("details"); part; part = part.parentElement.closest("details")) {
      part.open = true;
    }
    run();
  } else {
    rest();
  }
};

document.querySelectorAll(".stepper input[data-unit=min], .stepper input[data-unit=s]").forEach(clock);
