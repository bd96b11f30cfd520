"""Line L1 of Larch Street as designed, worked long-hand by an independent route. COMPUTED, not published.

Nothing here was printed by others: it is our own arithmetic, done a second time. The survey is read straight from its
JSON, with no class of the program; areas are cut by Shapely; every formula is written out again in plain Python, and
every table figure is typed in by hand beside the place it comes from. The program is asked only for its study, at the
end, and the two are compared to one part in a million. What is recalled and not seen (in the program, or here) is no
better known for being worked out twice.

L1 is the front: 28 ft along x at y = 0, a cripple wall of 28 in. and, past a step at mid length, of 40 in. The list of
work lays two panels of 80 in., one at each end, six new bolts, twelve clips, a strap at the plate's one joint, and
hold-downs at the taller panel.
"""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise, product
from math import pi, sqrt
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from shapely.geometry import Polygon, box

FILE = Path(__file__).parents[2] / "samples" / "larch-street" / "house.json"
CLOSE = 1e-6

# Table figures, psf: ASCE 7-16 Table C3.1-1, and for old materials common practice (from memory in the program too).
PSF = {
    "ceiling: plaster on wood lath": 8.0, "roof: asphalt shingles": 2.0, "roof: wood shingles": 3.0,
    "skip sheathing": 1.5, "drop or bevel siding": 2.2, "1x straight sheathing or shiplap": 2.4,
}  # fmt: skip
WINDOWS_PSF = 8.0
R, OMEGA_0, I_E = 6.5, 3.0, 1.0  # ASCE 7-16 Table 12.2-1 item A.15 and Table 1.5-2, risk category II
F_A, F_V = 1.2, 1.85  # ASCE 7-16 11.4.4 (no soil study) and Table 11.4-2 at S_1 = 0.45
NOMINAL_PLF, STIFFNESS = 1065.0, 13.0  # SDPWS 2021 Table 4.3A, 15/32 panel, 8d at 4 in.
BOARDS_PLF = 140.0  # SDPWS 2021 Table 4.2D, straight boards, nominal
IN_QUAKES = 2.8  # SDPWS 2021 4.1.4: of one nominal value what is allowed in an earthquake
C_D = 1.6  # NDS 2018 Table 2.3.2
REDWOOD_G, FIR_G = 0.37, 0.50  # NDS 2018 Table 12.3.3A
HALF_STUD_FT = 1 / 12  # of full-sawn 2 in. studs


def number(fact: Any) -> float:
    """A fact of the file: a bare number, or an object with its value."""
    return float(fact["value"] if isinstance(fact, dict) else fact)


