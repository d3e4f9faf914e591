/**
 * Service worker of the book. One edition is one cache: it comes in whole or not at all, and what
 * has not changed is taken over from the cache before it.
 */
"use strict";

const BOOK = /*BOOK*/ null;
// Editions side by side have one host: each touches only the caches of its own path.
const PREFIX = `handbook|${new URL(self.registration.scope).pathname}|`;
const CACHE = PREFIX + BOOK.build;
const EDITIONS = "editions.json"; // grows with every later edition: asked for anew, kept as it was last
const LIST = "_kept.json"; // what the cache holds, by address: its hash
const AT_ONCE = 4;

const here = (path) => new URL(path, self.registration.scope).href;

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !url.href.startsWith(self.registration.scope)) return;
  event.respondWith(serve(event.request));
});
self.addEventListener("message", (event) => {
  const { type, groups } = event.data ?? {};
  const port = event.ports[0];
  if (type === "use") self.skipWaiting();
  if (type === "state") event.waitUntil(state().then((told) => port.postMessage(told)));
  if (type === "keep") {
    event.waitUntil(
      keep(groups, (told) => port.postMessage({ progress: told })).then(
        async () => port.postMessage(await state()),
        async (error) => port.postMessage({ ...(await state()), error: String(error.message) }),
      ),
    );
  }
});

async function install() {
  const before = await olderLists();
  // Whoever has kept the calculators or the PDF gets the new ones with the new edition.
  const groups = ["pages"];
  for (const group of ["runtime", "paper"]) {
    if (before.some((list) => list.groups.includes(group))) groups.push(group);
  }
  await caches.delete(CACHE); // the rest of an attempt that was cut off
  try {
    await keep(groups, () => {});
  } catch (error) {
    await caches.delete(CACHE); // half an edition is of no use, and jobs need the room
    throw error;
  }
  await newest(new Request(here(EDITIONS)));
}

async function activate() {
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== CACHE) await caches.delete(name);
  }
  await self.clients.claim();
}

async function readList(name) {
  const found = await (await caches.open(name)).match(here(LIST));
  return found ? found.json() : undefined;
}

async function olderLists() {
  const lists = [];
  for (const name of await caches.keys()) {
    if (!name.startsWith(PREFIX) || name === CACHE) continue;
    const list = await readList(name);
    if (list) lists.push({ ...list, name });
  }
  return lists;
}

/** Bring in whole groups; what is there already, here or in an older cache, is not fetched. */
async function keep(groups, tell) {
  const cache = await caches.open(CACHE);
  const older = await olderLists();
  const list = (await readList(CACHE)) ?? { groups: [], hashes: {} };
  const wanted = groups.flatMap((group) => BOOK.files[group]);
  const total = wanted.reduce((sum, [, , bytes]) => sum + bytes, 0);
  let done = 0;
  const queue = [...wanted];
  const brought = [];
  const bring = async () => {
    for (let entry = queue.shift(); entry; entry = queue.shift()) {
      const [path, hash, bytes] = entry;
      if (!(await cache.match(here(path)))) {
        await put(cache, older, path, hash);
        brought.push(path);
      }
      list.hashes[path] = hash;
      done += bytes;
      tell({ done, total });
    }
  };
  const ends = await Promise.allSettled(Array.from({ length: AT_ONCE }, bring));
  const failed = ends.filter(({ status }) => status === "rejected").map(({ reason }) => reason);
  if (failed.length) {
    const full = failed.find(({ name }) => name === "QuotaExceededError");
    if (!full) throw failed[0];
    // Jobs share the room: what came last gives it back to them.
    for (const path of brought) await cache.delete(here(path));
    throw new Error("this device has no room left for it");
  }
  list.groups = [...new Set([...list.groups, ...groups])];
  await cache.put(here(LIST), new Response(JSON.stringify(list)));
}

async function put(cache, older, path, hash, mode = "no-cache") {
  for (const list of older) {
    if (list.hashes[path] !== hash) continue;
    const found = await (await caches.open(list.name)).match(here(path));
    if (found) return cache.put(here(path), found);
  }
  const response = await fetch(here(path), { cache: mode }).catch(() => {
    throw new Error(`${path}: the host was not reached`);
  });
  if (!response.ok) throw new Error(`${path}: the host answered ${response.status}`);
  if (response.redirected) throw new Error(`${path}: the host sent it from another address`);
  const body = await response.clone().arrayBuffer();
  if ((await sha256(body)) !== hash) throw new Error(`${path}: the host sent another file than the edition lists`);
  return cache.put(here(path), response);
}

/** The page found a file of the runtime damaged: the host has it whole. */
async function mend(cache, href) {
  const entry = BOOK.files.runtime.find(([path]) => here(path) === href);
  if (entry) await put(cache, [], entry[0], entry[1], "reload");
}

async function sha256(body) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", body));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/** What is really there, file by file. */
async function state() {
  const cache = await caches.open(CACHE);
  const there = new Set((await cache.keys()).map((request) => request.url));
  const told = { build: BOOK.build, edition: BOOK.edition, groups: {} };
  for (const [group, files] of Object.entries(BOOK.files)) {
    const missing = files.filter(([path]) => !there.has(here(path)));
    const size = (list) => list.reduce((sum, [, , bytes]) => sum + bytes, 0);
    told.groups[group] = {
      files: files.length,
      bytes: size(files),
      missing: missing.length,
      missingBytes: size(missing),
    };
  }
  return told;
}

async function serve(request) {
  const cache = await caches.open(CACHE);
  const url = new URL(request.url);
  url.search = "";
  url.hash = "";
  if (url.href === here(EDITIONS)) return newest(request);
  if (url.href.endsWith("/")) url.href += "index.html";
  if (request.cache === "reload") await mend(cache, url.href);
  const found = await cache.match(url.href, { ignoreVary: true });
  if (found) return found;
  try {
    const response = await fetch(request);
    if (request.mode !== "navigate" || response.status !== 404) return response;
    return missing(`Edition ${BOOK.edition} of the book has no such page.`, 404);
  } catch (error) {
    if (request.mode !== "navigate") throw error;
    return missing("There is no network, and the kept book has no such page.", 503);
  }
}

function missing(why, status) {
  return new Response(
    '<!doctype html><html lang="en"><meta charset="utf-8"><title>Not kept</title>' +
      '<meta name="viewport" content="width=device-width"><h1>This page is not on this phone</h1>' +
      `<p>${why} <a href="${here("index.html")}">To the first page</a>`,
    { status, headers: { "Content-Type": "text/html; charset=utf-8" } },
  );
}

async function newest(request) {
  const cache = await caches.open(CACHE);
  try {
    const response = await fetch(request, { cache: "no-cache" });
    if (response.ok) await cache.put(here(EDITIONS), response.clone());
    return response;
  } catch {
    return (await cache.match(here(EDITIONS))) ?? Response.json([]);
  }
}
