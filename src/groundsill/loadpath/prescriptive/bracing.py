"""How much bracing the prescriptive way asks of a line, and what it asks of the panels: ends, vents, holes, steps."""

from __future__ import annotations

import math

from groundsill.house.plan import steps_up
from groundsill.loadpath.prescriptive.asking import Asking, by_number, feet
from groundsill.loadpath.prescriptive.panels import Panels, least_panel_in, panels_of, room_in
from groundsill.loadpath.prescriptive.result import Answer, Requirement
from groundsill.loadpath.prescriptive.walls import TAPE_IN, stories_words
from groundsill.standards.iebc_2021.bracing import BracingAsked, bracing_asked, table_a304_lengths, vent_holes
from groundsill.work.pieces import SplicePiece, StrapPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import convert, given, note

__all__ = ["bracing_requirements", "least_of", "line_bracing"]

_STUD_SPACE_IN = 16.0  # where the spacing of the studs was not measured
_NEAR_IN = 12.0  # a strap nearer than this to a step is the step's
_DIAGONAL = "diagonal lumber sheathing, 1x"


def line_bracing(asking: Asking) -> BracingAsked | str:
    """Feet and panels that the line is asked for, worked out on the sheet; in words why nobody can say."""
    measures = asking.measures
    if measures.length_in <= 0:
        return measures.unbraced
    if measures.stud_in is None:
        return "the height of a wall is not known"
    try:
        with section(asking.address("bracing")):
            what = "walls of stucco under heavy tile" if asking.heavy else "all other walls and roofs"
            note(f"{asking.rules.name}: {stories_words(measures.stories)} above, {what}")
            p = asking.rules.bracing(measures.stories, asking.heavy)
            L = given("L", measures.length_in, "in", "length of the line on cripple walls, its openings included")
            h = given("h", measures.stud_in, "in", "height of the tallest studs in the line", measures.marks)
            return bracing_asked(p, convert(L, "in", "ft"), h)
    except OutsideLimits as refused:
        return str(refused)


def bracing_requirements(asking: Asking, asked: BracingAsked | str) -> tuple[Requirement, ...]:
    """Everything the line is asked for that has to do with its panels."""
    if asking.measures.length_in <= 0:
        reason = f"{asking.measures.unbraced}: there is nothing to brace"
        return (asking.told("bracing", "bracing-share", "does not apply", reason),)
    with quiet():
        panels = panels_of(asking.reading, asking.line, asking.measures, asking.pieces)
    boards = None if panels.counted else _diagonal(asking)
    if boards is not None:
        answer, why = boards
        if answer == "meets":  # sheathed so the wall is none of the weaknesses: no panel is asked of it
            return (asking.told("bracing", "cripple-wall-bracing", answer, why), *_steps(asking))
        total = None if isinstance(asked, str) else asked.total_ft
        return (asking.told("bracing", "cripple-wall-bracing", answer, why, total, 0.0, "ft"), *_steps(asking))
    found = [_share(asking, asked, panels), _ends(asking, panels), _vents(asking, panels)]
    if isinstance(asked, BracingAsked):
        found[1:1] = [_room(asking, asked)]
        found.append(_holes(asking, asked, panels))
    return (*found, *_steps(asking))


def _share(asking: Asking, asked: BracingAsked | str, panels: Panels) -> Requirement:
    has = panels.length_in / 12
    said = _panels_said(panels)
    if isinstance(asked, str):
        return asking.told("bracing", "bracing-share", "cannot tell", "; ".join((asked, *said)), None, has, "ft")
    answer = by_number(float(asked.total_ft), has, math.inf if panels.unsure else 0.0, TAPE_IN / 12)
    return asking.told("bracing", "bracing-share", answer, "; ".join(said), asked.total_ft, has, "ft")


def _panels_said(panels: Panels) -> tuple[str, ...]:
    count = len(panels.counted)
    first = f"{count} panel{'' if count == 1 else 's'} of {', '.join(feet(length) for _, _, length in panels.counted)}"
    said = [first if count else "no panel that counts"]
    said += [f"not counted: {words}" for words in panels.left_out]
    return (*said, *panels.unsure)


def _diagonal(asking: Asking) -> tuple[Answer, str] | None:
    """Old diagonal boards from end to end are bracing already (A303.1 item 6); None where there are none."""
    walls = [segment for _, segment in asking.measures.walls if segment.kind == "cripple wall"]
    faces = [next((f for f in (w.outside, w.inside) if f.material == _DIAGONAL), None) for w in walls]
    if not walls or any(face is None for face in faces):
        return None
    states = {face.condition.value for face in faces if face is not None}
    if states == {"sound"}:
        return "meets", "diagonal boards from end to end, sound: no weakness by A303.1"
    if "decayed" in states:
        return "short", "diagonal boards, decayed in places"
    return "cannot tell", "diagonal boards from end to end; whether they are sound was not seen everywhere"


def _room(asking: Asking, asked: BracingAsked) -> Requirement:
    """Whether the length asked for finds room between tall vents, doors and gaps."""
    with quiet():
        runs = room_in(asking.reading, asking.measures, 12 * float(asked.least_ft))
    room = sum(counted for _, _, counted in runs) / 12
    answer = by_number(float(asked.total_ft), room, 0.0, TAPE_IN / 12)
    where = ", ".join(f"{feet(a)} to {feet(b)}" for a, b, _ in runs) or "nowhere"
    words = f"room for panels between openings too tall for one: {where}"
    if answer == "short":
        words += "; where the share finds no room the bracing is designed by A301.3"
    return asking.told("room", "alternative-design", answer, words, asked.total_ft, room, "ft")


