"""Draw the figures of the page Side by side: animals to one scale.

Lengths come from ``calc/tables/species_size.toml``; wasps come from ``animals.py``, and the bee is
made of ellipses whose shares of the length are set here. Run from the root of the book:
``python handbook/biology/figures/draw.py``. The same input gives the same files.
"""

from __future__ import annotations

import math
import random
import sys
from collections.abc import Callable
from pathlib import Path

HERE = OUT = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parents[2])]

from animals import wasp
from kinds import KINDS

from calc.biology.which_animal.traits import familiar_length, length_range

WIDTH = 360
BLACK, DARK, MID, PALE, WHITE = "#000", "#4a3524", "#a8824e", "#d8b47a", "#fff"
"""Black; the browns of the bee, dark to pale; white."""


def ellipse(x: float, y: float, rx: float, ry: float, fill: str, stroke: float = 1.2) -> str:
    """Return an ellipse with a black edge."""
    return (
        f'<ellipse cx="{x:.1f}" cy="{y:.1f}" rx="{rx:.1f}" ry="{ry:.1f}" fill="{fill}" '
        f'stroke="#000" stroke-width="{stroke}"/>'
    )


def line(*points: tuple[float, float], width: float = 1.4, stroke: str = BLACK) -> str:
    """Return an open line through points."""
    path = " L ".join(f"{x:.1f} {y:.1f}" for x, y in points)
    return (
        f'<path d="M {path}" fill="none" stroke="{stroke}" stroke-width="{width:.1f}" '
        'stroke-linecap="round" stroke-linejoin="round"/>'
    )


def words(x: float, y: float, text: str, size: int = 13, anchor: str = "middle") -> str:
    """Return a line of text."""
    return f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size}" text-anchor="{anchor}">{text}</text>'


# The bee, in shares of its length.
HEAD, HEAD_WIDE, THORAX, THORAX_WIDE, ABDOMEN_WIDE, HAIR = 0.16, 0.26, 0.30, 0.30, 0.34, 44


def outline(length: float, wide: float) -> Callable[[float], float]:
    """Return half the width of the abdomen at a depth below its top."""

    def half(depth: float) -> float:
        share = min(max(depth / length, 0.0), 1.0)
        return wide / 2 * max(math.sin(math.pi * share**0.62) ** 0.62, 0.0)

    return half


def band(
    x: float, top: float, half: Callable[[float], float], a: float, b: float, fill: str
) -> str:
    """Return a band across the abdomen between two depths."""
    steps = [a + (b - a) * k / 8 for k in range(9)]
    right = [(x + half(s), top + s) for s in steps]
    left = [(x - half(s), top + s) for s in reversed(steps)]
    path = " L ".join(f"{px:.1f} {py:.1f}" for px, py in (*right, *left))
    return f'<path d="M {path} Z" fill="{fill}"/>'


def bee(x: float, top: float, size: float) -> str:
    """Return a honey bee from above, head up; ``size`` is its length in the drawing."""
    head, thorax = HEAD * size, THORAX * size
    t_mid, a_top = top + head + thorax / 2, top + head + thorax
    a_len = size - head - thorax
    half = outline(a_len, ABDOMEN_WIDE * size)
    edge = [k / 20 * a_len for k in range(21)]
    return "".join(
        [
            *_legs(x, t_mid, size),
            *_antennae(x, top, size),
            *[
                band(x, a_top, half, (k + a) * a_len / 6, (k + b) * a_len / 6, fill)
                for k in range(6)
                for a, b, fill in ((0, 0.55, MID), (0.55, 1, PALE if k < 3 else DARK))
            ],
            line(
                *[(x + half(d), a_top + d) for d in edge],
                *[(x - half(d), a_top + d) for d in reversed(edge)],
                (x, a_top),
                width=1.2,
            ),
            ellipse(x, t_mid, THORAX_WIDE * size / 2, thorax / 2, MID),
            ellipse(x, top + head / 2, HEAD_WIDE * size / 2, head / 2, DARK),
            *_eyes(x, top + head / 2, size),
            _hair(x, t_mid, thorax, a_top, a_len, half, size),
            *_wings(x, t_mid, size),
        ]
    )


