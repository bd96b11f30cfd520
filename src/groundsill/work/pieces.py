"""Pieces of work: what is laid on the survey to make a design. Plain frozen data, each with what it touches."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from groundsill.house.building import Point
from groundsill.house.fact import about

__all__ = [
    "SPLICE_REACH_IN",
    "BoltPiece",
    "ConcretePiece",
    "DrainagePiece",
    "HoldDownPiece",
    "PanelPiece",
    "Piece",
    "SideplatePiece",
    "SillBlockingPiece",
    "SoilPiece",
    "SplicePiece",
    "StrapPiece",
    "TiePiece",
]  # fmt: skip

SPLICE_REACH_IN: Final = 18.0  # a splice farther than this from a joint does not tie it; chosen here


@dataclass(frozen=True, slots=True, kw_only=True)
class PanelPiece:
    """Wood structural panel nailed to the studs of one wall segment."""

    kind: Literal["panel"] = "panel"
    order: float = 0
    mark: str = ""
    segment: str = about("Wall segment", refers="underfloor.segments")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    face: Literal["inside", "outside"] = "inside"
    panel: str = about("Panel and nail", help="a row of the panel table: '15/32 sheathing, 8d'")
    edge_spacing_in: float = about("Edge nail spacing", unit="in", least=2, most=6)
    bottom: Literal["sill", "blocking on sill"] = about("What the bottom edge is nailed to", default="sill")


@dataclass(frozen=True, slots=True, kw_only=True)
class SillBlockingPiece:
    """Blocking fastened on a sill that stands out past the studs, to take a panel's bottom edge."""

    kind: Literal["sill blocking"] = "sill blocking"
    order: float = 0
    mark: str = ""
    segment: str = about("Wall segment", refers="underfloor.segments")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    thickness_in: float = about("Thickness", unit="in", least=1, most=4, default=1.5)
    nail: str = about("Nail", default="10d common")
    spacing_in: float = about("Nail spacing along the sill", unit="in", least=1, most=24, default=4.0)
    rows: int = about("Rows of nails", least=1, most=3, default=1)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltPiece:
    """A new anchor bolt through the sill, with a plate washer."""

    kind: Literal["bolt"] = "bolt"
    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    station_in: float = about("Station", unit="in", least=0, most=6000)
    anchor: Literal["cast-in", "adhesive", "expansion"] = "adhesive"
    diameter_in: float = about("Diameter", unit="in", least=0.375, most=1)
    embedment_in: float = about("Embedment", unit="in", least=2, most=24)
    edge_in: float | None = about(
        "Centre to the nearest face of the concrete", unit="in", least=0.5, most=24, default=None
    )
    plate_washer: bool = about("Plate washer 3 x 3 x 0.229", default=True)
    to_sheathing_in: float | None = about(
        "Centre to the sheathed edge of the sill (or of the blocking on it)", unit="in", least=0, most=16, default=None
    )
    report: str = about("Evaluation report of the anchor", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class TiePiece:
    """Clips from the rim or blocking to the top plate, over a stretch of line."""

    kind: Literal["tie"] = "tie"
    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    count: int = about("How many clips", least=1, most=500)
    capacity_lb: float = about(
        "Allowable load of one, earthquake", unit="lb", help="from its evaluation report", least=10, most=10000
    )
    report: str = about("Evaluation report", default="")
    adds_rim: bool = about("Comes with new blocking between the joists", default=False)
    slip_lb_in: float | None = about(
        "Load at which one slips by an inch, from its load/slip curve",
        unit="lb/in",
        help="asked where joists stand on the sill and the floor is taken as rigid too",
        least=100,
        most=1000000,
        default=None,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldDownPiece:
    """A hold-down at a panel's end."""

    kind: Literal["hold-down"] = "hold-down"
    order: float = 0
    mark: str = ""
    segment: str = about("Wall segment", refers="underfloor.segments")
    station_in: float = about("Station", unit="in", least=0, most=6000)
    capacity_lb: float = about("Allowable tension", unit="lb", least=100, most=50000)
    report: str = about("Evaluation report", default="")
    anchor_diameter_in: float = about("Anchor diameter", unit="in", least=0.375, most=1.5, default=0.625)
    anchor_embedment_in: float = about("Anchor embedment", unit="in", least=2, most=36, default=10.0)
    anchor_edge_in: float | None = about(
        "Anchor's centre to the nearest face of the concrete", unit="in", least=0.5, most=24, default=None
    )
    post_offset_in: float = about(
        "From the panel's end to the hold-down's centre line", unit="in", least=0, most=12, default=3.0
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class SplicePiece:
    """Nails or a strap across a joint of the top plate or the sill."""

    kind: Literal["splice"] = "splice"
    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    station_in: float = about("Station", unit="in", least=0, most=6000)
    member: Literal["top plate", "sill"] = "top plate"
    capacity_lb: float = about("Allowable tension", unit="lb", least=50, most=50000)
    report: str = about("Evaluation report or working", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class StrapPiece:
    """A flat strap used as a tie or a collector along a line."""

    kind: Literal["strap"] = "strap"
    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    capacity_lb: float = about("Allowable tension", unit="lb", least=50, most=50000)
    report: str = about("Evaluation report or working", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class SideplatePiece:
    """A plate on the face of the stem and the side of the sill, where there is no height to drill from above."""

    kind: Literal["side plate"] = "side plate"
    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    station_in: float = about("Station", unit="in", least=0, most=6000)
    capacity_lb: float = about("Allowable load parallel to the wall", unit="lb", least=50, most=10000)
    from_top_in: float = about("Anchor centre below the top of the stem", unit="in", least=1, most=36)
    report: str = about("Evaluation report", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class ConcretePiece:
    """New concrete: a footing, a second foundation inside, a cap, a pier."""

    kind: Literal["concrete"] = "concrete"
    order: float = 0
    mark: str = ""
    purpose: Literal["replacement", "inner foundation", "cap", "bench pier", "footing"] = "footing"
    line: str | None = about("Line", refers="underfloor.lines", default=None)
    outline: tuple[Point, ...] = about("Outline in plan", factory=tuple)
    depth_in: float = about("Depth", unit="in", least=4, most=120)
    strength_psi: float = about("Specified strength", unit="psi", least=2000, most=8000, default=2500.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class DrainagePiece:
    """Gutters, leaders, drains, vapour cover, vents."""

    kind: Literal["drainage"] = "drainage"
    order: float = 0
    mark: str = ""
    what: Literal["gutter", "leader extension", "drain line", "vapour cover", "vent", "sump"] = "leader extension"
    path: tuple[Point, ...] = about("Path in plan", factory=tuple)
    note: str = about("Note", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class SoilPiece:
    """Lowered grade, retained air gap, regraded slope."""

    kind: Literal["soil"] = "soil"
    order: float = 0
    mark: str = ""
    what: Literal["lower grade", "retained air gap", "regrade"] = "lower grade"
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    depth_in: float = about("How deep", unit="in", least=1, most=60)


Piece = (
    PanelPiece | SillBlockingPiece | BoltPiece | TiePiece | HoldDownPiece | SplicePiece | StrapPiece | SideplatePiece
    | ConcretePiece | DrainagePiece | SoilPiece
)  # fmt: skip
