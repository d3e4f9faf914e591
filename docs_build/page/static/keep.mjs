/** Keeping the book on the device: registers the service worker, says truthfully what is there. */
import { older } from "./editions.mjs";

const ROOT = new URL("../", import.meta.url);
const OLDER = "This is an older edition: it is read from the network and not kept on this device.";
const SEVEN_DAYS =
  "Some browsers delete what a page has stored after seven days without a visit, unless the book is installed (“Add to Home Screen”).";
const HTTPS =
  "Keeping the book for use without a network needs an HTTPS address. Over this plain address pages and calculators work as long as the network does; the device keeps the started computing part.";

const SILENT = 60_000; // milliseconds without a word until a service worker counts as killed

let registration;

/** Ask the active service worker; `hear` gets progress, the promise the last word. */
function ask(message, hear = () => {}, worker = registration?.active) {
  return new Promise((resolve, reject) => {
    if (!worker) {
      reject(new Error("not ready"));
      return;
    }
    const { port1, port2 } = new MessageChannel();
    let watch;
    const wait = () => {
      clearTimeout(watch);
      watch = setTimeout(() => reject(new Error("the browser has stopped it; load this page again")), SILENT);
    };
    wait();
    port1.onmessage = ({ data }) => {
      wait();
      if (data.progress) {
        hear(data.progress);
        return;
      }
      clearTimeout(watch);
      resolve(data);
    };
    worker.postMessage(message, [port2]);
  });
}

const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;

/** A short true line about what is on this device. */
function line(state) {
  const { pages, runtime, paper } = state.groups;
  if (pages.missing) return `Not kept yet: ${pages.missing} of ${pages.files} files of the pages are missing.`;
  if (runtime.missing) return "Pages and search are on this device. The calculators still need the network.";
  const pdf = paper.files && paper.missing ? " The training PDF is not." : "";
  return `Pages, search and calculators of edition ${state.edition} are on this device.${pdf}`;
}

function say(text) {
  for (const place of document.querySelectorAll("[data-offline-status]")) place.textContent = text;
}

function make(tag, text = "", css = "") {
  const made = document.createElement(tag);
  made.textContent = text;
  if (css) made.className = css;
  return made;
}

/** Fill the panel of the front page. */
function panel(place) {
  place.classList.add("keep");
  const status = make("p");
  status.setAttribute("role", "status");
  const gauge = make("progress");
  gauge.max = 1;
  gauge.hidden = true;
  gauge.setAttribute("aria-label", "Keeping the book");
  const button = make("button", "Keep this book on this phone");
  button.type = "button";
  const lasting = make("p");
  place.replaceChildren(status, gauge, button, lasting, make("p", SEVEN_DAYS));

  const show = (state) => {
    const groups = Object.values(state.groups);
    const missing = groups.reduce((sum, group) => sum + group.missing, 0);
    const bytes = groups.reduce((sum, group) => sum + group.missingBytes, 0);
    const whole = groups.reduce((sum, group) => sum + group.bytes, 0);
    button.hidden = missing === 0;
    button.textContent = `Keep this book on this phone (${megabytes(bytes)} more)`;
    status.textContent =
      missing === 0
        ? `Everything of edition ${state.edition} is on this device: every page, search, calculator and the PDF (${megabytes(whole)}). It works with the network off.`
        : line(state);
    if (state.error) status.textContent = `Not everything could be kept (${state.error}). ${line(state)}`;
    say(line(state));
  };
  button.addEventListener("click", async () => {
    button.disabled = true;
    gauge.hidden = false;
    const kept = (await navigator.storage?.persist?.().catch(() => false)) ?? false;
    lasting.textContent = kept
      ? "The browser has promised not to delete it by itself."
      : "The browser has not promised to keep it when storage runs short.";
    const tell = ({ done, total }) => {
      gauge.value = done / total;
      status.textContent = `Keeping … ${megabytes(done)} of ${megabytes(total)}`;
    };
    try {
      show(await ask({ type: "keep", groups: ["pages", "runtime", "paper"] }, tell));
    } catch (error) {
      status.textContent = unkept(error);
    }
    gauge.hidden = true;
    button.disabled = false;
  });
  return show;
}

/** Announce a waiting edition; it is used only when the reader says so. */
function news(waiting) {
  if (document.querySelector(".keep-news")) return;
  const bar = make("div", "", "keep-news");
  bar.setAttribute("role", "status");
  const use = make("button", "Use it now");
  const later = make("button", "Later", "plain");
  use.type = later.type = "button";
  use.addEventListener("click", () => take(waiting));
  later.addEventListener("click", () => bar.remove());
  const words = make("span");
  ask({ type: "state" }, undefined, waiting).then(({ edition }) => {
    const own = document.documentElement.dataset.edition;
    const what = edition === own ? `A corrected copy of edition ${own}` : `Edition ${edition}`;
    words.textContent = `${what} is ready. What you typed stays.`;
  });
  bar.append(words, use, later);
  document.body.append(bar);
}

/** Go over to a waiting copy of the book; the reader stays on the same page. */
function take(waiting) {
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  waiting.postMessage({ type: "use" });
}

/** Use the newest copy if it is here, or look for it. */
export async function update() {
  if (registration?.waiting) take(registration.waiting);
  else if (registration) await registration.update();
  else location.reload();
}

const unkept = (error) => `The book could not be kept on this device (${error.message}).`;

/** Resolves when an edition is kept; rejects when the first one could not be brought in. */
function ready() {
  const first = registration.active ? undefined : registration.installing;
  return new Promise((resolve, reject) => {
    navigator.serviceWorker.ready.then(resolve);
    first?.addEventListener("statechange", () => {
      if (first.state === "redundant") {
        reject(new Error("a file did not come, or there is no room; the next page tries again"));
      }
    });
  });
}

function watch() {
  const tell = () => {
    if (registration.waiting && registration.active) news(registration.waiting);
  };
  tell();
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => {
      if (coming.state === "installed") tell();
    });
  });
}

async function begin() {
  const places = [...document.querySelectorAll("[data-keep-offline]")];
  const unable = older ? OLDER : "serviceWorker" in navigator && self.isSecureContext ? "" : HTTPS;
  if (unable) {
    say(unable);
    for (const place of places) {
      place.classList.add("keep");
      place.textContent = unable;
    }
    return;
  }
  const shows = places.map(panel);
  // Another edition took over, in whichever page that was wanted: scripts of two must not mix.
  if (navigator.serviceWorker.controller) {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload());
  }
  try {
    registration = await navigator.serviceWorker.register(new URL("sw.js", ROOT), {
      scope: ROOT.pathname,
      updateViaCache: "none",
    });
    watch();
    say("Keeping the pages on this device …");
    await ready();
    let state = await ask({ type: "state" });
    for (const show of shows) show(state);
    say(line(state));
    // The part that computes is 7 MB: it comes by itself only where data is not being saved.
    if (!navigator.connection?.saveData && (state.groups.runtime.missing || state.groups.pages.missing)) {
      state = await ask({ type: "keep", groups: ["pages", "runtime"] });
      for (const show of shows) show(state);
      say(line(state));
    }
  } catch (error) {
    say(unkept(error));
    for (const place of places) place.querySelector("[role=status]").textContent = unkept(error);
  }
}

begin();
