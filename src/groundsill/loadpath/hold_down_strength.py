"""What the anchor of a hold-down holds in tension, by every way of failing of ACI 318-19 17.6.

Steel, breakout of the concrete, bond of an adhesive; pullout and blowout of the side face where it is cast in with a
head. Against earthquake in categories C to F all but the steel count for three quarters (17.10.5.4). Hold-downs side by
side at one end of a panel, nearer than their cones or bond reach, pull as a group, each with its part of the group.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.adhesives import Glue, apart, glue_of
from groundsill.loadpath.case import LineCase
from groundsill.loadpath.concrete import PLAIN_FORCE
from groundsill.loadpath.ends import to_end
from groundsill.loadpath.faces import across
from groundsill.loadpath.stem import height_of, how_known, strength_of
from groundsill.standards.aci318_19.bond import bond_of, bond_reach
from groundsill.standards.aci318_19.pullout import (
    blowout_corner_factor,
    blowout_of_group,
    headed_pullout,
    hooked_pullout,
    side_face_blowout,
)
from groundsill.standards.aci318_19.scope import anchor_scope
from groundsill.standards.aci318_19.seismic import DuctileAnchor, ductile_anchor
from groundsill.standards.aci318_19.steel import steel_strength_counted, steel_tension, stress_area
from groundsill.standards.aci318_19.strength_factors import design_strength
from groundsill.standards.aci318_19.tables import table_17_5_3
from groundsill.standards.aci318_19.tension_breakout import seismic_tension, tension_breakout_of
from groundsill.standards.common_practice import table_bolts
from groundsill.standards.conditions import told
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import given, least, note, scale

__all__ = ["Held", "earthquake_rules", "held_by", "row_of", "share_of"]

_HOOKED = "cast-in hooked"
_SIDE = "concrete breakout, no supplementary reinforcement, cast in"
_NOT_TESTED = "an anchor set afterwards in old concrete, until it is tested in place"
_NO_HEAD = "the bearing area of the anchor's head is not given"
_NO_HOOK = "how far the anchor's hook stands out is not given (anchor_hook_in)"

Way = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Held:
    """One anchor in tension, lb: what it holds, by which way of failing, in what words, the extensions it rests on.

    ``ductile`` is whether its own steel yields first, None where nobody asked.
    """

    design: float
    way: str
    words: str
    extension: str
    ductile: DuctileAnchor | None = None


@dataclass(frozen=True, slots=True)
class _Set:
    """An anchor where it is set: measures in inches, the group it pulls with, and its part of that group."""

    piece: HoldDownPiece
    f_c: float
    h_ef: float
    near: float
    far: float
    end: float
    group: tuple[HoldDownPiece, ...]
    part: float


def earthquake_rules(case: LineCase) -> bool:
    """Whether the rules for earthquake hold (17.10.1)."""
    return case.lateral == "earthquake" and case.forces.category not in PLAIN_FORCE


def share_of(piece: HoldDownPiece, beside: Sequence[HoldDownPiece]) -> float:
    """The part of the pull at an end that one of its hold-downs takes, by their allowable loads."""
    return piece.capacity_lb / sum(p.capacity_lb for p in beside) if piece in beside else 1.0


def held_by(
    case: LineCase, piece: HoldDownPiece, beside: Sequence[HoldDownPiece], id: str, stem: FoundationSegment
) -> Held:
    """What the anchor of a hold-down holds; ``beside`` are those that are pulled with it at its end, itself included.

    Raises:
        OutsideLimits: when a fact is wanting, or the anchor lies outside what the chapter covers.
    """
    f_c = strength_of(case, id, stem)
    assert f_c is not None and piece.anchor_edge_in is not None
    tall = height_of(stem)
    if tall is not None and piece.anchor_embedment_in >= tall:
        raise OutsideLimits(f"an anchor {piece.anchor_embedment_in:g} in. deep goes through concrete {tall:g} in. high")
    near, far = across(case, id, stem, piece.anchor_edge_in)
    h_ef = given("h_ef", piece.anchor_embedment_in, "in", "embedment of the anchor")
    end = given("c_end", to_end(case, piece.station_in), "in", "anchor to the end of the concrete along the line")
    placed = _Set(piece, f_c, h_ef, near, far, end, tuple(beside) or (piece,), share_of(piece, beside))
    quake = earthquake_rules(case)
    glue = glue_of(piece.adhesive, f_c, quake) if piece.anchor == "adhesive" else None
    steel, stresses = _steel(piece)
    ways = {"breakout": _breakout(placed, glue)}
    if glue is not None:
        ways["bond"] = _bond(placed, glue)
    else:
        ways |= _hooked(placed) if piece.anchor == _HOOKED else _headed(placed)
    nominal = least(*(v[1] for v in ways.values()), symbol="N_n", label="least nominal strength that concrete governs")
    if quake:
        ways = {way: (seismic_tension(v[0]), v[1]) for way, v in ways.items()}
    ways["steel"] = steel
    way = min(ways, key=lambda key: float(ways[key][0]))
    design = least(*(v[0] for v in ways.values()), symbol="φN_n", label="weakest way of failing in tension")
    ductile = None
    if quake and case.reading.house.choices.anchor_tension == "ductile anchor":
        d_a = given("d_a", piece.anchor_diameter_in, "in", "anchor diameter")
        free = piece.anchor_stretch_in
        stretch = None if free is None else given("l_s", free, "in", "length of the rod free to stretch")
        ductile = ductile_anchor(d_a, steel[1], nominal, *stresses, stretch, piece.anchor_braced)
    words, extension = _told(case, placed, glue, id)
    return Held(design, way, words, extension, ductile)


def _told(case: LineCase, placed: _Set, glue: Glue | None, id: str) -> tuple[str, str]:
    """What is said of the anchor beside its figure, and every extension that figure rests on."""
    piece, kind = placed.piece, "cast in" if glue is None else "post-installed"
    spacing = min((abs(p.station_in - piece.station_in) for p in placed.group if p is not piece), default=None)
    edge = min(placed.near, placed.far, placed.end)
    kind_of = "adhesive" if glue is not None else "cast in, torqued"
    distances, too_near = apart(piece.adhesive, piece.anchor_diameter_in, edge, spacing, kind_of)
    scope = anchor_scope(placed.f_c, kind, how_known(case, id))
    beyond = (scope.extension or (_NOT_TESTED if glue is not None else ""), glue.extension if glue else "", too_near)
    splitting = f"against splitting (17.9.2): {told(distances)}"
    words = (glue.words if glue is not None else "", splitting)
    return "; ".join(text for text in words if text), "; ".join(dict.fromkeys(text for text in beyond if text))


def _steel(piece: HoldDownPiece) -> tuple[Way, tuple[float, float]]:
    """Design and nominal strength of the rod in tension, and its ultimate and yield stress; mild until tested."""
    row = str(Fraction(piece.anchor_diameter_in).limit_denominator(16))
    table = table_bolts()
    threads = table.read(row, "threads per inch", symbol="n_t")
    ultimate = table.read(row, "ultimate stress", symbol="f_u")
    yielding = table.read(row, "yield stress", symbol="f_ya")
    counted = steel_strength_counted(ultimate, yielding)
    d_a = given("d_a", piece.anchor_diameter_in, "in", "anchor diameter")
    nominal = steel_tension(stress_area(d_a, threads), counted)
    return (design_strength(table_17_5_3().read("steel, ductile", "tension"), nominal), nominal), (counted, yielding)


def row_of(placed: Sequence[HoldDownPiece], piece: HoldDownPiece, reach: float) -> tuple[HoldDownPiece, ...]:
    """Those of some hold-downs that stand in an unbroken row with one, each within ``reach`` inches of the next."""
    row = sorted(placed, key=lambda p: p.station_in)
    at = row.index(piece)
    first, last = at, at
    while first > 0 and row[first].station_in - row[first - 1].station_in < reach:
        first -= 1
    while last + 1 < len(row) and row[last + 1].station_in - row[last].station_in < reach:
        last += 1
    return tuple(row[first : last + 1])


def _together(placed: _Set, reach: float) -> tuple[int, float, float, float]:
    """How many pull together, the outermost apart, how far off centre, and this one's part of what they hold."""
    row = row_of(placed.group, placed.piece, reach)
    if len(row) == 1:
        return 1, 0.0, 0.0, 1.0
    parts = [share_of(p, row) for p in row]
    pulled = sum(part * p.station_in for part, p in zip(parts, row, strict=True))
    off = abs(pulled - sum(p.station_in for p in row) / len(row))
    note(f"{len(row)} hold-downs at one end, nearer than {reach:.3g} in.: they pull as a group")
    return len(row), row[-1].station_in - row[0].station_in, off, share_of(placed.piece, row)


