"""The trainee's and the trainer's copy, and a part alone: different only as meant."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest

from calc import EDITION, tables
from docs_build import build
from docs_build.bootstrap import ROOT
from docs_build.print import names

pytestmark = [
    pytest.mark.pdf,
    pytest.mark.skipif(not shutil.which("pdftotext"), reason="needs poppler's pdftotext"),
]
PART = "clients"


def pages(pdf: Path) -> list[str]:
    """Text of each page, in the order in which it is written, with single spaces."""
    command = ["pdftotext", "-raw", str(pdf), "-"]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    return [" ".join(page.split()) for page in done.stdout.split("\f")[:-1]]


@pytest.fixture(scope="module")
def trainee(site: Path) -> list[str]:
    return pages(site / build.PDF_NAME)


@pytest.fixture(scope="module")
def trainer(trainer_pdf: Path) -> list[str]:
    return pages(trainer_pdf)


def opens(found: list[str], words: str) -> int:
    """Place of the one page that holds the words of an opening."""
    (place,) = (n for n, page in enumerate(found) if words in page)
    return place


def shared(page: str) -> str:
    """What both copies must say: without the name of the copy and the ways to the answers."""
    page = re.sub(r"\btraine[er] copy\b", "", page)
    page = re.sub(r" The trainer’s copy has the same pages as the trainee’s\.", "", page)
    page = re.sub(r"(Exercise \d+) Answer \(page \d+\)", r"\1", page)
    # A page of the trainer's is a number in one copy and words in the other.
    page = re.sub(r" \((?:“[^”]+”, )?in the trainer’s copy\)", "", page)
    page = re.sub(r" \(page \d+\)", "", page)
    page = re.sub(r"\bIndex [. ]*\d+", "Index", page)
    return re.sub(r"\s", "", page)


BACK = "Up to here both copies have the same words on the same pages."


def test_both_copies_have_the_same_words_on_the_same_pages(
    trainee: list[str], trainer: list[str]
) -> None:
    back = opens(trainer, BACK)
    assert back > 300
    for number, (one, other) in enumerate(zip(trainee, trainer[:back], strict=False), start=1):
        assert shared(one) == shared(other), f"page {number}"
    # What the trainee has beyond those pages is the index alone.
    assert re.search(r"\bIndex\b", trainee[back])
    index = next(n for n, page in enumerate(trainer) if n > back and " Index A " in page)
    assert index > back


def answers() -> list[str]:
    """A sentence of plain words out of each answer of the pages."""
    found = []
    for path in sorted((ROOT / "handbook").rglob("*.md")):
        text = path.read_text(encoding="utf-8")
        for body in re.findall(r":::\{answer\} \S+\n(.*?)\n:::", text, re.DOTALL):
            plain = [line for line in body.splitlines() if re.fullmatch(r"[\w ,.:-]{30,}", line)]
            found += plain[:1]
    return found


def squeezed(found: list[str]) -> str:
    return re.sub(r"[\s-]", "", " ".join(found)).replace("’", "'")


def test_answers_marks_and_keys_are_the_trainers_alone(
    trainee: list[str], trainer: list[str]
) -> None:
    theirs, ours = squeezed(trainee), squeezed(trainer)
    told = [re.sub(r"[\s-]", "", sentence) for sentence in answers()]
    assert len(told) > 60
    assert [sentence for sentence in told if sentence not in ours] == []
    assert [sentence for sentence in told if sentence in theirs] == []
    rows = [re.sub(r"[\s-]", "", str(row["two"])) for row in tables.rows("training_rubric")]
    assert [row for row in rows if row not in ours] == []
    assert [row for row in rows if len(row) > 20 and row in theirs] == []
    assert "Keytosheet1" in ours
    assert "Keytosheet" not in theirs
    assert "Notesforthetrainer" in ours
    assert "Notesforthetrainer" not in theirs
    for number in re.findall(r"Exercise (\d+) Answer", " ".join(trainer)):
        assert f"Exercise {number} " in " ".join(trainee)
    assert "Answer (page" not in " ".join(trainee)


def test_the_comparison_finds_an_answer_that_slipped_in() -> None:
    asked = "trainee copy Exercise 7 How many are left?"
    assert shared(asked) == shared("trainer copy Exercise 7 Answer (page 412) How many are left?")
    assert shared(asked) != shared("trainer copy Exercise 7 How many are left? Nine.")


def test_title_head_and_file_name_say_which_copy_it_is(
    trainee: list[str], trainer: list[str]
) -> None:
    for copy, found in (("trainee", trainee), ("trainer", trainer)):
        name = names.file_name(EDITION, copy)
        assert {copy, EDITION, "all", "a4"} <= set(Path(name).stem.split("-"))
        assert f"{copy} copy" in found[0]
        assert "Whole book, A4" in found[0]
        head = f"edition {EDITION} · {copy} copy · whole book · A4"
        assert all(head in page for page in found[1:])


@pytest.fixture(scope="module")
def part(site: Path, tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """One part alone, from the doctrees of the site."""
    folder = tmp_path_factory.mktemp("part")
    build.PDF, kept = folder, build.PDF
    try:
        made = build.pdf("trainee", PART, "us-letter", doctrees=build.DOCTREES)
    finally:
        build.PDF = kept
    assert made.name == f"field-handbook-{EDITION}-trainee-{PART}-us-letter.pdf"
    return pages(made)


def test_a_part_stands_alone(part: list[str], trainee: list[str]) -> None:
    text = " ".join(part)
    caption = names.parts()[PART]
    assert f"{caption}, US Letter" in part[0]
    assert f"trainee copy · {caption} · US Letter" in part[5]
    assert len(part) < len(trainee) / 3
    # Chapters and exercises keep their numbers, and what stands elsewhere is told in words.
    chapters = set(re.findall(r"CHAPTER (\d+)", text))
    assert chapters
    assert min(map(int, chapters)) > 20
    asked = set(re.findall(r"Exercise (\d+)", text))
    assert asked
    assert min(map(int, asked)) > 20
    assert "(in the part “Reference”)" in text
    assert "Sources of this part" in text
    assert "Answer (page" not in text
    assert "Index A" in text


def test_the_parts_are_those_of_the_contents() -> None:
    assert {"start", "quick", "safety", "biology", "method", "clients", "worked_examples",
            "training", "reference"} <= set(names.parts())  # fmt: skip
    assert names.parts()["biology"] == "The animals"
