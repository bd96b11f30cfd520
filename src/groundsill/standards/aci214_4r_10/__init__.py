"""ACI 214.4R-10: obtaining cores of concrete and interpreting their strength.

`cores` from the strength at which a core broke to the strength of the concrete in place (chapter 9), the sample, and
the equivalent specified strength by tolerance factors · `tables` the printed factors.

Symbols and units are the document's own: in, psi. Misprints and contradictions stand in ``errata.toml``.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="aci214-4r-10",
    short="ACI 214.4R-10",
    title="Guide for Obtaining Cores and Interpreting Compressive Strength Results",
    publisher="American Concrete Institute",
    edition="2010",
)
