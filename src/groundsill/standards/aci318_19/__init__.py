"""ACI 318-19: building code requirements for structural concrete, as far as old foundations need it.

Chapter 17, anchors: `shear_breakout` toward and along an edge (17.7.2) · `tension_breakout` (17.6.2) · `steel`
(17.6.1, 17.7.1) · `pryout` (17.7.3) · `pullout` headed, hooked, side-face blowout (17.6.3, 17.6.4) · `strength_factors`
phi (17.5.3) and interaction (17.8) · `scope` what the chapter covers and how far old concrete lies outside (17.3.1) ·
`seismic` what must be held against earthquake (17.10) · `expected` mean strength for the order in which links fail.
Chapter 14: `plain_concrete`.
Members with bars: `reinforced_bending` (22.2, 22.3, 9.6.1, 24.4) · `one_way_shear` (22.5, 9.6.3) · `footings` (13.2,
13.3) · `bars` sizes, cover, spacing (20.2, 20.5, 24.3, 25.2) · `development` straight, hooked, lapped (25.4, 25.5) ·
`shear_friction` (22.9) · `dowels` bars glued into old concrete.

Symbols and units are the document's own: lb, in, psi. Misprints and contradictions stand in ``errata.toml``.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="aci318-19",
    short="ACI 318-19",
    title="Building Code Requirements for Structural Concrete",
    publisher="American Concrete Institute",
    edition="2019",
)
