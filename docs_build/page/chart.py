"""Draws the figure of a result as SVG: one drawing for the page, the phone and the paper."""

from __future__ import annotations

import re
import textwrap
import warnings
import xml.etree.ElementTree as ET
import zlib
from collections.abc import Callable, Mapping
from dataclasses import replace
from functools import cache
from typing import Any, Literal

from calc.units import convert, label

with warnings.catch_warnings():
    # On the desk ziaplot loads ziamath, which opens its font in a deprecated way.
    warnings.simplefilter("ignore", DeprecationWarning)
    import ziaplot as zp
    from ziaplot.style.style import AppliedStyle

# Without ziafont, as in the page, ziaplot writes <text>; with it, it would write outlines.
zp.config.text = "text"
zp.config.precision = 2

WIDTH = 360
PLOT_HEIGHT = 240
FONT_SIZE = 15
LINE = 21
Medium = Literal["page", "print"]

LINES = ("-", "13 5 3 5", "3 4", "9 3 3 3 3 3")
DASHED = ("7 5", "2 5", "13 4", "5 2")
MARKS = ("round", "square", "triangle", "triangled")
COLOURS: Mapping[Medium, tuple[str, ...]] = {
    "page": ("var(--series-1)", "var(--series-2)", "var(--series-3)", "var(--series-4)"),
    "print": ("#000000", "#4d4d4d", "#000000", "#7a7a7a"),
}
INK: Mapping[Medium, tuple[str, str, str]] = {
    "page": ("currentColor", "var(--line) 40%", "inherit"),
    "print": ("#000000", "#c8c8c8", "sans-serif"),
}


def draw(chart: Mapping[str, Any], customary: bool, medium: Medium = "page") -> str:
    """Return the figure as an ``<svg>`` of 360 units width that scales with its frame.

    Parameters
    ----------
    chart : a chart as ``Result.as_dict()`` holds it
    customary : whether the axes are in customary units
    medium : ``page`` takes its colours from the style sheet, ``print`` is black, grey and dashes
    """
    ink, _, font = INK[medium]
    key = f"{chart['name']}-{zlib.crc32(repr((chart, customary, medium)).encode()):08x}"
    root = ET.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "class": "chart",
            "role": "img",
            "aria-labelledby": f"{key}-title {key}-desc",
            "font-family": font,
            "font-size": str(FONT_SIZE),
            "fill": ink,
        },
    )
    ET.SubElement(root, "title", {"id": f"{key}-title"}).text = chart["title"]
    ET.SubElement(root, "desc", {"id": f"{key}-desc"}).text = chart["alt"]
    below = _text_block(root, _axis_label(chart["y"], customary), 0, 0, "start")
    _plot(root, chart, customary, medium, below + 4, key)
    below += 4 + PLOT_HEIGHT
    below = _text_block(root, _axis_label(chart["x"], customary), WIDTH, below, "end")
    below = _legend(root, chart, medium, below + 6)
    root.set("viewBox", f"0 0 {WIDTH} {below + 4:g}")
    if medium == "print":
        root.set("width", str(WIDTH))
        root.set("height", f"{below + 4:g}")
    return ET.tostring(root, encoding="unicode")


def _axis_label(axis: Mapping[str, Any], customary: bool) -> str:
    unit = label(axis["customary"] if customary else axis["unit"])
    return f"{axis['label']} ({unit})" if unit else str(axis["label"])


def _text_block(root: ET.Element, text: str, x: float, top: float, anchor: str) -> float:
    """Write text in lines that fit the width; return where it ends."""
    for line in textwrap.wrap(text, 46):
        top += LINE
        where = {"x": f"{x:g}", "y": f"{top - 5:g}", "text-anchor": anchor}
        ET.SubElement(root, "text", where).text = line
    return top


