"""Draw the figures of the procedure pages, in black, white and grey.

Run from the root of the book: ``python handbook/method/figures/draw_procedures.py``.
The same input gives the same files.  Sizes named in the drawing of the vacuum are those its
calculators open with; a test compares them.
"""

from __future__ import annotations

import sys
from pathlib import Path

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE))

from procedure_places import PLACES
from procedure_shapes import (
    arc,
    area,
    badge,
    box,
    curve,
    figure,
    line,
    nest,
    oval,
    pillars,
    sign,
    tier,
    tube,
    wasp,
    words,
)


def approach() -> str:
    """Return the approach from above."""
    parts = [
        curve(arc(180, 48, 136, 8, 172), 1.6, "3 5"),
        curve(arc(180, 48, 246, 45, 135), 2, "9 5"),
        oval(180, 48, 34, 34, "url(#wood)", 2),
        '<path d="M 172 76 L 178 62 H 184 L 190 77 Z" fill="#fff" stroke="#000"/>',
        area([(181, 84), (154, 222), (208, 222)], "#eee", 1),
        line([(181, 90), (181, 214)], 1.6, "5 5", True),
        wasp(181, 126, 90, True),
        wasp(172, 180, 80, True),
        words(181, 242, "line of flight:", "stay out", anchor="middle"),
        oval(96, 110, 15, 15, "#fff", 2.5),
        oval(96, 110, 8, 8, "url(#mesh)", 1),
        tube(164, 80, -24, 56, 14),
        words(28, 60, "you: beside", "the line"),
        line([(70, 80), (84, 98)], 1),
        line([(82, 122), (22, 186)], 2.5, "", True),
        words(6, 208, "way out,", "free"),
        words(222, 110, "suited people", "only"),
        words(232, 208, "nobody else", "inside this line"),
        line([(286, 230), (292, 246)], 1),
        oval(316, 296, 13, 13, "#888", 2.5),
        words(296, 301, "partner, outside", anchor="end"),
        words(226, 40, "wall or tree"),
    ]
    return figure(
        316,
        "The approach, seen from above",
        "The nest is at the top, its line of flight a grey wedge that points away from it. You "
        "stand beside that wedge with the hose coming in from the side, and a way out lies "
        "behind you. A dotted arc marks where only suited people stand, a dashed arc farther out "
        "the line that nobody else crosses. Your partner stands outside it.",
        parts,
    )


def _corner(y: float) -> list[str]:
    """Return a piece of a board wall with a hole and a nozzle beside it, for a row of the knock."""
    return [
        area([(250, y), (290, y), (290, y + 46), (250, y + 46)], "url(#wood)"),
        area([(250, y + 66), (290, y + 66), (290, y + 118), (250, y + 118)], "url(#wood)"),
        tube(242, y + 72, -58, 46, 20),
    ]


def first_knock() -> str:
    """Return the first disturbance in three steps."""
    parts = []
    for k, said in enumerate(
        (
            ("Air on, nozzle at", "the hole, nothing", "touched yet."),
            ("One light knock,", "below the hole,", "from the side."),
            ("They fly out, circle", "and come back:", "catch them there."),
        )
    ):
        y = 8 + k * 126
        parts += [
            *_corner(y),
            badge(18, y + 26, str(k + 1)),
            words(36, y + 31, *said),
            box(2, y, 356, 118, "none", 1),
        ]
    parts += [
        wasp(262, 64, 180, scale=0.8),
        line([(338, 232), (294, 240)], 4),
        *[curve(arc(292, 240, r, 130, 220), 1.4) for r in (8, 14, 20)],
        wasp(220, 178, 190, True, 0.9),
        words(318, 226, "stick", anchor="middle"),
        curve("M 236 316 C 190 262 150 330 196 352 C 214 360 230 344 240 328", 1.8, "5 4", True),
        wasp(184, 292, 150, True, 0.9),
        wasp(200, 352, -10, True, 0.9),
    ]
    return figure(
        388,
        "The first knock, in three steps",
        "One: the air runs and the nozzle stands beside the hole in the boards; nothing "
        "is touched yet. Two: a stick knocks lightly on the wood below the hole and a wasp flies "
        "out. Three: wasps fly a loop and come back to the hole, where the nozzle waits.",
        parts,
    )


