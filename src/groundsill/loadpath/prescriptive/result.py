"""What the prescriptive way comes to, as plain data: the scope item by item, and each line by both ways.

A prescriptive pass is never an engineered pass, so nothing here has a verdict of the chains: a requirement *meets*, is
*short*, or nobody *can tell*. What is asked of the crew and no file of a house can hold is asked *on site*.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from groundsill.working.value import Mark

__all__ = [
    "NEVER_A_PASS",
    "Answer",
    "BothWays",
    "PrescriptiveLine",
    "PrescriptivePath",
    "Requirement",
    "ScopeAnswer",
    "ScopeItem",
    "Weakness",
    "scope_together",
    "together",
]

Answer = Literal["meets", "short", "cannot tell", "on site", "does not apply"]
ScopeAnswer = Literal["in", "out", "cannot tell"]

NEVER_A_PASS = (
    "a line that meets what the prescriptive way asks has not passed an engineered check: the chapter counts feet of "
    "panel, bolts and clips and no force, and its work does not bring the house to the code for new buildings"
)


@dataclass(frozen=True, slots=True)
class ScopeItem:
    """One item of the scope test: ``asks`` in our own words, its outcome and the reason, and where the fact stands."""

    key: str
    clause: str
    asks: str
    outcome: ScopeAnswer
    reason: str
    fact: str
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True)
class Weakness:
    """One structural weakness that the chapter lists, and whether the house has it."""

    key: str
    clause: str
    says: str
    outcome: Literal["there", "not there", "cannot tell"]
    reason: str


@dataclass(frozen=True, slots=True)
class Requirement:
    """One thing the prescriptive way asks of a line: what, how much of it, how much is there.

    ``address`` is permanent and names the section of the sheet with its working: ``line/<id>/prescriptive/<key>``, for
    one piece of sill with its id behind; ``where`` names the piece, and is empty for the whole line. ``asked`` and
    ``has`` are in ``unit`` (``ft``, or ``1`` for a number of things), None where nobody can say.
    """

    address: str
    key: str
    clause: str
    asks: str
    where: str
    outcome: Answer
    reason: str
    asked: float | None = None
    has: float | None = None
    unit: str = "1"
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True)
class BothWays:
    """One line by both ways, in feet of the same panel: 15/32 in., 8d common nails 4 in. apart on all edges.

    The engineered lengths are those at which the panels' allowable unit shear takes all of the line's force, at the
    full force of a new building and at the reduced one (``reduced`` times it). ``ratio_full`` and ``ratio_reduced`` are
    demand over capacity of panels of the prescriptive length. ``why_not`` says what kept it from being worked out.
    """

    prescriptive_ft: float | None
    engineered_full_ft: float | None
    engineered_reduced_ft: float | None
    reduced: float
    allowable_plf: float | None
    unit_shear_full_plf: float | None
    ratio_full: float | None
    ratio_reduced: float | None
    why_not: str
    words: str
    marks: tuple[Mark, ...] = ()


@dataclass(frozen=True, slots=True)
class PrescriptiveLine:
    """A perimeter line in one state of the house: what is asked of it and what is there, and both ways beside it.

    ``within`` says whether the line's own walls and foundation stand within the prescriptive way's scope.
    ``least_panel_ft`` and the numbers of panels describe what the bracing may be made of.
    """

    line: str
    mark: str
    name: str
    stories: int
    within: ScopeAnswer
    within_reason: str
    least_panel_ft: float | None
    fewest_panels: int | None
    most_panels: int | None
    requirements: tuple[Requirement, ...]
    both: BothWays
    outcome: Answer
    headline: str


@dataclass(frozen=True, slots=True)
class PrescriptivePath:
    """The prescriptive way for a house: by whose rules, and whether the house as found stands within them.

    ``weaknesses`` are those the chapter is for; ``remarks`` what it asks beyond what the file of a house can hold.
    """

    rules: str
    name: str
    why: str
    within: ScopeAnswer
    scope: tuple[ScopeItem, ...]
    weaknesses: tuple[Weakness, ...]
    remarks: tuple[str, ...]


def scope_together(answers: Iterable[ScopeAnswer]) -> ScopeAnswer:
    """Several items together: out if one is, in only if all are."""
    found = set(answers)
    return "out" if "out" in found else "cannot tell" if "cannot tell" in found else "in"


def together(answers: Iterable[Answer]) -> Answer:
    """Several requirements together: short if one is, met only if every one that applies is."""
    found = set(answers) - {"does not apply", "on site"}
    worst: tuple[Answer, ...] = ("short", "cannot tell", "meets")
    return next((answer for answer in worst if answer in found), "does not apply")
