"""The house with sound sills and bolts, on brick: two wythes of 9 in., headers seen, hard mortar, nothing tested."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Any

from groundsill.house.fact import measured, unknown
from groundsill.house.foundation import FoundationTest
from groundsill.loadpath.chain import Link
from groundsill.work.document import House
from groundsill.work.pieces import ConcretePiece, SideplatePiece
from tests.loadpath.bolting import (
    a_bolt,
    a_shear_test,
    links,
    sound_house,
    with_bolts,
    with_stem,
    with_tests,
    without_cores,
)

LINE, STEM, SILL = "line2", "fs2", "si2"
GOOD = (40.0, 38.0, 45.0, 52.0, 41.0, 36.0, 60.0, 44.0)


@cache
def brick_house(**changes: Any) -> House:
    """Every wall line on brick, four bolts in the sill asked about, with these facts of its stretches changed."""
    more = {f"si2-{n}": a_bolt(LINE, station, mark=f"si2-{n}") for n, station in ((2, 100.0), (3, 140.0))}
    house = with_bolts(without_cores(sound_house()), more)
    plain: dict[str, Any] = {
        "material": "brick", "strength_psi": unknown(), "top_width_in": measured(9.0), "wythes": measured(2.0),
        "header_course": measured(True), "collar_joint_filled": measured(True), "condition": measured("sound"),
        "mortar": measured("hard"),
    }  # fmt: skip
    for key in house.survey.foundation.segments:
        house = with_stem(house, key, **(plain | changes))
    return house


def with_mortar_tests(house: House, values: Sequence[float] = GOOD, own: int = 2, **changes: Any) -> House:
    """In-place shear tests, psi without load: the first of them on the line asked about, the others on the front."""
    plain: dict[str, Any] = {"kind": "mortar shear", "unit": "psi", "axial_psi": 0.0, "by": "lab", "when": "2026-05-01"}
    front = next(key for key, s in house.survey.foundation.segments.items() if s.line == "line1")
    tests = {}
    for n, value in enumerate(values):
        stem = STEM if n < own else front
        at = house.survey.foundation.segments[stem].from_in + 12.0 + n
        made = {"mark": f"M{n}", "segment": stem, "station_in": at, "result": value}
        tests[f"mortar_{n}"] = FoundationTest(**(made | plain | changes))
    return with_tests(house, **tests)


def with_bolt_tests(house: House, loads: Sequence[float] = (30000.0,) * 5, stem: str = STEM, **changes: Any) -> House:
    """Old bolts like those of the house tested in shear in the brick, on one stretch."""
    at = house.survey.foundation.segments[stem].from_in
    named = {
        f"bolts_{n}": a_shear_test(stem, at + 24.0 + n, load, mark=f"S{n}", **changes) for n, load in enumerate(loads)
    }
    return with_tests(house, **named)


def both_proofs(**changes: Any) -> House:
    """The brick house with good mortar tests and good bolt tests."""
    return with_bolt_tests(with_mortar_tests(brick_house(**changes)))


def bolts(house: House, work: bool = False) -> Link:
    """The bolts of the sill piece in the foundation."""
    return links(house, LINE, work)[f"bolts-concrete/{SILL}/both"]


def stem(house: House, work: bool = False) -> Link:
    """The brick along its line."""
    return links(house, LINE, work)[f"masonry/{STEM}/both"]


def a_brick_plate(**changes: Any) -> SideplatePiece:
    """A plate on the face of the stem with two grouted bolts, as the table has them."""
    plain: dict[str, Any] = {
        "mark": "SP1", "line": LINE, "station_in": 90.0, "from_top_in": 8.0, "thickness_in": 0.25, "width_in": 14.0,
        "screw": "1/4 lag", "screw_length_in": 3.0, "screw_above_in": 0.75, "anchor": "grouted",
        "anchor_diameter_in": 0.625, "anchor_embedment_in": 8.0, "anchor_hole_in": 2.5, "anchor_spacing_in": 8.0,
        "couple": "screws",
    }  # fmt: skip
    return SideplatePiece(**(plain | changes))


def a_torque_test(result: float = 50.0, **changes: Any) -> FoundationTest:
    """A grouted bolt torqued in this wall."""
    plain: dict[str, Any] = {
        "segment": STEM, "station_in": 90.0, "kind": "torque", "unit": "lb-ft", "anchor": "new",
        "anchor_kind": "grouted", "anchor_diameter_in": 0.625, "by": "lab", "when": "2026-05-01",
    }  # fmt: skip
    return FoundationTest(result=result, **(plain | changes))


def an_inner_foundation(line: str = LINE) -> ConcretePiece:
    """A new foundation inside, for a line."""
    return ConcretePiece(mark="F1", purpose="inner foundation", line=line, depth_in=18.0)
