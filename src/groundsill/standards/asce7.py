"""What a house's loads ask of ASCE 7, by edition: the same questions, each edition's own answers.

In: the edition that the basis goes by. Out: its rules, ready to call with the same arguments whichever edition it is.
Older editions are held for reading drawings and are not among them.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, fields, replace
from types import ModuleType
from typing import Final

from groundsill.standards import asce7_16, asce7_22
from groundsill.standards.asce7_16 import effects as effects_16
from groundsill.standards.asce7_16 import elf as elf_16
from groundsill.standards.asce7_16 import ground_motion as motion_16
from groundsill.standards.asce7_16 import systems as systems_16
from groundsill.standards.asce7_16 import weight as weight_16
from groundsill.standards.asce7_16 import wind as wind_16
from groundsill.standards.asce7_16.elf import LevelForce, SeismicCoefficient
from groundsill.standards.asce7_16.ground_motion import SiteValues
from groundsill.standards.asce7_16.systems import SystemFactors
from groundsill.standards.asce7_22 import effects as effects_22
from groundsill.standards.asce7_22 import elf as elf_22
from groundsill.standards.asce7_22 import ground_motion as motion_22
from groundsill.standards.asce7_22 import systems as systems_22
from groundsill.standards.asce7_22 import weight as weight_22
from groundsill.working.errors import UnknownFormula
from groundsill.working.source import Source
from groundsill.working.table import Table

__all__ = ["EDITIONS", "Asce7", "Effects", "SeismicCoefficient", "SiteValues", "SystemFactors", "rules_of"]


@dataclass(frozen=True, slots=True)
class Effects:
    """The combinations of one edition that a house's checks ask for, by the names of its own equations."""

    horizontal_effect: Callable[[float, float], float]
    vertical_effect: Callable[[float, float], float]
    overstrength_effect: Callable[[float, float], float]
    asd_earthquake: Callable[[float], float]
    asd_earthquake_with_live: Callable[[float], float]
    asd_dead_factor_8: Callable[[float], float]
    asd_dead_factor_9: Callable[[float], float]
    asd_dead_factor_10: Callable[[float], float]
    lrfd_dead_factor_6: Callable[[float], float]
    lrfd_dead_factor_7: Callable[[float], float]
    lrfd_down: Callable[[float, float, float, float, float], float]
    lrfd_up: Callable[[float, float, float], float]
    asd_live: Callable[[float, float], float]
    asd_snow: Callable[[float, float], float]
    asd_live_and_snow: Callable[[float, float, float], float]
    asd_down: Callable[[float, float, float], float]
    asd_down_with_live: Callable[[float, float, float, float, float], float]
    asd_up: Callable[[float, float, float], float]
    asd_wind: Callable[[float], float]
    asd_wind_with_live: Callable[[float], float]
    asd_dead_factor_7: Callable[[], float]
    lrfd_dead_factor_5: Callable[[], float]
    overturning_factor: Callable[[bool], float]


@dataclass(frozen=True, slots=True)
class Asce7:
    """The rules of one edition.

    ``coefficients`` says that S_DS follows from S_S by site coefficients; without, it must be entered. ``site`` takes
    S_S, S_1 and the site class, and S_DS and S_D1 where they were entered (None where not). ``seismic_coefficient``
    takes its answer, S_DS as capped, T, T_L, R, I_e, and whether S_D1 was entered. ``row_name`` is what a row of Table
    12.2-1 is called in print, ``boards_beside`` the row of the same walls braced by boards, with its R. The others are
    the procedures and equations of the edition, by their own names.
    """

    source: Source
    coefficients: bool
    site: Callable[[float, float, str, float | None, float | None], SiteValues]
    design_category: Callable[[float, float | None, float, str], str]
    importance_factor: Callable[[str], float]
    system_factors: Callable[[str], SystemFactors]
    row_name: Callable[[str], str]
    boards_beside: Callable[[str], tuple[str, float] | None]
    redundancy: Callable[[str, str, str], float]
    design_drift: Callable[[float, float, float], float]
    drift_limits: Callable[[], Table]
    allowable_drift: Callable[[float, float], float]
    irregular_increase: Callable[[], Table]
    approximate_period: Callable[[float], float]
    seismic_coefficient: Callable[[SiteValues, float, float, float, float, float, bool], SeismicCoefficient]
    short_period_cap: Callable[[float, float, float, float, str, bool, str], float]
    base_shear: Callable[[float, float], float]
    vertical_distribution: Callable[[float, float, Sequence[float], Sequence[float]], tuple[LevelForce, ...]]
    snow_weight: Callable[[float], float]
    effects: Effects

    @property
    def document(self) -> str:
        """The edition's id: ``asce7-16``."""
        return self.source.id

    def cite(self, place: str) -> str:
        """The edition and the place in it, as printed: ``ASCE 7-16 12.8.3``."""
        return self.source.cite(place)


