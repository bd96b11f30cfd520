"""A panel laid as a perforated wall: openings in it are not framed for force, and its two ends alone are held down.

What counts of its full-height parts, times one factor for the openings, shares the line's force; the greatest unit
shear of those parts goes on to plate, sill and bolts, pulls the plate up along them as well, and turns the whole over.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from groundsill.house.underfloor import VentOpening
from groundsill.loadpath.case import Brace, LineCase, height_path
from groundsill.loadpath.openings import Around, FullHeight
from groundsill.standards.sheathing import SegmentShear
from groundsill.work.pieces import PanelPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import add, convert, given, multiply, note
from groundsill.working.value import marks_of

__all__ = ["around_openings", "is_perforated", "within_limits"]

_TAPE_IN = 0.25
_SLENDEREST = 3.5  # of a full-height part that counts; the edition's own rule refuses a greater one


def is_perforated(brace: Brace) -> bool:
    """Whether a brace is a panel laid as a perforated wall."""
    return brace.panel is not None and brace.panel.around_openings != "each part for itself"


def around_openings(case: LineCase, brace: Brace, h: float) -> Brace:
    """The brace with what its openings make of it, or with why nobody can say; ``h`` is its height, ft.

    Raises:
        OutsideLimits: a wall that its standard does not let count as a perforated one, naming the limit.
    """
    rules, panel = case.sdpws.perforated, brace.panel
    assert panel is not None and brace.height_in is not None
    openings = _openings(case, brace)
    unknown = [o for o in openings if o.top_in <= o.bottom_in]
    if unknown:
        why_not = f"how high {_named(unknown)} reach{'es' if len(unknown) == 1 else ''} was not told"
        return replace(brace, why_not=why_not, unknown=True)
    both = _other_face(case, brace, panel)
    if both:
        why_not = f"{both} is on the other face of it: a perforated wall sheathed on both faces is not worked out here"
        return replace(brace, why_not=f"{why_not} ({rules.clause})", unknown=True)
    _one_level(case, brace)
    found = _parts(case, brace, openings, h)
    parts = tuple(part for part, _ in found)
    bare = panel.around_openings == "perforated wall, bare above and below"
    A_o = _area(case, brace, openings, h, bare)
    L_tot = convert(given("L_tot", brace.length_in, "in", f"length of {brace.name}"), "in", "ft")
    whole = sum(part.to_in - part.from_in for part in parts)
    full = convert(given("L_fhs", whole, "in", "all of its full-height parts"), "in", "ft")
    counted = add(*(length for _, length in found if length), symbol="ΣL_i", label="what counts of them")
    C_o = rules.factor(A_o, h, L_tot, full, counted)
    length = multiply(C_o, counted, symbol="C_o ΣL_i", unit="ft", label=f"length that {brace.name} counts for")
    count = len(openings)
    words = (
        f"a perforated wall with {count or 'no'} opening{'' if count == 1 else 's'}: C_o = {float(C_o):.2f}, "
        f"{float(counted):.1f} of {float(L_tot):.1f} ft count, and so {float(length):.1f} ft hold; "
        f"{'bare' if bare else 'sheathed and nailed alike'} over and under its openings"
    )
    lost = brace.length_in - 12 * float(length)
    marks = brace.marks | marks_of((length,)) | case.reading.marked(height_path(brace.segment_id))
    return replace(brace, lost_in=lost, around=Around(parts, counted, C_o, words), marks=marks)


def within_limits(case: LineCase, shear: SegmentShear, h: float) -> None:
    """Refuse a perforated wall that is too strong or too high for its standard.

    Raises:
        OutsideLimits: naming the unit shear or the height, and its limit.
    """
    case.sdpws.perforated.limits(shear.nominal, h, case.load)


def _openings(case: LineCase, brace: Brace) -> list[VentOpening]:
    """The openings that the wall goes round, by station; one that lies above or below the wall is none."""
    height, found = brace.height_in or 0.0, []
    for _, opening in case.reading.on_line(case.reading.house.survey.underfloor.openings, case.id):
        beside = opening.to_in <= brace.from_in or opening.from_in >= brace.to_in
        told = opening.top_in > opening.bottom_in
        outside = told and (opening.top_in <= 0 or opening.bottom_in >= height)
        if not beside and not outside:
            found.append(opening)
    return sorted(found, key=lambda o: o.from_in)


def _named(openings: Iterable[VentOpening]) -> str:
    return " and ".join(f"{o.kind} {o.mark}".strip() for o in openings)


def _other_face(case: LineCase, brace: Brace, panel: PanelPiece) -> str:
    """Another panel over the same stretch of the wall, by its mark; empty where there is none."""
    for id, other in case.of_kind(PanelPiece):
        assert isinstance(other, PanelPiece)
        apart = other.from_in >= brace.to_in - _TAPE_IN or other.to_in <= brace.from_in + _TAPE_IN
        if other is not panel and other.segment == panel.segment and not apart:
            return f"panel {other.mark or id}"
    return ""


def _one_level(case: LineCase, brace: Brace) -> None:
    """Refuse a wall whose bottom steps.

    Raises:
        OutsideLimits: a step of the foundation lies under it.
    """
    for _, cut in case.reading.on_line(case.reading.house.survey.foundation.breaks, case.id):
        if cut.kind == "step" and brace.from_in < cut.station_in < brace.to_in:
            raise OutsideLimits(
                f"{case.sdpws.perforated.clause}: the foundation steps at {cut.station_in:g} in. under {brace.name}; "
                "the bottom of a perforated wall must be at one level"
            )


def _parts(case: LineCase, brace: Brace, openings: list[VentOpening], h: float) -> tuple[tuple[FullHeight, float], ...]:
    """The full-height parts between the openings, and what counts of each, ft.

    Raises:
        OutsideLimits: no part that counts stands at one of the wall's ends.
    """
    edge, found = brace.from_in, list[tuple[FullHeight, float]]()
    for opening in (*openings, None):
        end = brace.to_in if opening is None else min(opening.from_in, brace.to_in)
        if end - edge > _TAPE_IN:
            length = _counted(case, end - edge, h)
            found.append((FullHeight(edge, end, 12 * float(length)), length))
        edge = edge if opening is None else max(edge, opening.to_in)
    for word, station, n in (("start", brace.from_in, 0), ("end", brace.to_in, -1)):
        there = [part for part, _ in found[n:][:1] if station in (part.from_in, part.to_in)]
        if there and there[0].counted_in:
            continue
        stands = f"a part {there[0].to_in - there[0].from_in:g} in. long" if there else "an opening"
        least = f"{12 * float(h) / _SLENDEREST:.1f} in."
        raise OutsideLimits(
            f"{case.sdpws.perforated.clause}: at the {word} of {brace.name} stands {stands}; a full-height part "
            f"{least} long or more must stand at each end of a perforated wall"
        )
    return tuple(found)


def _counted(case: LineCase, length_in: float, h: float) -> float:
    """What counts of a full-height part, ft; none of one too slender."""
    b_i = convert(given("b_i", length_in, "in", "full-height part of a perforated wall"), "in", "ft")
    try:
        return case.sdpws.perforated.counted_length(h, b_i)
    except OutsideLimits:
        note(f"a part {float(b_i):.2f} ft long is too slender to count")
        return 0.0


def _area(case: LineCase, brace: Brace, openings: list[VentOpening], h: float, bare: bool) -> float:
    """Area of all openings, square feet, each recorded."""
    height, areas = brace.height_in or 0.0, []
    for opening in openings:
        name = _named((opening,))
        wide = min(opening.to_in, brace.to_in) - max(opening.from_in, brace.from_in)
        clear = min(opening.top_in, height) - max(opening.bottom_in, 0.0)
        w_o = convert(given("w_o", wide, "in", f"width of {name}"), "in", "ft")
        words = f"height of {name}" + (": the wall is bare above and below it" if bare else "")
        h_o = h if bare else convert(given("h_o", clear, "in", words), "in", "ft")
        areas.append(case.sdpws.perforated.opening_area(w_o, h_o, h))
    if len(areas) == 1:
        return areas[0]
    if not areas:
        return given("A_o", 0.0, "ft^2", "no opening in it")
    return add(*areas, symbol="A_o", label="all openings")
