"""The writer on small trees."""

from __future__ import annotations

import logging
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from docutils import nodes
from sphinx import addnodes

from calc.safety.heat_in_suit import heat_in_suit
from docs_build.print import matter
from docs_build.print.assemble import Chapter, Part, parts, printed
from docs_build.print.figures import Figures
from docs_build.print.writer.base import Answer, Shared
from docs_build.print.writer.calculators import LONG, unit_words
from docs_build.print.writer.translator import Translator
from docs_build.sphinx_ext.nodes import answer, calculator, exercise


class strange(nodes.General, nodes.Element):  # noqa: N801 - docutils names nodes in lower case
    """A node that nobody knows."""


@pytest.fixture
def warnings() -> Iterator[list[Any]]:
    """Warnings that Sphinx would show."""
    caught: list[Any] = []
    handler = logging.Handler()
    handler.emit = caught.append  # type: ignore[method-assign, assignment]
    logger = logging.getLogger("sphinx.docs_build.print")
    logger.addHandler(handler)
    yield caught
    logger.removeHandler(handler)


@pytest.fixture
def writer(tmp_path: Path) -> Translator:
    """A writer for the page ``page``."""
    return Translator(Shared(Figures(tmp_path / "drawings")), "page")


def test_unknown_node_is_reported_and_its_text_kept(
    writer: Translator, warnings: list[Any]
) -> None:
    made = writer.render(strange("", nodes.paragraph("", "kept")))
    assert "kept" in made
    assert [(w.type, w.subtype) for w in warnings] == [("training", "node")]
    assert "strange" in warnings[0].getMessage()


@pytest.mark.parametrize(
    ("node", "kind", "word"),
    [
        (nodes.danger, "stop", "STOP"),
        (nodes.error, "stop", "STOP"),
        (nodes.warning, "caution", "CAUTION"),
        (nodes.attention, "caution", "CAUTION"),
        (nodes.note, "note", "NOTE"),
    ],
)
def test_admonition_says_its_word(
    writer: Translator, node: type[nodes.Element], kind: str, word: str
) -> None:
    made = writer.render(node("", nodes.paragraph("", "Text.")))
    assert f'kind: "{kind}", word: "{word}"' in made
    assert "Text" in made


def test_long_caution_may_break_and_short_one_not(writer: Translator) -> None:
    short = nodes.warning("", nodes.paragraph("", "Short."))
    long = nodes.warning("", nodes.paragraph("", "Long. " * 400))
    assert "whole: true" in writer.render(short)
    assert "whole: false" in writer.render(long)


def test_own_title_keeps_its_kind(writer: Translator) -> None:
    node = nodes.admonition(
        "", nodes.title("", "Ladder"), nodes.paragraph("", "x"), classes=["danger"]
    )
    made = writer.render(node)
    assert 'kind: "stop"' in made
    assert "[Ladder]" in made


def test_link_to_a_page_of_the_book_tells_its_page(writer: Translator) -> None:
    link = nodes.reference("", "there", internal=True, refuri="%other#place")
    assert writer.render(link) == '#xref("other#place", page: true)[there];'
    writer.in_table = 1
    assert "page: false" in writer.render(link)


def test_links_to_terms_and_sources_do_not_tell_a_page(writer: Translator) -> None:
    term = nodes.reference("", "", nodes.inline("", "comb", classes=["std-term"]), refuri="%g#t")
    source = nodes.reference("", "(x)", refuri="%reference/sources#source-own")
    assert "page: false" in writer.render(term)
    assert "page: false" in writer.render(source)


def test_address_outside_is_printed(writer: Translator) -> None:
    uri = "https://example.org/a"
    named = nodes.reference("", "named", refuri=uri)
    bare = nodes.reference("", uri, refuri=uri)
    assert writer.render(named).startswith("#outside-note(")
    assert uri in writer.render(named)
    assert writer.render(bare) == f'#outside("{uri}", "{uri}");'


def test_raw_html_is_left_out_and_raw_typst_goes_through(writer: Translator) -> None:
    assert writer.render(nodes.raw("", "<b>x</b>", format="html")) == ""
    assert writer.render(nodes.raw("", "#v(1cm)", format="typst")) == "#v(1cm)"


