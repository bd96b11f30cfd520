"""IRC 2021, the code of one- and two-family dwellings, as far as an old house needs it.

`footings` R403.1: thickness, reach, depth, bars in seismic design categories D0 to D2. Widths (Tables R403.1(1) to (3))
were not read and are not here. `framing` R502.8.1 and R602.6: how deep joists and studs may be notched or bored.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="irc-2021",
    short="IRC 2021",
    title="International Residential Code",
    publisher="International Code Council",
    edition="2021",
)
