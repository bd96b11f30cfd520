"""IBC 2006: the one rule of an older code that strengthening schedules of its day still go by.

`sill` how much unit shear a 2x sill may carry (2305.3.11). Superseded: for reading older drawings.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="ibc-2006",
    short="IBC 2006",
    title="International Building Code",
    publisher="International Code Council",
    edition="2006",
    superseded_by="ibc-2021",
)
