"""What the old sheathing of a wall segment carries: each sound face by the panel standard, and both together.

Boards and plaster on one wall are unlike materials: together they count for twice the lesser or for the greater, never
for their sum; two faces of one material add.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.house.underfloor import Sheathing
from groundsill.loadpath.case import Brace, LineCase
from groundsill.standards.sheathing import SegmentShear
from groundsill.working.errors import OutsideLimits
from groundsill.working.value import Mark

__all__ = ["OldFace", "faces_words", "old_faces", "strange_faces", "together"]

_NOTHING = ("", "none")


@dataclass(frozen=True, slots=True)
class OldFace:
    """One sound face that a table has a strength for (or both together), with the marks of its condition.

    ``stiffness`` is the apparent shear stiffness, kip/in.
    """

    material: str
    shear: SegmentShear
    stiffness: float
    cite: str
    seen: frozenset[Mark]


def old_faces(case: LineCase, brace: Brace, h: float, b: float) -> tuple[list[OldFace], frozenset[Mark]]:
    """The faces of a segment that count, and the marks of those left out for decay; ``h`` and ``b`` in feet.

    Raises:
        OutsideLimits: when the wall is too slender for every face that it has.
    """
    sdpws, refusals = case.sdpws, []
    found: list[OldFace] = []
    chosen: frozenset[Mark] = frozenset()
    for side, face in (("outside", brace.segment.outside), ("inside", brace.segment.inside)):
        boards = face.material in sdpws.boards().rows
        if not boards and face.material not in sdpws.plaster().rows:
            continue
        mark, path = brace.segment.mark or brace.segment_id, f"survey.underfloor.segments.{brace.segment_id}.{side}"
        seen = case.reading.noted(f"the condition of {face.material} on {mark}, {side}", f"{path}.condition")
        if face.condition.value == "decayed":
            chosen |= seen
            continue
        stiff = (sdpws.boards() if boards else sdpws.plaster()).read(face.material, "G_a")
        cite = sdpws.clauses.boards if boards else sdpws.clauses.plaster
        try:
            shear = (sdpws.lumber_unit_shear if boards else sdpws.plaster_unit_shear)(face.material, h, b, case.load)
        except OutsideLimits as refused:
            refusals.append(refused)
            continue
        found.append(OldFace(face.material, shear, stiff, cite, seen))
    if refusals and not found:
        raise refusals[0]
    return found, chosen


def strange_faces(case: LineCase, brace: Brace) -> tuple[str, ...]:
    """What is on the faces of a segment that no table has a strength for: it may hold, nobody can say how much."""
    known = {*case.sdpws.boards().rows, *case.sdpws.plaster().rows, *_NOTHING}
    return tuple(face.material for face in (brace.segment.outside, brace.segment.inside) if face.material not in known)


def together(case: LineCase, faces: list[OldFace]) -> OldFace:
    """What one or two faces carry together: the stronger alone where the other adds nothing."""
    best = max(faces, key=lambda face: float(face.shear.asd))
    if len(faces) == 1:
        return best
    one, other = faces
    same = one.material == other.material
    shear, stiffness = case.sdpws.both_faces((one.shear, one.stiffness), (other.shear, other.stiffness), same)
    if float(shear.asd) <= float(best.shear.asd) * (1 + 1e-9):
        return best
    material = f"{one.material}, both faces" if same else f"{one.material} and {other.material}"
    cite = " and ".join(dict.fromkeys((one.cite, other.cite)))
    return OldFace(material, shear, stiffness, cite, one.seen | other.seen)


def faces_words(brace: Brace) -> str:
    """What is on the two faces, where none of it counts."""
    return " and ".join(sorted({_face(brace.segment.outside), _face(brace.segment.inside)}))


def _face(face: Sheathing) -> str:
    return f"{face.material}, decayed" if face.condition.value == "decayed" else face.material
