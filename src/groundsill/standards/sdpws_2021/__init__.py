"""SDPWS 2021: special design provisions for wind and seismic, the wood council's standard for panels and boards.

`unit_shear` nominal and design unit shear of a sheathed segment (4.1.4, 4.3.5, Tables 4.3A, 4.3C, 4.3D) · `aspect`
limits and factors of 4.3.3 · `two_sided` sheathing on both faces · `deflection` Eq. 4.3-1 · `perforated` walls with
openings not framed for force · `construction` 3x framing, plate washers, toenails · `diaphragms` board floors (4.2) ·
`tables` the loaders of the printed tables.

One nominal column stands for wind and earthquake; they part only in 4.1.4. Clauses of chapter 4 were put into a new
order in this edition. What it keeps of the 2015 one stands there and is restated here under this edition's numbers,
with that edition's symbol b_s for the length of a segment, which this one calls b.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="sdpws-2021",
    short="SDPWS 2021",
    title="Special Design Provisions for Wind and Seismic",
    publisher="American Wood Council",
    edition="2021",
)
