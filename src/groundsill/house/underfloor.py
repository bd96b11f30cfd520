"""Under the floor: braced lines with walls, plates, sills and bolts; joists, girders and posts; what is in the way.

Things on a line are placed by their station: the distance from the line's start along it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.house.building import Point
from groundsill.house.fact import Fact, about, unknown

__all__ = [
    "Bolt",
    "FloorConnection",
    "Girder",
    "Hatch",
    "Headroom",
    "JoistField",
    "Ledger",
    "Line",
    "Obstruction",
    "PlateSplice",
    "Post",
    "Segment",
    "Sheathing",
    "SillPiece",
    "Stud",
    "TopPlate",
    "Underfloor",
    "Utility",
    "VentOpening",
]  # fmt: skip

Boards = Literal[
    "straight boards",
    "diagonal boards",
    "double straight boards",
    "straight and finish boards",
    "diagonal and finish boards",
    "panel",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class JoistField:
    """A field of floor joists running one way, with the boards on it."""

    order: float = 0
    mark: str = ""
    storey: str = about("Storey whose floor it carries", refers="building.storeys")
    outline: tuple[str, ...] = about("Outline", refers="building.corners")
    direction_deg: float = about("Direction of the joists", unit="deg", help="0 along x, 90 along y", least=0, most=360)
    breadth_in: Fact[float] = about("Joist breadth", unit="in", least=0.75, most=8, factory=unknown)
    depth_in: Fact[float] = about("Joist depth", unit="in", least=3, most=16, factory=unknown)
    spacing_in: Fact[float] = about("Joist spacing", unit="in", least=8, most=48, factory=unknown)
    span_in: Fact[float] = about("Clear span", unit="in", least=12, most=360, factory=unknown)
    lap_in: Fact[float] = about("Lap over the girder", unit="in", least=0, most=60, factory=unknown)
    bearing_in: Fact[float] = about("Bearing on the plate", unit="in", least=0, most=12, factory=unknown)
    species: Fact[str] = about("Species", help="its row of the wood table: 'Douglas fir-larch'", factory=unknown)
    boards: Boards = about("Floor boards", default="straight boards")
    board_thickness_in: Fact[float] = about("Board thickness", unit="in", least=0.25, most=3, factory=unknown)
    panel: str = about(
        "Floor of panels: grade, thickness and nail",
        help="a row of the tables of panel floors: '15/32, 8d'",
        default="",
    )
    panel_boundary_in: Fact[float] = about(
        "Floor of panels: nail spacing over the walls below", unit="in", least=1, most=24, factory=unknown
    )
    panel_edge_in: Fact[float] = about(
        "Floor of panels: nail spacing at the other edges on joists", unit="in", least=1, most=24, factory=unknown
    )
    panel_blocked: Fact[bool] = about("Floor of panels: every edge on a joist or blocking", factory=unknown)
    panel_joints: Literal["not seen", "staggered, across the joists", "otherwise"] = about(
        "Floor of panels: how the panels lie",
        help="staggered across the joists is case 1 for a force along the joists; not seen counts as the lesser",
        default="not seen",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Girder:
    """A girder under the joists."""

    order: float = 0
    mark: str = ""
    start: Point = about("Start")
    end: Point = about("End")
    breadth_in: Fact[float] = about("Breadth", unit="in", least=1.5, most=16, factory=unknown)
    depth_in: Fact[float] = about("Depth", unit="in", least=3, most=20, factory=unknown)
    species: str = about("Species", default="")
    bears_on_wall: Fact[str] = about(
        "How its ends bear on the foundation", choices=("pocket", "post", "none"), factory=unknown
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Post:
    """A post with its pad. Posts carry no earthquake force unless they are braced."""

    order: float = 0
    mark: str = ""
    at: Point = about("Centre")
    girder: str | None = about("Girder it holds up", refers="underfloor.girders", default=None)
    size_in: Fact[float] = about("Side of the post", unit="in", least=2, most=24, factory=unknown)
    height_in: Fact[float] = about("Height", unit="in", least=0, most=240, factory=unknown)
    pad: Literal["concrete", "brick", "stone", "wood on soil", "none"] = "concrete"
    pad_side_in: Fact[float] = about("Side of the pad", unit="in", least=2, most=72, factory=unknown)
    tied_top: Fact[bool] = about("Tied to the girder", factory=unknown)
    tied_bottom: Fact[bool] = about("Tied to the pad", factory=unknown)


@dataclass(frozen=True, slots=True, kw_only=True)
class FloorConnection:
    """How the floor is held to the top plate of a line (or to the sill, where there is no cripple wall)."""

    kind: Literal["toenails", "clips", "nailed to the studs", "none", "not seen"] = "not seen"
    nail: str = about("Nail", help="8d common", default="")
    nails_each: Fact[float] = about(
        "Nails in each joist, into the stud beside it (balloon framing)", least=0, most=20, factory=unknown
    )
    spacing_in: Fact[float] = about("Spacing of the nails along the line", unit="in", least=1, most=96, factory=unknown)
    capacity_lb: Fact[float] = about(
        "Capacity of one clip by its report", unit="lb", least=0, most=10000, factory=unknown
    )
    report: str = about("Report number of the clip", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class TopPlate:
    """The top plate of a line."""

    layers: int = about("How many plates", least=0, most=3, default=1)
    thickness_in: Fact[float] = about("Thickness of one", unit="in", least=0.75, most=6, factory=unknown)
    width_in: Fact[float] = about("Width", unit="in", least=1.5, most=14, factory=unknown)
    species: Fact[str] = about("Species", help="its row of the wood table: 'Douglas fir-larch'", factory=unknown)
    damp: Fact[bool] = about("Over 19 % moisture", measure="moisture meter, pins along the grain", factory=unknown)


@dataclass(frozen=True, slots=True, kw_only=True)
class PlateSplice:
    """A place where the top plate is cut or lapped."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    station_in: float = about("Station", unit="in", least=0, most=6000)
    kind: Literal["butt", "lap", "strap", "cut"] = "butt"
    nail: str = about("Nail", default="")
    nails_each_side: Fact[float] = about("Nails each side", least=0, most=100, factory=unknown)


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A braced line under the floor, perimeter or interior, in any direction."""

    order: float = 0
    mark: str = ""
    name: str = about("Name", help="front, rear, under the hall wall", default="")
    start: str = about("Start", refers="building.corners")
    end: str = about("End", refers="building.corners")
    storey: str = about("Storey whose floor it holds up", refers="building.storeys")
    position: Literal["perimeter", "interior"] = about("Position")
    framing: Literal["platform", "balloon", "ledger", "not seen"] = about("Framing", default="platform")
    relied_on: bool | None = about(
        "Relied on", help="left out: perimeter lines on a continuous foundation are relied on", default=None
    )
    relied_reason: str = about("Why it is, or is not, relied on", default="")
    joists: Literal["across", "parallel", "not seen"] = about("How the joists run to it", default="not seen")
    rim: Literal["rim joist", "blocking", "none", "not seen"] = about("Rim", default="not seen")
    floor_connection: FloorConnection = about("Floor to plate", factory=FloorConnection)
    top_plate: TopPlate = about("Top plate", factory=TopPlate)
    above: str | None = about("Wall that stands above it", refers="building.walls", default=None)
    diaphragm_width_in: float | None = about(
        "Depth of floor it draws from, where it differs from its length", unit="in", least=12, most=6000, default=None
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Stud:
    """The studs of a wall segment, in their actual sawn size."""

    thickness_in: Fact[float] = about("Thickness", unit="in", least=1, most=8, factory=unknown)
    depth_in: Fact[float] = about("Depth", unit="in", least=1, most=12, factory=unknown)
    spacing_in: Fact[float] = about("Spacing", unit="in", least=8, most=48, factory=unknown)
    species: Fact[str] = about("Species", help="its row of the wood table: 'Douglas fir-larch'", factory=unknown)
    grade: Literal["", "Select structural", "No. 1", "No. 2", "No. 3", "Stud"] = about(
        "Grade, where a stamp or a grader gave it", help="left out: the lowest of the table is taken", default=""
    )
    at_ends: int = about("How many stand nailed together at each end of the wall", least=1, most=6, default=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheathing:
    """What is nailed to one face of a wall segment."""

    material: str = about("Material", help="a row of the sheathing tables, in plain words, or 'none'", default="none")
    nail: str = about("Nail", default="")
    edge_spacing_in: Fact[float] = about("Nail spacing at panel edges", unit="in", least=1, most=24, factory=unknown)
    condition: Fact[str] = about("Condition", choices=("sound", "weathered", "decayed"), factory=unknown)


@dataclass(frozen=True, slots=True, kw_only=True)
class Segment:
    """A part of a line with one height and one build: a cripple wall, joists on the sill, or posts."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    kind: Literal["cripple wall", "joists on sill", "posts", "open"] = "cripple wall"
    height_in: Fact[float] = about(
        "Height, sill top to the top of the plate", unit="in", least=0, most=240, factory=unknown
    )
    stud: Stud = about("Studs", factory=Stud)
    outside: Sheathing = about("Outside face", factory=Sheathing)
    inside: Sheathing = about("Inside face", factory=Sheathing)
    assembly: str | None = about("Wall assembly, for its weight", refers="building.assemblies", default=None)
    let_in_brace: Fact[bool] = about("Let-in brace", factory=unknown)


