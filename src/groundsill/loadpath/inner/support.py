"""What holds the floor up beside a new foundation: the old one as before, or the new strip where the old gives way.

A strip that is only tight under the joists carries nothing until the old foundation settles. It is asked all the same
to carry everything that the old lines beside it carry, over its own length: the soil under it, and the joists as
cantilevers that hold the old wall beyond it.
"""

from __future__ import annotations

from collections.abc import Sequence

from groundsill.forces.gravity import Load
from groundsill.loadpath.case import LineCase, cannot, checked
from groundsill.loadpath.chain import Link
from groundsill.loadpath.floor import joists_beside
from groundsill.loadpath.footing_lift import own_weight
from groundsill.loadpath.footings import parts_on
from groundsill.loadpath.ground import allowable_pressure, as_the_ground_allows, no_bearing
from groundsill.loadpath.inner.sides import Old, old_of
from groundsill.loadpath.turning import LOWEST_GRADE
from groundsill.work.inner import RESTS_ON_OLD, InnerFoundationPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, convert, divide, given, greatest, multiply
from groundsill.working.value import Mark, marks_of

__all__ = ["support_links"]

_SOIL = "IBC 2021 Table 1806.2"
_LIVE = "ten years (floor live)"


def support_links(case: LineCase, piece: InnerFoundationPiece) -> tuple[Link, ...]:
    """What holds the floor up if the old foundation crumbles in places: the strip, checked for it, or plain words."""
    address, title = f"line/{case.id}/old-beside/vertical/both", "vertical support if the old foundation gives way"
    if piece.gravity != "second support":
        whose = "" if piece.gravity == "none" else "of the walls above: "
        return (cannot(address, title, "line", case.id, clause="", reason=whose + RESTS_ON_OLD, applies=False),)
    if case.lateral == "wind":
        return ()
    olds = old_of(case, piece)
    if case.line.joists == "parallel":
        reason = f"the joists run along it: it holds up the one over it and no more; {RESTS_ON_OLD}"
        with section(address):
            whole = _whole(case, olds)
        return (
            checked(
                address, title, "line", case.id, level="allowable", unit="lb", demand=whole, capacity=0.0,
                clause="statics", reason=reason,
            ),
        )  # fmt: skip
    return (_on_soil(case, piece, olds, address, title), _joists(case, olds))


def _part(case: LineCase, old: Old) -> float:
    """What part of an old line the strip runs beside."""
    length = case.forces.lines[old.id].length_ft
    return min(case.length_in / 12 / length, 1.0) if length else 0.0


def _loads(case: LineCase, olds: Sequence[Old]) -> tuple[float, float, float]:
    """Dead, live and snow load of the old lines over the strip's length, and its own line's, lb."""
    gravity = case.forces.gravity.lines
    parts: list[tuple[Load, float]] = [(gravity[old.id], _part(case, old)) for old in olds]
    parts.append((gravity[case.id], 1.0))
    found = []
    for symbol, of, what in (
        ("D", "dead", "dead load"), ("L", "live", "floor live load"), ("S", "snow", "roof snow"),
    ):  # fmt: skip
        pounds = sum(max(float(getattr(load, of)), 0.0) * part for load, part in parts)
        marks = marks_of(getattr(load, of) for load, _ in parts)
        found.append(given(symbol, pounds, "lb", f"{what} of the old lines beside it and of its own", marks))
    return found[0], found[1], found[2]


def _whole(case: LineCase, olds: Sequence[Old]) -> float:
    return _gravity(case, *_loads(case, olds))


def _gravity(case: LineCase, D: float, L: float, S: float) -> float:
    effects = case.forces.rules.effects
    return greatest(
        effects.asd_live(D, L), effects.asd_snow(D, S), effects.asd_live_and_snow(D, L, S), symbol="P",
        label="gravity load",
    )  # fmt: skip


def _on_soil(case: LineCase, piece: InnerFoundationPiece, olds: Sequence[Old], address: str, title: str) -> Link:
    """The soil under the strip with all of the old lines' load on it and no earthquake."""
    stem = case.reading.on_line(case.reading.house.survey.foundation.segments, case.id)[0]
    parts = parts_on(case.reading, case.id)
    if reason := no_bearing(case.reading, parts):
        return cannot(address, title, "line", case.id, clause=_SOIL, reason=reason)
    with section(address):
        allowed = allowable_pressure(case.reading)
        assert allowed is not None
        long = given("l", case.length_in / 12, "ft", "length of the strip")
        D, L, S = _loads(case, olds)
        own = multiply(own_weight(case, *stem), long, symbol="D_c", unit="lb", label="the strip's own weight")
        P = _gravity(case, add(D, own, symbol="D", label="with its own weight"), L, S)
        wide = given("B", piece.footing_width_in / 12, "ft", "width of its footing")
        q = divide(P, multiply(wide, long, symbol="A", unit="ft^2"), symbol="q", unit="psf", label="pressure under it")
    unknown = case.reading.house.survey.site.snow_psf.value is None
    reason = "the strip with all that the old lines carry beside it, no earthquake"
    link = checked(
        address, title, "line", case.id, level="allowable", unit="psf", demand=q, capacity=allowed, clause=_SOIL,
        reason=reason + ("; the roof snow is not known and none is counted" if unknown else ""),
    )  # fmt: skip
    return as_the_ground_allows(case.reading, link, "bearing", case.lateral, parts)


def _joists(case: LineCase, olds: Sequence[Old]) -> Link:
    """The joists as cantilevers from the new line out to the old wall, should nothing hold the old wall up."""
    address, title = f"line/{case.id}/old-beside/joists/both", "joists that hang out to the old wall"
    clause, beside = case.nds.cite("3.3, 4.3"), joists_beside(case)
    field = beside[1] if beside else None
    breadth, depth, apart = (
        (None, None, None) if field is None else (field.breadth_in.value, field.depth_in.value, field.spacing_in.value)
    )
    if field is None or breadth is None or depth is None or apart is None or not field.species.value:
        reason = "the joists' size, spacing or species is not known"
        return cannot(address, title, "line", case.id, clause=clause, reason=reason)
    ungraded = Mark("assumed range", f"joists: grade not known, the lowest is taken, {LOWEST_GRADE}")
    try:
        with section(address):
            out = given("a", max(old.apart_in for old in olds) / 12, "ft", "new line to the old wall")
            w = divide(
                _whole(case, olds), given("l", case.length_in / 12, "ft", "length of the strip"), symbol="w",
                unit="plf", label="load of the old line along it, all at the joists' ends",
            )  # fmt: skip
            each = multiply(w, given("s", apart / 12, "ft", "joist spacing"), symbol="P_1", unit="lb")
            moment = multiply(each, out, symbol="M", unit="lb-ft", label="one joist at the new line")
            b = given("b", breadth, "in", "breadth of a joist")
            d = given("d", depth, "in", "depth of a joist", (ungraded,))
            beam = case.nds.beam_values(field.species.value, LOWEST_GRADE, b, d, load=_LIVE)
            holds = convert(beam.moment, "lb-in", "lb-ft")
    except OutsideLimits as refused:
        return cannot(address, title, "line", case.id, clause=clause, reason=str(refused))
    reason = "each joist, run through over the new line, as a cantilever with all of the old line's load at its end"
    return checked(
        address, title, "line", case.id, level="allowable", unit="lb-ft", demand=moment, capacity=holds, clause=clause,
        reason=reason,
    )  # fmt: skip
