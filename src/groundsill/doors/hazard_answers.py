"""What ``groundsill hazard --json`` gives: the ground motion a file holds, and what the service answered, if asked."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["HazardBeside", "HazardChange", "HazardFound", "HazardHeld", "HazardTold"]


@dataclass(frozen=True, slots=True)
class HazardHeld:
    """The ground motion of a house file as it stands, and where it says it came from; ``g`` and seconds."""

    S_S: float
    S_1: float
    T_L: float
    S_DS: float | None
    S_D1: float | None
    site_class: str
    source: str
    when: str


@dataclass(frozen=True, slots=True)
class HazardBeside:
    """Design values by another edition, kept with the house to compare; ``g``."""

    edition: str
    S_DS: float
    S_D1: float | None
    source: str
    when: str


@dataclass(frozen=True, slots=True)
class HazardFound:
    """What a design-value service answered.

    ``edition`` and ``site_class`` are those it was asked about, ``url`` the whole question, ``source`` the sentence
    kept with the house, ``remarks`` what a check of the answer showed.
    """

    edition: str
    site_class: str
    risk_category: str
    latitude: float
    longitude: float
    S_S: float
    S_1: float
    T_L: float | None
    S_MS: float | None
    S_M1: float | None
    S_DS: float | None
    S_D1: float | None
    category: str
    url: str
    source: str
    when: str
    remarks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class HazardChange:
    """One field of the site: what stands there, and what the answer would put in its place."""

    path: str
    label: str
    unit: str
    before: float | str | None
    after: float | str | None


@dataclass(frozen=True, slots=True)
class HazardTold:
    """The ground motion of a house: as held, and as found where it was looked up; ``written`` when the file changed."""

    file: str
    name: str
    edition: str
    latitude: float | None
    longitude: float | None
    risk_category: str
    held: HazardHeld | None
    beside: tuple[HazardBeside, ...]
    found: HazardFound | None
    changes: tuple[HazardChange, ...]
    written: bool