@dataclass(frozen=True)
class Hand:
    """The whole line, step by step."""

    house: dict[str, Any]

    # ---- What is in the file ----

    @cached_property
    def survey(self) -> dict[str, Any]:
        return self.house["survey"]

    @cached_property
    def building(self) -> dict[str, Any]:
        return self.survey["building"]

    @cached_property
    def under(self) -> dict[str, Any]:
        return self.survey["underfloor"]

    @cached_property
    def storey(self) -> dict[str, Any]:
        (only,) = self.building["storeys"].values()
        return only

    @cached_property
    def lines(self) -> dict[str, tuple[str, dict[str, Any]]]:
        return {line["mark"]: (id, line) for id, line in self.under["lines"].items()}

    def ends(self, item: dict[str, Any]) -> tuple[tuple[float, float], tuple[float, float]]:
        found = []
        for name in ("start", "end"):
            place = item[name] if isinstance(item[name], dict) else self.building["corners"][item[name]]
            found.append((place["x_in"], place["y_in"]))
        return found[0], found[1]

    def on_line(self, collection: str) -> dict[str, dict[str, Any]]:
        line = self.lines["L1"][0]
        owner = self.survey["foundation"] if collection == "stems" else self.under
        return {
            v["mark"]: v
            for v in owner["segments" if collection == "stems" else collection].values()
            if v["line"] == line
        }

    @cached_property
    def pieces(self) -> dict[str, dict[str, Any]]:
        (only,) = self.house["alternatives"].values()
        return {piece["mark"]: piece for piece in only["pieces"].values()}

    # ---- Weights ----

    def psf(self, assembly: str) -> float:
        layers = self.building["assemblies"][assembly]["layers"]
        return sum(
            (number(layer["psf"]) if "psf" in layer else PSF[layer["material"]]) * layer.get("times", 1)
            for layer in layers
        )

    def run_ft(self, item: dict[str, Any]) -> float:
        (x1, y1), (x2, y2) = self.ends(item)
        return (abs(x2 - x1) + abs(y2 - y1)) / 12  # everything here lies along x or y

    def wall_lb(self, wall: dict[str, Any]) -> float:
        gross = self.run_ft(wall) * wall.get("height_in", self.storey["height_in"]) / 12
        glass = sum(
            (o["to_in"] - o["from_in"]) * (o["head_in"] - o.get("sill_in", 0)) / 144
            for o in wall.get("openings", {}).values()
        )
        return self.psf(wall["assembly"]) * (gross - glass) + WINDOWS_PSF * glass

    def partition_lb(self, part: dict[str, Any]) -> float:
        return self.psf(part["assembly"]) * self.run_ft(part) * part.get("height_in", self.storey["height_in"]) / 12

    @cached_property
    def cripples(self) -> list[tuple[tuple[tuple[float, float], tuple[float, float]], float]]:
        """Ends on the plan and weight of every cripple wall."""
        found = []
        for segment in self.under["segments"].values():
            if "assembly" not in segment:
                continue
            (x1, y1), (x2, y2) = self.ends(self.under["lines"][segment["line"]])
            long = abs(x2 - x1) + abs(y2 - y1)
            a, b = (
                (x1 + (x2 - x1) * s / long, y1 + (y2 - y1) * s / long) for s in (segment["from_in"], segment["to_in"])
            )
            area = (segment["to_in"] - segment["from_in"]) * number(segment["height_in"]) / 144
            found.append(((a, b), self.psf(segment["assembly"]) * area))
        return found

    @cached_property
    def outline(self) -> Polygon:
        corners = self.building["corners"]
        return Polygon([(corners[c]["x_in"], corners[c]["y_in"]) for c in self.storey["outline"]])

    @cached_property
    def roofs(self) -> list[tuple[Polygon, float]]:
        """Plan and weight of each part of the roof, its area taken along the slope."""
        parts = [
            (Polygon([(p["x_in"], p["y_in"]) for p in r["outline"]]), r["slope_rise_per_run"], r["assembly"])
            for r in self.building["roof"].values()
        ]
        return [(plan, plan.area / 144 * sqrt(1 + s * s) * self.psf(of)) for plan, s, of in parts]

    def surface_lb(self, what: str) -> float:
        return self.psf(self.storey[what]) * self.outline.area / 144

    @cached_property
    def upright(self) -> list[tuple[tuple[tuple[float, float], tuple[float, float]], float]]:
        """Outside walls and partitions, half of each to the floor and half to the roof. The chimney is not tied."""
        walls = [(self.ends(w), self.wall_lb(w)) for w in self.building["walls"].values()]
        return walls + [(self.ends(p), self.partition_lb(p)) for p in self.building["partitions"].values()]

    @cached_property
    def levels_lb(self) -> tuple[float, float]:
        """Seismic weight at the floor and at the roof."""
        half = sum(w for _, w in self.upright) / 2
        floor = self.surface_lb("floor") + half + sum(w for _, w in self.cripples) / 2
        roof = self.surface_lb("ceiling") + sum(w for _, w in self.roofs) + half
        return floor, roof

    # ---- Base shear and level forces ----

    @cached_property
    def S_DS(self) -> float:
        return 2 / 3 * F_A * self.survey["site"]["hazard"]["S_S"]

    @cached_property
    def heights_ft(self) -> tuple[float, float]:
        """Floor and roof over the base: the mean top of the foundation, by length."""
        known = [
            (s["top_z_in"], s["to_in"] - s["from_in"])
            for s in self.survey["foundation"]["segments"].values()
            if "top_z_in" in s
        ]
        base = sum(number(z) * long for z, long in known) / sum(long for _, long in known)
        floor = self.storey["floor_z_in"]
        return (floor - base) / 12, (floor + self.storey["height_in"] - base) / 12

    @cached_property
    def base_shear_lb(self) -> float:
        T_a = 0.02 * self.heights_ft[1] ** 0.75
        plateau = self.S_DS / (R / I_E)
        upper = 2 / 3 * F_V * self.survey["site"]["hazard"]["S_1"] / (T_a * R / I_E)
        assert 0.044 * self.S_DS * I_E < plateau < upper
        return self.house["choices"]["force_factor"] * plateau * sum(self.levels_lb)

    @cached_property
    def level_forces_lb(self) -> tuple[float, float]:
        """By weight times height: the period is short, so the exponent is 1."""
        (w0, w1), (h0, h1) = self.levels_lb, self.heights_ft
        whole = w0 * h0 + w1 * h1
        return self.base_shear_lb * w0 * h0 / whole, self.base_shear_lb * w1 * h1 / whole

    # ---- Share of L1 ----
    # West of x = 192 the floor spans from L1 to L5 at y = 648, east of it from L1 to L3 at y = 480. A weight at y
    # comes to L1 by its lever, 1 - y / span; beyond either line the lever simply runs on. The wing's east wall stands
    # at x = 192 itself, between the ends of L3 and L5, and gives L1 nothing.

    def of_area(self, plan: Polygon) -> float:
        """Share of L1 in something spread evenly over a plan."""
        total = 0.0
        for low, high, span in ((-1e4, 192.0, 648.0), (192.0, 1e4, 480.0)):
            part = plan.intersection(box(low, -1e4, high, 1e4))
            total += part.area * (1 - part.centroid.y / span) if part.area else 0.0
        return total / plan.area

    def of_run(self, ends: tuple[tuple[float, float], tuple[float, float]]) -> float:
        """Share of L1 in a straight wall."""
        (x1, y1), (x2, y2) = ends
        if x1 == x2 == 192.0:
            assert min(y1, y2) >= 480.0
            return 0.0
        if x1 == x2:
            return 1 - (y1 + y2) / 2 / (648.0 if x1 < 192.0 else 480.0)
        low, high = sorted((x1, x2))
        west = max(0.0, min(high, 192.0) - low) / (high - low)
        return west * (1 - y1 / 648.0) + (1 - west) * (1 - y1 / 480.0)

    @cached_property
    def shares(self) -> tuple[float, float]:
        """Share of L1 in the weight of the floor and of the roof."""
        half = sum(w * self.of_run(ends) for ends, w in self.upright) / 2
        floor = self.surface_lb("floor") * self.of_area(self.outline) + half
        floor += sum(w * self.of_run(ends) for ends, w in self.cripples) / 2
        roof = self.surface_lb("ceiling") * self.of_area(self.outline) + half
        roof += sum(w * self.of_area(plan) for plan, w in self.roofs)
        return floor / self.levels_lb[0], roof / self.levels_lb[1]

    @cached_property
    def force_lb(self) -> float:
        return sum(share * force for share, force in zip(self.shares, self.level_forces_lb, strict=True))

    @cached_property
    def allowable_lb(self) -> float:
        return 0.7 * self.house["choices"]["redundancy"] * self.force_lb

    # ---- Panels: shared by strength and by stiffness, the worse of the two, since 40 in. is over 1.25 times 28 ----

    @cached_property
    def panels(self) -> dict[str, tuple[float, float]]:
        """Length and height of each panel, feet."""
        height = {id: number(s["height_in"]) for id, s in self.under["segments"].items()}
        found = {}
        for mark in ("P1", "P2"):
            piece = self.pieces[mark]
            found[mark] = ((piece["to_in"] - piece["from_in"]) / 12, height[piece["segment"]] / 12)
        return found

    @cached_property
    def panel_shares(self) -> dict[str, float]:
        stiff = {mark: 1000 * STIFFNESS * b / h for mark, (b, h) in self.panels.items()}
        long = {mark: b for mark, (b, _) in self.panels.items()}
        return {m: max(stiff[m] / sum(stiff.values()), long[m] / sum(long.values())) for m in self.panels}

    def panel_force(self, mark: str) -> float:
        return self.panel_shares[mark] * self.allowable_lb

    # ---- Dead load of L1: its wall, its cripple walls, and the ends of three girders ----

    @cached_property
    def girder_ends_lb(self) -> float:
        """Joists run along x from girder to girder: G1 at x = 84, G3 and behind it the hall strip at 168, G2 at 252.

        Each girder carries 84 in. of floor along its length and the partitions on it by the lever. It stands on posts
        and, at its front end, on L1, which takes half the way to the first post: 40, 3 and 3 in. At y = 192, where G3
        ends and the hall strip begins, the two share alike.
        """
        part = {p["mark"]: self.partition_lb(p) for p in self.building["partitions"].values()}
        floor = self.psf(self.storey["floor"])
        to_g1_of_126 = (
            42 + 42 * (168 - 105) / 84
        ) / 126  # partitions over x from 0 to 126: to 84 half, then by the lever
        g1 = floor * 7 * 40 + part["I1"] / 2 + (part["I2"] + part["I5"] + part["I6"]) * to_g1_of_126
        g1 += (part["I11"] + part["I12"]) * (168 - 144) / 84
        g1 += (part["I14"] + part["I10"]) * (42 + 6) / 192  # over the wing's south edge, where G4 stands 12 in. beyond
        g2 = floor * 7 * 40 + part["I3"] / 2 + part["I4"] / 2
        g2 += part["I7"] * (200 - 168) / 84 + part["I8"] * (232 - 168) / 84
        g3 = floor * 7 * 16 + (part["I11"] + part["I12"]) * (144 - 84) / 84
        g3 += part["I2"] * (42 * (105 - 84) / 84) / 126 / 2 + part["I3"] * 42 / 168 / 2
        return g1 * 40 / 480 + g2 * 3 / 480 + g3 * 3 / 192

    @cached_property
    def dead_plf(self) -> float:
        wall = self.wall_lb(self.building["walls"][self.lines["L1"][1]["above"]])
        own = sum(w for ((_, y1), (_, y2)), w in self.cripples if y1 == y2 == 0)
        return (wall + own + self.girder_ends_lb) / 28

    # ---- Ends of the panels: what is pulled and what is pressed ----

    @cached_property
    def surely(self) -> float:
        """The part of the dead load that surely holds, ASCE 7-16 2.4.5 combination 10."""
        return 0.6 - 0.14 * self.S_DS

    @cached_property
    def live_plf(self) -> float:
        """Floor that the girders bring: 7 ft of it along each, 40, 3 and 3 in. of 40, 40 and 16 ft."""
        area = 7 * 40 * 40 / 480 + 7 * 40 * 3 / 480 + 7 * 16 * 3 / 192
        return self.storey.get("live_psf", 40.0) * area / 28

    def pulled_lb(self, mark: str) -> float:
        """Tension at an end with a hold-down 3 in. in, about the middle of the stud at the other."""
        b, h = self.panels[mark]
        moment = self.panel_force(mark) * h - self.surely * self.dead_plf * b * (b / 2 - HALF_STUD_FT)
        return moment / (b - 0.25 - HALF_STUD_FT)

    def pressed_lb(self, mark: str, held: bool) -> float:
        """The worst of three combinations; what the moment lifts found by halving, not by the root of a square."""
        b, h = self.panels[mark]
        moment, dead, live = self.panel_force(mark) * h, self.dead_plf, self.live_plf
        d = b - HALF_STUD_FT - (0.25 if held else HALF_STUD_FT)
        found = []
        for M, w in (
            (moment, (1 + 0.14 * self.S_DS) * dead),
            (moment, self.surely * dead),
            (0.75 * moment, (1 + 0.105 * self.S_DS) * dead + 0.75 * live),
        ):
            if w * b * (b / 2 - HALF_STUD_FT) <= M:  # about the post that is pulled
                found.append((M + w * b * (d - b / 2 + HALF_STUD_FT)) / d)
                continue
            low, high = 0.0, b
            for _ in range(80):
                middle = (low + high) / 2
                low, high = (middle, high) if w * middle * (b - HALF_STUD_FT - middle / 2) < M else (low, middle)
            found.append(min(w * (low + HALF_STUD_FT + 8 / 12), w * b))
        return max(found)

    # ---- Dowels: NDS 2018 12.3.1, the six modes written out ----

    @staticmethod
    def yield_modes(
        D: float, l_m: float, l_s: float, F_em: float, F_es: float, F_yb: float, R_d: tuple[float, float, float]
    ) -> list[float]:
        R_e, R_t = F_em / F_es, l_m / l_s
        k1 = (sqrt(R_e + 2 * R_e**2 * (1 + R_t + R_t**2) + R_t**2 * R_e**3) - R_e * (1 + R_t)) / (1 + R_e)
        k2 = -1 + sqrt(2 * (1 + R_e) + 2 * F_yb * (1 + 2 * R_e) * D**2 / (3 * F_em * l_m**2))
        k3 = -1 + sqrt(2 * (1 + R_e) / R_e + 2 * F_yb * (2 + R_e) * D**2 / (3 * F_em * l_s**2))
        one, two, three = R_d
        return [
            D * l_m * F_em / one, D * l_s * F_es / one, k1 * D * l_s * F_es / two,
            k2 * D * l_m * F_em / ((1 + 2 * R_e) * three), k3 * D * l_s * F_em / ((2 + R_e) * three),
            D**2 / three * sqrt(2 * F_em * F_yb / (3 * (1 + R_e))),
        ]  # fmt: skip

    def least_mode_lb(self, reductions: tuple[float, float, float]) -> float:
        """One 5/8 in. bolt, 2 in. redwood, 2,000 psi concrete: by the extension below 2,500 psi, F_em = 3 f'c."""
        D, l_s = self.pieces["A1"]["diameter_in"], number(self.on_line("sills")["M1"]["thickness_in"])
        F_es = round(11_200 * REDWOOD_G / 50) * 50
        F_em = 3 * number(self.on_line("stems")["C1"]["strength_psi"])
        return min(self.yield_modes(D, self.pieces["A1"]["embedment_in"], l_s, F_em, F_es, 45_000, reductions))

    @cached_property
    def sill_bolt_lb(self) -> float:
        """What it holds at allowable level, by the reduction terms of NDS Table 12.3.1B."""
        return C_D * self.least_mode_lb((4.0, 3.6, 3.2))

    def greatest_on_a_bolt(self, sill: str, panel: str, force: float) -> float:
        """What the worst placed of a sill's three bolts takes of a force spread along the panel over them, by NumPy.

        They stand on springs of 270,000 D^1.5 along a bar of 1,000,000 psi. One bolt touches, two have 1/16 in. to
        close; of the sets that may bear one fits. It brings 1.25 times what its joint in wood yields at, at most.
        """
        piece, over = self.on_line("sills")[sill], self.pieces[panel]
        at = sorted(p["station_in"] for p in self.pieces.values() if p["kind"] == "bolt" and p["line"] == piece["line"]
                    and piece["from_in"] <= p["station_in"] <= piece["to_in"])  # fmt: skip
        middles = [over["from_in"], *((a + b) / 2 for a, b in pairwise(at)), over["to_in"]]
        load = np.array([force * (b - a) / (over["to_in"] - over["from_in"]) for a, b in pairwise(middles)])
        assert over["from_in"] <= min(at) <= max(at) <= over["to_in"]  # so half of what lies between two goes to either
        bar, K = 1_000_000 * number(piece["width_in"]) * number(piece["thickness_in"]), np.zeros((3, 3))
        for n, (a, b) in enumerate(pairwise(at)):
            K[n : n + 2, n : n + 2] += bar / (b - a) * np.array([[1.0, -1.0], [-1.0, 1.0]])
        k, worst = 270_000 * 0.625**1.5, 0.0
        for first in range(3):
            gaps, fits = np.array([0.0 if n == first else 1 / 16 for n in range(3)]), []
            for bears in product((0.0, 1.0), repeat=3):
                if any(bears):
                    on = np.array(bears)
                    past = np.linalg.solve(K + np.diag(k * on), load + k * on * gaps) - gaps
                    if all((past >= 0) == (on > 0)):
                        fits.append(k * past[first])
            assert len(fits) == 1
            worst = max(worst, *fits)
        return min(worst, 1.25 * self.least_mode_lb((1.0, 1.0, 1.0)))

    @cached_property
    def blocking_plf(self) -> float:
        """10d common nails at 4 in., 1-1/2 in. fir blocking on the redwood sill; the length in it is less by one D."""
        D, long, thick = 0.148, 3.0, 1.5
        bearing = [round(16_600 * G**1.84 / 50) * 50 for G in (REDWOOD_G, FIR_G)]
        modes = self.yield_modes(D, long - thick - D, thick, *bearing, 90_000, (2.2, 2.2, 2.2))
        return C_D * min(modes) * 12 / 4

    # ---- Bolts in concrete: ACI 318-19 chapter 17, cracked, one bolt at a time ----

    def bolt_in_concrete_lb(self) -> dict[str, float]:
        f_c = number(self.on_line("stems")["C1"]["strength_psi"])
        piece = self.pieces["A1"]
        d, h_ef, c = piece["diameter_in"], piece["embedment_in"], piece["edge_in"]
        l_e = min(h_ef, 8 * d)
        V_b = min(7 * (l_e / d) ** 0.2 * sqrt(d), 9.0) * sqrt(f_c) * c**1.5
        stations = sorted(self.pieces[f"A{n}"]["station_in"] for n in (1, 2, 3))
        assert min(b - a for a, b in pairwise(stations)) > 3 * c  # none breaks out with its neighbour
        assert 168 - stations[-1] > 1.5 * c  # nor at the step
        N_b = 17 * sqrt(f_c) * h_ef**1.5
        N_cb = (c + 1.5 * h_ef) * 3 * h_ef / (9 * h_ef**2) * (0.7 + 0.3 * c / (1.5 * h_ef)) * N_b
        A_se = pi / 4 * (d - 0.9743 / 11) ** 2
        return {"breakout": 0.7 * 2 * V_b, "pryout": 0.7 * 2 * N_cb, "steel": 0.65 * 0.6 * A_se * 60_000}


