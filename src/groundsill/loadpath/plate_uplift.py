"""What pulls the plate of a perforated wall up between its ends: its greatest unit shear, along every full-height part.

Each part's own bolts hold it down: by their plate washers across the grain of the sill, by steel and concrete in
tension, and there together with the shear that they carry. Bond and pullout of a new anchor are by its own report.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.bolts_counted import Anchor, anchors_in
from groundsill.loadpath.case import (
    Brace,
    LineCase,
    cannot,
    checked,
    foundation_at,
    moisture_of,
    species_of,
    working_of,
)
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.concrete import PLAIN_FORCE
from groundsill.loadpath.ends import to_end
from groundsill.loadpath.hold_downs import MASONRY, MASONRY_CLAUSE, in_masonry
from groundsill.loadpath.openings import Around, FullHeight
from groundsill.loadpath.stem import cored_strength, near_break, strength_of
from groundsill.standards.aci318_19.pullout import hooked_pullout
from groundsill.standards.aci318_19.scope import anchor_scope
from groundsill.standards.aci318_19.steel import steel_strength_counted, steel_tension, stress_area
from groundsill.standards.aci318_19.strength_factors import design_strength, interaction
from groundsill.standards.aci318_19.tables import table_17_5_3
from groundsill.standards.aci318_19.tension_breakout import seismic_tension, tension_breakout_of
from groundsill.standards.common_practice.weights import table_bolts
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import convert, given, least, multiply, note, scale, subtract
from groundsill.working.value import Mark

__all__ = ["uplift_stage"]

_ACROSS = "3.10.2"
_TENSION = "ACI 318-19 17.6.1, 17.6.2, 17.6.3, 17.10.5"
_TOGETHER = "ACI 318-19 17.8"
_WASHER = "plate washer"
_HOLE_OVER_IN = 1 / 16  # hole in sill and washer over the bolt's diameter
_SET_AFTER = "an anchor set afterwards in old concrete, until it is tested in place"


@dataclass(frozen=True, slots=True)
class _Part:
    """A full-height part with its number and the bolts that stand in it, each with its sill piece."""

    brace: Brace
    n: int
    part: FullHeight
    bolts: tuple[tuple[str, SillPiece, Anchor], ...]

    @property
    def name(self) -> str:
        """What to call it on paper."""
        return f"{self.brace.name}, part {self.n}"


def uplift_stage(case: LineCase, stages: Sequence[Stage]) -> tuple[Stage, ...]:
    """The stage of the plate's uplift, where the line has a perforated wall; ``stages`` hold its bolts in shear."""
    shear = {link.scope_id: link for stage in stages if stage.key == "bolts-concrete" for link in stage.links}
    links: list[Link] = []
    for brace in case.counted():
        if brace.around is not None and brace.share > 0:
            parts = _parts_of(case, brace, brace.around)
            for part in parts:
                links += _links(case, part, parts, brace.around, shear)
    if not links:
        return ()
    return (Stage("plate-uplift", "Uplift along the plate of a perforated wall", "every link must pass", tuple(links)),)


def _parts_of(case: LineCase, brace: Brace, around: Around) -> tuple[_Part, ...]:
    bolts = [(id, sill, anchor) for id, sill in case.sills for anchor in anchors_in(case, sill).anchors]
    return tuple(
        _Part(brace, n, part, tuple(b for b in bolts if part.from_in <= b[2].station_in <= part.to_in))
        for n, part in enumerate(around.parts, start=1)
    )


def _links(case: LineCase, part: _Part, parts: Sequence[_Part], around: Around, shear: dict[str, Link]) -> list[Link]:
    """The bolts of one part: their washers, their steel and the concrete around them, and tension beside shear."""
    address = f"line/{case.id}/plate-uplift/{part.brace.id}.{part.n}"
    clause = case.sdpws.perforated.uplift_clause
    with section(f"{address}/both"):
        pull, words = _pull(case, part, around, case.allowable, "allowable")
    if not part.bolts:
        return [
            checked(
                f"{address}/both", f"bolts of {part.name} against uplift", "segment", part.brace.segment_id,
                level="allowable", unit="lb", demand=pull, capacity=0.0, clause=clause, marks=part.brace.marks,
                reason=f"{words}; no bolt that counts stands in it", working=working_of(case, part.brace),
            )
        ]  # fmt: skip
    washers = _washers(case, part, pull, f"{address}/both", words)
    tension = _tension(case, part, parts, around, f"{address}-tension/both")
    return [washers, tension, _together(case, part, tension, shear, f"{address}-together/both")]


