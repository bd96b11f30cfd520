"""Statics of any handbook: overturning of a wall segment, a footing lifted by a point, a beam on a bed of springs.

No standard owns these; they stand here, as equations, so that their working shows on the sheet like any other.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="statics",
    short="Statics",
    title="Equilibrium of rigid bodies",
    publisher="any handbook of mechanics",
    edition="",
)