def _ends(asking: Asking, panels: Panels) -> Requirement:
    """Whether a panel stands at each end of the cripple walls."""
    walls, space = asking.measures.walls, asking.measures.stud_spacing_in or _STUD_SPACE_IN
    low, high = walls[0][1].from_in, walls[-1][1].to_in
    if not panels.counted:
        answer: Answer = "cannot tell" if panels.unsure else "short"
        return asking.told("ends", "bracing-spread", answer, "no panel that counts", 2, 0)
    gaps = {"start": (low, panels.counted[0][0]), "end": (panels.counted[-1][1], high)}
    open_ends = {end: gap for end, gap in gaps.items() if gap[1] - gap[0] > space + TAPE_IN}
    if not open_ends:
        return asking.told("ends", "bracing-spread", "meets", "a panel at each end", 2, 2)
    said, excused = [], True
    for end, (a, b) in open_ends.items():
        why = _in_the_way(asking, a, b)
        said.append(f"the panel nearest the {end} stands {feet(b - a)} from it{f', {why} between' if why else ''}")
        excused = excused and bool(why)
    answer = "cannot tell" if excused else "short"
    tail = "; whether that is as near as can be is for the official" if excused else ""
    return asking.told("ends", "bracing-spread", answer, "; ".join(said) + tail, 2, 2 - len(open_ends))


def _in_the_way(asking: Asking, low: float, high: float) -> str:
    """What stands in a stretch of the line where a panel would."""
    obstructions = asking.reading.on_line(asking.reading.house.survey.underfloor.obstructions, asking.id)
    spans = [(o.from_in, o.to_in, f"{o.kind} {o.mark or id}") for id, o in asking.measures.openings]
    spans += [(o.from_in, o.to_in, f"{o.kind} {o.mark or id}") for id, o in obstructions]
    spans += [(s.from_in, s.to_in, "a gap in the wall") for _, s in asking.measures.walls if s.kind == "open"]
    return ", ".join(dict.fromkeys(words for a, b, words in spans if a < high and b > low))


def _vents(asking: Asking, panels: Panels) -> Requirement:
    """Whether every opening inside a panel is low enough."""
    if panels.cut:
        words = f"{', '.join(panels.cut)} reaches too high for a panel: the panel ends beside it"
        return asking.told("vents", "vents-in-panels", "short", words)
    if not panels.counted:
        return asking.told("vents", "vents-in-panels", "does not apply", "no panel that counts")
    return asking.told("vents", "vents-in-panels", "meets", "no opening in a panel reaches too high")


def _holes(asking: Asking, asked: BracingAsked, panels: Panels) -> Requirement:
    """How many ventilation holes the panels are asked for: those that are there, else those of the length asked."""
    if panels.counted and not panels.inside:
        reason = "the panels are on the outside face: no space is closed behind them"
        return asking.told("holes", "stud-space-holes", "does not apply", reason)
    space = asking.measures.stud_spacing_in
    if space is None:
        reason = "the spacing of the studs is not known: how many holes are drilled is counted on site"
        return asking.told("holes", "stud-space-holes", "on site", reason)
    there = panels.length_in if panels.counted else 12 * float(asked.total_ft)
    with section(asking.address("holes")):
        b = given("b", there, "in", "length of the panels" if panels.counted else "length of the panels asked for")
        s = given("s_s", space, "in", "spacing of the studs")
        count = vent_holes(b, s, given("h", asking.measures.stud_in or 0.0, "in", "height of the tallest studs"))
    least, most = (table_a304_lengths().read(f"ventilation hole, {end}") for end in ("least", "most"))
    reason = f"round holes of {float(least):g} to {float(most):g} in., drilled through the panels"
    return asking.told("holes", "stud-space-holes", "on site", reason, count, None, marks=asking.measures.marks)


def _steps(asking: Asking) -> tuple[Requirement, ...]:
    """Straps across the places where the walls of the line change their height."""
    walls = [segment for _, segment in asking.measures.walls]
    steps = [after.from_in for before, after in zip(walls, walls[1:], strict=False) if steps_up(before, after)]
    if not steps:
        return ()
    strapped = [station for station in steps if _strapped(asking, station)]
    answer = by_number(len(steps), len(strapped))
    where = ", ".join(f"{station / 12:.1f} ft" for station in steps)
    words = f"the walls step at {where}; a strap joins the top plate across each"
    told = asking.told("steps", "stepped-walls", answer, words, len(steps), len(strapped), marks=asking.measures.marks)
    return (told,)


def _strapped(asking: Asking, station: float) -> bool:
    splices = [p for _, p in asking.of_kind(SplicePiece) if p.member == "top plate"]
    straps = [p for _, p in asking.of_kind(StrapPiece)]
    old = asking.reading.on_line(asking.reading.house.survey.underfloor.splices, asking.id)
    return (
        any(abs(piece.station_in - station) <= _NEAR_IN for piece in splices)
        or any(strap.from_in < station < strap.to_in for strap in straps)
        or any(s.kind == "strap" and abs(s.station_in - station) <= _NEAR_IN for _, s in old)
    )


def least_of(asked: BracingAsked | str, stud_in: float | None) -> float | None:
    """Least length of one panel in the line, ft, also where nobody can say how much bracing is asked."""
    if isinstance(asked, BracingAsked):
        return float(asked.least_ft)
    with quiet():
        return None if stud_in is None else least_panel_in(stud_in) / 12