def _legs(x: float, y: float, size: float) -> list[str]:
    made = []
    for side in (-1, 1):
        for start, out, down in ((-0.06, 0.25, -0.10), (0.02, 0.30, 0.12), (0.08, 0.27, 0.36)):
            knee = (x + side * out * 0.6 * size, y + (start + down * 0.3) * size)
            end = (x + side * out * size, y + (start + down) * size)
            made.append(line((x, y + start * size), knee, end, width=max(0.02 * size, 1.2)))
    return made


def _antennae(x: float, top: float, size: float) -> list[str]:
    return [
        line(
            (x + side * 0.03 * size, top + 0.02 * size),
            (x + side * 0.08 * size, top - 0.07 * size),
            (x + side * 0.16 * size, top - 0.10 * size),
            width=max(0.016 * size, 1.1),
        )
        for side in (-1, 1)
    ]


def _eyes(x: float, y: float, size: float) -> list[str]:
    away = HEAD_WIDE * size * 0.36
    return [
        ellipse(x + side * away, y, 0.035 * size, HEAD * size * 0.36, BLACK, 0.5)
        for side in (-1, 1)
    ]


def _wings(x: float, y: float, size: float) -> list[str]:
    made = []
    for side in (-1, 1):
        tip = (x + side * 0.21 * size, y + 0.60 * size)
        made.append(
            f'<path d="M {x + side * 0.07 * size:.1f} {y - 0.02 * size:.1f} '
            f"Q {x + side * 0.30 * size:.1f} {y + 0.16 * size:.1f} {tip[0]:.1f} {tip[1]:.1f} "
            f"Q {x + side * 0.13 * size:.1f} {y + 0.30 * size:.1f} {x + side * 0.07 * size:.1f} "
            f'{y - 0.02 * size:.1f} Z" fill="#fff" fill-opacity="0.35" stroke="#000" '
            'stroke-width="0.7"/>'
        )
    return made


