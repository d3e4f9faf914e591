"""Sphinx settings of the handbook."""

import os
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT))
# Kernels of executed pages must find the computing, too.
os.environ["PYTHONPATH"] = os.pathsep.join(
    filter(None, (str(ROOT), os.environ.get("PYTHONPATH", "")))
)

from calc import EDITION

project = "Field handbook: wasps and hornets without poison"
html_title = "Wasps and hornets without poison"
author = "The field handbook"
copyright = "The field handbook's contributors, MIT licence"
version = release = EDITION
language = "en"

extensions = ["myst_nb", "sphinx_design", "docs_build.sphinx_ext", "docs_build.print"]
root_doc = "index"
exclude_patterns = ["**/.ipynb_checkpoints"]
nitpicky = True

myst_enable_extensions = ["colon_fence", "deflist", "dollarmath", "attrs_inline", "attrs_block"]
myst_heading_anchors = 3
suppress_warnings = ["mystnb.unknown_mime_type"]

nb_execution_mode = "force"
nb_execution_raise_on_error = True
nb_execution_timeout = 120
nb_ipywidgets_js = {}
nb_merge_streams = True

html_theme_path = [str(ROOT / "docs_build")]
html_theme = "theme"
html_static_path = [str(ROOT / "docs_build" / "page" / "static")]
html_css_files = ["calculator.css"]
html_math_renderer = "mathml"
html_copy_source = False
html_permalinks = False
html_show_sourcelink = False
html_use_index = True
html_search_language = "en"
