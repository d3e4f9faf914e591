"""Social wasps from above, with the marks of their kind, for the drawings of the part Biology.

Shapes are ours, in shares of the body length: head at 0, tip of the abdomen at 1. The tones keep
their order when they are printed in grey: black, red-brown, orange, yellow, ivory.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

BLACK, BROWN, ORANGE, YELLOW, IVORY = "#000", "#7a3410", "#e88a1a", "#ffdf5c", "#fffbea"

Point = tuple[float, float]

# Half the width of the abdomen at shares of its length.
STOUT = ((0, 0.0), (0.02, 0.62), (0.1, 0.86), (0.25, 0.98), (0.36, 1.0), (0.55, 0.92), (0.72, 0.72),
         (0.86, 0.45), (0.95, 0.2), (1, 0.03))  # fmt: skip
SPINDLE = ((0, 0.12), (0.1, 0.26), (0.2, 0.62), (0.33, 0.95), (0.42, 1.0), (0.55, 0.94),
           (0.72, 0.72), (0.88, 0.4), (0.96, 0.18), (1, 0.03))  # fmt: skip
BLUNT = ((0, 0.0), (0.02, 0.62), (0.1, 0.86), (0.25, 0.97), (0.4, 1.0), (0.6, 0.94), (0.78, 0.8),
         (0.9, 0.62), (0.97, 0.44), (1, 0.3))  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Wasp:
    """Build, tones and marks of one kind and caste.

    ``plates`` names the pattern of each visible plate of the abdomen from the front (T1 first).
    """

    head: str = BLACK
    face: str = YELLOW
    thorax: str = BLACK
    back: str = ""
    plates: tuple[str, ...] = ()
    base: str = YELLOW
    dark: str = BLACK
    legs: str = YELLOW
    thigh: str = BLACK
    toes: str = ""
    antenna: str = BLACK
    ring: str = "#888"
    joints: int = 12
    feeler: float = 0.30
    shape: Sequence[Point] = STOUT
    wide: float = 0.30
    head_wide: float = 0.25
    head_long: float = 0.12
    thorax_long: float = 0.29
    waist: float = 0.025
    stride: float = 1.0
    folded: bool = True


def half_width(shape: Sequence[Point], at: float) -> float:
    """Return the share of half the width at a share of the length."""
    for (a, low), (b, high) in pairwise(shape):
        if at <= b:
            return low + (high - low) * (at - a) / (b - a)
    return shape[-1][1]


def _path(points: Sequence[Point], closed: bool = True) -> str:
    return "M" + "L".join(f"{x:.1f} {y:.1f}" for x, y in points) + ("Z" if closed else "")


def _fill(path: str, fill: str, edge: float = 0) -> str:
    stroke = f' stroke="#000" stroke-width="{edge:g}" stroke-linejoin="round"' if edge else ""
    return f'<path d="{path}" fill="{fill}"{stroke}/>'


def _open(path: str, width: float, stroke: str = BLACK) -> str:
    return (
        f'<path d="{path}" fill="none" stroke="{stroke}" stroke-width="{width:.1f}" '
        'stroke-linecap="round" stroke-linejoin="round"/>'
    )


def oval(x: float, y: float, rx: float, ry: float, fill: str, edge: float = 0) -> str:
    """Return an ellipse."""
    stroke = f' stroke="#000" stroke-width="{edge:g}"' if edge else ""
    return f'<ellipse cx="{x:.1f}" cy="{y:.1f}" rx="{rx:.1f}" ry="{ry:.1f}" fill="{fill}"{stroke}/>'


def _both(points: Sequence[Point]) -> str:
    return _path(points) + _path([(-x, y) for x, y in points])


class _Abdomen:
    """The abdomen of one animal: plates as strips that follow its outline."""

    def __init__(self, kind: Wasp, top: float, length: float, size: float) -> None:
        self.kind, self.top, self.length = kind, top, length
        self.reach = kind.wide * size / 2
        count = len(kind.plates)
        first = 0.2
        steps = [first + (0.97 - first) * k / (count - 1) for k in range(count)]
        self.ends = [0.0, *steps[:-1], 1.0]

    def at(self, share: float, across: float) -> Point:
        """Return the point at a share of the length and of half the width there."""
        wide = half_width(self.kind.shape, share) * self.reach
        return across * wide, self.top + share * self.length

    def share(self, plate: int, depth: float) -> float:
        low, high = self.ends[plate : plate + 2]
        return low + (high - low) * depth

    def strip(self, plate: int, a: float, b: float, left: float = -1, right: float = 1) -> str:
        """Return a strip of a plate between two depths and two shares of its half width."""
        low, high = self.share(plate, a), self.share(plate, b)
        inner = [at for at, _ in self.kind.shape if low < at < high]
        steps = [low, *inner, high]
        return _path(
            [self.at(s, right) for s in steps] + [self.at(s, left) for s in reversed(steps)]
        )

    def spots(self, plate: int, depth: float, across: float, r: float) -> str:
        x, y = self.at(self.share(plate, depth), across)
        return "".join(
            f"M{side * x - r:.1f} {y:.1f}a{r:.1f} {r:.1f} 0 1 0 {2 * r:.1f} 0"
            f"a{r:.1f} {r:.1f} 0 1 0 {-2 * r:.1f} 0"
            for side in (-1, 1)
        )

    def wedge(self, plate: int, a: float, b: float, wide: float, tip: float = 0.0) -> str:
        """Return a middle mark that narrows backwards."""
        up, down = self.share(plate, a), self.share(plate, b)
        return _path(
            [self.at(up, -wide), self.at(up, wide), self.at(down, tip), self.at(down, -tip)]
        )

    def diamond(self, plate: int, a: float, b: float, wide: float) -> str:
        mid = (a + b) / 2
        return _path([
            self.at(self.share(plate, a), 0), self.at(self.share(plate, mid), wide),
            self.at(self.share(plate, b), 0), self.at(self.share(plate, mid), -wide),
        ])  # fmt: skip

    def marks(self) -> str:
        """Return the patterns of all plates."""
        made: dict[str, str] = {}

        def add(fill: str, path: str) -> None:
            made[fill] = made.get(fill, "") + path

        r = 0.05 * self.length
        dark, base = self.kind.dark, self.kind.base
        for k, name in enumerate(self.kind.plates):
            for word in name.split():
                if word == "dark":
                    add(dark, self.strip(k, 0, 1))
                elif word in ("brown", "orange", "yellow", "ivory"):
                    tone = {"brown": BROWN, "orange": ORANGE, "yellow": YELLOW, "ivory": IVORY}
                    add(tone[word], self.strip(k, 0, 1))
                elif word.startswith("front"):
                    add(dark, self.strip(k, 0, float(word[5:]) / 100))
                elif word.startswith("edge"):
                    add(base, self.strip(k, 1 - float(word[4:]) / 100, 1))
                elif word.startswith("thinedge"):
                    add(YELLOW, self.strip(k, 1 - float(word[8:]) / 100, 1))
                elif word == "dots":
                    add(dark, self.spots(k, 0.62, 0.52, r * 0.55))
                elif word == "joined":
                    add(dark, self.spots(k, 0.46, 0.52, r * 0.7))
                elif word == "wedge":
                    add(dark, self.wedge(k, 0.1, 0.86, 0.22))
                elif word == "arrow":
                    add(dark, self.wedge(k, 0.2, 0.75, 0.2))
                elif word == "diamond":
                    add(dark, self.diamond(k, 0.3, 0.95, 0.26))
                elif word == "anchor":
                    add(dark, self.wedge(k, 0.2, 0.85, 0.72, 0.1))
                elif word == "drop":
                    add(
                        dark,
                        self.spots(k, 0.62, 0.5, r * 0.5) + self.wedge(k, 0.2, 0.8, 0.18, 0.05),
                    )
                elif word == "split":
                    add(dark, self.strip(k, 0.3, 1, -0.14, 0.14))
                elif word == "lines":
                    add(YELLOW, self.strip(k, 0.24, 0.36, 0.3, 0.86))
                    add(YELLOW, self.strip(k, 0.24, 0.36, -0.86, -0.3))
                elif word == "wave":
                    add(dark, self.spots(k, 0.4, 0.55, r * 0.8) + self.wedge(k, 0.3, 0.8, 0.2))
                elif word == "bars":
                    add(YELLOW, self.strip(k, 0.35, 0.75, 0.2, 0.9))
                    add(YELLOW, self.strip(k, 0.35, 0.75, -0.9, -0.2))
                elif word == "pair":
                    add(base, self.spots(k, 0.45, 0.5, r * 0.62))
                elif word == "rust":
                    add(ORANGE, self.spots(k, 0.5, 0.6, r * 0.9))
        return "".join(_fill(path, fill) for fill, path in made.items())

    def outline(self) -> str:
        shares = [at for at, _ in self.kind.shape]
        return _path([self.at(s, 1) for s in shares] + [self.at(s, -1) for s in reversed(shares)])

    def seams(self, width: float) -> str:
        """Return the thin seams between the plates, bowed backwards."""
        made = ""
        for share in self.ends[1:-1]:
            (x, y), bow = self.at(share, 1), 0.02 * self.length
            made += f"M{-x:.1f} {y:.1f}Q0 {y + bow:.1f} {x:.1f} {y:.1f}"
        return _open(made, width, "#000")


def antenna(kind: Wasp, size: float) -> str:
    """Return both antennae; each joint is a stroke of its own, so that they can be counted."""
    unit = kind.feeler * size
    made = ""
    for side in (-1, 1):
        start = (side * 0.045 * size, 0.015 * size)
        elbow = (side * (0.045 * size + 0.20 * unit), 0.015 * size - 0.27 * unit)
        made += f"M{start[0]:.1f} {start[1]:.1f}L{elbow[0]:.1f} {elbow[1]:.1f}"
        bend = (elbow[0] + side * 0.12 * unit, elbow[1] - 0.42 * unit)
        end = (elbow[0] + side * 0.55 * unit, elbow[1] - 0.55 * unit)
        count = kind.joints - 1
        for k in range(count):
            made += "M" + "L".join(
                f"{(1 - t) ** 2 * elbow[0] + 2 * t * (1 - t) * bend[0] + t * t * end[0]:.1f} "
                f"{(1 - t) ** 2 * elbow[1] + 2 * t * (1 - t) * bend[1] + t * t * end[1]:.1f}"
                for t in ((k + 0.14) / count, (k + 0.86) / count)
            )
    width = max(0.02 * size, 1.5)
    under = (
        f'<path d="{made}" fill="none" stroke="#000" stroke-width="{width + 0.9:.1f}"/>'
        if kind.antenna != BLACK
        else ""
    )
    return under + (
        f'<path d="{made}" fill="none" stroke="{kind.antenna}" stroke-width="{width:.1f}"/>'
    )


def _legs(kind: Wasp, size: float, y: float) -> str:
    thigh, shin, toes = "", "", ""
    for side in (-1, 1):
        for start, knee, foot, toe in (
            (-0.05, (0.15, -0.10), (0.22, -0.20), (0.25, -0.27)),
            (0.03, (0.20, 0.01), (0.28, 0.11), (0.33, 0.19)),
            (0.09, (0.19, 0.15), (0.25, 0.34), (0.28, 0.46)),
        ):
            k = kind.stride * size
            base = (side * 0.09 * size, y + start * size)
            bent = (side * (0.04 * size + knee[0] * k), y + start * size + knee[1] * k)
            end = (side * (0.04 * size + foot[0] * k), y + start * size + foot[1] * k)
            tip = (side * (0.04 * size + toe[0] * k), y + start * size + toe[1] * k)
            thigh += _path([base, bent], closed=False)
            shin += _path([bent, end, tip], closed=False)
            toes += _path([((bent[0] + 2 * end[0]) / 3, (bent[1] + 2 * end[1]) / 3), end, tip],
                          closed=False)  # fmt: skip
    wide = max(0.026 * size, 1.6)
    made = _open(thigh + shin, wide + 1.2)
    if kind.thigh != BLACK:
        made += _open(thigh, wide - 0.4, kind.thigh)
    if kind.legs != BLACK:
        made += _open(shin, wide - 0.4, kind.legs)
    return made + (_open(toes, wide, kind.toes) if kind.toes else "")


def _head(kind: Wasp, size: float) -> str:
    wide, deep = kind.head_wide * size / 2, kind.head_long * size
    shape = (
        f"M{-wide:.1f} {0.55 * deep:.1f}Q{-wide:.1f} {0.05 * deep:.1f} 0 {0.02 * deep:.1f}"
        f"Q{wide:.1f} {0.05 * deep:.1f} {wide:.1f} {0.55 * deep:.1f}"
        f"Q{0.8 * wide:.1f} {1.02 * deep:.1f} 0 {0.92 * deep:.1f}"
        f"Q{-0.8 * wide:.1f} {1.02 * deep:.1f} {-wide:.1f} {0.55 * deep:.1f}Z"
    )
    made = _fill(shape, kind.head, 1.2)
    if kind.face != kind.head:
        made += _fill(
            f"M{-0.5 * wide:.1f} {0.3 * deep:.1f}Q0 {-0.12 * deep:.1f} {0.5 * wide:.1f} "
            f"{0.3 * deep:.1f}Q0 {0.42 * deep:.1f} {-0.5 * wide:.1f} {0.3 * deep:.1f}Z",
            kind.face,
        )
    dots = "#fff" if kind.head == BLACK else "#000"
    for x, y in ((0, 0.56), (-0.1, 0.7), (0.1, 0.7)):
        made += oval(x * wide, y * deep, 0.008 * size, 0.008 * size, dots)
    for side in (-1, 1):
        made += (
            f'<ellipse rx="{0.17 * wide:.1f}" ry="{0.36 * deep:.1f}" fill="#000" stroke="{kind.ring}" '
            f'stroke-width="{2.2 if kind.ring == YELLOW else 0.6}" transform="translate({side * 0.8 * wide:.1f} {0.46 * deep:.1f}) '
            f'rotate({-side * 14})"/>'
        )
    return made


def _thorax(kind: Wasp, size: float, top: float) -> str:
    deep = kind.thorax_long * size
    w = 0.118 * size * min(1.0, kind.wide / 0.28)

    def to(points: Sequence[Point]) -> list[Point]:
        return [(x * w, top + y * deep) for x, y in points]

    right = ((0.45, 0), (0.85, 0.1), (1.0, 0.3), (1.0, 0.55), (0.85, 0.8), (0.4, 1.0))
    outer = to(right) + [(-x, y) for x, y in reversed(to(right))]
    made = _fill(_path(outer), kind.thorax, 1.2)
    pale = ""
    for word in kind.back.split():
        if word == "collar":
            pale += _both(to([(0.08, 0.1), (0.8, 0.36), (0.9, 0.24), (0.5, 0.07)]))
        elif word == "bulge":
            pale += _both(to([(0.08, 0.09), (0.42, 0.29), (0.82, 0.38), (0.92, 0.22), (0.5, 0.05)]))
        elif word == "rear":
            pale += _both(to([(0.1, 0.68), (0.55, 0.67), (0.5, 0.76), (0.12, 0.76)]))
            pale += _both(to([(0.1, 0.82), (0.45, 0.82), (0.36, 0.9), (0.12, 0.9)]))
        elif word == "scutellum":
            pale += _both(to([(0.1, 0.68), (0.5, 0.67), (0.45, 0.77), (0.12, 0.77)]))
        elif word == "stripes":
            pale += _both(to([(0.2, 0.14), (0.4, 0.16), (0.34, 0.66), (0.22, 0.66)]))
        elif word == "thin":
            pale += _both(to([(0.12, 0.12), (0.82, 0.36), (0.88, 0.27), (0.3, 0.08)]))
    if pale:
        made += _fill(pale, kind.face if kind.face != BLACK else YELLOW)
    grey = "#888" if kind.thorax in (BLACK, "#2a1a12") else "#000"
    return made + _open(
        _path(to([(-0.75, 0.62), (0, 0.66), (0.75, 0.62)]), closed=False)
        + _path(to([(-0.6, 0.79), (0, 0.8), (0.6, 0.79)]), closed=False),
        0.8,
        grey,
    )


def _wings(size: float, y: float, folded: bool) -> str:
    """Return the wings at rest; wasps with paper nests fold them lengthwise, others do not."""
    out, wide = (0.235, 0.13) if folded else (0.36, 0.05)
    made = ""
    for s in (-1, 1):
        made += (
            f"M{s * 0.105 * size:.1f} {y:.1f}"
            f"C{s * 0.2 * size:.1f} {y + 0.13 * size:.1f} {s * out * size:.1f} "
            f"{y + 0.4 * size:.1f} {s * (out - 0.035) * size:.1f} {y + 0.62 * size:.1f}"
            f"C{s * (out - 0.07) * size:.1f} {y + 0.5 * size:.1f} {s * wide * size:.1f} "
            f"{y + 0.2 * size:.1f} {s * 0.105 * size:.1f} {y:.1f}Z"
        )
    return (
        f'<path d="{made}" fill="#fff" fill-opacity=".55" stroke="#000" stroke-width=".9"/>'
        + "".join(oval(s * 0.105 * size, y, 0.02 * size, 0.026 * size, "#555") for s in (-1, 1))
    )


def wasp(kind: Wasp, size: float, sting: bool = False) -> str:
    """Return an animal of a length in the drawing, head up, its head at the height 0."""
    head = kind.head_long * size
    thorax = kind.thorax_long * size
    top = head + thorax + kind.waist * size - 0.005 * size
    body = _Abdomen(kind, top, size - top, size)
    parts = [
        _legs(kind, size, head + 0.5 * thorax),
        antenna(kind, size),
    ]
    if sting:
        parts.append(_open(_path([(0, size - 1), (0, size + 0.06 * size)], closed=False), 1.8))
    parts += [
        _open(_path([(0, head), (0, top + 0.02 * size)], closed=False), max(0.03 * size, 1.5)),
        _fill(body.outline(), kind.base),
        body.marks(),
        body.seams(0.7),
        _fill(body.outline(), "none", 1.2),
        _thorax(kind, size, head * 0.96),
        _head(kind, size),
        _wings(size, head + 0.32 * thorax, kind.folded),
    ]
    return "".join(parts)