def _pull(case: LineCase, part: _Part, around: Around, whole: float, level: str) -> tuple[float, str]:
    """What pulls a part up in all, lb, at a level of load, and in words."""
    force = scale(whole, case.taken_by(part.brace), symbol="V_i", label=f"force on {part.brace.name}, {level} level")
    t = case.sdpws.perforated.plate_uplift(force, around.C_o, around.counted_ft)
    length = part.part.to_in - part.part.from_in
    long = convert(given("b_i", length, "in", f"length of {part.name}"), "in", "ft")
    pull = multiply(t, long, symbol="t b_i", unit="lb", label=f"uplift of {part.name}")
    return pull, f"t = {float(t):,.0f} plf over {length / 12:.1f} ft"


def _one_bolt(pull: float, part: _Part) -> float:
    count = len(part.bolts)
    return scale(pull, given("1/n", 1 / count, "1", f"{count} bolts share alike"), symbol="N", label="on one bolt")


# ---- The washers on the sill ----------------------------------------------------------------------------------------


def _washers(case: LineCase, part: _Part, pull: float, address: str, words: str) -> Link:
    """The plate washer of the worst bolt across the grain of its sill."""
    title, clause = f"plate washers of {part.name} on the sill", case.nds.cite(_ACROSS)
    bare = [anchor.name for _, _, anchor in part.bolts if not anchor.plate_washer]
    doubts = frozenset[Mark]().union(*(anchor.marks for _, _, anchor in part.bolts))
    if bare:
        reason = f"{words}; no plate washer on {', '.join(bare)}, and what else is under the nut was not measured"
        return cannot(
            address, title, "segment", part.brace.segment_id, clause=clause, reason=reason, marks=doubts
        )  # fmt: skip
    try:
        with section(address):
            demand = _one_bolt(pull, part)
            held = [_bears(case, *bolt) for bolt in part.bolts]
            capacity = doubted(least(*held, symbol="C'", label="the least of its washers"), doubts)
    except OutsideLimits as refused:
        return cannot(
            address, title, "segment", part.brace.segment_id, clause=clause, reason=str(refused), marks=doubts
        )  # fmt: skip
    count = len(part.bolts)
    return checked(
        address, title, "segment", part.brace.segment_id, level="allowable", unit="lb a bolt", demand=demand,
        capacity=capacity, clause=f"{case.sdpws.perforated.uplift_clause}; {clause}",
        reason=f"{words}: {count} bolt{'s' if count > 1 else ''}", working=working_of(case, part.brace),
    )  # fmt: skip


def _bears(case: LineCase, id: str, sill: SillPiece, anchor: Anchor) -> float:
    """What the sill bears under one plate washer, lb."""
    path, name = f"survey.underfloor.sills.{id}", f"sill {sill.mark or id}"
    if sill.condition.value in ("decayed", "soft"):
        raise OutsideLimits(f"{name} is {sill.condition.value}: what it bears cannot be told")
    wood, told = species_of(case, path, sill.species, name)
    if not wood:
        raise OutsideLimits(f"the species of {name} is not known")
    told |= case.reading.noted(f"the condition of {name}, and whether it is damp", path, "condition", "damp")
    side = case.sdpws.washers().read(_WASHER, "side", symbol="l_b")
    width = case.reading.number(f"{path}.width_in", sill.width_in, "b_s", "in", f"width of {name}")
    wide = side if width is None else least(side, width, symbol="b_w", label="washer on the sill")
    to_end_in = max(min(anchor.station_in - sill.from_in, sill.to_in - anchor.station_in) - float(side) / 2, 0.0)
    a_e = given("a_e", to_end_in, "in", "from the washer to the end of the sill piece")
    hole = given("d_h", anchor.diameter_in + _HOLE_OVER_IN, "in", f"hole for {anchor.name}", anchor.marks)
    plate = multiply(side, wide, symbol="l_b b_w", unit="in^2", label="plate washer")
    bored = scale(multiply(hole, hole, symbol="d_h^2", unit="in^2"), 0.7854, symbol="A_h", label="its hole")
    area = subtract(plate, bored, symbol="A", label="net bearing")
    value = doubted(case.nds.perpendicular_value(wood, side, a_e, moisture_of(sill.damp.value)), told)
    return multiply(value, area, symbol="C'", unit="lb", label=f"the sill bears under {anchor.name}")


# ---- Steel and concrete in tension ----------------------------------------------------------------------------------


