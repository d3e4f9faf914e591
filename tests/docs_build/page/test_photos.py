"""Pictures of a job: kept on the device without their origin, in order, in a ZIP and on paper."""

from __future__ import annotations

import base64
import gzip
import io
import json
import re
import shutil
import struct
import subprocess
import zipfile
import zlib
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from PIL.PngImagePlugin import PngInfo
from playwright.sync_api import expect

from calc.clients.job import photos as job_photos
from calc.clients.job.fields import section
from docs_build.page import jobs, pack, photos_html
from tests.calc.clients import job_files

from .conftest import PHONE, Host, Watch, kept, serving, until
from .test_jobs import NOW, SHEET, axe, begun, bring, held, kill, opened, saved, unfold

browser = pytest.mark.browser
PAGE = "clients/photos_and_privacy.html"
SECRET = "Secretplace"
CAMERA = "input[capture]"
GALLERY = ".photo-notes input[multiple]"
CARD = ".photo-card"
STORED = """import('/_static/photos_store.mjs').then(async (store) => {
  const { openJob } = await import('/_static/jobs.mjs');
  return (await store.all((await openJob()).id)).map(({ name, bytes }) =>
    [name, btoa(new Uint8Array(bytes).reduce((text, one) => text + String.fromCharCode(one), ''))]);
})"""
COUNT = """new Promise((give) => {
  indexedDB.open('handbook-pictures').onsuccess = ({ target: { result } }) => {
    result.transaction('pictures').objectStore('pictures').count().onsuccess = ({ target }) => {
      result.close();
      give(target.result);
    };
  };
})"""


# The side of Python, without a browser.


def ask(photos: list[dict[str, Any]], **question: Any) -> dict[str, Any]:
    held = job_files.FULL | {"photos": photos}
    return jobs.call({"now": NOW, "job": held, "id": held["id"]} | question)


def names(told: dict[str, Any]) -> list[str]:
    return [each["name"] for each in told["job"]["photos"]]


THREE = [
    {"name": "a.jpg", "kind": "nest", "caption": "Before"},
    {"name": "b.jpg", "kind": "people", "caption": "The stairs"},
    {"name": "c.jpg", "kind": "comb", "use_in_report": "yes"},
]


def test_before_and_after_go_into_the_report_unless_said_otherwise() -> None:
    kinds = photos_html.kinds()
    assert {kind for kind in kinds if job_photos.in_report({"kind": kind})} == {"nest", "closed"}
    # An older file names no kind, and all its captions went in.
    assert job_photos.in_report({})
    for kind in kinds:
        assert job_photos.in_report({"kind": kind, "use_in_report": "yes"})
        assert not job_photos.in_report({"kind": kind, "use_in_report": "no"})


def test_the_report_names_its_pictures_and_no_other() -> None:
    asked = {"do": "letter", "language": "en", "today": "2026-09-16", "clocks": {}}
    told = ask(THREE, **asked, kind="report", customary=False)
    assert told["pictures"] == [
        {"name": "a.jpg", "caption": "Before", "alt": "Nest before the work: Before"},
        {"name": "c.jpg", "caption": "", "alt": "Comb"},
    ]
    assert "Before" in told["text"]
    assert "The stairs" not in told["text"]
    assert "pictures" not in ask(THREE, **asked, kind="quote", customary=False)


def test_a_picture_is_listed_moved_and_taken_out_by_name() -> None:
    new = {"name": "d.jpg", "kind": "unknown", "bytes": 5, "added": NOW}
    added = ask(THREE, do="photo", name="d.jpg", to=1000, entry=new)
    assert (names(added), added["places"]) == (["a.jpg", "b.jpg", "c.jpg", "d.jpg"], [1, 2, 3, 0])
    assert added["job"]["photos"][3] == new
    again = ask(THREE, do="photo", name="b.jpg", to=1000, entry={"name": "b.jpg"})
    assert (again["job"]["photos"], again["places"]) == (THREE, [1, 2, 3])
    moved = ask(THREE, do="photo", name="c.jpg", to=1)
    assert (names(moved), moved["places"]) == (["c.jpg", "a.jpg", "b.jpg"], [3, 1, 2])
    out = ask(THREE, do="photo", name="b.jpg", to=0)
    assert (names(out), out["places"]) == (["a.jpg", "c.jpg"], [1, 3])
    assert names(ask(THREE, do="photo", name="gone.jpg", to=2)) == ["a.jpg", "b.jpg", "c.jpg"]
    refused = ask(THREE, do="photo", name="e.jpg", to=1, entry={"name": "e.jpg", "exif": "x"})
    assert not refused["ok"]


