"""From a fresh machine with only Python to ``.venv`` with the pinned dependencies.

Standard library only.
"""

from __future__ import annotations

import hashlib
import json
import os
import re
import shutil
import subprocess
import sys
import sysconfig
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
OUT = ROOT / ".out"
PINS = ROOT / "docs_build" / "pins.txt"
OLDEST = (3, 11)


class Trouble(Exception):
    """Something the person at the keyboard can mend: one clear sentence."""


def say(text: str) -> None:
    """Tell what is being done, at once."""
    print(text, flush=True)


def python() -> str:
    """Return the path of the interpreter inside ``.venv``."""
    scripts = "Scripts/python.exe" if os.name == "nt" else "bin/python"
    return str(VENV / scripts)


def inside() -> bool:
    """Whether this interpreter is the one of ``.venv``."""
    return Path(sys.prefix).resolve() == VENV.resolve()


def wanted(test: bool) -> list[str]:
    """Return the requirements of the book, with those of the tests if asked."""
    import tomllib

    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    extras = project["optional-dependencies"]
    return [*project["dependencies"], *extras["book"], *(extras["test"] if test else [])]


def ensure(test: bool = False) -> None:
    """Make ``.venv`` and install what is missing; do nothing where all is there already."""
    _check_python()
    stamp = VENV / "handbook.json"
    key = _key()
    state = _read(stamp)
    if state.get("key") == key and (state.get("test") or not test) and Path(python()).exists():
        return
    if state.get("key") != key:
        _make_venv()
    requirements = wanted(test)
    say(f"[2/2] Installing {len(requirements)} pinned dependencies and what they need …")
    _pip(requirements)
    _let_venv_find_the_book()
    stamp.write_text(json.dumps({"key": key, "test": test or bool(state.get("test"))}))


def clean() -> int:
    """Remove what was built, and ``.venv``."""
    for folder in (OUT, VENV):
        if folder.exists():
            say(f"Removing {folder.name} …")
            try:
                shutil.rmtree(folder)
            except OSError as error:
                raise Trouble(f"Could not remove {folder.name}: {error.strerror}.") from error
    return 0


def _check_python() -> None:
    if sys.version_info < OLDEST:
        have = ".".join(str(part) for part in sys.version_info[:3])
        raise Trouble(
            f"This handbook needs Python {OLDEST[0]}.{OLDEST[1]} or newer, and this is {have}: "
            "run the command with a newer python3."
        )


def _key() -> str:
    seed = PINS.read_bytes() + (ROOT / "pyproject.toml").read_bytes()
    return hashlib.sha256(seed + sys.version.encode()).hexdigest()[:16]


def _read(stamp: Path) -> dict[str, object]:
    try:
        state = json.loads(stamp.read_text())
    except (OSError, ValueError):
        return {}
    return state if isinstance(state, dict) else {}


def _make_venv() -> None:
    say("[1/2] Making .venv …")
    try:
        import ensurepip  # noqa: F401 - Debian ships Python without it
        import venv
    except ImportError as error:
        raise Trouble(
            "Python's venv module is missing; install it first "
            "(on Debian and Ubuntu: apt-get install python3-venv)."
        ) from error
    try:
        if VENV.exists():
            shutil.rmtree(VENV)
        venv.create(VENV, with_pip=True, symlinks=os.name != "nt")
    except (OSError, subprocess.CalledProcessError) as error:
        reason = getattr(error, "strerror", None) or "its set-up failed"
        raise Trouble(
            f"Could not make .venv in this folder ({reason}): check that you may write here and "
            "that the disk is not full."
        ) from error


def _pip(requirements: list[str]) -> None:
    command = [python(), "-m", "pip", "install", "--disable-pip-version-check", "--no-input"]
    command += ["--prefer-binary", "--progress-bar", "off", "-c", str(PINS), *requirements]
    tail: list[str] = []
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, errors="replace"
    ) as process:
        assert process.stdout is not None
        count = 0
        for line in process.stdout:
            tail = [*tail[-30:], line.rstrip()]
            match = re.match(r"Collecting (\S+)", line)
            if match:
                count += 1
                name = re.split(r"[<>=\[!~(]", match[1])[0]
                say(f"      {count:3d} {name}")
            elif line.startswith("Installing collected packages"):
                say("      unpacking, this takes a minute or two …")
    if process.returncode:
        raise Trouble(_why("\n".join(tail)))


def _why(log: str) -> str:
    low = log.lower()
    signs = ("connection", "timed out", "resolve", "network", "proxy", "ssl", "unreachable")
    if any(sign in low for sign in signs) or "no matching distribution" in low:
        return (
            "The dependencies could not be fetched: the package index cannot be reached from here. "
            "Connect to the internet (or set up your proxy for pip) and run the command again."
        )
    if "no space left" in low:
        return "The dependencies could not be installed: the disk is full."
    if "permission denied" in low:
        return "The dependencies could not be installed: no permission to write into .venv."
    last = next((line for line in reversed(log.splitlines()) if line.strip()), "no output")
    return f"The dependencies could not be installed; pip said: {last}"


def _let_venv_find_the_book() -> None:
    paths = sysconfig.get_paths(
        "nt_venv" if os.name == "nt" else "posix_venv",
        vars={"base": str(VENV), "platbase": str(VENV), "installed_base": str(VENV)},
    )
    (Path(paths["purelib"]) / "handbook.pth").write_text(f"{ROOT}\n", encoding="utf-8")
