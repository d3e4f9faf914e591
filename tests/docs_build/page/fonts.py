"""Two font families made here, so that no font of the machine decides what fits a page.

Every letter is a plain box. Thin letters, broad letters and all others have a width of their own;
the wide family runs wider than the bold of common screen fonts, the narrow one is condensed.
"""

from __future__ import annotations

import base64
import functools
import struct
from typing import Any

EM = 1000
FAMILIES = {"wide": (380, 720, 1060), "narrow": (200, 420, 660)}
"""Advance of thin, usual and broad letters, in thousandths of the size."""

THIN = frozenset("fijlrt .,:;!|()[]/'’‘-·\u00a0")
BROAD = frozenset("mwMWQ%@&—…")
LAST = 0x2FFF

PUT_ON = """async ([family, data]) => {
  const old = document.querySelector("style[data-family]");
  old?.remove();
  if (!family) return;
  if (![...document.fonts].some((one) => one.family === family)) {
    const bytes = Uint8Array.from(atob(data), (sign) => sign.charCodeAt(0));
    document.fonts.add(await new FontFace(family, bytes).load());
  }
  const style = document.createElement("style");
  style.dataset.family = family;
  style.textContent = `*, ::before, ::after { font-family: ${family} !important; }`;
  document.head.append(style);
}"""
"""Script that sets a whole page in a family; the empty name takes it off again."""


def put_on(page: Any, family: str) -> None:
    """Set an open page in one of the families, or in its own font again."""
    data = base64.b64encode(font(family)).decode() if family else ""
    page.evaluate(PUT_ON, [family, data])


@functools.cache
def font(family: str) -> bytes:
    """Return a TrueType file: the tables a browser asks for, and four boxes for letters."""
    widths = (FAMILIES[family][1], *FAMILIES[family])
    glyphs = [_box(width) for width in widths]
    places = [sum(map(len, glyphs[:at])) for at in range(len(glyphs) + 1)]
    tables = {
        b"OS/2": _os2(),
        b"cmap": _cmap(),
        b"glyf": b"".join(glyphs),
        b"head": struct.pack(
            ">4I2H2Q4h2H3h", 0x10000, 0x10000, 0, 0x5F0F3CF5, 0, EM, 0, 0,
            0, -200, max(widths), 800, 0, 8, 2, 1, 0,
        ),
        b"hhea": struct.pack(">I3hH11hH", 0x10000, 930, -240, 0, max(widths), *[0] * 11, 4),
        b"hmtx": b"".join(struct.pack(">Hh", width, 40) for width in widths),
        b"loca": struct.pack(f">{len(places)}I", *places),
        b"maxp": struct.pack(">I14H", 0x10000, 4, 4, 1, 0, 0, 1, *[0] * 8),
        b"name": _name(family),
        b"post": struct.pack(">2I2h5I", 0x30000, 0, -100, 50, 0, 0, 0, 0, 0),
    }  # fmt: skip
    return _file(tables)


def _box(width: int) -> bytes:
    """Return the outline of a box."""
    right = width - 40
    head = struct.pack(">5h", 1, 40, 0, right, 700)
    points = struct.pack(">2H4B8h", 3, 0, 1, 1, 1, 1, 40, right - 40, 0, 40 - right, 0, 0, 700, 0)
    return head + points


def _class(code: int) -> int:
    letter = chr(code)
    return 1 if letter in THIN else 3 if letter in BROAD else 2


def _cmap() -> bytes:
    groups = b"".join(struct.pack(">3I", code, code, _class(code)) for code in range(0x20, LAST))
    body = struct.pack(">2H3I", 12, 0, 16 + len(groups), 0, len(groups) // 12) + groups
    return struct.pack(">4HI", 0, 1, 3, 10, 12) + body


def _os2() -> bytes:
    return struct.pack(
        ">H h 2H h 10h h 10B 4I 4s 3H 3h 2H 2I",
        4, 600, 400, 5, 0, *[100] * 10, 0, *[0] * 10, 0, 0, 0, 0, b"TEST", 0x40, 0x20, 0xFFFF,
        930, -240, 0, 930, 240, 1, 0,
    ) + struct.pack(">2h3H", 500, 700, 0, 0x20, 1)  # fmt: skip


def _name(family: str) -> bytes:
    texts = [text.encode("utf-16-be") for text in (family, "Regular", family, family, "1", family)]
    records, at = b"", 0
    for ident, text in enumerate(texts, 1):
        records += struct.pack(">6H", 3, 1, 0x409, ident, len(text), at)
        at += len(text)
    return struct.pack(">3H", 0, len(texts), 6 + len(records)) + records + b"".join(texts)


def _file(tables: dict[bytes, bytes]) -> bytes:
    count = len(tables)
    power = count.bit_length() - 1
    wide = 16 * 2**power
    head = struct.pack(">I4H", 0x10000, count, wide, power, 16 * count - wide)
    at = len(head) + 16 * count
    entries = body = b""
    for tag, data in sorted(tables.items()):
        whole = data + b"\0" * (-len(data) % 4)
        total = sum(struct.unpack(f">{len(whole) // 4}I", whole)) & 0xFFFFFFFF
        entries += struct.pack(">4s3I", tag, total, at, len(data))
        at += len(whole)
        body += whole
    return head + entries + body
