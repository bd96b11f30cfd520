"""ASCE 7-22 section 12.7.2: what counts as seismic weight; snow has a rule of its own in this edition."""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.asce7_16 import weight as earlier
from groundsill.standards.asce7_22 import SOURCE
from groundsill.working.equation import Q, equation

__all__ = ["partition_weight", "snow_weight", "storage_weight"]

_RECALLED = "that ASCE 7-22 has it unchanged is recalled."

storage_weight = earlier.storage_weight.restated(
    "asce7-22/12.7.2-1", clause="12.7.2 item 1", source=SOURCE, module=__name__, why=_RECALLED
)

partition_weight = earlier.partition_weight.restated(
    "asce7-22/12.7.2-2", clause="12.7.2 item 2", source=SOURCE, module=__name__, why=_RECALLED
)


@equation(
    "asce7-22/12.7.2-4",
    title="Snow in the seismic weight",
    clause="12.7.2 item 4",
    source=SOURCE,
    constants={45.0: "psf"},
)
def snow_weight(
    p_f: Annotated[float, Q("psf", "p_f", "flat roof snow load of this edition, strength level", at_least=0.0)],
) -> Annotated[float, Q("psf", "w_S", "snow counted in the seismic weight")]:
    """Fifteen per cent of the flat roof snow load where it exceeds 45 psf, else none.

    The snow loads of this edition are at strength level: one taken from an older map is not to be put in here. Seen in
    the National Frame Building Association's magazine, September 2025, page 25, beside the 30 psf and 20 per cent of
    ASCE 7-16 (associationdatabase.co/NFBA/September2025/inc/html/25.html). Example (our arithmetic): 45 psf counts 0,
    60 psf counts 9.
    """
    return 0.15 * p_f if p_f > 45.0 else 0.0
