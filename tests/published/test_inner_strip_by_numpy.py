"""One new foundation inside an old one, from its weight to its bars, by an independent NumPy route. COMPUTED.

Nothing here was printed by others: it is our own arithmetic, done a second time and another way. The line's force and
S_DS are taken from the study; all else starts from the strip's own measures, typed in by hand. The beam is solved here
as Hermite elements half an inch long on springs lumped at their nodes, those in tension let go until none pulls; the
program integrates its soil along longer elements and finds what touches by Newton's method.

The strip: 26 ft long, footing 18 by 12 in., bottom 20 in. below the soil, stem 8 in. wide and 8 in. above the soil, a
cripple wall of 24 in. on it with a panel of 8 ft at 1 ft from either end; sand; 2,500 psi; two #4 at top and bottom.
"""

from __future__ import annotations

from functools import cache
from math import sqrt

import numpy as np
import pytest
from numpy.typing import NDArray

from groundsill.loadpath.chain import Link
from groundsill.study import run
from tests.loadpath.inner_houses import with_strip

Array = NDArray[np.float64]

LONG, FOOT, THICK, DEEP, STEM, UP = 312.0, 18.0, 12.0, 20.0, 8.0, 8.0
WALL, SILL = 24.0, 2.5
RHO, MU, LATERAL = (
    1.3,
    0.25,
    150.0,
)  # redundancy chosen; IBC Table 1806.2, class 4: friction, psf for each foot of depth
CONCRETE, SOIL, STUDS, PANEL = 150.0, 90.0, 1.1, 1.5  # pcf, psf
F_C, F_Y, A_S, D_B, COVER = 2500.0, 60000.0, 0.40, 0.5, 3.0
K_SAND = (15.0, 450.0)  # lb/in3, soft and stiff
PANELS = ((12.0, 108.0), (204.0, 300.0))
POST, SEAT = 1.5, 3.0  # middle of two studs from a panel's end; hold-down from there
CLOSE = 1e-6  # arithmetic alike
BEAM = 0.01  # springs lumped half an inch apart here, soil integrated along elements there
LUMPED = 0.05  # the program has the spread couple as couples 6 in. apart, each of which jumps the moment a little


@cache
def found() -> tuple[dict[str, Link], float, float]:
    study = run(with_strip(), ranges=False)
    one = study.runs[1]
    links = {k.address: k for c in (*one.chains, *one.bodies) for k in c.links}
    return links, one.line_forces["inn1"].force_lb, study.forces.S_DS


def weight_plf() -> tuple[float, float]:
    """The strip with the soil on its footing, and the wall on it."""
    concrete = STEM * (DEEP + UP) + (FOOT - STEM) * THICK
    soil = (FOOT - STEM) * (DEEP - THICK)
    return (concrete * CONCRETE + soil * SOIL) / 144, WALL / 12 * (STUDS + PANEL)


def test_it_slides_by_friction_and_by_the_soil_at_its_end() -> None:
    links, force, S_DS = found()
    concrete_only = (
        (STEM * (DEEP + UP) + (FOOT - STEM) * THICK) * CONCRETE / 144
    )  # soil moves along with no sure weight
    dead = (concrete_only + weight_plf()[1]) * LONG / 12
    end = LATERAL * STEM / 12 * ((DEEP / 12) ** 2 - 1.0) / 2
    link = links["body/inn1-footing/sliding/inn1-footing/x"]
    assert link.demand == pytest.approx(0.7 * RHO * force, rel=CLOSE)
    assert link.capacity == pytest.approx(MU * (0.6 - 0.14 * S_DS) * dead + end, rel=CLOSE)


def test_it_turns_over_about_its_base() -> None:
    links, force, S_DS = found()
    concrete_only = (STEM * (DEEP + UP) + (FOOT - STEM) * THICK) * CONCRETE / 144
    dead = (concrete_only + weight_plf()[1]) * LONG / 12
    link = links["body/inn1-footing/overturning/inn1-footing/x"]
    assert link.demand == pytest.approx(0.75 * 0.7 * RHO * force * (WALL + SILL + UP + DEEP) / 12, rel=CLOSE)
    assert link.capacity == pytest.approx((0.6 - 0.14 * S_DS) * dead * LONG / 24, rel=CLOSE)


# ---- The beam -------------------------------------------------------------------------------------------------------


def inertia() -> float:
    high = DEEP + UP - THICK
    areas = np.array([FOOT * THICK, STEM * high])
    middles = np.array([THICK / 2, THICK + high / 2])
    own = np.array([FOOT * THICK**3, STEM * high**3]) / 12
    middle = (areas * middles).sum() / areas.sum()
    return float((own + areas * (middles - middle) ** 2).sum())


