"""The small house with one crack in its second line, as each test wants it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from groundsill.findings import Finding, findings_of
from groundsill.house.fact import measured
from groundsill.house.foundation import FoundationBreak
from groundsill.work.document import House
from tests.fixtures.small_house import small_house

LINE, STATION = "line2", 120.0
HARMLESS = {
    "width_in": measured(1 / 16), "bottom_width_in": measured(1 / 16), "offset_in": measured(0.0),
    "lateral_offset_in": measured(0.0), "pattern": measured("vertical"), "section_lost": measured(False),
    "moving": measured(False),
}  # fmt: skip


def cracked(kind: Any = "crack", reinforced: bool | None = False, **facts: Any) -> House:
    """The house with a crack where one sill piece runs across and no bolt stands near; nothing else is broken."""
    house = small_house()
    base, under = house.survey.foundation, house.survey.underfloor
    cut = FoundationBreak(mark="K1", line=LINE, station_in=STATION, kind=kind, **facts)
    segments = {
        id: replace(s, reinforced=measured(reinforced)) if reinforced is not None else s
        for id, s in base.segments.items()
    }
    bolts = {id: b for id, b in under.bolts.items() if b.line != LINE or abs(b.station_in - STATION) > 24}
    survey = replace(
        house.survey,
        foundation=replace(base, segments=segments, breaks={"crack-1": cut}),
        underfloor=replace(under, bolts=bolts),
    )
    return replace(house, survey=survey)


def the(house: House, address: str = "finding/crack/crack-1") -> Finding:
    """One finding of a house."""
    return next(finding for finding in findings_of(house).findings if finding.address == address)
