"""Foundation bodies and the soil: what moves together is checked together, for sliding, overturning and bearing.

Soil links stand in a group of their own beside the structural ones. The pads under posts, which stand alone, follow as
a chain of their own.
"""

from __future__ import annotations

from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.forces.share import Direction
from groundsill.loadpath.bearing import bearing_links, pads_chain
from groundsill.loadpath.chain import Chain, Stage
from groundsill.loadpath.footings import Body, bodies_of, least_weight
from groundsill.loadpath.soil import force_of, overturning, sliding
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
        slides, turns = [], []
        directions: tuple[Direction, ...] = ("x", "y")
        for direction in directions:
            slides.append(sliding(reading, forces, body, direction, dead))
            turns.append(overturning(reading, forces, body, direction, dead))
        pressed = bearing_links(reading, forces, body)
        stages = (
            Stage("sliding", "Sliding of the whole body", "every link must pass", tuple(slides)),
            Stage("overturning", "Overturning of the whole body", "every link must pass", tuple(turns)),
            Stage("bearing", "Bearing on the soil, line by line", "every link must pass", tuple(pressed)),
        )
        total = sum(float(force_of(forces, body, d)) for d in directions)
        marks = ", ".join(sorted({reading.house.survey.underfloor.lines[id].mark for id in body.lines()}))
        chains.append(Chain(body.id, body.mark, f"foundation under {marks}", "body", "both", True, "", total, stages))
    pads = pads_chain(reading, forces)
    return (*chains, pads) if pads is not None else tuple(chains)


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
