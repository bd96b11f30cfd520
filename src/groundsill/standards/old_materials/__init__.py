"""Old materials: what to take for wood, concrete and boards of a house nobody tested, as ranges with their doubts.

Not a published document: each table names its own (a rehabilitation guideline, an existing-building code, practice).
`ranges` concrete by age, unit weights, specific gravity of old wood · `existing` strengths of old floors and plaster
by the existing-building code · `tables` their loaders. Every figure carries how it is known; a test overrides it.

Misprints and contradictions stand in ``errata.toml``.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="old-materials",
    short="Old materials",
    title="Ranges for untested materials of old houses",
    publisher="common practice, each table by its own document",
    edition="1",
)
