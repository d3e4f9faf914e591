/**
 * The worker in which Python computes, one for all calculators of a page.
 *
 * In:  {type: "start", how: snapshot, plain or anew}, {type: "call", id, asked}
 * Out: {type: "progress", done, total, download}, {type: "ready", how, milliseconds},
 *      {type: "kept", bytes}, {type: "unkept", why}, {type: "failed", why, how}, {type: "reply", id, reply}, {type: "fault", id, message, how}
 */
import { dropSnapshots, keepSnapshot, openSnapshot } from "./snapshot.mjs";

const RUNTIME = new URL("../_runtime/", import.meta.url);
const HEAP_LIMIT = 64 * 1024 * 1024; // a larger snapshot would cost a phone more than it saves
const BOOK = "/book";

const LOAD_BOOK = `
import gc, sys
sys.dont_write_bytecode = True
sys.path.insert(0, "${BOOK}")
from docs_build.page import door
`;
const WARM = "door.warm()\ngc.collect()";
const IDLE = 1500; // milliseconds without a question before the snapshot is taken

let how = "plain";
let timer;
let takeLater = () => {};
let missed = false; // a file of the runtime did not come
let call;

self.onmessage = ({ data }) => {
  if (data.type === "start") start(data.how).catch(fail);
  if (data.type === "call") answer(data.id, data.asked);
};

self.addEventListener("unhandledrejection", ({ reason: error }) => {
  if (!call) fail(error); // else the runtime would wait for ever for what has failed
});

function fail(error) {
  postMessage({ type: "failed", how, why: reason(error), message: String(error) });
}

function reason(error) {
  const text = String(error);
  if (typeof WebAssembly === "undefined") return "wasm";
  if (missed || error?.unreachable) return "fetch";
  if (/dynamically imported module|module script failed|Failed to fetch|NetworkError/i.test(text)) {
    return "fetch";
  }
  if (error instanceof RangeError || /out of memory|allocat/i.test(text)) return "memory";
  return "other";
}

function answer(id, asked) {
  try {
    postMessage({ type: "reply", id, reply: JSON.parse(call(JSON.stringify(asked))) });
    takeLater();
  } catch (error) {
    postMessage({ type: "fault", id, how, message: String(error) });
  }
}

async function start(wanted) {
  const began = performance.now();
  if (typeof WebAssembly === "undefined") throw new Error("no WebAssembly");
  // A host may let files be kept for ever; which of them belong together it must tell each time.
  const fresh = { cache: wanted === "anew" ? "reload" : "no-cache" };
  const told = get(new URL("runtime.json", RUNTIME), fresh).then((response) => response.json());
  told.catch(() => {}); // reported below, when it is awaited
  const snapshot = wanted === "snapshot" ? await openSnapshot() : undefined;
  how = snapshot ? "snapshot" : "plain";
  const python = await (snapshot ? restore(snapshot, told) : startPlain(await told, wanted));
  call = python.runPython(
    "import random\nrandom.seed()\nfrom docs_build.page.door import call\ncall",
  );
  postMessage({ type: "ready", how, milliseconds: performance.now() - began });
  takeLater();
}

/** Load the runtime; its scripts, its WebAssembly and the snapshot come at the same time. */
async function load(manifest, options, ready = () => {}) {
  const indexURL = new URL(manifest.python, RUNTIME).href;
  const fetchAll = self.fetch;
  compileEarly(`${indexURL}pyodide.asm.wasm`);
  const [{ loadPyodide }, { default: createModule }] = await Promise.all([
    import(`${indexURL}pyodide.mjs`),
    import(`${indexURL}pyodide.asm.mjs`),
  ]);
  const createPyodideModule = async (settings) => {
    const module = await createModule(settings);
    await ready(module);
    return module;
  };
  try {
    const lockFileContents = manifest.lock;
    return await loadPyodide({ indexURL, createPyodideModule, lockFileContents, ...options });
  } finally {
    self.fetch = fetchAll;
  }
}

/**
 * Compile the runtime's WebAssembly while its scripts still come. Where that fails, say so: the
 * runtime itself only warns and then waits for ever. A host that sends the wrong content type
 * costs time, not the calculator.
 */
