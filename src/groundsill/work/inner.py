"""A new foundation inside the old, and the line that it makes: footing, sill, cripple wall, plate.

The old foundation stays where it is, undisturbed. The piece says where the new strip runs, how it is made and barred,
what wall stands on it and which old lines it relieves. Panels, bolts, hold-downs, clips and straps are laid on the new
line as on any other: it has the piece's own id, its one wall segment that id with ``-wall``.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Final, Literal

from groundsill.house.building import Assembly, Corner, Layer, Point
from groundsill.house.fact import Fact, about, measured, unknown
from groundsill.house.foundation import FoundationSegment
from groundsill.house.plan import distance_in
from groundsill.house.survey import Survey
from groundsill.house.underfloor import FloorConnection, Line, PlateSplice, Segment, SillPiece, Stud, TopPlate

if TYPE_CHECKING:
    from groundsill.work.pieces import Piece

__all__ = [
    "RESTS_ON_OLD", "Bar", "InnerFoundationPiece", "below_wall_in", "built", "height_in", "in_lengths", "inner_of",
    "length_in", "plain_words", "wall_id",
]  # fmt: skip

Bar = Literal["#3", "#4", "#5", "#6", "#7", "#8"]
RESTS_ON_OLD: Final = "vertical support still rests on the old foundation"
_PANEL_PSF: Final = 1.5  # 15/32 plywood with its nails; the studs' own row is in the weight tables


@dataclass(frozen=True, slots=True, kw_only=True)
class InnerFoundationPiece:
    """A reinforced strip footing with a stem, inside an old foundation, carrying its own cripple wall."""

    kind: Literal["inner foundation"] = "inner foundation"
    order: float = 0
    mark: str = ""
    relieves: tuple[str, ...] = about(
        "Old lines that it relieves",
        help="they are no longer relied on for earthquake or wind; they stay in place",
        refers="underfloor.lines",
    )
    start: Point = about("Start of its middle line in plan")
    end: Point = about("End of its middle line in plan")
    gravity: Literal["none", "second support", "carries the floor"] = about(
        "What of the floor it holds up",
        help="second support: tight under the joists, taking over only where the old foundation gives way; carries the "
        "floor: jacked, so that the floor's load stands on both",
        default="none",
    )
    footing_width_in: float = about("Width of the footing", unit="in", least=8, most=96)
    footing_thickness_in: float = about("Thickness of the footing", unit="in", least=6, most=60)
    depth_in: float = about("Bottom of the footing below the soil inside", unit="in", least=6, most=120)
    stem_width_in: float = about("Width of the stem", unit="in", least=6, most=36)
    above_soil_in: float = about("Top of the stem above the soil inside", unit="in", least=2, most=96)
    top_z_in: float | None = about(
        "Top of the stem above the height datum", unit="in", least=-600, most=600, default=None
    )
    strength_psi: float = about("Specified strength of the concrete", unit="psi", least=2500, most=8000, default=2500.0)
    bar: Bar = about("Bar along the footing, top and bottom", default="#4")
    bars_top: int = about("Bars along its top", help="near the top of the stem", least=0, most=12, default=2)
    bars_bottom: int = about("Bars along its bottom", least=0, most=12, default=2)
    yield_psi: float = about("Yield strength of the bars", unit="psi", least=40000, most=60000, default=60000.0)
    cover_in: float = about("Concrete over the bars, cast on earth", unit="in", least=1.5, most=12, default=3.0)
    hooked: bool = about("The bars end in standard hooks, or turn into a cross strip", default=True)
    ties: Literal["none", "#3", "#4"] = about("Bars up from the footing into the stem", default="#4")
    tie_spacing_in: float = about("Spacing of those bars", unit="in", least=4, most=60, default=24.0)
    wall_height_in: float = about(
        "Height of its cripple wall, sill top to the top of the plate", unit="in", least=4, most=120
    )
    stud_thickness_in: float = about("Stud thickness", unit="in", least=1.5, most=6, default=1.5)
    stud_depth_in: float = about("Stud depth", unit="in", least=2.5, most=8, default=3.5)
    stud_spacing_in: float = about("Stud spacing", unit="in", least=8, most=24, default=16.0)
    species: str = about("Species of its studs, plates and sill", default="Douglas fir-larch")
    stud_grade: Literal["Select structural", "No. 1", "No. 2", "No. 3", "Stud"] = about("Grade", default="No. 2")
    studs_at_ends: int = about("Studs nailed together at each end", least=1, most=6, default=2)
    plates: int = about("Top plates", least=1, most=2, default=2)
    plate_joints_in: tuple[float, ...] = about("Stations of the laps in the plate", factory=tuple)
    plate_nails: int = about("16d common nails on each side of a lap", least=2, most=60, default=8)
    sill_thickness_in: float = about("Sill thickness", unit="in", least=1.5, most=6, default=2.5)
    sill_width_in: float = about("Sill width", unit="in", least=2.5, most=12, default=3.5)
    sill_joints_in: tuple[float, ...] = about("Stations where the sill is cut", factory=tuple)
    blocking: bool = about("New solid blocking or rim over its plate", default=True)
    check_lb: float | None = about(
        "Check it for this force",
        help="where its own share of the house's force is less; everything of the line is asked for it, redundancy "
        "within it",
        unit="lb", least=100, most=100000, default=None,
    )  # fmt: skip
    check_level: Literal["strength", "allowable"] = about(
        "Level of that force", help="strength, or allowable stress", default="strength"
    )
    dig_length_in: float | None = about(
        "Longest trench open at once",
        help="left out, the trench is open over its whole length and the strip is poured in one",
        unit="in", least=12, most=240, default=None,
    )  # fmt: skip
    lap_in: float | None = about(
        "Bars left sticking out of each length poured",
        help="for a strip dug and poured in lengths: the lap of the bars where two lengths meet",
        unit="in", least=6, most=120, default=None,
    )  # fmt: skip
    on_expansive: Literal["not told", "designed for it", "the soil is taken out", "below the active zone"] = about(
        "On expansive soil: how it is founded",
        help="a report must say so; asked where the soil is expansive, or clay that nobody tested",
        default="not told",
    )
    expansive_report: str = about("Whose report says so, and when", default="")
    active_zone_in: float | None = about(
        "Depth of the active zone below the soil inside, by the report", unit="in", least=6, most=360, default=None
    )
    underpinned: bool = about("The old footing is underpinned first, by a design of its own", default=False)


def plain_words(id: str, piece: InnerFoundationPiece) -> tuple[str, ...]:
    """What a new foundation leaves as it is, in words that every paper and screen must say."""
    name = piece.mark or id
    told = [f"{name}: {RESTS_ON_OLD}; nothing here says how long that will hold"]
    if piece.gravity == "second support":
        told = [f"{name} takes over the floor only where the old foundation gives way; until then {RESTS_ON_OLD}"]
    elif piece.gravity == "carries the floor":
        told = [f"{name} carries the floor only once it is jacked to it; the walls above still stand on the old line"]
    if piece.underpinned:
        told.append(f"{name}: the underpinning of the old footing is a design of its own, not checked here")
    return tuple(told)


def in_lengths(piece: InnerFoundationPiece) -> bool:
    """Whether a strip is dug and poured in lengths, with joints between them."""
    return piece.dig_length_in is not None and piece.dig_length_in < length_in(piece)


def wall_id(id: str) -> str:
    """The id of the wall segment that an inner foundation carries."""
    return f"{id}-wall"


def length_in(piece: InnerFoundationPiece) -> float:
    """How long an inner foundation is, inches."""
    return distance_in((piece.start.x_in, piece.start.y_in), (piece.end.x_in, piece.end.y_in))


def height_in(piece: InnerFoundationPiece) -> float:
    """From the bottom of its footing to the top of its wall's plate, inches: the arm of the force about its base."""
    return piece.wall_height_in + below_wall_in(piece)


