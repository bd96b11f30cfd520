"""Writers, blocks and marks know nothing of houses, and heavy libraries come in late."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

import groundsill.papers

PAPERS = Path(groundsill.papers.__file__).parent
MODULES = sorted((*PAPERS.glob("*.py"), *(PAPERS / "writers").glob("*.py")))
MAY_KNOW = ("groundsill.papers", "groundsill.working")


def imported(path: Path) -> set[str]:
    found: set[str] = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0
            found.add(node.module or "")
    return found


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.stem)
def test_nothing_here_imports_a_house_or_a_study(path: Path) -> None:
    ours = {name for name in imported(path) if name.split(".")[0] == "groundsill"}
    assert all(name.startswith(MAY_KNOW) for name in ours)
    assert not any(name.startswith("groundsill.papers.views") for name in ours)


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.stem)
def test_blocks_and_marks_do_not_know_their_writers(path: Path) -> None:
    if path.parent == PAPERS:
        assert not any(name.startswith("groundsill.papers.writers") for name in imported(path))


def test_typst_and_rich_are_imported_only_when_they_write() -> None:
    code = (
        "import sys; from groundsill.papers.writers import html, svg, terminal, typst; "
        "print(sorted({'typst', 'rich'} & set(sys.modules)))"
    )
    path = str(PAPERS.parents[1])
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, env={"PYTHONPATH": path}
    )
    assert done.stdout.strip() == "[]"
