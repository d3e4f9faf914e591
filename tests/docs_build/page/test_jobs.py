"""The job record on the phone: typed once, kept when the tab is killed, in and out as a file."""

from __future__ import annotations

import gzip
import json
import re
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from calc.catalogue import find
from calc.clients import job
from calc.clients.job import health as job_health
from calc.clients.job.fields import SECTIONS
from docs_build import server
from docs_build.page import jobs, jobs_html, pack
from tests.calc.clients import job_files

from .conftest import PHONE, Host, Watch, answered, enter, kept, live, serving, typed

browser = pytest.mark.browser
SHEET = "clients/the_job.html"
NOW = "2026-09-15T18:30Z"
RECORDS = "import('/_static/jobs.mjs').then((jobs) => jobs.all())"
ATTACK = "<img src=x onerror=\"document.title='taken'\">"
CATCHES = "[name=catches] >> nth=0"


# The side of Python, without a browser.


def ask(**question: Any) -> dict[str, Any]:
    return jobs.call({"now": NOW, "id": "job-1", "job": None} | question)


def test_every_field_that_a_person_types_stands_in_the_sheet() -> None:
    html = jobs_html.sheet_html()
    paths = set(re.findall(r'data-path="([^"]+)"', html))
    typed = {
        ".".join(filter(None, (home.name, "0" if home.most else "", each.name)))
        for home in SECTIONS
        if home.name not in jobs_html.APART
        for each in home.fields
        if each.kind not in jobs_html.UNSEEN
        and not (not home.name and each.name in jobs_html.DEVICE)
    }
    assert paths == typed
    assert len(paths) > 60
    marked = re.findall(r'data-path="([^"]+)" data-kind="\w+" data-health', html)
    assert set(marked) == {
        f"{home.name}.{'0.' if home.most else ''}{each.name}"
        for home in SECTIONS
        for each in home.fields
        if each.health and home.name != "progress"
    }
    pressed = set(re.findall(r'data-health-pressed="([^"]*)"', html)[0].split())
    assert pressed == {f"progress.{each.name}" for each in jobs_html.PRESSED if each.health}
    assert pressed


def test_typed_texts_are_set_or_told() -> None:
    changes = {
        "place.height": {"text": "12", "us": True},
        "visit.follow_up": {"text": "2026-09-18\n\n2026-10-06\n", "us": False},
        "client.address": {"text": "1 Long Lane\nNowhere", "us": False},
        "price.currency": {"text": "euro", "us": False},
        "animal.species": {"text": "crabro", "us": False},
    }
    told = ask(do="set", changes=changes)
    assert told["job"]["place"]["height"] == pytest.approx(12 * 0.3048)
    assert told["texts"]["place.height"] == {"si": "3.6576", "us": "12"}
    assert told["job"]["visit"]["follow_up"] == ["2026-09-18", "2026-10-06"]
    assert told["texts"]["client.address"] == "1 Long Lane\nNowhere"
    assert list(told["errors"]) == ["price.currency"]
    assert "price" not in told["job"] or "currency" not in told["job"]["price"]
    assert told["prefills"]["comb_count"]["species"]


def test_what_a_form_is_filled_with_is_what_the_job_holds() -> None:
    held = json.loads((pack.ROOT / "demo_cases/mill_willow/job.json").read_text("utf-8"))
    told = ask(do="show", job=held)
    for name, given in told["prefills"].items():
        for value in given.values():
            assert value if isinstance(value, str) else all(pair["si"] for pair in value), name
    catches = [pair["si"] for pair in told["prefills"]["how_many_left"]["catches"]]
    assert catches == [str(each) for each in held["shared"]["catches"]]


def test_a_taken_number_gets_an_ending() -> None:
    signs = json.dumps(job_files.FULL).encode().decode("latin-1")
    told = ask(do="read", signs=signs, taken=["job-2026-01", "job-2026-01-2"])
    assert told["job"]["id"] == "job-2026-01-3"
    assert told["renamed"]
    assert told["job"] | {"id": "", "edition": ""} == job_files.FULL | {"id": "", "edition": ""}


def test_all_scripts_together_stay_small() -> None:
    scripts = [*(pack.HERE / "static").glob("*.mjs"), pack.HERE / "sw.js"]
    assert sum(len(gzip.compress(path.read_bytes(), 9)) for path in scripts) < 60_000


# In the browser.


