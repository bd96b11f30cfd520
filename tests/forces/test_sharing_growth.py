"""What a line costs to share the force with does not grow with the house: bytecodes counted, so no clock is asked."""

from __future__ import annotations

import sys
from collections.abc import Callable
from types import FrameType
from typing import Any

import pytest

from benchmarks.bench_sharing import flexible, more_lines, rigid, row_of_houses


def steps_of(work: Callable[[], object]) -> int:
    """How many bytecodes of the program the work takes."""
    count = 0

    def step(frame: FrameType, event: str, arg: Any) -> Any:
        nonlocal count
        count += event == "opcode"
        return step

    def call(frame: FrameType, event: str, arg: Any) -> Any:
        if "groundsill" not in frame.f_code.co_filename:
            return None
        frame.f_trace_opcodes, frame.f_trace_lines = True, False
        return step

    before = sys.gettrace()
    sys.settrace(call)
    try:
        work()
    finally:
        sys.settrace(before)
    return count


@pytest.mark.parametrize("plan", [more_lines, row_of_houses])
@pytest.mark.parametrize("share", [flexible, rigid])
def test_a_line_of_two_hundred_costs_what_a_line_of_forty_costs(plan, share):
    """One plan with more lines across it, and a row of houses that each bring their own floor and four lines.

    In the row the ends of lines stand in more and more places until all of its steps have come once, at 15 houses.
    """
    each = {}
    for count in (4, 40, 200):
        reading, items = plan(count)
        each[count] = steps_of(lambda reading=reading, items=items: share(reading, items)) / count
    assert each[200] < 1.02 * each[40], each
    assert each[200] < 1.4 * each[4], each


def test_the_count_sees_work_that_grows():
    """The same counting over a loop that looks at every line from every line."""

    def looked_at(count: int) -> int:
        reading, items = row_of_houses(count)
        return steps_of(lambda: [rigid(reading, items) for _ in range(count // 20)])

    assert looked_at(80) / 80 > 1.8 * looked_at(40) / 40
