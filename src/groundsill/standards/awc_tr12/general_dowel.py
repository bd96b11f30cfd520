"""Table 1-1: the yield load of a dowel through two solid members that a gap keeps apart.

In: the joint as for NDS 12.3, and the gap g: a shim, grout, a rotted underside, a layer of boards that the dowel only
passes through. Out: yield loads P and, over NDS's reduction terms, the reference value. With no gap the modes are
those of NDS; the wider the gap, the less every mode but I carries. Resistances are per inch of dowel (q = F D), and
the dowel's own is its plastic moment M = F_yb D^3/6.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from typing import Annotated

from groundsill.standards.awc_tr12 import SOURCE
from groundsill.standards.nds_2018 import PRACTICE, bearing, bolts, shear
from groundsill.standards.nds_2018 import sill_bolt as flush
from groundsill.standards.nds_2018.symbols import (
    ANGLE,
    BOLT_DIAMETER,
    DIAMETER,
    Angle,
    BearingMain,
    BearingSide,
    BoltDiameter,
    Diameter,
    LengthMain,
    LengthSide,
    YieldStrength,
    hold,
)
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.source import How
from groundsill.working.steps import divide, least, note, scale

__all__ = [
    "GapJoint",
    "across_gap",
    "bearing_resistance",
    "dowel_moment",
    "mode_ii",
    "mode_iiim",
    "mode_iiis",
    "mode_im",
    "mode_is",
    "mode_iv",
    "sill_bolt_with_gap",
    "sill_bolt_with_gap_beyond",
    "single_shear_with_gap",
    "yield_loads",
]

RECALLED: How = "from memory"

GAP = Q("in", "g", "gap between the members", at_least=0.0)
Gap = Annotated[float, GAP]
ResistanceMain = Annotated[float, Q("lb/in", "q_m", "bearing resistance of the main member", above=0.0)]
ResistanceSide = Annotated[float, Q("lb/in", "q_s", "bearing resistance of the side member", above=0.0)]
MomentMain = Annotated[float, Q("lb-in", "M_m", "moment resistance of the dowel in the main member", above=0.0)]
MomentSide = Annotated[float, Q("lb-in", "M_s", "moment resistance of the dowel in the side member", above=0.0)]
Concrete = Annotated[float, Q("psi", "f'_c", "concrete strength", at_least=2500.0)]
Sill = Annotated[float, Q("in", "l_s", "thickness of the sill", above=0.0)]
Embedment = Annotated[float, Q("in", "l_m", "length of the bolt in the concrete", at_least=6.0)]


@dataclass(frozen=True, slots=True)
class GapJoint:
    """One dowel across a gap: reference value ``Z`` and its mode, the yield loads ``P_*`` of all modes (lb), the least
    of them ``P`` and its mode, and the gap in inches.
    """

    Z: float
    mode: str
    P: float
    P_mode: str
    P_Im: float
    P_Is: float
    P_II: float
    P_IIIm: float
    P_IIIs: float
    P_IV: float
    g: float


@equation(
    "awc-tr12/1.4-q", title="Bearing resistance per inch of dowel", clause="1.7 Notation", source=SOURCE, how=RECALLED
)
def bearing_resistance(
    F_e: Annotated[float, Q("psi", "F_e", "dowel bearing strength of the member", above=0.0)], D: Diameter
) -> Annotated[float, Q("lb/in", "q", "bearing resistance of the member")]:
    """Q = F_e D. Example: 5,600 psi under a 5/8 in. bolt: 3,500 lb/in (our own arithmetic)."""
    return F_e * D


@equation("awc-tr12/1.4-M", title="Moment resistance of the dowel", clause="1.7 Notation", source=SOURCE, how=RECALLED)
def dowel_moment(F_yb: YieldStrength, D: Diameter) -> Annotated[float, Q("lb-in", "M", "moment resistance")]:
    """M = F_yb D^3/6, the plastic moment of a round bar. Example: 5/8 in. bolt, 45,000 psi: 1,831 lb-in."""
    return F_yb * D**3 / 6


@equation("awc-tr12/1-1-Im", title="Yield load, mode Im", clause="Table 1-1", source=SOURCE, how=RECALLED)
def mode_im(q_m: ResistanceMain, l_m: LengthMain) -> Annotated[float, Q("lb", "P_Im", "yield load, mode Im")]:
    """The main member crushes along its whole length; a gap makes no difference."""
    return q_m * l_m


@equation("awc-tr12/1-1-Is", title="Yield load, mode Is", clause="Table 1-1", source=SOURCE, how=RECALLED)
def mode_is(q_s: ResistanceSide, l_s: LengthSide) -> Annotated[float, Q("lb", "P_Is", "yield load, mode Is")]:
    """The side member crushes along its whole length; a gap makes no difference."""
    return q_s * l_s


@equation("awc-tr12/1-1-II", title="Yield load, mode II", clause="Table 1-1", source=SOURCE, how=RECALLED)
def mode_ii(
    q_s: ResistanceSide, q_m: ResistanceMain, l_s: LengthSide, l_m: LengthMain, g: Gap
) -> Annotated[float, Q("lb", "P_II", "yield load, mode II")]:
    """The dowel turns, straight; the moment about the gap balances: A P^2 + B P + C = 0."""
    A = 1 / (4 * q_s) + 1 / (4 * q_m)
    B = l_s / 2 + g + l_m / 2
    C = -q_s * l_s**2 / 4 - q_m * l_m**2 / 4
    return (-B + sqrt(B**2 - 4 * A * C)) / (2 * A)


@equation("awc-tr12/1-1-IIIm", title="Yield load, mode IIIm", clause="Table 1-1", source=SOURCE, how=RECALLED)
def mode_iiim(
    q_s: ResistanceSide, q_m: ResistanceMain, l_m: LengthMain, M_s: MomentSide, g: Gap
) -> Annotated[float, Q("lb", "P_IIIm", "yield load, mode IIIm")]:
    """One hinge, in the side member; the dowel turns in the main member."""
    A = 1 / (2 * q_s) + 1 / (4 * q_m)
    B = g + l_m / 2
    C = -M_s - q_m * l_m**2 / 4
    return (-B + sqrt(B**2 - 4 * A * C)) / (2 * A)


@equation("awc-tr12/1-1-IIIs", title="Yield load, mode IIIs", clause="Table 1-1", source=SOURCE, how=RECALLED)
def mode_iiis(
    q_s: ResistanceSide, q_m: ResistanceMain, l_s: LengthSide, M_m: MomentMain, g: Gap
) -> Annotated[float, Q("lb", "P_IIIs", "yield load, mode IIIs")]:
    """One hinge, in the main member; the dowel turns in the side member."""
    A = 1 / (4 * q_s) + 1 / (2 * q_m)
    B = l_s / 2 + g
    C = -q_s * l_s**2 / 4 - M_m
    return (-B + sqrt(B**2 - 4 * A * C)) / (2 * A)


@equation("awc-tr12/1-1-IV", title="Yield load, mode IV", clause="Table 1-1", source=SOURCE, how=RECALLED)
def mode_iv(
    q_s: ResistanceSide, q_m: ResistanceMain, M_s: MomentSide, M_m: MomentMain, g: Gap
) -> Annotated[float, Q("lb", "P_IV", "yield load, mode IV")]:
    """A hinge in each member."""
    A = 1 / (2 * q_s) + 1 / (2 * q_m)
    B = g
    C = -M_s - M_m
    return (-B + sqrt(B**2 - 4 * A * C)) / (2 * A)


def yield_loads(D: float, l_m: float, l_s: float, F_em: float, F_es: float, F_yb: float, g: float) -> dict[str, float]:
    """The yield load of each mode by its name, lb; the dowel is of one diameter, so both its moments are the same."""
    q_m, q_s = bearing_resistance(F_em, D), bearing_resistance(F_es, D)
    M = dowel_moment(F_yb, D)
    return {
        "Im": mode_im(q_m, l_m),
        "Is": mode_is(q_s, l_s),
        "II": mode_ii(q_s, q_m, l_s, l_m, g),
        "IIIm": mode_iiim(q_s, q_m, l_m, M, g),
        "IIIs": mode_iiis(q_s, q_m, l_s, M, g),
        "IV": mode_iv(q_s, q_m, M, M, g),
    }


@procedure(
    "awc-tr12/1-1",
    title="Reference lateral design value across a gap, single shear",
    clause="Table 1-1",
    source=SOURCE,
    alias="tr12.single-shear",
)
def single_shear_with_gap(
    D: Diameter,
    l_m: LengthMain,
    l_s: LengthSide,
    F_em: BearingMain,
    F_es: BearingSide,
    F_yb: YieldStrength,
    g: Gap = 0.0,
    theta: Angle = 0.0,
) -> GapJoint:
    """Z in lb of one dowel: the least of the yield loads over the reduction terms of NDS Table 12.3.1B.

    Example: 5/8 in. sill bolt, 1-1/2 in. Douglas fir, along, with 1/4 in. of grout: 812 lb instead of 928 (our own
    arithmetic).
    """
    hold(DIAMETER, D, SOURCE, "Table 1-1")
    hold(GAP, g, SOURCE, "Table 1-1")
    hold(ANGLE, theta, SOURCE, "Table 1-1")
    loads = yield_loads(D, l_m, l_s, F_em, F_es, F_yb, g)
    R_I, R_II, R_III = shear.reduction_terms(D, theta)
    terms = {"Im": R_I, "Is": R_I, "II": R_II, "IIIm": R_III, "IIIs": R_III, "IV": R_III}
    values = {m: divide(P, terms[m], symbol=f"Z_{m}", unit="lb", label=f"mode {m}") for m, P in loads.items()}
    mode = min(values, key=lambda m: float(values[m]))
    Z = least(*values.values(), symbol="Z", label="the least of the modes")
    note(f"mode {mode} governs")
    P_mode = min(loads, key=lambda m: float(loads[m]))
    P = least(*loads.values(), symbol="P_yield", label="expected yield, for which gives way first")
    each = (loads["Im"], loads["Is"], loads["II"], loads["IIIm"], loads["IIIs"], loads["IV"])
    return GapJoint(Z, mode, P, P_mode, *each, g)


@procedure(
    "awc-tr12/across-gap",
    title="A joint that NDS gives, with its members kept apart",
    clause="Table 1-1",
    source=SOURCE,
    alias="tr12.across-gap",
)
def across_gap(joint: shear.Lateral, g: Gap = 0.0) -> GapJoint:
    """Z in lb of a joint worked out by NDS in contact, where a gap or packing keeps its two members ``g`` apart.

    Each mode keeps the reduction term it has in contact, whatever rule gave it (a small lag screw has one of its own),
    so its value goes down as its yield load does. In contact the two documents give the same. Example: a No. 14 screw
    through 3/16 in. of steel over 3/4 in. of packing keeps 0.40 of its value (our own arithmetic).
    """
    hold(GAP, g, SOURCE, "Table 1-1")
    if joint.planes != 1:
        raise OutsideLimits(f"{SOURCE.cite('Table 1-1')}: planes (shear planes) = {joint.planes}; must be 1")
    sizes = (joint.D, joint.l_m, joint.l_s, joint.F_em, joint.F_es, joint.F_yb)
    near, far = yield_loads(*sizes, 0.0), yield_loads(*sizes, g)
    values = {}
    for m, Z in joint.modes().items():
        part = divide(
            far[m], near[m], symbol=f"P_{m}/P_{m},0", unit="1", label="yield load across the gap over in contact"
        )
        values[m] = scale(Z, part, symbol=f"Z_{m}", label=f"mode {m}")
    mode = min(values, key=lambda m: float(values[m]))
    Z = least(*values.values(), symbol="Z", label="the least of the modes")
    note(f"mode {mode} governs")
    P_mode = min(far, key=lambda m: float(far[m]))
    P = least(*far.values(), symbol="P_yield", label="expected yield, for which gives way first")
    each = (far["Im"], far["Is"], far["II"], far["IIIm"], far["IIIs"], far["IV"])
    return GapJoint(Z, mode, P, P_mode, *each, g)


@procedure(
    "awc-tr12/sill-bolt",
    title="Sill bolt with a gap under the sill",
    clause="Table 1-1",
    source=SOURCE,
    alias="tr12.sill-bolt",
)
def sill_bolt_with_gap(
    D: BoltDiameter,
    l_s: Sill,
    g: Gap,
    species: str = "Douglas fir-larch",
    theta: Angle = 0.0,
    l_m: Embedment = 6.0,
    f_c: Concrete = 2500.0,
    rounding: str = "printed",
) -> GapJoint:
    """Z in lb of a sill bolt whose sill stands ``g`` inches off the concrete, on shims or grout that bear nothing.

    Where the sill's underside is rotted, ``l_s`` is the sound thickness and ``g`` the rotted depth.
    """
    hold(BOLT_DIAMETER, D, SOURCE, "Table 1-1")
    hold(Q("in", "l_m", "length of the bolt in the concrete", at_least=6.0), l_m, SOURCE, "Table 1-1")
    F_em = bearing.concrete_bearing(f_c)
    F_es = bearing.wood_bearing(D, species, theta, rounding)
    return single_shear_with_gap(D, l_m, l_s, F_em, F_es, bolts.bolt_yield_strength(), g, theta)


@procedure(
    "practice/sill-bolt-with-gap-beyond",
    title="Sill bolt with a gap, in weak concrete or with a short embedment (extension)",
    clause="beyond NDS Table 12E and TR12 Table 1-1",
    source=PRACTICE,
    alias="tr12.sill-bolt-beyond",
)
def sill_bolt_with_gap_beyond(
    D: BoltDiameter,
    l_s: Sill,
    g: Gap,
    f_c: flush.AnyConcrete,
    species: str = "Douglas fir-larch",
    theta: Angle = 0.0,
    l_m: flush.AnyEmbedment = 6.0,
    rounding: str = "printed",
) -> GapJoint:
    """Z in lb of a sill bolt over a gap where the concrete is weaker than NDS covers, or the bolt shorter, or both.

    Every result carries the mark *extension*, as without a gap. Example: 1/2 in. bolt, 1-1/2 in. Douglas fir-larch,
    1/4 in. gap, f'c 1,500 psi: 518 lb (our own arithmetic).

    Raises:
        OutsideLimits: where nothing lies beyond the document, for then tr12.sill-bolt gives the value.
    """
    hold(BOLT_DIAMETER, D, SOURCE, "Table 1-1")
    hold(GAP, g, SOURCE, "Table 1-1")
    F_em, l_m = flush.beyond_table_12e(f_c, l_m, "use tr12.sill-bolt")
    F_es = bearing.wood_bearing(D, species, theta, rounding)
    return single_shear_with_gap(D, l_m, l_s, F_em, F_es, bolts.bolt_yield_strength(), g, theta)