@pytest.fixture
def sheet(phone: Any, host: Host) -> Any:
    """Return the job sheet on a device without jobs."""
    phone.evaluate(
        "import('/_static/jobs.mjs').then(async (jobs) => {"
        " for (const one of await jobs.all()) await jobs.erase(one.id); })"
    )
    return opened(phone, host)


def opened(page: Any, host: Host) -> Any:
    page.goto(host.local + SHEET)
    page.wait_for_selector("html[data-jobs=live]", state="attached", timeout=20_000)
    return page


def begun(page: Any) -> None:
    """Begin a job and wait until it can be typed into."""
    page.click("[data-job=begin]")
    expect(page.locator(".job-said")).to_have_text("A new job is open.")
    expect(page.locator("[name=title]")).to_be_focused()


def unfold(page: Any) -> None:
    page.evaluate("document.querySelectorAll('.job-part').forEach((one) => { one.open = true; })")


def held(page: Any) -> dict[str, Any]:
    """Wait until all that was typed has been checked, and return the open record."""
    return dict(
        page.evaluate(
            """async () => {
              const jobs = await import('/_static/jobs.mjs');
              const end = performance.now() + 60_000;
              for (;;) {
                const record = await jobs.openJob();
                const raw = Object.values(record?.raw ?? {});
                if (record?.job && raw.every((one) => one.sentence)) return record;
                if (performance.now() > end) throw new Error('never checked');
                await new Promise((go) => setTimeout(go, 30));
              }
            }"""
        )
    )


def bring(page: Any, *files: tuple[str, bytes]) -> str:
    """Open files; return what the page says of them."""
    page.set_input_files(
        ".job-file",
        [{"name": name, "mimeType": "application/json", "buffer": body} for name, body in files],
    )
    said = page.locator(".job-said")
    expect(said).not_to_have_text(re.compile("^(Reading …)?$"), timeout=60_000)
    return str(said.inner_text())


def saved(page: Any, button: str) -> bytes:
    unfold(page)
    with page.expect_download() as coming:
        page.click(f"[data-job={button}]")
    return Path(coming.value.path()).read_bytes()


def kill(page: Any) -> None:
    """Close the page without a word to it, as a phone does that runs short."""
    page.close(run_before_unload=False)


@browser
def test_a_job_goes_through_a_dead_network_and_two_killed_tabs(device: Any, site: Path) -> None:
    with serving(site) as host:
        context = device()
        page = context.new_page()
        page.goto(host.local + SHEET)
        kept(page)
    # The server is gone, and so is the browser.
    context = device()
    watch = Watch(host.local)
    watch.over(context)
    page = opened(context.new_page(), host)
    begun(page)
    page.keyboard.type("Wasps by the pond")
    kill(page)  # before anything was checked
    page = opened(context.new_page(), host)
    assert page.input_value("[name=title]") == "Wasps by the pond"
    unfold(page)
    page.fill("[name='client.name']", "A. Example")
    page.select_option("[name='animal.species']", "crabro")
    page.check("[name='health.allergy_on_site'][value=no]")
    page.fill("[name='visit.date']", "2026-09-15")
    page.fill("[name='shared.air_temperature']", "17.5")
    page.click("[name=notes]")
    page.keyboard.type("Gate sticks, ring twice")
    kill(page)
    page = opened(context.new_page(), host)
    assert page.input_value("[name=notes]") == "Gate sticks, ring twice"
    assert page.input_value("[name='shared.air_temperature']") == "17.5"
    made = held(page)["job"]
    assert made["title"] == "Wasps by the pond"
    assert made["client"]["name"] == "A. Example"
    assert made["health"]["allergy_on_site"] == "no"
    page.goto(host.page("heat_in_suit"))
    live(page)
    assert float(page.input_value("[name=air_temperature]")) == 17.5
    assert "Wasps by the pond" in page.inner_text(".calc-job")
    answered(page)
    page.fill("[name=humidity]", "61")
    kill(page)
    page = context.new_page()
    page.goto(host.page("heat_in_suit"))
    live(page)
    assert page.input_value("[name=humidity]") == "61"
    context.close()
    assert watch.foreign == []


