"""The side menu: the part a page stands in, and one link to each other part."""

from __future__ import annotations

from typing import Any

from docutils import nodes
from sphinx import addnodes
from sphinx.application import Sphinx
from sphinx.environment import BuildEnvironment


def parts(env: BuildEnvironment, pagename: str) -> list[dict[str, Any]]:
    """Return the parts of the book, each as ``caption``, ``first`` page and ``pages``.

    ``pages`` holds (document, title) of every page of the part in which ``pagename`` stands, and
    nothing for the other parts: all chapters on every page would cost a megabyte.
    """
    found = []
    for tree in env.tocs[env.config.root_doc].findall(addnodes.toctree):
        inside = [name for top in tree["includefiles"] for name in _below(env, top)]
        pages = [(name, env.titles[name].astext()) for name in inside if pagename in inside]
        found.append({"caption": tree["caption"], "first": inside[0], "pages": pages})
    return found


def _below(env: BuildEnvironment, name: str) -> list[str]:
    children = env.toctree_includes.get(name, [])
    return [name, *(found for child in children for found in _below(env, child))]


def _context(
    app: Sphinx,
    pagename: str,
    templatename: str,
    context: dict[str, Any],
    doctree: nodes.document | None,
) -> None:
    context["parts"] = parts(app.env, pagename)


def setup(app: Sphinx) -> None:
    """Give every page its menu."""
    app.connect("html-page-context", _context)
