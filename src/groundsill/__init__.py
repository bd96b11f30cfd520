"""Groundsill: from a crawlspace survey to checked, drawn and priced strengthening of an old wood-framed house.

The rooms, from the ground up; a room imports only from those below it:
``working`` (values, equations, tables, units), ``mechanics`` and ``standards`` (our statics; the published formulas),
``house`` (the survey), ``work`` (pieces of work laid on it), ``forces`` (weights, base shear, each line's share),
``loadpath`` (the chain of links from floor to soil), ``papers`` (documents and drawings and their writers),
``doors`` (JSON in and out), ``cli`` (the commands).
"""

from __future__ import annotations

from groundsill.working.version import VERSION as __version__

__all__ = ["__version__"]