@browser
def test_shared_values_go_into_the_forms_and_results_come_back(sheet: Any, host: Host) -> None:
    begun(sheet)
    sheet.fill("[name=title]", ATTACK)
    sheet.goto(host.page("how_many_left"))
    live(sheet)
    assert ATTACK in sheet.inner_text(".calc-job")
    sheet.fill(CATCHES, "60, 35, 20, 11")
    answered(sheet)
    sheet.click("[data-do=store]")
    expect(sheet.locator(".calc-said")).to_contain_text("Kept in the job", timeout=20_000)
    entry = held(sheet)["job"]["calculations"][0]
    assert entry["calculator"] == "how_many_left"
    assert entry["inputs"]["catches"] == [60, 35, 20, 11]
    assert entry["results"]["total_caught"] == 126
    assert re.match(r"\d{4}-\d\d-\d\dT", entry["time"])
    assert entry["edition"] == sheet.get_attribute(".calculator", "data-edition")
    sheet.goto(host.local + "method/comb_count.html")
    live(sheet)
    assert sheet.input_value("[name=adults_caught]") == "126"
    # What was typed for this job is not overwritten; the job's value is one press away.
    sheet.fill("[name=adults_caught]", "130")
    sheet.reload()
    live(sheet)
    assert sheet.input_value("[name=adults_caught]") == "130"
    sheet.click("[data-do=fill]")
    assert sheet.input_value("[name=adults_caught]") == "126"
    opened(sheet, host)
    unfold(sheet)
    assert "How many" in sheet.inner_text(".job-calculations")
    assert sheet.title() != "taken"
    sheet.click("[data-job=close]")
    expect(sheet.locator(".job-open")).to_be_hidden()
    sheet.goto(host.local + "method/comb_count.html")
    live(sheet)
    assert sheet.locator(".calc-job").count() == 0
    assert sheet.input_value("[name=adults_caught]") == ""


@browser
def test_two_jobs_keep_their_own_forms(sheet: Any, host: Host) -> None:
    for title, catch in (("First", "41"), ("Second", "52")):
        begun(opened(sheet, host))
        sheet.fill("[name=title]", title)
        sheet.goto(host.page("how_many_left"))
        live(sheet)
        sheet.fill(CATCHES, catch)
    opened(sheet, host).click(".job-list button:has-text('First')")
    expect(sheet.locator(".job-title")).to_have_text("First")
    sheet.goto(host.page("how_many_left"))
    live(sheet)
    assert sheet.input_value(CATCHES) == "41"
    assert "First" in sheet.inner_text(".calc-job")


@browser
def test_malformed_files_get_one_sentence_each_and_change_nothing(sheet: Any) -> None:
    bring(sheet, ("good.json", json.dumps(job_files.FULL).encode()))
    before = sheet.evaluate(RECORDS)
    title = sheet.title()
    bad = [json.dumps(value).encode() for _, value in job_files.wrong()]
    bad += [
        value if isinstance(value, bytes) else value.encode("utf-8", "surrogatepass")
        for _, value in job_files.hostile()
    ]
    small = [each for each in bad if len(each) < 100_000]
    assert len(bad) >= 200
    for batch in (small, [each for each in bad if len(each) >= 100_000]):
        said = bring(sheet, *((f"{place}.json", body) for place, body in enumerate(batch)))
        lines = said.splitlines()
        assert len(lines) == len(batch)
        for line in lines:
            assert line.endswith("Nothing was changed.")
            assert len(line) < 480
            assert "Traceback" not in line
            assert "could not be read on this device" not in line
    assert sheet.evaluate(RECORDS) == before
    assert sheet.title() == title


@browser
def test_in_and_out_gives_the_same_file_and_health_only_where_asked(sheet: Any) -> None:
    text = job.write(job.read(json.dumps(job_files.FULL))).encode()
    assert "taken in" in bring(sheet, ("job.json", text))
    assert saved(sheet, "save") == text
    sent = job.read(saved(sheet, "send"))
    assert sent.get("health") is None
    assert "reaction" not in sent.get("stings")[0]
    assert sent.get("client.name") == job_files.FULL["client"]["name"]
    # The same file again stands beside the first one.
    assert "beside" in bring(sheet, ("job.json", text))
    assert sheet.locator(".job-list li").count() == 2


