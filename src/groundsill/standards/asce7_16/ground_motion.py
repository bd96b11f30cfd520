"""ASCE 7-16 chapter 11: from mapped accelerations and site class to design accelerations and the category.

In: ``S_S`` and ``S_1`` from the maps (an input with its source: the program keeps no map), the site class, the risk
category. Out: site coefficients, ``S_MS`` to ``S_D1``, the seismic design category, and whether 11.4.8 asks for a
site-specific study. Where the printed table gives no figure but points to 11.4.8, none is made up: the answer is None
and the warning says what would settle it.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.asce7_16 import SOURCE
from groundsill.standards.asce7_16.symbols import DesignOne, DesignShort, MappedOne, MappedShort
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.steps import condition, note
from groundsill.working.table import Table

__all__ = [
    "SiteValues",
    "adjusted_one_second",
    "adjusted_short",
    "class_c_coefficient",
    "design_category",
    "design_one_second",
    "design_short",
    "end_of_plateau",
    "importance_factor",
    "site_specific_study",
    "site_values",
    "table_1_5_2",
    "table_11_4_1",
    "table_11_4_2",
    "table_11_4_8",
    "table_11_6",
    "table_11_6_1",
    "table_11_6_2",
    "table_11_8_1",
]

ShortCoefficient = Annotated[float, Q("1", "F_a", "site coefficient at short periods", above=0.0)]
LongCoefficient = Annotated[float, Q("1", "F_v", "site coefficient at one second", above=0.0)]
AdjustedShort = Annotated[float, Q("g", "S_MS", "acceleration at short periods, adjusted for the site", at_least=0.0)]
AdjustedOne = Annotated[float, Q("g", "S_M1", "acceleration at one second, adjusted for the site", at_least=0.0)]


def table_11_4_1() -> Table:
    """Site coefficient F_a by site class and S_S; straight lines between columns, flat beyond the end columns."""
    return Table.load(__package__, "tables/11_4_1.toml")


def table_11_4_2() -> Table:
    """Site coefficient F_v by site class and S_1; straight lines between columns, flat beyond the end columns."""
    return Table.load(__package__, "tables/11_4_2.toml")


def table_11_8_1() -> Table:
    """Site coefficient F_PGA by site class and peak ground acceleration."""
    return Table.load(__package__, "tables/11_8_1.toml")


def table_11_4_8() -> Table:
    """The accelerations from which 11.4.8 asks for a ground motion hazard analysis, by site class."""
    return Table.load(__package__, "tables/11_4_8.toml")


def table_11_6_1() -> Table:
    """The S_DS from which each seismic design category applies, by risk category."""
    return Table.load(__package__, "tables/11_6_1.toml")


def table_11_6_2() -> Table:
    """The S_D1 from which each seismic design category applies, by risk category."""
    return Table.load(__package__, "tables/11_6_2.toml")


def table_11_6() -> Table:
    """The mapped S_1 from which the category is E (F for risk category IV), whatever the other two tables say."""
    return Table.load(__package__, "tables/11_6.toml")


def table_1_5_2() -> Table:
    """Importance factor I_e by risk category."""
    return Table.load(__package__, "tables/1_5_2.toml")


@equation(
    "asce7-16/11.4-1",
    title="Short-period acceleration adjusted for the site",
    clause="Eq. 11.4-1",
    source=SOURCE,
    witness="City of Santa Ana permit sheet 370584, page 131: F_a 1.2, S_S 1.314 give S_MS 1.577",
)
def adjusted_short(
    F_a: ShortCoefficient, S_S: MappedShort
) -> Annotated[float, Q("g", "S_MS", "acceleration at short periods, adjusted for the site")]:
    """Mapped acceleration times the site coefficient of Table 11.4-1.

    No limit but signs. Seen, with its number, on a City of Santa Ana permit sheet (document 380941, page 26).
    Example, sheet 370584 page 131: F_a = 1.2, S_S = 1.314 gives 1.577.
    """
    return F_a * S_S


@equation(
    "asce7-16/11.4-2",
    title="One-second acceleration adjusted for the site",
    clause="Eq. 11.4-2",
    source=SOURCE,
    witness="City of Santa Ana permit sheet 370584, page 131: F_v 1.8, S_1 0.468 give S_M1 0.842",
)
def adjusted_one_second(
    F_v: LongCoefficient, S_1: MappedOne
) -> Annotated[float, Q("g", "S_M1", "acceleration at one second, adjusted for the site")]:
    """Mapped acceleration times the site coefficient of Table 11.4-2.

    Seen, with its number, on a City of Santa Ana permit sheet (document 380941, page 26).
    Example, sheet 370584 page 131 (whose F_v of 1.8 the table would give as 1.832): F_v = 1.8, S_1 = 0.468 gives 0.842.
    """
    return F_v * S_1


@equation(
    "asce7-16/11.4-3",
    title="Design acceleration at short periods",
    clause="Eq. 11.4-3",
    source=SOURCE,
    witness="City of Santa Ana permit sheet 370584, page 131: S_MS 1.577 gives S_DS 1.051",
)
def design_short(
    S_MS: AdjustedShort,
) -> Annotated[float, Q("g", "S_DS", "design acceleration at short periods")]:
    """Two thirds of the adjusted short-period acceleration.

    Seen in UFC 3-310-07A and, with its number, on a City of Santa Ana permit sheet (document 380941, page 26).
    Example, sheet 370584 page 131: S_MS = 1.5768 gives 1.051.
    """
    return 2 / 3 * S_MS


@equation(
    "asce7-16/11.4-4",
    title="Design acceleration at one second",
    clause="Eq. 11.4-4",
    source=SOURCE,
    witness="City of Santa Ana permit sheet 370584, page 131: S_M1 0.842 gives S_D1 0.562",
)
def design_one_second(
    S_M1: AdjustedOne,
) -> Annotated[float, Q("g", "S_D1", "design acceleration at one second")]:
    """Two thirds of the adjusted one-second acceleration.

    Seen in UFC 3-310-07A and, with its number, on a City of Santa Ana permit sheet (document 380941, page 26).
    Example, sheet 370584 page 131: S_M1 = 0.8424 gives 0.562.
    """
    return 2 / 3 * S_M1


@equation(
    "asce7-16/11.4.6-Ts",
    title="Period at the end of the short-period plateau",
    clause="11.4.6",
    source=SOURCE,
    witness="0.663 s (check case in github.com/mlococo88/All-Structural, fix log of its load generator)",
    constants={1.0: "s"},
)
def end_of_plateau(
    S_D1: DesignOne, S_DS: Annotated[float, Q("g", "S_DS", "design acceleration at short periods", above=0.0)]
) -> Annotated[float, Q("s", "T_S", "period at the end of the plateau")]:
    """The period up to which the design spectrum is flat: S_D1 over S_DS, the one second of S_D1 written out.

    Source: 11.4.6 as given in public notes on the standard's seismic chapters,
    github.com/wcfrobert/wcfrobert.github.io, _posts/2022-05-06-seismic.markdown. Example (our arithmetic): S_D1 = 0.60,
    S_DS = 1.20 gives 0.5 s.
    """
    return 1.0 * S_D1 / S_DS


@equation(
    "asce7-16/11.4.8-exception-1",
    title="F_a of site class C for soft ground under strong shaking",
    clause="11.4.8 exception 1",
    source=SOURCE,
    how="from memory",
)
def class_c_coefficient(
    F_aC: Annotated[float, Q("1", "F_a,C", "site coefficient of class C at the same S_S", above=0.0)],
) -> Annotated[float, Q("1", "F_a", "site coefficient at short periods")]:
    """On site class E with S_S of 1.0 or more a structure may take class C's F_a instead of a hazard analysis.

    Recalled; not for isolated structures or those with dampers. Example (our arithmetic): at S_S = 1.5 class C has
    1.2, so 1.2.
    """
    return F_aC


@dataclass(frozen=True, slots=True)
class SiteValues:
    """Design ground motion at one place. ``F_v``, ``S_M1``, ``S_D1`` (and ``F_a``, ``S_MS``, ``S_DS``) are None where
    the standard prints no figure but asks for a site-specific study; ``warnings`` says so in words.
    """

    site_class: str
    S_S: float
    S_1: float
    F_a: float | None
    F_v: float | None
    S_MS: float | None
    S_M1: float | None
    S_DS: float | None
    S_D1: float | None
    warnings: tuple[str, ...]


@procedure(
    "asce7-16/11.4.8",
    title="Whether a site-specific ground motion study is asked for",
    clause="11.4.8",
    source=SOURCE,
    alias="asce7.site-specific-study",
)
def site_specific_study(site_class: str, S_S: MappedShort, S_1: MappedOne) -> tuple[str, ...]:
    """The warnings of 11.4.8 for a site class and mapped accelerations; empty when no study is asked for.

    The thresholds are read from the table of the USGS service's restrictions. The exceptions are named, not applied.
    """
    warnings = []
    limits = table_11_4_8()
    if site_class not in limits.rows:
        return ()
    if site_class == "E":
        bound = limits.read("E", "S_S", "S_S,limit")
        if condition("Site class E with S_S at or above the limit of 11.4.8", bound <= S_S, S_S, bound, cite="11.4.8"):
            warnings.append(
                "ASCE 7-16 11.4.8: site class E with S_S of 1.0 or more asks for a ground motion hazard analysis; "
                "exception 1 allows F_a of site class C instead (to be confirmed)"
            )
    bound = limits.read(site_class, "S_1", "S_1,limit")
    text = f"Site class {site_class} with S_1 at or above the limit of 11.4.8"
    if condition(text, bound <= S_1, S_1, bound, cite="11.4.8"):
        way = (
            "exception 2 allows Eq. 12.8-2 up to T = 1.5 T_S and 1.5 times Eq. 12.8-3 or 12.8-4 above"
            if site_class != "E"
            else "exception 3 allows the equivalent lateral force procedure up to T = T_S (to be confirmed)"
        )
        warnings.append(
            f"ASCE 7-16 11.4.8: site class {site_class} with S_1 of 0.2 or more asks for a ground motion hazard "
            f"analysis; {way}"
        )
    return tuple(warnings)


def _coefficient(table: Table, site_class: str, at: float, symbol: str) -> float | None:
    """A site coefficient, or None in the columns where the table points to 11.4.8 instead of printing a figure."""
    cells = table.rows.get(site_class, ())
    printed = sum(not isinstance(cell, str) for cell in cells)
    if printed == len(cells):
        return table.interpolate(site_class, at, symbol)
    last, first_without = float(table.columns[printed - 1]), float(table.columns[printed])
    if at >= first_without:
        return None
    if at > last:
        note(f"No figure is printed at {first_without:g}; up to there the figure at {last:g} is held, as USGS does")
        return table.read(site_class, last, symbol)
    return table.interpolate(site_class, at, symbol)


@procedure(
    "asce7-16/11.4",
    title="Design ground motion from mapped accelerations and site class",
    clause="11.4",
    source=SOURCE,
    alias="asce7.site",
)
def site_values(S_S: MappedShort, S_1: MappedOne, site_class: str, exception_1: bool = False) -> SiteValues:
    """Site coefficients and design accelerations.

    Args:
        S_S: mapped acceleration at short periods, g.
        S_1: mapped acceleration at one second, g.
        site_class: a row of Tables 11.4-1 and 11.4-2: A, B, B-estimated, C, D, D-default or E.
        exception_1: take exception 1 of 11.4.8 (class E, S_S of 1.0 or more: class C's F_a).

    Raises:
        OutsideLimits: when the site class is not in the tables (F always asks for a study).
    """
    warnings = site_specific_study(site_class, S_S, S_1)
    F_a = _coefficient(table_11_4_1(), site_class, S_S, "F_a")
    if F_a is None and exception_1:
        F_a = class_c_coefficient(table_11_4_1().interpolate("C", S_S, "F_a,C"))
    F_v = _coefficient(table_11_4_2(), site_class, S_1, "F_v")
    S_MS = None if F_a is None else adjusted_short(F_a, S_S)
    S_M1 = None if F_v is None else adjusted_one_second(F_v, S_1)
    S_DS = None if S_MS is None else design_short(S_MS)
    S_D1 = None if S_M1 is None else design_one_second(S_M1)
    return SiteValues(site_class, S_S, S_1, F_a, F_v, S_MS, S_M1, S_DS, S_D1, warnings)


@procedure(
    "asce7-16/1.5.1",
    title="Importance factor",
    clause="Table 1.5-2",
    source=SOURCE,
    alias="asce7.importance",
)
def importance_factor(risk_category: str) -> float:
    """I_e by risk category (I, II, III, IV); houses are II."""
    return table_1_5_2().read(risk_category, symbol="I_e")


def _category_by(table: Table, risk_category: str, value: float, symbol: str) -> str:
    found = "A"
    for letter, cell in zip(table.columns, table.rows.get(risk_category, ()), strict=False):
        if isinstance(cell, str):
            continue
        bound = table.read(risk_category, letter, f"{symbol},{letter}")
        if condition(f"{symbol} reaches category {letter}", value >= bound, value, bound, cite=table.cite):
            found = str(letter)
    if not table.rows.get(risk_category):
        table.read(risk_category, "D")  # refuses, and says which risk categories there are
    return found


@procedure(
    "asce7-16/11.6",
    title="Seismic design category",
    clause="11.6",
    source=SOURCE,
    alias="asce7.category",
)
def design_category(S_DS: DesignShort, S_D1: DesignOne | None, S_1: MappedOne, risk_category: str = "II") -> str:
    """The worse of the categories by S_DS and by S_D1; E (or F for risk category IV) where S_1 is 0.75 or more.

    ``S_D1`` may be None only where 11.4.8 leaves it to a study (soft ground, S_1 of 0.2 or more): then D, since any
    F_v of 1.5 or more makes S_D1 at least 0.2 there.
    """
    short = _category_by(table_11_6_1(), risk_category, S_DS, "S_DS")
    near = table_11_6().read(risk_category, "S_1", "S_1,E")
    if condition("S_1 puts the house in category E (F for risk category IV)", near <= S_1, S_1, near, cite="11.6"):
        return "F" if risk_category == "IV" else "E"
    if S_D1 is None:
        note("S_D1 awaits a site-specific study; category D at least, as any F_v of 1.5 or more gives S_D1 >= 0.2")
        return max(short, "D")
    found = max(short, _category_by(table_11_6_2(), risk_category, S_D1, "S_D1"))
    note(f"Seismic design category {found}: the worse of the two tables")
    return found
