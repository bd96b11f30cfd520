"""SEAONC 2016: a committee's proposal for sill bolts in existing footings, never adopted.

`sill_anchors` the proposed revision of AB-107, A3.2.7: shear of existing sill bolts by the wood table, with its
conditions. Read at https://docsbay.net/seaonc-existing-buildings-committee-proposed-revision-to-ab-107-section-a3-2-7 .
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="seaonc-2016",
    short="SEAONC 2016 proposal",
    title="Proposed revision to administrative bulletin AB-107, section A3.2.7",
    publisher="Structural Engineers Association of Northern California, Existing Buildings Committee",
    edition="17 March 2016",
)
