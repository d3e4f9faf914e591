/** The fields of one form: reading, writing, stepping, rows of a list. No limit is judged here. */
import { system } from "./unitswitch.mjs";

const SEPARATORS = /[\s;|/]+/;

export class Fields {
  constructor(form) {
    this.form = form;
    this.fields = [...form.querySelectorAll(".calc-field")];
    this.original = this.snapshot();
  }

  byName(name) {
    return this.fields.find((field) => field.dataset.input === name);
  }

  inputs(field) {
    return [...field.querySelectorAll("input:not([type=radio]), select")];
  }

  isList(field) {
    return field.classList.contains("calc-list");
  }

  /** What stands in the form, by input name: a text, or a list of texts. */
  texts() {
    return Object.fromEntries(this.fields.map((field) => [field.dataset.input, this.read(field)]));
  }

  /** Whether nothing stands in the form: usual values are only hints. */
  empty() {
    return !Object.values(this.texts()).flat().some((text) => text.trim());
  }

  read(field) {
    if (this.isList(field)) return this.inputs(field).map((input) => input.value);
    const radio = field.querySelector("input[type=radio]:checked");
    return radio ? radio.value : (this.inputs(field)[0]?.value ?? "");
  }

  /** Values in both unit systems, so that going there and back loses nothing. */
  snapshot() {
    const saved = {};
    for (const field of this.fields) {
      const pairs = this.inputs(field).map((input) => ({
        value: input.value,
        si: input.dataset.si,
        us: input.dataset.us,
      }));
      saved[field.dataset.input] = this.isList(field) || pairs.length ? pairs : this.read(field);
    }
    return saved;
  }

  restore(saved) {
    for (const field of this.fields) {
      const value = saved[field.dataset.input];
      if (value === undefined) continue;
      if (typeof value === "string") this.write(field, value);
      else this.writePairs(field, value);
    }
    this.refresh();
  }

  writePairs(field, pairs) {
    if (this.isList(field)) this.setRows(field, pairs.length);
    this.inputs(field).forEach((input, place) => {
      const { value, si, us } = pairs[place] ?? { value: "" };
      input.value = value;
      setPair(input, si, us);
    });
  }

  /** Write texts typed in the present unit system. */
  write(field, value) {
    if (this.isList(field)) {
      const texts = Array.isArray(value) ? value : split(value, field);
      this.setRows(field, texts.length);
      this.inputs(field).forEach((input, place) => typed(input, texts[place]));
      return;
    }
    const text = Array.isArray(value) ? value.join(" ") : value;
    const radios = [...field.querySelectorAll("input[type=radio]")];
    if (radios.length) {
      for (const radio of radios) radio.checked = radio.value === text;
    } else {
      typed(this.inputs(field)[0], text);
    }
  }

  /** Show the fields that count now, the right words and numbers of rows. */
  refresh() {
    const texts = this.texts();
    for (const field of this.fields) {
      const { when, values } = field.dataset;
      const told = when && (texts[when] || this.byName(when).dataset.usual);
      field.hidden = Boolean(when) && !values.split(" ").includes(told);
      const select = field.querySelector("select");
      if (select) {
        const meaning = select.selectedOptions[0]?.dataset.meaning ?? "";
        field.querySelector(".calc-chosen").textContent = meaning;
      }
      if (this.isList(field)) {
        const rows = field.querySelector(".calc-rows");
        const count = rows.children.length;
        field.querySelector("[data-do=add]").disabled = count >= Number(rows.dataset.most);
        field.querySelector("[data-do=remove]").disabled = count === 0;
      }
    }
  }

  setRows(field, count) {
    const rows = field.querySelector(".calc-rows");
    const most = Number(rows.dataset.most) + 1; // one too many lets Python say what is wrong
    while (rows.children.length > count) rows.lastElementChild.remove();
    while (rows.children.length < Math.min(count, most)) this.addRow(field);
  }

  /** Add a row at the end and return its input. */
  addRow(field) {
    const rows = field.querySelector(".calc-rows");
    const place = rows.children.length + 1;
    const row = field.querySelector("template").content.firstElementChild.cloneNode(true);
    const input = row.querySelector("input");
    input.id = input.id.replace(/-row-0$/, `-row-${place}`);
    const label = row.querySelector("label");
    label.htmlFor = input.id;
    for (const named of row.querySelectorAll("[aria-label]")) {
      named.setAttribute("aria-label", named.getAttribute("aria-label").replace(/ 0:/, ` ${place}:`));
    }
    label.textContent = label.textContent.replace(/ 0$/, ` ${place}`);
    rows.append(row);
    return input;
  }

  /** Go to the next row, making one at the end; true if there was somewhere to go. */
  nextRow(field, input) {
    const inputs = this.inputs(field);
    const place = inputs.indexOf(input);
    const rows = field.querySelector(".calc-rows");
    const there =
      inputs[place + 1] ??
      (rows.children.length < Number(rows.dataset.most) ? this.addRow(field) : undefined);
    there?.focus();
    there?.select();
    return Boolean(there);
  }

