"""Draw each species of the part Biology beside a ruler, all to one scale, and again larger.

Lengths come from ``calc/tables/species_size.toml``, marks from ``kinds.py``. Run from the root of
the book: ``python handbook/biology/figures/draw_species.py``. The same input gives the same files.
"""

from __future__ import annotations

import math
import sys
from pathlib import Path

HERE = OUT = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parents[2])]

from animals import BLACK, BROWN, SPINDLE, YELLOW, Wasp, oval, wasp
from draw import bee
from kinds import KINDS

from calc.biology.which_animal.traits import length_range

SCALE = 5.0
"""Pixels of the drawing in one millimetre; the same for all species."""
LARGE = 164.0
"""Length in the drawing of the larger animal, which shows the marks."""
FLOOR = 240.0
RULER = 45

PLACES = {
    "antenna": (0.165, -0.17), "head": (0.08, 0.09), "back": (0.05, 0.24), "rear": (0.05, 0.35),
    "leg": (0.345, 0.43), "T1": (0.09, 0.47), "T2": (0.09, 0.56), "T3": (0.09, 0.65),
    "T4": (0.09, 0.74), "T5": (0.07, 0.83), "tip": (0.02, 0.95), "waist": (0.01, 0.43),
}  # fmt: skip
"""Where a leader line ends, in lengths of the animal beside and below its head."""

TOLD: dict[str, tuple[str, tuple[tuple[str, str], ...]]] = {
    "crabro": ("European hornet", (("head", "red-brown|head"), ("back", "red-brown,|no yellow"),
                                   ("T3", "dark drops|on yellow"), ("leg", "brown legs"))),
    "velutina": ("Yellow-legged hornet", (("back", "dark, plain"), ("T1", "thin yellow|edges"),
                                          ("T4", "one orange|band"), ("leg", "leg ends|yellow"))),
    "mandarinia": ("Northern giant hornet", (("head", "broad plain|orange head"), ("back", "dark"),
                                             ("T2", "even bands"), ("tip", "yellow tip"))),
    "orientalis": ("Oriental hornet", (("back", "all|red-brown"), ("T3", "one wide|yellow zone"),
                                       ("leg", "brown legs"))),
    "germanica": ("German yellowjacket", (("back", "stripe|bulges"), ("rear", "four spots"),
                                          ("T1", "diamond"), ("T3", "free dots"))),
    "vulgaris": ("Common yellowjacket", (("back", "stripe of|one width"), ("rear", "four spots"),
                                         ("T3", "dots run into|the bands"))),
    "maculifrons": ("Eastern yellowjacket", (("back", "no stripes"), ("T1", "wide black|anchor"),
                                             ("T3", "dots run into|the bands"))),
    "squamosa": ("Southern yellowjacket", (("back", "two stripes|down the|back"),
                                           ("T2", "yellow lines|in the black"),)),
    "pensylvanica": ("Western yellowjacket", (("head", "ring round|the eye"), ("T1", "diamond"))),
    "maculata": ("Bald-faced hornet", (("head", "ivory face"), ("back", "few white|lines"),
                                       ("T2", "black"), ("T5", "ivory end"))),
    "arenaria": ("Aerial yellowjacket", (("back", "black,|hairy"), ("T1", "bands broken|in the middle"))),
    "media": ("Median wasp", (("rear", "four small|spots"), ("T2", "thin yellow|bands"))),
    "saxonica": ("Saxon wasp or its like", (("back", "yellow|marks"), ("T2", "bands"))),
    "dominula": ("European paper wasp", (("antenna", "orange|antennae"), ("T1", "tapers to|the waist"),
                                         ("leg", "long legs"))),
    "fuscatus": ("Northern paper wasp or its like", (("head", "brown face"), ("T1", "tapers to|the waist"),
                                         ("T2", "rust spots"), ("T4", "thin edges"))),
}  # fmt: skip
"""Name, and the marks a leader line points at."""


def words(x: float, y: float, text: str, anchor: str = "middle") -> str:
    """Return lines of text parted by a bar."""
    return "".join(
        f'<text x="{x:.0f}" y="{y + 15 * k:.0f}" font-size="13" text-anchor="{anchor}">{each}</text>'
        for k, each in enumerate(text.split("|"))
    )


