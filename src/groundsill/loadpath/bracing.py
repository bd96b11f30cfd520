"""The sheathed parts of a line: how strong and stiff each is, which share each takes, and their own links.

Stages: panel edge nailing at the plate, the sheathing itself, panel edge nailing at the sill (or to blocking fastened
on a sill that stands out past the studs, that fastening being a link of its own), and overturning at each end.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import partial

from groundsill.forces.reading import doubted
from groundsill.loadpath.case import (
    MIXED_RATIO,
    Brace,
    LineCase,
    cannot,
    checked,
    height_path,
    species_of,
    working_of,
)
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.low_parts import with_slip
from groundsill.loadpath.old_faces import faces_words, old_faces, strange_faces, together
from groundsill.loadpath.openings import VENTS, tallest_vent
from groundsill.loadpath.overturning import over_line, overturning_links
from groundsill.loadpath.panel_details import (
    STUD_FACTS,
    held_inside,
    on_its_studs,
    over_gypsum,
    panel_table,
    site_words,
    studs_path,
)
from groundsill.loadpath.panel_nailing import at_plate, at_sill, blocking, panel_expected
from groundsill.loadpath.perforated import around_openings, is_perforated, within_limits
from groundsill.standards.sheathing import SegmentShear
from groundsill.standards.statics.walls import unit_shear
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import convert, divide, given, multiply, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["bracing_stages", "with_strengths"]


_CURE = "cure: a panel and nails of that table, or an engineer's decision by the fastener's evaluation report"
_NOT_COUNTED = "no sheathing that a standard gives a strength for"


def with_strengths(case: LineCase) -> LineCase:
    """The case with each brace's strength, stiffness and share worked out."""
    braces = []
    for brace in case.braces:
        with section(f"line/{case.id}/strength/{brace.id}"):
            braces.append(_strength(case, brace))
    shared, words = _shares(tuple(braces))
    return replace(case, braces=shared, sharing=words, doubts=_doubts(case, braces))


def _strength(case: LineCase, brace: Brace) -> Brace:
    if brace.kind == "joists on sill":
        return with_slip(case, brace)
    height = brace.height_in
    if height is None:
        return replace(brace, why_not="its height is not known", unknown=True)
    path, mark = height_path(brace.segment_id), brace.segment.mark or brace.segment_id
    h_in = case.reading.number(path, brace.segment.height_in, "h", "in", f"height of {mark}")
    assert h_in is not None
    h = convert(h_in, "in", "ft")
    if is_perforated(brace):
        try:
            brace = around_openings(case, brace, h)
        except OutsideLimits as refused:
            return replace(brace, why_not=str(refused), marks=case.reading.marked(path))
        if brace.unknown:
            return brace
    brace = _less_vents(case, brace)
    less = "" if brace.around is None and not brace.lost_in else f", less {brace.lost_in:.4g} in. for {_lost_to(brace)}"
    words = f"sheathed length in {mark}{less}"
    b = convert(given("b_s", brace.sheathed_in, "in", words, brace.marks), "in", "ft")
    try:
        if brace.panel is not None:
            return _panel_strength(case, brace, h, b)
        return _old_strength(case, brace, h, b)
    except OutsideLimits as refused:
        doubts = case.reading.marked(path)
        if brace.panel is not None:
            doubts |= case.reading.marked(studs_path(brace), *STUD_FACTS)
        return replace(brace, why_not=str(refused), marks=doubts)


def _lost_to(brace: Brace) -> str:
    return "vents" if brace.around is None else "openings"


def _less_vents(case: LineCase, brace: Brace) -> Brace:
    """A part with the marks of what says that the vents in it take length and do not cut it."""
    if not brace.lost_in or brace.around is not None:
        return brace
    path = f"survey.underfloor.segments.{brace.segment_id}"
    doubts = marks_of((tallest_vent(),)) | case.reading.marked(path, "height_in", "stud.spacing_in")
    return replace(brace, marks=brace.marks | doubts)


