"""The season: rows, summaries, exports, timing and comparisons."""

from __future__ import annotations

import csv
import io
import json
import math
import runpy
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import special, stats

from calc import tables, units
from calc.catalogue import find
from calc.clients import job, season
from calc.clients.job import shared as job_shared
from calc.clients.season import rates as season_rates
from calc.clients.season import records as season_records
from docs_build.bootstrap import ROOT
from tests.calc.clients import job_files

NOW = job_files.NOW
FULL = job.read(json.dumps(job_files.FULL))


def made(number: int, **values: object) -> job.Job:
    one = job.new(f"job-{number:03}", NOW)
    for path, value in values.items():
        one = job.set_value(one, path.replace("__", "."), value, NOW)
    return one


JOBS = [
    made(1, visit__date="2026-08-03", animal__species="crabro", place__kind="shed",
         result__adults=120, price__final=200, price__currency="EUR"),
    made(2, visit__date="2026-08-05", animal__species="vulgaris", place__kind="roof",
         result__adults=400, price__final=150, price__currency="EUR"),
    made(3, visit__date="2026-08-17", animal__species="vulgaris", place__kind="wall",
         result__adults=600, price__final=100, price__currency="CHF"),
    made(4),
]  # fmt: skip


def test_rows_are_by_date_and_hold_no_person() -> None:
    table = season.rows([FULL, *JOBS])
    assert [row["id"] for row in table][-1] == "job-004"
    assert table[0]["week"] == 32
    text = season.csv_text(table)
    for word in ("Example", "Lane", "52.5", "expired", "Gate"):
        assert word not in text


def test_summaries() -> None:
    table = season.rows(JOBS)
    by = season.summarise(table, "species")
    assert (by[0]["group"], by[0]["jobs"], by[0]["adults"]) == ("Common yellowjacket", 2, 1000)
    assert by[0]["median_adults"] == 500
    assert by[0]["price"] is None, "two currencies are never added"
    assert [row["group"] for row in season.summarise(table, "week")] == [32, 34, None]
    with pytest.raises(ValueError, match="grouped by"):
        season.summarise(table, "client")


def test_weeks_without_a_job_count_as_zero() -> None:
    assert season.weekly(season.rows(JOBS)) == (32, [2.0, 0.0, 1.0])
    assert season.weekly(season.rows(JOBS), "adults") == (32, [520.0, 0.0, 600.0])
    assert season.weekly([]) == (0, [])


def test_steps() -> None:
    assert season.step_minutes([FULL, FULL]) == {"capture": [40, 40], "wait": [60.5, 60.5]}


@settings(max_examples=200, deadline=None, derandomize=True, database=None)
@given(st.lists(st.text(max_size=12), min_size=2, max_size=4))
def test_csv_is_read_back_by_the_csv_module(texts: list[str]) -> None:
    # Outside reference: csv of the standard library, dialect of RFC 4180.
    texts = [text.replace("\r", "").replace("\x00", "") for text in texts]
    columns = [f"c{place}" for place in range(len(texts))]
    table = [dict(zip(columns, texts, strict=True))]
    back = list(csv.reader(io.StringIO(season.csv_text(table, columns), newline="")))
    assert back[0] == columns
    for given_text, read in zip(texts, back[1], strict=True):
        assert read.removeprefix("'") == given_text.removeprefix("'")
        formula = read[:1] in {"=", "+", "-", "@", "\t"}
        assert not formula or table._number(read)


@pytest.mark.published("tdwg_terms_2026")
def test_every_term_is_one_of_darwin_core() -> None:
    # TDWG, dist/dwc_occurrence_core_horizontal.csv; see the head of the data file.
    text = (ROOT / "tests/data/darwin_core_occurrence_terms.txt").read_text(encoding="utf-8")
    known = {
        term for line in text.splitlines() if not line.startswith("#") for term in line.split(",")
    }
    assert set(season_records.terms()) <= known
    assert {"occurrenceID", "basisOfRecord", "eventDate", "scientificName"} <= set(
        season_records.terms()
    )


@pytest.mark.published("tdwg_terms_2026")
def test_values_are_of_the_vocabularies_that_darwin_core_names() -> None:
    # TDWG, vocabulary/term_versions.csv: examples of establishmentMeans, sex, lifeStage, caste,
    # basisOfRecord and occurrenceStatus; coordinateUncertaintyInMeters: zero is not valid.
    for one in season_records.occurrences(FULL):
        assert one["basisOfRecord"] == "HumanObservation"
        assert one["sex"] in {"female", "male", ""}
        assert one["lifeStage"] == "adult"
        assert one["establishmentMeans"] in {"native", "introduced", "uncertain"}
        assert one["occurrenceStatus"] == "present"
        assert int(one["coordinateUncertaintyInMeters"]) > 0
        assert one["geodeticDatum"] == "EPSG:4326"


