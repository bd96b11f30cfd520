"""The bolts in the foundation: breakout along the edge, pryout and steel by ACI 318-19 chapter 17, on a printed basis.

In categories C to F an anchor that concrete governs is checked for the overstrength force, or for the force at which
the wood joint yields, whichever the designer picks with a reason; or the sill exception of the building code is used,
with every condition shown. Under 2,500 psi, with unknown strength or for anchors set afterwards, a result is only
*indicated* until a test in place or an engineer's decision is on record.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from groundsill.house.foundation import FoundationSegment
from groundsill.house.survey import in_order
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.case import LineCase, cannot, checked, expected_at, foundation_at
from groundsill.loadpath.chain import Link
from groundsill.standards.aci318_19.expected import expected_breakout
from groundsill.standards.aci318_19.pryout import pryout_of
from groundsill.standards.aci318_19.scope import anchor_scope
from groundsill.standards.aci318_19.shear_breakout import breakout_parallel_to_edge, breakout_toward_edge
from groundsill.standards.aci318_19.steel import steel_shear, steel_strength_counted, stress_area
from groundsill.standards.aci318_19.strength_factors import design_strength
from groundsill.standards.aci318_19.tables import table_17_5_3
from groundsill.standards.common_practice import table_bolts
from groundsill.standards.ibc_2021.sill_anchors import sill_exception
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, least, note, scale

__all__ = ["Anchor", "concrete_link"]

_CLAUSE = "ACI 318-19 17.7.2, 17.7.3, 17.10.6"
_FAR = 1000.0
_MASONRY = ("brick", "stone", "block")


@dataclass(frozen=True, slots=True)
class Anchor:
    """A bolt that counts, in inches; ``new`` when it is a piece of work."""

    id: str
    station_in: float
    diameter_in: float
    embedment_in: float
    edge_in: float | None
    kind: str
    new: bool
    report: str


@dataclass(frozen=True, slots=True)
class _Concrete:
    """One bolt in concrete, lb: design and nominal strength, which way of failing governs, and any extension."""

    design: float
    nominal: float
    way: str
    extension: str


def concrete_link(
    case: LineCase,
    id: str,
    sill: SillPiece,
    anchors: list[Anchor],
    share: float,
    wood_expected: float | None,
    force: float,
) -> Link:
    """The weakest bolt of a sill piece in the foundation under it."""
    address, title = f"line/{case.id}/bolts-concrete/{id}/both", f"bolts of sill {sill.mark or id} in the foundation"
    if not anchors:
        return cannot(address, title, "sill", id, clause=_CLAUSE, reason="no bolt counts in this piece", applies=False)
    refused = _cannot_be_concrete(case, anchors)
    if refused is not None:
        return cannot(address, title, "sill", id, clause=refused[0], reason=refused[1])
    try:
        with section(address):
            weakest = min(
                (_in_concrete(case, anchor, anchors) for anchor in anchors), key=lambda found: float(found.design)
            )
            if case.reading.house.choices.anchor_basis == "sill exception":
                return _by_exception(case, id, sill, anchors, weakest, address, title, force)
            demand, words = _demand(case, anchors, share, wood_expected)
            mean = expected_breakout(weakest.nominal) if weakest.way != "steel" else None
    except OutsideLimits as outside:
        return cannot(address, title, "sill", id, clause=_CLAUSE, reason=str(outside))
    tested = _by_test(case, anchors, float(demand))
    expected = None
    if mean is not None and share > 0:
        expected = expected_at(
            float(mean.best) * len(anchors),
            share,
            (float(mean.low) / float(mean.best), float(mean.high) / float(mean.best)),
            "brittle",
            "mean of breakout tests at the 5 % fractile's scatter",
        )
    return checked(
        address,
        title,
        "sill",
        id,
        level="strength",
        unit="lb a bolt",
        demand=demand,
        capacity=weakest.design,
        clause=_CLAUSE,
        reason=f"{weakest.way}; {words}" + (f"; {tested}" if tested else ""),
        extension="" if tested else weakest.extension,
        expected=expected,
        working=(f"line/{case.id}/demand", f"line/{case.id}/sill/{id}"),
    )


def _cannot_be_concrete(case: LineCase, anchors: list[Anchor]) -> tuple[str, str] | None:
    """The clause and reason when the bolts stand in something this check does not cover."""
    for anchor in anchors:
        under = foundation_at(case.reading, case.id, anchor.station_in)
        if under is None:
            return _CLAUSE, "no foundation was surveyed under the bolt"
        material = under[1].material
        if material in _MASONRY:
            return (
                "TMS 402 chapter 9; IEBC 2021 A106.2",
                f"{material}: needs both in-place shear tests of the wall and anchor tests in it",
            )
        if material != "poured concrete":
            return _CLAUSE, f"the foundation there is {material}"
        if anchor.edge_in is None:
            return "ACI 318-19 17.7.2.1", "the distance from bolt to the face of the concrete was not measured"
        if _depth(under[1]) is None:
            return "ACI 318-19 17.7.2.6", "the height of the stem is not known"
        if under[1].strength_psi.value is None:
            return "ACI 318-19 17.7.2.2", "the strength of the concrete is not known"
    return None


def _depth(segment: FoundationSegment) -> float | None:
    """Height of concrete below the bolt: what stands above the soil and what is known to go down below it."""
    above = segment.above_inside_soil_in.value
    below = segment.depth_in.value
    if above is None and below is None:
        return None
    return max(above or 0.0, 0.0) + (below or 0.0) or None


def _in_concrete(case: LineCase, anchor: Anchor, anchors: list[Anchor]) -> _Concrete:
    under = foundation_at(case.reading, case.id, anchor.station_in)
    assert under is not None and anchor.edge_in is not None
    id, segment = under
    f_c = case.reading.number(
        f"survey.foundation.segments.{id}.strength_psi",
        segment.strength_psi,
        "f'_c",
        "psi",
        f"concrete of {segment.mark}",
    )
    depth = _depth(segment)
    assert f_c is not None and depth is not None
    d_a = given("d_a", anchor.diameter_in, "in", "bolt diameter")
    h_ef = given("h_ef", anchor.embedment_in, "in", "embedment")
    c_a1 = given("c_a1", anchor.edge_in, "in", "bolt centre to the nearest face")
    h_a = given("h_a", depth, "in", "height of concrete below the bolt's head")
    side = _to_break(case, anchor.station_in)
    apart = min((abs(a.station_in - anchor.station_in) for a in anchors if a.id != anchor.id), default=_FAR)
    count, spacing = (2.0, apart) if apart < 3 * anchor.edge_in else (1.0, 0.0)
    along = breakout_parallel_to_edge(d_a, h_ef, f_c, c_a1, h_a, c_a2=side, n=count, s=spacing)
    found = {"breakout beside the bolt": (along.design, along.nominal)}
    if count > 1:
        note("two bolts closer than three edge distances break out together: half the group's strength each")
        half = [scale(v, 0.5, symbol="φV_cb", label="one bolt of the pair") for v in (along.design, along.nominal)]
        found = {"breakout of two close bolts": (half[0], half[1])}
    if side < 24:
        toward = breakout_toward_edge(
            d_a, h_ef, f_c, given("c_a1", side, "in", "bolt to the break in the foundation"), h_a, c_a2=anchor.edge_in
        )
        found["breakout toward the break"] = (toward.design, toward.nominal)
    steel = _steel(anchor.diameter_in)
    if steel is not None:
        found["steel"] = steel
    prise = pryout_of(
        h_ef, f_c, c_near=anchor.edge_in, anchor="cast in" if anchor.kind == "cast-in" else "post-installed"
    )
    found["pryout"] = (prise.design, prise.nominal)
    way = min(found, key=lambda key: float(found[key][0]))
    design = least(*(v[0] for v in found.values()), symbol="φV_n", label="weakest way of failing in concrete")
    tested = any(t.segment == id and t.kind == "core" for t in case.reading.house.survey.foundation.tests.values())
    scope = anchor_scope(
        f_c, "cast in" if anchor.kind == "cast-in" else "post-installed", "tested" if tested else "assumed"
    )
    extension = scope.extension
    if anchor.kind != "cast-in" and not anchor.report:
        extension = extension or "an anchor set afterwards without its evaluation report"
    return _Concrete(design, found[way][1], way, extension)


def _steel(diameter: float) -> tuple[float, float] | None:
    """Design and nominal strength of the bolt's own steel in shear; its steel is taken as mild until tested."""
    row = str(Fraction(diameter).limit_denominator(16))
    if row not in table_bolts().rows:
        return None
    threads = table_bolts().read(row, "threads per inch", symbol="n_t")
    counted = steel_strength_counted(
        table_bolts().read(row, "ultimate stress", symbol="f_u"), table_bolts().read(row, "yield stress", symbol="f_ya")
    )
    nominal = steel_shear(stress_area(given("d_a", diameter, "in", "bolt diameter"), threads), counted)
    return design_strength(table_17_5_3().read("steel, ductile", "shear"), nominal), nominal


