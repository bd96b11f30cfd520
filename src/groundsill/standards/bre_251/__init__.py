"""BRE Digest 251: damage to low-rise buildings told in classes, by what it takes to mend it and by the width of cracks.

`tables` the classes with their greatest widths. Width is one sign among several, and no verdict alone. Unit: mm.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="bre-251",
    short="BRE Digest 251",
    title="Assessment of damage in low-rise buildings",
    publisher="Building Research Establishment, Watford",
    edition="1995",
)
