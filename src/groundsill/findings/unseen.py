"""What nobody has looked at: line by line what the survey lacks, kinds of look never taken, and what to look at next.

What is missing is what :mod:`groundsill.house.missing` says is missing. What to look at next is counted over the open
questions of all findings: a look that is the only one a finding waits for can change its weight by itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Final

from groundsill.findings.asking import Asking, settles
from groundsill.findings.finding import Finding, Judgement, Reason
from groundsill.forces.reading import Reading
from groundsill.house.missing import Missing, incomplete, together
from groundsill.house.model import FieldFacts, places
from groundsill.house.survey import Survey

__all__ = ["NEXT", "unseen"]

NEXT: Final = "finding/unseen/next"
"""The address of the finding that says what to look at next."""

_ON_A_LINE: Final = ("segments", "sills", "bolts")
_GRAVITY: Final = (
    "material", "top_width_in", "footing_width_in", "depth_in", "condition", "storeys", "walls", "roof", "partitions",
    "layers", "year_built",
)  # fmt: skip
_LIFE: Final = ("condition", "above_outside_soil_in")
_NOTED: Final = "finding/noted/"
_OPEN: Final = "what nobody looked at could change what is said here"
_NONE: Final = "nothing that bears on it is missing here"
_LOOKS: Final = 6  # as many looks as fit a morning under the house: our choice


def unseen(reading: Reading, found: Sequence[Finding]) -> Iterator[Finding]:
    """What to look at next, the kinds of look never taken, then what each line lacks, and last the house."""
    ask = Asking(reading, "unseen")
    yield from _next(ask, found)
    yield from _kinds(ask)
    yield from _lacking(ask)


# ---- What to look at next -------------------------------------------------------------------------------------------


def _next(ask: Asking, found: Sequence[Finding]) -> Iterator[Finding]:
    """The looks that settle most: first those that a finding waits for alone, then those that bear on most."""
    alone: dict[str, list[str]] = {}
    bears: dict[str, list[str]] = {}
    for finding in found:
        if finding.address.startswith(_NOTED):
            continue  # nobody has weighed what was only noted, and so nothing of it can be settled yet
        open_ones = _open(finding)
        for settle in open_ones:
            bears.setdefault(settle, []).append(_name(finding))
            if len(open_ones) == 1 and finding.weight != "matters":
                alone.setdefault(settle, []).append(_name(finding))
    ranked = sorted(bears, key=lambda settle: (-len(alone.get(settle, ())), -len(bears[settle]), settle))[:_LOOKS]
    if not ranked:
        return
    reasons = tuple(
        replace(
            ask.asked(
                "next_look", "cannot tell", look=look, alone=_named(alone.get(look, ())), bears=_named(bears[look])
            ),
            key=f"next_look_{n}",
            settle=look,
        )
        for n, look in enumerate(ranked, start=1)
    )
    yield _finding(
        ask,
        NEXT,
        "What to look at next",
        "the whole house",
        "",
        (reasons, reasons, reasons),
        f"to begin with: {ranked[0]}",
    )


def _open(finding: Finding) -> tuple[str, ...]:
    """What would settle the open questions that a finding's weight hangs on."""
    asked = (*finding.gravity.reasons, *finding.earthquake.reasons, *finding.durability.reasons)
    return tuple(dict.fromkeys(r.settle for r in asked if r.answer == "cannot tell" and r.settle))


def _name(finding: Finding) -> str:
    """A finding in a list: its mark, or what it is where it has none or many."""
    return finding.mark if finding.mark and ", " not in finding.mark else f"{finding.title.lower()} of {finding.place}"


def _named(marks: Sequence[str]) -> str:
    """Marks in words: how many, and the first of them."""
    if not marks:
        return "none by itself"
    some = ", ".join(marks[:6])
    return f"{len(marks)} ({some}{', ...' if len(marks) > 6 else ''})"


# ---- Kinds of look never taken --------------------------------------------------------------------------------------


def _kinds(ask: Asking) -> Iterator[Finding]:
    """The kinds of look that nobody took anywhere at the house."""
    survey = ask.reading.house.survey
    never = [key for key, taken in _taken(survey).items() if not taken]
    if never:
        reasons = tuple(ask.asked(key, "cannot tell") for key in never)
        title = "Looks that nobody took" if len(never) > 1 else "A look that nobody took"
        yield _finding(ask, "finding/unseen/kinds", title, "the whole house", "", (reasons, reasons, reasons))


