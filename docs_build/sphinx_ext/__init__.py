"""What the book adds to Sphinx: calculators, sources, tables, exercises."""
