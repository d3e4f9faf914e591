"""The job sheet as HTML, from the declared fields of a job; the page only fills in the values."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from html import escape
from typing import Any

from calc import EDITION
from calc.catalogue import CALCULATORS
from calc.clients.client_letter import client_letter
from calc.clients.job import Job, reading
from calc.clients.job.declare import NUMERIC, Field, Section
from calc.clients.job.fields import SECTIONS
from calc.clients.job.health import HEALTH_INPUTS
from calc.clients.visit.fields import HOME
from calc.declare import WORDS, Calculator, Caution, Choice
from docs_build.page.answer import both
from docs_build.page.form import unit_html
from docs_build.page.photos_html import photos_html, save_html

UNSEEN = {"values", "typed"}
"""Kinds that no person types."""

PRESSED = [each for home in SECTIONS if home.name == HOME for each in home.fields]
"""What the pages of the visit keep; it is shown there."""

APART = {"calculations", HOME, "photos"}
"""Sections that have a part or pages of their own in place of fields to type."""

DEVICE = {"id", "created", "changed", "edition", "typed_units"}
"""Fields at the top that the device writes."""

MOST_RADIOS = 3
KEYBOARDS = {"phone": "tel", "mail": "email"}


def sheet_html() -> str:
    """Return the list of jobs and the empty form; without scripts only a sentence shows."""
    pressed = [f"{HOME}.{one.name}" for one in PRESSED if one.health]
    return (
        '<div class="job-sheet" data-job-sheet '
        f'data-edition="{escape(EDITION)}" data-largest="{reading.LARGEST}" '
        f'data-health-calculators="{escape(" ".join(HEALTH_INPUTS))}" '
        f'data-health-pressed="{" ".join(pressed)}">\n'
        '<p class="job-static">The job sheet needs scripts. '
        "Without them, write the job on paper.</p>\n"
        f'<div class="job-live" hidden>\n{_head()}\n'
        '<div class="job-open" hidden>\n<p class="job-title"></p><p class="job-facts"></p>\n'
        f"{_switch()}"
        '<form class="job-form" novalidate autocomplete="off" aria-label="The open job">\n'
        + "\n".join(
            _section(each) for each in SECTIONS if each.name == "photos" or _typed_fields(each)
        )
        + f"\n</form>\n{_letter()}\n{_foot()}\n</div>\n{_season()}\n</div>\n</div>\n"
    )


def calculations_html(job: Job) -> str:
    """Return what was computed in a job: title, edition, time, main results and stops."""
    held = job.get("calculations", [])
    if not held:
        return "<p>Nothing yet. Press “Keep in the job” below a calculator's answer.</p>"
    return f'<ul class="job-kept">{"".join(_calculation(each) for each in held)}</ul>'


def differences_html(job: Job, differences: Sequence[Mapping[str, str]]) -> str:
    """Return what comes out different under this edition, by calculator."""
    if not job.get("calculations"):
        return "<p>This job holds no calculation.</p>"
    if not differences:
        return f"<p>Computed again under edition {escape(EDITION)}: nothing has changed.</p>"
    items = "".join(_difference(each) for each in differences)
    return (
        f"<p>Computed again under edition {escape(EDITION)}. The job keeps the old results.</p>"
        f'<ul class="job-kept">{items}</ul>'
    )


def cautions_html(cautions: Sequence[Caution]) -> str:
    """Return what to heed before a letter goes out, stops on top."""
    levels = sorted(cautions, key=lambda each: each.level != "stop")
    return "".join(
        f'<p class="job-caution" data-level="{each.level}">'
        f"<b>{WORDS[each.level]}:</b> {escape(each.text)} "
        f"{escape(each.reason)}</p>"
        for each in levels
    )


def _letter() -> str:
    """Return the part that writes letters; kinds and languages are those of the calculator."""
    choices = "".join(
        f'<div class="job-choice"><label class="calc-label" for="job-letter-{each.name}">'
        f"{escape(each.label)}</label>"
        f'<select id="job-letter-{each.name}" data-letter="{each.name}">'
        + "".join(
            f'<option value="{escape(option.value)}">{escape(option.label)}</option>'
            for option in each.options
        )
        + "</select></div>"
        for each in client_letter.inputs
        if isinstance(each, Choice) and each.name in {"kind", "language"}
    )
    return (
        '<details class="job-part" data-part="letter"><summary>Letters to the client</summary>'
        '<p class="job-meaning">Written from what the job holds. Blanks are for your pen; '
        "a line without its number or date is left out. Nothing on anyone's health is in it.</p>"
        f'{choices}<div class="job-cautions" role="status"></div>'
        '<div class="answer-letter job-letter" role="group" tabindex="0" '
        'aria-label="The letter"></div><div class="job-figures"></div>'
        '<div class="job-bar job-letter-bar" hidden>'
        '<button type="button" data-job="copyLetter">Copy</button>'
        '<button type="button" data-job="shareLetter" hidden>Share</button>'
        '<button type="button" data-job="printLetter">Print</button></div></details>'
    )


def _season() -> str:
    return (
        '<details class="job-part" data-part="season"><summary>The season</summary>'
        '<p class="job-meaning">All jobs on this phone, by year. No client and no health is in '
        "it.</p>"
        '<div class="job-season"></div><div class="job-bar">'
        '<button type="button" data-job="saveRows">Save the table (CSV)</button>'
        '<button type="button" data-job="saveRecords">Save open records (Darwin Core)</button>'
        '</div><p class="job-meaning">Open records round the place and name nobody. '
        "A job without a named wasp or a date gives none.</p></details>"
    )


def _head() -> str:
    return (
        '<p class="job-said" role="status"></p>\n'
        '<ul class="job-list" aria-label="Jobs on this phone"></ul>\n'
        '<div class="job-bar">'
        '<button type="button" data-job="begin" class="job-first">New job</button>'
        '<button type="button" data-job="pick">Open a job file</button>'
        '<input type="file" class="job-file" '
        'accept=".json,.zip,application/json,application/zip" multiple '
        'aria-label="Job files" tabindex="-1" hidden></div>'
    )


def _switch() -> str:
    return (
        '<div class="calc-switch" role="group" aria-label="Units">'
        '<button type="button" data-units="si" aria-pressed="true">Metric</button>'
        '<button type="button" data-units="us" aria-pressed="false">US units</button></div>\n'
    )


def _foot() -> str:
    return (
        '<details class="job-part"><summary>Results</summary>'
        '<div class="job-calculations"></div>'
        '<div class="job-bar"><button type="button" data-job="rerun">'
        'Recalculate</button></div><div class="job-differences" role="status"></div>'
        "</details>\n"
        '<details class="job-part"><summary>Save, share, delete</summary>\n'
        f"{save_html()}"
        "<p>The whole file holds the health facts and the client. Keep it to yourself.</p>"
        '<div class="job-bar"><button type="button" data-job="save">Save the whole job</button>'
        '</div><p>To share it, leave the health facts out.</p><div class="job-bar">'
        '<button type="button" data-job="send">Save without health</button></div>\n'
        "<p>When the job is done, delete what tells of anyone's health. The rest stays.</p>"
        '<div class="job-bar"><button type="button" data-job="wipe">'
        "Delete health facts only</button></div>\n<p>Deleted is gone, unless you saved a file.</p>"
        '<div class="job-bar"><button type="button" data-job="erase" class="job-danger">'
        "Delete this job</button></div>\n</details>\n"
        '<div class="job-bar"><button type="button" data-job="close">Close job</button>'
        "</div>"
    )


def _typed_fields(section: Section) -> list[Field]:
    """Return the fields that a person types; what was computed or pressed stands elsewhere."""
    if section.name in APART:
        return []
    return [
        each
        for each in section.fields
        if each.kind not in UNSEEN and not (section.name == "" and each.name in DEVICE)
    ]


def _section(section: Section) -> str:
    fields = _typed_fields(section)
    health = ' data-health="yes"' if section.name == "health" else ""
    opened = " open" if section.name in {"", "client"} else ""
    if section.name == "photos":
        inner = photos_html()
    else:
        inner = _many(section, fields) if section.most else _fields(section, fields)
    return (
        f'<details class="job-part"{health}{opened}><summary>{escape(section.label)}'
        f'<span class="job-count"></span></summary><p class="job-meaning">'
        f"{escape(section.meaning)}</p>{inner}</details>"
    )


def _fields(section: Section, fields: Iterable[Field]) -> str:
    return "".join(_field(each, f"{section.name}.{each.name}".strip(".")) for each in fields)


def _many(section: Section, fields: Iterable[Field]) -> str:
    """Return the rows of a list and the row that the page copies; 0 stands for its place."""
    row = "".join(_field(each, f"{section.name}.0.{each.name}") for each in fields)
    one = "step" if section.name == "steps" else "entry"
    return (
        f'<ol class="job-rows" data-section="{section.name}" data-most="{section.most}"></ol>'
        f'<template><li class="job-row">{row}<button type="button" data-job="drop">'
        f"Take out this {one}</button></li></template>"
        f'<div class="job-bar"><button type="button" data-job="add" '
        f'data-section="{section.name}">Add a{"n" * (one == "entry")} {one}</button></div>'
    )


def _field(each: Field, path: str) -> str:
    ident = f"job-{path.replace('.', '-')}"
    radios = each.kind == "choice" and len(each.options) <= MOST_RADIOS
    role = f' role="radiogroup" aria-labelledby="{ident}-label"' if radios else ""
    label = (
        f'<span class="calc-label" id="{ident}-label">' if radios
        else f'<label class="calc-label" for="{ident}">'
    )  # fmt: skip
    mark = ' <span class="job-health">health</span>' if each.health else ""
    health = ' data-health="yes"' if each.health else ""
    return (
        f'<div class="job-field" data-path="{path}" data-kind="{each.kind}"{health}{role}>'
        f"{label}{escape(each.label)}{mark}</{'span' if radios else 'label'}>"
        f"{_control(each, ident, path)}"
        f'<p class="job-help" id="{ident}-help">{escape(each.meaning)}</p>'
        f'<p class="calc-error" id="{ident}-error" hidden></p></div>'
    )


def _control(each: Field, ident: str, path: str) -> str:
    common = f'name="{path}" aria-describedby="{ident}-help {ident}-error"'
    if each.kind == "choice":
        return _choice(each, ident, common)
    if each.kind in {"date", "moment"}:
        kind = "date" if each.kind == "date" else "datetime-local"
        now = '<button type="button" data-job="now">Now</button>' if each.kind == "moment" else ""
        return f'<div class="job-line"><input type="{kind}" id="{ident}" {common}>{now}</div>'
    if each.kind == "texts" or each.lines:
        return f'<textarea id="{ident}" rows="3" {common}></textarea>'
    unit = unit_html(each.unit, each.customary) if each.kind in NUMERIC else ""
    keypad = {"number": "decimal", "count": "numeric"}.get(each.kind, "")
    keypad = keypad or KEYBOARDS.get(each.name, "text")
    return (
        f'<div class="job-line"><input type="text" inputmode="{keypad}" id="{ident}" {common}>'
        f"{unit}</div>"
    )


def _choice(each: Field, ident: str, common: str) -> str:
    if len(each.options) > MOST_RADIOS:
        empty = '<option value=""></option>' if each.options[0][0] != "unknown" else ""
        items = "".join(
            f'<option value="{escape(value)}">{escape(label)}</option>'
            for value, label in each.options
        )
        return f'<select id="{ident}" {common}>{empty}{items}</select>'
    items = "".join(
        f'<label class="job-radio"><input type="radio" value="{escape(value)}" {common}>'
        f"<span>{escape(label)}</span></label>"
        for value, label in each.options
    )
    return f'<div class="job-radios">{items}</div>'


def _calculation(entry: Mapping[str, Any]) -> str:
    calculator = CALCULATORS.get(entry["calculator"])
    title = calculator.title if calculator else entry["calculator"]
    lines = [escape(f"{WORDS['stop']}: {each}") for each in entry.get("stops", [])]
    if entry.get("wiped"):
        lines.append("Results deleted with the health facts.")
    if calculator and not lines:
        lines = _main_results(calculator, entry.get("results", {}))
    told = "".join(f"<li>{line}</li>" for line in lines)
    return (
        f"<li><b>{escape(title)}</b> <small>edition {escape(entry['edition'])}, "
        f"{escape(entry['time'][:16].replace('T', ' '))}</small><ul>{told}</ul></li>"
    )


def _main_results(calculator: Calculator, results: Mapping[str, Any]) -> list[str]:
    """Return the main results as HTML, in both unit systems, the first line of a letter only."""
    lines = []
    for out in calculator.outputs:
        stored = results.get(out.name)
        if not out.main or stored is None:
            continue
        named = isinstance(stored, dict)
        value, unit = (stored["value"], stored.get("unit", "")) if named else (stored, out.unit)
        try:
            told = [out.text(value, way).partition("\n")[0] for way in (False, True)]
        except (ValueError, TypeError, AttributeError):
            continue  # Stored by another edition in a form that this one does not write.
        if unit == out.unit:
            lines.append(f"{escape(out.label)}: {both(*told)}")
    return lines


def _difference(told: Mapping[str, str]) -> str:
    head = told["title"] + (f": {told['label']}" if told["label"] else "")
    if told["kind"] in {"changed", "gone", "new"}:
        text = f"{told['then'] or 'not computed'} → {told['now'] or 'no longer computed'}"
    else:
        text = told["now"] or told["then"]
    return (
        f"<li><b>{escape(head)}</b> <small>edition {escape(told['edition_then'])} → "
        f"{escape(told['edition_now'])}</small><ul><li>{escape(text)}</li></ul></li>"
    )