def below_wall_in(piece: InnerFoundationPiece) -> float:
    """From the bottom of its footing to the top of its sill, inches."""
    return piece.sill_thickness_in + piece.above_soil_in + piece.depth_in


def inner_of(pieces: Iterable[tuple[str, Piece]]) -> dict[str, InnerFoundationPiece]:
    """The inner foundations among pieces of work, by id."""
    return {id: piece for id, piece in pieces if isinstance(piece, InnerFoundationPiece)}


def built(survey: Survey, inner: Mapping[str, InnerFoundationPiece]) -> Survey:
    """The survey with each inner foundation standing as a line of its own; lines it relieves are not relied on."""
    for id, piece in inner.items():
        survey = _with(survey, id, piece)
    return survey


def _with(survey: Survey, id: str, piece: InnerFoundationPiece) -> Survey:
    building, under, base = survey.building, survey.underfloor, survey.foundation
    name, length = piece.mark or id, length_in(piece)
    ends = {f"{id}-a": _corner(piece.start, f"{name}a"), f"{id}-b": _corner(piece.end, f"{name}b")}
    told = f"relieved by the inner foundation {name}, which takes its force"
    lines = {
        key: replace(line, relied_on=False, relied_reason=told) if key in piece.relieves else line
        for key, line in under.lines.items()
    }
    wood = Assembly(name=f"cripple wall of {name}", kind="cripple wall", seen="new work", layers=_layers())
    return replace(
        survey,
        building=replace(
            building, corners=building.corners | ends, assemblies=building.assemblies | {f"{id}-wood": wood}
        ),
        underfloor=replace(
            under,
            lines=lines | {id: _line(survey, id, piece)},
            segments=under.segments | {wall_id(id): _wall(id, piece, length)},
            sills=under.sills | _sills(id, piece, length),
            splices=under.splices | _laps(id, piece),
        ),
        foundation=replace(base, segments=base.segments | {f"{id}-footing": _footing(id, piece, length)}),
    )


