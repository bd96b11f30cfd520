"""ASCE 7-05, the 2005 edition: enough of it to read the figures on old drawings.

`ground_motion` 11.4 and 11.6, site coefficients, design values, category · `elf` 12.8, the base shear · `tables/` the
site coefficients · `errata.toml` where print and use differ. Nothing new is designed by it.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="asce7-05",
    short="ASCE 7-05",
    title="Minimum Design Loads for Buildings and Other Structures",
    publisher="American Society of Civil Engineers",
    edition="2005",
    superseded_by="asce7-10",
)
