"""Straps in tension by AISI S100-16: areas, the lesser of yielding and rupture, and what is refused."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.aisi_s100_16 import tension
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
        ({"steel": "A36"}, "no row 'A36'"),
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
