"""IEBC 2021, the existing building code: reduced forces, and what appendices A1 and A3 say of old foundations.

`forces` the share of a new building's force that existing work is designed for, a printed choice · `cripple_walls`
chapter A3: listed weaknesses, when an engineer is asked for, side anchorage · `masonry` chapter A1: mortar tests and
what unreinforced masonry holds · `masonry_bolts` bolts in it, by table and by tests · `provisions.toml` its rules in
our own words, each with its address · `tables/` · `errata.toml`.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="iebc-2021",
    short="IEBC 2021",
    title="International Existing Building Code",
    publisher="International Code Council",
    edition="2021",
    superseded_by="iebc-2024",
)
