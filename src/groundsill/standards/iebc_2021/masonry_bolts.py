"""IEBC 2021 appendix chapter A1: bolts in walls of unreinforced masonry, by its table and by tests.

The table is for bolts set level, or at 22.5 degrees, through or into the *face* of a wall, with its conditions. A bolt
down into the top of a wall is none of them and goes by tests alone. Expansion anchors have no place here.
"""

from __future__ import annotations

import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Literal

from groundsill.standards.iebc_2021 import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given
from groundsill.working.table import Table
from groundsill.working.value import marks_of

__all__ = [
    "FACE_BOLTS",
    "Condition",
    "FaceBolt",
    "face_bolt_conditions",
    "face_bolt_shear",
    "strength_by_tests",
    "table_a107_5",
    "table_a107_5_2",
    "table_a108_1_2",
    "table_a108_1_2_scope",
    "tested_shear",
    "tests_of_bolts_asked",
]

FACE_BOLTS = ("through-bolt", "embedded at 22.5 degrees", "grouted")
_SCOPE, _NEW = "bolts of the table", "new bolts"
_TAPE_IN = 0.01

FaceBolt = Literal["through-bolt", "embedded at 22.5 degrees", "grouted"]
Diameter = Annotated[float, Q("in", "d_a", "bolt diameter", above=0.0)]
Loads = Annotated[Sequence[float], Q("lb", "P", "what each tested bolt held", at_least=0.0)]


def table_a108_1_2() -> Table:
    """Strength of bolts through or into the face of a wall, strength level."""
    return Table.load(__package__, "tables/a108_1_2.toml")


def table_a108_1_2_scope() -> Table:
    """What a bolt of that table is like: sizes, hole, plate, embedment."""
    return Table.load(__package__, "tables/a108_1_2_scope.toml")


def table_a107_5() -> Table:
    """How many bolts are tested, how far, and what their tests are worth."""
    return Table.load(__package__, "tables/a107_5.toml")


def table_a107_5_2() -> Table:
    """The torque that an embedded bolt is tested with."""
    return Table.load(__package__, "tables/a107_5_2.toml")


@dataclass(frozen=True, slots=True)
class Condition:
    """One condition of the table: in words, and whether it is met; None where nobody can say."""

    words: str
    met: bool | None


def face_bolt_conditions(
    kind: FaceBolt,
    d_a: float,
    *,
    hole: float | None,
    plate: float | None,
    embedment: float | None,
    wythes: float | None,
    thickness: float | None,
) -> tuple[Condition, ...]:
    """The conditions of the table for one bolt, each met, not met, or not known.

    Args:
        kind: how it is set.
        d_a: diameter, in.
        hole: the hole in the masonry, in.; for a through-bolt it is not asked.
        plate: area of the plate on the far side, sq in.; asked of a through-bolt.
        embedment: depth in the masonry, in.
        wythes: wythes of the wall that are bonded together.
        thickness: of the wall, in.; a grouted bolt must not come out of it.
    """
    scope = table_a108_1_2_scope()
    least, most = _diameters()
    bore = float(scope.read(_SCOPE, "hole in the wall", "d_h"))
    steel = float(scope.read(_SCOPE, "plate on the far side, least", "A_pl"))
    deep = float(scope.read(_SCOPE, "embedment of a grouted bolt, least", "l_least"))
    many = float(scope.read(_SCOPE, "wythes, least", "n_w"))
    found = [
        Condition(f"diameter {least:g} to {most:g} in.", least - _TAPE_IN <= d_a <= most + _TAPE_IN),
        Condition(f"at least {many:g} wythes bonded together", None if wythes is None else wythes >= many),
    ]
    if kind == "through-bolt":
        text = f"a steel plate of at least {steel:g} sq in. on the far side"
        found.append(Condition(text, None if plate is None else plate >= steel - _TAPE_IN))
        return tuple(found)
    text = f"centred in a hole of {bore:g} in., grouted all round"
    found.append(Condition(text, None if hole is None else abs(hole - bore) <= 1 / 16))
    if kind == "grouted":
        known = None if embedment is None else embedment >= deep - _TAPE_IN
        found.append(Condition(f"at least {deep:g} in. deep", known))
        if embedment is not None and thickness is not None:
            found.append(Condition("no deeper than the wall is thick", embedment <= thickness + _TAPE_IN))
    return tuple(found)


