"""IEBC 2021 A304.4: how much of a wall line with cripple walls is braced, in what panels, and how they are vented.

The shares by stories and finishes are in :mod:`groundsill.standards.iebc_2021.rules`, since places print their own.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.iebc_2021 import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, divide, given, multiply
from groundsill.working.table import Table
from groundsill.working.value import marks_of

__all__ = [
    "BracingAsked",
    "bracing_asked",
    "bracing_length",
    "counted_beside_vent",
    "least_panel",
    "table_a304_lengths",
    "table_a304_shares",
    "vent_height",
    "vent_hole_in_panel",
    "vent_holes",
]

_TAPE_IN = 0.005  # what two tapes may differ by

WallLength = Annotated[float, Q("ft", "L", "length of the wall line that stands on cripple walls", above=0.0)]
StudHeight = Annotated[float, Q("in", "h", "height of the studs, the tallest where they differ", at_least=0.0)]
LeastPanel = Annotated[float, Q("ft", "b_min", "least length of one braced panel", above=0.0)]


def table_a304_lengths() -> Table:
    """The lengths that sections A304.1 to A304.4 go by."""
    return Table.load(__package__, "tables/a304_lengths.toml")


def table_a304_shares() -> Table:
    """The ratios that section A304.4 goes by."""
    return Table.load(__package__, "tables/a304_shares.toml")


@dataclass(frozen=True, slots=True)
class BracingAsked:
    """What a wall line is asked for: feet of panel in all, least feet of one panel, and from how few to how many panels
    that makes. ``fits`` is False where the line is too short for even one panel.
    """

    total_ft: float
    least_ft: float
    fewest: int
    most: int
    fits: bool


@equation(
    "iebc-2021/A304.4.2-panel",
    title="Least length of a braced panel",
    clause="A304.4.2",
    source=SOURCE,
    how="from memory",
    constants={12: "in/ft"},
)
def least_panel(
    h: StudHeight,
    k: Annotated[float, Q("1", "k", "least length over stud height", above=0.0)],
    b_0: Annotated[float, Q("in", "b_0", "least length whatever the height", above=0.0)],
) -> Annotated[float, Q("ft", "b_min", "least length of one braced panel")]:
    """Twice the height of the studs, and 48 in. at least; ft.

    ``k`` and ``b_0`` are figures of A304.4.2 (from memory). Studs of 28 in.: 56 in., 4.67 ft; studs of 18 in.: 4 ft
    (our own arithmetic).
    """
    return max(k * h, b_0) / 12


@equation(
    "iebc-2021/A304.3.1-length",
    title="Least bracing of a wall line",
    clause="Table A304.3.1",
    source=SOURCE,
    how="from memory",
    constants={100: "%"},
)
def bracing_length(
    p: Annotated[float, Q("%", "p", "share of the wall line that is braced", above=0.0, at_most=100.0)],
    L: WallLength,
    b_min: LeastPanel,
) -> Annotated[float, Q("ft", "L_b", "least length of panels in the line")]:
    """The share of the line's length, and a panel at each end at the least; ft, never more than the line has.

    The table asks for panels at each end *and* the share; on a short line the two end panels govern. Source: Table
    A304.3.1 (from memory). 52 ft at 50 per cent with panels of 4 ft: 26 ft, as a local brochure lays out two panels of
    4 ft and three of 6 ft (recalled). 15 ft at 40 per cent with panels of 4 ft: 8 ft (our own arithmetic).
    """
    return max(p / 100 * L, min(L, 2 * b_min))


@procedure(
    "iebc-2021/A304.4.2",
    title="Braced panels of a wall line",
    clause="A304.4.2, Table A304.3.1",
    source=SOURCE,
    alias="iebc.bracing",
)
def bracing_asked(
    p: Annotated[float, Q("%", "p", "share of the wall line that is braced")], L: WallLength, h: StudHeight
) -> BracingAsked:
    """Feet of panel, least feet of one, and how many panels that may be: one at each end, the rest spread evenly.

    Args:
        p: per cent of the wall line, from the table of whose rules are used.
        L: length of the wall line on cripple walls, ft.
        h: height of the tallest studs in it, in.
    """
    k = table_a304_shares().read("length of a braced panel over stud height, least", symbol="k")
    b_min = least_panel(h, k, table_a304_lengths().read("braced panel, least", symbol="b_0"))
    total = bracing_length(p, L, b_min)
    fits = condition("the line is long enough for one panel", b_min <= L, L, b_min, cite=SOURCE.cite("A304.4.2"))
    most = max(1, math.floor(float(total) / float(b_min) + 1e-9))
    return BracingAsked(total, b_min, min(2, most), most, bool(fits))


@equation(
    "iebc-2021/A304.4.4-vent",
    title="Highest top of a vent inside a braced panel",
    clause="A304.4.4",
    source=SOURCE,
    how="from memory",
)
def vent_height(
    H: Annotated[float, Q("in", "H", "height of the cripple wall", at_least=0.0)],
    k_v: Annotated[float, Q("1", "k_v", "greatest part of the height", above=0.0)],
) -> Annotated[float, Q("in", "h_v", "highest top of a vent above the foundation")]:
    """A quarter of the wall's height above the foundation; where a vent reaches higher no braced panel stands.

    In. Source: A304.4.4 (from memory). A wall of 40 in.: 10 in. (our own arithmetic).
    """
    return k_v * H


@equation(
    "iebc-2021/A304.4.4-length",
    title="Length that a panel with a vent counts for",
    clause="A304.4.4",
    source=SOURCE,
    how="from memory",
)
def counted_beside_vent(
    b: Annotated[float, Q("in", "b", "length of the panel", at_least=0.0)],
    w_v: Annotated[float, Q("in", "w_v", "length of the vent in it", at_least=0.0)],
    s_s: Annotated[float, Q("in", "s_s", "one stud space", at_least=0.0)],
) -> Annotated[float, Q("in", "b_c", "length that counts", at_least=0.0)]:
    """A panel with a low vent is longer by the vent, or by one stud space where that is more; the rest counts. In.

    Source: A304.4.4 (from memory). 72 in. with a vent of 14 in. among studs at 16 in.: 56 in. (our own arithmetic).
    """
    return max(0.0, b - max(w_v, s_s))


@procedure(
    "iebc-2021/A304.4.3-size",
    title="A ventilation hole that takes nothing from a panel",
    clause="A304.4.3",
    source=SOURCE,
    alias="iebc.vent-hole",
)
def vent_hole_in_panel(
    d: Annotated[float, Q("in", "d", "diameter of the hole", above=0.0)],
    c: Annotated[float, Q("in", "c", "clear of the plates and of the panel's nailed edges", at_least=0.0)],
) -> float:
    """The diameter of a hole through a braced panel, in., refused where the chapter gives no such hole.

    At most 3 in. across, nearly in the middle between two studs, 1 in. clear of plates and nailed edges (seen:
    https://up.codes/s/stud-space-ventilation). Smaller ones than 2 in. take no more from a panel; they let less air.

    Raises:
        OutsideLimits: a larger hole, or one nearer to a plate or nailed edge.
    """
    lengths, clause = table_a304_lengths(), SOURCE.cite("A304.4.3")
    most = lengths.read("ventilation hole, most", symbol="d_max")
    if not condition("the hole is no larger", float(d) <= float(most) + _TAPE_IN, d, most, cite=clause):
        raise OutsideLimits(f"{clause}: a hole of {float(d):g} in.; must be at most {float(most):g} in. across")
    for what in ("the plates", "the nailed edges"):
        least = lengths.read(f"ventilation hole clear of {what}", symbol="c_min")
        if not condition(f"it is clear of {what}", float(c) >= float(least) - _TAPE_IN, c, least, cite=clause):
            raise OutsideLimits(
                f"{clause}: a hole {float(c):g} in. clear of {what}; must be at least {float(least):g} in."
            )
    return d


@procedure(
    "iebc-2021/A304.4.3",
    title="Ventilation holes of a braced stretch",
    clause="A304.4.3",
    source=SOURCE,
    alias="iebc.vent-holes",
)
def vent_holes(
    b: Annotated[float, Q("in", "b", "length of panels on the inside face", at_least=0.0)],
    s_s: Annotated[float, Q("in", "s_s", "spacing of the studs", above=0.0)],
    h: StudHeight,
) -> float:
    """How many round holes of 2 to 3 in. are drilled: one at the top and one at the bottom of each stud space.

    Studs lower than 18 in. need only one (seen: https://up.codes/s/stud-space-ventilation). Holes above and below
    blocking between the studs come on top and are not counted here; panels on the outside face need none.

    Args:
        b: length of panels on the inside face, in.
        s_s: spacing of the studs, in.
        h: height of the studs, in.
    """
    bound = table_a304_lengths().read("stud height from which a stud space has two holes", symbol="h_2")
    two = condition("each stud space has two holes", h >= bound, h, bound, cite=SOURCE.cite("A304.4.3"))
    bays = divide(b, s_s, symbol="b/s_s", unit="1", label="stud spaces, a part counted as one")
    whole = given("n_s", math.ceil(float(bays) - 1e-9), "1", "stud spaces behind the panels", marks_of((bays,)))
    return multiply(whole, 2.0 if two else 1.0, symbol="n_h", unit="1", label="ventilation holes")
