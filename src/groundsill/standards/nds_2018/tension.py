"""A post pulled along its grain and bent at once: an end post that a hold-down pulls beside its middle (3.8, 3.9.1).

In: species, grade, section less what is bored out of it, tension and moment, moisture. Out: how much of the post's
values they use together. A post of several pieces nailed side by side bends piece by piece, each about its own middle.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.nds_2018 import SOURCE
from groundsill.standards.nds_2018.adjustment import DRY, table_2_3_2
from groundsill.standards.nds_2018.bending import adjusted_bending, table_4a_bending
from groundsill.standards.nds_2018.compression import (
    of_dimension_lumber,
    service_of,
    size_factor,
    table_4a_wet,
    value_grade,
)
from groundsill.standards.nds_2018.symbols import hold
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.steps import divide, greatest, subtract
from groundsill.working.table import Table

__all__ = [
    "PulledPost",
    "adjusted_tension",
    "bending_beyond_tension",
    "bending_stress",
    "pulled_post",
    "table_4a_tension",
    "tension_and_bending",
    "tension_stress",
]

BORED = Q("in", "d_h", "bored out of the post across the wall", at_least=0.0)

Tension = Annotated[float, Q("psi", "F_t", "reference value in tension along the grain", above=0.0)]
Adjusted = Annotated[float, Q("psi", "F_t'", "adjusted value in tension", above=0.0)]
Pulled = Annotated[float, Q("psi", "f_t", "stress in tension", at_least=0.0)]
Bent = Annotated[float, Q("psi", "f_b", "stress in bending", at_least=0.0)]
Bending = Annotated[float, Q("psi", "F_b'", "adjusted value in bending", above=0.0)]
Duration = Annotated[float, Q("1", "C_D", "load duration factor", above=0.0, at_most=1.6)]
Wet = Annotated[float, Q("1", "C_M", "wet service factor", above=0.0, at_most=1.0)]
Size = Annotated[float, Q("1", "C_F", "size factor", above=0.0, at_most=1.5)]
Breadth = Annotated[float, Q("in", "b", "breadth of the section, across the plane of bending", above=0.0)]
Depth = Annotated[float, Q("in", "d", "depth of one piece, in the plane of bending", above=0.0)]
Net = Annotated[float, Q("in", "b_n", "breadth less what is bored out of it", above=0.0)]
Bored = Annotated[float, BORED]
Pieces = Annotated[float, Q("1", "n", "pieces side by side in the plane of bending", at_least=1.0)]
Force = Annotated[float, Q("lb", "T", "tension", at_least=0.0)]
Moment = Annotated[float, Q("lb-in", "M", "moment", at_least=0.0)]


def table_4a_tension() -> Table:
    """Tension along the grain, F_t, by species and grade (Supplement, Table 4A)."""
    return Table.load(__package__, "tables/4a_tension.toml")


@dataclass(frozen=True, slots=True)
class PulledPost:
    """What of a post's values is used: by the tension alone, and by tension and bending together."""

    tension: float
    together: float


@equation(
    "nds-2018/4.3.1-tension",
    title="Adjusted value in tension",
    clause="Table 4.3.1",
    source=SOURCE,
    witness="wood council example E1.6, as held by github.com/xcfem/xc: 1,008 psi",
)
def adjusted_tension(
    F_t: Tension, C_D: Duration, C_M: Wet, C_F: Size
) -> Annotated[float, Q("psi", "F_t'", "adjusted value in tension")]:
    """F_t with its factors. Source: github.com/xcfem/xc, example E1.6 (seen). Example: 525 x 1.6 x 1.2 = 1,008 psi."""
    return F_t * C_D * C_M * C_F


@equation(
    "nds-2018/3.8.1",
    title="Stress in tension on the net section",
    clause="3.1.2, 3.8.1",
    source=SOURCE,
    witness="wood council example E1.6, as held by github.com/xcfem/xc: 292.4 psi",
)
def tension_stress(T: Force, n: Pieces, b_n: Net, d: Depth) -> Annotated[float, Q("psi", "f_t", "stress in tension")]:
    """Tension over what is left of the section. Example: 2,000 lb, one piece 2.875 by 3.5 in.: 199 psi (our own)."""
    return T / (n * b_n * d)


