"""Walls above that stand off the new line below them: an out-of-plane offset (ASCE 7 12.3.2.1, irregularity 4).

The floor brings the storey's force sideways to the new line. In categories D to F its ties and collectors are asked a
quarter more (12.3.3.4), unless asked with overstrength already; what holds up the walls above is asked with
overstrength from category B up (12.3.3.3).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from groundsill.loadpath.case import LineCase, cannot
from groundsill.loadpath.chain import Link
from groundsill.loadpath.inner.sides import old_of
from groundsill.working.sheet import section
from groundsill.working.steps import given, scale
from groundsill.working.value import marks_of

__all__ = ["raised", "saying_so", "under_the_walls_above"]

_TIES = "floor ties, collectors and their connections"
_SAME_IN = 1.0


def raised(case: LineCase, force: float) -> float:
    """The force on floor ties or on a collector, raised where the walls above stand off the line; recorded."""
    if not _applies(case):
        return force
    more = case.forces.rules.irregular_increase().read(_TIES, case.forces.category, symbol="f_irr")
    if float(more) == 1.0:
        return force
    return scale(force, more, symbol="V_irr", label=f"raised: {_named(case)}")


def saying_so(case: LineCase, links: Iterable[Link]) -> tuple[Link, ...]:
    """Links whose force was raised, each with the clause and a word of why."""
    found = tuple(links)
    if not _applies(case) or case.forces.category not in ("D", "E", "F"):
        return found
    clause = case.forces.rules.cite("12.3.3.4")
    told = f"a quarter more by {clause}: {_named(case)}"
    return tuple(
        link
        if link.status == "does not apply"
        else replace(link, reason="; ".join(text for text in (link.reason, told) if text))
        for link in found
    )


def under_the_walls_above(case: LineCase) -> tuple[Link, ...]:
    """What carries the walls above, which stand off the new line: asked with overstrength, and not worked out."""
    if not _applies(case) or case.forces.category == "A":
        return ()
    address, title = f"line/{case.id}/old-beside/offset/both", "what holds up the walls above, off the new line"
    clause = case.forces.rules.cite("12.3.3.3")
    with section(address):
        most = given("E_mh", float(case.overstrength), "lb", "the line's force with overstrength",
                     marks_of((case.overstrength,)))  # fmt: skip
    reason = (
        f"{_named(case)}: old wall, joists and foundation there must hold what these walls bring down when they turn, "
        f"with overstrength ({float(most):,.0f} lb of the line's force); that is not worked out"
    )
    return (cannot(address, title, "line", case.id, clause=clause, reason=reason, marks=marks_of((most,))),)


def _applies(case: LineCase) -> bool:
    return case.inner is not None and case.lateral == "earthquake" and _off_in(case) > _SAME_IN


def _off_in(case: LineCase) -> float:
    """How far the old lines, on which the walls above stand, lie from the new one, inches."""
    return 0.0 if case.inner is None else max((old.apart_in for old in old_of(case, case.inner)), default=0.0)


def _named(case: LineCase) -> str:
    return f"the walls above stand {_off_in(case) / 12:.1f} ft off the line (out-of-plane offset, irregularity 4)"
