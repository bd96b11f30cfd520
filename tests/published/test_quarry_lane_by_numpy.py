"""The whole of Quarry Lane, from its weights to the force of every line, by an independent NumPy route. COMPUTED.

Nothing here was printed by others: it is our own arithmetic, done a second time and another way. The survey is read
straight from its JSON with no class of the program; every table figure is typed in by hand. Each weight is laid on the
plan in strips half an inch wide (walls in pieces), each strip gives to the lines it spans between by the areas
under their influence lines, and what skewed lines leave out of balance is closed by NumPy's least squares. The program
is asked only for its study, at the end. What is recalled and not seen is no better known for being worked out twice.

The house: two storeys on brick, a bay with flanks at 45 degrees, a cross gable, an addition, a porch, a chimney whose
ties nobody has seen, which is therefore counted.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray

FILE = Path(__file__).parents[2] / "samples" / "quarry-lane" / "house.json"
STRIP = 0.5  # inches
EXACT = 1e-9  # weights and level forces: the same arithmetic
CLOSE = 1e-7  # of the base shear: strips of finite width over a cross gable and two skewed lines

# Table figures, psf: ASCE 7-16 Table C3.1-1, and for old materials common practice (from memory in the program too).
PSF = {
    "ceiling: plaster on wood lath": 8.0, "ceiling: gypsum board, each 1/8 in.": 0.55, "roof: asphalt shingles": 2.0,
    "roof: wood shingles": 3.0, "roof: three-ply ready roofing": 1.0, "skip sheathing": 1.5,
    "drop or bevel siding": 2.2, "1x straight sheathing or shiplap": 2.4,
}  # fmt: skip
WINDOWS_PSF = 8.0
R, I_E = 6.5, 1.0  # ASCE 7-16 Table 12.2-1 item A.15 and Table 1.5-2, risk category II
F_A = 1.2  # ASCE 7-16 11.4.4, no soil study
F_V = 1.9 - 0.1 * (0.44 - 0.40) / 0.10  # ASCE 7-16 Table 11.4-2, between S_1 of 0.4 and 0.5
SKEW = 0.5  # a line at 60 degrees or less to the force has floor of its own; none here lies at 60 to 70
Array = NDArray[np.float64]


def number(fact: Any) -> float:
    """A fact of the file: a bare number, or an object with its value."""
    return float(fact["value"] if isinstance(fact, dict) else fact)


@dataclass(frozen=True)
class Piece:
    """A weight of the house: its corners on the plan (one, two, or an outline), pounds, and the share of each level."""

    at: Array
    lb: float
    levels: tuple[float, float, float]


@dataclass(frozen=True)
class House:
    """The house, step by step."""

    file: dict[str, Any]

    @cached_property
    def survey(self) -> dict[str, Any]:
        return self.file["survey"]

    @cached_property
    def building(self) -> dict[str, Any]:
        return self.survey["building"]

    @cached_property
    def storeys(self) -> list[tuple[str, dict[str, Any]]]:
        return sorted(self.building["storeys"].items(), key=lambda pair: pair[1]["floor_z_in"])

    def place(self, corner: Any) -> tuple[float, float]:
        found = corner if isinstance(corner, dict) else self.building["corners"][corner]
        return float(found["x_in"]), float(found["y_in"])

    def outline(self, corners: Any) -> Array:
        return np.array([self.place(c) for c in corners])

    # ---- Weights ----

    def psf(self, assembly: str) -> float:
        return sum(
            (number(layer["psf"]) if "psf" in layer else PSF[layer["material"]]) * layer.get("times", 1)
            for layer in self.building["assemblies"][assembly]["layers"]
        )

    @cached_property
    def pieces(self) -> list[Piece]:
        """Floors 0 and 1, roof 2. A wall gives half to its foot and half to its head; a cripple wall's foot is lost."""
        found = []
        level = {id: n for n, (id, _) in enumerate(self.storeys)}
        half = {id: tuple(0.5 * (at in (n, n + 1)) for at in range(3)) for id, n in level.items()}
        only = {n: tuple(float(at == n) for at in range(3)) for n in range(3)}
        for id, storey in self.storeys:
            plan = self.outline(storey["outline"])
            for what, at in (("floor", level[id]), ("ceiling", level[id] + 1)):
                found.append(Piece(plan, self.psf(storey[what]) * size(plan) / 144, only[at]))
        for part in self.building["roof"].values():
            plan = self.outline(part["outline"])
            along = np.hypot(1.0, part["slope_rise_per_run"])
            found.append(
                Piece(plan, self.psf(part["assembly"]) * size(plan) / 144 * along, only[level[part["storey"]] + 1])
            )
        for wall in (*self.building["walls"].values(), *self.building["partitions"].values()):
            ends = self.outline((wall["start"], wall["end"]))
            height = wall.get("height_in", self.building["storeys"][wall["storey"]]["height_in"])
            holes = wall.get("openings", {}).values()
            glass = sum((o["to_in"] - o["from_in"]) * (o["head_in"] - o.get("sill_in", 0)) for o in holes) / 144
            solid = np.hypot(*(ends[1] - ends[0])) * height / 144 - glass
            found.append(Piece(ends, self.psf(wall["assembly"]) * solid + WINDOWS_PSF * glass, half[wall["storey"]]))
        under = self.survey["underfloor"]
        for segment in under["segments"].values():
            if "assembly" in segment:
                a, b = self.outline([under["lines"][segment["line"]][end] for end in ("start", "end")])
                stations = np.array([[segment["from_in"]], [segment["to_in"]]]) / np.hypot(*(b - a))
                area = (segment["to_in"] - segment["from_in"]) * number(segment["height_in"]) / 144
                found.append(Piece(a + stations * (b - a), self.psf(segment["assembly"]) * area, (0.5, 0.0, 0.0)))
        (stack,) = self.building["chimneys"].values()
        volume = stack["x_size_in"] * stack["y_size_in"] * stack["height_in"] / 1728
        third = (1 / 3, 1 / 3, 1 / 3)
        return [*found, Piece(np.array([self.place(stack["at"])]), number(stack["pcf"]) * volume, third)]

    @cached_property
    def weights_lb(self) -> Array:
        return np.array([p.lb for p in self.pieces]) @ np.array([p.levels for p in self.pieces])

    # ---- Base shear and level forces ----

    @cached_property
    def heights_ft(self) -> Array:
        """Over the base: the mean top of the foundation, by length, where it was seen."""
        stems = [s for s in self.survey["foundation"]["segments"].values() if "top_z_in" in s]
        long = np.array([s["to_in"] - s["from_in"] for s in stems])
        base = np.average([number(s["top_z_in"]) for s in stems], weights=long)
        (_, lower), (_, upper) = self.storeys
        tops = [lower["floor_z_in"], upper["floor_z_in"], upper["floor_z_in"] + upper["height_in"]]
        assert lower["floor_z_in"] + lower["height_in"] == upper["floor_z_in"]
        return (np.array(tops) - base) / 12

    @cached_property
    def S_DS(self) -> float:
        return 2 / 3 * F_A * self.survey["site"]["hazard"]["S_S"]

    @cached_property
    def base_shear_lb(self) -> float:
        """On the plateau (11.4.8 exception 2 lets it stand), times the reduced factor the owner chose."""
        T_a = 0.02 * self.heights_ft[-1] ** 0.75
        S_D1 = 2 / 3 * F_V * self.survey["site"]["hazard"]["S_1"]
        assert T_a <= 1.5 * S_D1 / self.S_DS
        assert 0.044 * self.S_DS * I_E < self.S_DS / (R / I_E) < S_D1 / (T_a * R / I_E)
        return float(self.file["choices"]["force_factor"] * self.S_DS / (R / I_E) * self.weights_lb.sum())

    @cached_property
    def level_forces_lb(self) -> Array:
        """By weight times height: the period is under half a second."""
        moment = self.weights_lb * self.heights_ft
        return self.base_shear_lb * moment / moment.sum()

    # ---- Sharing ----

    @cached_property
    def relied(self) -> dict[str, Array]:
        """The two ends of each line relied on: the outside ones, all on a foundation from end to end, and L14."""
        lines = self.survey["underfloor"]["lines"]
        return {
            line["mark"]: self.outline((line["start"], line["end"]))
            for line in lines.values()
            if line["position"] == "perimeter" or line.get("relied_on")
        }

    def shares(self, axis: int) -> dict[str, Array]:
        """What part of the weight of each level every line holds, for an earthquake along x (0) or y (1)."""
        marks = list(self.relied)
        ends = np.array([self.relied[m] for m in marks])
        way = ends[:, 1] - ends[:, 0]
        length = np.hypot(*way.T)
        way = way / length[:, None]
        way *= np.where(way[:, axis] < 0, -1.0, 1.0)[:, None]
        middle = ends.mean(axis=1)
        resists = np.stack([way[:, 0], way[:, 1], middle[:, 0] * way[:, 1] - middle[:, 1] * way[:, 0]])
        floor = Floor([e if axis == 0 else e[:, ::-1] for e, w in zip(ends, way, strict=True) if w[axis] >= SKEW])
        own = np.flatnonzero(way[:, axis] >= SKEW)
        guess, load = np.zeros((len(marks), 3)), np.zeros((3, 3))
        for piece in self.pieces:
            at = piece.at if axis == 0 else piece.at[:, ::-1]
            weight = piece.lb * np.array(piece.levels)
            guess[own] += np.outer(floor.taken(at) * way[own, axis], weight)
            x, y = centre(piece.at)
            load += np.outer([1.0, 0.0, -y] if axis == 0 else [0.0, 1.0, x], weight)
        # the least change of the guess, each line by its length, that closes force along x, along y, and turning
        root, units = np.sqrt(length), np.array([[1.0], [1.0], [0.01]])
        change = np.linalg.lstsq(resists * root * units, (load - resists @ guess) * units, rcond=None)[0]
        held = guess + root[:, None] * change
        assert np.allclose(resists @ held, load, rtol=1e-12, atol=1e-6)
        return dict(zip(marks, held / self.weights_lb, strict=True))