def _breakout(placed: _Set, glue: Glue | None) -> Way:
    _, wide, off, part = _together(placed, 3 * float(placed.h_ef))
    cone = tension_breakout_of(
        placed.h_ef,
        placed.f_c,
        c_left=placed.end,
        c_near=placed.near,
        c_far=placed.far,
        s_along=wide,
        e_N=off,
        anchor="cast in" if glue is None else "post-installed",
        failure=_SIDE if glue is None else glue.failure,
    )
    return _part(cone.design, cone.nominal, part, "N_cb")


def _bond(placed: _Set, glue: Glue) -> Way:
    d_a = given("d_a", placed.piece.anchor_diameter_in, "in", "anchor diameter")
    count, wide, off, part = _together(placed, 2 * float(bond_reach(d_a, glue.reach)))
    bond = bond_of(
        d_a,
        placed.h_ef,
        glue.cracked,
        glue.reach,
        c_left=placed.end,
        c_near=placed.near,
        c_far=placed.far,
        s_along=wide,
        n=float(count),
        e_N=off,
        failure=glue.failure,
    )
    return _part(bond.design, bond.nominal, part, "N_a")


def _hooked(placed: _Set) -> dict[str, Way]:
    """Pullout of an L or J bolt by its hook, in cracked concrete; no rule has it burst the side face (17.6.4)."""
    piece = placed.piece
    if piece.anchor_hook_in is None:
        raise OutsideLimits(_NO_HOOK)
    e_h = given("e_h", piece.anchor_hook_in, "in", "hook, from the inside of the shaft to its tip")
    d_a = given("d_a", piece.anchor_diameter_in, "in", "anchor diameter")
    out = hooked_pullout(placed.f_c, e_h, d_a)
    phi = table_17_5_3().read("pullout or pryout, cast in", "tension")
    return {"pullout of the hook": (design_strength(phi, out), out)}


