"""The known house with a new foundation inside its front, alone or closed to a ring, and small changes of it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from groundsill.house.building import Point
from groundsill.house.fact import measured
from groundsill.study import Run, run
from groundsill.work.document import Alternative, House
from groundsill.work.inner import InnerFoundationPiece, length_in, wall_id
from groundsill.work.pieces import BoltPiece, HoldDownPiece, PanelPiece, Piece, StrapPiece, TiePiece
from tests.loadpath.houses import PANEL, known_house

REPORT = "to be named"
FRONT: dict[str, Any] = {
    "mark": "I1", "relieves": ("line1",), "start": Point(x_in=24, y_in=48), "end": Point(x_in=336, y_in=48),
    "footing_width_in": 18, "footing_thickness_in": 12, "depth_in": 20, "stem_width_in": 8, "above_soil_in": 8,
    "wall_height_in": 24, "sill_joints_in": (156,), "plate_joints_in": (150,),
}  # fmt: skip


def strip(**changes: Any) -> InnerFoundationPiece:
    """The strip inside the front."""
    return InnerFoundationPiece(**(FRONT | changes))


def on_it(id: str, piece: InnerFoundationPiece, drag: bool = True) -> dict[str, Piece]:
    """A strip with panels at both ends of its wall, bolts, hold-downs, clips and drag straps."""
    long, name = length_in(piece), piece.mark
    parts: dict[str, Piece] = {id: piece}
    for n, (low, high) in enumerate(((12.0, 108.0), (long - 108.0, long - 12.0)), start=1):
        parts[f"{id}-p{n}"] = PanelPiece(
            order=n, mark=f"{name}P{n}", segment=wall_id(id), from_in=low, to_in=high, panel=PANEL, edge_spacing_in=2
        )
        for m, station in enumerate((low + 3, high - 3)):
            parts[f"{id}-h{n}{m}"] = HoldDownPiece(
                order=10 + n, mark=f"{name}H{n}{m}", segment=wall_id(id), station_in=station, capacity_lb=6000.0,
                report=REPORT, anchor="cast-in headed", anchor_head_in2=3.0, anchor_edge_in=4.0,
                anchor_embedment_in=14.0, give_in=0.1,
            )  # fmt: skip
    stations = [14.0 + k * (long - 28.0) / 11 for k in range(12)]
    for n, station in enumerate(s for s in stations if min(abs(s - j) for j in (*piece.sill_joints_in, -99)) > 6):
        parts[f"{id}-b{n}"] = BoltPiece(
            order=20 + n, mark=f"{name}A{n}", line=id, station_in=station, anchor="cast-in", diameter_in=0.625,
            embedment_in=9.0, edge_in=4.0, to_sheathing_in=0.5,
        )  # fmt: skip
    parts[f"{id}-t"] = TiePiece(
        order=40, mark=f"{name}T", line=id, from_in=0.0, to_in=long, count=40, capacity_lb=450.0, report=REPORT,
        adds_rim=True,
    )  # fmt: skip
    for n, (low, high) in enumerate(((0.0, 48.0), (long - 48.0, long)) if drag else ()):
        parts[f"{id}-s{n}"] = StrapPiece(
            order=50, mark=f"{name}S{n}", line=id, from_in=low, to_in=high, beyond_in=48.0, capacity_lb=4000.0,
            report=REPORT,
        )  # fmt: skip
    return parts


def with_strip(house: House | None = None, drag: bool = True, **changes: Any) -> House:
    """The house with the strip inside its front as its one alternative."""
    alternative = Alternative(name="Inner", mark="N", pieces=on_it("inn1", strip(**changes), drag))
    return replace(house or known_house(), alternatives={"inner": alternative})


def with_ring(house: House | None = None, off: float = 48.0, **changes: Any) -> House:
    """The house with four strips that meet at their corners, each so far inside one of its sides."""
    west, east, south, north = off, 360.0 - off, off, 240.0 - off
    places = {
        "inn1": ("I1", "line1", (west, south), (east, south)), "inn2": ("I2", "line2", (east, south), (east, north)),
        "inn3": ("I3", "line3", (east, north), (west, north)), "inn4": ("I4", "line4", (west, north), (west, south)),
    }  # fmt: skip
    pieces: dict[str, Piece] = {}
    for id, (mark, line, a, b) in places.items():
        long = abs(b[0] - a[0]) + abs(b[1] - a[1])
        joints = (long / 2,) if long > 200 else ()
        made: dict[str, Any] = {
            "mark": mark, "relieves": (line,), "start": Point(x_in=a[0], y_in=a[1]), "end": Point(x_in=b[0], y_in=b[1]),
            "sill_joints_in": joints, "plate_joints_in": joints,
        }  # fmt: skip
        work = on_it(id, strip(**(made | changes)))
        if long < 200:  # one panel where two would lie on each other
            work.pop(f"{id}-p2")
            work[f"{id}-p1"] = replace(work[f"{id}-p1"], to_in=long - 12.0)
            for key in (f"{id}-h11", f"{id}-h20"):
                work.pop(key)
        pieces |= work
    return replace(house or known_house(), alternatives={"inner": Alternative(name="Inner", mark="N", pieces=pieces)})


def pushed(house: House, S_DS: float) -> House:
    """The house in ground motion of this strength."""
    site = house.survey.site
    assert site.hazard is not None
    hazard = replace(site.hazard, S_DS=S_DS)
    return replace(house, survey=replace(house.survey, site=replace(site, hazard=hazard)))


def on_brick(house: House, line: str = "line1", **facts: Any) -> House:
    """The house with the old foundation of one line of brick."""
    told = {"material": "brick", "mortar": measured("soft"), "header_course": measured(True)} | facts
    base = house.survey.foundation
    stems = {k: replace(s, **told) if s.line == line else s for k, s in base.segments.items()}
    return replace(house, survey=replace(house.survey, foundation=replace(base, segments=stems, tests={})))


def with_work(house: House) -> Run:
    """The house's one alternative worked out at the best value of every fact."""
    return run(house, ranges=False).runs[1]
