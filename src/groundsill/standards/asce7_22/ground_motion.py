"""ASCE 7-22 chapter 11: design accelerations as the hazard service or a study gives them, and the category.

In: S_S and S_1 and, for the site class, S_MS and S_M1 or S_DS and S_D1. This edition prints no site coefficients, so
nothing is worked out from S_S: what is not entered is refused. Out: the same values as for the 2016 edition, with no
F_a and F_v among them.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import Annotated, Final

from groundsill.standards.asce7_16 import ground_motion as earlier
from groundsill.standards.asce7_16.ground_motion import SiteValues
from groundsill.standards.asce7_16.symbols import DesignOne, DesignShort, MappedOne, MappedShort
from groundsill.standards.asce7_22 import SOURCE
from groundsill.standards.asce7_22.site_class import CLASSES
from groundsill.standards.editions import design_category_by, unchanged
from groundsill.working.equation import Q, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import note
from groundsill.working.table import Table

__all__ = [
    "design_category",
    "design_one_second",
    "design_short",
    "end_of_plateau",
    "importance_factor",
    "site_values",
    "table_1_5_2",
    "table_11_6",
    "table_11_6_1",
    "table_11_6_2",
]

# How near two thirds of S_MS and an entered S_DS must lie: both are given to three decimals.
_ROUNDING: Final = 0.002
# What a survey by the 2016 edition calls a class that this edition knows by another name.
_OTHER_NAMES: Final = MappingProxyType({"D-default": "Default", "B-estimated": "B"})
_RECALLED: Final = "that ASCE 7-22 has it unchanged is recalled"
_PAGE: Final = (
    "shown for this edition too on https://app.calctree.com/public/Design-Response-Spectrum-to-ASCE-7-5r8Fzs6nqg6kENjdVii"
    "AC9; its number here is recalled."
)

AdjustedShort = Annotated[float, Q("g", "S_MS", "acceleration at short periods for the site class", at_least=0.0)]
AdjustedOne = Annotated[float, Q("g", "S_M1", "acceleration at one second for the site class", at_least=0.0)]


def table_11_6_1() -> Table:
    """The S_DS from which each seismic design category applies, by risk category."""
    return unchanged(earlier.table_11_6_1(), SOURCE.short, _RECALLED)


def table_11_6_2() -> Table:
    """The S_D1 from which each seismic design category applies, by risk category."""
    return unchanged(earlier.table_11_6_2(), SOURCE.short, _RECALLED)


def table_11_6() -> Table:
    """The S_1 from which the category is E (F for risk category IV), whatever the other two tables say."""
    return unchanged(earlier.table_11_6(), SOURCE.short, _RECALLED)


def table_1_5_2() -> Table:
    """Importance factor I_e by risk category."""
    return unchanged(earlier.table_1_5_2(), SOURCE.short, _RECALLED)


design_short = earlier.design_short.restated(
    "asce7-22/11.4-1",
    clause="Eq. 11.4-1",
    source=SOURCE,
    module=__name__,
    why=_PAGE,
    how="seen",
)

design_one_second = earlier.design_one_second.restated(
    "asce7-22/11.4-2",
    clause="Eq. 11.4-2",
    source=SOURCE,
    module=__name__,
    why=_PAGE,
    how="seen",
)

end_of_plateau = earlier.end_of_plateau.restated(
    "asce7-22/11.4.5.2-Ts",
    clause="11.4.5.2",
    source=SOURCE,
    module=__name__,
    why=f"{_RECALLED}, for the two-period spectrum.",
)


@procedure(
    "asce7-22/11.4",
    title="Design ground motion as entered",
    clause="11.4",
    source=SOURCE,
    alias="asce7.site",
)
def site_values(
    S_S: MappedShort,
    S_1: MappedOne,
    site_class: str = "Default",
    S_MS: AdjustedShort | None = None,
    S_M1: AdjustedOne | None = None,
    S_DS: DesignShort | None = None,
    S_D1: DesignOne | None = None,
) -> SiteValues:
    """Design accelerations from what the hazard service or a study gave for the site class.

    Args:
        S_S: mapped acceleration at short periods, g; told on, nothing is worked out from it.
        S_1: mapped acceleration at one second, g; for the category and Eq. 12.8-7.
        site_class: Default, A, B, BC, C, CD, D, DE or E (D-default and B-estimated of the 2016 edition are understood).
        S_MS: for the site class, g.
        S_M1: for the site class, g.
        S_DS: for the site class, g; two thirds of S_MS where it is left out.
        S_D1: for the site class, g; two thirds of S_M1 where it is left out; None when neither is known.

    Raises:
        OutsideLimits: for an unknown site class, when neither S_DS nor S_MS is given, or when two that are given
            contradict each other.
    """
    name = _OTHER_NAMES.get(site_class, site_class)
    if name not in CLASSES:
        raise OutsideLimits(f"{SOURCE.cite('11.4.2')}: site class {site_class!r} is not one of {', '.join(CLASSES)}")
    if name != site_class:
        note(f"Site class {site_class} of ASCE 7-16 is {name} in ASCE 7-22")
    short = _one("S_DS", S_DS, "S_MS", None if S_MS is None else design_short(S_MS))
    second = _one("S_D1", S_D1, "S_M1", None if S_M1 is None else design_one_second(S_M1))
    if short is None:
        raise OutsideLimits(
            f"{SOURCE.cite('11.4')}: this edition has no site coefficients; enter S_DS or S_MS for site class {name}, "
            "from the hazard service or a study"
        )
    warnings = () if second is not None else ("ASCE 7-22: S_D1 is not entered; no upper value of C_s is taken",)
    return SiteValues(name, S_S, S_1, None, None, S_MS, S_M1, short, second, warnings)


def _one(symbol: str, entered: float | None, of: str, worked_out: float | None) -> float | None:
    """The design value entered, or worked out; both must agree where both are there."""
    if entered is None or worked_out is None:
        return worked_out if entered is None else entered
    if abs(float(entered) - float(worked_out)) > _ROUNDING:
        raise OutsideLimits(
            f"{SOURCE.cite('11.4.4')}: {symbol} = {float(entered):g} g is entered beside {of}, of which two thirds is "
            f"{float(worked_out):.3f} g; leave one of them out"
        )
    return entered


@procedure(
    "asce7-22/1.5.1",
    title="Importance factor",
    clause="Table 1.5-2",
    source=SOURCE,
    alias="asce7.importance",
)
def importance_factor(risk_category: str) -> float:
    """I_e by risk category (I, II, III, IV); houses are II."""
    return table_1_5_2().read(risk_category, symbol="I_e")


@procedure(
    "asce7-22/11.6",
    title="Seismic design category",
    clause="11.6",
    source=SOURCE,
    alias="asce7.category",
)
def design_category(S_DS: DesignShort, S_D1: DesignOne | None, S_1: MappedOne, risk_category: str = "II") -> str:
    """The worse of the categories by S_DS and by S_D1; E (or F for risk category IV) where S_1 is 0.75 or more.

    ``S_D1`` may be None where it was not entered: category D at least is then taken.
    """
    return design_category_by((table_11_6_1(), table_11_6_2(), table_11_6()), S_DS, S_D1, S_1, risk_category)
