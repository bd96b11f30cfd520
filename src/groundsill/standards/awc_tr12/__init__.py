"""AWC Technical Report 12 (2015): general dowel equations, which let a gap stand between the two members.

general_dowel (Table 1-1: one equation for each yield mode of two solid members, and the least of them).
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="awc-tr12",
    short="TR12 2015",
    title="General Dowel Equations for Calculating Lateral Connection Values",
    publisher="American Wood Council",
    edition="2015",
)
