/**
 * The device's own memory snapshot of the started Python, in IndexedDB (which, unlike Cache
 * storage, also works over plain http on the local network).
 */

const DATABASE = "handbook-runtime";
const SHELF = "snapshots";

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

/** A quick sum over every cache line: a torn or altered snapshot must not compute. */
function checksum(bytes) {
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset, bytes.byteLength >> 2);
  let sum = 0x811c9dc5;
  for (let i = 0; i < words.length; i += 16) sum = Math.imul(sum ^ words[i], 0x01000193);
  return sum >>> 0;
}

/** Whether a snapshot of this build is kept; does not read it. */
export async function hasSnapshot(build) {
  try {
    return (await onShelf("readonly", (shelf) => shelf.count(build))) > 0;
  } catch {
    return false;
  }
}

/** The snapshot of this build, or undefined. */
export async function readSnapshot(build) {
  try {
    const record = await onShelf("readonly", (shelf) => shelf.get(build));
    if (!record) return undefined;
    const bytes = new Uint8Array(await record.blob.arrayBuffer());
    return bytes.length === record.length && checksum(bytes) === record.sum ? bytes : undefined;
  } catch {
    return undefined;
  }
}

/** Keep the snapshot of this build in place of all others. */
export async function keepSnapshot(build, bytes) {
  const record = { blob: new Blob([bytes]), length: bytes.length, sum: checksum(bytes) };
  await onShelf("readwrite", (shelf) => {
    shelf.clear();
    return shelf.put(record, build);
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
