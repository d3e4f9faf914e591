"""The pass timer and tally as HTML; the page only fills in counts, times and what Python says."""

from __future__ import annotations

from html import escape

from calc import EDITION

PAPER_ROWS = 8
"""Rows of the paper form: more passes than most jobs take, on half a sheet."""


START = 'Start pass <b class="tally-next">1</b>'


def tally_html(up: str) -> str:
    """Return the tally, hidden until scripts run: the list of passes, and the screen of a pass.

    ``up`` leads from the page to the root of the site.
    """
    return (
        f'<section class="tally" data-tally data-edition="{escape(EDITION)}" hidden '
        'aria-label="Pass timer and tally">\n'
        '<p class="tally-job"></p>\n'
        f"{_button('start', START, 'tally-start')}\n"
        f"{_ask()}\n"
        '<p class="tally-said" role="status"></p>\n'
        '<ol class="tally-passes" aria-label="Passes"></ol>\n'
        f"{_row()}\n"
        '<div class="tally-cautions"></div>\n<p class="tally-told" role="status"></p>\n'
        f'<div class="tally-bar">{_button("undo", "Undo", "tally-undo")}'
        f"{_button('add', 'Type a pass')}"
        f'<a class="tally-more" href="{up}method/how_many_left.html">Full calculator</a>'
        f'<a href="{up}method/pass_tally.html#weigh-the-chamber-instead">'
        "Weigh the chamber</a></div>\n"
        f"{_field('planned', 'Planned minutes of a pass', 'decimal', 'May stay empty.')}\n"
        f'<div class="tally-bar">{_button("take", "Take the count by weight", "tally-take")}'
        f"{_button('clear', 'New count')}</div>\n"
        f"{_screen()}\n</section>\n"
    )


def paper_text() -> str:
    """Return the paper form as MyST: one row a pass."""
    heads = "| Pass | Minutes | Counted | Chamber empty | Chamber with catch |"
    rows = "\n".join(f"| {place} | | | | |" for place in range(1, PAPER_ROWS + 1))
    return f"{heads}\n| --- | --- | --- | --- | --- |\n{rows}\n"


def _button(what: str, words: str, css: str = "") -> str:
    named = f' class="{css}"' if css else ""
    return f'<button type="button" data-tally-do="{what}"{named}>{words}</button>'


def _field(name: str, label: str, keypad: str, more: str = "") -> str:
    small = f" <small>{escape(more)}</small>" if more else ""
    return (
        f'<label class="tally-field">{escape(label)}{small}'
        f'<input type="text" inputmode="{keypad}" autocomplete="off" '
        f'data-tally-in="{name}"></label>'
    )


def _ask() -> str:
    return (
        '<div class="tally-ask" hidden><p>The clock of this phone was changed, or the pass ran for '
        "more than a day. How many minutes did it take?</p>"
        f"{_field('asked', 'Minutes of this pass', 'decimal')}"
        f'<div class="tally-bar">{_button("asked", "Keep the pass")}</div></div>'
    )


def _row() -> str:
    """Return the row of a pass, which the page copies."""
    return (
        '<template><li><button type="button" class="tally-pass" data-tally-do="open" '
        'aria-expanded="false"></button><div class="tally-edit" hidden>'
        f"{_field('n', 'Caught', 'numeric')}{_field('minutes', 'Minutes', 'decimal')}"
        f'<div class="tally-bar">{_button("set", "Keep")}{_button("drop", "Delete this pass")}'
        "</div></div></li></template>"
    )


def _screen() -> str:
    """Return the screen of a running pass: far-off buttons above, the tap below."""
    return (
        '<dialog class="tally-run" aria-label="A pass runs">'
        f'<div class="tally-top">{_button("leave", "Back to book")}'
        '<p><span class="tally-which"></span> <b class="tally-time" role="timer">0:00</b></p>'
        f"{_button('end', 'End pass')}</div>"
        '<div class="tally-few">'
        f"{_button('undo', 'Undo', 'tally-undo')}"
        '<button type="button" data-tap="5">+5</button>'
        '<button type="button" data-tap="10">+10</button></div>'
        '<p class="tally-count">0</p>'
        '<p class="tally-line"></p>'
        '<p class="tally-voice" aria-live="polite"></p>'
        '<button type="button" class="tally-tap" data-tap="1">+1</button></dialog>'
    )
