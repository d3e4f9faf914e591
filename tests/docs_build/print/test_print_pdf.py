"""The PDF itself: a small book with one of everything, then the real one."""

from __future__ import annotations

import json
import re
import shutil
import subprocess
import xml.etree.ElementTree as ET
from collections import defaultdict
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from calc.catalogue import CALCULATORS
from docs_build.bootstrap import ROOT
from docs_build.print import names
from docs_build.sphinx_ext.calculators import case_inputs
from tests.docs_build.print.training_book import SAMPLE, Book, plain, sphinx

pytestmark = pytest.mark.pdf

POPPLER = pytest.mark.skipif(not shutil.which("pdftotext"), reason="needs poppler's pdftotext")
BACK = ("Answers", "Index")


def test_title_language_and_author(book: Book) -> None:
    root = book.reader.trailer["/Root"]
    assert root["/Lang"].startswith("en")
    assert "training edition" in book.reader.metadata.title
    assert re.search("train(ee|er) copy, whole book", book.reader.metadata.title)
    assert book.reader.metadata.author
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]


def test_tagged_and_declared_as_accessible(book: Book) -> None:
    root = book.reader.trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/StructTreeRoot"]
    assert b"<pdfuaid:part>1<" in root["/Metadata"].get_object().get_data()


def elements(node: Any) -> Iterator[Any]:
    """Every element of the structure tree."""
    node = node.get_object()
    if isinstance(node, list):
        for child in node:
            yield from elements(child)
    elif isinstance(node, dict):
        if "/S" in node:
            yield node
        if "/K" in node:
            yield from elements(node["/K"])


def test_figures_and_formulas_speak(book: Book) -> None:
    found = list(elements(book.reader.trailer["/Root"]["/StructTreeRoot"]["/K"]))
    kinds = {str(each["/S"]) for each in found}
    assert {"/H1", "/P", "/Table", "/TH", "/L", "/Link"} <= kinds
    silent = [each for each in found if each["/S"] == "/Formula" and not each.get("/Alt")]
    assert silent == []
    pictures = [each for each in found if each["/S"] == "/Figure" and "/Alt" in each]
    assert pictures


def test_fonts_are_embedded(book: Book) -> None:
    names = set()
    for page in book.reader.pages:
        for font in page["/Resources"].get("/Font", {}).values():
            for real in font.get_object().get("/DescendantFonts", [font]):
                descriptor = real.get_object()["/FontDescriptor"].get_object()
                assert {"/FontFile", "/FontFile2", "/FontFile3"} & set(descriptor)
                names.add(descriptor["/FontName"])
    assert any("Libertinus" in name for name in names)


def test_contents_tell_the_pages_of_the_bookmarks(book: Book) -> None:
    start = book.opens("Contents")
    first = next(page for _, words, page in book.outline if words.startswith("Part 1"))
    listed = " ".join(book.pages[start - 1 : first - 1])
    listed = plain(re.sub(r"(?:\. ?){3,}", " … ", listed))
    chapters = 0
    for depth, words, page in book.outline:
        if words.endswith("For the trainer") and depth == 0:
            break  # what only the trainer has is listed at its own opening
        if depth > 1 or page <= start:
            continue
        assert f"{words} … {page}" in listed or f"{words} {page}" in listed, (words, page)
        chapters += 1
    assert chapters >= 5


def test_every_chapter_is_bookmarked_where_it_stands(book: Book) -> None:
    for depth, words, page in book.outline:
        if depth == 1 and re.match(r"\d+ ", words):
            number, title = words.split(" ", 1)
            assert f"CHAPTER {number}" in book.pages[page - 1]
            assert title in book.pages[page - 1]


def links(reader: PdfReader) -> Iterator[tuple[int, dict[str, Any]]]:
    for number, page in enumerate(reader.pages, start=1):
        for annotation in page.get("/Annots", []):
            found = annotation.get_object()
            if found["/Subtype"] == "/Link":
                yield number, found


def test_every_link_inside_resolves(book: Book) -> None:
    named = book.reader.named_destinations
    pages = {page.indirect_reference.idnum for page in book.reader.pages}
    inside = 0
    for number, link in links(book.reader):
        target = link.get("/Dest") or link.get("/A", {}).get("/D")
        if target is None:
            assert link["/A"]["/URI"].startswith(("http", "mailto")), number
            continue
        if isinstance(target, str):
            assert target in named, (number, target)
            target = named[target].dest_array
        assert target[0].idnum in pages
        inside += 1
    assert inside > 20


