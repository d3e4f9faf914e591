/**
 * The pages of the visit. Every press is kept in the open job at once, as a moment or a list of
 * keys; each clock is the distance to a stored moment, so it goes on while no page is open.
 */
import * as jobs from "./jobs.mjs";
import { buzz, forget, recall, remember } from "./store.mjs";

const CHECK_AFTER = 250;
const MINUTE = 60_000;
const LOOK = "First the list of stops: press the one that is here, or “None found”.";
const NO_NUMBER = "cannot be read; allowed is a number of minutes such as 10.";

const mount = document.querySelector("[data-visit]");
const step = mount.dataset.visit;
const steps = JSON.parse(mount.dataset.steps);
const longest = Number(mount.dataset.longest);
const signs = JSON.parse(document.querySelector(".visit-list")?.dataset.signs ?? "{}");
const keys = Object.keys(steps);
const stops = [...document.querySelectorAll(".visit-stops > li")];
const find = (css) => document.querySelector(css);
const input = (name) => mount.querySelector(`[data-visit-in=${name}]`);
const turn = find(".visit-turn");
const main = turn?.querySelector("button");

let record;
let undo;
let timer;
let pressed = {};
const unsaved = {}; // what the device did not take stays on the screen

const text = (path) => record?.raw[path]?.text ?? record?.texts[path] ?? "";
const at = (name, key = step) => `progress.${key}_${name}`;
const list = (name, key = step) => text(at(name, key)).split("\n").filter(Boolean);
const here = (key = step) => [...list("stops", key), ...list("health", key)];
const hour = (moment) => new Date(moment).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" });
const believed = (gone) => gone >= 0 && gone <= longest;

function moment(name, key = step) {
  const held = text(at(name, key));
  return held ? Date.parse(held) : undefined;
}

/** How long from one moment to another, in words; a clock that was set is said, not counted. */
function span(from, to = Date.now()) {
  return believed(to - from) ? `${Math.floor((to - from) / MINUTE)} min` : "check the times";
}

function state(key) {
  const touched = (one) => moment("begun", one) ?? moment("done", one);
  if (here(key).length) return "stopped";
  if (moment("done", key)) return "done";
  if (moment("begun", key)) return "on";
  return keys.slice(keys.indexOf(key) + 1).some(touched) ? "skipped" : "";
}

/** Steps that were begun and not ended, the last begun on top. */
const under = () =>
  keys.filter((key) => state(key) === "on").sort((one, other) => moment("begun", other) - moment("begun", one));

function words(key) {
  const [begun, done] = [moment("begun", key), moment("done", key)];
  const took = begun && done ? `, ${span(begun, done)}` : "";
  return {
    stopped: `Stopped: ${here(key).map((one) => signs[one] ?? one).join("; ")}`,
    done: `Done ${done && hour(done)}${took}`,
    on: `Under way since ${begun && hour(begun)}, ${begun && span(begun)}`,
    skipped: "Skipped",
    "": "Not yet",
  }[state(key)];
}

function say(words, wrong = false) {
  const said = find(".visit-said");
  said.textContent = words;
  said.dataset.wrong = wrong;
}

/** Keep what was pressed; the same again takes it back. */
function keep(changes) {
  undo = Object.fromEntries(Object.keys(changes).map((path) => [path, text(path)]));
  buzz(20);
  say("");
  find(".visit-look").textContent = "";
  for (const [path, value] of Object.entries(changes)) {
    const entry = (record.raw[path] = pressed[path] = { text: value, us: false });
    jobs.typing(record.id, path, entry).catch(() => {
      unsaved[path] = entry;
      say(jobs.NO_STORE, true);
    });
  }
  draw();
  clearTimeout(timer);
  timer = setTimeout(check, CHECK_AFTER);
}

/** Have Python take the presses into the job; until it runs they stay as pressed. */
const check = () => jobs.sync(record.id, mount.dataset.edition).catch(() => {});

/** Read the open job anew; what is pressed while it is read is not in what was read. */
async function refresh() {
  const since = (pressed = { ...unsaved });
  const id = jobs.openId();
  const found = id && (await jobs.get(id).catch(() => (record?.id === id ? record : undefined)));
  if (since !== pressed) return; // a newer reading is on its way
  record = found;
  if (record) Object.assign(record.raw, pressed);
  draw();
}

