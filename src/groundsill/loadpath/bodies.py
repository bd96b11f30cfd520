"""Foundation bodies and the soil: what moves together is checked together, for sliding, overturning and bearing.

Soil links stand in a group of their own beside the structural ones. The pads under posts, which stand alone, follow as
a chain of their own.
"""

from __future__ import annotations

from functools import partial

from groundsill.forces.lines import DIRECTIONS
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.forces.wind import Lateral
from groundsill.loadpath.bearing import bearing_links, pads_chain
from groundsill.loadpath.chain import Chain, Stage
from groundsill.loadpath.footings import Body, bodies_of, least_weight
from groundsill.loadpath.soil import force_of, overturning, sliding
from groundsill.loadpath.wind import body_wind_stage
from groundsill.working.sheet import section
from groundsill.working.steps import add, given
from groundsill.working.value import marks_of

__all__ = ["Body", "bodies_of", "body_chains"]


def body_chains(reading: Reading, forces: Forces) -> tuple[Chain, ...]:
    """The soil links of every foundation body, then those of the pads under posts."""
    chains = []
    for body in bodies_of(reading):
        with section(f"body/{body.id}/weight"):
            dead = _holding(reading, forces, body)
        again = partial(_stages, reading, forces, body, dead)
        stages = again("earthquake")
        stages = (*stages, *body_wind_stage(forces, body, stages, again))
        total = sum(float(force_of(forces, body, d)) for d in DIRECTIONS)
        marks = ", ".join(sorted({reading.house.survey.underfloor.lines[id].mark for id in body.lines()}))
        chains.append(Chain(body.id, body.mark, f"foundation under {marks}", "body", "both", True, "", total, stages))
    pads = pads_chain(reading, forces)
    return (*chains, pads) if pads is not None else tuple(chains)


def _stages(reading: Reading, forces: Forces, body: Body, dead: float, lateral: Lateral) -> tuple[Stage, ...]:
    """The stages of one body, for the earthquake or for wind."""
    slides = [sliding(reading, forces, body, direction, dead, lateral) for direction in DIRECTIONS]
    turns = [overturning(reading, forces, body, direction, dead, lateral) for direction in DIRECTIONS]
    pressed = bearing_links(reading, forces, body, lateral)
    return (
        Stage("sliding", "Sliding of the whole body", "every link must pass", tuple(slides)),
        Stage("overturning", "Overturning of the whole body", "every link must pass", tuple(turns)),
        Stage("bearing", "Bearing on the soil, line by line", "every link must pass", tuple(pressed)),
    )


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
