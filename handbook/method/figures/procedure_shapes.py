"""Shapes shared by the drawings of the procedure pages: black, white, grey and hatching only."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

WIDTH = 360
SIZE = 14
"""Size of words in the drawing; at a width of 300 on a phone they are still over 11 px."""

DEFS = (
    '<pattern id="wood" width="8" height="8" patternUnits="userSpaceOnUse" '
    'patternTransform="rotate(45)"><rect width="8" height="8" fill="#ddd"/>'
    '<path d="M 0 0 V 8" stroke="#777" stroke-width="2"/></pattern>'
    '<pattern id="soil" width="12" height="12" patternUnits="userSpaceOnUse">'
    '<rect width="12" height="12" fill="#e4e4e4"/><circle cx="3" cy="3" r="1.4" fill="#666"/>'
    '<circle cx="9" cy="8" r="1.4" fill="#666"/></pattern>'
    '<pattern id="mesh" width="5" height="5" patternUnits="userSpaceOnUse">'
    '<rect width="5" height="5" fill="#fff"/>'
    '<path d="M 0 0 H 5 M 0 0 V 5" stroke="#000" stroke-width="1"/></pattern>'
    '<marker id="tip" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="7" markerHeight="7" '
    'orient="auto"><path d="M 0 0 L 8 4 L 0 8 Z" fill="#000"/></marker>'
    '<g id="wasp"><ellipse cx="-7" cy="0" rx="8" ry="4" fill="#000"/>'
    '<path d="M -9 -4 v 8 M -5 -4 v 8" stroke="#fff" stroke-width="1.5"/>'
    '<circle cx="4" cy="0" r="3.6" fill="#000"/><circle cx="10" cy="0" r="3" fill="#000"/>'
    '<path d="M 12 -2 l 5 -4 M 12 2 l 5 4" stroke="#000" fill="none"/></g>'
)


def figure(height: int, title: str, description: str, parts: Iterable[str]) -> str:
    """Return a whole drawing with its words for those who do not see it."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {height}" role="img" '
        f'font-family="sans-serif" font-size="{SIZE}">\n'
        f"  <title>{title}</title>\n  <desc>{description}</desc>\n  <defs>{DEFS}</defs>\n"
        f'  <rect width="{WIDTH}" height="{height}" fill="#fff"/>\n  '
        + "\n  ".join(parts)
        + "\n</svg>\n"
    )


def words(
    x: float, y: float, *lines: str, anchor: str = "start", bold: bool = False, size: int = SIZE
) -> str:
    """Return lines of text, the first on the height y."""
    weight = ' font-weight="bold"' if bold else ""
    made = [
        f'<text x="{x:g}" y="{y + k * (size + 3):g}" text-anchor="{anchor}" '
        f'font-size="{size}"{weight} paint-order="stroke" stroke="#fff" stroke-width="4" '
        f'stroke-linejoin="round">{line}</text>'
        for k, line in enumerate(lines)
    ]
    return "".join(made)


def line(
    points: Sequence[tuple[float, float]],
    width: float = 1.6,
    dash: str = "",
    tip: bool = False,
    stroke: str = "#000",
) -> str:
    """Return an open line, with an arrow at its end if wanted."""
    path = " L ".join(f"{x:g} {y:g}" for x, y in points)
    more = (f' stroke-dasharray="{dash}"' if dash else "") + (
        ' marker-end="url(#tip)"' if tip else ""
    )
    return f'<path d="M {path}" fill="none" stroke="{stroke}" stroke-width="{width:g}"{more}/>'


def curve(path: str, width: float = 1.6, dash: str = "", tip: bool = False) -> str:
    """Return a curved line given as path data."""
    more = (f' stroke-dasharray="{dash}"' if dash else "") + (
        ' marker-end="url(#tip)"' if tip else ""
    )
    return f'<path d="{path}" fill="none" stroke="#000" stroke-width="{width:g}"{more}/>'


def area(points: Sequence[tuple[float, float]], fill: str, width: float = 1.6) -> str:
    """Return a closed shape with a black edge."""
    path = " L ".join(f"{x:g} {y:g}" for x, y in points)
    return f'<path d="M {path} Z" fill="{fill}" stroke="#000" stroke-width="{width:g}"/>'


def box(x: float, y: float, w: float, h: float, fill: str = "none", width: float = 1.6) -> str:
    """Return a rectangle."""
    return (
        f'<rect x="{x:g}" y="{y:g}" width="{w:g}" height="{h:g}" fill="{fill}" stroke="#000" '
        f'stroke-width="{width:g}"/>'
    )


def oval(x: float, y: float, rx: float, ry: float, fill: str = "none", width: float = 1.6) -> str:
    """Return an ellipse round (x, y)."""
    return (
        f'<ellipse cx="{x:g}" cy="{y:g}" rx="{rx:g}" ry="{ry:g}" fill="{fill}" stroke="#000" '
        f'stroke-width="{width:g}"/>'
    )


def tube(x: float, y: float, angle: float, length: float, width: float = 26) -> str:
    """Return a hose whose nozzle is at (x, y) and looks in the direction of the angle (degrees)."""
    half = width / 2
    return (
        f'<g transform="translate({x:g} {y:g}) rotate({angle:g})">'
        f'<rect x="{-length:g}" y="{-half:g}" width="{length:g}" height="{width:g}" fill="#bbb"/>'
        f'<path d="M 0 {-half:g} H {-length:g} M 0 {half:g} H {-length:g}" stroke="#000" '
        'stroke-width="3.5"/></g>'
    )


