"""The drawings of nests, year, food and defence; ``draw_life.py`` writes them."""

from __future__ import annotations

import math

from animals import wasp as animal
from kinds import KINDS
from procedure_shapes import (
    area,
    badge,
    box,
    curve,
    figure,
    line,
    oval,
    person,
    wasp,
    words,
)

from calc.biology.season_calendar import HALVES, MONTHS, span
from calc.biology.which_animal.traits import length_range
from calc.tables import row

SMALL, LARGE = (10.0, 18.0), (14.0, 22.0)
"""Width and height of a worker cell and of a large cell in the drawing; not to scale."""


def _tier(x: float, y: float, cells: str) -> tuple[str, float]:
    """Return a tier cut open, middle and roof at (x, y), and half its width.

    ``cells``: o empty, e egg, l larva, s sealed; capitals are large cells.
    """
    wide, tall = LARGE if cells.isupper() else SMALL
    left = x - wide * len(cells) / 2
    walls, eggs, grubs, caps = "", "", "", ""
    for k, kind in enumerate(cells.lower()):
        a, m = left + wide * k, left + wide * (k + 0.5)
        walls += f"M{a:g} {y + tall:g}V{y:g}"
        if kind == "e":
            eggs += f"M{a + 2:g} {y + 4:g}l3 4"
        elif kind in "ls":
            r = wide * 0.33
            grubs += f"M{m - r:.1f} {y + 5:g}h{2 * r:.1f}v{tall - 9:g}a{r:.1f} {r:.1f} 0 0 1 {-2 * r:.1f} 0Z"
            if kind == "s":
                bulge = 9 if wide > 12 else 5
                caps += f"M{a:g} {y + tall - 3:g}Q{m:g} {y + tall + bulge:g} {a + wide:g} {y + tall - 3:g}Z"
    right = left + wide * len(cells)
    walls += f"M{right:g} {y + tall:g}V{y:g}"
    return (
        f'<path d="M{left:g} {y:g}H{right:g}V{y + tall:g}H{left:g}Z" fill="#fff"/>'
        f'<path d="{grubs}" fill="#bbb"/><path d="{caps}"/>'
        f'<path d="{walls}" stroke="#000" stroke-width="1.2"/>'
        f'<path d="{eggs}" stroke="#000" stroke-width="2.2"/>'
        f'<path d="M{left - 2:g} {y:g}H{right + 2:g}" stroke="#000" stroke-width="4"/>'
    ), (right - left) / 2


def _tiers(x: float, y: float, step: float, rows_of_cells: tuple[str, ...]) -> str:
    """Return tiers below each other with the pillars that carry them."""
    made, above = "", 0.0
    for k, cells in enumerate(rows_of_cells):
        at = y + step * k
        drawn, half = _tier(x, at, cells)
        if k:
            reach = min(above, half) * 0.55
            for spot in (x - reach, x + reach):
                top = at - step + 16
                made += (
                    f'<path d="M{spot - 5:.1f} {top:g}q5 6 3 {(at - top) / 2:g}q0 6 -4 '
                    f"{(at - top) / 2:g}h12q-5 -6 -4 {-(at - top) / 2:g}q-1 -6 3 "
                    f'{-(at - top) / 2:g}Z"/>'
                )
        made += drawn
        above = half
    return made


def _key(y: float) -> str:
    """Return the key of the cells."""
    made = ""
    for x, cell, name in (
        (16, "e", "egg"),
        (90, "l", "larva"),
        (172, "s", "sealed"),
        (262, "S", "queen, sealed"),
    ):
        made += _tier(x, y, cell)[0] + words(x + 12, y + 15, name, size=13)
    return made


def _cover(x: float, y: float, rx: float, ry: float, layers: int, gap: float) -> str:
    """Return a cut cover: layers of paper with air between, the inside white."""
    made = ""
    for k in range(layers):
        made += oval(x, y, rx - gap * k, ry - gap * k, "#ddd" if k % 2 == 0 else "#fff", 1.4)
    inner = layers * gap
    return made + oval(x, y, rx - inner, ry - inner, "#fff", 1.4)


