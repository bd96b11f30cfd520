"""The small house with one thing changed, as each test of a topic wants it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from groundsill.findings import Finding, findings_of
from groundsill.house.fact import Fact, measured
from groundsill.house.foundation import FoundationTest
from groundsill.house.record import Observation
from groundsill.work.document import House
from tests.fixtures.small_house import small_house

FINE = {
    "condition": measured("sound"), "strength_psi": measured(2600.0), "reinforced": measured(False),
    "footing_width_in": measured(16.0), "footing_thickness_in": measured(8.0), "depth_in": measured(18.0),
}  # fmt: skip
"""Facts of a stretch of concrete with nothing against it, on a small house in clay."""

GOOD_BRICK = {
    "condition": measured("sound"), "mortar": measured("hard"), "wythes": measured(2.0),
    "header_course": measured(True), "collar_joint_filled": measured(True), "footing_width_in": measured(20.0),
    "footing_thickness_in": measured(9.0), "depth_in": measured(18.0),
}  # fmt: skip


def house_with(
    place: str = "foundation.segments",
    id: str = "fs2",
    noted: tuple[Observation, ...] = (),
    tests: tuple[FoundationTest, ...] = (),
    frost: float | None = 0.0,
    **facts: Any,
) -> House:
    """The house with these facts of one object, these observations and tests for its own, and no hidden frost."""
    house = small_house()
    survey = house.survey
    room, name = place.split(".")
    things = getattr(getattr(survey, room), name)
    changed = replace(getattr(survey, room), **{name: {**things, id: replace(things[id], **facts)}})
    survey = replace(survey, **{room: changed})
    base = replace(survey.foundation, tests={f"test-{n}": t for n, t in enumerate(tests)})
    depth: Fact[float] = Fact(state="unknown") if frost is None else measured(frost)
    site = replace(survey.site, soil=replace(survey.site.soil, frost_depth_in=depth))
    seen = {f"seen-{n}": each for n, each in enumerate(noted)}
    return replace(house, survey=replace(survey, foundation=base, site=site, observations=seen))


def probed(depth_in: float, segment: str = "fs2") -> FoundationTest:
    """A probe of a stretch."""
    return FoundationTest(segment=segment, station_in=40, kind="probe", result=depth_in, unit="in")


def noted(kind: Any, on: str, words: str = "seen so", size: Fact[float] | None = None) -> Observation:
    """Something the surveyor noted."""
    return Observation(mark="N9", kind=kind, on=on, words=words, size_in=size or Fact(state="unknown"))


def the(house: House, address: str) -> Finding:
    """One finding of a house."""
    return next(finding for finding in findings_of(house).findings if finding.address == address)


def weights(found: Finding) -> tuple[str, str, str]:
    """The three weights of a finding."""
    return found.gravity.weight, found.earthquake.weight, found.durability.weight


def answers(found: Finding) -> dict[str, str]:
    """Each question that was asked, with its answer."""
    judged = (found.gravity, found.earthquake, found.durability)
    return {reason.key: reason.answer for each in judged for reason in each.reasons}