def _site_16(S_S: float, S_1: float, site_class: str, S_DS: float | None, S_D1: float | None) -> SiteValues:
    """By the site coefficients; what was entered (from a study) stands in place of what they give.

    Exception 1 of 11.4.8 is taken where it alone stands between the site and its values: on class E, S_1 being small.
    """
    site = motion_16.site_values(S_S, S_1, site_class)
    if site.S_DS is None and S_DS is None and site.S_D1 is not None:
        site = motion_16.site_values(S_S, S_1, site_class, exception_1=True)
    return replace(site, S_DS=site.S_DS if S_DS is None else S_DS, S_D1=site.S_D1 if S_D1 is None else S_D1)


def _site_22(S_S: float, S_1: float, site_class: str, S_DS: float | None, S_D1: float | None) -> SiteValues:
    """As entered: this edition has no site coefficients."""
    return motion_22.site_values(S_S, S_1, site_class, None, None, S_DS, S_D1)


def _effects(*chapters: ModuleType) -> Effects:
    """The combinations of an edition, each by its name in the module of its chapter."""
    held = {name: value for chapter in chapters for name, value in vars(chapter).items()}
    return Effects(**{field.name: held[field.name] for field in fields(Effects)})


def _coefficient_16(
    site: SiteValues, S_DS: float, T: float, T_L: float, R: float, I_e: float, entered: bool
) -> SeismicCoefficient:
    """C_s; on class D where 11.4.8 asks for a study and none was entered, by its exception 2."""
    asked = bool(site.warnings) and site.site_class.startswith("D") and not entered
    return elf_16.seismic_coefficient(S_DS, site.S_D1, site.S_1, T, T_L, R, I_e, exception_2=asked)


def _coefficient_22(
    site: SiteValues, S_DS: float, T: float, T_L: float, R: float, I_e: float, entered: bool
) -> SeismicCoefficient:
    """C_s; what was entered is the edition's own, so that no exception is asked for."""
    return elf_22.seismic_coefficient(S_DS, site.S_D1, site.S_1, T, T_L, R, I_e)


def _item(row: str) -> str:
    """A row of Table 12.2-1 by its item in the 2016 edition: ``A.15``."""
    return row.partition(" ")[0]


def _quoted(row: str) -> str:
    """A row of Table 12.2-1 by its words, where the edition's numbers were not seen."""
    return f"“{row}”"


_RULES: Final = (
    Asce7(
        asce7_16.SOURCE,
        True,
        _site_16,
        motion_16.design_category,
        motion_16.importance_factor,
        systems_16.system_factors,
        _item,
        systems_16.boards_beside,
        systems_16.redundancy,
        systems_16.design_drift,
        systems_16.table_12_12_1,
        systems_16.allowable_drift,
        systems_16.table_12_3_3_4,
        elf_16.approximate_period,
        _coefficient_16,
        elf_16.short_period_cap,
        elf_16.base_shear,
        elf_16.vertical_distribution,
        weight_16.snow_weight,
        _effects(effects_16, wind_16),
    ),
    Asce7(
        asce7_22.SOURCE,
        False,
        _site_22,
        motion_22.design_category,
        motion_22.importance_factor,
        systems_22.system_factors,
        _quoted,
        systems_22.boards_beside,
        systems_22.redundancy,
        systems_22.design_drift,
        systems_22.table_12_12_1,
        systems_22.allowable_drift,
        systems_22.table_12_3_3_4,
        elf_22.approximate_period,
        _coefficient_22,
        elf_22.short_period_cap,
        elf_22.base_shear,
        elf_22.vertical_distribution,
        weight_22.snow_weight,
        _effects(effects_22),
    ),
)

EDITIONS: Final = tuple(rules.document for rules in _RULES)


def rules_of(document: str) -> Asce7:
    """The rules of an edition (``asce7-16``).

    Raises:
        UnknownFormula: for an edition by which no force is worked out; the message names those there are.
    """
    for rules in _RULES:
        if rules.document == document:
            return rules
    raise UnknownFormula(f"no earthquake force is worked out by {document}; it is one of {', '.join(EDITIONS)}")