@pytest.fixture(scope="module")
def hand() -> Hand:
    """The line by hand."""
    return Hand(json.loads(FILE.read_text("utf-8")))


@pytest.fixture(scope="module")
def study() -> Any:
    """What the program says of the same file."""
    from groundsill.doors.decode import decode
    from groundsill.study import run

    return run(decode(FILE.read_bytes(), FILE.name), ranges=False)


@pytest.fixture(scope="module")
def links(study: Any) -> dict[tuple[str, str], Any]:
    """The links of L1 as designed, by stage and what they stand for (with the direction, where there are two)."""
    return links_of(study)


@pytest.fixture(scope="module")
def on_springs() -> dict[tuple[str, str], Any]:
    """The same with the bolts of every line on springs."""
    from groundsill.doors.decode import decode
    from groundsill.study import run

    house = decode(FILE.read_bytes(), FILE.name)
    asked = replace(house, choices=replace(house.choices, bolt_springs="every line"))
    return links_of(run(asked, ranges=False))


def links_of(study: Any) -> dict[tuple[str, str], Any]:
    """The links of L1 as designed, by stage and what they stand for (with the direction, where there are two)."""
    (chain,) = [c for c in study.runs[1].chains if c.mark == "L1"]
    found = {}
    for stage in chain.stages:
        for link in stage.links:
            kind, scope, end = link.address.split("/")[2:5]
            found[kind, f"{scope}/{end}"] = link
    return found


