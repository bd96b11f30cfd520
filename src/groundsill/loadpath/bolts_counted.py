"""Which bolts of a sill piece count, and why the others do not.

An old bolt counts only with its embedment known or a test, a sound nut and washer, and a hole that fits; an expansion
or screw anchor only by its report; none near a break in the foundation or at the end of a sill piece. Old slack bolts
are not added to new ones without a stated stiffness rule. A bolt that is left out for what it is holds nothing; of one
left out for what nobody saw of it, nobody can say.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from groundsill.house.underfloor import Bolt, SillPiece
from groundsill.loadpath.case import LineCase, foundation_at
from groundsill.loadpath.stem import near_break
from groundsill.work.pieces import Adhesive, BoltPiece
from groundsill.working.value import Mark

__all__ = ["TEST_FACTOR", "Anchor", "Counted", "anchors_in", "refused_in"]

TEST_FACTOR = 2.0  # test load over what an old bolt of unknown embedment is counted with; common practice, no source
FITS_IN = 1 / 16  # NDS 2018 12.1.3.2, from memory: a hole at most this much wider than the bolt
_TAPE_IN = 0.01
_TOWARD_END = "parallel, toward the end, softwood"
_WEAK_PSI = 2500.0
_FACTS = ("diameter_in", "embedment_in", "hole_in", "nut", "rust", "test_lb")


@dataclass(frozen=True, slots=True)
class Anchor:
    """A bolt that counts, in inches and lb; ``new`` when it is a piece of work.

    ``embedment_in`` is None only where ``test_lb``, the load it held, stands in for it. ``hook_in`` is how far the hook
    of an L or J bolt stands out, None where it has none or nobody saw it. ``doubts`` are what was not seen of it;
    ``marks`` those of the facts by which it counts and of its own measures, ``edge_marks`` those of its distance from
    the face of the concrete, ``hook_marks`` those of its hook.
    """

    id: str
    mark: str
    station_in: float
    diameter_in: float
    embedment_in: float | None
    edge_in: float | None
    kind: str
    new: bool
    report: str = ""
    plate_washer: bool = False
    to_sheathing_in: float | None = None
    test_lb: float | None = None
    doubts: tuple[str, ...] = ()
    marks: frozenset[Mark] = frozenset()
    edge_marks: frozenset[Mark] = frozenset()
    adhesive: Adhesive | None = None
    hole_in: float | None = None
    hook_in: float | None = None
    hook_marks: frozenset[Mark] = frozenset()

    @property
    def slack_in(self) -> float:
        """How far its hole in the sill lets it move from side to side; 1/16 in. where nobody gives a new hole."""
        hole = self.diameter_in + FITS_IN if self.hole_in is None else self.hole_in
        return max(hole - self.diameter_in, 0.0)

    @property
    def name(self) -> str:
        """What to call it on paper."""
        return self.mark or self.id


@dataclass(frozen=True, slots=True)
class Counted:
    """The bolts of a sill piece: those that count, and the others in words, each with the reasons why not.

    ``unknown`` are those of the others that may yet count: what nobody saw of them keeps them out. ``marks`` are those
    of every fact that says of a bolt whether it counts.
    """

    anchors: tuple[Anchor, ...]
    left_out: tuple[str, ...]
    marks: frozenset[Mark]
    unknown: tuple[str, ...] = ()


def anchors_in(case: LineCase, sill: SillPiece) -> Counted:
    """The bolts that count in a sill piece, and the others."""
    diameters = float(case.nds.end_distance(_TOWARD_END, "least"))
    new: list[Anchor] = []
    left_out: list[str] = []
    doubts: frozenset[Mark] = frozenset()
    for id, piece in case.pieces:
        if isinstance(piece, BoltPiece) and sill.from_in <= piece.station_in <= sill.to_in:
            anchor = replace(_of_piece(id, piece), marks=_strength_marked(case, piece))
            doubts |= anchor.marks
            reason = _why_not_there(case, sill, anchor, diameters)
            if reason is None:
                new.append(anchor)
            else:
                left_out.append(f"new bolt at {anchor.station_in / 12:.1f} ft: {reason}")
    old, unknown = [], []
    for id, bolt in case.reading.on_line(case.reading.house.survey.underfloor.bolts, case.id):
        if not sill.from_in <= bolt.station_in <= sill.to_in:
            continue
        if not new and not _never_counts(case, bolt):
            doubts |= case.reading.noted(
                f"whether bolt {bolt.mark or id} counts", f"survey.underfloor.bolts.{id}", *_FACTS
            )
        reasons, unseen = _why_not_counted(case, bolt), _not_seen(bolt)
        anchor = _of_bolt(case, id, bolt)
        there = _why_not_there(case, sill, anchor, diameters)
        reasons += [there] if there is not None else []
        if not reasons and not unseen and new:
            reasons = ["old bolts are not added to new ones"]
        if reasons or unseen:
            left_out.append(f"{bolt.mark or id}: {', '.join(dict.fromkeys(reasons or unseen))}")
            unknown += [] if reasons or new else [left_out[-1]]
        else:
            old.append(anchor)
    counted: Sequence[Anchor] = sorted(new or old, key=lambda a: (a.station_in, a.id))
    return Counted(tuple(counted), tuple(left_out), doubts, tuple(unknown))


def refused_in(material: str) -> str:
    """Why an expansion anchor is refused in a material, whatever its report says; nothing where it is not."""
    if material not in ("brick", "stone", "block"):
        return ""
    return f"expansion anchors are refused in {material}, which they may split"


def _strength_marked(case: LineCase, piece: BoltPiece) -> frozenset[Mark]:
    """The marks of the concrete's strength where the bolt counts by it."""
    under = foundation_at(case.reading, case.id, piece.station_in)
    if piece.anchor != "expansion" or not piece.report or under is None:
        return frozenset()
    return case.reading.marked(f"survey.foundation.segments.{under[0]}.strength_psi")


