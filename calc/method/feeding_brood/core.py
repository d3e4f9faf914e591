"""The core of "Brood for poultry"."""

from __future__ import annotations

from calc.declare import Answer
from calc.method.feeding_brood import portions
from calc.method.feeding_brood.cautions import cautions
from calc.method.feeding_brood.inputs import Inputs
from calc.method.passing_on import both, grams, line
from calc.tables import row


def core(x: Inputs) -> Answer:
    """Compute portions and days; units and sources: the declaration."""
    food = row("brood_food", "fresh")
    daily = portions.portion(x.hens, x.feed, x.share)
    days = portions.days_of_feed(x.brood, daily)
    first = min(daily, x.brood)
    parts = {key: portions.nutrient(first, food[key]) for key in ("protein", "fat", "carbohydrate")}

    def band(key: str) -> str:
        low, high = (portions.nutrient(first, end) for end in food[key])
        return f"{low:.0f} to {high:.0f} g"

    diet = portions.diet_protein(portions.flock("feed_protein"), food["protein"], x.share)
    energy = portions.energy(parts["protein"], parts["fat"], parts["carbohydrate"])
    values = {
        "verdict": f"{grams(daily)} a day for the flock, for {days} "
        f"{'day' if days == 1 else 'days'}.",
        "figures": [
            line("Brood a day, the whole flock", grams(daily)),
            line("for one hen", both(daily / x.hens, "g", "oz", 1, 2)),
            line("Bags to freeze, one a day", f"{days}"),
            line("Protein in a day's portion", band("protein_range")),
            line("Fat in it", band("fat_range")),
            line("Energy in it", f"{energy:.0f} kcal"),
            line("Protein of the whole diet", f"{diet:.1f} %"),
            line("Dry matter in all the brood", grams(portions.nutrient(x.brood, food["dry"]))),
        ],
    }
    return Answer(values=values, cautions=list(cautions(x)))