def test_footnote_stands_where_it_is_called_and_repeats_its_number(writer: Translator) -> None:
    note = nodes.footnote("", nodes.label("", "1"), nodes.paragraph("", "said below"), ids=["note"])
    writer.shared.footnotes["page#note"] = note
    call = nodes.footnote_reference("", "1", refid="note")
    first, second = writer.render(call), writer.render(call)
    assert "said below" in first
    assert second == '#footnote(label("footnote:page#note"));'
    assert writer.render(note) == ""


def test_picture_without_words_is_reported(writer: Translator, warnings: list[Any]) -> None:
    writer.shared.images = {"a.png": "pictures/a.png"}
    assert "A nest" in writer.render(nodes.image(uri="a.png", alt="A nest"))
    assert warnings == []
    writer.render(nodes.image(uri="a.png"))
    assert [w.subtype for w in warnings] == ["alt"]


def test_drawing_speaks_for_itself(writer: Translator, warnings: list[Any]) -> None:
    svg = '<svg xmlns="http://www.w3.org/2000/svg"><title>Reach</title><desc>It falls.</desc></svg>'
    writer.shared.images = {"a.svg": writer.shared.figures.keep(svg, "x")}
    assert '"Reach It falls."' in writer.render(nodes.image(uri="a.svg"))
    assert warnings == []


def test_formula_is_drawn_once_and_speaks_latex(writer: Translator) -> None:
    made = writer.render(nodes.math("x_i", "x_i"))
    assert '"x_i"' in made
    assert made.startswith("#formula(")
    assert writer.render(nodes.math("x_i", "x_i")) == made
    assert len(list(writer.shared.figures.folder.iterdir())) == 1


def test_formula_that_cannot_be_drawn_is_reported(writer: Translator, warnings: list[Any]) -> None:
    assert writer.render(nodes.math("", r"\frac{")).startswith("#raw(")
    assert [w.subtype for w in warnings] == ["math"]


def test_inline_formula_stands_on_the_line(writer: Translator) -> None:
    figures = writer.shared.figures
    assert figures.formula("x", True).depth < 0.1
    assert figures.formula("q", True).depth > 0.15
    deep = figures.formula(r"\frac{1}{q}", True)
    assert figures.formula("q", True).depth < deep.depth < deep.height


def table(*rows: list[nodes.entry], head: int = 1) -> nodes.table:
    group = nodes.tgroup(cols=2)
    group += [nodes.colspec(colwidth=1), nodes.colspec(colwidth=1)]
    made = [nodes.row("", *row) for row in rows]
    group += [nodes.thead("", *made[:head]), nodes.tbody("", *made[head:])]
    return nodes.table("", group)


def cell(text: str, **more: int) -> nodes.entry:
    return nodes.entry("", nodes.paragraph("", text), **more)


def test_table_repeats_its_head_and_keeps_spans(writer: Translator) -> None:
    made = writer.render(table([cell("a"), cell("b")], [cell("both", morecols=1)]))
    assert "table.header(repeat: true, [a], [b], )" in made
    assert "table.cell(colspan: 2, )[both]" in made


def test_head_of_numbers_stands_over_them(writer: Translator) -> None:
    number = cell("1")
    number["classes"].append("numeric")
    made = writer.render(table([cell("a"), cell("b")], [cell("x"), number]))
    assert "[a], table.cell(align: right, )[b]" in made


def test_small_table_stays_whole_and_long_one_breaks(writer: Translator) -> None:
    rows = [[cell("a"), cell("b")] for _ in range(3)]
    assert "whole: true" in writer.render(table(*rows))
    many = [[cell("a"), cell("b")] for _ in range(30)]
    assert "whole: false, whole-rows: true" in writer.render(table(*many))


def test_table_with_title_is_numbered(writer: Translator) -> None:
    node = table([cell("a"), cell("b")], [cell("c"), cell("d")])
    node.insert(0, nodes.title("", "Limits"))
    assert "#table-figure(none, [Limits], " in writer.render(node)


def calculator_node(**given: Any) -> calculator:
    result = heat_in_suit.run(heat_in_suit.example() | given)
    return calculator(
        calculator="heat_in_suit",
        case="",
        description=heat_in_suit.describe(),
        result=result.as_dict(),
        ids=["calc-heat_in_suit"],
    )


