/** The pictures of the open job: taken or chosen, kept on the device, put in order, given words. */
import * as jobs from "./jobs.mjs";
import * as store from "./photos_store.mjs";

const CHECK_AFTER = 250;
const LAST = 1000; // a place behind every list
const WAITS = "It is kept; its words can be typed as soon as the computing part runs.";

class Notes {
  constructor(mount) {
    const find = (css) => mount.querySelector(css);
    this.mount = mount;
    [this.none, this.open, this.said, this.list, this.dialog, this.undone] =
      [".photo-none", ".photo-open", ".photo-said", ".photo-list", "dialog", "[data-photo=undo]"].map(find);
    this.limits = store.limits(mount);
    this.cards = new Map();
    find(".photo-static").remove();
    find(".photo-live").hidden = false;
    mount.addEventListener("click", (event) => this.click(event));
    mount.addEventListener("input", (event) => this.input(event));
    mount.addEventListener("change", ({ target }) => target.files && this.add(target));
    jobs.listen(() => this.refresh());
  }

  async start() {
    await this.refresh();
    if (this.id && !this.denied) await this.join(this.id).catch(() => {});
  }

  say(text, wrong = false) {
    this.said.textContent = text;
    this.said.dataset.wrong = String(wrong);
  }

  fault(error) {
    this.say(`That did not work (${error.message}).`, true);
  }

  /** Show what the device holds, one telling after the other. */
  refresh() {
    this.turn = Promise.resolve(this.turn).then(() => this.show()).catch((error) => this.fault(error));
    return this.turn;
  }

  async show() {
    const open = jobs.openId();
    const record = open && (await jobs.get(open).catch(() => undefined));
    if (record?.id !== this.id) this.leave();
    this.record = record;
    this.id = record?.id;
    this.none.hidden = Boolean(record);
    this.open.hidden = !record;
    if (!record) return;
    const kept = await store.names(this.id).catch(() => this.deny());
    const listed = record.job?.photos ?? [];
    const fresh = kept.filter((name) => !listed.some((one) => one.name === name));
    const entries = [...listed, ...fresh.map((name) => ({ name }))];
    for (const [name, card] of this.cards) if (!entries.some((one) => one.name === name)) this.put(name, card);
    for (const [at, { name }] of entries.entries()) {
      const card = this.cards.get(name) ?? this.card(name);
      if (!card.bytes && kept.includes(name)) await this.picture(card);
      if (this.list.children[at] !== card) this.list.insertBefore(card, this.list.children[at] ?? null);
      this.fill(card, at + 1, at >= listed.length, entries.length);
    }
    this.sum(entries.length);
  }

  deny() {
    this.denied = true;
    for (const button of this.mount.querySelectorAll("[data-photo=pick]")) button.disabled = true;
    this.say("This browser does not let the page store pictures. Take them with the phone's camera.", true);
    return [];
  }

  leave() {
    for (const [name, card] of this.cards) this.put(name, card);
    this.gone = undefined;
    this.undone.hidden = true;
    if (!this.denied) this.say("");
  }

  put(name, card) {
    URL.revokeObjectURL(card.url);
    card.remove();
    this.cards.delete(name);
  }

  card(name) {
    const card = this.mount.querySelector("template").content.firstElementChild.cloneNode(true);
    card.dataset.name = name;
    this.cards.set(name, card);
    return card;
  }

  async picture(card) {
    const kept = await store.get(this.id, card.dataset.name);
    if (!kept) return;
    card.bytes = kept.bytes.byteLength;
    card.url = card.querySelector("img").src = URL.createObjectURL(store.blob(kept));
  }

  fill(card, place, fresh, count) {
    const part = (css) => card.querySelector(css);
    card.place = place;
    part(".photo-thumb").hidden = !card.url;
    part(".photo-thumb").setAttribute("aria-label", `Picture ${place}, larger`);
    part(".photo-gone").hidden = Boolean(card.url);
    part(".photo-new").hidden = !fresh;
    part(".photo-facts").hidden = fresh;
    part("[data-by='-1']").disabled = place === 1;
    part("[data-by='1']").disabled = place === count;
    const [kind, caption, use] = ["kind", "caption", "use_in_report"].map((name) => this.held(place, name));
    const set = (name, key, value) => {
      const field = part(`[data-field=${name}]`);
      if (field !== document.activeElement) field[key] = value;
    };
    set("kind", "value", kind.text || "unknown");
    set("caption", "value", caption.text);
    set("use_in_report", "checked", use.text ? use.text === "yes" : this.limits.usual.includes(kind.text));
    const error = part(".calc-error");
    error.textContent = caption.sentence ?? "";
    error.hidden = !caption.sentence;
  }

  /** What was typed, or what the job holds. */
  held(place, name) {
    const path = `photos.${place}.${name}`;
    return this.record.raw[path] ?? { text: this.record.texts[path] ?? "" };
  }

  sum(count) {
    const bytes = [...this.cards.values()].reduce((whole, card) => whole + (card.bytes ?? 0), 0);
    this.mount.querySelector(".photo-sum").textContent = `${count} of ${this.limits.most} pictures, ${store.megabytes(bytes)}`;
    const told = this.mount.closest("details")?.querySelector(".job-count");
    if (told) told.textContent = count ? ` (${count})` : "";
    const tick = document.querySelector("[data-photo-pack]");
    if (tick) tick.hidden = !bytes;
  }

