/** The job sheet: the list of jobs on this device and the form of the open one. */
import * as engine from "./engine.mjs";
import { download, Letter, Season } from "./jobpapers.mjs";
import * as jobs from "./jobs.mjs";
import { limits } from "./photos_store.mjs";
import { choose, show, system } from "./unitswitch.mjs";

const CHECK_AFTER = 250;
const ARMED = 6000;
const KEPT = "What you typed is kept; it is checked as soon as the computing part runs.";
const TWICE = {
  wipe: "Press again: delete health facts",
  erase: "Press again: delete the job",
};

class Sheet {
  constructor(mount) {
    this.mount = mount;
    const find = (css) => mount.querySelector(css);
    [this.said, this.list, this.open, this.form] = [".job-said", ".job-list", ".job-open", ".job-form"].map(find);
    this.edition = mount.dataset.edition;
    find(".job-static").remove();
    find(".job-live").hidden = false;
    mount.addEventListener("click", (event) => this.click(event));
    this.form.addEventListener("input", (event) => this.input(event));
    this.form.addEventListener("focusout", (event) => this.showError(event.target.closest(".job-field")));
    this.form.addEventListener("submit", (event) => event.preventDefault());
    find(".job-file").addEventListener("change", (event) => this.files(event.target));
    document.addEventListener("handbook:units", () => this.fill());
    this.letter = new Letter(this);
    this.season = new Season(this);
    jobs.listen(async (_id, _foreign, words) => {
      await this.refresh();
      if (words) this.say(words, true);
    });
  }

  async start() {
    show(system());
    await this.refresh();
    document.documentElement.dataset.jobs = "live";
    if (this.record) this.check();
  }

  get id() {
    return this.record?.id;
  }

  say(text, wrong = false) {
    this.said.textContent = text;
    this.said.dataset.wrong = String(wrong);
  }

  fault(error) {
    this.say(engine.status.state === "failed" ? KEPT : `That did not work (${error.message}).`, true);
  }

  /** Read what the device holds and show it; the field being typed in is left alone. */
  async refresh() {
    const id = jobs.openId();
    const was = this.record;
    this.record = id ? await jobs.get(id) : undefined;
    const records = await jobs.all();
    if (!jobs.stored()) this.say(jobs.NO_STORE, true);
    const erased = jobs.erased(id ?? was?.id);
    if (was && !this.record && erased === "elsewhere") {
      this.say(`Deleted in another page: ${jobs.title(was)}`, true);
    } else if (id && !this.record && !erased) {
      this.say("The open job is no longer on this device: this browser has deleted it. A saved file brings it back.", true);
      jobs.setOpen();
    }
    this.list.replaceChildren(...records.map((record) => this.item(record)));
    this.open.hidden = !this.record;
    this.letter.renew(this.record);
    this.season.renew();
    if (this.record) this.fill();
  }

  item(record) {
    const [item, button, when] = ["li", "button", "small"].map((tag) => document.createElement(tag));
    const open = record.id === jobs.openId();
    button.type = "button";
    button.dataset.job = "choose";
    button.dataset.id = record.id;
    button.setAttribute("aria-pressed", String(open));
    button.textContent = jobs.title(record);
    when.textContent = `${open ? "Open, changed" : "Changed"} ${record.touched.slice(0, 10)}`;
    button.append(when);
    item.append(button);
    return item;
  }

  fill() {
    if (!this.record) return;
    for (const rows of this.form.querySelectorAll(".job-rows")) this.rows(rows);
    for (const field of this.form.querySelectorAll(".job-field")) {
      if (!field.contains(document.activeElement)) {
        write(field, this.text(field.dataset.path));
        this.showError(field);
      }
    }
    this.open.querySelector(".job-title").textContent = jobs.title(this.record);
    this.open.querySelector(".job-facts").textContent = `No. ${this.id}`;
    // Written by the worker, every word escaped there.
    this.open.querySelector(".job-calculations").innerHTML = this.record.calculations;
  }

  text(path) {
    const held = this.record.raw[path]?.text ?? this.record.texts[path] ?? "";
    return typeof held === "string" ? held : held[system()];
  }

  /** Show as many rows as the list has entries. */
  rows(list) {
    const { section, most } = list.dataset;
    const count = this.record.job?.[section]?.length ?? 0;
    while (list.children.length > count) list.lastElementChild.remove();
    while (list.children.length < count) {
      const row = list.parentElement.querySelector("template").content.firstElementChild.cloneNode(true);
      number(row, list.children.length + 1);
      list.append(row);
    }
    list.parentElement.querySelector("[data-job=add]").disabled = count >= Number(most);
    list.closest("details").querySelector(".job-count").textContent = count ? ` (${count})` : "";
  }

