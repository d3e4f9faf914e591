"""The drawings of a nest in each kind of place."""

from __future__ import annotations

from procedure_shapes import (
    area,
    box,
    curve,
    figure,
    line,
    nest,
    oval,
    person,
    tube,
    words,
)


def place_trunk() -> str:
    """Return a nest in a hollow trunk."""
    parts = [
        area([(150, 0), (250, 0), (256, 280), (144, 280)], "url(#wood)", 2),
        area([(168, 24), (232, 24), (236, 222), (164, 222)], "#fff", 1.6),
        nest(200, 24, (44, 58, 60, 46), 30),
        area([(140, 196), (168, 196), (168, 212), (140, 212)], "#fff", 0),
        curve("M 186 204 C 150 202 110 190 84 176", 1.6, "5 4", True),
        tube(132, 220, -40, 70, 20),
        words(6, 166, "line of flight"),
        words(6, 262, "nozzle beside", "the hole, below"),
        line([(240, 60), (262, 60)], 2.5),
        line([(240, 216), (262, 216)], 2.5),
        line([(256, 60), (256, 216)], 3, "9 5"),
        words(268, 112, "window:", "the arborist", "says whether,", "where, how", "big"),
        words(6, 24, "comb hangs", "above the hole"),
        line([(110, 30), (180, 56)], 1),
    ]
    return figure(
        286,
        "Nest in a hollow trunk",
        "A cut through a trunk. Tiers hang in the hollow above the entrance hole. The nozzle "
        "stands below and beside the hole; the line of flight leads away to the left. "
        "A dashed line at the right marks a window that only an arborist may set.",
        parts,
    )


def place_wall() -> str:
    """Return a nest in a stud wall, seen from above and from the side."""
    parts = [
        words(6, 18, "From above", bold=True),
        area([(10, 30), (350, 30), (350, 46), (10, 46)], "url(#wood)"),
        area([(10, 112), (350, 112), (350, 122), (10, 122)], "#ddd"),
        *[box(x, 46, 20, 66, "#888") for x in (60, 270)],
        oval(175, 80, 70, 28, "#fff", 2),
        oval(175, 80, 56, 20, "none", 1),
        area([(120, 28), (132, 28), (132, 48), (120, 48)], "#fff", 0),
        tube(112, 20, 60, 0, 16),
        words(126, 22, "entrance"),
        words(175, 85, "comb", anchor="middle"),
        words(40, 140, "stud", anchor="middle"),
        words(314, 140, "stud", anchor="middle"),
        line([(84, 132), (266, 132)], 3, "9 5"),
        words(175, 150, "window between the studs,", "from the side you may mend", anchor="middle"),
        line([(296, 80), (344, 80)], 2.5, "6 3"),
        words(300, 74, "wire?"),
        words(6, 204, "Stop", bold=True),
        words(
            6,
            222,
            "Wires not switched off and tested.",
            "Flakes, old board, pipe wrap: asbestos?",
            "Wet, soft or dark plaster: they may break",
            "through into the room. Leave, shut the door.",
        ),
    ]
    return figure(
        284,
        "Nest in a stud wall, seen from above",
        "A wall cut across. Between two studs lies the comb, close to the inner board. The "
        "entrance is a gap in the outer boards. A dashed line marks the window between the studs. "
        "A wire may lie in the next bay. Below stand three reasons to stop.",
        parts,
    )


def place_soffit() -> str:
    """Return a nest in a soffit."""
    parts = [
        area([(0, 40), (250, 8), (250, 26), (0, 60)], "#888", 2),
        area([(60, 56), (76, 54), (76, 140), (60, 140)], "url(#wood)", 1.6),
        area([(230, 29), (246, 27), (246, 290), (230, 290)], "url(#wood)", 2),
        area([(60, 140), (140, 140), (140, 150), (60, 150)], "url(#wood)", 1.6),
        area([(152, 140), (230, 140), (230, 150), (152, 150)], "url(#wood)", 1.6),
        nest(160, 42, (50, 74, 66), 27),
        curve("M 146 132 C 146 168 120 196 90 200", 1.6, "5 4", True),
        tube(158, 160, -100, 54, 18),
        line([(20, 288), (212, 288)], 6),
        line([(34, 288), (34, 300)], 5),
        line([(196, 288), (196, 300)], 5),
        person(182, 285, 92, (166, 212)),
        words(256, 120, "gap in the", "boards:", "entrance"),
        line([(254, 128), (156, 146)], 1),
        words(256, 214, "platform,", "not a ladder,", "for opening"),
        line([(252, 232), (214, 282)], 1),
        words(6, 170, "look both ways", "along the eaves"),
        words(256, 60, "wall"),
    ]
    return figure(
        306,
        "Nest in a soffit",
        "A cut through a roof edge. Three tiers hang from the roof boards above the soffit boards. "
        "The entrance is a gap between two boards. Someone in a suit stands on a platform and "
        "holds the nozzle below and beside the gap.",
        parts,
    )


