"""The gravity take-down on paper: dead, live and snow load of every wall, line, girder and post."""

from __future__ import annotations

from collections.abc import Mapping

from groundsill.forces.gravity import Load, TakeDown
from groundsill.forces.reading import line_length_in
from groundsill.house.survey import in_order
from groundsill.papers.document import Block, BulletList, Column, GroupRow, Paragraph, Remark, Row, TableBlock
from groundsill.papers.views.words import Units, quantity, sentence, tape
from groundsill.work.document import House

__all__ = ["gravity_blocks"]


def gravity_blocks(house: House, gravity: TakeDown, units: Units, dagger: str = "") -> tuple[Block, ...]:
    """The take-down table, what could not be placed, and remarks; ``dagger`` is that of the weights they come from."""
    under, building = house.survey.underfloor, house.survey.building
    rows: list[Row] = []
    walls = {id: (f"wall {wall.mark or id}", "") for id, wall in in_order(building.walls)}
    rows += _group("Walls of the house, before they hand down", walls, gravity.walls, units)
    lines = {
        id: (f"{line.mark} {line.name}".strip(), tape(line_length_in(house, line), units))
        for id, line in in_order(under.lines)
    }
    rows += _group("Lines under the floor, at the foundation", lines, gravity.lines, units)
    girders = {id: (f"girder {girder.mark or id}", "") for id, girder in in_order(under.girders)}
    rows += _group("Girders, before they hand down", girders, gravity.girders, units)
    posts = {id: (f"post {post.mark or id}", "") for id, post in in_order(under.posts)}
    rows += _group("Posts and their pads", posts, gravity.posts, units)
    columns = (
        Column("Support", share=1.0),
        Column("Length", align="end"),
        Column("Dead", align="end"),
        Column("Live", align="end"),
        Column("Snow", align="end"),
    )
    lead = (
        "From the same items as the seismic weight. Floors, ceilings and roofs span, strip by strip, in the "
        "direction of their joists or rafters; walls hand down what they carry to the line below them, girders to "
        "their posts and to the lines at their ends. Loads are those of use, without load factors."
    )
    notes = (f"Dead loads rest on the figures {dagger}, as the weights they come from do.",) if dagger else ()
    found: list[Block] = [
        Paragraph(lead),
        TableBlock(columns, tuple(rows), "Gravity loads taken down to the foundation", notes),
    ]
    left = gravity.unplaced
    if any(load > 0.5 for load in (left.dead, left.live, left.snow)):
        dead, live, snow = (quantity(load, "lb", units) for load in (left.dead, left.live, left.snow))
        told = f"dead {dead}, live {live}, snow {snow}"
        found.append(Remark("warning", f"No support in the survey carries {told}.", "Load without a place"))
    if gravity.remarks:
        found.append(BulletList(tuple(sentence(remark) for remark in dict.fromkeys(gravity.remarks))))
    return tuple(found)


def _group(heading: str, names: Mapping[str, tuple[str, str]], loads: Mapping[str, Load], units: Units) -> list[Row]:
    rows: list[Row] = []
    for id, (name, reach) in names.items():
        load = loads.get(id)
        if load is not None:
            rows.append((name, reach, *(quantity(value, "lb", units) for value in (load.dead, load.live, load.snow))))
    return [GroupRow(heading), *rows] if rows else []
