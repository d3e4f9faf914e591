"""Result as HTML, and the doors through which a page asks for one.

The same functions run when the book is built and in the page's worker, so a worked example and a
live answer cannot differ.
"""

from __future__ import annotations

import time
from collections.abc import Iterable, Mapping, Sequence
from html import escape
from typing import Any

from calc import units
from calc.catalogue import find
from calc.declare import WORDS, Calculator, Incomplete, Number, Numbers
from calc.declare.reading import SAID
from calc.errors import InputError
from calc.sources import source
from docs_build.page import chart, form

ICONS = {
    "stop": "M7 1h10l6 6v10l-6 6H7l-6-6V7Z M6 10.5v3h12v-3Z",
    "caution": "M12 1 23.5 22H.5Z M10.8 8v7h2.4V8Z M10.8 17v2.6h2.4V17Z",
    "note": "M12 1a11 11 0 1 0 0 22 11 11 0 0 0 0-22Z M10.8 6v2.6h2.4V6Z M10.8 10.5V18h2.4v-7.5Z",
}
EXAMPLE = "Worked example, not your values"
YOURS = "Your answer"
ALONE = "With usual values alone"
NOT_TYPED = {
    "job": "From the job",
    "equipment": "From your equipment",
    "usual": "Usual values in use",
}
WITHHELD = f"withheld, see {WORDS['stop']}"


def calculator_html(name: str, given: Mapping[str, Any], case: str = "") -> str:
    """Return the whole section of a calculator: form, and the result of ``given``.

    Parameters
    ----------
    name : name of the calculator
    given : inputs as ``Calculator.run`` takes them
    case : name of the demo case they come from, or nothing
    """
    calculator = find(name)
    result = calculator.run(given)
    told = result.as_dict()
    base = f"calc-{name}" + (f"-{case}" if case else "")
    return (
        f'<section class="calculator" id="{escape(base)}" data-calculator="{escape(name)}" '
        f'data-case="{escape(case)}" data-edition="{escape(told["edition"])}" '
        f'aria-label="Calculator: {escape(calculator.title)}">\n'
        f"{form.form_html(calculator, base)}\n"
        '<div class="calc-brief" hidden><a class="calc-brief-text" '
        f'href="#{escape(base)}-answer"></a></div>\n'
        '<p class="calc-said" role="status"></p>\n'
        '<div class="calc-progress" hidden><progress max="1" value="0" '
        'aria-label="Getting the computing part"></progress> <span></span></div>\n'
        f'<div class="calc-out" id="{escape(base)}-answer" data-state="example">\n'
        f'<p class="calc-state">{EXAMPLE}</p>\n{_given_list(told)}\n'
        f'<div class="calc-answer">{answer_html(told)}</div>\n</div>\n'
        '<div class="calc-tools">'
        '<button type="button" data-do="copy">Copy the result</button> '
        '<button type="button" data-do="link">Copy a link to it</button></div>\n'
        "</section>\n"
    )


def answer_html(told: Mapping[str, Any], customary: bool | None = None) -> str:
    """Return the result fragment of ``Result.as_dict()``.

    Cautions come first, the gravest on top. Values stand in both unit systems and the style sheet
    shows one; figures are drawn in both, or only in the one that ``customary`` names.
    """
    sources = {each["key"]: each for each in told["sources"]}
    hidden = {name for each in told["cautions"] for name in each["hides"]}
    results = [
        (name, each | {"hidden": name in hidden and each["value"] is None})
        for name, each in told["results"].items()
    ]
    # A result that does not apply to these inputs takes no room; one that a stop withholds says so.
    single = [
        (name, each)
        for name, each in results
        if each["kind"] != "table" and (each["value"] is not None or each["hidden"])
    ]
    calculator = find(told["calculator"])
    return "".join(
        [
            _cautions(told["cautions"], ("stop", "caution"), sources),
            _values(calculator, [one for one in single if one[1]["main"]], "answer-main"),
            _cautions(told["cautions"], ("note",), sources),
            *(_figure(each, customary) for each in told["charts"]),
            _values(calculator, [one for one in single if not one[1]["main"]], "answer-more"),
            *(_table(each) for _, each in results if each["kind"] == "table" and each["rows"]),
            _origins_html(told),
            _meanings(calculator, [name for name, each in results if not each["main"]]),
            _sources(told),
        ]
    )


