"""What a formula that explains itself costs: the bare body, the equation without a sheet, and with one open."""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt
from typing import Annotated

from benchmarks.timing import Row, seconds_for
from groundsill.working.equation import Q, equation
from groundsill.working.sheet import Sheet
from groundsill.working.source import Source

BENCH = Source(id="bench", short="Bench", title="A made-up rule", publisher="this benchmark", edition="1")
Width = Annotated[float, Q("in", "b", "width", above=0.0)]
Depth = Annotated[float, Q("in", "d", "depth", above=0.0, at_most=1000.0)]
Force = Annotated[float, Q("lb", "P", "force")]
Pressure = Annotated[float, Q("lb/in^2", "p", "pressure")]


@equation("bench/1", title="Pressure on an area", clause="1", source=BENCH, witness="none needed: made up for timing")
def pressure(P: Force, b: Width, d: Depth) -> Pressure:
    """Three arguments with limits, a root and a branch: about what a yield mode of a dowel asks."""
    return P / (b * d) if d > b else P / sqrt(b * b * d * d)


def rows() -> Iterator[Row]:
    """Cost of one call, and how it grows when a sheet holds ten times the steps."""
    bare = seconds_for(lambda: pressure.body(500.0, 1.5, 5.5))
    yield Row("the body alone", bare)
    closed = seconds_for(lambda: pressure(500.0, 1.5, 5.5))
    yield Row("the equation, no sheet open", closed, "the body", bare, "aim: about 1 us")
    hundred = seconds_for(lambda: _on_a_sheet(100)) / 100
    yield Row("the equation, 100 steps on a sheet", hundred, "no sheet", closed)
    thousand = seconds_for(lambda: _on_a_sheet(1000)) / 1000
    yield Row("the equation, 1000 steps on a sheet", thousand, "100 steps, each", hundred, "aim: no growth")


def _on_a_sheet(times: int) -> None:
    with Sheet():
        for _ in range(times):
            pressure(500.0, 1.5, 5.5)
