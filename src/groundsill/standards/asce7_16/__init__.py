"""ASCE 7-16, the loads: ground motion and category, equivalent lateral force, combinations, dead weights.

`ground_motion` 11.4 to 11.6 and the site tables · `elf` 12.8, base shear and its share up the height · `systems` 12.2
and 12.3.4, R and redundancy · `effects` 12.4, 2.3.6, 2.4.5 and 12.13.4, the earthquake beside other loads · `weight`
12.7.2 and Table C3.1-1 · `wind` chapters 26 and 27, whether wind governs · `tables/` the printed figures ·
`errata.toml` where print and use differ.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="asce7-16",
    short="ASCE 7-16",
    title="Minimum Design Loads and Associated Criteria for Buildings and Other Structures",
    publisher="American Society of Civil Engineers",
    edition="2016, with Supplement 1",
    superseded_by="asce7-22",
)
