"""Sill bolts by the prescriptive way: how many each piece of sill is asked for, and which of those there count.

Bolts are counted here, not worked out: old ones that are sound and thick enough count beside new ones, once they have
a plate washer and a tight nut. The engineered chain does not add old to new.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.house.underfloor import Bolt, SillPiece
from groundsill.loadpath.prescriptive.asking import Asking, by_number, feet, inches
from groundsill.loadpath.prescriptive.result import Answer, Requirement, together
from groundsill.standards.iebc_2021.anchors import sill_bolts_asked, spacing_asked, table_a304_3_1_bolts
from groundsill.standards.iebc_2021.bracing import table_a304_lengths
from groundsill.standards.iebc_2021.cripple_walls import table_a304_3_1_side
from groundsill.work.pieces import BoltPiece, SideplatePiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import given

__all__ = ["sill_requirements"]

_STUD_SPACE_IN = 16.0
_PLACE_IN = 0.5


@dataclass(frozen=True, slots=True)
class _Found:
    """The bolts in one piece of sill: those that count by station and diameter, and the others by what they lack."""

    counted: tuple[tuple[float, float], ...]
    mendable: tuple[str, ...]
    unsure: tuple[str, ...]
    left_out: tuple[str, ...]


def sill_requirements(asking: Asking) -> tuple[Requirement, ...]:
    """The line's bolts in all, then piece by piece; and whether the wood of its sills is sound."""
    sills = sorted(asking.reading.on_line(asking.reading.house.survey.underfloor.sills, asking.id), key=_start)
    if not sills:
        reason = "no piece of sill was surveyed on this line"
        return (asking.told("bolts", "anchors", "cannot tell", reason),)
    pieces = [_piece(asking, id, sill) for id, sill in sills]
    asked = [piece.asked for piece in pieces]
    whole = None if None in asked else float(sum(number or 0.0 for number in asked))
    has = float(sum(piece.has or 0.0 for piece in pieces))
    line = asking.told(
        "bolts",
        "anchors",
        together(piece.outcome for piece in pieces),
        f"in {len(pieces)} piece{'' if len(pieces) == 1 else 's'} of sill",
        whole,
        has,
        marks={mark for piece in pieces for mark in piece.marks},
    )
    return (line, *pieces, _sound(asking, sills))


def _start(pair: tuple[str, SillPiece]) -> float:
    return pair[1].from_in


def _piece(asking: Asking, id: str, sill: SillPiece) -> Requirement:
    """One piece of sill: bolts asked, bolts that count, and whether they stand where they should."""
    length, found = sill.to_in - sill.from_in, _bolts_in(asking, sill)
    where = f"sill {sill.mark or id}, {feet(length)}"
    try:
        least = float(_least_diameter(asking.measures.stories))
        diameter = min((D for _, D in found.counted), default=least)
        with section(asking.address("bolts", id)):
            D = given(
                "D", diameter, "in", "diameter of the bolts" if found.counted else "the thinnest that may be used"
            )
            L = given("L_p", length, "in", f"length of sill {sill.mark or id}")
            asked = sill_bolts_asked(float(asking.measures.stories), D, L)
    except OutsideLimits as refused:
        return asking.told("bolts", "anchors", "cannot tell", str(refused), part=id, where=where)
    with quiet():
        spacing = float(spacing_asked(asking.measures.stories, diameter))
        wrong = _misplaced(found.counted, sill, spacing)
    answer: Answer = by_number(float(asked), len(found.counted), len(found.unsure))
    if answer == "meets" and wrong:
        answer = "short"
    said = [f"bolts of {inches(diameter)}, {inches(spacing)} apart at most"]
    said += wrong if len(found.counted) >= float(asked) else []
    said += [f"would count with a plate washer and a tight nut: {', '.join(found.mendable)}"] if found.mendable else []
    said += [f"not seen well enough: {', '.join(found.unsure)}"] if found.unsure else []
    said += [f"not counted: {', '.join(found.left_out)}"] if found.left_out else []
    return asking.told("bolts", "bolt-places", answer, "; ".join(said), asked, len(found.counted), part=id, where=where)


def _least_diameter(stories: int) -> float:
    """The thinnest bolt that the table takes for so many stories, in."""
    table = table_a304_3_1_bolts()
    cells = table.rows.get(str(stories))
    if cells is None:
        table.read(str(stories), table.columns[-1])  # refuses, and says what there is
        raise AssertionError
    return next(float(head) for head, cell in zip(table.columns, cells, strict=True) if not isinstance(cell, str))


