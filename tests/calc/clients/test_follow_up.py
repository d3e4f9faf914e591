"""Follow-up: dates, rules, cautions, and the calendar read back by a library."""

from __future__ import annotations

import datetime
from typing import Any

import icalendar
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.clients import aftercare
from calc.clients.follow_up import closing
from calc.clients.follow_up import follow_up as calculator
from calc.clients.follow_up.icalendar_text import Event, escaped, folded, icalendar_text
from calc.declare import Incomplete, Result
from calc.errors import InputError

DAY = datetime.date(2026, 8, 20)
LETTERS = st.text(st.characters(exclude_categories=("Cs", "Cc", "Zl", "Zp")), max_size=200)


def follow_up(**changed: Any) -> Result:
    """Run the worked example with some values changed."""
    return calculator.run(calculator.example() | changed)


def levels(result: Any, level: str) -> str:
    return " ".join(each.text for each in result.cautions if each.level == level)


def events(text: str) -> list[Any]:
    return icalendar.Calendar.from_ical(text).walk("VEVENT")


@pytest.mark.library("icalendar")
def test_calendar_is_read_back_by_a_library() -> None:
    # icalendar 7.3.2, Calendar.from_ical
    made = [
        Event(day=DAY, summary="Look; count, note", description="first\nsecond \\ third"),
        Event(day=DAY + datetime.timedelta(days=4), summary="Zweiter Blick, äöü " * 8),
    ]
    text = icalendar_text(made, DAY)
    read = icalendar.Calendar.from_ical(text)
    assert read["VERSION"] == "2.0"
    assert not read.errors
    found = read.walk("VEVENT")
    assert [event.decoded("DTSTART") for event in found] == [each.day for each in made]
    assert [str(event["SUMMARY"]) for event in found] == [each.summary for each in made]
    assert str(found[0]["DESCRIPTION"]) == made[0].description
    assert found[0].decoded("DTSTAMP") == datetime.datetime(2026, 8, 20, tzinfo=datetime.UTC)


@pytest.mark.library("icalendar")
def test_alarm_is_read_back_by_a_library() -> None:
    # icalendar 7.3.2, component VALARM: nine in the morning of the day
    alarm = icalendar.Calendar.from_ical(icalendar_text([Event(day=DAY, summary="x")], DAY)).walk(
        "VALARM"
    )[0]
    assert alarm.decoded("TRIGGER") == datetime.timedelta(hours=9)
    assert alarm["ACTION"] == "DISPLAY"


@pytest.mark.library("icalendar")
@settings(max_examples=150, deadline=None)
@given(LETTERS, LETTERS)
def test_any_words_come_back_as_they_went_in(summary: str, description: str) -> None:
    # icalendar 7.3.2, vText of SUMMARY and DESCRIPTION
    text = icalendar_text([Event(day=DAY, summary=summary, description=description)], DAY)
    event = events(text)[0]
    kept = [
        "".join(sign if sign.isprintable() else " " for sign in given)
        for given in (summary, description)
    ]
    assert str(event["SUMMARY"]) == kept[0]
    assert str(event.get("DESCRIPTION", "")) == kept[1]


@pytest.mark.library("icalendar")
@settings(max_examples=100, deadline=None)
@given(st.text(st.characters(exclude_categories=("Cs", "Cc", "Zl", "Zp")), max_size=400))
def test_folding_against_a_library(line: str) -> None:
    # icalendar 7.3.2, Contentline.from_ical unfolds what we folded; RFC 5545, 3.1: 75 octets
    folds = folded(line)
    assert all(len(part.encode()) <= 75 for part in folds.split("\r\n"))
    assert icalendar.parser.Contentlines.from_ical(folds + "\r\n")[0] == line


@pytest.mark.parametrize("sign", ["x", "ä", "€", "😀", " "])
@pytest.mark.parametrize("length", [74, 75, 76, 77, 149, 150, 300])
def test_long_lines_are_folded_between_letters(sign: str, length: int) -> None:
    folds = folded(sign * length).split("\r\n")
    assert all(len(part.encode()) <= 75 for part in folds)
    assert all(part.startswith(" ") for part in folds[1:])
    assert folds[0] + "".join(part[1:] for part in folds[1:]) == sign * length
    # no fold comes earlier than it must
    assert all(len(part.encode()) + len(sign.encode()) > 75 for part in folds[:-1])


def test_every_line_ends_with_both_signs() -> None:
    text = icalendar_text([Event(day=DAY, summary="x")], DAY)
    assert text.endswith("END:VCALENDAR\r\n")
    assert "\n" not in text.replace("\r\n", "")


def test_escapes() -> None:
    assert escaped("a;b,c\\d\ne") == "a\\;b\\,c\\\\d\\ne"


def test_names_of_events_are_their_own() -> None:
    text = icalendar_text([Event(day=DAY, summary=each) for each in "ab"], DAY)
    assert len({str(event["UID"]) for event in events(text)}) == 2
    assert text == icalendar_text([Event(day=DAY, summary=each) for each in "ba"], DAY)


@pytest.mark.library("icalendar")
def test_reminders_of_the_calculator_are_read_back() -> None:
    # icalendar 7.3.2
    result = follow_up(comb="part")
    found = events(result.values["calendar"])
    assert len(found) == len(result.values["looks"]) == 6
    days = [event.decoded("DTSTART") for event in found]
    assert days == sorted(days)
    assert days[0] == datetime.date(2026, 8, 23)


