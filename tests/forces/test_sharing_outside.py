"""Sharing held against others' programs: tributary areas against Shapely, the rigid floor against a frame library.

Shapely cuts the plan into thin slices across the lines and each slice, bay by bay, into polygons that act at their own
centroids on the two lines beside them. PyNite solves the rigid floor as a frame: stiff arms from the mass to every
line, each line a spring along itself to the ground. Neither knows anything of a strip or of a pivot.
"""

from __future__ import annotations

import json
import math
from collections.abc import Mapping, Sequence
from functools import cache, partial
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from Pynite import FEModel3D
from shapely.geometry import Polygon

from groundsill.doors.decode import decode
from groundsill.forces.share import ACCIDENTAL, plan_line, reliance, rigid_shares
from groundsill.forces.weights import weight_items
from groundsill.mechanics.equilibrium import PlanLine, Push, balanced
from groundsill.mechanics.strips import strips
from groundsill.mechanics.supports import Support
from groundsill.work.document import House
from tests.forces.balance import SAMPLES, middle_of, reading_of
from tests.mechanics.shapes import L_SHAPE, T_SHAPE, U_SHAPE, hangs_on

XY = tuple[float, float]
SLICES = 800
CLOSE = 1e-6  # of the load
# of the plan: what slices of this width leave; where lines at a slope converge, more
SKEWED, SAMPLE, EXTREME = 1e-6, 1e-7, 1e-4
STIFF = 3e8  # lb, the arms' stiffness; then ten times it, and carried on from both to arms that give nothing at all
UNIT = 100.0  # inches: the frame's own measure, so that its figures are of one size

# ---- Tributary areas by Shapely --------------------------------------------------------------------------------------


def at(s: Support, u: float) -> float:
    """A line at a strip, or a collector that runs on level from its nearer end."""
    part = min(max((u - s.u1) / (s.u2 - s.u1), 0.0), 1.0)
    return s.v1 + part * (s.v2 - s.v1)


def rows_of(u: float, supports: Sequence[Support]) -> list[list[Support]]:
    """Lines place by place; of several in one row the nearest."""
    rows: list[list[Support]] = []
    for s in sorted(supports, key=lambda s: at(s, u)):
        if rows and at(s, u) - at(rows[-1][0], u) < 1e-3:
            rows[-1].append(s)
        else:
            rows.append([s])
    off = {s.id: max(min(s.u1, s.u2) - u, u - max(s.u1, s.u2), 0.0) for s in supports}
    return [[s for s in row if off[s.id] <= min(off[t.id] for t in row) + 1e-6] for row in rows]


def by_shapely(plan: Polygon, supports: Sequence[Support]) -> dict[str, float]:
    """What falls to each line, from the areas and centroids of pieces of thin slices, each on the places it hangs on.

    A slice is cut along the lines and their mirror images about the outermost; a piece acts at its own centroid.
    """
    found = dict.fromkeys((s.id for s in supports), 0.0)
    first, last = (pick(u for s in supports for u in (s.u1, s.u2)) for pick in (min, max))
    low, _, high, _ = plan.bounds
    ends = sorted({low, high, *(u for s in supports for u in (s.u1, s.u2) if low < u < high)})
    wide = (high - low) / SLICES
    cuts = [*(u for a, b in pairwise(ends) for u in np.linspace(a, b, math.ceil((b - a) / wide) + 1)[:-1]), high]
    pieces: list[tuple[tuple[float, float, float, float], ...]] = []
    held: list[tuple[list[Support], list[Support]]] = []
    for a, b in pairwise(cuts):
        u = min(max((a + b) / 2, first), last)  # beyond the outermost line the strip at its end goes on
        over = rows_of(u, [s for s in supports if min(s.u1, s.u2) <= u <= max(s.u1, s.u2)])
        every = rows_of(u, supports)
        edges = [(-1e5, lambda u: -1e5), (1e5, lambda u: 1e5)]
        for rows in (over, every):
            lines = [row[0] for row in rows]
            edges += [(at(s, u), partial(at, s)) for s in lines]
            edges += [(2 * at(o, u) - at(s, u), partial(mirrored, s, o)) for o in lines[:1] + lines[-1:] for s in lines]
        edges.sort(key=lambda edge: edge[0])
        u1, u2 = (min(max(end, first), last) for end in (a, b))
        for (v1, below), (v2, above) in pairwise(edges):
            if v2 - v1 > 1e-12:
                way = [[at(row[0], u) for row in rows] for rows in (over, every)]
                n, one, two = hangs_on((max(v1, -9e4) + min(v2, 9e4)) / 2, *way)
                pieces.append(((a, below(u1)), (b, below(u2)), (b, above(u2)), (a, above(u1))))
                held.append(tuple((over, every)[n][way[n].index(v)] for v in (one, two)))
    parts = shapely.intersection(plan, shapely.buffer(shapely.polygons(np.array(pieces)), 0))
    for part, middle, (one, two) in zip(parts, shapely.centroid(parts), held, strict=True):
        if part.area > 0:
            near, far = (at(row[0], min(max(middle.x, first), last)) for row in (one, two))
            upper = part.area * (middle.y - near) / (far - near) if one is not two else 0.0
            for row, amount in ((one, part.area - upper), (two, upper)):
                for s in row:
                    found[s.id] += amount / len(row)
    return found


