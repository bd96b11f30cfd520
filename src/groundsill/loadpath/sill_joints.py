"""Joints of the sill: the force of a piece that its own bolts cannot hold, passed through splices to its neighbours.

In: the force that comes down on each piece and what its bolts hold in wood. Out: what passes each joint, at the whole
required force, and one link for each joint. Pieces tied in a row give way together: the greatest part of their forces
that they can carry is the least, over every stretch of the row, of what its bolts and the splices at its two ends hold
over the force that comes down on it; forces pass on only as far as they must at that point.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.case import LineCase, cannot, checked
from groundsill.loadpath.chain import Link
from groundsill.loadpath.hardware import into_sills, tie_strap
from groundsill.work.pieces import SPLICE_REACH_IN, SplicePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, subtract
from groundsill.working.value import Mark, marks_of

__all__ = ["TOUCH_IN", "Tie", "carried_part", "joint_links", "passed_on", "row_of", "ties_between"]

TOUCH_IN = 1.0
_CLAUSE = "chapter 12"
_NOTHING = 0.01  # lb: less than this is nothing


@dataclass(frozen=True, slots=True)
class Tie:
    """What ties two neighbouring pieces, lb, by what in words; 0 when nothing does, and ``why`` may say why not.

    ``marks`` are those of the facts by which a splice holds or not, ``extension`` that of a load without its report;
    ``stiffness`` is its load for an inch of give, None where nobody says how far it gives.
    """

    capacity: float = 0.0
    by: str = ""
    why: str = "nothing was seen that ties the two pieces together"
    marks: frozenset[Mark] = frozenset()
    extension: str = ""
    stiffness: float | None = None


def ties_between(case: LineCase, held: Sequence[float | None]) -> tuple[Tie, ...]:
    """The tie at each joint; a splice ties the one joint nearest to it, and holds nothing in decayed wood."""
    sills = [sill for _, sill in case.sills]
    path = "survey.underfloor.sills"
    sound = [case.reading.marked(f"{path}.{id}.condition") for id, _ in case.sills]
    joints = [left.to_in for left in sills[:-1]]
    found = []
    for n, (left, right) in enumerate(zip(sills, sills[1:], strict=False)):
        splice = _splice(case, left.to_in, joints)
        if splice is None:
            found.append(Tie())
        elif right.from_in - left.to_in > TOUCH_IN:
            found.append(Tie(why="the two pieces do not meet"))
        elif "decayed" in (left.condition.value, right.condition.value):
            found.append(Tie(why="a splice holds nothing in decayed wood", marks=sound[n] | sound[n + 1]))
        elif held[n] is None or held[n + 1] is None:
            found.append(Tie(why="what the bolts beside it hold is not known", marks=sound[n] | sound[n + 1]))
        else:
            found.append(_held(case, splice, case.sills[n : n + 2], sound[n] | sound[n + 1]))
    return tuple(found)


def _held(case: LineCase, splice: SplicePiece, sills: Sequence[tuple[str, SillPiece]], marks: frozenset[Mark]) -> Tie:
    """What a splice holds across a joint, by its report or by its nails and steel; nothing where neither is told."""
    try:
        with section(f"line/{case.id}/sill-joints/{sills[0][0]}/both"):
            held = tie_strap(case, splice, into_sills(case, sills))
    except OutsideLimits as refused:
        return Tie(why=str(refused), marks=marks)
    by = f"splice {splice.mark} ({held.words})"
    stiffness = float(held.capacity) / splice.give_in if splice.give_in else None
    marks |= marks_of((held.capacity,))
    return Tie(float(held.capacity), by, marks=marks, extension=held.extension, stiffness=stiffness)


def _splice(case: LineCase, joint: float, joints: Sequence[float]) -> SplicePiece | None:
    for _, piece in case.pieces:
        if isinstance(piece, SplicePiece) and piece.member == "sill":
            away = abs(piece.station_in - joint)
            if away <= SPLICE_REACH_IN and away <= min(abs(piece.station_in - other) for other in joints):
                return piece
    return None


# ---- What passes ----------------------------------------------------------------------------------------------------


def passed_on(forces: Sequence[float], held: Sequence[float | None], ties: Sequence[float]) -> tuple[float, ...]:
    """What passes each joint toward the line's end (minus: toward its start) at the whole required force, lb.

    ``forces`` on the pieces, what each piece's bolts hold (None: not known), and the capacity of the tie at each joint.
    """
    passing = [0.0] * len(ties)
    for first, last in _rows(held, ties):
        loads = [float(f) for f in forces[first : last + 1]]
        holds = [float(h or 0.0) for h in held[first : last + 1]]
        if all(f <= h for f, h in zip(loads, holds, strict=True)):
            continue
        row = [float(t) for t in ties[first:last]]
        part = carried_part(loads, holds, row)
        if part > 0:
            passing[first:last] = [p / part for p in _passing([part * f for f in loads], holds, row)]
    return tuple(0.0 if abs(p) < _NOTHING else p for p in passing)


def carried_part(loads: Sequence[float], holds: Sequence[float], ties: Sequence[float]) -> float:
    """The greatest part of their forces that pieces tied in a row carry together (above 1: more than the forces)."""
    ends = (0.0, *ties, 0.0)
    parts = []
    for a in range(len(loads)):
        for b in range(a, len(loads)):
            load = sum(loads[a : b + 1])
            if load > 0:
                parts.append((sum(holds[a : b + 1]) + ends[a] + ends[b + 1]) / load)
    return min(parts, default=0.0)


def _rows(held: Sequence[float | None], ties: Sequence[float]) -> list[tuple[int, int]]:
    """First and last piece of every row of two or more that ties hold together."""
    rows, first = [], 0
    for n in range(len(held)):
        if n == len(ties) or ties[n] <= 0:
            if n > first:
                rows.append((first, n))
            first = n + 1
    return rows


def row_of(n: int, ties: Sequence[float]) -> range:
    """The pieces that hang together with one by ties, itself among them."""
    first = last = n
    while first > 0 and ties[first - 1] > 0:
        first -= 1
    while last < len(ties) and ties[last] > 0:
        last += 1
    return range(first, last + 1)


def _passing(loads: Sequence[float], holds: Sequence[float], ties: Sequence[float]) -> list[float]:
    """The least that passes each joint of a row so that every piece holds; the loads must be such as can be held."""
    most = [0.0] * (len(ties) + 1)  # what the pieces from here on can still take in, at most
    for n in range(len(ties) - 1, -1, -1):
        most[n] = min(ties[n], holds[n + 1] - loads[n + 1] + most[n + 1])
    passing, before = [], 0.0
    for n, tie in enumerate(ties):
        must = max(-tie, loads[n] + before - holds[n])
        before = min(max(0.0, must), most[n])
        passing.append(before)
    return passing


# ---- The links ------------------------------------------------------------------------------------------------------


def joint_links(
    case: LineCase,
    forces: Sequence[float],
    held: Sequence[float | None],
    ties: Sequence[Tie],
    passing: Sequence[float],
    doubts: Sequence[frozenset[Mark]],
) -> tuple[Link, ...]:
    """One link for each joint of the sill; one for the line when the sill has none.

    ``forces`` are those the bolts of each piece are left with, once ``passing`` has passed the joints; ``doubts`` the
    marks of the force on each piece and of what its bolts hold.
    """
    if len(case.sills) < 2:
        address = f"line/{case.id}/sill-joints/{case.id}/both"
        reason = "the sill has no joint"
        return (cannot(address, "sill in one piece", "line", case.id, clause="", reason=reason, applies=False),)
    found = []
    for n, tie in enumerate(ties):
        (id, left), (other, right) = case.sills[n], case.sills[n + 1]
        pair = (forces[n], forces[n + 1]), (held[n], held[n + 1])
        marks = doubts[n] | doubts[n + 1] | tie.marks
        found.append(_joint(case, (id, left), (other, right), pair, tie, passing[n], marks))
    return tuple(found)


def _joint(
    case: LineCase,
    left: tuple[str, SillPiece],
    right: tuple[str, SillPiece],
    pair: tuple[tuple[float, float], tuple[float | None, float | None]],
    tie: Tie,
    passing: float,
    marks: frozenset[Mark],
) -> Link:
    """A joint: what passes it over what ties it; what one side cannot hold and nothing takes over to the other."""
    id = left[0]
    address, title = f"line/{case.id}/sill-joints/{id}/both", f"sill joint at {left[1].to_in / 12:.1f} ft"
    forces, held = pair
    sides = [part for key in (id, right[0]) for part in (f"sill/{key}", f"sill-bolts/{key}/both")]
    working = (f"line/{case.id}/demand", *(f"line/{case.id}/{part}" for part in sides))
    unknown = [s.mark or key for (key, s), h in zip((left, right), held, strict=True) if h is None]
    if unknown:
        reason = f"what the bolts of sill {' and '.join(unknown)} hold is not known, nor then what must pass here"
        return cannot(
            address, title, "joint", id, clause=case.nds.cite(_CLAUSE), reason=reason, marks=marks, working=working
        )
    short = [max(0.0, float(f) - float(h or 0.0)) for f, h in zip(forces, held, strict=True)]
    if not passing and (max(short) <= _NOTHING or tie.capacity > 0):
        spare = "each piece holds its own force" if max(short) <= _NOTHING else "neither piece has bolts to spare"
        reason = f"{spare}: none passes the joint"
        return cannot(
            address, title, "joint", id, clause="", reason=reason, applies=False, marks=marks, working=working
        )
    worse = 0 if short[0] >= short[1] else 1
    with section(address):
        if passing:
            need = given("T", abs(passing), "lb", "force that must pass the joint to where bolts hold it", marks)
            capacity = given("T_a", tie.capacity, "lb", tie.by)
        else:
            need = subtract(
                given("V_s", forces[worse], "lb", "force on the worse piece", marks),
                given("ΣZ'", held[worse] or 0.0, "lb", "what its own bolts hold", marks),
                symbol="T",
                label="force that must pass the joint",
            )
            capacity = 0.0
    return checked(
        address,
        title,
        "joint",
        id,
        level="allowable",
        unit="lb",
        demand=need,
        capacity=capacity,
        clause=case.nds.cite(_CLAUSE),
        reason=tie.by if passing else tie.why,
        extension=tie.extension if passing else "",
    )
