"""The survey: everything found at the house, and never overwritten by a design."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TypeVar

from groundsill.house.building import Building
from groundsill.house.fact import about
from groundsill.house.foundation import Foundation
from groundsill.house.record import Monitor, Observation, Photo, SpotLevel
from groundsill.house.site import Site
from groundsill.house.underfloor import Underfloor

__all__ = ["Survey", "in_order"]

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Survey:
    """One house as found."""

    name: str = about("House")
    surveyed_by: str = about("Surveyed by", default="")
    surveyed_on: str = about("Date of the survey", default="")
    site: Site = about("Site", factory=Site)
    building: Building = about("Building", factory=Building)
    underfloor: Underfloor = about("Under the floor", factory=Underfloor)
    foundation: Foundation = about("Foundation", factory=Foundation)
    observations: dict[str, Observation] = about("Observations", factory=dict)
    photos: dict[str, Photo] = about("Photographs", factory=dict)
    monitors: dict[str, Monitor] = about("Monitors", factory=dict)
    levels: dict[str, SpotLevel] = about("Level survey", factory=dict)


def in_order(collection: Mapping[str, T]) -> list[tuple[str, T]]:
    """A collection's ids and objects by their order key, then by mark (a map itself has no order)."""
    return sorted(
        collection.items(), key=lambda pair: (getattr(pair[1], "order", 0), getattr(pair[1], "mark", ""), pair[0])
    )
