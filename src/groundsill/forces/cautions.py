"""What must be said beside the forces: what they leave open, stretch, or take on somebody's word."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from groundsill.forces.levels import base_words, base_z_in, ordered_storeys, outline_of, split_levels
from groundsill.forces.reading import XY, Reading
from groundsill.forces.wind import Wind
from groundsill.house.survey import in_order
from groundsill.house.underfloor import Sheathing
from groundsill.standards.asce7 import Asce7, SiteValues, SystemFactors

__all__ = ["cautions", "cautions_of_wind", "irregular"]

_PANELS = "wood structural panels"


def cautions_of_wind(wind: Wind | None) -> tuple[str, ...]:
    """Which lines wind governs, and what was taken for it."""
    if wind is None:
        return ()
    governed = [line.mark or id for id, line in wind.lines.items() if line.governs]
    if not governed:
        return wind.remarks
    lines = f"line{'s' if len(governed) > 1 else ''} {', '.join(governed)}"
    told = f"wind governs {lines}: 0.6 W is more than 0.7 E_h there, so that each is checked for both"
    return (told, *wind.remarks)


def cautions(
    reading: Reading, rules: Asce7, site: SiteValues, system: SystemFactors, relied_on: Collection[str]
) -> tuple[str, ...]:
    """Every warning that belongs to the forces of a house, whose ids of relied-on lines are given."""
    survey = reading.house.survey
    found = [*site.warnings, *_of_system(reading, rules, system, relied_on), *split_levels(reading)]
    base = base_z_in(reading)
    for id, storey in ordered_storeys(reading):
        if storey.floor_z_in <= base:
            name = storey.name or storey.mark or id
            found.append(
                f"the floor of {name} stands at {storey.floor_z_in:.1f} in., not above the base, so no force is put "
                f"there; {base_words(reading)}: check the heights"
            )
    if reading.house.choices.short_period_cap:
        found.append(
            f"S_DS is capped for C_s and vertical effects ({rules.cite('12.8.1.3')}): that no storey is weak or soft "
            "beside those above it (12.3.2.2), the crawlspace walls among them, is the designer's statement, not "
            "checked here"
        )
    slope = survey.site.slope_rise_per_run.value
    if slope is None:
        found.append(
            "the slope of the ground is not known: steeper than 1:3 is a hillside house, which this work does not cover"
        )
    elif slope > 1 / 3:
        found.append(
            f"hillside: the ground falls {slope:.2f} to 1, steeper than 1:3. Results are incomplete until the floor's "
            "anchorage to the uphill foundation and the tall downhill bents are checked, or an engineer signs off"
        )
    return (*found, *_of_chimneys(reading))


def _of_chimneys(reading: Reading) -> Iterator[str]:
    """A chimney that nobody saw to be tied to the framing or free of it, where that decides about its weight."""
    for id, chimney in in_order(reading.house.survey.building.chimneys):
        taken = reading.marks.get(f"survey.building.chimneys.{id}.tied", ())
        if chimney.base == "own footing" and (chimney.tied.value is None or taken):
            counted = "its weight is left out" if chimney.tied.value is False else "its weight is counted"
            yield f"chimney {chimney.mark or id}: not known for sure whether it is tied to the framing; {counted}"


def _of_system(reading: Reading, rules: Asce7, system: SystemFactors, relied_on: Collection[str]) -> list[str]:
    """Boards and plaster under the factors of a system of wood structural panels."""
    if _PANELS not in system.system:
        return []
    underfloor = reading.house.survey.underfloor
    with_boards = {
        s.line
        for s in underfloor.segments.values()
        if s.kind == "cripple wall" and (_other_than_panel(s.outside) or _other_than_panel(s.inside))
    }
    marks = [line.mark or id for id, line in in_order(underfloor.lines) if id in relied_on and id in with_boards]
    if not marks:
        return []
    beside = rules.boards_beside(system.system)
    assert beside is not None  # every row of wood panels has its row of other boards
    item, (row, R) = rules.row_name(system.system), beside
    reason = reading.house.choices.system_reason.strip()
    return [
        f"system {item} (R {float(system.R):g}) is for walls braced by wood structural panels; as found line"
        f"{'s' if len(marks) > 1 else ''} {', '.join(marks)} {'have' if len(marks) > 1 else 'has'} boards or plaster, "
        f"which stand in row {rules.row_name(row)} with R {R:g}: judged by that row the house as found draws up to "
        f"{float(system.R) / R:.2f} times the force; "
        + (f"the reason printed for {item}: {reason}" if reason else f"no reason is printed for {item}")
    ]


def _other_than_panel(face: Sheathing) -> bool:
    material = face.material.strip().lower()
    return material not in ("", "none") and "panel" not in material and "plywood" not in material


def irregular(reading: Reading) -> list[str]:
    """What the survey itself shows against regularity in plan and height (ASCE 7 12.3.2), in words."""
    building = reading.house.survey.building
    found = [
        f"a re-entrant corner in the outline of {storey.name or storey.mark or id}"
        for id, storey in ordered_storeys(reading)
        if _turns_back(outline_of(reading, storey.outline))
    ]
    if len({frozenset(outline_of(reading, storey.outline)) for storey in building.storeys.values()}) > 1:
        found.append("storeys of different outlines")
    if split_levels(reading):
        found.append("a split level")
    if reading.inner:
        found.append("walls above that stand off the new lines under them (an out-of-plane offset)")
    return found


def _turns_back(points: Sequence[XY]) -> bool:
    """Whether an outline has a corner that points inward."""
    turns = [
        (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
        for a, b, c in zip(points, [*points[1:], *points[:1]], [*points[2:], *points[:2]], strict=True)
    ]
    return min(turns) < 0 < max(turns)
