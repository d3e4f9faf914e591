"""Pieces of Typst source, checked by what the compiler makes of them."""

from __future__ import annotations

import io

import pytest
import typst
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from docs_build.print.writer import markup
from docs_build.print.writer.inline import length
from docs_build.print.writer.tables import measure, widths

NASTY = [
    "# heading = no heading",
    "- no item",
    "1. no item",
    "+ no item / Term: no term",
    "*a* _b_ `c` $d$ #e @f <g> [h]",
    "https://example.org/a//b",
    "a -- b --- c ... d ~ e",
    "say \"it\" 'so'",
    "back\\slash \\u{41}",
    "/* no comment */ // nor this",
    "#strong[x];(y).z",
]


def printed(source: str) -> str:
    """Text of the PDF made from a source."""
    made = typst.compile(
        f"#set page(width: 40cm)\n#set text(font: {markup.string('DejaVu Sans Mono')})\n"
        f"{source}".encode(),
        format="pdf",
        ignore_system_fonts=True,
    )
    assert isinstance(made, bytes)
    return PdfReader(io.BytesIO(made)).pages[0].extract_text().strip()


@pytest.mark.parametrize("plain", NASTY)
def test_escaped_text_is_printed_as_it_stands(plain: str) -> None:
    assert printed(markup.text(plain)) == plain
    assert printed(f"#strong[a];{markup.text(plain)}") == f"a{plain}"


@settings(max_examples=60, deadline=None)
@given(st.text(st.characters(min_codepoint=33, max_codepoint=126), min_size=1, max_size=40))
def test_any_ascii_text_is_printed_as_it_stands(plain: str) -> None:
    assert printed(f"x{markup.text(plain)}x") == f"x{plain}x"


def test_string_literal_survives_quotes_and_backslashes() -> None:
    plain = 'a "b" \\ c'
    assert printed(f"#{markup.string(plain)}") == plain


def test_white_space_is_one_space_but_one_that_must_not_break_stays() -> None:
    assert markup.text("a \n  b\u00a0c") == "a b\u00a0c"


def test_call_ends_its_expression() -> None:
    assert markup.call("strong", "x") == "#strong[x];"
    assert markup.call("f", "x", number=2, key="a") == '#f(number: 2, key: "a")[x];'
    assert markup.call("f", flag=True, nothing=None) == "#f(flag: true, nothing: none);"


@pytest.mark.parametrize(
    ("told", "made"),
    [("50%", "50%"), ("96px", "72pt"), ("2.54cm", "72pt"), ("1in", "72pt"), ("", "auto")],
)
def test_lengths(told: str, made: str) -> None:
    # CSS: 96 px are one inch; Typst: 72 pt are one inch.
    number = length(told)
    assert number == made or float(number[:-2]) == pytest.approx(float(made[:-2]), abs=0.01)


def test_a_table_that_fits_keeps_its_natural_widths() -> None:
    assert widths([measure([("ab", 1)]), measure([("cd", 1)])], 160) == ["auto", "auto"]


def test_a_wide_table_fills_the_page_and_no_column_is_below_its_longest_word() -> None:
    columns = [
        measure([("Species", 1), ("Vespula", 1)]),
        measure([("word " * 60, 1)]),
        measure([("thunderstorm " * 20, 1)]),
    ]
    parts = [float(width.removesuffix("fr")) for width in widths(columns, 160)]
    assert sum(parts) == pytest.approx(160, abs=0.5)
    assert all(part >= column.least - 0.1 for part, column in zip(parts, columns, strict=True))
    assert parts[1] > parts[0]


def test_cells_over_several_columns_do_not_widen_one() -> None:
    assert measure([("a", 1), ("a very long heading over all columns", 3)]) == measure([("a", 1)])
