/**
 * The device's own memory snapshot of the started Python, in IndexedDB (which, unlike Cache
 * storage, also works over plain http on the local network).
 */

const DATABASE = "handbook-runtime";
const SHELF = "snapshots";
const KEY = "the one";
const PIECE = 1 << 14; // the smallest stretch of empty memory that is left out
const REST = 1000; // milliseconds, in which the first answer has been given

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
      transaction.onabort = () => reject(transaction.error ?? new Error("not stored"));
      transaction.onerror = ({ target }) => reject(target.error);
    });
  } finally {
    database.close();
  }
}

/**
 * A sum over every word of some bytes in a row, in four strands: a torn or altered snapshot must
 * not compute. All parts but the last are of whole strands.
 */
function checksum(parts) {
  const { imul } = Math;
  const prime = 0x01000193;
  let [a, b, c, d] = [0x811c9dc5, 1, 2, 3];
  for (const part of parts) {
    const words = new Uint32Array(part.buffer, part.byteOffset, part.byteLength >> 2);
    const end = words.length & ~3;
    for (let i = 0; i < end; i += 4) {
      a = imul(a ^ words[i], prime);
      b = imul(b ^ words[i + 1], prime);
      c = imul(c ^ words[i + 2], prime);
      d = imul(d ^ words[i + 3], prime);
    }
    for (let i = end; i < words.length; i += 1) a = imul(a ^ words[i], prime);
  }
  return (a ^ imul(b, 3) ^ imul(c, 5) ^ imul(d, 7)) >>> 0;
}

/** Whether a piece of memory holds nothing. */
function empty(bytes) {
  const words = new Float64Array(bytes.buffer, bytes.byteOffset, bytes.byteLength >> 3);
  for (let i = 0; i < words.length; i += 1) if (!Object.is(words[i], 0)) return false;
  return true;
}

/**
 * The kept snapshot, or undefined: the manifest it was taken under, the head that the runtime asks
 * for, the bytes of its heap, and the function that reads it. Reading rejects where the bytes are
 * not those that were kept; it resolves to the function that lays them into a heap of that size,
 * of which the runtime may have written in the first `used` bytes.
 */
export async function openSnapshot() {
  try {
    const record = await onShelf("readonly", (shelf) => shelf.get(KEY));
    if (!record?.head) return undefined;
    const { manifest, head, size } = record;
    return { manifest, head, size, read: () => read(record) };
  } catch {
    return undefined;
  }
}

async function read({ blob, head, size, sum, pieces }) {
  const kept = new Uint8Array(await blob.arrayBuffer());
  const held = pieces.reduce((all, [start, end]) => all + end - start, 0);
  if (held !== kept.length || checksum([head, kept]) !== sum) {
    throw new Error("the snapshot is damaged");
  }
  return function lay(heap, used) {
    let at = 0;
    let clear = 0;
    for (const [start, end] of [...pieces, [size, size]]) {
      if (clear < used) heap.fill(0, clear, Math.min(start, used));
      heap.set(kept.subarray(at, at + end - start), start);
      at += end - start;
      clear = end;
    }
    setTimeout(() => giveBack(kept.buffer), REST);
  };
}

/** Free what the browser itself has filled: let go, it stays until the next great collection. */
function giveBack(buffer) {
  const { port1, port2 } = new MessageChannel();
  port2.close();
  port1.postMessage(0, [buffer]);
  port1.close();
}

/** Keep this snapshot in place of all others; memory that holds nothing is left out. */
export async function keepSnapshot(manifest, bytes) {
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, 2);
  const head = bytes.slice(0, words[1]); // the runtime's own notes, whose length is its second word
  const heap = bytes.subarray(head.length);
  const size = heap.length;
  const pieces = [];
  for (let start = 0; start < size; start += PIECE) {
    const end = Math.min(start + PIECE, size);
    if (end - start === PIECE && empty(heap.subarray(start, end))) continue;
    const last = pieces.at(-1);
    if (last?.[1] === start) last[1] = end;
    else pieces.push([start, end]);
  }
  const parts = pieces.map(([start, end]) => heap.subarray(start, end));
  const sum = checksum([head, ...parts]);
  const blob = new Blob(parts);
  bytes.buffer.transfer?.(0); // the blob has its own copy
  await onShelf("readwrite", (shelf) => {
    shelf.clear();
    return shelf.put({ manifest, blob, head, size, sum, pieces }, KEY);
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
