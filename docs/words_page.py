"""Writes docs/reference/words.md: the words of a house file that the program looks up in its tables."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from groundsill.forces.assemblies import known_materials, material_psf
from groundsill.house.ranges import rules
from groundsill.standards.asce7_16.systems import table_12_2_1
from groundsill.standards.basis import adoptions, building_codes
from groundsill.standards.nds_2018.bearing import table_12_3_3a
from groundsill.standards.nds_2018.nails import table_l4
from groundsill.standards.sdpws_2015.tables import table_4_3a_seismic, table_4_3c, table_4_3d
from groundsill.study.manifest import CHECKED_BY

__all__ = ["words"]

_HEAD = """
# The words of a house file

Most texts of a house file are free. These are looked up in a table, so they must be written exactly as they stand here,
capitals and commas included. What each field may hold is in [every field](house-file.md).
"""


def words() -> str:
    """The page."""
    return "\n".join(_lines()) + "\n"


def _lines() -> Iterator[str]:
    yield _HEAD
    yield "## Materials and what they weigh"
    yield "\nIn `layers` of an assembly, as `material`. Any other words will do when the layer has its own `psf`.\n"
    yield "| Material | psf |\n| --- | --- |"
    yield from (f"| `{material}` | {material_psf(material) or 0.0:g} |" for material in known_materials())
    yield "\n## Sheathing as found"
    yield "\nIn `outside` and `inside` of a wall segment, as `material`. Any other words stand for something that"
    yield "braces nothing; a bare face is `none`. Nominal unit shear for earthquake, pounds a foot.\n"
    yield "| Material | Nominal, plf |\n| --- | --- |"
    for table in (table_4_3d(), table_4_3c()):
        yield from (f"| `{row}` | {float(table.read(row, 'seismic')):g} |" for row in table.rows)
    yield "\n## Panels and their nails"
    spacings = [f"{c:g}" for c in table_4_3a_seismic().columns if isinstance(c, (int, float))]
    yield "\nIn a piece of work of kind `panel`, as `panel`; `edge_spacing_in` is one of the spacings. Nominal unit"
    yield "shear for earthquake, pounds a foot.\n"
    yield f"| Panel | {' | '.join(f'{s} in.' for s in spacings)} |\n| --- |{' --- |' * len(spacings)}"
    for row, cells in table_4_3a_seismic().rows.items():
        yield f"| `{row}` | {' | '.join(f'{cell:g}' if isinstance(cell, (int, float)) else cell for cell in cells)} |"
    yield "\n## Nails"
    yield "\nAs `nail`, of toenails, laps of the plate and blocking.\n"
    yield _some(table_l4().rows)
    yield "\n## Species of wood"
    yield "\nAs `species`, of sills, studs, joists and plates, with the specific gravity taken for each. One that"
    yield "nobody told is tried at both ends of a range, from the lightest to the heaviest (see below).\n"
    yield _some(f"{row} ({float(table_12_3_3a().read(row)):g})" for row in table_12_3_3a().rows)
    yield "\n## Bracing systems"
    yield "\nIn `choices.system`, the item alone (`A.15`).\n"
    yield from (f"- `{row.split()[0]}`: {' '.join(row.split()[1:])}" for row in table_12_2_1().rows)
    yield from _codes()
    yield from _ranges()


def _codes() -> Iterator[str]:
    yield "\n## Building codes and editions"
    checked = ", ".join(" or ".join(editions) for editions in CHECKED_BY.values())
    yield f"\nIn `basis.code`. The checks are made by these editions: {checked}."
    yield "Where a code goes by another, `basis.overrides` names the one here, with a reason that is printed.\n"
    for code in building_codes():
        yield f"- `{code}`: {', '.join(a.edition for a in adoptions(code) if a.edition != code)}"


def _ranges() -> Iterator[str]:
    """The facts that a range stands in for, when nobody could see them."""
    yield "\n## Facts with a range of their own"
    yield "\nA fact of this kind that is left out or unknown is not missing: the range of its age and material is"
    yield "taken, and every figure that rests on it is marked. Each line is one range.\n"
    for key, of_field in rules().items():
        for rule in of_field:
            years = f", {rule.years[0]:g} to {rule.years[1]:g}" if rule.years else ""
            when = "; ".join(f"{name} {' or '.join(values)}" for name, values in rule.when.items())
            says = (
                f"{_end(rule.low)}, {_end(rule.best)}, {_end(rule.high)}" if not rule.table else f"table: {rule.table}"
            )
            yield f"- `{key.removeprefix('survey.')}`{years}{f' ({when})' if when else ''}: {says}"
    yield "\nThe three figures are the lower end, the one taken, and the upper end."


def _end(end: object) -> str:
    if isinstance(end, bool):
        return "yes" if end else "no"
    return f"{end:g}" if isinstance(end, (int, float)) else str(end)


def _some(names: Iterable[str]) -> str:
    return "\n".join(f"- {name}" for name in names)
