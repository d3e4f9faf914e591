/** What is made from jobs on the sheet: a letter from the open one, the season from all. */
import { copyText } from "./copytext.mjs";
import * as jobs from "./jobs.mjs";
import { recall, remember } from "./store.mjs";
import { system } from "./unitswitch.mjs";

/** Renews what an open section shows; while one answer is coming, only the newest state waits. */
class Part {
  constructor(sheet, name) {
    this.sheet = sheet;
    this.part = sheet.mount.querySelector(`[data-part=${name}]`);
    this.part.addEventListener("toggle", () => this.show());
    document.addEventListener("handbook:units", () => this.show());
  }

  async show() {
    if (!this.part.open) return;
    this.again = this.busy;
    if (this.busy) return;
    this.busy = true;
    try {
      await this.make();
    } catch (error) {
      this.sheet.fault(error);
    }
    this.busy = false;
    if (this.again) this.show();
  }
}

export class Letter extends Part {
  constructor(sheet) {
    super(sheet, "letter");
    this.place = this.part.querySelector(".job-letter");
    this.cautions = this.part.querySelector(".job-cautions");
    this.bar = this.part.querySelector(".job-letter-bar");
    this.figures = this.part.querySelector(".job-figures");
    this.pictures = [];
    this.part.querySelector("[data-job=shareLetter]").hidden = !navigator.share;
    this.choices = [...this.part.querySelectorAll("[data-letter]")];
    const chosen = recall("job.letter") ?? {};
    for (const select of this.choices) {
      const known = [...select.options].some((one) => one.value === chosen[select.dataset.letter]);
      if (known) select.value = chosen[select.dataset.letter];
      select.addEventListener("change", () => this.chosen());
    }
  }

  get asked() {
    return Object.fromEntries(this.choices.map((one) => [one.dataset.letter, one.value]));
  }

  chosen() {
    remember("job.letter", this.asked);
    this.show();
  }

  /** Follow the open job; what was written for another one is taken away at once. */
  renew(record) {
    if (record?.id !== this.id) {
      this.fill("", "");
      this.hang([]);
    }
    this.id = record?.id;
    if (record) this.show();
  }

  async make() {
    const { id } = this;
    if (!id) return;
    const record = await jobs.sync(id);
    if (!record) return;
    const reply = await jobs.query(id, {
      do: "letter",
      ...this.asked,
      today: jobs.local(new Date(), 10),
      clocks: clocks(record),
      customary: system() === "us",
    });
    const asked = reply.pictures ?? [];
    const pictures = asked.length ? await (await import("./photos_store.mjs")).files(id, asked) : [];
    if (id !== this.id) return;
    this.fill(reply.text ?? "", reply.html ?? "", this.asked.language);
    this.hang(pictures);
    if (!reply.ok) this.sheet.say(reply.sentence, true);
  }

  fill(text, cautions, language = "") {
    this.bar.hidden = this.place.hidden = !text;
    if (this.place.textContent !== text) this.place.textContent = text;
    this.place.lang = language;
    // Written by the worker, every word escaped there; told anew only where it has changed.
    if (this.told !== cautions) this.cautions.innerHTML = cautions;
    this.told = cautions;
  }

  /** Show the pictures that go with the letter. */
  hang(pictures) {
    for (const image of this.figures.querySelectorAll("img")) URL.revokeObjectURL(image.src);
    this.pictures = pictures;
    this.figures.replaceChildren(...pictures.map(figure));
  }

  copy(button) {
    return copyText(this.place.textContent, button);
  }

  async share() {
    const text = this.place.textContent;
    const files = this.pictures.map(({ file }) => file);
    const along = files.length > 0 && navigator.canShare?.({ files });
    if (files.length && !along) this.sheet.say("This device shares the text alone: print the letter for its pictures.");
    try {
      await navigator.share({ title: text.split("\n", 1)[0], text, ...(along && { files }) });
    } catch (error) {
      if (error.name !== "AbortError") throw error;
    }
  }

  /** Print the letter alone: the style sheet hides all else while it stands in the page. */
  async print() {
    document.querySelector(".job-paper")?.remove();
    const paper = document.createElement("div");
    paper.className = "job-paper";
    paper.lang = this.place.lang;
    paper.textContent = this.place.textContent;
    if (this.pictures.length) paper.append(this.figures.cloneNode(true));
    document.body.append(paper);
    addEventListener("afterprint", () => paper.remove(), { once: true });
    for (const image of paper.querySelectorAll("img")) await image.decode();
    self.print();
  }
}

function figure({ file, caption, alt }) {
  const [made, image, words] = ["figure", "img", "figcaption"].map((tag) => document.createElement(tag));
  image.src = URL.createObjectURL(file);
  image.alt = alt;
  words.textContent = caption;
  made.append(image, words);
  return made;
}

export class Season extends Part {
  constructor(sheet) {
    super(sheet, "season");
    this.place = this.part.querySelector(".job-season");
  }

  renew() {
    this.show();
  }

  async ask() {
    const texts = [];
    for (const held of await jobs.all()) {
      // What one job holds back must not hold back the others.
      const record = await jobs.sync(held.id).catch(() => held);
      if (record?.job) texts.push(JSON.stringify(record.job));
    }
    return jobs.season(texts);
  }

  async make() {
    const reply = await this.ask();
    // Written by the worker, every word escaped there.
    if (reply.html !== this.told) this.place.innerHTML = reply.html;
    this.told = reply.html;
  }

  async save(kind) {
    const { files } = await this.ask();
    download(files[kind]);
    this.sheet.say(`Saved as ${files[kind].name}.`);
  }
}

/** Hand a text, or bytes, out as a file. */
export function download({ name, type, text }) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

function clocks(record) {
  const { arrive, leave } = record.job.visit ?? {};
  const known = Object.entries({ arrive, leave }).filter(([, moment]) => moment);
  return Object.fromEntries(known.map(([name, moment]) => [name, jobs.local(new Date(moment)).slice(11)]));
}
