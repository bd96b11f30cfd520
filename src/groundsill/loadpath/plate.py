"""Splices and collectors: the force the top plate must carry along the line, at each joint in it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.forces.levels import outline_of
from groundsill.forces.reading import doubted, line_ends
from groundsill.house.underfloor import PlateSplice
from groundsill.loadpath.balloon import own_chain
from groundsill.loadpath.case import LineCase, cannot, checked, expected_at, moisture_of, species_of
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.hardware import into_plate, tie_strap
from groundsill.loadpath.offset import raised, saying_so
from groundsill.loadpath.openings import Around
from groundsill.mechanics.collector import Drain, axial
from groundsill.mechanics.plan import rotate
from groundsill.work.pieces import SPLICE_REACH_IN, SplicePiece, StrapPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import divide, given, least, multiply, scale

__all__ = ["NAIL_SPREAD", "Held", "drains", "joint_strength", "joint_title", "splice_stage"]

_LONGEST_PLATE_IN = 240.0  # no plate of an old house is taken to be in one piece for longer than this
_END_IN = 18.0  # a line that ends nearer than this to the floor's edge reaches it; a strap, the end of its line
_REACH_IN = 6.0  # a strap that ends nearer to a joint than this does not splice it
_JOINT = "chapter 12"
NAIL_SPREAD = (0.75, 1.25)  # how far nailed joints stray from their yield (common practice, no source)


@dataclass(frozen=True, slots=True)
class Held:
    """The allowable tension that a joint of the plate holds, lb, or None and why nobody can say; when it yields, lb."""

    capacity: float | None
    clause: str
    reason: str
    yields: float | None = None
    extension: str = ""


def drains(case: LineCase) -> tuple[Drain, ...]:
    """Where the line's force leaves the plate, in shares of the whole force."""
    total = sum(b.share for b in case.braces) or 1.0
    found: list[Drain] = []
    for b in case.braces:
        if b.around is not None and b.share > 0:
            counted = sum(part.counted_in for part in b.around.parts)
            found += [
                Drain(part.from_in, part.to_in, b.share / total * part.counted_in / counted) for part in b.around.parts
            ]
        elif b.share > 0:
            found.append(Drain(b.from_in, b.to_in, b.share / total))
    return tuple(found)


def splice_stage(case: LineCase) -> Stage:
    """Every joint of the top plate with the force that must pass it."""
    joints = case.reading.on_line(case.reading.house.survey.underfloor.splices, case.id)
    address = f"line/{case.id}/plate-splices/{case.id}/both"
    if own_chain(case):
        reason = f"{case.line.framing} framing: each part takes its force from the floor over its own length"
        links: tuple[Link, ...] = (
            cannot(address, "collector", "line", case.id, clause="", reason=reason, applies=False),
        )
    elif case.line.framing == "not seen" or case.line.top_plate.layers == 0:
        reason = "how the wall is framed was not seen" if case.line.framing == "not seen" else "there is no top plate"
        links = (cannot(address, "collector", "line", case.id, clause=_collector(case), reason=reason),)
    else:
        stations = [joint.station_in for _, joint in joints]
        links = tuple(_joint(case, id, joint, stations) for id, joint in joints) or (_none_recorded(case),)
    links = saying_so(case, links + _dragged(case))
    return Stage("plate-splices", "Top plate splices and collectors", "every link must pass", links)


def _perforated_at(case: LineCase, station: float) -> Around | None:
    """The perforated wall that a station lies in, if any."""
    return next((b.around for b in case.braces if b.around is not None and b.from_in <= station <= b.to_in), None)


def _collector(case: LineCase) -> str:
    return f"{case.forces.rules.cite('12.10.2')}, {case.nds.cite(_JOINT)}"


