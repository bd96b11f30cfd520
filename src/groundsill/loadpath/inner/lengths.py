"""A strip poured in lengths: bars lapped at every joint, room for the laps in the open trench, shear through the joint.

Where a trench may be open over the whole strip it is poured in one and nothing here is asked. All bars are lapped at
one place: class B.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from groundsill.loadpath.case import LineCase, cannot, checked
from groundsill.loadpath.chain import Link
from groundsill.loadpath.inner.section import FRESH_BELOW, bar_place
from groundsill.loadpath.inner.worst import Worst
from groundsill.standards.aci318_19.bars import area_of_bars
from groundsill.standards.aci318_19.development import lap_splice
from groundsill.standards.aci318_19.shear_friction import shear_friction
from groundsill.work.inner import InnerFoundationPiece, in_lengths
from groundsill.working.sheet import section
from groundsill.working.steps import given, multiply
from groundsill.working.value import Mark

__all__ = ["length_links"]

_LAPS, _JOINT = "ACI 318-19 25.5.2", "ACI 318-19 22.9"


def length_links(case: LineCase, piece: InnerFoundationPiece, bent: Worst, marks: frozenset[Mark]) -> Iterator[Link]:
    """What the joints of a strip poured in lengths are asked; nothing of one poured in one."""
    if not in_lengths(piece):
        return
    assert piece.dig_length_in is not None
    yield from _laps(case, piece, piece.dig_length_in)
    if bent.every:
        yield _through(case, piece, bent, marks)


def _laps(case: LineCase, piece: InnerFoundationPiece, open_in: float) -> Iterator[Link]:
    """How far the bars must stick out of each length poured, and the room for that in the open trench."""
    address, title = f"line/{case.id}/footing/laps/both", "laps of the bars where lengths of the strip meet"
    upper = bool(piece.bars_top) and bar_place(piece, "top") == FRESH_BELOW
    place = FRESH_BELOW if upper else "other"
    with section(address):
        f_c = given("f'_c", piece.strength_psi, "psi", "specified strength")
        f_y = given("f_y", piece.yield_psi, "psi", "yield strength of the bars")
        asked = lap_splice(piece.bar, f_c, f_y, c_b=piece.cover_in, place=place)
        there = None if piece.lap_in is None else given("l_st", piece.lap_in, "in", "bars left sticking out, as drawn")
    words = f"{piece.bar}, class B, all lapped at one place{', the upper bars' if upper else ''}"
    if there is None:
        length = f"{ceil(float(asked))} in. are asked ({words})"
        reason = f"how far the bars stick out of each length poured is not drawn: {length}"
        yield cannot(address, title, "line", case.id, clause=_LAPS, reason=reason)
        return
    yield checked(
        address, title, "line", case.id, level="strength", unit="in", demand=asked, capacity=there, clause=_LAPS,
        reason=words, minimum=True,
    )  # fmt: skip
    room = f"line/{case.id}/footing/laps-room/both"
    with section(room):
        both = multiply(there, 2.0, symbol="l_2", unit="in", label="bars stick out at both ends of a first length")
        trench = given("l", open_in, "in", "longest trench open at once")
    yield checked(
        room, "room for the laps in the open trench", "line", case.id, level="strength", unit="in", demand=both,
        capacity=trench, clause="common practice, no source",
        reason=f"{max(open_in - 2 * (piece.lap_in or 0.0), 0.0):.0f} in. of it can be poured at once", minimum=True,
    )  # fmt: skip


def _through(case: LineCase, piece: InnerFoundationPiece, bent: Worst, marks: frozenset[Mark]) -> Link:
    """The greatest shear of the strip through a joint between lengths, not made rough, by the bars lapped there."""
    address, peak = f"line/{case.id}/footing/lengths-shear/both", bent.shear()
    with section(address):
        V_u = given("V_u", peak.value, "lb", f"statics: beam on soil, at {peak.station_in / 12:.1f} ft", marks)
        f_c = given("f'_c", piece.strength_psi, "psi", "specified strength")
        f_y = given("f_y", piece.yield_psi, "psi", "yield strength of the bars")
        A_c = given("A_c", piece.stem_width_in * (piece.above_soil_in + piece.depth_in), "in^2", "the stem's concrete")
        A_vf = area_of_bars(piece.bar, float(max(piece.bars_top + piece.bars_bottom, 1)))
        held = shear_friction(A_vf, f_y, A_c, f_c).design
    return checked(
        address, "shear through the joints between lengths", "line", case.id, level="strength", unit="lb", demand=V_u,
        capacity=held, clause=_JOINT, reason="by all bars lapped there, over concrete not made rough",
    )  # fmt: skip
