"""Pressure on the soil: under each line's footing, alone and with the earthquake along it, and under the pads of posts.

Gravity by ASCE 7 2.4.1, the earthquake by 2.4.5: combinations 8 and 9 press, and 10, with six tenths of the dead
load, tips; wind by 5, 6 and 7 of 2.4.1. What nobody knows makes a check impossible only where it could turn the answer.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from groundsill.forces.gravity import Load
from groundsill.forces.lines import DIRECTIONS
from groundsill.forces.reading import Reading, doubted
from groundsill.forces.seismic import Forces
from groundsill.forces.wind import Lateral
from groundsill.house.underfloor import Post
from groundsill.loadpath.case import cannot, checked
from groundsill.loadpath.chain import Chain, Link, ScopeKind, Stage
from groundsill.loadpath.footings import Body, Part, drop_ft, height_known, least_weight, most_weight
from groundsill.loadpath.ground import allowable_pressure, as_the_ground_allows, doubts_of_ground, no_bearing
from groundsill.loadpath.soil import line_force, resultant_ft, resultant_of
from groundsill.standards.asce7 import Effects
from groundsill.standards.statics.soil import contact_length, pressure_beyond_kern, pressure_in_kern
from groundsill.working.sheet import section
from groundsill.working.steps import add, divide, given, greatest, multiply, note, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["PADS", "Loads", "Pressed", "bearing_links", "loads_of", "pads_chain", "pressed_link"]

_CLAUSE = "IBC 2021 Table 1806.2"
PADS = "pads"  # the id of their chain
_LOST = 0.01  # part of all loads that may lie unplaced before bearing is said to be incomplete
_NOTHING = 1e-6
_NAMES: dict[Lateral, str] = {"earthquake": "the earthquake", "wind": "wind"}


@dataclass(frozen=True, slots=True)
class Loads:
    """Dead load at most and at least, live and snow load on one footing, lb; what of them is not known, in words.

    ``doubts`` are the marks of what says whether it is known.
    """

    most: float
    least: float
    live: float
    snow: float
    unknown: str
    doubts: frozenset[Mark]


@dataclass(frozen=True, slots=True)
class _Strip:
    """A footing strip, feet, and the force along it at allowable-stress level with its arm above the bottom, ft.

    ``E_8`` stands beside dead load alone, ``E_9`` beside live and snow load too; ``measured`` are the marks of its
    width, ``lateral`` says what force it is.
    """

    long: float
    wide: float
    measured: frozenset[Mark]
    E_8: float
    E_9: float
    arm: float
    lateral: Lateral = "earthquake"


@dataclass(frozen=True, slots=True)
class Pressed:
    """The greatest pressure and the combination it belongs to; None when the footing turns over.

    ``marks`` are those of every combination, since each of them might have governed.
    """

    psf: float | None
    words: str
    marks: frozenset[Mark]


def bearing_links(reading: Reading, forces: Forces, body: Body, lateral: Lateral = "earthquake") -> list[Link]:
    """Pressure under each line's footing of a body, with the earthquake along the line or with wind."""
    links = []
    lines = reading.house.survey.underfloor.lines
    for id, parts in body.lines().items():
        address, title = f"body/{body.id}/bearing/{id}/both", f"bearing under line {lines[id].mark}"
        doubts = frozenset[Mark]()
        if id in reading.inner:
            links.append(_as_a_beam(address, title, id))
            continue
        if any(p.segment.footing_width_in.value is None for p in parts):
            reason = "the width of the footing is not known"
        elif reason := no_bearing(reading, parts):
            with section(address):
                doubts = doubts_of_ground(reading, "bearing")
        else:
            link = _line_link(reading, forces, address, title, id, parts, lateral)
            links.append(as_the_ground_allows(reading, link, "bearing", lateral, parts))
            continue
        links.append(cannot(address, title, "line", id, clause="IBC 2021 1806.2", reason=reason, marks=doubts))
    return links


def _as_a_beam(address: str, title: str, id: str) -> Link:
    reason = f"a new strip is worked out as a beam on its soil, with its line: line/{id}/footing/pressure/both"
    return cannot(address, title, "line", id, clause=_CLAUSE, reason=reason, applies=False)


