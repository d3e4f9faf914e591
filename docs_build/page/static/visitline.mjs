/** The line on every other page of the book while a step of the visit is under way. */
import { openId } from "./jobs.mjs";
import { buzz, recall } from "./store.mjs";

const EVERY = 3000;
const line = document.createElement("nav");
line.className = "visit-line";
line.ariaLabel = "Work on site under way";
const [link, words, back] = ["a", "span", "u"].map((tag) => document.createElement(tag));
back.textContent = "Back";
link.append(words, back);
line.append(link);

function draw() {
  const visit = recall("visit");
  line.hidden = !visit || visit.id !== openId();
  if (line.hidden) return;
  const gone = Date.now() - visit.begun;
  const ringing = visit.rings && visit.rings <= Date.now() && Date.now() - visit.rings <= visit.longest;
  const length = gone >= 0 && gone <= visit.longest ? `${Math.floor(gone / 60_000)} min` : "check the times";
  link.href = new URL(`../visit/${visit.key}.html`, import.meta.url);
  words.textContent = `On site: ${visit.name}, ${ringing ? "time is up" : length}`;
  line.toggleAttribute("data-ring", Boolean(ringing));
  if (ringing) buzz([400, 200, 400]);
}

document.querySelector(".thumb").before(line);
addEventListener("storage", draw);
addEventListener("pageshow", draw);
setInterval(draw, EVERY);
draw();