def _tension(case: LineCase, part: _Part, parts: Sequence[_Part], around: Around, address: str) -> Link:
    """One bolt of a part in tension at strength level: its steel, and the cone that it and its neighbours pull out."""
    title = f"bolts of {part.name} in tension"
    refused = _refused(case, part)
    if refused is not None:
        clause, reason = refused
        return cannot(address, title, "segment", part.brace.segment_id, clause=clause, reason=reason)
    whole, words = _asked(case)
    try:
        with section(address):
            note(words)
            demand = _one_bolt(_pull(case, part, around, whole, "strength")[0], part)
            found = [_held(case, bolt, parts) for bolt in part.bolts]
            capacity = least(*(held for held, _ in found), symbol="φN_n", label="the weakest of its bolts")
    except OutsideLimits as outside:
        return cannot(address, title, "segment", part.brace.segment_id, clause=_TENSION, reason=str(outside))
    return checked(
        address, title, "segment", part.brace.segment_id, level="strength", unit="lb a bolt", demand=demand,
        capacity=capacity, clause=_TENSION, extension=next((e for _, e in found if e), ""),
        reason=f"{_ways(part)}, {words}",
        working=working_of(case, part.brace),
    )  # fmt: skip


def _ways(part: _Part) -> str:
    """By what the bolts of a part are checked in tension, in words."""
    if all(anchor.hook_in is not None for _, _, anchor in part.bolts):
        return "steel, breakout and pullout of the hook (17.6.3.2.2 b)"
    return "steel and breakout; bond and pullout are by the anchor's own report"


def _hook(anchor: Anchor, f_c: float) -> float:
    """Design strength of a hooked bolt against pulling out of cracked concrete."""
    assert anchor.hook_in is not None
    e_h = given(
        "e_h", anchor.hook_in, "in", f"hook of {anchor.name}, inside of its shaft to the tip", anchor.hook_marks
    )
    d_a = given("d_a", anchor.diameter_in, "in", "bolt diameter", anchor.marks)
    phi = table_17_5_3().read("pullout or pryout, cast in", "tension")
    return design_strength(phi, hooked_pullout(f_c, e_h, d_a))


def _asked(case: LineCase) -> tuple[float, str]:
    """The line's force at strength level that anchors in concrete are checked for, and in words."""
    if case.lateral == "wind":
        return case.strength, "for the wind force"
    if case.forces.category in PLAIN_FORCE:
        whole = case.forces.rules.effects.horizontal_effect(case.forces.rho, case.strength)
        return whole, f"for the plain earthquake force: category {case.forces.category} (17.10.1)"
    return case.overstrength, "for the overstrength force (17.10.5)"


def _refused(case: LineCase, part: _Part) -> tuple[str, str] | None:
    """The clause and the reason why the bolts of a part cannot be checked in tension."""
    for _, _, anchor in part.bolts:
        under = foundation_at(case.reading, case.id, anchor.station_in)
        if under is not None and under[1].material in MASONRY:
            return MASONRY_CLAUSE, in_masonry(under[1].material)
        if under is None or under[1].material != "poured concrete":
            return _TENSION, f"no poured concrete was surveyed under {anchor.name}"
        if under[1].strength_psi.value is None:
            return _TENSION, "the strength of the concrete is not known"
        if under[1].top_width_in.value is None:
            return _TENSION, "the width of the concrete is not known"
        if anchor.edge_in is None or anchor.embedment_in is None:
            return _TENSION, f"how deep {anchor.name} goes and how far it stands from the face is not known"
        if not anchor.new and (anchor.hook_in is None or anchor.kind != "cast-in"):
            return (
                "ACI 318-19 17.6.3",
                f"what {anchor.name} has for a head or hook was not seen (hook_in): its pullout is not known",
            )
        if anchor.kind != "cast-in" and not anchor.report:
            return "ACI 318-19 17.6.3, 17.6.5", f"{anchor.name} has no report, and bond and pullout are by that"
        broken = near_break(case, anchor.station_in, ("step",))
        if broken:
            return _TENSION, f"{anchor.name}: {broken}"
    return None


