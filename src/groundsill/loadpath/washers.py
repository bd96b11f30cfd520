"""Plate washers under the nuts of sill bolts, where wood structural panels brace the line (SDPWS 4.3.6.4.3).

Only a bolt whose nut has a plate washer counts below a panel, unless the whole of the exception is met; above the
unit shear the document names, the plate must also come near the sheathed edge of the sill.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.bolts_counted import Anchor, Counted
from groundsill.loadpath.case import Brace, LineCase, cannot, checked, height_path, part_length
from groundsill.loadpath.chain import Link
from groundsill.loadpath.held_ends import hold_downs_at
from groundsill.loadpath.hold_downs import why_not_counted
from groundsill.loadpath.panel_details import panel_table
from groundsill.loadpath.turning import END_POST_FT, WAYS
from groundsill.standards.statics.walls import end_tension, overturning_moment
from groundsill.standards.wall_construction import Washer
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.sheet import section
from groundsill.working.steps import given, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["washer_link"]

_ROW = "plate washer"


def washer_link(case: LineCase, id: str, sill: SillPiece, bolts: Counted) -> Link | None:
    """The washers of a sill piece's bolts, where a panel stands over it; None where none does, or no bolt counts."""
    panels = [b for b in case.counted() if b.panel is not None and part_length(b, sill.from_in, sill.to_in) > 0]
    anchors = bolts.anchors
    if not panels or not anchors:
        return None
    rules, clause = case.sdpws.washers(), case.sdpws.clauses.washers
    address, title = f"line/{case.id}/sill-bolts/{id}-washers/both", f"washers of the bolts in sill {sill.mark or id}"
    place = _Place(address, title, id, clause, float(len(anchors)))
    with section(address):
        shears = [_tabulated(case, b) for b in panels]
        ends = [end for b in panels for end in _ends(case, b)]
        held = all(sum(p.capacity_lb for p in down) >= float(pull) for down, pull in ends)
        slenderest = max(b.slenderness for b in panels)
        asked = case.sdpws.washer_on_sill_bolt(max(shears), slenderest, held)
        reach = float(rules.read(_ROW, "gap to the sheathed edge", symbol="reach"))
        half = float(rules.read(_ROW, "side", symbol="side")) / 2
        wide = case.reading.noted(f"the width of sill {sill.mark or id}", f"survey.underfloor.sills.{id}.width_in")
    with_plate = [a for a in anchors if a.plate_washer]
    width = sill.width_in.value
    anywhere = width is not None and width - 2 * half <= reach  # the plate reaches wherever the bolt stands
    near = [a for a in with_plate if anywhere or (a.to_sheathing_in is not None and a.to_sheathing_in - half <= reach)]
    if len(near) == len(anchors):  # whatever the force and the exception
        return _in_order(place, _met(asked, anchors), bolts.marks | (wide if anywhere else frozenset()))
    doubts = bolts.marks
    if all(down for down, _ in ends):  # with an end that nothing holds down nothing else can spare the plates
        doubts |= marks_of((*shears, *(pull for _, pull in ends)))
        doubts = doubts.union(*(case.reading.marked(height_path(b.segment_id)) for b in panels))
    if asked.plate is False:
        return _in_order(place, _spared(anchors, with_plate, asked.reasons[0]), doubts)
    if len(with_plate) < len(anchors):
        return _without(place, anchors, with_plate, asked.reasons, doubts)
    doubts |= marks_of(shears)
    if not asked.to_sheathed_edge:
        return _in_order(place, "every nut has a plate washer", doubts)
    doubts |= wide
    beyond = [a for a in anchors if a.to_sheathing_in is not None and a.to_sheathing_in - half > reach]
    if beyond:
        reason = (
            f"plate of {_names(beyond)} ends more than {reach:g} in. from the sheathed edge; cure: a plate long enough "
            "to reach there, or a new bolt nearer the sheathed edge"
        )
        return _counted(place, float(len(anchors) - len(beyond)), reason, doubts)
    reason = (
        f"every nut has a plate washer, which must reach to {reach:g} in. from the sheathed edge: where the bolts "
        "stand across the sill is not entered"
    )
    return cannot(address, title, "sill", id, clause=clause, reason=reason, marks=doubts)


