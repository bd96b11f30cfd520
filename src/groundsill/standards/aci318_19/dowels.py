"""A bar glued into old concrete, to join new concrete to it (ACI 318-19, chapter 17 and 22.9).

It is an adhesive anchor: its steel, the cone of concrete it pulls out, the glue, the edge it breaks off, and prying.
The glue's strength is the product's own, or the code's minimum where each of its conditions is met; otherwise nobody
can say, and the bars are pulled first. Shear friction counts only bars that both sides develop (22.9.5.1).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.aci318_19 import SOURCE
from groundsill.standards.aci318_19.bond import OUTDOOR, bond_of, bond_stress
from groundsill.standards.aci318_19.development import development_length
from groundsill.standards.aci318_19.pryout import pryout, pryout_factor
from groundsill.standards.aci318_19.scope import anchor_scope
from groundsill.standards.aci318_19.shear_breakout import breakout_parallel_to_edge, breakout_toward_edge
from groundsill.standards.aci318_19.shear_friction import FrictionShear, shear_friction
from groundsill.standards.aci318_19.steel import steel_shear, steel_tension
from groundsill.standards.aci318_19.strength_factors import design_strength
from groundsill.standards.aci318_19.symbols import ConcreteStrength
from groundsill.standards.aci318_19.tables import table_17_5_3, table_bars
from groundsill.standards.aci318_19.tension_breakout import TensionBreakout, seismic_tension, tension_breakout_of
from groundsill.standards.conditions import Condition
from groundsill.working.equation import Q, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, given, least, note, scale
from groundsill.working.value import marks_of

__all__ = ["Dowel", "FrictionDowels", "dowel_in_old_concrete", "friction_dowels"]

_CATEGORY = "concrete breakout, no supplementary reinforcement, post-installed category"
_PRYOUT = "pullout or pryout, post-installed category 1"
_STEEL = "steel, ductile"
_ULTIMATE_PSI = 80000.0  # ASTM A615 Grade 60 as Table 20.2.1.3(a) asks for it
_FAR_IN = 1000.0
PULL_FIRST = "pull-test first: the code's bond stress does not apply, and no report of the product gives one"

Face = Annotated[float, Q("in", "c_near", "bar to the nearer face of the old concrete", above=0.0)]


@dataclass(frozen=True, slots=True)
class Dowel:
    """Design strength of one glued bar of a row, lb at strength level; None where nobody can say.

    ``tension_by`` and ``shear_by`` say what gives first; ``shear_at_most`` is the shear by steel, edge and cone alone,
    whatever the glue; ``extension`` names what carries a strength beyond the chapter, "" for none; ``first`` says what
    must be done before the bars count, "" for nothing.
    """

    tension: float | None
    tension_by: str
    shear: float | None
    shear_by: str
    shear_at_most: float
    extension: str
    conditions: tuple[Condition, ...]
    first: str


@dataclass(frozen=True, slots=True)
class FrictionDowels:
    """Shear across the joint by shear friction, or why it cannot be counted."""

    shear: FrictionShear | None
    needed: float
    reason: str


@procedure(
    "aci318-19/17-dowel",
    title="Bar glued into old concrete",
    clause="17.6.1, 17.6.2, 17.6.5, 17.7, 17.10",
    source=SOURCE,
    alias="aci.dowel",
)
def dowel_in_old_concrete(
    bar: str,
    h_ef: Annotated[float, Q("in", "h_ef", "embedment of the bar in the old concrete", above=0.0)],
    f_c: ConcreteStrength,
    c_near: Face,
    c_far: Annotated[float, Q("in", "c_far", "bar to the far face of the old concrete", above=0.0)] = _FAR_IN,
    c_end: Annotated[float, Q("in", "c_end", "last bar to the end of the concrete or a crack", above=0.0)] = _FAR_IN,
    h_a: Annotated[float, Q("in", "h_a", "old concrete along the bar, from its mouth", above=0.0)] = 24.0,
    n: Annotated[float, Q("1", "n", "bars that act together in the row", at_least=1.0)] = 1.0,
    s: Annotated[float, Q("in", "s", "their spacing", at_least=0.0)] = 0.0,
    strength: str = "assumed",
    push: str = "toward the face",
    tau_cr: Annotated[float, Q("psi", "tau_cr", "the product's bond stress, cracked concrete, from its report")] = 0.0,
    tau_uncr: Annotated[float, Q("psi", "tau_uncr", "the same, uncracked concrete")] = 0.0,
    environment: str = OUTDOOR,
    qualified: bool | None = None,
    hammer_drilled: bool | None = None,
    warm: bool | None = None,
    category: str = "3",
    earthquake: bool = True,
) -> Dowel:
    """Design tension and shear of one bar of a row, in cracked concrete.

    Args:
        bar: its number, ``#4``, of Grade 60.
        h_ef: embedment in the old concrete, in.
        f_c: strength of the old concrete, psi.
        c_near: bar to the nearer face, in.
        c_far: bar to the far face, in.
        c_end: last bar to the end of the concrete or a full-depth crack, in.
        h_a: old concrete along the bar from its mouth, in.
        n: bars that act together in the row.
        s: their spacing along the face, in.
        strength: ``tested`` by cores or in place, or ``assumed``.
        push: ``toward the face`` or ``along the face``.
        tau_cr: the product's own bond stress in cracked concrete, psi, from its report; 0 for none.
        tau_uncr: the same in uncracked concrete, psi.
        environment: row of Table 17.6.5.2.5, where the minimum bond stresses are used.
        qualified: whether the product is qualified by ACI 355.4.
        hammer_drilled: whether the hole is made with a rotary impact or rock drill.
        warm: whether the concrete is at 50 F or more when the bar is set.
        category: of the product, from its report: ``1``, ``2`` or ``3``; the lowest, 3, where nobody knows.
        earthquake: categories C to F: three quarters in tension for all but steel (17.10.5.4).
    """
    if push not in ("toward the face", "along the face"):
        raise OutsideLimits(f"{SOURCE.cite('17.7.2.1')}: push = {push!r}; must be toward the face or along the face")
    scope = anchor_scope(f_c, "post-installed", strength)
    d_a = table_bars().read(bar, "diameter", symbol="d_a")
    row = _Row(bar, d_a, h_ef, f_c, (c_end, c_end, c_near, c_far), n, s, f"{_CATEGORY} {category}")
    glue = _glue(row, (tau_cr, tau_uncr), environment, (qualified, hammer_drilled, warm), earthquake)
    cone = _cone(row)
    shear, shear_by = _shear(row, cone, glue, h_a, push)
    if glue.design is None:
        note("Nothing says what the glue holds: neither the pull nor the prying of the bars can be checked")
        return Dowel(None, "", None, "", shear, scope.extension, glue.conditions, PULL_FIRST)
    tension, tension_by = _tension(row, cone, glue.design, earthquake)
    return Dowel(tension, tension_by, shear, shear_by, shear, scope.extension, glue.conditions, "")


@dataclass(frozen=True, slots=True)
class _Row:
    """Bars of a row: which, how deep, in what, how far from ends and faces, how many, how far apart, what fails."""

    bar: str
    d_a: float
    h_ef: float
    f_c: float
    sides: tuple[float, float, float, float]
    n: float
    s: float
    failure: str

    @property
    def apart(self) -> float:
        """First to last bar, in."""
        last = float(self.s) * (float(self.n) - 1.0)
        return given("s_row", last, "in", "first to last bar of the row", marks_of((self.s, self.n)))

    def steel(self, way: str) -> tuple[float, float]:
        """Strength reduction of the steel in tension or shear, and the area of the bar."""
        return table_17_5_3().read(_STEEL, way), table_bars().read(self.bar, "area", symbol="A_b")


def _cone(row: _Row) -> TensionBreakout:
    """Breakout in tension of one bar: alone, or its part of the row's, whichever is less."""
    alone = tension_breakout_of(row.h_ef, row.f_c, *row.sides, anchor="post-installed", failure=row.failure)
    if float(row.n) <= 1:
        return alone
    whole = tension_breakout_of(row.h_ef, row.f_c, *row.sides, row.apart, anchor="post-installed", failure=row.failure)
    nominal = least(
        alone.nominal, _each(whole.nominal, row.n), symbol="N_cb", label="one alone, or its part of the row"
    )
    return TensionBreakout(nominal, alone.phi, design_strength(alone.phi, nominal))