def hold_the_mouth() -> str:
    """Return four ways to hold the nozzle."""
    cells = ((2, 2), (182, 2), (2, 196), (182, 196))
    parts = [box(x, y, 176, 190, "none", 1) for x, y in cells]
    parts += [  # round hole
        area([(30, 20), (52, 20), (52, 66), (30, 66)], "url(#wood)"),
        area([(30, 88), (52, 88), (52, 142), (30, 142)], "url(#wood)"),
        tube(66, 90, -150, 70, 24),
        curve("M 44 76 C 70 66 84 72 74 86", 1.8, "", True),
        wasp(98, 62, 160, True, 0.8),
        sign(160, 20, True),
        words(90, 160, "Hole: beside, below,", "at an angle", anchor="middle"),
    ]
    parts += [  # nozzle pressed on the hole
        area([(210, 20), (232, 20), (232, 66), (210, 66)], "url(#wood)"),
        area([(210, 88), (232, 88), (232, 142), (210, 142)], "url(#wood)"),
        tube(234, 77, 180, 92, 30),
        wasp(222, 77, 0, False, 0.7),
        wasp(200, 120, 90, True, 0.7),
        sign(340, 20, False),
        words(270, 160, "Pressed on: no air,", "they find another way", anchor="middle"),
    ]
    parts += [  # slot
        area([(14, 212), (88, 212), (88, 230), (14, 230)], "url(#wood)"),
        area([(100, 212), (166, 212), (166, 230), (100, 230)], "url(#wood)"),
        area([(84, 250), (126, 250), (116, 282), (98, 282)], "#bbb", 3),
        tube(107, 282, -90, 48, 18),
        line([(94, 216), (100, 244)], 1.8, "", True),
        wasp(70, 250, -30, True, 0.8),
        sign(20, 252, True),
        words(90, 354, "Slit: a flat nozzle,", "moved along it", anchor="middle"),
    ]
    parts += [  # collar
        area([(210, 212), (232, 212), (232, 260), (210, 260)], "url(#wood)"),
        area([(210, 282), (232, 282), (232, 330), (210, 330)], "url(#wood)"),
        area([(234, 246), (268, 258), (268, 284), (234, 296)], "#eee", 2.5),
        tube(268, 271, 180, 82, 26),
        line([(196, 271), (252, 271)], 1.8, "", True),
        line([(244, 228), (240, 244)], 1.6, "", True),
        line([(244, 316), (240, 300)], 1.6, "", True),
        words(252, 232, "air by gaps", size=13),
        sign(340, 216, True),
        words(270, 354, "Collar: all air comes", "through the hole", anchor="middle"),
    ]
    return figure(
        390,
        "Four ways to hold the nozzle",
        "Top left, right: the nozzle stands beside and below a round hole at an angle, and a wasp "
        "that flies out is drawn in. Top right, wrong: the nozzle is pressed flat on the hole, so "
        "no air comes and a wasp leaves inside by another way. Bottom left, right: a flat nozzle "
        "along a slit in a soffit. Bottom right, right: a collar round the hole with small gaps, "
        "so that the air passes through the hole.",
        parts,
    )


