"""The tension that a hold-down's anchor must hold, by the option picked from ACI 318-19 17.10.5.3, with its reason.

Each of the options keeps the concrete from being what gives way first. The plain earthquake tension is enough in
categories A and B alone, or where the anchor's own steel is shown to yield before the concrete does.
"""

from __future__ import annotations

from groundsill.loadpath.case import LineCase
from groundsill.loadpath.hold_down_strength import Held, earthquake_rules
from groundsill.loadpath.panel_nailing import panel_expected
from groundsill.loadpath.storeys_over import Bound
from groundsill.loadpath.turning import Turning
from groundsill.standards.conditions import told
from groundsill.standards.statics.walls import end_tension
from groundsill.work.pieces import HoldDownPiece
from groundsill.working.steps import given, greatest, note, scale

__all__ = ["pull_on"]

_OVERSTRENGTH = "for the overstrength tension (17.10.5.3 d)"


def pull_on(
    case: LineCase, turned: Turning, piece: HoldDownPiece, share: float, held: Held | None, bound: Bound
) -> tuple[float, str]:
    """The tension on the anchor, at strength level, and for which force in words.

    ``share`` is its part of the pull at its end; ``held`` what it holds, None where it counts for nothing.
    """
    if bound.words:
        note(f"{bound.words}:")
    if case.lateral == "wind":
        whole, words = case.strength, "for the wind force"
        return _at(case, turned, whole, case.forces.rules.effects.lrfd_dead_factor_5(), share, bound), words
    dead = case.forces.rules.effects.lrfd_dead_factor_7(case.forces.S_DS)
    plain = case.forces.rules.effects.horizontal_effect(case.forces.rho, case.strength)
    if not earthquake_rules(case):
        words = f"for the plain earthquake force: category {case.forces.category} (17.10.1)"
        return _at(case, turned, plain, dead, share, bound), words
    choices = case.reading.house.choices
    picked, reason = choices.anchor_tension, choices.anchor_tension_reason.strip()
    over, why_not = case.overstrength, ""
    if picked != "overstrength" and not reason:
        why_not = f"no reason is given for “{picked}”"
    elif picked == "ductile anchor" and held is not None and held.ductile is not None:
        found = told(held.ductile.conditions)
        if held.ductile.applies:
            words = f"for the plain earthquake tension, the anchor's own steel yielding first (17.10.5.3 a): {reason}"
            return _at(case, turned, plain, dead, share, bound), f"{words}; {found}"
        why_not = f"the anchor's own steel is not shown to yield first (17.10.5.3 a): {found}"
    elif picked == "panel yields":
        expected = panel_expected(turned.brace)
        if expected is not None:
            note(f"basis: {reason}")
            most = expected.high_lb * turned.brace.share
            force = given("V_y", most, "lb", "force at which the panel yields, the high end of what is expected")
            words = f"for the tension when the panel yields (17.10.5.3 b): {reason}"
            return _tension(case, turned, force, dead, share, bound), words
        why_not = "what the panel yields at is not known"
    elif picked == "hold-down's limit":
        if piece.most_lb is not None:
            note(f"basis: {reason}")
            label = f"most that hold-down {piece.mark} can pull, by its report"
            words = f"for the most that the hold-down can pull (17.10.5.3 c): {reason}"
            return given("N_ua", piece.most_lb, "lb", label), words
        why_not = "the most that the hold-down can pull is not given"
    words = f"{_OVERSTRENGTH}, for {why_not}" if why_not else _OVERSTRENGTH
    return _at(case, turned, over, dead, share, bound), words


def _at(case: LineCase, turned: Turning, whole: float, dead: float, share: float, bound: Bound) -> float:
    """The tension from a force on the line, of which the segment takes its share."""
    label = "wind on the segment, strength level" if case.lateral == "wind" else "force on the segment, strength level"
    force = scale(whole, case.taken_by(turned.brace), symbol="V", label=label)
    return _tension(case, turned, force, dead, share, bound)


def _tension(case: LineCase, turned: Turning, force: float, dead: float, share: float, bound: Bound) -> float:
    moment = turned.moment(force, bound.arm_ft)
    pull = greatest(
        end_tension(moment, dead, turned.w_D, turned.b, turned.x_D, turned.d),
        0.0,
        symbol="N_ua",
        label="tension at the end of the segment",
    )
    if share == 1.0:
        return pull
    part = given("β", share, "1", "part of it that this hold-down takes, by their allowable loads")
    return scale(pull, part, symbol="N_ua", label="tension the anchor must hold")
