"""What a panel's nailing asks of the wall it goes on: studs, framing where panels meet, hold-downs, each with its cure.

What no table covers (studs too far apart, nails that do not reach) refuses the panel; what somebody must do on site is
a sentence in the link's reason that names its clause and what cures it.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import floor

from groundsill.house.underfloor import Stud
from groundsill.loadpath.case import Brace, LineCase
from groundsill.loadpath.held_ends import hold_downs_at
from groundsill.loadpath.post_tension import INSIDE, is_told
from groundsill.loadpath.turning import WAYS
from groundsill.standards.iebc_2021.bracing import vent_hole_in_panel, vent_holes
from groundsill.standards.wall_construction import Framing
from groundsill.work.pieces import HoldDownPiece, PanelPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import given, subtract
from groundsill.working.table import Table

__all__ = ["STUD_FACTS", "held_inside", "on_its_studs", "over_gypsum", "panel_table", "site_words", "studs_path"]

STUD_FACTS = ("thickness_in", "spacing_in", "depth_in")  # what decides whether a panel counts on its studs
_USUAL_STUDS_IN = 16.0  # where nobody measured their spacing; the reason says so
_TWO_BY_IN, _THREE_BY_IN = 1.5, 2.5  # dressed thickness of 2x and 3x lumber
_STITCH_NAIL = "10d common"
_GYPSUM_IN = {"gypsum of 1/2 in.": 0.5, "gypsum of 5/8 in.": 0.625}
_VENT_HOLES = "IEBC 2021 A304.4.3"
_GAP = "1/8 in. between panels (common practice, no source)"


def studs_path(brace: Brace) -> str:
    """Where the studs under a brace stand in the survey."""
    return f"survey.underfloor.segments.{brace.segment_id}.stud"


def _panel(brace: Brace) -> PanelPiece:
    assert brace.panel is not None
    return brace.panel


def _nail(panel: PanelPiece) -> str:
    return panel.panel.rsplit(", ", 1)[-1]


def _thickness_in(panel: PanelPiece) -> float:
    return float(Fraction(panel.panel.split(",")[0].split()[-1]))


def over_gypsum(panel: PanelPiece) -> bool:
    """Whether a panel goes over gypsum board, which has a table of its own."""
    return panel.over in _GYPSUM_IN


def panel_table(case: LineCase, panel: PanelPiece) -> tuple[Table, str]:
    """The table of unit shears that a panel goes by, and how it is cited.

    Raises:
        OutsideLimits: for a panel over boards or plaster, and one that its table does not hold.
    """
    rules = case.sdpws
    if panel.over == "other sheathing":
        raise OutsideLimits(
            f"{rules.clauses.panels}, {rules.clauses.over_gypsum}: panels on studs, or over gypsum of 1/2 or 5/8 in.; "
            "no table has them over boards or plaster; cure: that sheathing taken off where the panel goes"
        )
    if over_gypsum(panel):
        return rules.over_gypsum(), rules.clauses.over_gypsum
    return rules.nominal(), rules.clauses.panels


def held_inside(case: LineCase, brace: Brace) -> list[HoldDownPiece]:
    """The hold-downs at a panel's ends that stand on the inside face of the end posts."""
    at_ends = {piece.station_in: piece for way in WAYS for piece in hold_downs_at(case, brace, way)}
    found = [piece for piece in at_ends.values() if piece.seat == INSIDE]
    return sorted(found, key=lambda piece: piece.station_in)


def _holes_allowed(panel: PanelPiece) -> None:
    """Refuse a panel with holes that no rule allows.

    Raises:
        OutsideLimits: holes too large, too near to an edge, or at a distance that is not told.
    """
    if panel.holes_in is None:
        return
    cure = "cure: smaller holes in the middle between the studs, or vents entered as openings"
    if panel.holes_clear_in is None:
        raise OutsideLimits(
            f"{_VENT_HOLES}: how far its holes are clear of plates and nailed edges is not given; {cure}"
        )
    d = given("d", panel.holes_in, "in", "diameter of the holes for air")
    c = given("c", panel.holes_clear_in, "in", "from their rims to plates and nailed edges")
    try:
        vent_hole_in_panel(d, c)
    except OutsideLimits as refused:
        raise OutsideLimits(f"{refused}; {cure}") from refused


