"""``import groundsill``: the commands as a library, cheap to import and complete."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

import groundsill
from groundsill.cli.starting import starting_house
from tests.cli.asking import ROOT


def test_importing_it_imports_nothing_above_its_own_version() -> None:
    wanted = "('groundsill', 'pydantic', 'rich')"
    code = f"import sys, groundsill; print(sorted(m for m in sys.modules if m.startswith({wanted})))"
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, env={"PYTHONPATH": "src"}, capture_output=True, text=True, check=True
    )
    assert done.stdout == "['groundsill', 'groundsill.working', 'groundsill.working.version']\n"


def test_every_public_name_is_there_and_named_by_dir() -> None:
    for name in groundsill.__all__:
        assert getattr(groundsill, name) is not None, name
    assert dir(groundsill) == sorted(groundsill.__all__)
    stub = (ROOT / "src" / "groundsill" / "__init__.pyi").read_text("utf-8")
    for name in set(groundsill.__all__) - {"__version__"}:
        assert f" as {name}\n" in stub, name


def test_a_wrong_name_says_what_there_is() -> None:
    with pytest.raises(AttributeError, match=r"groundsill has no 'run_house'; it has BadSurvey, GroundsillError"):
        _ = groundsill.run_house  # type: ignore[attr-defined]


def test_a_house_goes_from_file_to_study_in_three_lines(tmp_path: Path) -> None:
    groundsill.write_house(tmp_path / "elm.json", starting_house("5 Elm Street", "us"))
    study = groundsill.run(groundsill.read_house(tmp_path / "elm.json"))
    assert study.name == "5 Elm Street"
    assert '"answer": "study"' in groundsill.study_text(study)
    assert groundsill.show_working(groundsill.read_house(tmp_path / "elm.json")).steps