def vacuum() -> str:
    """Return the catch vacuum from the side, with its parts lettered."""
    # One hose is drawn as one path, so that no seam shows inside the box.
    hose = "M 140 60 C 186 60 60 96 40 128 C 30 150 56 156 112 156"
    parts = [
        box(84, 106, 196, 168, "#fff", 3.5),
        curve(hose, 27),
        f'<path d="{hose}" fill="none" stroke="#bbb" stroke-width="20"/>',
        tube(44, 60, 180, 100, 27),
        box(16, 44, 15, 32, "#fff", 2),
        curve("M 31 48 C 50 26 70 28 84 45", 1.2),
        oval(100, 46.5, 3.5, 3.5, "#fff", 1.5),
        curve("M 192 112 C 236 150 236 176 196 214", 2.6),
        curve("M 198 112 C 244 150 244 178 202 214", 1.2, "3 3"),
        line([(88, 208), (190, 208)], 2.5),
        *[line([(x, 208), (x + 3, 264)], 2, "7 3") for x in (104, 122, 166, 182)],
        box(274, 196, 12, 66, "url(#mesh)", 2),
        box(286, 186, 54, 84, "#888", 2.5),
        oval(313, 228, 20, 20, "#fff", 2.5),
        line([(313, 212), (313, 244)], 2),
        line([(297, 228), (329, 228)], 2),
        box(214, 99, 52, 13, "url(#mesh)", 2),
        box(104, 267, 52, 13, "url(#mesh)", 2),
        line([(112, 176), (208, 176)], 1.2),
        line([(112, 170), (112, 182)], 1.2),
        line([(208, 170), (208, 182)], 1.2),
        wasp(204, 150, -20, True, 0.7),
    ]
    for x, y, letter in (
        (44, 20, "A"),
        (12, 92, "B"),
        (100, 24, "C"),
        (28, 176, "D"),
        (160, 190, "E"),
        (222, 196, "F"),
        (226, 256, "G"),
        (262, 222, "H"),
        (240, 82, "I"),
        (144, 236, "J"),
        (313, 170, "K"),
    ):
        parts.append(badge(x, y, letter))
    parts += [
        line([(44, 31), (44, 46)], 1),
        line([(15, 82), (20, 76)], 1),
        line([(100, 35), (100, 42)], 1),
        badge(130, 300, "I"),
        words(196, 30, "A nozzle 38 or 63 mm"),
        words(196, 50, "D hose 3 m"),
        words(6, 330, "E hose end to net 30 cm"),
        words(6, 350, "F net gives 100 mm"),
        words(6, 370, "G box 25 cm wide, 20 L"),
        words(190, 330, "H mesh 2.5 mm, 400 cm²"),
        words(190, 350, "I vents, 110 cm² each"),
        words(190, 370, "B plug  C gauge hole"),
        words(190, 390, "J strips  K machine"),
    ]
    return figure(
        400,
        "The catch vacuum",
        "From the left: the nozzle A with a plug B on a cord and a taped gauge hole C, the hose D, "
        "a hard box G. The hose ends inside the box and blows across the gap E at a net F that "
        "hangs with slack. Strips J hang beside it. A mesh H stands before the machine K, out of "
        "the jet. Vents I with shutters lie high and low.",
        parts,
    )


def film() -> str:
    """Return film round a nest, and a hard box."""
    parts = [
        box(2, 2, 176, 236, "none", 1),
        box(182, 2, 176, 236, "none", 1),
        box(20, 14, 140, 14, "url(#wood)"),
        nest(90, 28, (60, 86, 92, 70), 26),
        '<path d="M 26 28 C 16 80 18 130 40 168 H 140 C 162 130 164 80 154 28" fill="none" '
        'stroke="#000" stroke-width="2" stroke-dasharray="12 5"/>',
        '<path d="M 32 28 C 22 80 26 126 46 160 H 134 C 156 126 158 80 148 28" fill="none" '
        'stroke="#666" stroke-width="1"/>',
        wasp(154, 96, -20, False, 0.9),
        wasp(36, 160, 130, False, 0.9),
        wasp(160, 146, 30, True, 0.9),
        sign(20, 46, False),
        words(90, 204, "Film: they bite holes", "and come out", anchor="middle"),
        box(208, 40, 124, 124, "#fff", 5),
        box(204, 56, 10, 44, "url(#mesh)", 2),
        box(326, 56, 10, 44, "url(#mesh)", 2),
        nest(270, 46, (56, 70, 62), 30),
        line([(230, 36), (240, 36)], 6),
        line([(300, 36), (310, 36)], 6),
        wasp(222, 148, 0, False, 0.8),
        sign(340, 20, True),
        words(
            270,
            186,
            "Hard box, wire mesh,",
            "two closures: holds",
            "for the drive",
            anchor="middle",
        ),
    ]
    return figure(
        240,
        "Film does not hold them, a hard box does",
        "Left, wrong: a nest under a board is wrapped in film; wasps sit in holes they bit and "
        "one flies out. Right: tiers stand in a hard box with wire mesh at both sides and two "
        "closures.",
        parts,
    )