def on_its_studs(case: LineCase, brace: Brace) -> None:
    """Refuse a panel whose studs or nails the table does not cover; what was not measured is taken to be ordinary.

    Raises:
        OutsideLimits: studs too thin or too far apart, nails that do not reach far enough into them, holes that no
            rule allows.
    """
    panel, stud = _panel(brace), brace.segment.stud
    _holes_allowed(panel)
    t = given("t", _thickness_in(panel), "in", f"thickness of {panel.mark or brace.id}")
    case.sdpws.panels_on_studs(t, *_studs(case, brace))
    length = case.nds.nail_size(f"{_nail(panel)} common").L
    reach = subtract(length, t, symbol="p", label="reach of the nails beyond the panel")
    if over_gypsum(panel):
        board = given("t_g", _GYPSUM_IN[panel.over], "in", "thickness of the gypsum under it")
        reach = subtract(reach, board, symbol="p", label="reach of the nails beyond the gypsum")
    depth = stud.depth_in.value
    if depth is not None and depth < float(reach):
        path = f"{studs_path(brace)}.depth_in"
        reach = case.reading.figure(path, depth, "p", "in", "depth of the studs, which the nails go through")
    case.sdpws.nails_in_framing(_nail(panel), reach, over_gypsum(panel))


def _studs(case: LineCase, brace: Brace) -> tuple[float, float]:
    """Thickness and spacing of the studs, inches: as surveyed, or 2x at 16 in. where nobody measured them."""
    stud, path, name = brace.segment.stud, studs_path(brace), brace.segment.mark or brace.segment_id
    thick = case.reading.number(f"{path}.thickness_in", stud.thickness_in, "b_stud", "in", f"stud thickness, {name}")
    apart = case.reading.number(f"{path}.spacing_in", stud.spacing_in, "s_stud", "in", f"stud spacing, {name}")
    return _TWO_BY_IN if thick is None else thick, _USUAL_STUDS_IN if apart is None else apart


def site_words(case: LineCase, brace: Brace) -> tuple[str, ...]:
    """What must be seen to on site, each sentence with its clause and its cure."""
    return tuple(_words(case, brace))


def _words(case: LineCase, brace: Brace) -> Iterator[str]:
    panel, stud, clause = _panel(brace), brace.segment.stud, case.sdpws.clauses.framing
    with section(f"line/{case.id}/strength/{brace.id}"):
        details = case.sdpws.panels_on_studs(_thickness_in(panel), *_studs(case, brace))
        into = float(case.nds.nail_size(f"{_nail(panel)} common").L) - _thickness_in(panel)
        into -= _GYPSUM_IN.get(panel.over, 0.0)
        nominal, category = float(brace.nominal_plf or 0.0), case.forces.category
        found = case.sdpws.framing_at_panel_edges(_nail(panel), panel.edge_spacing_in, into, nominal, category)
        if found.needs_3x:
            yield _framing(case, brace, found)
    if stud.spacing_in.value is None:
        widest = f"{details.widest_studs_in:g} in."
        yield f"how far apart the studs stand was not measured: the panel's value holds to {widest} ({clause})"
    height = brace.height_in or 0.0
    if height > details.panel_width_in:
        yield (
            f"higher than one panel is wide ({details.panel_width_in:g} in.): blocking behind every joint between "
            f"panels ({clause})"
        )
    if brace.length_in < details.panel_width_in:
        yield f"shorter than a panel is wide: one piece, with every edge on framing or blocking ({clause})"
    yield (
        f"nails at {details.field_nails_in:g} in. along studs between the edges and {details.nail_to_edge_in:g} in. or "
        f"more from a panel's edge ({clause}), {_GAP}"
    )
    if over_gypsum(panel):
        clause_b = case.sdpws.clauses.over_gypsum
        yield f"sound {panel.over} behind every edge of it, nailed through into framing ({clause_b})"
    if panel.face == "inside":
        yield _vented(brace)
    if brace.around is not None:
        yield (
            f"the plate runs through over the whole of it as a collector, and panels, nails and framing are alike all "
            f"round its openings ({case.sdpws.perforated.clause})"
        )
    inside = held_inside(case, brace)
    if inside:
        yield from _eccentric(case, inside, _nail(panel), over_gypsum(panel))