def _headed(placed: _Set) -> dict[str, Way]:
    """Pullout of the head, and blowout of the side face where the head lies deep beside it."""
    if placed.piece.anchor_head_in2 is None:
        raise OutsideLimits(_NO_HEAD)
    head = given("A_brg", placed.piece.anchor_head_in2, "in^2", "net bearing area of the head")
    out = headed_pullout(head, placed.f_c)
    phi = table_17_5_3().read("pullout or pryout, cast in", "tension")
    found = {"pullout": (design_strength(phi, out), out)}
    if float(placed.h_ef) > 2.5 * float(placed.near):
        burst = side_face_blowout(placed.near, head, placed.f_c, placed.h_ef)
        count, wide, _, part = _together(placed, 6 * float(placed.near))
        if count > 1:
            burst = blowout_of_group(burst, placed.near, wide)
        else:
            corner = blowout_corner_factor(placed.near, placed.end)
            burst = scale(burst, corner, symbol="N_sb", label="beside the end of the concrete")
        phi = table_17_5_3().read(_SIDE, "tension")
        found["blowout of the side face"] = _part(design_strength(phi, burst), burst, part, "N_sb")
    return found


def _part(design: float, nominal: float, part: float, symbol: str) -> Way:
    """Design and nominal strength of one anchor: its part of the group's."""
    if part == 1.0:
        return design, nominal
    by = given("β", part, "1", "its part of the pull on the group")
    label = "its part of the group"
    return scale(design, by, symbol=f"φ{symbol}", label=label), scale(nominal, by, symbol=symbol, label=label)