def run(
    name: str, texts: Mapping[str, Any], customary: bool, origins: Mapping[str, str] | None = None
) -> dict[str, Any]:
    """Compute from what stands in a form.

    ``origins`` names the fields that the job or the equipment filled in.

    Returns
    -------
    ``ok`` with ``state`` (words above the answer), ``html``, ``text``, ``brief`` and ``results``
    (value and text of each that has one), and ``complete``, and while it is not, ``next``, the
    field to fill; or ``ok`` false with ``errors``, each
    with field, place in its list (or None) and sentence; ``seconds`` is the time it took
    """
    began = time.perf_counter()
    calculator = find(name)
    given = {field: _without_blanks(value) for field, value in texts.items()}
    try:
        result = calculator.answer(given, customary, origins)
    except InputError as error:
        told: dict[str, Any] = {
            "ok": False,
            "errors": [
                {
                    "field": one.field,
                    "place": _place(texts.get(one.field), one.value),
                    "sentence": one.sentence,
                }
                for one in error.problems
            ],
        }
    else:
        whole = result.as_dict()
        if isinstance(result, Incomplete):
            told = {"ok": True, "complete": False, "results": {}, **_waiting(whole, customary)}
            told["seconds"] = time.perf_counter() - began
            return told
        told = {
            "ok": True,
            "complete": True,
            "state": state(whole),
            "html": answer_html(whole, customary),
            "text": as_text(whole, customary),
            "brief": brief(whole, customary),
            "results": _plain_results(whole, customary),
        }
    told["seconds"] = time.perf_counter() - began
    return told


def state(told: Mapping[str, Any]) -> str:
    """Return whose answer it is: yours only where something of it was given."""
    origins = list(_origins(told).values())
    usual = origins.count("usual")
    if not any(origin in SAID for origin in origins):
        return ALONE
    if not usual:
        return YOURS
    return f"{YOURS}, with {usual} usual value{'' if usual == 1 else 's'}"


def _origins(told: Mapping[str, Any]) -> dict[str, str]:
    return {name: each["origin"] for name, each in told["inputs"].items()}


def waiting_html(told: Mapping[str, Any]) -> str:
    """Return what can be said while values are missing; what is missing leads to its field."""
    sources = {each["key"]: each for each in told["sources"]}
    missing = "".join(
        f'<li><button type="button" data-do="go" data-field="{escape(each["name"])}">'
        f"{escape(each['label'])}</button></li>"
        for each in told["missing"]
    )
    ranges = "".join(
        f"<div><dt>{escape(each['label'])}, over plausible values</dt>"
        f"<dd><b>{both(each['text'], each['customary_text'])}</b></dd></div>"
        for each in told["ranges"].values()
    )
    return (
        _cautions(told["cautions"], ("stop",), sources)
        + '<p class="answer-ask">Still to be given:</p>'
        + f'<ul class="answer-missing">{missing}</ul>'
        + _cautions(told["cautions"], ("caution",), sources)
        + (f'<dl class="answer-more">{ranges}</dl>' if ranges else "")
        + _cautions(told["cautions"], ("note",), sources)
    )


def _waiting(told: Mapping[str, Any], customary: bool) -> dict[str, Any]:
    said = f"{told['known']} of {told['needed']} given"
    labels = [each["label"] for each in told["missing"]]
    stop = brief(told | {"results": {}}, customary)
    return {
        "state": said,
        "html": waiting_html(told),
        "text": f"{told['title']}: {said}. Still to be given: {', '.join(labels)}.\n{stop}",
        "brief": stop or f"{said}. Next: {labels[0]}",
        "next": "" if stop else told["missing"][0]["name"],
    }


def _origins_html(told: Mapping[str, Any]) -> str:
    """Name the values of an answer that nobody typed into this form, by where they come from."""
    made = ""
    for origin, title in NOT_TYPED.items():
        used = [
            f"<dt>{escape(each['label'])}</dt>"
            f"<dd>{both(each['text'], each.get('customary_text', each['text']))}</dd>"
            for each in told["inputs"].values()
            if each["origin"] == origin
        ]
        if used:
            made += (
                f'<details class="answer-fold"><summary>{title} ({len(used)})</summary>'
                f"<dl>{''.join(used)}</dl></details>"
            )
    return made


def _plain_results(told: Mapping[str, Any], customary: bool) -> dict[str, Any]:
    key = "customary_text" if customary else "text"
    return {
        name: {"value": each["value"], "text": each[key]}
        for name, each in told["results"].items()
        if each["kind"] != "table" and each["value"] is not None
    }


