"""The prescriptive way (IEBC appendix chapter A3) over a house, beside the engineered one, line by line.

`result` what it comes to, as plain data · `scope` in, out, or nobody can tell, item by item · `weaknesses` what the
chapter is for · `walls` how it measures a line · `panels`, `bracing`, `sills`, `ties` what it asks and what is there ·
`both` feet of panel by both ways · `inside` a new foundation inside a masonry perimeter · `asking` what every
requirement needs.

In: a settled survey and its forces. Out: :class:`PrescriptivePath` for the house as found, and for each state one
:class:`PrescriptiveLine` for every perimeter line. Nothing of it enters a chain's verdict.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from groundsill.forces.lines import LineForce
from groundsill.forces.reading import Reading
from groundsill.forces.seismic import Forces
from groundsill.loadpath.case import pieces_on
from groundsill.loadpath.prescriptive.asking import Asking
from groundsill.loadpath.prescriptive.both import both_ways
from groundsill.loadpath.prescriptive.bracing import bracing_requirements, least_of, line_bracing
from groundsill.loadpath.prescriptive.inside import taken_inside
from groundsill.loadpath.prescriptive.result import (
    NEVER_A_PASS,
    Answer,
    BothWays,
    PrescriptiveLine,
    PrescriptivePath,
    Requirement,
    ScopeAnswer,
    ScopeItem,
    Weakness,
    scope_together,
    together,
)
from groundsill.loadpath.prescriptive.scope import foundation_answer, height_answer, scope_of
from groundsill.loadpath.prescriptive.sills import sill_requirements
from groundsill.loadpath.prescriptive.ties import tie_requirements
from groundsill.loadpath.prescriptive.walls import heavy_finishes, measures_of, perimeter
from groundsill.loadpath.prescriptive.weaknesses import weaknesses_of
from groundsill.standards.basis import Basis
from groundsill.standards.iebc_2021.bracing import BracingAsked
from groundsill.standards.iebc_2021.cripple_walls import provision
from groundsill.standards.iebc_2021.rules import Rules, rules_for
from groundsill.work.pieces import Piece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet
from groundsill.working.value import Mark

__all__ = [
    "NEVER_A_PASS", "Answer", "BothWays", "PrescriptiveLine", "PrescriptivePath", "Requirement", "ScopeAnswer",
    "ScopeItem", "Weakness", "doubts_of", "prescriptive_lines", "prescriptive_path", "scope_at", "taken_inside",
    "with_ends",
]  # fmt: skip

_REMARKS = ("official", "alternative-design", "bracing-spread", "panel-nailing", "old-bolts", "no-cracking-anchors",
            "ventilation-kept", "quality-control", "phases")  # fmt: skip


_LINE_BY_LINE = ("prescriptive-height", "foundation")  # of these each line has an answer of its own


def _rules(reading: Reading) -> Rules:
    basis, site = reading.house.basis, reading.house.survey.site
    overrides = {family: (other.edition, other.reason) for family, other in basis.overrides.items()}
    return rules_for(Basis(basis.code, overrides).edition("iebc"), site.jurisdiction)


def prescriptive_path(reading: Reading, lines: Sequence[PrescriptiveLine]) -> PrescriptivePath:
    """Whose rules the prescriptive way goes by, the scope test and the weaknesses; ``lines`` are those as found."""
    rules = _rules(reading)
    items, weak = scope_of(reading, rules), weaknesses_of(reading, lines)
    said = [f"{NEVER_A_PASS}."]
    if rules.local:
        said.append(f"What {rules.name} say of bolts, panels and vents was not seen: it is told by the model chapter.")
    said += [f"{rule.says.removesuffix('.')} ({rule.cite})." for rule in map(provision, _REMARKS)]
    within = scope_together(item.outcome for item in items)
    return PrescriptivePath(rules.id, rules.name, rules.why, within, items, weak, tuple(said))


def with_ends(best: PrescriptivePath, ends: Sequence[tuple[str, Sequence[ScopeItem]]]) -> PrescriptivePath:
    """The scope test over ends of uncertain facts: an answer that some of them turn cannot be told.

    An item that cannot be told already stays as it is.

    Args:
        best: with every fact at its best value.
        ends: what is at an end, by its label, and the items then, all others at their best.
    """
    items = []
    for item in best.scope:
        turned = [label for label, found in ends for other in found if _turns(item, other)]
        if turned:
            words = f"{item.reason}; it depends on: {'; '.join(dict.fromkeys(turned))}"
            item = replace(item, outcome="cannot tell", reason=words)
        items.append(item)
    return replace(best, within=scope_together(item.outcome for item in items), scope=tuple(items))


def _turns(item: ScopeItem, other: ScopeItem) -> bool:
    return other.key == item.key and other.outcome != item.outcome != "cannot tell"


def scope_at(reading: Reading) -> tuple[ScopeItem, ...]:
    """The scope test alone, of a house with a fact at an end of its range."""
    return scope_of(reading, _rules(reading))


def doubts_of(path: PrescriptivePath, states: Sequence[Sequence[PrescriptiveLine]]) -> set[Mark]:
    """Every doubt that the scope test or a line rests on."""
    lines = [line for state in states for line in state]
    found = {mark for item in path.scope for mark in item.marks}
    found |= {mark for line in lines for each in line.requirements for mark in each.marks}
    return found.union(*(line.both.marks for line in lines))


def prescriptive_lines(
    reading: Reading, forces: Forces, line_forces: Mapping[str, LineForce], pieces: Sequence[tuple[str, Piece]]
) -> tuple[PrescriptiveLine, ...]:
    """Every perimeter line with some work laid on it, by both ways.

    Args:
        reading: the settled house.
        forces: its forces.
        line_forces: those of this state.
        pieces: the work laid on the survey in this state.
    """
    rules = _rules(reading)
    with quiet():
        heavy = heavy_finishes(reading)
        whole = [item for item in scope_of(reading, rules) if item.key not in _LINE_BY_LINE]
    found = []
    for id, line in perimeter(reading):
        measures = measures_of(reading, id)
        asking = Asking(reading, rules, id, line, measures, heavy, pieces_on(reading, id, pieces))
        found.append(_line(asking, forces, line_forces[id], whole))
    return tuple(found)


def _line(asking: Asking, forces: Forces, force: LineForce, whole: Sequence[ScopeItem]) -> PrescriptiveLine:
    asked = line_bracing(asking)
    told = (*bracing_requirements(asking, asked), *sill_requirements(asking), *tie_requirements(asking))
    both = both_ways(asking, forces, force, asked)
    within, why = _within(asking, whole)
    known = asked if isinstance(asked, BracingAsked) else None
    outside = f"outside the prescriptive way ({why}); its table: "
    return PrescriptiveLine(
        asking.id,
        asking.line.mark,
        asking.line.name,
        asking.measures.stories,
        within,
        why,
        least_of(asked, asking.measures.stud_in) if asking.measures.length_in > 0 else None,
        known.fewest if known else None,
        known.most if known else None,
        told,
        both,
        together(each.outcome for each in told),
        f"{outside if within == 'out' else ''}{both.words}",
    )


def _within(asking: Asking, whole: Sequence[ScopeItem]) -> tuple[ScopeAnswer, str]:
    """Whether a line stands within the scope: its own walls and foundation, and what is asked of the whole house."""
    try:
        with quiet():
            height = height_answer(asking.reading, asking.rules, asking.id)
    except OutsideLimits as refused:
        height = "cannot tell", str(refused)
    own = [height, foundation_answer(asking.reading, asking.id)]
    found = [*own, *((item.outcome, item.reason) for item in whole)]
    answer = scope_together(each for each, _ in found)
    told = own if answer == "in" else found
    return answer, "; ".join(dict.fromkeys(why for each, why in told if each == answer))
