"""Published limits of distortion and tilt: by whom, of what kind of building, and what was seen beyond them.

`tables` angular distortion (Skempton and MacDonald, Meyerhof, Polshin and Tokar, Bjerrum), deflection ratio of bare
masonry (Burland and Wroth), tilt (BRE Digest 475). They come from settlement of walls and frames that were level once;
a floor that was laid out of level a hundred years ago is measured by them too harshly.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="distortion-limits",
    short="Distortion limits",
    title="Published limits of angular distortion, deflection ratio and tilt of buildings",
    publisher="several authors, 1956 to 2003, read in reprints named at each figure",
    edition="collected",
)
