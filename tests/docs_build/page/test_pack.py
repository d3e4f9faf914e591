"""What is shipped to the phone: pinned, small, the same from the same."""

from __future__ import annotations

import io
import json
import zipfile
from pathlib import Path
from typing import Any

import pytest

from docs_build.bootstrap import Trouble
from docs_build.page import pack

HEAVY = ("testsuite", "tests/", "__pycache__", "numpy/core", "default_en", ".pyi")


def test_the_wheel_is_slim_and_whole() -> None:
    made = pack.wheel()
    assert made.name.endswith("-py3-none-any.whl")
    assert made.stat().st_size < 1_000_000
    with zipfile.ZipFile(made) as packed:
        names = packed.namelist()
    assert "calc/units.txt" in names
    assert any(name.startswith("calc/tables/sources/") for name in names)
    assert all(name.startswith(("calc/", "calc-")) for name in names)


def test_the_packed_book_is_deterministic_and_holds_only_what_runs() -> None:
    one, other = pack._book(), pack._book()
    assert one == other
    assert len(one) < 900_000
    with zipfile.ZipFile(io.BytesIO(one)) as packed:
        names = packed.namelist()
    assert names == sorted(names)
    assert not [name for name in names if any(part in name for part in HEAVY)]
    for needed in ("calc/catalogue.py", "docs_build/page/door.py", "pint/__init__.py"):
        assert needed in names


def test_lean_source_computes_the_same() -> None:
    source = b'''"""Doc."""
class A:
    """Only a doc."""
def f(x):
    "Doc."
    # why
    return f"{x:.1f} it's"
'''
    made = pack.lean(source)
    assert b"Doc" not in made
    assert b"why" not in made
    space: dict[str, Any] = {}
    exec(made, space)
    assert space["f"](2) == "2.0 it's"
    assert space["A"].__doc__ is None


def test_first_visit_with_runtime_is_below_its_budget(tmp_path: Path) -> None:
    manifest = pack.runtime(tmp_path)
    assert sum(each["gzip"] for each in manifest["files"]) < 7_300_000
    for each in manifest["files"]:
        assert (tmp_path / "_runtime" / each["path"]).stat().st_size == each["bytes"]
    again = pack.runtime(tmp_path)
    assert again == manifest
    assert json.loads((tmp_path / "_runtime" / "runtime.json").read_text("utf-8")) == manifest


def test_another_package_than_the_pinned_one_is_refused(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    pin = pack.pins()["runtime"]
    archive = tmp_path / f"{pin['package']}-{pin['version']}.tgz"

    def fetch(*arguments: Any, **named: Any) -> Any:
        archive.write_bytes(b"something else")
        return type("Done", (), {"returncode": 0, "stdout": "", "stderr": ""})

    monkeypatch.setattr(pack, "CACHE", tmp_path)
    monkeypatch.setattr(pack.subprocess, "run", fetch)
    with pytest.raises(Trouble, match="not the pinned"):
        pack._core()
    assert not archive.exists()


def test_no_network_is_one_sentence(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    def fetch(*arguments: Any, **named: Any) -> Any:
        return type("Done", (), {"returncode": 1, "stdout": "", "stderr": "npm error network"})

    monkeypatch.setattr(pack, "CACHE", tmp_path)
    monkeypatch.setattr(pack.subprocess, "run", fetch)
    with pytest.raises(Trouble, match="first build needs the network"):
        pack._core()


def test_offline_list_changes_with_any_file(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text("one", "utf-8")
    first = pack.offline(tmp_path, "2026.1")
    assert pack.offline(tmp_path, "2026.1")["build"] == first["build"]
    (tmp_path / "index.html").write_text("two", "utf-8")
    assert pack.offline(tmp_path, "2026.1")["build"] != first["build"]
    manifest = json.loads((tmp_path / "manifest.webmanifest").read_text("utf-8"))
    assert manifest["start_url"].startswith("./")
    assert (tmp_path / "icon-192.png").read_bytes().startswith(b"\x89PNG")


@pytest.mark.parametrize(
    "script",
    sorted(
        [*(pack.HERE / "static").glob("*.mjs"), pack.HERE / "sw.js"], key=lambda path: path.name
    ),
    ids=lambda path: path.name,
)
def test_every_script_can_be_read(script: Path) -> None:
    import subprocess

    node = pack._npm()[0]
    done = subprocess.run([node, "--check", str(script)], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
