"""Job files for the tests: good ones, and many broken, foreign, huge and hostile ones."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from typing import Any

NOW = "2026-09-15T18:30:00+02:00"
LEAST: dict[str, Any] = {
    "format": "field-handbook-job",
    "version": 2,
    "id": "job-2026-01",
    "created": NOW,
    "changed": NOW,
    "edition": "2026.1",
}
FULL: dict[str, Any] = LEAST | {
    "title": "Hornets at the pond",
    "notes": "Gate sticks.\nRing twice.",
    "typed": {"how_many_left": {"catches": "60, 35, 20"}},
    "typed_units": "si",
    "answers": {"where": "shed", "days": 40},
    "client": {"name": "A. Example", "address": "1 Long Lane\nNowhere", "consent": "asked"},
    "place": {"kind": "shed", "height": 3.5, "latitude": 52.5, "longitude": 13.4,
              "uncertainty": 30, "country": "DE"},
    "animal": {"species": "crabro", "certainty": "photo", "treated": "no"},
    "health": {"allergy_on_site": "yes", "autoinjector": "expired", "note": "Stays away."},
    "visit": {"date": "2026-09-15", "arrive": NOW, "follow_up": ["2026-09-18", "2026-10-06"]},
    "shared": {"air_temperature": 18.5, "catches": [60, 35, 20], "adults_caught": 115},
    "steps": [{"step": "capture", "minutes": 40, "at": NOW}, {"step": "wait", "minutes": 60.5}],
    "stings": [{"who": "worker", "count": 2, "reaction": "none"}],
    "result": {"outcome": "removed", "adults": 115, "queens": 1},
    "photos": [{"name": "hole.jpg", "caption": "The hole", "bytes": 200000}],
    "price": {"currency": "EUR", "quoted": 280, "final": 280.5},
    "calculations": [
        {"calculator": "how_many_left", "edition": "2026.1", "time": NOW,
         "inputs": {"catches": [60, 35, 20], "most_left": 4},
         "results": {"still_inside": 12.1, "interval_inside": [3, None],
                     "flow": {"value": 3, "unit": "L/s"}},
         "stops": [], "wiped": []}
    ],
}  # fmt: skip


def _set(path: str, value: Any) -> dict[str, Any]:
    """Return the full job with one place set to a value."""
    made = copy.deepcopy(FULL)
    at: Any = made
    *way, last = path.split("/")
    for name in way:
        at = at[int(name)] if isinstance(at, list) else at[name]
    at[int(last) if isinstance(at, list) else last] = value
    return made


def good() -> Iterator[tuple[str, dict[str, Any]]]:
    """Return jobs that the schema and the reader take."""
    yield "least", LEAST
    yield "full", FULL
    for path, value in (
        ("title", ""), ("title", "<script>alert(1)</script>"), ("title", "Ä" * 120),
        ("title", "🐝" * 120), ("title", "'; DROP TABLE jobs; --"), ("title", "\u202etxt.exe"),
        ("notes", "x" * 5000), ("notes", "a\tb\r\nc"), ("place/height", -5), ("place/height", 60),
        ("place/height", 3.0), ("place/latitude", -90), ("result/adults", 0),
        ("result/adults", 12.0), ("visit/date", "2024-02-29"), ("shared/catches", []),
        ("shared/catches", [0] * 30), ("created", "2026-09-15T18:30Z"),
        ("created", "2026-09-15T18:30:12.345Z"), ("steps", []), ("health", {}), ("typed", {}),
        ("client", {}), ("steps/0/minutes", 0), ("answers/where", None),
        ("answers/where", ["a", 1, None]), ("calculations", []), ("photos/0/bytes", 1000000000),
        ("calculations/0/inputs", {}), ("place/uncertainty", 1), ("id", "abc"),
        ("calculations/0/calculator", "gone_with_the_last_edition"),
    ):  # fmt: skip
        yield f"{path}={str(value)[:30]!r}", _set(path, value)


_WRONG: tuple[tuple[str, Any], ...] = tuple(
    (path, value)
    for path, values in {
        "id": (None, 5, "", "ab", "A1-bc", "x" * 65, "a b c", "../../etc", "id\n", ["a"]),
        "title": (None, 5, ["x"], {"x": 1}, "x" * 121, "two\nlines", "nul\x00", "\x1b[31m", True),
        "created": (None, 5, "", "yesterday", "2026-09-15", "2026-09-15T18:30",
                    "2026-13-15T18:30Z", "2026-02-30T18:30Z", "2026-09-15T25:30Z",
                    "2026-09-15T18:30Z\n", "15/08/2025"),
        "edition": (None, 2026.1, "x" * 21),
        "notes": (None, 1, "x" * 5001, "\x07"),
        "typed": (None, [], {"a b": {}}, {"__proto__": {}}, {"x": {"y": 3}}, {"x": "y"},
                  {"x": {"y": "z" * 2001}}, {"constructor": {}}, {f"n{i}": {} for i in range(61)}),
        "typed_units": ("metric", 1, None, ["si"]),
        "answers": ([], {"x": {"y": 1}}, {"X": 1}, {"x": [[1]]}, {"x": True}, {"x": [True]},
                    {"x": {"value": 1, "unit": 5}}, {"x": {"unit": "m"}}, {"x": "y" * 2001},
                    {"x": [0] * 201}, {f"n{i}": 1 for i in range(101)}),
        "client": (None, "A. Example", [], {"nickname": "x"}),
        "client/name": (None, 7, "x" * 121, "a\nb", {"first": "A"}),
        "client/consent": ("maybe", None, 1, True),
        "place": ("barn", {"kind": "barn"}, {"hight": 3}),
        "place/height": ("3", None, True, -5.1, 61, [3], {"value": 3}, 1e300),
        "place/latitude": (91, -90.5, "52"),
        "place/longitude": (181, -181),
        "place/uncertainty": (0, -1, 2000000),
        "place/country": ("de", "DEU", "D", 49),
        "animal/species": ("hornet", "", 1, ["crabro"], None),
        "health": ("none", ["allergy"], {"diagnosis": "x"}),
        "health/allergy_on_site": ("perhaps", True, 1),
        "visit/date": ("15/08/2025", "2026-02-30", "2026-2-3", "20260915", 20260915, "", None,
                       "2026-09-15T10:00Z"),
        "visit/follow_up": ("2026-09-18", [5], ["x"] * 11, ["x" * 41], {"a": 1}),
        "shared": ([], {"wind_speed": 3}),
        "shared/air_temperature": (51, -21, "18", None),
        "shared/catches": ("60, 35", [60, -1], [1.5], ["60"], [True], [0] * 31, 60, [None]),
        "shared/adults_caught": (-1, 2.5, 100001),
        "steps": ({}, "capture", [5], [{}], [{"minutes": 5}], [{"step": "capture"}] * 101,
                  [{"step": "dance"}]),
        "steps/0/minutes": (-1, 2881, "40", None),
        "stings": ([{"count": 1}], [{"who": "worker", "count": -1}],
                   [{"who": "worker", "count": 1.5}], [{"who": "dog"}]),
        "result/adults": (-1, 2.5, "many", 100001, None),
        "result/outcome": ("done", None),
        "photos": ([{"name": 5}], [{"caption": "x"}], [{"name": "x", "data": "base64"}],
                   [{"name": "x", "bytes": -1}], [{"name": "x"}] * 201),
        "price/currency": ("eur", "EURO", "€", 1),
        "price/quoted": (-1, "280", 10000001, None),
        "calculations": ([{}], {}, [None]),
        "calculations/0/calculator": ("How many", "x" * 41, None, "__import__('os')", "a-b"),
        "calculations/0/time": (None, "now"),
        "calculations/0/inputs": (None, [], {"__proto__": 1}, {"a": {"b": {"c": 1}}}),
        "calculations/0/stops": ("stop", [1], ["x"] * 31, ["x" * 601]),
    }.items()
    for value in values
)  # fmt: skip


def wrong() -> Iterator[tuple[str, dict[str, Any]]]:
    """Return jobs that neither the schema nor the reader may take."""
    for path, value in _WRONG:
        yield f"{path}={json.dumps(value)[:40]}", _set(path, value)
    for name in ("id", "created", "changed", "edition"):
        yield f"without {name}", {key: each for key, each in FULL.items() if key != name}
    for name in ("x", "__proto__", "constructor", "", "Title", "$schema", "client.name"):
        yield f"extra {name}", FULL | {name: 1}


def _text(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False)


def hostile() -> Iterator[tuple[str, str | bytes]]:
    """Return texts that are no job file at all, or one that must not be taken."""
    full = _text(FULL)
    texts: tuple[str | bytes, ...] = (
        "", " \n", "\ufeff", "null", "true", "5", '"job"', "[]", "[1, 2]", "{}", "{", "}", "[", "]",
        "hello", "<html><script>alert(1)</script></html>", "<?xml version='1.0'?><job/>",
        "BEGIN:VCALENDAR\r\nEND:VCALENDAR", "a;b;c\n1;2;3", "%PDF-1.7", "PK\x03\x04", "{'id': 1}",
        "format: field-handbook-job\nversion: 1", "{\"format\": \"field-handbook-job\"}",
        _text({"format": "field-handbook-job", "version": 2}),
        _text({"type": "FeatureCollection", "features": []}),
        _text({"format": "other", "version": 2}), _text(FULL | {"format": ["field-handbook-job"]}),
        _text(FULL | {"version": 3}), _text(FULL | {"version": 10**30}),
        _text(FULL | {"version": -1}), _text(FULL | {"version": "1"}),
        _text(FULL | {"version": True}), _text(FULL | {"version": None}),
        _text(FULL | {"version": 1.5}), _text(FULL | {"version": 0, "minutes": 5}),
        _text(FULL | {"version": 0, "species": 5}), full[:-1], full[: len(full) // 2],
        full + full, full + "]", full.replace('"title"', '"id"'), full.replace("3.5", "NaN"),
        full.replace("3.5", "Infinity"), full.replace("3.5", "-Infinity"),
        full.replace("3.5", "1e999"), full.replace("3.5", "9" * 5000), full.replace("3.5", "03.5"),
        full.replace("3.5", "1" + "0" * 400), full.replace("40,", "1" + "0" * 400 + ",", 1),
        full.replace("40}", "12345678901234567}"),
        full.replace("3.5", "3,5"), full.replace("3.5", "0x10"), full.replace("3.5", "٣"),
        full.replace("Gate sticks.", "\\ud800"), full.replace("Gate sticks.", "\\u0000"),
        full.replace("Gate", "Ga\x00te"), full.replace("Gate", "Ga\nte"),
        full.replace("Gate sticks.", "\\x41"), full.replace(": ", " = "),
        "{" + ",".join(f'"k{n}":1' for n in range(100000)) + ',"k99999":2}',
        "[" + ",".join(["{}"] * 500000) + "]",
        "[" * 100000, "{\"a\":" * 100000, "[" * 13 + "]" * 13, '{"a":' * 13 + "1" + "}" * 13,
        '"' + '\\"' * 200000, "x" * 2_000_001, _text(FULL | {"notes": "x" * 2_000_000}),
        full.encode("utf-16"), b"\xff\xfe\x00", b"\x89PNG\r\n\x1a\n",
        full.encode("utf-8")[:-3] + b"\xc3",
        "// comment\n" + full, full.replace("}", ",}", 1), "\u2028" + full, "window.name = " + full,
        _text([FULL]), _text({"job": FULL}),
        _text({"format": "field-handbook-job"} | {"version": {}}),
    )  # fmt: skip
    for place, text in enumerate(texts, start=1):
        yield f"text {place}", text
