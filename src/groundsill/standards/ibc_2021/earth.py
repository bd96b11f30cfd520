"""IBC 2021 1610.1 and 1807.3: what soil pushes with, and how deep a post must stand to hold it back.

In: the class of soil, feet and pounds. Out: psf for each foot of depth; depth in feet, at allowable-stress level. The
table is for drained soil with level ground behind it and nothing standing on it; expansive soil pushes harder, and
water comes on top.
"""

from __future__ import annotations

from math import sqrt
from typing import Annotated

from groundsill.standards.ibc_2021 import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.table import Table

__all__ = ["bearing_at_third", "embedment_ratio", "nonconstrained_depth", "post_depth", "table_1610_1"]

Force = Annotated[float, Q("lb", "P", "lateral force on the post", above=0.0)]
Tabulated = Annotated[float, Q("psf/ft", "S_L", "lateral bearing for each foot below the ground", above=0.0)]
Width = Annotated[float, Q("ft", "b", "diameter of a round post, diagonal of a square one", above=0.0)]
Above = Annotated[float, Q("ft", "h", "height of the force over the ground", at_least=0.0)]
Trial = Annotated[float, Q("ft", "d", "depth of the post in the ground", above=0.0)]


def table_1610_1() -> Table:
    """Lateral soil load, psf for each foot of depth, active and at rest, by unified soil classification."""
    return Table.load(__package__, "tables/1610_1.toml")


@equation(
    "ibc-2021/1807.3.2.1-S_1",
    title="Lateral bearing at a third of a post's depth",
    clause="1807.3.2.1",
    source=SOURCE,
    witness="Engineering with the Spreadsheet (ASCE, 2006), figure 16-1: 266 psf/ft at 5.02 ft, 445 psf",
    constants={12.0: "ft"},
)
def bearing_at_third(
    S_L: Tabulated, d: Trial
) -> Annotated[float, Q("psf", "S_1", "lateral bearing at a third of the depth")]:
    """The tabulated value for each foot, at a third of the depth (counted to twelve feet at most by the code).

    Example: 266 psf/ft at 5.02 ft: 445 psf.
    """
    return S_L * min(d / 3, 12.0)


@equation(
    "ibc-2021/1807.3.2.1-A",
    title="The length A of the rule for posts",
    clause="1807.3.2.1",
    source=SOURCE,
    witness="eng-tips.com thread 276653: 3,000 lb on 1 ft at 399 psf, 17.6 ft",
)
def embedment_ratio(
    P: Force, S_1: Annotated[float, Q("psf", "S_1", "lateral bearing at a third of the depth", above=0.0)], b: Width
) -> Annotated[float, Q("ft", "A", "2.34 P over S_1 b")]:
    """2.34 P / (S_1 b). Example, the same thread: 2.34 x 3,000 / (150 x 2 x 1.33 x 1) = 17.6 ft."""
    return 2.34 * P / (S_1 * b)


@equation(
    "ibc-2021/18-1",
    title="Depth of a post with no floor round it",
    clause="1807.3.2.1, Eq. 18-1",
    source=SOURCE,
    witness="Engineering with the Spreadsheet (ASCE, 2006), figure 16-1: 510 lb 4 ft up, 266 psf/ft, 1 ft: 5.02 ft",
)
def nonconstrained_depth(
    A: Annotated[float, Q("ft", "A", "2.34 P over S_1 b", above=0.0)], h: Above
) -> Annotated[float, Q("ft", "d", "depth needed")]:
    """0.5 A (1 + sqrt(1 + 4.36 h/A)), where nothing holds the post at the ground or above it.

    Read in 780 CMR 1807.3.2 (Massachusetts). Example: A = 2.68 ft, h = 4 ft: 5.02 ft.
    """
    return 0.5 * A * (1 + sqrt(1 + 4.36 * h / A))


@procedure(
    "ibc-2021/1807.3.2.1",
    title="Depth that a post needs, its bearing taken at a trial depth",
    clause="1807.3.2.1",
    source=SOURCE,
    alias="ibc.post-depth",
)
def post_depth(P: Force, h: Above, b: Width, S_L: Tabulated, d: Trial) -> float:
    """The depth needed, ft, with the bearing taken at a third of ``d``: enough where it is no more than ``d``."""
    return nonconstrained_depth(embedment_ratio(P, bearing_at_third(S_L, d), b), h)