  /**
   * Take apart a list that was typed or pasted into one row. A pasted list replaces the rows from
   * there on; a separator typed at the end goes on to the next row.
   */
  spread(field, input, event) {
    const parts = split(input.value, field);
    if (parts.length === 0 || (parts.length === 1 && parts[0] === input.value)) return;
    if (parts.length === 1) {
      typed(input, parts[0]);
      if (event.inputType !== "insertFromPaste") this.nextRow(field, input);
      return;
    }
    const texts = this.read(field);
    const place = this.inputs(field).indexOf(input);
    const typedOne = event.data?.length === 1; // a separator typed into the middle of a number
    const after = typedOne ? texts.slice(place + 1) : [];
    this.write(field, [...texts.slice(0, place), ...parts, ...after]);
    this.inputs(field)[Math.min(place + parts.length, this.inputs(field).length) - 1]?.focus();
  }

  /** Step a number up or down within what the declaration takes. */
  step(button) {
    const control = button.closest(".calc-control");
    const input = control.querySelector("input");
    const units = system() === "us" ? "Us" : "Si";
    const step = Number(control.dataset[`step${units}`]);
    const low = Number(control.dataset[`low${units}`]);
    const high = Number(control.dataset[`high${units}`]);
    const way = Number(button.dataset.step);
    const text = input.value.trim().replace(",", ".").replace("\u2212", "-");
    let value = Number(text);
    if (text === "") {
      const usual = input.dataset[`usual${units}`];
      value = usual === undefined ? Math.max(low, 0) - way * step : Number(usual);
    }
    if (!Number.isFinite(value)) return;
    const decimals = Math.max(places(text), places(String(step)));
    const stepped = value + way * step;
    const held = way > 0 ? Math.min(stepped, Math.max(high, value)) : Math.max(stepped, Math.min(low, value));
    typed(input, held.toFixed(Math.min(decimals, 9)));
  }

  /** Show or clear the sentences beside their fields; returns those that have no field. */
  showErrors(errors) {
    const rest = [];
    const shown = new Map();
    for (const error of errors) {
      const field = this.byName(error.field);
      if (field) shown.set(field, error);
      else rest.push(error.sentence);
    }
    for (const field of this.fields) {
      const error = shown.get(field);
      const place = field.querySelector(".calc-error");
      place.hidden = !error;
      place.textContent = error ? error.sentence : "";
      const inputs = [...field.querySelectorAll("input, select")];
      inputs.forEach((input, row) => {
        const wrong = error && (error.place === null || error.place === row);
        if (wrong) input.setAttribute("aria-invalid", "true");
        else input.removeAttribute("aria-invalid");
      });
    }
    return rest;
  }

  /** Texts to show in a unit system, with null where only Python can tell. */
  known(units) {
    const missing = {};
    for (const field of this.fields) {
      if (!["number", "count", "numbers", "counts"].includes(field.dataset.kind)) continue;
      const inputs = this.inputs(field);
      if (inputs.some((input) => input.value.trim() && input.dataset[units] === undefined)) {
        missing[field.dataset.input] = inputs.map((input) => input.value);
      }
    }
    return missing;
  }

  /** Turn the fields to a unit system; `converted` holds what Python converted. */
  turn(units, converted) {
    const other = units === "us" ? "si" : "us";
    for (const field of this.fields) {
      this.inputs(field).forEach((input, place) => {
        if (input.tagName === "SELECT") return;
        hint(input, units);
        const told = converted[field.dataset.input]?.[place];
        const text = input.dataset[units] ?? told;
        if (text === undefined) return;
        input.dataset[other] = input.value;
        input.dataset[units] = text;
        input.value = text;
      });
    }
  }
}

/** Mark that a field was typed: its value in the other unit system is no longer known. */
export function typed(input, text) {
  if (text !== undefined) input.value = text;
  if (input.tagName === "SELECT" || input.type === "radio") return;
  const units = system();
  const us = units === "us";
  setPair(input, us ? undefined : input.value, us ? input.value : undefined);
}

/** Show the usual value, which is in force while the field is empty. */
function hint(input, units) {
  const usual = input.dataset[units === "us" ? "usualUs" : "usualSi"];
  if (usual !== undefined) input.placeholder = `usual ${usual}`;
}

function setPair(input, si, us) {
  for (const [key, text] of [["si", si], ["us", us]]) {
    if (text === undefined) delete input.dataset[key];
    else input.dataset[key] = text;
  }
}

/** Split a list; one comma alone in a list of measured numbers may be a decimal comma. */
function split(text, field) {
  let plain = text;
  const commas = (plain.match(/,/g) ?? []).length;
  const decimal = field.dataset.kind === "numbers" && commas === 1 && /\d,\d/.test(plain);
  if (!decimal) plain = plain.replaceAll(",", " ");
  return plain.split(SEPARATORS).filter(Boolean);
}

function places(text) {
  return (text.split(".")[1] ?? "").length;
}
