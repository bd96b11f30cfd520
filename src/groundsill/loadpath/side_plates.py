"""Side plates: what those of one sill piece hold in wood and steel, together, or why nobody can say.

A plate counts by the load its evaluation report gives, or, as generic hardware, by its screws in the side of the sill
and by its own steel. Screws and anchors lie in two rows, one above the other, so the force turns the plate: that couple
is carried through to whichever row is said to hold it, or, where nothing is said, to both in full. What the anchors
hold in the concrete is the next question (:mod:`groundsill.loadpath.side_plate_anchors`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.bolts_counted import refused_in
from groundsill.loadpath.case import LineCase, foundation_at, moisture_of, species_of
from groundsill.loadpath.sill_bolts import Wood
from groundsill.loadpath.stem import near_break
from groundsill.standards.aisi_s100_16.plates import (
    allowable_bearing,
    allowable_moment,
    allowable_shear,
    force_in_both,
)
from groundsill.standards.nds_2018.shear import Lateral
from groundsill.standards.statics.fasteners import EndFastener, end_fastener
from groundsill.work.pieces import SideplatePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import add, divide, given, least, note, scale, subtract
from groundsill.working.value import marks_of

__all__ = ["LOW_MODULUS_PSI", "MIXED", "TRIAL_LB", "Plated", "end_anchor", "half_row", "plates_of", "row_words"]

TRIAL_LB = 1000.0  # every force follows in proportion: the plate is worked out for this one
MIXED = "no value is given for two kinds of fastener in one joint, so the stronger of the two counts alone"
_HOLE_OVER_IN = 1 / 16
_EDGE_DIAMETERS = 1.5  # AISI J3.1, from memory: a hole at least this far from the edge of the plate
_WEAK_PSI = 2500.0
LOW_MODULUS_PSI = 1_000_000.0  # a low modulus for the group action factor: common practice, no source
_STEEL_MODULUS_PSI = 29_000_000.0
_LACKS = "a side plate counts by its report, or by its thickness, width, screws and how high they stand"


@dataclass(frozen=True, slots=True)
class Plated:
    """The side plates of one sill piece: those that count, what they hold in wood and steel, and the others in words.

    ``governs`` says of each kind of limit that decided a plate; ``left_out`` why a plate does not count.
    """

    plates: tuple[tuple[str, SideplatePiece], ...]
    wood: Wood
    governs: tuple[str, ...]
    left_out: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _One:
    """One plate, lb: allowable and expected load along the wall, and what governs it."""

    allowable: float
    expected: float
    governs: str


def plates_of(case: LineCase, id: str, sill: SillPiece) -> Plated | None:
    """The side plates that stand on a sill piece; None where there are none."""
    here = [(key, p) for key, p in case.of_kind(SideplatePiece) if _on(p, sill)]
    plates: list[tuple[str, SideplatePiece]] = []
    left_out: list[str] = []
    for key, piece in here:
        assert isinstance(piece, SideplatePiece)
        reason = _why_not(case, piece)
        if reason is None:
            plates.append((key, piece))
        else:
            left_out.append(f"side plate {piece.mark or key}: {reason}")
    if not here:
        return None
    if not plates:
        return Plated((), Wood(0.0), (), tuple(left_out))
    wood, governs = _wood(case, id, sill, plates)
    return Plated(tuple(plates), wood, governs, tuple(left_out))


def _on(piece: object, sill: SillPiece) -> bool:
    return isinstance(piece, SideplatePiece) and sill.from_in <= piece.station_in <= sill.to_in


def _why_not(case: LineCase, piece: SideplatePiece) -> str | None:
    """What keeps a plate from counting at all."""
    if piece.capacity_lb is None and None in (
        piece.thickness_in, piece.width_in, piece.screw_length_in, piece.screw_above_in, piece.screw or None,
    ):  # fmt: skip
        return _LACKS
    if piece.capacity_lb is not None and not piece.report.strip():
        return "an entered load counts only with the number of its evaluation report"
    if not piece.report and piece.anchor in ("expansion", "screw") and not piece.anchor_report.strip():
        return f"{piece.anchor} anchors count only by an entered report"
    if piece.anchor == "expansion":
        under = foundation_at(case.reading, case.id, piece.station_in)
        if under is not None and (refused := refused_in(under[1].material)):
            return refused
        f_c = under[1].strength_psi.value if under is not None else None
        if f_c is None or f_c < _WEAK_PSI:
            return "expansion anchors are not counted in concrete under 2,500 psi or of unknown strength"
    for station in (piece.station_in - half_row(piece), piece.station_in + half_row(piece)):
        if (broken := near_break(case, station)) is not None:
            return broken
    return None


def half_row(piece: SideplatePiece) -> float:
    """Half the length of the row of anchors, inches."""
    return (piece.anchors - 1) * piece.anchor_spacing_in / 2


def _wood(
    case: LineCase, id: str, sill: SillPiece, plates: Sequence[tuple[str, SideplatePiece]]
) -> tuple[Wood, tuple[str, ...]]:
    """All plates of a piece together, and what governs them in words."""
    path, name = f"survey.underfloor.sills.{id}", f"sill {sill.mark or id}"
    chosen = case.reading.noted(f"the condition of {name}, and whether it is damp", path, "condition", "damp")
    _, told = species_of(case, path, sill.species, name)
    if sill.condition.value == "decayed":
        return Wood(doubted(0.0, chosen, unit="lb", symbol="ΣV"), marks=chosen), ("the sill is decayed",)
    if sill.condition.value == "soft":
        return Wood(None, why_not="the sill is soft: probe how deep it is soft first", marks=chosen), ()
    doubts = () if sill.condition.value else ("its condition was not seen: counted as sound",)
    thick = case.reading.number(f"{path}.thickness_in", sill.thickness_in, "t_m", "in", f"thickness of {name}")
    width = case.reading.number(f"{path}.width_in", sill.width_in, "b_m", "in", f"width of {name}")
    terms, expected, governs = [], [], []
    try:
        for key, piece in plates:
            note(f"side plate {piece.mark or key}")
            if piece.capacity_lb is not None:
                one = _by_report(case, sill, piece)
            elif thick is None or width is None or not sill.species.value:
                why_not = "the sill's thickness, width or species is not known"
                return Wood(None, why_not=why_not, marks=chosen | told), ()
            else:
                chosen |= told
                one = _generic(case, sill, piece, (thick, width))
            terms.append(doubted(one.allowable, chosen))
            expected.append(one.expected)
            governs.append(one.governs)
    except OutsideLimits as refused:
        return Wood(None, why_not=str(refused), marks=chosen | marks_of((thick, width))), ()
    whole = add(*terms, symbol="ΣV", label=f"all side plates of {name}")
    yields = sum(expected) if all(expected) else 0.0  # of a plate by its report nobody knows it, nor then of all
    return Wood(whole, yields, "", "", doubts, marks_of((whole,))), tuple(dict.fromkeys(governs))


def _by_report(case: LineCase, sill: SillPiece, piece: SideplatePiece) -> _One:
    """The load of its report, less for wet wood; what it is expected to yield at no report says."""
    assert piece.capacity_lb is not None
    told = given("V_r", piece.capacity_lb, "lb", f"allowable load by {piece.report}")
    C_M = case.nds.wet_service_factor(moisture_of(sill.damp.value))
    return _One(scale(told, C_M, symbol="V_r'", label="in the sill's moisture"), 0.0, f"by {piece.report}")


def _generic(case: LineCase, sill: SillPiece, piece: SideplatePiece, measures: tuple[float, float]) -> _One:
    """One plate of plain steel by its screws and by its own section."""
    assert piece.thickness_in is not None and piece.width_in is not None and piece.screw_above_in is not None
    V = given("V_1", TRIAL_LB, "lb", "trial force on one plate: all follows in proportion")
    e = add(
        given("y_s", piece.screw_above_in, "in", "screws above the top of the stem"),
        given("y_a", piece.from_top_in, "in", "anchors below it"),
        symbol="e",
        label="from row to row: the couple's lever",
    )
    size = piece.screw.removeprefix("No. ").partition(" ")[0]
    D = _diameter(case, piece, size)
    held, yields = _screws(case, sill, piece, (size, D), V, e, measures)
    found = {"its screws": held, "its steel in bending and shear": _section(piece, float(D), e)}
    if piece.anchor_diameter_in is not None:
        d = given("d", piece.anchor_diameter_in, "in", "anchor diameter")
        t = given("t", piece.thickness_in, "in", "thickness of the plate")
        bears = allowable_bearing(d, t, piece.steel)
        found["bearing of an anchor in it"] = _in_proportion(bears, V, end_anchor(piece, V, e).resultant, "V_b")
    governs = min(found, key=lambda key: float(found[key]))
    allowable = least(*found.values(), symbol="V_a", label="one side plate: the least of screws and steel")
    return _One(allowable, yields, f"governed by {governs}")


def _in_proportion(strength: float, V: float, R: float, symbol: str) -> float:
    """The force on the plate at which a fastener that takes R of the trial force reaches its strength."""
    return scale(strength, divide(V, R, symbol="V_1/R", unit="1"), symbol=symbol, label="force on the plate by it")


def end_anchor(piece: SideplatePiece, V: float, e: float) -> EndFastener:
    """The force on the end anchor of a plate for a force on the plate; without the couple where the screws hold it."""
    n = given("n_a", piece.anchors, "1", "anchors in the row")
    s = given("s_a", piece.anchor_spacing_in, "in", "spacing of the anchors")
    return end_fastener(V, n, s, 0.0 if piece.couple == "screws" else e)


def _screws(
    case: LineCase,
    sill: SillPiece,
    piece: SideplatePiece,
    screw: tuple[str, float],
    V: float,
    e: float,
    measures: tuple[float, float],
) -> tuple[float, float]:
    """Force on the plate that its screws allow, and that at which they are expected to yield, lb."""
    assert piece.screw_above_in is not None and piece.screw_length_in is not None and piece.thickness_in is not None
    thick, width = measures
    edge = min(piece.screw_above_in, float(thick) - piece.screw_above_in)
    if edge <= 0:
        raise OutsideLimits(f"the screws stand {piece.screw_above_in:g} in. above the stem, past a sill of {thick:g}")
    if piece.screw_length_in - piece.thickness_in - piece.packing_in > float(width):
        raise OutsideLimits(f"screws of {piece.screw_length_in:g} in. come out behind a sill {float(width):g} in. wide")
    n = given("n_s", piece.screws, "1", "screws in the row")
    s = given("s_s", piece.screw_spacing_in, "in", "spacing of the screws")
    end = end_fastener(V, n, s, 0.0 if piece.couple == "anchors" else e)
    Z, yields = _one_screw(case, piece, _screw(case, sill, piece, screw[0], end.theta))
    C_g, C_delta = _factors(case, sill, piece, (screw[1], n, s), end, (edge, thick, width))
    each = case.nds.adjusted_lateral(Z, moisture=moisture_of(sill.damp.value), C_g=C_g, C_delta=C_delta)
    expected = yields * float(C_g) * float(C_delta) * float(V) / float(end.resultant)
    return _in_proportion(each, V, end.resultant, "V_s"), expected


def _diameter(case: LineCase, piece: SideplatePiece, size: str) -> float:
    """The nominal diameter of the screw: by its number, or as a lag screw is called."""
    if piece.screw.startswith("No."):
        return case.nds.screw_diameter(size)
    top, _, bottom = size.partition("/")
    return given("D", float(top) / float(bottom), "in", "nominal diameter of the lag screw")


def _screw(case: LineCase, sill: SillPiece, piece: SideplatePiece, size: str, theta: float) -> Lateral:
    """One screw through the plate into the side of the sill, loaded at an angle to its grain."""
    L = given("L", piece.screw_length_in or 0.0, "in", "length of the screw")
    if piece.packing_in > 0:
        packing = given("g", piece.packing_in, "in", "packing, which bears nothing")
        L = subtract(L, packing, symbol="L", label="length of the screw less the packing")
    t = given("t_s", piece.thickness_in or 0.0, "in", "thickness of the plate")
    if piece.screw.startswith("No."):
        return case.nds.wood_screw_steel_plate(size, L, t, sill.species.value or "")
    thick = piece.steel == "A36" and float(t) >= 0.25
    steel = "A36, 1/4 in. and thicker" if thick else "A653 Grade 33, under 1/4 in."
    return case.nds.lag_screw_steel_plate(size, L, t, sill.species.value or "", theta, steel)


def _one_screw(case: LineCase, piece: SideplatePiece, joint: Lateral) -> tuple[float, float]:
    """Reference value and expected yield of one screw; packing takes it down by the general dowel equations."""
    if piece.packing_in <= 0:
        return joint.Z, float(case.nds.expected_of(joint).P)
    note("packing between plate and sill: the general dowel equations")
    packed = case.nds.across_gap(joint, given("g", piece.packing_in, "in", "packing between plate and sill"))
    return packed.Z, float(packed.P)


def _factors(
    case: LineCase,
    sill: SillPiece,
    piece: SideplatePiece,
    row: tuple[float, float, float],
    end: EndFastener,
    sizes: tuple[float, float, float],
) -> tuple[float, float]:
    """Group action and geometry factors of the row of screws; a screw too near an edge or an end is refused."""
    D, n, s = row
    edge, thick, width = sizes
    half = (piece.screws - 1) * piece.screw_spacing_in / 2
    to_end = min(piece.station_in - half - sill.from_in, sill.to_in - piece.station_in - half)
    if to_end <= 0:
        raise OutsideLimits("the row of screws runs past the end of the sill piece")
    a_edge = given("a_edge", edge, "in", "screw to the nearer edge of the sill", marks_of((thick,)))
    a_end = given("a_end", to_end, "in", "end screw to the end of the sill piece")
    if float(end.across) > 0 and float(D) >= 0.25:
        case.nds.edge_distance_met(D, a_edge, "perpendicular, loaded edge")
    C_delta = case.nds.geometry_factor(D, a_end, a_edge, s if piece.screws > 1 else 0.0)
    if piece.screws < 2 or float(D) < 0.25:
        return 1.0, C_delta
    E_m = given("E_m", LOW_MODULUS_PSI, "psi", "a low modulus of old wood: common practice, no source")
    A_m = given("A_m", float(thick) * float(width), "in^2", "section of the sill", marks_of((thick, width)))
    E_s = given("E_s", _STEEL_MODULUS_PSI, "psi", "modulus of steel")
    tall = (piece.screw_above_in or 0.0) + piece.from_top_in
    A_s = given("A_s", (piece.thickness_in or 0.0) * tall, "in^2", "section of the plate, from row to row")
    return case.nds.group_action_factor(D, n, s, E_m, A_m, E_s, A_s, "wood to metal"), C_delta


def _section(piece: SideplatePiece, D: float, e: float) -> float:
    """Force on the plate by its own steel: bending and shear together, through the row of anchors or of screws."""
    assert piece.width_in is not None and piece.thickness_in is not None
    b = given("b", piece.width_in, "in", "width of the plate")
    t = given("t", piece.thickness_in, "in", "thickness of the plate")
    rows = [(piece.screws, D + _HOLE_OVER_IN, piece.screw_spacing_in)]
    if piece.anchor_diameter_in is not None:
        rows.append((piece.anchors, piece.anchor_diameter_in + _HOLE_OVER_IN, piece.anchor_spacing_in))
    found = []
    for count, hole, apart in rows:
        margin = (piece.width_in - (count - 1) * apart) / 2
        if margin < _EDGE_DIAMETERS * (hole - _HOLE_OVER_IN):
            asked = f"{_EDGE_DIAMETERS:g} diameters (AISI S100-16 J3.1)"
            raise OutsideLimits(f"a hole {margin:.3g} in. from the edge of the plate; it must be at least {asked}")
        n = given("n", count, "1", "holes in the row")
        d_h = given("d_h", hole, "in", "hole diameter")
        s = given("s", apart if count > 1 else 0.0, "in", "spacing of the holes")
        M_a = allowable_moment(b, t, n, d_h, s, piece.steel)
        found.append(force_in_both(M_a, allowable_shear(b, t, n, d_h, piece.steel), e))
    return least(*found, symbol="V_p", label="force on the plate by its own steel")


def row_words(piece: SideplatePiece) -> str:
    """What holds the couple, in words."""
    if piece.couple == "each group in full":
        return "screws and anchors each hold the whole couple"
    return f"the {piece.couple} alone hold the couple"
