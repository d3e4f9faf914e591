/** Makes the calculators of a page live: form in, answer out, nothing typed is lost. */
import { copyText } from "./copytext.mjs";
import * as engine from "./engine.mjs";
import { Fields, typed } from "./fields.mjs";
import { JobLine } from "./jobline.mjs";
import * as jobs from "./jobs.mjs";
import { forget, recall, remember } from "./store.mjs";
import { choose, show, system } from "./unitswitch.mjs";

const WHY = {
  wasm: "This browser cannot run the computing part (WebAssembly is missing or switched off).",
  worker: "This browser cannot run the computing part (it does not start module workers).",
  memory: "This device has too little free memory for the computing part; close other pages and try again.",
  fetch: "The computing part could not be fetched; connect once, then it also works without a network.",
  stuck: "The computing part stopped without an answer; your next change starts it again.",
  other: "The computing part did not start, although it was fetched anew: what came is damaged. Try again later.",
};
const STILL = " What stands below is the last answer or the worked example; what you typed is kept.";
const UNKEPT =
  "This browser does not let the page store anything, or has no room left: what you typed is gone when you leave this page.";
const NOT_YOURS = "Not your values yet: the worked example";
const REPEAT_AFTER = 450;
const REPEAT_EVERY = 90;

class LiveCalculator {
  constructor(section, job) {
    this.section = section;
    this.name = section.dataset.calculator;
    // With a job open, a calculator has one form, whichever page it stands in.
    this.key = this.name + (section.dataset.case && !job ? `.${section.dataset.case}` : "");
    this.job = job;
    this.edition = section.dataset.edition;
    this.form = section.querySelector(".calc-form");
    this.out = section.querySelector(".calc-out");
    this.answer = section.querySelector(".calc-answer");
    this.said = section.querySelector(".calc-said");
    this.fields = new Fields(this.form);
    this.example = { html: this.answer.innerHTML, words: section.querySelector(".calc-state").textContent };
    this.shown = false; // an answer to something given, and not the worked example
    this.text = "";
    this.unkept = "";
    this.busy = false;
    this.again = false;
    this.wire();
    if (system() === "us") this.fields.turn("us", {});
    this.fields.refresh();
    if (job) this.line = new JobLine(this);
    if (!this.fromLink()) this.fromDraft();
  }

  wire() {
    this.form.addEventListener("submit", (event) => event.preventDefault());
    this.form.addEventListener("focusin", () => engine.start(), { once: true });
    this.form.addEventListener("pointerdown", () => engine.start(), { once: true });
    this.form.addEventListener("input", (event) => this.input(event));
    this.form.addEventListener("keydown", (event) => this.keydown(event));
    this.form.addEventListener("pointerdown", (event) => this.hold(event));
    this.section.addEventListener("click", (event) => this.click(event));
    document.addEventListener("handbook:units", () => this.turn());
    engine.listen((status, change) => this.progress(status, change));
  }

  input(event) {
    const field = event.target.closest(".calc-field");
    if (!field) return;
    if (this.fields.isList(field)) this.fields.spread(field, event.target, event);
    typed(event.target);
    this.changed();
  }

  keydown(event) {
    if (event.key !== "Enter" || event.target.tagName !== "INPUT") return;
    event.preventDefault();
    const field = event.target.closest(".calc-field");
    if (this.fields.isList(field) && this.fields.nextRow(field, event.target)) {
      this.changed();
      return;
    }
    const inputs = [...this.form.querySelectorAll("input, select")].filter((one) => one.offsetParent);
    inputs[inputs.indexOf(event.target) + 1]?.focus();
  }

  /** A held plus or minus repeats. */
  hold(event) {
    const button = event.target.closest(".calc-step");
    if (!button) return;
    let timer = setTimeout(function more() {
      button.click();
      timer = setTimeout(more, REPEAT_EVERY);
    }, REPEAT_AFTER);
    const stop = () => clearTimeout(timer);
    for (const end of ["pointerup", "pointercancel", "pointerleave"]) {
      button.addEventListener(end, stop, { once: true });
    }
  }