class Floor:
    """Lines seen with the force along u: strips run across it, in v."""

    def __init__(self, lines: list[Array]) -> None:
        self.lines = np.array([line[np.argsort(line[:, 0])] for line in lines])
        self.first, self.last = self.lines[:, 0, 0].min(), self.lines[:, 1, 0].max()

    def places(self, u: float) -> list[list[tuple[float, list[int]]]]:
        """Where a strip is held, and by which lines: by those it runs over; and by all, carried on level."""
        u = min(max(u, self.first), self.last)  # an eave past the last line hangs on the strip at its end
        (u1, v1), (u2, v2) = self.lines[:, 0].T, self.lines[:, 1].T
        v = v1 + np.clip((u - u1) / (u2 - u1), 0.0, 1.0) * (v2 - v1)
        off = np.maximum(np.maximum(u1 - u, u - u2), 0.0)
        return [self.rows(v, off, np.flatnonzero(off <= 1e-6)), self.rows(v, off, np.arange(len(v)))]

    @staticmethod
    def rows(v: Array, off: Array, chosen: Any) -> list[tuple[float, list[int]]]:
        found = []
        for place in np.unique(np.round(v[chosen], 3)):
            there = [n for n in chosen if abs(v[n] - place) < 2e-3]
            near = min(off[n] for n in there)
            found.append((v[there[0]], [n for n in there if off[n] <= near + 1e-6]))
        return found

    def influence(self, u: float, v: Array) -> Array:
        """What a pound at each of some places along a strip puts on every line, by the lever.

        It hangs on the two places beside it, or out over the last and the nearest behind that is as far as it hangs
        out. If the lines it runs over cannot hold it so, all lines are taken; if those cannot, the farthest behind.
        """
        table = np.zeros((len(self.lines), len(v)))
        over, every = self.places(u)
        for column, at in zip(table.T, v, strict=True):
            for rows, last in ((over, False), (every, True)):
                seat = np.array([place for place, _ in rows])
                if len(seat) > 1 and seat[0] <= at <= seat[-1]:
                    upper = max(int(np.searchsorted(seat, at)), 1)
                    pair = (upper, upper - 1)
                elif len(seat) > 1:
                    edge = 0 if at < seat[0] else len(seat) - 1
                    behind = np.abs(seat - seat[edge])
                    good = np.flatnonzero(behind >= abs(at - seat[edge]))
                    if not len(good) and not last:
                        continue
                    pair = (edge, good[np.argmin(behind[good])] if len(good) else int(np.argmax(behind)))
                else:
                    continue
                one, two = pair
                part = (at - seat[two]) / (seat[one] - seat[two])
                for n, share in ((one, part), (two, 1 - part)):
                    column[rows[n][1]] += share / len(rows[n][1])
                break
        return table

    def stretch(self, u: float, low: float, high: float) -> Array:
        """A strip's load from one v to another: the area under each influence line, exact for straight ones."""
        seats = [np.array([place for place, _ in rows]) for rows in self.places(u) if rows]
        turns = np.concatenate([np.concatenate((s, 2 * s[0] - s, 2 * s[-1] - s)) for s in seats])
        stops = np.unique([low, high, *turns[(turns > low) & (turns < high)]])
        return self.influence(u, (stops[1:] + stops[:-1]) / 2) @ np.diff(stops)

    def taken(self, at: Array) -> Array:
        """Every line's part of a weight spread evenly over an outline, a wall, or a point."""
        total = np.zeros(len(self.lines))
        if len(at) == 1:
            return self.influence(at[0, 0], at[:, 1])[:, 0]
        if len(at) == 2 and at[0, 0] == at[1, 0]:  # a wall along the strips
            total = self.stretch(at[0, 0], *np.sort(at[:, 1]))
        elif len(at) == 2:
            count = int(np.ceil(abs(at[1, 0] - at[0, 0]) / STRIP))
            for t in (np.arange(count) + 0.5) / count:
                u, v = at[0] + t * (at[1] - at[0])
                total += self.influence(u, np.array([v]))[:, 0]
        else:
            nxt = np.roll(at, -1, axis=0)
            for u in np.arange(at[:, 0].min() + STRIP / 2, at[:, 0].max(), STRIP):
                cut = (at[:, 0] < u) != (nxt[:, 0] < u)
                a, b = at[cut], nxt[cut]
                hits = np.sort(a[:, 1] + (u - a[:, 0]) / (b[:, 0] - a[:, 0]) * (b[:, 1] - a[:, 1]))
                for low, high in zip(hits[::2], hits[1::2], strict=True):
                    total += self.stretch(u, low, high)
        return total / total.sum()