def _diameters() -> tuple[float, float]:
    """The least and the greatest diameter of the table, in."""
    scope = table_a108_1_2_scope()
    least, most = scope.read(_SCOPE, "diameter, least", "d_least"), scope.read(_SCOPE, "diameter, most", "d_most")
    return float(least), float(most)


@procedure(
    "iebc-2021/A108.1(2)-shear",
    title="Shear strength of a bolt in the face of an unreinforced masonry wall",
    clause="Table A108.1(2)",
    source=SOURCE,
    alias="iebc.brick-bolt",
)
def face_bolt_shear(kind: str, d_a: Diameter) -> float:
    """Strength-level shear of a bolt by the table, lb; a diameter between two printed ones goes by the lower.

    ``kind`` is one of the three ways of setting a bolt that the table has. Whether the conditions of the table are met
    is the next question (``face_bolt_conditions``).

    Raises:
        OutsideLimits: a kind or a diameter that the table does not have.
    """
    if kind not in FACE_BOLTS:
        raise OutsideLimits(f"{SOURCE.cite('Table A108.1(2)')}: no {kind} bolt; it has {', '.join(FACE_BOLTS)}")
    least, most = _diameters()
    if not least - _TAPE_IN <= float(d_a) <= most + _TAPE_IN:
        raise OutsideLimits(
            f"{SOURCE.cite('Table A108.1(2)')}: d_a = {float(d_a):g} in.; the table has {least:g} to {most:g} in."
        )
    printed = max(size for size in (0.5, 0.625, 0.75) if size <= float(d_a) + _TAPE_IN)
    return table_a108_1_2().read(f"{kind}, {Fraction(printed)}", "shear", "V_m")


# ---- By tests -------------------------------------------------------------------------------------------------------


@equation(
    "iebc-2021/A107.5.3",
    title="Strength of a bolt in masonry by prequalifying tests",
    clause="A107.5.3",
    source=SOURCE,
    how="from memory",
)
def tested_shear(
    P_mean: Annotated[float, Q("lb", "P_mean", "mean of the ultimate loads", at_least=0.0)],
    n: Annotated[float, Q("1", "n", "mean ultimate load over the strength counted", at_least=1.0)],
    P_moved: Annotated[float, Q("lb", "P_1/8", "mean load at 1/8 in. of movement", at_least=0.0)],
) -> Annotated[float, Q("lb", "V_m", "strength of the bolt in the masonry", at_least=0.0)]:
    """The mean of what the tested bolts held over a factor, or the mean load at 1/8 in. of movement if that is less.

    Source: A107.5.3; the beginning was seen, the factor of 5.0 and the number of tests are from memory, and so is that
    the result is of strength level, the careful reading of the two. Loads of 5,000 lb on average, all with less than
    1/8 in.: 1,000 lb (our own arithmetic).
    """
    return min(P_mean / n, P_moved)


def tests_of_bolts_asked() -> float:
    """How many bolts of a size and type must be tested in one class of masonry."""
    return table_a107_5().read(_NEW, "tests of a size and type in a class of masonry, least", "n_t")


@procedure(
    "iebc-2021/A107.5.3-strength",
    title="Strength of a kind of bolt in one class of masonry, from its tests",
    clause="A107.5.3",
    source=SOURCE,
    alias="iebc.brick-bolt-tests",
)
def strength_by_tests(loads: Loads) -> float:
    """Strength of a kind of bolt in one class of masonry, lb.

    Args:
        loads: what each tested bolt held, lb, with no more than 1/8 in. of movement; of one that moved farther, the
            load it had at 1/8 in. So the load at that movement is never less than what is entered.

    Raises:
        OutsideLimits: for fewer tests than are asked.
    """
    table = table_a107_5()
    asked = tests_of_bolts_asked()
    if len(loads) < float(asked):
        raise OutsideLimits(
            f"{SOURCE.cite('A107.5.3')}: {len(loads)} of {float(asked):g} tests of this kind of bolt in this masonry"
        )
    factor = table.read(_NEW, "mean ultimate load over the strength counted", "n")
    label = f"mean of {len(loads)} tests, {min(loads):,.0f} to {max(loads):,.0f} lb"
    mean = given("P_mean", statistics.fmean(float(v) for v in loads), "lb", label, marks_of((*loads, asked)))
    return tested_shear(mean, factor, mean)