def _panel_strength(case: LineCase, brace: Brace, h: float, b: float) -> Brace:
    panel, sdpws = brace.panel, case.sdpws
    assert panel is not None
    try:
        table, clause = panel_table(case, panel)
    except OutsideLimits as refused:
        return replace(brace, why_not=str(refused), unknown=True)
    if panel.panel not in table.rows:
        why_not = f"{clause} has no row {panel.panel!r}: it has nails alone, no screws or staples; {_CURE}"
        return replace(brace, why_not=why_not, unknown=True)
    path, mark = f"survey.underfloor.segments.{brace.segment_id}.stud", brace.segment.mark or brace.segment_id
    wood, told = species_of(case, path, brace.segment.stud.species, f"the studs of {mark}")
    if not wood:
        why_not = "the studs' species is not known, and the panel's value depends on it"
        return replace(brace, why_not=why_not, unknown=True)
    try:
        G = doubted(case.nds.specific_gravity(wood), told)
    except OutsideLimits as refused:
        return replace(brace, why_not=str(refused), unknown=True, marks=told)
    spacing = given("s", panel.edge_spacing_in, "in", f"edge nail spacing of {panel.mark}")
    apart = brace.segment.stud.spacing_in.value
    inside, gypsum = bool(held_inside(case, brace)), over_gypsum(panel)
    shear_of = partial(
        sdpws.panel_unit_shear, panel.panel, spacing, h, b, G, stud_spacing=apart, held_inside=inside, load=case.load,
        over_gypsum=gypsum,
    )  # fmt: skip
    shear = shear_of(sharing="stiffness" if brace.around is None else "perforated")
    if brace.around is not None:
        within_limits(case, shear, h)
    elif h > 2 * float(b):  # shared by strength as well as by stiffness: the lower of the two reductions
        other = shear_of(sharing="strength")
        doubts = marks_of((shear.asd, other.asd))
        shear = min((shear, other), key=lambda found: float(found.asd))
        shear = replace(shear, asd=doubted(shear.asd, doubts), adjusted=doubted(shear.adjusted, doubts))
    whether = f"the studs under {panel.mark or brace.id}: whether, and by which value, it counts"
    noted = case.reading.noted(whether, studs_path(brace), *STUD_FACTS)
    brace = replace(brace, marks=brace.marks | noted)
    on_its_studs(case, brace)
    stiff = sdpws.stiffness(panel.made_of, gypsum).read(panel.panel, spacing)
    material = panel.panel if panel.made_of == "plywood" else f"{panel.panel}, {panel.made_of}"
    return _with(brace, shear, stiff, h, b, clause, f"{material}, over gypsum" if gypsum else material)


def _old_strength(case: LineCase, brace: Brace, h: float, b: float) -> Brace:
    """Existing sheathing, by what its sound faces carry together; whether a decayed one is truly so decides too."""
    found, chosen = old_faces(case, brace, h, b)
    strange = strange_faces(case, brace)
    if not found and strange:
        return replace(brace, why_not=strange, unknown=True, marks=brace.marks | chosen)
    if not found:
        return replace(brace, why_not=f"{_NOT_COUNTED} ({faces_words(brace)})", marks=brace.marks | chosen)
    doubts = marks_of(face.shear.asd for face in found)
    best = together(case, found)
    shear = replace(best.shear, asd=doubted(best.shear.asd, doubts), adjusted=doubted(best.shear.adjusted, doubts))
    return _with(
        replace(brace, marks=brace.marks | chosen | best.seen), shear, best.stiffness, h, b, best.cite, best.material
    )


def _with(brace: Brace, shear: SegmentShear, G_a: float, h: float, b: float, cite: str, material: str) -> Brace:
    # SDPWS 4.3-1, the shear term alone: G_a is the force for each foot of length over the drift for each of height
    label = f"shear stiffness of {brace.name}"
    k = convert(
        multiply(G_a, divide(b, h, symbol="b_s/h", unit="1"), symbol="k", unit="kip/in", label=label),
        "kip/in",
        "lb/in",
    )
    return replace(
        brace,
        capacity_plf=doubted(shear.asd, brace.marks),
        nominal_plf=doubted(shear.adjusted, brace.marks),
        expected_plf=shear.expected,
        stiffness_lb_in=doubted(k, brace.marks),
        cite=cite,
        material=material,
    )