def near(value: float) -> Any:
    return pytest.approx(value, rel=CLOSE)


def the(links: dict[tuple[str, str], Any], stage: str, *, holding: str, end: str = "both") -> Any:
    """The one link of a stage for an object of the file."""
    return links[stage, f"{holding}/{end}"]


def id_of(hand: Hand, mark: str, where: str) -> str:
    """The id of an object of L1 by its mark."""
    line = hand.lines["L1"][0]
    if where == "pieces":
        (only,) = hand.house["alternatives"].values()
        return next(id for id, piece in only["pieces"].items() if piece["mark"] == mark)
    return next(id for id, thing in hand.under[where].items() if thing["mark"] == mark and thing["line"] == line)


def test_weights_and_base_shear(hand, study):
    forces = study.forces
    assert [level.weight_lb for level in forces.levels] == [near(w) for w in hand.levels_lb]
    assert [level.height_ft for level in forces.levels] == [near(h) for h in hand.heights_ft]
    assert near(hand.S_DS) == forces.S_DS
    assert forces.base_shear_lb == near(hand.base_shear_lb)
    assert [level.force_lb for level in forces.levels] == [near(f) for f in hand.level_forces_lb]


def test_share_and_force_of_the_line(hand, study):
    line = study.forces.lines[hand.lines["L1"][0]]
    assert line.shares == pytest.approx(hand.shares, rel=CLOSE)
    assert line.force_lb == near(hand.force_lb)


