"""The briefing card prints on one sheet, with few words and with many."""

from __future__ import annotations

import re
from typing import Any

import pytest

from calc.safety.briefing import briefing
from docs_build.page.answer import answer_html

from .conftest import Host

pytestmark = pytest.mark.browser

WORST: dict[str, dict[str, Any]] = {
    "many conditions": {
        "person": "new_suit",
        "air_temperature": 22,
        "planned_minutes": 60,
        "saw": "used",
        "saw_minutes": 1,
        "ladder": "up",
        "line_distance": 40,
        "reaction": "large_local",
        "home_reaction": "systemic",
        "home_place": "away",
        "adrenaline": "one",
        "signal": "landline",
        "disturbance": "vibration",
    },
    "many stops": {
        "air_temperature": 42,
        "humidity": 90,
        "sun": "full_sun",
        "group": "giant",
        "around": "open",
        "reaction": "systemic",
        "health": "risk",
        "home_reaction": "systemic",
        "home_place": "near",
        "helpers": 0,
        "adrenaline": "none",
        "signal": "none",
        "area": "rural",
        "ladder": "up",
        "line_distance": 2,
        "saw": "used",
        "saw_minutes": 300,
    },
}


def pages(pdf: bytes) -> int:
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", pdf))


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("case", ["as the page shows it", *WORST])
def test_card_is_one_sheet(chromium: Any, host: Host, paper: str, case: str) -> None:
    page = chromium.new_page()
    page.goto(host.local + "safety/before_you_start.html")
    if case in WORST:
        made = answer_html(briefing.run(briefing.example() | WORST[case]).as_dict())
        page.eval_on_selector(".calc-answer", "(place, html) => { place.innerHTML = html; }", made)
    edge = dict.fromkeys(("top", "bottom", "left", "right"), "12mm")
    assert pages(page.pdf(format=paper, margin=edge)) == 1
    page.emulate_media(media="print")
    assert page.locator("main h1").is_visible()
    assert page.locator(".answer-table").last.is_visible()
    assert not page.locator(".foot").is_visible()
    page.close()


def test_a_page_without_a_card_prints_whole(chromium: Any, host: Host) -> None:
    page = chromium.new_page()
    page.goto(host.local + "safety/working_alone.html")
    page.emulate_media(media="print")
    assert page.locator("main li").last.is_visible()
    assert pages(page.pdf(format="A4")) >= 1
    page.close()
