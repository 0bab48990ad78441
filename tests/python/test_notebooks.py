"""The notebooks run from top to bottom, and are committed without outputs."""

from __future__ import annotations

from pathlib import Path

import nbclient
import nbformat
import pytest

NOTEBOOKS = sorted((Path(__file__).resolve().parents[2] / "python" / "notebooks").glob("*.ipynb"))


def test_there_are_notebooks() -> None:
    assert NOTEBOOKS


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_notebook_runs(path: Path, tmp_path: Path) -> None:
    notebook = nbformat.read(path, as_version=4)
    code = [cell for cell in notebook.cells if cell.cell_type == "code"]
    assert all(not cell.outputs and cell.execution_count is None for cell in code), "clear the outputs before committing"
    nbclient.NotebookClient(notebook, timeout=300, kernel_name="python3", resources={"metadata": {"path": str(tmp_path)}}).execute()
    shown = [str(output.get("data", {}).get("text/html", "")) for cell in code for output in cell.outputs]
    assert any("<table" in html for html in shown), "a notebook shows at least one table"
