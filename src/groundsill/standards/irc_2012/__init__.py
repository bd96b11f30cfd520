"""IRC 2012: how wide the footing of a new dwelling is by stories and soil, as editions before 2015 told it.

`tables` Table R403.1. From 2015 on the width goes by snow and width of the house as well; those tables were not read.
Unit: in.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="irc-2012",
    short="IRC 2012",
    title="International Residential Code for One- and Two-Family Dwellings",
    publisher="International Code Council",
    edition="2012",
)