def convert(name: str, texts: Mapping[str, Any], to_customary: bool) -> dict[str, Any]:
    """Return typed texts in the other unit system; what cannot be read stays as it is."""
    made = {}
    for each in find(name).inputs:
        text = texts.get(each.name)
        if isinstance(each, Number) and text:
            if isinstance(text, list):
                made[each.name] = [_converted(each, one, to_customary) for one in text]
            else:
                made[each.name] = _converted(each, text, to_customary)
    return made


def brief(told: Mapping[str, Any], customary: bool) -> str:
    """Return the main answers, or the gravest stop, as one line."""
    for caution in told["cautions"]:
        if caution["level"] == "stop":
            return f"{WORDS['stop']}: {caution['text']}"
    key = "customary_text" if customary else "text"
    main = [each for each in told["results"].values() if each["main"] and key in each]
    # The first line of a letter is its title; the rest is for the answer below.
    return "; ".join(f"{each['label']}: {each[key].partition(chr(10))[0]}" for each in main)


def as_text(told: Mapping[str, Any], customary: bool) -> str:
    """Return inputs, cautions and results as plain text, for a message or a notebook.

    A letter is returned alone: what is meant for its writer must not travel with it.
    """
    key = "customary_text" if customary else "text"
    for each in told["results"].values():
        if each["main"] and "\n" in each.get(key, ""):
            return str(each[key])
    lines = [f"{told['title']} (edition {told['edition']})", ""]
    lines += [
        f"{WORDS[each['level']]}: {each['text']} {each['reason']}" for each in told["cautions"]
    ]
    for each in told["results"].values():
        if key in each:
            lines.append(f"{each['label']}: {each[key]}")
        else:
            lines += _table_lines(each, key)
    lines += ["", "From:"]
    lines += [
        f"{each['label']}: {each.get(key, each['text'])}"
        + ("" if each["origin"] == "given" else f" ({each['origin']})")
        for each in told["inputs"].values()
        if each["value"] is not None
    ]
    return "\n".join(lines) + "\n"


def _table_lines(told: Mapping[str, Any], key: str) -> list[str]:
    if not told["rows"]:
        return []
    heads = [column["label"] for column in told["columns"]]
    return [
        f"{told['label']}:",
        *(
            "- " + "; ".join(f"{head}: {cell[key]}" for head, cell in zip(heads, row, strict=True))
            for row in told["rows"]
        ),
    ]


def both(si: str, us: str) -> str:
    """Return a text in both unit systems, once where they agree."""
    if si == us:
        return escape(si)
    return f'<span class="si">{escape(si)}</span><span class="us">{escape(us)}</span>'


def _given_list(told: Mapping[str, Any]) -> str:
    """Return the inputs of the worked example as text: they never stand in the form."""
    rows = "".join(
        f"<div><dt>{escape(each['label'])}</dt>"
        f"<dd>{both(each['text'], each.get('customary_text', each['text']))}</dd></div>"
        for each in told["inputs"].values()
        if each["value"] is not None
    )
    return f'<dl class="calc-given">{rows}</dl>'


def _cautions(
    cautions: Iterable[Mapping[str, Any]], levels: tuple[str, ...], sources: Mapping[str, Any]
) -> str:
    items = "".join(_caution(each, sources) for each in cautions if each["level"] in levels)
    return f'<ul class="answer-cautions">{items}</ul>' if items else ""


def _caution(told: Mapping[str, Any], sources: Mapping[str, Any]) -> str:
    """Write one caution; its reason stands open for a stop and folded for the others."""
    level = told["level"]
    why = f"{escape(told['reason'])} <cite>{_short(sources, told['source'])}</cite>"
    if level == "stop":
        why = f'<p class="answer-why">{why}</p>'
    else:
        why = f"<details><summary>Why</summary><p>{why}</p></details>"
    return (
        f'<li class="answer-{level}"><p><svg viewBox="0 0 24 24" aria-hidden="true">'
        f'<path fill-rule="evenodd" d="{ICONS[level]}"/></svg> '
        f"<strong>{WORDS[level]}:</strong> {escape(told['text'])}</p>{why}</li>"
    )


def _short(sources: Mapping[str, Any], key: str) -> str:
    return escape(source(key).cited()) if key in sources else ""