def size(plan: Array) -> float:
    """Area by the shoelace."""
    x, y = plan.T
    return float(abs(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2)


def centre(at: Array) -> Array:
    """Of a point, a wall, or an outline (as a fan of triangles)."""
    if len(at) < 3:
        return at.mean(axis=0)
    a, b = at[1:-1] - at[0], at[2:] - at[0]
    twice = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    return at[0] + twice @ (a + b) / (3 * twice.sum())


@pytest.fixture(scope="module")
def hand() -> House:
    """The house by NumPy."""
    return House(json.loads(FILE.read_text("utf-8")))


@pytest.fixture(scope="module")
def forces() -> Any:
    """What the program says of the same file, as found, at best values."""
    from groundsill.doors.decode import decode
    from groundsill.study import run

    return run(decode(FILE.read_bytes(), FILE.name), ranges=False).forces


def exactly(value: Any) -> Any:
    return pytest.approx(value, rel=EXACT)


def test_every_piece_weighs_the_same(hand, forces):
    """Sorted by weight, item by item: 2 floors, 2 ceilings, 4 roofs, 41 walls, 30 cripple walls, one chimney."""
    assert sorted(i.weight_lb for i in forces.items) == exactly(sorted(p.lb for p in hand.pieces))


def test_the_weight_of_each_level_and_where_it_lies(hand, forces):
    assert [level.weight_lb for level in forces.levels] == exactly(list(hand.weights_lb))
    assert forces.weight_lb == exactly(hand.weights_lb.sum())


def test_base_shear_and_the_force_of_each_level(hand, forces):
    assert exactly(hand.S_DS) == forces.S_DS
    assert [level.height_ft for level in forces.levels] == exactly(list(hand.heights_ft))
    assert forces.base_shear_lb == exactly(hand.base_shear_lb)
    assert [level.force_lb for level in forces.levels] == exactly(list(hand.level_forces_lb))


def test_the_force_of_every_line(hand, forces):
    """Thirteen lines, two of them skewed: the resultant of earthquakes along x and y, and the lesser of the two."""
    got = {line.mark: (line.force_lb, line.other_lb) for line in forces.lines.values() if line.relied_on}
    along = [hand.shares(axis) for axis in (0, 1)]
    each = {mark: sorted(abs(float(s[mark] @ hand.level_forces_lb)) for s in along) for mark in hand.relied}
    want = {mark: (float(np.hypot(*pair)), pair[0]) for mark, pair in each.items()}
    assert got.keys() == want.keys()
    for mark, pair in want.items():
        assert got[mark] == pytest.approx(pair, abs=CLOSE * hand.base_shear_lb), mark


def test_the_lines_not_relied_on_take_nothing(forces):
    assert {line.mark: line.force_lb for line in forces.lines.values() if not line.relied_on} == {
        "L13": 0.0,
        "L15": 0.0,
    }
