"""12.3.1 and 12.3.2: the reference lateral value of one dowel is the least of its yield modes.

In: one joint (diameter, bearing lengths and strengths, bending strength, angle to grain). Out: :class:`Lateral`, which
keeps every mode, the one that governs, and the joint it was worked out for, so that the strength it is expected to
yield at can be asked for afterwards (see ``expected``).
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.symbols import (
    ANGLE,
    DIAMETER,
    Angle,
    BearingMain,
    BearingSide,
    Diameter,
    LengthMain,
    LengthSide,
    YieldStrength,
    hold,
)
from groundsill.standards.nds_2018.yield_modes import (
    angle_factor,
    double_shear_iiis,
    double_shear_im,
    double_shear_is,
    double_shear_iv,
    k_1,
    k_2,
    k_3,
    reduction_mode_i,
    reduction_mode_ii,
    reduction_mode_iii_iv,
    reduction_small_dowel,
    yield_mode_ii,
    yield_mode_iiim,
    yield_mode_iiis,
    yield_mode_im,
    yield_mode_is,
    yield_mode_iv,
)
from groundsill.working.equation import procedure
from groundsill.working.steps import divide, least, note

__all__ = [
    "Lateral",
    "double_shear",
    "double_shear_modes",
    "governing",
    "reduction_terms",
    "single_shear",
    "single_shear_modes",
]

SMALL_DOWEL_IN = 0.25
MODES = ("Im", "Is", "II", "IIIm", "IIIs", "IV")


@dataclass(frozen=True, slots=True)
class Lateral:
    """One dowel in shear: the reference value ``Z``, the mode that governs, every mode, and the joint itself.

    Forces in lb, lengths in inches, strengths in psi, ``theta`` in degrees; ``planes`` is 1 or 2 shear planes. Modes
    that double shear cannot show (II, IIIm) are None.
    """

    Z: float
    mode: str
    Z_Im: float
    Z_Is: float
    Z_II: float | None
    Z_IIIm: float | None
    Z_IIIs: float
    Z_IV: float
    D: float
    l_m: float
    l_s: float
    F_em: float
    F_es: float
    F_yb: float
    theta: float
    planes: int = 1

    def modes(self) -> dict[str, float]:
        """Each mode by its name, in the document's order, without those that do not apply."""
        return {m: z for m in MODES if (z := getattr(self, f"Z_{m}")) is not None}


def reduction_terms(D: float, theta: float) -> tuple[float, float, float]:
    """The reduction terms of modes I, of mode II, and of modes III and IV (Table 12.3.1B)."""
    if float(D) < SMALL_DOWEL_IN:
        K_D = reduction_small_dowel(D)
        return K_D, K_D, K_D
    K_theta = angle_factor(theta)
    return reduction_mode_i(K_theta), reduction_mode_ii(K_theta), reduction_mode_iii_iv(K_theta)


def single_shear_modes(
    D: float, l_m: float, l_s: float, F_em: float, F_es: float, F_yb: float, terms: tuple[float, float, float]
) -> dict[str, float]:
    """All six modes of a joint in single shear under the reduction terms given; ones give the yield loads."""
    R_I, R_II, R_III = terms
    R_e = divide(F_em, F_es, symbol="R_e", unit="1", label="bearing strength, main over side")
    R_t = divide(l_m, l_s, symbol="R_t", unit="1", label="bearing length, main over side")
    return {
        "Im": yield_mode_im(D, l_m, F_em, R_I),
        "Is": yield_mode_is(D, l_s, F_es, R_I),
        "II": yield_mode_ii(k_1(R_e, R_t), D, l_s, F_es, R_II),
        "IIIm": yield_mode_iiim(k_2(R_e, F_yb, D, F_em, l_m), D, l_m, F_em, R_e, R_III),
        "IIIs": yield_mode_iiis(k_3(R_e, F_yb, D, F_em, l_s), D, l_s, F_em, R_e, R_III),
        "IV": yield_mode_iv(D, F_em, F_yb, R_e, R_III),
    }


