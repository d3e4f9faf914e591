"""Which pictures of a job go into the report, and how much a device keeps of them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.clients.job.record import Job, label

LONG_SIDE = 1600
"""Pixels of the longer side that are kept: at two to a row on A4 (8 cm each) about 500 to the inch,
twice what paper shows, and enough to count cells on a screen. Our choice."""

BYTES = 400_000
"""Bytes of one picture at most: with :data:`MOST` of them a job stays near 16 MB, which a phone can
spare and most mailboxes take. Our choice."""

MOST = 40
"""Pictures of one job on the device at most; see :data:`BYTES`. The record lists more names."""

USUAL = ("", "nest", "closed")
"""Kinds that go into the report unless the tick is taken off: before and after. No kind at all
stands in files written before pictures were kept, all of whose captions went in."""


def in_report(entry: Mapping[str, Any]) -> bool:
    """Return whether a picture goes into the report: as ticked, else by its kind."""
    ticked = entry.get("use_in_report")
    return bool(ticked == "yes" if ticked else entry.get("kind", "") in USUAL)


def report_photos(job: Job) -> list[dict[str, str]]:
    """Return ``name``, ``caption`` and ``alt`` of the pictures in the report, in their order."""
    return [_shown(each) for each in job.get("photos", []) if in_report(each)]


def _shown(entry: Mapping[str, Any]) -> dict[str, str]:
    kind = entry.get("kind", "unknown")
    words = [label("photos.kind", kind)] if kind != "unknown" else []
    words += [entry["caption"]] if entry.get("caption") else []
    return {
        "name": entry["name"],
        "caption": entry.get("caption", ""),
        "alt": ": ".join(words) or "Picture of the job",
    }
