"""A quick card fits one screen, without a scroll, above the thumb bar; one takes two."""

from __future__ import annotations

from typing import Any

import pytest

from docs_build.bootstrap import ROOT

pytestmark = pytest.mark.browser
CARDS = sorted(
    path.stem
    for path in (ROOT / "handbook" / "quick").glob("*.md")
    if path.stem != "all_cards"  # the page for paper
)

SCREENS = {"stung": 2}
"""Cards that may take more than one screen: all that guidance asks of a bystander stands on one."""

LOWEST = """() => {
  const main = document.querySelector("main");
  const ends = [...main.children].filter((part) => !part.matches("footer"))
    .map((part) => part.getBoundingClientRect().bottom);
  const bars = [...document.querySelectorAll("body *")]
    .filter((part) => getComputedStyle(part).position === "fixed")
    .map((part) => part.getBoundingClientRect())
    .filter((box) => box.height > 0 && box.top > innerHeight / 2).map((box) => box.top);
  return [Math.max(...ends), Math.min(innerHeight, ...bars),
    document.documentElement.scrollWidth];
}"""


@pytest.mark.parametrize("card", CARDS)
def test_card_fits_its_screens(chromium: Any, host: Any, card: str) -> None:
    context = chromium.new_context(viewport={"width": 360, "height": 740}, service_workers="block")
    page = context.new_page()
    page.goto(f"{host.local}quick/{card}.html")
    page.wait_for_selector("main h1")
    lowest, bar, wide = page.evaluate(LOWEST)
    context.close()
    assert lowest <= bar * SCREENS.get(card, 1)
    assert wide <= 360
