"""IBC 2021 1809 and 1905.1.7: how wide, thick and deep a new strip footing is at least, and which bars it needs.

The footing of a light-frame wall, by the code's own table. Soil pressure is ``soils``; bending, shear and laps are ACI
318. How deep the ground freezes is the locality's to say.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.conditions import Condition, all_met
from groundsill.standards.ibc_2021 import SOURCE
from groundsill.standards.ibc_2021.concrete import table_1808_8_1
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, greatest
from groundsill.working.table import Table

__all__ = [
    "FootingBars",
    "FootingFits",
    "LeastFooting",
    "depth_below_ground",
    "footing_bars",
    "footing_fits",
    "least_bar_area",
    "least_concrete",
    "least_footing",
    "plain_edge",
    "table_1809_4",
    "table_1809_6",
    "table_1809_7",
    "table_1905_1_7",
    "undercut_distance",
]

Stories = Annotated[float, Q("1", "n", "floors that the footing holds up", at_least=1.0, at_most=3.0)]
Frost = Annotated[float, Q("in", "d_f", "depth that the ground freezes, 0 where it does not", at_least=0.0)]
Width = Annotated[float, Q("in", "B", "width of the footing", above=0.0)]
Thick = Annotated[float, Q("in", "h", "thickness of the footing", above=0.0)]
Deep = Annotated[float, Q("in", "D_f", "bottom of the footing below undisturbed ground", above=0.0)]
Beyond = Annotated[float, Q("in", "p", "footing beyond the face of the wall on it", at_least=0.0)]
LeastArea = Annotated[float, Q("in^2", "A_s,min", "least area of bars along the footing", at_least=0.0)]

_WHOLE = ("D", "E", "F")


@dataclass(frozen=True, slots=True)
class LeastFooting:
    """The least of a new strip footing, in.: width, thickness, depth of its bottom below undisturbed ground."""

    width: float
    thickness: float
    depth: float


@dataclass(frozen=True, slots=True)
class FootingFits:
    """Whether a footing is as large as asked: each condition, whether all are met, and the least it was held to."""

    least: LeastFooting
    conditions: tuple[Condition, ...]
    fits: bool | None


@dataclass(frozen=True, slots=True)
class FootingBars:
    """Whether bars along a plain footing are asked, and whether these will do: each condition, and the least area."""

    asked: bool
    why: str
    least_area: float
    conditions: tuple[Condition, ...]
    enough: bool | None


def table_1809_7() -> Table:
    """Least width and thickness of footings under light-frame walls, by floors held up."""
    return Table.load(__package__, "tables/1809_7.toml")


def table_1905_1_7() -> Table:
    """Least bars of plain footings under walls: how many, of which diameter, and their share of the section."""
    return Table.load(__package__, "tables/1905_1_7.toml")


def table_1809_4() -> Table:
    """Least width of a footing and least depth of its bottom below undisturbed ground, in."""
    return Table.load(__package__, "tables/1809_4.toml")


def table_1809_6() -> Table:
    """How steep a line between the lower edges of adjoining footings may fall, rise over run, by soil."""
    return Table.load(__package__, "tables/1809_6.toml")


@equation(
    "ibc-2021/1809.5",
    title="Depth of a footing where the ground freezes",
    clause="1809.4 and 1809.5(1)",
    source=SOURCE,
)
def depth_below_ground(
    d_min: Annotated[float, Q("in", "d_min", "least depth in any ground", at_least=0.0)], d_f: Frost
) -> Deep:
    """The least depth of 1809.4, and to the frost line where the ground freezes, in.

    A footing protected by ASCE 32 or standing on rock needs no more than the least (1809.5). Read in a state's copy of
    the 2021 edition (its place stands in Table 1809.4) and in the 2018 edition,
    https://online.flipbuilder.com/mewf/msoi/files/basic-html/page470.html . 12 in. and 18 in. of frost: 18 in.
    """
    return max(d_min, d_f)


@equation(
    "ibc-2021/1809.6",
    title="Distance that keeps a deeper footing out from under a higher one",
    clause="1809.6",
    source=SOURCE,
)
def undercut_distance(
    drop: Annotated[float, Q("in", "Δ", "lower edge of the deeper footing below that of the higher", at_least=0.0)],
    slope: Annotated[float, Q("1", "tan", "rise over run of the line between the lower edges", above=0.0)],
) -> Annotated[float, Q("in", "x", "clear distance between the lower edges, in plan")]:
    """How far apart the lower edges stand at least, so that the line between them falls no steeper: drop/slope, in.

    Unless the soil under the higher footing is braced or retained, or analysis shows more. Read in the 2018 edition,
    https://online.flipbuilder.com/mewf/msoi/files/basic-html/page470.html . 6 in. deeper in sand, 0.577: 10.4 in. (our
    own arithmetic).
    """
    return drop / slope


@equation(
    "ibc-2021/1809.8",
    title="Edge of a plain footing",
    clause="1809.8",
    source=SOURCE,
    constants={8: "in", 6: "in"},
)
def plain_edge(
    p: Beyond, dwelling: Annotated[float, Q("1", "R-3", "1 for a dwelling of light framing, else 0")]
) -> Thick:
    """A footing without bars is at least 8 in. thick at its edge; under a dwelling of light framing 6 in. will do where
    it reaches no farther beyond the wall than it is thick.

    Read in a copy of the twin section 1805.4.2.3 of an older edition, archives.ci.zephyrhills.fl.us, document 88495,
    page 14. A dwelling, 4 in. beyond the wall: 6 in.; 7 in.: 7 in.
    """
    if dwelling > 0:
        return min(8, max(6, p))
    return 8


@procedure(
    "ibc-2021/1809",
    title="Least size of a strip footing under a light-frame wall",
    clause="1809.4, 1809.5, 1809.7",
    source=SOURCE,
    alias="ibc.least-footing",
)
def least_footing(stories: Stories, d_f: Frost = 0.0) -> LeastFooting:
    """Least width, thickness and depth.

    Args:
        stories: floors that the footing holds up, 1 to 3; it may hold up a roof beside.
        d_f: depth that the ground freezes, in.; 0 where it does not.
    """
    row = f"{float(stories):g}"
    table, least = table_1809_7(), table_1809_4()
    width = greatest(least.read("width of the footing"), table.read(row, "width"), symbol="B_min", label="width")
    depth = depth_below_ground(least.read("depth of its bottom below the soil"), d_f)
    return LeastFooting(width, table.read(row, "thickness", symbol="h_min"), depth)


@procedure(
    "ibc-2021/1809-fits",
    title="Is a new strip footing as large as the code asks?",
    clause="1809.4, 1809.5, 1809.7, 1809.8",
    source=SOURCE,
    alias="ibc.footing-fits",
)
def footing_fits(
    stories: Stories, B: Width, h: Thick, D_f: Deep, d_f: Frost = 0.0, p: Beyond = 0.0, bars: bool = True
) -> FootingFits:
    """Each rule for size, met or not.

    Args:
        stories: floors that the footing holds up, 1 to 3.
        B: its width, in.
        h: its thickness, in.
        D_f: its bottom below undisturbed ground, in.
        d_f: depth that the ground freezes, in.; 0 where it does not.
        p: how far it reaches beyond the face of the wall on it, in.
        bars: False for a footing of plain concrete under a dwelling of light framing.
    """
    least = least_footing(stories, d_f)
    thick = least.thickness
    if not bars:
        thick = greatest(thick, plain_edge(p, 1.0), symbol="h_min", label="with the edge of plain concrete")
    found = (
        _asked(f"at least {float(least.width):g} in. wide", B, least.width, "Table 1809.7"),
        _asked(f"at least {float(thick):g} in. thick", h, thick, "Table 1809.7 and 1809.8"),
        _asked(f"bottom at least {float(least.depth):g} in. below undisturbed ground", D_f, least.depth, "1809.4"),
    )
    return FootingFits(LeastFooting(least.width, thick, least.depth), found, all_met(found))


@procedure(
    "ibc-2021/1808.8.1",
    title="Least strength of the concrete of a new foundation",
    clause="Table 1808.8.1, as ACI 318-19 Table 19.2.1.1",
    source=SOURCE,
    alias="ibc.foundation-concrete",
)
def least_concrete(category: str, small_dwelling: bool = True) -> float:
    """Least specified strength, psi.

    Args:
        category: seismic design category, A to F.
        small_dwelling: a dwelling of light framing and two stories or less.
    """
    if category not in "ABCDEF" or len(category) != 1:
        raise OutsideLimits(f"{SOURCE.cite('1808.8.1')}: category = {category!r}; must be A, B, C, D, E or F")
    if category not in _WHOLE:
        return table_1808_8_1().read("any, seismic design category A, B or C")
    if small_dwelling:
        return table_1808_8_1().read("dwelling of light framing, two stories or less, category D, E or F")
    return table_1808_8_1().read("any other, category D, E or F")


# ---- Bars -----------------------------------------------------------------------------------------------------------


@equation(
    "ibc-2021/1905.1.7-area",
    title="Least area of bars along a plain footing",
    clause="1905.1.7, ACI 318 14.1.4",
    source=SOURCE,
)
def least_bar_area(
    rho: Annotated[float, Q("1", "rho", "least share of bars in the section", above=0.0, below=0.1)], B: Width, h: Thick
) -> LeastArea:
    """0.002 of the gross section, in2.

    Read in the amendments of Pasadena (pasadena-ca.elaws.us, 14.04.210) and San Mateo (law.cityofsanmateo.org,
    23.08.130) to the same section of the California code. 15 by 12 in.: 0.36 in2 (our own arithmetic).
    """
    return rho * B * h


@procedure(
    "ibc-2021/1905.1.7",
    title="Bars along a strip footing that is not designed as reinforced concrete",
    clause="1905.1.7, ACI 318 14.1.4",
    source=SOURCE,
    alias="ibc.footing-bars",
)
def footing_bars(
    B: Width,
    h: Thick,
    count: Annotated[float, Q("1", "n", "bars along the footing", at_least=0.0)],
    d_b: Annotated[float, Q("in", "d_b", "diameter of the bars", at_least=0.0)],
    A_s: Annotated[float, Q("in^2", "A_s", "area of all of them", at_least=0.0)],
    category: str,
    detached: bool = True,
    top_and_bottom: bool = True,
) -> FootingBars:
    """In categories C to F a plain footing under a wall needs two bars along it at least.

    Args:
        B: width, in.
        h: thickness, in.
        count: bars along it.
        d_b: their diameter, in.
        A_s: area of all of them, in2.
        category: seismic design category, A to F.
        detached: a detached one- or two-family dwelling, three stories at most, with stud walls: none are asked in
            category C (recalled), and cities let the share of the section go in D to F.
        top_and_bottom: one bar at least at its top and one at its bottom; asked beyond 8 in. of thickness.
    """
    table = table_1905_1_7()
    few, size = (
        table.read("wall footing", "bars", symbol="n_min"),
        table.read("wall footing", "diameter", symbol="d_b,min"),
    )
    area = least_bar_area(table.read("wall footing", "share", symbol="rho"), B, h)
    if category in ("A", "B") or (category == "C" and detached):
        why = "category C, a detached dwelling" if category == "C" else f"category {category}"
        return FootingBars(False, f"no bars are asked: {why}", area, (), True)
    asked = [
        _asked(f"{float(few):g} bars along it at least", count, few, "1905.1.7"),
        _asked(f"of {float(size):g} in. (#4) at least", d_b, size, "1905.1.7"),
        _asked(f"of {float(area):.2f} in2 together at least", A_s, area, "1905.1.7"),
    ]
    if float(h) > float(table.read("wall footing", "one layer up to", symbol="h_1")):
        met = condition("one at the top and one at the bottom", top_and_bottom, cite=SOURCE.cite("1905.1.7"))
        asked.append(Condition("one at the top and one at the bottom", met))
    return FootingBars(True, f"category {category}", area, tuple(asked), all_met(asked))


def _asked(text: str, has: float, least: float, clause: str) -> Condition:
    met = float(has) >= float(least) - 1e-9
    return Condition(text, condition(text, met, has, least, cite=SOURCE.cite(clause)), f"it has {float(has):g}")
