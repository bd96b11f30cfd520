"""Straps in tension by AISI S100-16: areas, the lesser of yielding and rupture, and what is refused."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.aisi_s100_16 import plates, tension
from groundsill.standards.catalogue import entries
from groundsill.working.dimensions import check_units
from groundsill.working.equation import Equation
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet

EQUATIONS = [entry.maker for entry in entries("aisi-s100-16") if isinstance(entry.maker, Equation)]

widths = st.floats(0.75, 12.0)
thicknesses = st.floats(0.02, 0.24)


@pytest.mark.parametrize("equation", EQUATIONS, ids=[e.id for e in EQUATIONS])
def test_units_and_scale_of_every_equation(equation: Equation[Any]) -> None:
    check_units(equation)


@given(widths, thicknesses, st.integers(0, 3), st.floats(0.0, 0.2))
def test_net_area_is_gross_area_less_the_holes(w: float, t: float, n: int, d_h: float) -> None:
    net, gross = tension.net_area(w, t, float(n), d_h), tension.gross_area(w, t)
    assert net <= gross
    assert gross - net == pytest.approx(n * d_h * t, abs=1e-12)


@given(widths, thicknesses, st.floats(0.0, 0.25), st.sampled_from(["ASD", "LRFD"]))
def test_more_steel_is_never_weaker_and_holes_never_help(w: float, t: float, d_h: float, method: str) -> None:
    base = tension.strap(w, t, 1.0, d_h, method=method)
    assert tension.strap(w * 1.2, t, 1.0, d_h, method=method).T > base.T
    assert tension.strap(w, t, 2.0, d_h, method=method).T <= base.T
    assert pytest.approx(min(base.T_yield, base.T_rupture), rel=0.6) == base.T


@given(widths, thicknesses)
def test_a_strap_without_holes_yields_before_it_breaks(w: float, t: float) -> None:
    whole = tension.strap(w, t, n=0.0)
    assert whole.governs == "yielding"
    assert pytest.approx(w * t * 33000 / 1.67) == whole.T


def test_a_crowded_row_of_holes_breaks_first() -> None:
    assert tension.strap(1.25, 0.054).governs == "rupture"
    assert pytest.approx((1.25 - 0.162) * 0.054 * 45000 * 0.75) == tension.strap(1.25, 0.054, method="LRFD").T


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"n": 8.0}, "chapter D: the holes must leave steel between them"),
        ({"steel": "A37"}, "no row 'A37'"),
        ({"method": "both"}, "method 'both' is not ASD or LRFD"),
        ({"t": 1.5}, r"t \(base steel thickness\) = 1.5 in; must be above 0 and at most 1 in"),
        ({"w": -1.0}, r"w \(width of the strap\) = -1 in; must be above 0 in"),
    ],
)
def test_what_is_no_strap_is_refused_in_words(change: dict[str, Any], message: str) -> None:
    with pytest.raises(OutsideLimits, match=message):
        tension.strap(**({"w": 1.25, "t": 0.054} | change))


def test_a_strap_shows_its_recalled_factors_and_both_limit_states() -> None:
    with Sheet() as sheet:
        got = tension.strap(1.25, 0.054)
    assert {mark.kind for mark in got.T.marks} == {"from memory", "unverified"}  # type: ignore[attr-defined]
    assert {"aisi-s100-16/D2", "aisi-s100-16/D3"} <= {step.id for step in sheet.steps}


# --- plates in their own plane ---------------------------------------------------------------------------------------


def test_a_plate_with_two_holes_as_worked_by_hand() -> None:
    inertia = 0.25 * 6**3 / 12 - 2 * (0.25 * 0.5625**3 / 12 + 0.25 * 0.5625 * 1.5**2)
    assert plates.net_section_modulus(6.0, 0.25, 2.0, 0.5625, 3.0) == pytest.approx(inertia / 3)
    assert plates.allowable_moment(6.0, 0.25, 2.0, 0.5625, 3.0) == pytest.approx(inertia / 3 * 36000 / 1.67)
    assert plates.allowable_shear(6.0, 0.25, 2.0, 0.5625) == pytest.approx(0.6 * 36000 * (6 - 1.125) * 0.25 / 1.6)
    assert plates.allowable_bearing(0.5, 0.25) == pytest.approx(3 * 0.75 * 0.5 * 0.25 * 58000 / 2.5)


@given(b=st.floats(2.0, 24.0), t=st.floats(0.05, 0.5), n=st.integers(0, 3), d=st.floats(0.1, 0.5))
def test_a_wider_or_thicker_plate_is_never_weaker_and_holes_never_help(b: float, t: float, n: int, d: float) -> None:
    s = (b - d) / 4
    if n and d >= s:
        return
    asked = (float(n), d, s)
    assert plates.allowable_moment(b, t, *asked) <= plates.allowable_moment(b, t) + 1e-9
    assert plates.allowable_moment(b * 1.1, t, *asked) > plates.allowable_moment(b, t, *asked)
    assert plates.allowable_moment(b, t * 1.1, *asked) > plates.allowable_moment(b, t, *asked)
    assert plates.allowable_shear(b, t, *asked[:2]) <= plates.allowable_shear(b, t)


@given(st.floats(2.0, 24.0), st.floats(0.05, 0.5))
def test_without_holes_a_plate_has_its_textbook_section(b: float, t: float) -> None:
    assert plates.net_section_modulus(b, t, 0.0, 0.0, 0.0) == pytest.approx(t * b**2 / 6)


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        (lambda: plates.allowable_moment(3.0, 0.25, 2.0, 0.5, 3.0), "row of holes must lie within the plate"),
        (lambda: plates.allowable_moment(6.0, 0.25, 2.0, 0.5, 0.5), "holes must leave steel between them"),
        (lambda: plates.allowable_shear(1.0, 0.25, 2.0, 0.5), "holes must leave steel between them"),
        (lambda: plates.allowable_bearing(0.5, 0.04), "d/t is under 10"),
    ],
)
def test_a_plate_that_cannot_be_drilled_so_is_refused(asked: Any, words: str) -> None:
    with pytest.raises(OutsideLimits, match=words):
        asked()
