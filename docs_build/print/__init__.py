"""The training PDF: the same pages as on the phone, set as a book to bind and to write in.

Sphinx reads the pages; the builder ``training`` joins them in the order of the contents, writes
one Typst source and compiles it with the ``typst`` wheel. Why this way:

* **Look.** A typesetter with running heads, contents with page numbers, footnotes, tables that
  break with their head repeated, and line breaking over whole paragraphs.
* **Works after pip alone.** The wheel holds compiler and text fonts for Linux, macOS and Windows;
  formulas come from ``ziamath`` and charts from ``ziaplot``, both pure Python with their own
  fonts. Fonts of the system are never looked at, so every machine gives the same book.
* **Tags.** The PDF is tagged and is compiled as PDF/UA-1: a picture or formula without a text
  for people who cannot see it, or a skipped level of heading, stops the build.

Pages printed from the browser's HTML need libraries of the system; LaTeX needs a gigabyte, leaves
cards and tabs flat and its PDF untagged.

Configuration: ``training_copy`` (``trainee`` or ``trainer``), ``training_part`` (folder of a part,
or ``all``), ``training_paper`` (``a4`` or ``us-letter``), ``training_subtitle`` (the line on the
title page), ``training_show_code`` (print notebook code; a cell with the tag ``print-code`` is
printed anyway). A page with ``print: false`` in its front matter is left out; one with
``copy: trainer`` stands in the trainer's copy only.

**Two copies, one paging.** What only the trainer has stands behind everything else, so that both
copies have the same words on the same page: the trainer says “page 112” to the class.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from docs_build.print import names

if TYPE_CHECKING:
    from sphinx.application import Sphinx
    from sphinx.config import Config

SUBTITLE = (
    "This book teaches a trade in which people get hurt. It does not replace instruction by "
    "someone who does the work, a licence, or the law of the place."
)

# Ascending number = later choice. What draws sharp comes first; HTML cannot be set at all.
MIME_PRIORITY = (
    ("image/svg+xml", 10),
    ("image/png", 20),
    ("image/jpeg", 30),
    ("text/markdown", 40),
    ("text/plain", 50),
    ("text/html", None),
    ("text/latex", None),
    ("application/javascript", None),
    ("application/vnd.jupyter.widget-view+json", None),
)


def _choose_outputs(app: Sphinx, config: Config) -> None:
    """Tell the notebook extension, where it is loaded, which form of an output to keep."""
    if "nb_mime_priority_overrides" in config:
        config["nb_mime_priority_overrides"] = [
            *config["nb_mime_priority_overrides"],
            *(("training", mime, place) for mime, place in MIME_PRIORITY),
        ]


def setup(app: Sphinx) -> dict[str, Any]:
    """Register the builder ``training`` with Sphinx."""
    # The builder needs Sphinx, and this package must be importable before Sphinx is installed.
    from docs_build.print.builder import TrainingBuilder

    app.add_builder(TrainingBuilder)
    app.add_config_value("training_copy", names.COPIES[0], "", {str})
    app.add_config_value("training_part", names.WHOLE, "", {str})
    app.add_config_value("training_paper", names.PAPERS[0], "", {str})
    app.add_config_value("training_subtitle", SUBTITLE, "", {str})
    app.add_config_value("training_show_code", False, "", {bool})
    app.connect("config-inited", _choose_outputs, priority=400)
    return {"version": "1", "parallel_read_safe": True, "parallel_write_safe": False}