def test_dead_load_of_the_line(hand, study):
    assert study.forces.gravity.lines[hand.lines["L1"][0]].dead / 28 == near(hand.dead_plf)


def test_floor_boards_and_clips(hand, links):
    line = hand.lines["L1"][0]
    boards, clips = the(links, "floor-boards", holding=line), the(links, "floor-to-plate", holding=line)
    assert (boards.demand, boards.capacity) == (near(hand.allowable_lb / 28), near(BOARDS_PLF / IN_QUAKES))
    assert (clips.demand, clips.capacity) == (near(hand.allowable_lb), near(12 * 450))


def test_the_joint_in_the_plate(hand, links):
    """What the floor has brought up to the joint at 152 in., less what panel P1 has taken by then."""
    taken = hand.panel_shares["P1"] / sum(hand.panel_shares.values())
    splice = the(links, "plate-splices", holding=id_of(hand, "X1", "splices"))
    assert (splice.demand, splice.capacity) == (near(hand.allowable_lb * abs(152 / 336 - taken)), near(1600))


@pytest.mark.parametrize("mark", ["P1", "P2"])
def test_panel_and_its_nailing(hand, links, mark):
    id = id_of(hand, mark, "pieces")
    v = hand.panel_force(mark) / hand.panels[mark][0]
    for stage in ("nailing-top", "sheathing", "nailing-sill"):
        link = the(links, stage, holding=id)
        assert (link.demand, link.capacity) == (near(v), near(NOMINAL_PLF / IN_QUAKES)), stage
    blocking = the(links, "nailing-sill", holding=id, end="both-blocking")
    assert (blocking.demand, blocking.capacity) == (near(v), near(hand.blocking_plf))


