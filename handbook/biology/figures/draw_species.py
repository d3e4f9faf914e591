"""Draw each species of the part Biology beside a ruler, all to one scale, and again larger.

Lengths come from ``calc/tables/species_size.toml``, marks from ``kinds.py``. Run from the root of
the book: ``python handbook/biology/figures/draw_species.py``. The same input gives the same files.
"""

from __future__ import annotations

import sys
from pathlib import Path

HERE = OUT = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parents[2])]

from animals import wasp
from kinds import KINDS

from calc.biology.trait_table import length_range

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
    large = 206.0
    head = FLOOR - LARGE
    parts = [
        ruler(low, high),
        f'<defs><g id="{key}">{wasp(KINDS[key], LARGE)}</g></defs>',
        f'<use href="#{key}" transform="translate(84 {FLOOR - size:.1f}) scale({size / LARGE:.4f})"/>',
        f'<use href="#{key}" transform="translate({large:.0f} {head:.0f})"/>',
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


def main() -> None:
    """Write the drawing of every species."""
    for key in KINDS:
        (OUT / f"species_{key}.svg").write_text(species(key), encoding="utf-8")


if __name__ == "__main__":
    main()
