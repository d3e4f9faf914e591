"""Release, relocate or feed: letting queens go, moving a nest, feeding brood to poultry."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc import units
from calc.declare import Answer, Axis, Calculator, Chart, Out, Series
from calc.method import release_numbers as numbers
from calc.method.bodies import animal
from calc.method.release_cautions import cautions
from calc.method.release_inputs import INPUTS
from calc.tables import row, rows

Given = Mapping[str, Any]


def _both(value: float, unit: str, other: str, digits: int = 0, there: int = 0) -> str:
    """Write a value in both systems of units."""
    far = units.convert(value, unit, other)
    return (
        f"{units.show(value, digits)} {units.label(unit)} "
        f"({units.show(far, there)} {units.label(other)})"
    )


def _grams(value: float) -> str:
    return _both(value, "g", "oz", 0, 1)


def _between(ends: tuple[float, float], digits: int = 0) -> str:
    return f"{units.show(ends[0], digits)} to {units.show(ends[1], digits)}"


def _line(what: str, answer: str) -> dict[str, str]:
    return {"what": what, "answer": answer}


def _conditions(given: Given) -> tuple[list[dict[str, str]], list[str]]:
    """Return the conditions with what is had, and the words of those not met."""
    want = numbers.condition
    temperature, wind = given["temperature"], given["wind"]
    checks = (
        (
            "too cold",
            f"Air at least {_both(want('temperature'), 'degC', 'degF')}",
            _both(temperature, "degC", "degF"),
            temperature >= want("temperature"),
        ),
        (
            "too windy",
            f"Wind at most {_both(want('wind'), 'm/s', 'mph')}",
            _both(wind, "m/s", "mph"),
            wind <= want("wind"),
        ),
        ("wet", "Dry, better sun", given["sky"], given["sky"] != "rain"),
        (
            "too late in the day",
            f"Daylight left at least {want('daylight'):.0f} h",
            f"{given['daylight']:.1f} h",
            given["daylight"] >= want("daylight"),
        ),
        (
            "the youngest queens cannot fly yet",
            f"Youngest queen at least {want('age'):.0f} days old",
            f"{given['age']:.0f} days",
            given["queens"] == 0 or given["age"] >= want("age"),
        ),
        (
            "some do not fly by themselves",
            "They fly by themselves",
            given["flying"],
            given["flying"] == "yes",
        ),
    )
    lines = [_line(what, f"{had}: {'met' if met else 'not met'}") for _, what, had, met in checks]
    return lines, [word for word, _, _, met in checks if not met]


def _release(given: Given) -> Answer:
    lines, unmet = _conditions(given)
    heads = given["queens"] + given["males"]
    grams = heads * animal(given["animal"], given["mass"]).mass / 1000
    syrup = grams * numbers.condition("syrup_share") / 100
    sugar = syrup * numbers.condition("syrup") / 100
    nests = numbers.new_nests(given["queens"])
    figures = [
        *lines,
        _line("Sugar water a day while they wait", _grams(syrup)),
        _line("of it sugar, and water", f"{_grams(sugar)} each"),
        _line("Nests next year, by one source and another", _between(nests, 2)),
    ]
    values = {
        "verdict": f"Wait: {', '.join(unmet)}." if unmet else "Let them go now.",
        "figures": figures,
    }
    return Answer(values=values, cautions=cautions(given, unmet))


def _move(given: Given) -> Answer:
    share, limits = numbers.homing(given["km"])
    workers = given["workers"]
    back = _between((workers * limits[0] / 100, workers * limits[1] / 100))
    said = cautions(given, ())
    values = {
        "verdict": f"{back} of {workers} workers may be back at the old hole.",
        "figures": [
            _line("Workers back, 95 % limits of the trial", f"{_between(limits)} %"),
            _line(
                "On the line of the trial",
                "not tried so far" if share is None else f"{share:.0f} %",
            ),
            _line("That is, of yours", back),
            _line(
                "Move at least",
                _both(numbers.condition("moving"), "km", "mile"),
            ),
        ],
    }
    stopped = any(each.level == "stop" for each in said)
    return Answer(values=values, cautions=said, charts=[] if stopped else [_chart()])


def _feed(given: Given) -> Answer:
    food = row("brood_food", "fresh")
    daily = numbers.portion(given["hens"], given["feed"], given["share"])
    days = numbers.days_of_feed(given["brood"], daily)
    first = min(daily, given["brood"])
    grams = {key: numbers.nutrient(first, food[key]) for key in ("protein", "fat", "carbohydrate")}

    def band(key: str) -> str:
        low, high = (numbers.nutrient(first, end) for end in food[key])
        return f"{low:.0f} to {high:.0f} g"

    diet = numbers.diet_protein(numbers.flock("feed_protein"), food["protein"], given["share"])
    energy = numbers.energy(grams["protein"], grams["fat"], grams["carbohydrate"])
    values = {
        "verdict": f"{_grams(daily)} a day for the flock, for {days} "
        f"{'day' if days == 1 else 'days'}.",
        "figures": [
            _line("Brood a day, the whole flock", _grams(daily)),
            _line("for one hen", _both(daily / given["hens"], "g", "oz", 1, 2)),
            _line("Bags to freeze, one a day", f"{days}"),
            _line("Protein in a day's portion", band("protein_range")),
            _line("Fat in it", band("fat_range")),
            _line("Energy in it", f"{energy:.0f} kcal"),
            _line("Protein of the whole diet", f"{diet:.1f} %"),
            _line(
                "Dry matter in all the brood", _grams(numbers.nutrient(given["brood"], food["dry"]))
            ),
        ],
    }
    return Answer(values=values, cautions=cautions(given, ()))


def core(**given: Any) -> Answer:
    """Compute the way chosen from the declared inputs.

    Takes plain numbers in the declared units; None for inputs that do not apply.
    """
    ways = {"release": _release, "move": _move, "feed": _feed}
    return ways[given["purpose"]](given)


def _chart() -> Chart:
    trial = rows("homing_returns")
    at = tuple(float(each["km"]) for each in trial)
    limits = [numbers.returned_limits(each["returned"], each["released"]) for each in trial]
    return Chart(
        name="homing",
        title="Workers that came back",
        alt="About nine in ten come back from half a kilometre, half from one and two kilometres, "
        "a fifth or less from three and four, one in twenty from five; wide bands round each.",
        x=Axis(label="Set free at", unit="km", customary="mile", low=0),
        y=Axis(label="Came back", unit="percent", low=0, high=100),
        series=(
            Series(
                label="95 % limits",
                x=at,
                y=tuple(low for low, _ in limits),
                y2=tuple(high for _, high in limits),
                style="band",
            ),
            Series(
                label="Yellow-legged hornets, one trial",
                x=at,
                y=tuple(float(each["percent"]) for each in trial),
                style="points",
            ),
        ),
    )


OUTPUTS = (
    Out(
        name="verdict",
        label="What it means",
        meaning="The answer in words.",
        kind="text",
        main=True,
    ),
    Out(
        name="figures",
        label="In figures",
        meaning="Conditions and sugar water, homing, or portions, by what you want to do.",
        kind="table",
        columns=(
            Out(name="what", label="What", meaning="Condition or figure.", kind="text"),
            Out(name="answer", label="Answer", meaning="Yours.", kind="text"),
        ),
    ),
)

passing_life_on = Calculator(
    name="passing_life_on",
    title="Release, relocate or feed",
    part="method",
    purpose="Whether young queens and males may go here and now, how far a nest has to be moved, "
    "and how unpoisoned brood is fed to poultry.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "release_conditions_ours",
        "ross_1983_mating",
        "landcare_queens",
        "wespenschutz_mortality",
        "germanica_mates",
        "hoffman_2008",
        "union_list_release",
        "introduced_release_law",
        "protected_hornet_de",
        "syrup_practice",
        "poidatz_2018_homing",
        "moving_five_km",
        "treats_ten",
        "treats_five",
        "hen_feed_page",
        "protein_dilution_page",
        "brood_default_ours",
        "starr_1987_mass",
        "baoshan_2023",
        "atwater",
        "freezing_practice",
        "freezing_ours",
        "apha_kitchen",
        "pesticide_in_eggs",
        "bait_reaches_larvae",
        "poultry_law",
    ),
    formula=(
        (
            r"m = N\,F\,s",
            "Brood a day: hens N, feed F of one, share s.",
            "treats_ten",
        ),
        (
            r"p = (1 - s)\,p_{feed} + s\,p_{brood}",
            "Protein of the whole diet.",
            "protein_dilution_page",
        ),
        (r"E = 4 P + 9 F + 4 C", "Energy in kcal from grams.", "atwater"),
        (
            r"\frac{\hat p + \frac{z^2}{2n} \pm z\sqrt{\frac{\hat p(1 - \hat p)}{n} + "
            r"\frac{z^2}{4 n^2}}}{1 + \frac{z^2}{n}}",
            "Limits of a share that came back, of n set free.",
            "wilson_1927",
        ),
        (
            r"n = Q\,(1 - \ell_1)(1 - \ell_2)(1 - \ell_3)",
            "Nests of next year from Q queens; the high end leaves out the winter loss.",
            "wespenschutz_mortality",
        ),
    ),
    assumptions=(
        "The status you give is right; the authority has the last word.",
        "Homing comes from one trial with tagged yellow-legged hornets, without their nest.",
        "Brood is weighed without comb and fed as it is, water and all.",
        "The tenth for treats is keepers' custom; no study behind it was found.",
        "Conditions for release are reasoned from flight and mating; no release was ever tested.",
    ),
)
