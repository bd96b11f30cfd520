"""ASCE 7-22, the loads: design values as entered, site classes by shear wave velocity, equivalent lateral force.

`site_class` 20.2 · `ground_motion` 11.4 to 11.6, no site coefficients: S_MS, S_M1 or S_DS, S_D1 come from the hazard
service or a study · `elf` 12.8 by its own numbers · `systems` 12.2 and 12.3.4 · `effects` 12.4, 2.3.6, 2.4.5 ·
`weight` 12.7.2 · `errata.toml` where print and use differ. What this edition keeps of the 2016 one stands there and is
restated here under this edition's numbers; wind is worked out by the 2016 edition alone.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="asce7-22",
    short="ASCE 7-22",
    title="Minimum Design Loads and Associated Criteria for Buildings and Other Structures",
    publisher="American Society of Civil Engineers",
    edition="2022",
)
