"""Inputs that the calculators of this part share."""

from __future__ import annotations

from calc.declare import Choice, Day, Option

CURRENCIES = (
    "EUR", "USD", "GBP", "CHF", "CAD", "AUD", "NZD", "SEK", "NOK", "DKK", "PLN", "CZK", "HUF",
    "JPY", "KRW", "other",
)  # fmt: skip

VISIT = Day(label="Date", meaning="Of the visit.", example="2026-08-20")

COMB = Choice(
    label="The comb",
    meaning="As you left it.",
    options=(
        Option(value="taken", label="All taken out"),
        Option(value="part", label="Part of it left"),
        Option(value="left", label="Left inside"),
    ),
    example="taken",
)

HALF = Choice(
    label="Hemisphere",
    meaning="Decides when spring is.",
    origin="equipment",
    options=(
        Option(value="north", label="North of the equator"),
        Option(value="south", label="South of the equator"),
    ),
    example="north",
)
