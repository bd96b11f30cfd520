"""How far the top of each braced part moves in the design earthquake, against what the standard allows its storey.

The wall's end posts stretch (by the modulus for stability, the lesser one), its sheathing and nails give, and it tips
on what holds its ends down; the elastic movement is then amplified for what an earthquake adds beyond it. An end that
dead load holds down does not lift. Where it lifts, the hold-down's own give is needed: without it the movement is not
known, but how much give the limit leaves is told.
"""

from __future__ import annotations

from dataclasses import dataclass

from groundsill.forces.reading import doubted
from groundsill.loadpath.case import Brace, LineCase, cannot, checked, working_of
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.held_ends import hold_downs_at
from groundsill.loadpath.hold_downs import why_not_counted
from groundsill.loadpath.storeys_over import Over, over_line
from groundsill.loadpath.turning import LOWEST_GRADE, WAYS, Turning, Way, turning_of
from groundsill.standards.statics.walls import end_tension, unit_shear
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.sheet import section
from groundsill.working.steps import divide, given, multiply, note, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["drift_stage"]

_FINISHES = "all other structures"  # old plaster was not made to follow the drift
_LEAST_POST_IN2 = 1.5 * 3.5  # one modern stud: no end post is smaller


@dataclass(frozen=True, slots=True)
class _Give:
    """The give of the pulled end at strength level, inches, or None and why nobody can say; and what pulls it, lb."""

    delta_a: float | None
    pull: float
    words: str


def drift_stage(case: LineCase) -> Stage:
    """The drift of every part that counts."""
    counted = case.counted()
    over = over_line(case) if counted else None
    links = tuple(_drift(case, brace, over) for brace in counted if over is not None)
    return Stage("drift", "Drift of the storey", "every link must pass", links or (_none(case),))


def _none(case: LineCase) -> Link:
    address = f"line/{case.id}/drift/{case.id}/both"
    reason = "nothing that is braced can drift"
    return cannot(address, "drift", "line", case.id, clause="", reason=reason, applies=False)


def _drift(case: LineCase, brace: Brace, over: Over) -> Link:
    """The drift of one part, pushed the way that moves it more."""
    address, title = f"line/{case.id}/drift/{brace.id}/both", f"drift of {brace.name}"
    clause = f"{case.sdpws.clauses.deflection}, {case.forces.rules.cite('12.8.6, 12.12.1')}"
    if brace.share <= 0:
        reason = "no force comes to it"
        return cannot(address, title, "segment", brace.segment_id, clause="", reason=reason, applies=False)
    with section(address):
        limit = _limit(case, brace)
        differ = any(hold_downs_at(case, brace, way) for way in WAYS)  # with none, both ways are one
        ways = [_one_way(case, brace, over, way, address) for way in (WAYS if differ else WAYS[:1])]
        least = max((moved for moved, _ in ways), key=float)
        unknown = [give for _, give in ways if give.delta_a is None]
        worse = max(ways, key=lambda pair: float(pair[0]))[1]
    if unknown and float(least) <= float(limit):
        worst = max(unknown, key=lambda give: float(give.pull))
        left = _left(case, brace, least, limit)
        reason = f"{worst.words}; the limit leaves {left:.2f} in. for it"
        marks = marks_of((least, limit, worst.pull))
        return cannot(address, title, "segment", brace.segment_id, clause=clause, reason=reason, marks=marks)
    return checked(
        address,
        title,
        "segment",
        brace.segment_id,
        level="strength",
        unit="in",
        demand=least,
        capacity=limit,
        clause=clause,
        reason="beyond the limit with no give at its ends at all" if unknown else worse.words,
        working=working_of(case, brace),
    )


def _limit(case: LineCase, brace: Brace) -> float:
    """Allowable drift over the height of the part, inches."""
    rules, risk = case.forces.rules, case.reading.house.survey.site.risk_category
    ratio = rules.drift_limits().read(_FINISHES, risk, symbol="Delta_a/h_sx")
    height = given("h_sx", brace.height_in or 0.0, "in", f"height of {brace.name}", case.reading.marked(_height(brace)))
    return rules.allowable_drift(ratio, height)


def _height(brace: Brace) -> str:
    return f"survey.underfloor.segments.{brace.segment_id}.height_in"


