"""``docs_build new calculator NAME --part P``: the room, its page, its checks and its entries.

What it writes runs at once: a sum of two values, to be replaced. What a person must still say
stands in the list that it prints, and a test names whatever is left out.
"""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path

import calc
from docs_build.bootstrap import ROOT, Trouble

PARTS = ("biology", "safety", "method", "clients")
NAME = re.compile(r"[a-z][a-z0-9]*(?:_[a-z0-9]+)*")

DECLARATION = '''"""{title}: what it answers, in one sentence."""

from __future__ import annotations

from calc.declare import Calculator
from calc.{part}.{name}.core import core
from calc.{part}.{name}.inputs import Inputs
from calc.{part}.{name}.results import RESULTS

{name} = Calculator(
    name="{name}",
    title="{title}",
    part="{part}",
    purpose="What it answers, and what for.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=("arithmetic",),
)
'''

INPUTS = '''"""What "{title}" asks for."""

from __future__ import annotations

from calc.declare import Given, number


class Inputs(Given):
    """Asked values first, in the order in which they matter; five at most."""

    first: float = number(
        "First", "What it is.", "m", low=0, high=100, plausible=(1, 10), example=2
    )
    second: float = number(
        "Second", "What it is.", "m", low=0, high=100, plausible=(1, 10), example=3
    )
'''

RESULTS = '''"""What "{title}" answers, the main answer first."""

from __future__ import annotations

from calc.declare import Out

RESULTS = (
    Out(
        name="total",
        label="Total",
        meaning="What it is.",
        unit="m",
        customary="ft",
        digits=1,
        main=True,
    ),
)
'''

CORE = '''"""The core of "{title}": from what was asked to what is answered."""

from __future__ import annotations

from calc.declare import Answer
from calc.{part}.{name}.inputs import Inputs


def core(x: Inputs) -> Answer:
    """Add the two; see the declaration for units."""
    return Answer(values={{"total": total(x.first, x.second)}})


def total(first: float, second: float) -> float:
    """Return the sum of two lengths in m. Source: arithmetic."""
    return first + second
'''

PAGE = """---
edition: "{edition}"
reviewed: {today}
status: draft
index:
  - {lower}
---
# {title}

What to do first.

:::{{calculator}} {name}
:::
"""

CHECK = """
[[check]]
id = "{name}_example"
calculator = "{name}"
inputs = {{first = 2, second = 3}}
expect = {{total = 5.0}}
tolerance = {{total = 0.05}}
source = "arithmetic"
where = "the table or page that prints it"
printed = "5.0"
"""

TEST = '''"""{title}: edges, directions, and what it must never say."""

from __future__ import annotations

from calc.{part}.{name} import {name}


def test_more_of_either_gives_more() -> None:
    less, more = ({name}(first=1, second=second).values["total"] for second in (2, 3))
    assert less < more
'''


def calculator(name: str, part: str, title: str = "") -> list[str]:
    """Write all of a new calculator and return what a person must still do, a line each.

    Raises
    ------
    Trouble
        for a name or part that cannot be taken, or a calculator that is there already
    """
    title = title or name.replace("_", " ").capitalize()
    if not NAME.fullmatch(name):
        raise Trouble(f"“{name}” is no name; allowed are lower-case words joined by underscores.")
    if part not in PARTS:
        raise Trouble(f"“{part}” is no part of the book; allowed is {', '.join(PARTS)}.")
    room, page = ROOT / "calc" / part / name, ROOT / "handbook" / part / f"{name}.md"
    for path in (room, page):
        if path.exists():
            raise Trouble(f"{path.relative_to(ROOT)} is there already.")
    said = {
        "name": name,
        "part": part,
        "title": title,
        "lower": title[0].lower() + title[1:],
        "today": date.today().isoformat(),
        "edition": calc.EDITION,
    }
    room.mkdir()
    modules = {"__init__": DECLARATION, "inputs": INPUTS, "results": RESULTS, "core": CORE}
    for module, text in modules.items():
        (room / f"{module}.py").write_text(text.format(**said), encoding="utf-8")
    page.write_text(PAGE.format(**said), encoding="utf-8")
    _after(ROOT / "tests" / "published" / f"{name}.toml", f"# {title}\n{CHECK.format(**said)}")
    (ROOT / "tests" / "calc" / part / f"test_{name}.py").write_text(
        TEST.format(**said), encoding="utf-8"
    )
    _listed(name, part, said["lower"])
    return [
        f"calc/{part}/{name}/: put the science in; {name}/core.py holds a sum for now",
        "calc/catalogue.py: move it to the moment that it serves, in the order of the work",
        f"handbook/{part}/index.md and handbook/training/goals.md: say what it is for",
        f"tests/published/{name}.toml: a value printed outside this project, with its source",
        f"python3 -m docs_build test --calculator {name}",
    ]


def _listed(name: str, part: str, title: str) -> None:
    """Give it its place in every list that is written by hand."""
    catalogue = ROOT / "calc" / "catalogue.py"
    text = catalogue.read_text(encoding="utf-8")
    imports = re.findall(r"^from calc\..*\n", text, re.MULTILINE)
    entry = f"from calc.{part}.{name} import {name}\n"
    text = text.replace("".join(imports), "".join(sorted([*imports, entry])))
    text = text.replace(
        '        "Afterwards": (\n', f'        "Afterwards": (\n            {name},\n'
    )
    catalogue.write_text(text, encoding="utf-8")
    index = ROOT / "handbook" / "index.md"
    pages = index.read_text(encoding="utf-8")
    last = re.findall(rf"^{part}/\w+$", pages, re.MULTILINE)[-1]
    index.write_text(pages.replace(f"{last}\n", f"{last}\n{part}/{name}\n", 1), encoding="utf-8")
    _before_blank(ROOT / "handbook" / part / "index.md", f"- {{doc}}`{name}`: {title}.")
    goals = ROOT / "handbook" / "training" / "goals.md"
    lines = goals.read_text(encoding="utf-8").split("\n")
    mine = [place for place, line in enumerate(lines) if f"{{doc}}`../{part}/" in line]
    lines.insert(mine[-1] + 1, f"- {{doc}}`../{part}/{name}`: say what it is for.")
    goals.write_text("\n".join(lines), encoding="utf-8")


def _before_blank(path: Path, line: str) -> None:
    """Put a line behind the last item of the first list of a page."""
    lines = path.read_text(encoding="utf-8").split("\n")
    first = next(place for place, each in enumerate(lines) if each.startswith("- "))
    end = next(
        place for place in range(first, len(lines)) if not lines[place].startswith(("- ", "  "))
    )
    lines.insert(end, line)
    path.write_text("\n".join(lines), encoding="utf-8")


def _after(path: Path, text: str) -> None:
    old = path.read_text(encoding="utf-8") if path.exists() else ""
    path.write_text(old + text, encoding="utf-8")
