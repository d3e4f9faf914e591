"""The text of the pages: reading grade, sourced numbers, no page left over or left open."""

from __future__ import annotations

import re
import statistics
import tomllib
from collections.abc import Iterator

import pytest
import textstat

from docs_build.bootstrap import ROOT
from tests.docs_build.pagetext import HANDBOOK, Block, PageText, blocks, pages, parser

HIGHEST_GRADE = 9
SHORTEST = 8  # words: a grade of less says nothing
LEDGER = ROOT / "tests" / "data" / "unsourced_numbers.toml"

SIGNS = tuple(
    re.split(
        " ",
        "% °C °F ° mm cm m m² m³ km in ft mph km/h m/s kPa Pa L/s L/min L mL kg mg g lb oz W Wh V "
        "kV dB dBA kN N min h s cfm ppm",
    )
)
WORDS = (
    r"minutes?|hours?|days?|weeks?|months?|years?|seconds?|percent|degrees?|feet|foot|inch(?:es)?|"
    r"(?:centi|milli|kilo)?met(?:er|re)s?|(?:milli)?lit(?:er|re)s?|(?:kilo|milli)?grams?|miles?|"
    r"pounds?|ounces?|gallons?|watts?|volts?|kilovolts?|decibels?"
)
UNIT = f"(?:{'|'.join(sorted(map(re.escape, SIGNS), key=len, reverse=True))}|{WORDS})"
DIGITS = r"(?<![\w.,/])\d[\d.,]*(?:[ \u00a0]?(?:to|and|or|–|-)[ \u00a0]?\d[\d.,]*)?"
SPELLED = (
    r"\b(?:two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|"
    r"forty|fifty|sixty|eighty|ninety|hundred|thousand)\b"
)
NUMBER = re.compile(rf"(?:{DIGITS}[ \u00a0-]?{UNIT}(?![\w²³/])|(?i:{SPELLED}[ -](?:{WORDS})\b))")
OPEN = re.compile(
    r"\b(?:TODO|TBD|TBC|FIXME|XXX|lorem ipsum|coming soon|to be (?:written|done|added)|"
    r"not yet written|under construction|stub)\b",
    re.IGNORECASE,
)


@pytest.fixture(scope="module")
def read() -> list[PageText]:
    found = list(pages())
    assert len(found) > 80
    return found


def sentence(text: str) -> str:
    """A line of a list that ends without a full stop still ends a sentence."""
    text = text.strip().rstrip(":;,")
    return text if text.endswith((".", "!", "?")) else f"{text}."


def grades(page: PageText) -> list[float]:
    """The Flesch-Kincaid grade of each paragraph and list item that is long enough."""
    return [
        textstat.flesch_kincaid_grade(sentence(block.text))
        for block in page.prose()
        if len(block.text.split()) >= SHORTEST
    ]


def test_reading_grade(read: list[PageText], capsys: pytest.CaptureFixture[str]) -> None:
    """Both the median of a page's paragraphs and the page as a whole stay within the grade."""
    found = []
    for page in read:
        if each := grades(page):
            whole = textstat.flesch_kincaid_grade(
                "\n".join(sentence(block.text) for block in page.prose())
            )
            found.append((statistics.median(each), whole, page.name))
    found.sort(reverse=True)
    with capsys.disabled():
        print("\nhardest pages (median grade of paragraphs, grade of the whole page):")
        for median, whole, name in found[:5]:
            print(f"  {median:4.1f} {whole:4.1f}  {name}")
    hard = [row for row in found if max(row[0], row[1]) > HIGHEST_GRADE]
    assert not hard


def test_the_grade_tells_hard_text_from_easy() -> None:
    hard = (
        "Notwithstanding considerable heterogeneity, practitioners should systematically "
        "operationalise contemporaneous recommendations concerning hymenopteran envenomation."
    )
    easy = "Shut the box. Walk to the car. Open the suit there and not before that."
    assert textstat.flesch_kincaid_grade(hard) > HIGHEST_GRADE
    assert textstat.flesch_kincaid_grade(easy) < 3