def test_records_hold_castes_apart_and_no_person() -> None:
    records = season_records.occurrences(FULL)
    assert [(one["caste"], one["individualCount"]) for one in records] == [
        ("worker", "114"),
        ("queen", "1"),
    ]
    text = season_records.occurrence_csv([FULL])
    for word in ("Example", "Lane", "Gate", "Hornets at", "13.4000", "expired", "allergy"):
        assert word not in text
    assert len({one["occurrenceID"] for one in records}) == 2


def test_what_is_not_known_gives_no_record() -> None:
    assert season_records.occurrences(made(1, visit__date="2026-08-03")) == []
    assert season_records.occurrences(made(1, animal__species="crabro")) == []
    assert (
        season_records.occurrences(made(1, animal__species="bees", visit__date="2026-08-03")) == []
    )
    uncounted = made(1, animal__species="crabro", visit__date="2026-08-03")
    assert season_records.occurrences(uncounted)[0]["individualCount"] == ""


@settings(max_examples=300, deadline=None, derandomize=True, database=None)
@given(
    st.floats(-89, 89), st.floats(-179, 179), st.floats(0, 5000), st.integers(0, 3)
)  # fmt: skip
def test_the_circle_holds_the_place(lat: float, lon: float, known: float, digits: int) -> None:
    place = season_records.coarsened(lat, lon, known, digits)
    # Haversine on the smallest WGS 84 radius of curvature is an outside check of the distance.
    d_phi, d_lam = math.radians(place["latitude"] - lat), math.radians(place["longitude"] - lon)
    a = (
        math.sin(d_phi / 2) ** 2
        + math.cos(math.radians(lat))
        * math.cos(math.radians(place["latitude"]))
        * math.sin(d_lam / 2) ** 2
    )
    away = 2 * 6371008.8 * math.asin(math.sqrt(a))
    assert away + known <= place["uncertainty"] + 1


@pytest.mark.library("scipy")
@pytest.mark.parametrize("latitude", [0.0, 23.5, 45.0, 60.0, -85.0])
def test_degree_lengths_against_the_arc_of_an_ellipse(latitude: float) -> None:
    # scipy 1.17.1, special.ellipeinc: length of the meridian between two reduced latitudes, and the
    # circle of the parallel from the reduced latitude, on WGS 84.
    a, b = 6378137.0, 6356752.314245

    def reduced(degrees: float) -> float:
        return math.atan2(b * math.sin(math.radians(degrees)), a * math.cos(math.radians(degrees)))

    def north(degrees: float) -> float:
        rest = math.pi / 2 - reduced(degrees)
        return a * float(special.ellipeinc(rest, 1 - (b / a) ** 2))

    along, across = season_records.degree_lengths(latitude)
    assert along == pytest.approx(north(latitude - 0.5) - north(latitude + 0.5), rel=1e-5)
    assert across == pytest.approx(math.radians(1) * a * math.cos(reduced(latitude)), rel=1e-9)


@pytest.mark.library("scipy")
@pytest.mark.parametrize(
    ("x1", "t1", "x2", "t2"),
    [(60, 51477.5, 30, 54308.7), (11, 800, 21, 3011), (5, 10, 0, 10), (0, 10, 7, 12), (3, 1, 3, 9)],
)
def test_rates_against_scipy(x1: int, t1: float, x2: int, t2: float) -> None:
    # scipy 1.17, stats.binomtest: chances and exact (Clopper-Pearson) limits of the share.
    made = season_rates.rate_ratio(x1, t1, x2, t2)
    share = t1 / (t1 + t2)
    reference = stats.binomtest(x1, x1 + x2, share)
    assert made.two_sided == pytest.approx(reference.pvalue, rel=1e-9)
    one = stats.binomtest(x1, x1 + x2, share, alternative="greater").pvalue
    assert made.one_sided == pytest.approx(one, rel=1e-9)
    limits = reference.proportion_ci(0.95, "exact")
    assert made.low == pytest.approx(limits.low / (1 - limits.low) * t2 / t1, rel=1e-7)
    if made.high is None:
        assert limits.high == 1
    else:
        assert made.high == pytest.approx(limits.high / (1 - limits.high) * t2 / t1, rel=1e-7)


@pytest.mark.library("scipy")
def test_raggedness_against_scipy() -> None:
    # scipy 1.17, stats.chisquare: the same statistic against equal expected counts.
    counts = [31, 44, 28, 52, 39, 61, 35]
    made = season_rates.raggedness(counts)
    reference = stats.chisquare(counts)
    assert made.dispersion == pytest.approx(reference.statistic, rel=1e-12)
    assert made.chance == pytest.approx(reference.pvalue, rel=1e-9)
    assert made.error == pytest.approx(stats.sem(counts), rel=1e-12)
    assert made.ratio > 1
    assert made.error > made.error_by_chance


