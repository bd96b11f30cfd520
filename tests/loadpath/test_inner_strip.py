"""A new strip as it is made: poured in lengths, held down by cross strips, founded on soil that swells and shrinks."""

import math
from dataclasses import replace
from typing import Any

import pytest

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import work_out
from groundsill.house.fact import measured, unknown
from groundsill.loadpath.chain import Link
from groundsill.standards.aci318_19.development import lap_splice
from groundsill.study.states import reading_of, states_of
from groundsill.work.document import House
from tests.loadpath.inner_houses import with_ring, with_strip, with_work
from tests.loadpath.test_inner import alone, link, links, near, ring

# ---- Poured in lengths ----------------------------------------------------------------------------------------------


def poured(**changes: Any) -> dict[str, Link]:
    found = links(with_work(with_strip(**changes)))
    return {
        k: found[a] for k in ("laps", "laps-room", "lengths-shear") if (a := f"line/inn1/footing/{k}/both") in found
    }


def test_a_strip_poured_in_one_has_no_laps() -> None:
    assert poured() == poured(dig_length_in=240, end=near(48, 200)) == {}


def test_bars_of_a_strip_poured_in_lengths_are_lapped_and_the_laps_must_fit_the_trench() -> None:
    """#4 in 2,500 psi, class B, the upper bars' place; a first length has laps at both ends in its open trench."""
    undrawn = poured(dig_length_in=48)["laps"]
    assert (undrawn.status, undrawn.clause) == ("cannot be checked", "ACI 318-19 25.5.2")
    lap = lap_splice("#4", 2500.0, 60000.0, c_b=3.0, place="over 12 in. of fresh concrete")
    assert f"{math.ceil(float(lap))} in. are asked (#4, class B" in undrawn.reason
    short, enough, tight = (poured(dig_length_in=d, lap_in=n) for d, n in ((72, 10), (72, 30), (48, 30)))
    assert [found["laps"].status for found in (short, enough, tight)] == ["fails", "passes", "passes"]
    assert [found["laps-room"].status for found in (enough, tight)] == ["passes", "fails"]
    assert enough["laps-room"].reason == "12 in. of it can be poured at once"


def test_shear_passes_the_joints_between_lengths_by_the_bars_lapped_there() -> None:
    found = poured(dig_length_in=72, lap_in=30)["lengths-shear"]
    assert found.demand == pytest.approx(link(alone(), "line/inn1/footing/shear/both").demand)
    assert found.capacity == pytest.approx(0.75 * 0.6 * 4 * 0.2 * 60000)  # four #4, not roughened, by hand


# ---- Cross strips that hold it down ----------------------------------------------------------------------------------


def test_a_cross_strip_is_checked_as_what_hangs() -> None:
    """By hand: strip and soil on it 22 ft long, its wall's dead load, 1.2 + 0.2 S_DS of both, free over its length."""
    bends, shears = (link(ring(), f"line/inn2/footing/hung-inn1{k}/both") for k in ("", "-shear"))
    house = with_ring()
    forces = work_out(reading_of(states_of(house)[1], Reading(house)))
    concrete = 150 * (18 * 12 + 8 * 16) / 144
    soil = bends.demand * 8 / (22 * 12) / (1.2 + 0.2 * forces.S_DS) - forces.gravity.lines["inn1"].dead - 22 * concrete
    assert 0 < soil < 22 * (10 * 8) / 144 * 130  # the soil on the footing's edges is all that is left
    assert shears.demand == pytest.approx(bends.demand * 8 / (22 * 12) / 2)
    assert (bends.status, shears.status, bends.clause) == ("passes", "passes", "ACI 318-19 22.3")
    assert bends.capacity == pytest.approx(link(ring(), "line/inn2/footing/sagging/both").capacity, rel=0.02)


@pytest.mark.parametrize(
    ("weak", "says"),
    [({"bar": "#3"}, "it would bend by"), ({"hooked": False}, "its bars do not turn into this strip"),
     ({"bars_top": 0}, "it has bars at one face only"),
     ({"bar": "#5", "footing_width_in": 26.0}, "its joint would pass")],
)  # fmt: skip
def test_a_cross_strip_that_cannot_hang_is_counted_for_nothing(weak: dict[str, Any], says: str) -> None:
    found = with_work(with_ring(**weak))
    hung = [k for a, k in links(found).items() if a.startswith("line/inn2/footing/hung-inn1")]
    assert [(k.status, k.reason.startswith(says)) for k in hung] == [("does not apply", True)]
    assert all(k.reason.endswith("its weight is not counted here") for k in hung)
    assert "cross strips cast with it" not in link(found, "line/inn2/footing/pressure/both").reason


