"""The structural weaknesses that the chapter is for (A303.1), and which of them the house as found has."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Literal

from groundsill.forces.reading import Reading
from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.prescriptive.result import PrescriptiveLine, Weakness
from groundsill.loadpath.prescriptive.scope import foundation_answer
from groundsill.loadpath.prescriptive.walls import perimeter
from groundsill.standards.iebc_2021.cripple_walls import provision
from groundsill.work.inner import InnerFoundationPiece
from groundsill.work.pieces import ConcretePiece

__all__ = ["weaknesses_of"]

Found = tuple[Literal["there", "not there", "cannot tell"], str]


def weaknesses_of(reading: Reading, lines: Sequence[PrescriptiveLine]) -> tuple[Weakness, ...]:
    """Every listed weakness; ``lines`` are the perimeter lines as found (none of them tells of nothing)."""
    return tuple(_weaknesses(reading, lines)) if lines else ()


def _weaknesses(reading: Reading, lines: Sequence[PrescriptiveLine]) -> Iterator[Weakness]:
    yield _weakness("sill-on-ground", _with_material(reading, _no_foundation, "stands on the ground"))
    yield _weakness("isolated-pads", _on_posts(reading))
    yield _weakness("perimeter-gaps", _gaps(reading))
    yield _weakness("masonry-perimeter", _masonry(reading))
    yield _weakness("sill-connection", _short(lines, "bolts", "fewer bolts than are asked"))
    yield _weakness("cripple-wall-bracing", _short(lines, "bracing", "less bracing than is asked"))


def _weakness(key: str, found: Found) -> Weakness:
    rule = provision(key)
    said = "; ".join((found[1], *(f"except {words}" for words in rule.exceptions if found[0] == "there")))
    return Weakness(key, rule.clause, rule.says, found[0], said)


def _names(marks: Sequence[str]) -> str:
    return ", ".join(marks)


def _posts(reading: Reading) -> list[str]:
    """The perimeter lines that stand on posts."""
    segments = reading.house.survey.underfloor.segments
    return [id for id, _ in perimeter(reading) if any(s.kind == "posts" for _, s in reading.on_line(segments, id))]


def _with_material(reading: Reading, is_weak: Callable[[FoundationSegment], bool | None], words: str) -> Found:
    """Perimeter lines on a foundation of some kind, those on posts left out; None of it says that nobody saw."""
    there, unseen, posts = [], [], _posts(reading)
    for id, line in perimeter(reading):
        if id in posts:
            continue
        under = [s for _, s in reading.on_line(reading.house.survey.foundation.segments, id)]
        answers = {is_weak(segment) for segment in under} or {None}
        if True in answers:
            there.append(line.mark or id)
        elif None in answers:
            unseen.append(line.mark or id)
    if there:
        return "there", f"{words}: line {_names(there)}"
    if unseen:
        return "cannot tell", f"the foundation was not seen everywhere under line {_names(unseen)}"
    return "not there", "no perimeter line has it"


def _masonry(reading: Reading) -> Found:
    """A perimeter of unreinforced masonry or stone, whose evaluation it is, and the way round it."""
    answer, words = _with_material(reading, _plain_masonry, "unreinforced masonry or stone")
    if answer != "there":
        return answer, words
    rule = provision("engineer-for-masonry")
    evaluated = f"for a registered design professional to evaluate, with tests ({rule.clause})"
    return answer, "; ".join((words, evaluated, f"or, {rule.exceptions[0]}", *_inner(reading)))


def _inner(reading: Reading) -> Iterator[str]:
    """What the designs on file have inside the lines, in words: new foundations, and concrete that is only drawn."""
    lines = reading.house.survey.underfloor.lines

    def named(ids: Iterable[str]) -> str:
        return _names(list(dict.fromkeys(lines[id].mark or id for id in ids if id in lines)))

    for _, design in reading.in_order(reading.house.alternatives):
        whose, pieces = design.name or design.mark, [piece for _, piece in reading.in_order(design.pieces)]
        strips = [piece for piece in pieces if isinstance(piece, InnerFoundationPiece)]
        if relieved := named(id for piece in strips for id in piece.relieves):
            marks = ", ".join(piece.mark for piece in strips if piece.mark)
            yield f"{whose} has a new foundation inside for line {relieved}{f' ({marks})' if marks else ''}"
        drawn = [p for p in pieces if isinstance(p, ConcretePiece) and p.purpose == "inner foundation"]
        if beside := named(piece.line for piece in drawn if piece.line):
            yield f"{whose} draws concrete inside line {beside}, which no check counts"


def _no_foundation(segment: FoundationSegment) -> bool | None:
    return None if segment.material == "not seen" else segment.material == "none"


def _plain_masonry(segment: FoundationSegment) -> bool | None:
    if segment.material in ("poured concrete", "none"):
        return False
    if segment.material == "stone":
        return True
    if segment.material == "not seen" or (segment.reinforced.value is None and segment.reinforced.state != "absent"):
        return None
    return segment.reinforced.value is not True


def _on_posts(reading: Reading) -> Found:
    there = [reading.house.survey.underfloor.lines[id].mark or id for id in _posts(reading)]
    return (
        ("there", f"posts under line {_names(there)}") if there else ("not there", "no perimeter line stands on posts")
    )


def _gaps(reading: Reading) -> Found:
    breaks = reading.house.survey.foundation.breaks
    there, unseen = [], []
    for id, line in perimeter(reading):
        answer, why = foundation_answer(reading, id)
        cut = any(one.kind == "gap" for _, one in reading.on_line(breaks, id))
        if cut or (answer == "out" and "none from" in why) or why == "no continuous foundation":
            there.append(line.mark or id)
        elif why == "no foundation was surveyed":
            unseen.append(line.mark or id)
    if there:
        return "there", f"line {_names(there)}"
    if unseen:
        return "cannot tell", f"no foundation was surveyed under line {_names(unseen)}"
    return "not there", "every perimeter line has a foundation from end to end"


def _short(lines: Sequence[PrescriptiveLine], key: str, words: str) -> Found:
    """Lines that are short of what the chapter asks; lines to which it does not apply have no such weakness."""
    answers = {
        line.mark or line.line: each.outcome
        for line in lines
        for each in line.requirements
        if _whole(each.address, key)
    }
    short = [mark for mark, answer in answers.items() if answer == "short"]
    unsure = [mark for mark, answer in answers.items() if answer == "cannot tell"]
    if short:
        return "there", f"{words}: line {_names(short)}"
    if unsure:
        return "cannot tell", f"nobody can tell of line {_names(unsure)}"
    return "not there", "no line is short of it"


def _whole(address: str, key: str) -> bool:
    return address.endswith(f"/prescriptive/{key}")
