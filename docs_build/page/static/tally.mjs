/** The pass timer and tally: taps in, passes out, and what is left by Python. It knows no formula. */
import * as engine from "./engine.mjs";
import * as jobs from "./jobs.mjs";
import { buzz, recall, remember } from "./store.mjs";
import { Tally } from "./tallystore.mjs";

const DAY = 864e5;
const JUMP = 5000; // milliseconds by which the phone's clock may fall behind before we ask
const PAUSE = 1500; // between two estimates, or two counts read aloud, while taps come
const AWAKE = "This browser lets the screen go dark: touch it now and then.";
const mount = document.querySelector("[data-tally]");
const find = (css) => mount.querySelector(css);
const input = (name, home = mount) => home.querySelector(`[data-tally-in=${name}]`);
const screen = find(".tally-run");
const anchor = {};
let tally, lock, weighing, weighed, back, rung, spoken, estimating;

const say = (text) => (find(".tally-said").textContent = text);
const number = (text) => (/^\d+([.,]\d+)?$/.test(text.trim()) ? Number(text.trim().replace(",", ".")) : undefined);
const short = (milliseconds) => Math.round(milliseconds / 600) / 100;
const length = (minutes) => (minutes < 1 ? `${Math.max(1, Math.round(minutes * 60))} s` : `${minutes} min`);
const act = (what) => tally.act(what).catch(() => say(jobs.NO_STORE));

async function open() {
  const job = await jobs.openJob();
  const id = job?.id ?? "";
  if (tally?.job === id) return;
  tally = new Tally(id, draw);
  find(".tally-job").textContent = job ? `Job: ${jobs.title(job)}` : "No job is open: the count stays on this phone.";
  await tally.renew();
  const known = job?.texts?.["shared.catches"];
  if (known && !tally.view.seen.length) {
    const minutes = (job.texts["shared.pass_minutes"] ?? "").split(" ").filter(Boolean);
    const passes = known.split(" ").map((n, at) => ({ key: String(at), n: Number(n), minutes: number(minutes[at] ?? "") }));
    act({ do: "clear", passes });
  }
  if (tally.view.run) show();
  estimate();
}

/** The screen of the pass, with the phone kept awake. */
function show() {
  if (!screen.open) screen.showModal();
  find(".tally-tap").focus();
  engine.start();
  settle();
  tick();
  awake();
}

async function awake() {
  const wanted = screen.open && document.visibilityState === "visible";
  if (!wanted) return lock?.release();
  try {
    lock = await navigator.wakeLock.request("screen");
  } catch {
    find(".tally-line").textContent ||= AWAKE;
  }
}

/** Two clocks side by side: the phone's may be set back, the page's may not, but it may sleep. */
function settle() {
  tick();
  Object.assign(anchor, { wall: Date.now(), page: performance.now() });
}

function tick() {
  const run = tally?.view.run; // the clocks run before the first count has been read
  if (!run) return;
  const since = performance.now() - anchor.page;
  if (Date.now() < anchor.wall + since - JUMP) back = true;
  const gone = Math.max(0, anchor.wall + since - run.start);
  const [seconds, minutes, hours] = [gone / 1000, gone / 6e4, gone / 36e5].map(Math.floor);
  const two = (part) => String(part % 60).padStart(2, "0");
  const planned = number(input("planned").value);
  find(".tally-time").textContent =
    (hours ? `${hours}:${two(minutes)}` : minutes) + `:${two(seconds)}` + (planned ? ` of ${planned}` : "");
  const over = planned && gone >= planned * 6e4;
  screen.classList.toggle("tally-over", Boolean(over));
  if (over && rung !== run.start) buzz([600, 200, 600]);
  rung = over ? run.start : 0;
}

