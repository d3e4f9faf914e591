/**
 * The jobs on this device. Each is one record of an IndexedDB of its own: the checked job, what was
 * typed and is not checked yet (raw), and the forms of the calculators (drafts). Every keystroke
 * goes to localStorage at once and stays there until the database has it.
 */
import * as engine from "./engine.mjs";
import { shelf } from "./shelf.mjs";
import { forget, recall, remember } from "./store.mjs";

const DATABASE = "handbook-jobs";
const SHELF = "jobs";
const AHEAD = "typing|";
const DRAFT = "draft:";
const PREFIX = "handbook.";
const TRIES = 20;
export const NO_STORE =
  "This browser does not let the page store a job, or has no room left: what you type here is lost when the page is closed. Save the job as a file.";
const PUT_BACK = "This browser had deleted the open job. It is put back from what this page still held.";

const listeners = new Set();
const channel = "BroadcastChannel" in self ? new BroadcastChannel(DATABASE) : undefined;
if (channel) {
  channel.onmessage = ({ data: { id, erased } }) => {
    seen.delete(id); // what this page has read is no longer what the device holds
    if (erased) gone.set(id, "elsewhere");
    open = recall("job.open");
    tell(id, true);
  };
}

/** Hear of every change of a job: its number, whether another page made it, and what to say of it. */
export function listen(listener) {
  listeners.add(listener);
}

function tell(id, foreign = false, words = "") {
  for (const listener of listeners) listener(id, foreign, words);
  if (!foreign && stored()) channel?.postMessage({ id }); // of what is in hand no other page can read
}

/** A moment as a job holds it: UTC, to the second. */
export const stamp = (date) => date.toISOString().replace(/\.\d+Z$/, "Z");
export const now = () => stamp(new Date());

/** The same by the clock of this place, as a field takes it: 10 signs are a day, 16 a minute, 19 a second. */
export function local(date, signs = 16) {
  if (Number.isNaN(date.getTime())) return "";
  return new Date(date.getTime() - 60_000 * date.getTimezoneOffset()).toISOString().slice(0, signs);
}

let open; // where the device forgets which job is open, the page still knows
export const openId = () => (open = recall("job.open") ?? open);

export function setOpen(id) {
  open = id;
  if (id) remember("job.open", id);
  else forget("job.open");
  tell(id ?? "");
}

const seen = new Map(); // the records as this page knows them
const gone = new Map(); // those that were rubbed out, and where: here, or elsewhere (in another page)
const hands = new Map(); // those of them that the device would not take; null: would not rub out
const base = new Map(); // how the device had a record when this page last gave or took it
const untaken = new Map(); // by record, what was typed and is in hand only
const rewritten = new Set(); // those in hand that Python has changed as a whole
const disk = shelf(DATABASE, SHELF, { keyPath: "id" }, () => openId() && get(openId()));

/** Where a job was rubbed out while this page was open, or undefined. */
export const erased = (id) => gone.get(id);

/** Whether the device has taken all that it was given. */
export const stored = () => hands.size === 0;

let turn = Promise.resolve();

/** Run a step on the device, one after the other: what is in hand must be given only once. */
function inside(mode, step) {
  const mine = turn.then(() => attempt(mode, step));
  turn = mine.catch(() => {});
  return mine;
}

/** What the device refuses stays in the page's hands until it is taken. */
async function attempt(mode, step, again = true) {
  const given = [...hands.keys()];
  try {
    const told = await disk(given.length ? "readwrite" : mode, (held, give) => {
      const next = (at) => {
        if (at === given.length) return step(held, give);
        const record = hands.get(given[at]);
        const then = (request) => (request.onsuccess = () => next(at + 1));
        if (!record) return then(held.delete(given[at]));
        held.get(record.id).onsuccess = ({ target }) => then(held.put(joined(record, target.result)));
      };
      next(0);
    });
    for (const id of given) {
      letGo(id);
      if (!gone.has(id)) channel?.postMessage({ id });
    }
    return told;
  } catch {
    // A browser that deletes closes the connection first: the next one tells what is left.
    return again ? attempt(mode, step, false) : inHands(step);
  }
}

function letGo(id) {
  hands.delete(id);
  untaken.delete(id);
  rewritten.delete(id);
}

