"""One braced line in one state, gathered for its checks: what braces it, what it must carry, who takes which share.

Every link module reads this and nothing else. The sharing of the line's force among its parts is done here once:
by strength when the parts are alike, and, where heights or materials differ (ENGINEERING judgement printed with the
result), by strength and by stiffness both, each part taking the worse.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from groundsill.forces.reading import Reading, line_length_in
from groundsill.forces.seismic import Forces, LineForce
from groundsill.forces.wind import Lateral
from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationSegment
from groundsill.house.underfloor import Line, Segment, SillPiece
from groundsill.loadpath.chain import Expected, Link, LoadLevel, ScopeKind, Status, status_of
from groundsill.loadpath.editions import panel_standard
from groundsill.loadpath.openings import Around, clear_parts
from groundsill.standards.nds import Nds, rules_of
from groundsill.standards.nds_2018.adjustment import DRY
from groundsill.standards.sdpws import Sdpws
from groundsill.work.inner import InnerFoundationPiece
from groundsill.work.pieces import HoldDownPiece, PanelPiece, Piece, SillBlockingPiece
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import given
from groundsill.working.value import Mark, marks_of

__all__ = [
    "MIXED_RATIO",
    "Brace",
    "LineCase",
    "Share",
    "braces_of",
    "cannot",
    "case_of",
    "checked",
    "demands",
    "expected_at",
    "foundation_at",
    "height_path",
    "moisture_of",
    "part_length",
    "pieces_on",
    "sill_at",
    "species_of",
    "working_of",
]

_NO_SHARE = 1e-6  # a share this small is the rounding of nothing
MIXED_RATIO = 1.25  # heights in one line that differ by more than this are shared by stiffness as well

BraceKind = Literal["panel", "sheathing", "joists on sill"]


@dataclass(frozen=True, slots=True)
class Brace:
    """A part of a line that can take force: a panel, existing sheathing, or joists standing straight on the sill.

    Stations in inches. ``capacity_plf`` is allowable, ``nominal_plf`` the adjusted nominal, ``expected_plf`` what it is
    expected to hold, ``stiffness_lb_in`` the stiffness; strengths are None when the part cannot be counted, and
    ``why_not`` says why. Where ``unknown`` that is for want of a fact or a rule: then it may yet take force, nobody can
    say how much, and ``stiffest_lb_in`` is the most that its stiffness can be, if anybody knows. ``share`` is the
    greatest part of the line's force that either way of sharing gives it, ``lost_in`` what small vents take of its
    length. ``around`` is there where it is a perforated wall: then as much is lost as leaves C_o times what counts of
    it. ``marks`` are those of the facts by which it counts or not. Joists on a sill have no strength of their own, and
    the stiffness of their ties and bolts.
    """

    id: str
    kind: BraceKind
    segment_id: str
    segment: Segment
    from_in: float
    to_in: float
    panel: PanelPiece | None = None
    material: str = ""
    capacity_plf: float | None = None
    nominal_plf: float | None = None
    expected_plf: float | None = None
    stiffness_lb_in: float | None = None
    stiffest_lb_in: float | None = None
    cite: str = ""
    why_not: str = ""
    unknown: bool = False
    share: float = 0.0
    part: int = 0
    lost_in: float = 0.0
    around: Around | None = None
    marks: frozenset[Mark] = frozenset()

    @property
    def name(self) -> str:
        """What to call it on paper: panel and wall segment by their marks, and which part between openings."""
        part = f", part {self.part}" if self.part else ""
        wall = self.segment.mark or self.segment_id
        return f"panel {self.panel.mark or self.id} in {wall}{part}" if self.panel is not None else f"{wall}{part}"

    @property
    def length_in(self) -> float:
        """Length along the line, inches."""
        return self.to_in - self.from_in

    @property
    def sheathed_in(self) -> float:
        """Length of it that counts as sheathed, less what vents or openings take, inches."""
        return self.length_in - self.lost_in

    @property
    def slenderness(self) -> float:
        """Height over length; of a perforated wall that of its most slender part."""
        lengths = [self.length_in] if self.around is None else [p.to_in - p.from_in for p in self.around.parts]
        return (self.height_in or 0.0) / min(lengths)

    def onto(self, low: float, high: float) -> float:
        """What of its force comes down between two stations, as a part of it.

        A perforated wall hands on its greatest unit shear at every full-height part, and so in all more than its force.
        """
        if self.around is None:
            return part_length(self, low, high) / self.length_in
        return self.around.length_in(low, high) / self.sheathed_in

    @property
    def height_in(self) -> float | None:
        """Height of the wall it stands in, inches."""
        return self.segment.height_in.value


@dataclass(frozen=True, slots=True)
class Share:
    """A part of the line's force, and the marks of how it is shared; ``why_not`` says why the part is not known."""

    part: float
    marks: frozenset[Mark] = frozenset()
    why_not: str = ""