def _shares(braces: tuple[Brace, ...]) -> tuple[tuple[Brace, ...], str]:
    """Share of the line's force of each brace, the worse of the ways that apply, and how it was shared in words."""
    counted = [b for b in braces if b.capacity_plf is not None]
    direct = [b for b in braces if b.kind == "joists on sill"]
    if not counted and not direct:
        return braces, "nothing in this line can be counted"
    strength = {b.id: float(b.capacity_plf or 0) * b.sheathed_in for b in counted}
    stiffness = {b.id: float(b.stiffness_lb_in or 0.0) for b in counted}
    ways: list[dict[str, float]] = []
    words = "shared by strength, all parts alike"
    if counted:
        ways.append(_over(strength))
    heights = [b.height_in or 0.0 for b in counted]
    mixed = bool(heights) and (max(heights) > MIXED_RATIO * min(heights) or len({b.material for b in counted}) > 1)
    if mixed:
        ways.append(_over(stiffness))
        words = (
            f"heights differ by more than {MIXED_RATIO:g} or materials differ: "
            "the worse of sharing by strength and by stiffness"
        )
    if direct:
        ways.append(_over({b.id: b.length_in for b in direct}))
        everything = {b.id: b.length_in for b in (*counted, *direct)}
        ways.append(_over(everything))
        words = (
            "part of the line has no cripple wall: it is taken as rigid, and every part also by its length; "
            "the worst counts"
        )
    return tuple(replace(b, share=max((way.get(b.id, 0.0) for way in ways), default=0.0)) for b in braces), words


def _doubts(case: LineCase, braces: Sequence[Brace]) -> frozenset[Mark]:
    """The marks of the shares: what would move one part's strength or stiffness against another's.

    What all have in common (a panel's row, a factor) moves no share; the heights do, unless all parts are alike.
    """
    counted = [b for b in braces if b.capacity_plf is not None]
    figures = [marks_of((b.capacity_plf, b.stiffness_lb_in)) for b in counted]
    common = figures[0].intersection(*figures) if figures else frozenset[Mark]()
    doubts = frozenset[Mark]().union(*figures) - common
    if len({(b.segment_id, b.length_in) for b in counted}) > 1:
        doubts = doubts.union(*(case.reading.marked(height_path(b.segment_id)) for b in counted))
    return doubts.union(*(b.marks for b in braces))


def _over(amounts: dict[str, float]) -> dict[str, float]:
    total = sum(amounts.values())
    return {key: value / total for key, value in amounts.items()} if total > 0 else {}


def bracing_stages(case: LineCase) -> tuple[Stage, ...]:
    """The four stages from the plate to the sill."""
    top, body, bottom = [], [], []
    over: list[Link] = []
    counted = case.counted()
    over_it = over_line(case) if counted else None
    for brace in counted:
        v, force = _unit(case, brace)
        body.append(_sheathing(case, brace, v))
        if brace.panel is not None:
            top.append(at_plate(case, brace, v))
            bottom.append(at_sill(case, brace, v))
            if brace.panel.bottom == "blocking on sill":
                bottom.append(blocking(case, brace, v))
        assert over_it is not None
        over += overturning_links(case, brace, over_it, force)
    for brace in case.braces:
        if brace.capacity_plf is None and brace.kind != "joists on sill":
            body.append(_uncounted(case, brace, bool(counted)))
            if brace.unknown:
                over += [_untold(case, brace, "overturning", f"overturning of {brace.name}")]
                if brace.panel is not None:
                    top.append(_untold(case, brace, "nailing-top", f"edge nailing of {brace.name} to the plate"))
                    bottom.append(_untold(case, brace, "nailing-sill", f"edge nailing of {brace.name} at the bottom"))
    if not body:
        body.append(_no_bracing(case))
    return (
        Stage(
            "nailing-top",
            "Panel edge nailing at the plate",
            "every link must pass",
            tuple(top) or _none(case, "nailing-top", "no panels"),
        ),
        Stage("sheathing", "Sheathing", "every link must pass", tuple(body)),
        Stage(
            "nailing-sill",
            "Panel edge nailing at the sill",
            "every link must pass",
            tuple(bottom) or _none(case, "nailing-sill", "no panels"),
        ),
        Stage(
            "overturning",
            "Overturning at the ends of each segment",
            "every link must pass",
            tuple(over) or _none(case, "overturning", "nothing that is braced can turn over"),
        ),
    )


