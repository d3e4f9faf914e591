"""Inputs and results of "Letters to the client"."""

from __future__ import annotations

from calc import tables
from calc.clients import letters
from calc.clients.follow_up_forms import YES_NO
from calc.clients.time_and_price_forms import CURRENCIES
from calc.common_inputs import DAY, MONTH
from calc.declare import Choice, Count, Input, Number, Option, Out

_KINDS = {
    "quote": "Quote",
    "preparation": "Before we come",
    "neighbours": "Note to the neighbours",
    "tonight": "What to expect tonight",
    "report": "Report: what we did",
    "aftercare": "After the work",
    "beekeeper": "Referral to a beekeeper",
    "authority": "Referral to the authority",
}
_VISIT = ("quote", "preparation", "neighbours", "tonight", "report")
_KEEP_AWAY = ("preparation", "neighbours", "tonight")
_NEST = ("quote", "report", "aftercare", "beekeeper", "authority")


def _for(*kinds: str) -> tuple[str, tuple[str, ...]]:
    return ("kind", kinds)


def _hour(name: str, label: str, default: int) -> Count:
    return Count(
        name=name,
        label=label,
        meaning="24-hour clock.",
        low=0,
        high=23,
        why="hours of the day",
        source="arithmetic",
        usual=default,
        only_if=_for(*_VISIT),
    )


def _minute(name: str, label: str) -> Count:
    return Count(
        name=name,
        label=label,
        meaning="As on the clock.",
        low=0,
        high=59,
        why="minutes of an hour",
        source="arithmetic",
        step=5,
        usual=0,
        only_if=_for(*_VISIT),
    )


def _count(name: str, label: str, meaning: str, high: int = 100_000) -> Count:
    return Count(
        name=name,
        label=label,
        meaning=meaning,
        low=0,
        high=high,
        why="far above any nest in print",
        source="own_reasoning",
        optional=True,
        only_if=_for("report") if name != "adults" else _for("report", "authority"),
    )


def _sum(name: str, label: str, meaning: str) -> Number:
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        low=0,
        high=1_000_000,
        why="in your currency; a larger sum is a slip of the finger",
        source="arithmetic",
        digits=2,
        step=10,
        optional=True,
        only_if=_for("quote"),
    )


