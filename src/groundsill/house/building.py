"""The house above its floor: outlines, walls, roof, assemblies of older materials, chimneys."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.house.fact import Fact, about, unknown

__all__ = [
    "Assembly",
    "Building",
    "Chimney",
    "Corner",
    "Layer",
    "Partition",
    "Point",
    "RoofPart",
    "Storey",
    "Wall",
    "WallOpening",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """A place on the plan, in the house's own plan system."""

    x_in: float = about("x", unit="in", least=-12000, most=12000)
    y_in: float = about("y", unit="in", least=-12000, most=12000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """A shared point that outlines and lines refer to, so that moving it moves all of them."""

    order: float = 0
    mark: str = ""
    x_in: float = about("x", unit="in", least=-12000, most=12000)
    y_in: float = about("y", unit="in", least=-12000, most=12000)


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """One layer of an assembly: a row of the weight tables, or a weight of one's own."""

    material: str = about("Material", help="a row of the weight tables, or any words with psf given")
    psf: Fact[float] = about("Weight", unit="psf", least=0, most=300, factory=unknown)
    times: float = about("How many of them", help="2 for two layers of shingles", least=0, most=20, default=1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Assembly:
    """What a roof, ceiling, wall, partition or floor is made of, layer by layer."""

    order: float = 0
    mark: str = ""
    name: str = about("Name")
    kind: Literal["roof", "ceiling", "wall", "partition", "floor", "cripple wall"] = about("Kind")
    layers: tuple[Layer, ...] = about("Layers", factory=tuple)
    seen: str = about("How it is known", help="drilled, seen in the attic, assumed", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Storey:
    """One storey: its outline at the floor, its floor and ceiling. Storeys may differ in outline."""

    order: float = 0
    mark: str = ""
    name: str = about("Name", default="")
    outline: tuple[str, ...] = about("Outline", help="corners in order round the plan", refers="building.corners")
    floor_z_in: float = about("Top of floor above the height datum", unit="in", least=-2400, most=2400)
    height_in: float = about("Floor to ceiling or to the next floor", unit="in", least=48, most=240)
    floor: str = about("Floor assembly", refers="building.assemblies")
    ceiling: str | None = about("Ceiling assembly", refers="building.assemblies", default=None)
    ceiling_span_deg: float = about("Direction of the ceiling joists", unit="deg", least=0, most=360, default=0.0)
    live_psf: float = about("Floor live load", unit="psf", least=0, most=300, default=40.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class WallOpening:
    """A window or door in a wall of the house above."""

    order: float = 0
    mark: str = ""
    kind: Literal["window", "door", "passage"] = "window"
    from_in: float = about("From the wall's start", unit="in", least=0, most=6000)
    to_in: float = about("To", unit="in", least=0, most=6000)
    sill_in: float = about("Height of its sill above the floor", unit="in", least=0, most=240, default=0.0)
    head_in: float = about("Height of its head above the floor", unit="in", least=0, most=300)


@dataclass(frozen=True, slots=True, kw_only=True)
class Wall:
    """A wall of a storey, from corner to corner."""

    order: float = 0
    mark: str = ""
    storey: str = about("Storey", refers="building.storeys")
    start: str = about("Start", refers="building.corners")
    end: str = about("End", refers="building.corners")
    assembly: str = about("Assembly", refers="building.assemblies")
    height_in: float | None = about(
        "Height where it differs from the storey's (mean height of a gable)", unit="in", least=0, most=400, default=None
    )
    openings: dict[str, WallOpening] = about("Openings", factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Partition:
    """An inside wall, measured: its weight is often above the code's minimum in an old plaster house."""

    order: float = 0
    mark: str = ""
    storey: str = about("Storey", refers="building.storeys")
    start: Point = about("Start")
    end: Point = about("End")
    assembly: str = about("Assembly", refers="building.assemblies")
    height_in: float | None = about(
        "Height where it differs from the storey's", unit="in", least=0, most=400, default=None
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class RoofPart:
    """A part of the roof seen in plan, eaves included."""

    order: float = 0
    mark: str = ""
    outline: tuple[Point, ...] = about("Outline in plan, eaves included")
    assembly: str = about("Roof assembly", refers="building.assemblies")
    slope_rise_per_run: float = about("Slope", help="rise over run: 6 in 12 is 0.5", least=0, most=3)
    span_deg: float = about("Direction of the rafters", unit="deg", least=0, most=360, default=0.0)
    storey: str = about("Storey whose walls carry it", refers="building.storeys")
    shape: Literal["one slope", "gable", "hip"] | None = about(
        "Shape",
        help="gable and hip: the outline covers all slopes, the ridge across the rafters; for wind, which takes the "
        "higher, one slope, where it is left out",
        default=None,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Chimney:
    """A masonry chimney. One that is tied to the framing loads the house; one that stands free does not."""

    order: float = 0
    mark: str = ""
    at: Point = about("Centre")
    x_size_in: float = about("Size along x", unit="in", least=4, most=240)
    y_size_in: float = about("Size along y", unit="in", least=4, most=240)
    height_in: float = about("Height above its base", unit="in", least=12, most=900)
    above_roof_in: float = about("Height above the roof", unit="in", least=0, most=300, default=0.0)
    pcf: Fact[float] = about("Unit weight over its outside volume", unit="pcf", least=30, most=170, factory=unknown)
    tied: Fact[bool] = about("Tied to the framing", help="straps or framing tight against it", factory=unknown)
    base: Literal["own footing", "floor", "foundation wall"] = "own footing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Building:
    """The house above its foundation."""

    year_built: Fact[float] = about("Year built", least=1700, most=2100, factory=unknown)
    families: int = about("Dwellings in the house", least=1, most=50, default=1)
    keep_character: Fact[bool] = about(
        "The owner wishes to keep the look of the old foundation",
        help="leaves out remedies that take the old wall away",
        measure="ask the owner; ask the town whether it is listed",
        factory=unknown,
    )
    datum: str = about("Height datum", help="what height 0 is", default="top of the foundation at its lowest corner")
    corners: dict[str, Corner] = about("Corners", factory=dict)
    assemblies: dict[str, Assembly] = about("Assemblies", factory=dict)
    storeys: dict[str, Storey] = about("Storeys", factory=dict)
    walls: dict[str, Wall] = about("Walls", factory=dict)
    partitions: dict[str, Partition] = about("Partitions", factory=dict)
    roof: dict[str, RoofPart] = about("Roof", factory=dict)
    chimneys: dict[str, Chimney] = about("Chimneys", factory=dict)
