"""Old houses at random: sound surveys with right-angled plans, for laws that hold for every house.

:func:`houses` draws a plan (rectangle or L), one or two storeys, assemblies, walls, roof, chimney, 4 to 12 braced
lines with interior ones, cripple walls, sills, bolts and foundation. Two lines or more, in different places, are relied
on in each direction, so that the house can be held in equilibrium; every measure is a round number of inches.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Any, Literal

from hypothesis import strategies as st

from groundsill.house.building import (
    Assembly,
    Building,
    Chimney,
    Corner,
    Layer,
    Partition,
    Point,
    RoofPart,
    Storey,
    Wall,
    WallOpening,
)
from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.foundation import Foundation, FoundationBreak, FoundationSegment
from groundsill.house.site import Hazard, Site, Soil
from groundsill.house.survey import Survey
from groundsill.house.underfloor import (
    Bolt,
    FloorConnection,
    Girder,
    JoistField,
    Line,
    Post,
    Segment,
    Sheathing,
    SillPiece,
    Stud,
    TopPlate,
    Underfloor,
    VentOpening,
)
from groundsill.work.document import Alternative, Basis, Choices, EditionOverride, House
from groundsill.work.pieces import BoltPiece, HoldDownPiece, PanelPiece, TiePiece

XY = tuple[float, float]
Kind = Literal["roof", "ceiling", "wall", "partition", "floor", "cripple wall"]

WOODS = (*(measured(wood) for wood in ("Douglas fir-larch", "Redwood", "Hem-fir", "some fir")), unknown())
MATERIALS = {
    "roof": ("roof: asphalt shingles", "roof: wood shingles", "skip sheathing", "2x4 rafters at 24 in."),
    "ceiling": ("ceiling: plaster on wood lath", "2x4 ceiling joists at 16 in., with insulation"),
    "wall": ("drop or bevel siding", "1x straight sheathing or shiplap", "wall: 2x4 studs, plastered one side"),
    "partition": ("wall: 2x4 studs, plastered two sides",),
    "floor": ("2x8 floor joists at 16 in.", "floor: hardwood 7/8 in.", "floor: subfloor 3/4 in."),
    "cripple wall": ("2x4 studs at 16 in., bare", "drop or bevel siding"),
}
KINDS: tuple[Kind, ...] = ("roof", "ceiling", "wall", "partition", "floor", "cripple wall")

BASIS = Basis(
    code="ibc-2021", overrides={"sdpws": EditionOverride(edition="sdpws-2015", reason="its tables were read")}
)


@dataclass(frozen=True, slots=True)
class Plan:
    """An outline in feet, anticlockwise, with the extents of a line drawn across it at any place."""

    points: tuple[XY, ...]

    @property
    def sides(self) -> list[tuple[XY, XY]]:
        return list(pairwise((*self.points, self.points[0])))

    def across(self, axis: int, at: float) -> XY:
        """The longest stretch along ``axis`` inside the plan where the other coordinate is ``at``."""
        other = 1 - axis
        cuts = sorted(
            a[axis]
            for a, b in self.sides
            if a[axis] == b[axis] and min(a[other], b[other]) < at < max(a[other], b[other])
        )
        return max(zip(cuts[::2], cuts[1::2], strict=True), key=lambda pair: pair[1] - pair[0])


@dataclass(frozen=True, slots=True)
class Stretch:
    """Where a line runs, in feet, and the side of the plan it belongs to; None for one inside."""

    a: XY
    b: XY
    side: int | None

    @property
    def long_in(self) -> float:
        return 12.0 * (abs(self.b[0] - self.a[0]) + abs(self.b[1] - self.a[1]))


@st.composite
def plans(draw: st.DrawFn) -> Plan:
    """A rectangle, or an L with its notch at the north-east."""
    w, d = draw(st.integers(16, 48)), draw(st.integers(16, 48))
    if draw(st.booleans()):
        return Plan(((0, 0), (w, 0), (w, d), (0, d)))
    a, b = draw(st.integers(8, w - 6)), draw(st.integers(8, d - 6))
    return Plan(((0, 0), (w, 0), (w, b), (a, b), (a, d), (0, d)))


@st.composite
def houses(draw: st.DrawFn, with_work: bool = True, storeys: int = 2) -> House:
    """A whole house document."""
    plan = draw(plans())
    levels = draw(st.integers(1, storeys))
    ends = _line_ends(draw, plan)
    survey = Survey(
        name="a house of Port Ellery",
        site=_site(draw),
        building=_building(draw, plan, levels, ends),
        underfloor=_underfloor(draw, plan, ends),
        foundation=_foundation(draw, ends),
    )
    choices = Choices(
        force_factor=draw(st.sampled_from((1.0, 0.75))),
        force_reason="work done of the owner's free will",
        anchor_basis=draw(st.sampled_from(("overstrength", "wood yields first"))),
        anchor_reason="as drawn",
    )
    alternatives = {"work": _work(draw, survey)} if with_work and draw(st.booleans()) else {}
    return House(basis=BASIS, choices=choices, survey=survey, alternatives=alternatives)


def _site(draw: st.DrawFn) -> Site:
    return Site(
        hazard=Hazard(
            S_S=draw(st.integers(25, 250)) / 100,
            S_1=draw(st.integers(10, 59)) / 100,
            site_class=draw(st.sampled_from(("C", "D", "D-default"))),
            source="invented",
        ),
        soil=Soil(kind=draw(st.sampled_from((measured("clay"), measured("sand"), unknown())))),
        slope_rise_per_run=measured(0.05),
        snow_psf=draw(st.sampled_from((measured(0.0), measured(20.0), measured(45.0), unknown()))),
    )


# ---- Above the floor ------------------------------------------------------------------------------------------------


def _assemblies(draw: st.DrawFn) -> dict[str, Assembly]:
    """Each of one to three layers, from the weight tables or with a weight of its own."""
    found = {}
    for kind in KINDS:
        layers = [Layer(material=m) for m in draw(st.lists(st.sampled_from(MATERIALS[kind]), max_size=2))]
        own = draw(st.integers(1, 60)) / 4
        layers.append(Layer(material="as weighed", psf=measured(own), times=draw(st.sampled_from((1.0, 2.0)))))
        found[f"as-{kind.replace(' ', '-')}"] = Assembly(name=kind, kind=kind, layers=tuple(layers))
    return found


def _building(draw: st.DrawFn, plan: Plan, levels: int, ends: Sequence[Stretch]) -> Building:
    outline = tuple(at(point) for point in plan.points)
    stacked = {}
    z = 40.0
    for n in range(levels):
        height = float(draw(st.integers(84, 120)))
        stacked[f"st{n}"] = Storey(
            order=n,
            name=f"storey {n + 1}",
            outline=outline,
            floor_z_in=z,
            height_in=height,
            floor="as-floor",
            ceiling=draw(st.sampled_from(("as-ceiling", None))),
            ceiling_span_deg=draw(st.sampled_from((0.0, 90.0))),
        )
        z += height + 10
    return Building(
        year_built=measured(1912.0),
        corners=_corners(ends),
        assemblies=_assemblies(draw),
        storeys=stacked,
        walls={
            f"w{s}-{n}": _wall(draw, plan, f"st{s}", n, s * 100 + n)
            for s in range(levels)
            for n in range(len(plan.points))
        },
        partitions=_partitions(draw, plan, levels),
        roof=_roof(draw, plan, levels),
        chimneys=_chimneys(draw, plan),
    )


def at(point: XY) -> str:
    """The id of the corner at a place, in feet."""
    return f"at-{point[0]:g}-{point[1]:g}"


def _corners(ends: Sequence[Stretch]) -> dict[str, Corner]:
    return {at(p): Corner(x_in=12.0 * p[0], y_in=12.0 * p[1]) for stretch in ends for p in (stretch.a, stretch.b)}


def _wall(draw: st.DrawFn, plan: Plan, storey: str, n: int, order: int) -> Wall:
    a, b = plan.sides[n]
    long = 12 * (abs(b[0] - a[0]) + abs(b[1] - a[1]))
    openings = {}
    if draw(st.booleans()):
        low = draw(st.integers(0, int(long) - 48))
        openings[f"o{storey}-{n}"] = WallOpening(from_in=low, to_in=low + 36.0, sill_in=24.0, head_in=80.0)
    return Wall(
        order=order,
        mark=f"W{order}",
        storey=storey,
        start=at(a),
        end=at(b),
        assembly="as-wall",
        height_in=draw(st.sampled_from((None, 130.0))),
        openings=openings,
    )


def _partitions(draw: st.DrawFn, plan: Plan, levels: int) -> dict[str, Partition]:
    found = {}
    for n in range(draw(st.integers(0, 3))):
        a, b = _crossing(draw, plan)
        found[f"pt{n}"] = Partition(
            storey=f"st{draw(st.integers(0, levels - 1))}",
            assembly="as-partition",
            start=Point(x_in=12.0 * a[0], y_in=12.0 * a[1]),
            end=Point(x_in=12.0 * b[0], y_in=12.0 * b[1]),
        )
    return found


def _crossing(draw: st.DrawFn, plan: Plan) -> tuple[XY, XY]:
    """A stretch across the plan, along x or along y, at some whole foot."""
    axis = draw(st.integers(0, 1))
    most = max(p[1 - axis] for p in plan.points)
    at = draw(st.integers(3, int(most) - 3))
    if any(p[1 - axis] == at for p in plan.points):
        at -= 1  # not along a side of the plan
    low, high = plan.across(axis, at)
    cut = draw(st.sampled_from((low, (low + high) // 2)))
    return (
        ((low, at), (high if cut == low else cut, at)) if axis == 0 else ((at, low), (at, high if cut == low else cut))
    )


def _roof(draw: st.DrawFn, plan: Plan, levels: int) -> dict[str, RoofPart]:
    eave = draw(st.integers(0, 24))
    xs, ys = [12 * p[0] for p in plan.points], [12 * p[1] for p in plan.points]
    x1, x2, y1, y2 = min(xs) - eave, max(xs) + eave, min(ys) - eave, max(ys) + eave
    ridge = (y1 + y2) / 2
    return {
        f"rf{n}": RoofPart(
            order=n,
            outline=tuple(
                Point(x_in=float(x), y_in=float(y)) for x, y in ((x1, low), (x2, low), (x2, high), (x1, high))
            ),
            assembly="as-roof",
            slope_rise_per_run=draw(st.integers(0, 12)) / 12,
            span_deg=draw(st.sampled_from((0.0, 90.0))),
            storey=f"st{levels - 1}",
        )
        for n, (low, high) in enumerate(((y1, ridge), (ridge, y2)))
    }


def _chimneys(draw: st.DrawFn, plan: Plan) -> dict[str, Chimney]:
    if draw(st.booleans()):
        return {}
    x, y = 12 * draw(st.integers(2, 6)) - 4, 12 * draw(st.integers(2, 6)) - 4
    return {
        "ch1": Chimney(
            at=Point(x_in=float(x), y_in=float(y)),
            x_size_in=24.0,
            y_size_in=20.0,
            height_in=float(draw(st.integers(100, 300))),
            pcf=draw(st.sampled_from((unknown(), measured(110.0)))),
            tied=draw(st.sampled_from((measured(True), measured(False), unknown()))),
            base=draw(st.sampled_from(("own footing", "floor", "foundation wall"))),
        )
    }


# ---- Under the floor ------------------------------------------------------------------------------------------------


def _line_ends(draw: st.DrawFn, plan: Plan) -> list[Stretch]:
    """Where every braced line runs: along each side of the plan, now and then in two parts, then some inside it."""
    found = []
    for n, (a, b) in enumerate(plan.sides):
        middle = ((a[0] + b[0]) // 2, (a[1] + b[1]) // 2)
        parts = [a, middle, b] if not draw(st.integers(0, 5)) else [a, b]
        found += [Stretch(*pair, n) for pair in pairwise(parts)]
    most = 12 - len(found)
    return found + [Stretch(*_crossing(draw, plan), None) for _ in range(draw(st.integers(0, min(6, most))))]


def _underfloor(draw: st.DrawFn, plan: Plan, ends: Sequence[Stretch]) -> Underfloor:
    lines, segments, sills, bolts = {}, {}, {}, {}
    for n, stretch in enumerate(ends):
        long = stretch.long_in
        lines[f"ln{n}"] = _line(draw, n, stretch)
        for m, (low, high) in enumerate(_stretches(draw, long)):
            segments[f"sg{n}-{m}"] = _segment(draw, n, m, low, high)
        if draw(st.integers(0, 4)):
            sills[f"si{n}"] = _sill(draw, n, long)
            for m in range(draw(st.integers(0, 3))):
                bolts[f"bt{n}-{m}"] = _bolt(draw, n, m, long)
    outline = tuple(at(point) for point in plan.points)
    joists = {
        "jf0": JoistField(
            storey="st0",
            outline=outline,
            direction_deg=draw(st.sampled_from((0.0, 90.0))),
            species=measured("Douglas fir-larch"),
            boards=draw(st.sampled_from(("straight boards", "diagonal boards", "panel"))),
            board_thickness_in=measured(0.75),
        )
    }
    girders, posts = _girders(draw, plan)
    openings = {}
    if draw(st.booleans()):
        openings["vo0"] = VentOpening(line="ln0", from_in=20.0, to_in=36.0, bottom_in=4.0, top_in=12.0)
    return Underfloor(
        joists=joists,
        girders=girders,
        posts=posts,
        lines=lines,
        segments=segments,
        sills=sills,
        bolts=bolts,
        openings=openings,
    )


def _line(draw: st.DrawFn, n: int, stretch: Stretch) -> Line:
    """Sides of the plan are relied on (two in each direction at least); lines inside may be."""
    inside = stretch.side is None
    relied = draw(st.sampled_from((True, None, False))) if inside else True
    return Line(
        order=n,
        mark=f"L{n + 1}",
        name="inside" if inside else "side",
        start=at(stretch.a),
        end=at(stretch.b),
        storey="st0",
        position="interior" if inside else "perimeter",
        above=None if inside else f"w0-{stretch.side}",
        relied_on=relied,
        relied_reason="as drawn",
        joists=draw(st.sampled_from(("across", "parallel", "not seen"))),
        rim=draw(st.sampled_from(("rim joist", "blocking", "none", "not seen"))),
        floor_connection=FloorConnection(
            kind=draw(st.sampled_from(("toenails", "none", "not seen"))), nail="8d common", spacing_in=measured(16.0)
        ),
        top_plate=TopPlate(
            layers=1, thickness_in=measured(2.0), width_in=measured(4.0), species=measured("Douglas fir-larch")
        ),
    )


def _stretches(draw: st.DrawFn, long: float) -> list[tuple[float, float]]:
    if long < 120 or draw(st.booleans()):
        return [(0.0, long)]
    middle = 12.0 * (long // 24)
    return [(0.0, middle), (middle, long)]


def _segment(draw: st.DrawFn, n: int, m: int, low: float, high: float) -> Segment:
    kind = draw(st.sampled_from(("cripple wall", "cripple wall", "cripple wall", "joists on sill", "posts", "open")))
    height = 0.0 if kind == "joists on sill" else float(draw(st.integers(12, 60)))
    boards = draw(
        st.sampled_from(("none", "horizontal lumber sheathing, 1x", "diagonal lumber sheathing, 1x", "tar paper"))
    )
    return Segment(
        order=10 * n + m,
        mark=f"S{10 * n + m}",
        line=f"ln{n}",
        from_in=low,
        to_in=high,
        kind=kind,
        height_in=measured(height),
        stud=Stud(
            thickness_in=measured(2.0),
            depth_in=measured(4.0),
            spacing_in=measured(16.0),
            species=measured("Douglas fir-larch"),
        ),
        outside=Sheathing(material=boards),
        assembly="as-cripple-wall" if kind == "cripple wall" else None,
    )


def _sill(draw: st.DrawFn, n: int, long: float) -> SillPiece:
    return SillPiece(
        order=n,
        mark=f"K{n}",
        line=f"ln{n}",
        from_in=0.0,
        to_in=long,
        width_in=measured(6.0),
        thickness_in=measured(2.0),
        species=draw(st.sampled_from(WOODS)),
        projects_inside_in=draw(st.sampled_from((measured(0.0), measured(2.0)))),
        projects_outside_in=measured(0.0),
        gap_in=Fact(state="absent"),
        condition=measured("sound"),
        damp=measured(False),
    )


def _bolt(draw: st.DrawFn, n: int, m: int, long: float) -> Bolt:
    return Bolt(
        order=10 * n + m,
        mark=f"A{10 * n + m}",
        line=f"ln{n}",
        station_in=float(draw(st.integers(4, int(long) - 4))),
        kind="cast-in",
        diameter_in=measured(draw(st.sampled_from((0.5, 0.625)))),
        embedment_in=measured(float(draw(st.integers(3, 9)))),
        edge_in=draw(st.sampled_from((measured(3.0), unknown()))),
        hole_in=measured(0.625),
        nut=draw(st.sampled_from((measured("tight"), measured("loose")))),
        washer="plate",
        rust=measured("surface"),
    )


def _girders(draw: st.DrawFn, plan: Plan) -> tuple[dict[str, Girder], dict[str, Post]]:
    if draw(st.booleans()):
        return {}, {}
    a, b = _crossing(draw, plan)
    at = [(a[0] + (b[0] - a[0]) * s, a[1] + (b[1] - a[1]) * s) for s in (0.3, 0.7)]
    return (
        {"gd0": Girder(start=Point(x_in=12.0 * a[0], y_in=12.0 * a[1]), end=Point(x_in=12.0 * b[0], y_in=12.0 * b[1]))},
        {f"po{n}": Post(order=n, at=Point(x_in=12 * x, y_in=12 * y), girder="gd0") for n, (x, y) in enumerate(at)},
    )


def _foundation(draw: st.DrawFn, ends: Sequence[Stretch]) -> Foundation:
    segments, breaks = {}, {}
    for n, stretch in enumerate(ends):
        long, inside = stretch.long_in, stretch.side is None
        material = draw(st.sampled_from(("poured concrete", "brick", "none"))) if inside else "poured concrete"
        segments[f"fs{n}"] = FoundationSegment(
            order=n,
            mark=f"F{n}",
            line=f"ln{n}",
            from_in=0.0,
            to_in=long,
            material=material,
            top_width_in=measured(7.0),
            top_z_in=measured(float(draw(st.integers(-6, 12)))),
            above_inside_soil_in=measured(10.0),
            footing_width_in=draw(st.sampled_from((measured(12.0), measured(16.0)))),
            depth_in=measured(12.0),
            strength_psi=measured(draw(st.sampled_from((1500.0, 2500.0, 3000.0)))),
            condition=measured("sound"),
        )
        if not draw(st.integers(0, 5)):
            kind = draw(st.sampled_from(("full-depth crack", "crack", "cold joint", "step", "gap")))
            breaks[f"br{n}"] = FoundationBreak(
                line=f"ln{n}", station_in=float(draw(st.integers(12, int(long) - 12))), kind=kind
            )
    return Foundation(segments=segments, breaks=breaks)


def _work(draw: st.DrawFn, survey: Survey) -> Alternative:
    """Panels, hold-downs, bolts and clips by eye on some of the lines."""
    pieces: dict[str, Any] = {}
    for n, (key, segment) in enumerate(survey.underfloor.segments.items()):
        if segment.kind == "cripple wall" and draw(st.booleans()):
            end = min(segment.to_in, segment.from_in + 12.0 * draw(st.integers(3, 12)))
            pieces[f"pn{n}"] = PanelPiece(
                order=n,
                mark=f"P{n}",
                segment=key,
                from_in=segment.from_in,
                to_in=end,
                panel="15/32, 8d",
                edge_spacing_in=draw(st.sampled_from((6.0, 4.0, 3.0))),
            )
            if draw(st.booleans()):
                pieces[f"hd{n}"] = HoldDownPiece(
                    order=n, mark=f"H{n}", segment=key, station_in=segment.from_in + 3.0, capacity_lb=3000.0
                )
    for n, line in enumerate(survey.underfloor.lines):
        if draw(st.booleans()):
            pieces[f"nb{n}"] = BoltPiece(
                order=n, mark=f"B{n}", line=line, station_in=30.0, diameter_in=0.625, embedment_in=7.0, edge_in=3.0
            )
            pieces[f"ti{n}"] = TiePiece(
                order=n, mark=f"T{n}", line=line, from_in=0.0, to_in=60.0, count=6, capacity_lb=400.0
            )
    return Alternative(order=1, mark="A", name="by eye", pieces=pieces)