def _dragged(case: LineCase) -> tuple[Link, ...]:
    """Floor beyond the line's ends hangs on a collector that brings its force here; where none lies there, no link."""
    beyond = _beyond(case)
    brought = max(*case.force.collected, beyond if case.inner is not None else 0.0) if beyond else 0.0
    if brought < 0.01:
        return ()
    address, title = f"line/{case.id}/plate-splices/{case.id}-drag/both", "collector beyond the line's end"
    told = f"up to {100 * brought:.0f} % of a level's force comes from floor beyond the line"
    straps = [p for _, p in case.of_kind(StrapPiece) if isinstance(p, StrapPiece) and p.beyond_in > 0]
    ends = {at: [p for p in straps if abs(_end_of(p, at) - at) <= _END_IN] for at in (0.0, case.length_in)}
    if not all(ends.values()):
        reason = f"{told}: no collector {'was surveyed' if case.inner is None else 'is drawn at both ends'}"
        return (cannot(address, title, "line", case.id, clause=_collector(case), reason=reason),)
    try:
        with section(address):
            part = given("κ", brought, "1", "share of the line's force from floor beyond it, all taken at one end")
            force = raised(case, scale(case.allowable, part, symbol="T", label=title))
            held = [tie_strap(case, p, (into_plate(case),)) for found in ends.values() for p in found[:1]]
            capacity = least(*(one.capacity for one in held), symbol="T_a", label="the weaker of the two ends")
    except OutsideLimits as refused:
        return (cannot(address, title, "line", case.id, clause=_collector(case), reason=str(refused)),)
    words = "; ".join((told, *dict.fromkeys(one.words for one in held)))
    return (
        checked(
            address, title, "line", case.id, level="allowable", unit="lb", demand=force, capacity=capacity,
            clause=_collector(case), reason=words, working=(f"line/{case.id}/demand",),
            extension="; ".join(dict.fromkeys(one.extension for one in held if one.extension)),
        ),
    )  # fmt: skip


def _end_of(strap: StrapPiece, at: float) -> float:
    """The end of a strap that lies toward an end of its line."""
    return strap.from_in if at == 0 else strap.to_in


def _beyond(case: LineCase) -> float:
    """What part of the floor's extent along a line lies beyond its ends; 0 for one that reaches both edges."""
    house = case.reading.house
    (x1, y1), (x2, y2) = line_ends(house, case.line)
    turn = -math.degrees(math.atan2(y2 - y1, x2 - x1))
    outline = outline_of(case.reading, house.survey.building.storeys[case.line.storey].outline)
    along = [rotate(point, turn)[0] for point in outline]
    reach = (rotate((x1, y1), turn)[0], rotate((x2, y2), turn)[0])
    short = max(reach[0] - min(along), 0.0) + max(max(along) - reach[1], 0.0)
    return 0.0 if short <= _END_IN else short / (max(along) - min(along))


def _none_recorded(case: LineCase) -> Link:
    address = f"line/{case.id}/plate-splices/{case.id}/both"
    if case.length_in > _LONGEST_PLATE_IN:
        reason = f"no joint was recorded in a plate {case.length_in / 12:.0f} ft long; one must be there"
        return cannot(address, "top plate joints", "line", case.id, clause=case.nds.cite(_JOINT), reason=reason)
    return cannot(
        address, "top plate joints", "line", case.id, clause="", reason="no joint in the plate", applies=False
    )


def _joint(case: LineCase, id: str, joint: PlateSplice, stations: list[float]) -> Link:
    address = f"line/{case.id}/plate-splices/{id}/both"
    title = joint_title(joint)
    undefined = _undefined(case)
    if undefined:
        return cannot(
            address, title, "joint", id, clause=case.nds.cite(_JOINT), reason=undefined, marks=case.doubts
        )  # fmt: skip
    with section(address):
        share = abs(axial(case.length_in, 1.0, drains(case), joint.station_in))
        past = given(
            "κ",
            share,
            "1",
            "share of the line's force that passes the joint: brought by the floor less taken by walls up to it",
            case.doubts,
        )
        force = raised(case, scale(case.allowable, past, symbol="T", label="axial force in the plate at the joint"))
        across = _perforated_at(case, joint.station_in)
        if across is not None:
            words = "between the parts of a perforated wall: by v_max, its greatest unit shear"
            by = divide(1.0, across.C_o, symbol="1/C_o", unit="1", label=words)
            force = scale(
                force, by, symbol="T", label=f"collector in a perforated wall ({case.sdpws.perforated.clause})"
            )
        held = joint_strength(case, id, joint, stations)
    if held.capacity is None:
        return cannot(address, title, "joint", id, clause=held.clause, reason=held.reason)
    loose = joint.kind in ("butt", "cut") and not held.capacity
    reason = f"{held.reason}, and {100 * share:.0f} % of the line's force must pass" if loose else held.reason
    return checked(
        address,
        title,
        "joint",
        id,
        level="allowable",
        unit="lb",
        demand=force,
        capacity=held.capacity,
        clause=held.clause,
        reason=reason,
        extension=held.extension,
        working=(f"line/{case.id}/demand",),
        expected=expected_at(
            held.yields,
            share,
            NAIL_SPREAD,
            "ductile",
            "yield of every nail of the lap, 25 % either way (common practice, no source)",
        ),
    )


