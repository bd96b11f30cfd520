"""ACI 562-19: the code for assessing and repairing existing concrete, as far as the strength of old concrete needs it.

`cores` the equivalent specified strength from a sample of cores (6.4.3) · `tables` its coefficient by number of cores.

Symbols and units are the document's own: psi. Misprints and contradictions stand in ``errata.toml``.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="aci562-19",
    short="ACI 562-19",
    title="Code Requirements for Assessment, Repair, and Rehabilitation of Existing Concrete Structures",
    publisher="American Concrete Institute",
    edition="2019",
)