def _line_link(
    reading: Reading, forces: Forces, address: str, title: str, id: str, parts: Sequence[Part], lateral: Lateral
) -> Link:
    """One line's footing, with the least and the most that nobody measured where that is asked for."""
    line = forces.lines[id]
    long = sum(p.length_ft for p in parts)
    part = min(long / line.length_ft, 1.0)
    wide = min(p.segment.footing_width_in.value or 0.0 for p in parts) / 12
    measured = frozenset[Mark]().union(*(p.marked(reading, "footing_width_in") for p in parts))
    known = all(height_known(p.segment) for p in parts)
    load = forces.gravity.lines[id]
    with section(address):
        allowed = allowable_pressure(reading)
        assert allowed is not None
        loads = loads_of(reading, forces, load, part, f"line {line.mark}", parts)
        E_8, E_9 = _along(forces, id, part, lateral)
        up = resultant_ft(forces, id) if lateral == "earthquake" else _wind_up(forces, id)
        most, seen = (drop_ft(reading, parts, deepest=deepest) for deepest in (True, False))
        arm = doubted(float(up) + float(most), marks_of((up, most)), unit="ft", symbol="h")
        strip = _Strip(long, wide, measured, E_8, E_9, arm, lateral)
        found = _worst(forces, loads, strip)
        if not known and _too_much(found, allowed):
            note("with a footing no deeper than what was seen:")
            arm = doubted(float(up) + float(seen), marks_of((up, seen)), unit="ft", symbol="h")
            shallow = _worst(forces, replace(loads, most=loads.least), replace(strip, arm=arm))
            shallow = replace(shallow, marks=shallow.marks | found.marks)
            if not _too_much(shallow, allowed):
                reason = "how high and deep the foundation is is not known, and it matters for its weight and its arm"
                doubts = shallow.marks | marks_of((allowed,))
                return cannot(address, title, "line", id, clause=_CLAUSE, reason=reason, marks=doubts)
            found = shallow
    return pressed_link(address, title, "line", id, found, allowed, loads)


def _along(forces: Forces, id: str, part: float, lateral: Lateral) -> tuple[float, float]:
    """The force along a line's footing beside dead load alone, and beside live and snow too, allowable-stress level."""
    line, effects = forces.lines[id], forces.rules.effects
    whole = line_force(forces, id, lateral)
    if lateral == "wind":
        label = f"wind on line {line.mark} on this footing, strength level"
        W = given("W", float(whole) * part, "lb", label, marks_of((whole,)))
        return effects.asd_wind(W), effects.asd_wind_with_live(W)
    label = f"force of line {line.mark} on this footing, strength level"
    Q_E = given("Q_E", float(whole) * part, "lb", label, marks_of((whole,)))
    E_h = effects.horizontal_effect(forces.rho, Q_E)
    f_OT = effects.overturning_factor(True)
    return (
        scale(effects.asd_earthquake(E_h), f_OT, symbol="V'_8", label="overturning at the soil"),
        scale(effects.asd_earthquake_with_live(E_h), f_OT, symbol="V'_9", label="overturning at the soil"),
    )


def _wind_up(forces: Forces, id: str) -> float:
    """Height above the base at which wind on a line acts, ft: of its own direction, or the higher for a skewed line."""
    direction = forces.lines[id].direction
    every = [resultant_of(forces, d, "wind") for d in DIRECTIONS if direction in (d, None)]
    return max(every, key=float)


def loads_of(reading: Reading, forces: Forces, load: Load, part: float, name: str, parts: Sequence[Part] = ()) -> Loads:
    """What presses on a footing, its own weight at most and at least in it."""
    line = _part(load.dead, part, "D_l", f"dead load on {name} from the gravity take-down")
    most = least = line
    if parts:
        label = "the foundation's own weight"
        most = add(line, most_weight(reading, parts, label), symbol="D", label="dead load, at most")
        own = least_weight(reading, parts, label)
        least = line if own is None else add(line, own, symbol="D_0", label="dead load, at least")
    live = _part(load.live, part, "L", f"floor live load on {name}")
    snow = _part(load.snow, part, "S", f"roof snow on {name}")
    unknown = []
    if reading.house.survey.site.snow_psf.value is None and load.roof_ft2 > 0.5:
        unknown.append(f"the roof snow on {load.roof_ft2 * part:.0f} sq ft of roof that it carries is not known")
    left, whole = forces.gravity.unplaced, sum(float(i.weight_lb) for i in forces.items)
    lost = sum(float(lb) for lb in (left.dead, left.live, left.snow))
    doubts = marks_of((left.dead, left.live, left.snow)) if lost > _NOTHING * whole else frozenset[Mark]()
    if lost > _LOST * whole:
        unknown.append("part of the house's load reached no support in the take-down, and may stand here")
    return Loads(most, least, live, snow, "; ".join(unknown), doubts)