def test_calculator_says_its_cautions_before_its_numbers(writer: Translator) -> None:
    made = writer.render(calculator_node())
    assert 0 < made.index("#notice(") < made.index("What goes in") < made.index("What comes out")
    assert made.rindex("#notice(") < made.index("What goes in")


def test_every_row_of_a_calculator_has_an_empty_cell(writer: Translator) -> None:
    node = calculator_node()
    made = writer.render(node)
    described = node["description"]
    told = [each for each in described["results"] if each["kind"] != "table"]
    # A row of a result without a unit has a second empty cell; the options of a choice fill it.
    units = [each for each in [*described["inputs"], *told] if not each.get("options")]
    long = {k for k, v in node["result"]["results"].items() if len(v.get("text", "")) > LONG}
    without = [each for each in units if not unit_words(each) and each["name"] not in long]
    rows = len(described["inputs"]) + len(told)
    assert made.count("[], ") == rows + len(without)


def test_withheld_number_is_not_printed(writer: Translator) -> None:
    node = calculator_node()
    hidden = next(each for each in node["description"]["results"] if each["main"])
    node["result"]["cautions"].insert(
        0,
        {"level": "stop", "text": "No.", "reason": "", "source": "", "hides": [hidden["name"]]},
    )
    told = node["result"]["results"][hidden["name"]]["text"]
    made = writer.render(node)
    assert 'word: "STOP"' in made
    assert "withheld, see STOP" in made
    assert f"[#strong[{told}];]" not in made


def test_answers_go_to_the_back_in_the_order_of_the_exercises(writer: Translator) -> None:
    asked = exercise("", nodes.paragraph("", "How many?"), ident="a", number=2, ids=["exercise-a"])
    told = answer("", nodes.paragraph("", "Nine."), ident="a", number=2, ids=["answer-a"])
    made = writer.render(asked)
    assert 'key: "exercise:a"' in made
    assert '#xref("answer:a", page: true)' in made
    assert writer.render(told) == ""
    given = [*writer.shared.answers, Answer("b", 1, "One.")]
    back = matter.answers(given, {"a": 2, "b": 1}, lambda name: f"[{name}]")
    assert back.index("One.") < back.index("Nine")
    assert matter.answers([], {}, str) == ""


def test_notebook_prints_results_and_hides_code(writer: Translator) -> None:
    code = nodes.container("", nodes.literal_block("", "1 + 1"), classes=["cell_input"])
    out = nodes.container("", nodes.literal_block("", "two"), classes=["cell_output"])
    cell_ = nodes.container("", code, out, classes=["cell"])
    made = writer.render(cell_)
    assert "1 + 1" not in made
    assert "two" in made
    cell_["classes"].append("tag_print-code")
    assert "1 + 1" in writer.render(cell_)


def test_things_to_tick_get_boxes(writer: Translator) -> None:
    item = nodes.list_item("", nodes.paragraph("", "Veil"), classes=["task-list-item"])
    assert "#checklist(" in writer.render(nodes.bullet_list("", item))


def test_parts_come_from_captions_and_screen_pages_stay_out() -> None:
    files = [
        addnodes.start_of_file("", nodes.section("", nodes.title("", name)), docname=name)
        for name in ("a", "b")
    ]
    tree = nodes.document(None, None)  # type: ignore[arg-type]
    tree += nodes.compound("", *files, training_part="First")
    found = parts(tree)
    assert [(part.title, [c.docname for c in part.chapters]) for part in found] == [
        ("First", ["a", "b"])
    ]
    kept = printed(found, {"b": {"print": "false"}})
    assert [c.docname for c in kept[0].chapters] == ["a"]


def test_part_without_a_page_for_paper_is_left_out() -> None:
    assert printed([Part("x", [Chapter("a", [])])], {"a": {"print": False}}) == []


def test_review_dates_are_told_as_they_are() -> None:
    days = matter.dates({"a": {"reviewed": "2026-11-25"}, "b": {"reviewed": "soon"}}, ["a", "b"])
    assert matter.reviewed(days) == "Pages reviewed 2026-11-25"
    two = matter.dates({"a": {"reviewed": "2026-11-25"}, "b": {"reviewed": "2026-01-02"}}, "ab")
    assert matter.reviewed(two) == "Pages reviewed between 2026-01-02 and 2026-11-25"
    assert matter.reviewed([]) == "Review: no date given"
    assert "not yet checked" in matter.standing({"status": "draft"})
