"""The new strip as a beam on soil that pushes and never pulls, pressed and pulled by the wall that stands on it.

What bends it: at each braced part of its wall a couple, down under the pressed post and up where a hold-down pulls; and
the couple of the force between the sill and the friction under the footing, spread along it. Either way of the push;
the soft and the stiff end of the soil's spring, the whole section on soft soil and the cracked one on stiff; with most
and with least that stands on it. Each answer is the worst of these.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from math import ceil
from typing import Final

from groundsill.loadpath.case import LineCase, cannot, checked
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.footing_lift import own_weight
from groundsill.loadpath.footings import parts_on
from groundsill.loadpath.ground import SOIL, allowable_pressure, as_the_ground_allows, no_bearing, soil_class
from groundsill.loadpath.held_ends import hold_downs_at
from groundsill.loadpath.hold_downs import why_not_counted
from groundsill.loadpath.inner.expansive import expansive_links
from groundsill.loadpath.inner.hung import hung_on
from groundsill.loadpath.inner.lengths import length_links
from groundsill.loadpath.inner.section import section_links
from groundsill.loadpath.inner.worst import Bent, Worst
from groundsill.loadpath.storeys_over import over_line
from groundsill.loadpath.turning import WAYS, Way, turning_of
from groundsill.mechanics.beam_on_soil import Beam, Couple, Loads, Piece, PointLoad, settle
from groundsill.standards.aci318_19.stiffness import concrete_modulus, cracked_inertia
from groundsill.standards.common_practice import table_subgrade
from groundsill.work.inner import InnerFoundationPiece, below_wall_in
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import add, divide, given, greatest, multiply
from groundsill.working.value import Mark, marks_of

__all__ = ["EARTHQUAKE_ALONE", "strip_stage"]

EARTHQUAKE_ALONE: Final = "the footing of a new foundation is worked out for the earthquake alone"

_SUBGRADE = {"1": "rock", "2": "rock", "3": "gravel", "4": "sand", "5": "clay"}
_CLAUSE = "IBC 2021 Table 1806.2, statics of a beam on soil"
_APART_IN = 6.0  # of the couples that stand for one spread evenly
_settled = lru_cache(maxsize=1024)(settle)


@dataclass(frozen=True, slots=True)
class _Ground:
    """Stiffness of the section, lb-in2, and spring of the soil along it, lb/in per in., at one end of both."""

    stiffness: float
    spring: float


@dataclass(frozen=True, slots=True)
class _Push:
    """One combination: name, load along the strip in plf, its factor on dead load, the line's force with it in lb."""

    name: str
    along: float
    dead: float
    force: float


def strip_stage(case: LineCase) -> Stage:
    """The strip on its soil, then its concrete and bars."""
    piece = case.inner
    assert piece is not None
    links = (*_links(case, piece), *expansive_links(case, piece))
    return Stage("footing", "The new footing on its soil, and its bars", "every link must pass", links)


def _links(case: LineCase, piece: InnerFoundationPiece) -> tuple[Link, ...]:
    address, title = f"line/{case.id}/footing/pressure/both", "soil under the footing as a beam"
    if case.lateral == "wind":
        clause = "ASCE 7 2.3.1, 2.4.1"
        return (cannot(address, title, "line", case.id, clause=clause, reason=EARTHQUAKE_ALONE),)
    soil = soil_class(case.reading)
    reason = no_bearing(case.reading, parts_on(case.reading, case.id))
    if soil is None or reason:
        reason = reason or "the kind of soil is not known: a report must say how far it yields"
        return (cannot(address, title, "line", case.id, clause=_CLAUSE, reason=reason),)
    if not case.counted():
        reason = "nothing braces the wall that stands on it"
        return (cannot(address, title, "line", case.id, clause=_CLAUSE, reason=reason),)
    hung = hung_on(case)
    joined = tuple(each.load for each in hung if each.load is not None)
    with section(address):
        ground = _ground(case, piece, _SUBGRADE[soil])
        allowable, strength, marks = _pushes(case, piece)
        pressed = _worst(case, piece, ground, allowable, joined)
        pressure = _pressure(case, piece, pressed, marks, (address, title, bool(joined)))
    pressure = as_the_ground_allows(case.reading, pressure, "bearing", case.lateral, parts_on(case.reading, case.id))
    bent = _worst(case, piece, ground, strength, joined)
    poured = length_links(case, piece, bent, marks)
    return (
        pressure,
        *section_links(case, piece, bent, marks),
        *poured,
        *(link for each in hung for link in each.links),
    )


