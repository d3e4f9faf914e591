"""``python -m calc``: the door for scripts, from outside; and what importing costs."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest

from calc.catalogue import CALCULATORS
from docs_build.bootstrap import ROOT


def door(*arguments: str, given: str = "") -> tuple[int, object, str]:
    done = subprocess.run(
        [sys.executable, "-m", "calc", *arguments],
        input=given, capture_output=True, text=True, cwd=ROOT, encoding="utf-8",
    )  # fmt: skip
    return done.returncode, json.loads(done.stdout), done.stderr


def test_list() -> None:
    assert door("list")[:2] == (0, list(CALCULATORS))
    assert {"how_many_left", "flow_and_reach", "heat_in_suit"} <= set(CALCULATORS)


@pytest.mark.parametrize("name", list(CALCULATORS))
def test_describe_and_run(name: str) -> None:
    status, told, _ = door("describe", name)
    assert status == 0
    assert {"inputs", "results", "units", "limits", "sources"} <= set(told)  # type: ignore[call-overload]
    status, result, _ = door("run", name, "--example")
    assert status == 0
    assert result["calculator"] == name  # type: ignore[index]
    assert result["sources"]  # type: ignore[index]


@pytest.mark.parametrize(
    ("arguments", "given", "words"),
    [
        (("run", "how_many_left"), '{"catches": "x"}', "catches"),
        (("run", "how_many_left"), "[1]", "JSON object"),
        (("run", "how_many_left"), "{", "no JSON"),
        (("run", "how_many_left"), '{"catches": [NaN, 1]}', "finite"),
        (("run", "nothing"), "{}", "no calculator"),
        (("describe", "nothing"), "", "no calculator"),
        (("dance",), "", "usage"),
        ((), "", "usage"),
    ],
)
def test_bad_input_exits_2_with_json(arguments: tuple[str, ...], given: str, words: str) -> None:
    status, told, spoken = door(*arguments, given=given)
    assert status == 2
    assert set(told) == {"error"}  # type: ignore[call-overload]
    assert words in json.dumps(told)
    assert "Traceback" not in spoken


def test_a_reader_that_stops_early_sees_no_traceback() -> None:
    with subprocess.Popen(
        [sys.executable, "-m", "calc", "describe", "how_many_left"],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        cwd=ROOT,
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.close()
        assert b"Traceback" not in process.stderr.read()


def test_calc_imports_neither_numpy_nor_anything_above_it() -> None:
    code = (
        "import sys; import calc.catalogue as c;"
        "[x.run(x.example()) for x in c.CALCULATORS.values()];"
        "bad = {'numpy', 'scipy', 'sphinx', 'docutils', 'docs_build', 'handbook', 'ziaplot'};"
        "print(sorted(bad & {m.split('.')[0] for m in sys.modules}))"
    )
    done = subprocess.run(
        [sys.executable, "-S", "-c", _with_path(code)],
        capture_output=True, text=True, cwd=ROOT,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == "[]"


def _with_path(code: str) -> str:
    """Give a bare interpreter pint's folder through a finder that knows no numpy."""
    return (
        "import sys\n"
        f"sys.path[:0] = {[str(ROOT), *[p for p in sys.path if 'site-packages' in p]]!r}\n"
        "class NoNumpy:\n"
        "    def find_spec(self, name, path=None, target=None):\n"
        "        if name.split('.')[0] in {'numpy', 'scipy'}:\n"
        "            raise ImportError(name)\n"
        "sys.meta_path.insert(0, NoNumpy())\n"
        f"exec({code!r})\n"
    )
