"""How each state's lines share the force: why the floor is taken as it is, and every line's part of every level.

The sums under a table are the one addition made in this room: they are printed beside the figure they must come to, so
that a reader sees the sharing close, and nothing else uses them.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from groundsill.forces.lines import FLEXIBLE
from groundsill.forces.seismic import Forces, LineForce
from groundsill.forces.share import Direction
from groundsill.papers.document import Block, Column, Inline, Paragraph, Row, TableBlock, strong
from groundsill.papers.views.words import DASH, Units, listed, quantity, sentence, share, with_doubt
from groundsill.study import Run, Study

__all__ = ["floor_paragraph", "sharing_blocks", "sharing_tables"]

Daggers = Mapping[str, str]

_FLEXIBLE_WORDS = (
    "The floor is taken to be flexible: it is cut into strips that run across the lines along the force, and each "
    "strip spans as a simple beam from line to line. A line's share of a level is the part of that level's weight that "
    "comes to it so."
)


def floor_paragraph(run: Run, again: bool = False) -> Paragraph:
    """How the floor is taken in a state, and why it is also taken as rigid; ``again`` where the rules were told."""
    if not run.floor:
        return Paragraph("The floor is taken to be flexible." if again else _FLEXIBLE_WORDS)
    rigid = [line.mark for line in run.line_forces.values() if line.relied_on and line.floor != FLEXIBLE]
    takes = f"it is the rigid floor for {listed(rigid)}" if rigid else "no line takes more by the rigid floor"
    if again:
        told = f"The floor is taken as flexible and as rigid, since {run.floor}; {takes}."
        return Paragraph(told)
    return Paragraph(
        (
            _FLEXIBLE_WORDS + " ",
            strong(f"Here it is also taken as rigid, since {run.floor}. "),
            "A rigid floor shares by the lines' stiffness, with torsion and with the mass standing off by 5 % of the "
            f"plan to either side. Every line takes the worse of the two: {takes}.",
        )
    )


def sharing_blocks(study: Study, daggers: Mapping[str, Daggers]) -> Iterator[Block]:
    """Every state's sharing; states that share alike are printed once. ``daggers`` are by the state's key."""
    told: list[tuple[Run, list[str]]] = []
    for run in study.runs:
        same = next((names for r, names in told if _shares_of(r) == _shares_of(run)), None)
        if same is None:
            told.append((run, [run.name or run.key]))
        else:
            same.append(run.name or run.key)
    for run, names in told:
        state = listed(names) if len(told) > 1 else ""
        if state:
            yield Paragraph(strong(f"{sentence(state).rstrip('.')}:"))
        yield floor_paragraph(run, again=run is not told[0][0] and bool(told[0][0].floor))
        yield from sharing_tables(study.forces, run, study.units, daggers.get(run.key), state)
    for run in study.runs:
        yield from _stiffness_paragraphs(run, study.units)


def _shares_of(run: Run) -> tuple[object, ...]:
    """What the tables of a state show: two states that agree in it are printed once."""
    rows = (replace(line, stiffness_lb_in=None, open="", most_lb=None, cases={}) for line in run.line_forces.values())
    return (run.floor, *rows)


def sharing_tables(
    forces: Forces, run: Run, units: Units, daggers: Daggers | None = None, state: str = ""
) -> tuple[TableBlock, ...]:
    """Each line's share of every level and its force, direction by direction, with the sums that must close."""
    directions: tuple[Direction | None, ...] = ("x", "y", None)
    found = []
    for direction in directions:
        lines = [line for line in run.line_forces.values() if line.direction == direction]
        if lines:
            found.append(_table(forces, run, direction, lines, units, daggers or {}, state))
    return tuple(found)


