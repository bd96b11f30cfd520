"""The rim as a tie from one braced segment to the next: an extension that no standard gives, off until it is chosen.

Where one segment is pressed down beside the next that is pulled up, the rim over the gap carries force from the one to
the other, bent as a beam held level by the walls on both sides. It passes no more than its own moment and shear, nor
than the neighbour's couple presses with. That it has no joint over the gap nobody surveys: the choice's reason says it.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.house.underfloor import JoistField
from groundsill.loadpath.case import Brace, LineCase, height_path, species_of
from groundsill.loadpath.storeys_over import Bound
from groundsill.loadpath.turning import LOWEST_GRADE, Turning
from groundsill.standards.nds_2018.bending import Beam
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import convert, divide, given, least, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["RimTie", "rim_tie"]

_UNGRADED = Mark("assumed range", f"rim: grade not known, the lowest is taken, {LOWEST_GRADE}")
_EXTENSION = "the rim as a beam over the gap to the next braced segment, which no standard gives"


@dataclass(frozen=True, slots=True)
class RimTie:
    """What the rim holds an end down with, lb at allowable-stress level; None where it is not counted, and why."""

    force: float | None
    words: str
    extension: str = ""


def rim_tie(case: LineCase, turned: Turning, bound: Bound) -> RimTie:
    """What the rim brings from the neighbour to the pulled end of a segment, written on the open sheet."""
    choices = case.reading.house.choices
    if choices.rim_tie != "counted":
        return RimTie(None, "")
    if not choices.rim_tie_reason.strip():
        return RimTie(None, "the rim is not counted as a tie: the choice gives no reason")
    other = _neighbour(case, turned)
    if other is None:
        return RimTie(None, "the rim is not counted as a tie: no braced segment stands beyond this end")
    joists = case.reading.in_order(case.reading.house.survey.underfloor.joists)
    rim = _rim(case, [(id, field) for id, field in joists if field.storey == case.line.storey])
    if isinstance(rim, str):
        return RimTie(None, f"the rim is not counted as a tie: {rim}")
    beam, words = rim
    gap, name = _gap_in(turned, other), other.name
    g = given("g", gap / 12, "ft", f"between the end posts of {name} and {turned.brace.name}", turned.post.marks)
    moment = scale(convert(beam.moment, "lb-in", "lb-ft"), 2.0, symbol="2 M'", label="held level at both ends")
    bent = divide(moment, g, symbol="F_M", unit="lb", label="the rim in bending over the gap")
    held = least(bent, beam.shear, _couple(case, other, bound), symbol="F_r", label=f"what the rim brings from {name}")
    told = f"the rim ({words}) holds {float(held):,.0f} lb of it down from {name}: {choices.rim_tie_reason} (choice)"
    return RimTie(held, told, _EXTENSION)


def _neighbour(case: LineCase, turned: Turning) -> Brace | None:
    """The nearest braced segment beyond the pulled end: its pressed end stands beside it."""
    here = turned.brace
    if turned.way == "+":
        before = [b for b in case.counted() if b.to_in <= here.from_in + 1e-6 and b is not here]
        return max(before, key=lambda b: b.to_in, default=None)
    after = [b for b in case.counted() if b.from_in >= here.to_in - 1e-6 and b is not here]
    return min(after, key=lambda b: b.from_in, default=None)


def _gap_in(turned: Turning, other: Brace) -> float:
    """From post to post, inches; both are taken as far in from their ends as this segment's."""
    here = turned.brace
    clear = here.from_in - other.to_in if turned.way == "+" else other.from_in - here.to_in
    return max(clear, 0.0) + 24 * float(turned.e_c)


def _rim(case: LineCase, fields: list[tuple[str, JoistField]]) -> tuple[Beam, str] | str:
    """What the rim carries, taken like the joists of its floor; in words why not, where that is not known."""
    if case.line.rim != "rim joist":
        return "no rim joist was seen"
    if not fields:
        return "no joists were surveyed whose size it would have"
    id, field = min(fields, key=lambda pair: (pair[1].depth_in.value or 0.0) * (pair[1].breadth_in.value or 0.0))
    breadth, depth = field.breadth_in.value, field.depth_in.value
    path = f"survey.underfloor.joists.{id}"
    species, wood = species_of(case, path, field.species, f"joists {field.mark or id}")
    if breadth is None or depth is None or not species:
        return "the joists' size or species is not known"
    marks = case.reading.marked(path, "breadth_in", "depth_in") | wood
    try:
        b = given("b_r", breadth, "in", "breadth of the rim, as of the joists", marks)
        d = given("d_r", depth, "in", "depth of the rim, as of the joists", marks | {_UNGRADED})
        beam = case.nds.beam_values(species, LOWEST_GRADE, b, d)
    except OutsideLimits as refused:
        return str(refused)
    return beam, f"{breadth:g} by {depth:g} in., {species} {LOWEST_GRADE}"


def _couple(case: LineCase, other: Brace, bound: Bound) -> float:
    """What the neighbour's own moment presses its end down with, at least, lb: over its whole length."""
    assert other.height_in is not None  # a segment of unknown height is never counted as a brace
    arm = (other.height_in / 12 + float(bound.arm_ft)) / (other.length_in / 12)
    tall = case.reading.marked(height_path(other.segment_id)) | marks_of((bound.arm_ft,))
    label = f"share of {other.name} times the height of its force over its length"
    part = given("β h/b", other.share * arm, "1", label, case.doubts | tall)
    return scale(case.allowable, part, symbol="F_c", label=f"what {other.name} presses its end down with")
