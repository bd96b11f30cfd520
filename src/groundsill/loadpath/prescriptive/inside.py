"""The exception for a perimeter of unreinforced masonry: a new foundation inside it takes the force (A304.2.2).

The chapter sends such a perimeter to an engineer and its tests; instead a new foundation that is not of the perimeter
may be designed for the chapter's forces, where the floor can carry them there. Whether it can is what the new line's
own chain and the soil under it say, so this alone of the prescriptive answers reads the engineered one.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from groundsill.forces.reading import Reading
from groundsill.loadpath.chain import Chain, Verdict, verdict_of
from groundsill.loadpath.footings import bodies_of
from groundsill.loadpath.prescriptive.result import Answer, PrescriptiveLine, Requirement
from groundsill.standards.iebc_2021.cripple_walls import provision
from groundsill.work.inner import InnerFoundationPiece

__all__ = ["taken_inside"]

_MASONRY = ("brick", "stone", "block")
_ANSWERS: Mapping[Verdict, Answer] = {"passes": "meets", "fails": "short"}


def taken_inside(
    reading: Reading, lines: Sequence[PrescriptiveLine], chains: Sequence[Chain], bodies: Sequence[Chain]
) -> tuple[PrescriptiveLine, ...]:
    """The perimeter lines of one state, each on masonry that a new foundation relieves with the exception's answer."""
    return tuple(_answered(reading, line, chains, bodies) for line in lines)


def _answered(
    reading: Reading, line: PrescriptiveLine, chains: Sequence[Chain], bodies: Sequence[Chain]
) -> PrescriptiveLine:
    stems = reading.on_line(reading.house.survey.foundation.segments, line.line)
    inside = {id: piece for id, piece in reading.inner.items() if line.line in piece.relieves}
    if not inside or not any(stem.material in _MASONRY and stem.reinforced.value is not True for _, stem in stems):
        return line
    rule = provision("engineer-for-masonry")
    stands = {body.id for body in bodies_of(reading) if inside.keys() & body.lines().keys()}
    asked = [*(c for c in chains if c.id in inside), *(b for b in bodies if b.id in stands)]
    word = verdict_of(link.status for chain in asked for link in chain.links)
    told = f"{_names(inside)} inside it: its own chain and the soil under it {_WORDS[word]}"
    found = Requirement(
        f"line/{line.line}/prescriptive/inside",
        "inside",
        rule.clause,
        rule.exceptions[0],
        "",
        _ANSWERS.get(word, "cannot tell"),
        told,
    )
    return replace(
        line,
        requirements=(*line.requirements, found),
        headline=f"{line.headline}; by the exception of {rule.clause}: {told}",
    )


_WORDS: Mapping[Verdict, str] = {
    "passes": "carry the force",
    "fails": "do not carry the force",
    "indicated": "carry the force only as far as is indicated",
    "depends": "depend on facts to be settled",
    "cannot be checked": "cannot all be checked",
    "does not apply": "have nothing to carry",
}


def _names(inside: Mapping[str, InnerFoundationPiece]) -> str:
    return ", ".join(piece.mark or id for id, piece in inside.items())
