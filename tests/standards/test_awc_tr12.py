"""The general dowel equations: NDS's own modes when nothing stands between the members, and less with every gap."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.awc_tr12 import general_dowel as tr12
from groundsill.standards.catalogue import entries
from groundsill.standards.nds_2018.bolts import bolt
from groundsill.standards.nds_2018.expected import expected_yield
from groundsill.standards.nds_2018.screws import lag_screw_steel_plate
from groundsill.standards.nds_2018.shear import double_shear, single_shear
from groundsill.standards.nds_2018.sill_bolt import sill_bolt, sill_bolt_weak_concrete
from groundsill.working.dimensions import check_units
from groundsill.working.equation import Equation
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet

EQUATIONS = [entry.maker for entry in entries("awc-tr12") if isinstance(entry.maker, Equation)]
MODES = ("Im", "Is", "II", "IIIm", "IIIs", "IV")

joints = st.fixed_dictionaries(
    {
        "D": st.floats(0.09, 1.0),
        "l_m": st.floats(0.5, 12.0),
        "l_s": st.floats(0.05, 6.0),
        "F_em": st.floats(1500.0, 90000.0),
        "F_es": st.floats(1500.0, 90000.0),
        "F_yb": st.floats(30000.0, 100000.0),
    }
)
gaps = st.floats(0.0, 6.0)


@pytest.mark.parametrize("equation", EQUATIONS, ids=[e.id for e in EQUATIONS])
def test_units_and_scale_of_every_equation(equation: Equation[Any]) -> None:
    check_units(equation)


@given(joint=joints, theta=st.floats(0.0, 90.0))
def test_without_a_gap_every_mode_is_that_of_nds(joint: dict[str, float], theta: float) -> None:
    general = tr12.single_shear_with_gap(**joint, theta=theta)
    nds = single_shear(**joint, theta=theta)
    assert pytest.approx(nds.Z, rel=1e-9) == general.Z
    assert general.mode == nds.mode or pytest.approx(nds.modes()[general.mode], rel=1e-9) == general.Z
    ones = expected_yield(**joint)
    assert pytest.approx(ones.P, rel=1e-9) == general.P
    loads = tr12.yield_loads(**joint, g=0.0)
    terms = {m: loads[m] / z for m, z in nds.modes().items()}
    assert terms["Im"] == pytest.approx(terms["Is"])
    assert terms["IIIm"] == pytest.approx(terms["IIIs"], rel=1e-8)
    assert terms["IIIm"] == pytest.approx(terms["IV"], rel=1e-8)


@given(joint=joints, g=gaps, more=st.floats(0.0, 3.0))
def test_a_wider_gap_never_carries_more_and_crushing_does_not_feel_it(
    joint: dict[str, float], g: float, more: float
) -> None:
    near, far = tr12.yield_loads(**joint, g=g), tr12.yield_loads(**joint, g=g + more)
    for mode in MODES:
        assert far[mode] <= near[mode] * (1 + 1e-9)
    assert (far["Im"], far["Is"]) == (near["Im"], near["Is"])


@given(joint=joints, g=gaps)
def test_swapping_the_members_mirrors_the_modes(joint: dict[str, float], g: float) -> None:
    swapped = joint | {"l_m": joint["l_s"], "l_s": joint["l_m"], "F_em": joint["F_es"], "F_es": joint["F_em"]}
    one, other = tr12.yield_loads(**joint, g=g), tr12.yield_loads(**swapped, g=g)
    for mode, mirror in (("Im", "Is"), ("II", "II"), ("IIIm", "IIIs"), ("IIIs", "IIIm"), ("IV", "IV")):
        assert one[mode] == pytest.approx(other[mirror], rel=1e-9)


@given(joint=joints, g=gaps)
def test_mode_loads_balance_the_moment_they_came_from(joint: dict[str, float], g: float) -> None:
    """Mode IV by statics: the dowel's two moments over the lever between the two zones that bear."""
    q_m, q_s = joint["F_em"] * joint["D"], joint["F_es"] * joint["D"]
    M = joint["F_yb"] * joint["D"] ** 3 / 6
    P = tr12.yield_loads(**joint, g=g)["IV"]
    lever = g + P / q_m / 2 + P / q_s / 2
    assert P * lever == pytest.approx(2 * M, rel=1e-7)


@given(joint=joints)
def test_a_very_wide_gap_leaves_only_the_dowel_as_a_lever(joint: dict[str, float]) -> None:
    g = 1e6
    M = joint["F_yb"] * joint["D"] ** 3 / 6
    assert tr12.yield_loads(**joint, g=g)["IV"] == pytest.approx(2 * M / g, rel=0.05)