INPUTS: tuple[Input, ...] = (
    Choice(
        name="kind",
        label="Letter",
        meaning="What you want to write.",
        options=tuple(Option(value=kind, label=_KINDS[kind]) for kind in letters.KINDS),
        usual="preparation",
    ),
    Choice(
        name="language",
        label="Language",
        meaning="English is the original.",
        options=tuple(
            Option(value=each, label=letters.catalogue(each)["about"]["language"])
            for each in letters.LANGUAGES
        ),
        usual="en",
    ),
    Choice(
        name="animal",
        label="Animal",
        meaning="As sure as you are.",
        options=(
            *(
                Option(value=row["key"], label=row["animal"])
                for row in tables.rows("activity_windows")
            ),
            Option(value="bees", label="Bees, or maybe bees"),
            Option(value="unknown", label="Not known"),
        ),
        usual="vespula",
        only_if=_for(*_NEST),
    ),
    Choice(
        name="place",
        label="Where the nest is",
        meaning="For the letter's words.",
        options=(
            Option(value="tree", label="Hollow tree"),
            Option(value="wall", label="Wall"),
            Option(value="roof", label="Roof or eaves"),
            Option(value="ground", label="Ground"),
            Option(value="shed", label="Shed, garage or play house"),
            Option(value="branch", label="Branch or bush"),
            Option(value="other", label="Somewhere else"),
        ),
        usual="roof",
        only_if=_for("quote", "report", "beekeeper", "authority"),
    ),
    Count(
        name="year",
        label="Year",
        meaning="Of the visit.",
        low=1950,
        high=2100,
        why="calendar years of this book",
        source="arithmetic",
        usual=2026,
    ),
    MONTH,
    DAY,
    _hour("arrive_hour", "Arrive, hour", 20),
    _minute("arrive_minute", "Arrive, minute"),
    _hour("finish_hour", "Done, hour", 23),
    _minute("finish_minute", "Done, minute"),
    Number(
        name="distance",
        label="Keep away by",
        meaning="From Keeping people away. Leave empty and the letter says nothing of it.",
        unit="m",
        customary="ft",
        low=1,
        high=200,
        why="as far as any defence in print",
        source="own_zones",
        optional=True,
        step=1,
        only_if=_for(*_KEEP_AWAY),
    ),
    Choice(
        name="measure",
        label="Lengths in the letter",
        meaning="As your client thinks.",
        options=(
            Option(value="metres", label="Metres"),
            Option(value="feet", label="Feet and inches"),
        ),
        usual="metres",
        only_if=_for(*_KEEP_AWAY, "aftercare"),
    ),
    _sum("price", "Price before tax", "From Time and price."),
    _sum("total", "Price with tax", "What the client pays."),
    _sum("deposit", "Deposit", "Leave empty if you ask for none."),
    Choice(
        name="currency",
        label="Currency",
        meaning="Stands beside the sums.",
        options=tuple(Option(value=code, label=code) for code in CURRENCIES if code != "other"),
        usual="EUR",
        only_if=_for("quote"),
    ),
    Choice(
        name="callback",
        label="Free return agreed",
        meaning="Puts the free return into the quote.",
        options=YES_NO,
        usual="no",
        only_if=_for("quote"),
    ),
    _count("adults", "Adults caught", "From your count."),
    _count("queens", "Queens among them", "Leave empty if not sorted."),
    _count("males", "Males among them", "Leave empty if not sorted."),
    _count("left", "At most still inside", "Upper end of How many are left."),
    _count("tiers", "Tiers of comb", "Counted.", 50),
    _count("stings", "Stings to anyone", "0 counts, too.", 5000),
    Choice(
        name="comb",
        label="The comb",
        meaning="As you left it.",
        options=(
            Option(value="taken", label="All taken out"),
            Option(value="part", label="Part of it left"),
            Option(value="left", label="Left inside"),
        ),
        usual="taken",
        only_if=_for("report", "aftercare"),
    ),
    Choice(
        name="fate",
        label="What becomes of them",
        meaning="As agreed with the client.",
        options=(
            Option(value="released", label="Set free, where allowed"),
            Option(value="moved", label="Nest moved alive, with a permit"),
            Option(value="frozen", label="Frozen"),
            Option(value="fed", label="Frozen, clean brood to hens"),
            Option(value="handed_over", label="Handed to the authority"),
        ),
        usual="frozen",
        only_if=_for("quote", "report"),
    ),
    Choice(
        name="treated",
        label="Sprayed, dusted or baited",
        meaning="By anyone, this season.",
        options=(
            Option(value="no", label="No"),
            Option(value="yes", label="Yes"),
            Option(value="unknown", label="Nobody knows"),
        ),
        usual="unknown",
        only_if=_for("report", "beekeeper", "authority"),
    ),
    Choice(
        name="touched",
        label="Any caught or moved",
        meaning="Before you knew what they are.",
        options=YES_NO,
        usual="no",
        only_if=_for("authority"),
    ),
    Choice(
        name="half",
        label="Hemisphere",
        meaning="Decides when spring is.",
        options=(
            Option(value="north", label="North of the equator"),
            Option(value="south", label="South of the equator"),
        ),
        usual="north",
        only_if=_for("aftercare"),
    ),
)

OUTPUTS = (
    Out(
        name="letter",
        label="The letter",
        meaning="Copy it, fill the blanks, read it once more.",
        kind="text",
        main=True,
    ),
    Out(
        name="grade",
        label="Reading grade",
        meaning="School year that can read it; English only, by a rule of thumb.",
        digits=1,
    ),
    Out(
        name="longest",
        label="Longest sentence",
        meaning="In words.",
        kind="count",
    ),
    Out(name="words", label="Words", meaning="In all.", kind="count"),
    Out(
        name="left_out",
        label="Lines left out",
        meaning="For want of a number or a date.",
        kind="count",
    ),
)
