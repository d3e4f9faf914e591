"""Makes the invented season: ``python demo_cases/season/make.py`` writes the job files anew.

Nothing in it happened. The same seed gives the same files on every machine: only
``Random.random`` is drawn from, whose sequence Python keeps.
"""

from __future__ import annotations

import datetime
import math
import random
from pathlib import Path
from typing import Any

from calc.clients import job as record
from calc.clients.job import Job
from calc.clients.job.shared import record as compute

HERE = Path(__file__).parent
SEED = 20260501
JOBS = 36
YEAR = 2026
TIME = "T18:00:00+02:00"

ANIMALS = (
    ("vulgaris", 0.34), ("germanica", 0.30), ("crabro", 0.22), ("media", 0.07), ("polistes", 0.07),
)  # fmt: skip
PLACES = {
    "vulgaris": (("roof", 0.5), ("wall", 0.25), ("ground", 0.25)),
    "germanica": (("ground", 0.45), ("wall", 0.3), ("roof", 0.25)),
    "crabro": (("hollow_tree", 0.45), ("shed", 0.25), ("box", 0.15), ("roof", 0.15)),
    "media": (("branch", 1.0),),
    "polistes": (("shed", 0.6), ("roof", 0.4)),
}
MOST = {"vulgaris": 1100, "germanica": 900, "crabro": 210, "media": 120, "polistes": 25}
HEIGHTS = {"roof": 4.5, "wall": 2.8, "ground": -0.2, "hollow_tree": 3.2, "shed": 2.2, "box": 2.6,
           "branch": 2.0}  # fmt: skip


class Dice:
    """Draws that rest on ``Random.random`` alone."""

    def __init__(self, seed: int) -> None:
        self._random = random.Random(seed)

    def share(self) -> float:
        """Return a draw from 0 to 1."""
        return self._random.random()

    def normal(self) -> float:
        """Return a standard normal draw, after Box and Muller."""
        radius = math.sqrt(-2 * math.log(1 - self.share()))
        return radius * math.cos(2 * math.pi * self.share())

    def around(self, middle: float, spread: float) -> float:
        """Return a draw with this median, spread as a factor of e."""
        return middle * math.exp(spread * self.normal())

    def pick(self, weighted: tuple[tuple[str, float], ...]) -> str:
        """Return one of the names, by weight."""
        wanted = self.share() * sum(weight for _, weight in weighted)
        for name, weight in weighted:
            wanted -= weight
            if wanted < 0:
                return name
        return weighted[-1][0]

    def binomial(self, n: int, p: float) -> int:
        """Return how many of ``n`` happen."""
        return sum(self.share() < p for _ in range(n))

    def poisson(self, mean: float) -> int:
        """Return a count of rare events, after Knuth."""
        count, left = 0, math.exp(-mean)
        product = self.share()
        while product > left:
            product *= self.share()
            count += 1
        return count


def jobs() -> list[Job]:
    """Return the season's jobs, by date."""
    dice = Dice(SEED)
    days = sorted(_day(dice) for _ in range(JOBS))
    return [_job(dice, number, day) for number, day in enumerate(days, start=1)]


def _day(dice: Dice) -> int:
    """Return a day of the year, most of them in August."""
    return min(max(round(227 + 26 * dice.normal()), 140), 300)


def _job(dice: Dice, number: int, day: int) -> Job:
    date = (datetime.date(YEAR, 1, 1) + datetime.timedelta(days=day - 1)).isoformat()
    now = f"{date}{TIME}"
    animal = dice.pick(ANIMALS)
    place = dice.pick(PLACES[animal])
    made = record.new(f"season-{YEAR}-{number:02}", now, f"Invented job {number}")
    for path, value in _facts(dice, animal, place, date).items():
        made = record.set_value(made, path, value, now)
    outcome = _outcome(dice, animal, day)
    made = record.set_value(made, "result.outcome", outcome, now)
    if outcome in {"removed", "relocated"}:
        return _work(dice, made, animal, place, day, now)
    talk = [{"step": "talk", "minutes": round(dice.around(20, 0.3))}]
    return record.set_value(made, "steps", talk, now)