def _undefined(case: LineCase) -> str:
    """Why the force past a joint of the plate is not known, in words; empty where it is."""
    untold = case.untold()
    if untold:
        names = " and ".join(b.name for b in untold)
        return f"what {names} takes is not known, nor then what passes the joint: {untold[0].why_not}"
    if not any(b.share > 0 for b in case.braces):
        return "nothing braces this line, so the force past the joint is not defined"
    return ""


def joint_title(joint: PlateSplice) -> str:
    """What to call a joint of the plate: its kind and where it is."""
    return f"{joint.kind} in the plate at {joint.station_in / 12:.1f} ft"


def joint_strength(case: LineCase, id: str, joint: PlateSplice, stations: Sequence[float]) -> Held:
    """The tension that a joint of the plate holds: by new work across it, else by the nails of its lap, else nothing.

    Recorded in the section that is open. ``stations`` are those of all joints of the plate: new work goes to the
    nearest.
    """
    added = _added(case, joint, stations)
    if added is not None:
        try:
            strap = tie_strap(case, added, (into_plate(case),))
        except OutsideLimits as refused:
            return Held(None, case.nds.cite("12.3.1, 11.3"), str(refused))
        words = f"{added.kind} {added.mark} ({strap.words})"
        return Held(strap.capacity, strap.clause, words, extension=strap.extension)
    if joint.kind in ("butt", "cut"):
        return Held(0.0, case.nds.cite(_JOINT), "the plate is not continuous there")
    return _nailed(case, joint, id)


def _added(case: LineCase, joint: PlateSplice, stations: Sequence[float]) -> SplicePiece | StrapPiece | None:
    """New work across the joint: a splice whose nearest joint it is, or a strap that reaches past it on both sides."""
    for _, piece in case.pieces:
        if isinstance(piece, SplicePiece) and piece.member == "top plate":
            away = abs(piece.station_in - joint.station_in)
            if away <= SPLICE_REACH_IN and away <= min(abs(piece.station_in - s) for s in stations):
                return piece
        reaches = isinstance(piece, StrapPiece) and (
            piece.from_in + _REACH_IN <= joint.station_in <= piece.to_in - _REACH_IN
        )
        if reaches and isinstance(piece, StrapPiece):
            return piece
    return None


def _nailed(case: LineCase, joint: PlateSplice, id: str) -> Held:
    """A lap held by nails: their number on one side of the joint."""
    count, clause = joint.nails_each_side.value, case.nds.cite("12.3.1, 11.3")
    if count is None or not joint.nail:
        return Held(None, clause, "the nails of the lap were not counted")
    path = f"survey.underfloor.lines.{case.id}.top_plate"
    species, wood = species_of(case, path, case.line.top_plate.species, f"the plate of {case.line.mark or case.id}")
    if not species:
        return Held(None, clause, "the wood of the plate was not told")
    thick = case.reading.number(
        f"{path}.thickness_in",
        case.line.top_plate.thickness_in,
        "l_s",
        "in",
        "thickness of one plate",
    )
    if thick is None:
        return Held(None, clause, "the thickness of the plates is not known")
    try:
        one = case.nds.nail(joint.nail, thick, species, species, t_m=thick)
        damp = case.reading.noted("whether the top plate is damp", f"survey.underfloor.lines.{case.id}.top_plate.damp")
        wet = moisture_of(case.line.top_plate.damp.value)
        each = doubted(case.nds.adjusted_lateral(one.Z, moisture=wet), damp | wood)
    except OutsideLimits as refused:
        return Held(None, clause, str(refused))
    n = case.reading.number(
        f"survey.underfloor.splices.{id}.nails_each_side",
        joint.nails_each_side,
        "n",
        "1",
        "nails on one side of the joint",
    )
    assert n is not None
    return Held(multiply(each, n, symbol="n Z'", unit="lb"), clause, "", float(case.nds.expected_of(one).P) * float(n))
