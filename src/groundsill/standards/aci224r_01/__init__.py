"""ACI 224R-01: a guide to the width of cracks in reinforced concrete that is being designed.

`tables` widths by exposure. It says itself that it is for design, not for accepting work. Unit: in.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="aci224r-01",
    short="ACI 224R-01",
    title="Control of Cracking in Concrete Structures",
    publisher="American Concrete Institute",
    edition="2001",
)