def test_a_strip_that_nothing_bends_one_way_is_asked_nothing_that_way() -> None:
    sagging = link(ring(), "line/inn1/footing/sagging/both")
    assert (sagging.status, sagging.demand) == ("does not apply", 0.0)


def test_without_bars_the_strip_carries_nothing() -> None:
    found = with_work(with_strip(bars_top=0))
    hogging = link(found, "line/inn1/footing/hogging/both")
    assert (hogging.status, hogging.ratio, hogging.reason) == ("fails", None, "no bar lies at its top")
    assert link(found, "line/inn1/footing/shear/both").status == "fails"


def test_bars_that_do_not_fit_and_a_joint_without_bars_fail() -> None:
    found = with_work(with_strip(bars_top=4, ties="none"))
    assert link(found, "line/inn1/footing/top-clear/both").status == "fails"
    assert link(found, "line/inn1/footing/joint/both").status == "fails"


def test_soil_without_a_presumptive_value_leaves_the_footing_open() -> None:
    house = with_strip()
    soil = replace(house.survey.site.soil, kind=unknown())
    house = replace(house, survey=replace(house.survey, site=replace(house.survey.site, soil=soil)))
    pressure = link(with_work(house), "line/inn1/footing/pressure/both")
    assert (pressure.status, "kind of soil" in pressure.reason) == ("cannot be checked", True)


def test_its_floor_beyond_the_ends_needs_a_drag_strap_at_both() -> None:
    drag = "line/inn1/plate-splices/inn1-drag/both"
    assert link(alone(), drag).status == "passes"
    without = link(with_work(with_strip(drag=False)), drag)
    assert (without.status, "no collector is drawn at both ends" in without.reason) == ("cannot be checked", True)


def test_a_line_that_reaches_both_edges_of_the_floor_drags_nothing() -> None:
    assert not any("-drag" in address for address in links(alone()) if address.startswith("line/line3/"))


# ---- Soil that swells and shrinks -----------------------------------------------------------------------------------


def on_clay(house: House, **facts: Any) -> House:
    soil = replace(house.survey.site.soil, kind=measured("clay"), **facts)
    return replace(house, survey=replace(house.survey, site=replace(house.survey.site, soil=soil)))


EXPANSIVE = {"plasticity_index": measured(24.0)}
FOUNDED = "line/inn1/footing/expansive/both"


def founded(soil: dict[str, Any], **piece: Any) -> Link:
    return link(with_work(on_clay(with_strip(**piece), **soil)), FOUNDED)


def test_a_new_footing_on_expansive_soil_waits_for_a_report_and_the_old_one_is_told() -> None:
    found = with_work(on_clay(with_strip(), **EXPANSIVE))
    waits = link(found, FOUNDED)
    assert (waits.status, waits.clause) == ("cannot be checked", "IBC 2021 1808.6")
    assert waits.reason.startswith("the soil is expansive; a report must say how it is founded")
    assert next(c for c in found.chains if c.id == "inn1").verdict != "passes"
    old = [body.headline for body in found.bodies if "I1" not in body.name and body.kind == "body"]
    assert old
    assert all(head.startswith("expansive soil: how it lifts and settles") for head in old)


def test_clay_that_nobody_tested_may_be_expansive_and_sand_is_not_asked() -> None:
    assert founded({}).reason.startswith("clay that nobody tested may be expansive")
    assert FOUNDED not in links(with_work(on_clay(with_strip(), plasticity_index=measured(10.0))))
    assert FOUNDED not in links(alone())


@pytest.mark.parametrize(
    ("piece", "status", "says"),
    [
        ({"on_expansive": "designed for it"}, "cannot be checked", "whose report says how it is founded is not told"),
        (
            {"on_expansive": "designed for it", "expansive_report": "G. Tech, 2026"},
            "does not apply",
            "by G. Tech, 2026",
        ),
        ({"on_expansive": "the soil is taken out", "expansive_report": "G. Tech"}, "cannot be checked", "its bearing"),
        ({"on_expansive": "below the active zone", "expansive_report": "G. Tech"}, "cannot be checked", "active zone"),
        ({"on_expansive": "below the active zone", "expansive_report": "G. Tech", "active_zone_in": 36.0}, "fails", ""),
        (
            {"on_expansive": "below the active zone", "expansive_report": "G. Tech", "active_zone_in": 18.0},
            "passes",
            "",
        ),
    ],
)
def test_what_a_report_says_of_it(piece: dict[str, Any], status: str, says: str) -> None:
    found = founded(EXPANSIVE, **piece)
    assert (found.status, says in found.reason) == (status, True)
