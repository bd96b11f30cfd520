"""ASCE 7-05 chapter 11: from the mapped accelerations printed on an old drawing to its design values and category.

In: S_S and S_1 and a site class from A to E. Out: F_a, F_v, S_MS to S_D1, the seismic design category. The formulas are
those of the 2016 edition by reference; the site coefficients are this edition's own.
"""

from __future__ import annotations

from groundsill.standards.asce7_05 import SOURCE
from groundsill.standards.asce7_16 import ground_motion as later
from groundsill.standards.asce7_16.ground_motion import SiteValues
from groundsill.standards.asce7_16.symbols import DesignOne, DesignShort, MappedOne, MappedShort
from groundsill.standards.editions import design_category_by, site_values_by, unchanged
from groundsill.working.equation import procedure
from groundsill.working.table import Table

__all__ = [
    "adjusted_one_second",
    "adjusted_short",
    "design_category",
    "design_one_second",
    "design_short",
    "site_values",
    "table_11_4_1",
    "table_11_4_2",
    "table_11_6",
    "table_11_6_1",
    "table_11_6_2",
]

_SEEN = (
    "the USGS design-value service works out both editions by it, and its printed answers for ASCE 7-05 are met here "
    "(github.com/usgs/earthquake-design-ws, qc/results/asce7-05.qc.md)."
)
_CATEGORY = ("that ASCE 7-05 has the same breaks, by occupancy category, is recalled",)


def table_11_4_1() -> Table:
    """Site coefficient F_a by site class and S_S; straight lines between columns, flat beyond the end columns."""
    return Table.load(__package__, "tables/11_4_1.toml")


def table_11_4_2() -> Table:
    """Site coefficient F_v by site class and S_1; straight lines between columns, flat beyond the end columns."""
    return Table.load(__package__, "tables/11_4_2.toml")


def table_11_6_1() -> Table:
    """The S_DS from which each seismic design category applies, by occupancy category."""
    return unchanged(later.table_11_6_1(), SOURCE.short, *_CATEGORY)


def table_11_6_2() -> Table:
    """The S_D1 from which each seismic design category applies, by occupancy category."""
    return unchanged(later.table_11_6_2(), SOURCE.short, *_CATEGORY)


def table_11_6() -> Table:
    """The S_1 from which the category is E (F for occupancy category IV), whatever the other two tables say."""
    return unchanged(later.table_11_6(), SOURCE.short, *_CATEGORY)


adjusted_short = later.adjusted_short.restated(
    "asce7-05/11.4-1",
    clause="Eq. 11.4-1",
    source=SOURCE,
    module=__name__,
    why=_SEEN,
    how="seen",
    witness="USGS earthquake-design-ws, asce7-05.qc.md: Boise, class D, S_S 0.305 gives S_MS 0.475",
)

adjusted_one_second = later.adjusted_one_second.restated(
    "asce7-05/11.4-2",
    clause="Eq. 11.4-2",
    source=SOURCE,
    module=__name__,
    why=_SEEN,
    how="seen",
    witness="USGS earthquake-design-ws, asce7-05.qc.md: Boise, class D, S_1 0.104 gives S_M1 0.248",
)

design_short = later.design_short.restated(
    "asce7-05/11.4-3",
    clause="Eq. 11.4-3",
    source=SOURCE,
    module=__name__,
    why=_SEEN,
    how="seen",
)

design_one_second = later.design_one_second.restated(
    "asce7-05/11.4-4",
    clause="Eq. 11.4-4",
    source=SOURCE,
    module=__name__,
    why=_SEEN,
    how="seen",
)


@procedure(
    "asce7-05/11.4",
    title="Design ground motion from mapped accelerations and site class",
    clause="11.4",
    source=SOURCE,
    alias="asce7.site",
)
def site_values(S_S: MappedShort, S_1: MappedOne, site_class: str = "D") -> SiteValues:
    """Site coefficients and design accelerations, as on drawings by this edition.

    Args:
        S_S: mapped acceleration at short periods, g.
        S_1: mapped acceleration at one second, g.
        site_class: A to E; D where the soil was not known.

    Raises:
        OutsideLimits: when the site class is not in the tables (F always asks for a study).
    """
    return site_values_by(
        (table_11_4_1(), table_11_4_2()),
        (adjusted_short, adjusted_one_second),
        (design_short, design_one_second),
        S_S,
        S_1,
        site_class,
    )


@procedure(
    "asce7-05/11.6",
    title="Seismic design category",
    clause="11.6",
    source=SOURCE,
    alias="asce7.category",
)
def design_category(S_DS: DesignShort, S_D1: DesignOne | None, S_1: MappedOne, risk_category: str = "II") -> str:
    """The worse of the categories by S_DS and by S_D1; E (or F for occupancy category IV) where S_1 is 0.75 or more.

    ``S_D1`` may be unknown: category D at least is then taken. This edition says occupancy category for
    risk category.
    """
    return design_category_by((table_11_6_1(), table_11_6_2(), table_11_6()), S_DS, S_D1, S_1, risk_category)