@browser
def test_wiping_takes_every_trace_of_health(sheet: Any, host: Host) -> None:
    begun(sheet)
    unfold(sheet)
    sheet.fill("[name='client.name']", "Stays")
    sheet.check("[name='health.allergy_on_site'][value=yes]")
    sheet.fill("[name='health.note']", "Secretnote " * 60)  # too long: kept as typed
    held(sheet)
    sheet.goto(host.local + "safety/allergy_and_stings.html")
    live(sheet)
    marked = sheet.locator("[data-calculator=sting_plan] [data-health] select").first
    marked.select_option(index=1)
    chosen = marked.input_value()
    answered(sheet)
    sheet.click("[data-calculator=sting_plan] [data-do=store]")
    expect(sheet.locator("[data-calculator=sting_plan] .calc-said")).to_contain_text(
        "Kept in the job", timeout=20_000
    )
    sheet.wait_for_timeout(200)
    opened(sheet, host)
    unfold(sheet)
    assert "Secretnote" in json.dumps(sheet.evaluate(RECORDS))
    sheet.click("[data-job=wipe]")
    sheet.click("[data-job=wipe]")
    expect(sheet.locator(".job-said")).to_contain_text("Deleted", timeout=20_000)
    record = held(sheet)
    assert record["job"]["client"]["name"] == "Stays"
    assert "health" not in record["job"]
    assert record["raw"] == {}
    names = job_health.HEALTH_INPUTS["sting_plan"]
    assert not set(record["drafts"]["sting_plan"]["fields"]) & set(names)
    (entry,) = record["job"]["calculations"]
    assert not set(entry["inputs"]) & set(names)
    everything = json.dumps([record, sheet.evaluate("({...localStorage})")])
    assert "Secretnote" not in everything
    assert "answer.sting_plan" not in everything
    assert chosen


@browser
def test_a_link_leaves_health_out(phone: Any, host: Host) -> None:
    phone.add_init_script(
        "Object.defineProperty(navigator, 'clipboard',"
        " { value: { writeText: async (text) => { self.copied = text; } } });"
    )
    phone.goto(host.local + "safety/allergy_and_stings.html")
    live(phone)
    health = set(job_health.HEALTH_INPUTS["sting_plan"])
    for each in find("sting_plan").inputs:
        box = phone.locator(f"[data-calculator=sting_plan] [data-input={each.name}]").first
        if each.shown_example is not None and box.is_visible():
            enter(phone, "sting_plan", each.name, each.shown_example)
    held = phone.locator("[data-calculator=sting_plan] [data-input]:visible")
    counts = {one.get_attribute("data-input") for one in held.all()}  # others are left out
    given = {key for key, text in typed(phone)["sting_plan"].items() if text} & counts
    assert given & health
    assert given - health
    phone.click("[data-calculator=sting_plan] [data-do=link]")
    copied = phone.evaluate("self.copied")
    assert "calc=sting_plan" in copied
    names = set(re.findall(r"[#&](\w+)=", copied))
    assert names - {"calc", "units"} == given - health
    assert "Left out of the link" in phone.inner_text("[data-calculator=sting_plan] .calc-said")


@browser
def test_an_old_job_is_computed_again_and_differences_are_listed(sheet: Any) -> None:
    old = job_files.FULL | {
        "calculations": [
            {"calculator": "how_many_left", "edition": "2019.1", "time": NOW,
             "inputs": {"catches": [60, 35, 20], "most_left": 4},
             "results": {"total_caught": 99}, "stops": []}
        ]
    }  # fmt: skip
    bring(sheet, ("old.json", json.dumps(old).encode()))
    unfold(sheet)
    sheet.click("[data-job=rerun]")
    told = sheet.locator(".job-differences")
    expect(told).to_contain_text("99 → 115", timeout=20_000)
    assert "2019.1 → " in told.inner_text()
    assert held(sheet)["job"]["calculations"] == old["calculations"]


@browser
def test_rows_are_added_and_taken_out_and_erasing_wants_two_presses(sheet: Any) -> None:
    begun(sheet)
    unfold(sheet)
    add = sheet.locator("[data-job=add][data-section=steps]")
    for place, minutes in ((1, "40"), (2, "25")):
        add.click()
        sheet.locator(f"[name='steps.{place}.minutes']").fill(minutes, timeout=20_000)
    sheet.fill("[name='steps.2.note']", "n" * 401)
    assert [each["minutes"] for each in held(sheet)["job"]["steps"]] == [40, 25]
    sheet.click(".job-row [data-job=drop] >> nth=0")
    expect(sheet.locator(".job-row")).to_have_count(1, timeout=20_000)
    expect(sheet.locator("[name='steps.1.minutes']")).to_have_value("25")
    expect(sheet.locator("[name='steps.1.note']")).to_have_value("n" * 401)
    assert sheet.locator("[data-path='steps.1.note'] .calc-error").is_visible()
    sheet.click("[data-job=erase]")
    assert len(sheet.evaluate(RECORDS)) == 1
    sheet.click("[data-job=erase]")
    expect(sheet.locator(".job-open")).to_be_hidden()
    assert sheet.evaluate(RECORDS) == []
    assert (
        sheet.evaluate("Object.keys(localStorage).filter((key) => /typing|open/.test(key))") == []
    )