  async add(input) {
    const { id } = this;
    const told = [];
    for (const file of [...input.files]) {
      this.say(`Reading ${file.name} …`);
      const why = await this.keep(id, file);
      if (why) told.push(`“${file.name}” was not kept: ${why}`);
      await this.refresh();
    }
    input.value = "";
    this.say(told.join("\n"), told.length > 0);
    try {
      await this.join(id);
    } catch {
      if (!told.length) this.say(WAITS);
    }
  }

  /** Keep one picture; returns why it was not kept. */
  async keep(id, file) {
    if (this.cards.size >= this.limits.most) return `a job takes ${this.limits.most} pictures.`;
    let bytes;
    try {
      bytes = await store.shrink(file, this.limits);
    } catch {
      return "this browser cannot read it as a picture. Save it as JPEG or PNG and choose it again.";
    }
    const name = `${new Date().toISOString().replace(/\D/g, "")}.jpg`;
    try {
      await store.put([{ job: id, name, bytes, kind: this.mount.dataset.kind, added: jobs.now() }]);
    } catch (error) {
      if (error && error.name !== "QuotaExceededError") return "this browser does not let the page store it.";
      const free = await store.room();
      return `the device has no room for it${free === undefined ? "" : ` (about ${store.megabytes(free)} left)`}. Nothing else was changed.`;
    }
    return "";
  }

  /** Have the record list what the device keeps and a killed page has not told it yet. */
  async join(id) {
    const listed = (await jobs.sync(id))?.job.photos ?? [];
    for (const { name, bytes, kind, added } of await store.all(id)) {
      const entry = { name, bytes: bytes.byteLength, kind, added };
      if (!listed.some((one) => one.name === name)) await this.arrange(id, name, LAST, entry);
    }
  }

  /** Put a picture at a place of the list; what was typed moves along. */
  async arrange(id, name, to, entry) {
    const reply = await jobs.change(id, { do: "photo", name, to, entry }, (held, { places }) => {
      const moved = Object.entries(held.raw).map(([path, typed]) => {
        const [head, at, field] = path.split(".");
        if (head !== "photos") return [path, typed];
        return [`photos.${places.indexOf(Number(at)) + 1}.${field}`, typed];
      });
      held.raw = Object.fromEntries(moved.filter(([path]) => !path.startsWith("photos.0.")));
    });
    if (!reply.ok) this.say(reply.sentence, true);
    await this.refresh();
    return reply.ok;
  }

  input({ target: field }) {
    if (!field.dataset.field) return;
    const text = field.type === "checkbox" ? (field.checked ? "yes" : "no") : field.value.replaceAll("\n", " ");
    const { id } = this;
    jobs.typing(id, `photos.${field.closest("li").place}.${field.dataset.field}`, { text, us: false }).catch(() => this.say(jobs.NO_STORE, true));
    clearTimeout(this.timer);
    this.timer = setTimeout(() => jobs.sync(id).then(() => this.refresh(), () => this.say(WAITS)), CHECK_AFTER);
  }

  async click(event) {
    const button = event.target.closest("[data-photo]");
    if (!button) return;
    try {
      await this[button.dataset.photo](button, button.closest("li"));
    } catch (error) {
      this.fault(error);
    }
  }

  pick(button) {
    button.nextElementSibling.click();
  }

  view(_button, card) {
    const [kind, caption] = card.querySelectorAll("[data-field]");
    const alt = [kind.selectedOptions[0].text, caption.value].filter(Boolean).join(": ");
    const [image, words] = this.dialog.children;
    Object.assign(image, { src: card.url, alt });
    words.textContent = alt;
    this.dialog.showModal();
  }

  shut() {
    this.dialog.close();
  }

  async move(button, card) {
    await this.arrange(this.id, card.dataset.name, card.place + Number(button.dataset.by));
    (button.disabled ? card.querySelector("[data-by]:enabled") : button)?.focus();
  }

  /** Take a picture out; this page holds it until the next one goes or the page is left. */
  async drop(_button, { dataset: { name } }) {
    const { id } = this;
    const { job, raw } = await jobs.sync(id);
    const at = job.photos.findIndex((one) => one.name === name);
    const typed = raw[`photos.${at + 1}.caption`];
    this.gone = { id, place: at + 1, entry: job.photos[at], typed, kept: await store.get(id, name) };
    await store.remove(id, name);
    this.undone.hidden = false;
    if (await this.arrange(id, name, 0)) this.say("The picture is deleted.");
    this.undone.focus();
  }

  async undo() {
    const { id, place, entry, typed, kept } = this.gone;
    if (kept) await store.put([kept]);
    await this.arrange(id, entry.name, place, entry);
    if (typed) await jobs.typing(id, `photos.${place}.caption`, typed);
    this.gone = undefined;
    this.undone.hidden = true;
    this.say("The picture is back.");
    await this.refresh();
    this.cards.get(entry.name)?.querySelector("[data-photo=drop]").focus();
  }
}

for (const mount of document.querySelectorAll("[data-photo-notes]")) await new Notes(mount).start();
document.documentElement.dataset.photos = "live";
