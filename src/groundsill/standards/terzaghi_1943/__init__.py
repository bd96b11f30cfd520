"""Terzaghi 1943: the pressure at which soil under a shallow footing fails in general shear.

`bearing_capacity` the three factors, the strip's capacity and the factor of safety. Formulas only: no check of a house
uses them, since nobody under an old house knows the soil's friction angle and cohesion without a geotechnical report.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="terzaghi-1943",
    short="Terzaghi 1943",
    title="Theoretical Soil Mechanics",
    publisher="John Wiley, New York",
    edition="1943",
)
