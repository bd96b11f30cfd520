"""Sections with bars against a general section library: structuralcodes, which knows nothing of our formulas.

It sums any shape of any materials by plane sections. It is given concrete whose stress is 0.85 f'c between 0.003 and
(1 - beta_1) 0.003 of strain and nothing below, which is the stress block of ACI 318-19 22.2.2.4, and bars that yield.
"""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.standards.aci318_19.reinforced_bending import bending_strength, stress_block_factor

pytestmark = pytest.mark.witness


def by_structuralcodes(f_c: float, f_y: float, b: float, d: float, A_s: float, below: float = 3.0) -> float:
    """Bending strength, lb-in, of a rectangle with one bar of area A_s ``below`` in. over its bottom."""
    from structuralcodes.geometry import RectangularGeometry, add_reinforcement
    from structuralcodes.materials.basic import GenericMaterial
    from structuralcodes.materials.constitutive_laws import ElasticPlastic, UserDefined
    from structuralcodes.sections import BeamSection

    starts = -0.003 * (1 - stress_block_factor(f_c))
    block = UserDefined(
        x=[-0.003, starts, starts * (1 - 1e-6), 0.0], y=[-0.85 * f_c, -0.85 * f_c, 0.0, 0.0], eps_u=(-0.003, 1.0)
    )
    concrete = GenericMaterial(density=150.0, constitutive_law=block)
    steel = GenericMaterial(density=490.0, constitutive_law=ElasticPlastic(E=29e6, fy=f_y, eps_su=1.0))
    shape = RectangularGeometry(b, d + below, concrete)
    shape = add_reinforcement(shape, (0.0, -(d + below) / 2 + below), 2 * math.sqrt(A_s / math.pi), steel)
    section = BeamSection(shape, integrator="marin")
    return -section.section_calculator.calculate_bending_strength().m_y


@given(
    f_c=st.floats(2500.0, 8000.0),
    f_y=st.sampled_from((40_000.0, 60_000.0)),
    b=st.floats(8.0, 24.0),
    d=st.floats(8.0, 36.0),
    ratio=st.floats(0.001, 0.009),
)
@settings(max_examples=25, deadline=None)
def test_bending_strength_is_the_librarys(f_c, f_y, b, d, ratio):
    A_s = ratio * b * d
    assert bending_strength(f_c, f_y, b, d, A_s).nominal == pytest.approx(
        by_structuralcodes(f_c, f_y, b, d, A_s), rel=2e-5
    )


def test_a_strip_footing_with_two_bars():
    """12 by 17.25 in. of 2,500 psi, two #4 of Grade 60 under 3 in. of cover, as the checks of a new strip have it."""
    ours = bending_strength(2500.0, 60_000.0, 12.0, 14.0, 0.40)
    assert ours.nominal == pytest.approx(by_structuralcodes(2500.0, 60_000.0, 12.0, 14.0, 0.40, below=3.25), rel=1e-5)
    assert ours.nominal == pytest.approx(324_706.0, abs=1.0)
