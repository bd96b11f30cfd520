"""Foundation bodies and the soil: what moves together is checked together, for sliding, overturning and bearing.

Soil links stand in a group of their own beside the structural ones. The pads under posts, which stand alone, follow as
a chain of their own.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import partial

from groundsill.forces.lines import DIRECTIONS
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.forces.share import Direction
from groundsill.forces.wind import Lateral
from groundsill.loadpath.bearing import PADS, bearing_links, pads_chain
from groundsill.loadpath.chain import Chain, Link, Stage
from groundsill.loadpath.check_value import as_asked
from groundsill.loadpath.footings import Body, bodies_of, least_weight
from groundsill.loadpath.ground import EXPANSIVE, shrinks
from groundsill.loadpath.open_force import at_most, between, between_links
from groundsill.loadpath.post_bearing import post_links, pulled_off
from groundsill.loadpath.soil import force_of, overturning, sliding
from groundsill.loadpath.wind import body_wind_stage
from groundsill.work.pieces import Piece
from groundsill.working.sheet import Sheet, open_sheet, quiet, section
from groundsill.working.steps import add, given
from groundsill.working.value import marks_of

__all__ = ["Body", "bodies_of", "body_chains", "soil_parts"]


def body_chains(reading: Reading, forces: Forces, pieces: Sequence[tuple[str, Piece]] = ()) -> tuple[Chain, ...]:
    """The soil links of every foundation body with this work on the house, then those of the pads under posts."""
    return tuple(work_out() for work_out in soil_parts(reading, forces, pieces).values())


def soil_parts(reading: Reading, forces: Forces, pieces: Sequence[tuple[str, Piece]]) -> dict[str, Callable[[], Chain]]:
    """What works out the chain of each foundation body, and last of the pads under posts, by the id of the chain."""
    with quiet():
        forces = as_asked(reading, forces, reading.inner)
    parts: dict[str, Callable[[], Chain]] = {
        body.id: partial(_body_chain, reading, forces, body, pieces) for body in bodies_of(reading)
    }
    if reading.house.survey.underfloor.posts:
        parts[PADS] = partial(_pads, reading, forces)
    return parts


def _body_chain(reading: Reading, forces: Forces, body: Body, pieces: Sequence[tuple[str, Piece]]) -> Chain:
    with section(f"body/{body.id}/weight"):
        dead = _holding(reading, forces, body)
    again = partial(_stages, reading, forces, body, dead, pieces)
    stages = again("earthquake")
    stages = (*stages, *body_wind_stage(forces, body, stages, again))
    total = max(float(force_of(_least(forces, body, d)[0], body, d)) for d in DIRECTIONS)
    marks = ", ".join(sorted({reading.house.survey.underfloor.lines[id].mark for id in body.lines()}))
    return Chain(
        body.id, body.mark, f"foundation under {marks}", "body", "both", True, "", total, stages,
        remark="" if body.new(reading) else _lifts(reading),
    )  # fmt: skip


def _pads(reading: Reading, forces: Forces) -> Chain:
    return replace(pads_chain(reading, forces), remark=_lifts(reading))


def _lifts(reading: Reading) -> str:
    """What stands at the head of an old foundation on soil that swells and shrinks."""
    return EXPANSIVE if shrinks(reading) else ""


def _stages(
    reading: Reading, forces: Forces, body: Body, dead: float, pieces: Sequence[tuple[str, Piece]], lateral: Lateral
) -> tuple[Stage, ...]:
    """The stages of one body, for the earthquake or for wind."""
    slides, turns = (
        tuple(_as_far_as_known(check, reading, forces, body, direction, dead, lateral) for direction in DIRECTIONS)
        for check in (partial(_slid, pieces), overturning)
    )
    return (
        Stage("sliding", "Sliding of the whole body", "every link must pass", slides),
        Stage("overturning", "Overturning of the whole body", "every link must pass", turns),
        _bearing(reading, forces, body, pieces, lateral),
    )


def _bearing(
    reading: Reading, forces: Forces, body: Body, pieces: Sequence[tuple[str, Piece]], lateral: Lateral
) -> Stage:
    """Bearing under each line; where a line's force is open, as far as it holds between the least and the most."""

    def stage(forces: Forces) -> Stage:
        pressed = (
            *bearing_links(reading, forces, body, lateral),
            *post_links(reading, forces, body, pieces, lateral),
        )
        return Stage("bearing", "Bearing on the soil, line by line", "every link must pass", pressed)

    least = stage(forces)
    if lateral == "wind":
        return least
    links: list[Link] = []
    with quiet() if open_sheet() is None else Sheet():  # a sheet of its own, for the marks
        most = stage(at_most(forces)) if any(forces.lines[id].open for id in body.lines()) else least
    for low, high in zip(least.links, most.links, strict=True):
        line = forces.lines[low.scope_id]
        only = (replace(most, links=(high,)),) if line.most_lb is not None else None
        links += between((replace(least, links=(low,)),), only, line.open)[0].links if line.open else [low]
    return replace(least, links=tuple(links))


