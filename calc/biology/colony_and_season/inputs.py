"""What "Colony size and stage" asks for."""

from __future__ import annotations

from calc.biology.season_calendar import MONTHS, day_of_year, length_of
from calc.declare import Given, choice, count, counts, number
from calc.errors import InputError

MONTH_NAMES = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip

_COUNTED = ("counted", ("in", "out", "both"))


class Inputs(Given):
    """The animal, the date, the place, and traffic where it was counted."""

    species: str = choice(
        "Animal",
        "Take the group if you do not know the species.",
        [
            ("crabro", "European hornet"),
            ("velutina", "Yellow-legged hornet"),
            ("mandarinia", "Northern giant hornet"),
            ("vespula", "Yellowjacket, species not known"),
            ("vulgaris", "Common yellowjacket"),
            ("germanica", "German yellowjacket"),
            ("maculifrons", "Eastern yellowjacket"),
            ("pensylvanica", "Western yellowjacket"),
            ("squamosa", "Southern yellowjacket"),
            ("maculata", "Bald-faced hornet"),
            ("arenaria", "Aerial yellowjacket"),
            ("saxonica", "Saxon or Norwegian wasp"),
            ("media", "Median wasp"),
            ("polistes", "European paper wasp"),
        ],
        example="vespula",
    )
    month: str = choice(
        "Month",
        "Month of the count or of the job.",
        [(name[:3].lower(), name) for name in MONTH_NAMES],
        example="aug",
    )
    day: int = count(
        "Day",
        "Of the month; the 15th if you know the month alone.",
        low=1,
        high=31,
        why="days of a month",
        source="arithmetic",
        plausible=(1, 28),
        example=23,
    )
    counted: str = choice(
        "Traffic counted",
        "What you counted at the entrance, from a distance, before any disturbance.",
        [
            ("in", "Those flying in"),
            ("out", "Those flying out"),
            ("both", "In and out added"),
            ("none", "Not counted"),
        ],
        example="in",
    )
    counts: tuple[int, ...] | None = counts(
        "Wasps in each count",
        "One number for each count; five counts of one minute are good.",
        item="count",
        low=0,
        high=5000,
        why="far above any entrance in print",
        source="hawaii_pensylvanica",
        plausible=(0, 60),
        most=30,
        example=(14, 11, 16, 12, 15),
        only_if=_COUNTED,
    )
    hemisphere: str = choice(
        "Hemisphere",
        "In the south all dates move by half a year.",
        [("north", "Northern"), ("south", "Southern")],
        origin="equipment",
        example="north",
    )
    winters: str = choice(
        "Winters",
        "Mild means years without hard frost.",
        [("cold", "Hard frosts"), ("mild", "Mild")],
        origin="equipment",
        example="cold",
    )
    minutes: float | None = number(
        "Length of each count",
        "All counts must be equally long.",
        "min",
        low=0.5,
        high=60,
        why="shorter is chance, longer is another time of the day",
        source="light_rain_note",
        origin="usual",
        usual=1,
        usual_source="common_practice",
        plausible=(1, 10),
        digits=1,
        step=1,
        only_if=_COUNTED,
    )

    @property
    def day_of_year(self) -> int:
        """Day of the year; raises :class:`InputError` for a day that the month does not have."""
        month = MONTHS.index(self.month.title()) + 1
        last = length_of(month)
        if self.day > last:
            allowed = f"1 to {last}: {MONTH_NAMES[month - 1]} has no more days"
            raise InputError(
                "day", self.day, allowed, f"Day: {self.day} was given; allowed is {allowed}."
            )
        return day_of_year(month, self.day)