@dataclass(frozen=True, slots=True)
class LineCase:
    """A line, its force, its braces and the work laid on it.

    ``lateral`` says which force it is checked for, ``sharing`` in words how that is shared among the braces; ``doubts``
    are the marks of their shares.
    """

    reading: Reading
    forces: Forces
    id: str
    line: Line
    force: LineForce
    length_in: float
    pieces: tuple[tuple[str, Piece], ...]
    braces: tuple[Brace, ...] = ()
    sharing: str = ""
    doubts: frozenset[Mark] = frozenset()
    strength: float = 0.0
    allowable: float = 0.0
    overstrength: float = 0.0
    sills: tuple[tuple[str, SillPiece], ...] = field(default=())
    lateral: Lateral = "earthquake"

    @property
    def sdpws(self) -> Sdpws:
        """The panel standard, in the edition that the house goes by."""
        return panel_standard(self.reading.house)

    @property
    def nds(self) -> Nds:
        """The rules for joints in wood, by the edition of the house's basis."""
        return rules_of(self.reading.edition("nds"))

    def counted(self) -> tuple[Brace, ...]:
        """The braces that can be counted."""
        return tuple(b for b in self.braces if b.capacity_plf is not None)

    @property
    def inner(self) -> InnerFoundationPiece | None:
        """The new foundation that this line is, where it is one."""
        return self.reading.inner.get(self.id)

    @property
    def load(self) -> str:
        """What the tables of sheathing and floors call the force: ``seismic`` or ``wind``."""
        return "wind" if self.lateral == "wind" else "seismic"

    def holding_factor(self) -> float:
        """What of dead load may be counted on to hold down, at allowable-stress level."""
        effects = self.forces.rules.effects
        return effects.asd_dead_factor_7() if self.lateral == "wind" else effects.asd_dead_factor_10(self.forces.S_DS)

    def untold(self) -> tuple[Brace, ...]:
        """The sheathed parts that may take force, nobody knows how much."""
        return tuple(b for b in self.braces if b.unknown and b.kind != "joists on sill")

    def taken_by(self, brace: Brace, how: str = "") -> float:
        """The share of the line's force that a brace takes, recorded with its marks; ``how`` it is shared, in words."""
        label = f"share of the line's force taken by {brace.name}{f': {how}' if how else ''}"
        return given("β", brace.share, "1", label, self.doubts)

    def of_kind(self, kind: type) -> list[tuple[str, Piece]]:
        """The pieces of work of one kind on this line, in order."""
        return [(id, piece) for id, piece in self.pieces if isinstance(piece, kind)]


def case_of(reading: Reading, forces: Forces, id: str, pieces: Sequence[tuple[str, Piece]]) -> LineCase:
    """A line gathered for its checks, with those of the pieces that stand on it."""
    underfloor = reading.house.survey.underfloor
    line, own = underfloor.lines[id], pieces_on(reading, id, pieces)
    sills = sorted(reading.on_line(underfloor.sills, id), key=lambda pair: pair[1].from_in)
    return LineCase(
        reading,
        forces,
        id,
        line,
        forces.lines[id],
        line_length_in(reading.house, line),
        own,
        braces_of(reading, id, own),
        sills=tuple(sills),
    )


def pieces_on(reading: Reading, line_id: str, pieces: Sequence[tuple[str, Piece]]) -> tuple[tuple[str, Piece], ...]:
    """The pieces of work that stand on a line, directly or on one of its wall segments."""
    segments = reading.house.survey.underfloor.segments
    found: list[tuple[str, Piece]] = []
    for id, piece in pieces:
        if isinstance(piece, (PanelPiece, SillBlockingPiece, HoldDownPiece)):
            if segments[piece.segment].line == line_id:
                found.append((id, piece))
        elif getattr(piece, "line", None) == line_id or (isinstance(piece, InnerFoundationPiece) and id == line_id):
            found.append((id, piece))
    return tuple(found)


def demands(case: LineCase) -> LineCase:
    """The line's force at each level of load that a check may ask for."""
    with section(f"line/{case.id}/demand"):
        Q_E = case.force.force_lb
        effects = case.forces.rules.effects
        E_h = effects.horizontal_effect(case.forces.rho, Q_E)
        return replace(
            case,
            strength=Q_E,
            allowable=effects.asd_earthquake(E_h),
            overstrength=effects.overstrength_effect(case.forces.system.Omega_0, Q_E),
        )


def braces_of(reading: Reading, line_id: str, pieces: Iterable[tuple[str, Piece]]) -> tuple[Brace, ...]:
    """What can brace a line. With a new panel anywhere in it, old sheathing is no longer counted beside panels."""
    underfloor = reading.house.survey.underfloor
    segments = reading.on_line(underfloor.segments, line_id)
    panels = [
        (id, p) for id, p in pieces if isinstance(p, PanelPiece) and underfloor.segments[p.segment].line == line_id
    ]
    found: list[Brace] = []
    for id, segment in segments:
        if segment.kind == "joists on sill":
            found.append(Brace(id, "joists on sill", id, segment, segment.from_in, segment.to_in))
        elif segment.kind == "cripple wall" and not panels:
            found += _brace_parts(reading, Brace(id, "sheathing", id, segment, segment.from_in, segment.to_in))
    for id, panel in panels:
        segment = underfloor.segments[panel.segment]
        found += _brace_parts(reading, Brace(id, "panel", panel.segment, segment, panel.from_in, panel.to_in, panel))
    return tuple(sorted(found, key=lambda b: (b.from_in, b.id)))