def nest_section() -> str:
    """Return a nest in a wall, cut open."""
    parts = [
        area([(0, 0), (246, 0), (246, 14), (0, 14)], "url(#wood)"),
        area([(2, 14), (20, 14), (20, 286), (2, 286)], "url(#wood)"),
        area([(2, 306), (20, 306), (20, 366), (2, 366)], "url(#wood)"),
        area([(238, 14), (248, 14), (248, 366), (238, 366)], "url(#wood)"),
        _cover(130, 172, 102, 152, 3, 5),
        area([(34, 262), (62, 242), (74, 262), (46, 286)], "#fff", 0),
        line([(36, 258), (62, 240)], 1.6),
        line([(50, 290), (76, 264)], 1.6),
        '<path d="M122 12h16l-4 12q-2 8 4 20h-16q6 -12 4 -20Z"/>',
        _tiers(
            130,
            46,
            46,
            ("soossoos", "esssoosssle", "ellssosslle", "eellsslle", "LSSSSL"),
        ),
        wasp(96, 85, 0, scale=0.55),
        wasp(172, 131, 180, scale=0.55),
        wasp(92, 177, 180, scale=0.55),
        wasp(126, 221, 180, scale=0.95),
        wasp(60, 200, 75, scale=0.6),
        wasp(196, 256, 120, scale=0.8),
        wasp(182, 278, 140, scale=0.8),
        wasp(31, 286, 180, scale=0.6),
        wasp(31, 304, 180, scale=0.6),
        curve("M 4 326 C -4 300 16 296 50 276", 1.6, "4 3"),
        *[oval(x, 362, 2, 1.4, "#000") for x in (98, 112, 121, 134, 150, 163)],
        line([(136, 28), (254, 22)], 1),
        words(258, 26, "stalk: carries", "all"),
        line([(222, 110), (254, 66)], 1),
        words(258, 70, "cover: paper", "in layers"),
        line([(184, 100), (254, 110)], 1),
        words(258, 114, "tier: roof up,", "cells down"),
        line([(162, 170), (254, 158)], 1),
        words(258, 162, "pillars"),
        line([(138, 221), (254, 196)], 1),
        words(258, 200, "old queen, on", "new tiers"),
        line([(172, 244), (254, 240)], 1),
        words(258, 244, "large cells,", "lowest tier"),
        line([(196, 270), (254, 286)], 1),
        words(258, 290, "young queens", "wait here"),
        line([(152, 360), (254, 334)], 1),
        words(258, 338, "droppings"),
        words(28, 342, "guards at the hole", size=13),
        line([(40, 330), (33, 312)], 1),
        _key(384),
    ]
    return figure(
        416,
        "A nest in a wall, cut open",
        "A nest hangs on one stalk from a beam. A cover of several layers of paper runs round the "
        "tiers. Each tier has its roof up and its cells down, and pillars join it to the tier "
        "above. Sealed brood sits in the middle of a tier, larvae round it, eggs at the rim. The "
        "lowest tier has large cells of queens. The old queen walks on the new tiers, young "
        "queens wait between tiers and cover. Guards sit at the hole in the wall, lower than the "
        "nest. Schematic, not to scale.",
        parts,
    )


def nest_section_aerial() -> str:
    """Return a nest on a branch, cut open."""
    parts = [
        '<path d="M0 26C60 14 150 34 262 14" fill="none" stroke="#000" stroke-width="15"/>'
        '<path d="M0 26C60 14 150 34 262 14" fill="none" stroke="url(#wood)" stroke-width="11"/>',
        curve("M 60 24 C 72 50 60 80 44 112", 4),
        curve("M 196 22 C 190 50 206 66 216 96", 4),
        _cover(132, 156, 104, 122, 4, 6),
        '<path d="M124 24h16l-4 24q-2 8 4 18h-16q6 -10 4 -18Z"/>',
        _tiers(132, 68, 46, ("ssoooss", "elssosslle", "ellssslle", "LSSSL")),
        '<path d="M190 226L206 250L226 234L206 212Z" fill="#fff"/>',
        line([(188, 226), (204, 252)], 1.6),
        line([(206, 212), (228, 234)], 1.6),
        wasp(214, 236, 50, scale=0.65),
        wasp(234, 262, 30, True, 0.8),
        wasp(96, 107, 0, scale=0.55),
        wasp(130, 197, 180, scale=0.95),
        wasp(182, 152, 90, scale=0.55),
        line([(188, 26), (250, 36)], 1),
        words(254, 40, "branch, twigs", "and stalk carry"),
        line([(224, 110), (250, 88)], 1),
        words(254, 92, "cover: many", "layers, carries", "nothing"),
        line([(176, 128), (250, 150)], 1),
        words(254, 154, "tiers inside"),
        line([(144, 197), (250, 182)], 1),
        words(254, 186, "old queen"),
        line([(224, 240), (250, 218)], 1),
        words(254, 222, "hole, low in", "the side"),
        _key(296),
    ]
    return figure(
        326,
        "A nest on a branch, cut open",
        "A ball of paper hangs on a branch. Twigs and one stalk carry it. The cover has many "
        "layers with air between and one hole low in its side. Inside hang three tiers, roofs up "
        "and cells down, with the old queen on them. Schematic, not to scale.",
        parts,
    )


