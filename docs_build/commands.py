"""What the commands do once they run inside ``.venv``."""

from __future__ import annotations

import argparse
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from datetime import date
from pathlib import Path

from docs_build import build, editions, review, server, strength
from docs_build.bootstrap import OUT, ROOT, Trouble, say

MOST_AT_A_TIME = 4
"""Files of tests that run side by side, each with a browser of its own."""

BY_FILE = ["--dist", "loadfile", "--no-loadscope-reorder"]
"""A file's tests share what they set up; the files begin in the order in which they stand."""

BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")


def run(options: argparse.Namespace, rest: list[str]) -> int:
    """Run the command of ``options``; ``rest`` goes to pytest."""
    match options.command:
        case "serve":
            return serve(options.port, options.no_serve, build.site)
        case "editions":
            return serve(options.port, options.no_serve, editions.side_by_side)
        case "cut":
            changed = editions.cut(options.name)
            say(f"This is edition {options.name} now: {len(changed)} files changed.")
        case "html":
            build.site()
            say(f"Built {build.HTML.relative_to(ROOT)}/index.html")
            say(_told())
        case "pdf":
            pdf = build.pdf(options.copy, options.part, options.paper)
            say(f"Built {pdf.relative_to(ROOT)}")
        case "new":
            from docs_build import new

            for line in new.calculator(options.name, options.part, options.title):
                say(f"- {line}")
        case "notebook":
            from docs_build import notebooks

            say(f"Ran and saved {notebooks.run(options.name).relative_to(ROOT)}")
        case "exercises":
            from docs_build import exercises

            print(exercises.markdown(options.seed), end="")
        case "test":
            if options.calculator:
                return test_calculator(options.calculator)
            return test([*options.pytest, *rest])
        case "bench":
            from docs_build import bench

            browser()
            return bench.main(build.site())
    return 0


def _told() -> str:
    """Return what every build says of its sources and its reviews."""
    return f"{strength.told()}\n{review.told(build.HANDBOOK, date.today())}"


def serve(port: int, no_serve: bool, make: Callable[[], Path]) -> int:
    """Build what is out of date, then serve it and show a QR code for the phone."""
    with server.listen(port) as httpd:
        html = make()
        say(_told())
        server.announce(httpd.server_port)
        if no_serve:
            return 0
        server.run(httpd, html)
    return 0


def test(arguments: list[str]) -> int:
    """Run pytest over the tests, then nbval over the notebooks; return the first failure."""
    import pytest

    browser()
    say("Building the handbook …")
    build.site()
    if not arguments:
        build.pdf("trainer", doctrees=build.DOCTREES)
    at_a_time = min(os.cpu_count() or 1, MOST_AT_A_TIME)
    several = [] if arguments or at_a_time == 1 else ["-n", str(at_a_time), *BY_FILE]
    command = [sys.executable, "-m", "pytest"]
    status = subprocess.call([*command, *several, *arguments], cwd=ROOT)
    if several and status == pytest.ExitCode.TESTS_FAILED:
        say("What failed beside other tests is tried alone: some of them measure time.")
        alone = ["--last-failed", "--last-failed-no-failures=none"]
        status = subprocess.call([*command, *alone], cwd=ROOT)
    notebooks = sorted(str(path) for path in (ROOT / "handbook").rglob("*.ipynb"))
    if notebooks and not arguments:
        # Warnings of the notebook tools themselves are not ours to turn into errors.
        nbval = ["-p", "no:cacheprovider", "-W", "ignore", "--nbval", "--nbval-current-env"]
        status = status or subprocess.call([*command, *nbval, *notebooks], cwd=ROOT)
    say(_told())
    return status


def test_calculator(name: str) -> int:
    """Run all that is about one calculator and needs no built page, in under a minute."""
    import pytest

    from calc.catalogue import find
    from calc.errors import InputError

    try:
        found = find(name)
    except InputError as error:
        raise Trouble(error.sentence) from error
    room = f"calc/{found.part}/{name}"
    tests = [f"tests/calc/{found.part}", "tests/calc/test_origins.py", "tests/test_fuzz.py"]
    commands = [
        ["pytest", "-q", "-k", name, *tests, "tests/test_published.py", "tests/test_listed.py"],
        ["pytest", "-q", "tests/test_sources.py", "tests/test_house.py"],
        ["pytest", "-q", "tests/docs_build/test_text.py"],
        ["ruff", "check", "calc", "tests"],
        ["ruff", "format", "--check", "calc", "tests"],
        ["mypy"],
    ]
    say(f"Testing {found.title} ({room}) …")
    status = 0
    for command in commands:
        ended = subprocess.call([sys.executable, "-m", *command], cwd=ROOT)
        if ended not in {pytest.ExitCode.OK, pytest.ExitCode.NO_TESTS_COLLECTED}:
            status = status or ended
    return status


def browser() -> str | None:
    """Return a Chromium, installing Debian's where that may be done.

    Raises
    ------
    Trouble
        under ``CI=true`` when there is none to be had
    """
    found = next(filter(None, map(shutil.which, BROWSERS)), None)
    mac = Path("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome")
    if found is None and mac.exists():
        found = str(mac)
    if found is None and shutil.which("apt-get") and getattr(os, "geteuid", lambda: 1)() == 0:
        say("Installing Chromium for the browser tests …")
        OUT.mkdir(exist_ok=True)
        with (OUT / "apt.log").open("w") as log:
            for command in (
                ["apt-get", "update"],
                ["apt-get", "install", "-y", "--no-install-recommends", "chromium", "fonts-dejavu"],
            ):
                subprocess.call(
                    command,
                    stdout=log,
                    stderr=subprocess.STDOUT,
                    env=os.environ | {"DEBIAN_FRONTEND": "noninteractive"},
                )
        found = next(filter(None, map(shutil.which, BROWSERS)), None)
    if found is None:
        sentence = (
            "The browser tests need Chromium or Chrome, and none was found: "
            "install one and run the command again."
        )
        if os.environ.get("CI") == "true":
            raise Trouble(sentence)
        say(f"{sentence} Going on without them.")
        return None
    os.environ["HANDBOOK_BROWSER"] = found
    return found
