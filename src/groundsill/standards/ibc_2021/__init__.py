"""IBC 2021, the building code: what it says beyond the documents it refers to, as far as an old house needs it.

`ground_motion` 1613.2 · `soils` 1806, presumptive bearing, lateral bearing and sliding · `sill_anchors` 1905.1.8, when
a sill bolt needs no concrete shear check · `concrete` 1808.8.1, least strength of new footings ·
`footings` 1809 and 1905.1.7, least size, depth and bars · `tables/` · `errata`.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="ibc-2021",
    short="IBC 2021",
    title="International Building Code",
    publisher="International Code Council",
    edition="2021",
    superseded_by="ibc-2024",
)