@equation(
    "nds-2018/3.3-2-stress",
    title="Stress in bending of a rectangle",
    clause="3.3.2, Eq. 3.3-2",
    source=SOURCE,
    witness="Residential Structural Design Guide, example 5.1, as held by github.com/xcfem/xc: 1,345 psi",
)
def bending_stress(M: Moment, n: Pieces, b_n: Net, d: Depth) -> Annotated[float, Q("psi", "f_b", "stress in bending")]:
    """6 M/(n b d^2), each piece about its own middle. Example: 6,000 lb-in on 2.875 by 3.5 in.: 1,022 psi (our own)."""
    return 6 * M / (n * b_n * d**2)


@equation(
    "nds-2018/3.9-1",
    title="Tension and bending together",
    clause="3.9.1, Eq. 3.9-1",
    source=SOURCE,
    witness="wood council example E1.6, as held by github.com/xcfem/xc: 0.6124, 0.6811, 0.8033",
)
def tension_and_bending(
    f_t: Pulled, F_t: Adjusted, f_b: Bent, F_b: Bending
) -> Annotated[float, Q("1", "r", "part of its values that is used")]:
    """f_t/F_t' + f_b/F_b*, F_b* with every factor but C_L; not over 1.

    Source: github.com/xcfem/xc, example E1.6 of the wood council (seen). Example: 292.4/1,008 + 525.9/1,632 = 0.612.
    """
    return f_t / F_t + f_b / F_b


@equation(
    "nds-2018/3.9-2",
    title="Bending beyond the tension, on the pressed edge",
    clause="3.9.1, Eq. 3.9-2",
    source=SOURCE,
    witness="Missouri S&T CE 5260, problem 7-5, as held by github.com/clay-good/roughlogic.com: -0.192",
)
def bending_beyond_tension(
    f_b: Bent, f_t: Pulled, F_b: Bending
) -> Annotated[float, Q("1", "r", "part of its value that is used")]:
    """(f_b - f_t)/F_b**, F_b** with every factor but C_V; not over 1.

    Source: github.com/clay-good/roughlogic.com, specification v1931, which names the equation (seen). Example:
    (397 - 684)/1,495 = -0.192.
    """
    return (f_b - f_t) / F_b


@procedure(
    "nds-2018/3.9.1",
    title="A post that is pulled and bent",
    clause="3.1.2, 3.3.3, 3.8.1, 3.9.1",
    source=SOURCE,
    alias="nds.pulled-post",
)
def pulled_post(
    species: str, grade: str, b: Breadth, d: Depth, n: Pieces, d_h: Bored, T: Force, M: Moment, moisture: str = DRY,
    load: str = "wind or earthquake",
) -> PulledPost:  # fmt: skip
    """How much of its values a post of dimension lumber uses, bare: nothing beside it helps it in bending.

    Bored out of it is ``d_h`` of its breadth, right through. With a depth of no more than twice its breadth nothing
    need keep it from rolling over, and C_L is 1 (4.4.1); the flat use factor, which only helps, is left out. Example:
    Douglas fir-larch No. 2, 3.5 by 3.5 in., a hole of 0.625 in., 2,000 lb pulling 3 in. beside its middle: 0.62 (our
    own arithmetic).

    Raises:
        OutsideLimits: for a species or grade that the tables do not hold, a post too thick for them or deeper than
            twice its breadth, or one that is bored through.
    """
    hold(BORED, d_h, SOURCE, "3.1.2")
    of_dimension_lumber(min(float(b), float(d)))
    require(float(d) <= 2 * float(b), f"a post is no deeper than twice its breadth ({SOURCE.cite('4.4.1')})")
    require(float(d_h) < float(b), f"something of the post is left beside its holes ({SOURCE.cite('3.1.2')})")
    wide, C_D, service = max(float(b), float(d)), table_2_3_2().read(load), service_of(moisture)
    row = value_grade(grade, wide)
    F_t = adjusted_tension(
        table_4a_tension().read(species, row), C_D, table_4a_wet().read("F_t", service), size_factor("F_t", grade, wide)
    )
    F_b = adjusted_bending(
        table_4a_bending().read(species, row), C_D, table_4a_wet().read("F_b", service), size_factor("F_b", grade, wide)
    )
    b_n = subtract(b, d_h, symbol="b_n", label="breadth less what is bored out of it")
    f_t, f_b = tension_stress(T, n, b_n, d), bending_stress(M, n, b_n, d)
    alone = divide(f_t, F_t, symbol="f_t/F_t'", unit="1", label="tension alone")
    together = greatest(
        tension_and_bending(f_t, F_t, f_b, F_b), bending_beyond_tension(f_b, f_t, F_b), symbol="r", label="used of it"
    )
    return PulledPost(alone, together)