def _scale(axis: Mapping[str, Any], customary: bool) -> Callable[[float], float]:
    """Return the change of unit as a straight line: pint once an axis, not once a point."""
    unit, to = axis["unit"], axis["customary"]
    if not customary or not to or unit == to:
        return lambda value: value
    shift = convert(0.0, unit, to)
    slope = (convert(100.0, unit, to) - shift) / 100.0
    return lambda value: shift + slope * value


def _plot(
    root: ET.Element,
    chart: Mapping[str, Any],
    customary: bool,
    medium: Medium,
    top: float,
    key: str,
) -> None:
    """Draw axes and series with ziaplot and move its elements into ``root``."""
    graph = _graph(medium)
    to_x, to_y = _scale(chart["x"], customary), _scale(chart["y"], customary)
    for drawn in _components(chart, to_x, to_y, medium):
        graph.add(drawn)
    _ends(graph, chart, to_x, to_y)
    if chart["x"]["label"] == chart["y"]["label"] and chart["x"]["unit"] == chart["y"]["unit"]:
        graph.equal_aspect()  # a plan, to scale
    text = ET.tostring(graph.svgxml(), encoding="unicode")
    # Several charts stand in one page, so the names of clips and marks must differ.
    text = re.sub(r'(id="|url\(#)(zclip|dot)', rf"\g<1>{key}-\g<2>", text)
    text = text.replace(' L "', '"')  # the path of a single point
    group = ET.SubElement(root, "g", {"transform": f"translate(0 {top:g})"})
    for child in ET.fromstring(text):
        if child.get("width") != "100%":  # ziaplot's own, empty background
            group.append(_plain(child))


def _plain(element: ET.Element) -> ET.Element:
    for each in element.iter():
        each.tag = each.tag.rpartition("}")[2]
    return element


class _Graph(zp.Graph):
    """A graph whose styles are set here: ziaplot's own look-up takes most of the drawing time."""

    def __init__(self, medium: Medium) -> None:
        super().__init__()
        self._medium = medium

    def _build_style(self, name: str | None = None) -> AppliedStyle:
        return _styles(self._medium).get(name or "Graph", _BASE)


@cache
def _styles(medium: Medium) -> Mapping[str, AppliedStyle]:
    ink, line, font = INK[medium]
    tick = replace(
        _BASE, color=ink, font=font, font_size=FONT_SIZE, height=5, margin=3, stroke_width=1.5
    )
    grid = replace(_BASE, color=line, stroke_width=1)
    return {
        "Canvas": _BASE,
        "Graph": replace(_BASE, edge_color=ink, edge_width=1.5),
        "Graph.TickX": tick,
        "Graph.TickY": tick,
        "Graph.GridX": grid,
        "Graph.GridY": grid,
        # ziaplot keeps this much free at the right, where half of the last number stands.
        "Graph.Legend": replace(_BASE, edge_width=16),
    }


_BASE = AppliedStyle(
    color="none",
    edge_color="none",
    fill_color="none",
    stroke="-",
    stroke_width=1,
    shape="none",
    radius=5,
    edge_width=1,
    font="inherit",
    font_size=FONT_SIZE,
    num_format="g",
    height=0,
    width=0,
    margin=0,
    pad=0,
    colorcycle=["black"],
)


def _styled(drawn: Any, **style: Any) -> Any:
    applied = replace(_BASE, **style)
    drawn._build_style = lambda name=None: applied
    return drawn


def _graph(medium: Medium) -> _Graph:
    graph = _Graph(medium)
    graph._display = False
    graph.size(WIDTH, PLOT_HEIGHT)
    graph.legend("none")
    graph.max_xticks, graph.max_yticks = 7, 7
    return graph


