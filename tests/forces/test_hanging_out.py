"""Floor that hangs out beyond lines, lines that turn, what a rigid floor lacks: shares stay sound, and it is said."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.doors.decode import decode
from groundsill.forces.lines import Stiffness, with_rigid
from groundsill.forces.seismic import work_out
from groundsill.forces.share import flexible_shares
from groundsill.forces.weights import weight_items
from groundsill.house.building import Corner
from groundsill.work.document import House
from groundsill.working.sheet import Sheet
from tests.forces.balance import SAMPLES, forces_of, larch_street, reading_of
from tests.forces.reference_house import reference_house
from tests.properties.skewed import ends_of, relying_on, with_lines

XY = tuple[float, float]


def moved(house: House, line: str, a: XY, b: XY) -> House:
    """The house with one line between two other places."""
    building, lines = house.survey.building, house.survey.underfloor.lines
    corners = dict(building.corners) | {"m-a": Corner(x_in=a[0], y_in=a[1]), "m-b": Corner(x_in=b[0], y_in=b[1])}
    under = replace(house.survey.underfloor, lines=dict(lines) | {line: replace(lines[line], start="m-a", end="m-b")})
    return replace(house, survey=replace(house.survey, building=replace(building, corners=corners), underfloor=under))


def shares_along_x(house: House) -> dict[str, dict[int, float]]:
    reading = reading_of(house)
    return {id: share.fraction for id, share in flexible_shares(reading, weight_items(reading), "x").shares.items()}


def doubled() -> House:
    """Front line doubled 4 in. behind it (an addition's wall); the rear line reaches over half of the house alone."""
    (x1, y), (x2, _) = ends_of(reference_house(), "rear")
    half = moved(reference_house(), "rear", ((x1 + x2) / 2, y), (x2, y))
    (x3, y3), (x4, _) = ends_of(half, "front")
    return with_lines(half, {"double": ((x3, y3 + 4), (x4, y3 + 4))})


def test_two_lines_close_together_do_not_hold_half_a_house_by_a_lever_of_inches():
    shares = shares_along_x(doubled())
    assert all(0.0 <= part < 0.55 for id in ("double", "rear") for part in shares[id].values())
    assert all(0.0 < part < 0.3 for part in shares["front"].values())  # its own walls and eave
    forces = forces_of(doubled())
    assert not forces.missing
    assert not any("all the force of" in w or "hangs out" in w for w in forces.warnings)


def test_lines_within_two_feet_are_one_place_and_a_line_is_missing():
    """Front and its double alone along x: nothing stands at the rear."""
    house = relying_on(doubled(), {"front", "double", "left", "right"})
    (missing,) = forces_of(house).missing
    assert missing.reason == "nothing but lines in one line is relied on along x: a line is missing there"


def test_a_house_that_hangs_out_beyond_its_lines_is_cautioned_about():
    """The rear line stands 10 ft behind the front of a house 30 ft deep: it has more than the whole, and is told so."""
    (x1, y1), (x2, _) = ends_of(reference_house(), "front")
    house = moved(reference_house(), "rear", (x1, y1 + 120), (x2, y1 + 120))
    forces = forces_of(house)
    assert not forces.missing
    told = [w for w in forces.warnings if "the floor turns about it" in w]
    marks = {id: line.mark for id, line in house.survey.underfloor.lines.items()}
    assert any(w.startswith(f"line {marks['rear']} has 1.") and "(earthquake along x)" in w for w in told)
    assert any(f"hangs out beyond line {marks['rear']}, farther than any line stands behind it" in w for w in told)
    assert len(told) == 2


@pytest.mark.parametrize("name", ["larch-street", "quarry-lane", "ferry-hill"])
def test_the_samples_need_no_such_caution(name):
    path = SAMPLES / name / "house.json"
    assert not any("the floor turns about it" in w for w in forces_of(decode(path.read_bytes(), path.name)).warnings)


# ---- A line that turns -----------------------------------------------------------------------------------------------


def turned(angle: float) -> House:
    """The reference house with one more line through its middle, at an angle to x."""
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    return with_lines(reference_house(), {"more": ((240 - 150 * c, 180 - 150 * s), (240 + 150 * c, 180 + 150 * s))})


def furthest(one: float, other: float) -> float:
    a, b = shares_along_x(turned(one)), shares_along_x(turned(other))
    return max(abs(a[id][level] - b[id][level]) for id in a for level in a[id])


@pytest.mark.parametrize("angle", [60.0, 70.0])
def test_no_share_jumps_where_a_line_stops_holding_floor(angle):
    assert furthest(angle - 0.001, angle + 0.001) < 1e-4


@settings(max_examples=40)
@given(st.integers(20, 880))
def test_a_tenth_of_a_degree_changes_no_share_by_a_hundredth(tenths):
    assert furthest(tenths / 10 + 0.01, tenths / 10 + 0.11) < 0.01


def test_between_60_and_70_degrees_the_shares_are_between_those_with_and_without_the_line():
    """At 65 degrees half of the floor hangs as with the line whole, half as without it."""
    reading = reading_of(turned(65.0))
    items = weight_items(reading)
    got = flexible_shares(reading, items, "x").shares["more"].fraction
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("groundsill.forces.flexible.WHOLE_DEG", 80.0)
        patch.setattr("groundsill.forces.flexible.NONE_DEG", 81.0)
        whole = flexible_shares(reading, items, "x").shares["more"].fraction
        patch.setattr("groundsill.forces.flexible.WHOLE_DEG", 40.0)
        patch.setattr("groundsill.forces.flexible.NONE_DEG", 41.0)
        none = flexible_shares(reading, items, "x").shares["more"].fraction
    for level in got:
        assert got[level] == pytest.approx((whole[level] + none[level]) / 2, abs=1e-9)


# ---- A rigid floor that its braced lines cannot hold -----------------------------------------------------------------


def test_a_rigid_floor_that_braced_lines_cannot_hold_is_told_and_gives_no_force():
    """Bracing is left in the two lines along x: nothing resists along y, and that direction is left as it was."""
    reading = reading_of(larch_street())
    with Sheet() as sheet:
        forces = work_out(reading)
        along_x = [id for id, line in forces.lines.items() if line.relied_on and line.direction == "x"]
        braced = dict.fromkeys(along_x, Stiffness(1.0))
        both, told = with_rigid(reading, forces.items, forces.levels, forces.lines, braced)
    assert told == ("along y what is braced cannot hold a rigid floor, so none is taken there",)
    assert told[0] in {step.title for step in sheet.steps}
    left = [id for id in both if id not in along_x]
    assert [replace(both[id], cases={}) for id in left] == [replace(forces.lines[id], cases={}) for id in left]
    assert all(both[id].cases.get("y") == forces.lines[id].cases.get("y") for id in left)
    assert any(both[id].floor == "rigid floor" for id in along_x)
