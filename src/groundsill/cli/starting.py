"""The house file that ``groundsill new`` writes: small, whole, and every figure in it an example to be replaced.

A one-storey house of 30 ft by 24 ft on four cripple walls, one of everything that a load path asks for, so that a
practitioner sees what a survey holds by changing it. Each measured fact says that it is an example, and is marked
*estimated* wherever it is used.
"""

from __future__ import annotations

import hashlib
from typing import Final, Literal, TypeVar

from groundsill.house.building import (
    Assembly,
    Building,
    Corner,
    Layer,
    Partition,
    Point,
    RoofPart,
    Storey,
    Wall,
    WallOpening,
)
from groundsill.house.fact import Fact
from groundsill.house.foundation import Foundation, FoundationSegment
from groundsill.house.site import Hazard, Site, Soil
from groundsill.house.survey import Survey
from groundsill.house.underfloor import (
    Bolt,
    FloorConnection,
    Girder,
    Hatch,
    JoistField,
    Line,
    PlateSplice,
    Post,
    Segment,
    Sheathing,
    SillPiece,
    Stud,
    TopPlate,
    Underfloor,
    Utility,
)
from groundsill.work.document import Basis, Choices, House

__all__ = ["EXAMPLE", "starting_house"]

EXAMPLE: Final = "example: replace with what you find"
LENGTH_IN, WIDTH_IN, CRIPPLE_IN = 360.0, 288.0, 24.0

T = TypeVar("T", float, str, bool)


def starting_house(name: str, units: Literal["us", "si"]) -> House:
    """The house to start from, under a name of one's own."""
    return House(
        units=units,
        basis=Basis(code="ibc-2021"),
        choices=Choices(
            system_reason="cripple walls with wood structural panels; replace if the house is braced otherwise",
            force_reason="the whole force for new buildings; the existing-building code may allow less",
        ),
        survey=Survey(
            name=name, site=_site(), building=_building(), underfloor=_underfloor(), foundation=_foundation()
        ),
    )


def _id(role: str) -> str:
    """An opaque id, the same in every starting file."""
    return "h" + hashlib.sha256(role.encode()).hexdigest()[:7]


def _example(value: T) -> Fact[T]:
    return Fact(value=value, state="estimated", how=EXAMPLE)


def _site() -> Site:
    return Site(
        address="replace with the address",
        hazard=Hazard(S_S=1.25, S_1=0.45, source=f"{EXAMPLE} (the hazard service, for this address)"),
        soil=Soil(kind=_example("sand")),
        slope_rise_per_run=_example(0.05),
        snow_psf=_example(20.0),
    )


# ---- The house above ------------------------------------------------------------------------------------------------

_CORNERS: Final = {"a": (0.0, 0.0), "b": (LENGTH_IN, 0.0), "c": (LENGTH_IN, WIDTH_IN), "d": (0.0, WIDTH_IN)}
_LAYERS: Final = {
    "roof": ("roof: asphalt shingles", "skip sheathing", "2x4 rafters at 24 in."),
    "ceiling": ("ceiling: plaster on wood lath", "2x4 ceiling joists at 16 in., with insulation"),
    "wall": ("drop or bevel siding", "wall: 2x4 studs, plastered one side"),
    "partition": ("wall: 2x4 studs, plastered two sides",),
    "floor": ("floor: hardwood 7/8 in.", "floor: subfloor 3/4 in.", "2x8 floor joists at 16 in."),
    "cripple wall": ("drop or bevel siding", "2x4 studs at 16 in., bare"),
}
_LINES: Final = (
    ("L1", "front", "a", "b"),
    ("L2", "right", "b", "c"),
    ("L3", "rear", "c", "d"),
    ("L4", "left", "d", "a"),
)
_STOREY: Final = _id("storey")


def _length_in(start: str, end: str) -> float:
    (x1, y1), (x2, y2) = _CORNERS[start], _CORNERS[end]
    return abs(x2 - x1) + abs(y2 - y1)


