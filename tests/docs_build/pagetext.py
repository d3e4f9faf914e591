"""What a page of the handbook says in running text, read from its source with MyST's own parser.

The sources are read rather than the built pages: nothing has to be built first, and a finding
names the line that is to be changed.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.token import Token
from myst_parser.config.main import MdParserConfig
from myst_parser.parsers.mdit import create_md_parser

from docs_build.bootstrap import ROOT

HANDBOOK = ROOT / "handbook"
EXTENSIONS = {"colon_fence", "deflist", "dollarmath", "attrs_inline", "attrs_block"}
TEXT_DIRECTIVES = {
    "danger",
    "warning",
    "note",
    "tip",
    "important",
    "admonition",
    "only",
    "trainer-note",
}
TASK_DIRECTIVES = {"exercise", "answer"}
CONTAINERS = {"grid", "grid-item-card", "container", "dropdown", "figure", "glossary"}
OPENS = {"list_item_open", "dd_open", "dt_open", "heading_open", "table_open"}
CLOSES = {name.replace("_open", "_close") for name in OPENS}


@dataclass
class Block:
    """A paragraph, or a list item with all its paragraphs."""

    kind: str  # paragraph, item, heading, table, task
    line: int
    text: str = ""
    sources: list[str] = field(default_factory=list)


@dataclass(frozen=True)
class PageText:
    """A page's blocks in order."""

    name: str
    blocks: tuple[Block, ...]

    def prose(self) -> list[Block]:
        """Running text: no headings, no tables."""
        return [block for block in self.blocks if block.kind in {"paragraph", "item", "task"}]


def parser() -> MarkdownIt:
    """MyST as the book sets it."""
    return create_md_parser(MdParserConfig(enable_extensions=EXTENSIONS), RendererHTML)


def pages() -> Iterator[PageText]:
    """Every page of the handbook; of a notebook its text cells."""
    md = parser()
    for path in sorted(HANDBOOK.rglob("*")):
        if path.suffix == ".md":
            text = path.read_text(encoding="utf-8")
        elif path.suffix == ".ipynb" and ".ipynb_checkpoints" not in path.parts:
            text = notebook_text(path)
        else:
            continue
        name = path.relative_to(HANDBOOK).with_suffix("").as_posix()
        yield PageText(name, tuple(blocks(md, text)))


def notebook_text(path: Path) -> str:
    """The text cells of a notebook, one after another."""
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    return "\n\n".join("".join(c["source"]) for c in cells if c["cell_type"] == "markdown")


def blocks(md: MarkdownIt, text: str, kind: str = "paragraph", first: int = 1) -> list[Block]:
    """The blocks of a text; ``first`` is the line it begins on."""
    made: list[Block] = []
    stack: list[Block | None] = []
    for token in md.parse(text):
        line = first + (token.map[0] if token.map else 0)
        if token.type in OPENS:
            stack.append(_open(token, line, kind))
            made += [stack[-1]]
        elif token.type in CLOSES:
            stack.pop()
        elif token.type == "inline":
            if not stack:
                made.append(Block(kind, line))
            _add(stack[-1] if stack else made[-1], token.children or [])
        elif token.type in {"fence", "colon_fence"}:
            made += _directive(md, token, line, kind)
    return [block for block in made if block.text.strip()]


def _open(token: Token, line: int, kind: str) -> Block:
    names = {"heading_open": "heading", "table_open": "table"}
    own = names.get(token.type, "item" if kind == "paragraph" else kind)
    return Block(own, line)


def _add(block: Block, children: Sequence[Token]) -> None:
    """Add the words of a paragraph; roles that write a sourced number or a source count as one."""
    said = [block.text, "\n"] if block.text else []
    for token in children:
        if token.type == "text":
            said.append(token.content)
        elif token.type in {"softbreak", "hardbreak"}:
            said.append("\n")
        elif token.type == "myst_role":
            role = token.meta["name"]
            if role in {"source", "num"}:
                block.sources.append(token.content)
            elif role in {"term", "training-pdf"}:
                said.append(re.sub(r"\s*<.*>$", "", token.content))
    block.text = "".join(said)


def _directive(md: MarkdownIt, token: Token, line: int, kind: str) -> list[Block]:
    match = re.match(r"\{([\w-]+)\}", token.info.strip())
    name = match[1] if match else ""
    if name in TEXT_DIRECTIVES | CONTAINERS | TASK_DIRECTIVES:
        # The options of a directive stand before its text.
        body = re.sub(r"\A(?::[\w-]+:.*\n)+", "", token.content)
        skipped = token.content.count("\n") - body.count("\n")
        return blocks(md, body, "task" if name in TASK_DIRECTIVES else kind, line + 1 + skipped)
    return []
