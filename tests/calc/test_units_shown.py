"""The table of units says what the registry does, and the registry what others print."""

from __future__ import annotations

import pytest
from scipy import constants

from calc import tables, units
from calc.catalogue import CALCULATORS

# scipy 1.17 scipy.constants
OUTSIDE = {
    "inch": constants.inch,
    "ft": constants.foot,
    "mile": constants.mile,
    "inch**2": constants.inch**2,
    "ft**2": constants.foot**2,
    "gal": constants.gallon,
    "floz": constants.fluid_ounce,
    "lb": constants.pound,
    "oz": constants.ounce,
    "mph": constants.mph,
    "cfm": constants.foot**3 / constants.minute,
    "inH2O": 25.4 * constants.g,  # a column of water of 1000 kg/m3, per mm
    "kcal/h": 1000 * constants.calorie / constants.hour,
    "lb/ft**3": constants.pound / constants.foot**3,
    "km/h": constants.kmh,
    "L": constants.liter,
    "degree": constants.degree,
    "day": constants.day,
}
# Written in the table with another sign, or explained in the text below it.
ELSEWHERE = {
    "degC", "degF", "delta_degC", "delta_degF", "dB", "dBA", "kV", "W", "W/m**2", "kg", "kg/m**3",
    "m", "m**2", "cm**2", "mL/h", "L/h", "floz/h", "km**-1", "mile**-1",
}  # fmt: skip


@pytest.mark.parametrize("row", tables.rows("units_shown"), ids=lambda row: row["key"])
def test_the_table_says_what_the_registry_does(row: dict[str, str]) -> None:
    number, si = units.split_number(row["equals"])
    assert units.convert(1, row["key"], si) == pytest.approx(number, rel=1e-12)
    assert units.label(row["key"]) == row["sign"]


@pytest.mark.library("scipy")
@pytest.mark.parametrize("unit", OUTSIDE)
def test_factors_against_scipy(unit: str) -> None:
    number, _ = units.split_number(tables.row("units_shown", unit)["equals"])
    assert number == pytest.approx(OUTSIDE[unit], rel=1e-7)


def test_every_unit_of_the_calculators_is_explained() -> None:
    used = set()
    for calculator in CALCULATORS.values():
        for each in (*calculator.inputs, *calculator.outputs):
            used |= {getattr(each, "unit", ""), getattr(each, "customary", "")}
    shown = {row["key"] for row in tables.rows("units_shown")}
    assert used - {""} <= shown | ELSEWHERE