  input(event) {
    const field = event.target.closest(".job-field");
    if (!field || !this.record) return;
    const entry = { text: read(field), us: system() === "us" };
    const { path } = field.dataset;
    this.record.raw[path] = entry;
    jobs.typing(this.id, path, entry).catch(() => this.say(jobs.NO_STORE, true));
    if (path === "title") this.open.querySelector(".job-title").textContent = jobs.title(this.record);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.check(), CHECK_AFTER);
  }

  async check() {
    try {
      await jobs.sync(this.id, this.edition);
      if (this.said.textContent === KEPT) this.say("");
      await this.refresh();
    } catch (error) {
      this.say(engine.status.state === "failed" ? KEPT : error.message, true);
    }
  }

  /** Say what is wrong beside its field; not in the middle of a word. */
  showError(field) {
    if (!field || !this.record) return;
    const sentence = this.record.raw[field.dataset.path]?.sentence ?? "";
    const place = field.querySelector(".calc-error");
    place.hidden = !sentence;
    place.textContent = sentence;
    for (const input of field.querySelectorAll("input, select, textarea")) {
      if (sentence) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    }
  }

  async click(event) {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.units) choose(button.dataset.units);
    const { job } = button.dataset;
    if (!job || (TWICE[job] && !armed(button))) return;
    try {
      await this[job](button);
    } catch (error) {
      this.fault(error);
    }
  }

  async begin() {
    await jobs.begin();
    await this.refresh();
    if (jobs.stored()) this.say("A new job is open.");
    this.form.querySelector("input").focus();
    this.check();
  }

  async choose(button) {
    jobs.setOpen(button.dataset.id);
    await this.refresh();
    this.say(`Open: ${jobs.title(this.record)}`);
    this.open.scrollIntoView();
    this.check();
  }

  async close() {
    this.say(`Closed: ${jobs.title(this.record)}`);
    jobs.setOpen();
    await this.refresh();
    this.mount.querySelector("[data-job=begin]").focus();
  }

  async add(button) {
    const { section } = button.dataset;
    if (!(await this.done(jobs.change(this.id, { do: "add", section })))) return;
    await this.refresh();
    this.form.querySelector(`[data-section=${section}]`).lastElementChild.querySelector("input, select").focus();
  }

  async drop(button) {
    const row = button.closest(".job-row");
    const list = row.parentElement;
    const place = [...list.children].indexOf(row) + 1;
    if (await this.done(jobs.drop(this.id, list.dataset.section, place))) await this.refresh();
    list.parentElement.querySelector("[data-job=add]").focus();
  }

  now(button) {
    const input = button.parentElement.querySelector("input");
    input.value = jobs.local(new Date());
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }

  async wipe() {
    const health = [...this.form.querySelectorAll("[data-health] [data-path], [data-health][data-path]")];
    const pressed = this.mount.dataset.healthPressed.split(" ");
    const paths = new Set([...health.map((field) => field.dataset.path), ...pressed]);
    if (!(await this.done(jobs.wipe(this.id, (path) => paths.has(path))))) return;
    await this.refresh();
    this.say("Deleted: health facts, reactions to stings, and what was computed from them.");
  }

  async rerun() {
    const reply = await jobs.query(this.id, { do: "rerun" });
    if (await this.done(reply)) this.open.querySelector(".job-differences").innerHTML = reply.html;
  }

  save() {
    return this.file(true);
  }

  send() {
    return this.file(false);
  }

  async file(health) {
    const reply = await jobs.save(this.id, health);
    if (!(await this.done(reply))) return;
    const tick = this.mount.querySelector("[data-photo-pack]");
    if (!tick.hidden && tick.querySelector("input").checked) {
      const { all } = await import("./photos_store.mjs");
      const { pack } = await import("./photos_zip.mjs");
      const pictures = await all(this.id);
      reply.name = reply.name.replace(/json$/, "zip");
      download({ name: reply.name, type: "application/zip", text: pack(reply.text, pictures) });
    } else {
      download({ ...reply, type: "application/json" });
    }
    const words = reply.left.map((path) => this.label(path)).join(", ");
    const left = words && ` Not in the file, as it cannot be read yet: ${words}.`;
    this.say(`Saved as ${reply.name}${health ? ", health facts included" : ", without health facts"}.${left}`);
  }

  copyLetter(button) {
    return this.letter.copy(button);
  }

  shareLetter() {
    return this.letter.share();
  }

  printLetter() {
    return this.letter.print();
  }

  saveRows() {
    return this.season.save("rows");
  }

  saveRecords() {
    return this.season.save("records");
  }

  label(path) {
    return this.form.querySelector(`[data-path="${path}"] .calc-label`)?.firstChild.textContent ?? path;
  }

  async erase() {
    const name = jobs.title(this.record);
    await (await import("./photos_store.mjs")).erase(this.id);
    await jobs.erase(this.id);
    await this.refresh();
    this.say(`Deleted: ${name}`);
    this.mount.querySelector("[data-job=begin]").focus();
  }

  pick() {
    this.mount.querySelector(".job-file").click();
  }

  /** Take in files, one by one; each is judged by the strict reader before anything is stored. */
  async files(input) {
    const told = [];
    let last;
    this.say("Reading …");
    for (const file of [...input.files]) {
      try {
        const taken = (await jobs.all()).map((record) => record.id);
        const largest = Number(this.mount.dataset.largest);
        const zip = (await file.slice(0, 2).text()) === "PK" && (await import("./photos_zip.mjs"));
        const packed = zip && (await zip.unpack(file, { ...limits(this.mount.querySelector("[data-photo-notes]")), longest: largest }));
        const reply = await jobs.read(await signs(packed ? packed.job : file, largest + 1), taken);
        if (reply.ok && packed) await zip.keep(packed.pictures, reply.job);
        if (reply.ok) last = await jobs.adopt(reply);
        if (!reply.ok) told.push(`${file.name}: ${reply.sentence} Nothing was changed.`);
        else told.push(reply.renamed ? `${file.name}: kept beside the job of that number.` : `${file.name}: taken in.`);
      } catch ({ sentence = "could not be read on this device." }) {
        told.push(`${file.name}: ${sentence} Nothing was changed.`);
      }
    }
    input.value = "";
    if (last) jobs.setOpen(last);
    await this.refresh();
    this.say(told.join("\n"), !last);
  }

  /** Whether the answer is good; if not, its one sentence is shown. */
  async done(coming) {
    const reply = await coming;
    if (!reply.ok) this.say(reply.sentence, true);
    return reply.ok;
  }
}