def _table(
    forces: Forces,
    run: Run,
    direction: Direction | None,
    lines: Sequence[LineForce],
    units: Units,
    own: Daggers,
    state: str,
) -> TableBlock:
    places = range(len(forces.levels))
    rows: list[Row] = [_row(line, run, units, own, places) for line in lines]
    relied = [line for line in lines if line.relied_on]
    summed = bool(relied) and direction is not None
    if summed:
        sums = [math.fsum(line.shares[n] for line in relied) for n in places]
        force = math.fsum(line.force_lb for line in relied)
        rows.append(("sum", "", *(share(s) for s in sums), "", quantity(force, "lb", units), ""))
    columns = (
        Column("Line"),
        Column("Length", align="end"),
        *(Column(f"Share: {level.name}", quantity(level.force_lb, "lb", units), "end", 1.0) for level in forces.levels),
        Column("Brought by collectors", align="end", share=1.0),
        Column("Force, strength", align="end"),
        Column("State", share=1.2),
    )
    notes: list[Inline] = [f"{line.mark}: {line.reason}." for line in lines]
    if direction is None:
        notes += list(_skewed_notes(relied, units))
    elif relied:
        notes.append(_closing(forces, run, units))
    caption = (
        f"Lines along {direction}: share of each level's force" if direction else "Lines skewed to both directions"
    )
    caption = f"{caption}, {state}" if state else caption
    return TableBlock(columns, tuple(rows), caption, tuple(notes), frozenset({len(rows) - 1} if summed else ()))


def _row(line: LineForce, run: Run, units: Units, own: Daggers, places: Sequence[int]) -> Row:
    length = quantity(line.length_ft, "ft", units)
    if not line.relied_on:
        return (line.mark, length, *(DASH for _ in places), DASH, DASH, "not relied on")
    force = with_doubt(quantity(line.force_lb, "lb", units), own.get(f"line/{line.line}", ""))
    state = line.floor if run.floor else "relied on"
    collected = share(max(line.collected, default=0.0))
    return (line.mark, length, *(share(line.shares[n]) for n in places), collected, force, state)


def _stiffness_paragraphs(run: Run, units: Units) -> Iterator[Paragraph]:
    """What a rigid floor shares by in a state, line by line; nothing where the floor is flexible alone."""
    words = list(_stiffness(run, units)) if run.floor else []
    if words:
        yield Paragraph((strong(f"Stiffness, {run.name or run.key}. "), " ".join(words)))


def _stiffness(run: Run, units: Units) -> Iterator[str]:
    relied = [line for line in run.line_forces.values() if line.relied_on]
    known = [line for line in relied if line.stiffness_lb_in is not None]
    if known:
        told = "; ".join(f"{line.mark} {quantity(line.stiffness_lb_in, 'lb/in', units)}" for line in known)
        yield f"A rigid floor shares by the stiffness of the lines along themselves: {told}."
    for line in (line for line in relied if line.open):
        if line.most_lb is None:
            yield f"{line.mark}: what it takes by a rigid floor is not known ({line.open})."
            continue
        yield (
            f"{line.mark}: its stiffness is not known ({line.open}), so that its force by a rigid floor is at most "
            f"{quantity(line.most_lb, 'lb', units)}; the other lines take the worse of this line as stiff as is known "
            "and as stiff as it may be."
        )
    none = [line.mark for line in relied if line.stiffness_lb_in is None and not line.open]
    if none:
        yield f"Nothing that counts braces {listed(none)}: by a rigid floor no force goes there."


def _skewed_notes(relied: Sequence[LineForce], units: Units) -> Iterator[str]:
    for line in relied:
        yield (
            f"{line.mark}: for the earthquake that asks most of it; {quantity(line.other_lb, 'lb', units)} with the "
            "earthquake along the other direction."
        )


def _closing(forces: Forces, run: Run, units: Units) -> str:
    """What the sums of a table must come to."""
    whole = quantity(forces.base_shear_lb, "lb", units)
    skewed = [line.mark for line in run.line_forces.values() if line.direction is None and line.relied_on]
    worse = any(line.floor != FLEXIBLE for line in run.line_forces.values() if line.relied_on)
    if worse:
        return (
            "Every line takes the worse of two floors, so the shares of a level may come to more than 1.000, and the "
            f"forces to more than the base shear, {whole}."
        )
    if skewed:
        return (
            f"With what the skewed lines ({listed(skewed)}) take along this direction the shares of each level come to "
            f"1.000, and the forces to the base shear, {whole}."
        )
    return f"The shares of each level must come to 1.000, and the forces to the base shear, {whole}."