def paper_wasp_comb() -> str:
    """Return the open comb of a paper wasp from the side and from below."""
    cells, spots = [], []
    r = 11.0
    for q in range(-3, 4):
        for s in range(-3, 4):
            ring = max(abs(q), abs(s), abs(q + s))
            if ring > 3:
                continue
            cx = 268 + r * math.sqrt(3) * (q + s / 2)
            cy = 114 + r * 1.5 * s
            points = [
                (cx + r * math.sin(math.radians(a)), cy + r * math.cos(math.radians(a)))
                for a in range(0, 360, 60)
            ]
            sealed = ring == 1 or (ring == 2 and q >= 0)
            cells.append("M" + "L".join(f"{px:.1f} {py:.1f}" for px, py in points) + "Z")
            if sealed:
                spots.append(f'<circle cx="{cx:.1f}" cy="{cy:.1f}" r="8" fill="#000"/>')
            elif ring == 2:
                spots.append(oval(round(cx, 1), round(cy, 1), 6, 6, "#bbb", 1))
            elif ring == 3:
                spots.append(
                    f'<path d="M{cx - 5:.1f} {cy - 2:.1f}l4 4" stroke="#000" stroke-width="2.4"/>'
                )
    comb, _ = _tier(96, 96, "eelsssoossle")
    paper = KINDS["dominula"]
    # the animal and the cells it walks on are to one scale
    low, high = length_range("dominula", "worker") or (0.0, 0.0)
    body = r * math.sqrt(3) * (low + high) / sum(row("cell_pitch", "polistes")["worker"])
    parts = [
        area([(6, 26), (186, 26), (186, 40), (6, 40)], "url(#wood)"),
        words(96, 18, "from the side", anchor="middle", bold=True),
        words(268, 18, "from below", anchor="middle", bold=True),
        '<path d="M90 40h12q-4 28 0 56h-12q4 -28 0 -56Z"/>',
        comb,
        f'<path d="{"".join(cells)}" fill="#fff" stroke="#000" stroke-width="1.6"/>',
        *spots,
f'<g transform="translate(234 158) rotate(-75)">{animal(paper, body)}</g>',
        wasp(60, 88, 180, scale=0.9),
        wasp(128, 124, 10, scale=0.9),
        line([(98, 66), (126, 62)], 1),
        words(128, 60, "one stalk"),
        words(6, 152, "no cover: brood and", "adults in plain sight"),
        words(206, 200, "eggs at the rim,", "larvae inside them,", "sealed in the middle"),
        _tier(16, 204, "e")[0], words(28, 219, "egg", size=13),
        _tier(70, 204, "l")[0], words(82, 219, "larva", size=13),
        _tier(136, 204, "s")[0], words(148, 219, "sealed", size=13),
    ]  # fmt: skip
    return figure(
        250,
        "The open comb of a paper wasp",
        "From the side: one comb hangs on one stalk from a board, without a cover, cells down, "
        "with wasps on both faces. From below: eggs in the cells at the rim, larvae farther in, "
        "sealed brood round the middle, and one wasp on them to one scale.",
        parts,
    )


def _at(half: float) -> float:
    """Return the place of the start of a half-month, 1 to 25, on the axis of months."""
    return 12 + (half - 1) * 336 / HALVES


