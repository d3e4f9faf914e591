"""The Sphinx builder ``training``: one tree, one Typst source, one PDF."""

from __future__ import annotations

import io
import shutil
from collections.abc import Iterable, Iterator, Set
from datetime import UTC, date, datetime, time
from pathlib import Path
from typing import ClassVar, Literal

import pikepdf
import typst
from docutils import nodes
from sphinx.builders import Builder
from sphinx.environment.adapters.indexentries import IndexEntries
from sphinx.errors import SphinxError
from sphinx.util import logging

from docs_build.print import matter, names
from docs_build.print.assemble import (
    Chapter,
    Part,
    assemble,
    documents,
    for_trainer,
    front,
    parts,
    printed,
    title_of,
)
from docs_build.print.figures import Figures
from docs_build.print.writer import markup
from docs_build.print.writer.base import WARNING, Shared
from docs_build.print.writer.translator import Translator
from docs_build.sphinx_ext.sources import SOURCES, by_kind, cited, counted, entries

log = logging.getLogger(__name__)

STYLE = Path(__file__).with_name("style.typ")
STANDARD: Literal["ua-1"] = "ua-1"
"""PDF/UA-1: the compiler refuses pictures without words and headings that skip a level."""

UNDATED = date(2000, 1, 1)
"""Day of the document where no page has a date: the day of the build would change every file."""


class TrainingError(SphinxError):
    """The book could not be compiled."""

    category = "Training PDF"