/** What erases wants a second press within a few seconds. */
function armed(button) {
  if (button.dataset.armed) {
    disarm(button);
    return true;
  }
  button.dataset.words = button.textContent;
  button.dataset.armed = "yes";
  button.textContent = TWICE[button.dataset.job];
  setTimeout(() => disarm(button), ARMED);
  return false;
}

function disarm(button) {
  if (!button.dataset.armed) return;
  delete button.dataset.armed;
  button.textContent = button.dataset.words;
}

/** Give a copied row its place: in paths, names and ids. */
function number(row, place) {
  for (const one of row.querySelectorAll("*")) {
    for (const { name, value } of [...one.attributes]) {
      if (name === "data-path" || name === "name") one.setAttribute(name, value.replace(".0.", `.${place}.`));
      else if (/^(id|for|aria-)/.test(name)) one.setAttribute(name, value.replaceAll("-0-", `-${place}-`));
    }
  }
}

/** What stands in a field, as Python takes it. */
function read(field) {
  const radio = field.querySelector("input[type=radio]");
  if (radio) return field.querySelector("input:checked")?.value ?? "";
  const input = field.querySelector("input, select, textarea");
  if (field.dataset.kind !== "moment" || !input.value) return input.value;
  return jobs.stamp(new Date(input.value));
}

function write(field, text) {
  const radios = [...field.querySelectorAll("input[type=radio]")];
  if (radios.length) {
    for (const radio of radios) radio.checked = radio.value === (text || "unknown");
    return;
  }
  const input = field.querySelector("input, select, textarea");
  if (field.dataset.kind === "moment") input.value = text ? jobs.local(new Date(text)) : "";
  else if (input.tagName === "SELECT" && !text) input.selectedIndex = 0;
  else if (input.value !== text) input.value = text;
}

/** The bytes of a file as signs of the same number, no more than the reader takes. */
async function signs(file, most) {
  const bytes = new Uint8Array(await file.slice(0, most).arrayBuffer());
  let text = "";
  for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return text;
}

for (const mount of document.querySelectorAll("[data-job-sheet]")) await new Sheet(mount).start();

// An address may lead to a part of the sheet that was not there yet when the page was opened.
const aimed = document.getElementById(location.hash.slice(1));
aimed?.closest("details")?.setAttribute("open", "");
aimed?.scrollIntoView();