def ruler(low: float, high: float) -> str:
    """Return a ruler of millimetres, with a bar from the shortest to the longest worker."""
    ticks = "".join(
        f"M24 {FLOOR - mm * SCALE:.0f}h{8 if mm % 10 == 0 else 5}" for mm in range(0, RULER + 1, 5)
    )
    marks = "".join(
        words(20, FLOOR - mm * SCALE + 4, str(mm), "end") for mm in range(0, RULER + 1, 10)
    )
    bar = (
        f'<path d="M24 {FLOOR - low * SCALE:.1f}V{FLOOR - high * SCALE:.1f}" stroke="#000" '
        'stroke-width="7"/>'
        if high > low
        else f'<circle cx="24" cy="{FLOOR - high * SCALE:.1f}" r="4.5"/>'
    )
    return f'<path d="M24 {FLOOR:.0f}v{-RULER * SCALE:.0f}{ticks}" fill="none" stroke="#000"/>{marks}{bar}'


def species(key: str) -> str:
    """Return the drawing of one species."""
    found = length_range(key, "worker")
    assert found is not None
    low, high = found
    name, told = TOLD[key]
    size = (low + high) / 2 * SCALE
    # the feet end short of the words
    large = 266.0 - LARGE * (0.04 + 0.33 * KINDS[key].stride)
    head = FLOOR - LARGE
    parts = [
        ruler(low, high),
        f'<defs><g id="{key}">{wasp(KINDS[key], LARGE)}</g></defs>',
        f'<use href="#{key}" transform="translate(84 {FLOOR - size:.1f}) scale({size / LARGE:.4f})"/>',
        f'<use href="#{key}" transform="translate({large:.1f} {head:.0f})"/>',
    ]
    below = 0.0
    for place, text in told:
        across, down = PLACES[place]
        x, y = large + across * LARGE, head + down * LARGE
        lines = text.count("|") + 1
        at = max(y, below + 8)
        below = at + 15 * lines
        parts.append(
            f'<path d="M{x:.1f} {y:.1f}L272 {at:.1f}" stroke="#fff" stroke-width="3"/>'
            f'<path d="M{x:.1f} {y:.1f}L272 {at:.1f}" stroke="#000"/>'
            f'<circle cx="{x:.1f}" cy="{y:.1f}" r="2.4" stroke="#fff"/>'
        )
        parts.append(words(275, at + 4, text, "start"))
    parts += [words(6, FLOOR + 18, "mm; bar: workers", "start"), words(large, FLOOR + 18, "larger")]
    described = "; ".join(text.replace("|", " ") for _, text in told)
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 360 266" role="img" '
        f'font-family="sans-serif">\n<title>{name}, worker</title>\n<desc>A worker from above beside '
        f"a ruler, and again larger. Marks: {described}.</desc>\n"
        '<rect width="360" height="266" fill="#fff"/>\n' + "\n".join(parts) + "\n</svg>\n"
    )


MUD_DAUBER = Wasp(
    face=BLACK, legs=YELLOW, thigh=YELLOW, waist=0.2, thorax_long=0.26, shape=SPINDLE, wide=0.19,
    head_wide=0.2, stride=1.15, folded=False, plates=("dark",) * 6,
)  # fmt: skip
CICADA_KILLER = Wasp(
    head=BROWN, face=BROWN, thorax=BROWN, legs=BROWN, thigh=BROWN, head_wide=0.22, wide=0.27,
    waist=0.03, feeler=0.22, folded=False,
    plates=("dark bars", "dark bars", "dark bars", "dark", "dark", "dark"),
)  # fmt: skip


def fur(x: float, y: float, rx: float, ry: float, fill: str) -> str:
    """Return an ellipse with a furry edge."""
    count = 2 * round(rx + ry)
    points = " ".join(
        f"{x + rx * (1 + 0.12 * (k % 2)) * math.cos(2 * math.pi * k / count):.1f},"
        f"{y + ry * (1 + 0.12 * (k % 2)) * math.sin(2 * math.pi * k / count):.1f}"
        for k in range(count)
    )
    return f'<polygon points="{points}" fill="{fill}" stroke="#000" stroke-width=".6"/>'


def _limbs(size: float, feeler: float) -> str:
    made = ""
    for s in (-1, 1):
        made += (
            f"M{s * 0.05 * size:.1f} {0.04 * size:.1f}l{s * feeler * size:.1f} {-feeler * size:.1f}"
        )
        for start, x, y in ((0.25, 0.3, 0.16), (0.34, 0.36, 0.42), (0.42, 0.32, 0.66)):
            made += f"M0 {start * size:.1f}L{s * x * size:.1f} {y * size:.1f}"
    return f'<path d="{made}" fill="none" stroke="#000" stroke-width="2.2"/>'