def _ground(case: LineCase, piece: InnerFoundationPiece, soil: str) -> tuple[_Ground, _Ground]:
    """Soft soil under the whole section, stiff soil under the cracked one: between them lies what there will be."""
    f_c = given("f'_c", piece.strength_psi, "psi", "specified strength of the new concrete")
    E_c = concrete_modulus(f_c)
    I_g = given("I_g", inertia_in4(piece), "in^4", "stem and footing together, about their common middle")
    I_cr = cracked_inertia(I_g)
    table = table_subgrade()
    wide = given("B", piece.footing_width_in, "in", "width of the footing")
    found = []
    for end, inertia in (("soft", I_g), ("stiff", I_cr)):
        EI = multiply(E_c, inertia, symbol="E I", unit="lb-in^2", label=f"{end} soil")
        k = multiply(table.read(soil, end), wide, symbol="k", unit="psi", label=f"{soil}, {end} end: spring along it")
        found.append(_Ground(float(EI), float(k)))
    return found[0], found[1]


def inertia_in4(piece: InnerFoundationPiece) -> float:
    """Moment of inertia of the stem on its footing about their common middle, in4."""
    t, B, b = piece.footing_thickness_in, piece.footing_width_in, piece.stem_width_in
    up = max(piece.above_soil_in + piece.depth_in - t, 0.0)
    areas = ((B * t, t / 2, B * t**3 / 12), (b * up, t + up / 2, b * up**3 / 12))
    middle = sum(a * y for a, y, _ in areas) / sum(a for a, _, _ in areas)
    return sum(i + a * (y - middle) ** 2 for a, y, i in areas)


def _pushes(
    case: LineCase, piece: InnerFoundationPiece
) -> tuple[tuple[_Push, ...], tuple[_Push, ...], frozenset[Mark]]:
    """The combinations at allowable-stress and at strength level, and the marks of their loads."""
    effects, load = case.forces.rules.effects, case.forces.gravity.lines[case.id]
    long = given("l", case.length_in / 12, "ft", "length of the strip")
    stem = case.reading.on_line(case.reading.house.survey.foundation.segments, case.id)[0]
    weighs = own_weight(case, *stem)
    own = multiply(weighs, long, symbol="D_c", unit="lb", label="the strip and the soil on it")
    soil = case.reading.noted("the kind of soil", SOIL)
    marks = marks_of((load.dead, load.live, load.snow, case.strength)) | soil
    on_it = given("D_w", max(float(load.dead), 0.0), "lb", "dead load that its wall brings", marks_of((load.dead,)))
    D = add(own, on_it, symbol="D", label="dead load on the soil")
    L = given("L", max(float(load.live), 0.0), "lb", "floor live load on it", marks_of((load.live,)))
    S = given("S", max(float(load.snow), 0.0), "lb", "roof snow on it", marks_of((load.snow,)))
    E_v = effects.vertical_effect(case.forces.S_DS, D)
    E_h = effects.horizontal_effect(case.forces.rho, case.strength)

    def push(name: str, pounds: float, dead: float, force: float) -> _Push:
        along = divide(pounds, long, symbol="w", unit="plf", label=f"down along it, {name}")
        return _Push(name, float(along), float(dead), float(force))

    V, V_9 = effects.asd_earthquake(E_h), effects.asd_earthquake_with_live(E_h)
    S_DS = case.forces.S_DS
    still = greatest(
        effects.asd_live(D, L),
        effects.asd_snow(D, S),
        effects.asd_live_and_snow(D, L, S),
        symbol="P",
        label="gravity load",
    )
    allowable = (
        push("gravity alone", still, 1.0, 0.0),
        push("combination 8", effects.asd_down(D, E_v, 0.0), effects.asd_dead_factor_8(S_DS), V),
        push("combination 9", effects.asd_down_with_live(D, L, S, E_v, 0.0), effects.asd_dead_factor_9(S_DS), V_9),
        push("combination 10", effects.asd_up(D, E_v, 0.0), effects.asd_dead_factor_10(S_DS), V),
    )
    strength = (
        push("combination 6", effects.lrfd_down(D, L, S, E_v, 0.0), effects.lrfd_dead_factor_6(S_DS), E_h),
        push("combination 7", effects.lrfd_up(D, E_v, 0.0), effects.lrfd_dead_factor_7(S_DS), E_h),
    )
    return allowable, strength, marks


