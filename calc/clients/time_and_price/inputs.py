"""What "Time and price" asks for."""

from __future__ import annotations

from calc import tables
from calc.clients.common_inputs import CURRENCIES
from calc.declare import Given, Number, Numbers, Soft, choice, count, number, numbers, shared

PLACES = {"free": 5, "wall": 6, "tree": 6, "ground": 6}
"""Kinds of nest of the table ``step_times``, with their number of steps."""

_TOO_MUCH = "in your currency; a larger sum is a slip of the finger"


def _steps(label: str, meaning: str, example: tuple[float, ...]) -> Numbers:
    return Numbers(
        label=label,
        meaning=meaning,
        origin="extra",
        item="step",
        unit="min",
        low=0,
        high=720,
        why="one step of one day",
        most=20,
        step=5,
        only_if=("times_from", ("own",)),
        plausible=(5, 120),
        example=example,
    )


def _money(
    label: str, meaning: str, example: float, plausible: tuple[float, float], high: float = 1e6
) -> Number:
    return Number(
        label=label,
        meaning=meaning,
        origin="equipment",
        low=0,
        high=high,
        why=_TOO_MUCH,
        source="arithmetic",
        plausible=plausible,
        example=example,
        digits=2,
        step=5,
    )


class Inputs(Given):
    """The job, the rates of the firm, and whose times are taken."""

    nest: str | None = choice(
        "Nest",
        "Picks the steps of the table.",
        [(key, str(tables.row("step_times", f"{key}_1")["place"])) for key in PLACES],
        only_if=("times_from", ("table",)),
        example="wall",
    )
    drive: float = number(
        "Drive one way",
        "At the hour you come.",
        "min",
        low=0,
        high=720,
        why="a day's drive",
        plausible=(5, 120),
        example=30,
        step=5,
    )
    distance: float = number(
        "Distance one way",
        "By road.",
        "km",
        low=0,
        high=1000,
        why="a day's drive",
        plausible=(2, 100),
        example=20,
        step=5,
    )
    visits: int = count(
        "Visits",
        "With the first look and the checks afterwards that you do not charge extra.",
        low=1,
        high=10,
        why="more is another contract",
        plausible=(1, 4),
        example=2,
    )
    people: int = count(
        "People on site",
        "Each hour counts for each of them.",
        low=1,
        high=8,
        why="a team that one person can lead",
        origin="equipment",
        plausible=(1, 3),
        example=2,
    )
    hourly: float = shared(
        _money("Wage for an hour", "One person, with all charges on the wage.", 30, (15, 60), 1e5)
    )
    overhead: float = shared(
        _money("Overhead for an hour", "Insurance, tools, desk work: year over hours.", 12, (5, 30))
    )
    materials: float = shared(
        _money("Materials and wear", "Mesh, bags, filters, blades, suit.", 28, (5, 80))
    )
    distance_rate: float = number(
        "Rate for the distance",
        "Covers the vehicle, not the driver's time.",
        "km**-1",
        customary="mile**-1",
        low=0,
        high=1000,
        origin="equipment",
        plausible=(0.2, 0.8),
        example=0.45,
        digits=2,
        step=0.05,
    )
    pricing: str = choice(
        "Price by",
        "Margin is a share of the price, mark-up a share of the cost.",
        [("margin", "Margin, share of the price"), ("markup", "Mark-up, put on the cost")],
        origin="equipment",
        example="margin",
    )
    margin: float | None = number(
        "Margin",
        "Profit as a share of the price.",
        "percent",
        low=0,
        high=90,
        why="at 100 % there is no price",
        source="margin_pages",
        origin="equipment",
        only_if=("pricing", ("margin",)),
        plausible=(10, 50),
        example=25,
        digits=1,
        step=5,
    )
    markup: float | None = number(
        "Mark-up",
        "Profit as a share of the cost.",
        "percent",
        low=0,
        high=900,
        why="as much as a margin of 90 %",
        source="arithmetic",
        origin="equipment",
        only_if=("pricing", ("markup",)),
        plausible=(10, 100),
        example=33.3,
        digits=1,
        step=5,
    )
    tax: float = number(
        "Sales tax or VAT",
        "Your local rate if this service is taxed, else 0.",
        "percent",
        low=0,
        high=50,
        why="no place takes more",
        source="arithmetic",
        origin="equipment",
        plausible=(0, 25),
        example=0,
        digits=2,
        step=1,
    )
    currency: str = choice(
        "Currency",
        "Only written beside the sums; nothing is converted.",
        [(code, code) for code in CURRENCIES],
        origin="equipment",
        example="EUR",
    )
    deposit: float = number(
        "Deposit",
        "Share of the whole sum asked for before the work.",
        "percent",
        low=0,
        high=100,
        why="a share",
        source="arithmetic",
        origin="usual",
        usual=0,
        usual_source="deposit_ours",
        plausible=(0, 33),
        step=5,
        soft=(
            Soft(
                high=100 / 3,
                text="More than a third in advance is against the law in some places.",
                reason="Massachusetts caps it at one third; other places lower.",
                source="deposit_massachusetts",
            ),
        ),
    )
    basis: str = choice(
        "Charge",
        "The mean breaks even over many jobs; 8 of 10 covers most single ones.",
        [("mean", "Expected hours"), ("p80", "Hours that cover 8 jobs of 10")],
        origin="usual",
        usual="p80",
        usual_source="own_reasoning",
    )
    check_minutes: float = number(
        "Minutes of each further visit",
        "Looking and counting; the job itself is above.",
        "min",
        low=0,
        high=240,
        why="longer is a job of its own",
        origin="usual",
        usual=20,
        usual_source="step_times_ours",
        plausible=(10, 40),
        step=5,
    )
    times_from: str = choice(
        "Times from",
        "The table is a start; your own past jobs are better.",
        [
            ("table", "Table of this book"),
            ("own", "My times for each step"),
            ("past", "Minutes of past jobs like this"),
        ],
        origin="extra",
        usual="table",
        usual_source="step_times_ours",
    )
    past: tuple[float, ...] | None = numbers(
        "Past jobs, minutes on site",
        "One value a job, jobs like this one.",
        "min",
        item="job",
        low=5,
        high=1440,
        why="one day on site at most",
        least=2,
        most=200,
        origin="extra",
        only_if=("times_from", ("past",)),
        plausible=(60, 360),
        step=5,
    )
    at_best: tuple[float, ...] | None = shared(
        _steps(
            "Each step at best",
            "The shortest it can take: no job of this kind is faster.",
            (15, 30, 10, 10, 45, 20),
        )
    )
    most_likely: tuple[float, ...] | None = shared(
        _steps("Each step, most likely", "As on a usual job.", (20, 50, 30, 20, 60, 30))
    )
    at_worst: tuple[float, ...] | None = shared(
        _steps(
            "Each step at worst",
            "The longest it can take: no job of this kind is slower.",
            (40, 100, 90, 45, 120, 60),
        )
    )
    risk_chances: tuple[float, ...] | None = numbers(
        "Chance of what may go wrong",
        "Such as a second visit, a broken board, a cancelled evening.",
        "percent",
        item="risk",
        low=0,
        high=100,
        why="a chance",
        source="arithmetic",
        most=12,
        origin="extra",
        optional=True,
        plausible=(0, 20),
        example=(15, 5, 10),
        step=5,
    )
    risk_costs: tuple[float, ...] | None = numbers(
        "What it would cost",
        "In the same order.",
        item="risk",
        low=0,
        high=1_000_000,
        why=_TOO_MUCH,
        source="arithmetic",
        most=12,
        origin="extra",
        optional=True,
        plausible=(0, 400),
        example=(120, 400, 60),
        digits=2,
        step=10,
    )