/** What is in hand, with what another page has given the device since; neither knew this rev. */
function joined(mine, there) {
  if (!there || JSON.stringify(there) === base.get(mine.id)) return mine;
  const rev = Math.max(mine.rev, there.rev) + 1;
  if (rewritten.has(mine.id)) {
    const raw = { ...there.raw, ...mine.raw };
    return { ...mine, rev, raw, drafts: { ...there.drafts, ...mine.drafts } };
  }
  for (const [path, entry] of untaken.get(mine.id) ?? []) apply(there, path, entry);
  return { ...there, rev };
}

function saw(record) {
  seen.set(record.id, record);
  if (stored()) base.set(record.id, JSON.stringify(record));
}

/** The same step on what the page knows; a request answers as one of the database does. */
function inHands(step) {
  const known = new Map([...seen, ...hands].filter(([, record]) => record));
  const request = (result) => {
    const one = {};
    queueMicrotask(() => one.onsuccess?.({ target: { result: structuredClone(result) } }));
    return one;
  };
  const held = {
    get: (id) => request(known.get(id)),
    getAll: () => request([...known.values()]),
    put: (record) => request(hands.set(record.id, structuredClone(record)) && undefined),
    delete: (id) => request(hands.set(id, null) && undefined),
  };
  return new Promise((resolve) => {
    let told;
    step(held, (result) => (told = result));
    setTimeout(() => resolve(told));
  });
}

/** Change a record within one transaction; a change that returns false leaves it as it is. */
async function update(id, change) {
  let lost = false;
  const record = await inside("readwrite", (shelf, give) => {
    shelf.get(id).onsuccess = ({ target }) => {
      lost = !target.result;
      const record = target.result ?? known(id);
      if (!record || change(record) === false) return;
      shelf.put(record);
      give(record);
    };
  });
  if (record) saw(record);
  if (record && lost && openId() === id) {
    remember("job.open", id);
    tell(id, true, PUT_BACK);
  }
  return record;
}

/** What this page knows of a record that the device has lost; nothing of one that was rubbed out. */
function known(id) {
  if (gone.has(id)) return undefined;
  return structuredClone(seen.get(id)) ?? (openId() === id && ahead(id).length ? empty(id) : undefined);
}

/** All records, the one changed last on top. */
export async function all() {
  const records = await inside("readonly", (shelf, give) => {
    shelf.getAll().onsuccess = ({ target }) => give(target.result);
  });
  records.forEach(saw);
  return records.sort((one, other) => (one.touched < other.touched ? 1 : -1));
}

/** One record, with what a killed page left behind; undefined where there is none. */
export async function get(id) {
  const typed = hands.get(id) ? [] : ahead(id); // what is in hand has it already
  if (typed.length) {
    const record = await update(id, (held) => typed.forEach(([path, entry]) => apply(held, path, entry)));
    if (record && stored()) for (const [path, entry] of typed) settled(id, path, entry);
    return record;
  }
  const record = await inside("readonly", (shelf, give) => {
    shelf.get(id).onsuccess = ({ target }) => give(target.result);
  });
  if (record) saw(record);
  return record ?? (known(id) ? update(id, () => {}) : undefined);
}

/** The open job, or undefined; never keeps a page waiting. */
export async function openJob() {
  const id = openId();
  if (!id) return undefined;
  const late = new Promise((resolve) => setTimeout(resolve, 2000));
  return Promise.race([get(id), late]).catch(() => undefined);
}

/** What was typed and may not be in the database yet. */
function ahead(id) {
  const start = `${PREFIX}${AHEAD}${id}|`;
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(start))
      .map((key) => [key.slice(start.length), recall(key.slice(PREFIX.length))])
      .filter(([, entry]) => entry !== undefined);
  } catch {
    return [];
  }
}

function settled(id, path, entry) {
  const key = `${AHEAD}${id}|${path}`;
  if (JSON.stringify(recall(key)) === JSON.stringify(entry)) forget(key);
}

function apply(record, path, entry) {
  record.touched = now();
  const home = path.startsWith(DRAFT) ? record.drafts : record.raw;
  const name = path.startsWith(DRAFT) ? path.slice(DRAFT.length) : path;
  if (entry === null) delete home[name];
  else home[name] = entry;
}

