"""IBC 2021 section 1806: what soil may be presumed to carry when nobody tested it.

In: a class of material of Table 1806.2 and the footing's dimensions and dead load. Out: bearing pressure (psf), lateral
bearing and sliding resistance (lb), at allowable-stress level. Mud, organic soil and unprepared fill have no
presumptive value, and expansive soil is another question; both are for a geotechnical engineer.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.ibc_2021 import SOURCE
from groundsill.working.equation import Q, equation, procedure, require
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import note
from groundsill.working.table import Table

__all__ = [
    "LateralResistance",
    "bearing_with_alternative_combinations",
    "cohesion_resistance",
    "combined_resistance",
    "friction_resistance",
    "lateral_pressure",
    "lateral_resistance",
    "lateral_resultant",
    "presumptive_bearing",
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
    how="from memory",
)
def cohesion_resistance(
    c: Annotated[float, Q("psf", "c", "cohesion", above=0.0)],
    A: Annotated[float, Q("ft^2", "A", "contact area", at_least=0.0)],
    D: DeadLoad,
) -> Sliding:
    """Cohesion times contact area, and never more than half the dead load, for clay and silt.

    The product is seen in ICC code change S148-07/08, footnote b (docslib 1487422); that a cap stands in the section is
    seen there too, its half is recalled. Example (our arithmetic): 130 psf on 4 sq ft is 520 lb, but under 800 lb of
    dead load only 400 lb.
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
    "ibc-2021/1806.2",
    title="Presumptive bearing pressure",
    clause="Table 1806.2",
    source=SOURCE,
    alias="ibc.soil-bearing",
)
def presumptive_bearing(soil: str) -> float:
    """Allowable vertical bearing pressure, psf, by class of material (its number, ``5``, or the row's whole name)."""
    return table_1806_2().read(_row(soil), "bearing", "q_a")


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
    bearing = lateral_resultant(table.read(row, "lateral", "S_L"), b, d, d_0)
    return LateralResistance(sliding, bearing, combined_resistance(sliding, bearing), rule)


def _row(soil: str) -> str:
    rows = table_1806_2().rows
    found = next((key for key in rows if key == soil or key.split()[0] == soil.strip()), None)
    if found is None:
        raise OutsideLimits(f"{SOURCE.cite('Table 1806.2')}: no class of material {soil!r}; it has {', '.join(rows)}")
    return found
