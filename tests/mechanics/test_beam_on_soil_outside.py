"""The beam on soil against other people's solvers: PyNite's springs that only push, and a complementarity by NumPy."""

from __future__ import annotations

import numpy as np
import pytest
from Pynite import FEModel3D
from scipy.optimize import minimize_scalar

from groundsill.mechanics.beam_on_soil import Beam, Couple, Loads, Piece, PointLoad, Spread, settle

PIECES = {
    "one section": ((240.0, 1.662e10, 1200.0, 18.75),),
    "a thin middle": ((90.0, 1.662e10, 1200.0, 18.75), (60.0, 3.0e9, 900.0, 9.0), (150.0, 1.662e10, 1200.0, 18.75)),
    "a hole under it": ((100.0, 1.0e10, 2000.0, 20.0), (48.0, 1.0e10, 0.0, 20.0), (92.0, 1.0e10, 500.0, 20.0)),
}
CASES = {
    "pulled at one post": Loads((PointLoad(72.0, -3000.0), PointLoad(168.0, 4000.0))),
    "pulled at both ends": Loads((PointLoad(0.0, -600.0), PointLoad(120.0, 3000.0), PointLoad(240.0, -600.0))),
    "a couple": Loads(couples=(Couple(120.0, 100_000.0),)),
    "a wall at one side": Loads((PointLoad(30.0, 9000.0),), spreads=(Spread(12.0, 132.0, 25.0),)),
}


def by_pynite(pieces, loads: Loads, step: float):
    """Deflections and moments at even steps: members between nodes that stand on springs which only push."""
    length = sum(piece[0] for piece in pieces)
    n = round(length / step)
    model = FEModel3D()
    model.add_material("beam", 1.0, 1.0, 0.2, 0.0)
    ends = np.cumsum([0.0, *(piece[0] for piece in pieces)])
    for i, piece in enumerate(pieces):
        model.add_section(f"s{i}", 1e6, piece[1], piece[1], piece[1])
    spring, weight = np.zeros(n + 1), np.zeros(n + 1)
    for i in range(n + 1):
        model.add_node(f"n{i}", i * step, 0.0, 0.0)
    for i in range(n):
        which = int(np.searchsorted(ends, (i + 0.5) * step) - 1)
        model.add_member(f"m{i}", f"n{i}", f"n{i + 1}", "beam", f"s{which}")
        down = pieces[which][3]
        down += sum(s.force_lb_in for s in loads.spreads if s.from_in < (i + 0.5) * step < s.to_in)
        for node in (i, i + 1):
            spring[node] += pieces[which][2] * step / 2
            weight[node] += down * step / 2
    for i in range(n + 1):
        if spring[i] > 0:
            model.def_support_spring(f"n{i}", "DY", float(spring[i]), "-")
        model.add_node_load(f"n{i}", "FY", -float(weight[i]))
        model.def_support(f"n{i}", i == 0, False, True, True, True, False)
    for point in loads.points:
        model.add_node_load(f"n{round(point.station_in / step)}", "FY", -point.force_lb)
    for couple in loads.couples:
        model.add_node_load(f"n{round(couple.station_in / step)}", "MZ", -couple.moment_lb_in)
    model.analyze(max_iter=100)
    down = -np.array([model.nodes[f"n{i}"].DY["Combo 1"] for i in range(n + 1)])
    moments = np.array([model.members[f"m{i}"].moment("Mz", at) for i in range(n) for at in (0.0, step)])
    return down, moments


@pytest.mark.parametrize("pieces", PIECES.values(), ids=PIECES.keys())
@pytest.mark.parametrize("loads", CASES.values(), ids=CASES.keys())
def test_a_beam_that_lifts_is_pynites(pieces, loads):
    """PyNite puts the soil at nodes 2 in. apart: half a part in a thousand of the greatest is what that leaves."""
    step = 2.0
    ours = settle(Beam(tuple(Piece(*piece) for piece in pieces)), loads)
    down, moments = by_pynite(pieces, loads, step)
    assert ours.deepest.value == pytest.approx(down.max(), rel=5e-4)
    greatest = max(ours.sagging.value, ours.hogging.value)
    assert greatest == pytest.approx(np.abs(moments).max(), rel=2e-3)
    springs = np.concatenate([np.full(round(piece[0] / step), piece[2] > 0) for piece in pieces])
    lifted = ((down[:-1] < 0) & (down[1:] < 0) & springs).sum() * step
    assert ours.lifted_in == pytest.approx(lifted, abs=2.5 * step)


def test_where_a_weightless_end_leaves_the_soil_is_a_search_by_hand():
    """A long beam pulled up at its end by P: lifted over a length s, held beyond it by its weight on the soil.

    Over the lifted part a cantilever, beyond it a half-endless beam loaded by its shear and moment at s: the depth
    there is w/k + 2 λ V/k + 2 λ^2 M/k by the closed forms, and it is nothing. SciPy finds the lifted length.
    """
    ei, k, weight, pull = 1.662e10, 1200.0, 18.75, 900.0
    λ = (k / (4 * ei)) ** 0.25

    def depth_at(s: float) -> float:
        shear = weight * s - pull  # presses the rest down
        moment = weight * s**2 / 2 - pull * s  # hogging positive: the end hangs down from it
        return weight / k + 2 * λ * shear / k + 2 * λ**2 * moment / k

    found = minimize_scalar(lambda s: depth_at(s) ** 2, bounds=(1.0, 95.0), method="bounded", options={"xatol": 1e-9})
    assert found.fun < 1e-18
    ours = settle(Beam((Piece(1500.0, ei, k, weight),)), Loads((PointLoad(0.0, -pull),)))
    assert ours.lifted[0] == pytest.approx((0.0, found.x), abs=0.02)
    assert ours.residual_lb == pytest.approx(0.0, abs=1e-6)