def _year(y: float, key: str) -> list[str]:
    """Return the year of one printed calendar, its curves without a scale."""
    found = row("season_calendar", key)
    queen, workers, peak, sexuals, end = (
        span(found[name]) for name in ("queen", "workers", "peak", "sexuals", "end")
    )
    floor, top = y + 132, y + 34
    start, first = _at(queen[0]), _at(workers[0])
    high, low, last = _at(peak[0]), _at(peak[1] + 1), _at(end[1] + 1)
    young, gone = _at(sexuals[0]), _at(sexuals[1] + 1)
    rise = (first + high) / 2
    parts = [words(6, y + 14, f"{found['animal']}, {found['place']}", bold=True)]
    parts += [
        f'<path d="M{young:.1f} {floor:g}C{(young * 2 + gone) / 3:.1f} {floor - 66:g} '
        f'{(young + gone * 2) / 3:.1f} {floor - 66:g} {gone:.1f} {floor:g}Z" fill="url(#wood)" '
        'stroke="#000"/>',
        curve(
            f"M{start:.1f} {floor:g}C{first:.1f} {floor - 8:g} {rise:.1f} {top + 24:g} "
            f"{high:.1f} {top + 20:g}C{low:.1f} {top + 20:g} {low:.1f} {floor - 12:g} "
            f"{last:.1f} {floor:g}",
            2, "6 4",
        ),
        curve(
            f"M{first:.1f} {floor:g}C{rise:.1f} {floor - 6:g} {rise:.1f} {top:g} "
            f"{(high + low) / 2:.1f} {top:g}S{low:.1f} {floor - 20:g} {last:.1f} {floor:g}",
            3.2,
        ),
        line([(12, floor), (348, floor)], 1.4),
    ]  # fmt: skip
    for k, month in enumerate(MONTHS):
        x = _at(1 + 2 * k)
        parts.append(line([(x, floor), (x, floor + 5)], 1))
        if k % 2 == 0:
            parts.append(words(_at(2 + 2 * k), floor + 17, month, anchor="middle", size=13))
    for k, (name, ends) in enumerate(
        (("nest begun", queen), ("first workers", workers), ("peak", peak),
         ("queens, males", sexuals), ("end", end))
    ):  # fmt: skip
        a, b = _at(ends[0]), _at(ends[1] + 1)
        at = floor + 32 + 17 * k
        parts.append(
            box(round(a, 1), at - 9, round(b - a, 1), 10, "#000" if k % 2 == 0 else "#999", 1)
        )
        if k < 2:
            parts.append(words(b + 5, at, name, size=13))
        else:
            parts.append(words(a - 5, at, name, anchor="end", size=13))
    return parts


def colony_year() -> str:
    """Return the year of two colonies; dates are those of the table, heights mean nothing."""
    parts = [
        *_year(0, "germanica_germany"),
        *_year(236, "crabro_england"),
        line([(8, 484), (36, 484)], 3.2),
        words(42, 489, "workers"),
        line([(112, 484), (140, 484)], 2, "6 4"),
        words(146, 489, "brood"),
        box(202, 477, 28, 14, "url(#wood)", 1),
        words(236, 489, "queens, males"),
        words(6, 512, "Schematic: heights are not counts."),
    ]
    return figure(
        524,
        "The year of a colony, schematic",
        "Two charts over the months, of a German yellowjacket in Germany and a European hornet in "
        "England. A queen begins in spring, the first workers come in early summer, brood and "
        "workers rise to a peak in late summer, young queens and males follow, and the colony "
        "ends in autumn. Bars show the printed dates. The heights of the curves are schematic.",
        parts,
    )


