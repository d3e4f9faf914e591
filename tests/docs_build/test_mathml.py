"""Formulas in running text: where a line may end."""

from __future__ import annotations

import pytest

from docs_build.sphinx_ext.mathml import pieces


@pytest.mark.parametrize(
    ("latex", "parts"),
    [
        ("80^2/(80-40) = 160", ["80^2/(80-40) ", "= 160"]),
        ("a = b = c", ["a ", "= b ", "= c"]),
        ("= 3", ["= 3"]),
        (r"\sum_{i=1}^{k} c_i", [r"\sum_{i=1}^{k} c_i"]),
        (r"\left(a = b\right)", [r"\left(a = b\right)"]),
    ],
)
def test_a_line_may_end_before_a_relation_of_the_formula_itself(
    latex: str, parts: list[str]
) -> None:
    assert pieces(latex) == parts
