"""What the old sheathing of a wall segment carries: each sound face by the panel standard, and both together.

Boards and plaster on one wall are unlike materials: together they count for twice the lesser or for the greater, never
for their sum; two faces of one material add.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import Sheathing
from groundsill.loadpath.case import Brace, LineCase, species_of
from groundsill.standards.sheathing import SegmentShear
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given
from groundsill.working.value import Mark

__all__ = ["OldFace", "faces_words", "old_faces", "strange_faces", "together"]

_NOTHING = ("", "none")
_TAPE_IN = 0.005
_CURE = "cure: new panels, nailed to the bare studs"


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
    refusals, found, chosen = [], list[OldFace](), frozenset[Mark]()
    for side, face in _sides(brace):
        if not _known(case, face):
            continue
        mark, path = brace.segment.mark or brace.segment_id, f"survey.underfloor.segments.{brace.segment_id}.{side}"
        seen = case.reading.noted(f"the condition of {face.material} on {mark}, {side}", f"{path}.condition")
        if face.condition.value == "decayed":
            chosen |= seen
            continue
        if _not_told(case, brace, face):
            continue
        try:
            found.append(_counted(case, brace, (side, face), h, b, seen))
        except OutsideLimits as refused:
            refusals.append(refused)
    if refusals and not found:
        raise refusals[0]
    return found, chosen


def _sides(brace: Brace) -> tuple[tuple[str, Sheathing], ...]:
    return ("outside", brace.segment.outside), ("inside", brace.segment.inside)


def _known(case: LineCase, face: Sheathing) -> bool:
    """Whether a table of the edition holds it as an old wall's sheathing."""
    sdpws = case.sdpws
    return any(face.material in table().rows for table in (sdpws.boards, sdpws.plaster, sdpws.pressed))


def _not_told(case: LineCase, brace: Brace, face: Sheathing) -> str:
    """What somebody must still measure before its table can be read."""
    if face.material not in case.sdpws.pressed().rows:
        return ""
    if face.edge_spacing_in.value is None:
        return f"how far apart the edge nails of {face.material} stand was not measured ({case.sdpws.clauses.panels})"
    path, mark = f"survey.underfloor.segments.{brace.segment_id}.stud", brace.segment.mark or brace.segment_id
    wood, _ = species_of(case, path, brace.segment.stud.species, f"the studs of {mark}")
    return "" if wood else f"the studs' species is not known, and the value of {face.material} depends on it"


def _counted(
    case: LineCase, brace: Brace, at: tuple[str, Sheathing], h: float, b: float, seen: frozenset[Mark]
) -> OldFace:
    """One face by its table: boards, plaster and gypsum, particleboard and fibreboard."""
    face, sdpws = at[1], case.sdpws
    if face.material in sdpws.pressed().rows:
        return _pressed(case, brace, at, h, b, seen)
    boards = face.material in sdpws.boards().rows
    stiff = (sdpws.boards() if boards else sdpws.plaster()).read(face.material, "G_a")
    shear = (sdpws.lumber_unit_shear if boards else sdpws.plaster_unit_shear)(face.material, h, b, case.load)
    return OldFace(face.material, shear, stiff, sdpws.clauses.boards if boards else sdpws.clauses.plaster, seen)


def _pressed(
    case: LineCase, brace: Brace, at: tuple[str, Sheathing], h: float, b: float, seen: frozenset[Mark]
) -> OldFace:
    """Particleboard or fibreboard by the next wider spacing of its table."""
    (side, face), sdpws = at, case.sdpws
    segment = f"survey.underfloor.segments.{brace.segment_id}"
    wood, told = species_of(case, f"{segment}.stud", brace.segment.stud.species, "the studs")
    G = doubted(case.nds.specific_gravity(wood), told)
    measured = face.edge_spacing_in.value
    assert measured is not None
    columns = [float(str(column)) for column in sdpws.pressed().columns]
    wide = min((column for column in columns if column >= measured - _TAPE_IN), default=None)
    if wide is None:
        most = f"{max(columns):g} in. at most"
        raise OutsideLimits(f"{sdpws.clauses.panels}: edge nails of {face.material} {measured:g} in. apart; {most}")
    marks = case.reading.marked(f"{segment}.{side}", "edge_spacing_in")
    s = given("s", wide, "in", f"edge nails of {face.material}, {measured:g} in. apart as surveyed", marks)
    shear = sdpws.pressed_unit_shear(face.material, s, h, b, G, case.load)
    stiff = sdpws.pressed_stiffness().read(face.material, s)
    return OldFace(face.material, shear, stiff, sdpws.clauses.panels, seen)


def strange_faces(case: LineCase, brace: Brace) -> str:
    """Of what is on the faces of a segment nobody can say how much it holds, and what would let them; in words."""
    faces = [face for _, face in _sides(brace)]
    strange = [face.material for face in faces if face.material not in _NOTHING and not _known(case, face)]
    words = (
        [f"no table of the program has a strength for {' and '.join(map(repr, strange))}; {_CURE}"] if strange else []
    )
    sound = (face for face in faces if face.condition.value != "decayed")
    return "; ".join((*words, *(told for face in sound if (told := _not_told(case, brace, face)))))


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