def _building() -> Building:
    assemblies = {
        _id(kind): Assembly(
            order=place, mark=kind, name=f"{kind.capitalize()}, as found", kind=kind,  # type: ignore[arg-type]
            layers=tuple(Layer(material=material) for material in materials), seen=EXAMPLE,
        )
        for place, (kind, materials) in enumerate(_LAYERS.items(), start=1)
    }  # fmt: skip
    storey = Storey(
        order=1, mark="1", name="Main floor", outline=tuple(_id(f"corner {c}") for c in _CORNERS), height_in=102.0,
        floor_z_in=2.0 + CRIPPLE_IN + 8.0 + 1.625, floor=_id("floor"), ceiling=_id("ceiling"), ceiling_span_deg=90.0,
    )  # fmt: skip
    return Building(
        year_built=_example(1915.0),
        datum="top of the foundation",
        corners={
            _id(f"corner {c}"): Corner(order=place, mark=c, x_in=x, y_in=y)
            for place, (c, (x, y)) in enumerate(_CORNERS.items(), start=1)
        },
        assemblies=assemblies,
        storeys={_STOREY: storey},
        walls={_id(f"wall {m}"): _wall(place, m, a, b) for place, (m, _, a, b) in enumerate(_LINES, start=1)},
        partitions={
            _id("partition P1"): Partition(
                order=1, mark="P1", storey=_STOREY, start=Point(x_in=0.0, y_in=144.0),
                end=Point(x_in=360.0, y_in=144.0), assembly=_id("partition"),
            )
        },
        roof={
            _id("roof part"): RoofPart(
                order=1, mark="R1", assembly=_id("roof"), slope_rise_per_run=0.5, storey=_STOREY, span_deg=90.0,
                outline=tuple(Point(x_in=x, y_in=y) for x, y in ((-18, -18), (378, -18), (378, 306), (-18, 306))),
            )
        },
    )  # fmt: skip


def _wall(order: int, mark: str, start: str, end: str) -> Wall:
    middle = _length_in(start, end) / 2
    opening = WallOpening(
        order=1, mark=f"E{order}.1", from_in=middle - 36, to_in=middle + 36, sill_in=30.0, head_in=82.0
    )
    return Wall(
        order=order, mark=f"E{order}", storey=_STOREY, start=_id(f"corner {start}"), end=_id(f"corner {end}"),
        assembly=_id("wall"), openings={_id(f"opening {mark}"): opening},
    )  # fmt: skip


# ---- Under the floor ------------------------------------------------------------------------------------------------


def _underfloor() -> Underfloor:
    bolts: dict[str, Bolt] = {}
    for mark, _, start, end in _LINES:
        length = _length_in(start, end)
        for station in (24.0, length / 2, length - 24.0):
            order = len(bolts) + 1
            bolts[_id(f"bolt {order}")] = _bolt(order, mark, station)
    girder = Girder(
        order=1, mark="G1", start=Point(x_in=0.0, y_in=144.0), end=Point(x_in=360.0, y_in=144.0),
        breadth_in=_example(4.0), depth_in=_example(6.0), bears_on_wall=_example("pocket"),
    )  # fmt: skip
    return Underfloor(
        joists={_id("joists"): _joists()},
        girders={_id("girder"): girder},
        posts={_id(f"post {n}"): _post(n, 72.0 * n) for n in (1, 2, 3, 4)},
        lines={_id(m): _line(place, *_LINES[place - 1]) for place, (m, _, _, _) in enumerate(_LINES, start=1)},
        segments={
            _id(f"segment {m}"): _segment(n, m, _length_in(a, b)) for n, (m, _, a, b) in enumerate(_LINES, start=1)
        },
        splices={_id(f"splice {m}"): _splice(n, m, _length_in(a, b)) for n, (m, _, a, b) in enumerate(_LINES, start=1)},
        sills={_id(f"sill {m}"): _sill(n, m, _length_in(a, b)) for n, (m, _, a, b) in enumerate(_LINES, start=1)},
        bolts=bolts,
        hatches={
            _id("hatch"): Hatch(
                order=1, mark="A1", at=Point(x_in=324.0, y_in=270.0), width_in=_example(24.0), height_in=_example(18.0)
            )
        },
        utilities={
            _id("heater"): Utility(
                order=1, mark="U1", at=Point(x_in=30.0, y_in=260.0), strapped=_example(False), note=EXAMPLE
            )
        },
    )