/** A record of a job that Python has not seen yet, so that the first word can be typed at once. */
export async function begin() {
  const signs = crypto.getRandomValues(new Uint8Array(5));
  const id = `${now().slice(0, 10)}-${[...signs].map((one) => (one % 36).toString(36)).join("")}`;
  await put(empty(id));
  setOpen(id);
  return id;
}

const empty = (id) => ({
  id, born: now(), touched: now(), rev: 0, job: null, texts: {}, prefills: {}, calculations: "",
  edition: "", raw: {}, drafts: {},
});

function put(record) {
  seen.set(record.id, record);
  return inside("readwrite", (shelf) => shelf.put(record));
}

/** Take in a job that Python has read from a file. */
export async function adopt(reply) {
  const record = empty(reply.job.id);
  take(record, reply);
  await put(record);
  tell(record.id);
  return record.id;
}

function take(record, { job, texts, prefills, calculations, edition }) {
  Object.assign(record, { job, texts, prefills, calculations, edition });
  record.rev += 1;
  record.touched = now();
}

/** Rub a job out, with all that was typed for it. */
export async function erase(id) {
  gone.set(id, "here");
  channel?.postMessage({ id, erased: true }); // first of all: no other page may put it back
  await inside("readwrite", (shelf) => shelf.delete(id));
  await (await import("./tallystore.mjs")).erase(id);
  for (const [path] of ahead(id)) forget(`${AHEAD}${id}|${path}`);
  forgetAnswers();
  if (openId() === id) setOpen();
  else tell(id);
}

/** Last answers are kept by calculator, whichever job they were for. */
function forgetAnswers(names) {
  try {
    for (const key of Object.keys(localStorage)) {
      const [, name] = /^handbook\.answer\.([^.]+)/.exec(key) ?? [];
      if (name && (!names || names.includes(name))) localStorage.removeItem(key);
    }
  } catch {
    // No storage, nothing to forget.
  }
}

const waiting = new Map();
let writing;

/** Keep what was just typed: at once, then in the database, the newest only. */
export function typing(id, path, entry) {
  const kept = remember(`${AHEAD}${id}|${path}`, entry);
  waiting.set(`${id}|${path}`, { id, path, entry });
  writing ??= write().finally(() => (writing = undefined));
  return writing.catch((error) => {
    if (!kept) throw error;
  });
}

async function write() {
  while (waiting.size) {
    const batch = [...waiting.values()];
    waiting.clear();
    for (const { id, path, entry } of batch) {
      if (!untaken.has(id)) untaken.set(id, new Map());
      untaken.get(id).set(path, entry);
      await update(id, (record) => apply(record, path, entry));
      if (!stored()) continue;
      untaken.get(id)?.delete(path);
      settled(id, path, entry);
    }
  }
  if (!stored()) throw new Error(NO_STORE);
}

export const keepDraft = (id, key, draft) => typing(id, DRAFT + key, draft);

const ask = (question) => engine.ask({ op: "job", ...question });
const same = (one, other) => one?.text === other.text && one.us === other.us;
let syncing = Promise.resolve();

/** Have Python check what was typed; what it refuses stays as typed, with the reason. */
export function sync(id, edition) {
  syncing = syncing.catch(() => {}).then(() => check(id, edition));
  return syncing;
}

async function check(id, edition) {
  await writing?.catch(() => {});
  for (let conflicts = 0; conflicts < TRIES; ) {
    const record = await get(id);
    if (!record) return undefined;
    const fresh = Object.entries(record.raw).filter(([, entry]) => !entry.sentence);
    const current = record.job && (!edition || record.edition === edition);
    if (!fresh.length && current) return record;
    const changes = Object.fromEntries(fresh.map(([path, { text, us }]) => [path, { text, us }]));
    const reply = await ask({ do: "set", id, job: record.job, now: record.job ? now() : record.born, changes });
    if (!reply.ok) throw new Error(reply.sentence);
    const kept = await update(id, (held) => {
      if (held.rev !== record.rev) return false;
      const { touched } = held;
      take(held, reply);
      if (!fresh.length) held.touched = touched;
      for (const [path, entry] of fresh) {
        if (!same(held.raw[path], entry)) continue;
        if (reply.errors[path]) held.raw[path] = { ...entry, sentence: reply.errors[path] };
        else delete held.raw[path];
      }
      return true;
    });
    if (kept) tell(id);
    else conflicts += 1;
  }
  throw new Error("The job is being changed in another page.");
}

