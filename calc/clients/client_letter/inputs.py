"""What "Letters to the client" asks for: the rest of a letter may come from the job."""

from __future__ import annotations

from calc import tables
from calc.clients import letters
from calc.clients.common_inputs import COMB, CURRENCIES, HALF, VISIT
from calc.declare import Count, Given, Number, Option, choice, number, shared, time

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
_YES_NO = (("no", "No"), ("yes", "Yes"))


def _for(*kinds: str) -> tuple[str, tuple[str, ...]]:
    return ("kind", kinds)


_VISIT = _for("quote", "preparation", "neighbours", "tonight", "report")
_KEEP_AWAY = ("preparation", "neighbours", "tonight")


def _counted(label: str, meaning: str, high: int = 100_000, *kinds: str) -> Count:
    return Count(
        label=label,
        meaning=meaning,
        origin="extra",
        optional=True,
        low=0,
        high=high,
        why="far above any nest in print",
        only_if=_for("report", *kinds),
    )


def _sum(label: str, meaning: str) -> Number:
    return Number(
        label=label,
        meaning=meaning,
        origin="extra",
        optional=True,
        low=0,
        high=1_000_000,
        why="in your currency; a larger sum is a slip of the finger",
        source="arithmetic",
        plausible=(50, 1500),
        digits=2,
        step=10,
        only_if=_for("quote"),
    )


class Inputs(Given):
    """The kind of letter, the visit, and what was counted or agreed."""

    kind: str = choice(
        "Letter",
        "What you want to write.",
        [(kind, _KINDS[kind]) for kind in letters.KINDS],
        example="preparation",
    )
    date: str = shared(VISIT)
    arrive: str | None = time("You arrive at", "24-hour clock.", only_if=_VISIT, example="20:00")
    finish: str | None = time("Done at about", "24-hour clock.", only_if=_VISIT, example="23:00")
    animal: str | None = choice(
        "Animal",
        "As sure as you are.",
        [
            *(Option(value=row["key"], label=row["animal"])
              for row in tables.rows("activity_windows")),
            ("bees", "Bees, or maybe bees"),
            ("unknown", "Not known"),
        ],
        only_if=_for("quote", "report", "aftercare", "beekeeper", "authority"),
        example="vespula",
    )  # fmt: skip
    currency: str | None = choice(
        "Currency",
        "Stands beside the sums.",
        [(code, code) for code in CURRENCIES if code != "other"],
        origin="equipment",
        only_if=_for("quote"),
        example="EUR",
    )
    half: str | None = shared(HALF, optional=True, only_if=_for("aftercare"))
    measure: str | None = choice(
        "Lengths in the letter",
        "As your client thinks.",
        [("metres", "Metres"), ("feet", "Feet and inches")],
        origin="equipment",
        only_if=_for(*_KEEP_AWAY, "aftercare"),
        usual="metres",
        usual_source="own_reasoning",
    )
    language: str = choice(
        "Language",
        "English is the original.",
        [(each, letters.catalogue(each)["about"]["language"]) for each in letters.LANGUAGES],
        origin="usual",
        usual="en",
        usual_source="letters_content",
    )
    place: str | None = choice(
        "Where the nest is",
        "For the letter's words.",
        [
            ("tree", "Hollow tree"),
            ("wall", "Wall"),
            ("roof", "Roof or eaves"),
            ("ground", "Ground"),
            ("shed", "Shed, garage or play house"),
            ("branch", "Branch or bush"),
            ("other", "Somewhere else"),
        ],
        origin="usual",
        usual="other",
        usual_source="letters_content",
        only_if=_for("quote", "report", "beekeeper", "authority"),
        example="roof",
    )
    distance: float | None = number(
        "Keep away by",
        "From Keeping people away. Leave empty and the letter says nothing of it.",
        "m",
        low=1,
        high=200,
        why="as far as any defence in print",
        source="own_zones",
        origin="extra",
        optional=True,
        plausible=(5, 50),
        step=1,
        only_if=_for(*_KEEP_AWAY),
    )
    price: float | None = shared(_sum("Price before tax", "From Time and price."))
    total: float | None = shared(_sum("Price with tax", "What the client pays."))
    deposit: float | None = shared(_sum("Deposit", "Leave empty if you ask for none."))
    callback: str | None = choice(
        "Free return agreed",
        "Puts the free return into the quote.",
        _YES_NO,
        origin="extra",
        optional=True,
        only_if=_for("quote"),
        example="no",
    )
    adults: int | None = shared(_counted("Adults caught", "From your count.", 100_000, "authority"))
    queens: int | None = shared(_counted("Queens among them", "Leave empty if not sorted."))
    males: int | None = shared(_counted("Males among them", "Leave empty if not sorted."))
    left: int | None = shared(_counted("At most still inside", "Upper end of How many are left."))
    tiers: int | None = shared(_counted("Tiers of comb", "Counted.", 50))
    stings: int | None = shared(_counted("Stings to anyone", "0 counts, too.", 5000))
    comb: str | None = shared(
        COMB, origin="extra", optional=True, only_if=_for("report", "aftercare")
    )
    fate: str | None = choice(
        "What becomes of them",
        "As agreed with the client.",
        [
            ("released", "Set free, where allowed"),
            ("moved", "Nest moved alive, with a permit"),
            ("frozen", "Frozen"),
            ("fed", "Frozen, clean brood to hens"),
            ("handed_over", "Handed to the authority"),
        ],
        origin="extra",
        optional=True,
        only_if=_for("quote", "report"),
        example="frozen",
    )
    treated: str | None = choice(
        "Sprayed, dusted or baited",
        "By anyone, this season.",
        [("no", "No"), ("yes", "Yes"), ("unknown", "Nobody knows")],
        origin="extra",
        optional=True,
        only_if=_for("report", "beekeeper", "authority"),
        example="unknown",
    )
    touched: str | None = choice(
        "Any caught or moved",
        "Before you knew what they are.",
        _YES_NO,
        origin="extra",
        optional=True,
        only_if=_for("authority"),
        example="no",
    )
