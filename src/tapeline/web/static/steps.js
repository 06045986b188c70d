// @ts-check
/** Playing the construction, and lighting what a line comes from and what comes from it.
 * @param {HTMLElement} drawing @param {HTMLElement} told */
export function steps(drawing, told) {
  /** @type {number | undefined} */
  let playing;
  const rows = () => /** @type {HTMLElement[]} */ ([...document.querySelectorAll("#draft .steps li")]);
  /** @param {string} label */
  const marks = (label) => drawing.querySelectorAll(`[data-step="${CSS.escape(label)}"]`);
  function clear() { for (const mark of drawing.querySelectorAll(".asked, .source, .effect")) mark.classList.remove("asked", "source", "effect"); }
  /** @param {string} label */
  function ask(label) {
    clear();
    const row = rows().find((r) => r.dataset.label === label);
    for (const mark of marks(label)) mark.classList.add("asked");
    for (const need of (row?.dataset.needs ?? "").split(" ").filter(Boolean)) for (const mark of marks(need)) mark.classList.add("source");
    for (const other of rows()) if ((other.dataset.needs ?? "").split(" ").includes(label)) for (const mark of marks(other.dataset.label ?? "")) mark.classList.add("effect");
    told.textContent = row ? [`${label.replaceAll("_", " ")}: ${row.querySelector(".says")?.textContent ?? ""}`, ...[...row.querySelectorAll(".how, .formula")].map((p) => p.textContent)].join("\n") : "";
  }
  /** @param {number} number */
  function to(number) {
    const slider = /** @type {HTMLInputElement | null} */ (document.querySelector("#step"));
    if (!slider) return;
    const last = Number(slider.max);
    number = Math.min(Math.max(number, 1), last);
    slider.value = String(number);
    const shown = document.querySelector("#step-number");
    if (shown) shown.textContent = String(number);
    drawing.classList.toggle("points", number < last || /** @type {HTMLInputElement} */ (document.querySelector("#show-points")).checked);
    for (const row of rows()) {
      const at = Number(row.dataset.number), label = row.dataset.label ?? "";
      row.classList.toggle("later", at > number);
      if (at === number) row.setAttribute("aria-current", "step"); else row.removeAttribute("aria-current");
      for (const mark of marks(label)) { mark.classList.toggle("later", at > number); mark.classList.toggle("now", at === number && number < last); }
      if (at === number && number < last) { ask(label); row.scrollIntoView({ block: "nearest" }); }
    }
    const quiet = number < last;
    for (const mark of drawing.querySelectorAll(".cut-line, .cloth, .notch, .grain, .head, g > text")) mark.classList.toggle("later", quiet);
    if (!quiet) clear();
  }
  const number = () => Number(/** @type {HTMLInputElement | null} */ (document.querySelector("#step"))?.value ?? 1);
  function stop() {
    clearInterval(playing); playing = undefined;
    const button = document.querySelector("[data-play=play]");
    if (button) { button.setAttribute("aria-pressed", "false"); button.textContent = "Play"; }
  }
  function play() {
    if (playing) { stop(); return; }
    const slider = /** @type {HTMLInputElement} */ (document.querySelector("#step"));
    if (number() >= Number(slider.max)) to(1);
    const button = document.querySelector("[data-play=play]");
    if (button) { button.setAttribute("aria-pressed", "true"); button.textContent = "Pause"; }
    playing = setInterval(() => { if (number() >= Number(slider.max)) stop(); else to(number() + 1); }, 700);
  }
  return { ask, clear, to, play, stop, number };
}
