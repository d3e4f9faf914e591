"""A figure as data."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from calc.declare.results import finite


@dataclass(frozen=True, kw_only=True, slots=True)
class Series:
    """One line, row of points or band of a chart, in the units of its axes.

    A ``band`` lies between ``y`` and ``y2``. ``source`` stands in the figure's caption.
    """

    label: str
    x: tuple[float, ...]
    y: tuple[float, ...]
    style: Literal["line", "dashed", "points", "band"] = "line"
    y2: tuple[float, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Axis:
    """Label and units of one axis; ``low`` and ``high`` fix its ends where given."""

    label: str
    unit: str = ""
    customary: str = ""
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Chart:
    """A figure as data: it is drawn by whoever shows the result."""

    name: str
    title: str
    alt: str
    x: Axis
    y: Axis
    series: tuple[Series, ...]

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return {
            "name": self.name,
            "title": self.title,
            "alt": self.alt,
            "x": _axis(self.x),
            "y": _axis(self.y),
            "series": [
                {
                    "label": each.label,
                    "style": each.style,
                    "x": [finite(self.name, value) for value in each.x],
                    "y": [finite(self.name, value) for value in each.y],
                    "y2": [finite(self.name, value) for value in each.y2],
                }
                for each in self.series
            ],
        }


def _axis(axis: Axis) -> dict[str, Any]:
    return {
        "label": axis.label,
        "unit": axis.unit,
        "customary": axis.customary or axis.unit,
        "low": axis.low,
        "high": axis.high,
    }