def test_looks_by_hand() -> None:
    assert aftercare.looks(DAY) == (
        datetime.date(2026, 8, 23),
        datetime.date(2026, 8, 27),
        datetime.date(2026, 9, 10),
    )
    # the last look covers the longest sealed time of every animal
    for animal in aftercare.GROUPS:
        assert aftercare.last_emergence(DAY, animal) <= aftercare.looks(DAY)[2]


def test_stragglers_fade() -> None:
    # mean life 4.98 d: half in 3.45, nine of ten in 11.47 by hand
    values = follow_up(left_out=1).values
    assert values["half_gone"] == pytest.approx(3.452, abs=0.001)
    assert values["most_gone"] == pytest.approx(11.467, abs=0.001)
    # one animal: -4.98 ln 0.05
    assert values["all_gone"] == pytest.approx(14.919, abs=0.001)
    assert follow_up(left_out=0).values["all_gone"] == 0
    assert follow_up().values["all_gone"] is None
    assert closing.straggler_days(50) > closing.straggler_days(5)


@given(st.dates(datetime.date(1950, 1, 1), datetime.date(2100, 12, 31)), st.booleans())
def test_spring_lies_ahead_within_a_year(day: datetime.date, south: bool) -> None:
    for animal in aftercare.GROUPS:
        spring = aftercare.spring_day(day, animal, south)
        assert 0 < (spring - day).days <= 366


def test_spring_is_half_a_year_apart() -> None:
    north, south = (aftercare.spring_day(DAY, "crabro", each) for each in (False, True))
    assert (north.month - south.month) % 12 == 6


@pytest.mark.parametrize(
    ("first", "second", "indoors", "reason"),
    [
        (None, None, False, ""),
        (40, None, False, ""),
        (40, 8, False, ""),  # a fifth exactly
        (40, 9, False, "slow"),
        (100, 10, False, ""),
        (100, 11, False, "many"),
        (None, 10, False, ""),
        (None, 11, False, "many"),
        (0, 0, True, "indoors"),
        (0, 3, False, ""),
    ],
)
def test_call_back_rule(first: int | None, second: int | None, indoors: bool, reason: str) -> None:
    assert closing.call_back(closing.Counts(first, second, indoors)) == reason


def test_closing_needs_two_looks_at_nothing() -> None:
    assert follow_up().values["seal_from"].startswith("Not yet")
    assert follow_up(first_count=0).values["seal_from"].startswith("Not yet")
    both = follow_up(first_count=0, second_count=0)
    assert both.values["seal_from"].startswith("Now")
    assert "close the hole" in both.values["verdict"]
    vent = follow_up(first_count=0, second_count=0, hole="vent").values["seal_from"]
    assert "free area" in vent


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"hole": "flue"}, "Never screen or close a flue"),
        ({"first_count": 5}, "Never seal a hole that wasps still use"),
        ({"first_count": 0, "second_count": 1}, "Never seal a hole that wasps still use"),
        ({"first_count": 0, "second_count": 0, "indoors": "yes"}, "Never seal a hole"),
    ],
)
def test_each_stop_hides_the_closing(change: dict[str, Any], words: str) -> None:
    result = follow_up(**change)
    assert words in levels(result, "stop")
    assert result.values["seal_from"] is None


def test_a_hole_no_longer_used_is_no_stop() -> None:
    assert levels(follow_up(first_count=9, second_count=0), "stop") == ""


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({}, "Count from the side"),
        ({"indoors": "yes"}, "Keep that room shut"),
        ({"second_count": 11}, "full job"),
        ({"first_count": 20, "second_count": 6}, "full job"),
        ({"mesh": 6}, "does not keep them out"),
        ({"mesh": 3}, "Nobody has printed"),
        ({"hole": "vent"}, "cuts the air"),
        ({"comb": "left"}, "goes on hatching"),
        ({"mild": "mild"}, "Do not promise that winter"),
    ],
)
def test_each_caution(change: dict[str, Any], words: str) -> None:
    assert words in levels(follow_up(**change), "caution")


def test_cautions_stay_away() -> None:
    told = levels(follow_up(), "caution")
    for words in ("room shut", "full job", "mesh", "cuts the air", "hatching", "winter"):
        assert words not in told


def test_a_day_that_does_not_exist_is_refused() -> None:
    with pytest.raises(InputError, match="no day that exists") as caught:
        follow_up(date="2026-09-31")
    assert caught.value.field == "date"


def test_empty_names_what_is_missing_and_gives_no_date() -> None:
    answer = calculator.answer({})
    assert isinstance(answer, Incomplete)
    assert [each.name for each in answer.missing] == [
        "date", "animal", "comb", "hole", "indoors", "half",
    ]  # fmt: skip
    assert not answer.ranges
    told = " ".join(each.text for each in answer.cautions)
    assert "Count from the side" in told


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"hole": "flue"}, "Never screen or close a flue"),
        ({"indoors": "yes"}, "Never seal a hole"),
        ({"first_count": 3}, "Never seal a hole"),
    ],
)
def test_a_certain_stop_is_said_although_values_are_missing(
    given: dict[str, Any], words: str
) -> None:
    answer = calculator.answer(given)
    assert isinstance(answer, Incomplete)
    assert answer.stopped
    assert words in " ".join(each.text for each in answer.cautions if each.level == "stop")


def test_what_is_not_known_is_not_told() -> None:
    # no mesh: no word on it; winters not known: no promise of frost
    given = {
        name: one for name, one in calculator.example().items() if name not in {"mesh", "mild"}
    }
    result = calculator.run(given)
    assert result.values["mesh_words"] is None
    assert "Do not promise that winter" in levels(result, "caution")
