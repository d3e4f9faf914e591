"""The pages of the visit as HTML: where I am, the clock, the steps; scripts only fill in states."""

from __future__ import annotations

import json
from collections.abc import Mapping
from html import escape
from typing import Any

from calc import EDITION, tables
from calc.clients.job.fields import section
from calc.clients.visit.times import LONGEST

JOB_SHEET = "../clients/the_job.html"


def steps() -> tuple[Mapping[str, Any], ...]:
    """Return the steps of the visit in order."""
    return tables.rows("visit_steps")


def step_html(key: str) -> str:
    """Return the head of a step's page: its place among the steps, the clock, the turn bar."""
    keys = [each["key"] for each in steps()]
    place = keys.index(key)
    step = steps()[place]
    return (
        f'<div class="visit" data-visit="{key}" {_facts()}>\n'
        f'<p class="visit-where">Step <b>{place + 1}</b> of {len(keys)} · '
        f'<a href="index.html">All steps</a></p>\n'
        f'<p class="visit-does">{escape(step["does"])}</p>\n'
        f"{_live(_clock(step))}</div>\n{_turn(place)}"
    )


def list_html() -> str:
    """Return all steps as links, each with room for its state."""
    items = "".join(
        f'<li data-step="{each["key"]}"><a href="{each["key"]}.html"><b>{escape(each["name"])}</b>'
        f'<small>{escape(each["does"])}</small><span class="visit-state"></span></a></li>'
        for each in steps()
    )
    signs = {each["key"]: each["sign"] for each in tables.rows("visit_stops")}
    return f'<ol class="visit-list" data-signs="{escape(json.dumps(signs))}">{items}</ol>\n'


def index_html() -> str:
    """Return the head of the visit's first page: the job, the one big button, the list of steps."""
    go = f'<a class="visit-go" href="{steps()[0]["key"]}.html">Start: {steps()[0]["name"]}</a>'
    return (
        f'<div class="visit" data-visit="" {_facts()}>\n{_live()}'
        f'{go}\n<p class="visit-told" role="status"></p>\n{list_html()}</div>\n'
    )


def missing_html() -> str:
    """Return what the record should hold after the visit; scripts hide what it holds."""
    items = "".join(
        f'<li data-path="{path}">{escape(_label(path))} <small>{escape(each["name"])}</small></li>'
        for each in steps()
        for path in each.get("record", ())
    )
    return (
        '<p class="visit-whole" hidden>Nothing of this list is missing in the job.</p>'
        f'<ul class="visit-missing">{items}</ul>\n'
        f'<p><a class="visit-link" href="{JOB_SHEET}">Fill in the job sheet</a></p>\n'
        f'<p><a class="visit-link" href="{JOB_SHEET}#job-letter-kind">Write the letter</a></p>\n'
    )


def looked_html() -> str:
    """Return the press that says that no stop of the list is there."""
    return (
        '<div class="visit-none" hidden><button type="button" data-visit-do="looked">'
        'None found</button><p class="visit-look" role="status"></p></div>\n'
    )


def _facts() -> str:
    """Return what the scripts need to know: the steps in order, the longest that is believed."""
    named = escape(json.dumps({each["key"]: each["name"] for each in steps()}))
    milliseconds = f"{LONGEST.total_seconds() * 1000:.0f}"
    return f'data-edition="{escape(EDITION)}" data-steps="{named}" data-longest="{milliseconds}"'


def _label(path: str) -> str:
    head, _, name = path.partition(".")
    found = section(head)
    field = found.field(name) if found else None
    if field is None:
        raise LookupError(f"visit_steps: {path} is no field of a job")
    return field.label


def _live(clock: str = "") -> str:
    """Return what shows only with scripts: the job or the way to one, and the clock of a step."""
    return (
        '<div class="visit-live"><div class="visit-inner" hidden>\n'
        f'<p class="visit-job" hidden>Job: <a href="{JOB_SHEET}"></a></p>\n'
        '<div class="visit-nojob" hidden><p>No job is open: nothing you press is kept.</p>'
        '<div class="visit-bar"><button type="button" data-visit-do="open">New job</button>'
        f'<a class="visit-link" href="{JOB_SHEET}">Choose a job</a></div></div>\n'
        f'{clock}<p class="visit-said" role="status"></p>\n</div></div>\n'
    )


def _clock(step: Mapping[str, Any]) -> str:
    return (
        '<div class="visit-clock" hidden><p><b class="visit-time"></b> '
        '<span class="visit-since"></span></p>'
        '<button type="button" data-visit-do="undo" hidden>Undo</button></div>\n'
        '<div class="visit-ring" role="alert" hidden><b>Time is up.</b> '
        '<button type="button" data-visit-do="again">Again</button>'
        '<button type="button" data-visit-do="quiet">Off</button></div>\n'
        '<div class="visit-stopped" role="alert" hidden><b>A stop is marked.</b><div></div></div>\n'
        '<p class="visit-other" hidden></p>\n'
        f"{_times(step)}"
    )


def _times(step: Mapping[str, Any]) -> str:
    link = ""
    if step.get("timer"):
        link = f'<p><a href="../{step["timer"]}.html">{escape(step["timer_words"])}</a></p>'
    return (
        '<details class="visit-times" hidden><summary>Times and alarm'
        '<span class="visit-alarm"></span></summary>'
        f"{_moment('begun', 'Started')}{_moment('done', 'Done')}"
        "<label>Buzz and flash after <small>min, while this page shows</small>"
        '<input type="text" inputmode="decimal" autocomplete="off" data-visit-in="minutes"></label>'
        f'{link}<div class="visit-bar"><button type="button" data-visit-do="ring">Set the alarm'
        '</button><button type="button" data-visit-do="quiet">No alarm</button></div></details>\n'
    )


def _moment(name: str, label: str) -> str:
    return f'<label>{label}<input type="datetime-local" step="1" data-visit-in="{name}"></label>'


def _turn(place: int) -> str:
    """Return the bar at the thumb: back, the press of the step, on."""
    found, whole = steps(), {"key": "index", "name": "On site"}
    before = found[place - 1] if place else whole
    after = found[place + 1] if place + 1 < len(found) else whole
    return (
        '<nav class="visit-turn" aria-label="Steps on site">'
        f'<a href="{before["key"]}.html"><span aria-hidden="true">‹</span>'
        f'<span class="visit-hide">Back: </span>{escape(before["name"])}</a>'
        '<button type="button" data-visit-do="press" hidden></button>'
        f'<a class="visit-on" href="{after["key"]}.html"><span class="visit-hide">On: </span>'
        f'{escape(after["name"])}<span aria-hidden="true">›</span></a></nav>\n'
    )
