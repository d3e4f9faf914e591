"""From doctree to Typst source: one small module a family of nodes."""
