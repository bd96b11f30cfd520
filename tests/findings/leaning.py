"""The small house, all of it measured, with one stretch of its front foundation as each test wants it."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from groundsill.findings import Finding, findings_of
from groundsill.house.fact import Fact, measured
from groundsill.house.record import Observation
from groundsill.house.site import SiteFlag
from groundsill.work.document import House
from tests.loadpath.houses import known_house

STILL = {
    "lean_in_per_ft": measured(0.25), "lean_moving": measured(False), "wet_side": measured("neither"),
    "load_added": measured(False),
}  # fmt: skip
CLEAR = {"above_outside_soil_in": measured(10.0), "above_inside_soil_in": measured(10.0)}


@cache
def _plain() -> House:
    """The house with snow and ground known, and nothing seen on it."""
    house = known_house()
    site = replace(
        house.survey.site,
        snow_psf=measured(20.0),
        slope_rise_per_run=measured(0.02),
        flags={"slide": SiteFlag(kind="landslide", present=measured(False))},
        soil=replace(house.survey.site.soil, fill=measured(False)),
    )
    return replace(house, survey=replace(house.survey, site=site, observations={}, monitors={}))


def front(house: House) -> str:
    """The first stretch of foundation under line 1."""
    return next(id for id, s in house.survey.foundation.segments.items() if s.line == "line1")


def stood(soil: dict[str, Any] | None = None, seen: dict[str, Observation] | None = None, **facts: Any) -> House:
    """The house with facts of its front stretch changed; ``soil`` changes facts of the ground, ``seen`` is what was."""
    house = _plain()
    id, base = front(house), house.survey.foundation
    segments = base.segments | {id: replace(base.segments[id], **facts)}
    site = replace(house.survey.site, soil=replace(house.survey.site.soil, **(soil or {})))
    survey = replace(house.survey, site=site, foundation=replace(base, segments=segments), observations=seen or {})
    return replace(house, survey=survey)


def with_sills(house: House, **facts: Any) -> House:
    """The house with facts of its front sills changed."""
    under = house.survey.underfloor
    sills = {id: replace(s, **facts) if s.line == "line1" else s for id, s in under.sills.items()}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, sills=sills)))


def told(house: House, topic: str) -> Finding | None:
    """The finding of a topic on the front stretch, if there is one."""
    address = f"finding/{topic}/{front(house)}"
    return next((f for f in findings_of(house).findings if f.address == address), None)


def about(best: float, low: float, high: float) -> Fact[float]:
    """A figure that may lie between two others."""
    return Fact(value=best, low=low, high=high, state="estimated")