def _ends(
    graph: Any,
    chart: Mapping[str, Any],
    to_x: Callable[[float], float],
    to_y: Callable[[float], float],
) -> None:
    """Fix the ends of the axes that the chart fixes."""
    data = graph.datarange()
    ends = []
    for axis, to, low, high in (
        (chart["x"], to_x, data.xmin, data.xmax),
        (chart["y"], to_y, data.ymin, data.ymax),
    ):
        low = low if axis["low"] is None else to(axis["low"])
        high = high if axis["high"] is None else to(axis["high"])
        ends.append((low, high if high > low else low + 1.0))
    graph.xrange(*ends[0])
    graph.yrange(*ends[1])


def _components(
    chart: Mapping[str, Any],
    to_x: Callable[[float], float],
    to_y: Callable[[float], float],
    medium: Medium,
) -> list[Any]:
    """Return the ziaplot elements of all series, bands first so that lines lie on top."""
    made = []
    for series, look in sorted(_looks(chart, medium), key=lambda pair: pair[0]["style"] != "band"):
        x = [to_x(value) for value in series["x"]]
        y = [to_y(value) for value in series["y"]]
        if not x:
            continue
        if series["style"] == "band":
            drawn = zp.LineFill(x, [to_y(value) for value in series["y2"]], y)
            drawn = _styled(drawn, color=look["colour"], fill_color=look["fill"])
        elif series["style"] == "points" or len(x) == 1:
            colour = look["colour"]
            drawn = _styled(zp.Xy(x, y), color=colour, edge_color=colour, shape=look["mark"])
        else:
            drawn = _styled(
                zp.PolyLine(x, y), color=look["colour"], stroke=look["dash"], stroke_width=2.75
            )
        made.append(drawn)
    return made


def _looks(chart: Mapping[str, Any], medium: Medium) -> list[tuple[Any, dict[str, str]]]:
    """Pair each series with its colour, dash and mark, told apart without colour, too."""
    seen = {"line": 0, "dashed": 0, "points": 0, "band": 0}
    looks = []
    for number, series in enumerate(chart["series"]):
        style = series["style"]
        turn = seen[style] % 4
        seen[style] += 1
        colour = COLOURS[medium][number % 4]
        looks.append(
            (
                series,
                {
                    "colour": colour,
                    "fill": f"{colour} 20%",
                    "dash": (DASHED if style == "dashed" else LINES)[turn],
                    "mark": MARKS[turn],
                },
            )
        )
    return looks


def _legend(root: ET.Element, chart: Mapping[str, Any], medium: Medium, top: float) -> float:
    """Write the series' names below the plot, each with a sample of its line."""
    for series, look in _looks(chart, medium):
        if not series["label"]:
            continue
        _sample(root, series["style"], look, top + LINE / 2)
        for line in textwrap.wrap(series["label"], 40):
            top += LINE
            ET.SubElement(root, "text", {"x": "44", "y": f"{top - 5:g}"}).text = line
    return top


def _sample(root: ET.Element, style: str, look: Mapping[str, str], middle: float) -> None:
    colour = look["colour"]
    if style == "band":
        box = {"x": "2", "y": f"{middle - 7:g}", "width": "32", "height": "14"}
        box |= {"fill": colour, "fill-opacity": "0.2", "stroke": colour}
        ET.SubElement(root, "rect", box)
    elif style == "points":
        ET.SubElement(root, "path", {"d": _mark(look["mark"], 18, middle), "fill": colour})
    else:
        line = {"d": f"M 0,{middle:g} L 36,{middle:g}", "stroke": colour, "stroke-width": "2.75"}
        if look["dash"] != "-":
            line["stroke-dasharray"] = look["dash"]
        ET.SubElement(root, "path", line)


def _mark(shape: str, x: float, y: float) -> str:
    if shape == "round":
        return f"M {x - 5:g},{y:g} a 5,5 0 1 0 10,0 a 5,5 0 1 0 -10,0 Z"
    if shape == "square":
        return f"M {x - 5:g},{y - 5:g} h 10 v 10 h -10 Z"
    up = 5 if shape == "triangle" else -5
    return f"M {x - 5:g},{y + up:g} h 10 L {x:g},{y - up:g} Z"