def _brace_parts(reading: Reading, whole: Brace) -> list[Brace]:
    """A brace cut at the openings in it: each part between them stands for itself; a small vent takes of its length."""
    if whole.panel is not None and whole.panel.around_openings != "each part for itself":
        return [whole]
    with quiet():
        parts = clear_parts(reading, whole.segment, whole.from_in, whole.to_in)
    if [(p.from_in, p.to_in) for p in parts] == [(whole.from_in, whole.to_in)]:
        return [replace(whole, lost_in=parts[0].lost_in)]
    return [
        replace(whole, id=f"{whole.id}.{n}", from_in=p.from_in, to_in=p.to_in, part=n, lost_in=p.lost_in)
        for n, p in enumerate(parts, start=1)
    ]


def part_length(brace: Brace, low: float, high: float) -> float:
    """How much of a brace lies between two stations, inches."""
    return max(0.0, min(brace.to_in, high) - max(brace.from_in, low))


def sill_at(case: LineCase, station: float) -> tuple[str, SillPiece] | None:
    """The sill piece at a station."""
    return next(((id, s) for id, s in case.sills if s.from_in <= station <= s.to_in), None)


def foundation_at(reading: Reading, line_id: str, station: float) -> tuple[str, FoundationSegment] | None:
    """The stretch of foundation under a station of a line."""
    for id, segment in reading.on_line(reading.house.survey.foundation.segments, line_id):
        if segment.from_in <= station <= segment.to_in:
            return id, segment
    return None


def height_path(segment_id: str) -> str:
    """Where the height of a wall segment stands in the survey."""
    return f"survey.underfloor.segments.{segment_id}.height_in"


def species_of(case: LineCase, path: str, species: Fact[str], what: str) -> tuple[str, frozenset[Mark]]:
    """The species of some wood and the marks of it; empty where nobody told it. ``path`` is that of what is made of it.

    ``what`` says which wood it is: ``the studs of W1``.
    """
    return species.value or "", case.reading.noted(f"the wood of {what}", f"{path}.species")


def working_of(case: LineCase, brace: Brace) -> tuple[str, ...]:
    """Where the working of a brace's own strength, share and unit shear stands."""
    return (f"line/{case.id}/demand", f"line/{case.id}/strength/{brace.id}")


def moisture_of(damp: bool | None) -> str:
    """The row of the wet service table for a sill: wet when a meter said so, else as built and kept dry."""
    return "wet in service" if damp else DRY


def checked(
    address: str,
    title: str,
    scope: ScopeKind,
    scope_id: str,
    *,
    level: LoadLevel,
    unit: str,
    demand: float | None,
    capacity: float | None,
    clause: str,
    reason: str = "",
    extension: str = "",
    direction: Literal["+", "-", "both"] = "both",
    expected: Expected | None = None,
    marks: Iterable[Mark] = (),
    working: tuple[str, ...] = (),
    minimum: bool = False,
) -> Link:
    """A link with a figure: its status, ratio and marks follow from demand and capacity.

    ``marks`` are those of what chose the check and stands in neither figure.
    """
    status, ratio = status_of(demand, capacity, extension)
    doubts = tuple(sorted(marks_of((demand, capacity)).union(marks)))
    return Link(
        address,
        title,
        scope,
        scope_id,
        direction,
        level,
        unit,
        status,
        None if demand is None else float(demand),
        None if capacity is None else float(capacity),
        ratio,
        reason,
        clause,
        extension,
        doubts,
        expected,
        ratio,
        status,
        working=working,
        minimum=minimum,
    )


def cannot(
    address: str,
    title: str,
    scope: ScopeKind,
    scope_id: str,
    *,
    clause: str,
    reason: str,
    applies: bool = True,
    direction: Literal["+", "-", "both"] = "both",
    marks: Iterable[Mark] = (),
    working: tuple[str, ...] = (),
) -> Link:
    """A link that cannot be checked, with the clause that is missing its facts (or one that does not apply).

    ``marks`` are those of the facts or figures by which it stands so, ``working`` where those were worked out.
    """
    status: Status = "cannot be checked" if applies else "does not apply"
    doubts = tuple(sorted(marks))
    return Link(
        address, title, scope, scope_id, direction, "allowable", "", status,
        reason=reason, clause=clause, marks=doubts, verdict=status, working=working,
    )  # fmt: skip


def expected_at(
    strength: float | None, share: float, spread: tuple[float, float], manner: Literal["ductile", "brittle"], basis: str
) -> Expected | None:
    """The line force at which a link holding ``share`` of it is expected to reach its strength."""
    if strength is None or share < _NO_SHARE:
        return None
    best = float(strength) / float(share)
    return Expected(best * spread[0], best, best * spread[1], manner, basis)
