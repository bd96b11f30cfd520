"""NDS 2018, National Design Specification for Wood Construction: dowel connections of an old house's cripple wall.

bearing (12.3.3 to 12.3.5: what wood, steel and concrete bear under a dowel), yield_modes (Table 12.3.1A, one equation
for each mode), shear (the least mode), bolts, sill_bolt, nails (with toenails), screws, withdrawal (12.2), adjustment
(11.3), geometry (12.5.1), group_action (11.3.6), symbols; expected (which gives way first: common practice);
compression (3.6, 3.7, 3.10: posts, and the sill under them), bending (3.3, 3.4) and tension (3.8, 3.9.1: posts that
hold-downs pull), with the Supplement's Table 4A.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["PRACTICE", "SOURCE"]

SOURCE = Source(
    id="nds-2018",
    short="NDS 2018",
    title="National Design Specification for Wood Construction",
    publisher="American Wood Council",
    edition="2018",
    superseded_by="nds-2024",
)

PRACTICE = Source(
    id="practice",
    short="Common practice",
    title="Engineering practice that no published standard states",
    publisher="none",
    edition="not dated",
)
