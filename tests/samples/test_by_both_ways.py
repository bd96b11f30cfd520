"""The three sample houses by the prescriptive way and the engineered one: where the two part, and why.

Nothing here was fitted: the surveys and their work were written before the prescriptive way was in the program.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from groundsill.doors.decode import decode
from groundsill.loadpath.prescriptive import PrescriptiveLine, PrescriptivePath
from groundsill.study import Study, run

SAMPLES = Path(__file__).parents[2] / "samples"


@cache
def study_of(name: str) -> Study:
    return run(decode((SAMPLES / name / "house.json").read_bytes(), "house.json"), ranges=False)


def path_of(name: str) -> PrescriptivePath:
    path = study_of(name).prescriptive
    assert path is not None
    return path


def lines_of(name: str, state: int = 0) -> dict[str, PrescriptiveLine]:
    return {line.mark: line for line in study_of(name).runs[state].prescriptive}


def failing(name: str) -> dict[str, bool]:
    """The lines whose prescriptive length fails at full force, and whether it fails at the reduced force as well."""
    return {
        mark: line.both.ratio_reduced is not None and line.both.ratio_reduced > 1
        for mark, line in lines_of(name).items()
        if line.both.ratio_full is not None and line.both.ratio_full > 1
    }


def test_larch_street_stands_within_and_three_of_its_lines_would_fail_at_full_force() -> None:
    assert path_of("larch-street").within == "in"
    assert failing("larch-street") == {"L1": False, "L3": True, "L5": False}
    short = lines_of("larch-street")["L3"]
    assert short.both.prescriptive_ft == pytest.approx(8)  # a short line: the two end panels, not its 40 per cent


def test_the_engineered_work_of_larch_street_is_not_what_the_prescriptive_way_asks() -> None:
    """Panels where the force asks for them, bolts under the panels: the chain counts them, the table does not."""
    asked = {mark: {r.key: r for r in line.requirements} for mark, line in lines_of("larch-street", 1).items()}
    assert {mark for mark, found in asked.items() if found["bracing"].outcome == "meets"} == {"L1", "L4", "L7"}
    assert {found["bolts"].outcome for found in asked.values()} == {"short"}


def test_ferry_hill_is_too_tall_on_its_downhill_lines() -> None:
    assert path_of("ferry-hill").within == "out"
    lines = lines_of("ferry-hill")
    assert {mark for mark, line in lines.items() if line.within == "in"} == {"L1", "L6"}
    assert "62 in. with the sill, 48 in. at most" in lines["L3"].headline
    assert failing("ferry-hill") == {"L6": True}


def test_quarry_lane_stands_on_brick_and_stone_and_only_its_addition_is_within() -> None:
    assert path_of("quarry-lane").within == "out"
    lines = lines_of("quarry-lane")
    assert {mark for mark, line in lines.items() if line.within == "in"} == {"L8", "L9", "L10"}
    masonry = {weak.key: weak for weak in path_of("quarry-lane").weaknesses}["masonry-perimeter"]
    assert masonry.outcome == "there"
    assert "Inner strips and panels draws concrete inside line L1, L12, which no check counts" in masonry.reason
    ring = "A new foundation inside the front part has a new foundation inside for line L1, L14, L12, "
    assert ring in masonry.reason
    assert "(F11, F12, F13, F14)" in masonry.reason
    assert {item.key for item in path_of("quarry-lane").scope if item.outcome == "out"} == {"foundation"}


@pytest.mark.parametrize("name", ["larch-street", "ferry-hill", "quarry-lane"])
def test_every_line_has_both_ways_or_says_why_not(name: str) -> None:
    for state in study_of(name).runs:
        for line in state.prescriptive:
            assert (line.both.engineered_full_ft is None) == bool(line.both.why_not)
            assert line.headline