def _tension(row: _Row, cone: TensionBreakout, glue: float, earthquake: bool) -> tuple[float, str]:
    """Design tension of one bar of the row, and what gives first."""
    phi, A_b = row.steel("tension")
    holds = {
        "steel": design_strength(phi, steel_tension(A_b, _ULTIMATE_PSI)),
        "breakout": seismic_tension(cone.design) if earthquake else cone.design,
        "bond": _each(seismic_tension(glue) if earthquake else glue, row.n),
    }
    return least(*holds.values(), symbol="φN_n", label="design tension of one bar"), _least_of(holds)


def _shear(row: _Row, cone: TensionBreakout, glue: _Glue, h_a: float, push: str) -> tuple[float, str]:
    """Design shear of one bar of the row, its prying by the cone alone where the glue is not known, and what gives."""
    phi, A_b = row.steel("shear")
    edge = breakout_toward_edge if push == "toward the face" else breakout_parallel_to_edge
    near, end = row.sides[2], row.sides[0]
    together = float(row.n) > 1 and float(row.s) <= 3 * float(near)  # farther apart each breaks out alone
    n, s = (row.n, row.s) if together else (1.0, 0.0)
    broken = _each(edge(row.d_a, row.h_ef, row.f_c, near, h_a, end, n=n, s=s).design, n)
    held = cone.nominal
    if glue.each is not None:
        held = least(held, glue.each, symbol="N_cp", label="breakout or bond in tension")
    pried = design_strength(table_17_5_3().read(_PRYOUT, "shear"), pryout(pryout_factor(row.h_ef), held))
    holds = {
        "steel": design_strength(phi, steel_shear(A_b, _ULTIMATE_PSI)),
        "edge breakout": broken,
        "pryout": pried,
    }
    return least(*holds.values(), symbol="φV_n", label="design shear of one bar"), _least_of(holds)