def _to_break(case: LineCase, station: float) -> float:
    """Distance along the line to the nearest break or end of concrete of the same kind; corners run on."""
    cuts = [
        b.station_in
        for _, b in in_order(case.reading.house.survey.foundation.breaks)
        if b.line == case.id and b.kind != "crack"
    ]
    return min((abs(c - station) for c in cuts), default=_FAR)


def _demand(case: LineCase, anchors: list[Anchor], share: float, wood_expected: float | None) -> tuple[float, str]:
    """The force one bolt's concrete must hold, on the basis that was picked, and that basis in words."""
    choices = case.reading.house.choices
    each = given("1/n", 1 / len(anchors), "1", f"{len(anchors)} bolts share alike")
    if choices.anchor_basis == "wood yields first" and wood_expected:
        note(f"basis: {choices.anchor_reason or 'the wood joint yields first'}")
        yields = given("P_y", wood_expected, "lb", "expected yield of all bolts of the piece in wood")
        return scale(
            yields, each, symbol="V_ua", label="force on one bolt when the wood yields"
        ), "for the force at which the wood yields"
    part = given("σ", share, "1", "share of the line's force that comes down on this sill piece")
    whole = scale(case.overstrength, part, symbol="V_ua", label="overstrength force on the sill piece")
    return scale(
        whole, each, symbol="V_ua", label="overstrength force on one bolt"
    ), "for the overstrength force (17.10.6)"


