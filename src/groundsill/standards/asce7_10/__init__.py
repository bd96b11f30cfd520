"""ASCE 7-10, the 2010 edition: enough of it to read the figures on old drawings.

`ground_motion` 11.4 and 11.6, site coefficients, design values, category · `elf` 12.8, the base shear · `tables/` the
site coefficients · `errata.toml` where print and use differ. Nothing new is designed by it.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="asce7-10",
    short="ASCE 7-10",
    title="Minimum Design Loads for Buildings and Other Structures",
    publisher="American Society of Civil Engineers",
    edition="2010",
    superseded_by="asce7-16",
)
