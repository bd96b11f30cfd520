"""The scope test of the prescriptive way, item by item: in, out, or nobody can tell, each with clause and reason.

The model chapter's scope is that of A301.2, with the foundations that A304.2 sends to an engineer; a place that prints
rules of its own adds its items. The house is judged as found.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial

from groundsill.forces.levels import levels_of, ordered_storeys, split_levels
from groundsill.forces.reading import Reading, line_length_in
from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.prescriptive.result import ScopeAnswer, ScopeItem, scope_together
from groundsill.loadpath.prescriptive.walls import (
    TAPE_IN,
    height_marks,
    perimeter,
    stories_of_house,
    stories_words,
    stud_height_in,
    wall_height_in,
)
from groundsill.standards.iebc_2021.cripple_walls import provision
from groundsill.standards.iebc_2021.rules import Rules
from groundsill.working.errors import OutsideLimits
from groundsill.working.value import Mark

__all__ = ["foundation_answer", "height_answer", "scope_of"]

Found = tuple[ScopeAnswer, str]
_SURVEY = "survey"


def scope_of(reading: Reading, rules: Rules) -> tuple[ScopeItem, ...]:
    """Every item of the scope test that these rules have."""
    if not rules.held:
        refused = f"{rules.name} is not in this program: nothing of its scope can be told"
        return (_item("official", "cannot tell", refused, "basis.code"),)
    return tuple(_items(reading, rules))


def _items(reading: Reading, rules: Rules) -> Iterator[ScopeItem]:
    yield _asked("dwellings", partial(_dwellings, reading, rules), f"{_SURVEY}.building.families")
    yield _asked("poles", partial(_poles, reading), f"{_SURVEY}.underfloor.segments")
    walls = [id for line, _ in perimeter(reading) for id, _ in _walls_on(reading, line)]
    marks = height_marks(reading, walls)
    yield _asked("prescriptive-height", partial(_heights, reading, rules), f"{_SURVEY}.underfloor.segments", marks)
    yield _asked("stories", partial(_stories, reading, rules), f"{_SURVEY}.building.storeys", marks)
    yield _asked("slab", partial(_slab, reading), f"{_SURVEY}.underfloor.lines")
    under = (f"{_SURVEY}.foundation.segments.{id}.reinforced" for id in reading.house.survey.foundation.segments)
    steel = frozenset[Mark]().union(*map(reading.marked, under)) if _has_masonry(reading) else frozenset()
    yield _asked("foundation", partial(_foundations, reading), f"{_SURVEY}.foundation.segments", steel)
    slope = f"{_SURVEY}.site.slope_rise_per_run"
    if _has_limit(rules, "ground slope"):
        yield _asked("slope", partial(_slope, reading, rules), slope, reading.marked(slope))
    if rules.level_floors():
        yield _asked("level-floors", partial(_level_floors, reading), f"{_SURVEY}.building.storeys")


def _asked(key: str, ask: Callable[[], Found], fact: str, marks: Iterable[Mark] = ()) -> ScopeItem:
    """An item with its answer; a limit that nobody has seen leaves it untold."""
    try:
        answer, reason = ask()
    except OutsideLimits as refused:
        answer, reason = "cannot tell", str(refused)
    return _item(key, answer, reason, fact, marks)


def _item(key: str, answer: ScopeAnswer, reason: str, fact: str, marks: Iterable[Mark] = ()) -> ScopeItem:
    rule = provision(key)
    own = {Mark("from memory", f"{rule.cite}, the rule")} if rule.how == "from memory" else set()
    return ScopeItem(key, rule.clause, rule.says, answer, reason, fact, tuple(sorted(own.union(marks))))


def _has_limit(rules: Rules, what: str) -> bool:
    """Whether the rules state a limit, or nobody has seen whether they do."""
    try:
        return rules.limit(what) is not None
    except OutsideLimits:
        return True


def _walls_on(reading: Reading, line: str) -> Sequence[tuple[str, object]]:
    segments = reading.on_line(reading.house.survey.underfloor.segments, line)
    return [(id, segment) for id, segment in segments if segment.kind == "cripple wall"]


def _dwellings(reading: Reading, rules: Rules) -> Found:
    families, most = reading.house.survey.building.families, rules.limit("dwellings")
    assert most is not None
    words = f"{families} dwelling{'' if families == 1 else 's'}; {float(most):g} at most"
    return ("in" if families <= float(most) else "out"), words


def _poles(reading: Reading) -> Found:
    segments = reading.house.survey.underfloor.segments
    marks = [
        line.mark or id
        for id, line in perimeter(reading)
        if any(segment.kind == "posts" for _, segment in reading.on_line(segments, id))
    ]
    if marks:
        told = f"posts stand under {', '.join(marks)}: whether they are set in the ground and hold the house sideways"
        return "cannot tell", f"{told} was not surveyed"
    return "in", "no perimeter line stands on posts"


def height_answer(reading: Reading, rules: Rules, line: str) -> Found:
    """Whether the cripple walls of one line are low enough for the prescriptive way.

    Raises:
        OutsideLimits: when no public page gave the limit.
    """
    most = rules.limit("cripple wall")
    assert most is not None
    segments = reading.on_line(reading.house.survey.underfloor.segments, line)
    walls = [segment for _, segment in segments if segment.kind == "cripple wall"]
    heights = [wall_height_in(reading, segment) for segment in walls]
    known = [height for height in heights if height is not None]
    if known and max(known) > float(most) + TAPE_IN:
        return "out", f"{max(known):g} in. with the sill, {float(most):g} in. at most"
    if len(known) < len(heights):
        return "cannot tell", "the height of a wall is not known"
    return "in", f"{max(known):g} in. with the sill" if known else "no cripple wall"


def _heights(reading: Reading, rules: Rules) -> Found:
    return _by_line(reading, partial(height_answer, reading, rules))


def _by_line(reading: Reading, ask: Callable[[str], Found]) -> Found:
    """What is asked of every perimeter line: the lines that are out, else those of which nobody can tell."""
    found = [(line.mark or id, *ask(id)) for id, line in perimeter(reading)]
    answer = scope_together(each for _, each, _ in found)
    if not found:
        return "cannot tell", "the survey has no perimeter line"
    told: dict[str, list[str]] = {}
    for mark, each, why in found:
        if each == answer:
            told.setdefault(why, []).append(mark)
    return answer, "; ".join(f"{', '.join(marks)}: {why}" for why, marks in told.items())


def _stories(reading: Reading, rules: Rules) -> Found:
    stories, most = stories_of_house(reading), rules.limit("stories")
    assert most is not None
    words = f"{stories_words(stories)} above the cripple walls; {float(most):g} at most"
    if stories != float(most):
        return ("in" if stories < float(most) else "out"), words
    bound = rules.limit("studs under three stories")
    assert bound is not None
    studs = [
        stud_height_in(line, segment)
        for id, line in perimeter(reading)
        for _, segment in reading.on_line(reading.house.survey.underfloor.segments, id)
        if segment.kind == "cripple wall"
    ]
    known = [height for height in studs if height is not None]
    if known and max(known) > float(bound) + TAPE_IN:
        return "out", f"{words}, and studs of {max(known):g} in.; under so many they are {float(bound):g} in. at most"
    if len(known) < len(studs):
        return "cannot tell", f"{words}; the height of some studs is not known"
    return "in", words


def _slab(reading: Reading) -> Found:
    levels, lines = levels_of(reading), reading.house.survey.underfloor.lines
    held = {line.storey for line in lines.values()}
    bare = [
        storey.name or storey.mark or id
        for id, storey in ordered_storeys(reading)
        if levels[id] == 0 and id not in held
    ]
    if bare:
        return "cannot tell", f"no line was surveyed under {', '.join(bare)}: it may stand on a slab"
    return "in", "lines were surveyed under every lowest storey"


def foundation_answer(reading: Reading, line: str) -> Found:
    """Whether one line stands on a foundation that the prescriptive way may use: concrete or reinforced masonry, from
    end to end.
    """
    segments = sorted(reading.on_line(reading.house.survey.foundation.segments, line), key=lambda pair: pair[1].from_in)
    if not segments:
        return "cannot tell", "no foundation was surveyed"
    found = [_material(segment) for _, segment in segments]
    answer = scope_together(each for each, _ in found)
    if answer != "in":
        return answer, "; ".join(dict.fromkeys(why for each, why in found if each == answer))
    reached = 0.0
    for _, segment in segments:
        if segment.from_in > reached + 1.0:
            return "out", f"none from {reached / 12:.1f} to {segment.from_in / 12:.1f} ft"
        reached = max(reached, segment.to_in)
    whole = line_length_in(reading.house, reading.house.survey.underfloor.lines[line])
    if reached < whole - 1.0:
        return "out", f"none from {reached / 12:.1f} to {whole / 12:.1f} ft"
    return "in", "; ".join(dict.fromkeys(why for _, why in found))


def _material(segment: FoundationSegment) -> Found:
    material = segment.material
    if material == "poured concrete":
        return "in", material
    if material == "not seen":
        return "cannot tell", "its material was not seen"
    if material == "none":
        return "out", "no continuous foundation"
    if material == "stone" or segment.reinforced.value is False or segment.reinforced.state == "absent":
        return "out", f"unreinforced {material}"
    if segment.reinforced.value is None:
        return "cannot tell", f"{material}, and whether it is reinforced is not known"
    return "in", f"reinforced {material}"


def _has_masonry(reading: Reading) -> bool:
    """Whether it matters if a foundation is reinforced."""
    return any(s.material in ("brick", "block") for s in reading.house.survey.foundation.segments.values())


def _foundations(reading: Reading) -> Found:
    return _by_line(reading, partial(foundation_answer, reading))


def _slope(reading: Reading, rules: Rules) -> Found:
    most, slope = rules.limit("ground slope"), reading.house.survey.site.slope_rise_per_run.value
    assert most is not None
    if slope is None:
        return "cannot tell", "the slope of the ground was not measured"
    steep = slope > float(most) + 1e-3
    return ("out" if steep else "in"), f"the ground rises {slope:g} in 1; {float(most):.2f} in 1 at most"


def _level_floors(reading: Reading) -> Found:
    levels = levels_of(reading)
    floors: dict[int, set[float]] = {}
    for id, storey in ordered_storeys(reading):
        floors.setdefault(levels[id], set()).add(storey.floor_z_in)
    if split_levels(reading):
        return "out", "split level: floors of one storey lie more than a foot apart"
    stepped = any(max(heights) - min(heights) > 1.0 for heights in floors.values())
    return ("out", "the floors of one storey lie at different heights") if stepped else ("in", "one height a storey")
