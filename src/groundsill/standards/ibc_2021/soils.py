"""IBC 2021 section 1806: what soil may be presumed to carry when nobody tested it.

In: a class of material of Table 1806.2 and the footing's dimensions and dead load. Out: bearing pressure (psf), lateral
bearing and sliding resistance (lb), at allowable-stress level. Mud, organic soil and unprepared fill have no
presumptive value, and expansive soil is another question; both are for a geotechnical engineer.

What the values are for (1806.2, 1806.3, 1807.2.3): undisturbed ground of the class; where a report gives values, those
stand in their place. They are allowable values beside the allowable combinations, whose six tenths of the dead load is
the margin against sliding: no further factor is asked. The factors of 1.5, and 1.1 with an earthquake, are for walls
that hold back soil, by loads without those combinations. The table was read in the editions of 2009 and 2012, and as
proposed for 1804.2 of 2006: the same classes and figures; that 2018 to 2024 kept them is recalled.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.ibc_2021 import SOURCE
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, note
from groundsill.working.table import Table

__all__ = [
    "LateralResistance",
    "bearing_with_alternative_combinations",
    "cohesion_resistance",
    "combined_resistance",
    "expansive_soil",
    "friction_resistance",
    "lateral_pressure",
    "lateral_resistance",
    "lateral_resultant",
    "pole_pressure",
    "presumptive_bearing",
    "presumptive_lateral",
    "retaining_resistance",
    "retaining_resistance_in_earthquake",
    "table_1806_2",
]

DeadLoad = Annotated[float, Q("lb", "D", "dead load on the contact area", at_least=0.0)]
Tabulated = Annotated[float, Q("psf/ft", "S_L", "lateral bearing for each foot below natural grade", at_least=0.0)]
Depth = Annotated[float, Q("ft", "d", "depth below natural grade", at_least=0.0)]
Sliding = Annotated[float, Q("lb", "R_s", "resistance to sliding, allowable-stress level")]


def table_1806_2() -> Table:
    """Presumptive bearing (psf), lateral bearing (psf/ft), friction and cohesion (psf) by class of material."""
    return Table.load(__package__, "tables/1806_2.toml")


@equation(
    "ibc-2021/1806.2-friction",
    title="Sliding resistance by friction",
    clause="Table 1806.2, footnote a",
    source=SOURCE,
)
def friction_resistance(
    mu: Annotated[float, Q("1", "mu", "coefficient of friction", above=0.0, below=1.0)], D: DeadLoad
) -> Sliding:
    """Coefficient times dead load, for sand, gravel and rock.

    Seen in ICC code change S148-07/08, footnote a to the same table (docslib 1487422). Example (our arithmetic):
    0.25 of 4,000 lb is 1,000 lb.
    """
    return mu * D


@equation(
    "ibc-2021/1806.3.2",
    title="Sliding resistance by cohesion, capped",
    clause="1806.3.2",
    source=SOURCE,
    witness="a soil report by the code: 130 psf, never more than half the dead load (Santa Ana, document 376336)",
)
def cohesion_resistance(
    c: Annotated[float, Q("psf", "c", "cohesion", above=0.0)],
    A: Annotated[float, Q("ft^2", "A", "contact area", at_least=0.0)],
    D: DeadLoad,
) -> Sliding:
    """Cohesion times contact area, and never more than half the dead load, for clay and silt.

    The product is seen in ICC code change S148-07/08, footnote b (docslib 1487422), the half in a soil report that
    restates the section (City of Santa Ana, document 376336, page 49). Example (our arithmetic): 130 psf on 4 sq ft is
    520 lb, but under 800 lb of dead load only 400 lb.
    """
    return min(c * A, 0.5 * D)


@equation(
    "ibc-2021/1806.3.3",
    title="Lateral bearing at a depth",
    clause="1806.3.3",
    source=SOURCE,
    constants={15.0: "ft"},
)
def lateral_pressure(
    S_L: Tabulated, d: Depth
) -> Annotated[float, Q("psf", "p_L", "lateral bearing pressure, allowable-stress level")]:
    """The tabulated value for each foot of depth, up to fifteen times the tabulated value.

    Seen in words at what-when-how.com, topic 10034nh, page 484 (the 2012 edition). Example (our arithmetic): 100 psf/ft
    at 1.5 ft is 150 psf.
    """
    return S_L * min(d, 15.0)


@equation(
    "ibc-2021/1806.3.3-resultant",
    title="Lateral bearing on an embedded face",
    clause="1806.3.3, summed over the depth",
    source=SOURCE,
    constants={15.0: "ft"},
)
def lateral_resultant(
    S_L: Tabulated,
    b: Annotated[float, Q("ft", "b", "width of the face that is pushed against the soil", at_least=0.0)],
    d: Depth,
    d_0: Annotated[float, Q("ft", "d_0", "depth at the top that is not counted", at_least=0.0)],
) -> Annotated[float, Q("lb", "R_L", "lateral bearing resistance, allowable-stress level")]:
    """The pressure that grows in a straight line with depth, summed over a face from d_0 to d.

    A footing pushed along its length has only its end as face. ``d_0`` leaves out loose or unpaved soil at the top.
    Statics on the rule of 1806.3.3. Example (our arithmetic): 150 psf/ft on a face 1 ft wide and 2 ft deep is 300 lb.
    """
    require(d_0 <= d, "the depth not counted is no more than the depth")
    require(d <= 15.0, "beyond fifteen feet the pressure no longer grows")
    return S_L * b * (d**2 - d_0**2) / 2


@equation(
    "ibc-2021/1806.3.1",
    title="Lateral bearing and sliding together",
    clause="1806.3.1",
    source=SOURCE,
    witness="seaintarchive.org, 1997b/msg00588: 2,400 and 400 lb are 2,800 lb",
)
def combined_resistance(
    R_s: Annotated[float, Q("lb", "R_s", "resistance to sliding", at_least=0.0)],
    R_L: Annotated[float, Q("lb", "R_L", "lateral bearing resistance", at_least=0.0)],
) -> Annotated[float, Q("lb", "R", "resistance of the foundation to lateral load, allowable-stress level")]:
    """The two may be added.

    Seen in words at civil-engg-world.com, "Allowable load-bearing values of soils (IBC 09)"; the section number is
    recalled. Friction and full lateral bearing do not peak at the same movement: a check on both at once is generous.
    Example (our arithmetic): 1,000 and 300 lb give 1,300 lb.
    """
    return R_s + R_L


@equation(
    "ibc-2021/1806.3.4",
    title="Lateral bearing of an isolated pole",
    clause="1806.3.4",
    source=SOURCE,
    witness="the clause in words: two times the tabular values",
)
def pole_pressure(S_L: Tabulated) -> Annotated[float, Q("psf/ft", "S_L'", "lateral bearing for each foot of depth")]:
    """Twice the table for a pole that stands alone and may move half an inch at the ground under short loads.

    A post under a house moves with the house: the checks of this program never double. Seen in words in a public
    transcription of the California code (chapter 18). Example: 100 psf/ft becomes 200.
    """
    return 2 * S_L


Pushing = Annotated[float, Q("lb", "F", "net force that pushes the wall: 0.7 of an earthquake, 1.0 of other loads")]
Held = Annotated[float, Q("lb", "R", "least resistance of the soil at the base")]


@equation(
    "ibc-2021/1807.2.3",
    title="What a retaining wall's base must hold against sliding",
    clause="1807.2.3",
    source=SOURCE,
    witness="the clause in words (2009 edition), eng-tips.com thread 244631",
)
def retaining_resistance(F: Pushing) -> Held:
    """One and a half times the net force; the same factor holds against overturning.

    For walls that hold back soil, with nominal loads and not the combinations; a foundation that a braced line pushes
    is none. Seen at eng-tips.com, thread 244631, which gives the clause of 2009. Example: 1,000 lb, 1,500 lb.
    """
    return 1.5 * F


@equation(
    "ibc-2021/1807.2.3-earthquake",
    title="What a retaining wall's base must hold with an earthquake",
    clause="1807.2.3, exception",
    source=SOURCE,
    witness="the exception in words (2009 edition), eng-tips.com threads 244631 and 471237",
)
def retaining_resistance_in_earthquake(F: Pushing) -> Held:
    """One and a tenth times the net force, seven tenths of the earthquake in it.

    Seen at eng-tips.com, threads 244631 and 471237. Example: 1,000 lb, 1,100 lb.
    """
    return 1.1 * F


@equation(
    "ibc-2021/1806.1-third",
    title="Soil pressure with the alternative combinations",
    clause="1806.1",
    source=SOURCE,
    witness="ICC code change S148-07/08, footnote d: one-third more with the alternative combinations",
)
def bearing_with_alternative_combinations(
    q: Annotated[float, Q("psf", "q", "presumptive vertical or lateral bearing pressure", at_least=0.0)],
) -> Annotated[float, Q("psf", "q", "bearing pressure with the alternative combinations")]:
    """One third more, only where the *alternative* allowable-stress combinations with wind or earthquake are used.

    Never with the basic combinations of ASCE 7 2.4, by which this program checks. Seen in ICC code change S148-07/08,
    footnote d (docslib 1487422). Example, the same: 1,500 psf becomes 2,000 psf.
    """
    return q * (1 + 1 / 3)


@procedure(
    "ibc-2021/1803.5.3",
    title="Whether soil counts as expansive",
    clause="1803.5.3",
    source=SOURCE,
    alias="ibc.expansive-soil",
)
def expansive_soil(
    PI: Annotated[float | None, Q("1", "PI", "plasticity index", at_least=0.0)] = None,
    EI: Annotated[float | None, Q("1", "EI", "expansion index", at_least=0.0)] = None,
) -> bool | None:
    """Expansive from a plasticity index of 15 on, or by an expansion index above 20; None where neither is known.

    The expansion index goes before the plasticity index, which needs grain sizes beside it: soil fine enough for an
    index of 15 is taken to have them. Seen at seaintarchive.org, 2005b/msg00324, which gives the clause of 2000; the
    number of the clause is recalled.
    """
    if EI is not None:
        return condition("the expansion index is above 20", EI > 20, EI)
    if PI is not None:
        return condition("the plasticity index is 15 or more", PI >= 15, PI)
    return condition("plasticity or expansion index", None)


@procedure(
    "ibc-2021/1806.2",
    title="Presumptive bearing pressure",
    clause="Table 1806.2",
    source=SOURCE,
    alias="ibc.soil-bearing",
)
def presumptive_bearing(soil: str) -> float:
    """Allowable vertical bearing pressure, psf, by class of material (its number, ``5``, or the row's whole name)."""
    return table_1806_2().read(_row(soil), "bearing", "q_a")


@procedure(
    "ibc-2021/1806.2-lateral",
    title="Presumptive lateral bearing",
    clause="Table 1806.2",
    source=SOURCE,
)
def presumptive_lateral(soil: str) -> float:
    """Lateral bearing pressure for each foot below natural grade, psf/ft, by class of material."""
    return table_1806_2().read(_row(soil), "lateral", "S_L")


@dataclass(frozen=True, slots=True)
class LateralResistance:
    """What holds a foundation body against sliding, lb at allowable-stress level; ``rule`` is friction or cohesion."""

    sliding: float
    bearing: float
    total: float
    rule: str


@procedure(
    "ibc-2021/1806.3",
    title="Resistance of a foundation to lateral load",
    clause="1806.3",
    source=SOURCE,
    alias="ibc.soil-lateral",
)
def lateral_resistance(
    soil: str,
    D: DeadLoad,
    A: Annotated[float, Q("ft^2", "A", "contact area", at_least=0.0)],
    b: Annotated[float, Q("ft", "b", "width of the face that is pushed against the soil", at_least=0.0)] = 0.0,
    d: Depth = 0.0,
    d_0: Annotated[float, Q("ft", "d_0", "depth at the top that is not counted", at_least=0.0)] = 0.0,
) -> LateralResistance:
    """Friction (or capped cohesion) under the footing, and lateral bearing on one embedded face, added.

    Args:
        soil: class of material of Table 1806.2, by number or whole name.
        D: dead load on the contact area, as the load combination allows it to be counted, lb.
        A: contact area, sq ft (used for clay and silt only).
        b: width of the embedded face, ft; 0 for none.
        d: depth of the face below natural grade, ft.
        d_0: depth at the top that is not counted, ft.
    """
    table = table_1806_2()
    row = _row(soil)
    if isinstance(table.rows[row][table.columns.index("friction")], str):
        rule = "cohesion"
        sliding = cohesion_resistance(table.read(row, "cohesion", "c"), A, D)
    else:
        rule = "friction"
        sliding = friction_resistance(table.read(row, "friction", "mu"), D)
    if b <= 0 or d <= 0:
        note("No embedded face is counted")
        return LateralResistance(sliding, 0.0, sliding, rule)
    bearing = lateral_resultant(presumptive_lateral(soil), b, d, d_0)
    return LateralResistance(sliding, bearing, combined_resistance(sliding, bearing), rule)


def _row(soil: str) -> str:
    rows = table_1806_2().rows
    found = next((key for key in rows if key == soil or key.split()[0] == soil.strip()), None)
    if found is None:
        raise OutsideLimits(f"{SOURCE.cite('Table 1806.2')}: no class of material {soil!r}; it has {', '.join(rows)}")
    return found