def _part(load: float, part: float, symbol: str, label: str) -> float:
    """A part of a load of the take-down, which pulls nothing up, recorded with its marks."""
    return given(symbol, max(float(load) * part, 0.0), "lb", label, marks_of((load,)))


def _gravity(effects: Effects, loads: Loads) -> float:
    """The greatest load of ASCE 7 2.4.1: dead with live, with snow, or with three quarters of both."""
    return greatest(
        effects.asd_live(loads.most, loads.live),
        effects.asd_snow(loads.most, loads.snow),
        effects.asd_live_and_snow(loads.most, loads.live, loads.snow),
        symbol="P",
        label="gravity load",
    )


def _worst(forces: Forces, loads: Loads, strip: _Strip) -> Pressed:
    """The worst pressure under a strip over all combinations."""
    label = f"{strip.long:.1f} ft of footing, {12 * strip.wide:.1f} in. wide"
    area = given("A", strip.long * strip.wide, "ft^2", label, strip.measured)
    effects = forces.rules.effects
    still = divide(_gravity(effects, loads), area, symbol="q", unit="psf", label="pressure under gravity")
    worst = Pressed(still, "gravity governs", marks_of((still, strip.E_8)))
    if float(strip.E_8) <= 0:
        return worst
    arm = given("h", strip.arm, "ft", "forces' resultant above the footing's bottom", marks_of((strip.arm,)))
    for name, P, V in _combinations(forces, loads, strip):
        M = multiply(V, arm, symbol="M", unit="lb-ft", label=f"overturning at the soil, {name}")
        doubts = worst.marks | marks_of((P, M))
        turned = f"{name}: the {strip.long:.1f} ft of footing turn over"
        if P <= 0:
            return Pressed(None, f"{turned}, nothing holds it down", doubts)
        e = divide(M, P, symbol="e", unit="ft", label=f"from the middle of the footing, {name}")
        if e >= strip.long / 2:
            return Pressed(None, f"{turned}, the resultant stands {float(e):.1f} ft from its middle", doubts)
        q = _under(P, e, strip)
        governs = worst.psf is None or float(q) > float(worst.psf)
        words = f"with {_NAMES[strip.lateral]} along the line, {name}" if governs else worst.words
        worst = Pressed(q if governs else worst.psf, words, doubts)
    return worst


def _under(P: float, e: float, strip: _Strip) -> float:
    """The greatest pressure under a strip whose load stands ``e`` off its middle: in the kern, or in a triangle."""
    B = given("B", strip.wide, "ft", "width of the footing", strip.measured)
    L = given("L", strip.long, "ft", "length of the footing")
    if 6 * float(e) <= strip.long:
        return pressure_in_kern(P, B, L, e)
    return pressure_beyond_kern(P, B, contact_length(L, e))


def _combinations(forces: Forces, loads: Loads, strip: _Strip) -> tuple[tuple[str, float, float], ...]:
    """The combinations that press and tip a strip: name, load down on it, force along it."""
    effects = forces.rules.effects
    if strip.lateral == "wind":
        holding = scale(
            loads.least, effects.asd_dead_factor_7(), symbol="0.6 D", label="dead load that surely stands there"
        )
        return (
            ("combination 5", loads.most, strip.E_8),
            ("combination 6", effects.asd_live_and_snow(loads.most, loads.live, loads.snow), strip.E_9),
            ("combination 7", holding, strip.E_8),
        )
    E_v = effects.vertical_effect(forces.S_DS, loads.most)
    E_v_least = effects.vertical_effect(forces.S_DS, loads.least)
    return (
        ("combination 8", effects.asd_down(loads.most, E_v, 0.0), strip.E_8),
        ("combination 9", effects.asd_down_with_live(loads.most, loads.live, loads.snow, E_v, 0.0), strip.E_9),
        ("combination 10", effects.asd_up(loads.least, E_v_least, 0.0), strip.E_8),
    )