@pytest.mark.parametrize(("mark", "held_lb"), [("P1", 0.0), ("P2", 3000.0)])
def test_overturning_of_the_panel(hand, links, mark, held_lb):
    """Either way about the middle of a 2 in. stud: the dead load at its own arm, and a hold-down 3 in. in."""
    b, h = hand.panels[mark]
    holding = hand.surely * hand.dead_plf * b * (b / 2 - HALF_STUD_FT) + held_lb * (b - 0.25 - HALF_STUD_FT)
    for end in ("+", "-"):
        link = the(links, "overturning", holding=id_of(hand, mark, "pieces"), end=end)
        assert (link.demand, link.capacity) == (near(hand.panel_force(mark) * h), near(holding))


@pytest.mark.parametrize(("mark", "end"), [("P1", "+"), ("P1", "-"), ("P2", "+"), ("P2", "-")])
def test_the_pressed_stud_and_the_sill_under_it(hand, links, mark, end):
    """Two inches of stud on four inches of redwood: 425 psi and 3/8 in. more where it stands in from the sill's end."""
    C = hand.pressed_lb(mark, held=mark == "P2")
    piece = hand.pieces[mark]
    ends = [(m["from_in"], m["to_in"]) for m in hand.on_line("sills").values()]
    at = piece["to_in"] - 1 if end == "+" else piece["from_in"] + 1
    (clear,) = [min(at - 1 - low, high - at - 1) for low, high in ends if low <= at <= high]
    sill = the(links, "overturning", holding=id_of(hand, mark, "pieces"), end=f"{end}-sill")
    assert (sill.demand, sill.capacity) == (near(C), near(425 * (2.375 / 2 if clear >= 3 else 1) * 2 * 4))
    post = the(links, "overturning", holding=id_of(hand, mark, "pieces"), end=f"{end}-post")
    crushed, slender = 775 * 1.6 * 1.15, 12 * hand.panels[mark][1] / 4
    r = 0.822 * 510_000 / slender**2 / crushed
    buckled = (1 + r) / 1.6 - sqrt(((1 + r) / 1.6) ** 2 - r / 0.8)
    assert (post.demand, post.capacity) == (near(C), near(crushed * buckled * 2 * 4))