def lift_by_pillars() -> str:
    """Return where a hand takes a tier."""
    parts = [
        box(2, 2, 356, 164, "none", 1),
        tier(60, 92, 210, 34),
        pillars(60, 32, 110, 140, 190, 220, width=9),
        curve("M 96 30 C 98 48 100 62 108 76", 9),
        curve("M 152 30 C 150 50 148 62 143 76", 9),
        curve("M 178 30 C 180 48 182 62 187 76", 9),
        curve("M 234 30 C 232 50 230 62 223 76", 9),
        sign(24, 26, True),
        words(278, 64, "pillars:"),
        words(278, 81, "hard, they", "carry it"),
        line([(274, 70), (228, 72)], 1),
        words(165, 22, "two fingers on each side", anchor="middle"),
        words(165, 152, "cells down, tier level", anchor="middle"),
        box(2, 172, 356, 150, "none", 1),
        tier(60, 206, 200, 34),
        pillars(182, 24, 110, 190, width=9),
        '<path d="M 262 214 q -8 4 -16 0 q 8 10 0 14 q 10 2 16 10" fill="#fff" stroke="#000"/>',
        curve("M 340 196 C 310 200 284 204 258 206", 9),
        curve("M 340 256 C 310 252 284 246 258 240", 9),
        oval(130, 262, 5, 10, "#fff", 1.6),
        oval(160, 270, 5, 10, "#fff", 1.6),
        line([(130, 242), (130, 250)], 1.4, "2 2"),
        line([(160, 242), (160, 258)], 1.4, "2 2"),
        sign(24, 196, False),
        words(36, 274, "larvae fall"),
        words(180, 308, "held by the rim: cell walls crush", anchor="middle"),
    ]
    return figure(
        324,
        "Lift a tier by its pillars",
        "Above, right: fingers hold a tier by the four pillars on its roof; the cells look down "
        "and the tier is level. Below, wrong: fingers squeeze the rim, the cell walls crush and "
        "larvae fall out.",
        parts,
    )