def wasp(x: float, y: float, angle: float = 0, flying: bool = False, scale: float = 1) -> str:
    """Return an animal; its head looks in the direction of the angle."""
    wings = (
        '<path d="M 2 -3 q -8 -16 -16 -13 q 2 9 14 13 M 2 3 q -4 15 -13 15 q -1 -9 11 -14" '
        'fill="#fff" stroke="#000"/>'
        if flying
        else '<path d="M -9 -4 l -3 -4 M -2 -4 l -2 -5 M 5 -4 l 2 -5" stroke="#000" '
        'stroke-width="1.6"/>'
    )
    return (
        f'<g transform="translate({x:g} {y:g}) rotate({angle:g}) scale({scale:g})">{wings}'
        '<use href="#wasp"/></g>'
    )


def tier(x: float, y: float, w: float, h: float = 14) -> str:
    """Return one tier seen from the side, cells down, its roof at the height y."""
    count = max(3, round(w / 9))
    walls = " ".join(f"M {x + w * k / count:.1f} {y + 3:g} V {y + h:g}" for k in range(count + 1))
    return (
        f'<rect x="{x:g}" y="{y:g}" width="{w:g}" height="{h:g}" fill="#fff"/>'
        f'<path d="{walls}" stroke="#000" stroke-width="1.2"/>'
        f'<path d="M {x - 2:g} {y + 1.5:g} H {x + w + 2:g}" stroke="#000" stroke-width="3.5"/>'
    )


def pillars(y: float, depth: float, *places: float, width: float = 5) -> str:
    """Return pillars from the height y down."""
    path = " ".join(f"M {x:g} {y:g} v {depth:g}" for x in places)
    return f'<path d="{path}" stroke="#000" stroke-width="{width:g}"/>'


def nest(
    x: float, y: float, widths: Sequence[float], pitch: float = 22, cover: bool = False
) -> str:
    """Return a nest hanging from (x, y): tiers of these widths with pillars between them."""
    made = []
    if cover:
        tall = pitch * len(widths) + 12
        made.append(
            f'<ellipse cx="{x:g}" cy="{y + 4 + tall / 2:g}" rx="{max(widths) / 2 + 12:g}" '
            f'ry="{tall / 2 + 6:g}" fill="#eee" stroke="#000" stroke-width="2.5"/>'
        )
    for k, w in enumerate(widths):
        top = y + 8 + k * pitch
        reach = 0 if k == 0 else min(widths[k - 1], w) / 4
        spots = (x,) if k == 0 else (x - reach, x + reach)
        drop = 8 if k == 0 else pitch - 14
        made.append(pillars(top - drop, drop + 1, *spots))
        made.append(tier(x - w / 2, top, w))
    return "".join(made)


def person(x: float, y: float, size: float = 90, arm: tuple[float, float] | None = None) -> str:
    """Return someone in a suit and veil, feet on (x, y), maybe with an arm to a point."""
    head = size * 0.13
    hip, shoulder = y - size * 0.45, y - size * 0.74
    made = (
        f'<path d="M {x - size * 0.11:g} {y:g} L {x - size * 0.06:g} {hip:g} '
        f"L {x - size * 0.14:g} {shoulder:g} L {x + size * 0.14:g} {shoulder:g} "
        f'L {x + size * 0.06:g} {hip:g} L {x + size * 0.11:g} {y:g}" fill="#fff" stroke="#000" '
        'stroke-width="2.5" stroke-linejoin="round"/>'
        f'<circle cx="{x:g}" cy="{shoulder - head:g}" r="{head:g}" fill="url(#mesh)" '
        'stroke="#000" stroke-width="2"/>'
        f'<path d="M {x - head * 1.5:g} {shoulder - head * 1.6:g} H {x + head * 1.5:g}" '
        'stroke="#000" stroke-width="3"/>'
    )
    if arm:
        side = 1 if arm[0] > x else -1
        made += line([(x + side * size * 0.12, shoulder + 4), arm], 4.5)
    return made


def sign(x: float, y: float, right: bool) -> str:
    """Return a tick or a cross in a ring."""
    mark = "M -5 0 L -1 5 L 6 -6" if right else "M -5 -5 L 5 5 M 5 -5 L -5 5"
    return (
        f'<g transform="translate({x:g} {y:g})"><circle r="11" fill="#fff" stroke="#000" '
        f'stroke-width="2"/><path d="{mark}" fill="none" stroke="#000" stroke-width="3"/></g>'
    )


def badge(x: float, y: float, text: str) -> str:
    """Return a letter or number in a black disc."""
    return (
        f'<circle cx="{x:g}" cy="{y:g}" r="11" fill="#000"/>'
        f'<text x="{x:g}" y="{y + 5:g}" text-anchor="middle" fill="#fff" font-weight="bold" '
        f'font-size="{SIZE}">{text}</text>'
    )


def arc(x: float, y: float, radius: float, start: float, end: float) -> str:
    """Return path data of an arc round (x, y), angles in degrees, clockwise from the right."""
    a, b = math.radians(start), math.radians(end)
    return (
        f"M {x + radius * math.cos(a):.1f} {y + radius * math.sin(a):.1f} "
        f"A {radius:g} {radius:g} 0 {int(abs(end - start) > 180)} 1 "
        f"{x + radius * math.cos(b):.1f} {y + radius * math.sin(b):.1f}"
    )
