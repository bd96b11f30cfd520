"""Clips and straps: by the load their evaluation report gives, or as generic hardware by their nails and their steel.

A strap pulls straight: its nails on one side of the joint, and its own section through the holes. A clip is sheared
along the wall: the force passes beside its rows of nails, and that couple is carried through by each row in full. An
entered load without its report is only *indicated*.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import JoistField, SillPiece
from groundsill.loadpath.case import LineCase, moisture_of, species_of
from groundsill.standards.aisi_s100_16.plates import allowable_moment, allowable_shear, force_in_both
from groundsill.standards.aisi_s100_16.tension import strap
from groundsill.standards.statics.fasteners import end_fastener
from groundsill.work.pieces import Hardware, SplicePiece, StrapPiece, TiePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import divide, given, least, multiply, scale
from groundsill.working.value import Mark

__all__ = ["AS_ENTERED", "Held", "Into", "clip", "into_floor", "into_plate", "into_sills", "tie_strap"]

AS_ENTERED = "a load as entered, without the number of its evaluation report"
_TRIAL_LB = 100.0
_LACKS = "neither its evaluation report nor its steel and nails are given"


@dataclass(frozen=True, slots=True)
class Into:
    """The wood that nails go into: its species, its moisture (a row of the wet service table) and how deep it is, in.

    ``depth_in`` is None where nobody knows it, ``species`` empty where nobody told it; ``marks`` are those of its
    species and moisture.
    """

    name: str
    species: str
    moisture: str
    depth_in: float | None
    marks: frozenset[Mark] = frozenset()


def into_plate(case: LineCase, from_above: bool = False) -> Into:
    """The top plate, nailed from above: as deep as it is thick in all its layers; else thick or wide, the less."""
    plate, path = case.line.top_plate, f"survey.underfloor.lines.{case.id}.top_plate"
    marks = case.reading.noted("whether the top plate is damp", f"{path}.damp")
    thick = case.reading.number(f"{path}.thickness_in", plate.thickness_in, "t_m", "in", "thickness of one plate")
    depth = None if thick is None else scale(thick, float(plate.layers), symbol="t_m", label="all plates together")
    if not from_above:
        wide = case.reading.number(f"{path}.width_in", plate.width_in, "t_m", "in", "width of the plate")
        both = depth is not None and wide is not None
        depth = least(depth or 0.0, wide or 0.0, symbol="t_m", label="thick or wide, the less") if both else None
    species, wood = species_of(case, path, plate.species, f"the plate of {case.line.mark or case.id}")
    return Into("the top plate", species, moisture_of(plate.damp.value), depth, marks | wood)


def into_sills(case: LineCase, sills: Sequence[tuple[str, SillPiece]]) -> tuple[Into, ...]:
    """Sill pieces, each as deep as it is thick."""
    found = []
    for id, sill in sills:
        path, name = f"survey.underfloor.sills.{id}", f"sill {sill.mark or id}"
        marks = case.reading.noted(f"whether {name} is damp", f"{path}.damp")
        depth = case.reading.number(f"{path}.thickness_in", sill.thickness_in, "t_m", "in", f"thickness of {name}")
        species, wood = species_of(case, path, sill.species, name)
        found.append(Into(name, species, moisture_of(sill.damp.value), depth, marks | wood))
    return tuple(found)


def into_floor(case: LineCase, joists: tuple[str, JoistField] | None) -> Into:
    """The rim or blocking, taken as thick as the joists are, of their species, and no damper than what it stands on."""
    name, depth = "the rim or blocking", None
    if joists is None:
        return Into(name, "", moisture_of(None), depth)
    id, field = joists
    if field.breadth_in.value is not None:
        depth = given("t_m", field.breadth_in.value, "in", "thickness of rim or blocking: that of the joists")
    species, wood = species_of(case, f"survey.underfloor.joists.{id}", field.species, f"joists {field.mark or id}")
    return Into(name, species, moisture_of(None), depth, wood)


@dataclass(frozen=True, slots=True)
class Held:
    """What one clip or strap holds, lb allowable; in what words, by which clause, and the extension it rests on."""

    capacity: float
    words: str
    clause: str
    extension: str = ""


def clip(case: LineCase, tie: TiePiece, into: tuple[Into, ...]) -> Held:
    """One clip, sheared along the wall; ``into`` is the wood of both its rows of nails.

    Raises:
        OutsideLimits: when neither a load nor its steel is given, or its nails are outside their rules.
    """
    if tie.capacity_lb is not None:
        return _entered(tie.capacity_lb, tie.report, "T_a")
    if tie.made_of is None:
        raise OutsideLimits(f"clip {tie.mark}: {_LACKS}")
    made = tie.made_of
    V = given("V_1", _TRIAL_LB, "lb", "trial force on one clip: all follows in proportion")
    lever = given("e", made.lever_in, "in", "from a row of nails to where the force passes")
    n = given("n", made.nails, "1", "nails in one row")
    s = given("s", made.spacing_in if made.nails > 1 else 0.0, "in", "spacing of the nails along the wall")
    worst = end_fastener(V, n, s, lever)
    each = least(*(_nail(case, made, one) for one in into), symbol="Z'", label="one nail, in the weaker wood")
    part = divide(V, worst.resultant, symbol="V_1/R", unit="1", label="force on the clip over that on its end nail")
    by_nails = scale(each, part, symbol="V_n", label="force on the clip by its nails")
    by_steel = _sheared(case, made, lever)
    capacity = least(by_nails, by_steel, symbol="T_a", label="one clip: the least of nails and steel")
    return Held(capacity, _words(made, float(by_nails) <= float(by_steel)), _clause(case, "F, G"))


def tie_strap(case: LineCase, piece: SplicePiece | StrapPiece, into: tuple[Into, ...]) -> Held:
    """A strap across a joint, pulled straight; ``into`` is the wood on its sides.

    Raises:
        OutsideLimits: when neither a load nor its steel is given, or its nails are outside their rules.
    """
    if piece.capacity_lb is not None:
        return _entered(piece.capacity_lb, piece.report, "T_a")
    if piece.made_of is None:
        raise OutsideLimits(f"{piece.kind} {piece.mark}: {_LACKS}")
    made = piece.made_of
    each = least(*(_nail(case, made, one) for one in into), symbol="Z'", label="one nail, in the weaker wood")
    n = given("n", made.nails, "1", "nails on one side of the joint")
    by_nails = multiply(each, n, symbol="n Z'", unit="lb", label="the nails of one side")
    t = given("t", made.thickness_in, "in", "thickness of the strap")
    w = given("w", made.width_in, "in", "width of the strap")
    holes = given("n_h", made.across, "1", "holes across it at one section")
    d_h = given("d_h", float(case.nds.nail_size(made.nail).D), "in", "what a nail displaces")
    by_steel = strap(w, t, holes, d_h, made.steel).T
    capacity = least(by_nails, by_steel, symbol="T_a", label="the least of nails and steel")
    return Held(capacity, _words(made, float(by_nails) <= float(by_steel)), _clause(case, "D"))


def _entered(load: float, report: str, symbol: str) -> Held:
    if report.strip():
        return Held(given(symbol, load, "lb", report), report, "evaluation report entered")
    return Held(given(symbol, load, "lb", "as entered"), "capacity as entered", "evaluation report", AS_ENTERED)


def _nail(case: LineCase, made: Hardware, into: Into) -> float:
    """One nail through the steel into one of the woods, adjusted."""
    if into.depth_in is None:
        raise OutsideLimits(f"how deep nails may go into {into.name} is not known: its thickness was not measured")
    if not into.species:
        raise OutsideLimits(f"the wood of {into.name} was not told")
    t = given("t_s", made.thickness_in, "in", "thickness of the steel")
    one = case.nds.nail_steel_plate(made.nail, t, into.species, into.depth_in)
    return doubted(case.nds.adjusted_lateral(one.Z, moisture=into.moisture), into.marks)


def _sheared(case: LineCase, made: Hardware, lever: float) -> float:
    """Force on a clip by its own steel: bending and shear together through a row of nails."""
    b = given("b", made.width_in, "in", "width of the clip along the wall")
    t = given("t", made.thickness_in, "in", "thickness of the clip")
    n = given("n_h", made.nails, "1", "holes in one row")
    s = given("s", made.spacing_in if made.nails > 1 else 0.0, "in", "spacing of the holes")
    d_h = given("d_h", float(case.nds.nail_size(made.nail).D), "in", "what a nail displaces")
    M_a = allowable_moment(b, t, n, d_h, s, made.steel)
    return force_in_both(M_a, allowable_shear(b, t, n, d_h, made.steel), lever)


def _words(made: Hardware, nails: bool) -> str:
    nailed = f"{made.nails} {made.nail} nails each side, {made.thickness_in:g} x {made.width_in:g} in. {made.steel}"
    return f"{nailed}: governed by its {'nails' if nails else 'steel'}"


def _clause(case: LineCase, chapter: str) -> str:
    return f"{case.nds.cite('12.3.1, 11.3')}; AISI S100-16 chapter{'s' if ',' in chapter else ''} {chapter}"
