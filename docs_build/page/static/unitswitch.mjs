/** The unit system of the whole page, remembered on the device. */
import { recall, remember } from "./store.mjs";

/** "si" or "us". */
export function system() {
  return document.documentElement.dataset.units === "us" ? "us" : "si";
}

/** Show one unit system; the style sheet does the rest. */
export function show(units) {
  document.documentElement.dataset.units = units === "us" ? "us" : "si";
  for (const button of document.querySelectorAll("button[data-units]")) {
    button.setAttribute("aria-pressed", String(button.dataset.units === system()));
  }
}

/** Switch by the reader's wish: remember it and tell all calculators. */
export function choose(units) {
  if (units === system()) return;
  show(units);
  remember("units", system());
  document.dispatchEvent(new CustomEvent("handbook:units", { detail: system() }));
}

show(recall("units"));
