"""The force of a line at the level that anchors in concrete are checked for, when their own yielding sets none."""

from __future__ import annotations

from groundsill.loadpath.case import LineCase
from groundsill.loadpath.prying import PLAIN_FORCE

__all__ = ["anchor_force"]


def anchor_force(case: LineCase) -> tuple[float, str]:
    """Strength level: with overstrength in categories C to F, the plain earthquake force in A and B; or all of wind."""
    if case.lateral == "wind":
        return case.strength, "for the wind force, strength level"
    if case.forces.category in PLAIN_FORCE:
        plain = case.forces.rules.effects.horizontal_effect(case.forces.rho, case.strength)
        return plain, f"for the plain earthquake force: category {case.forces.category} (17.10.1)"
    return case.overstrength, "for the overstrength force (17.10.6)"