def test_a_sill_on_the_concrete_is_the_sill_bolt_of_nds() -> None:
    flush = tr12.sill_bolt_with_gap(0.625, 1.5, 0.0)
    assert pytest.approx(sill_bolt(0.625, 1.5).Z, rel=1e-12) == flush.Z
    shimmed = tr12.sill_bolt_with_gap(0.625, 1.5, 0.75)
    assert pytest.approx(637.3, abs=0.1) == shimmed.Z
    assert shimmed.g == 0.75


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"g": -0.1}, r"TR12 2015 Table 1-1: g \(gap between the members\) = -0.1 in; must be at least 0 in"),
        ({"g": float("nan")}, r"g \(gap between the members\) = nan in"),
        ({"l_m": 4.0}, r"l_m \(length of the bolt in the concrete\) = 4 in; must be at least 6 in"),
        ({"D": 0.2}, r"D \(bolt diameter\) = 0.2 in; must be at least 0.25 and at most 1 in"),
        ({"theta": 120.0}, r"θ \(angle between load and grain\) = 120 deg"),
    ],
)
def test_what_the_report_does_not_cover_is_refused_in_words(change: dict[str, float], message: str) -> None:
    with pytest.raises(OutsideLimits, match=message):
        tr12.sill_bolt_with_gap(**({"D": 0.625, "l_s": 1.5, "g": 0.25} | change))


def test_the_whole_working_is_marked_as_recalled() -> None:
    with Sheet() as sheet:
        got = tr12.sill_bolt_with_gap(0.5, 1.5, 0.5)
    kinds = {mark.kind for mark in got.Z.marks}  # type: ignore[attr-defined]
    assert {"from memory", "unverified"} <= kinds
    assert sum(step.id.startswith("awc-tr12/1-1-") for step in sheet.steps) == 6


@given(f_c=st.floats(500.0, 2499.0), l_m=st.floats(2.0, 10.0), g=st.floats(0.0, 2.0))
def test_over_weak_concrete_a_gap_takes_from_the_extension_as_it_does_from_the_table(
    f_c: float, l_m: float, g: float
) -> None:
    flush = tr12.sill_bolt_with_gap_beyond(0.5, 1.5, 0.0, f_c, l_m=l_m)
    assert pytest.approx(sill_bolt_weak_concrete(0.5, 1.5, f_c, l_m=l_m).Z, rel=1e-9) == flush.Z
    assert tr12.sill_bolt_with_gap_beyond(0.5, 1.5, g, f_c, l_m=l_m).Z <= flush.Z * (1 + 1e-12)


def test_a_gap_over_weak_concrete_carries_the_mark_of_the_extension() -> None:
    with Sheet():
        got = tr12.sill_bolt_with_gap_beyond(0.5, 1.5, 0.25, 1500.0, l_m=4.0)
    assert pytest.approx(517.8, abs=0.1) == float(got.Z)
    beyond = [mark.what for mark in got.Z.marks if mark.kind == "extension"]  # type: ignore[attr-defined]
    assert len(beyond) == 2
    with pytest.raises(OutsideLimits, match=r"lie inside the document; use tr12\.sill-bolt"):
        tr12.sill_bolt_with_gap_beyond(0.5, 1.5, 0.25, 3000.0)


# --- a joint that NDS gives, kept apart ------------------------------------------------------------------------------


@given(D=st.floats(0.25, 1.0), l_s=st.floats(0.5, 4.0), g=st.floats(0.0, 2.0), theta=st.floats(0.0, 90.0))
def test_a_bolt_kept_apart_is_the_same_by_its_modes_as_by_the_whole_table(
    D: float, l_s: float, g: float, theta: float
) -> None:
    joint = bolt(D, 6.0, l_s, theta_m=theta)
    apart = tr12.across_gap(joint, g)
    whole = tr12.single_shear_with_gap(D, joint.l_m, joint.l_s, joint.F_em, joint.F_es, joint.F_yb, g, joint.theta)
    assert pytest.approx(whole.Z, rel=1e-9) == apart.Z
    assert pytest.approx(whole.P, rel=1e-9) == apart.P


@given(size=st.sampled_from(("1/4", "3/8")), g=st.floats(0.0, 1.0), more=st.floats(0.0, 1.0))
def test_a_lag_screw_through_packing_keeps_its_own_reduction_and_wider_never_helps(
    size: str, g: float, more: float
) -> None:
    joint = lag_screw_steel_plate(size, 4.0, 0.25, "Redwood", 30.0)
    assert pytest.approx(joint.Z) == tr12.across_gap(joint).Z
    near, far = tr12.across_gap(joint, g), tr12.across_gap(joint, g + more)
    assert far.Z <= near.Z * (1 + 1e-9)
    assert near.Z <= joint.Z * (1 + 1e-9)


def test_only_a_joint_of_one_shear_plane_is_kept_apart() -> None:
    both = double_shear(0.5, 1.5, 1.5, 5600.0, 5600.0, 45000.0)
    with pytest.raises(OutsideLimits, match=r"TR12 2015 Table 1-1: planes \(shear planes\) = 2; must be 1"):
        tr12.across_gap(both, 0.25)
    with pytest.raises(OutsideLimits, match="gap between the members"):
        tr12.across_gap(bolt(0.5, 3.5, 1.5), -0.1)
