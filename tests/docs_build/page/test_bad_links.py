"""Malformed and hostile links: a clear sentence or nothing, no script runs, nothing is lost."""

from __future__ import annotations

import json
import random
from collections.abc import Iterator
from typing import Any
from urllib.parse import quote

import pytest

from .conftest import Host, answered, engine_start, live, until
from .test_jobs import ATTACK, CATCHES, bring, opened

pytestmark = pytest.mark.browser

SCRIPTS = (
    ATTACK,
    "<script>document.title='taken'</script>",
    "<svg onload=document.title='taken'>",
    "javascript:document.title='taken'",
    '"><iframe srcdoc="<script>parent.document.title=\'taken\'</script>">',
    "'-(document.title='taken')-'",
    "${document.title='taken'}",
    "{{constructor.constructor('document.title=1')()}}",
    "__import__('os').system('x')",
)
VALUES = (
    *SCRIPTS, "", " ", "-", "1e999", "-1e999", "NaN", "Infinity", "1/0", "0x10", "1_000",
    "1,2,3.4.5", "-5", "1.5", "many", "9" * 400, "1 " * 500, ", " * 2000, "x" * 5000, "\u0000",
    "\u202e99", "\ud83d\ude00" * 50, "\u0661\u0662", "%", "1;DROP TABLE jobs", "../../etc", "null",
    "[object Object]",
)  # fmt: skip
NAMES = (
    "catches", "most_left", "units", "calc", "__proto__", "constructor", "prototype", "toString",
    "hasOwnProperty", "catches[]", "catches.0", "CATCHES", "", " ", "a" * 300, ATTACK, "result",
)  # fmt: skip
RAW = (
    "", "#", "##", "%", "%%%", "%E0%A4%A", "%ff%fe", "&", "&&&=&=", "=", "calc", "calc=",
    "calc=how_many_left", "calc=how_many_left&", "calc=how_many_left&&&", "calc=how_many_left&=",
    "calc=how_many_left&catches", "calc=how_many_left&catches=%", "calc=how_many_left&catches=%00",
    "calc=how_many_left;catches=1", "calc=how_many_left#calc=how_many_left",
    "calc=nobody&catches=1", "calc=__proto__&catches=1", "calc=how_many_left%00&catches=1",
    "calc=HOW_MANY_LEFT&catches=1", "CALC=how_many_left&catches=1", "calc=heat_in_suit&catches=1",
    "calc=how_many_left&calc=heat_in_suit&catches=1", "calc=heat_in_suit&calc=how_many_left",
    "calc=how_many_left&units=us", "calc=how_many_left&units=si", "calc=how_many_left&units=both",
    "calc=how_many_left&" + "&".join(f"n{place}=1" for place in range(2000)),
    "calc=how_many_left&" + "catches=1&" * 2000, "a" * 20_000, "javascript:document.title=1",
)  # fmt: skip


def fragments() -> Iterator[str]:
    """Return bad fragments, always the same."""
    yield from RAW
    for value in VALUES:
        for name in ("catches", "most_left"):
            yield f"calc=how_many_left&{name}={quote(value, safe='', errors='surrogatepass')}"
        yield f"calc={quote(value, safe='', errors='surrogatepass')}&catches=60"
    for name in NAMES:
        for value in ("60", SCRIPTS[0]):
            yield f"calc=how_many_left&{quote(name, safe='')}={quote(value, safe='')}"
    dice = random.Random(20261125)
    signs = "calc=how_many_left&catches=60%2035<>\"'`\\#?%;{}[]()\u00e9\u4e2d \t"
    for _ in range(60):
        text = list("calc=how_many_left&catches=60%2C35%2C20&most_left=4")
        for _ in range(dice.randint(1, 12)):
            text[dice.randrange(len(text))] = dice.choice(signs)
        yield "".join(text)