def _taken(survey: Survey) -> Mapping[str, bool]:
    """Each kind of look, and whether it was taken anywhere or there was nothing to take it of."""
    segments, under = survey.foundation.segments.values(), survey.underfloor
    tests = {test.kind for test in survey.foundation.tests.values()}
    kinds = {seen.kind for seen in survey.observations.values()}
    of = {segment.material for segment in segments}
    return {
        "levels": bool(survey.levels),
        "gauges": bool(survey.monitors) or not survey.foundation.breaks,
        "probes": "poured concrete" not in of or bool(tests & {"probe", "core", "rebound"}),
        "mortar_tests": not of & {"brick", "stone"} or "mortar shear" in tests,
        "anchor_tests": not segments or bool(tests & {"anchor pull", "anchor shear", "torque"}),
        "moisture": not under.sills or any(sill.damp.known for sill in under.sills.values()),
        "water": bool(kinds & {"drainage", "damp", "undermining"}),
        "insects": "insects" in kinds,
        "pits": not segments or any(segment.footing_thickness_in.known for segment in segments),
        "photographs": bool(survey.photos),
        "frost": survey.site.soil.frost_depth_in.known,
    }


# ---- What the survey lacks ------------------------------------------------------------------------------------------


def _lacking(ask: Asking) -> Iterator[Finding]:
    """What each line lacks, and last what the house lacks."""
    survey = ask.reading.house.survey
    lines: dict[str, list[Missing]] = {}
    for missing in incomplete(survey):
        lines.setdefault(_line_of(survey, missing.path), []).append(missing)
    fields = {place.path: place.field for place in places(survey, "survey")}
    for id in (*(key for key, _ in ask.reading.in_order(survey.underfloor.lines)), ""):
        if id in lines:
            told = together(lines[id])
            title = "Not seen yet" if id else "Not known yet of the house"
            where = f"line {ask.line_mark(id)}" if id else "the whole house"
            mine = [(one, _reason(ask, n, one, fields)) for n, (one, _) in enumerate(told, start=1)]
            split = tuple(tuple(r for one, r in mine if _concerns(one, names)) for names in (_GRAVITY, (), _LIFE))
            yield _finding(ask, f"finding/unseen/{id or 'house'}", title, where, id, (split[0], split[1], split[2]))


def _line_of(survey: Survey, path: str) -> str:
    """The line that a missing fact belongs to, empty where it is of the house."""
    parts = path.split(".")
    if len(parts) > 3 and parts[2] == "lines":
        return parts[3]
    if len(parts) > 3 and parts[2] in _ON_A_LINE:
        room = survey.foundation if parts[1] == "foundation" else survey.underfloor
        thing = getattr(room, parts[2]).get(parts[3])
        return str(getattr(thing, "line", ""))
    return ""


def _reason(ask: Asking, n: int, missing: Missing, fields: Mapping[str, FieldFacts]) -> Reason:
    """One thing that is missing as an open question, with how it is measured."""
    facts = fields.get(missing.path)
    how = (facts.measure or facts.label.lower()) if facts is not None else missing.what
    reason = ask.asked("missing", "cannot tell", what=missing.what, needed=missing.needed_for)
    return replace(reason, key=f"missing_{n}", settle=how)


def _concerns(missing: Missing, names: Sequence[str]) -> bool:
    """Whether a missing thing bears on a concern; an earthquake asks for every link, and so for all of it."""
    return not names or missing.path.rsplit(".", 1)[-1] in names


def _finding(
    ask: Asking, address: str, title: str, place: str, line: str,
    reasons: tuple[Sequence[Reason], Sequence[Reason], Sequence[Reason]], says: str = _OPEN,
) -> Finding:  # fmt: skip
    """A finding of this topic: nothing in it can be told."""
    gravity, earthquake, durability = (
        Judgement("cannot tell" if each else "does not matter", says if each else _NONE, tuple(each))
        for each in reasons
    )
    active = ask.asked("changes", "cannot tell")
    every = {reason.key: reason for each in reasons for reason in each}
    return Finding(
        address=address,
        mark="",
        title=title,
        place=place,
        line=line,
        station_in=None,
        observed=(f"nobody has looked yet at {len(every)} thing{'' if len(every) == 1 else 's'}",),
        gravity=gravity,
        earthquake=earthquake,
        durability=durability,
        cause=(),
        active=active,
        confirm=settles(active, gravity, earthquake, durability),
        cures=ask.cures("look"),
        left_alone=ask.left_alone("open"),
        marks=(),
    )
