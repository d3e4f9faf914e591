/**
 * The pictures of the jobs, in a database of their own beside the jobs. The page writes each one
 * anew, so that nothing of the camera's file is kept but what it shows.
 */
import { shelf } from "./shelf.mjs";

const QUALITIES = [0.82, 0.7, 0.55]; // below, a comb's cells blur: a smaller picture is better
const SMALLER = 0.75;

const inside = shelf("handbook-pictures", "pictures", { keyPath: ["job", "name"] });
const ask = (mode, step) => inside(mode, (pictures, give) => (step(pictures).onsuccess = ({ target }) => give(target.result)));

/** The limits that the book gives to the place of the pictures. */
export function limits({ dataset: { side, bytes, most, usual } }) {
  return { side: Number(side), bytes: Number(bytes), most: Number(most), usual: usual.split(" ") };
}

const of = (job) => IDBKeyRange.bound([job], [job, []]);

export const all = (job) => ask("readonly", (pictures) => pictures.getAll(of(job)));
export const names = async (job) => (await ask("readonly", (pictures) => pictures.getAllKeys(of(job)))).map(([, name]) => name);
export const get = (job, name) => ask("readonly", (pictures) => pictures.get([job, name]));
export const remove = (job, name) => ask("readwrite", (pictures) => pictures.delete([job, name]));
export const erase = (job) => ask("readwrite", (pictures) => pictures.delete(of(job)));
/** Keep all of them, or none. */
export const put = (many) => inside("readwrite", (pictures) => many.forEach((one) => pictures.put(one)));

export const blob = ({ bytes }) => new Blob([bytes], { type: "image/jpeg" });

/** Of the pictures asked for, those that the device has, as files. */
export async function files(job, asked) {
  const kept = new Map((await all(job)).map((one) => [one.name, one]));
  const there = asked.filter(({ name }) => kept.has(name));
  return there.map((one, at) => ({ ...one, file: new File([blob(kept.get(one.name))], `picture-${at + 1}.jpg`, { type: "image/jpeg" }) }));
}

/** Bytes that the device still has for the book, or undefined where it does not say. */
export async function room() {
  const { quota, usage } = (await navigator.storage?.estimate?.().catch(() => undefined)) ?? {};
  return quota === undefined ? undefined : Math.max(0, quota - usage);
}

export const megabytes = (bytes) => `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;

/** A picture of any kind the browser reads, as a bare JPEG: upright, no longer and no larger than allowed. */
export async function shrink(file, { side, bytes: most }) {
  const bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
  const canvas = document.createElement("canvas");
  const paper = canvas.getContext("2d");
  try {
    for (let longer = side; ; longer *= SMALLER) {
      const scale = Math.min(1, longer / Math.max(bitmap.width, bitmap.height));
      canvas.width = Math.max(1, Math.round(bitmap.width * scale));
      canvas.height = Math.max(1, Math.round(bitmap.height * scale));
      paper.fillStyle = "#fff"; // what is clear in a PNG would be black in a JPEG
      paper.fillRect(0, 0, canvas.width, canvas.height);
      paper.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
      for (const quality of QUALITIES) {
        const made = await new Promise((give) => canvas.toBlob(give, "image/jpeg", quality));
        const { bytes } = bare(new Uint8Array(await made.arrayBuffer()));
        if (bytes.length <= most) return bytes.buffer;
      }
    }
  } finally {
    bitmap.close();
    canvas.width = canvas.height = 0;
  }
}

/**
 * A JPEG with nothing but its picture: what some browsers write beside it (Exif, profile, comment)
 * and whatever stands after its end is left out. Undefined for what is no whole JPEG.
 */
export function bare(bytes) {
  const word = (at) => (bytes[at] << 8) | bytes[at + 1];
  const parts = [bytes.subarray(0, 2)];
  if (word(0) !== 0xffd8) return undefined;
  let [width, height] = [0, 0];
  for (let at = 2, end; at + 1 < bytes.length; at = end) {
    const kind = bytes[at + 1];
    if (bytes[at] !== 0xff || kind < 0xc0) return undefined;
    if (kind === 0xd9) {
      parts.push(bytes.subarray(at, at + 2));
      return { bytes: join(parts), width, height };
    }
    end = at + 2 + word(at + 2);
    if (kind === 0xda) while (end < bytes.length && !(bytes[end] === 0xff && marks(bytes[end + 1]))) end += 1;
    if (kind <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(kind)) [height, width] = [word(at + 5), word(at + 7)];
    // Of what programs add, only the 18 bytes stay that say nothing but “JPEG”.
    if (kind < 0xe0 || (kind === 0xe0 && end - at === 18)) parts.push(bytes.subarray(at, end));
  }
  return undefined;
}

/** Whether a sign after FF begins something new; 00 and the restart marks belong to the picture. */
const marks = (sign) => sign !== 0 && (sign & 0xf8) !== 0xd0;

export function join(parts) {
  const made = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    made.set(part, at);
    at += part.length;
  }
  return made;
}
