/**
 * The tally of one job, or of none. Every act is on the device at once (localStorage) and stays
 * there until the database has it: neither a killed tab nor a second one loses a tap.
 */
import { shelf } from "./shelf.mjs";
import { forget, recall, remember } from "./store.mjs";

const inside = shelf("handbook-tally", "tallies");
const AHEAD = "tally|";
const STEPS = 20; // that can be undone
const SEEN = 400; // acts remembered, so that none counts twice
const EMPTY = { passes: [], run: null, past: [], seen: [] };

/** Rub out the tally of a job. */
export async function erase(job) {
  for (const { key } of ahead(job)) forget(key);
  await inside("readwrite", (held) => held.delete(job));
}

/** Acts that may not be in the database yet. */
function ahead(job) {
  try {
    return Object.keys(localStorage)
      .filter((key) => key.startsWith(`handbook.${AHEAD}${job}|`))
      .map((key) => ({ key: key.slice(9), act: recall(key.slice(9)) }))
      .filter(({ act }) => act);
  } catch {
    return [];
  }
}

/** What the acts make of a record; an act that is in it already changes nothing. */
function made(record, acts) {
  const held = structuredClone(record);
  const order = (one, other) => (one.id < other.id ? -1 : 1);
  for (const act of [...acts].sort(order)) {
    if (held.seen.includes(act.id)) continue;
    held.seen = [...held.seen, act.id].slice(-SEEN);
    const { passes, run } = act.do === "undo" ? (held.past.pop() ?? held) : structuredClone(held);
    if (act.do === "undo") Object.assign(held, { passes, run });
    else if (apply(held, act)) held.past = [...held.past, { passes, run, act }].slice(-STEPS);
  }
  return held;
}

/** Change the record; false where the act no longer fits, as another page was faster. */
function apply(held, { do: what, id, at, key, ...given }) {
  const { passes, run } = held;
  const one = passes.find((pass) => pass.key === key);
  if (what === "tap") {
    const home = run ?? passes.at(-1); // a tap that comes after the end still counts
    if (home) home.n += given.n;
    if (run) run.last = at;
    return Boolean(home);
  }
  if (what === "start" && !run) held.run = { start: at, last: at, n: 0 };
  else if (what === "end" && run) {
    passes.push({ key: id, n: run.n, weighed: run.weighed, ...given });
    held.run = null;
  } else if (what === "weigh" && run) Object.assign(run, given);
  else if (what === "add") passes.push({ key: id, ...given });
  else if (what === "set" && one) Object.assign(one, given);
  else if (what === "drop" && one) passes.splice(passes.indexOf(one), 1);
  else if (what === "clear") Object.assign(held, { passes: given.passes ?? [], run: null });
  else return false;
  return true;
}

let acts = 0;

export class Tally {
  constructor(job, changed) {
    Object.assign(this, { job, changed, record: EMPTY, view: EMPTY, mine: [] });
    addEventListener("storage", ({ key }) => key?.startsWith(`handbook.${AHEAD}${job}|`) && this.renew());
  }

  look() {
    this.view = made(this.record, [...ahead(this.job).map(({ act }) => act), ...this.mine]);
    this.changed();
  }

  /** Read what the device holds, acts of other pages included. */
  async renew() {
    const record = await inside("readonly", (held, give) => {
      held.get(this.job).onsuccess = ({ target }) => give(target.result);
    }).catch(() => undefined);
    this.record = record ?? this.record;
    this.look();
    if (ahead(this.job).length) this.write().catch(() => {});
  }

  /** Do something now; resolves when it is on the device, rejects when it cannot be kept there. */
  act(what) {
    const at = Date.now();
    // A clock set back must not put an act before those it follows.
    const since = Math.max(at, this.latest ?? 0, this.view.run?.last ?? 0);
    this.latest = since;
    const id = `${since}.${String(acts++).padStart(6, "0")}.${crypto.getRandomValues(new Uint16Array(1))[0]}`;
    const act = { ...what, id, at };
    const kept = remember(`${AHEAD}${this.job}|${id}`, act);
    this.mine.push(act);
    this.view = made(this.view, [act]);
    this.changed();
    return this.write().catch((error) => {
      if (!kept) throw error;
    });
  }

  write() {
    this.again = true;
    this.writing ??= this.flush().finally(() => (this.writing = undefined));
    return this.writing;
  }

  async flush() {
    while (this.again) {
      this.again = false;
      const left = ahead(this.job);
      const given = [...left.map(({ act }) => act), ...this.mine];
      this.record = await inside("readwrite", (held, give) => {
        held.get(this.job).onsuccess = ({ target }) => {
          const record = made(target.result ?? EMPTY, given);
          held.put(record, this.job);
          give(record);
        };
      });
      this.mine = this.mine.filter((act) => !given.includes(act));
      for (const { key } of left) forget(key);
    }
    this.look();
  }
}
