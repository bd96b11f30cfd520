"""The new strip as reinforced concrete: bending both ways, shear, least bars, their ends, their cover, its least sizes.

The section that bends is stem and footing cast together: bars near the bottom of the footing hold where it sags, bars
near the top of the stem where it hogs. In shear the width is the stem's.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Final

from groundsill.loadpath.case import LineCase, cannot, checked
from groundsill.loadpath.chain import Link, LoadLevel
from groundsill.loadpath.inner.worst import Worst
from groundsill.mechanics.beam_on_soil import Peak
from groundsill.standards.aci318_19.bars import area_of_bars, bar_diameter, clear_spacing, cover
from groundsill.standards.aci318_19.development import development_length, hooked_length
from groundsill.standards.aci318_19.one_way_shear import one_way_shear
from groundsill.standards.aci318_19.plain_concrete import plain_flexure
from groundsill.standards.aci318_19.reinforced_bending import bending_strength, least_steel
from groundsill.standards.aci318_19.shear_friction import shear_friction
from groundsill.standards.ibc_2021.concrete import table_1808_8_1
from groundsill.standards.ibc_2021.footings import table_1809_4
from groundsill.work.inner import InnerFoundationPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, subtract
from groundsill.working.value import Mark

__all__ = ["FRESH_BELOW", "bar_place", "middle_of_bars", "section_links"]

_STONE_IN = 0.75  # the largest stone of the mix that fits such a footing; common practice, no source
_DEEP_POUR_IN = 12.0
FRESH_BELOW: Final = "over 12 in. of fresh concrete"
_NO_MOMENT = 1.0  # lb-in: less is the rounding of nothing
_FACES = (("sagging", "bottom"), ("hogging", "top"))


def section_links(case: LineCase, piece: InnerFoundationPiece, bent: Worst, marks: frozenset[Mark]) -> tuple[Link, ...]:
    """Every check of the strip's concrete and bars; ``bent`` is the strip at strength level."""
    links = [*_sizes(case, piece)]
    if bent.every:
        peaks = {"sagging": bent.sagging(), "hogging": bent.hogging()}
        for which, face in _FACES:
            links += _bending(case, piece, which, face, peaks[which], marks)
            if _count(piece, face):
                links += (_developed(case, piece, which, face, bent), _fit(case, piece, face))
        links.append(_shear(case, piece, bent.shear(), marks))
    else:
        address = f"line/{case.id}/footing/bending/both"
        links.append(
            cannot(address, "bending and shear of the footing", "line", case.id, clause="ACI 318-19 13.2.7",
                   reason=f"it does not rest on its soil: {bent.turned}")
        )  # fmt: skip
    return (*links, _joint(case, piece))


def _told(
    case: LineCase, key: str, title: str, demand: float, capacity: float, unit: str, clause: str, reason: str = "",
    level: LoadLevel = "strength", minimum: bool = False,
) -> Link:  # fmt: skip
    return checked(
        f"line/{case.id}/footing/{key}/both", title, "line", case.id, level=level, unit=unit, demand=demand,
        capacity=capacity, clause=clause, reason=reason, minimum=minimum,
    )  # fmt: skip


# ---- Bending, shear, ends -------------------------------------------------------------------------------------------


def _count(piece: InnerFoundationPiece, face: str) -> int:
    return piece.bars_bottom if face == "bottom" else piece.bars_top


def middle_of_bars(piece: InnerFoundationPiece) -> float:
    """From the pressed face to the middle of the bars, recorded."""
    whole = given("h", piece.above_soil_in + piece.depth_in, "in", "stem and footing, top to bottom")
    off = given("c", piece.cover_in + float(bar_diameter(piece.bar)) / 2, "in", "cover and half a bar")
    return subtract(whole, off, symbol="d", label="to the middle of the bars")


