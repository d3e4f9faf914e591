/** The settings panel: what is chosen holds at once on this page, and on every other from storage. */
import { recall, remember } from "./store.mjs";
import { choose, system } from "./unitswitch.mjs";

const panel = document.querySelector("[data-settings]");
const said = panel.querySelector("[role=status]");
const root = document.documentElement;

for (const radio of panel.querySelectorAll("input")) {
  const now = radio.name === "units" ? system() : (root.dataset[radio.name] ?? "");
  radio.checked = radio.value === now;
}
panel.querySelector(".settings-live").hidden = false;
panel.querySelector(".settings-static").hidden = true;

panel.addEventListener("change", ({ target }) => {
  const { name, value } = target;
  if (name === "units") choose(value);
  else if (value) root.dataset[name] = value;
  else delete root.dataset[name];
  const { text, hand, contrast, scheme } = root.dataset;
  const kept = name === "units" ? recall("units") === value : remember("look", { text, hand, contrast, scheme });
  said.dataset.wrong = String(!kept);
  said.textContent = kept
    ? "Kept on this phone, for every page."
    : "This browser lets the page keep nothing. The choice holds until you leave this page.";
});
