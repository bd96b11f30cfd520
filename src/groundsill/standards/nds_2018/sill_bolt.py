"""The sill bolted to concrete: single shear with the sill as side member and the concrete as main member (Table 12E).

In: bolt diameter, sill thickness and species, angle of load to the sill's grain. Out: the reference value of the wood
joint only. What the concrete does at its edge is another document's question, and for a thin sill the governing mode
does not feel the embedment at all, so this value never proves an anchor that is short or near an edge.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.nds_2018 import PRACTICE, SOURCE
from groundsill.standards.nds_2018.bearing import concrete_bearing, wood_bearing
from groundsill.standards.nds_2018.bolts import bolt_yield_strength
from groundsill.standards.nds_2018.shear import Lateral, single_shear
from groundsill.standards.nds_2018.symbols import ANGLE, BOLT_DIAMETER, Angle, BoltDiameter, hold
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given
from groundsill.working.value import Mark

__all__ = ["bearing_weak_concrete", "beyond_table_12e", "sill_bolt", "sill_bolt_weak_concrete"]

SILL = Q("in", "l_s", "thickness of the sill", above=0.0)
EMBEDMENT = Q("in", "l_m", "length of the bolt in the concrete", at_least=6.0)
ANY_EMBEDMENT = Q("in", "l_m", "length of the bolt in the concrete", above=0.0)
ANY_CONCRETE = Q("psi", "f'_c", "concrete strength", above=0.0)
WEAK = Q("psi", "f'_c", "concrete strength", above=0.0, below=2500.0)

SillThickness = Annotated[float, SILL]
Embedment = Annotated[float, EMBEDMENT]
AnyEmbedment = Annotated[float, ANY_EMBEDMENT]
ConcreteStrength = Annotated[float, Q("psi", "f'_c", "concrete strength", at_least=2500.0)]
AnyConcrete = Annotated[float, ANY_CONCRETE]
WeakConcrete = Annotated[float, WEAK]


@procedure(
    "nds-2018/12E",
    title="Sill bolt: wood sill to concrete, single shear",
    clause="12.3.1 as in Table 12E",
    source=SOURCE,
    alias="nds.sill-bolt",
)
def sill_bolt(
    D: BoltDiameter,
    l_s: SillThickness,
    species: str = "Douglas fir-larch",
    theta: Angle = 0.0,
    l_m: Embedment = 6.0,
    f_c: ConcreteStrength = 2500.0,
    rounding: str = "printed",
) -> Lateral:
    """Z in lb of one sill bolt; ``theta`` 0 along the sill (in the wall's plane), 90 across it.

    Assumes a smooth bolt bent or headed in concrete of 2,500 psi and over, 6 in. and deeper, sill and concrete in
    contact. Example: 5/8 in. bolt, 1-1/2 in. Douglas fir-larch, along: 928 lb, which the table prints as 930 (the
    printed value from memory). Mode IIIs governs.

    Raises:
        OutsideLimits: diameter outside 1/4 to 1 in., embedment under 6 in. (such a bolt is for ACI 318 or a test),
            concrete under 2,500 psi, an unknown species.
    """
    hold(BOLT_DIAMETER, D, SOURCE, "12.3.1")
    hold(SILL, l_s, SOURCE, "Table 12E")
    hold(EMBEDMENT, l_m, SOURCE, "Table 12E")
    hold(ANGLE, theta, SOURCE, "12.3.4")
    F_em = concrete_bearing(f_c)
    F_es = wood_bearing(D, species, theta, rounding)
    return single_shear(D, l_m, l_s, F_em, F_es, bolt_yield_strength(), theta)


@equation(
    "practice/concrete-bearing-under-2500",
    title="Bearing strength of weak concrete under a bolt",
    clause="bearing of weak concrete",
    source=PRACTICE,
    constants={7500: "psi", 2500: "psi"},
)
def bearing_weak_concrete(
    f_c: WeakConcrete,
) -> Annotated[float, Q("psi", "F_em", "dowel bearing strength taken for weak concrete")]:
    """The 7,500 psi of NDS Table 12E brought down in proportion to the concrete's strength.

    Not a rule of any standard: NDS gives no bearing strength under 2,500 psi. Example: 1,500 psi: 4,500 psi.
    """
    return 7500 * f_c / 2500


@procedure(
    "practice/sill-bolt-weak-concrete",
    title="Sill bolt in weak concrete or with a short embedment (extension)",
    clause="beyond NDS Table 12E",
    source=PRACTICE,
    alias="nds.sill-bolt-weak-concrete",
)
def sill_bolt_weak_concrete(
    D: BoltDiameter,
    l_s: SillThickness,
    f_c: AnyConcrete,
    species: str = "Douglas fir-larch",
    theta: Angle = 0.0,
    l_m: AnyEmbedment = 6.0,
    rounding: str = "printed",
) -> Lateral:
    """Z in lb of the wood joint alone where the concrete is weaker than NDS covers, or the bolt shorter, or both.

    Every result carries the mark *extension* and can only be indicated, never passed: breakout at the edge decides in
    weak concrete, and this says nothing of it. Example: 1/2 in. bolt, 1-1/2 in. Douglas fir-larch, f'c 1,000 psi:
    534 lb (our own arithmetic).

    Raises:
        OutsideLimits: where nothing lies beyond the document, for then nds.sill-bolt gives the document's own value.
    """
    hold(BOLT_DIAMETER, D, SOURCE, "12.3.1")
    hold(SILL, l_s, SOURCE, "Table 12E")
    hold(ANGLE, theta, SOURCE, "12.3.4")
    F_em, l_m = beyond_table_12e(f_c, l_m, "use nds.sill-bolt")
    F_es = wood_bearing(D, species, theta, rounding)
    return single_shear(D, l_m, l_s, F_em, F_es, bolt_yield_strength(), theta)


def beyond_table_12e(f_c: float, l_m: float, instead: str) -> tuple[float, float]:
    """Bearing strength of the concrete, psi, and embedment, in., each marked where it lies beyond Table 12E.

    Raises:
        OutsideLimits: where neither does; ``instead`` says what to use then.
    """
    hold(ANY_EMBEDMENT, l_m, SOURCE, "Table 12E")
    hold(ANY_CONCRETE, f_c, PRACTICE, "beyond NDS Table 12E")
    weak, short = float(f_c) < 2500.0, float(l_m) < 6.0
    if not weak and not short:
        raise OutsideLimits(
            f"{PRACTICE.cite('beyond NDS Table 12E')}: f'_c = {float(f_c):g} psi and l_m = {float(l_m):g} in "
            f"lie inside the document; {instead}"
        )
    if weak:
        beyond = Mark(
            "extension", f"{SOURCE.cite('Table 12E')} covers no concrete under 2,500 psi: bearing in proportion"
        )
        F_em = bearing_weak_concrete(given("f'_c", f_c, "psi", "concrete strength, less than NDS covers", (beyond,)))
    else:
        F_em = concrete_bearing(f_c)
    if short:
        beyond = Mark("extension", f"{SOURCE.cite('Table 12E')} assumes 6 in. in the concrete: shorter needs a test")
        l_m = given("l_m", l_m, "in", "length of the bolt in the concrete, shorter than NDS assumes", (beyond,))
    return F_em, l_m