def _facts(dice: Dice, animal: str, place: str, date: str) -> dict[str, Any]:
    return {
        "visit.date": date,
        "animal.species": animal,
        "animal.certainty": dice.pick((("seen", 0.7), ("photo", 0.2), ("specimen", 0.1))),
        "animal.status": "protected" if animal == "crabro" else "native",
        "animal.treated": dice.pick((("no", 0.9), ("nobody_knows", 0.1))),
        "place.kind": place,
        "place.height": round(HEIGHTS[place] + 0.4 * dice.normal(), 1),
        "place.country": "DE",
        # A made-up spot in two decimals: it stands for no house.
        "place.latitude": round(50 + 2 * dice.share(), 2),
        "place.longitude": round(8 + 3 * dice.share(), 2),
        "place.uncertainty": 1500,
    }


def _outcome(dice: Dice, animal: str, day: int) -> str:
    stays = 0.25 if day < 265 else 0.7
    if dice.share() < stays:
        return dice.pick((("left", 0.6), ("later", 0.25), ("sent_on", 0.15)))
    return "relocated" if animal == "crabro" else "removed"


def _work(dice: Dice, made: Job, animal: str, place: str, day: int, now: str) -> Job:
    grown = math.exp(-(((day - 240) / 38) ** 2))
    adults = max(3, round(dice.around(MOST[animal] * grown, 0.35)))
    catches = _catches(dice, adults)
    caught = sum(catches)
    late = max(0.0, min(1.0, (day - 235) / 40))
    males = dice.binomial(caught, 0.25 * late)
    queens = dice.binomial(caught - males, 0.12 * late)
    steps = _steps(dice, place, len(catches), caught)
    minutes = sum(step["minutes"] for step in steps)
    made = compute(made, "how_many_left", {"catches": catches}, now)
    stung = dice.poisson(0.35 + caught / 1500)
    made = record.set_value(made, "steps", steps, now)
    if stung:
        made = record.set_value(made, "stings", [{"who": "worker", "count": stung}], now)
    for path, value in {
        "result.adults": caught,
        "result.males": males,
        "result.queens": queens,
        "result.fate": "moved" if made.get("result.outcome") == "relocated" else "frozen",
        "price.currency": "EUR",
        "price.final": 5 * round((60 + 0.75 * minutes) / 5),
    }.items():
        made = record.set_value(made, path, value, now)
    return made


def _catches(dice: Dice, adults: int) -> list[int]:
    """Return the catch of each pass: a share of what is left, which differs from job to job."""
    share = min(0.75, max(0.25, 0.45 + 0.1 * dice.normal()))
    left, catches = adults, []
    while len(catches) < 3 or (catches[-1] > max(3, 0.04 * adults) and len(catches) < 9):
        catches.append(dice.binomial(left, share))
        left -= catches[-1]
    return catches


def _steps(dice: Dice, place: str, passes: int, caught: int) -> list[dict[str, Any]]:
    closed = place in {"roof", "wall", "hollow_tree"}
    middles = {
        "travel": 45,
        "talk": 15,
        "set_up": 20,
        "capture": 10 * passes,
        "open_cavity": 30 if closed else 0,
        "comb_out": 15 + caught / 60,
        "wait": 40,
        "close_up": 25 if closed else 12,
    }
    return [
        {"step": step, "minutes": max(1, round(dice.around(middle, 0.25)))}
        for step, middle in middles.items()
        if middle
    ]


def main() -> None:
    """Write one file a job beside this script."""
    for old in HERE.glob("season-*.json"):
        old.unlink()
    for each in jobs():
        path = HERE / f"{each.get('id')}.json"
        path.write_text(record.write(each), encoding="utf-8", newline="\n")


if __name__ == "__main__":
    main()
