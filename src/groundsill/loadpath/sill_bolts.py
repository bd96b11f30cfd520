"""What the bolts of one sill piece hold in wood, together: allowable and expected, or why nobody can say.

A gap or shims under the sill, or an underside that is soft to a depth somebody probed, bring in the general dowel
equations; concrete that no core gave a strength for, or that
is weak, and short bolts make the value an extension; so does a bolt whose depth nobody knows and a test stands in for.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from groundsill.forces.reading import doubted
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.bolts_counted import TEST_FACTOR, Anchor, Counted
from groundsill.loadpath.case import LineCase, foundation_at, moisture_of, species_of
from groundsill.loadpath.masonry import brick_bearing
from groundsill.loadpath.masonry_proofs import bolts_wanting, stands_in
from groundsill.loadpath.stem import how_known, strength_of
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import add, divide, given, least, note, scale, subtract
from groundsill.working.value import Mark, marks_of

__all__ = ["CAST_IN", "SPREAD_OF_YIELD", "Wood", "may_hold", "wood_of"]

CAST_IN = (
    "the sill is cast into the concrete and no bolt through it counts: no standard says what concrete against its "
    "sides and ends holds along the wall"
)
SPREAD_OF_YIELD = (0.8, 1.25)  # of what a bolt in wood is expected to yield at; common practice, no source
_BURIED = "it is cast into the concrete: its buried faces were not seen, and nothing is counted on them"
_TEST_EMBEDMENT_IN = 6.0  # the embedment NDS assumes, taken in wood where a test stands in for an unknown one
_UNTESTED = "bearing of concrete whose strength no core gave"
_BEYOND = "yield in concrete under 2,500 psi, or with less than 6 in. of embedment, beyond the tables of NDS"
_BRICK = "yield in the wood with the bearing of brick taken as that of concrete of its guideline strength"
_BY_TEST_LOAD = (
    f"bolts of unknown embedment, by the load each held in a test, over {TEST_FACTOR:g} (common practice, no source)"
)


@dataclass(frozen=True, slots=True)
class Wood:
    """The wood side of one sill piece, lb: ``allowable`` is None when it cannot be checked, and ``why_not`` says why.

    ``doubts`` are what was not seen and taken as sound, in words; ``marks`` those of all that the answer rests on,
    also where nobody can say. ``each`` is every bolt by its id: what it holds and what it is expected to yield at.
    """

    allowable: float | None
    expected: float = 0.0
    extension: str = ""
    why_not: str = ""
    doubts: tuple[str, ...] = ()
    marks: frozenset[Mark] = frozenset()
    each: tuple[tuple[str, float, float], ...] = ()


@dataclass(slots=True)
class _Sum:
    """Bolts added up as they are worked out; ``chosen`` are the marks of the facts that chose how."""

    chosen: frozenset[Mark]
    terms: list[float] = field(default_factory=list)
    expected: float = 0.0
    extensions: list[str] = field(default_factory=list)
    each: list[tuple[str, float, float]] = field(default_factory=list)


def wood_of(case: LineCase, id: str, sill: SillPiece, bolts: Counted) -> Wood:
    """Allowable and expected strength of all bolts of a piece in wood; alike ones are worked out once."""
    path, anchors = f"survey.underfloor.sills.{id}", bolts.anchors
    if sill.cast_in and not anchors:
        return Wood(None, why_not=CAST_IN, marks=bolts.marks)
    condition = sill.condition.value
    chosen = bolts.marks | case.reading.noted(f"the condition of {_named(sill, id)}", f"{path}.condition")
    if not anchors and (why_not := may_hold(sill, bolts)):
        return Wood(None, why_not=why_not, marks=chosen)
    if not anchors:
        return Wood(doubted(0.0, bolts.marks, unit="lb", symbol="ΣZ'"), marks=bolts.marks)
    if condition == "decayed":
        return Wood(doubted(0.0, chosen, unit="lb", symbol="ΣZ'"), marks=chosen)
    if condition == "soft" and sill.soft_depth_in.value is None:
        why_not = "the sill is soft: probe how deep it is soft before anything is counted on it"
        return Wood(None, why_not=why_not, marks=chosen)
    if sill.cast_in and condition is None:
        why_not = (
            "the sill is cast into the concrete, where wood rots unseen: probe it before anything is counted on it"
        )
        return Wood(None, why_not=why_not, marks=chosen)
    label = f"thickness of {_named(sill, id)}"
    thick = case.reading.number(f"{path}.thickness_in", sill.thickness_in, "l_s", "in", label)
    wood, told = species_of(case, path, sill.species, _named(sill, id))
    chosen |= told
    if thick is None or not wood:
        return Wood(None, why_not="the sill's thickness or species is not known", marks=chosen)
    chosen |= case.reading.noted(f"whether {_named(sill, id)} is damp, and lies without a gap", path, "damp", "gap_in")
    doubts = _doubts(sill, anchors)
    taken = tuple(Mark("assumed range", f"{_named(sill, id)}: {text}") for text in doubts)
    gap = case.reading.number(f"{path}.gap_in", sill.gap_in, "g", "in", f"gap under {_named(sill, id)}") or 0.0
    if condition == "soft":
        sound = _sound(case, id, sill, (thick, gap))
        if sound is None:
            return Wood(doubted(0.0, chosen, unit="lb", symbol="ΣZ'"), marks=chosen)
        thick, gap = sound
    total = _Sum(chosen)
    try:
        for group in _alike(case, sill, anchors):
            why_not = _add_group(case, id, sill, group, (thick, gap), taken, total)
            if why_not:
                return Wood(None, why_not=why_not, marks=total.chosen)
    except OutsideLimits as refused:
        return Wood(None, why_not=str(refused), marks=chosen | marks_of((thick,)))
    whole = add(*total.terms, symbol="ΣZ'", label=f"all bolts of {_named(sill, id)}")
    extension = "; ".join(dict.fromkeys(total.extensions))
    return Wood(whole, total.expected, extension, "", doubts, marks_of((whole,)), tuple(total.each))


def _sound(case: LineCase, id: str, sill: SillPiece, measures: tuple[float, float]) -> tuple[float, float] | None:
    """Sound thickness and gap of a sill whose underside is soft: what is soft bears nothing; None when nothing is left.

    The bolt only passes through the soft part, as through a shim.
    """
    path, label = f"survey.underfloor.sills.{id}.soft_depth_in", f"soft underside of {_named(sill, id)}"
    soft = case.reading.number(path, sill.soft_depth_in, "g_s", "in", label)
    assert soft is not None
    if float(soft) >= float(measures[0]):
        return None
    thick = subtract(measures[0], soft, symbol="l_s", label="sound thickness of the sill")
    return thick, add(measures[1], soft, symbol="g", label="gap and soft wood together: neither bears on the bolt")


def may_hold(sill: SillPiece, bolts: Counted) -> str:
    """Why nobody can say that a piece in which no bolt counts holds nothing, in words; empty where it truly does not.

    A piece without any bolt on record holds nothing where somebody looked at it, which its condition tells.
    """
    if sill.condition.value == "decayed":
        return ""
    if bolts.unknown:
        return f"whether its bolts count is not known: {'; '.join(bolts.unknown)}"
    if not bolts.left_out and sill.condition.value is None and sill.condition.state != "absent":
        return "no bolt is on record in it, and nothing tells that anybody saw it: its condition is not known"
    return ""


def _named(sill: SillPiece, id: str) -> str:
    return f"sill {sill.mark or id}"


def _doubts(sill: SillPiece, anchors: Sequence[Anchor]) -> tuple[str, ...]:
    """What was not seen of the sill and its bolts and is taken as sound."""
    found = []
    if sill.cast_in:
        found.append(_BURIED)
    if sill.condition.value is None:
        found.append("its condition was not seen: counted as sound")
    if sill.gap_in.value is None and sill.gap_in.state != "absent":
        found.append("whether there is a gap under it was not seen: none is counted")
    rusty = [a.name for a in anchors if a.doubts]
    if rusty:
        found.append(f"rust of {', '.join(rusty)} was not looked at: counted as sound")
    return tuple(found)


def _alike(case: LineCase, sill: SillPiece, anchors: Sequence[Anchor]) -> list[list[Anchor]]:
    """The bolts in groups that one working serves."""
    groups: dict[tuple[object, ...], list[Anchor]] = {}
    for a in anchors:
        under = foundation_at(case.reading, case.id, a.station_in)
        test = a.test_lb if a.embedment_in is None else None
        end = min(_end(sill, a), 7 * a.diameter_in)
        groups.setdefault((a.diameter_in, a.embedment_in, end, test, under and under[0]), []).append(a)
    return list(groups.values())


def _end(sill: SillPiece, anchor: Anchor) -> float:
    return min(anchor.station_in - sill.from_in, sill.to_in - anchor.station_in)


def _add_group(
    case: LineCase,
    id: str,
    sill: SillPiece,
    group: list[Anchor],
    measures: tuple[float, float],
    taken: tuple[Mark, ...],
    total: _Sum,
) -> str:
    """Work out one bolt of a group and add them all; a reason when they cannot be worked out."""
    one = group[0]
    under = foundation_at(case.reading, case.id, one.station_in)
    f_c, brick = None, False
    if under is not None and stands_in(case, group):
        wanting, doubts = bolts_wanting(case, group)
        total.chosen |= doubts
        if wanting:
            return wanting
        f_c, brick = brick_bearing(case, *under), True
    elif under is not None and under[1].material == "poured concrete":
        f_c = strength_of(case, *under)
    if f_c is None or under is None:
        return "the strength of what the bolts stand in is not known"
    marks = tuple(dict.fromkeys((*taken, *(mark for a in group for mark in a.marks))))
    d = given("D", one.diameter_in, "in", f"bolt diameter in {_named(sill, id)}", marks)
    depth = _TEST_EMBEDMENT_IN if one.embedment_in is None else one.embedment_in
    m = given("l_m", depth, "in", "embedment of the bolt" if one.embedment_in else "embedment that NDS assumes")
    Z, yields, extension = _joint(case, d, m, f_c, sill.species.value or "", measures)
    Z = doubted(Z, total.chosen, marks_of((f_c, *measures)))  # they choose the rule
    if brick or extension or how_known(case, under[0]) == "assumed":
        total.extensions.append(_BRICK if brick else extension or _UNTESTED)
    end = given("a", min(_end(sill, one), 7 * one.diameter_in), "in", "bolt to the end of the sill piece")
    C_delta = case.nds.end_distance_factor(d, end)
    each = case.nds.adjusted_lateral(Z, moisture=moisture_of(sill.damp.value), C_delta=C_delta)
    expected = float(yields) * float(C_delta)
    if one.embedment_in is None:
        assert one.test_lb is not None
        held = given("P_t", one.test_lb, "lb", f"load that {one.name} held in a test", marks)
        factor = given("n_t", TEST_FACTOR, "1", "test load over allowable load: common practice, no source")
        each = least(each, divide(held, factor, symbol="P_t/n", unit="lb"), symbol="Z'", label="no more than the test")
        expected = min(expected, one.test_lb)
        total.extensions.append(_BY_TEST_LOAD)
    total.terms.append(scale(each, float(len(group)), symbol="n Z'", label=f"{len(group)} bolts alike"))
    total.expected += expected * len(group)
    total.each += [(a.id, float(each), expected) for a in group]
    return ""


def _joint(
    case: LineCase, d: float, m: float, f_c: float, species: str, measures: tuple[float, float]
) -> tuple[float, float, str]:
    """Reference value and expected yield of one bolt, and the extension it rests on."""
    thick, gap = measures
    within = float(f_c) >= 2500 and float(m) >= 6
    if float(gap) > 0:
        note("a gap or shims under the sill: the general dowel equations")
        if within:
            open_joint = case.nds.sill_bolt_with_gap(d, thick, gap, species, 0.0, m, f_c)
        else:
            open_joint = case.nds.sill_bolt_with_gap_beyond(d, thick, gap, f_c, species, 0.0, m)
        return open_joint.Z, open_joint.P, "" if within else _BEYOND
    if within:
        joint = case.nds.sill_bolt(d, thick, species, 0.0, m, f_c)
    else:
        joint = case.nds.sill_bolt_weak_concrete(d, thick, f_c, species, 0.0, m)
    return joint.Z, case.nds.expected_of(joint).P, "" if within else _BEYOND