function draw() {
  const { passes, run, past } = tally.view;
  const last = past.at(-1)?.act;
  for (const button of mount.querySelectorAll(".tally-undo")) {
    button.disabled = !last;
    button.textContent = last?.do === "tap" ? `Undo +${last.n}` : "Undo";
  }
  find(".tally-next").textContent = passes.length + 1;
  find(".tally-start").firstChild.data = run ? "Back to pass " : "Start pass ";
  find(".tally-which").textContent = `Pass ${passes.length + 1}`;
  find(".tally-count").textContent = run?.n ?? 0;
  find(".tally-take").hidden = weighed === undefined;
  find(".tally-take").textContent = `Take ${weighed} by weight ${run ? "for" : "as"} pass ${passes.length + 1}`;
  if (!run && screen.open) screen.close();
  const list = find(".tally-passes");
  while (list.children.length > passes.length) list.lastChild.remove();
  while (list.children.length < passes.length) list.append(find("template").content.cloneNode(true));
  passes.forEach((pass, at) => {
    const row = list.children[at];
    row.dataset.key = pass.key;
    row.firstChild.textContent = `Pass ${at + 1}: ${pass.n}${pass.weighed ? " by weight" : ""}${
      pass.minutes === undefined ? "" : ` in ${length(pass.minutes)}`}`;
  });
  const { catches, minutes } = series();
  find(".tally-more").hidden = !passes.length;
  find(".tally-more").hash = new URLSearchParams({ calc: "how_many_left", catches: catches.join(" "), minutes: minutes.join(" ") });
}

/** Catches and minutes as the calculator takes them; the running pass as it is so far. */
function series(running) {
  const { passes, run } = tally.view;
  const all = running && run ? [...passes, { n: run.n, minutes: short(Date.now() - run.start) }] : passes;
  const minutes = all.map((one) => one.minutes);
  return { catches: all.map(({ n }) => String(n)), minutes: minutes.includes(undefined) ? [] : minutes.map(String) };
}

async function estimate() {
  if (estimating) return (estimating = "again");
  const running = tally.view.run && tally.view.passes.length > 1;
  const texts = series(running);
  if (texts.catches.length) {
    estimating = "now";
    const reply = await engine.ask({ op: "run", name: "how_many_left", texts, customary: false }).catch(() => undefined);
    const results = reply?.results;
    const words = reply?.complete === false
      ? reply.text
      : reply?.ok
      ? results.still_inside
        ? `At least ${results.still_inside.text} inside (${results.interval_inside.text}). ${results.next_step.text}`
        : `${reply.brief} ${results.next_step?.text ?? ""}`
      : (reply?.errors[0].sentence ?? "The number left will come when the computing part runs.");
    find(".tally-line").textContent = words;
    if (!running) {
      const whole = document.createElement("div");
      whole.innerHTML = reply?.html ?? ""; // written by the worker, every word escaped there
      find(".tally-cautions").replaceChildren(...whole.querySelectorAll(".answer-cautions"));
      find(".tally-told").textContent = words;
    }
    await new Promise((go) => setTimeout(go, PAUSE));
    const again = estimating === "again";
    estimating = undefined;
    if (again) estimate();
  } else {
    for (const css of [".tally-cautions", ".tally-told", ".tally-line"]) find(css).textContent = "";
  }
}

/** A pass was ended or changed: tell the job and count anew. */
async function changed(what) {
  const kept = act(what);
  estimate();
  await kept;
  if (!tally.job) return;
  const { catches, minutes } = series();
  jobs.typing(tally.job, "shared.catches", { text: catches.join(" "), us: false }).catch(() => {});
  jobs.typing(tally.job, "shared.pass_minutes", { text: minutes.join(" "), us: false }).catch(() => {});
  jobs.sync(tally.job, mount.dataset.edition).catch(() => {});
}

function tap(button) {
  act({ do: "tap", n: Number(button.dataset.tap) });
  buzz(20);
  clearTimeout(spoken);
  spoken = setTimeout(() => (find(".tally-voice").textContent = `${tally.view.run?.n} caught`), PAUSE);
  if (tally.view.passes.length > 1) estimate();
}