def test_page_told_beside_a_link_is_the_page_it_leads_to(sample: Book) -> None:
    at = sample.pages[sample.opens("How many are #1 @y") - 1]
    assert f"Second section (page {sample.opens('Second section')})" in at
    assert f"Two (page {sample.opens('2 Two')})" in at
    assert "Comb. Signs" in at


def test_running_heads_tell_edition_and_chapter(book: Book) -> None:
    edition = book.reader.metadata.title.rsplit(" ", 1)[1]
    assert all(f"edition {edition}" in page for page in book.pages)


def test_nothing_strange_is_lost(sample: Book) -> None:
    at = sample.text
    for words in (
        "# * _ $ @ ~ \\ / 5 - 3 = 2 [x] <y>",
        "Put the veil on",
        "Under the second tab",
        "Inside the fold",
        "Body of the card",
        "PPE (protective equipment)",
        "The note text with",
        "Take no colony out alone.",
        "https://example.org/path?x=1&y=2",
        "Thunderstormlightningrods",
        "42 adults taken",
        "the table in plain text",
    ):
        assert words in at, words
    assert "for the screen only" not in at
    assert "Zebra crossing" not in at
    assert "secret_of_the_cell" not in at


def test_index_tells_pages(sample: Book) -> None:
    index = sample.pages[sample.opens("Index") - 1]
    assert f"Comb, {sample.opens('Glossary')}" in index
    assert f"nozzle, {sample.opens('2 Two')}" in index


@pytest.mark.parametrize("which", ["sample", "handbook"])
def test_each_exercise_has_its_answer_and_links_lead_both_ways(
    which: str, request: pytest.FixtureRequest
) -> None:
    book: Book = request.getfixturevalue(which)
    back = book.opens("Answers")
    index = next((page for _, words, page in book.outline if words == "Index"), None)
    end = index - 1 if index else len(book.pages)
    asked = set(re.findall(r"Exercise (\d+) Answer", " ".join(book.pages[: back - 1])))
    told = set(re.findall(r"Exercise (\d+) \(page", " ".join(book.pages[back - 1 : end])))
    assert asked == told
    assert asked
    ways = set(joined(book.reader))
    for number in asked:
        exercise = page_of(book, rf"Exercise {number} Answer")
        answer = page_of(book, rf"Exercise {number} \(page {exercise}\)")
        assert answer >= back
        assert f"Exercise {number} Answer (page {answer})" in book.pages[exercise - 1]
        assert {(exercise, answer), (answer, exercise)} <= ways


def page_of(book: Book, pattern: str) -> int:
    """Page (from 1) whose text matches."""
    return next(n for n, page in enumerate(book.pages, start=1) if re.search(pattern, page))


def joined(reader: PdfReader) -> Iterator[tuple[int, int]]:
    """Page of each link inside and the page it leads to."""
    order = {page.indirect_reference.idnum: n for n, page in enumerate(reader.pages, start=1)}
    for number, link in links(reader):
        target = link.get("/Dest")
        if isinstance(target, str):
            target = reader.named_destinations[target].dest_array
        if target is not None:
            yield number, order[target[0].idnum]


def placed(folder: Path) -> Iterator[tuple[str, str]]:
    """Calculators that the pages of a book place, each with its case."""
    for page in sorted([*folder.rglob("*.md"), *folder.rglob("*.ipynb")]):
        text = page.read_text(encoding="utf-8")
        if page.suffix == ".ipynb":
            text = "\n".join("".join(cell["source"]) for cell in json.loads(text)["cells"])
        if re.search(r"^print: false$", text, re.MULTILINE):
            continue
        for name, options in re.findall(r"\{calculator\} (\w+)((?:\n:.*:.*)*)", text):
            case = re.search(r":case: *(\S+)", options)
            yield name, case[1] if case else ""


@pytest.mark.parametrize("which", ["sample", "handbook"])
def test_numbers_of_the_calculators_are_those_of_calc(
    which: str, request: pytest.FixtureRequest
) -> None:
    found: Book = request.getfixturevalue(which)
    folder = SAMPLE if which == "sample" else ROOT / "handbook"
    pairs = list(placed(folder))
    assert pairs
    squeezed = re.sub(r"\s", "", found.text)
    for name, case in pairs:
        calculator = CALCULATORS[name]
        result = calculator.run(case_inputs(case, name) if case else calculator.example())
        for label, told in numbers(result.as_dict()["results"]):
            assert re.sub(r"\s", "", told) in squeezed, (name, case, label, told)


def numbers(results: dict[str, Any]) -> Iterator[tuple[str, str]]:
    """Label and words of every result that is told, cells of tables included."""
    for told in results.values():
        for row in told.get("rows", ()):
            for cell in row:
                yield told["label"], cell["text"]
        # A calendar is a file to save on the page; on paper a sentence says so.
        calendar = str(told["value"]).startswith("BEGIN:VCALENDAR")
        if told["kind"] != "table" and told["value"] is not None and not calendar:
            yield told["label"], told["text"]
            yield told["label"], told["customary_text"]