def _never_counts(case: LineCase, bolt: Bolt) -> bool:
    """Whether an old bolt is left out for what it is or where it stands, whatever its facts turn out to be."""
    plainly = bolt.kind in ("expansion", "screw") or bolt.washer not in ("cut", "plate")
    return plainly or near_break(case, bolt.station_in) is not None


def _of_piece(id: str, piece: BoltPiece) -> Anchor:
    return Anchor(
        id,
        piece.mark,
        piece.station_in,
        piece.diameter_in,
        piece.embedment_in,
        piece.edge_in,
        piece.anchor,
        True,
        piece.report,
        piece.plate_washer,
        piece.to_sheathing_in,
        adhesive=piece.adhesive,
        hole_in=piece.sill_hole_in,
    )


def _of_bolt(case: LineCase, id: str, bolt: Bolt) -> Anchor:
    path = f"survey.underfloor.bolts.{id}"
    rust = () if bolt.rust.value is not None or bolt.rust.state == "absent" else ("its rust was not looked at",)
    return Anchor(
        id,
        bolt.mark,
        bolt.station_in,
        bolt.diameter_in.value or 0.0,
        bolt.embedment_in.value,
        bolt.edge_in.value,
        bolt.kind,
        False,
        plate_washer=bolt.washer == "plate",
        test_lb=bolt.test_lb.value,
        doubts=rust,
        marks=case.reading.marked(path, *_FACTS),
        edge_marks=case.reading.marked(path, "edge_in"),
        hole_in=bolt.hole_in.value,
        hook_in=bolt.hook_in.value,
        hook_marks=case.reading.marked(path, "hook_in"),
    )


def _why_not_counted(case: LineCase, bolt: Bolt) -> list[str]:
    """What keeps an existing bolt from counting for what it is: no sound nut and washer, rust, a hole too wide."""
    found = []
    if bolt.kind in ("expansion", "screw"):
        under = foundation_at(case.reading, case.id, bolt.station_in)
        refused = refused_in(under[1].material) if under is not None and bolt.kind == "expansion" else ""
        found.append(refused or f"{bolt.kind} anchors count only by an entered report")
    if bolt.nut.value not in ("tight", None):
        found.append(f"its nut is {bolt.nut.value}")
    elif bolt.nut.state == "absent":
        found.append("it has no nut")
    if bolt.washer == "none":
        found.append("it has no washer")
    if bolt.rust.value == "heavy":
        found.append("it is heavily rusted")
    D, hole = bolt.diameter_in.value, bolt.hole_in.value
    if D is not None and hole is not None and hole > D + FITS_IN + _TAPE_IN:
        wide = f"its hole is {hole:g} in. for a bolt of {D:g} in., more than 1/16 in. over"
        found.append(f"{wide} ({case.nds.cite('12.1.3.2')})")
    return found


def _not_seen(bolt: Bolt) -> list[str]:
    """What was not seen of an existing bolt and must be before it counts, all at once."""
    found = []
    if bolt.diameter_in.value is None:
        found.append("its diameter is not known")
    if bolt.embedment_in.value is None and not bolt.test_lb.value:
        found.append("its embedment is not known and no test is entered")
    if bolt.nut.value is None and bolt.nut.state != "absent":
        found.append("its nut is not seen")
    if bolt.washer == "not seen":
        found.append("no washer was seen")
    if bolt.hole_in.value is None:
        found.append("its hole in the sill was not looked at")
    return found


def _why_not_there(case: LineCase, sill: SillPiece, anchor: Anchor, diameters: float) -> str | None:
    """What keeps a bolt of any age from counting where it stands."""
    end = min(anchor.station_in - sill.from_in, sill.to_in - anchor.station_in)
    if end < diameters * anchor.diameter_in - _TAPE_IN:
        return (
            f"it stands within {diameters:g} diameters of the end of the sill piece ({case.nds.cite('Table 12.5.1A')})"
        )
    if anchor.kind == "expansion":
        under = foundation_at(case.reading, case.id, anchor.station_in)
        if under is not None and (refused := refused_in(under[1].material)):
            return refused
        if not anchor.report:
            return "expansion anchors count only by an entered report"
        f_c = under[1].strength_psi.value if under is not None else None
        if f_c is None or f_c < _WEAK_PSI:
            return "expansion anchors are not counted in concrete under 2,500 psi or of unknown strength"
    return near_break(case, anchor.station_in)
