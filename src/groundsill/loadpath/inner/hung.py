"""Cross strips that hold a new strip down by hanging on it: they must bend, and pass their shear, as what hangs.

A strip that lifts takes along the cross strips cast with it. Each brings half of its own weight where it joins, if it
can: with all that stands on it, at strength level, it spans freely over its length (or hangs by its middle from one
joint, which bends it as much the other way); shear goes through the joint by the bars that turn the corner, over joints
not made rough. One that does not hold so is counted for nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from groundsill.forces.reading import line_ends
from groundsill.loadpath.case import LineCase, cannot, checked
from groundsill.loadpath.chain import Link
from groundsill.loadpath.footing_lift import own_weight
from groundsill.loadpath.footings import JOINED_IN, near, station_of
from groundsill.loadpath.inner.section import middle_of_bars
from groundsill.mechanics.beam_on_soil import PointLoad
from groundsill.standards.aci318_19.bars import area_of_bars
from groundsill.standards.aci318_19.one_way_shear import one_way_shear
from groundsill.standards.aci318_19.reinforced_bending import bending_strength
from groundsill.standards.aci318_19.shear_friction import shear_friction
from groundsill.work.inner import InnerFoundationPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import add, convert, divide, given, least, multiply
from groundsill.working.value import marks_of

__all__ = ["Hung", "hung_on"]

_BENDING, _SHEAR = "ACI 318-19 22.3", "ACI 318-19 22.5, 22.9"


@dataclass(frozen=True, slots=True)
class Hung:
    """A cross strip at a joint: what it holds down with where it can hang there (else nothing), and its links."""

    load: PointLoad | None
    links: tuple[Link, ...]


def hung_on(case: LineCase) -> tuple[Hung, ...]:
    """The cross strips cast together with a new strip, each checked as what hangs from it."""
    return tuple(
        _hung(case, id, case.reading.inner[id], station)
        for id in case.reading.inner
        if (station := _joint_of(case, id)) is not None
    )


def _joint_of(case: LineCase, id: str) -> float | None:
    """Where a cross strip joins, inches from this strip's start; None where it does not. At a corner both lines end."""
    if id == case.id or case.forces.lines[id].direction == case.force.direction:
        return None
    house = case.reading.house
    mine, other = line_ends(house, case.line), line_ends(house, house.survey.underfloor.lines[id])
    stations = [s for s, end in zip((0.0, case.length_in), mine, strict=True) if near(end, *other) <= JOINED_IN]
    stations += [station_of(end, *mine) for end in other if near(end, *mine) <= JOINED_IN]
    return stations[0] if stations else None


def _hung(case: LineCase, id: str, piece: InnerFoundationPiece, station: float) -> Hung:
    name, at = piece.mark or id, f"line/{case.id}/footing/hung-{id}"
    title = f"cross strip {name} as it hangs here"
    if not piece.hooked:
        reason = "its bars do not turn into this strip: its weight is not counted here"
        return Hung(None, (_not_counted(case, f"{at}/both", title, _BENDING, reason),))
    try:
        bends, shears, counted = _links(case, id, piece, at, title)
    except OutsideLimits as refused:
        reason = f"{refused}: its weight is not counted here"
        return Hung(None, (_not_counted(case, f"{at}/both", title, _BENDING, reason),))
    if bends.status == shears.status == "passes":
        return Hung(PointLoad(station, counted), (bends, shears))
    over = bends if bends.status != "passes" else shears
    what = "it would bend by" if over is bends else "its joint would pass"
    asked, held = (f"{value or 0.0:,.0f} {over.unit}" for value in (over.demand, over.capacity))
    reason = f"{what} {asked} and holds {held}: its weight is not counted here"
    return Hung(None, (_not_counted(case, over.address, over.title, over.clause, reason),))


def _not_counted(case: LineCase, address: str, title: str, clause: str, reason: str) -> Link:
    return cannot(address, title, "line", case.id, clause=clause, reason=reason, applies=False)


