"""The computing of the field handbook: importable alone, without Sphinx and without numpy.

A calculator is declared once (:mod:`calc.declare`) and listed in :mod:`calc.catalogue`.
"""

EDITION = "2026.1"
"""Edition that every result, document and export carries (year, then issue of that year)."""
