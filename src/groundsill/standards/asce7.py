"""What a house's earthquake force asks of ASCE 7, by edition: the same questions, each edition's own answers.

In: the edition that the basis goes by. Out: its rules, ready to call with the same arguments whichever edition it is.
Older editions are held for reading drawings and are not among them.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Final

from groundsill.standards import asce7_16, asce7_22
from groundsill.standards.asce7_16 import elf as elf_16
from groundsill.standards.asce7_16 import ground_motion as motion_16
from groundsill.standards.asce7_16 import systems as systems_16
from groundsill.standards.asce7_16 import weight as weight_16
from groundsill.standards.asce7_16.elf import LevelForce, SeismicCoefficient
from groundsill.standards.asce7_16.ground_motion import SiteValues
from groundsill.standards.asce7_16.systems import SystemFactors
from groundsill.standards.asce7_22 import elf as elf_22
from groundsill.standards.asce7_22 import ground_motion as motion_22
from groundsill.standards.asce7_22 import systems as systems_22
from groundsill.standards.asce7_22 import weight as weight_22
from groundsill.working.errors import UnknownFormula

__all__ = ["EDITIONS", "Asce7", "rules_of"]


@dataclass(frozen=True, slots=True)
class Asce7:
    """The rules of one edition.

    ``site`` takes S_S, S_1 and the site class, and S_DS and S_D1 where they were entered (None where not). The others
    are the procedures and equations of the edition, by their own names.
    """

    document: str
    short: str
    site: Callable[[float, float, str, float | None, float | None], SiteValues]
    design_category: Callable[[float, float | None, float, str], str]
    importance_factor: Callable[[str], float]
    system_factors: Callable[[str], SystemFactors]
    redundancy: Callable[[str, str, str], float]
    approximate_period: Callable[[float], float]
    seismic_coefficient: Callable[[float, float | None, float, float, float, float, float], SeismicCoefficient]
    short_period_cap: Callable[[float, float, float, float, str, bool, str], float]
    base_shear: Callable[[float, float], float]
    vertical_distribution: Callable[[float, float, Sequence[float], Sequence[float]], tuple[LevelForce, ...]]
    snow_weight: Callable[[float], float]


def _site_16(S_S: float, S_1: float, site_class: str, S_DS: float | None, S_D1: float | None) -> SiteValues:
    """By the site coefficients; what was entered (from a study) stands in place of what they give."""
    site = motion_16.site_values(S_S, S_1, site_class)
    return replace(site, S_DS=site.S_DS if S_DS is None else S_DS, S_D1=site.S_D1 if S_D1 is None else S_D1)


def _site_22(S_S: float, S_1: float, site_class: str, S_DS: float | None, S_D1: float | None) -> SiteValues:
    """As entered: this edition has no site coefficients."""
    return motion_22.site_values(S_S, S_1, site_class, None, None, S_DS, S_D1)


_RULES: Final = (
    Asce7(
        asce7_16.SOURCE.id,
        asce7_16.SOURCE.short,
        _site_16,
        motion_16.design_category,
        motion_16.importance_factor,
        systems_16.system_factors,
        systems_16.redundancy,
        elf_16.approximate_period,
        elf_16.seismic_coefficient,
        elf_16.short_period_cap,
        elf_16.base_shear,
        elf_16.vertical_distribution,
        weight_16.snow_weight,
    ),
    Asce7(
        asce7_22.SOURCE.id,
        asce7_22.SOURCE.short,
        _site_22,
        motion_22.design_category,
        motion_22.importance_factor,
        systems_22.system_factors,
        systems_22.redundancy,
        elf_22.approximate_period,
        elf_22.seismic_coefficient,
        elf_22.short_period_cap,
        elf_22.base_shear,
        elf_22.vertical_distribution,
        weight_22.snow_weight,
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