@browser
def test_units_follow_the_page(sheet: Any) -> None:
    begun(sheet)
    unfold(sheet)
    sheet.click("[data-units=us]")
    sheet.fill("[name='place.height']", "12")
    assert held(sheet)["job"]["place"]["height"] == pytest.approx(3.6576)
    sheet.click("[data-units=si]")
    expect(sheet.locator("[name='place.height']")).to_have_value("3.6576")


@browser
def test_the_keyboard_is_enough(sheet: Any) -> None:
    sheet.focus("[data-job=begin]")
    sheet.keyboard.press("Enter")
    expect(sheet.locator("[name=title]")).to_be_focused()
    sheet.keyboard.type("By keys")
    for _ in range(40):
        sheet.keyboard.press("Tab")
        if sheet.evaluate("document.activeElement.innerText") == "Place":
            break
    sheet.keyboard.press("Enter")
    sheet.keyboard.press("Tab")
    sheet.keyboard.type("Ho")
    sheet.keyboard.press("Tab")
    sheet.keyboard.type("3")
    made = held(sheet)["job"]
    assert made["title"] == "By keys"
    assert made["place"] == {"kind": "hollow_tree", "height": 3}


@browser
def test_axe_finds_nothing_and_all_is_large_and_narrow_enough(chromium: Any, host: Host) -> None:
    narrow = PHONE | {"viewport": {"width": 320, "height": 640}}
    context = chromium.new_context(**narrow, service_workers="block", bypass_csp=True)
    page = opened(context.new_page(), host)
    bring(page, ("job.json", json.dumps(job_files.FULL | {"title": "W" * 120}).encode()))
    unfold(page)
    page.fill("[name='price.currency']", "euro")
    page.locator("[name='price.currency']").blur()
    page.locator("[data-path='price.currency'] .calc-error").wait_for(timeout=20_000)
    assert axe(page, "light") == axe(page, "dark") == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    small = page.evaluate(
        """() => [...document.querySelectorAll(
             '.job-sheet button, .job-sheet select, .job-sheet textarea, .job-sheet summary,'
             + '.job-radio, .job-line input')]
           .filter((one) => one.offsetParent)
           .map((one) => [one.outerHTML.slice(0, 80), one.getBoundingClientRect()])
           .filter(([, box]) => box.height < 47.5 || box.width < 47.5)
           .map(([html, box]) => `${html} ${box.width}x${box.height}`)"""
    )
    assert small == []
    page.goto(host.page("heat_in_suit"))
    live(page)
    assert page.locator(".calc-job").count() == 1
    assert axe(page, "dark") == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    context.close()


def axe(page: Any, scheme: str) -> list[str]:
    from axe_playwright_python.sync_playwright import Axe

    page.emulate_media(color_scheme=scheme)
    found = Axe().run(page).response["violations"]
    return [f"{one['id']}: {one['nodes'][0]['html'][:120]}" for one in found]


@browser
def test_a_plain_address_keeps_jobs_too(chromium: Any, host: Host) -> None:
    address = server.address(host.port)
    if "127.0.0.1" in address:
        pytest.skip("this machine has no address but its own: no insecure origin to try")
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    page.goto(address + SHEET)
    page.wait_for_selector("html[data-jobs=live]", state="attached", timeout=20_000)
    assert page.evaluate("isSecureContext") is False
    begun(page)
    page.keyboard.type("Plain")
    page.reload()
    page.wait_for_selector("html[data-jobs=live]", state="attached", timeout=20_000)
    assert page.input_value("[name=title]") == "Plain"
    context.close()


@browser
def test_without_scripts_a_sentence_says_so(chromium: Any, host: Host) -> None:
    context = chromium.new_context(**PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto(host.local + SHEET)
    assert "needs scripts" in page.inner_text(".job-static")
    assert page.locator(".job-form").is_hidden()
    context.close()