def _untold(case: LineCase, brace: Brace, stage: str, title: str) -> Link:
    """A later link of a part whose strength nobody knows: nor is what it must carry, nor then whether it does."""
    return cannot(
        _address(case, stage, brace),
        title,
        "segment",
        brace.segment_id,
        clause=case.sdpws.clauses.walls,
        reason=f"what {brace.name} carries is not known: {brace.why_not}",
        marks=brace.marks,
        working=working_of(case, brace),
    )


def _none(case: LineCase, key: str, reason: str) -> tuple[Link, ...]:
    """A stage that has nothing to check, said in words."""
    return (
        cannot(
            f"line/{case.id}/{key}/{case.id}/both",
            reason.capitalize(),
            "line",
            case.id,
            clause="",
            reason=reason,
            applies=False,
        ),
    )


def _unit(case: LineCase, brace: Brace) -> tuple[float, float]:
    with section(f"line/{case.id}/strength/{brace.id}"):
        part = case.taken_by(brace, case.sharing)
        force = scale(case.allowable, part, symbol="V_i", label=f"force on {brace.name}")
        if brace.around is not None:
            return case.sdpws.perforated.plate_uplift(force, brace.around.C_o, brace.around.counted_ft), force
        b = convert(given("b_s", brace.sheathed_in, "in", f"sheathed length of {brace.name}"), "in", "ft")
        return unit_shear(force, b), force


def _address(case: LineCase, stage: str, brace: Brace, direction: str = "both") -> str:
    return f"line/{case.id}/{stage}/{brace.id}/{direction}"


def _sheathing(case: LineCase, brace: Brace, v: float) -> Link:
    words = case.sharing
    if brace.around is not None:
        words += f"; {brace.around.words}"
    elif brace.lost_in:
        words += f"; vents in it take {brace.lost_in:g} in. of its length ({VENTS})"
    if brace.panel is not None:
        words = "; ".join((words, *site_words(case, brace)))
    return checked(
        _address(case, "sheathing", brace),
        f"{brace.material}, {brace.name}",
        "segment",
        brace.segment_id,
        level="allowable",
        unit="plf",
        demand=v,
        capacity=brace.capacity_plf,
        clause=brace.cite,
        reason=words,
        working=working_of(case, brace),
        expected=panel_expected(brace),
    )


def _uncounted(case: LineCase, brace: Brace, others: bool) -> Link:
    """A stretch of wall that cannot be counted: named, never left out; it fails if nothing else braces the line."""
    address, title = _address(case, "sheathing", brace), f"{brace.material or 'wall'} {brace.name}"
    if others and not brace.unknown:
        return cannot(
            address,
            title,
            "segment",
            brace.segment_id,
            clause=case.sdpws.clauses.walls,
            applies=False,
            reason=f"not counted: {brace.why_not}; other parts of the line take its share",
            marks=frozenset[Mark]().union(*(other.marks for other in case.braces)),
            working=tuple(f"line/{case.id}/strength/{other.id}" for other in case.braces),
        )
    if brace.why_not.startswith(_NOT_COUNTED):
        return checked(
            address,
            title,
            "segment",
            brace.segment_id,
            level="allowable",
            unit="lb",
            demand=case.allowable,
            capacity=0.0,
            clause=case.sdpws.clauses.walls,
            reason=brace.why_not,
            marks=brace.marks,
            working=working_of(case, brace),
        )
    return cannot(
        address,
        title,
        "segment",
        brace.segment_id,
        clause=case.sdpws.clauses.walls,
        reason=brace.why_not,
        marks=brace.marks,
        working=working_of(case, brace),
    )


def _no_bracing(case: LineCase) -> Link:
    direct = any(b.kind == "joists on sill" for b in case.braces)
    address = f"line/{case.id}/sheathing/{case.id}/both"
    if direct:
        return cannot(
            address,
            "No cripple wall",
            "line",
            case.id,
            clause="",
            applies=False,
            reason="the joists stand straight on the sill",
        )
    return checked(
        address,
        "No wall that can brace this line",
        "line",
        case.id,
        level="allowable",
        unit="lb",
        demand=case.allowable,
        capacity=0.0,
        clause=case.sdpws.clauses.walls,
        reason="the line has no sheathed wall",
        working=(f"line/{case.id}/demand",),
    )