def _hair(
    x: float,
    t_mid: float,
    thorax: float,
    a_top: float,
    a_len: float,
    half: Callable[[float], float],
    size: float,
) -> str:
    picked = random.Random(1)
    hairs = ""
    for k in range(HAIR):
        turn = 2 * math.pi * k / HAIR
        rx, ry = THORAX_WIDE * size / 2, thorax / 2
        out = 0.05 * size * (0.7 + 0.6 * picked.random())
        hairs += (
            f"M{x + rx * math.cos(turn):.1f} {t_mid + ry * math.sin(turn):.1f}"
            f"l{out * math.cos(turn):.1f} {out * math.sin(turn):.1f}"
        )
    for k in range(HAIR // 2):
        depth = a_len * (k + 0.5) / (HAIR // 2)
        for side in (-1, 1):
            out = 0.035 * size * (0.7 + 0.6 * picked.random())
            hairs += f"M{x + side * half(depth):.1f} {a_top + depth:.1f}l{side * out:.1f} {0.6 * out:.1f}"
    return f'<path d="{hairs}" fill="none" stroke="#000" stroke-linecap="round"/>'


def kind(x: float, base: float, key: str, scale: float) -> str:
    """Return a worker of a species from above, the tip of its abdomen on the height ``base``."""
    size = middle(key) * scale
    return f'<g transform="translate({x:g} {base - size:.1f})">{wasp(KINDS[key], size)}</g>'


def middle(key: str) -> float:
    """Return the middle of the range of the workers, in mm."""
    found = length_range(key, "worker")
    assert found is not None
    return sum(found) / 2


def page(name: str, height: float, title: str, description: str, body: str) -> None:
    """Write one figure."""
    text = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {height:.0f}" role="img" '
        f'font-family="sans-serif">\n<title>{title}</title>\n<desc>{description}</desc>\n'
        f'<rect width="{WIDTH}" height="{height:.0f}" fill="#fff"/>\n{body}\n</svg>\n'
    )
    (OUT / f"{name}.svg").write_text(text.replace("><", ">\n<"), encoding="utf-8")


def scale_bar(x: float, y: float, scale: float, mm: int = 10) -> str:
    """Return a bar of some millimetres."""
    end = x + mm * scale
    return (
        line((x, y), (end, y), width=2)
        + line((x, y - 4), (x, y + 4))
        + line((end, y - 4), (end, y + 4))
        + words(end + 6, y + 4, f"{mm} mm", 13, "start")
    )


def sizes() -> None:
    """Workers of six animals to one scale, beside a coin and a paper clip."""
    scale = 4.4
    body, base = [], 209.0
    for x, key, name in (
        (28, "honey_bee", ("honey", "bee")),
        (84, "vulgaris", ("yellow-", "jacket")),
        (146, "velutina", ("yellow-", "legged")),
        (218, "crabro", ("European", "hornet")),
        (304, "mandarinia", ("giant", "hornet")),
    ):
        size = middle(key) * scale
        bees = key == "honey_bee"
        body.append(bee(x, base - size, size) if bees else kind(x, base, key, scale))
        body += [words(x, base + 17, name[0]), words(x, base + 31, name[1])]
    coin = familiar_length("dime") * scale
    body.append(ellipse(52, 290, coin / 2, coin / 2, WHITE))
    body += [words(52, 294, "dime"), scale_bar(130, 300, scale)]
    clip = familiar_length("paper_clip") * scale
    body.append(_clip(130, 262, clip, 6.5 * scale / 2))
    body.append(words(130 + clip + 6, 270, "clip", 13, "start"))
    page(
        "sizes", 345, "Workers to one scale",
        "Five animals from above: honey bee and yellowjacket about as long as each other, the "
        "yellow-legged and the European hornet about half as long again, the giant hornet more "
        "than twice as long. Below them a dime, a paper clip and a bar of 10 mm.",
        "\n".join(body),
    )  # fmt: skip


def _clip(x: float, y: float, length: float, r: float) -> str:
    return (
        f'<rect x="{x}" y="{y - r / 2:.1f}" width="{length:.1f}" height="{2 * r:.1f}" '
        f'rx="{r:.1f}" fill="none" stroke="#000" stroke-width="2"/>'
        f'<rect x="{x + 8}" y="{y:.1f}" width="{length - 24:.1f}" height="{r:.1f}" '
        f'rx="{r / 2:.1f}" fill="none" stroke="#000" stroke-width="2"/>'
    )


def bee_and_yellowjacket() -> None:
    """Honey bee and yellowjacket side by side."""
    scale = 15.0
    size = middle("honey_bee") * scale
    body = [
        bee(92, 300 - size, size),
        kind(268, 300, "vulgaris", scale),
        _pollen(92, 300 - size * 0.32, size),
        words(92, 20, "Honey bee", 15),
        words(268, 20, "Yellowjacket", 15),
    ]
    for y, left, right in (
        (324, "furry", "smooth"),
        (342, "no clear waist", "narrow waist"),
        (360, "dull bands", "bright bands"),
        (378, "pollen on flat hind legs", "no pollen"),
    ):
        body += [words(92, y, left), words(268, y, right)]
    page(
        "bee_and_yellowjacket", 394, "Honey bee and yellowjacket",
        "Two animals of the same length from above. The honey bee is furry, has no clear waist, "
        "dull bands and lumps of pollen on flat hind legs. The yellowjacket is smooth, with a "
        "narrow waist, bright bands and thin legs.",
        "\n".join(body),
    )  # fmt: skip


def _pollen(x: float, y: float, size: float) -> str:
    return "".join(
        ellipse(x + side * 0.25 * size, y + 0.02 * size, 0.045 * size, 0.075 * size, WHITE)
        for side in (-1, 1)
    )


def hornets() -> None:
    """Three hornets to one scale, with their marks."""
    scale = 6.0
    body, base = [], 268.0
    for x, key, lines in (
        (58, "velutina", ("Yellow-legged", "dark, one orange", "band; leg ends", "yellow")),
        (166, "crabro", ("European", "yellow with dark", "drops; red-brown", "thorax; brown legs")),
        (284, "mandarinia", ("Giant", "broad plain", "orange head;", "even bands")),
    ):
        body.append(kind(x, base, key, scale))
        body.append(words(x, base + 22, lines[0], 15))
        body += [words(x, base + 40 + 16 * k, text) for k, text in enumerate(lines[1:])]
    body.append(scale_bar(14, 20, scale))
    page(
        "hornets", 350, "Three hornets to one scale",
        "Workers of three hornets from above. The yellow-legged hornet is dark with one broad "
        "orange band near the end and yellow leg ends. The European hornet is a little larger, "
        "yellow with dark drops, with red-brown thorax. The giant hornet is far larger, with a "
        "broad plain orange head and even bands.",
        "\n".join(body),
    )  # fmt: skip


def _face(x: float, mark: str) -> str:
    y = 108.0
    parts = [
        line((x - 22, y - 52), (x - 46, y - 84), (x - 70, y - 90), width=5),
        line((x + 22, y - 52), (x + 46, y - 84), (x + 70, y - 90), width=5),
        f'<path d="M {x - 62} {y - 40} Q {x} {y - 92} {x + 62} {y - 40} Q {x + 74} {y + 18} '
        f'{x + 34} {y + 52} L {x - 34} {y + 52} Q {x - 74} {y + 18} {x - 62} {y - 40} Z" '
        'fill="#000" stroke="#000" stroke-width="1.5"/>',
        ellipse(x - 54, y - 8, 15, 36, DARK),
        ellipse(x + 54, y - 8, 15, 36, DARK),
        f'<path d="M {x - 34} {y - 26} Q {x} {y - 62} {x + 34} {y - 26} L {x + 24} {y - 14} '
        f'L {x - 24} {y - 14} Z" fill="#fff"/>',
        f'<path d="M {x - 31} {y - 8} L {x + 31} {y - 8} L {x + 36} {y + 28} L {x + 20} {y + 48} '
        f'L {x - 20} {y + 48} L {x - 36} {y + 28} Z" fill="#fff" stroke="#000" '
        'stroke-width="1.5"/>',
        f'<path d="M {x - 34} {y + 56} L {x - 2} {y + 52} L {x - 2} {y + 66} L {x - 26} {y + 72} '
        f'Z M {x + 34} {y + 56} L {x + 2} {y + 52} L {x + 2} {y + 66} L {x + 26} {y + 72} Z" '
        'fill="#fff" stroke="#000" stroke-width="1.5"/>',
        _notch(x, y, mark),
    ]
    if mark == "dots":
        parts += [ellipse(x + dx, y + dy, 5, 5, BLACK) for dx, dy in ((0, 6), (-13, 28), (13, 28))]
    else:
        parts.append(
            f'<path d="M {x - 6} {y - 8} L {x + 6} {y - 8} L {x + 7} {y + 18} L {x + 22} '
            f"{y + 16} L {x + 20} {y + 28} L {x + 8} {y + 40} L {x - 8} {y + 40} L {x - 20} "
            f'{y + 28} L {x - 22} {y + 16} L {x - 7} {y + 18} Z" fill="#000"/>'
        )
    return "".join(parts)


def _notch(x: float, y: float, mark: str) -> str:
    """Return the yellow beside the eyes: bulging out (German) or indented (common)."""
    made = []
    for side in (-1, 1):
        inner = 40 * side
        bulge = 14 * side if mark == "dots" else 4 * side
        made.append(
            f'<path d="M {x + 33 * side} {y - 34} Q {x + inner + bulge} {y - 22} '
            f'{x + 33 * side} {y - 12} Z" fill="#fff"/>'
        )
    return "".join(made)


def faces() -> None:
    """Faces of two yellowjackets."""
    body = [_face(92, "dots"), _face(268, "anchor")]
    body += [words(92, 206, "German", 15), words(268, 206, "Common", 15)]
    body += [words(92, 224, "three dots"), words(268, 224, "anchor")]
    page(
        "faces", 240, "Faces of two yellowjackets",
        "Two faces from the front. On the plate above the jaws the German yellowjacket has three "
        "black dots in a triangle. The common yellowjacket has a broad black anchor, thicker "
        "below.",
        "\n".join(body),
    )  # fmt: skip


def _side(x: float, y: float, size: float, slender: bool) -> str:
    """Return a wasp in flight from the side, head left."""
    wide = 0.085 if slender else 0.125
    parts = []
    thorax = (x + 0.27 * size, y)
    if slender:
        for k in range(3):
            sx = thorax[0] + 0.03 * size * k
            parts.append(
                line(
                    (sx, y + 0.06 * size),
                    (sx + 0.10 * size, y + 0.22 * size),
                    (sx + 0.36 * size, y + 0.34 * size),
                    width=2.2,
                )
            )
    else:
        for k in range(3):
            sx = thorax[0] + 0.03 * size * k
            parts.append(
                line(
                    (sx, y + 0.07 * size),
                    (sx + 0.05 * size, y + 0.15 * size),
                    (sx + 0.12 * size, y + 0.14 * size),
                    width=2.2,
                )
            )
    start = 0.50 if slender else 0.42
    parts.append(line(thorax, (x + (start + 0.06) * size, y + 0.02 * size), width=3))
    middle_x = x + (start + 1.0) / 2 * size
    half = (1.0 - start) / 2 * size
    if slender:
        parts.append(
            f'<path d="M {x + start * size:.1f} {y:.1f} Q {middle_x:.1f} '
            f"{y - 2.1 * wide * size:.1f} "
            f"{x + size:.1f} {y + 0.05 * size:.1f} Q {middle_x:.1f} {y + 2.4 * wide * size:.1f} "
            f'{x + start * size:.1f} {y:.1f} Z" fill="#fff" stroke="#000" stroke-width="1.4"/>'
        )
    else:
        parts.append(ellipse(middle_x, y + 0.02 * size, half, wide * size, WHITE))
    for k in range(4):
        bx = x + (start + (1 - start) * (0.22 + 0.19 * k)) * size
        reach = wide * size * (0.85 - 0.12 * k if k else 0.75)
        parts.append(line((bx, y - reach * 0.8), (bx + 2, y + reach * 1.1), width=4))
    parts.append(ellipse(*thorax, 0.14 * size, 0.10 * size, BLACK))
    parts.append(ellipse(x + 0.07 * size, y, 0.065 * size, 0.075 * size, WHITE))
    parts.append(ellipse(x + 0.06 * size, y, 0.03 * size, 0.05 * size, BLACK))
    parts.append(
        line((x + 0.03 * size, y - 0.05 * size), (x - 0.06 * size, y - 0.11 * size), width=2.4)
    )
    parts.append(
        f'<path d="M {thorax[0]:.1f} {y - 0.08 * size:.1f} Q {thorax[0] + 0.10 * size:.1f} '
        f"{y - 0.46 * size:.1f} {thorax[0] + 0.34 * size:.1f} {y - 0.40 * size:.1f} Q "
        f"{thorax[0] + 0.22 * size:.1f} {y - 0.20 * size:.1f} {thorax[0]:.1f} "
        f'{y - 0.08 * size:.1f} Z" fill="#eee" stroke="#000" stroke-width="1"/>'
    )
    return "".join(parts)


def paper_wasp() -> None:
    """Paper wasp and yellowjacket in flight."""
    scale = 10.5
    left, right = middle("dominula") * scale, middle("vulgaris") * scale
    body = [
        _side(18, 84, left, slender=True),
        _side(204, 84, right, slender=False),
        words(90, 170, "Paper wasp", 15),
        words(272, 170, "Yellowjacket", 15),
        words(90, 188, "long legs trail,"),
        words(90, 204, "abdomen a spindle"),
        words(272, 188, "legs tucked in,"),
        words(272, 204, "abdomen stout"),
    ]
    page(
        "paper_wasp", 216, "Paper wasp and yellowjacket in flight",
        "Two wasps in flight from the side. The paper wasp is slim, its abdomen a spindle on a "
        "narrow waist, its long legs trail. The yellowjacket is stout and tucks its legs in.",
        "\n".join(body),
    )  # fmt: skip


def nests() -> None:
    """Four nests: what hides the comb."""
    body = [
        '<path d="M 20 18 H 160" stroke="#000" stroke-width="4"/>',
        _ball(90, 74),
        '<path d="M 200 18 H 340" stroke="#000" stroke-width="4"/>',
        _shell(270, 74),
        '<path d="M 20 196 H 160" stroke="#000" stroke-width="4"/>',
        _open_comb(90, 196),
        '<path d="M 200 196 H 340" stroke="#000" stroke-width="4"/>',
        _wax(270, 196),
    ]
    for x, y, one, two in (
        (90, 150, "paper ball,", "small hole"),
        (270, 150, "paper shell,", "open below"),
        (90, 292, "open paper comb", "on a stalk"),
        (270, 292, "wax sheets: bees,", "stop"),
    ):
        body += [words(x, y, one), words(x, y + 16, two)]
    page(
        "nests", 320, "What hides the comb",
        "Four nests. A closed paper ball with a small hole in its side. A paper shell open below, "
        "with tiers of comb inside. One bare paper comb on a stalk, cells open downward. Wax "
        "sheets hanging side by side, with cells on both faces: bees.",
        "\n".join(body),
    )  # fmt: skip


def _ball(x: float, y: float) -> str:
    scales = "".join(
        f'<path d="M {x - 40 + 4 * (k % 2)} {y - 34 + 13 * k} q 20 12 40 0 q 20 12 40 0" '
        'fill="none" stroke="#777" stroke-width="1.2"/>'
        for k in range(6)
    )
    return ellipse(x, y, 46, 54, "#eee", 1.6) + scales + ellipse(x + 30, y + 8, 6, 6, BLACK)


def _shell(x: float, y: float) -> str:
    tiers = "".join(
        f'<rect x="{x - 34 + 3 * k}" y="{y - 30 + 22 * k}" width="{68 - 6 * k}" height="9" '
        'fill="#fff" stroke="#000" stroke-width="1.4"/>'
        f'<path d="M {x - 12} {y - 21 + 22 * k} v 13 M {x + 12} {y - 21 + 22 * k} v 13" '
        'stroke="#000" stroke-width="3"/>'
        for k in range(3)
    )
    tiers += (
        f'<rect x="{x - 25}" y="{y + 36}" width="50" height="9" fill="#fff" stroke="#000" '
        'stroke-width="1.4"/>'
    )
    return (
        f'<path d="M {x - 40} {y + 44} Q {x - 60} {y - 40} {x - 6} {y - 54} L {x + 6} {y - 54} '
        f'Q {x + 60} {y - 40} {x + 40} {y + 44}" fill="#eee" stroke="#000" stroke-width="1.6"/>'
        + tiers
    )


def _open_comb(x: float, y: float) -> str:
    cells = "".join(
        f'<path d="M {x - 42 + 12 * k} {y + 58} v -18 h 12 v 18" fill="#fff" stroke="#000" '
        'stroke-width="1.4"/>'
        for k in range(7)
    )
    return f'<path d="M {x} {y} v 40" stroke="#000" stroke-width="4"/>' + cells


def _wax(x: float, y: float) -> str:
    made = []
    for k in range(4):
        left = x - 54 + 30 * k
        made.append(
            f'<rect x="{left}" y="{y + 2}" width="18" height="72" rx="6" fill="{PALE}" '
            'stroke="#000" stroke-width="1.4"/>'
        )
        made.append(f'<path d="M {left + 9} {y + 4} v 66" stroke="#000" stroke-width="1.2"/>')
        made += [
            f'<path d="M {left} {y + 14 + 11 * j} h 18" stroke="#000" stroke-width="0.8"/>'
            for j in range(6)
        ]
    return "".join(made)


if __name__ == "__main__":
    for draw in (sizes, bee_and_yellowjacket, hornets, faces, paper_wasp, nests):
        draw()