def test_the_footing_that_the_corner_hold_down_lifts(hand, links):
    """H2 stands at the end of 8 by 18 in. of concrete: it lifts half of a span to where that touches the soil again."""
    (stem,) = [s for s in hand.on_line("stems").values() if s["to_in"] == 336]
    deep = number(stem["above_outside_soil_in"]) + number(stem["depth_in"])
    wide, root = number(stem["top_width_in"]), sqrt(number(stem["strength_psi"]))
    own = 150 * wide * deep / 144
    hanging = (1.2 + 0.2 * hand.S_DS) * (own + hand.dead_plf)
    bent = 0.6 * 5 * root * wide * (deep - 2) ** 2 / 6 / 12
    sheared = 0.6 * 4 / 3 * root * wide * (deep - 2)
    spans = min(sqrt(8 * bent / hanging), 2 * sheared / hanging, 80 / 12)  # to the panel's pressed end, at most
    link = the(links, "overturning", holding=id_of(hand, "P2", "pieces"), end="--footing-H2")
    assert (link.demand, link.capacity) == (near(hand.pulled_lb("P2")), near(hand.surely * own * spans / 2))
    assert link.status == "fails"


@pytest.mark.parametrize(("sill", "panel"), [("M1", "P1"), ("M2", "P2")])
def test_bolts_of_the_sill_in_wood_and_in_concrete(hand, links, sill, panel):
    """Three bolts in each piece of sill, under one panel each; concrete for the overstrength force, strength level."""
    wood = the(links, "sill-bolts", holding=id_of(hand, sill, "sills"))
    assert (wood.demand, wood.capacity) == (near(hand.panel_force(panel)), near(3 * hand.sill_bolt_lb))
    concrete = the(links, "bolts-concrete", holding=id_of(hand, sill, "sills"))
    one = OMEGA_0 * hand.force_lb * hand.panel_shares[panel] / 3
    ways = hand.bolt_in_concrete_lb()
    assert min(ways, key=ways.__getitem__) == "breakout"
    assert (concrete.demand, concrete.capacity) == (near(one), near(ways["breakout"]))