const doing = {
  async open() {
    try {
      const id = await jobs.begin();
      if (step) await jobs.typing(id, at("begun"), { text: jobs.now(), us: false });
      if (step === keys[0]) await jobs.typing(id, "visit.date", { text: jobs.local(new Date(), 10), us: false });
      location.reload(); // the calculators of the page are filled from the job, too
    } catch {
      say(jobs.NO_STORE, true);
    }
  },
  press() {
    if (!record) return doing.open();
    if (!moment("begun")) {
      const day = step === keys[0] && !text("visit.date");
      return keep({ [at("begun")]: jobs.now(), ...(day && { "visit.date": jobs.local(new Date(), 10) }) });
    }
    if (!moment("looked") && !here().length) {
      find(".visit-look").textContent = LOOK;
      return find(".visit-none button").focus();
    }
    keep({ [at("done")]: jobs.now(), [at("rings")]: "" });
  },
  undo: () => keep(undo),
  looked: () => keep({ [at("looked")]: moment("looked") ? "" : jobs.now() }),
  stop(button) {
    const item = button.parentElement;
    const name = item.classList.contains("visit-health") ? "health" : "stops";
    keep({ [at(name)]: toggled(name, stopKey(item)), [at("looked")]: "" });
  },
  ring() {
    const typed = input("minutes").value;
    const minutes = Number(typed.trim().replace(",", ".") || NaN);
    if (!(minutes > 0 && believed(minutes * MINUTE))) return say(`Buzz and flash after: “${typed.slice(0, 40)}” ${NO_NUMBER}`, true);
    remember("visit.alarm", typed);
    const rings = new Date(Date.now() + minutes * MINUTE);
    keep({ [at("rings")]: jobs.stamp(rings) });
    say(`The alarm is set for ${hour(rings)}.`);
  },
  again: () => doing.ring(),
  quiet: () => keep({ [at("rings")]: "" }),
};

const stopKey = (item) => item.id.slice("stop-".length);

function toggled(name, key) {
  const held = list(name);
  return (held.includes(key) ? held.filter((one) => one !== key) : [...held, key]).join("\n");
}

/** Give the card its boxes and the stops their presses. */
function dress() {
  document.querySelectorAll(".visit-card ol > li").forEach((line, place) => {
    const [tick, box, words] = ["label", "input", "span"].map((tag) => document.createElement(tag));
    tick.className = "visit-tick";
    box.type = "checkbox";
    box.value = place + 1;
    box.addEventListener("change", () => keep({ [at("ticks")]: toggled("ticks", box.value) }));
    words.append(...line.childNodes);
    tick.append(box, words);
    line.append(tick);
  });
  find(".visit-stops").classList.add("live");
  for (const item of stops) {
    const button = document.createElement("button");
    button.type = "button";
    button.dataset.visitDo = "stop";
    button.textContent = "Here";
    item.firstElementChild.id ||= `${item.id}-sign`;
    button.setAttribute("aria-describedby", item.firstElementChild.id);
    item.append(button);
  }
}

function draw() {
  if (record && step && !find(".visit-stops.live")) dress();
  find(".visit-inner").hidden = false;
  find(".visit-job").hidden = !record;
  find(".visit-nojob").hidden = Boolean(record);
  if (record) find(".visit-job a").textContent = jobs.title(record);
  if (step) drawStep();
  drawList();
  mark();
  tick();
}

function drawStep() {
  const [begun, done] = [moment("begun"), moment("done")];
  const now = record ? state(step) : "";
  const none = find(".visit-none");
  find(".visit-clock").hidden = find(".visit-times").hidden = none.hidden = !record;
  find("[data-visit-do=undo]").hidden = !undo;
  turn.dataset.state = now;
  main.hidden = Boolean(done);
  main.textContent = begun ? "Done" : "Start";
  none.firstElementChild.ariaPressed = Boolean(moment("looked"));
  none.firstElementChild.textContent = moment("looked") ? `None found, ${hour(moment("looked"))}` : "None found";
  for (const box of document.querySelectorAll(".visit-tick input")) box.checked = list("ticks").includes(box.value);
  for (const [name, held] of Object.entries({ begun, done })) {
    if (document.activeElement !== input(name)) input(name).value = held ? jobs.local(new Date(held), 19) : "";
  }
  find(".visit-since").textContent = begun ? `${hour(begun)}${done ? ` to ${hour(done)}` : ""}` : "";
  drawStops();
}

function drawStops() {
  const box = find(".visit-stopped");
  const found = stops.filter((item) => here().includes(stopKey(item)));
  for (const item of stops) {
    item.toggleAttribute("data-here", found.includes(item));
    const button = item.querySelector("button");
    if (button) button.ariaPressed = found.includes(item);
  }
  if (box.hidden === !found.length) return;
  box.hidden = !found.length;
  box.lastElementChild.replaceChildren(...found.flatMap((item) => [...item.querySelectorAll("p")].map((line) => {
    const copy = line.cloneNode(true);
    copy.removeAttribute("id");
    return copy;
  })));
}