def _links(case: LineCase, id: str, piece: InnerFoundationPiece, at: str, title: str) -> tuple[Link, Link, float]:
    """Bending and shear of a cross strip as what hangs, and half of its own weight, lb."""
    with section(f"{at}/both"):
        whole, own, long = _on_it(case, id)
        PL = multiply(whole, convert(long, "ft", "in"), symbol="P L", unit="lb-in")
        M_u = divide(PL, 8.0, symbol="M_u", unit="lb-in", label="free over its length")
        held = least(*_moments(piece), symbol="phi M_n", label="the weaker of top and bottom")
    bends = checked(
        f"{at}/both", title, "line", case.id, level="strength", unit="lb-in", demand=M_u, capacity=held,
        clause=_BENDING, reason=f"free over {float(long):.1f} ft with all that stands on it, by its weaker bars",
    )  # fmt: skip
    with section(f"{at}-shear/both"):
        V_u = divide(whole, 2.0, symbol="V_u", unit="lb", label="half of it through the joint")
        holds = least(*_shears(piece), symbol="phi V_n", label="the lesser of its section and of the bars in the joint")
    shears = checked(
        f"{at}-shear/both", f"{title}, shear through the joint", "line", case.id, level="strength", unit="lb",
        demand=V_u, capacity=holds, clause=_SHEAR, reason="by its stem, or by the bars that turn the corner",
        working=(f"{at}/both",),
    )  # fmt: skip
    return bends, shears, float(own) / 2


def _on_it(case: LineCase, id: str) -> tuple[float, float, float]:
    """All that hangs with a cross strip at strength level, its own weight, lb, and its length, ft."""
    stem = case.reading.on_line(case.reading.house.survey.foundation.segments, id)[0]
    load, effects = case.forces.gravity.lines[id], case.forces.rules.effects
    long = given("L", (stem[1].to_in - stem[1].from_in) / 12, "ft", "length of the cross strip")
    own = multiply(own_weight(case, *stem), long, symbol="D_c", unit="lb", label="its own weight")
    on_it = given("D_w", max(float(load.dead), 0.0), "lb", "dead load on it", marks_of((load.dead,)))
    D = add(own, on_it, symbol="D", label="dead load that hangs")
    L = given("L_f", max(float(load.live), 0.0), "lb", "floor live load on it", marks_of((load.live,)))
    S = given("S", max(float(load.snow), 0.0), "lb", "roof snow on it", marks_of((load.snow,)))
    E_v = effects.vertical_effect(case.forces.S_DS, D)
    return effects.lrfd_down(D, L, S, E_v, 0.0), own, long


def _moments(piece: InnerFoundationPiece) -> Iterator[float]:
    """What its section holds sagging and hogging, lb-in.

    Raises:
        OutsideLimits: a section without bars at one face, or with too many.
    """
    for count, wide in ((piece.bars_bottom, piece.stem_width_in), (piece.bars_top, piece.footing_width_in)):
        if not count:
            raise OutsideLimits("it has bars at one face only")
        f_c = given("f'_c", piece.strength_psi, "psi", "specified strength")
        f_y = given("f_y", piece.yield_psi, "psi", "yield strength of the bars")
        b = given("b", wide, "in", "width of the pressed face")
        yield bending_strength(f_c, f_y, b, middle_of_bars(piece), area_of_bars(piece.bar, float(count))).design


def _shears(piece: InnerFoundationPiece) -> tuple[float, float]:
    """What its stem passes in shear, and what the bars through the joint pass, lb."""
    f_c = given("f'_c", piece.strength_psi, "psi", "specified strength")
    f_y = given("f_y", piece.yield_psi, "psi", "yield strength of the bars")
    b_w = given("b_w", piece.stem_width_in, "in", "width of the stem")
    d = middle_of_bars(piece)
    fewer = area_of_bars(piece.bar, float(min(piece.bars_top, piece.bars_bottom)))
    section_holds = one_way_shear(f_c, b_w, d, fewer, footing=True).design
    A_c = multiply(b_w, d, symbol="A_c", unit="in^2", label="concrete of the joint: the stem's")
    A_vf = area_of_bars(piece.bar, float(piece.bars_top + piece.bars_bottom))
    return section_holds, shear_friction(A_vf, f_y, A_c, f_c).design
