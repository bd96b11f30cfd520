"""What was seen, when, by whom: observations, photographs, readings over time, and the names of versions."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.house.building import Point
from groundsill.house.fact import Fact, about, unknown

__all__ = ["Monitor", "Observation", "Photo", "Reading", "SpotLevel"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Observation:
    """Something seen, at a place, on a date."""

    order: float = 0
    mark: str = ""
    kind: Literal[
        "crack", "lean", "crumbling", "honeycomb", "soft mortar", "missing mortar", "damp", "soil on wood", "decay",
        "insects", "cut framing", "rust", "settlement", "undermining", "drainage", "missing", "repair", "other",
    ] = "other"  # fmt: skip
    on: str | None = about(
        "Object it was seen on", help="id of a line, segment, sill, bolt, foundation segment, post", default=None
    )
    at: Point | None = about("Place on the plan", default=None)
    station_in: float | None = about("Station on the line", unit="in", least=0, most=6000, default=None)
    size_in: Fact[float] = about("Size: crack width, lean, depth", unit="in", least=-120, most=1200, factory=unknown)
    length_in: Fact[float] = about("Length along the wall", unit="in", least=0, most=6000, factory=unknown)
    words: str = about("What was seen", default="")
    by: str = about("Who", default="")
    when: str = about("When", default="")
    photos: tuple[str, ...] = about("Photographs", refers="photos", factory=tuple)


@dataclass(frozen=True, slots=True, kw_only=True)
class Photo:
    """A photograph, kept beside the survey file by its name."""

    order: float = 0
    mark: str = ""
    file: str = about("File name")
    caption: str = about("Caption", default="")
    when: str = about("When", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One reading of a monitor."""

    when: str = about("When")
    value: float = about("Reading", least=-1000, most=1000)
    temperature_f: float | None = about("Air temperature, F", least=-60, most=140, default=None)
    by: str = about("Who", default="")


@dataclass(frozen=True, slots=True, kw_only=True)
class Monitor:
    """A crack gauge, plumb mark or level mark read over time."""

    order: float = 0
    mark: str = ""
    kind: Literal["crack gauge", "plumb", "level"] = "crack gauge"
    on: str | None = about(
        "Object it sits on",
        help="for a gauge across a crack the crack itself, so that its readings tell whether the crack moves",
        default=None,
    )
    unit: str = about("Unit of its readings", default="in")
    division: float | None = about(
        "Finest step it can be read to",
        help="in the unit of its readings; left out, that of a plain gauge of its kind is taken",
        least=0.00001,
        most=10,
        default=None,
    )
    readings: tuple[Reading, ...] = about("Readings", factory=tuple)


@dataclass(frozen=True, slots=True, kw_only=True)
class SpotLevel:
    """A floor or sill height of a level survey."""

    order: float = 0
    mark: str = ""
    at: Point = about("Place")
    height_in: float = about("Height over the survey's own zero", unit="in", least=-120, most=120)
    floor: str = about(
        "Which floor or sill it is on",
        help="a name; spots of floors that were never one, or of another zero, are weighed apart",
        default="",
    )
    when: str = about("When", default="")