/** Have Python change the whole job; returns its reply, and keeps the job only where it is ok. */
export async function change(id, question, also = () => {}) {
  for (let tries = 0; tries < TRIES; tries += 1) {
    const record = await sync(id);
    if (!record) return { ok: false, sentence: "This job is no longer on this device." };
    const reply = await ask({ ...question, id, job: record.job, now: now() });
    if (!reply.ok) return reply;
    const kept = await update(id, (held) => {
      if (held.rev !== record.rev) return false;
      take(held, reply);
      also(held, reply);
      return true;
    });
    if (kept) {
      if (!stored()) rewritten.add(id);
      tell(id);
      return reply;
    }
  }
  return { ok: false, sentence: "The job is being changed in another page." };
}

/** Ask about a job without changing it. */
export async function query(id, question) {
  const record = await sync(id);
  if (!record) return { ok: false, sentence: "This job is no longer on this device." };
  return ask({ ...question, id, job: record.job, now: now() });
}

/** All jobs together, as their texts. */
export const season = (texts) => ask({ do: "season", texts });

export const read = (signs, taken) => ask({ do: "read", signs, taken });

/** Take out an entry of a list; what was typed for the later ones moves up. */
export function drop(id, section, place) {
  return change(id, { do: "drop", section, place }, (held) => {
    const raw = {};
    for (const [path, entry] of Object.entries(held.raw)) {
      const [head, at, ...rest] = path.split(".");
      if (head !== section) raw[path] = entry;
      else if (Number(at) < place) raw[path] = entry;
      else if (Number(at) > place) raw[[head, Number(at) - 1, ...rest].join(".")] = entry;
    }
    held.raw = raw;
  });
}

/** Wipe what tells of anyone's health, also where it was only typed. */
export async function wipe(id, isHealth) {
  const reply = await change(id, { do: "wipe" }, (held, { health_inputs: inputs }) => {
    for (const path of Object.keys(held.raw)) if (isHealth(path)) delete held.raw[path];
    for (const [key, draft] of Object.entries(held.drafts)) {
      for (const name of inputs[key.split(".")[0]] ?? []) delete draft.fields[name];
    }
  });
  if (reply.ok) forgetAnswers(Object.keys(reply.health_inputs));
  return reply;
}

/** The text of a job's file; what stands in the calculators' forms goes along. */
export async function save(id, health) {
  const record = await sync(id);
  if (!record) return { ok: false, sentence: "This job is no longer on this device." };
  const customary = record.job.typed_units
    ? record.job.typed_units === "customary"
    : document.documentElement.dataset.units === "us";
  const drafts = asTyped(record.drafts, customary ? "us" : "si");
  const typed = Object.keys(drafts).length ? { ...record.job.typed, ...drafts } : undefined;
  const units = customary ? "customary" : "si";
  const reply = await query(id, { do: "save", health, typed, typed_units: units });
  return { ...reply, left: Object.keys(record.raw) };
}

function asTyped(drafts, units) {
  const typed = {};
  for (const [key, draft] of Object.entries(drafts)) {
    if (key.includes(".") || !draft.fields) continue;
    const texts = Object.entries(draft.fields).map(([name, value]) => [name, asText(value, draft, units)]);
    const known = texts.filter(([, text]) => text);
    if (known.length) typed[key] = Object.fromEntries(known);
  }
  return typed;
}

function asText(value, draft, units) {
  const text =
    typeof value === "string"
      ? value
      : value.map((pair) => pair[units] ?? (draft.units === units || pair.si === undefined ? pair.value : "")).join(" ");
  return text.replace(/[\u0000-\u001f\u007f]/g, " ").trim().slice(0, 2000);
}

/** The name that a person knows a job by. */
export function title(record) {
  return record.raw.title?.text.trim() || record.job?.title || `Job ${record.id}`;
}