@POPPLER
def test_no_word_leaves_the_text_block_or_covers_another(book: Book) -> None:
    page_words = boxes(book.path)
    width = float(book.reader.pages[0].mediabox.width)
    for number, words in page_words.items():
        # Two-sided: 27 mm inside, 20 mm outside; odd pages have their inside left.
        left, right = (76.5, 56.7) if number % 2 else (56.7, 76.5)
        # Punctuation may hang into the margin.
        for word, (x0, _, x1, _) in words:
            assert x0 >= left - 5, (number, word)
            assert x1 <= width - right + 5, (number, word)
        assert overlaps(words) == [], number


def boxes(path: Path) -> dict[int, list[tuple[str, tuple[float, ...]]]]:
    """Words of each page (from 1) with their boxes in points."""
    done = subprocess.run(
        ["pdftotext", "-bbox", str(path), "-"], capture_output=True, text=True, check=True
    )
    pages: dict[int, list[tuple[str, tuple[float, ...]]]] = defaultdict(list)
    for number, page in enumerate(ET.fromstring(done.stdout).iter(f"{XHTML}page"), start=1):
        for word in page.iter(f"{XHTML}word"):
            box = tuple(float(word.get(key, "")) for key in ("xMin", "yMin", "xMax", "yMax"))
            pages[number].append((word.text or "", box))
    return pages


XHTML = "{http://www.w3.org/1999/xhtml}"


def overlaps(words: list[tuple[str, tuple[float, ...]]]) -> list[tuple[str, str]]:
    """Pairs of words on one line of which one covers the other by more than a hair."""
    found = []
    ordered = sorted(words, key=lambda each: each[1][1])
    for place, (word, (x0, y0, x1, y1)) in enumerate(ordered):
        for other, (u0, v0, u1, v1) in ordered[place + 1 :]:
            if v0 > y1:
                break
            deep = min(y1, v1) - max(y0, v0)
            wide = min(x1, u1) - max(x0, u0)
            if wide > 1.5 and deep > 0.6 * min(y1 - y0, v1 - v0):
                found.append((word, other))
    return found


@POPPLER
def test_the_check_of_covering_words_finds_one() -> None:
    apart = [("a", (0.0, 0.0, 10.0, 10.0)), ("b", (11.0, 0.0, 20.0, 10.0))]
    assert overlaps(apart) == []
    assert overlaps([*apart, ("c", (5.0, 1.0, 15.0, 11.0))]) == [("a", "c"), ("b", "c")]


def test_letter_paper(tmp_path: Path) -> None:
    done = sphinx(SAMPLE, tmp_path, "-D", "training_paper=us-letter")
    assert done.returncode == 0, done.stderr
    name = names.file_name("2026.1", paper="us-letter")
    box = PdfReader(tmp_path / name).pages[0].mediabox
    assert (float(box.width), float(box.height)) == (612, 792)  # 8.5 in by 11 in


def test_equal_sources_give_equal_files(sample: Book, tmp_path: Path) -> None:
    assert sphinx(SAMPLE, tmp_path, "-D", "training_copy=trainer").returncode == 0
    assert (tmp_path / sample.path.name).read_bytes() == sample.path.read_bytes()


def test_a_fault_stops_the_build_with_a_sentence(tmp_path: Path) -> None:
    source = tmp_path / "source"
    source.mkdir()
    (source / "conf.py").write_text(
        "from docutils import nodes\n"
        "extensions = ['docs_build.print']\n"
        "class odd(nodes.General, nodes.Element): pass\n"
        "def put(app, tree, name):\n"
        "    tree.children[0].append(odd())\n"
        "def setup(app):\n"
        "    app.add_node(odd)\n"
        "    app.connect('doctree-resolved', put)\n"
    )
    (source / "index.rst").write_text("Top\n===\n\n.. toctree::\n\n   page\n")
    (source / "page.rst").write_text("Page\n====\n\n.. image:: missing.png\n")
    done = sphinx(source, tmp_path / "out")
    assert done.returncode != 0
    told = plain(done.stderr)
    assert "picture missing.png cannot be printed" in told
    assert "Traceback" not in told


def test_the_real_book_has_what_a_class_needs(handbook: Book) -> None:
    assert len(handbook.pages) >= 25
    titles = [words for _, words, _ in handbook.outline]
    assert all(title in titles for title in BACK)
    for calculator in CALCULATORS.values():
        assert f"CALCULATOR {calculator.title}" in handbook.text, calculator.title
