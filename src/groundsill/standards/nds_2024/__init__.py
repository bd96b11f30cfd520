"""NDS 2024, National Design Specification for Wood Construction: what it has in the place of the 2018 edition.

The rooms are those of ``nds_2018``: bearing, yield_modes, shear, bolts, nails, screws, withdrawal, adjustment,
geometry, group_action. Every rule kept here stands as in 2018 and is restated under this edition's name
(``restating``).

What its publisher says is new (awc.org/awc-2024-design-standards-available-online): shear in bending members,
connections of several plies, and fire design (chapter 16). None of the three is kept here: joints of four members or
more, notched beams and fire are not worked out by this program in either edition.
"""

from __future__ import annotations

from groundsill.working.source import Source

__all__ = ["SOURCE"]

SOURCE = Source(
    id="nds-2024",
    short="NDS 2024",
    title="National Design Specification for Wood Construction",
    publisher="American Wood Council",
    edition="2024",
)
