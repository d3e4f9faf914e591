"""Draw brood, castes, nests, the year, food and defence, in the style of the procedure pages.

Numbers come from the tables of ``calc``: lengths from ``species_size``, shares of the sealed time
from ``pupal_colours``, dates from ``season_calendar``. Run from the root of the book:
``python handbook/biology/figures/draw_life.py``. The same input gives the same files.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

HERE = OUT = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parents[1] / "method" / "figures"), str(HERE.parents[2])]

from animals import BLUNT, Wasp, wasp
from draw_colony import (
    colony_year,
    defence_rings,
    nest_section,
    nest_section_aerial,
    paper_wasp_comb,
    trophallaxis,
)
from kinds import KINDS
from procedure_shapes import area, badge, figure, line, oval, words

from calc.biology.which_animal.traits import length_range
from calc.tables import rows

LOOKS = ("prepupa", "white", "pink", "dark", "colouring", "full")
"""Looks under the cap, as the table of colours names them, youngest first."""

CELL_W, CELL_H = 40.0, 84.0


def spread(key: str) -> tuple[float, float]:
    """Return the share of the sealed time passed, over both scales, in per cent."""
    found = next(each for each in rows("pupal_colours") if each["key"] == key)
    ends = [*found["first"], *found["second"]]
    return min(ends), max(ends)


def _cell(x: float, y: float, cap: str) -> str:
    """Return a cell cut open, mouth down; ``cap`` is none, whole or chewed."""
    half = CELL_W / 2
    made = (
        f'<path d="M{x - half:g} {y + CELL_H:g}V{y + 4:g}Q{x:g} {y - 5:g} {x + half:g} {y + 4:g}'
        f'V{y + CELL_H:g}" fill="#fff" stroke="#000" stroke-width="3"/>'
    )
    if cap == "whole":
        made += (
            f'<path d="M{x - half:g} {y + CELL_H - 4:g}Q{x:g} {y + CELL_H + 22:g} {x + half:g} '
            f'{y + CELL_H - 4:g}" fill="none" stroke="#000" stroke-width="4" '
            'stroke-dasharray="1.5 1.5"/>'
        )
    elif cap == "chewed":
        made += (
            f'<path d="M{x - half:g} {y + CELL_H - 4:g}q3 9 9 9l-2 -5M{x + half:g} '
            f'{y + CELL_H - 4:g}q-3 9 -9 9l2 -5" fill="none" stroke="#000" stroke-width="3"/>'
        )
    return made


def _hex(x: float, y: float, r: float, width: float) -> str:
    points = [
        (x + r * math.cos(math.radians(a)), y + r * math.sin(math.radians(a)))
        for a in range(30, 390, 60)
    ]
    return area(points, "#fff", width)


def _grub(x: float, y: float, scale: float, rings: int = 9) -> str:
    """Return a grown larva hanging head down, its tail on the floor of the cell."""
    seams = "".join(
        f"M{-15 + abs(k - 4) * 1.1:.1f} {-30 + 6.5 * k:.1f}Q0 {-25 + 6.5 * k:.1f} "
        f"{15 - abs(k - 4) * 1.1:.1f} {-30 + 6.5 * k:.1f}"
        for k in range(rings)
    )
    return (
        f'<g transform="translate({x:g} {y:g}) scale({scale:g})">'
        '<path d="M0 -38C15 -38 19 -14 17 6C16 22 12 28 8 30H-8C-12 28 -16 22 -17 6C-19 -14 -15 '
        '-38 0 -38Z" fill="#fff" stroke="#000" stroke-width="1.8"/>'
        f'<path d="{seams}" fill="none" stroke="#000" stroke-width="1"/>'
        '<ellipse cx="0" cy="32" rx="8.5" ry="6.5" fill="#ccc" stroke="#000" stroke-width="1.6"/>'
        '<path d="M-4 37l3 -3M4 37l-3 -3" stroke="#000" stroke-width="2"/></g>'
    )


SHADES = {  # eyes, thorax and head, plates of the abdomen
    "white": ("#fff", "#fff", "none"),
    "pink": ("url(#tint)", "#fff", "none"),
    "dark": ("#000", "#fff", "none"),
    "colouring": ("#000", "url(#tan)", "faint"),
    "full": ("#000", "#000", "full"),
}


def _pupa(x: float, y: float, look: str) -> str:
    """Return a pupa from below, head down, legs and wing pads folded on the breast."""
    eyes, body, pattern = SHADES[look]
    ink = "#fff" if body == "#000" else "#000"
    bands = "".join(
        f"M{-w:g} {d}Q0 {d + 4} {w:g} {d}"
        for w, d in ((13.5, 8), (14.5, 15), (13, 22), (10, 29), (5, 35))
    )
    made = (
        '<path d="M-8 2C-18 8 -16 30 0 40C16 30 18 8 8 2Z" fill="#fff" stroke="#000" '
        'stroke-width="1.6"/>'
    )
    weight, dash = (4.5, "") if pattern == "full" else (3, ' stroke-dasharray="2 2"')
    if pattern == "none":
        weight, dash = 0.9, ""
    made += f'<path d="{bands}" fill="none" stroke="#000" stroke-width="{weight}"{dash}/>'
    pad = "#999" if pattern == "full" else "#fff"
    made += (
        f'<ellipse cx="0" cy="-11" rx="14" ry="13.5" fill="{body}" stroke="#000" stroke-width="1.6"/>'
        f'<ellipse cx="0" cy="-30" rx="13" ry="9" fill="{body}" stroke="#000" stroke-width="1.6"/>'
        f'<path d="M-5 -35h10l-2 7h-6Z" fill="#fff" stroke="#000"/>'
    )
    for side in (-1, 1):
        made += (
            f'<path d="M{side * 13} -14q{side * 6} 12 {side * 1} 26q{side * -6} -8 {side * -5} -24Z" '
            f'fill="{pad}" stroke="#000" stroke-width="1.2"/>'
            f'<path d="M{side * 11} -20L{side * 3} -9L{side * 4} 4M{side * 11} -12L{side * 5} -2'
            f'L{side * 6} 16" fill="none" stroke="{ink}" stroke-width="1.5"/>'
            f'<path d="M{side * 3} -26Q{side * 9} -24 {side * 8} -6" fill="none" stroke="{ink}" '
            'stroke-width="2"/>'
            f'<ellipse cx="{side * 10}" cy="-31" rx="4.6" ry="6.5" fill="{eyes}" stroke="#000" '
            'stroke-width="1.6"/>'
        )
        if body == "#000":
            made += f'<ellipse cx="{side * 10}" cy="-31" rx="4.6" ry="6.5" fill="none" stroke="#fff" stroke-width="1"/>'
    return f'<g transform="translate({x:g} {y:g}) rotate(180)">{made}</g>'


def _face(x: float, y: float, look: str) -> str:
    """Return what the eye meets when the cap is off: the head in its cell."""
    made = _hex(x, y, 27, 3)
    if look == "prepupa":
        return made + (
            oval(x, y, 21, 21, "#fff", 1.6)
            + oval(x, y, 13, 13, "#fff", 1)
            + oval(x, y + 2, 7, 6, "#ddd", 1.4)
        )
    eyes, body, _ = SHADES[look]
    made += (
        f'<path d="M{x - 17:g} {y - 10:g}Q{x:g} {y - 24:g} {x + 17:g} {y - 10:g}Q{x + 19:g} {y + 8:g} '
        f'{x + 8:g} {y + 17:g}H{x - 8:g}Q{x - 19:g} {y + 8:g} {x - 17:g} {y - 10:g}Z" fill="{body}" '
        'stroke="#000" stroke-width="1.8"/>'
        f'<path d="M{x - 7:g} {y:g}H{x + 7:g}L{x + 9:g} {y + 8:g}L{x + 5:g} {y + 13:g}H{x - 5:g}'
        f'L{x - 9:g} {y + 8:g}Z" fill="#fff" stroke="#000" stroke-width="1.4"/>'
    )
    edge = "#fff" if body == "#000" else "#000"
    for side in (-1, 1):
        made += (
            f'<ellipse cx="{x + side * 14:g}" cy="{y - 2:g}" rx="5.5" ry="10.5" fill="{eyes}" '
            f'stroke="{edge}" stroke-width="1.8"/>'
            f'<path d="M{x + side * 3:g} {y - 4:g}Q{x + side * 8:g} {y - 13:g} {x + side * 7:g} '
            f'{y - 18:g}" fill="none" stroke="{edge}" stroke-width="2"/>'
        )
    if look == "full":
        made += (
            f'<path d="M{x - 8:g} {y - 13:g}Q{x:g} {y - 18:g} {x + 8:g} {y - 13:g}Q{x:g} {y - 8:g} '
            f'{x - 8:g} {y - 13:g}Z" fill="#fff"/>'
        )
    return made


def brood_scale() -> str:
    """Return the brood in its cells from egg to adult, and what the eye meets under the cap."""
    tints = (
        '<defs><pattern id="tint" width="4" height="4" patternUnits="userSpaceOnUse" '
        'patternTransform="rotate(45)"><rect width="4" height="4" fill="#fff"/>'
        '<path d="M0 0V4" stroke="#a33" stroke-width="2"/></pattern>'
        '<pattern id="tan" width="4" height="4" patternUnits="userSpaceOnUse">'
        '<rect width="4" height="4" fill="#e3c08a"/><path d="M0 0H4" stroke="#444"/></pattern></defs>'
    )
    parts = [tints, words(6, 18, "Open cells: fed, not sealed", bold=True)]
    for k, (letter, name) in enumerate(
        (("A", "egg"), ("B", "young larva"), ("C", "grown larva, fed"))
    ):
        x, y = 26 + 120 * k, 34.0
        parts += [_cell(x + 8, y, "none"), badge(x + 52, y + 10, letter)]
        parts.append(words(x - 22, y + 104, name))
    parts += [
        '<ellipse cx="24" cy="56" rx="3.2" ry="9" transform="rotate(-35 24 56)" fill="#fff" '
        'stroke="#000" stroke-width="1.6"/>',
        _hex(86, 92, 25, 2.5),
        _hex(86, 92, 14, 1),
        '<ellipse cx="80" cy="88" rx="2.6" ry="6.5" transform="rotate(-35 80 88)" fill="#fff" '
        'stroke="#000" stroke-width="1.5"/>',
        '<path d="M148 48q20 -2 18 18q-2 14 -13 11q8 -5 5 -13q-2 -7 -10 -6Z" fill="#fff" '
        'stroke="#000" stroke-width="1.6"/><circle cx="152" cy="76" r="4" fill="#ccc" '
        'stroke="#000" stroke-width="1.4"/>',
        _hex(206, 92, 25, 2.5),
        '<path d="M196 84q14 -10 20 4q2 14 -12 15q8 -6 4 -12q-5 -6 -12 -7Z" fill="#fff" '
        'stroke="#000" stroke-width="1.5"/><circle cx="204" cy="102" r="3.4" fill="#ccc" '
        'stroke="#000"/>',
        _grub(274, 78, 0.98),
        _hex(326, 92, 25, 2.5),
        oval(326, 92, 19, 19, "#fff", 1.6),
        oval(326, 93, 10, 8.5, "#ccc", 1.6),
        line([(321, 99), (325, 95)], 2),
        line([(331, 99), (327, 95)], 2),
        words(6, 166, "Sealed cells: % of the sealed time passed", bold=True),
    ]
    told = {
        "prepupa": ("larva or", "prepupa, no legs"),
        "white": ("all white,", "white eyes"),
        "pink": ("white, pink to", "red eyes"),
        "dark": ("pale,", "dark eyes"),
        "colouring": ("thorax tan,", "pattern starts"),
        "full": ("full colour,", "chewing out"),
    }
    for k, key in enumerate(LOOKS):
        x, y = 26 + 120 * (k % 3), 182.0 + 176 * (k // 3)
        low, high = spread(key)
        parts += [
            _cell(x + 8, y, "chewed" if key == "full" else "whole"),
            _grub(x + 8, y + 46, 0.9, 8) if key == "prepupa" else "",
            _pupa(x + 8, y + (48 if key == "full" else 43), key) if key != "prepupa" else "",
            badge(x + 52, y + 8, "DEFGHI"[k]),
            _face(x + 62, y + 56, key),
            words(x - 22, y + 118, *told[key]),
            words(x - 22, y + 154, f"{low:.0f}–{high:.0f} %", bold=True),
        ]
    return figure(
        528,
        "Brood from egg to adult",
        "Nine cells cut open, mouth down, and beside each the view into the cell. Open cells: egg, "
        "young larva, grown larva. Sealed cells: prepupa without legs, white pupa, pupa with pink "
        "eyes, pupa with dark eyes, pupa with a tan thorax, animal in full colour that chews the "
        "cap open. Under each sealed cell stands the share of the sealed time that has passed.",
        parts,
    )


CASTE_SCALE = 5.2
"""Pixels of the drawing in one millimetre."""


def _middle(key: str, caste: str) -> float:
    """Return the middle of the range of a caste, in mm."""
    found = length_range(key, caste)
    assert found is not None
    return sum(found) / 2


def _caste(key: str, caste: str) -> Wasp:
    """Return the build of a caste: a male has a joint and a plate more, and a blunt end."""
    kind = KINDS[key]
    if caste == "male":
        plates = (*kind.plates[:-1], *kind.plates[-2:])
        return replace(
            kind, joints=kind.joints + 1, feeler=kind.feeler * 1.45, shape=BLUNT, plates=plates,
            wide=kind.wide * 0.88,
        )  # fmt: skip
    return replace(kind, wide=kind.wide * 1.1) if caste == "queen" else kind


def castes() -> str:
    """Return queen, worker and male of two kinds to one scale."""
    parts: list[str] = []
    for base, key, name in (
        (252.0, "crabro", "European hornet"),
        (500.0, "germanica", "German yellowjacket"),
    ):
        tall = _middle(key, "queen") * CASTE_SCALE
        parts.append(words(6, base - 1.25 * tall - 42, name, bold=True))
        for x, caste in ((66, "queen"), (178, "worker"), (288, "male")):
            kind, male = _caste(key, caste), caste == "male"
            size = _middle(key, caste) * CASTE_SCALE
            unit = kind.feeler * size
            tip = base - size + 0.015 * size - 0.8 * unit
            said = (f"{kind.joints} joints,", "long") if male else (f"{kind.joints} joints",)
            high = min(tip - 14, base - 1.25 * tall - 8)
            parts += [
                line([(x + 0.1 * unit, high + 5), (x + 0.045 * size + 0.38 * unit, tip + 3)], 1),
                words(x, high - 17 * (len(said) - 1), *said, anchor="middle"),
                f'<g transform="translate({x} {base - size:.1f})">{wasp(kind, size, not male)}</g>',
                line([(x + 2, base + 0.05 * size), (x + 8, base + 14)], 1),
                words(x, base + 26, f"{len(kind.plates)} plates,",
                      "no sting" if male else "sting", anchor="middle"),
                words(x, base + 60, caste, anchor="middle", bold=True),
            ]  # fmt: skip
    end = 20 + 10 * CASTE_SCALE
    parts += [
        line([(20, 582), (end, 582)], 2),
        line([(20, 577), (20, 587)]),
        line([(end, 577), (end, 587)]),
        words(end + 8, 587, "10 mm, all to one scale"),
    ]
    return figure(
        596,
        "Queen, worker and male",
        "Queens, workers and males of the European hornet and the German yellowjacket from above, "
        "to one scale. The queen is the largest. Queens and workers have antennae of twelve "
        "joints, six plates on the abdomen and a sting in its pointed end. Males have longer "
        "antennae of thirteen joints, seven plates and a blunt end without a sting.",
        parts,
    )


DRAWINGS: dict[str, Callable[[], str]] = {
    each.__name__: each
    for each in (
        brood_scale,
        castes,
        nest_section,
        nest_section_aerial,
        paper_wasp_comb,
        colony_year,
        trophallaxis,
        defence_rings,
    )
}


def main() -> None:
    """Write all drawings."""
    for name, draw in DRAWINGS.items():
        (OUT / f"{name}.svg").write_text(draw(), encoding="utf-8")


if __name__ == "__main__":
    main()