def _corner(at: Point, mark: str) -> Corner:
    return Corner(mark=mark, x_in=at.x_in, y_in=at.y_in)


def _layers() -> tuple[Layer, ...]:
    return (
        Layer(material="2x4 studs at 16 in., bare"),
        Layer(material="panel of the new wall", psf=measured(_PANEL_PSF)),
    )


def _line(survey: Survey, id: str, piece: InnerFoundationPiece) -> Line:
    """The new line: of the storey and joists of the first old one that it relieves."""
    old = survey.underfloor.lines[piece.relieves[0]]
    names = ", ".join(survey.underfloor.lines[key].mark or key for key in piece.relieves)
    return Line(
        order=old.order + 0.5,
        mark=piece.mark or id,
        name=f"inside {names}",
        start=f"{id}-a",
        end=f"{id}-b",
        storey=old.storey,
        position="interior",
        relied_on=True,
        relied_reason=f"new inner foundation with its own braced wall; it relieves {names}",
        joists=old.joists,
        rim="blocking" if piece.blocking else "none",
        floor_connection=FloorConnection(kind="none"),
        top_plate=TopPlate(
            layers=piece.plates, thickness_in=measured(1.5), width_in=measured(piece.stud_depth_in),
            species=measured(piece.species), damp=measured(False),
        ),
    )  # fmt: skip


def _wall(id: str, piece: InnerFoundationPiece, length: float) -> Segment:
    stud = Stud(
        thickness_in=measured(piece.stud_thickness_in),
        depth_in=measured(piece.stud_depth_in),
        spacing_in=measured(piece.stud_spacing_in),
        species=measured(piece.species),
        grade=piece.stud_grade,
        at_ends=piece.studs_at_ends,
    )
    return Segment(
        mark=f"{piece.mark or id} wall",
        line=id,
        from_in=0.0,
        to_in=length,
        height_in=measured(piece.wall_height_in),
        stud=stud,
        assembly=f"{id}-wood",
        let_in_brace=measured(False),
    )


def _sills(id: str, piece: InnerFoundationPiece, length: float) -> dict[str, SillPiece]:
    stops = [0.0, *sorted(s for s in piece.sill_joints_in if 0 < s < length), length]
    shown = (piece.sill_width_in - piece.stud_depth_in) / 2
    return {
        f"{id}-sill-{n}": SillPiece(
            order=float(n),
            mark=f"{piece.mark or id}s{n}",
            line=id,
            from_in=low,
            to_in=high,
            width_in=measured(piece.sill_width_in),
            thickness_in=measured(piece.sill_thickness_in),
            species=measured(piece.species),
            projects_outside_in=measured(shown),
            projects_inside_in=measured(shown),
            gap_in=measured(0.0),
            condition=measured("sound"),
            damp=measured(False),
        )
        for n, (low, high) in enumerate(zip(stops, stops[1:], strict=False), start=1)
    }


def _laps(id: str, piece: InnerFoundationPiece) -> dict[str, PlateSplice]:
    return {
        f"{id}-lap-{n}": PlateSplice(
            order=float(n), mark=f"{piece.mark or id}j{n}", line=id, station_in=station, kind="lap", nail="16d common",
            nails_each_side=measured(float(piece.plate_nails)),
        )
        for n, station in enumerate(piece.plate_joints_in, start=1)
    }  # fmt: skip


def _footing(id: str, piece: InnerFoundationPiece, length: float) -> FoundationSegment:
    top: Fact[float] = unknown() if piece.top_z_in is None else measured(piece.top_z_in)
    return FoundationSegment(
        mark=piece.mark or id,
        line=id,
        from_in=0.0,
        to_in=length,
        material="poured concrete",
        top_width_in=measured(piece.stem_width_in),
        top_z_in=top,
        above_inside_soil_in=measured(piece.above_soil_in),
        above_outside_soil_in=measured(piece.above_soil_in),
        footing_width_in=measured(piece.footing_width_in),
        footing_thickness_in=measured(piece.footing_thickness_in),
        depth_in=measured(piece.depth_in),
        strength_psi=measured(piece.strength_psi),
        condition=measured("sound"),
        reinforced=measured(True),
    )
