"""Links of a line whose force is not known for sure, since a rigid floor shares by a stiffness that nobody knows.

The force lies between what the line has with what is known of its stiffness and what it would have if it did not give
at all. A link that fails under the least fails; one that passes under the most passes; between them nobody can say.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from groundsill.forces.reading import doubted
from groundsill.forces.seismic import Forces
from groundsill.loadpath.chain import Link, Stage
from groundsill.working.value import marks_of

__all__ = ["at_most", "between", "between_links"]


def at_most(forces: Forces) -> Forces:
    """The same forces with every line whose stiffness is not known taken not to give at all."""
    lines = {
        id: line
        if line.most_lb is None
        else replace(line, force_lb=doubted(line.most_lb, marks_of((line.force_lb,)), unit="lb", symbol="V_line"))
        for id, line in forces.lines.items()
    }
    return replace(forces, lines=lines)


def between(least: Sequence[Stage], most: Sequence[Stage] | None, why: str) -> tuple[Stage, ...]:
    """Stages as far as they hold between the least force and the most (None: no most is known)."""
    high = {link.address: link for stage in most or () for link in stage.links}
    return tuple(
        replace(stage, links=tuple(between_links(link, high.get(link.address), why) for link in stage.links))
        for stage in least
    )


def between_links(low: Link, high: Link | None, why: str) -> Link:
    """One link as far as it holds between what it is under the least force and under the most."""
    if low.status in ("fails", "cannot be checked"):
        return low
    if high is None:
        return low if low.status == "does not apply" else _open(low, why)
    if high.status in ("passes", "indicated", "does not apply"):
        return high
    return _open(low, why)


def _open(link: Link, why: str) -> Link:
    """A link that holds under the least force and not surely under the most."""
    reason = "; ".join(
        text for text in (f"what the line takes by a rigid floor is not known: {why}", link.reason) if text
    )
    return replace(link, status="cannot be checked", verdict="cannot be checked", ratio=None, least_favourable=None,
                   capacity=None, reason=reason, expected=None)  # fmt: skip
