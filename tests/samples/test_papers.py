"""Every sample goes to paper: as found and with the work it is shown with, every step set and named."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from groundsill.doors.decode import decode
from groundsill.papers.views.calculations import calculation_package
from groundsill.papers.writers.typst import to_typst
from groundsill.study import run, working

SAMPLES = Path(__file__).resolve().parents[2] / "samples"


@pytest.mark.parametrize("name", sorted(path.parent.name for path in SAMPLES.glob("*/house.json")))
def test_a_sample_is_set_with_its_first_work_and_every_formula_has_words(name: str) -> None:
    """The writer of the PDF refuses a formula that cannot be read aloud, and then there is no package at all."""
    house = decode((SAMPLES / name / "house.json").read_bytes(), "house.json")
    first = min(house.alternatives, key=lambda key: house.alternatives[key].order)
    house = replace(house, alternatives={first: house.alternatives[first]})
    study = run(house, ranges=False)
    source = to_typst(calculation_package(house, study, {state.key: working(house, state.key) for state in study.runs}))
    assert source.count("gs-maths(") > 100
    assert 'gs-maths(""' not in source
