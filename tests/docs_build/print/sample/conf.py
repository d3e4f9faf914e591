"""Settings of a small book that holds one of everything the pages may use."""

project = "Sample handbook"
copyright = "nobody, for tests"
release = "2026.1"
extensions = ["myst_nb", "sphinx_design", "docs_build.sphinx_ext", "docs_build.print"]
exclude_patterns = []
numfig = True
nb_execution_mode = "off"
myst_enable_extensions = [
    "attrs_block",
    "attrs_inline",
    "colon_fence",
    "deflist",
    "dollarmath",
    "fieldlist",
    "tasklist",
]
html_math_renderer = "mathml"