def _by_exception(
    case: LineCase,
    id: str,
    sill: SillPiece,
    anchors: list[Anchor],
    weakest: _Concrete,
    address: str,
    title: str,
    force: float,
) -> Link:
    """The building code's sill exception, every condition shown; outside its tested scope an engineer decides."""
    anchor = min(anchors, key=lambda a: a.edge_in or 0.0)
    under = foundation_at(case.reading, case.id, anchor.station_in)
    f_c = under[1].strength_psi.value if under else None
    nominal = None if sill.thickness_in.value is None else (2.0 if sill.thickness_in.value <= 2.25 else 3.0)
    found = sill_exception(
        anchor.diameter_in,
        anchor.embedment_in,
        anchor.edge_in,
        _to_break(case, anchor.station_in),
        nominal,
        f_c,
        anchor.kind == "cast-in",
    )
    unmet = "; ".join(c.text for c in found.conditions if not c.met)
    if found.applies:
        return cannot(
            address,
            title,
            "sill",
            id,
            clause="IBC 2021 1905.1.8",
            applies=False,
            reason="the sill exception applies: every condition is met, so the wood value stands alone",
        )
    return cannot(
        address,
        title,
        "sill",
        id,
        clause="IBC 2021 1905.1.8",
        reason=f"outside the sill exception's evidence, an engineer decides: {unmet}. "
        f"Breakout by ACI would give {float(weakest.design):,.0f} lb a bolt",
    )


def _by_test(case: LineCase, anchors: list[Anchor], demand: float) -> str:
    """The in-place anchor test that turns an indicated value into a pass, if one is on record."""
    segments = {found[0] for a in anchors if (found := foundation_at(case.reading, case.id, a.station_in)) is not None}
    for _, test in in_order(case.reading.house.survey.foundation.tests):
        if (
            test.segment in segments
            and test.kind == "anchor shear"
            and test.displacement_in is not None
            and test.unit == "lb"
            and test.result >= demand
        ):
            return f"passes by test: {test.result:g} lb at {test.displacement_in:g} in., {test.by} {test.when}"
    return ""