@dataclass(frozen=True, slots=True)
class _Glue:
    """Bond of a row: design strength of all, nominal of one; None for both where no bond stress may be used."""

    design: float | None
    each: float | None
    conditions: tuple[Condition, ...]


def _glue(
    row: _Row, product: tuple[float, float], environment: str, known: tuple[bool | None, bool | None, bool | None],
    earthquake: bool,
) -> _Glue:  # fmt: skip
    conditions: tuple[Condition, ...] = ()
    if float(product[0]) > 0 and float(product[1]) > 0:
        note("The bond stresses are the product's own, from its report, with its reductions for earthquake in them")
        cracked, reach = product
    else:
        qualified, drilled, warm = known
        minimum = bond_stress(environment, row.f_c, qualified, drilled, True, warm, False, earthquake)
        conditions = minimum.conditions
        if minimum.applies is not True:
            return _Glue(None, None, conditions)
        cracked, reach = minimum.cracked, minimum.reach
    held = bond_of(row.d_a, row.h_ef, cracked, reach, *row.sides, s_along=row.apart, n=row.n, failure=row.failure)
    return _Glue(held.design, _each(held.nominal, row.n), conditions)


def _each(whole: float, n: float) -> float:
    return scale(whole, 1.0 / float(n), symbol="1/n", label="for each bar of the row") if float(n) > 1 else whole


def _least_of(holds: dict[str, float]) -> str:
    return min(holds, key=lambda name: float(holds[name]))


@procedure(
    "aci318-19/22.9-dowels",
    title="Shear friction of bars glued into old concrete",
    clause="22.9.4 and 22.9.5.1",
    source=SOURCE,
    alias="aci.dowel-friction",
)
def friction_dowels(
    bar: str,
    n: Annotated[float, Q("1", "n", "bars across the joint", at_least=1.0)],
    h_old: Annotated[float, Q("in", "h_old", "embedment in the old concrete", above=0.0)],
    h_new: Annotated[float, Q("in", "h_new", "embedment in the new concrete", above=0.0)],
    A_c: Annotated[float, Q("in^2", "A_c", "area of the joint", above=0.0)],
    f_old: ConcreteStrength,
    f_new: ConcreteStrength = 2500.0,
    surface: str = "hardened, not roughened",
    c_b: Annotated[float, Q("in", "c_b", "bar's middle to the nearest face, or half the spacing", above=0.0)] = 3.0,
    report: bool = False,
) -> FrictionDowels:
    """Shear across the joint, where both concretes develop the bars; else what is lacking.

    Args:
        bar: its number, ``#4``, of Grade 60.
        n: bars across the joint.
        h_old: straight embedment in the old concrete, in.
        h_new: straight embedment in the new concrete, in.
        A_c: area of the joint, in2.
        f_old: strength of the old concrete, psi.
        f_new: strength of the new concrete, psi.
        surface: row of Table 22.9.4.2: ``roughened to 1/4 in.``, ``hardened, not roughened``.
        c_b: the lesser of the distance from a bar's middle to the nearest face and half the spacing, in.
        report: whether the adhesive's report covers bars developed like cast-in ones.
    """
    both = given("f'_c,old", f_old, "psi", "old concrete"), given("f'_c,new", f_new, "psi", "new concrete")
    weaker = least(*both, symbol="f'_c", label="the weaker concrete")
    if float(weaker) < 2500.0:
        return FrictionDowels(None, 0.0, "no bar develops by 25.4 in concrete below 2,500 psi: as anchors, or by test")
    needed = development_length(bar, weaker, c_b=c_b)
    for where, held in (("old", h_old), ("new", h_new)):
        long = float(held) >= float(needed)
        condition(f"developed in the {where} concrete", long, held, needed, cite=SOURCE.cite("22.9.5.1"))
        if not long:
            lacking = f"{float(held):g} in. in the {where} concrete, {float(needed):.1f} in. needed to develop {bar}"
            return FrictionDowels(None, needed, f"{lacking} (22.9.5.1): they count as anchors")
    if not report:
        return FrictionDowels(None, needed, "the adhesive's report must cover bars developed like cast-in ones")
    A_vf = scale(table_bars().read(bar, "area", symbol="A_b"), n, symbol="A_vf", label=f"{float(n):g} {bar}")
    return FrictionDowels(shear_friction(A_vf, 60000.0, A_c, weaker, surface), needed, "")