def trophallaxis() -> str:
    """Return the flow of food between prey, sweet liquids, adults and larvae."""
    kind = KINDS["vulgaris"]
    walls = " ".join(f"M {32 + 37 * k} 20 V 92" for k in range(9))
    grubs = "".join(
        f'<path d="M{x - 13} 26h26v38a13 13 0 0 1 -26 0Z" fill="#fff" stroke="#000" '
        f'stroke-width="1.6"/><path d="M{x - 13} 36q13 5 26 0M{x - 13} 46q13 5 26 0M{x - 13} 56q13 5 '
        f'26 0M{x - 12} 66q12 5 24 0" fill="none" stroke="#000"/>'
        f'<ellipse cx="{x}" cy="80" rx="7" ry="6" fill="#ccc" stroke="#000" stroke-width="1.6"/>'
        for x in (87, 124, 236, 273)
    )
    caps = "".join(f'<path d="M{x - 18} 88q18 18 36 0Z"/>' for x in (50, 161, 198, 310))
    parts = [
        grubs, caps,
        f'<path d="{walls}" stroke="#000" stroke-width="2"/>',
        line([(28, 20), (332, 20)], 5),
        f'<g transform="translate(96 168)">{animal(kind, 112)}</g>',
        f'<g transform="translate(264 168)">{animal(kind, 112)}</g>',
        oval(96, 164, 7, 6, "#777", 1.4),
        line([(90, 156), (88, 98)], 3, tip=True),
        badge(66, 126, "1"),
        line([(273, 92), (266, 152)], 2.4, "6 4", True),
        '<path d="M270 118q8 10 0 15q-8 -5 0 -15Z" fill="#fff" stroke="#000" stroke-width="1.6"/>',
        badge(298, 126, "2"),
        line([(116, 176), (242, 176)], 2, "2 4", True),
        line([(242, 184), (116, 184)], 2, "2 4", True),
        badge(180, 160, "4"),
        '<g transform="translate(26 292)"><ellipse rx="9" ry="15" fill="#777" stroke="#000"/>'
        '<circle cy="-18" r="7" fill="#777" stroke="#000"/>'
        '<path d="M-3 -8q-22 6 -18 24q16 -4 18 -24M3 -8q22 6 18 24q-16 -4 -18 -24" fill="#fff" '
        'stroke="#000"/></g>',
        curve("M 44 266 C 30 230 40 190 82 172", 3, tip=True),
        words(6, 330, "prey"),
        "".join(
            f'<ellipse cx="332" cy="282" rx="6" ry="11" transform="rotate({a} 332 294)" fill="#fff" '
            'stroke="#000" stroke-width="1.6"/>'
            for a in range(0, 360, 60)
        )
        + oval(332, 294, 6, 6, "#bbb", 1.6),
        curve("M 330 266 C 340 226 320 186 284 172", 2.4, "6 4", True),
        badge(344, 232, "3"),
        curve("M 250 164 C 232 150 232 120 236 98", 2.4, "6 4", True),
        words(354, 330, "nectar, sap, fruit", anchor="end"),
        badge(18, 356, "1"), words(38, 361, "prey, chewed to pulp: to larvae"),
        badge(18, 382, "2"), words(38, 387, "clear drops of larvae: to adults"),
        badge(18, 408, "3"), words(38, 413, "sweet liquid: to adults, and to larvae"),
        badge(18, 434, "4"), words(38, 439, "drops pass from adult to adult"),
    ]  # fmt: skip
    return figure(
        452,
        "Who feeds whom",
        "Larvae hang head down in their cells, two workers stand below. One: a worker brings prey, "
        "chewed to pulp, to a larva. Two: a larva gives a clear drop to a worker. Three: nectar, "
        "sap and fruit go to the adults, and from them to larvae. Four: adults pass drops to each "
        "other.",
        parts,
    )


def _ring(r: float, dash: str, width: float) -> str:
    return (
        f'<circle cx="180" cy="168" r="{r:g}" fill="none" stroke="#000" stroke-width="{width:g}"'
        + (f' stroke-dasharray="{dash}"' if dash else "")
        + "/>"
    )


def defence_rings() -> str:
    """Return the steps of the defence round the hole, without distances."""

    def around(r: float, angles: tuple[int, ...], turn: int, scale: float, flying: bool) -> str:
        return "".join(
            wasp(
                round(180 + r * math.cos(math.radians(a)), 1),
                round(168 + r * math.sin(math.radians(a)), 1),
                a + turn, flying, scale,
            )
            for a in angles
        )  # fmt: skip

    parts = [
        _ring(158, "2 6", 1.8),
        _ring(112, "10 5", 1.8),
        _ring(66, "", 1.6),
        oval(180, 168, 26, 26, "url(#soil)", 1.6),
        oval(180, 168, 8, 8, "#000"),
        around(19, (20, 140, 260), 0, 0.6, False),
        around(66, (10, 70, 130, 190, 250, 310), 90, 0.8, True),
        around(104, (222, 318, 40), 0, 0.85, True),
        around(140, (52, 62), 5, 0.85, True),
        person(294, 350, 84),
        line([(312, 332), (352, 356)], 3, tip=True),
        badge(180, 130, "1"),
        badge(180, 92, "2"),
        badge(180, 46, "3"),
        badge(40, 252, "4"),
        badge(18, 388, "1"), words(38, 393, "guards at the hole: turn, walk, buzz"),
        badge(18, 414, "2"), words(38, 419, "more come out and circle"),
        badge(18, 440, "3"), words(38, 445, "they land and sting; the scent calls more"),
        badge(18, 466, "4"), words(38, 471, "some follow, others search: run, at once"),
        words(6, 498, "Schematic. No distances: see the zones."),
    ]  # fmt: skip
    return figure(
        510,
        "How the defence grows, schematic",
        "Rings round the hole of a nest, seen from above, without distances. One: guards at the "
        "hole. Two: wasps that circle. Three: wasps that fly at whoever is near, land and sting. "
        "Four, outermost: some follow a person who runs away, others search.",
        parts,
    )