def mirrored(s: Support, about: Support, u: float) -> float:
    return 2 * at(about, u) - at(s, u)


def agree(points: Sequence[XY], supports: Sequence[Support], close: float) -> None:
    plan = Polygon(points)
    ours = dict.fromkeys((s.id for s in supports), 0.0)
    ours |= {id: share.amount for id, share in strips(points, supports).items()}
    assert ours == pytest.approx(by_shapely(plan, supports), abs=close * plan.area)
    assert sum(ours.values()) == pytest.approx(plan.area, rel=1e-12)


def line(id: str, *ends: float) -> Support:
    return Support(id, *map(float, ends))


def test_the_slices_are_the_handbooks_tributary_area_where_a_hand_can_work_it():
    """A wedge between a level line and one that rises from 10 to 20 over 30 ft: half of every strip to each."""
    wedge = [(0.0, 0.0), (30.0, 0.0), (30.0, 20.0), (0.0, 10.0)]
    supports = [line("level", 0, 0, 30, 0), line("rising", 0, 10, 30, 20)]
    assert by_shapely(Polygon(wedge), supports) == pytest.approx({"level": 225.0, "rising": 225.0})


@pytest.mark.parametrize(
    ("points", "supports"),
    [
        (L_SHAPE, [line("front", 0, 0, 30, 0), line("step", 12, 40, 30, 40), line("wing", 0, 54, 12, 54)]),
        (L_SHAPE, [line("front", 0, 0, 30, 0), line("slant", 0, 18, 30, 26), line("step", 12, 40, 30, 40),
                   line("wing", 0, 54, 12, 54)]),
        (L_SHAPE, [line("front", 0, 0, 30, 0), line("slant", 0, 30, 24, 14), line("wing", 0, 54, 12, 54)]),
        (T_SHAPE, [line("stem", 10, 0, 20, 0), line("left", 0, 24, 10, 24), line("right", 20, 24, 30, 24),
                   line("slant", 0, 33, 30, 29), line("rear", 0, 36, 30, 36)]),
        (T_SHAPE, [line("stem", 10, 0, 20, 0), line("flank", 0, 24, 10, 14), line("rear", 0, 36, 30, 36)]),
        (U_SHAPE, [line("front", 0, 0, 40, 0), line("court", 12, 12, 28, 12), line("left", 0, 28, 12, 32),
                   line("right", 28, 32, 40, 26)]),
        (U_SHAPE, [line("front", 0, 0, 40, 0), line("slant", 4, 9, 37, 14), line("rear", 0, 30, 40, 30)]),
    ],
    ids=["L", "L, a slant inside", "L, a slant part of the way", "T", "T, a flank", "U", "U, a slant"],
)  # fmt: skip
def test_l_t_and_u_plans_over_level_and_skewed_lines(points, supports):
    """Each line's area and no more; the slant never comes near another line, where its lever would have no end."""
    agree(points, supports, SKEWED)


