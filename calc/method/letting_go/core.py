"""The core of "Letting queens and males go"."""

from __future__ import annotations

from calc.declare import Answer
from calc.method.letting_go.cautions import cautions
from calc.method.letting_go.inputs import Inputs
from calc.method.letting_go.nests import new_nests
from calc.method.passing_on import between, both, condition, grams, line
from calc.tables import row


def core(x: Inputs) -> Answer:
    """Compare the conditions with what is had; units and sources: the declaration."""
    lines, unmet = _conditions(x)
    values = {
        "verdict": f"Wait: {', '.join(unmet)}." if unmet else "Let them go now.",
        "figures": [*lines, *_figures(x)],
    }
    return Answer(values=values, cautions=list(cautions(x, unmet)))


def _conditions(x: Inputs) -> tuple[list[dict[str, str]], list[str]]:
    """Return the conditions with whether they are met, and the words of those not met."""
    weather = {
        "cold": ("too cold", f"Air at least {both(condition('temperature'), 'degC', 'degF')}"),
        "windy": ("too windy", f"Wind at most {both(condition('wind'), 'm/s', 'mph')}"),
        "wet": ("wet", "Dry, better sun"),
        "late": ("too late in the day", f"Daylight left at least {condition('daylight'):.0f} h"),
    }
    checks = [
        (word, what, x.weather == "fit")
        for key, (word, what) in weather.items()
        if x.weather in {"fit", key}
    ]
    checks += [
        (
            "the youngest queens cannot fly yet",
            f"Youngest queen at least {condition('age'):.0f} days old",
            x.queens == 0 or x.age >= condition("age"),
        ),
        ("some do not fly by themselves", "They fly by themselves", x.flying == "yes"),
    ]
    lines = [line(what, "met" if met else "not met") for _, what, met in checks]
    return lines, [word for word, _, met in checks if not met]


def _figures(x: Inputs) -> list[dict[str, str]]:
    made = []
    if x.queens is not None and x.males is not None:
        one = x.mass if x.mass is not None else float(row("caught_animals", x.animal)["mass"])
        syrup = (x.queens + x.males) * one / 1000 * condition("syrup_share") / 100
        sugar = syrup * condition("syrup") / 100
        made += [
            line("Sugar water a day while they wait", grams(syrup)),
            line("of it sugar, and water", f"{grams(sugar)} each"),
        ]
    if x.queens is not None:
        nests = between(new_nests(x.queens), 2)
        made.append(line("Nests next year, by one source and another", nests))
    return made
