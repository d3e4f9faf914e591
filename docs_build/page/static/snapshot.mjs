/**
 * The device's own memory snapshot of the started Python, in IndexedDB (which, unlike Cache
 * storage, also works over plain http on the local network).
 */

const DATABASE = "handbook-runtime";
const SHELF = "snapshots";
const KEY = "the one";
const PIECE = 1 << 14; // the smallest stretch of empty memory that is left out

function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(SHELF);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error("database blocked"));
  });
}

/** Run one step on the shelf inside a transaction. */
async function onShelf(mode, step) {
  const database = await open();
  try {
    return await new Promise((resolve, reject) => {
      const transaction = database.transaction(SHELF, mode);
      const request = step(transaction.objectStore(SHELF));
      transaction.oncomplete = () => resolve(request?.result);
      transaction.onabort = transaction.onerror = () => reject(transaction.error);
    });
  } finally {
    database.close();
  }
}

/** A sum over every word, in four strands: a torn or altered snapshot must not compute. */
function checksum(bytes) {
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength >> 2);
  const { imul } = Math;
  const [prime, end] = [0x01000193, words.length & ~3];
  let [a, b, c, d] = [0x811c9dc5, 1, 2, 3];
  for (let i = 0; i < end; i += 4) {
    a = imul(a ^ words[i], prime);
    b = imul(b ^ words[i + 1], prime);
    c = imul(c ^ words[i + 2], prime);
    d = imul(d ^ words[i + 3], prime);
  }
  for (let i = end; i < words.length; i += 1) a = imul(a ^ words[i], prime);
  return (a ^ imul(b, 3) ^ imul(c, 5) ^ imul(d, 7)) >>> 0;
}

/** Whether a piece of memory holds nothing. */
function empty(bytes) {
  const words = new Float64Array(bytes.buffer, bytes.byteOffset, bytes.byteLength >> 3);
  for (let i = 0; i < words.length; i += 1) if (!Object.is(words[i], 0)) return false;
  return true;
}

/**
 * The kept snapshot, or undefined: its build, and the function that reads it. Reading rejects where
 * the bytes are not those that were kept.
 */
export async function openSnapshot() {
  try {
    const record = await onShelf("readonly", (shelf) => shelf.get(KEY));
    return record?.pieces && { build: record.build, read: () => read(record) };
  } catch {
    return undefined;
  }
}

async function read({ blob, length, sum, pieces }) {
  const kept = new Uint8Array(await blob.arrayBuffer());
  const whole = new Uint8Array(length);
  let at = 0;
  for (const [start, end] of pieces) {
    whole.set(kept.subarray(at, at + end - start), start);
    at += end - start;
  }
  if (at !== kept.length || checksum(kept) !== sum) throw new Error("the snapshot is damaged");
  return whole;
}

/** Keep the snapshot of this build in place of all others; memory that holds nothing is left out. */
export async function keepSnapshot(build, bytes) {
  const pieces = [];
  for (let start = 0; start < bytes.length; start += PIECE) {
    const end = Math.min(start + PIECE, bytes.length);
    if (end - start === PIECE && empty(bytes.subarray(start, end))) continue;
    const last = pieces.at(-1);
    if (last?.[1] === start) last[1] = end;
    else pieces.push([start, end]);
  }
  const parts = pieces.map(([start, end]) => bytes.subarray(start, end));
  const blob = new Blob(parts);
  const sum = checksum(new Uint8Array(await blob.arrayBuffer()));
  await onShelf("readwrite", (shelf) => {
    shelf.clear();
    return shelf.put({ build, blob, length: bytes.length, sum, pieces }, KEY);
  });
}

/** Forget all snapshots. */
export async function dropSnapshots() {
  try {
    await onShelf("readwrite", (shelf) => shelf.clear());
  } catch {
    // No storage, nothing to forget.
  }
}
