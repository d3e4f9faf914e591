"""Letters and calendars among the results: lines are kept, copying takes the letter alone."""

from __future__ import annotations

import re
from html import escape
from urllib.parse import unquote

import icalendar

from calc.clients.client_letter import client_letter
from calc.clients.follow_up import follow_up
from docs_build.page.answer import answer_html, as_text, brief


def test_a_letter_keeps_its_lines_on_the_page() -> None:
    told = client_letter.run(client_letter.example()).as_dict()
    html = answer_html(told)
    assert (
        f'<span class="answer-letter">{escape(told["results"]["letter"]["value"])}</span>' in html
    )


def test_copying_takes_the_letter_alone() -> None:
    told = client_letter.run(client_letter.example()).as_dict()
    text = as_text(told, customary=False)
    assert text == told["results"]["letter"]["value"]
    assert "Read it before you send it" not in text
    assert brief(told, customary=False) == "The letter: Before we come"


def test_a_withheld_letter_is_not_copied() -> None:
    told = client_letter.run(
        client_letter.example() | {"kind": "quote", "animal": "bees"}
    ).as_dict()
    text = as_text(told, customary=False)
    assert "STOP: Bees are never taken out" in text


def test_reminders_are_a_file_to_save() -> None:
    html = answer_html(follow_up.run(follow_up.example()).as_dict())
    link = re.search(r'href="data:text/calendar;charset=utf-8,([^"]+)" download', html)
    assert link is not None
    read = icalendar.Calendar.from_ical(unquote(link[1]))
    assert len(read.walk("VEVENT")) == 5
