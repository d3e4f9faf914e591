/** The page's side of the worker: started once, shared by all calculators of the page. */

const listeners = new Set();
const waiting = new Map();
let worker;
let next = 1;
let plain = false;
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

/** Start Python unless it has been started. */
export function start() {
  if (status.state !== "idle" && status.state !== "failed") return;
  tell({ state: "starting", done: 0, total: 0, why: "" });
  try {
    worker = new Worker(new URL("./worker.mjs", import.meta.url), { type: "module" });
  } catch (error) {
    failed("worker", String(error));
    return;
  }
  worker.onmessage = ({ data }) => hear(data);
  worker.onerror = (event) => {
    event.preventDefault?.();
    retreat(event.message || "worker error", status.state === "starting" ? "worker" : "other");
  };
  worker.postMessage({ type: "start", plain });
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
}

function hear(data) {
  if (data.type === "progress") tell({ done: data.done, total: data.total, download: data.download });
  if (data.type === "kept") tell({ kept: data.bytes });
  if (data.type === "unkept") tell({ unkept: data.why });
  if (data.type === "ready") {
    tell({ state: "ready", how: data.how, milliseconds: data.milliseconds });
    for (const id of waiting.keys()) send(id);
  }
  if (data.type === "reply") settle(data.id, (one) => one.resolve(data.reply));
  if (data.type === "failed" && status.state !== "failed") {
    if (data.how === "snapshot") retreat(data.message);
    else failed(data.why, data.message);
  }
  if (data.type === "fault") {
    if (data.how === "snapshot") retreat(data.message);
    else settle(data.id, (one) => one.reject(new Error(data.message)));
  }
}

function settle(id, how) {
  const one = waiting.get(id);
  waiting.delete(id);
  if (one) how(one);
}

/** Once, start again without the snapshot; whatever was asked is asked again. */
function retreat(message, why = "other") {
  if (plain) {
    failed(why, message);
    return;
  }
  plain = true;
  worker.terminate();
  status.state = "idle";
  start();
}

function failed(why, message) {
  worker?.terminate();
  plain = false;
  tell({ state: "failed", why, message });
  for (const id of [...waiting.keys()]) settle(id, (one) => one.reject(new Error(why)));
}
