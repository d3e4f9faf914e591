"""Passing life on: letting queens go, moving a nest, feeding brood to poultry."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc import units
from calc.declare import Answer, Axis, Calculator, Chart, Out, Series
from calc.method import release_numbers as numbers
from calc.method.catch_chamber_landing import animal
from calc.method.release_cautions import cautions
from calc.method.release_inputs import INPUTS
from calc.tables import row, rows

Given = Mapping[str, Any]


def _line(name: str, wanted: str, yours: str, met: bool) -> dict[str, Any]:
    return {"condition": name, "wanted": wanted, "yours": yours, "met": "yes" if met else "no"}


def _both(value: float, unit: str, other: str, digits: int = 0) -> str:
    there = units.convert(value, unit, other)
    return f"{value:.{digits}f} {units.label(unit)} ({there:.0f} {units.label(other)})"


def _conditions(given: Given) -> tuple[list[dict[str, Any]], list[str]]:
    """Return the table of conditions, and the words of those not met."""
    want = numbers.condition
    temperature, wind = given["temperature"], given["wind"]
    checks = (
        (
            "too cold",
            _line(
                "Air, at least",
                _both(want("temperature"), "degC", "degF"),
                _both(temperature, "degC", "degF"),
                temperature >= want("temperature"),
            ),
        ),
        (
            "too windy",
            _line(
                "Wind, at most",
                _both(want("wind"), "m/s", "mph"),
                _both(wind, "m/s", "mph"),
                wind <= want("wind"),
            ),
        ),
        (
            "wet",
            _line("Weather", "dry, better sun", given["sky"], given["sky"] != "rain"),
        ),
        (
            "too late in the day",
            _line(
                "Daylight left, at least",
                f"{want('daylight'):.0f} h",
                f"{given['daylight']:.1f} h",
                given["daylight"] >= want("daylight"),
            ),
        ),
        (
            "the youngest queens cannot fly yet",
            _line(
                "Age of the youngest queen, at least",
                f"{want('age'):.0f} days",
                f"{given['age']:.0f} days",
                given["queens"] == 0 or given["age"] >= want("age"),
            ),
        ),
        (
            "some do not fly by themselves",
            _line("They fly by themselves", "yes", given["flying"], given["flying"] == "yes"),
        ),
    )
    return [line for _, line in checks], [word for word, line in checks if line["met"] == "no"]


def _release(given: Given) -> Answer:
    lines, unmet = _conditions(given)
    heads = given["queens"] + given["males"]
    grams = heads * animal(given["animal"], given["mass"]).mass / 1000
    syrup = grams * numbers.condition("syrup_share") / 100
    sugar = syrup * numbers.condition("syrup") / 100
    values = {
        "verdict": f"Wait: {', '.join(unmet)}."
        if unmet
        else "Place, hour and weather suit: let them go now, males and queens together.",
        "conditions": lines,
        "syrup": syrup,
        "syrup_sugar": sugar,
        "syrup_water": syrup - sugar,
        "nests": numbers.new_nests(given["queens"]),
    }
    return Answer(values=values, cautions=cautions(given, unmet))


def _move(given: Given) -> Answer:
    share, limits = numbers.homing(given["km"])
    workers = given["workers"]
    said = cautions(given, ())
    values = {
        "verdict": f"Of {workers} workers some {workers * limits[0] / 100:.0f} to "
        f"{workers * limits[1] / 100:.0f} may be back at the old hole.",
        "share_back": limits,
        "best_guess": share,
        "workers_back": tuple(workers * each / 100 for each in limits),
    }
    stopped = any(each.level == "stop" for each in said)
    return Answer(values=values, cautions=said, charts=[] if stopped else [_chart()])


def _feed(given: Given) -> Answer:
    food = row("brood_food", "fresh")
    daily = numbers.portion(given["hens"], given["feed"], given["share"])
    days = numbers.days_of_feed(given["brood"], daily)
    first = min(daily, given["brood"])
    grams = {key: numbers.nutrient(first, food[key]) for key in ("protein", "fat", "carbohydrate")}
    values = {
        "verdict": f"{daily:.0f} g ({daily / 28.3495:.1f} oz) a day for the flock, frozen in "
        f"{days} day portions.",
        "portion": daily,
        "days": days,
        "protein": tuple(numbers.nutrient(first, end) for end in food["protein_range"]),
        "fat": tuple(numbers.nutrient(first, end) for end in food["fat_range"]),
        "kcal": numbers.energy(grams["protein"], grams["fat"], grams["carbohydrate"]),
        "diet_protein": numbers.diet_protein(
            numbers.flock("feed_protein"), food["protein"], given["share"]
        ),
        "bag": daily / given["hens"],
        "dry": numbers.nutrient(given["brood"], food["dry"]),
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


_GRAMS: dict[str, Any] = {"unit": "g", "customary": "oz", "digits": 0, "customary_digits": 1}

OUTPUTS = (
    Out(name="verdict", label="What it means", meaning="The answer in words.", kind="text"),
    Out(
        name="conditions",
        label="Place, hour, weather",
        meaning="What is wanted for letting them go, and what you have.",
        kind="table",
        columns=(
            Out(name="condition", label="Condition", meaning="What.", kind="text"),
            Out(name="wanted", label="Wanted", meaning="At least or at most.", kind="text"),
            Out(name="yours", label="Yours", meaning="Now.", kind="text"),
            Out(name="met", label="Met", meaning="Yes or no.", kind="text"),
        ),
    ),
    Out(
        name="syrup",
        label="Sugar water a day",
        meaning="For all of them in the cage, on a wick; fresh each day, water besides.",
        main=True,
        **_GRAMS,
    ),
    Out(name="syrup_sugar", label="Sugar in it", meaning="Half by mass.", **_GRAMS),
    Out(name="syrup_water", label="Water in it", meaning="Half by mass.", **_GRAMS),
    Out(
        name="nests",
        label="Nests next year",
        meaning="That may come of the queens, from one source's losses to another's.",
        kind="interval",
        digits=2,
    ),
    Out(
        name="share_back",
        label="Workers back at the old place",
        meaning="95 % limits of the one trial, from the distances on both sides of yours.",
        kind="interval",
        unit="percent",
        digits=0,
        main=True,
    ),
    Out(
        name="workers_back",
        label="That is, of yours",
        meaning="Workers to reckon with at the old hole.",
        kind="interval",
        digits=0,
        main=True,
    ),
    Out(
        name="best_guess",
        label="On the line of the trial",
        meaning="Between its distances; no figure beyond five kilometres, where nothing was tried.",
        unit="percent",
        digits=0,
    ),
    Out(
        name="portion",
        label="Brood a day, the whole flock",
        meaning="Share of the day's feed, as fed.",
        main=True,
        **_GRAMS,
    ),
    Out(
        name="days",
        label="It lasts",
        meaning="Days, and so many bags to freeze.",
        kind="count",
        unit="day",
        main=True,
    ),
    Out(
        name="protein",
        label="Protein in a day's portion",
        meaning="From the least to the most in print.",
        kind="interval",
        **_GRAMS,
    ),
    Out(
        name="fat",
        label="Fat in a day's portion",
        meaning="From the least to the most in print.",
        kind="interval",
        **_GRAMS,
    ),
    Out(
        name="kcal",
        label="Energy in a day's portion",
        meaning="By the general food factors.",
        unit="kcal",
        digits=0,
    ),
    Out(
        name="diet_protein",
        label="Protein of the whole diet",
        meaning="Layer feed with brood in place of the share.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="bag",
        label="For one hen",
        meaning="Of the day's portion.",
        unit="g",
        customary="oz",
        digits=1,
        customary_digits=2,
    ),
    Out(
        name="dry",
        label="Dry matter in all of it",
        meaning="The rest is water.",
        **_GRAMS,
    ),
)

passing_life_on = Calculator(
    name="passing_life_on",
    title="Passing life on",
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
