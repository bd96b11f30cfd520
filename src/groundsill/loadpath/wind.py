"""Wind on a line and on a foundation body: which asks more, and every link that it asks more of, checked for it.

A line or a body is gone through again with the wind on it, by the very checks of the earthquake: six tenths of it at
allowable stress, all of it at strength level, sheathing and floor boards by the tables' figures for wind, dead load by
the combinations of wind, no reduction of overturning at the soil. A link is listed only where wind brings it nearer to
its limit than the earthquake.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from groundsill.forces.lines import DIRECTIONS
from groundsill.forces.seismic import Forces
from groundsill.forces.wind import Lateral, LineWind
from groundsill.loadpath.bracing import with_strengths
from groundsill.loadpath.case import LineCase, cannot
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.concrete import PLAIN_FORCE
from groundsill.loadpath.footings import Body
from groundsill.loadpath.soil import force_of
from groundsill.working.sheet import section, under_heading
from groundsill.working.steps import condition
from groundsill.working.value import marks_of

__all__ = ["HEADING", "body_wind_stage", "nearer", "wind_stage", "wind_stage_of"]

HEADING = "wind/"  # before the address of every section of working that was done again for wind
_TITLE = "Wind, where it asks more than the earthquake"
_SAME = 1 + 1e-9

Stages = Callable[[LineCase], tuple[Stage, ...]]


# ---- A line ---------------------------------------------------------------------------------------------------------


def wind_stage(case: LineCase, stages: tuple[Stage, ...], again: Stages) -> tuple[Stage, ...]:
    """The stage of wind of a line whose stages for the earthquake are worked out; ``again`` works them out for wind.

    None where the survey holds no wind to look at.
    """
    wind = case.forces.wind
    found = wind.lines.get(case.id) if wind is not None else None
    if wind is None or found is None:
        return ()
    address, title = f"line/{case.id}/wind/{case.id}/both", "wind against the earthquake"
    with section(address):
        allowable = case.forces.rules.effects.asd_wind(found.W_lb)
        more = condition("wind asks more of the line than the earthquake", allowable > case.allowable, allowable,
                         case.allowable)  # fmt: skip
    links: list[Link] = []
    if more or found.W_lb > _at_strength(case):
        links = list(_again(case, stages, found, allowable, again))
    words = _words(found, allowable, case.allowable, links)
    told = cannot(
        address, title, "line", case.id, clause=wind_clause(case.forces), applies=False, reason=words,
        marks=marks_of((allowable, case.allowable)), working=(f"line/{case.id}/wind", f"line/{case.id}/demand"),
    )  # fmt: skip
    return (wind_stage_of((told, *links)),)


def wind_stage_of(links: tuple[Link, ...]) -> Stage:
    """The stage of wind with these links."""
    return Stage("wind", _TITLE, "every link must pass", links)


def wind_clause(forces: Forces) -> str:
    """The combinations that are held against each other."""
    return forces.rules.cite("2.4.1 beside 2.4.5")


def _at_strength(case: LineCase) -> float:
    """The force, strength level, that anchors in concrete are checked for: below it wind governs none of them."""
    if case.forces.category in PLAIN_FORCE:
        return float(case.forces.rho) * float(case.strength)
    return float(case.overstrength)


def _words(found: LineWind, allowable: float, quake: float, links: list[Link]) -> str:
    told = (
        f"W = {float(found.W_lb):,.0f} lb on the line, 0.6 W = {float(allowable):,.0f} lb beside 0.7 E_h = "
        f"{float(quake):,.0f} lb"
    )
    if links:
        return f"wind governs: this line must be checked for {told}; the links that it asks more of follow"
    if allowable > quake:
        return f"{told}: more, but no link comes nearer to its limit by it"
    return f"the earthquake governs: {told}"


def _again(
    case: LineCase, stages: tuple[Stage, ...], found: LineWind, allowable: float, again: Stages
) -> Iterator[Link]:
    """Every link that wind brings nearer to its limit than the earthquake does."""
    before = {link.address: link for stage in stages for link in stage.links}
    with under_heading(HEADING):
        in_wind = with_strengths(
            replace(case, lateral="wind", strength=found.W_lb, allowable=allowable, overstrength=found.W_lb)
        )
        for stage in again(in_wind):
            for link in stage.links:
                if nearer(link, before.get(link.address)):
                    yield _listed(link, stage.key, (f"line/{case.id}/wind", f"line/{case.id}/wind/{case.id}/both"))


def nearer(link: Link, before: Link | None) -> bool:
    """Whether a link comes nearer to its limit than it did before; one that fails now where nobody could say does."""
    if link.status == "does not apply":
        return False
    if before is None or before.status == "does not apply":
        return True
    if before.status == "cannot be checked" and link.ratio is not None:
        return link.status == "fails"
    if link.ratio is None or before.ratio is None:  # nothing is known, or nothing holds, by either force
        return link.status != before.status and before.ratio is not None
    return link.ratio > before.ratio * _SAME


def _listed(link: Link, stage: str, beside: tuple[str, ...] = ()) -> Link:
    """A link of the second going through, under the address that it has in the stage of wind."""
    kind, id, _, scope, way = link.address.split("/")
    alike = (place for place in link.working if place.startswith("body/"))  # its weight, the same for either force
    working = (*beside, *alike, *(HEADING + place for place in link.working), HEADING + link.address)
    return replace(
        link, address=f"{kind}/{id}/wind/{stage}-{scope}/{way}", title=f"{link.title}, in wind", expected=None,
        working=working,
    )  # fmt: skip


# ---- A body ---------------------------------------------------------------------------------------------------------


def body_wind_stage(
    forces: Forces, body: Body, stages: tuple[Stage, ...], again: Callable[[Lateral], tuple[Stage, ...]]
) -> tuple[Stage, ...]:
    """The stage of wind of a foundation body whose stages for the earthquake are worked out.

    None where the survey holds no wind to look at, and where wind governs no link of the body.
    """
    if forces.wind is None or not any(force_of(forces, body, d, "wind") for d in DIRECTIONS):
        return ()
    before = {link.address: link for stage in stages for link in stage.links}
    with under_heading(HEADING):
        links = [
            _listed(link, stage.key)
            for stage in again("wind")
            for link in stage.links
            if nearer(link, before.get(link.address))
        ]
    return (wind_stage_of(tuple(links)),) if links else ()
