"""Quarry Lane's front on its soft brick: nothing known, poor mortar proved, and pointed and tested with bolts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from groundsill.doors.decode import decode
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import work_out
from groundsill.house.foundation import FoundationTest
from groundsill.house.settle import prepare
from groundsill.loadpath.chain import Link
from groundsill.loadpath.path import chain_of
from groundsill.work.document import House
from groundsill.work.pieces import BoltPiece

FILE = Path(__file__).parents[2] / "samples" / "quarry-lane" / "house.json"
WHO = {"by": "Port Ellery Testing (invented)", "when": "2026-06-01"}


@cache
def as_surveyed() -> House:
    """The sample as it stands."""
    return decode(FILE.read_bytes(), FILE.name)


def front(house: House) -> str:
    """The id of the front line."""
    return next(id for id, line in house.survey.underfloor.lines.items() if line.mark == "L1")


def grouted_bolts(house: House) -> dict[str, BoltPiece]:
    """New bolts in wide grouted holes, two feet apart along the front."""
    return {
        f"bolt-{n}": BoltPiece(
            mark=f"A{n}", line=front(house), station_in=12.0 + 24.0 * n, anchor="grouted", diameter_in=0.625,
            embedment_in=8.0, edge_in=4.5, hole_in=2.5,
        )
        for n in range(13)
        if abs(12.0 + 24.0 * n - 150.0) > 8.0  # clear of the joint in the sill
    }  # fmt: skip


def with_tests(house: House, tests: Sequence[dict[str, Any]]) -> House:
    """The survey with its own mortar tests taken out and these put in, all on the front's two stretches."""
    base = house.survey.foundation
    kept = {id: t for id, t in base.tests.items() if t.kind != "mortar shear"}
    stretches = [(id, s) for id, s in base.segments.items() if s.line == front(house)]
    for n, test in enumerate(tests):
        id, stretch = stretches[n % len(stretches)]
        made = {"mark": f"N{n}", "segment": id, "station_in": stretch.from_in + 20.0 + n}
        kept[f"new-{n}"] = FoundationTest(**(made | WHO | test))
    return replace(house, survey=replace(house.survey, foundation=replace(base, tests=kept)))


def mortar(values: Sequence[float]) -> list[dict[str, Any]]:
    """In-place shear tests with the load on the joints taken off."""
    return [{"kind": "mortar shear", "unit": "psi", "axial_psi": 0.0, "result": v} for v in values]


def bolts(loads: Sequence[float], moved: float = 0.05) -> list[dict[str, Any]]:
    """Shear tests of new grouted bolts."""
    plain = {
        "kind": "anchor shear", "unit": "lb", "anchor": "new", "anchor_kind": "grouted", "anchor_diameter_in": 0.625,
        "anchor_embedment_in": 8.0, "anchor_edge_in": 4.5, "displacement_in": moved,
    }  # fmt: skip
    return [plain | {"result": load} for load in loads]


def of_front(house: House) -> dict[str, list[Link]]:
    """The front's stages from the bolts down, with the grouted bolts laid on it."""
    settled = prepare(house).best
    reading = Reading(settled.house, settled.marks)
    line = front(house)
    chain = chain_of(reading, work_out(reading), line, tuple(grouted_bolts(house).items()))
    return {stage.key: list(stage.links) for stage in chain.stages}


def statuses(links: Sequence[Link]) -> set[str]:
    """How links stand."""
    return {link.status for link in links}


def test_as_surveyed_nobody_can_say_and_the_tests_that_would_settle_it_are_counted() -> None:
    found = of_front(as_surveyed())
    for link in (*found["masonry"], *found["bolts-concrete"]):
        assert link.status == "cannot be checked"
        assert "1 of 2 on this line, 2 of 8 of its class (A106.2.3.5)" in link.reason
    for link in found["bolts-concrete"]:
        assert "0 of 5 tests of new grouted 0.625 in. bolts in this brick" in link.reason


def test_tests_like_those_that_were_made_say_point_it_first() -> None:
    found = of_front(with_tests(as_surveyed(), [*mortar((34, 19, 22, 27, 24, 30, 21, 18)), *bolts((9000,) * 6)]))
    for link in (*found["masonry"], *found["bolts-concrete"]):
        assert link.status == "cannot be checked"
        assert "the wall is pointed and tested again" in link.reason


def test_pointed_and_tested_with_bolts_the_front_has_figures() -> None:
    tests = [*mortar((48, 52, 45, 61, 50, 44, 57, 49)), *bolts((9000, 8200, 9600, 8800, 9100, 8700))]
    found = of_front(with_tests(as_surveyed(), tests))
    assert statuses(found["masonry"]) == {"indicated"}
    assert all("IEBC appendix A1" in link.extension for link in found["masonry"])
    for link in found["bolts-concrete"]:
        assert link.capacity == pytest.approx(53400 / 6 / 5)
        assert link.status == "passes"  # the tests held more than a bolt is asked for, none moved far
        assert link.ratio is not None


def test_bolts_that_moved_farther_leave_it_indicated() -> None:
    far = [*mortar((48, 52, 45, 61, 50, 44, 57, 49)), *bolts((9000, 8200, 9600, 8800, 9100, 8700), 0.12)]
    near = [*mortar((48, 52, 45, 61, 50, 44, 57, 49)), *bolts((9000, 8200, 9600, 8800, 9100, 8700))]
    moved, stood = (of_front(with_tests(as_surveyed(), tests))["bolts-concrete"] for tests in (far, near))
    for one, other in zip(moved, stood, strict=True):
        assert one.capacity == other.capacity
        assert (one.status, other.status) == ("indicated", "passes")