def beam(EI: float, k: float, w: float, points: list[tuple[float, float]], couple: float) -> tuple[Array, Array]:
    """Deflection at the nodes, and moment along the beam from statics, sagging positive; ``couple`` for each inch."""
    step = 0.5
    count = int(LONG / step) + 1
    x = np.linspace(0.0, LONG, count)
    stiff = np.zeros((2 * count, 2 * count))
    L = step
    each = EI / L**3 * np.array(
        [[12, 6 * L, -12, 6 * L], [6 * L, 4 * L * L, -6 * L, 2 * L * L], [-12, -6 * L, 12, -6 * L],
         [6 * L, 2 * L * L, -6 * L, 4 * L * L]]
    )  # fmt: skip
    for n in range(count - 1):
        stiff[2 * n : 2 * n + 4, 2 * n : 2 * n + 4] += each
    reach = np.full(count, step)
    reach[[0, -1]] = step / 2
    load = np.zeros(2 * count)
    load[::2] = w * reach
    for station, force in points:
        n = int(station / step)
        part = station / step - n
        load[2 * n] += force * (1 - part)
        if part:
            load[2 * n + 2] += force * part
    load[0] -= couple  # a couple spread evenly is a pair of forces at the ends
    load[-2] += couple
    touching = np.ones(count, dtype=bool)
    for _ in range(200):
        whole = stiff.copy()
        whole[range(0, 2 * count, 2), range(0, 2 * count, 2)] += np.where(touching, k * reach, 1e-9 * k)
        moved = np.linalg.solve(whole, load)
        now = moved[::2] > 0
        if (now == touching).all():
            break
        touching = now
    soil = np.where(touching, k * reach * moved[::2], 0.0)
    net = load[::2] - soil
    moments = np.array([-(net[:n] * (x[n] - x[:n])).sum() for n in range(count)])
    return moved[::2], moments


def worst(strength: bool) -> tuple[float, float, float]:
    """Greatest push of the soil, psf, and greatest sagging and hogging moment, over all that the program tries."""
    _, force, S_DS = found()
    own, wall = weight_plf()
    dead = (own + wall) / 12
    E = RHO * force
    pushes = (
        [(1.2 + 0.2 * S_DS, E), (0.9 - 0.2 * S_DS, E)]
        if strength
        else [(1.0, 0.0), (1 + 0.14 * S_DS, 0.7 * E), (1 + 0.105 * S_DS, 0.525 * E), (0.6 - 0.14 * S_DS, 0.7 * E)]
    )
    E_c = 57000 * sqrt(F_C)
    press = sag = hog = 0.0
    for factor, V in pushes:
        for EI, k in ((E_c * inertia(), K_SAND[0] * FOOT), (0.35 * E_c * inertia(), K_SAND[1] * FOOT)):
            points = []
            for low, high in PANELS:  # pushed toward the end; toward the start is its mirror image
                d = high - low - POST - SEAT
                points += [(high - POST, V / 2 * WALL / d), (high - POST - d, -V / 2 * WALL / d)]
            moved, moments = beam(EI, k, factor * dead, points, V * (SILL + UP + DEEP) / LONG)
            press = max(press, 144 * k * moved.max() / FOOT)
            sag, hog = max(sag, moments.max()), max(hog, -moments.min())
    return press, sag, hog


def test_the_soil_is_pressed_as_by_a_second_beam() -> None:
    links, _, _ = found()
    assert links["line/inn1/footing/pressure/both"].demand == pytest.approx(worst(strength=False)[0], rel=BEAM)


def test_the_strip_bends_as_a_second_beam_does() -> None:
    links, _, _ = found()
    _, sag, hog = worst(strength=True)
    for which, moment in (("sagging", sag), ("hogging", hog)):
        assert links[f"line/inn1/footing/{which}/both"].demand == pytest.approx(moment, rel=LUMPED)


# ---- The section ----------------------------------------------------------------------------------------------------


def test_its_bars_hold_by_the_block_of_concrete_they_balance() -> None:
    links, _, _ = found()
    d = DEEP + UP - COVER - D_B / 2
    for which, width in (("sagging", STEM), ("hogging", FOOT)):
        a = A_S * F_Y / (0.85 * F_C * width)
        held = 0.9 * A_S * F_Y * (d - a / 2)
        assert links[f"line/inn1/footing/{which}/both"].capacity == pytest.approx(held, rel=CLOSE)


def test_its_stem_holds_in_shear_without_stirrups() -> None:
    links, _, _ = found()
    d = DEEP + UP - COVER - D_B / 2
    held = 0.75 * 8 * (A_S / (STEM * d)) ** (1 / 3) * sqrt(F_C) * STEM * d
    assert links["line/inn1/footing/shear/both"].capacity == pytest.approx(held, rel=CLOSE)