def _bending(
    case: LineCase, piece: InnerFoundationPiece, which: str, face: str, peak: Peak, marks: frozenset[Mark]
) -> Iterator[Link]:
    """Moment and least bars, for the bars of one face."""
    told = partial(_told, case)
    count, title = _count(piece, face), f"{which} of the footing, bars at its {face}"
    at = f"at {peak.station_in / 12:.1f} ft, the worst of soft and stiff soil and of both ways"
    with section(f"line/{case.id}/footing/{which}/both"):
        most = peak.value if peak.value >= _NO_MOMENT else 0.0
        M_u = given("M_u", most, "lb-in", f"statics: beam on soil, {at}", marks)
        if not count:
            yield told(which, title, M_u, 0.0, "lb-in", "ACI 318-19 13.2.7", f"no bar lies at its {face}")
            return
        f_c = given("f'_c", piece.strength_psi, "psi", "specified strength")
        f_y = given("f_y", piece.yield_psi, "psi", "yield strength of the bars")
        wide = piece.stem_width_in if face == "bottom" else piece.footing_width_in
        b = given("b", wide, "in", "width of the pressed face")
        b_w = given("b_w", piece.stem_width_in, "in", "width of the stem")
        d, A_s = middle_of_bars(piece), area_of_bars(piece.bar, float(count))
        try:
            held = bending_strength(f_c, f_y, b, d, A_s).design
            asked = least_steel(f_c, f_y, b_w, d, M_u)
        except OutsideLimits as outside:
            yield cannot(
                f"line/{case.id}/footing/{which}/both", title, "line", case.id, clause="ACI 318-19 22.3",
                reason=str(outside),
            )  # fmt: skip
            return
    yield told(which, title, M_u, held, "lb-in", "ACI 318-19 22.3", f"{count} {piece.bar}; {at}")
    yield told(
        f"{which}-least", f"least bars at its {face}", asked.needed, A_s, "in^2", "ACI 318-19 9.6.1",
        f"by {asked.rule}", minimum=True,
    )  # fmt: skip


def _developed(case: LineCase, piece: InnerFoundationPiece, which: str, face: str, bent: Worst) -> Link:
    """Near its ends, where bars do not hold in full yet, the plain section must carry what bends it there."""
    key = f"{which}-ends"
    with section(f"line/{case.id}/footing/{key}/both"):
        f_c = given("f'_c", piece.strength_psi, "psi", "specified strength")
        f_y = given("f_y", piece.yield_psi, "psi", "yield strength of the bars")
        whole = piece.above_soil_in + piece.depth_in
        place = bar_place(piece, face)
        needed = (
            hooked_length(piece.bar, f_c, f_y)
            if piece.hooked
            else development_length(piece.bar, f_c, f_y, c_b=piece.cover_in, place=place)
        )
        reach = float(needed) + piece.cover_in
        label = f"statics: greatest within {reach:.0f} in. of the ends, where the bars do not hold in full yet"
        M_u = given("M_u", bent.near_ends(case.length_in, reach, sagging=which == "sagging"), "lb-in", label)
        b_w = given("b_w", piece.stem_width_in, "in", "width of the stem")
        h = given("h", whole, "in", "stem and footing, top to bottom")
        held = plain_flexure(f_c, b_w, h, cast_on_soil=True).design
    how = "hooks" if piece.hooked else "straight ends"
    title = f"{which} near the ends, the bars' {how} left out"
    clause = f"ACI 318-19 {'25.4.3' if piece.hooked else '25.4.2'}, 14.5.2"
    return _told(case, key, title, M_u, held, "lb-in", clause, f"{float(needed):.0f} in. to hold a bar in full")


def bar_place(piece: InnerFoundationPiece, face: str) -> str:
    """The row of the factor for level bars over fresh concrete."""
    below = piece.above_soil_in + piece.depth_in - piece.cover_in
    return FRESH_BELOW if face == "top" and below > _DEEP_POUR_IN else "other"


def _fit(case: LineCase, piece: InnerFoundationPiece, face: str) -> Link:
    """Bars side by side with concrete between them."""
    count, wide = _count(piece, face), piece.footing_width_in if face == "bottom" else piece.stem_width_in
    with section(f"line/{case.id}/footing/{face}-clear/both"):
        d_b = bar_diameter(piece.bar)
        stone = given("d_agg", _STONE_IN, "in", "largest stone, common practice, no source")
        asked = clear_spacing(d_b, stone)
        room = wide - 2 * piece.cover_in - count * float(d_b)
        clear = room / (count - 1) if count > 1 else room
        there = given("s", max(clear, 0.0), "in", f"clear between {count} bars in {wide:g} in.")
    title = f"room between the bars at its {face}"
    return _told(case, f"{face}-clear", title, asked, there, "in", "ACI 318-19 25.2.1", minimum=True)


