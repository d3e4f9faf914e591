"""The form of a calculator as HTML, from its declaration."""

from __future__ import annotations

import math
from html import escape

from calc import units
from calc.clients.job.health import HEALTH_INPUTS
from calc.declare import Calculator, Choice, Day, Input, Number, Numbers, Time
from calc.sources import source

MOST_RADIOS = 3
"""A choice of more options becomes a list to open, so that the form stays short on a phone."""

USUAL = "usual"
NOT_GIVEN = "not answered"


def form_html(calculator: Calculator, base: str) -> str:
    """Return the empty form; a usual value stands in its field as a hint and is in force.

    ``base`` starts every id, so that one calculator can stand twice in a page.
    """
    marked = HEALTH_INPUTS.get(calculator.name, ())
    fields = "\n".join(_field(each, base, each.name in marked) for each in calculator.inputs)
    switch = _switch() if any(_has_two(each) for each in calculator.inputs) else ""
    return (
        f'<form class="calc-form" novalidate autocomplete="off" '
        f'aria-label="{escape(calculator.title)}: what you know">\n'
        f'{switch}<div class="calc-fields">\n{fields}\n</div>\n'
        '<div class="calc-bar"><button type="button" data-do="reset">Start again</button>'
        '<button type="button" data-do="undo" hidden>Undo</button></div>\n</form>'
    )


def written(each: Number, value: float, unit: str) -> str:
    """Write a value for its field: the declared decimals, more where they would change it."""
    digits = max(each.digits_in(unit), 0)
    exact = float(f"{value:.12g}")
    while digits < 6 and abs(round(exact, digits) - exact) > 0.0005 * abs(exact):
        digits += 1
    return units.show(exact, digits)


def _has_two(each: Input) -> bool:
    return isinstance(each, Number) and bool(each.customary) and each.customary != each.unit


def _switch() -> str:
    return (
        '<div class="calc-switch" role="group" aria-label="Units">'
        '<button type="button" data-units="si" aria-pressed="true">Metric</button>'
        '<button type="button" data-units="us" aria-pressed="false">US units</button></div>'
    )


def _field(each: Input, base: str, health: bool) -> str:
    ident = f"{base}-{each.name}"
    if isinstance(each, Numbers):
        role, css, inner = "group", "calc-field calc-list", _list(each, ident)
    elif isinstance(each, Number):
        role, css, inner = "", "calc-field", _number(each, ident)
    elif isinstance(each, Choice) and len(each.options) <= MOST_RADIOS:
        role, css, inner = "radiogroup", "calc-field calc-radios", _radios(each, ident)
    elif isinstance(each, Choice):
        role, css, inner = "", "calc-field", _select(each, ident)
    elif isinstance(each, Day | Time):
        role, css, inner = "", "calc-field", _moment(each, ident)
    else:
        raise TypeError(f"no form field for {type(each).__name__}")
    when = ""
    if each.only_if is not None:
        when = f' data-when="{escape(each.only_if[0])}" data-values="{_joined(each.only_if[1])}"'
    if isinstance(each, Choice) and each.usual is not None:  # What it hides hangs on it.
        when += f' data-usual="{escape(each.usual)}"'
    if health:  # The page leaves it out of links.
        when += ' data-health="yes"'
    group = f' role="{role}" aria-labelledby="{ident}-label"' if role else ""
    return (
        f'<div class="{css}" data-input="{each.name}" data-kind="{each.kind}" '
        f'data-origin="{each.origin}"{when}{group}>{inner}'
        f'<p class="calc-error" id="{ident}-error" hidden></p></div>'
    )


def _joined(values: tuple[str, ...]) -> str:
    return escape(" ".join(values))


def _label(each: Input, ident: str, tag: str) -> str:
    """Return the label, the button that opens the help, and the help."""
    aim = f'for="{ident}"' if tag == "label" else f'id="{ident}-label"'
    optional = ' <span class="calc-optional">(optional)</span>' if each.optional else ""
    return (
        f'<{tag} class="calc-label" {aim}>{escape(each.label)}{optional}</{tag}>'
        f'<button type="button" class="calc-ask" aria-expanded="false" '
        f'aria-controls="{ident}-help" aria-label="Help: {escape(each.label)}">?</button>'
        f'<p class="calc-help" id="{ident}-help" hidden>{_help(each)}</p>'
    )


def _help(each: Input) -> str:
    text = escape(each.meaning)
    if isinstance(each, Number):
        text += (
            f" <span>Taken: {escape(each.allowed())}. "
            f"<cite>{escape(source(each.source).cited())}</cite></span>"
        )
    return text


def _texts(each: Number, value: float | None) -> tuple[str, str]:
    """Return a value as text in both unit systems."""
    if value is None:
        return "", ""
    us = each.customary or each.unit
    return written(each, value, each.unit), written(each, units.convert(value, each.unit, us), us)


def _number(each: Number, ident: str) -> str:
    si, us = _texts(each, each.usual)
    return _label(each, ident, "label") + _control(each, ident, si, us, each.label)


def _moment(each: Day | Time, ident: str) -> str:
    kind = "date" if isinstance(each, Day) else "time"
    return (
        f'{_label(each, ident, "label")}<div class="calc-control"><span class="calc-box">'
        f'<input type="{kind}" id="{ident}" name="{each.name}" '
        f'aria-describedby="{_described(ident)}"></span></div>'
    )