def _held(case: LineCase, bolt: tuple[str, SillPiece, Anchor], parts: Sequence[_Part]) -> tuple[float, str]:
    """Design strength of one bolt in tension, lb, its share of the cone of a close group; and the extension."""
    anchor = bolt[2]
    under = foundation_at(case.reading, case.id, anchor.station_in)
    assert under is not None and anchor.edge_in is not None and anchor.embedment_in is not None
    id, stem = under
    path = f"survey.foundation.segments.{id}.top_width_in"
    width = case.reading.number(path, stem.top_width_in, "b_w", "in", f"width of the concrete of {stem.mark or id}")
    f_c = strength_of(case, id, stem)
    assert width is not None and f_c is not None
    near = given("c_near", anchor.edge_in, "in", f"{anchor.name} to the nearest face", anchor.edge_marks)
    far = subtract(width, near, symbol="c_far", label="to the other face")
    if float(far) <= 0:
        raise OutsideLimits(
            f"{anchor.name} stands {float(near):g} in. from a face of concrete {float(width):g} in. wide"
        )
    group = _group(anchor, [b[2] for p in parts for b in p.bolts])
    s = given("s", group[-1].station_in - group[0].station_in, "in", f"{len(group)} bolts in one cone")
    h_ef = given("h_ef", min(a.embedment_in or 0.0 for a in group), "in", "embedment", anchor.marks)
    cone = tension_breakout_of(
        h_ef,
        f_c,
        c_left=given("c_left", to_end(case, group[0].station_in), "in", "to the end of the concrete"),
        c_right=given("c_right", to_end(case, group[-1].station_in), "in", "to the other end"),
        c_near=near,
        c_far=far,
        s_along=s,
        anchor="cast in" if anchor.kind == "cast-in" else "post-installed",
    )
    ways = [scale(cone.design, 1 / len(group), symbol="φN_cb/n", label="one bolt's part of the cone")]
    if anchor.hook_in is not None:
        ways.append(_hook(anchor, f_c))
    if case.lateral == "earthquake" and case.forces.category not in PLAIN_FORCE:
        ways = [seismic_tension(way) for way in ways]
    held = least(*ways, _steel(anchor), symbol="φN_n", label=f"{anchor.name}: the least of its ways of failing")
    strength = "assumed" if cored_strength(case, id) is None else "tested"
    if anchor.kind == "cast-in":
        return held, anchor_scope(f_c, "cast in", strength).extension
    return held, anchor_scope(f_c, "post-installed", strength).extension or _SET_AFTER


def _group(anchor: Anchor, every: Sequence[Anchor]) -> list[Anchor]:
    """The bolts whose cones run into each other, this one among them: neighbours at most 3 h_ef apart."""
    row = sorted(every, key=lambda a: a.station_in)
    first = last = row.index(anchor)
    reach = 3 * max(a.embedment_in or 0.0 for a in row)
    while first > 0 and row[first].station_in - row[first - 1].station_in <= reach:
        first -= 1
    while last < len(row) - 1 and row[last + 1].station_in - row[last].station_in <= reach:
        last += 1
    return row[first : last + 1]


def _steel(anchor: Anchor) -> float:
    """Design strength of a bolt's own steel in tension, lb; it is taken as mild until tested."""
    row, table = str(Fraction(anchor.diameter_in).limit_denominator(16)), table_bolts()
    threads = table.read(row, "threads per inch", symbol="n_t")
    counted = steel_strength_counted(
        table.read(row, "ultimate stress", symbol="f_u"), table.read(row, "yield stress", symbol="f_ya")
    )
    d_a = given("d_a", anchor.diameter_in, "in", f"diameter of {anchor.name}", anchor.marks)
    nominal = steel_tension(stress_area(d_a, threads), counted)
    return design_strength(table_17_5_3().read("steel, ductile", "tension"), nominal)


# ---- Tension beside shear -------------------------------------------------------------------------------------------


def _together(case: LineCase, part: _Part, tension: Link, shear: dict[str, Link], address: str) -> Link:
    """Tension and shear on the bolts of a part at once."""
    title = f"bolts of {part.name} in tension and shear at once"
    sheared = [shear[id] for id in dict.fromkeys(id for id, _, _ in part.bolts) if id in shear]
    open_links = [link for link in (tension, *sheared) if link.ratio is None]
    marks = frozenset[Mark]().union(*(link.marks for link in (tension, *sheared)))
    if open_links or not sheared:
        reason = f"{open_links[0].title}: {open_links[0].reason}" if open_links else "their shear is not known"
        return cannot(
            address, title, "segment", part.brace.segment_id, clause=_TOGETHER, reason=reason, marks=marks,
            working=working_of(case, part.brace),
        )  # fmt: skip
    worst = max(sheared, key=lambda link: link.ratio or 0.0)
    with section(address):
        r_N = given("r_N", tension.ratio or 0.0, "1", tension.title, marks)
        r_V = given("r_V", worst.ratio or 0.0, "1", worst.title, marks)
        used = interaction(r_N, r_V)
    return checked(
        address, title, "segment", part.brace.segment_id, level="strength", unit="", demand=used, capacity=1.0,
        clause=_TOGETHER, extension=tension.extension or worst.extension,
        reason=f"{float(r_N):.2f} of the strength in tension and {float(r_V):.2f} of that in shear",
        working=(*tension.working, tension.address, worst.address),
    )  # fmt: skip
