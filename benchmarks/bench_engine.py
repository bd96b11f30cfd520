"""How long a house waits for its load path: at the best value of its facts, with its working, over all its ranges."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any

from benchmarks.timing import Row, seconds_for
from groundsill.doors.decode import decode
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import work_out
from groundsill.house.settle import prepare
from groundsill.loadpath.bodies import body_chains
from groundsill.loadpath.path import chains_of
from groundsill.study import run, working
from groundsill.work.apply import apply
from groundsill.work.document import House

SAMPLE = Path(__file__).parents[1] / "samples" / "larch-street" / "house.json"
HALL = "L8"  # the line that is copied to make a house of more lines


def rows() -> Iterator[Row]:
    """The sample as designed, then the same house with two, four and eight times its nine lines."""
    house = decode(SAMPLE.read_bytes(), SAMPLE.name)
    (key,) = house.alternatives
    best = prepare(house).best
    forces = seconds_for(lambda: work_out(Reading(best.house, best.marks)))
    yield Row("forces of the sample, no working", forces)
    bare = seconds_for(partial(_load_path, house, key))
    yield Row("its load path as designed, no working", bare, "the forces alone", forces, "aim: under 20 ms")
    full = seconds_for(lambda: working(house, key))
    yield Row("its load path as designed, with working", full, "without", bare, "aim: under 100 ms")
    ranges = len(prepare(house).facts)
    whole = seconds_for(lambda: run(house), rounds=2)
    yield Row(f"its study, as found and designed, {ranges} facts at both ends", whole, "the load path", bare)
    before, lines = bare, len(house.survey.underfloor.lines)
    for times in (2, 4, 8):
        more = with_lines(house, (times - 1) * lines)
        spent = seconds_for(partial(_load_path, more, key))
        yield Row(
            f"load path of a house of {times * lines} lines", spent, "half as many", before, "aim: little over 2 x"
        )
        before = spent


def _load_path(house: House, key: str) -> None:
    """Everything :func:`groundsill.study.run` does for one state at the best value of every fact."""
    best = prepare(house).best
    reading = Reading(best.house, best.marks)
    forces = work_out(reading)
    chains_of(reading, forces, apply(house, key).pieces)
    body_chains(reading, forces)


def with_lines(house: House, extra: int) -> House:
    """The house with its hall line, all that stands on it and its foundation copied side by side."""
    survey = house.survey
    under, base, corners = survey.underfloor, survey.foundation, dict(survey.building.corners)
    hall = next(id for id, line in under.lines.items() if line.mark == HALL)
    lines = dict(under.lines)
    collections: dict[str, dict[str, Any]] = {
        name: dict(getattr(under, name)) for name in ("segments", "sills", "bolts")
    }
    stems = dict(base.segments)
    for n in range(extra):
        line = under.lines[hall]
        for end in (line.start, line.end):
            corners[f"{end}-{n}"] = replace(corners[end], x_in=corners[end].x_in + 160.0 * (n + 1) / (extra + 1))
        lines[f"{hall}-{n}"] = replace(line, start=f"{line.start}-{n}", end=f"{line.end}-{n}", mark=f"{HALL}.{n}")
        for things in (*collections.values(), stems):
            things |= {f"{id}-{n}": replace(t, line=f"{hall}-{n}") for id, t in list(things.items()) if t.line == hall}
    survey = replace(
        survey,
        building=replace(survey.building, corners=corners),
        underfloor=replace(under, lines=lines, **collections),
        foundation=replace(base, segments=stems),
    )
    return replace(house, survey=survey)