def place_ground() -> str:
    """Return a nest in the ground."""
    parts = [
        area([(0, 90), (360, 90), (360, 270), (0, 270)], "url(#soil)", 0),
        line([(0, 90), (128, 90)], 3),
        line([(146, 90), (360, 90)], 3),
        '<path d="M 128 90 C 132 124 160 130 176 142 L 192 132 C 172 122 150 116 146 90 Z" '
        'fill="#fff"/>',
        oval(190, 188, 76, 66, "#fff", 2),
        nest(190, 124, (70, 104, 112, 84), 27),
        curve("M 138 100 C 138 60 160 40 200 24", 1.6, "5 4", True),
        tube(126, 84, 12, 74, 22),
        words(210, 22, "line of flight"),
        words(6, 30, "nozzle flat at the edge,", "soil kept out"),
        words(6, 116, "probe here", "first, gently"),
        line([(50, 140), (50, 190)], 2.5, "", True),
        area([(296, 90), (320, 90), (320, 200), (296, 200)], "#fff", 1),
        words(306, 224, "take soil away", "from the side", anchor="middle"),
        line([(308, 104), (308, 190)], 2, "", True),
    ]
    return figure(
        272,
        "Nest in the ground",
        "A cut through the ground. A short tunnel leads to a round cavity with four tiers. The "
        "nozzle lies flat at the edge of the hole. Soil is probed at the left and "
        "taken away from the side at the right, not from above.",
        parts,
    )


def place_shrub() -> str:
    """Return a nest in a shrub."""
    parts = [
        *[
            f'<circle cx="{x}" cy="{y}" r="{r}" fill="#e8e8e8" stroke="#999" stroke-width="1.200"/>'
            for x, y, r in (
                (150, 70, 46),
                (206, 56, 50),
                (260, 84, 44),
                (130, 120, 40),
                (270, 140, 40),
                (200, 150, 54),
            )
        ],
        line([(200, 270), (200, 150), (160, 84)], 6),
        line([(200, 160), (250, 90)], 5),
        oval(206, 116, 38, 52, "#fff", 2.5),
        *[curve(f"M {170 + k} {96 + 16 * k} q 36 14 {72 - 2 * k} 0", 1) for k in range(4)],
        oval(188, 152, 6, 6, "#000", 1),
        curve("M 186 156 C 160 190 120 200 70 196", 1.6, "5 4", True),
        tube(176, 170, -50, 66, 18),
        words(6, 188, "line of flight"),
        words(6, 246, "nozzle below", "the hole"),
        words(258, 30, "cut no twig that"),
        words(258, 47, "holds the nest"),
        line([(256, 42), (240, 76)], 1),
        line([(252, 188), (318, 220)], 3),
        words(250, 254, "hard box held", "under, then cut", anchor="middle"),
        area([(214, 208), (286, 208), (280, 234), (220, 234)], "#fff", 3),
    ]
    return figure(
        276,
        "Nest in a shrub",
        "A round paper nest sits among the twigs of a shrub; its hole is low at one side. The "
        "nozzle stands below the hole. An open hard box is held under the nest before "
        "a twig is cut.",
        parts,
    )


def place_eaves() -> str:
    """Return a nest under eaves."""
    parts = [
        area([(0, 20), (300, 20), (300, 36), (0, 36)], "url(#wood)", 2),
        area([(280, 36), (300, 36), (300, 280), (280, 280)], "url(#wood)", 2),
        oval(120, 82, 44, 46, "#eee", 2.5),
        *[curve(f"M {84 + k} {62 + 15 * k} q 36 12 {72 - 2 * k} 0", 1) for k in range(4)],
        oval(104, 120, 6, 6, "#000", 1),
        curve("M 100 126 C 80 156 50 160 22 152", 1.6, "5 4", True),
        tube(112, 140, -100, 60, 20),
        line([(40, 266), (250, 266)], 6),
        line([(56, 266), (56, 278)], 5),
        line([(234, 266), (234, 278)], 5),
        person(150, 263, 88, (122, 194)),
        words(180, 60, "many layers", "do not mean", "a big colony"),
        line([(178, 66), (160, 76)], 1),
        words(6, 184, "hole low, at", "one side"),
        line([(52, 168), (98, 122)], 1),
        line([(100, 34), (140, 34)], 4),
        words(164, 156, "slide a tray"),
        words(164, 173, "between nest", "and board last"),
    ]
    return figure(
        282,
        "Nest under the eaves",
        "A round paper nest hangs under a board against the wall. Its hole is low at one side. "
        "Someone in a suit on a platform holds the nozzle below the hole.",
        parts,
    )


def place_shed() -> str:
    """Return a nest in a shed."""
    parts = [
        area([(10, 90), (180, 14), (350, 90), (350, 106), (180, 30), (10, 106)], "#888", 2),
        area([(20, 100), (34, 94), (34, 282), (20, 282)], "url(#wood)", 2),
        area([(326, 94), (340, 100), (340, 180), (326, 180)], "url(#wood)", 2),
        line([(326, 180), (352, 280)], 3),
        line([(34, 282), (326, 282)], 3),
        nest(150, 44, (54, 80, 86, 66), 27, True),
        oval(126, 160, 5, 5, "#000", 1),
        curve("M 24 128 C 60 150 90 168 118 166", 1.6, "5 4", True),
        words(40, 122, "gap"),
        person(246, 280, 96, (176, 190)),
        tube(150, 176, -160, 52, 18),
        words(262, 150, "door open", anchor="middle"),
        words(272, 128, "way out:", anchor="middle"),
        line([(290, 216), (338, 216)], 2.5, "", True),
        words(44, 230, "take things out", "first: nothing to", "trip over"),
    ]
    return figure(
        290,
        "Nest in a shed",
        "A cut through a shed. A covered nest of four tiers hangs from the ridge; the animals "
        "come in by a gap under the roof. Someone in a suit stands between nest and open door, "
        "with the nozzle at the hole of the nest.",
        parts,
    )


PLACES = {
    "place_trunk": place_trunk,
    "place_wall": place_wall,
    "place_soffit": place_soffit,
    "place_ground": place_ground,
    "place_shrub": place_shrub,
    "place_eaves": place_eaves,
    "place_shed": place_shed,
}
