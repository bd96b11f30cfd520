"""The storeys above in a study: told for every state, compared item by item, with their working by address."""

from __future__ import annotations

import pytest

from groundsill.loadpath.rises import compared
from groundsill.loadpath.storey_above import next_weakest
from groundsill.study import AS_FOUND, Study, run, working
from tests.loadpath.two_storeys import BOARDS, PLASTER, above, two_storeys
from tests.papers.views_sample import small_study


@pytest.fixture(scope="module")
def study() -> Study:
    return run(two_storeys((BOARDS, PLASTER)), ranges=False)


def test_a_study_holds_the_storeys_as_they_are_worked_out_alone(study: Study) -> None:
    _, storeys = above(two_storeys((BOARDS, PLASTER)))
    found = study.runs[0].storeys
    assert [s.headline for s in found] == [s.headline for s in storeys]
    assert [c.ratio for s in found for c in s.checks] == [c.ratio for s in storeys for c in s.checks]
    assert study.runs[0].next_weakest == next_weakest(study.runs[0].chains, found, False)


def test_their_marks_reach_the_manifest(study: Study) -> None:
    doubts = (*study.manifest.from_memory, *study.manifest.assumed)
    assert any("plaster on wood or metal lath" in what for what in doubts)
    assert any("IEBC Appendix A1 values" in what for what in doubts)


def test_the_working_of_a_wall_is_had_by_its_address(study: Study) -> None:
    sheet = working(two_storeys((BOARDS, PLASTER)))
    for storey in study.runs[0].storeys:
        for check in storey.checks:
            assert any(step.id == "statics/unit-shear" for step in sheet.under(check.address)), check.address


def test_every_state_but_the_first_is_compared_with_it() -> None:
    found = small_study()[1]
    first = found.runs[0]
    assert (first.key, first.compared) == (AS_FOUND, None)
    for state in found.runs[1:]:
        assert state.storeys == first.storeys
        assert state.next_weakest.startswith("after the work ")
        assert state.compared == compared(
            (*first.chains, *first.bodies), (*state.chains, *state.bodies), first.storeys, state.storeys
        )
        assert "storey above" not in found.warnings[-1]
