// @ts-check
/**
 * <df-weather>: an hourly weather file, dropped or chosen, is read by Python and its hours are
 * put on the open job's sheet.
 */
import { ask, start } from "./runtime.js";
import { unitsInUse } from "./calculator.js";
import { jobs, now } from "./store.js";

class Weather extends HTMLElement {
  alive = false;

  connectedCallback() {
    if (this.alive) return;
    this.alive = true;
    const field = this.querySelector("[data-file]");
    field?.addEventListener("click", () => start());
    field?.addEventListener("change", () => {
      if (field instanceof HTMLInputElement && field.files?.[0]) void this.take(field.files[0]);
    });
    for (const name of ["dragover", "drop"]) {
      this.addEventListener(name, (event) => {
        event.preventDefault();
        const file = event instanceof DragEvent && event.type === "drop" ? event.dataTransfer?.files[0] : undefined;
        if (file) void this.take(file);
      });
    }
  }

  /** @param {string} words */
  say(words) {
    const place = this.querySelector("[data-said]");
    if (place) place.textContent = words;
  }

  /** @param {File} file */
  async take(file) {
    this.say(`Reading ${file.name}`);
    const text = await file.text().catch(() => "");
    const request = { text, job: jobs.current?.text ?? null, units: unitsInUse(), at: now() };
    const reply = await ask("weather", request, { key: "weather" }).catch(() => null);
    if (!reply) {
      this.say("The calculator did not start. The file was not read.");
      return;
    }
    if (!reply.ok) {
      this.say(reply.errors.map((/** @type {{message: string}} */ e) => e.message).join(" "));
      return;
    }
    if (!jobs.current) {
      this.say(`${reply.say} Open a job, and choose the file again, to keep it.`);
      return;
    }
    const put = await jobs.apply("put", { facts: reply.facts }, "weather").catch(() => null);
    this.say(put?.ok ? reply.say : `${reply.say} It could not be kept.`);
    jobs.dispatchEvent(new Event("change"));
  }
}

customElements.define("df-weather", Weather);