@pytest.mark.parametrize(("sill", "panel"), [("M1", "P1"), ("M2", "P2")])
def test_bolts_of_the_sill_on_springs(hand, on_springs, sill, panel):
    """Asked for on every line: in wood, which yields before the concrete breaks, all three count; one touches first."""
    wood = the(on_springs, "sill-bolts", holding=id_of(hand, sill, "sills"))
    assert (wood.demand, wood.capacity) == (near(hand.panel_force(panel)), near(3 * hand.sill_bolt_lb))
    concrete = the(on_springs, "bolts-concrete", holding=id_of(hand, sill, "sills"))
    one = hand.greatest_on_a_bolt(sill, panel, OMEGA_0 * hand.force_lb * hand.panel_shares[panel])
    assert (concrete.demand, concrete.capacity) == (near(one), near(hand.bolt_in_concrete_lb()["breakout"]))


def test_what_the_line_carries(hand, study, links):
    """The corner hold-down lifts its footing first: P1, with nothing but dead load on its ends, comes after it."""
    (chain,) = [c for c in study.runs[1].chains if c.mark == "L1"]
    b, h = hand.panels["P1"]
    turns = hand.panel_force("P1") * h / (hand.surely * hand.dead_plf * b * (b / 2 - HALF_STUD_FT))
    lifts = the(links, "overturning", holding=id_of(hand, "P2", "pieces"), end="--footing-H2")
    assert chain.governing == lifts.address
    assert chain.percent == near(100 * lifts.capacity / lifts.demand)
    assert turns < lifts.demand / lifts.capacity
