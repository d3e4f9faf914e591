"""The check values, computed by the Python that runs in the page."""

from __future__ import annotations

import json
import tomllib
from typing import Any

import pytest

from calc.catalogue import CALCULATORS
from docs_build.bootstrap import ROOT
from docs_build.page import door

from .conftest import Host

pytestmark = pytest.mark.browser

BOOT = """async () => {
  const base = new URL('/_runtime/', location.href);
  const manifest = await (await fetch(new URL('runtime.json', base))).json();
  const indexURL = new URL(manifest.python, base).href;
  const { loadPyodide } = await import(indexURL + 'pyodide.mjs');
  const python = await loadPyodide({ indexURL, lockFileContents: manifest.lock });
  const zip = await (await fetch(new URL(manifest.book, base))).arrayBuffer();
  python.unpackArchive(zip, 'zip', { extractDir: '/book' });
  python.runPython('import sys; sys.path.insert(0, "/book")');
  window.python = python;
}"""


@pytest.fixture(scope="module")
def python(chromium: Any, host: Host) -> Any:
    """Return a page in which the shipped runtime holds the shipped wheel."""
    context = chromium.new_context(service_workers="block")
    page = context.new_page()
    page.goto(host.page("how_many_left"))
    page.evaluate(BOOT)
    yield page
    context.close()


def test_every_published_value_comes_out_the_same_in_the_page(python: Any) -> None:
    checks = [
        check | {"id": f"{path.stem}-{check['id']}"}
        for path in sorted((ROOT / "tests" / "published").rglob("*.toml"))
        for check in tomllib.loads(path.read_text("utf-8"))["check"]
    ]
    assert len(checks) > 50
    source = (ROOT / "tests" / "checks.py").read_text("utf-8")
    python.evaluate(
        "([source, checks]) => { window.python.globals.set('source', source);"
        " window.python.globals.set('text', checks); }",
        [source, json.dumps(checks)],
    )
    found = json.loads(
        python.evaluate(
            """() => window.python.runPython(`
import json, types
module = types.ModuleType("checks")
exec(source, module.__dict__)
json.dumps({one["id"]: module.faults(one) for one in json.loads(text)})
`)"""
        )
    )
    assert len(found) == len(checks)
    assert {name: faults for name, faults in found.items() if faults} == {}


@pytest.mark.parametrize("name", CALCULATORS)
@pytest.mark.parametrize("customary", [False, True])
def test_page_and_desk_give_the_same_answer(python: Any, name: str, customary: bool) -> None:
    asked = json.dumps({"op": "run", "name": name, "texts": {}, "customary": customary})
    there = json.loads(
        python.evaluate(
            "(asked) => window.python.runPython("
            "'from docs_build.page.door import call; call')(asked)",
            asked,
        )
    )
    here = json.loads(door.call(asked))
    assert there["ok"]
    assert there["text"] == here["text"]
    assert there["brief"] == here["brief"]


def test_numpy_is_not_there(python: Any) -> None:
    assert (
        python.evaluate('() => window.python.runPython(\'"numpy" in __import__("sys").modules\')')
        is False
    )