def _joists() -> JoistField:
    return JoistField(
        order=1, mark="J1", storey=_STOREY, outline=tuple(_id(f"corner {c}") for c in _CORNERS), direction_deg=90.0,
        breadth_in=_example(2.0), depth_in=_example(8.0), spacing_in=_example(16.0), span_in=_example(140.0),
        species=_example("Douglas fir-larch"), board_thickness_in=_example(0.875),
    )  # fmt: skip


def _post(number: int, x_in: float) -> Post:
    return Post(
        order=number, mark=f"PT{number}", at=Point(x_in=x_in, y_in=144.0), girder=_id("girder"), size_in=_example(4.0),
        height_in=_example(24.0), pad_side_in=_example(14.0), tied_top=_example(False), tied_bottom=_example(False),
    )  # fmt: skip


def _line(order: int, mark: str, name: str, start: str, end: str) -> Line:
    return Line(
        order=order, mark=mark, name=name, start=_id(f"corner {start}"), end=_id(f"corner {end}"), storey=_STOREY,
        position="perimeter", joists="across" if order % 2 else "parallel", rim="rim joist",
        floor_connection=FloorConnection(kind="toenails", nail="8d common", spacing_in=_example(16.0)),
        top_plate=TopPlate(thickness_in=_example(2.0), width_in=_example(4.0), species=_example("Douglas fir-larch")),
        above=_id(f"wall {mark}"),
    )  # fmt: skip


def _segment(order: int, line: str, length_in: float) -> Segment:
    return Segment(
        order=order, mark=f"W{order}", line=_id(line), from_in=0.0, to_in=length_in, height_in=_example(CRIPPLE_IN),
        stud=Stud(
            thickness_in=_example(2.0), depth_in=_example(4.0), spacing_in=_example(16.0),
            species=_example("Douglas fir-larch"),
        ),
        outside=Sheathing(
            material="horizontal lumber sheathing, 1x", nail="8d common", condition=_example("sound")
        ),
        assembly=_id("cripple wall"),
    )  # fmt: skip


def _sill(order: int, line: str, length_in: float) -> SillPiece:
    return SillPiece(
        order=order, mark=f"M{order}", line=_id(line), from_in=0.0, to_in=length_in, width_in=_example(6.0),
        thickness_in=_example(2.0), species=_example("Douglas fir-larch"), projects_outside_in=_example(0.0),
        projects_inside_in=_example(2.0), gap_in=_example(0.0), condition=_example("sound"), damp=_example(False),
    )  # fmt: skip


def _splice(order: int, line: str, length_in: float) -> PlateSplice:
    return PlateSplice(
        order=order, mark=f"X{order}", line=_id(line), station_in=length_in / 2 + 12.0, kind="lap", nail="16d common",
        nails_each_side=_example(3.0),
    )  # fmt: skip


def _bolt(order: int, line: str, station_in: float) -> Bolt:
    return Bolt(
        order=order, mark=f"B{order}", line=_id(line), station_in=station_in, kind="cast-in", diameter_in=_example(0.5),
        embedment_in=_example(7.0), edge_in=_example(3.0), hole_in=_example(0.5625), nut=_example("tight"),
        washer="cut", rust=_example("surface"),
    )  # fmt: skip


def _foundation() -> Foundation:
    return Foundation(
        segments={
            _id(f"foundation {m}"): FoundationSegment(
                order=n, mark=f"C{n}", line=_id(m), from_in=0.0, to_in=_length_in(a, b), material="poured concrete",
                top_width_in=_example(8.0), top_z_in=_example(0.0), above_inside_soil_in=_example(8.0),
                above_outside_soil_in=_example(8.0), footing_width_in=_example(12.0),
                footing_thickness_in=_example(6.0), depth_in=_example(12.0), condition=_example("sound"),
                lean_in_per_ft=_example(0.0),
            )
            for n, (m, _, a, b) in enumerate(_LINES, start=1)
        }
    )  # fmt: skip