@given(st.data())
@settings(max_examples=15)
def test_skewed_lines_that_keep_their_distance(data):
    """Two to four lines at any slope, each in a band of its own, over L, T or U.

    Where the two lines that a strip hangs on converge, and the plan goes on far beyond them, the lever grows fast.
    """
    points = data.draw(st.sampled_from((L_SHAPE, T_SHAPE, U_SHAPE)))
    low, high = (pick(v for _, v in points) for pick in (min, max))
    wide = max(u for u, _ in points)
    count = data.draw(st.integers(2, 4))
    step = (high - low) / count
    bands = [(low + step * n, low + step * (n + 0.8)) for n in range(count)]
    supports = [
        line(f"s{n}", *(x for u in (0, wide) for x in (u, a + (b - a) * data.draw(st.integers(0, 8)) / 8)))
        for n, (a, b) in enumerate(bands)
    ]
    agree(points, supports, EXTREME)


# ---- The samples' own outlines ---------------------------------------------------------------------------------------


def sample_file(name: str) -> Any:
    return json.loads((SAMPLES / name / "house.json").read_text(encoding="utf-8"))


@cache
def sample(name: str) -> House:
    path = SAMPLES / name / "house.json"
    return decode(path.read_bytes(), path.name)


def lines_of(name: str, direction: str) -> list[Support]:
    """The relied-on lines that a strip may span between, from the JSON: those at 60 degrees or less to the force."""
    survey = sample_file(name)["survey"]
    corners = {id: (c["x_in"], c["y_in"]) for id, c in survey["building"]["corners"].items()}
    reading = reading_of(sample(name))
    found = []
    for id, item in survey["underfloor"]["lines"].items():
        if not reliance(reading, id).relied_on:
            continue
        (x1, y1), (x2, y2) = corners[item["start"]], corners[item["end"]]
        along = abs(x2 - x1 if direction == "x" else y2 - y1) / math.hypot(x2 - x1, y2 - y1)
        if along >= 0.5:
            ends = (x1, y1, x2, y2) if direction == "x" else (y1, -x1, y2, -x2)
            found.append(line(id, *ends))
    return found


@pytest.mark.parametrize("direction", ["x", "y"])
@pytest.mark.parametrize("name", ["quarry-lane", "ferry-hill"])
def test_the_floors_and_roofs_of_the_samples_fall_to_their_lines_as_shapely_cuts_them(name, direction):
    """Bay with flanks at 45 degrees, cross gable, addition; stepped plan, skewed wing. Eaves and porches included."""
    building = sample_file(name)["survey"]["building"]
    corners = {id: (float(c["x_in"]), float(c["y_in"])) for id, c in building["corners"].items()}
    plans = [[corners[c] for c in storey["outline"]] for storey in building["storeys"].values()]
    plans += [[(float(p["x_in"]), float(p["y_in"])) for p in part["outline"]] for part in building["roof"].values()]
    for plan in plans:
        agree(plan if direction == "x" else [(y, -x) for x, y in plan], lines_of(name, direction), SAMPLE)


# ---- The rigid floor as a frame --------------------------------------------------------------------------------------


def by_pynite(
    lines: Sequence[PlanLine], k: Mapping[str, float], at: XY, cases: Mapping[str, tuple[float, float, float]]
) -> dict[str, dict[str, float]]:
    """Force in every line, positive along it, for loads (x, y, moment) on the mass: PyNite's answer.

    What arms of finite stiffness leave goes with one over it, so two answers tell the one for rigid arms.
    """
    soft, hard = (frame(lines, k, at, cases, stiff) for stiff in (STIFF, 10 * STIFF))
    return {name: {id: (10 * force - soft[name][id]) / 9 for id, force in hard[name].items()} for name in cases}


def frame(
    lines: Sequence[PlanLine],
    k: Mapping[str, float],
    at: XY,
    cases: Mapping[str, tuple[float, float, float]],
    stiff: float,
) -> dict[str, dict[str, float]]:
    model = FEModel3D()
    model.add_material("stiff", 1.0, 1.0, 0.3, 0.0)
    model.add_section("arm", stiff, 10 * stiff, 10 * stiff, 10 * stiff)
    model.add_node("hub", 0.0, 0.0, 0.0)
    model.def_support("hub", support_DZ=True, support_RX=True, support_RY=True)
    for height, n in enumerate(lines, start=1):  # each in a plane of its own, so that no arm meets another line
        x, y = (n.x - at[0]) / UNIT, (n.y - at[1]) / UNIT
        model.add_node(n.id, x, y, 1 + height / 10)
        model.add_node(f"ground {n.id}", x + n.ux, y + n.uy, 1 + height / 10)
        model.add_member(f"arm {n.id}", "hub", n.id, "stiff", "arm")
        model.add_spring(n.id, n.id, f"ground {n.id}", k[n.id])
        model.def_support(f"ground {n.id}", *[True] * 6)
    for name, (x, y, turning) in cases.items():
        model.add_load_combo(name, {name: 1.0})
        model.add_node_load("hub", "FX", x, case=name)
        model.add_node_load("hub", "FY", y, case=name)
        model.add_node_load("hub", "MZ", turning / UNIT, case=name)
    model.analyze_linear(sparse=False, check_stability=False)
    return {name: {n.id: float(model.springs[n.id].axial(name)) for n in lines} for name in cases}


