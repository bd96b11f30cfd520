"""ASCE 41-17: seismic evaluation of existing buildings, as far as cores of concrete need it.

`materials` the lower bound of a tested strength and how far cores may scatter (10.2.2) · `tables` its limits.

Symbols and units are the document's own: psi. Misprints and contradictions stand in ``errata.toml``. The default
strengths by age stand with the other ranges of old materials.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="asce41-17",
    short="ASCE 41-17",
    title="Seismic Evaluation and Retrofit of Existing Buildings",
    publisher="American Society of Civil Engineers",
    edition="2017",
)