# ---- The beam -------------------------------------------------------------------------------------------------------


def _worst(
    case: LineCase, piece: InnerFoundationPiece, ground: Sequence[_Ground], pushes: Sequence[_Push],
    joined: tuple[PointLoad, ...],
) -> Worst:  # fmt: skip
    """The worst of every combination, push and ground; in words where some of them turn the strip over.

    ``joined`` is what cross strips cast together with it hold it down with.
    """
    found: list[Bent] = []
    for way in WAYS:
        shape = tuple(_couples(case, way))
        for push in pushes:
            loads = _loads(case, piece, (shape, joined), push, way)
            for side in ground:
                beam = Beam((Piece(case.length_in, side.stiffness, side.spring, push.along / 12),))
                try:
                    found.append(Bent(push.name, way, _settled(beam, loads)))
                except OutsideLimits as turned:
                    return Worst((), f"{push.name}, pushed toward {_toward(way)}: {turned}")
    return Worst(tuple(found))


def _toward(way: Way) -> str:
    return "its end" if way == "+" else "its start"


_Shape = tuple[tuple[float, float, float], ...]


def _couples(case: LineCase, way: Way) -> Iterator[tuple[float, float, float]]:
    """Each braced part pushed one way: where it presses and where it pulls, and with what for a pound of line force."""
    over = over_line(case)
    for brace in case.counted():
        held = [p for p in hold_downs_at(case, brace, way) if why_not_counted(case, p) is None]
        with quiet():
            turned = turning_of(case, brace, held, way, "")
        arm = float(turned.h) + float(over.bounds(brace)[-1].arm_ft)
        sign = 1.0 if way == "+" else -1.0
        presses = (brace.to_in if way == "+" else brace.from_in) - sign * 12 * float(turned.e_c)
        yield presses, presses - sign * 12 * float(turned.d), brace.share * arm / float(turned.d)


def _loads(
    case: LineCase, piece: InnerFoundationPiece, held: tuple[_Shape, tuple[PointLoad, ...]], push: _Push, way: Way
) -> Loads:
    shape, joined = held
    points = [PointLoad(p.station_in, p.force_lb * push.dead) for p in joined]
    for presses, pulls, each in shape:
        force = each * push.force
        points += [PointLoad(presses, force), PointLoad(pulls, -force)]
    count = ceil(case.length_in / _APART_IN)
    sign = 1.0 if way == "+" else -1.0
    each_couple = sign * push.force * below_wall_in(piece) / count
    couples = tuple(Couple((n + 0.5) * case.length_in / count, each_couple) for n in range(count))
    return Loads(tuple(points), couples)


# ---- What it presses with -------------------------------------------------------------------------------------------


def _pressure(
    case: LineCase, piece: InnerFoundationPiece, worst: Worst, marks: frozenset[Mark], named: tuple[str, str, bool]
) -> Link:
    address, title, held = named
    allowed = allowable_pressure(case.reading)
    assert allowed is not None  # asked before
    if not worst.every:
        turned = checked(
            address, title, "line", case.id, level="allowable", unit="psf", demand=None, capacity=allowed,
            clause=_CLAUSE, reason=worst.turned, marks=marks,
        )  # fmt: skip
        return replace(turned, status="fails", verdict="fails")  # it turns over: no pressure to divide by
    most = max(worst.every, key=lambda b: b.settled.push.value)
    words = f"statics: soil that only pushes, {most.name}, pushed toward {_toward(most.way)}"
    q = given("q", 144 * most.settled.push.value / piece.footing_width_in, "psf", words, marks)
    lifted = max(b.settled.lifted_in for b in worst.every)
    told = f"{words}; {lifted / 12:.1f} ft of its {case.length_in / 12:.1f} ft lift where hold-downs pull"
    if held:
        told += "; cross strips cast with it hold it down with half their weight where they join"
    return checked(
        address, title, "line", case.id, level="allowable", unit="psf", demand=q, capacity=allowed, clause=_CLAUSE,
        reason=told,
    )  # fmt: skip
