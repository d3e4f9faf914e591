/** The page's side of the worker: started once, shared by all calculators of the page. */

// Milliseconds without a word of the worker until it counts as dead: while it starts (each
// percent that has come in is a word), and while a question waits.
const SILENT = { starting: 60_000, ready: 30_000 };
// From one try to the next: with the device's snapshot, without it, with all files fetched anew.
const TRIES = ["snapshot", "plain", "anew"];

const listeners = new Set();
const waiting = new Map();
let worker;
let next = 1;
let attempt = 0;
let watch;
/** What is going on, for whoever looks: state is idle, starting, ready or failed. */
export const status = { state: "idle", how: "", milliseconds: 0 };

/** Hear of every change of the engine's state. */
export function listen(listener) {
  listeners.add(listener);
}

function tell(change) {
  Object.assign(status, change);
  for (const listener of listeners) listener(status, change);
}

/** Have a thread at hand, which costs little; Python starts in it when someone touches a form. */
export function prepare() {
  try {
    if (status.state === "idle") spawn();
  } catch {
    // said when Python is to start
  }
}

function spawn() {
  if (worker) return;
  const thread = new Worker(new URL("./worker.mjs", import.meta.url), { type: "module" });
  thread.onmessage = ({ data }) => hear(data);
  thread.onerror = (event) => {
    event.preventDefault?.();
    if (status.state === "idle") stop();
    else retreat(status.state === "starting" ? "worker" : "other", event.message || "worker error");
  };
  worker = thread;
}

function stop() {
  worker?.terminate();
  worker = undefined;
}

/** Start Python unless it has been started. */
export function start() {
  if (status.state !== "idle" && status.state !== "failed") return;
  tell({ state: "starting", done: 0, total: 0, why: "" });
  try {
    spawn();
  } catch (error) {
    failed("worker", String(error));
    return;
  }
  worker.postMessage({ type: "start", how: TRIES[attempt] });
  listenFor();
}

/** Ask Python; resolves to its reply, or rejects when there will be none. */
export function ask(asked) {
  return new Promise((resolve, reject) => {
    const id = next++;
    waiting.set(id, { asked, resolve, reject });
    if (status.state === "ready") send(id);
    else start();
  });
}

function send(id) {
  worker.postMessage({ type: "call", id, asked: waiting.get(id).asked });
  if (!watch) listenFor();
}

/** A worker that was killed tells nobody. */
function listenFor() {
  clearTimeout(watch);
  const busy = status.state === "starting" || (status.state === "ready" && waiting.size > 0);
  watch = busy ? setTimeout(() => retreat("stuck", "no answer"), SILENT[status.state]) : undefined;
}

function hear(data) {
  if (data.type === "progress") tell({ done: data.done, total: data.total, download: data.download });
  if (data.type === "kept") tell({ kept: data.bytes });
  if (data.type === "unkept") tell({ unkept: data.why });
  if (data.type === "ready") {
    tell({ state: "ready", how: data.how, milliseconds: data.milliseconds });
    for (const id of waiting.keys()) send(id);
  }
  if (data.type === "reply") {
    attempt = 0; // what dies later may start from the snapshot again
    settle(data.id, (one) => one.resolve(data.reply));
  }
  if (data.type === "failed" && status.state !== "failed") retreat(data.why, data.message);
  if (data.type === "fault") {
    if (data.how === "snapshot") retreat("other", data.message);
    else settle(data.id, (one) => one.reject(new Error(data.message)));
  }
  listenFor();
}

function settle(id, how) {
  const one = waiting.get(id);
  waiting.delete(id);
  if (one) how(one);
}

/** Start again with less trust in what the device holds; whatever was asked is asked again. */
function retreat(why, message) {
  // What the device cannot, it cannot the next time; what did not come is asked for once more only.
  const last = { wasm: 0, memory: 1, worker: 1, fetch: 1, stuck: 1 }[why] ?? TRIES.length - 1;
  if (attempt >= last) {
    failed(why, message);
    return;
  }
  attempt += 1;
  stop();
  status.state = "idle";
  start();
}

function failed(why, message) {
  stop();
  clearTimeout(watch);
  attempt = 0;
  tell({ state: "failed", why, message });
  for (const id of [...waiting.keys()]) settle(id, (one) => one.reject(new Error(why)));
}
