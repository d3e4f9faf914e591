"""``docs_build notebook CASE``: run a worked example, and save it with its outputs."""

from __future__ import annotations

import os
from pathlib import Path

from docs_build.bootstrap import ROOT, Trouble

FOLDER = ROOT / "handbook" / "worked_examples"
LIMIT = 300


def run(case: str) -> Path:
    """Run the notebook of a case in its own folder, strip what is of this machine, and save it.

    Raises
    ------
    Trouble
        if there is no such notebook, or a cell of it fails
    """
    import nbformat
    from nbclient import NotebookClient
    from nbclient.exceptions import CellExecutionError

    path = FOLDER / f"{case}.ipynb"
    if not path.is_file():
        allowed = ", ".join(sorted(each.stem for each in FOLDER.glob("*.ipynb")))
        raise Trouble(f"There is no worked example called “{case}”; allowed is {allowed}.")
    notebook = nbformat.read(path, as_version=4)
    said = dict(notebook.metadata)
    os.environ["PYTHONPATH"] = str(ROOT)
    client = NotebookClient(
        notebook,
        timeout=LIMIT,
        coalesce_streams=True,
        resources={"metadata": {"path": str(FOLDER)}},
    )
    try:
        client.execute()
    except CellExecutionError as error:
        raise Trouble(f"A cell of {path.name} failed:\n{error}") from error
    notebook.metadata = nbformat.from_dict(said)
    for cell in notebook.cells:
        kept = {key: cell.metadata[key] for key in ("tags", "mystnb") if key in cell.metadata}
        cell.metadata = nbformat.from_dict(kept)
    nbformat.write(notebook, path)
    return path
