"""What the trade has seen of bolts in old foundations: said beside every check of them, and forced on no figure."""

from __future__ import annotations

__all__ = ["EXPERIENCE"]

EXPERIENCE = (
    "Beside the checks of bolts in the foundation, in none of their figures: in tests of bolts in old, poor "
    "foundations the wood of the sill gave way before the concrete (common practice, no source). The published tests, "
    "of cast-in bolts along the edge in concrete of 2,500 psi and over, found sill and bolt to yield first (SEAONC and "
    "AWC, 2009). They are no evidence for weaker concrete, for anchors set afterwards, or for a load toward the edge."
)
