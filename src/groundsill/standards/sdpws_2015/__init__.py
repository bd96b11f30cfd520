"""SDPWS 2015: special design provisions for wind and seismic, the wood council's standard for panels and boards.

`unit_shear` nominal and design unit shear of a sheathed segment (4.3.3, Tables 4.3A, 4.3C, 4.3D) · `aspect` limits
and factors of 4.3.4 · `two_sided` sheathing on both faces · `deflection` Eq. 4.3-1 · `perforated` walls with openings
not framed for force · `construction` 3x framing, plate washers, toenails · `diaphragms` board floors (4.2) · `tables`
the loaders of the printed tables.

Symbols and units are the document's own: plf, ft, kips/in. Misprints and contradictions stand in ``errata.toml``.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="sdpws-2015",
    short="SDPWS 2015",
    title="Special Design Provisions for Wind and Seismic",
    publisher="American Wood Council",
    edition="2015",
    superseded_by="sdpws-2021",
)