def _too_much(found: Pressed, allowed: float) -> bool:
    return found.psf is None or float(found.psf) > float(allowed)


def pressed_link(
    address: str, title: str, scope: ScopeKind, id: str, found: Pressed, allowed: float, loads: Loads
) -> Link:
    """The link: what fails fails whatever is unknown; what would pass cannot be checked while load is unknown."""
    doubts = found.marks | loads.doubts
    if loads.unknown and not _too_much(found, allowed):
        doubts |= marks_of((allowed,))
        return cannot(address, title, scope, id, clause=_CLAUSE, reason=loads.unknown, marks=doubts)
    link = checked(
        address,
        title,
        scope,
        id,
        level="allowable",
        unit="psf",
        demand=found.psf,
        capacity=allowed,
        clause=_CLAUSE,
        reason=found.words,
        marks=doubts,
    )
    if found.psf is not None:
        return link
    return replace(link, status="fails", verdict="fails")  # it turns over: no pressure to divide by


# ---- Pads -----------------------------------------------------------------------------------------------------------


def pads_chain(reading: Reading, forces: Forces) -> Chain:
    """Bearing under the pads of posts, a chain of their own."""
    posts = reading.in_order(reading.house.survey.underfloor.posts)
    links = tuple(_pad_link(reading, forces, id, post) for id, post in posts)
    stage = Stage("bearing", "Bearing on the soil, pad by pad", "every link must pass", links)
    return Chain(PADS, "Pads", "posts and pads", "body", "both", True, "", 0.0, (stage,))


def _pad_link(reading: Reading, forces: Forces, id: str, post: Post) -> Link:
    address, mark = f"body/pads/bearing/{id}/both", post.mark or id
    title = f"bearing under post {mark}" if post.pad == "none" else f"bearing under the pad of post {mark}"
    load = forces.gravity.posts[id]
    path, side, name = (
        (f"survey.underfloor.posts.{id}.size_in", post.size_in, "foot of the post, which stands on no pad")
        if post.pad == "none"
        else (f"survey.underfloor.posts.{id}.pad_side_in", post.pad_side_in, f"pad ({post.pad})")
    )
    if float(load.dead) + float(load.live) + float(load.snow) <= 0:
        reason = "the survey brings no load to it" + ("" if post.girder else ": no girder is named that it holds up")
        return cannot(address, title, "body", id, clause=_CLAUSE, reason=reason, applies=post.girder is None)
    reason = f"the side of the {name} is not known" if side.value is None else no_bearing(reading)
    if reason or side.value is None:
        known = frozenset[Mark]() if side.value is None else doubts_of_ground(reading, "bearing")
        return cannot(address, title, "body", id, clause="IBC 2021 1806.2", reason=reason, marks=known)
    with section(address):
        allowed = allowable_pressure(reading)
        assert allowed is not None
        loads = loads_of(reading, forces, load, 1.0, f"post {mark}")
        reading.number(path, side, "b", "in", f"side of the {name}")
        area = given("A", side.value**2 / 144, "ft^2", f"{side.value:g} in. square: {name}", reading.marked(path))
        effects = forces.rules.effects
        E_v = effects.vertical_effect(forces.S_DS, loads.most)
        P = greatest(
            _gravity(effects, loads),
            effects.asd_down(loads.most, E_v, 0.0),
            effects.asd_down_with_live(loads.most, loads.live, loads.snow, E_v, 0.0),
            symbol="P",
            label="with the vertical effect of the earthquake",
        )
        q = divide(P, area, symbol="q", unit="psf", label="pressure under the post")
    pressed = Pressed(q, "without the pad's own weight", marks_of((q,)))
    link = pressed_link(address, title, "body", id, pressed, allowed, loads)
    return as_the_ground_allows(reading, link, "bearing", "earthquake")