def test_the_limits_agree() -> None:
    photos = section("photos")
    assert photos is not None
    assert photos.most >= job_photos.MOST
    html = photos_html.photos_html("comb", "../x.html")
    for text in (f'data-most="{job_photos.MOST}"', 'data-kind="comb"', 'href="../x.html"'):
        assert text in html


def test_the_scripts_stay_small() -> None:
    scripts = list((pack.HERE / "static").glob("photos*.mjs"))
    assert len(scripts) == 3
    assert sum(len(gzip.compress(path.read_bytes(), 9)) for path in scripts) < 8_000


# Pictures as cameras and other programs write them.


def painted(wide: int = 640, high: int = 480) -> Image.Image:
    """Return a picture whose upper left quarter is red, the rest blue."""
    image = Image.new("RGB", (wide, high), (0, 0, 255))
    image.paste((255, 0, 0), (0, 0, wide // 2, high // 2))
    return image


def camera_file(image: Image.Image, orientation: int = 1) -> bytes:
    """Return a JPEG with position, maker's note, thumbnail, XMP, profile, comment and a tail."""
    exif = Image.Exif()
    exif[0x0112] = orientation
    exif[0x010F] = f"{SECRET} camera"
    gps = exif.get_ifd(0x8825)
    gps |= {1: "N", 2: (52.0, 31.0, 12.0), 3: "E", 4: (13.0, 24.0, 36.0), 29: "2026:09:15"}
    inner = exif.get_ifd(0x8769)
    inner |= {0x9003: "2026:09:15 18:30:00", 0x927C: f"{SECRET} note".encode() * 9}
    made = io.BytesIO()
    image.save(
        made, "JPEG", quality=90, exif=exif.tobytes(), comment=f"{SECRET} comment".encode(),
        xmp=f"<x:xmpmeta>{SECRET}</x:xmpmeta>".encode(), icc_profile=SECRET.encode() * 20,
    )  # fmt: skip
    return made.getvalue() + f"{SECRET} after the end".encode()


def png_file(image: Image.Image) -> bytes:
    text = PngInfo()
    text.add_text("Location", f"{SECRET} 52.52 13.41")
    text.add_itxt("XML:com.adobe.xmp", SECRET, zip=False)
    made = io.BytesIO()
    image.save(made, "PNG", pnginfo=text, exif=b"Exif\0\0" + SECRET.encode())
    return made.getvalue()


def plain(seed: int = 0) -> bytes:
    made = io.BytesIO()
    Image.new("RGB", (320, 240), (seed * 40 % 256, 90, 60)).save(made, "JPEG")
    return made.getvalue()


MARK = re.compile(rb"\xff(?![\x00\xd0-\xd7])")
"""What ends the signs of a scan."""


def segments(body: bytes) -> list[int]:
    """Return the kinds of all segments of a JPEG, to its very last byte."""
    assert body[:2] == b"\xff\xd8"
    kinds, at = [], 2
    while body[at : at + 2] != b"\xff\xd9":
        mark, kind, length = struct.unpack(">BBH", body[at : at + 4])
        assert mark == 0xFF
        kinds.append(kind)
        at += 2 + length
        if kind == 0xDA:
            at = next(each.start() for each in MARK.finditer(body, at))
    assert at + 2 == len(body)
    return kinds


ALLOWED = {0xE0, 0xDB, 0xC0, 0xC2, 0xC4, 0xDD, 0xDA}
"""JFIF head, tables, frame, restart interval and scan: what a picture needs."""


def bears_nothing(body: bytes) -> bool:
    words = (SECRET.encode(), b"Exif", b"xmp", b"ICC_PROFILE", b"tEXt", b"2026:09:15")
    return set(segments(body)) <= ALLOWED and not any(word in body for word in words)


def test_the_check_for_traces_can_fail() -> None:
    traced = camera_file(painted())
    end = traced.rindex(b"\xff\xd9") + 2
    assert not bears_nothing(traced[:end])
    with pytest.raises((AssertionError, struct.error)):
        segments(traced)
    assert bears_nothing(plain())


# In the browser.


@pytest.fixture
def sheet(phone: Any, host: Host) -> Any:
    """Return the job sheet with one new job on a device without others."""
    phone.evaluate(
        "import('/_static/jobs.mjs').then(async (jobs) => {"
        " const store = await import('/_static/photos_store.mjs');"
        " for (const one of await jobs.all()) {"
        " await store.erase(one.id); await jobs.erase(one.id); } })"
    )
    return started(phone, host)


def started(page: Any, host: Host) -> Any:
    """Open the sheet and begin a job."""
    begun(ready(page, host))
    unfold(page)
    return page


def ready(page: Any, host: Host) -> Any:
    opened(page, host)
    page.wait_for_selector("html[data-photos=live]", state="attached", timeout=20_000)
    return page


def give(page: Any, *files: tuple[str, bytes], to: str = GALLERY) -> None:
    """Set files on an input, as camera or gallery would."""
    listed = [{"name": name, "mimeType": "", "buffer": body} for name, body in files]
    page.set_input_files(to, listed)


def wait(page: Any, count: int) -> Any:
    """Wait until so many pictures have their fields."""
    expect(page.locator(f"{CARD} .photo-facts:not([hidden])")).to_have_count(count, timeout=60_000)
    return page


def field(page: Any, place: int, name: str) -> Any:
    return page.locator(f"{CARD} [data-field={name}]").nth(place - 1)


def stored(page: Any) -> dict[str, bytes]:
    return {name: base64.b64decode(text) for name, text in page.evaluate(STORED)}


def photos(page: Any) -> list[dict[str, Any]]:
    return list(held(page)["job"].get("photos", []))


@browser
def test_nothing_of_the_camera_is_kept(sheet: Any) -> None:
    give(sheet, (f"{SECRET}.jpg", camera_file(painted(2400, 1200), orientation=6)), to=CAMERA)
    wait(sheet, 1)
    give(sheet, ("map.png", png_file(painted(900, 3000))))
    wait(sheet, 2)
    noise = Image.effect_noise((3000, 2000), 120).convert("RGB")
    give(sheet, ("noise.jpg", camera_file(noise)))
    wait(sheet, 3)
    listed, kept = photos(sheet), stored(sheet)
    assert [each["name"] for each in listed] == list(kept)
    for entry, body in zip(listed, kept.values(), strict=True):
        assert bears_nothing(body)
        assert entry["bytes"] == len(body) <= job_photos.BYTES
        assert set(entry) == {"name", "kind", "bytes", "added"}
        assert re.fullmatch(r"\d{17}\.jpg", entry["name"])
    turned, tall, noisy = (Image.open(io.BytesIO(body)) for body in kept.values())
    # The camera was held upright: its upper left quarter is now the upper right one.
    assert turned.size == (800, 1600)
    corners = [turned.getpixel(at) for at in ((200, 200), (600, 200), (200, 1400), (600, 1400))]
    assert [corner[0] > 200 > 60 > corner[2] for corner in corners] == [False, True, False, False]
    assert tall.size == (480, 1600)
    assert max(noisy.size) <= job_photos.LONG_SIDE
    everything = json.dumps([held(sheet), sheet.evaluate("({...localStorage})")])
    assert SECRET not in everything


@browser
def test_what_any_encoder_adds_is_cut_away(sheet: Any) -> None:
    given = [camera_file(painted()), plain(), b"\xff\xd8\xff", b"GIF89a", plain()[:-2], b""]
    told = sheet.evaluate(
        """async (texts) => {
          const { bare } = await import('/_static/photos_store.mjs');
          const bytes = (text) => Uint8Array.from(atob(text), (one) => one.charCodeAt(0));
          return texts.map((text) => {
            const made = bare(bytes(text));
            return made && [String.fromCharCode(...made.bytes), made.width, made.height];
          });
        }""",
        [base64.b64encode(each).decode() for each in given],
    )
    assert told[2:] == [None] * 4
    body = told[0][0].encode("latin-1")
    assert bears_nothing(body)
    assert told[0][1:] == [640, 480]
    same = Image.open(io.BytesIO(body)).tobytes()
    assert same == Image.open(io.BytesIO(given[0])).tobytes()
    assert told[1][0].encode("latin-1") == given[1]


@browser
def test_what_cannot_be_read_gets_one_sentence_and_costs_nothing(sheet: Any) -> None:
    give(sheet, ("IMG_7.HEIC", b"\0\0\0\x18ftypheic" * 40), ("good.jpg", plain()), ("a.jpg", b""))
    wait(sheet, 1)
    said = sheet.inner_text(".photo-said").splitlines()
    assert len(said) == 2
    assert said[0].startswith("“IMG_7.HEIC” was not kept: this browser cannot read it")
    assert "a.jpg" in said[1]
    assert len(photos(sheet)) == len(stored(sheet)) == 1


@browser
def test_words_and_order_last_through_a_dead_network_and_killed_tabs(
    device: Any, site: Path
) -> None:
    with serving(site) as host:
        context = device()
        page = context.new_page()
        page.goto(host.local + SHEET)
        kept(page)
    # The server is gone, and so is the browser.
    context = device()
    watch = Watch(host.local)
    watch.over(context)
    page = started(context.new_page(), host)
    give(page, ("one.jpg", plain(1)), to=CAMERA)
    page.wait_for_selector(".photo-thumb img[src]", timeout=20_000)
    kill(page)  # before Python has heard of it
    page = ready(context.new_page(), host)
    unfold(page)
    wait(page, 1)
    give(page, ("two.jpg", plain(2)))
    wait(page, 2)
    first, second = stored(page)
    field(page, 1, "kind").select_option("nest")
    field(page, 2, "caption").fill("Closed with\nmortar")
    kill(page)
    context = device()
    watch.over(context)
    page = ready(context.new_page(), host)
    unfold(page)
    wait(page, 2)
    expect(field(page, 2, "caption")).to_have_value("Closed with mortar")
    assert field(page, 1, "use_in_report").is_checked()
    page.locator("[data-by='-1']").nth(1).click()
    expect(field(page, 1, "caption")).to_have_value("Closed with mortar", timeout=20_000)
    assert [each["name"] for each in photos(page)] == [second, first]
    assert photos(page)[0]["caption"] == "Closed with mortar"
    assert photos(page)[1]["kind"] == "nest"
    context.close()
    assert watch.foreign == []
    assert watch.faults == []


@browser
def test_two_jobs_keep_their_own_and_erasing_takes_them_along(sheet: Any, host: Host) -> None:
    sheet.fill("[name=title]", "First")
    give(sheet, ("one.jpg", plain(1)))
    wait(sheet, 1)
    begun(sheet)
    sheet.fill("[name=title]", "Second")
    expect(sheet.locator(CARD)).to_have_count(0)
    give(sheet, ("two.jpg", plain(2)), ("three.jpg", plain(3)))
    wait(sheet, 2)
    assert "2 of 40 pictures" in sheet.inner_text(".photo-sum")
    # The same pictures stand wherever the book asks for them.
    sheet.goto(host.local + PAGE)
    wait(sheet, 2)
    field(sheet, 1, "caption").fill("Seen from the page")
    sheet.wait_for_timeout(600)
    ready(sheet, host)
    unfold(sheet)
    wait(sheet, 2)
    assert field(sheet, 1, "caption").input_value() == "Seen from the page"
    assert sheet.evaluate(COUNT) == 3
    sheet.click("[data-job=erase]")
    sheet.click("[data-job=erase]")
    expect(sheet.locator(".job-open")).to_be_hidden()
    assert sheet.evaluate(COUNT) == 1
    sheet.goto(host.local + PAGE)
    sheet.wait_for_selector("html[data-photos=live]", state="attached")
    assert "No job is open." in sheet.inner_text(".photo-none")
    expect(sheet.locator(".photo-open")).to_be_hidden()
    ready(sheet, host).click(".job-list button:has-text('First')")
    unfold(sheet)
    wait(sheet, 1)


@browser
def test_deleted_is_gone_and_comes_back_with_its_words(sheet: Any) -> None:
    give(sheet, ("one.jpg", plain(1)), ("two.jpg", plain(2)), ("three.jpg", plain(3)))
    wait(sheet, 3)
    field(sheet, 2, "caption").fill("n" * 401)  # too long: kept as typed
    field(sheet, 2, "kind").select_option("damage")
    field(sheet, 2, "use_in_report").click()
    before, kept = photos(sheet), stored(sheet)
    expect(sheet.locator(f"{CARD} .calc-error").nth(1)).to_be_visible()
    sheet.locator("[data-photo=drop]").nth(1).click()
    wait(sheet, 2)
    assert len(stored(sheet)) == len(photos(sheet)) == 2
    assert held(sheet)["raw"] == {}
    expect(sheet.locator("[data-photo=undo]")).to_be_focused()
    sheet.keyboard.press("Enter")
    wait(sheet, 3)
    expect(field(sheet, 2, "caption")).to_have_value("n" * 401, timeout=20_000)
    assert photos(sheet) == before
    assert before[1]["use_in_report"] == "yes"
    assert stored(sheet) == kept
    expect(sheet.locator("[data-photo=undo]")).to_be_hidden()


@browser
def test_a_full_device_and_a_full_job_say_so(sheet: Any) -> None:
    give(sheet, ("one.jpg", plain(1)))
    wait(sheet, 1)
    field(sheet, 1, "caption").fill("Stays")
    before = photos(sheet)
    sheet.evaluate(
        """() => {
          const put = IDBObjectStore.prototype.put;
          IDBObjectStore.prototype.put = function (...given) {
            if (this.name === 'pictures') throw new DOMException('full', 'QuotaExceededError');
            return put.apply(this, given);
          };
          navigator.storage.estimate = async () => ({ quota: 5e6, usage: 2e6 });
        }"""
    )
    give(sheet, ("two.jpg", plain(2)))
    said = sheet.locator(".photo-said")
    expect(said).to_contain_text("“two.jpg” was not kept", timeout=20_000)
    expect(said).to_contain_text("about 3.0 MB left")
    assert photos(sheet) == before
    assert len(stored(sheet)) == 1


@browser
def test_a_job_takes_no_more_than_its_limit(sheet: Any, host: Host) -> None:
    give(sheet, ("one.jpg", plain(1)))
    wait(sheet, 1)
    sheet.evaluate(
        """async (most) => {
          const store = await import('/_static/photos_store.mjs');
          const { openId } = await import('/_static/jobs.mjs');
          const [one] = await store.all(openId());
          const more = Array.from({ length: most - 1 }, (_, at) => `x${at}.jpg`);
          await store.put(more.map((name) => ({ ...one, name })));
        }""",
        job_photos.MOST,
    )
    ready(sheet, host)
    unfold(sheet)
    wait(sheet, job_photos.MOST)
    give(sheet, ("more.jpg", plain(2)))
    expect(sheet.locator(".photo-said")).to_contain_text(
        f"“more.jpg” was not kept: a job takes {job_photos.MOST} pictures.", timeout=20_000
    )
    assert len(stored(sheet)) == len(photos(sheet)) == job_photos.MOST


@browser
def test_denied_storage_is_said_before_a_picture_is_taken(chromium: Any, host: Host) -> None:
    context = chromium.new_context(**PHONE, service_workers="block")
    page = started(context.new_page(), host)
    page.add_init_script(
        "const { open } = IDBFactory.prototype;"
        "IDBFactory.prototype.open = function (name, ...rest) {"
        " if (name === 'handbook-pictures') throw new DOMException('no', 'SecurityError');"
        " return open.call(this, name, ...rest); };"
    )
    ready(page, host)
    unfold(page)
    expect(page.locator(".photo-said")).to_contain_text("does not let the page store pictures")
    assert page.locator("[data-photo=pick]:disabled").count() == 2
    assert page.input_value("[name=title]") == ""
    context.close()


# In and out as one file.


def packed(entries: list[tuple[str, bytes]], tail: bytes = b"", **wrong: int) -> bytes:
    """Return a ZIP as the page writes it, byte for byte, with ``wrong`` numbers where asked."""
    bodies, index, at = b"", b"", 0
    for name, body in entries:
        size = wrong.get("size", len(body))
        facts = struct.pack(
            "<HHHHHIIIHH", 20, 0, wrong.get("method", 0), 0, 0x21,
            wrong.get("sum", zlib.crc32(body)), size, size, len(name.encode()), 0,
        )  # fmt: skip
        bodies += struct.pack("<I", 0x04034B50) + facts + name.encode() + body
        index += struct.pack("<IH", 0x02014B50, 20) + facts + struct.pack("<HHHII", 0, 0, 0, 0, at)
        index += name.encode()
        at = len(bodies)
    count = len(entries)
    end = struct.pack("<IHHHHIIH", 0x06054B50, 0, 0, count, count, len(index), at, 0)
    return bodies + index + end + tail


def job_text(*listed: str) -> bytes:
    data = job_files.FULL | {"photos": [{"name": name} for name in listed]}
    return json.dumps(data).encode()


def hostile_zips() -> Iterator[tuple[str, bytes]]:
    """Return ZIPs that the page may not take in."""
    job, one = ("job.json", job_text("1.jpg")), ("1.jpg", plain())
    yield "no job", packed([one])
    yield "job last", packed([one, job])
    yield "nothing", packed([])
    yield "cut off", packed([job, one])[:-40]
    yield "head alone", b"PK\x03\x04"
    yield "tail", packed([job, one], tail=b"x")
    yield "wrong sum", packed([job, one], sum=5)
    yield "too long", packed([job, one], size=4_000_000_000)
    yield "compressed", packed([job, one], method=8)
    yield "way up", packed([("job.json", job_text("../1.jpg")), ("../1.jpg", plain())])
    yield "way down", packed([("job.json", job_text("a/1.jpg")), ("a/1.jpg", plain())])
    yield "way of Windows", packed([("job.json", job_text("a\\1.jpg")), ("a\\1.jpg", plain())])
    yield "other kind", packed([("job.json", job_text("1.exe")), ("1.exe", plain())])
    yield "twice", packed([job, one, one])
    yield "not named", packed([job, one, ("2.jpg", plain())])
    yield "no picture", packed([job, ("1.jpg", b"MZ" * 100)])
    yield "half a picture", packed([job, ("1.jpg", plain()[:-2])])
    yield "too many", packed([job, *((f"{at}.jpg", b"") for at in range(job_photos.MOST + 1))])
    yield "a bad job", packed([("job.json", b'{"format": "x"}'), one])
    yield "two bytes of a job", packed([("job.json", b"{}")])
    yield "large picture", packed([job, ("1.jpg", plain() + b"\0" * job_photos.BYTES)])
    wide = io.BytesIO()
    Image.new("RGB", (job_photos.LONG_SIDE + 1, 8)).save(wide, "JPEG")
    yield "wide picture", packed([job, ("1.jpg", wide.getvalue())])
    claimed = plain().replace(struct.pack(">HH", 240, 320), struct.pack(">HH", 60000, 60000))
    yield "bomb of pixels", packed([job, ("1.jpg", claimed)])
    deflated = io.BytesIO()
    with zipfile.ZipFile(deflated, "w", zipfile.ZIP_DEFLATED) as made:
        made.writestr("job.json", b" " * 50_000_000)
    yield "bomb of zeros", deflated.getvalue()


@browser
def test_a_job_and_its_pictures_go_out_and_come_back(sheet: Any, tmp_path: Path) -> None:
    expect(sheet.locator("[data-photo-pack]")).to_be_hidden()
    give(sheet, ("one.jpg", camera_file(painted())), ("two.jpg", plain(2)))
    wait(sheet, 2)
    field(sheet, 1, "caption").fill("The hole")
    before, kept = photos(sheet), stored(sheet)
    body = saved(sheet, "save")
    path = tmp_path / "job.zip"
    path.write_bytes(body)
    with zipfile.ZipFile(path) as made:
        assert made.testzip() is None
        assert made.namelist() == ["job.json", *kept]
        assert {name: made.read(name) for name in kept} == kept
        text = made.read("job.json")
        assert json.loads(text)["photos"] == before
        assert {each.compress_type for each in made.infolist()} == {zipfile.ZIP_STORED}
    if shutil.which("unzip"):
        subprocess.run(["unzip", "-tq", str(path)], check=True, capture_output=True)
    assert packed([("job.json", text), *kept.items()]) == body
    sheet.click("[data-photo-pack]")
    assert json.loads(saved(sheet, "save")) == json.loads(text)
    sheet.click("[data-job=erase]")
    sheet.click("[data-job=erase]")
    expect(sheet.locator(".job-open")).to_be_hidden()
    assert sheet.evaluate(COUNT) == 0
    assert "taken in" in bring(sheet, ("job.zip", body))
    wait(sheet, 2)
    assert photos(sheet) == before
    assert stored(sheet) == kept
    # The same again stands beside it, with pictures of its own.
    assert "beside" in bring(sheet, ("job.zip", body))
    wait(sheet, 2)
    assert sheet.evaluate(COUNT) == 4
    # What another program has put beside a picture does not come in.
    foreign = camera_file(painted())
    taken = bring(sheet, ("f.zip", packed([("job.json", job_text("1.jpg")), ("1.jpg", foreign)])))
    assert "taken in" in taken
    wait(sheet, 1)
    assert bears_nothing(stored(sheet)["1.jpg"])


@browser
def test_broken_zips_change_nothing_and_say_why(sheet: Any) -> None:
    records = "import('/_static/jobs.mjs').then((jobs) => jobs.all())"
    held(sheet)
    before = sheet.evaluate(records)
    bad = list(hostile_zips())
    said = bring(sheet, *((f"{name}.zip", body) for name, body in bad)).splitlines()
    assert len(said) == len(bad) > 20
    for (name, _), line in zip(bad, said, strict=True):
        assert line.startswith(f"{name}.zip: "), line
        assert line.endswith("Nothing was changed."), line
        assert "could not be read on this device" not in line, line
        assert len(line) < 300
    assert sheet.evaluate(records) == before
    assert sheet.evaluate(COUNT) == 0


@browser
def test_the_report_carries_the_chosen_pictures(sheet: Any, tmp_path: Path) -> None:
    sheet.evaluate(
        """() => {
          self.told = {};
          const clipboard = { writeText: async (text) => { told.copied = text; } };
          Object.defineProperty(navigator, 'clipboard', { value: clipboard });
          navigator.canShare = ({ files }) => files.length > 0;
          navigator.share = async ({ text, files }) => {
            told.shared = [text, files.map(({ name, type, size }) => [name, type, size])];
          };
          self.print = () => { told.printed = true; };
          document.querySelector('[data-job=shareLetter]').hidden = false;
        }"""
    )
    three = [painted(900, 600), painted(600, 900), painted(640, 480), painted(640, 480)]
    give(sheet, *((f"{at}.jpg", camera_file(each)) for at, each in enumerate(three)))
    wait(sheet, 4)
    for place, kind in enumerate(("nest", "comb", "closed", "people"), start=1):
        field(sheet, place, "kind").select_option(kind)
    field(sheet, 1, "caption").fill("The hole in the gable")
    field(sheet, 2, "use_in_report").click()
    sheet.select_option("[data-letter=kind]", "report")
    figures = sheet.locator("[data-part=letter] .job-figures figure")
    expect(figures).to_have_count(3, timeout=30_000)
    expect(figures.nth(0)).to_contain_text("The hole in the gable", timeout=20_000)
    sheet.click("[data-job=copyLetter]")
    sheet.click("[data-job=shareLetter]")
    sheet.click("[data-job=printLetter]")
    until(sheet, "told.printed && told.shared")
    told = sheet.evaluate("told")
    sizes = [len(body) for body in stored(sheet).values()][:3]
    assert told["shared"][0] == told["copied"]
    assert "The hole in the gable" in told["copied"]
    assert told["shared"][1] == [
        [f"picture-{at}.jpg", "image/jpeg", size] for at, size in enumerate(sizes, start=1)
    ]
    alts = sheet.evaluate("[...document.querySelectorAll('.job-paper img')].map((one) => one.alt)")
    assert alts == ["Nest before the work: The hole in the gable", "Comb", "Closed up"]
    sheet.emulate_media(media="print")
    boxes = sheet.evaluate(
        "[...document.querySelectorAll('.job-paper figure')]"
        ".map((one) => one.getBoundingClientRect()).map(({ x, y }) => [x, y])"
    )
    assert boxes[0][1] == boxes[1][1] < boxes[2][1]
    assert boxes[0][0] == boxes[2][0] < boxes[1][0]
    path = tmp_path / "report.pdf"
    path.write_bytes(sheet.pdf(format="A4"))
    if shutil.which("pdfimages"):
        listed = subprocess.run(
            ["pdfimages", "-list", str(path)], check=True, capture_output=True, text=True
        ).stdout
        assert len([line for line in listed.splitlines() if " image " in line]) == 3
    sheet.evaluate("dispatchEvent(new Event('afterprint'))")
    assert sheet.locator(".job-paper").count() == 0
    sheet.emulate_media(media="screen")
    # A tick taken off takes the picture off the letter.
    field(sheet, 1, "use_in_report").click()
    expect(figures).to_have_count(2, timeout=20_000)


@browser
def test_axe_keys_and_sizes(chromium: Any, host: Host) -> None:
    narrow = PHONE | {"viewport": {"width": 320, "height": 640}}
    context = chromium.new_context(**narrow, service_workers="block", bypass_csp=True)
    page = started(context.new_page(), host)
    give(page, ("W" * 60 + ".heic", b"x"), ("two.jpg", plain(1)), ("three.jpg", plain(2)))
    wait(page, 2)
    field(page, 1, "caption").fill("W" * 200)
    page.locator("[data-photo=drop]").nth(1).click()
    wait(page, 1)
    assert axe(page, "light") == axe(page, "dark") == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    small = page.evaluate(
        """() => [...document.querySelectorAll(
             '.photo-notes :is(button, select, textarea), .photo-tick')]
           .filter((one) => one.offsetParent)
           .map((one) => [one.outerHTML.slice(0, 80), one.getBoundingClientRect()])
           .filter(([, box]) => box.height < 47.5 || box.width < 47.5)
           .map(([html, box]) => `${html} ${box.width}x${box.height}`)"""
    )
    assert small == []
    # From the undo button on, keys alone: larger view and back, words, tick.
    page.focus("[data-photo=undo]")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.locator("dialog.photo-view")).to_be_visible()
    assert axe(page, "light") == []
    assert "Not said yet" in str(page.get_attribute("dialog img", "alt"))
    expect(page.locator("[data-photo=shut]")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("dialog.photo-view")).to_be_hidden()
    expect(page.locator(".photo-thumb").nth(0)).to_be_focused()
    page.keyboard.press("Tab")
    page.keyboard.type("com")
    page.keyboard.press("Tab")
    page.keyboard.type("x")
    page.keyboard.press("Tab")
    page.keyboard.press(" ")
    sheet = photos(page)[0]
    assert (sheet["kind"], sheet["use_in_report"]) == ("comb", "yes")
    assert "x" in sheet["caption"]
    context.close()
