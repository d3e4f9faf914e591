"""The commands fail with one clear sentence, never with a traceback."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
from pathlib import Path

import pytest

from docs_build import __main__ as door
from docs_build import bootstrap, commands, server
from docs_build.bootstrap import ROOT, Trouble


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "docs_build", *arguments], cwd=ROOT, capture_output=True, text=True
    )


def test_busy_port_is_one_sentence() -> None:
    with socket.socket() as taken:
        taken.bind(("", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with pytest.raises(Trouble, match=f"Port {port} is in use.*--port"):
            server.listen(port)


def test_wrong_port_and_command() -> None:
    done = run("serve", "--port", "99999")
    assert done.returncode == 2
    assert "allowed is 1 to 65535" in done.stderr
    assert run("dance").returncode == 2


def test_wrong_part_or_copy_is_one_sentence_with_what_is_allowed() -> None:
    done = run("pdf", "--part", "bees")
    assert done.returncode == 2
    assert "“bees” is no part of the book; allowed is all, start, " in done.stderr
    for name in ("quick", "safety", "biology", "method", "clients", "worked_examples"):
        assert name in done.stderr
        assert door.parser().parse_args(["pdf", "--part", name]).part == name
    assert "trainee" in run("pdf", "--copy", "nobody").stderr


def test_old_python_is_one_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(bootstrap, "OLDEST", (99, 0))
    with pytest.raises(Trouble, match=r"needs Python 99\.0 or newer"):
        bootstrap.ensure()


def test_missing_venv_module_is_one_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "ensurepip", None)
    with pytest.raises(Trouble, match="venv module is missing"):
        bootstrap._make_venv()


def test_no_write_permission_is_one_sentence(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "file").write_text("a file stands where the folder should be made")
    monkeypatch.setattr(bootstrap, "VENV", tmp_path / "file" / ".venv")
    with pytest.raises(Trouble, match=r"Could not make \.venv"):
        bootstrap._make_venv()


def test_broken_network_is_one_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    """pip itself runs, against a port of this machine where nobody answers."""
    for name in [name for name in os.environ if name.startswith("PIP_")]:
        monkeypatch.delenv(name)
    monkeypatch.setenv("PIP_CONFIG_FILE", os.devnull)
    monkeypatch.setenv("PIP_INDEX_URL", "http://127.0.0.1:9/simple")
    monkeypatch.setenv("PIP_RETRIES", "0")
    monkeypatch.setattr(bootstrap, "python", lambda: sys.executable)
    with pytest.raises(Trouble, match="package index cannot be reached"):
        bootstrap._pip(["a-package-that-nobody-has"])


@pytest.mark.parametrize(
    ("log", "words"),
    [
        ("OSError: [Errno 28] No space left on device", "disk is full"),
        ("PermissionError: [Errno 13] Permission denied", "no permission"),
        ("something else\nthe last line", "the last line"),
    ],
)
def test_what_pip_says_becomes_one_sentence(log: str, words: str) -> None:
    assert words in bootstrap._why(log)
    assert "\n" not in bootstrap._why(log)


def test_missing_browser(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(commands.shutil, "which", lambda name: None)
    monkeypatch.setenv("CI", "true")
    with pytest.raises(Trouble, match="need Chromium or Chrome"):
        commands.browser()
    monkeypatch.setenv("CI", "false")
    assert commands.browser() is None
    assert "Going on without them" in capsys.readouterr().out


def test_trouble_ends_with_status_1(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fail(test: bool = False) -> None:
        raise Trouble("One clear sentence.")

    monkeypatch.setattr(bootstrap, "inside", lambda: False)
    monkeypatch.setattr(bootstrap, "ensure", fail)
    assert door.main(["html"]) == 1
    assert capsys.readouterr().err.strip() == "One clear sentence."


def test_second_ensure_does_nothing(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(bootstrap, "VENV", tmp_path)
    monkeypatch.setattr(bootstrap, "python", lambda: sys.executable)
    (tmp_path / "handbook.json").write_text(f'{{"key": "{bootstrap._key()}", "test": true}}')
    monkeypatch.setattr(bootstrap, "_pip", lambda requirements: pytest.fail("installed again"))
    bootstrap.ensure(test=True)


def test_bootstrap_needs_only_the_standard_library() -> None:
    code = (
        "import sys; import docs_build.__main__;"
        "print(sorted({m.split('.')[0] for m in sys.modules} "
        "- set(sys.stdlib_module_names) - {'docs_build', '__main__'}))"
    )
    done = subprocess.run(
        [sys.executable, "-S", "-c", code], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "[]"
