"""Reminders as an iCalendar text (RFC 5545): all-day events with one alarm each."""

from __future__ import annotations

import zlib
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

_END = "\r\n"
_LONGEST = 75
"""Longest line in octets, line end not counted (RFC 5545, 3.1)."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Event:
    """One whole day to be reminded of.

    ``alarm_hour`` is the hour of that day at which the phone speaks up.
    """

    day: date
    summary: str
    description: str = ""
    alarm_hour: int = 9


def icalendar_text(
    events: Sequence[Event], made: date, product: str = "-//Field handbook//Follow-up//EN"
) -> str:
    """Return a calendar file with these events.

    Parameters
    ----------
    events : what to be reminded of, in any order
    made : date that stands as the stamp of every event, at 00:00 UTC, so that the same job gives
        the same file
    product : identifier of who made the file

    Returns the text with CRLF line ends, lines folded at 75 octets. A name of an event is made of
    its day and words, so that a file read twice does not double the reminders.

    Source: rfc_5545.
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{escaped(product)}", "CALSCALE:GREGORIAN"]
    for event in sorted(events, key=lambda each: (each.day, each.summary)):
        lines += _event_lines(event, made)
    lines.append("END:VCALENDAR")
    return "".join(folded(line) + _END for line in lines)


def _event_lines(event: Event, made: date) -> Iterator[str]:
    mark = zlib.crc32(f"{event.day}{event.summary}".encode())
    yield "BEGIN:VEVENT"
    yield f"UID:{event.day:%Y%m%d}-{mark:08x}@follow-up.invalid"
    yield f"DTSTAMP:{made:%Y%m%d}T000000Z"
    yield f"DTSTART;VALUE=DATE:{event.day:%Y%m%d}"
    yield f"DTEND;VALUE=DATE:{event.day + timedelta(days=1):%Y%m%d}"
    yield f"SUMMARY:{escaped(event.summary)}"
    if event.description:
        yield f"DESCRIPTION:{escaped(event.description)}"
    yield "TRANSP:TRANSPARENT"
    yield "BEGIN:VALARM"
    yield "ACTION:DISPLAY"
    yield f"DESCRIPTION:{escaped(event.summary)}"
    yield f"TRIGGER:PT{event.alarm_hour}H"
    yield "END:VALARM"
    yield "END:VEVENT"


def escaped(text: str) -> str:
    r"""Return a text value: backslash, semicolon and comma escaped, line ends as ``\n``."""
    lines = "".join(
        sign if sign.isprintable() or sign in "\r\n" else " " for sign in text
    ).splitlines()
    value = "\n".join(lines).replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,")
    return value.replace("\n", "\\n")


def folded(line: str) -> str:
    """Return a line folded at 75 octets, never inside a letter."""
    parts: list[str] = []
    part, size = "", 0
    for sign in line:
        octets = len(sign.encode("utf-8", "replace"))
        # After the first part each line begins with the space of the fold.
        if size + octets > _LONGEST - (1 if parts else 0):
            parts.append(part)
            part, size = "", 0
        part += sign
        size += octets
    return f"{_END} ".join([*parts, part])
