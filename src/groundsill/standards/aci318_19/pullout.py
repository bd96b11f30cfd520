"""Pullout and side-face blowout (ACI 318-19, 17.6.3, 17.6.4): heads and hooks of cast-in bolts, old L and J bolts."""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.symbols import ConcreteStrength, Diameter, LightweightFactor
from groundsill.working.equation import Q, equation, require

__all__ = ["blowout_corner_factor", "blowout_of_group", "headed_pullout", "hooked_pullout", "side_face_blowout"]

HeadArea = Annotated[float, Q("in^2", "A_brg", "net bearing area of the head or nut", above=0.0)]


@equation(
    "aci318-19/17.6.3.2.2a",
    title="Pullout of a headed bolt",
    clause="Eq. 17.6.3.2.2a",
    source=SOURCE,
    witness="18,848 lb; 29,440 lb (ACI 349.2R-07 Examples A2, A3, as kept in the tests of github.com/xcfem/xc)",
)
def headed_pullout(
    A_brg: HeadArea, f_c: ConcreteStrength
) -> Annotated[float, Q("lb", "N_p", "pullout strength of one anchor")]:
    """The tension at which a head crushes its way out of cracked concrete: 8 A_brg f'c, lb.

    Source: ACI 318-19, Eq. 17.6.3.2.2a, by the worked examples of ACI 349.2R-07 kept in github.com/xcfem/xc: 0.92 in2,
    4,000 psi: 29,440 lb (A3); 0.589 in2: 18,848 lb (A2).
    """
    return 8 * A_brg * f_c


@equation(
    "aci318-19/17.6.3.2.2b",
    title="Pullout of a hooked bolt (L or J)",
    clause="Eq. 17.6.3.2.2b",
    source=SOURCE,
)
def hooked_pullout(
    f_c: ConcreteStrength,
    e_h: Annotated[float, Q("in", "e_h", "inside of the shaft to the tip of the hook", above=0.0)],
    d_a: Diameter,
) -> Annotated[float, Q("lb", "N_p", "pullout strength of one anchor")]:
    """The tension at which an L or J bolt straightens or crushes its way out: 0.9 f'c e_h d_a, lb.

    Limits: e_h from 3 to 4.5 d_a. Source: ACI 318-19, Eq. 17.6.3.2.2b, read in two sets of notes on chapter 17.
    2,500 psi, e_h 2, d_a 1/2: 2,250 lb (our own arithmetic).
    """
    require(3 * d_a <= e_h, "the hook counts from 3 d_a")
    require(e_h <= 4.5 * d_a, "the hook counts up to 4.5 d_a")
    return 0.9 * f_c * e_h * d_a


@equation(
    "aci318-19/17.6.4.1",
    title="Blowout of the side face by a headed bolt",
    clause="Eq. 17.6.4.1",
    source=SOURCE,
    witness="54,560 lb (check case in github.com/mlococo88/All-Structural, fix log of its base plate designer)",
    constants={160: "lb^0.5/in"},
)
def side_face_blowout(
    c_a1: Annotated[float, Q("in", "c_a1", "distance to the side face", above=0.0)],
    A_brg: HeadArea,
    f_c: ConcreteStrength,
    h_ef: Annotated[float, Q("in", "h_ef", "effective embedment depth", above=0.0)],
    lambda_a: LightweightFactor = 1.0,
) -> Annotated[float, Q("lb", "N_sb", "side-face blowout strength")]:
    """The tension at which a deep head near a face bursts it: 160 c_a1 sqrt(A_brg) lambda sqrt(f'c), lb.

    Applies where h_ef is above 2.5 c_a1. Source: ACI 318-19, Eq. 17.6.4.1, read in two public sets of notes on
    chapter 17: 160 in pounds and inches, 13 in newtons and millimetres. c_a1 3, A_brg 0.589, f'c 2,500: 18,419 lb.
    """
    require(h_ef > 2.5 * c_a1, "side-face blowout is checked where h_ef is above 2.5 c_a1")
    return 160 * c_a1 * sqrt(A_brg) * lambda_a * sqrt(f_c)


@equation(
    "aci318-19/17.6.4.1.1",
    title="Corner beside a bolt that bursts the side face",
    clause="17.6.4.1.1",
    source=SOURCE,
)
def blowout_corner_factor(
    c_a1: Annotated[float, Q("in", "c_a1", "distance to the side face", above=0.0)],
    c_a2: Annotated[float, Q("in", "c_a2", "distance to the end of the concrete", above=0.0)],
) -> Annotated[float, Q("1", "k_corner", "corner factor of side-face blowout")]:
    """The factor on the blowout of one bolt nearer to an end than 3 c_a1: (1 + c_a2/c_a1) / 4.

    The ratio counts from 1 up; beyond 3 the factor is 1. Inches. Source: ACI 318-19, 17.6.4.1.1, read in public page
    notes on ACI 318M-19 (pages 233 to 260) and in the notes on chapter 17 at github.com/wcfrobert/wcfrobert.github.io.
    c_a1 3, c_a2 6: 0.75 (our own arithmetic).
    """
    return min(1.0, (1 + max(1.0, c_a2 / c_a1)) / 4)


@equation(
    "aci318-19/17.6.4.2",
    title="Blowout of the side face by a row of headed bolts",
    clause="Eq. 17.6.4.2",
    source=SOURCE,
)
def blowout_of_group(
    N_sb: Annotated[float, Q("lb", "N_sb", "side-face blowout strength of one, no corner factor", above=0.0)],
    c_a1: Annotated[float, Q("in", "c_a1", "distance to the side face", above=0.0)],
    s: Annotated[float, Q("in", "s", "outermost bolts of the row apart", at_least=0.0)],
) -> Annotated[float, Q("lb", "N_sbg", "side-face blowout strength of the row")]:
    """The blowout of a row of deep headed bolts along the edge: (1 + s/(6 c_a1)) N_sb, lb.

    Neighbours stand nearer than 6 c_a1. Source: ACI 318-19, Eq. 17.6.4.2, read in the same two sets of notes. c_a1 3,
    two bolts 9 in. apart, 10,000 lb: 15,000 lb (our own arithmetic).
    """
    return (1 + s / (6 * c_a1)) * N_sb