def tiers_apart() -> str:
    """Return the parting of tiers in four steps."""
    cells = ((2, 2), (182, 2), (2, 194), (182, 194))
    parts = []
    for k, (x, y) in enumerate(cells):
        parts += [box(x, y, 176, 188, "none", 1), badge(x + 16, y + 17, str(k + 1))]
    parts += [  # cut the pillars of the lowest tier
        nest(90, 28, (70, 100, 84), 32),
        line([(28, 94), (152, 94)], 2.5),
        line([(18, 94), (28, 94)], 8),
        line([(152, 94), (162, 94)], 8),
        line([(30, 134), (150, 134)], 3),
        line([(30, 134), (30, 126)], 3),
        line([(150, 134), (150, 126)], 3),
        words(90, 158, "Cut the pillars of", "the lowest tier", anchor="middle"),
    ]
    parts += [  # look at both faces
        tier(220, 78, 100, 20),
        pillars(62, 16, 250, 290, width=6),
        wasp(316, 70, 170, False, 0.8),
        wasp(246, 108, 0, False, 0.8),
        oval(270, 40, 17, 9, "#fff", 2),
        oval(270, 40, 5, 5, "#000", 1),
        line([(262, 50), (250, 62)], 1.2, "3 3"),
        line([(278, 50), (306, 62)], 1.2, "3 3"),
        curve("M 216 124 C 236 136 304 136 324 124", 2),
        words(270, 158, "Look: roof, rim, and", "below with a mirror", anchor="middle"),
    ]
    parts += [  # draw off the last adults
        tier(30, 286, 104, 20),
        pillars(270, 16, 60, 100, width=6),
        wasp(124, 279, 0, False, 0.8),
        tube(146, 266, 120, 52, 22),
        curve("M 30 262 C 40 268 44 272 48 280", 2.5),
        line([(20, 248), (32, 264)], 5),
        words(90, 350, "Brush and draw off the", "last adults, look again", anchor="middle"),
    ]
    parts += [  # into the box
        box(210, 226, 120, 104, "#fff", 4),
        box(206, 240, 9, 32, "url(#mesh)", 2),
        box(325, 240, 9, 32, "url(#mesh)", 2),
        tier(222, 258, 96, 16),
        tier(222, 300, 96, 16),
        line([(216, 278), (324, 278)], 2.5),
        line([(216, 320), (324, 320)], 2.5),
        words(270, 350, "Cells down, one tray", "a tier, lid shut", anchor="middle"),
    ]
    return figure(
        384,
        "Parting the tiers and clearing the last adults",
        "One: a wire cuts the pillars of the lowest tier, a tray is held below. Two: the tier is "
        "looked at from above, round its rim and from below with a mirror; two wasps still sit on "
        "it. Three: a brush and the nozzle take the last ones. Four: tiers lie in a "
        "hard box, cells down, each on its own tray.",
        parts,
    )


def run_away() -> str:
    """Return how to leave when it goes wrong."""
    parts = [
        box(2, 2, 356, 140, "none", 1),
        area([(300, 30), (344, 30), (344, 118), (300, 118)], "#ccc", 2.5),
        oval(308, 78, 3, 3, "#000", 1),
        words(322, 24, "door", anchor="middle"),
        oval(120, 40, 11, 11, "#fff", 2.5),
        line([(118, 52), (106, 84)], 7),
        line([(106, 84), (126, 96), (120, 118)], 5),
        line([(106, 84), (88, 100), (70, 98)], 5),
        line([(116, 58), (134, 60), (128, 42)], 4.5),
        wasp(44, 48, 0, True, 0.9),
        wasp(28, 84, 0, True, 0.9),
        line([(150, 84), (288, 84)], 2.5, "", True),
        words(218, 72, "run, straight, now", anchor="middle"),
        words(218, 104, "see where you run", anchor="middle"),
        sign(20, 22, True),
        words(180, 134, "into car or shed, door shut", anchor="middle"),
        box(2, 148, 356, 120, "none", 1),
        oval(90, 196, 11, 11, "#fff", 2.5),
        line([(90, 208), (74, 230), (98, 228), (92, 246)], 6),
        wasp(54, 186, 20, True, 0.9),
        wasp(122, 178, 160, True, 0.9),
        wasp(120, 214, 200, True, 0.9),
        sign(20, 168, False),
        words(
            170,
            186,
            "Not: crouch, stand,",
            "flap, walk, jump into",
            "water. They stay",
            "with you.",
        ),
    ]
    return figure(
        270,
        "How to leave when they swarm",
        "Above, right: a person runs straight to a door with a hand before the mouth; the wasps "
        "fall behind. Below, wrong: a person crouches and the wasps stay.",
        parts,
    )


DRAWINGS = {
    "approach": approach,
    "first_knock": first_knock,
    "hold_the_mouth": hold_the_mouth,
    "catch_vacuum": vacuum,
    "film": film,
    "lift_by_pillars": lift_by_pillars,
    "tiers_apart": tiers_apart,
    "run_away": run_away,
} | PLACES


if __name__ == "__main__":
    for name, draw in DRAWINGS.items():
        (HERE / f"{name}.svg").write_text(draw(), encoding="utf-8", newline="\n")