class TrainingBuilder(Builder):
    """Builds the training PDF."""

    name = "training"
    format = "typst"
    epilog = "The training PDF is in %(outdir)s."
    supported_image_types: ClassVar[list[str]] = [
        "image/svg+xml",
        "image/png",
        "image/jpeg",
        "image/gif",
        "image/webp",
    ]

    def get_outdated_docs(self) -> str:
        """Say that the book is always made whole."""
        return "the whole book"

    def get_target_uri(self, docname: str, typ: str | None = None) -> str:
        """Return an address that the translator turns into a label."""
        return f"%{docname}"

    def get_relative_uri(self, from_: str, to: str, typ: str | None = None) -> str:
        """Return the address of a document; all are in one book."""
        return self.get_target_uri(to, typ)

    def prepare_writing(self, docnames: Set[str]) -> None:
        """Nothing to prepare."""

    def write_doc(self, docname: str, doctree: nodes.document) -> None:
        """Documents are not written one by one."""

    @property
    def source(self) -> Path:
        """The folder of the Typst source."""
        return Path(self.outdir) / "source"

    @property
    def book_name(self) -> str:
        """The name of the file."""
        told = self.config
        release = told.release or "draft"
        return names.file_name(release, told.training_copy, told.training_part, told.training_paper)

    @property
    def trainer(self) -> bool:
        """Whether this is the trainer's copy."""
        return bool(self.config.training_copy == names.COPIES[1])

    def write_documents(self, docnames: Iterable[str]) -> None:
        """Join the documents, write the source and compile it."""
        log.info("joining the pages ... ", nonl=True)
        tree = assemble(self)
        log.info("")
        if self.source.exists():
            shutil.rmtree(self.source)
        self.source.mkdir(parents=True)
        shutil.copy(STYLE, self.source / STYLE.name)
        shared = self._shared(tree)
        (self.source / "book.typ").write_text(
            self._book(tree, shared), encoding="utf-8", newline="\n"
        )
        self._compile()

    # -- what the writer must know of the whole book

    def _shared(self, tree: nodes.document) -> Shared:
        shared = Shared(
            figures=Figures(self.source / "drawings"),
            images=self._copy_images(tree),
            show_code=self.config.training_show_code,
            trainer=self.trainer,
        )
        root = self.config.root_doc
        for docname, node in documents(tree):
            self._note(shared, docname, node, docname == root)
        shared.aliases[f"{root}#"] = "contents"
        shared.given.add("contents")
        return shared

    def _note(self, shared: Shared, docname: str, node: nodes.Element, is_root: bool) -> None:
        ids = node.get("ids", [])
        if isinstance(node, nodes.footnote):
            shared.footnotes |= {f"{docname}#{ident}": node for ident in ids}
        elif type(node).__name__ == "answer":
            shared.aliases |= {f"{docname}#{ident}": f"answer:{node['ident']}" for ident in ids}
        elif isinstance(node, nodes.section | nodes.figure | nodes.table | nodes.math_block):
            for other in ids[1:]:
                shared.aliases.setdefault(f"{docname}#{other}", f"{docname}#{ids[0]}")
        if isinstance(node, nodes.section) and ids and f"{docname}#" not in shared.aliases:
            shared.aliases[f"{docname}#"] = f"{docname}#{ids[0]}"
        if is_root and isinstance(node, nodes.section | nodes.target):
            shared.aliases |= {f"{docname}#{ident}": "contents" for ident in ids}

    def _copy_images(self, tree: nodes.document) -> dict[str, str]:
        self.images = {}
        self.post_process_images(tree)
        copied: dict[str, str] = {}
        for original, name in self.images.items():
            place = self.source / "pictures" / name
            place.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(Path(self.srcdir) / original, place)
            copied[original] = f"pictures/{name}"
        return copied

    # -- the source

    def _book(self, tree: nodes.document, shared: Shared) -> str:
        everything = parts(tree)
        found = printed(everything, self.env.metadata)
        self._numbers(found)
        wanted = self.config.training_part
        chosen = [part for part in found if wanted in (names.WHOLE, part.key)]
        if not chosen:
            raise TrainingError(f"there is no part {wanted} in the contents")
        kept = for_trainer(
            [part for part in everything if wanted in (names.WHOLE, part.key)], self.env.metadata
        )
        shared.elsewhere = self._elsewhere(everything, chosen, kept)
        title = matter.Title(
            title=self.config.project,
            subtitle=self.config.training_subtitle,
            edition=self.config.release,
            reviewed=matter.reviewed(self._days(chosen)),
            copy=self.config.training_copy,
            part="whole book" if wanted == names.WHOLE else chosen[0].title or wanted,
            paper=self.config.training_paper,
        )
        self._day = max(self._days(chosen), default=UNDATED)
        root = Translator(shared, self.config.root_doc)
        body = [title.markup()]
        before = root.each(front(tree)).strip()
        body.append(f"#before[{markup.text(self._imprint())}][{before}];\n\n")
        depth = 2 if wanted == names.WHOLE else 3
        body.append(f"#contents(depth: {depth})\n\n")
        if SOURCES in shared.elsewhere:  # a part brings the sources that it cites
            shared.aliases[f"{SOURCES}#"] = "sources"
        body += self._parts(chosen, shared)
        if SOURCES in shared.elsewhere:
            body.append(self._sources(chosen, shared))
        body.append('#anchor("back");\n\n')
        if self.trainer:
            body.append(self._for_trainer(kept, shared))
        body.append(self._index(shared))
        self._check_links(shared)
        return "".join(body)

    def _numbers(self, found: list[Part]) -> None:
        """Count parts and chapters over the whole book: a part printed alone keeps its numbers."""
        self._titles = {each.docname: title_of(each) for part in found for each in part.chapters}
        self._chapter_numbers = {name: n for n, name in enumerate(self._titles, start=1)}
        titled = [part.key for part in found if part.title]
        self._part_numbers = {key: number for number, key in enumerate(titled, start=1)}

    def _elsewhere(
        self, everything: list[Part], chosen: list[Part], kept: list[Chapter]
    ) -> dict[str, tuple[str, str]]:
        """Return title and place, in words, of the chapters that this book does not hold."""
        here = {each.docname for part in chosen for each in part.chapters}
        here |= {part.docname for part in chosen}
        if self.trainer:
            here |= {each.docname for each in kept}
        told = {
            each.docname: (title_of(each), f"in the part “{part.title}”")
            for part in printed(everything, self.env.metadata)
            for each in part.chapters
        } | {
            each.docname: (title_of(each), "in the trainer’s copy")
            for each in for_trainer(everything, self.env.metadata)
        }
        return {docname: words for docname, words in told.items() if docname not in here}

    def _imprint(self) -> str:
        owner = f"© {self.config.copyright}. " if self.config.copyright else ""
        return (
            f"{self.config.project}, edition {self.config.release}. {owner}"
            "Numbers of pages in parentheses are links in the file and pages in print."
            + (" The trainer’s copy has the same pages as the trainee’s." if self.trainer else "")
        )

    def _days(self, found: list[Part]) -> list[date]:
        docnames = [chapter.docname for part in found for chapter in part.chapters]
        return matter.dates(self.env.metadata, docnames)

    def _parts(self, found: list[Part], shared: Shared) -> Iterator[str]:
        for part in found:
            if part.title:
                yield self._part(part, self._part_numbers[part.key], shared)
            for chapter in part.chapters:
                number = self._chapter_numbers[chapter.docname]
                yield self._chapter(chapter, number, 2 if part.title else 1, shared)

    def _part(self, part: Part, number: int, shared: Shared) -> str:
        writer = Translator(shared, part.docname)
        heading, rest = _split(part.opening)
        label = writer.own_label(heading) if heading is not None else None
        key = markup.string(label or f"part:{number}")
        writer.level = 2
        writer.chapter_level = 0  # sections of a part's own text are not in the contents
        opening = writer.each(rest).strip("\n")
        return f"#part({number}, {key})[{markup.text(part.title)}][{opening}];\n\n"

    def _chapter(self, chapter: Chapter, number: int | None, level: int, shared: Shared) -> str:
        writer = Translator(shared, chapter.docname)
        writer.level = writer.chapter_level = level
        section, rest = _split(chapter.nodes)
        label = writer.own_label(section) if section is not None else None
        key = markup.string(label or f"chapter:{chapter.docname}")
        title = markup.text(chapter.docname)
        if section is not None:
            first = section.children[0]
            assert isinstance(first, nodes.title)
            title = writer.heading_text(first)
        standing = markup.text(matter.standing(self.env.metadata.get(chapter.docname, {})))
        body = writer.each(rest) + self._rests_on(chapter, shared)
        told = markup.value(number)
        return f"#chapter({told}, {level}, {key})[{title}][{standing}];\n\n{body}\n\n"

    def _sources(self, chosen: list[Part], shared: Shared) -> str:
        """Return the sources that a part cites, for a part without the book's list of them."""
        found = [node for part in chosen for each in part.chapters for node in each.nodes]
        made = Translator(shared, SOURCES).each(entries(cited(found)))
        return f'#chapter(none, 1, "sources")[Sources of this part][];\n\n{made}\n\n'

    def _for_trainer(self, kept: list[Chapter], shared: Shared) -> str:
        """Return what only the trainer has, behind the pages that both copies share."""
        made = [self._chapter(each, None, 2, shared) for each in kept]
        made.append(matter.notes(shared.notes, lambda name: self._head(name, shared)))
        made.append(self._answers(shared))
        if not any(made):
            return ""
        opening = "Up to here both copies have the same words on the same pages."
        number = len(self._part_numbers) + 1
        return (
            f'#part({number}, "for-trainer")[For the trainer][{markup.text(opening)}];\n\n'
            + "".join(made)
        )

    def _head(self, docname: str, shared: Shared) -> str:
        title = self._titles.get(docname, docname)
        key = markup.string(shared.aliases.get(f"{docname}#", f"{docname}#"))
        return f"#minor[#xref({key}, page: true)[{markup.text(title)}];];\n\n"

    def _rests_on(self, chapter: Chapter, shared: Shared) -> str:
        """Return the line at the foot of a chapter: how strong its sources are."""
        if not (kinds := by_kind(cited(chapter.nodes))) or chapter.docname == SOURCES:
            return ""
        link = markup.link(shared.aliases.get(f"{SOURCES}#", "sources"), "Sources", page=True)
        return markup.block("small-note", f"{link} of this chapter: {markup.text(counted(kinds))}.")

    def _answers(self, shared: Shared) -> str:
        for ident, number in shared.exercises.items():
            shared.given.add(f"exercise:{ident}")
            if ident in {each.ident for each in shared.answers}:
                shared.given.add(f"answer:{ident}")
            else:
                log.warning(
                    "exercise %d (%s) has no answer", number, ident, type=WARNING, subtype="answer"
                )
        return matter.answers(
            shared.answers, shared.exercises, lambda name: self._head(name, shared)
        )

    def _index(self, shared: Shared) -> str:
        groups = IndexEntries(self.env).create_index(self)
        index = matter.index(groups, lambda uri: self._index_key(uri, shared))
        if index:
            shared.given.add("index")
            shared.aliases["genindex#"] = "index"
        return index

    def _index_key(self, uri: str, shared: Shared) -> str | None:
        docname, _, ident = uri.removeprefix("%").partition("#")
        key = f"{docname}#{ident}"
        key = shared.aliases.get(key, key)
        return key if key in shared.given else None

    def _check_links(self, shared: Shared) -> None:
        printed = {key.partition("#")[0] for key in shared.given}
        for key, (docname, node) in shared.asked.items():
            known = key in shared.given or shared.aliases.get(key) in shared.given
            # Pages outside the contents are for the screen; a reader of the book has their words.
            if not known and (key.partition("#")[0] in printed or key.startswith("answer:")):
                log.warning(
                    "a link leads to %s, which is not in the book",
                    key,
                    location=node if node.source else docname,
                    type=WARNING,
                    subtype="reference",
                )

    # -- the PDF

    def _compile(self) -> None:
        target = Path(self.outdir) / self.book_name
        log.info("setting the book ... ", nonl=True)
        made, warnings = compile_book(self.source, self._day)
        for message in warnings:
            log.warning("typst: %s", message, type=WARNING, subtype="typst")
        target.write_bytes(made)
        log.info("%s, %d kB", target.name, len(made) // 1000)


def compile_book(source: Path, day: date) -> tuple[bytes, list[str]]:
    """Compile ``book.typ`` of a folder and return the PDF and the compiler's warnings.

    Fonts of the system are left out, and the day is told, so that equal sources give equal files.
    """
    try:
        made, warnings = typst.compile_with_warnings(
            str(source / "book.typ"),
            root=str(source),
            format="pdf",
            font_paths=list(map(str, font_folders())),
            ignore_system_fonts=True,
            pdf_standards=[STANDARD],
            timestamp=datetime.combine(day, time(), UTC),
        )
    except typst.TypstError as error:
        raise TrainingError(str(error.diagnostic or error)) from error
    assert isinstance(made, bytes)
    return packed(made), [str(warning.message) for warning in warnings]


def packed(pdf: bytes) -> bytes:
    """Return the same PDF with its objects compressed: tags alone are half of a long book.

    Phones keep the file with the pages, so its size counts.
    """
    slim = io.BytesIO()
    pikepdf.settings.set_flate_compression_level(9)
    with pikepdf.open(io.BytesIO(pdf)) as book:
        book.save(
            slim,
            object_stream_mode=pikepdf.ObjectStreamMode.generate,
            compress_streams=True,
            recompress_flate=True,
            deterministic_id=True,
        )
    return slim.getvalue()


def font_folders() -> list[Path]:
    """Return the folders of the fonts that come with the drawing libraries, for text in SVG."""
    import ziafont

    return [Path(ziafont.__file__).with_name("fonts")]


def _split(
    found: list[nodes.Node],
) -> tuple[nodes.section | None, list[nodes.Node]]:
    """Split a document into the section that gives its title, and everything else in order."""
    for place, node in enumerate(found):
        if isinstance(node, nodes.section) and isinstance(node.children[0], nodes.title):
            return node, [*found[:place], *node.children[1:], *found[place + 1 :]]
    return None, found
