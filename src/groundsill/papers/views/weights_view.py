"""The weights on paper: what each assembly weighs layer by layer, then the house item by item.

The figures of the assemblies, and the marks beside every weight, are those recorded on the sheet; the items are the
study's own.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from groundsill.forces.seismic import Forces
from groundsill.forces.weights import BASE, WeightItem
from groundsill.house.survey import in_order
from groundsill.papers.document import Block, Column, GroupRow, Inline, Paragraph, Row, TableBlock
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.views.words import DASH, Units, quantity, short, with_doubt
from groundsill.work.document import House
from groundsill.working.sheet import Sheet, Step
from groundsill.working.value import Mark, Value

__all__ = ["WEIGHTS", "assembly_table", "weight_blocks", "weight_table"]

WEIGHTS = "forces/weights"

_KINDS = {
    "floor": "Floors",
    "ceiling": "Ceilings",
    "roof": "Roofs",
    "wall": "Outside walls",
    "partition": "Partitions",
    "cripple wall": "Cripple walls",
    "chimney": "Chimneys",
}


def weight_blocks(house: House, forces: Forces, sheet: Sheet, doubts: Doubts, units: Units) -> tuple[Block, ...]:
    """Assemblies, then items, then what the seismic weight leaves out."""
    made = assembly_table(house, sheet, doubts, units)
    lead = (
        "Every assembly is the sum of its layers; every item is its area, or volume, times its unit weight. A wall "
        "gives half its weight to the level at its foot and half to the level at its head. The upper half of a "
        "cripple wall counts at the lowest floor; its lower half rests on the foundation and loads the soil, not the "
        "bracing."
    )
    return (Paragraph(lead), *((made,) if made else ()), weight_table(forces, sheet, doubts, units))


def _assembly_sums(sheet: Sheet) -> dict[str, Step]:
    """The step that sums each assembly's layers, by the assembly's name; the first time it was taken."""
    found: dict[str, Step] = {}
    for step in sheet.under(WEIGHTS):
        if step.kind == "sum" and step.title.startswith("weight of "):
            found.setdefault(step.title.removeprefix("weight of "), step)
    return found


def assembly_table(house: House, sheet: Sheet, doubts: Doubts, units: Units) -> TableBlock | None:
    """The unit weight of every assembly in use, layer by layer; None when the sheet holds none."""
    sums = _assembly_sums(sheet)
    rows: list[Row] = []
    heavy = []
    for _, assembly in in_order(house.survey.building.assemblies):
        total = sums.get(assembly.name)
        if total is None or total.result is None:
            continue
        seen = f" ({assembly.seen})" if assembly.seen else ""
        rows.append(GroupRow(f"{assembly.name}, {assembly.kind}{seen}"))
        for layer, (_, weight) in zip(assembly.layers, total.inputs, strict=False):
            times = "" if layer.times == 1 else f", {short(layer.times)} times"
            rows.append((f"{layer.material}{times}", _weight(weight, doubts, units), _origin(weight)))
        heavy.append(len(rows))
        rows.append(("together", _weight(total.result, doubts, units), ""))
    if not rows:
        return None
    columns = (Column("Layer", share=1.0), Column("Weight", align="end"), Column("Where the figure is from", share=1.0))
    return TableBlock(columns, tuple(rows), "Unit weights of the assemblies", heavy=frozenset(heavy))


def _weight(value: object, doubts: Doubts, units: Units) -> Inline:
    if not isinstance(value, Value):
        return quantity(value, "psf", units) if isinstance(value, (int, float)) else DASH
    return with_doubt(quantity(float(value), value.unit, units), doubts.dagger(value.marks))


def _origin(value: object) -> str:
    """Where a layer's weight was read: behind a multiple stands the figure it multiplies."""
    step = value.step if isinstance(value, Value) else None
    while step is not None and step.kind == "sum":
        inner = next((v for _, v in step.inputs if isinstance(v, Value) and v.step is not None), None)
        step = inner.step if inner is not None else None
    if step is None:
        return DASH
    return step.cite or step.title


def weight_table(forces: Forces, sheet: Sheet, doubts: Doubts, units: Units) -> TableBlock:
    """The house item by item, and what each level comes to."""
    marks = {step.title: step.marks for step in sheet.under(WEIGHTS) if step.results}
    rows: list[Row] = []
    for kind, heading in _KINDS.items():
        items = [item for item in forces.items if item.kind == kind]
        if items:
            rows.append(GroupRow(heading))
            rows.extend(_items(items, forces, marks, doubts, units))
    heavy = []
    rows.append(GroupRow("Effective seismic weight"))
    level_marks = {step.title: step.marks for step in sheet.under(WEIGHTS) if step.kind == "sum"}
    for level in forces.levels:
        dagger = doubts.dagger(level_marks.get(f"seismic weight at the {level.name}", ()))
        rows.append((f"at the {level.name}", "", "", with_doubt(quantity(level.weight_lb, "lb", units), dagger), ""))
    heavy.append(len(rows))
    whole = doubts.dagger(level_marks.get("effective seismic weight, all levels above the base", ()))
    rows.append(("all levels, W", "", "", with_doubt(quantity(forces.weight_lb, "lb", units), whole), ""))
    columns = (
        Column("Item", share=0.9),
        Column("Size", align="end"),
        Column("Unit weight", align="end"),
        Column("Weight", align="end"),
        Column("Counts at", share=1.5),
    )
    return TableBlock(columns, tuple(rows), "Weights, item by item", _notes(forces), frozenset(heavy))


def _notes(forces: Forces) -> tuple[Inline, ...]:
    found: list[Inline] = []
    if any(item.kind == "wall" for item in forces.items):
        found.append("A wall's size is its area less windows and doors; its weight has their weight in it.")
    left_out = [item.label for item in forces.items if not item.seismic]
    if left_out:
        found.append(f"Not part of the seismic weight: {', '.join(left_out)}.")
    return tuple(found)


def _items(
    items: list[WeightItem], forces: Forces, marks: Mapping[str, frozenset[Mark]], doubts: Doubts, units: Units
) -> Iterator[Row]:
    for item in items:
        volume = item.kind == "chimney"
        yield (
            item.label,
            f"{short(item.size)} ft³" if volume else quantity(item.size, "ft^2", units),
            quantity(item.unit_weight, "pcf" if volume else "psf", units),
            with_doubt(quantity(item.weight_lb, "lb", units), doubts.dagger(marks.get(item.label, frozenset()))),
            _levels(item, forces),
        )


def _levels(item: WeightItem, forces: Forces) -> str:
    """Which level an item counts at, in words, with its part where it is not the whole."""
    if not item.seismic:
        return "not counted"
    found = []
    for level, part in item.levels:
        name = "foundation" if level == BASE else forces.levels[level].name
        found.append(name if part == 1 else f"{_part(part)} {name}")
    return ", ".join(found)


def _part(part: float) -> str:
    return {0.5: "1/2", 1 / 3: "1/3", 0.25: "1/4"}.get(part, short(part))
