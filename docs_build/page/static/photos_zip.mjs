/** A job and its pictures as one plain ZIP, and back. Only what this page writes is taken in. */
import { bare, join, put } from "./photos_store.mjs";

const JOB = "job.json";
const NAME = /^[A-Za-z0-9][A-Za-z0-9._-]{0,99}\.jpg$/;
const [LOCAL, CENTRAL, END] = [0x04034b50, 0x02014b50, 0x06054b50];
const HEAD = 30; // bytes of an entry before its name

/** The ZIP of a job's text and its pictures. */
export function pack(text, pictures) {
  const { photos = [] } = JSON.parse(text);
  const named = pictures.filter(({ name }) => photos.some((one) => one.name === name));
  const files = named.map(({ name, bytes }) => [name, new Uint8Array(bytes)]);
  return zip([[JOB, new TextEncoder().encode(text)], ...files]);
}

/** Entries stored as they are, all of the first day that a ZIP knows. */
function zip(entries) {
  const [bodies, index] = [[], []];
  let at = 0;
  for (const [name, body] of entries) {
    const signs = new TextEncoder().encode(name);
    const facts = [[20, 2], [0, 2], [0, 2], [0, 2], [0x21, 2], [sum(body), 4], [body.length, 4], [body.length, 4], [signs.length, 2], [0, 2]];
    bodies.push(numbers([[LOCAL, 4], ...facts]), signs, body);
    index.push(numbers([[CENTRAL, 4], [20, 2], ...facts, [0, 2], [0, 2], [0, 2], [0, 4], [at, 4]]), signs);
    at += HEAD + signs.length + body.length;
  }
  const listed = join(index);
  const count = entries.length;
  return join([...bodies, listed, numbers([[END, 4], [0, 2], [0, 2], [count, 2], [count, 2], [listed.length, 4], [at, 4], [0, 2]])]);
}

/** Numbers with their widths, the least byte first. */
function numbers(pairs) {
  return Uint8Array.from(pairs.flatMap(([number, width]) => Array.from({ length: width }, (_, at) => number >>> (8 * at))));
}

const TABLE = Int32Array.from({ length: 256 }, (_, sign) => {
  for (let bit = 0; bit < 8; bit += 1) sign = sign & 1 ? (sign >>> 1) ^ 0xedb88320 : sign >>> 1;
  return sign;
});

/** CRC-32, as a ZIP wants it. */
function sum(bytes) {
  let made = -1;
  for (const byte of bytes) made = (made >>> 8) ^ TABLE[(made ^ byte) & 0xff];
  return ~made >>> 0;
}

const refuse = (sentence) => Object.assign(new Error(sentence), { sentence });

/**
 * What a ZIP holds: the job's file and its pictures. Every picture is checked before anything is
 * kept; throws an error with a `sentence` for what this page would not have written.
 */
export async function unpack(file, { side, bytes: largest, most, longest }) {
  if (file.size > longest + (most + 1) * (largest + 1000)) throw refuse("The file is larger than a job with its pictures can be.");
  const whole = new Uint8Array(await file.arrayBuffer());
  const entries = split(whole, most + 1);
  // What is written again and is the same holds no second list, no gap, no other sum.
  const again = zip(entries);
  if (again.length !== whole.length || again.some((byte, at) => byte !== whole[at])) {
    throw refuse("The ZIP is damaged or was not written by this page: unpack it and open its job.json alone.");
  }
  const [[first, job] = [], ...rest] = entries;
  if (first !== JOB) throw refuse(`The ZIP does not begin with ${JOB}.`);
  const pictures = [];
  for (const [name, body] of rest) {
    if (!NAME.test(name) || pictures.some((one) => one.name === name)) throw refuse("The ZIP holds a file with a wrong name.");
    const made = bare(body);
    const fits = made && body.length <= largest && Math.max(made.width, made.height) <= side;
    if (!fits || !(await readable(made.bytes))) throw refuse(`“${name}” in the ZIP is no JPEG of at most ${side} pixels and ${largest} bytes.`);
    pictures.push({ name, bytes: made.bytes.buffer });
  }
  return { job: new Blob([job]), pictures };
}

/** The entries one after the other, no more than a job can have. */
function split(whole, most) {
  const view = new DataView(whole.buffer);
  const entries = [];
  let at = 0;
  while (at + HEAD <= whole.length && view.getUint32(at, true) === LOCAL) {
    if (entries.length === most) throw refuse(`The ZIP holds more than ${most} files.`);
    const start = at + HEAD + view.getUint16(at + 26, true);
    const end = start + view.getUint32(at + 18, true);
    entries.push([new TextDecoder().decode(whole.subarray(at + HEAD, start)), whole.subarray(start, end)]);
    at = end;
  }
  return entries;
}

async function readable(bytes) {
  try {
    (await createImageBitmap(new Blob([bytes]))).close();
    return true;
  } catch {
    return false;
  }
}

/** Keep the pictures under the job's number; what its record does not name is refused. */
export async function keep(pictures, { id, photos = [] }) {
  const unknown = pictures.find(({ name }) => !photos.some((one) => one.name === name));
  if (unknown) throw refuse(`The ZIP holds “${unknown.name}”, which its job does not name.`);
  try {
    await put(pictures.map((one) => ({ ...one, job: id })));
  } catch {
    throw refuse("This device has no room for the pictures.");
  }
}