/** The states in the list of steps, the one big button, what the record still lacks. */
function drawList() {
  if (!record) return;
  for (const item of document.querySelectorAll(".visit-list li")) {
    item.dataset.state = state(item.dataset.step);
    item.querySelector(".visit-state").textContent = words(item.dataset.step);
  }
  const missing = [...document.querySelectorAll(".visit-missing li")];
  for (const item of missing) {
    item.toggleAttribute("data-there", !["", "unknown"].includes(text(item.dataset.path)));
  }
  if (missing.length) find(".visit-whole").hidden = missing.some((item) => !("there" in item.dataset));
  const go = find(".visit-go");
  if (!go) return;
  const on = next();
  go.hidden = !on;
  go.href = `${on}.html`;
  go.textContent = `${keys.some(state) ? "Go on" : "Start"}: ${steps[on]}`;
  const named = (what) => keys.filter((key) => state(key) === what).map((key) => steps[key]).join(", ");
  find(".visit-told").textContent = [
    named("stopped") && `Stopped at: ${named("stopped")}.`,
    named("skipped") && `Skipped: ${named("skipped")}.`,
    !on && "All done.",
  ].filter(Boolean).join(" ");
}

/** Where to go on: at what is under way; after a stop with what closes a visit; else in order. */
function next() {
  const open = (key) => !["done", "stopped"].includes(state(key));
  if (under().length) return under()[0];
  if (keys.some((key) => state(key) === "stopped")) return keys.slice(-2).find(open);
  const last = keys.findLastIndex((key) => state(key) === "done");
  return keys.slice(last + 1).find(open);
}

/** Leave word for the other pages of the book. */
function mark() {
  const [key] = record ? under() : [];
  if (!key) return forget("visit");
  const [begun, rings] = [moment("begun", key), moment("rings", key)];
  remember("visit", { id: record.id, key, name: steps[key], begun, rings, longest });
}

function tick() {
  if (!step || !record) return;
  const [begun, done] = [moment("begun"), moment("done")];
  const gone = (done ?? Date.now()) - begun;
  const time = find(".visit-time");
  time.textContent = begun ? (believed(gone) ? clock(gone) : "Check the times") : "Not started";
  if (begun && !believed(gone)) find(".visit-times").open = true;
  const [other] = under().filter((key) => key !== step);
  find(".visit-other").hidden = !other;
  if (other) {
    const line = Object.assign(document.createElement("a"), { href: `${other}.html` });
    line.textContent = `Under way: ${steps[other]}, ${span(moment("begun", other))}`;
    if (find(".visit-other").textContent !== line.textContent) find(".visit-other").replaceChildren(line);
  }
  const rings = moment("rings");
  find(".visit-alarm").textContent = rings ? `rings ${hour(rings)}` : "";
  const ringing = rings && !done && believed(Date.now() - rings);
  find(".visit-ring").hidden = !ringing;
  if (ringing && Math.floor((Date.now() - rings) / 1000) % 3 === 0) buzz([400, 200, 400]);
}

function clock(gone) {
  const seconds = Math.floor(gone / 1000);
  const pair = (number) => String(number).padStart(2, "0");
  const hours = Math.floor(seconds / 3600);
  return `${hours ? `${hours}:${pair(Math.floor(seconds / 60) % 60)}` : Math.floor(seconds / 60)}:${pair(seconds % 60)}`;
}

document.addEventListener("click", ({ target }) => {
  const button = target.closest("[data-visit-do]");
  if (button) doing[button.dataset.visitDo](button);
});
mount.addEventListener("change", ({ target }) => {
  const name = target.dataset.visitIn;
  if (!["begun", "done"].includes(name)) return;
  const typed = new Date(target.value);
  if (target.value && Number.isNaN(typed.getTime())) return;
  keep({ [at(name)]: target.value ? jobs.stamp(typed) : "" });
});
jobs.listen(() => refresh());
addEventListener("storage", ({ key }) => (!key || /^handbook\.(typing|job)/.test(key)) && refresh());
addEventListener("pageshow", ({ persisted }) => persisted && refresh());
document.addEventListener("visibilitychange", () => document.hidden || refresh());
setInterval(tick, 1000);

if (step) input("minutes").value = recall("visit.alarm") ?? "";
refresh().then(() => {
  if (record && Object.keys(record.raw).length) check();
  document.documentElement.dataset.visitPage = "live";
});
