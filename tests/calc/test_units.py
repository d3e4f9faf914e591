"""Reading and showing numbers with units."""

from __future__ import annotations

import pytest

from calc import units
from calc.errors import InputError


# NISTunits 1.0.1, after appendix B.8 of NIST SP 811: seven digits where a factor is not exact.
# The exact factors beside them are held to one part in a hundred million.
@pytest.mark.published("nist_factors")
@pytest.mark.parametrize(
    ("text", "unit", "printed", "exact"),
    [
        ("1 inch", "m", 0.0254, 0.0254),
        ("1 ft", "m", 0.3048, 0.3048),
        ("1 mile", "m", 1609.344, 1609.344),
        ("1 lb", "kg", 0.4535924, 0.45359237),
        ("1 oz", "g", 28.34952, 28.349523125),
        ("1 gal", "L", 3.785412, 3.785411784),
        ("1 floz", "mL", 29.57353, 29.5735295625),
        ("1 mph", "m/s", 0.44704, 0.44704),
        ("212 degF", "degC", 100.0, 100.0),
        ("-40 degF", "degC", -40.0, -40.0),
        ("1 cfm", "m**3/s", 4.719474e-4, 4.719474432e-4),
        ("1 inH2O", "Pa", 249.0889, 249.08891),
        ("1 kcal", "J", 4184.0, 4184.0),
    ],
)
def test_factors_of_nist_sp_811(text: str, unit: str, printed: float, exact: float) -> None:
    factor = units.plain(text, unit, "Field", "field")
    assert factor == pytest.approx(exact, rel=1e-8)
    assert float(f"{factor:.7g}") == printed


@pytest.mark.parametrize(
    ("text", "number", "rest"),
    [
        ("86 degF", 86, "degF"),
        ("86°F", 86, "°F"),
        ("12,5", 12.5, ""),
        ("−3", -3, ""),
        (" 1.5e3 Pa", 1500, "Pa"),
        (".5", 0.5, ""),
        ("0,125", 0.125, ""),
    ],
)
def test_split_number(text: str, number: float, rest: str) -> None:
    assert units.split_number(text) == (number, rest)


@pytest.mark.parametrize("text", ["1,500", "12,000", "abc", "1 2", "1.2.3", "--1", "1'000"])
def test_unclear_numbers_are_refused(text: str) -> None:
    with pytest.raises(ValueError, match=r"not|unclear"):
        units.split_number(text)


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ("", "is empty"),
        ("abc", "not a number"),
        ("5 m", "unit of another kind"),
        ("5 parsec", "not known here"),
        ("9**9**9**9", "not known here"),
        ("5 m//s", "not known here"),
        (float("nan"), "not a finite number"),
        (float("inf"), "not a finite number"),
        (True, "not a number"),
        (None, "not a number"),
        ({"value": 1, "unit": 3}, "unit that is not text"),
        ({"unit": "m"}, "not a value with its unit"),
        (10**400, "too large"),
        ("7" * 90, "too long"),
    ],
)
def test_bad_values_name_field_and_allowed(value: object, words: str) -> None:
    with pytest.raises(InputError, match=words) as caught:
        units.plain(value, "degC", "Air temperature", "air_temperature")
    assert caught.value.field == "air_temperature"
    assert "Air temperature" in caught.value.sentence
    assert caught.value.allowed in caught.value.sentence


def test_compatible_units_are_taken() -> None:
    assert units.plain({"value": 86, "unit": "degF"}, "degC", "T", "t") == 30
    assert units.plain(units.Quantity(86, "degF"), "degC", "T", "t") == 30
    assert units.plain("90 °", "degree", "Lean", "lean") == 90
    assert units.plain("40 in H2O", "kPa", "P", "p") == pytest.approx(9.9635564)


def test_show_has_no_negative_zero() -> None:
    assert units.show(-0.04, 1) == "0.0"
    assert units.show(1371.4, -1) == "1370"


def test_an_unclear_comma_is_an_error_of_its_own() -> None:
    with pytest.raises(units.UnclearCommaError):
        units.split_number("1,500")
    with pytest.raises(InputError, match="can be read in two ways"):
        units.plain("1,500", "kg", "Load", "load")