def _slid(
    pieces: Sequence[tuple[str, Piece]], reading: Reading, forces: Forces, body: Body, direction: Direction,
    dead: float, lateral: Lateral,
) -> Link:  # fmt: skip
    """Sliding, with what hold-downs pull up on the body and press down on another taken off the dead load."""
    off = pulled_off(reading, forces, body, direction, pieces, lateral)
    return sliding(reading, forces, body, direction, dead, lateral, off)


Check = Callable[[Reading, Forces, Body, Direction, float, Lateral], Link]


def _as_far_as_known(
    check: Check, reading: Reading, forces: Forces, body: Body, direction: Direction, dead: float, lateral: Lateral
) -> Link:
    """A check of a body; where the stiffness of one of its lines is not known, as far as it holds between two forces.

    Those are what a flexible floor brings, and the most of all ways of sharing it. Wind is shared by a flexible floor.
    """
    least, why = (forces, "") if lateral == "wind" else _least(forces, body, direction)
    low = check(reading, least, body, direction, dead, lateral)
    if not why:
        return low
    high = None
    if all(line.most_lb is not None for line in forces.lines.values() if line.open):
        with quiet() if open_sheet() is None else Sheet():  # a sheet of its own, for the marks
            high = check(reading, forces, body, direction, dead, lateral)
    return between_links(low, high, why)


def _least(forces: Forces, body: Body, direction: Direction) -> tuple[Forces, str]:
    """The least forces that may come into a body along a direction, and why they may be more, in words.

    The body under all the lines has the whole force however they share it.
    """
    along = {id: line for id, line in forces.lines.items() if line.relied_on and line.along(direction) > 0}
    why = "; ".join(line.open for id, line in along.items() if line.open and id in body.lines())
    if not why or along.keys() <= body.lines().keys():
        return forces, ""
    lines = {
        id: replace(line, cases={d: ways[:1] for d, ways in line.cases.items()}) for id, line in forces.lines.items()
    }
    return replace(forces, lines=lines), why


def _holding(reading: Reading, forces: Forces, body: Body) -> float:
    """Dead load that surely stands on the soil under a body: what its lines bring and what it weighs itself."""
    terms = []
    lines = reading.house.survey.underfloor.lines
    for id, parts in body.lines().items():
        feet = sum(p.length_ft for p in parts)
        carried = forces.gravity.lines[id].dead
        dead = max(float(carried) * min(feet / forces.lines[id].length_ft, 1.0), 0.0)
        label = f"gravity take-down to line {lines[id].mark}, {feet:.1f} ft of it"
        terms.append(given("D", dead, "lb", label, marks_of((carried,))))
    own = least_weight(reading, body.parts, "the foundation's own weight")
    if own is not None:
        terms.append(own)
    return add(*terms, symbol="D", label=f"dead load on the soil under body {body.mark}")
