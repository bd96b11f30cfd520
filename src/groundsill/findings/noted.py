"""What the surveyor noted and no other finding has read, in its own words with what it may mean: nothing is lost.

An observation is read when another finding shows its words among what was seen. What is left nobody weighs, so it
stands under what nobody can tell, with what such a thing may mean and what would settle it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from groundsill.findings.asking import Asking, settles
from groundsill.findings.finding import Finding, Judgement
from groundsill.forces.reading import Reading
from groundsill.house.record import Observation
from groundsill.house.survey import Survey

__all__ = ["noted"]

_TITLES: Final = {
    "crack": "Crack noted, not measured", "lean": "Lean noted", "crumbling": "Crumbling noted",
    "honeycomb": "Stones without paste noted", "soft mortar": "Soft mortar noted",
    "missing mortar": "Empty joints noted", "damp": "Damp noted", "soil on wood": "Soil on wood noted",
    "decay": "Decay noted", "insects": "Insects noted", "cut framing": "Cut framing noted", "rust": "Rust noted",
    "settlement": "Settlement noted", "undermining": "Hollow under the footing noted", "drainage": "Water noted",
    "missing": "Something missing noted", "repair": "Earlier repair noted", "other": "Noted",
}  # fmt: skip
_MAY: Final = "nobody has weighed it; its words stand here so that they are not lost"


def noted(reading: Reading, found: Sequence[Finding]) -> Iterator[Finding]:
    """A finding for each observation that none of these has read."""
    shown = [text for finding in found for text in finding.observed]
    ask = Asking(reading, "noted")
    for id, seen in reading.in_order(reading.house.survey.observations):
        said = seen.words.rstrip(" .") or ask.words_of(seen)
        if not any(said in text for text in shown):
            yield _as_it_stands(ask, id, seen)


def _as_it_stands(ask: Asking, id: str, seen: Observation) -> Finding:
    """One observation as a finding of its own."""
    means = ask.asked(seen.kind, "cannot tell")
    judged = Judgement("cannot tell", _MAY, (means,))
    where, line = _where(ask, seen)
    return Finding(
        address=f"finding/noted/{id}",
        mark=seen.mark,
        title=_TITLES[seen.kind],
        place=where,
        line=line,
        station_in=seen.station_in,
        observed=(ask.words_of(seen),),
        gravity=judged,
        earthquake=judged,
        durability=judged,
        cause=(),
        active=ask.asked("goes_on", "cannot tell"),
        confirm=settles(ask.asked("goes_on", "cannot tell"), judged),
        cures=ask.cures("ask"),
        left_alone=ask.left_alone("open"),
        marks=tuple(sorted(ask.reading.marked(f"survey.observations.{id}", "size_in", "length_in"))),
    )


def _where(ask: Asking, seen: Observation) -> tuple[str, str]:
    """Where it was noted, in words, and the id of its line, empty where it lies on none."""
    survey = ask.reading.house.survey
    if seen.on in survey.underfloor.lines:
        name, line = f"line {ask.line_mark(seen.on)}", seen.on
    else:
        thing = _thing(survey, seen.on)
        line = getattr(thing, "line", "")
        mark = getattr(thing, "mark", "") or (seen.on or "")
        name = f"{mark}, line {ask.line_mark(line)}" if line else mark
    if seen.station_in is not None and line:
        return f"{name}, {ask.shown(seen.station_in)} from its start", line
    return name or ("marked on the plan" if seen.at is not None else "the house"), line


def _thing(survey: Survey, id: str | None) -> object:
    """The object of the survey that an observation was made on, None where it is not of these."""
    under, foundation = survey.underfloor, survey.foundation
    for things in (
        foundation.segments, foundation.breaks, under.segments, under.sills, under.bolts, under.posts, under.girders,
        under.joists, under.obstructions, under.openings, under.ledgers, survey.building.walls,
        survey.building.chimneys,
    ):  # fmt: skip
        if id in things:
            return things[id]  # type: ignore[index]
    return None
