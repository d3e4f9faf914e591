"""Makes the built site keepable: service worker, list of files, web-app manifest, icons."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path
from typing import Any

from docs_build.bootstrap import Trouble

HERE = Path(__file__).parent
TITLE = "Field handbook"
SHORT = "Handbook"
PAPER, INK = "#ffffff", "#0b4f8a"

UNUSED = ("objects.inv", ".buildinfo", ".buildinfo.bak", "sw.js", ".nojekyll", "editions.json")
"""Files of the site that no page asks for, and the list that changes with every later edition."""

ICON = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">
<rect width="512" height="512" fill="#0b4f8a"/>
<path d="M256 92 398 174v164L256 420 114 338V174Z" fill="none" stroke="#fff" stroke-width="34"/>
<circle cx="256" cy="256" r="52" fill="#fff"/>
<path d="M256 256 92 420" stroke="#fff" stroke-width="34" stroke-linecap="round"/>
</svg>
"""
"""A cell of the comb, its entrance, and the hose that leads to it."""


def offline(html: Path, edition: str) -> dict[str, Any]:
    """Write what a phone needs to keep the book in ``html``; return the list of files.

    The list has three groups: ``pages`` (all that is read and searched), ``runtime`` (what
    computes) and ``paper`` (the trainee's PDF). Every address is relative, so that the folder works
    under any path of any host.
    """
    _icons(html)
    _write(html / "manifest.webmanifest", json.dumps(_manifest(edition), indent=1))
    files = listed(html)
    build = f"{edition}-{hashlib.sha256(json.dumps(files).encode()).hexdigest()[:12]}"
    told = {"edition": edition, "build": build, "files": files}
    source = (HERE / "sw.js").read_text(encoding="utf-8")
    if source.count("/*BOOK*/ null") != 1:
        raise Trouble("docs_build/page/sw.js has no single place for the list of files.")
    _write(html / "sw.js", source.replace("/*BOOK*/ null", json.dumps(told, indent=0)))
    return told


def listed(html: Path) -> dict[str, list[list[Any]]]:
    """Return what a phone keeps of ``html``, by group: address, hash and bytes of each file."""
    files: dict[str, list[list[Any]]] = {"pages": [], "runtime": [], "paper": []}
    for path in sorted(html.rglob("*")):
        name = path.relative_to(html).as_posix()
        if path.is_file() and _wanted(name):
            body = path.read_bytes()
            entry = [name, hashlib.sha256(body).hexdigest(), len(body)]
            files[_group(name)].append(entry)
    return files


def _wanted(name: str) -> bool:
    return name not in UNUSED and not name.startswith((".doctrees/", "_sources/"))


def _group(name: str) -> str:
    if name.startswith("_runtime/"):
        return "runtime"
    return "paper" if name.endswith(".pdf") else "pages"


def _manifest(edition: str) -> dict[str, Any]:
    return {
        "name": f"{TITLE} {edition}",
        "short_name": SHORT,
        "lang": "en",
        "start_url": "./index.html",
        "scope": "./",
        "id": "./",
        "display": "standalone",
        "background_color": PAPER,
        "theme_color": INK,
        "icons": [
            {"src": "icon.svg", "sizes": "any", "type": "image/svg+xml", "purpose": "any"},
            *(
                {
                    "src": f"icon-{size}.png",
                    "sizes": f"{size}x{size}",
                    "type": "image/png",
                    "purpose": purpose,
                }
                for size in (192, 512)
                for purpose in ("any", "maskable")
            ),
        ],
    }


def _icons(html: Path) -> None:
    import typst

    _write(html / "icon.svg", ICON)
    for size in (192, 512):
        page = (
            f"#set page(width: {size}pt, height: {size}pt, margin: 0pt)\n"
            f'#image(bytes({json.dumps(ICON)}), width: 100%, format: "svg")\n'
        )
        made = typst.compile(page.encode(), format="png", ppi=72.0)
        (html / f"icon-{size}.png").write_bytes(made)  # type: ignore[arg-type]


def _write(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8", newline="\n")