def _bolts_in(asking: Asking, sill: SillPiece) -> _Found:
    """Every bolt of a piece, old and new, and every side plate that is strong enough."""
    least = _least_or_half(asking.measures.stories)
    counted: list[tuple[float, float]] = []
    mendable: list[str] = []
    unsure: list[str] = []
    left_out: list[str] = []
    for id, bolt in asking.reading.on_line(asking.reading.house.survey.underfloor.bolts, asking.id):
        if sill.from_in <= bolt.station_in <= sill.to_in:
            name, lacks = bolt.mark or id, _lacks(bolt, least)
            if lacks == "":
                counted.append((bolt.station_in, bolt.diameter_in.value or least))
            else:
                {"washer": mendable, "unsure": unsure}.get(lacks, left_out).append(
                    name if lacks in ("washer", "unsure") else f"{name} ({lacks})"
                )
    for id, piece in asking.of_kind(BoltPiece):
        if sill.from_in <= piece.station_in <= sill.to_in:
            thin = piece.diameter_in < least - 1e-9
            if thin or not piece.plate_washer:
                left_out.append(f"{piece.mark or id} ({'too thin' if thin else 'no plate washer'})")
            else:
                counted.append((piece.station_in, piece.diameter_in))
    side = float(table_a304_3_1_side().read("along the wall, each connection"))
    for id, plate in asking.of_kind(SideplatePiece):
        if sill.from_in <= plate.station_in <= sill.to_in:
            if plate.capacity_lb is None:
                left_out.append(f"{plate.mark or id} (what it carries was not entered from a report)")
            elif plate.capacity_lb >= side:
                counted.append((plate.station_in, least))
            else:
                left_out.append(f"{plate.mark or id} (a side anchorage carries {side:g} lb at least)")
    return _Found(tuple(sorted(counted)), tuple(mendable), tuple(unsure), tuple(left_out))


def _least_or_half(stories: int) -> float:
    try:
        return _least_diameter(stories)
    except OutsideLimits:
        return 0.5


def _lacks(bolt: Bolt, least: float) -> str:
    """What keeps an old bolt from counting as it stands: nothing, a washer or nut, sight, or words that rule it out."""
    D = bolt.diameter_in.value
    if bolt.kind == "screw":
        return "screw anchor"
    if D is not None and least - 1e-9 > D:
        return f"{D:g} in."
    if bolt.rust.value == "heavy":
        return "heavily rusted"
    if D is None or bolt.kind == "not seen" or (bolt.rust.value is None and bolt.rust.state != "absent"):
        return "unsure"
    if bolt.washer == "not seen" or bolt.nut.value is None:
        return "unsure"
    return "" if bolt.washer == "plate" and bolt.nut.value == "tight" else "washer"


def _misplaced(counted: Sequence[tuple[float, float]], sill: SillPiece, spacing: float) -> list[str]:
    """What is wrong with the places of bolts that are enough in number."""
    lengths = table_a304_lengths()
    least, most, short, close = (
        float(lengths.read(row))
        for row in (
            "bolt from the end of a piece, least",
            "bolt from the end of a piece, most",
            "piece of sill below which one bolt does",
            "bolts apart, least",
        )
    )
    stations, length = [station for station, _ in counted], sill.to_in - sill.from_in
    if not stations or length < short:
        return []
    wrong = []
    for end, off in (("start", stations[0] - sill.from_in), ("end", sill.to_in - stations[-1])):
        if not least - _PLACE_IN <= off <= most + _PLACE_IN:
            wrong.append(f"the bolt nearest its {end} stands {off:g} in. from it, {least:g} to {most:g} are asked")
    gaps = [b - a for a, b in zip(stations, stations[1:], strict=False)]
    if gaps and min(gaps) < close - _PLACE_IN:
        wrong.append(f"bolts {min(gaps):g} in. apart, {close:g} in. at least are asked")
    wide = [gap for gap in gaps if gap > spacing + _STUD_SPACE_IN]
    if wide and length >= float(lengths.read("piece of sill from which bolts go by their spacing")):
        wrong.append(f"bolts {max(wide):g} in. apart, more than the spacing and one stud space")
    return wrong


def _sound(asking: Asking, sills: Sequence[tuple[str, SillPiece]]) -> Requirement:
    """Whether the wood of the sills is sound."""
    states = {sill.mark or id: sill.condition.value for id, sill in sills}
    bad = [mark for mark, state in states.items() if state in ("soft", "decayed")]
    blind = [mark for mark, state in states.items() if state is None]
    marks = {mark for id, _ in sills for mark in asking.reading.marked(f"survey.underfloor.sills.{id}.condition")}
    if bad:
        return asking.told("wood", "sound-wood", "short", f"soft or decayed: sill {', '.join(bad)}", marks=marks)
    if blind:
        return asking.told("wood", "sound-wood", "cannot tell", f"not seen: sill {', '.join(blind)}", marks=marks)
    return asking.told("wood", "sound-wood", "meets", "every piece of sill is sound", marks=marks)