@st.composite
def rigid_floors(draw: st.DrawFn) -> tuple[list[PlanLine], dict[str, float], XY]:
    """Lines at any angle (two along x and one along y among them), stiffnesses of 1 to 100, the place of the mass."""
    found = [
        PlanLine("a", 10.0, -180.0, 1.0, 0.0),
        PlanLine("b", 0.0, 200.0, 1.0, 0.0),
        PlanLine("c", 150.0, 0, 0, 1.0),
    ]
    for n in range(draw(st.integers(0, 6))):
        turn = math.radians(draw(st.integers(0, 359)))
        x, y = draw(st.integers(-300, 300)), draw(st.integers(-300, 300))
        found.append(PlanLine(f"d{n}", float(x), float(y), math.cos(turn), math.sin(turn)))
    k = {n.id: 1000.0 * draw(st.integers(1, 100)) for n in found}
    return found, k, (draw(st.integers(-100, 100)) + 0.3, draw(st.integers(-100, 100)) + 0.7)


@given(rigid_floors())
@settings(max_examples=30)
def test_a_rigid_floor_on_springs_at_any_angle_is_pynites(floor):
    lines, k, (x, y) = floor
    cases = {"x": (1000.0, 0.0, 0.0), "y": (0.0, 1000.0, 0.0), "both, off the mass": (600.0, -800.0, 25_000.0)}
    theirs = by_pynite(lines, k, (x, y), cases)
    for name, (px, py, turning) in cases.items():
        ours = balanced({}, k, lines, Push(px, py, turning + x * py - y * px)).forces
        assert ours == pytest.approx(theirs[name], abs=CLOSE * 1000), name


@pytest.mark.parametrize("direction", ["x", "y"])
@pytest.mark.parametrize("name", ["larch-street", "quarry-lane", "ferry-hill"])
def test_the_samples_on_a_rigid_floor_are_pynites_frame(name, direction):
    """Each line of each sample, the mass in place or 5 % of the plan off to one side: its worst case over all levels.

    Stiffnesses are the lengths of the lines, one line five times as stiff, so that the house turns.
    """
    reading = reading_of(sample(name))
    items = [i for i in weight_items(reading) if i.seismic]
    lines = [plan_line(reading, id, direction) for id in reading.house.survey.underfloor.lines
             if reliance(reading, id).relied_on]  # fmt: skip
    k = {n.id: 1000.0 * (5 if place == 1 else 1) * (1 + place % 3) for place, n in enumerate(lines)}
    got = rigid_shares(reading, items, direction, k).shares
    across = 1 if direction == "x" else 0
    spread = [p[across] for i in items for p in i.points]
    off = ACCIDENTAL * (max(spread) - min(spread))
    by_level = {}
    for level in {at for i in items for at, share in i.levels if share}:
        parts = [(i.weight_lb * s, middle_of(i)) for i in items for at, s in i.levels if at == level]
        whole = sum(w for w, _ in parts)
        centre = tuple(sum(w * c[n] for w, c in parts) / whole for n in (0, 1))
        turn = -1.0 if direction == "x" else 1.0
        load = (1000.0, 0.0) if direction == "x" else (0.0, 1000.0)
        cases = {str(n): (*load, turn * 1000.0 * shift) for n, shift in enumerate((0.0, off, -off))}
        by_level[level] = by_pynite(lines, k, (centre[0], centre[1]), cases)
    for n in lines:
        totals = {case: abs(sum(theirs[case][n.id] for theirs in by_level.values())) for case in ("0", "1", "2")}
        ours = abs(sum(got[n.id].fraction[level] for level in by_level)) * 1000
        assert ours == pytest.approx(max(totals.values()), abs=CLOSE * 1000 * len(by_level)), n.id