function compileEarly(url) {
  const compiled = get(url).then(async (response) => {
    const type = response.headers.get("Content-Type") ?? "";
    return type.startsWith("application/wasm") && WebAssembly.compileStreaming
      ? WebAssembly.compileStreaming(response)
      : WebAssembly.compile(await response.arrayBuffer());
  });
  compiled.catch(fail);
  const fetchOthers = self.fetch;
  self.fetch = (input, ...rest) =>
    String(input.url ?? input) === url
      ? Promise.resolve(new Response()) // the runtime hands it to the next function, unread
      : fetchOthers(input, ...rest);
  WebAssembly.instantiateStreaming = async (_unread, imports) => {
    try {
      const module = await compiled;
      return { module, instance: await WebAssembly.instantiate(module, imports) };
    } catch (error) {
      fail(error);
      throw error;
    }
  };
}

/** Replace a file in the caches of the browser and of the service worker. */
async function renew({ path }) {
  await (await get(new URL(path, RUNTIME), { cache: "reload" })).arrayBuffer();
}

/**
 * Start from the snapshot by the manifest it was taken under, while the host still tells which is
 * the present one. The runtime gets the head alone: a copy of the heap would double it.
 */
function restore({ manifest, head, size, read }, told) {
  const bytes = read();
  bytes.catch(() => {}); // reported when it is awaited
  return load(manifest, { _loadSnapshot: head }, async (module) => {
    const [lay, { build }] = await Promise.all([bytes, told]);
    if (build !== manifest.build) throw new Error("the snapshot is of an older build");
    const used = module.HEAPU8.length;
    if (size > used) module.growMemory(size);
    lay(module.HEAPU8, used);
  });
}

async function startPlain(manifest, wanted) {
  if (wanted === "anew") await Promise.all(manifest.files.map(renew));
  const stop = countFetches(manifest);
  try {
    const zip = get(new URL(manifest.book, RUNTIME)).then((response) => response.arrayBuffer());
    zip.catch(() => {}); // reported below, when it is awaited
    const python = await load(manifest, { _makeSnapshot: true });
    python.unpackArchive(await zip, "zip", { extractDir: BOOK });
    python.runPython(LOAD_BOOK);
    takeLater = () => {
      clearTimeout(timer);
      timer = setTimeout(() => takeSnapshot(manifest, python), IDLE);
    };
    return python;
  } finally {
    stop();
  }
}

/** Take the snapshot, once, when nobody waits for an answer. */
function takeSnapshot(manifest, python) {
  takeLater = () => {};
  try {
    python.runPython(WARM);
    const heap = python._module.HEAP8.length;
    if (heap > HEAP_LIMIT) throw new Error(`heap of ${heap} bytes`);
    const bytes = python.makeMemorySnapshot();
    const { length } = bytes;
    keepSnapshot(manifest, bytes).then(
      () => postMessage({ type: "kept", bytes: length }),
      (error) => {
        postMessage({ type: "unkept", why: String(error) });
        return dropSnapshots();
      },
    );
  } catch (error) {
    // The next start will be a plain one again.
    postMessage({ type: "unkept", why: String(error) });
  }
}

async function get(url, how = {}) {
  let response;
  try {
    response = await fetch(url, how);
  } catch (error) {
    throw Object.assign(new Error(`not reached: ${url}`), { unreachable: true, cause: error });
  }
  if (!response.ok) {
    throw Object.assign(new Error(`${response.status}: ${url}`), { unreachable: true });
  }
  return response;
}

/** Report how much of the runtime has come in; returns the function that ends the counting. */
function countFetches(manifest) {
  const plainFetch = self.fetch;
  const total = manifest.files.reduce((sum, file) => sum + file.bytes, 0);
  const download = manifest.files.reduce((sum, file) => sum + file.gzip, 0);
  let done = 0;
  let told = -1;
  const count = (bytes) => {
    done += bytes;
    const percent = Math.floor((100 * done) / total);
    if (percent !== told) postMessage({ type: "progress", done, total, download });
    told = percent;
  };
  count(0);
  self.fetch = async (...request) => {
    const response = await plainFetch(...request).catch((error) => {
      missed = true;
      throw error;
    });
    if (!response.ok) missed = true;
    if (!response.ok || !response.body) return response;
    const counter = new TransformStream({
      transform(chunk, controller) {
        count(chunk.byteLength);
        controller.enqueue(chunk);
      },
    });
    return new Response(response.body.pipeThrough(counter), {
      status: response.status,
      headers: { "Content-Type": response.headers.get("Content-Type") ?? "" },
    });
  };
  return () => {
    self.fetch = plainFetch;
  };
}
