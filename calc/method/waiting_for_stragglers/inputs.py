"""What "Waiting for the stragglers" asks for."""

from __future__ import annotations

from calc.declare import Given, choice, count, counts, number, numbers


class Inputs(Given):
    """The watch at the entrance, and what came home in it."""

    weather: str = choice(
        "Weather and light",
        "Minutes in which nobody flies do not count.",
        [
            ("fair", "Dry, warm, daylight"),
            ("rain", "Rain"),
            ("cold", "Cold, below 10 °C (50 °F)"),
            ("dusk", "Dusk or dark"),
        ],
        example="fair",
    )
    record: str = choice(
        "What you wrote down",
        "The minute of each return, or how many came home in each interval.",
        [
            ("times", "Minute of each return"),
            ("counts", "Returns in each interval"),
            ("none", "Nobody came home"),
        ],
        example="times",
    )
    waited: float = number(
        "Minutes watched",
        "From the start to the end of the watch, without minutes of rain or dusk.",
        "min",
        low=1,
        high=1440,
        why="a watch of one minute to one day",
        source="arithmetic",
        plausible=(20, 120),
        example=45,
        step=5,
    )
    times: tuple[float, ...] | None = numbers(
        "Returns, minutes after you began",
        "One value for each wasp that came home.",
        "min",
        item="return",
        low=0.1,
        high=1440,
        why="one day at most; a return at once counts as a tenth of a minute",
        source="arithmetic",
        most=150,
        plausible=(1, 60),
        example=(2.0, 3.0, 5.0, 8.0, 11.0, 14.0, 19.0, 27.0),
        step=1,
        only_if=("record", ("times",)),
    )
    returns: tuple[int, ...] | None = counts(
        "Returns in each interval",
        "How many came home in interval 1, 2 and so on, all equally long; 0 counts.",
        item="count",
        low=0,
        high=10_000,
        why="the count of one interval, with room to spare",
        source="arithmetic",
        most=48,
        plausible=(0, 30),
        example=(18, 11, 7, 4, 2, 1),
        only_if=("record", ("counts",)),
    )
    animal: str = choice(
        "Animal",
        "Changes the cautions, not the numbers.",
        [
            ("yellowjacket", "Yellowjacket or other small wasp"),
            ("crabro", "European hornet"),
            ("velutina", "Yellow-legged hornet"),
            ("other", "Other or not known"),
        ],
        origin="usual",
        usual="other",
        usual_source="own_reasoning",
        example="yellowjacket",
    )
    share: float = number(
        "Share you want home",
        "Of those that were away when you began.",
        "percent",
        low=10,
        high=99.9,
        why="all of them takes endless time in the model",
        source="straggler_model",
        plausible=(80, 99),
        origin="usual",
        usual=95,
        usual_source="own_reasoning",
        digits=1,
        step=5,
    )
    still_out: int | None = count(
        "Still out, if you know",
        "Only for animals you marked or counted as they left. Leave empty otherwise.",
        low=0,
        high=5000,
        why="more than this nobody can follow by eye",
        plausible=(0, 20),
        origin="extra",
        optional=True,
    )
    traffic: float | None = number(
        "Returns a minute before you began",
        "Only to check the number away: steady traffic times the trip time.",
        low=0,
        high=1000,
        why="far above any entrance in print",
        source="hawaii_pensylvanica",
        plausible=(1, 30),
        origin="extra",
        digits=1,
        step=1,
        optional=True,
    )