def _one_way(case: LineCase, brace: Brace, over: Over, way: Way, address: str) -> tuple[float, _Give]:
    """The design drift pushed one way, inches (with no give at the ends where nobody knows it), and that give."""
    rules = case.forces.rules
    held = [p for p in hold_downs_at(case, brace, way) if why_not_counted(case, p) is None]
    turned = turning_of(case, brace, held, way, address)
    force = scale(case.strength, case.taken_by(brace), symbol="V_i", label=f"force on {brace.name}, strength level")
    v, long = _sheared(case, turned, force)
    give = _give(case, turned, over, held, force)
    E, A = _post(case, turned)
    assert brace.stiffness_lb_in is not None  # a part without stiffness is not counted
    length = float(turned.b) if brace.around is None else brace.sheathed_in / 12
    stiff = float(brace.stiffness_lb_in) * float(turned.h) / (1000.0 * length)
    G_a = given("G_a", stiff, "kip/in", f"apparent shear stiffness of {brace.name}", marks_of((brace.stiffness_lb_in,)))
    moved = case.sdpws.wall_deflection(v, turned.h, E, A, long, G_a, give.delta_a or 0.0)
    return rules.design_drift(case.forces.system.C_d, moved, _importance(case)), give


def _sheared(case: LineCase, turned: Turning, force: float) -> tuple[float, float]:
    """Unit shear and length put in: of a perforated wall its greatest unit shear and what counts of its parts."""
    around = turned.brace.around
    if around is None:
        return unit_shear(force, turned.b), turned.b
    return case.sdpws.perforated.plate_uplift(force, around.C_o, around.counted_ft), around.counted_ft


def _importance(case: LineCase) -> float:
    return case.forces.rules.importance_factor(case.reading.house.survey.site.risk_category)


def _give(case: LineCase, turned: Turning, over: Over, held: list[HoldDownPiece], force: float) -> _Give:
    """What the pulled end gives under the pull at strength level."""
    arm = max((bound.arm_ft for bound in over.bounds(turned.brace)), key=float)
    f_D = case.forces.rules.effects.lrfd_dead_factor_7(case.forces.S_DS)
    pull = end_tension(turned.moment(force, arm), f_D, turned.w_D, turned.b, turned.x_D, turned.d)
    if float(pull) <= 0:
        note("dead load outweighs the pull: the end does not lift")
        return _Give(0.0, pull, "dead load holds its ends down")
    if not held:
        words = f"an end lifts by a pull of {float(pull):,.0f} lb and nothing holds it: its give is not known"
        return _Give(None, pull, words)
    unknown = [p.mark for p in held if p.give_in is None]
    if unknown:
        words = f"what hold-down {', '.join(unknown)} gives under {float(pull):,.0f} lb is not entered"
        return _Give(None, pull, words)
    capacity = sum(p.capacity_lb for p in held)
    at_capacity = given("δ_T", max(p.give_in or 0.0 for p in held), "in", "give of the hold-down at its allowable load")
    part = divide(pull, given("T_a", capacity, "lb", "allowable tension"), symbol="T/T_a", unit="1")
    delta = multiply(at_capacity, part, symbol="Delta_a", unit="in", label="give of the end, in proportion")
    return _Give(delta, pull, f"hold-down gives {float(delta):.2f} in. under {float(pull):,.0f} lb")


def _post(case: LineCase, turned: Turning) -> tuple[float, float]:
    """Modulus and section of an end post, psi and square inches; the least there is where nobody knows them."""
    post = turned.post
    E = doubted(case.nds.stability_modulus(post.species, post.grade or LOWEST_GRADE), post.wood)
    if post.along_in is None or post.across_in is None:
        doubt = Mark("assumed range", "the size of an end post: one stud of 1 1/2 by 3 1/2 in.")
        return E, given("A", _LEAST_POST_IN2, "in^2", "section of one stud: the post's size is not known", (doubt,))
    along = given("c_1", post.along_in, "in", f"side of the post along the wall: {post.words}", post.marks)
    across = given("c_2", post.across_in, "in", "side of the post across the wall", post.marks)
    return E, multiply(along, across, symbol="A", unit="in^2", label="section of an end post")


def _left(case: LineCase, brace: Brace, moved: float, limit: float) -> float:
    """How much give at the ends would bring the part to its limit, inches."""
    spare = (float(limit) - float(moved)) * float(_importance(case)) / float(case.forces.system.C_d)
    long = brace.length_in if brace.around is None else 12 * float(brace.around.counted_ft)
    return spare * long / (brace.height_in or 1.0)