def double_shear_modes(
    D: float, l_m: float, l_s: float, F_em: float, F_es: float, F_yb: float, terms: tuple[float, float, float]
) -> dict[str, float]:
    """The four modes of a joint in double shear under the reduction terms given."""
    R_I, _, R_III = terms
    R_e = divide(F_em, F_es, symbol="R_e", unit="1", label="bearing strength, main over side")
    return {
        "Im": double_shear_im(D, l_m, F_em, R_I),
        "Is": double_shear_is(D, l_s, F_es, R_I),
        "IIIs": double_shear_iiis(k_3(R_e, F_yb, D, F_em, l_s), D, l_s, F_em, R_e, R_III),
        "IV": double_shear_iv(D, F_em, F_yb, R_e, R_III),
    }


def governing(modes: dict[str, float], symbol: str) -> tuple[float, str]:
    """The least mode and its name, both written on the open sheet."""
    name = min(modes, key=lambda m: float(modes[m]))
    value = least(*modes.values(), symbol=symbol, label="the least of the yield modes")
    note(f"mode {name} governs")
    return value, name


@procedure(
    "nds-2018/12.3.1",
    title="Reference lateral design value, single shear",
    clause="12.3.1, Table 12.3.1A",
    source=SOURCE,
    alias="nds.single-shear",
)
def single_shear(
    D: Diameter,
    l_m: LengthMain,
    l_s: LengthSide,
    F_em: BearingMain,
    F_es: BearingSide,
    F_yb: YieldStrength,
    theta: Angle = 0.0,
) -> Lateral:
    """Z in lb of one dowel in single shear, the least of modes Im, Is, II, IIIm, IIIs and IV.

    ``theta`` is the largest angle of load to grain of either member; it counts only from 1/4 in. up. The members are
    in contact: with a gap between them use the general dowel equations. Example: 1/2 in. bolt, 3-1/2 and 1-1/2 in.
    Douglas fir, parallel: 615 lb by mode IIIs (our own arithmetic).

    Raises:
        OutsideLimits: over 1 in. diameter, an angle outside 0 to 90 degrees, or a length or strength not above zero.
    """
    hold(DIAMETER, D, SOURCE, "12.3.1")
    hold(ANGLE, theta, SOURCE, "12.3.1")
    modes = single_shear_modes(D, l_m, l_s, F_em, F_es, F_yb, reduction_terms(D, theta))
    Z, mode = governing(modes, "Z")
    each = (modes["Im"], modes["Is"], modes["II"], modes["IIIm"], modes["IIIs"], modes["IV"])
    return Lateral(Z, mode, *each, D, l_m, l_s, F_em, F_es, F_yb, theta)


@procedure(
    "nds-2018/12.3.2",
    title="Reference lateral design value, double shear",
    clause="12.3.2, Table 12.3.1A",
    source=SOURCE,
    alias="nds.double-shear",
)
def double_shear(
    D: Diameter,
    l_m: LengthMain,
    l_s: LengthSide,
    F_em: BearingMain,
    F_es: BearingSide,
    F_yb: YieldStrength,
    theta: Angle = 0.0,
) -> Lateral:
    """Z in lb of one dowel through a middle member and two like side members; l_s is the length in one of them.

    Unlike side members: use the weaker pair for both.
    """
    hold(DIAMETER, D, SOURCE, "12.3.2")
    hold(ANGLE, theta, SOURCE, "12.3.2")
    modes = double_shear_modes(D, l_m, l_s, F_em, F_es, F_yb, reduction_terms(D, theta))
    Z, mode = governing(modes, "Z")
    each = (modes["Im"], modes["Is"], None, None, modes["IIIs"], modes["IV"])
    return Lateral(Z, mode, *each, D, l_m, l_s, F_em, F_es, F_yb, theta, planes=2)