def _met(asked: Washer, anchors: Sequence[Anchor]) -> str:
    """What every bolt has, in words, where its plate does all that can be asked of it."""
    if asked.plate is False:
        return _spared(anchors, anchors, asked.reasons[0])
    return "every plate washer reaches the sheathed edge" if asked.to_sheathed_edge else "every nut has a plate washer"


@dataclass(frozen=True, slots=True)
class _Place:
    """Where the link stands: its address and title, its sill, its clause, and how many bolts must have their washer."""

    address: str
    title: str
    id: str
    clause: str
    asked: float


def _tabulated(case: LineCase, brace: Brace) -> float:
    """Nominal unit shear of a panel as the table gives it, plf."""
    assert brace.panel is not None
    return panel_table(case, brace.panel)[0].read(brace.panel.panel, brace.panel.edge_spacing_in)


def _ends(case: LineCase, brace: Brace) -> list[tuple[list[HoldDownPiece], float]]:
    """The hold-downs at either end of a panel, and the pull there, lb, with no dead load counted."""
    assert brace.height_in is not None  # a segment of unknown height is never counted as a brace
    h, b = brace.height_in / 12, brace.length_in / 12
    tall = case.reading.marked(height_path(brace.segment_id))
    part, found = case.taken_by(brace), []
    force = scale(case.allowable, part, symbol="V", label=f"force on {brace.name}")
    for way, end in zip(WAYS, (brace.from_in, brace.to_in), strict=True):
        held = [p for p in hold_downs_at(case, brace, way) if why_not_counted(case, p) is None]
        offset = max((abs(p.station_in - end) / 12 for p in held), default=0.0)
        arm = max(b - offset - END_POST_FT, 0.1 * b)
        words = "lever arm between hold-down and end post"
        if brace.around is not None:
            arm, words = min(arm, brace.sheathed_in / 12), f"C_o ΣL_i ({case.sdpws.perforated.ends_clause})"
        pull = end_tension(
            overturning_moment(force, given("h", h, "ft", f"height of {brace.name}", tall)),
            case.holding_factor(),
            given("w_D", 0.0, "plf", "no dead load counted, as the exception asks"),
            given("b", b, "ft", f"length of {brace.name}"),
            given("x_D", b / 2 - END_POST_FT, "ft", "end post to the middle of the panel"),
            given("d", arm, "ft", words),
        )
        found.append((held, pull))
    return found


def _without(
    place: _Place, anchors: Sequence[Anchor], having: Sequence[Anchor], reasons: Sequence[str], marks: frozenset[Mark]
) -> Link:
    lacking = [a for a in anchors if a not in having]
    reason = (
        f"{len(lacking)} of {len(anchors)} bolts have no plate washer ({_names(lacking)}): only those with one count "
        f"below a panel; cut washers do not serve, {'; '.join(reasons)}; cure: a plate washer under each of those nuts"
    )
    return _counted(place, float(len(having)), reason, marks)


def _spared(anchors: Sequence[Anchor], having: Sequence[Anchor], why: str) -> str:
    """Why cut washers serve, and which bolts have plates all the same: a crew lays what is drawn."""
    if not having:
        return why
    which = "every nut" if len(having) == len(anchors) else f"the nut of {_names(having)}"
    return f"{which} has a plate washer all the same, laid as drawn; {why}"


def _in_order(place: _Place, reason: str, marks: frozenset[Mark]) -> Link:
    """Every bolt has the washer that is asked of it."""
    return _counted(place, place.asked, reason, marks)


def _counted(place: _Place, found: float, reason: str, marks: frozenset[Mark]) -> Link:
    """A link that counts bolts: how many must have their washer, and how many do."""
    return checked(
        place.address,
        place.title,
        "sill",
        place.id,
        level="allowable",
        unit="bolts",
        demand=place.asked,
        capacity=found,
        clause=place.clause,
        reason=reason,
        marks=marks,
        minimum=True,
    )


def _names(anchors: Sequence[Anchor]) -> str:
    return ", ".join(a.name for a in anchors)
