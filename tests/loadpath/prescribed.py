"""The reference house with one thing changed, and what the prescriptive way says of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any

from groundsill.forces.reading import Reading
from groundsill.house.fact import Fact
from groundsill.house.settle import prepare
from groundsill.loadpath.prescriptive import PrescriptiveLine, Requirement, ScopeItem, scope_at
from groundsill.study import run
from groundsill.work.document import Alternative, House
from groundsill.work.pieces import Piece

PANEL = "15/32, 8d"


def with_under(house: House, collection: str, changed: Mapping[str, Any]) -> House:
    under = house.survey.underfloor
    there = {**getattr(under, collection), **changed}
    return replace(house, survey=replace(house.survey, underfloor=replace(under, **{collection: there})))


def with_lines(house: House, **fields: Any) -> House:
    return with_under(house, "lines", {id: replace(one, **fields) for id, one in house.survey.underfloor.lines.items()})


def with_segments(house: House, **fields: Any) -> House:
    segments = house.survey.underfloor.segments
    return with_under(house, "segments", {id: replace(one, **fields) for id, one in segments.items()})


def with_foundation(house: House, **fields: Any) -> House:
    segments = {id: replace(one, **fields) for id, one in house.survey.foundation.segments.items()}
    return replace(house, survey=replace(house.survey, foundation=replace(house.survey.foundation, segments=segments)))


def with_site(house: House, **fields: Any) -> House:
    return replace(house, survey=replace(house.survey, site=replace(house.survey.site, **fields)))


def with_building(house: House, **fields: Any) -> House:
    return replace(house, survey=replace(house.survey, building=replace(house.survey.building, **fields)))


def with_work(house: House, pieces: Mapping[str, Piece]) -> House:
    return replace(house, alternatives={"work": Alternative(name="work", pieces=dict(pieces))})


def scope(house: House) -> dict[str, ScopeItem]:
    best = prepare(house).best
    return {item.key: item for item in scope_at(Reading(best.house, best.marks))}


def line_of(house: House, id: str = "front", state: int = -1) -> PrescriptiveLine:
    study = run(house, ranges=False)
    return next(line for line in study.runs[state].prescriptive if line.line == id)


def asked(line: PrescriptiveLine, key: str) -> Requirement:
    return next(each for each in line.requirements if each.key == key)


def one(house: House, key: str, id: str = "front") -> Requirement:
    return asked(line_of(house, id), key)


def third_storey(house: House) -> House:
    storeys = house.survey.building.storeys
    third = replace(storeys["st2"], order=3, name="Top", floor_z_in=storeys["st2"].floor_z_in + 108.0)
    return with_building(house, storeys={**storeys, "st3": third})


def masonry(reinforced: Fact[bool]) -> Callable[[House], House]:
    return lambda house: with_foundation(house, material="brick", reinforced=reinforced)