@dataclass(frozen=True, slots=True, kw_only=True)
class SillPiece:
    """One piece of sill. A cut, a step or a butt joint ends it."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    width_in: Fact[float] = about("Width", unit="in", least=1, most=16, factory=unknown)
    thickness_in: Fact[float] = about("Thickness", unit="in", least=0.75, most=14, factory=unknown)
    species: Fact[str] = about("Species", help="its row of the wood table: 'Douglas fir-larch'", factory=unknown)
    projects_outside_in: Fact[float] = about(
        "How far it stands out beyond the studs, outside", unit="in", least=-6, most=10, factory=unknown
    )
    projects_inside_in: Fact[float] = about(
        "How far it stands out beyond the studs, inside", unit="in", least=-6, most=10, factory=unknown
    )
    bearing_in: Fact[float] = about(
        "How much of its width stands on the foundation",
        unit="in",
        measure="from the face of the stem in to the sill's edge, both sides, where it is least",
        least=0,
        most=16,
        factory=unknown,
    )
    gap_in: Fact[float] = about("Gap or shim under it", unit="in", least=0, most=4, factory=unknown)
    condition: Fact[str] = about("Condition", choices=("sound", "soft", "decayed"), factory=unknown)
    soft_depth_in: Fact[float] = about(
        "How deep its underside is soft, where it is",
        unit="in",
        measure="awl or drill, at every bolt",
        least=0,
        most=14,
        factory=unknown,
    )
    damp: Fact[bool] = about("Over 19 % moisture", measure="moisture meter, pins along the grain", factory=unknown)
    protected: Fact[bool] = about(
        "Treated against rot, or of naturally durable heartwood",
        measure="a stamp or the green of the cut; redwood and cedar only where the heart is seen",
        factory=unknown,
    )
    cast_in: bool = about("Cast into the concrete", default=False)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bolt:
    """An anchor through the sill."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    station_in: float = about("Station", unit="in", least=0, most=6000)
    kind: Literal["cast-in", "adhesive", "expansion", "screw", "not seen"] = "not seen"
    diameter_in: Fact[float] = about("Diameter", unit="in", least=0.25, most=1.5, factory=unknown)
    embedment_in: Fact[float] = about("Embedment", unit="in", least=0, most=36, factory=unknown)
    edge_in: Fact[float] = about(
        "Centre to the nearest face of the concrete", unit="in", least=0, most=24, factory=unknown
    )
    hole_in: Fact[float] = about("Hole in the sill", unit="in", least=0.25, most=4, factory=unknown)
    nut: Fact[str] = about("Nut", choices=("tight", "loose", "none"), factory=unknown)
    washer: Literal["none", "cut", "plate", "not seen"] = "not seen"
    rust: Fact[str] = about("Rust", choices=("none", "surface", "heavy"), factory=unknown)
    test_lb: Fact[float] = about("Load held in a test", unit="lb", least=0, most=50000, factory=unknown)
    hook_in: Fact[float] = about(
        "Hook at its lower end, from the inside of the shaft to the tip",
        unit="in",
        help="an L or J bolt: pulled up it holds by its hook",
        measure="where the concrete is broken open beside one, or one like it was drawn",
        least=0.5,
        most=12,
        factory=unknown,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class VentOpening:
    """An opening in a line: vent, access, door."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    kind: Literal["vent", "access", "door", "window", "gap"] = "vent"
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    bottom_in: float = about("Bottom above the sill", unit="in", least=-60, most=240, default=0.0)
    top_in: float = about("Top above the sill", unit="in", least=-60, most=240)


@dataclass(frozen=True, slots=True, kw_only=True)
class Obstruction:
    """Something in the way of work on a line: pipe, duct, wire, tree, stored goods, deck ledger."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    kind: Literal["pipe", "gas pipe", "drain", "duct", "wiring", "tree", "slab", "stairs", "deck", "tank", "other"] = (
        "other"
    )
    side: Literal["inside", "outside", "through"] = "inside"
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    bottom_in: float = about("Bottom above the sill", unit="in", least=-120, most=240, default=0.0)
    top_in: float = about("Top above the sill", unit="in", least=-120, most=240, default=0.0)
    can_move: Fact[bool] = about("Can be moved", factory=unknown)
    note: str = about("Note", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Headroom:
    """How much room there is to work at a stretch of a line."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    clear_in: Fact[float] = about("Clear height, soil to joists", unit="in", least=0, most=240, factory=unknown)
    drilling_in: Fact[float] = about("Height above the sill to drill in", unit="in", least=0, most=240, factory=unknown)


@dataclass(frozen=True, slots=True, kw_only=True)
class Hatch:
    """A way in."""

    order: float = 0
    mark: str = ""
    at: Point = about("Centre")
    width_in: Fact[float] = about("Width", unit="in", least=6, most=96, factory=unknown)
    height_in: Fact[float] = about("Height", unit="in", least=6, most=96, factory=unknown)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ledger:
    """A ledger that joists hang on (balloon framing, porches, later additions)."""

    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    depth_in: Fact[float] = about("Depth", unit="in", least=1, most=16, factory=unknown)
    fastening: str = about("How it is fastened", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Utility:
    """A water heater, gas line or furnace that an earthquake would find."""

    order: float = 0
    mark: str = ""
    kind: Literal["water heater", "gas line", "gas meter", "furnace", "electric panel", "water main"] = "water heater"
    at: Point = about("Place")
    strapped: Fact[bool] = about("Strapped or flexible", factory=unknown)
    note: str = about("Note", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Underfloor:
    """Everything between the floor boards and the top of the foundation."""

    joists: dict[str, JoistField] = about("Joist fields", factory=dict)
    girders: dict[str, Girder] = about("Girders", factory=dict)
    posts: dict[str, Post] = about("Posts", factory=dict)
    lines: dict[str, Line] = about("Lines", factory=dict)
    segments: dict[str, Segment] = about("Wall segments", factory=dict)
    splices: dict[str, PlateSplice] = about("Plate splices", factory=dict)
    sills: dict[str, SillPiece] = about("Sill pieces", factory=dict)
    bolts: dict[str, Bolt] = about("Bolts", factory=dict)
    openings: dict[str, VentOpening] = about("Openings", factory=dict)
    obstructions: dict[str, Obstruction] = about("Obstructions", factory=dict)
    headroom: dict[str, Headroom] = about("Headroom", factory=dict)
    hatches: dict[str, Hatch] = about("Access", factory=dict)
    ledgers: dict[str, Ledger] = about("Ledgers", factory=dict)
    utilities: dict[str, Utility] = about("Utilities", factory=dict)