const doing = {
  start() {
    if (!tally.view.run) {
      back = false;
      act({ do: "start" });
    }
    show();
  },
  leave: () => screen.close(),
  end() {
    tick();
    const { run } = tally.view;
    const gone = Date.now() - run.start;
    const odd = back || gone < 0 || gone > DAY || Date.now() < run.last;
    if (!odd) return void changed({ do: "end", minutes: short(gone) });
    screen.close();
    find(".tally-ask").hidden = false;
    input("asked").focus();
  },
  asked() {
    const minutes = number(input("asked").value);
    if (minutes === undefined) return wrong("Minutes of this pass", input("asked").value, "a number such as 5 or 4.5");
    find(".tally-ask").hidden = true;
    changed({ do: "end", minutes });
  },
  undo: () => (tally.view.past.at(-1)?.act.do === "tap" ? act({ do: "undo" }) : changed({ do: "undo" })),
  add: () => changed({ do: "add", n: 0 }).then(() => doing.open(find(".tally-passes").lastChild.firstChild)),
  clear: () => changed({ do: "clear" }).then(() => say("A new count. “Undo” brings the old one back.")),
  open(button) {
    const form = button.nextSibling;
    const pass = tally.view.passes.find((one) => one.key === button.parentNode.dataset.key);
    form.hidden = !form.hidden;
    button.ariaExpanded = !form.hidden;
    input("n", form).value = pass.n;
    input("minutes", form).value = pass.minutes ?? "";
  },
  set(button) {
    const row = button.closest("li");
    const texts = ["n", "minutes"].map((name) => input(name, row).value);
    const [n, minutes] = texts.map(number);
    if (!Number.isInteger(n)) return wrong("Caught", texts[0], "a whole number, 0 or more");
    if (texts[1].trim() && minutes === undefined) return wrong("Minutes", texts[1], "a number such as 5 or 4.5, or nothing");
    doing.open(row.firstChild);
    changed({ do: "set", key: row.dataset.key, n, minutes });
  },
  drop(button) {
    const row = button.closest("li");
    doing.open(row.firstChild);
    changed({ do: "drop", key: row.dataset.key });
    say("Deleted. “Undo” brings it back.");
  },
  take() {
    if (tally.view.run) act({ do: "weigh", n: weighed, weighed: true });
    else changed({ do: "add", n: weighed, weighed: true });
  },
};

const wrong = (label, text, allowed) => say(`${label}: “${text.slice(0, 40)}” cannot be read; allowed is ${allowed}.`);

// A glove that slides gives no click: the touch itself counts, and the click after it does not.
let touched, ending;
const CLICKED = 50; // milliseconds after which no click can follow the end of a touch
for (const end of ["pointerup", "pointercancel"]) {
  addEventListener(end, () => (ending = setTimeout(() => (touched = false), CLICKED)));
}
mount.addEventListener("pointerdown", (event) => {
  const button = event.target.closest("[data-tap]");
  if (!button || event.button) return;
  clearTimeout(ending);
  touched = true;
  tap(button);
});
mount.addEventListener("click", (event) => {
  const button = event.target.closest("button");
  if (button?.dataset.tap) touched || tap(button);
  else if (button?.dataset.tallyDo) doing[button.dataset.tallyDo](button);
});
mount.addEventListener("contextmenu", (event) => event.target.closest("[data-tap]") && event.preventDefault());
input("planned").addEventListener("input", ({ target: { value } }) => {
  remember("tally.planned", value);
  if (value.trim() && !number(value)) wrong("Planned minutes", value, "a number above 0, or nothing");
  else say("");
});
// What was weighed in the calculator of this page gives a pass, too; its worked example does not.
const scale = "[data-calculator=weigh_the_catch]";
addEventListener("input", ({ target }) => (weighing ||= Boolean(target.closest(scale))));
addEventListener("calculator:answer", ({ target, detail }) => {
  if (!weighing || !target.matches(scale)) return;
  weighed = detail.results?.count?.value;
  draw();
});
screen.addEventListener("close", awake);
document.addEventListener("visibilitychange", () => {
  settle();
  awake();
});
jobs.listen(() => open());
setInterval(tick, 500);

input("planned").value = recall("tally.planned") ?? "";
mount.hidden = false;
await open();
document.documentElement.dataset.tally = "live";