FOLLOW = """async ([fragments, undo]) => {
  const frame = () => new Promise((go) => setTimeout(go, 0));
  const section = document.querySelector('[data-calculator=how_many_left]');
  const out = section.querySelector('.calc-out');
  const told = [];
  for (const fragment of fragments) {
    history.replaceState(null, '', location.pathname);
    const heard = new Promise((go) => addEventListener('hashchange', go, { once: true }));
    const answer = new Promise((go) =>
      section.addEventListener('calculator:answer', ({ detail }) => go(detail.ok), { once: true }));
    section.querySelector('.calc-said').textContent = '';
    location.hash = fragment;
    // An empty fragment is no change of the address, so nobody hears of one.
    await Promise.race([heard, new Promise((go) => setTimeout(go, 60))]);
    await frame();
    // A link that was taken has been replaced by the calculator's own place in the page.
    const taken = location.hash === `#${section.id}`;
    let ok = null;
    if (taken) {
      ok = await Promise.race([answer, new Promise((go) => setTimeout(() => go('late'), 20_000))]);
      await frame();
      // With another unit system there are two answers, one for the turned form.
      if (/units/i.test(fragment)) await new Promise((go) => setTimeout(go, 200));
    }
    const errors = [...section.querySelectorAll('.calc-error')]
      .filter((one) => !one.hidden).map((one) => one.textContent);
    told.push({
      fragment: fragment.slice(0, 120), taken, ok, errors,
      said: section.querySelector('.calc-said').textContent, state: out.dataset.state,
      foreign: document.querySelectorAll('iframe, [onerror], [onload]').length,
      title: document.title,
    });
    if (taken && undo) {
      const back = new Promise((go) =>
        section.addEventListener('calculator:answer', go, { once: true }));
      section.querySelector('[data-do=undo]').click();
      await back;
      if (/units/i.test(fragment)) await new Promise((go) => setTimeout(go, 200));
    }
  }
  return told;
}"""


def judged(told: list[dict[str, Any]], title: str) -> None:
    """Each link gave an answer or a clear sentence, or was passed over; none ran anything."""
    for each in told:
        assert each["title"] == title, each
        assert each["foreign"] == 0, each
        assert each["ok"] in {None, True, False}, each
        words = [*each["errors"], each["said"]]
        assert not any("Traceback" in one or "Error" in one for one in words), each
        if each["ok"] is False:
            sentences = [one for one in words if one]
            assert sentences, each
            assert all(one.endswith((".", "!")) and len(one) < 1000 for one in sentences), each
        elif each["ok"] is None:
            assert each["errors"] == [], each


def catches(page: Any) -> list[str]:
    return [one.input_value() for one in page.locator("[name=catches]").all()]


def test_two_hundred_bad_links_harm_nothing(phone: Any, host: Host) -> None:
    from tests.calc.clients import job_files

    every = list(fragments())
    assert len(set(every)) >= 200
    opened(phone, host)
    phone.evaluate(
        "import('/_static/jobs.mjs').then(async (jobs) => {"
        " for (const one of await jobs.all()) await jobs.erase(one.id); })"
    )
    bring(phone, ("job.json", json.dumps(job_files.FULL).encode()))
    phone.goto(host.page("how_many_left"))
    live(phone)
    engine_start(phone)
    phone.fill(CATCHES, "61, 36, 21")
    answered(phone)
    before = settled(phone)
    title = phone.title()
    told = phone.evaluate(FOLLOW, [every, True])
    assert len(told) == len(every)
    judged(told, title)
    refused = [each for each in told if each["ok"] is False]
    assert len(refused) > 40
    assert sum(each["ok"] is None for each in told) > 40
    after = settled(phone)
    assert after["jobs"] == before["jobs"]
    assert after["drafts"] == before["drafts"]
    phone.reload()
    live(phone)
    assert [one for one in catches(phone) if one] == ["61", "36", "21"]
    assert phone.title() == title


def settled(page: Any) -> dict[str, Any]:
    """Return the stored jobs, and apart from them what was typed, when all has been written."""
    until(page, "!Object.keys(localStorage).some((key) => key.includes('typing|'))")
    records = page.evaluate("import('/_static/jobs.mjs').then((jobs) => jobs.all())")
    drafts = [
        {
            name: [pair["value"] for pair in pairs] if isinstance(pairs, list) else pairs
            for name, pairs in record["drafts"]["how_many_left"]["fields"].items()
        }
        for record in records
    ]
    return {"jobs": [record["job"] for record in records], "drafts": drafts}
