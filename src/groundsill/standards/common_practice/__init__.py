"""Common practice: figures that stand in no standard but every estimate of an old house needs.

`weights` unit weights of old materials that Table C3.1-1 does not list · `ground` trenches, the stiffness of soil,
gauges read over time · `pull_tests` proof of glued bars in old concrete · `anchor_tests` how much tested anchors must
hold. A recalled figure says so; measure, weigh and pull where it matters. One that is later read in a named public
source gets that source in the table.
"""

from __future__ import annotations

from groundsill.standards.common_practice.ground import table_monitors, table_subgrade, table_trench
from groundsill.standards.common_practice.weights import (
    table_bolts,
    table_other_densities,
    table_other_weight_ranges,
    table_other_weights,
)
from groundsill.working.source import Source

__all__ = [
    "SOURCE", "table_bolts", "table_monitors", "table_other_densities", "table_other_weight_ranges",
    "table_other_weights", "table_subgrade", "table_trench",
]  # fmt: skip

SOURCE = Source(
    id="common-practice",
    short="Common practice",
    title="Figures in common use, from no standard",
    publisher="none",
    edition="undated",
)