def unsourced(blocks_: list[Block]) -> Iterator[tuple[Block, str]]:
    """Numbers with a unit in running text whose paragraph or list item names no source."""
    for block in blocks_:
        if block.kind in {"paragraph", "item"} and not block.sources:
            for match in NUMBER.finditer(block.text):
                yield block, match[0].replace("\u00a0", " ")


def test_numbers_with_units_have_a_source(read: list[PageText]) -> None:
    """A ledger of the known exceptions: a new one fails, and one that has gone fails too."""
    listed = tomllib.loads(LEDGER.read_text(encoding="utf-8"))["number"]
    for entry in listed:
        assert entry["reason"].strip(), entry
    known = sorted((entry["page"], entry["number"]) for entry in listed)
    found = sorted((page.name, number) for page in read for _, number in unsourced(page.prose()))
    where = {
        (page.name, number): f"{page.name}, line {block.line}: {block.text!r}"
        for page in read
        for block, number in unsourced(page.prose())
    }
    new = [where[key] for key in found if found.count(key) > known.count(key)]
    gone = [key for key in known if known.count(key) > found.count(key)]
    assert not new, "give these numbers a source, or list them with a reason"
    assert not gone, "these exceptions are no longer in the book: take them off the list"


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Stand 3 m away.", ["3 m"]),
        ("Stand 3 m away {source}`own_reasoning`.", []),
        ("Stand {num}`water most amount` away.", []),
        ("Wait 15 to 20 minutes.", ["15 to 20 minutes"]),
        ("Wait ten minutes.", ["ten minutes"]),
        ("- Wait 5 min.\n- Go {source}`own_reasoning`.", ["5 min"]),
        ("| Wait |\n| --- |\n| 5 min |", []),
        ("`5 min`", []),
        (":::{exercise} a\nYou wait 5 min.\n:::", []),
        (":::{danger}\nAbove 35 °C they die.\n:::", ["35 °C"]),
        ("In 2026 you took 3 tiers, 4 or 5.", []),
        ("A 10-minute walk, 1.5 kPa, 95 %.", ["10-minute", "1.5 kPa", "95 %"]),
    ],
)
def test_the_reader_of_numbers(text: str, found: list[str]) -> None:
    assert [number for _, number in unsourced(blocks(parser(), text))] == found


def test_nothing_is_left_open(read: list[PageText]) -> None:
    for page in read:
        for block in page.blocks:
            match = OPEN.search(block.text)
            assert match is None, f"{page.name}, line {block.line}: {match and match[0]}"
        assert page.prose() or "```{include}" in source_of(page.name), f"{page.name} says nothing"


def source_of(name: str) -> str:
    path = HANDBOOK / f"{name}.md"
    return path.read_text(encoding="utf-8") if path.exists() else ""


def listed_in_toctrees() -> set[str]:
    """Every page that a table of contents names, with the front page."""
    found = {"index"}
    for path in HANDBOOK.rglob("*.md"):
        for token in parser().parse(path.read_text(encoding="utf-8")):
            if token.type in {"fence", "colon_fence"} and token.info.strip() == "{toctree}":
                for line in token.content.splitlines():
                    name = re.sub(r"^.*<(.*)>$", r"\1", line.strip())
                    if name and not name.startswith(":"):
                        target = (path.parent / name).resolve()
                        found.add(target.relative_to(HANDBOOK.resolve()).as_posix())
    return found


def test_no_page_stands_outside_the_contents(read: list[PageText]) -> None:
    names = {page.name for page in read}
    assert names == listed_in_toctrees()
    for name in names:
        assert not re.search(r"^orphan:", source_of(name), re.MULTILINE), name


def test_the_goals_name_every_chapter(read: list[PageText]) -> None:
    """A new chapter is not forgotten in the training part."""
    taught = {"safety", "biology", "method", "clients"}
    chapters = {
        page.name
        for page in read
        if page.name.split("/")[0] in taught and not page.name.endswith("/index")
    }
    named = set(re.findall(r"\{doc\}`\.\./([\w/]+)`", source_of("training/goals")))
    assert chapters <= named, "training/goals names no goal for these"
    assert named <= {page.name for page in read}
