"""The plate as the floor's chord: its force by hand, when a joint passes, fails, or is left to be looked at."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from groundsill.house.fact import measured
from groundsill.house.underfloor import PlateSplice
from groundsill.loadpath.chain import Link
from groundsill.study import AS_FOUND, Study, run
from groundsill.work.document import House
from groundsill.work.pieces import SplicePiece
from tests.loadpath.asking import links_in, study_of
from tests.loadpath.houses import known_house, with_pieces

LENGTH_IN, DEPTH_IN = 360.0, 240.0


def chord(study: Study, joint: str = "sp1", line: str = "line1", key: str = AS_FOUND) -> Link:
    """The chord link of a joint."""
    return links_in(study)[key, f"line/{line}/chord/{joint}/both"]


@cache
def house_with(**changes: object) -> House:
    """The known house with its front plate's joint, or the line itself, changed."""
    house = known_house()
    under = house.survey.underfloor
    joint = {k: v for k, v in changes.items() if k in {"kind", "nails_each_side", "station_in", "nail"}}
    line = {k: v for k, v in changes.items() if k not in joint}
    under = replace(
        under,
        splices=under.splices | {"sp1": replace(under.splices["sp1"], **joint)},
        lines=under.lines | {"line1": replace(under.lines["line1"], **line)},
    )
    return replace(house, survey=replace(house.survey, underfloor=under))


def studied(**changes: object) -> Link:
    """The front joint's chord link in the changed house."""
    return chord(run(house_with(**changes), ranges=False))


# --- the force by hand -----------------------------------------------------------------------------------------------


def by_hand(study: Study, station_in: float) -> float:
    """Chord force by statics: every piece of weight on a simple beam of 30 ft, the moment by the lever rule, lb.

    The house is a rectangle with one line at each end, so that each piece's two reactions need no sharing; a piece is
    cut into slices a fiftieth of an inch wide.
    """
    forces = study.forces
    moment = 0.0
    for level, at in enumerate(forces.levels):
        for item in forces.items:
            part = sum(share for n, share in item.levels if n == level) if item.seismic else 0.0
            if not part:
                continue
            push = at.force_lb / at.weight_lb * part * item.weight_lb
            us = [p[0] for p in item.points]
            low, high = min(us), max(us)
            slices = np.linspace(low, high, 18001)
            middles = (slices[1:] + slices[:-1]) / 2 if high > low else np.array([low])
            right = middles / LENGTH_IN  # part of a slice that goes to the line at the far end
            m = (1 - right) * station_in - np.where(middles < station_in, station_in - middles, 0.0)
            moment += push * float(np.mean(m))
    return 0.7 * forces.rho * moment / DEPTH_IN


@pytest.mark.parametrize(("joint", "line", "station"), [("sp1", "line1", 184.0), ("sp2", "line3", 360.0 - 176.0)])
def test_the_chord_force_of_the_small_house_by_the_lever_rule(joint: str, line: str, station: float) -> None:
    study = study_of("known")
    assert chord(study, joint, line).demand == pytest.approx(by_hand(study, station), rel=1e-4)


def test_both_edges_of_the_floor_carry_the_same_force() -> None:
    study = study_of("known")
    assert chord(study).demand == pytest.approx(chord(study, "sp2", "line3").demand or 0.0, rel=1e-9)


def test_the_force_is_greatest_near_midspan_and_nothing_at_the_ends() -> None:
    forces = [studied(station_in=float(at)).demand or 0.0 for at in (0, 40, 100, 180, 260, 320, 360)]
    assert max(forces[0], forces[-1]) < 1.0  # what little the eaves beyond the end lines weigh
    assert forces[:4] == sorted(forces[:4])
    assert forces[3:] == sorted(forces[3:], reverse=True)


# --- what holds it ---------------------------------------------------------------------------------------------------


def test_a_lap_holds_by_its_nails_on_one_side() -> None:
    link = studied()
    assert link.status == "passes"
    assert link.clause == "NDS 2018 12.3.1, 11.3"
    assert studied(nails_each_side=measured(4.0)).capacity == pytest.approx((link.capacity or 0.0) / 2)


def test_a_butted_plate_is_looked_at_where_a_rim_joist_runs_past_it() -> None:
    link = studied(kind="butt", rim="rim joist")
    assert link.status == "cannot be checked"
    assert "the rim joist may carry the rest past it" in link.reason
    assert "holds 0 lb of a chord force of" in link.reason


def test_a_butted_plate_with_no_rim_at_all_fails() -> None:
    link = studied(kind="butt", rim="none")
    assert link.status == "fails"
    assert link.capacity == 0.0


def test_a_lap_between_the_two_ends_of_the_force_is_not_called_either_way() -> None:
    link = studied(rim="none", nails_each_side=measured(2.0))
    assert link.status == "cannot be checked"
    assert "as the walls above bring their force down" in link.reason


def test_a_strap_across_the_joint_counts() -> None:
    house = house_with(kind="butt")
    strap = SplicePiece(order=99, mark="S9", line="line1", station_in=184.0, capacity_lb=1200.0, report="to be named")
    alternative = house.alternatives["strengthen"]
    work = replace(alternative, pieces=alternative.pieces | {"sp-new": strap})
    house = replace(house, alternatives=house.alternatives | {"strengthen": work})
    study = run(house, ranges=False)
    assert chord(study).status == "cannot be checked"
    assert chord(study, key="strengthen").status == "passes"
    weaker = with_pieces(house, "strengthen", lambda key, p: replace(p, capacity_lb=60.0) if key == "sp-new" else p)
    assert chord(run(weaker, ranges=False), key="strengthen").status == "cannot be checked"


# --- where there is no chord to check --------------------------------------------------------------------------------


def test_an_interior_line_is_no_chord() -> None:
    link = links_in(run(house_with(position="interior", relied_on=True), ranges=False))[
        AS_FOUND, "line/line1/chord/line1/both"
    ]
    assert link.status == "does not apply"
    assert "inside the floor" in link.reason


def test_balloon_framing_is_not_guessed_at() -> None:
    link = links_in(run(house_with(framing="balloon"), ranges=False))[AS_FOUND, "line/line1/chord/line1/both"]
    assert link.status == "cannot be checked"
    assert "balloon framing" in link.reason


def test_a_plate_without_a_joint_has_nothing_to_pass() -> None:
    house = known_house()
    under = replace(house.survey.underfloor, splices=dict[str, PlateSplice]())
    study = run(replace(house, survey=replace(house.survey, underfloor=under)), ranges=False)
    assert links_in(study)[AS_FOUND, "line/line1/chord/line1/both"].status == "does not apply"