def _control(each: Number, ident: str, si: str, us: str, label: str) -> str:
    """Return the empty field; ``si`` and ``us`` are the usual value, shown as a hint."""
    keypad = "numeric" if each.kind in {"count", "counts"} else "decimal"
    less = more = ""
    if each.step:
        less, more = _step("-1", f"{label}: less", "−"), _step("1", f"{label}: more", "+")
    return (
        f'<div class="calc-control"{_steps(each)}>{less}'
        f'<span class="calc-box"><input type="text" id="{ident}" name="{each.name}" '
        f'inputmode="{keypad}" enterkeyhint="next"{_hint(si, us)} '
        f'aria-describedby="{_described(ident)}">'
        f"{unit_html(each.unit, each.customary)}</span>"
        f"{more}</div>"
    )


def _hint(si: str, us: str) -> str:
    if not si:
        return ""
    return (
        f' placeholder="{USUAL} {escape(si)}" data-usual-si="{escape(si)}" '
        f'data-usual-us="{escape(us)}"'
    )


def _described(ident: str) -> str:
    """Return help and error; the rows of a list share those of the list."""
    whole = ident.partition("-row-")[0]
    return f"{whole}-help {whole}-error"


def _step(way: str, label: str, sign: str) -> str:
    return (
        f'<button type="button" class="calc-step" data-step="{way}" '
        f'aria-label="{escape(label)}">{sign}</button>'
    )


def unit_html(unit: str, customary: str) -> str:
    """Return the unit beside a field, in both unit systems where they differ."""
    si, us = units.label(unit), units.label(customary or unit)
    if not si and not us:
        return ""
    if si == us:
        return f'<span class="calc-unit">{escape(si)}</span>'
    return (
        f'<span class="calc-unit"><span class="si">{escape(si)}</span>'
        f'<span class="us">{escape(us)}</span></span>'
    )


def _steps(each: Number) -> str:
    """Return how far a press on plus or minus goes, and where it stops, in both unit systems."""
    if not each.step:
        return ""
    made = ""
    for key, unit in (("si", each.unit), ("us", each.customary or each.unit)):
        low, high = (units.convert(end, each.unit, unit) for end in (each.low, each.high))
        step = each.step if unit == each.unit else _round_step(each, unit)
        made += (
            f' data-step-{key}="{step:g}" data-low-{key}="{low:.10g}" data-high-{key}="{high:.10g}"'
        )
    return made


def _round_step(each: Number, unit: str) -> float:
    """Return the step in another unit, as the nearest of 1, 2, 5, 10, ..."""
    start = units.convert(0.0, each.unit, unit)
    step = units.convert(each.step or 1.0, each.unit, unit) - start
    power = 10.0 ** math.floor(math.log10(step))
    near = min((1.0, 2.0, 5.0, 10.0), key=lambda each: abs(math.log(each * power / step)))
    return near * power


def _list(each: Numbers, ident: str) -> str:
    usual: tuple[float | None, ...] = each.usual or (None,) * max(each.least, 1)
    rows = "".join(_row(each, place, one, ident) for place, one in enumerate(usual, start=1))
    item = escape(each.item)
    return (
        f"{_label(each, ident, 'span')}"
        f'<ol class="calc-rows" data-item="{item}" data-least="{each.least}" '
        f'data-most="{each.most}">{rows}</ol>'
        f"<template>{_row(each, 0, None, ident)}</template>"
        f'<div class="calc-rows-bar"><button type="button" data-do="add">One more {item}</button>'
        f'<button type="button" data-do="remove">Remove the last</button></div>'
    )


def _row(each: Numbers, place: int, value: float | None, ident: str) -> str:
    si, us = _texts(each, value)
    name = f"{each.item[:1].upper()}{each.item[1:]} {place}"
    row = f"{ident}-row-{place}"
    return (
        f'<li class="calc-row"><label for="{row}">{escape(name)}</label>'
        f"{_control(each, row, si, us, name)}</li>"
    )


def _radios(each: Choice, ident: str) -> str:
    items = "".join(
        f'<label class="calc-radio"><input type="radio" name="{each.name}" '
        f'value="{escape(option.value)}" aria-describedby="{_described(ident)}">'
        f"<span>{escape(option.label)}{_usual(each, option.value)}{_meaning(option.meaning)}"
        "</span></label>"
        for option in each.options
    )
    return f"{_label(each, ident, 'span')}{items}"


def _usual(each: Choice, value: str) -> str:
    return f' <em class="calc-usual">({USUAL})</em>' if each.usual == value else ""


def _told(meaning: str) -> str:
    return f' data-meaning="{escape(meaning)}"' if meaning else ""


def _meaning(text: str) -> str:
    return f" <small>{escape(text)}</small>" if text else ""


def _select(each: Choice, ident: str) -> str:
    usual = next((one for one in each.options if one.value == each.usual), None)
    none = f"{USUAL}: {usual.label}" if usual else NOT_GIVEN
    meaning = usual.meaning if usual else ""
    items = f'<option value=""{_told(meaning)} selected>{escape(none)}</option>'
    items += "".join(
        f'<option value="{escape(option.value)}"{_told(option.meaning)}>'
        f"{escape(option.label)}</option>"
        for option in each.options
    )
    return (
        f'{_label(each, ident, "label")}<select id="{ident}" name="{each.name}" '
        f'aria-describedby="{_described(ident)}">{items}</select>'
        f'<p class="calc-chosen">{escape(meaning)}</p>'
    )