def _vented(brace: Brace) -> str:
    """The holes by which the chapter for cripple walls lets air behind a panel; no standard of shear has them."""
    with quiet():
        spacing = brace.segment.stud.spacing_in.value or _USUAL_STUDS_IN
        holes = vent_holes(brace.length_in, spacing, brace.height_in or 0.0)
    told = _panel(brace).holes_in
    size = "2 to 3 in." if told is None else f"{told:g} in."
    return (
        f"where air is wanted behind it, {float(holes):g} round holes of {size} in its stud spaces, midway between "
        f"studs and 1 in. clear of plates and nailed edges ({_VENT_HOLES}), which take nothing from it there; of the "
        "panel standard no rule for them was read"
    )


def _framing(case: LineCase, brace: Brace, found: Framing) -> str:
    """3x framing where panels meet, and how to make it of the studs that are there."""
    clause, stud = case.sdpws.clauses.framing, brace.segment.stud
    thick = stud.thickness_in.value
    if thick is not None and thick >= _THREE_BY_IN:
        return f"studs {thick:g} in. thick serve where panels adjoin ({found.reasons[0]}; {clause})"
    asked = f"where panels adjoin, 3x framing or two 2x fastened together ({found.reasons[0]}; {clause})"
    spacing = _stitching_in(case, brace, stud)
    if spacing is None:
        return asked
    stagger = ", staggered," if spacing < found.stagger_below_in else ""
    return (
        f"{asked}: a second 2x on each of those studs with {_STITCH_NAIL} nails at {spacing:g} in.{stagger} holds all "
        f"that the panel may carry ({case.nds.cite('12.3.1')})"
    )


def _stitching_in(case: LineCase, brace: Brace, stud: Stud) -> float | None:
    """Spacing of the nails that make two 2x one, for the panel's whole allowable unit shear, down to half inches."""
    main = stud.thickness_in.value or _TWO_BY_IN
    try:
        one = case.nds.nail(_STITCH_NAIL, _TWO_BY_IN, main=stud.species.value or "", t_m=main)
        each = float(case.nds.adjusted_lateral(one.Z))
    except OutsideLimits:
        return None
    spacing = floor(2 * 12 * each / float(brace.capacity_plf or 0.0)) / 2 if brace.capacity_plf else 0.0
    return spacing if spacing > 0 else None


def _eccentric(case: LineCase, inside: list[HoldDownPiece], nail: str, gypsum: bool) -> Iterator[str]:
    """Hold-downs on the inside of the end posts: where the edition counts panels for less, and posts not checked."""
    marks, rule = ", ".join(piece.mark or "unmarked" for piece in inside), case.sdpws.clauses.held_inside
    if nail == "10d" and rule and not gypsum:
        yield (
            f"hold-downs {marks} stand inside the end posts: with 10d nails the panel counts for less ({rule}); cure: "
            "hold-downs in line with the posts, or 8d nails"
        )
    untold = ", ".join(piece.mark or "unmarked" for piece in inside if not is_told(piece))
    if untold:
        yield (
            f"the bending of the end posts by hold-downs beside them ({untold}) cannot be checked "
            f"({case.nds.cite('3.9.1')}) until it is told how far from the post's face they pull, by their report, and "
            "what is bored out of it"
        )
