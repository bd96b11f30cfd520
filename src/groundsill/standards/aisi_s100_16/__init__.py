"""AISI S100-16, cold-formed steel: what a flat strap carries in tension, and a plate in its own plane.

tension (chapter D: yielding of the gross section, rupture of the net section, allowable and design strength), plates
(chapters F, G, J3.3.1: bending in the plane through a row of holes, shear, bearing of bolts).
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="aisi-s100-16",
    short="AISI S100-16",
    title="North American Specification for the Design of Cold-Formed Steel Structural Members",
    publisher="American Iron and Steel Institute",
    edition="2016",
)
