"""Pieces of work: what is laid on the survey to make a design. Plain frozen data, each with what it touches."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from groundsill.house.building import Point
from groundsill.house.fact import about
from groundsill.work.inner import InnerFoundationPiece

__all__ = [
    "SPLICE_REACH_IN", "Adhesive", "BoltPiece", "ConcretePiece", "DowelPiece", "DrainagePiece", "Hardware",
    "HoldDownPiece", "InnerFoundationPiece", "PanelPiece", "Piece", "SideplatePiece", "SillBlockingPiece", "SoilPiece",
    "SplicePiece", "StrapPiece", "TiePiece",
]  # fmt: skip

SPLICE_REACH_IN: Final = 18.0  # a splice farther than this from a joint does not tie it; chosen here


@dataclass(frozen=True, slots=True, kw_only=True)
class Hardware:
    """A clip or strap of plain sheet steel with its nails: counted by those and by its own section, with no report."""

    steel: Literal["A653 SS Grade 33", "A653 SS Grade 40", "A653 SS Grade 50, class 1", "A36"] = about(
        "Steel", default="A653 SS Grade 33"
    )
    thickness_in: float = about("Thickness of the bare steel", unit="in", least=0.03, most=0.249)
    width_in: float = about("Width across the force (clip: along the wall)", unit="in", least=0.5, most=24)
    nail: str = about("Nail", help="10d common", default="10d common")
    nails: int = about("Nails into each of the two pieces it joins", least=1, most=60)
    across: int = about("Nail holes across it at one section", least=1, most=8, default=1)
    spacing_in: float = about("Clip: spacing of the nails along the wall", unit="in", least=0.4, most=12, default=1.0)
    lever_in: float = about(
        "Clip: from a row of nails to where the force passes it",
        unit="in",
        help="a flat clip: from row to row; an angle: from the farther row to the bend",
        least=0,
        most=12,
        default=1.5,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Adhesive:
    """The adhesive of an anchor: its bond by its own report, or what the standard's minimum bond asks to be known."""

    report: str = about("Evaluation report of the adhesive, by ACI 355.4", default="")
    category: int | None = about(
        "Category in that report", help="1, 2 or 3; left out: the lowest, 3", least=1, most=3, default=None
    )
    cracked_psi: float | None = about(
        "Bond stress in cracked concrete",
        unit="psi",
        help="from its report, as it stands for earthquake; left out: the standard's minimum",
        least=50,
        most=5000,
        default=None,
    )
    uncracked_psi: float | None = about(
        "Bond stress in uncracked concrete",
        unit="psi",
        help="from its report; it sets how far the bond reaches",
        least=50,
        most=5000,
        default=None,
    )
    place: Literal["outdoor", "indoor"] = about(
        "Where the anchor stands", help="a crawlspace counts as outdoor: damp", default="outdoor"
    )
    hole: Literal["", "rotary impact or rock drill", "core drill"] = about("How the hole is made", default="")
    warm: bool | None = about("Concrete at 50 °F or more when it is set", default=None)
    least_edge_in: float | None = about(
        "Least edge distance, from its report", unit="in", least=0.5, most=24, default=None
    )
    least_spacing_in: float | None = about(
        "Least spacing, from its report", unit="in", least=0.5, most=48, default=None
    )


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
    made_of: Literal["plywood", "OSB"] = about("Made of", help="OSB is stiffer by the standard", default="plywood")
    edge_spacing_in: float = about("Edge nail spacing", unit="in", least=2, most=6)
    over: Literal["the studs", "gypsum of 1/2 in.", "gypsum of 5/8 in.", "other sheathing"] = about(
        "What it goes over",
        help="gypsum board that stays where it is has a table of its own, with longer nails; over boards or plaster "
        "there is none",
        default="the studs",
    )
    holes_in: float | None = about(
        "Round holes for air in its stud spaces, diameter", unit="in", least=0.5, most=12, default=None
    )
    holes_clear_in: float | None = about(
        "From such a hole's rim to the plates and the panel's nailed edges, at least",
        unit="in",
        least=0,
        most=48,
        default=None,
    )
    bottom: Literal["sill", "blocking on sill"] = about("What the bottom edge is nailed to", default="sill")
    around_openings: Literal["each part for itself", "perforated wall", "perforated wall, bare above and below"] = (
        about(
            "How it counts where openings are in it",
            help="a perforated wall is held down at its two ends alone; over and under its openings it is sheathed and "
            "nailed alike, or bare",
            default="each part for itself",
        )
    )
    end_post_in: float | None = about(
        "New end posts, width along the wall",
        unit="in",
        help="left out: the studs that stand there; in a perforated wall they stand beside its openings too",
        least=1,
        most=12,
        default=None,
    )
    end_post_depth_in: float | None = about(
        "New end posts, depth across the wall", unit="in", least=1, most=12, default=None
    )
    end_post_species: str = about("New end posts, species", default="")
    end_post_grade: Literal["", "Select structural", "No. 1", "No. 2", "No. 3", "Stud"] = about(
        "New end posts, grade", help="left out: the lowest of the table is taken", default=""
    )


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
    anchor: Literal["cast-in", "adhesive", "expansion", "grouted"] = about(
        "How it is set", help="grouted: in a wide hole in brick, filled round with grout", default="adhesive"
    )
    diameter_in: float = about("Diameter", unit="in", least=0.375, most=1)
    embedment_in: float = about("Embedment", unit="in", least=2, most=24)
    edge_in: float | None = about(
        "Centre to the nearest face of the concrete", unit="in", least=0.5, most=24, default=None
    )
    plate_washer: bool = about("Plate washer 3 x 3 x 0.229", default=True)
    to_sheathing_in: float | None = about(
        "Centre to the sheathed edge of the sill (or of the blocking on it)", unit="in", least=0, most=16, default=None
    )
    hole_in: float | None = about(
        "Hole in the masonry", unit="in", help="of a grouted bolt", least=0.375, most=4, default=None
    )
    report: str = about("Evaluation report of the anchor", default="")
    adhesive: Adhesive | None = about("Its adhesive", default=None)
    sill_hole_in: float | None = about(
        "Hole in the sill",
        unit="in",
        help="left out: 1/16 in. more than the bolt; filled with adhesive: the bolt's own diameter",
        least=0.25,
        most=2,
        default=None,
    )


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
    capacity_lb: float | None = about(
        "Allowable load of one, earthquake", unit="lb", help="from its evaluation report", least=10, most=10000,
        default=None,
    )  # fmt: skip
    report: str = about("Evaluation report", default="")
    made_of: Hardware | None = about("Generic clip, counted by its nails and steel", default=None)
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
    anchor: Literal["adhesive", "cast-in headed", "cast-in hooked"] = about(
        "Kind of its anchor",
        help="cast-in headed: in new concrete alone; cast-in hooked: an old bolt with a hook that was seen",
        default="adhesive",
    )
    adhesive: Adhesive | None = about("Adhesive of its anchor", default=None)
    anchor_head_in2: float | None = about(
        "Net bearing area of the anchor's head, or of its nut and plate", unit="in^2", least=0.1, most=100, default=None
    )
    anchor_hook_in: float | None = about(
        "Hook of the anchor, from the inside of the shaft to the tip", unit="in", least=0.5, most=12, default=None
    )
    anchor_stretch_in: float | None = about(
        "Length of the anchor's rod that is free to stretch", unit="in", least=0, most=60, default=None
    )
    anchor_braced: bool | None = about("That free length is kept from buckling when the load turns", default=None)
    most_lb: float | None = about(
        "Most that the hold-down can pull",
        unit="lb",
        help="the highest load of its tests, from its report",
        least=100,
        most=200000,
        default=None,
    )
    post_offset_in: float = about(
        "From the panel's end to the hold-down's centre line", unit="in", least=0, most=12, default=3.0
    )
    give_in: float | None = about(
        "How far it gives at its allowable tension", unit="in", help="from its evaluation report", least=0, most=1,
        default=None,
    )  # fmt: skip
    seat: Literal["inside of the end post", "in line with the end post"] = about(
        "Where it is fastened",
        help="on the inside face of the end post, or so that it pulls along the post's middle",
        default="inside of the end post",
    )
    from_post_in: float | None = about(
        "From the end post's face to the middle of its anchor",
        unit="in",
        help="from its evaluation report: it bends the post; left out, that is not checked",
        least=0,
        most=6,
        default=None,
    )
    bored_in: float | None = about(
        "Bored out of the end post where it is fastened, across the wall",
        unit="in",
        help="holes of its fullest row, with their clearance; 0 for nails, and screws without a lead hole",
        least=0,
        most=8,
        default=None,
    )
    shared_post: bool = about(
        "Its post is one that the panels on both sides are nailed to",
        help="then it holds down either of them; else only the panel that it stands in",
        default=False,
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
    capacity_lb: float | None = about("Allowable tension", unit="lb", least=50, most=50000, default=None)
    report: str = about("Evaluation report or working", default="")
    made_of: Hardware | None = about("Generic strap, counted by its nails and steel", default=None)
    give_in: float | None = about(
        "How far it gives at its allowable tension",
        unit="in",
        help="for bolts in weak concrete; left out: looked at as one piece and as cut",
        least=0.001,
        most=1,
        default=None,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class StrapPiece:
    """A flat strap used as a tie or a collector along a line."""

    kind: Literal["strap"] = "strap"
    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("From station", unit="in", least=0, most=6000)
    to_in: float = about("To station", unit="in", least=0, most=6000)
    beyond_in: float = about(
        "How far it runs on past the end of the line, fastened to the floor there",
        unit="in",
        help="a drag strap; it reaches the end of the line that it runs on from",
        least=0,
        most=600,
        default=0.0,
    )
    capacity_lb: float | None = about("Allowable tension", unit="lb", least=50, most=50000, default=None)
    report: str = about("Evaluation report or working", default="")
    made_of: Hardware | None = about("Generic strap, counted by its nails and steel", default=None)


Screws = Literal[
    "", "No. 8 screw", "No. 10 screw", "No. 12 screw", "No. 14 screw", "1/4 lag", "5/16 lag", "3/8 lag", "1/2 lag",
]  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class SideplatePiece:
    """A flat plate on the face of the stem and the side of the sill, where there is no height to drill from above.

    It counts by its evaluation report, or, as generic hardware, by its screws, its steel and its anchors.
    """

    kind: Literal["side plate"] = "side plate"
    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    station_in: float = about("Station of its middle", unit="in", least=0, most=6000)
    capacity_lb: float | None = about(
        "Allowable load parallel to the wall", unit="lb", help="from its evaluation report", least=50, most=10000,
        default=None,
    )  # fmt: skip
    from_top_in: float = about("Anchor centre below the top of the stem", unit="in", least=1, most=36)
    report: str = about("Evaluation report", default="")
    steel: Literal["A36", "A653 SS Grade 33"] = about("Steel", default="A36")
    thickness_in: float | None = about("Thickness of the plate", unit="in", least=0.03, most=0.5, default=None)
    width_in: float | None = about("Width of the plate along the wall", unit="in", least=1, most=36, default=None)
    screw: Screws = about("Screw into the side of the sill", default="")
    screw_length_in: float | None = about("Length of the screw", unit="in", least=0.75, most=12, default=None)
    screws: int = about("Screws, in one row along the sill", least=1, most=12, default=3)
    screw_spacing_in: float = about("Spacing of the screws", unit="in", least=0.5, most=12, default=2.0)
    screw_above_in: float | None = about(
        "Screws above the top of the stem", unit="in", least=0.25, most=12, default=None
    )
    packing_in: float = about(
        "Packing between plate and sill, where the sill stands back", unit="in", least=0, most=4, default=0.0
    )
    anchor: Literal["adhesive", "expansion", "screw", "grouted", "through-bolt", "embedded at 22.5 degrees"] = about(
        "Kind of its anchors", help="the last three are for brick", default="adhesive"
    )
    anchor_diameter_in: float | None = about("Diameter of its anchors", unit="in", least=0.25, most=1, default=None)
    anchor_embedment_in: float | None = about("Embedment of its anchors", unit="in", least=1.5, most=24, default=None)
    anchors: int = about("Anchors, in one row along the wall", least=1, most=6, default=2)
    anchor_spacing_in: float = about("Spacing of the anchors", unit="in", least=1, most=24, default=4.0)
    anchor_hole_in: float | None = about(
        "Hole of its anchors in the masonry", unit="in", help="of a grouted anchor", least=0.25, most=4, default=None
    )
    anchor_plate_in2: float | None = about(
        "Steel plate of a through-bolt on the far side", unit="in^2", least=1, most=400, default=None
    )
    anchor_report: str = about("Evaluation report of the anchors", default="")
    adhesive: Adhesive | None = about("Their adhesive", default=None)
    couple: Literal["each group in full", "anchors", "screws"] = about(
        "What holds the couple of the two rows",
        help="the rows lie one above the other: what turns the plate is held by both in full, or by one alone",
        default="each group in full",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class ConcretePiece:
    """New concrete: a footing, a second foundation inside, a cap, a pier."""

    kind: Literal["concrete"] = "concrete"
    order: float = 0
    mark: str = ""
    purpose: Literal["replacement", "inner foundation", "cap", "bench pier", "footing"] = about(
        "What it is for",
        help="drawn, and counted by no check; a piece of kind 'inner foundation' is worked out",
        default="footing",
    )
    line: str | None = about("Line", refers="underfloor.lines", default=None)
    outline: tuple[Point, ...] = about("Outline in plan", factory=tuple)
    depth_in: float = about("Depth", unit="in", least=4, most=120)
    strength_psi: float = about("Specified strength", unit="psi", least=2000, most=8000, default=2500.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class DowelPiece:
    """Bars glued into the old concrete of a line, that join new concrete to it: a cap, a repaired stretch, a pier."""

    kind: Literal["dowels"] = "dowels"
    order: float = 0
    mark: str = ""
    line: str = about("Line", refers="underfloor.lines")
    from_in: float = about("Station of the first", unit="in", least=0, most=6000)
    to_in: float = about("Station of the last", unit="in", least=0, most=6000)
    count: int = about("How many, in one row", least=1, most=200)
    bar: Literal["#3", "#4", "#5", "#6"] = about("Bar, of Grade 60", default="#4")
    into: Literal["top", "side"] = about("Glued into the top of the old concrete, or into its side", default="top")
    embedment_in: float = about("Embedment in the old concrete", unit="in", least=2, most=36)
    edge_in: float | None = about(
        "Bar to the nearer face",
        unit="in",
        help="in the top: to the side face, left out where it stands in the middle; in the side: to the top",
        least=0.5,
        most=48,
        default=None,
    )
    push: Literal["along the face", "toward the face"] = about(
        "Way that the force pushes them, by that face", default="along the face"
    )
    shear_lb: float = about("Shear on one, strength level", unit="lb", least=0, most=20000, default=0.0)
    pull_lb: float = about("Pull on one, strength level", unit="lb", least=0, most=20000, default=0.0)
    with_overstrength: bool = about(
        "Those forces hold overstrength, or are no earthquake's",
        help="otherwise, from seismic design category C up, they are taken times the overstrength factor of the system",
        default=False,
    )
    adhesive: Adhesive | None = about("Their adhesive", default=None)


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
    | InnerFoundationPiece | ConcretePiece | DowelPiece | DrainagePiece | SoilPiece
)  # fmt: skip
