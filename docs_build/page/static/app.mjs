/** What every page of the book starts. */
import { show } from "./unitswitch.mjs";
import { recall } from "./store.mjs";

show(recall("units"));
if (document.querySelector("[data-visit]")) await import("./visit.mjs");
else if (recall("visit")) import("./visitline.mjs");
if (document.querySelector(".calculator")) await import("./calculator.mjs");
if (document.querySelector("[data-settings]")) await import("./settings.mjs");
if (document.querySelector("[data-tally]")) await import("./tally.mjs");
if (document.querySelector("[data-job-sheet]")) await import("./jobsheet.mjs");
if (document.querySelector("[data-photo-notes]")) await import("./photos.mjs");
// Keeping the book must not delay the page: it begins when the page is there and at rest.
const rest = () => (self.requestIdleCallback ?? ((run) => setTimeout(run, 300)))(() => import("./keep.mjs"));
if (document.readyState === "complete") rest();
else addEventListener("load", rest, { once: true });