  click(event) {
    const brief = event.target.closest(".calc-brief-text");
    if (brief?.dataset.field) {
      event.preventDefault();
      this.go(brief);
    }
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.units) choose(button.dataset.units);
    else if (button.dataset.step) this.step(button);
    else if (button.classList.contains("calc-ask")) ask(button);
    else if (button.dataset.do) this[button.dataset.do](button);
  }

  step(button) {
    this.fields.step(button);
    this.changed();
  }

  add(button) {
    const input = this.fields.addRow(button.closest(".calc-field"));
    input.focus();
    this.changed();
  }

  remove(button) {
    const field = button.closest(".calc-field");
    this.fields.setRows(field, field.querySelector(".calc-rows").children.length - 1);
    this.changed();
  }

  reset() {
    this.undone = { fields: this.fields.snapshot(), units: system() };
    this.fields.restore(this.fields.original);
    if (system() === "us") this.fields.turn("us", {});
    this.forgetDraft();
    this.section.querySelector("[data-do=undo]").hidden = false;
    this.say("The form is empty.");
    if (this.line?.prefill()) this.compute();
    else this.showExample();
  }

  /** The worked example, which nobody's value enters. */
  showExample() {
    this.fields.showErrors([]);
    this.answer.innerHTML = this.example.html;
    this.shown = false;
    this.text = "";
    this.mark("example", this.example.words);
    this.brief("");
  }

  /** Lead to a field that is still to be filled. */
  go(button) {
    const field = this.fields.byName(button.dataset.field);
    field.scrollIntoView({ block: "center" });
    field.querySelector("input, select")?.focus({ preventScroll: true });
  }

  undo(button) {
    button.hidden = true;
    if (!this.undone) return;
    this.fields.restore(this.undone.fields);
    if (this.undone.units !== system()) this.turn();
    if (this.fields.empty()) {
      this.forgetDraft();
      this.showExample();
    } else this.changed();
    this.say("Your values are back.");
  }

  /** Something was typed or pressed: keep it at once, then compute. */
  changed() {
    if (this.said.dataset.wrong !== "true") this.say("");
    this.fields.refresh();
    this.keep();
    this.line?.refresh();
    this.compute();
  }

  keep() {
    const draft = { edition: this.edition, units: system(), fields: this.fields.snapshot() };
    if (!this.job) {
      this.unkept = remember(`draft.${this.key}`, draft) ? "" : UNKEPT;
      return;
    }
    this.job.drafts[this.key] = draft;
    jobs.keepDraft(this.job.id, this.key, draft).catch(() => this.say(jobs.NO_STORE, true));
  }

  draft() {
    return this.job ? this.job.drafts[this.key] : recall(`draft.${this.key}`);
  }

  forgetDraft() {
    if (!this.job) {
      forget(`draft.${this.key}`);
      return;
    }
    delete this.job.drafts[this.key];
    jobs.keepDraft(this.job.id, this.key, null).catch(() => {});
  }

  fromDraft() {
    const draft = this.draft();
    if (draft?.fields) {
      this.fields.restore(draft.fields);
      this.fromLast(draft.units !== system() ? this.turn() : undefined);
    } else if (this.line?.prefill()) {
      this.fromLast();
    }
  }

  /** Show the last answer where it was for what stands in the form, and compute. */
  fromLast(turned) {
    const last = recall(`answer.${this.key}`);
    const asked = this.asked();
    if (!turned && last && last.edition === this.edition && last.asked === asked) {
      this.showAnswer(last);
    } else {
      this.mark("old", NOT_YOURS);
    }
    if (!turned) this.compute();
  }

  /** Take inputs from the address; Python judges them like typed ones. */
  fromLink() {
    const given = new URLSearchParams(location.hash.slice(1));
    if (given.get("calc") !== this.name || this.section !== aimed(this.name)) return false;
    const draft = this.draft();
    this.undone = { fields: draft?.fields ?? this.fields.original, units: draft?.units ?? "si" };
    this.fields.restore(this.fields.original);
    const units = given.get("units");
    if (units === "us" || units === "si") {
      if (units !== system()) {
        show(units);
        this.fields.turn(units, {});
        document.dispatchEvent(new CustomEvent("handbook:units", { detail: units }));
      }
    }
    const left = [];
    for (const [name, value] of given) {
      if (name === "calc" || name === "units") continue;
      const field = this.fields.byName(name);
      if (field) this.fields.write(field, value.slice(0, 2000));
      else left.push(name.slice(0, 40));
    }
    history.replaceState(null, "", `${location.pathname}${location.search}#${this.section.id}`);
    this.section.querySelector("[data-do=undo]").hidden = false;
    this.showExample();
    this.mark("old", NOT_YOURS);
    this.changed();
    this.say(
      left.length
        ? `Values from a link. Left out, as this calculator does not have it: ${left.join(", ")}.`
        : "Values from a link. “Undo” brings yours back.",
    );
    this.section.scrollIntoView();
    return true;
  }

  asked() {
    return JSON.stringify([this.fields.texts(), system()]);
  }

  /** Compute what stands in the form; while busy, only the newest state waits. */
  async compute() {
    if (this.busy) {
      this.again = true;
      return;
    }
    this.busy = true;
    const began = performance.now();
    const asked = this.asked();
    if (engine.status.state !== "ready" && this.shown) {
      this.mark("old", "Old: for the values before your change");
    }
    try {
      const reply = await engine.ask({
        op: "run",
        name: this.name,
        texts: this.fields.texts(),
        customary: system() === "us",
        origins: this.line?.origins(),
      });
      if (reply.ok) this.accept(reply, asked);
      else this.refuse(reply.errors);
      const { ok, complete, results, seconds: inside } = reply;
      const detail = { ok, complete, results, milliseconds: performance.now() - began, inside };
      this.section.dispatchEvent(new CustomEvent("calculator:answer", { detail, bubbles: true }));
    } catch (error) {
      this.broken(error);
    }
    this.busy = false;
    if (this.again) {
      this.again = false;
      this.compute();
    }
  }

  accept(reply, asked) {
    this.fields.showErrors([]);
    if (this.unkept || this.said.dataset.wrong === "true") this.say(this.unkept, Boolean(this.unkept));
    const { complete, state, html, text, brief, next } = reply;
    const last = { edition: this.edition, asked, complete, state, html, text, brief, next };
    this.showAnswer(last);
    clearTimeout(this.keeping);
    this.keeping = setTimeout(() => remember(`answer.${this.key}`, last), 150);
  }

  showAnswer(last) {
    const open = this.answer.querySelector(".answer-sources")?.open;
    this.answer.innerHTML = last.html;
    this.shown = true;
    const sources = this.answer.querySelector(".answer-sources");
    if (open && sources) sources.open = true;
    this.text = last.text;
    this.mark(last.complete ? "live" : "waiting", last.state);
    this.brief(last.brief, false, last.next);
  }

  refuse(errors) {
    const rest = this.fields.showErrors(errors);
    this.say(rest.join(" "), rest.length > 0);
    this.mark("old", this.shown ? "Old: for the values before the mistake" : NOT_YOURS);
    this.brief(errors[0].sentence, true);
  }

  broken(error) {
    this.say((WHY[error.message] ?? WHY.other) + STILL, true);
    this.mark("old", this.shown ? "Old: for the values before your change" : NOT_YOURS);
  }

  /** Say in a word and a colour how far the shown answer belongs to the form. */
  mark(state, words) {
    this.out.dataset.state = state;
    this.section.querySelector(".calc-state").textContent = words;
  }

  /** The answer in a line; while it waits, a press leads to the field that is to be filled next. */
  brief(text, wrong = false, next = "") {
    const bar = this.section.querySelector(".calc-brief");
    bar.hidden = !text;
    bar.dataset.wrong = String(wrong || text.startsWith("STOP:"));
    bar.firstElementChild.textContent = text;
    bar.firstElementChild.dataset.field = next;
  }

  say(text, wrong = false) {
    this.said.textContent = text;
    this.said.dataset.wrong = String(wrong);
  }

  progress(status, change) {
    const bar = this.section.querySelector(".calc-progress");
    bar.hidden = status.state !== "starting";
    if (status.state === "starting") {
      const [gauge, words] = [bar.querySelector("progress"), bar.querySelector("span")];
      if (status.total) {
        gauge.value = Math.min(status.done / status.total, 1);
        words.textContent = `Getting the computing part, ${megabytes(status.download)} once …`;
      } else {
        gauge.removeAttribute("value");
        words.textContent = "Starting …";
      }
    }
    if (change.state === "failed") {
      this.say((WHY[status.why] ?? WHY.other) + STILL, true);
    }
  }

  /** Follow the page's unit system: known texts at once, typed ones through Python. */
  async turn() {
    const units = system();
    const missing = this.fields.known(units);
    if (Object.keys(missing).length === 0) {
      this.fields.turn(units, {});
      this.afterTurn();
      return;
    }
    try {
      const converted = await engine.ask({
        op: "convert",
        name: this.name,
        texts: missing,
        customary: units === "us",
      });
      if (units === system()) this.fields.turn(units, converted);
    } catch (error) {
      this.broken(error);
    }
    this.afterTurn();
  }

  afterTurn() {
    if (this.draft()) this.keep();
    // A figure is drawn in one unit system; the worked example holds both.
    if (this.out.dataset.state !== "example") this.compute();
  }

  store() {
    return this.line.store();
  }

  fill() {
    if (this.line.fill()) this.changed();
  }

  async copy(button) {
    const text = this.text || this.answer.innerText;
    await copyText(text, button);
  }

  async link(button) {
    const given = new URLSearchParams({ calc: this.name });
    const left = [];
    for (const field of this.fields.fields) {
      if (field.hidden) continue;
      if (field.dataset.health) {
        left.push(field.querySelector(".calc-label").firstChild.textContent);
        continue;
      }
      const value = this.fields.read(field);
      const text = Array.isArray(value) ? value.filter((one) => one.trim()).join(" ") : value;
      if (text) given.set(field.dataset.input, text);
    }
    if (this.section.querySelector(".calc-switch")) given.set("units", system());
    const url = new URL(location.href);
    url.hash = given.toString();
    if (left.length) this.say(`Left out of the link, as it tells of someone's health: ${left.join(", ")}.`);
    await copyText(url.href, button);
  }
}

/** The section of a page that takes the values of a link: one without a case, else the first. */
function aimed(name) {
  const all = [...document.querySelectorAll(".calculator")].filter((one) => one.dataset.calculator === name);
  return all.find((one) => !one.dataset.case) ?? all[0];
}

function ask(button) {
  const help = document.getElementById(button.getAttribute("aria-controls"));
  help.hidden = !help.hidden;
  button.setAttribute("aria-expanded", String(!help.hidden));
}

function megabytes(bytes) {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}

const job = await jobs.openJob();
const live = [...document.querySelectorAll(".calculator")].map((one) => new LiveCalculator(one, job));
addEventListener("hashchange", () => live.some((one) => one.fromLink()));
document.documentElement.dataset.calculators = "live";
(self.requestIdleCallback ?? setTimeout)(() => engine.prepare());