def _values(
    calculator: Calculator, results: Sequence[tuple[str, Mapping[str, Any]]], css: str
) -> str:
    """Write results by label; only the main ones carry their meaning along."""
    rows = "".join(
        f"<div><dt>{escape(each['label'])}</dt><dd>{_value(each)}"
        + (f"<small>{escape(calculator.out(name).meaning)}</small>" if each["main"] else "")
        + "</dd></div>"
        for name, each in results
    )
    return f'<dl class="{css}">{rows}</dl>' if rows else ""


def _meanings(calculator: Calculator, names: Sequence[str]) -> str:
    rows = "".join(
        f"<dt>{escape(calculator.out(name).label)}</dt><dd>{escape(calculator.out(name).meaning)}</dd>"
        for name in names
    )
    if not rows:
        return ""
    return (
        '<details class="answer-fold"><summary>What these words mean</summary>'
        f"<dl>{rows}</dl></details>"
    )


def _value(told: Mapping[str, Any]) -> str:
    if told["hidden"]:
        return f'<b class="answer-withheld">{WITHHELD}</b>'
    if "\n" in told["text"]:
        return _lines(told["text"])
    # A sentence is not set in the size of a number.
    css = ' class="answer-words"' if len(told["text"]) > 24 else ""
    return f"<b{css}>{both(told['text'], told['customary_text'])}</b>"


def _lines(text: str) -> str:
    """Write a letter with its lines; a calendar becomes a link that saves it as a file."""
    if text.startswith("BEGIN:VCALENDAR"):
        from urllib.parse import quote  # seldom needed, and slow to load on a phone

        data = escape(f"data:text/calendar;charset=utf-8,{quote(text)}")
        return f'<a href="{data}" download="reminders.ics">Save the reminders</a>'
    return f'<span class="answer-letter">{escape(text)}</span>'


def _table(told: Mapping[str, Any]) -> str:
    # A head without words is a plain cell: a screen reader would announce a heading of nothing.
    heads = "".join(
        f'<th scope="col">{escape(each["label"])}</th>' if each["label"] else "<td></td>"
        for each in told["columns"]
    )
    rows = "".join(
        "<tr>" + "".join(f"<td>{both(c['text'], c['customary_text'])}</td>" for c in row) + "</tr>"
        for row in told["rows"]
    )
    label = escape(told["label"])
    return (
        f'<div class="answer-table" tabindex="0" role="region" aria-label="{label}"><table>'
        f"<caption>{label}</caption><thead><tr>{heads}</tr></thead><tbody>{rows}</tbody>"
        "</table></div>"
    )


def _figure(told: Mapping[str, Any], customary: bool | None) -> str:
    same = (
        told["x"]["unit"] == told["x"]["customary"] and told["y"]["unit"] == told["y"]["customary"]
    )
    if same or customary is not None:
        drawn = chart.draw(told, bool(customary))
    else:
        drawn = (
            f'<div class="si">{chart.draw(told, False)}</div>'
            f'<div class="us">{chart.draw(told, True)}</div>'
        )
    return (
        f'<figure class="answer-figure"><figcaption>{escape(told["title"])}</figcaption>'
        f"{drawn}</figure>"
    )


def _sources(told: Mapping[str, Any]) -> str:
    items = "".join(
        f'<li><b>{escape(each["short"])}</b> <span class="mark mark-{escape(each["kind"])}">'
        f"{escape(each['mark'])}</span> {escape(each['text'])}"
        f"{', ' + escape(each['where']) if each['where'] else ''}</li>"
        for each in told["sources"]
    )
    return (
        '<details class="answer-fold answer-sources"><summary>Sources of this answer</summary>'
        f"<ul>{items}</ul></details>"
        f'<p class="answer-edition">Edition {escape(told["edition"])}</p>'
    )


def _without_blanks(value: Any) -> Any:
    """Leave out the empty rows of a list; a list without rows is a missing value."""
    if isinstance(value, list):
        return [one for one in value if not isinstance(one, str) or one.strip()] or None
    return value


def _place(text: Any, value: object) -> int | None:
    """Return which row of a list a refused value stands in."""
    if isinstance(text, list) and value in text:
        return text.index(value)
    return None


def _converted(each: Number, text: str, to_customary: bool) -> str:
    there, here = each.unit, each.customary or each.unit
    if not to_customary:
        there, here = here, there
    if there == here or not str(text).strip():
        return text
    many = str(text).split() if isinstance(each, Numbers) else [str(text)]
    try:
        read = [units.plain(one, there, each.label, each.name, there) for one in many]
    except InputError:
        return text
    return " ".join(form.written(each, units.convert(one, there, here), here) for one in read)
