"""The translator: all families of nodes together."""

from __future__ import annotations

from docs_build.print.writer.calculators import Calculators


class Translator(Calculators):
    """Renders every node that the book's sources can hold."""