@pytest.mark.library("scipy")
def test_ratio_of_totals_against_scipy() -> None:
    # scipy 1.17, stats.norm: limits on the logarithm.
    ratio, low, high = season_rates.ratio_of_totals(2231, 139.4, 1500, 120)
    sd = math.hypot(139.4 / 2231, 120 / 1500)
    assert ratio == pytest.approx(2231 / 1500)
    assert (low, high) == pytest.approx(
        tuple(math.exp(end) for end in stats.norm.interval(0.95, math.log(ratio), sd)), rel=1e-9
    )


def test_timing_by_hand() -> None:
    # By hand: running sums 1, 4, 10, 22, 40, 62, 81, 92, 98, 100.
    made = season_rates.timing([1, 3, 6, 12, 18, 22, 19, 11, 6, 2])
    assert made.total == 100
    assert made.early == pytest.approx(3)
    assert made.median == pytest.approx(5 + 10 / 22)
    assert made.late == pytest.approx(7 + 9 / 11)
    assert made.mean == pytest.approx(5.40)
    assert made.spread == pytest.approx(1.847, abs=5e-4)
    assert made.shares[-1] == pytest.approx(1)


@pytest.mark.library("scipy")
def test_timing_against_scipy() -> None:
    # scipy 1.17, stats.rv_histogram: quantiles of the piecewise uniform distribution.
    counts = [2, 0, 5, 9, 4, 0, 1]
    made = season_rates.timing(counts)
    reference = stats.rv_histogram((counts, list(range(8))), density=False)
    assert made.median == pytest.approx(reference.ppf(0.5), abs=1e-9)
    assert made.early == pytest.approx(reference.ppf(0.1), abs=1e-9)
    assert made.late == pytest.approx(reference.ppf(0.9), abs=1e-9)
    assert made.mean == pytest.approx(reference.mean(), abs=1e-9)


SEASON = sorted((ROOT / "demo_cases" / "season").glob("season-*.json"))


def test_the_invented_season_is_the_one_of_its_script() -> None:
    path = ROOT / "demo_cases" / "season" / "make.py"
    script = runpy.run_path(str(path))
    remade = script["jobs"]()
    assert len(remade) == len(SEASON) >= 30

    def lasting(one: job.Job) -> dict[str, Any]:
        # What a calculator said is frozen in the file; a new edition may say it in other words.
        data = one.as_dict()
        kept = [
            {key: each[key] for key in ("calculator", "time", "inputs")}
            for each in data.pop("calculations", [])
        ]
        return data | {"calculations": kept, "edition": ""}

    for path, one in zip(SEASON, remade, strict=True):
        kept = job.read(path.read_text(encoding="utf-8"))
        assert lasting(kept) == lasting(one), f"{path.name}: run demo_cases/season/make.py"


@pytest.mark.parametrize("case", ["mill_willow", "soffit_yellowjackets"])
def test_the_jobs_of_the_cases_agree_with_their_inputs(case: str) -> None:
    folder = ROOT / "demo_cases" / case
    made = job.read((folder / "job.json").read_text(encoding="utf-8"))
    inputs = json.loads((folder / "case.json").read_text(encoding="utf-8"))["inputs"]
    assert made.get("shared.catches") == inputs["how_many_left"]["catches"]
    assert made.get("animal.species") == inputs["comb_count"]["species"]
    assert made.get("shared.adults_caught") == inputs["comb_count"]["adults_caught"]
    assert made.get("answers") == inputs["first_call"]
    told = find("first_call").run(made.get("answers"))
    wanted = {"relocated": "Relocate", "removed": "Remove"}[made.get("result.outcome")]
    assert told.values["decision"] == wanted
    for row in tables.rows("shared_inputs"):
        if row["path"].startswith(("animal.", "place.", "client.")) and row["kind"] == "choice":
            name = dict(job_shared._pairs(row["feeds"]))["first_call"]
            assert made.get(row["path"]) == inputs["first_call"][name], row["path"]
    for path in ("air_temperature", "humidity", "wind"):
        filled = job_shared.prefill(made, "heat_in_suit")[path]
        entered = units.plain(inputs["heat_in_suit"][path], filled["unit"], path, path)
        assert filled["value"] == pytest.approx(entered, abs=0.05)


def test_exercises_of_the_page() -> None:
    found = season_rates.rate_ratio(12, 25, 4, 30)
    assert (round(found.ratio or 0, 1), round(found.low, 1), round(found.high or 0, 1)) == (
        3.6,
        1.1,
        15.3,
    )
    ragged = season_rates.raggedness([3, 9, 1, 7, 2, 8])
    assert (ragged.mean, ragged.dispersion, ragged.df) == (5, pytest.approx(11.6), 5)
    assert round(100 * ragged.chance, 1) == 4.1
    assert math.ceil(season_records.rounding_uncertainty(50, 0.01)) == 1324
    assert season_records.coarsened(50, 8, 30)["uncertainty"] == 1354
