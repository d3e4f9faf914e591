"""Marks of each species as the drawings show them, from the trait table and the species tables."""

from __future__ import annotations

from animals import BLACK, BROWN, IVORY, ORANGE, SPINDLE, YELLOW, Wasp

VELVET = "#2a1a12"
"""Black-brown of the yellow-legged and the giant hornet."""

KINDS: dict[str, Wasp] = {
    "crabro": Wasp(
        head=BROWN, thorax=BROWN, legs=BROWN, thigh=BROWN, antenna=BROWN, head_wide=0.26,
        plates=("brown thinedge15", "front28 drop", "front24 drop", "front20 drop", "front16 drop", "yellow"),
    ),
    "velutina": Wasp(
        face=ORANGE, thorax=VELVET, legs=VELVET, thigh=VELVET, toes=YELLOW, dark=VELVET, base=ORANGE, head_wide=0.26,
        plates=("dark thinedge9", "dark thinedge7", "dark thinedge7", "front22", "dark", "dark"),
    ),
    "mandarinia": Wasp(
        head=ORANGE, face=ORANGE, thorax=VELVET, legs=VELVET, thigh=VELVET, antenna=BROWN,
        dark=VELVET, base=ORANGE, head_wide=0.31, head_long=0.145, wide=0.3, stride=0.88,
        plates=("dark edge28", "front62", "front62", "front62", "front60", "yellow"),
    ),
    "orientalis": Wasp(
        head=BROWN, thorax=BROWN, legs=BROWN, thigh=BROWN, antenna=BROWN, dark=BROWN, head_wide=0.26,
        plates=("brown", "brown", "front12", "yellow", "brown", "brown"),
    ),
    "germanica": Wasp(
        back="bulge rear",
        plates=("front22 diamond dots", "front30 arrow dots", "front28 arrow dots", "front26 arrow dots",
                "front24 arrow dots", "yellow"),
    ),
    "vulgaris": Wasp(
        back="collar rear",
        plates=("front30 anchor", "front42 joined wedge", "front42 joined wedge", "front40 joined wedge",
                "front36 joined wedge", "yellow"),
    ),
    "maculifrons": Wasp(
        back="collar rear",
        plates=("front42 anchor dots", "front50 joined wedge", "front46 joined wedge", "front44 joined wedge",
                "front38 joined wedge", "yellow"),
    ),
    "squamosa": Wasp(
        back="collar stripes rear",
        plates=("front46 wedge", "front56 wedge lines", "front42 wave", "front40 wave", "front36 wave", "yellow"),
    ),
    "pensylvanica": Wasp(
        ring=YELLOW, back="collar rear",
        plates=("front24 diamond", "front34 joined arrow", "front32 joined arrow", "front28 dots arrow",
                "front26 dots arrow", "yellow"),
    ),
    "maculata": Wasp(
        face=IVORY, legs=BLACK, base=IVORY, back="thin scutellum",
        plates=("dark", "dark", "dark", "front40", "front20", "ivory"),
    ),
    "arenaria": Wasp(
        back="collar scutellum",
        plates=("front45 split", "front46 split", "front40 wave", "front36 wave", "front30 wave", "yellow"),
    ),
    "media": Wasp(
        back="thin rear",
        plates=("dark thinedge18", "dark thinedge24", "dark thinedge26", "dark thinedge28", "dark thinedge30",
                "yellow"),
    ),
    "saxonica": Wasp(
        back="collar scutellum",
        plates=("front58", "front52 wave", "front48 wave", "front44 wave", "front40 wave", "yellow"),
    ),
    "dominula": Wasp(
        back="thin rear", antenna=ORANGE, shape=SPINDLE, wide=0.24, head_wide=0.21, thorax_long=0.28,
        waist=0.045, stride=1.22,
        plates=("front70", "front66 pair", "front42 wave", "front38 wave", "front34 wave", "yellow"),
    ),
    "fuscatus": Wasp(
        head=BROWN, face=BROWN, thorax=BROWN, antenna=BROWN, legs=BROWN, thigh=BROWN, dark=BROWN,
        shape=SPINDLE, wide=0.24, head_wide=0.21, thorax_long=0.28, waist=0.045, stride=1.22,
        plates=("dark thinedge16", "dark rust thinedge12", "dark thinedge12", "dark thinedge12",
                "dark thinedge10", "dark"),
    ),
}  # fmt: skip