def _spread(size: float, out: float, down: float) -> str:
    """Return one pair of wings held out."""
    made = "".join(
        f"M{s * 0.12 * size:.1f} {0.3 * size:.1f}"
        f"Q{s * out * 1.1 * size:.1f} {0.2 * size:.1f} {s * out * size:.1f} {down * size:.1f}"
        f"Q{s * out * 0.6 * size:.1f} {(down + 0.1) * size:.1f} {s * 0.12 * size:.1f} {0.34 * size:.1f}Z"
        for s in (-1, 1)
    )
    return f'<path d="{made}" fill="#fff" fill-opacity=".6" stroke="#000" stroke-width=".9"/>'


def round_bee(size: float, bare: bool) -> str:
    """Return a bumble bee, or a carpenter bee with its bare shiny abdomen."""
    parts = [_limbs(size, 0.1), oval(0, 0.08 * size, 0.15 * size, 0.09 * size, BLACK)]
    if bare:
        parts.append(oval(0, 0.7 * size, 0.23 * size, 0.3 * size, BLACK, 1))
        parts.append(oval(-0.08 * size, 0.62 * size, 0.04 * size, 0.12 * size, "#999"))
    else:
        parts.append(fur(0, 0.7 * size, 0.25 * size, 0.28 * size, BLACK))
        parts.append(fur(0, 0.59 * size, 0.22 * size, 0.06 * size, YELLOW))
        parts.append(fur(0, 0.91 * size, 0.12 * size, 0.07 * size, "#fff"))
    parts.append(fur(0, 0.3 * size, 0.22 * size, 0.17 * size, YELLOW if bare else BLACK))
    if not bare:
        parts.append(fur(0, 0.2 * size, 0.17 * size, 0.05 * size, YELLOW))
    return "".join(parts) + _spread(size, 0.5, 0.6)


def hover_fly(size: float) -> str:
    """Return a hover fly: great eyes, stubs of antennae, one pair of wings, no waist."""
    bands = "".join(
        oval(s * 0.1 * size, y * size, 0.09 * size, 0.035 * size, YELLOW)
        for y in (0.56, 0.68, 0.8)
        for s in (-1, 1)
    )
    eyes = "".join(
        oval(s * 0.09 * size, 0.08 * size, 0.085 * size, 0.09 * size, BROWN, 1) for s in (-1, 1)
    )
    return (
        _limbs(size, 0.03)
        + oval(0, 0.72 * size, 0.21 * size, 0.28 * size, BLACK, 1)
        + bands
        + oval(0, 0.31 * size, 0.17 * size, 0.16 * size, "#555", 1)
        + eyes
        + _spread(size, 0.62, 0.5)
    )


def lookalikes() -> str:
    """Return the animals that are never taken out, to the scale of the species."""

    def size(key: str) -> float:
        found = length_range(key, "worker")
        assert found is not None
        return sum(found) / 2 * SCALE

    parts = []
    for x, floor, key, name, draw in (
        (40, 140, "honey_bee", "honey bee", lambda s: bee(0, 0, s)),
        (118, 140, "bumble_bee", "bumble bee", lambda s: round_bee(s, False)),
        (225, 140, "carpenter_bee", "carpenter|bee", lambda s: round_bee(s, True)),
        (320, 140, "solitary_bee", "solitary|bee", lambda s: bee(0, 0, s)),
        (80, 380, "cicada_killer", "cicada killer", lambda s: wasp(CICADA_KILLER, s)),
        (196, 380, "solitary_wasp", "mud dauber", lambda s: wasp(MUD_DAUBER, s)),
        (300, 380, "hover_fly", "hover fly", hover_fly),
    ):
        long = size(key)
        parts.append(f'<g transform="translate({x} {floor - long:.1f})">{draw(long)}</g>')
        parts.append(words(x, floor + 20, name))
    parts += [
        f'<path d="M276 206h{10 * SCALE:g}m0 -5v10m{-10 * SCALE:g} 0v-10" fill="none" stroke="#000" '
        'stroke-width="1.6"/>',
        words(276 + 5 * SCALE, 226, "10 mm"),
    ]
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 360 410" role="img" '
        'font-family="sans-serif">\n<title>Animals that are never taken out</title>\n<desc>To the '
        "scale of the species: honey bee, round furry bumble bee, carpenter bee with a bare black "
        "abdomen, solitary bee; cicada killer with rusty thorax and broken yellow bars, mud dauber "
        "with a thread waist, hover fly with great eyes and one pair of wings.</desc>\n"
        '<rect width="360" height="410" fill="#fff"/>\n' + "\n".join(parts) + "\n</svg>\n"
    )


def main() -> None:
    """Write the drawing of every species."""
    for key in KINDS:
        (OUT / f"species_{key}.svg").write_text(species(key), encoding="utf-8")
    (OUT / "lookalikes.svg").write_text(lookalikes(), encoding="utf-8")


if __name__ == "__main__":
    main()
