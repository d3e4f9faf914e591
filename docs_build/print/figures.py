"""Formulas and charts as SVG files for the book."""

from __future__ import annotations

import hashlib
import re
import xml.etree.ElementTree as ET
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from docs_build.page.chart import draw

_NUMBERED = re.compile(r"(\\begin|\\end)\{(?:align|gather\*?|equation\*?|eqnarray\*?)\}")

EM = 24
"""Size at which a formula is drawn; its measures are then told in em of the text around it."""

_SIZE = re.compile(
    r'width="(?P<width>[\d.]+)" height="(?P<height>[\d.]+)" '
    r'viewBox="(?P<left>[-\d.]+) (?P<top>[-\d.]+)'
)


@dataclass(frozen=True, slots=True)
class Formula:
    """A drawn formula: its file, and its size in em with the part below the line of the text."""

    file: str
    width: float
    height: float
    depth: float


class Figures:
    """The folder of drawings beside the Typst source; equal drawings share one file."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._formulas: dict[tuple[str, bool], Formula] = {}

    def keep(self, svg: str, kind: str) -> str:
        """Write a drawing under a name made from its content and return the name."""
        name = f"{kind}-{hashlib.sha256(svg.encode()).hexdigest()[:16]}.svg"
        self.folder.mkdir(parents=True, exist_ok=True)
        (self.folder / name).write_text(svg, encoding="utf-8", newline="\n")
        return f"{self.folder.name}/{name}"

    def formula(self, latex: str, inline: bool) -> Formula:
        """Draw a formula; raises ``ValueError`` where the drawing library cannot read it."""
        key = (latex, inline)
        if key not in self._formulas:
            self._formulas[key] = self._draw(latex, inline)
        return self._formulas[key]

    def _draw(self, latex: str, inline: bool) -> Formula:
        import ziamath

        # The drawing library of the charts, once loaded, asks for sans-serif formulas everywhere.
        ziamath.config.math.variant = ""
        try:
            svg = ziamath.Latex(_starred(latex), size=EM, inline=inline).svg()
        except Exception as error:  # the library raises many kinds for what it cannot read
            raise ValueError(f"{type(error).__name__}: {error}") from error
        match = _SIZE.search(svg)
        if match is None:
            raise ValueError("a drawing without a size")
        size = {name: float(number) for name, number in match.groupdict().items()}
        return Formula(
            file=self.keep(svg, "formula"),
            width=size["width"] / EM,
            height=size["height"] / EM,
            depth=max(0.0, (size["top"] + size["height"]) / EM),
        )

    def words(self, file: str) -> str:
        """Return what an SVG file says of itself in its title and description, if anything."""
        if not file.endswith(".svg"):
            return ""
        root = ET.parse(self.folder.parent / file).getroot()
        own = (child for child in root if child.tag.rpartition("}")[2] in {"title", "desc"})
        return " ".join(" ".join("".join(child.itertext()).split()) for child in own).strip()

    def chart(self, chart: dict[str, Any]) -> str:
        """Draw a calculator's chart for paper and return the name of its file."""
        return self.keep(draw(chart, customary=False, medium="print"), "chart")


def _starred(latex: str) -> str:
    """Return the formula without numbers of its own: the book gives them."""
    return _NUMBERED.sub(r"\1{align*}", latex)
