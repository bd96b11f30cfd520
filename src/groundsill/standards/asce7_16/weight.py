"""ASCE 7-16 section 12.7.2 and Table C3.1-1: what counts as seismic weight, and what old materials weigh.

The table keeps the SI column as it was read and the pounds beside it; a blank says which of the two was not read.
Materials that stand in no table of the standard are in :mod:`groundsill.standards.common_practice`.
"""

from __future__ import annotations

from typing import Annotated

from groundsill.standards.asce7_16 import SOURCE
from groundsill.working.equation import Q, equation
from groundsill.working.table import Table

__all__ = ["partition_weight", "snow_weight", "storage_weight", "table_c3_1_1"]


def table_c3_1_1() -> Table:
    """Unit dead weights by material; columns ``kN/m2`` and ``psf``."""
    return Table.load(__package__, "tables/c3_1_1.toml")


@equation(
    "asce7-16/12.7.2-1",
    title="Storage in the seismic weight",
    clause="12.7.2 item 1",
    source=SOURCE,
    witness="25 percent (iisee.kenken.go.jp, seismic design code of the United States, ASCE 7-02)",
)
def storage_weight(
    L: Annotated[float, Q("psf", "L", "floor live load in areas used for storage", at_least=0.0)],
) -> Annotated[float, Q("psf", "w_L", "storage counted in the seismic weight")]:
    """A quarter of the live load where a floor is used for storage; ordinary rooms add none.

    Source: read for ASCE 7-02 at iisee.kenken.go.jp/net/seismic_design_code/usa/usa.html, and for 7-10 in a textbook;
    the 2016 edition keeps it (public notes, github.com/wcfrobert/wcfrobert.github.io). Example (our arithmetic): 125
    psf counts 31.25 psf.
    """
    return 0.25 * L


@equation(
    "asce7-16/12.7.2-2",
    title="Partitions in the seismic weight",
    clause="12.7.2 item 2",
    source=SOURCE,
    witness="10 psf (iisee.kenken.go.jp, seismic design code of the United States, ASCE 7-02)",
    constants={10.0: "psf"},
)
def partition_weight(
    w_p: Annotated[float, Q("psf", "w_p", "actual weight of partitions over the floor area", at_least=0.0)],
) -> Annotated[float, Q("psf", "w_p", "partitions counted in the seismic weight")]:
    """The actual weight or 10 psf of floor area, whichever is greater, where partition weight is provided for.

    Measure old plaster partitions: they come to more. Source: read for ASCE 7-02 at
    iisee.kenken.go.jp/net/seismic_design_code/usa/usa.html, and for 7-10 in a textbook; the 2016 edition keeps it
    (public notes, github.com/wcfrobert/wcfrobert.github.io). Example (our arithmetic): 6 psf counts 10 and 17 counts
    17.
    """
    return max(w_p, 10.0)


@equation(
    "asce7-16/12.7.2-4",
    title="Snow in the seismic weight",
    clause="12.7.2 item 4",
    source=SOURCE,
    witness="20 percent above 30 psf (iisee.kenken.go.jp, ASCE 7-02); 24 psf counts nothing (FEMA 259)",
    constants={30.0: "psf"},
)
def snow_weight(
    p_f: Annotated[float, Q("psf", "p_f", "flat roof snow load", at_least=0.0)],
) -> Annotated[float, Q("psf", "w_S", "snow counted in the seismic weight")]:
    """A fifth of the flat roof snow load where it exceeds 30 psf, else none, whatever the slope.

    Source: read for ASCE 7-02 at iisee.kenken.go.jp/net/seismic_design_code/usa/usa.html, and for 7-10 in a textbook;
    the 2016 edition keeps it (public notes, github.com/wcfrobert/wcfrobert.github.io), and the IBC's basic combinations
    have the same 30 psf and 20 per cent (up.codes). Example (our arithmetic): 30 psf counts 0, 40 psf counts 8.
    """
    return 0.2 * p_f if p_f > 30.0 else 0.0