def _shear(case: LineCase, piece: InnerFoundationPiece, peak: Peak, marks: frozenset[Mark]) -> Link:
    count = min(piece.bars_top, piece.bars_bottom)
    told = partial(_told, case, "shear", "shear of the footing")
    with section(f"line/{case.id}/footing/shear/both"):
        V_u = given("V_u", peak.value, "lb", f"statics: beam on soil, at {peak.station_in / 12:.1f} ft", marks)
        if not count:
            return told(V_u, 0.0, "lb", "ACI 318-19 22.5", "bars on one face only")
        f_c = given("f'_c", piece.strength_psi, "psi", "specified strength")
        b_w = given("b_w", piece.stem_width_in, "in", "width of the stem")
        held = one_way_shear(f_c, b_w, middle_of_bars(piece), area_of_bars(piece.bar, float(count)), footing=True)
    return told(V_u, held.design, "lb", "ACI 318-19 22.5", "no stirrups counted")


# ---- Stem on footing, sizes -----------------------------------------------------------------------------------------


def _joint(case: LineCase, piece: InnerFoundationPiece) -> Link:
    """The line's force from stem to footing, over a joint not made rough, by the bars that cross it."""
    title = "stem on its footing, along the joint"
    with section(f"line/{case.id}/footing/joint/both"):
        V_u = case.forces.rules.effects.horizontal_effect(case.forces.rho, case.strength)
        if piece.ties == "none":
            reason = "no bar crosses the joint; cast in one pour there would be none, and nobody wrote that it is"
            return _told(case, "joint", title, V_u, 0.0, "lb", "ACI 318-19 22.9", reason)
        count = case.length_in / piece.tie_spacing_in
        f_c = given("f'_c", piece.strength_psi, "psi", "specified strength")
        A_c = given("A_c", piece.stem_width_in * case.length_in, "in^2", "area of the joint")
        A_vf = area_of_bars(piece.ties, max(count, 1.0))
        f_y = given("f_y", piece.yield_psi, "psi", "yield strength of the bars")
        held = shear_friction(A_vf, f_y, A_c, f_c).design
    reason = f"{piece.ties} at {piece.tie_spacing_in:g} in., hooked into footing and stem"
    return _told(case, "joint", title, V_u, held, "lb", "ACI 318-19 22.9", reason)


def _sizes(case: LineCase, piece: InnerFoundationPiece) -> Iterator[Link]:
    """What the building code asks of every new footing."""
    told = partial(_told, case, level="allowable", minimum=True)
    table = table_1809_4()
    rows = (
        ("wide", "width of the footing", piece.footing_width_in, "in", "IBC 2021 1809.4"),
        ("deep", "depth of its bottom below the soil", piece.depth_in, "in", "IBC 2021 1809.4"),
    )
    for key, title, there, unit, clause in rows:
        with section(f"line/{case.id}/footing/{key}/both"):
            asked = table.read(title)
            if key == "deep":
                frost = case.reading.house.survey.site.soil.frost_depth_in.value
                asked = asked if frost is None or frost <= float(asked) else given("d_f", frost, "in", "frost depth")
            found = given("s", there, "in", title)
        yield told(key, title, asked, found, unit, clause)
    with section(f"line/{case.id}/footing/strength/both"):
        asked = table_1808_8_1().read("dwelling of light framing, two stories or less, category D, E or F")
        found = given("f'_c", piece.strength_psi, "psi", "specified strength of the concrete")
    yield told("strength", "strength of the concrete", asked, found, "psi", "IBC 2021 1808.8.1")
    with section(f"line/{case.id}/footing/cover/both"):
        asked = cover("cast against ground", piece.bar)
        found = given("c_c", piece.cover_in, "in", "cover of the bars")
    yield told("cover", "cover of the bars", asked, found, "in", "ACI 318-19 20.5.1.3")
