/** The line above a calculator that says which job is open, fills the form from it and feeds it. */
import { listen, change, get, openId, sync, title } from "./jobs.mjs";
import { system } from "./unitswitch.mjs";

const SHEET = new URL("../clients/the_job.html", import.meta.url).href;
const KEEP = "Keep in the job";

export class JobLine {
  constructor(calculator) {
    this.calculator = calculator;
    this.filled = [];
    const line = (this.line = make("div", "", "calc-job"));
    const words = make("p");
    this.name = make("a");
    this.name.href = SHEET;
    this.said = make("small");
    words.append(this.name, this.said);
    this.button = press("fill", "Fill in from the job");
    line.append(words, this.button);
    calculator.form.before(line);
    this.keep = press("store", KEEP);
    calculator.section.querySelector(".calc-tools").prepend(this.keep, " ");
    listen((id) => {
      if (openId() !== this.job.id) location.reload(); // another job, another form
      else if (id === this.job.id) this.renew();
    });
    this.refresh();
    if (this.job.edition !== calculator.edition || Object.keys(this.job.raw).length) this.check();
  }

  get job() {
    return this.calculator.job;
  }

  /** Have what was typed in the job sheet checked, so that this form gets it. */
  async check() {
    try {
      await sync(this.job.id, this.calculator.edition);
    } catch {
      // The calculator itself says when the computing part does not start.
    }
  }

  async renew() {
    const { drafts } = this.job;
    const job = await get(this.job.id).catch(() => undefined);
    if (!job) return;
    const { key } = this.calculator;
    if (drafts[key]) job.drafts[key] ??= drafts[key]; // typed while this was being read
    this.calculator.job = job;
    if (!this.calculator.draft() && this.differs() && this.prefill()) this.calculator.compute();
    else this.refresh();
  }

  given() {
    return Object.entries(this.job.prefills[this.calculator.name] ?? {})
      .map(([name, value]) => [this.calculator.fields.byName(name), value])
      .filter(([field]) => field);
  }

  /** Fields that still hold what the job gave. */
  origins() {
    const { fields } = this.calculator;
    const same = this.given().filter(([field, value]) => texts(fields.read(field)) === texts(value));
    return Object.fromEntries(same.map(([field]) => [field.dataset.input, "job"]));
  }

  differs() {
    const { fields } = this.calculator;
    return this.given().some(([field, value]) => texts(fields.read(field)) !== texts(value));
  }

  /** Write what the job knows into the form; true if it knows anything. */
  fill() {
    const { fields } = this.calculator;
    const given = this.given();
    for (const [field, value] of given) {
      if (typeof value === "string") fields.write(field, value);
      else fields.writePairs(field, value.map((pair) => ({ ...pair, value: pair[system()] })));
    }
    fields.refresh();
    this.filled = given.map(([field]) => field);
    this.refresh();
    return given.length > 0;
  }

  /** Fill a form in which nothing was typed: with what was typed elsewhere, or with shared values. */
  prefill() {
    const typed = this.job.job?.typed?.[this.calculator.name];
    const units = this.job.job?.typed_units === "customary" ? "us" : "si";
    if (!typed || units !== system()) return this.fill();
    for (const [name, text] of Object.entries(typed)) {
      const field = this.calculator.fields.byName(name);
      if (field) this.calculator.fields.write(field, text);
    }
    this.calculator.fields.refresh();
    this.refresh();
    return true;
  }

  refresh() {
    this.name.textContent = `Job: ${title(this.job)}`;
    const words = this.filled.map((field) => field.querySelector(".calc-label").firstChild.textContent);
    this.said.textContent = words.length ? `Filled in from the job: ${words.join(", ")}` : "";
    this.button.hidden = !this.differs();
  }

  /** Write the result into the job, with edition, time and inputs. */
  async store() {
    const { calculator } = this;
    this.keep.disabled = true;
    try {
      const reply = await change(this.job.id, {
        do: "keep",
        name: calculator.name,
        texts: calculator.fields.texts(),
        customary: system() === "us",
        origins: this.origins(),
      });
      if (reply.ok) calculator.say(`Kept in the job “${title(this.job)}”, with its inputs and the time.`);
      else calculator.say(`Not kept. ${reply.sentence}`, true);
      // The sentence stands above the answer; the button is what is being looked at.
      this.keep.textContent = reply.ok ? "Kept" : "Not kept: see above";
      setTimeout(() => (this.keep.textContent = KEEP), 2500);
    } catch (error) {
      calculator.broken(error);
    }
    this.keep.disabled = false;
  }
}

const texts = (value) =>
  [value]
    .flat()
    .map((one) => (typeof one === "string" ? one : one[system()]).trim())
    .filter(Boolean)
    .join(" ");

function make(tag, text = "", css = "") {
  const made = document.createElement(tag);
  made.textContent = text;
  if (css) made.className = css;
  return made;
}

function press(what, words) {
  const button = make("button", words);
  button.type = "button";
  button.dataset.do = what;
  return button;
}
