"""The earthquake force on paper and screen: from ground motion to base shear, level by level, line by line.

:func:`forces_blocks` is the whole of it for the terminal; the calculation package sets the same tables between its
working. How the lines share it stands in :mod:`groundsill.papers.views.sharing_view`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from groundsill.forces.mass import weight_map
from groundsill.forces.seismic import Forces
from groundsill.papers.document import Block, BulletList, Column, Inline, Remark, Row, TableBlock
from groundsill.papers.views.sharing_view import sharing_blocks
from groundsill.papers.views.weights_picture import centres_table
from groundsill.papers.views.wind_view import wind_blocks
from groundsill.papers.views.words import DASH, Units, counted, quantity, sentence, share, short, with_doubt
from groundsill.study import Study

__all__ = [
    "base_shear_table",
    "doubts_note",
    "force_warnings",
    "forces_blocks",
    "level_table",
    "missing_lines",
]

Daggers = Mapping[str, str]
"""The dagger that belongs to a figure, by the figure's symbol; missing where it carries no doubt."""


def forces_blocks(study: Study) -> tuple[Block, ...]:
    """Base shear, levels, and every line's share of them: what ``groundsill forces`` prints."""
    units, forces = study.units, study.forces
    return (
        base_shear_table(forces, units),
        level_table(forces, units),
        centres_table(weight_map(forces.items, [level.name for level in forces.levels]), units),
        *sharing_blocks(study, {}),
        *missing_lines(forces),
        *wind_blocks(study),
        *force_warnings((*forces.warnings, *study.warnings)),
        *doubts_note(study),
    )


def doubts_note(study: Study) -> tuple[Block, ...]:
    """Where figures are printed without their sheet, so without daggers: how many doubts stand behind them."""
    count = len(study.manifest.from_memory) + len(study.manifest.unverified) + len(study.manifest.assumed)
    if not count:
        return ()
    told = (
        f"{counted(count, 'figure')} behind these results {'is' if count == 1 else 'are'} from memory, unverified, "
        "assumed or estimated. The calculation package marks each figure that rests on one, and lists them."
    )
    return (Remark("note", told),)


def base_shear_table(forces: Forces, units: Units, daggers: Daggers | None = None) -> TableBlock:
    """The figures from ground motion to base shear, one under the other, each with where it comes from."""
    site, system, own = forces.site, forces.system, daggers or {}

    def row(name: str, value: str, why: str, symbol: str) -> tuple[Inline, ...]:
        return (name, with_doubt(value, own.get(symbol, "")), why)

    reduced = forces.factor != 1
    rows: list[Row] = [
        row(
            "Mapped ground motion Ss, S1",
            f"{short(site.S_S)} g, {short(site.S_1)} g",
            f"site class {site.site_class}",
            "S_S",
        ),
        row(
            "Design ground motion SDS",
            f"{short(forces.S_DS)} g",
            _coefficient("Fa", site.F_a),
            "S_DS",
        ),
        row("Design ground motion SD1", _or_dash(site.S_D1, " g"), _coefficient("Fv", site.F_v), "S_D1"),
        row("Seismic design category", forces.category, "from SDS, SD1, S1 and the risk category", "category"),
        row("Response modification R", short(system.R), f"bracing system {system.system}", "R"),
        row("Overstrength Ω0", short(system.Omega_0), "of the same row", "Omega_0"),
        row("Redundancy ρ", short(forces.rho), "used where a link is checked", "rho"),
        row("Approximate period T", f"{short(forces.period_s)} s", "from the height above the base", "T_a"),
        row("Response coefficient Cs", short(forces.C_s), sentence(forces.C_s_governs).rstrip(".") or DASH, "C_s"),
        row("Effective seismic weight W", quantity(forces.weight_lb, "lb", units), "all levels above the base", "W"),
        row(
            "Base shear, full",
            quantity(forces.base_shear_full_lb, "lb", units),
            "Cs times W, strength level",
            "V",
        ),
    ]
    if reduced:
        rows.append(
            row("Share of the full force", short(forces.factor), "the designer's choice, with its printed reason", "f")
        )
    rows.append(
        row(
            "Base shear V",
            quantity(forces.base_shear_lb, "lb", units),
            "along x and along y alike, strength level",
            "V",
        )
    )
    columns = (Column("Figure", share=1.1), Column("Value", align="end"), Column("From", share=1.3))
    return TableBlock(
        columns, tuple(rows), "From ground motion to base shear", (sentence(forces.base),), frozenset({len(rows) - 1})
    )


def _coefficient(name: str, value: float | None) -> str:
    return "no site coefficient: as entered" if value is None else f"site coefficient {name} {short(value)}"


def _or_dash(number: float | None, unit: str = "") -> str:
    return DASH if number is None else f"{short(number)}{unit}"


def level_table(forces: Forces, units: Units, daggers: Daggers | None = None) -> TableBlock:
    """Weight, height and force of each level."""
    own = daggers or {}
    rows = tuple(
        (
            level.name,
            quantity(level.height_ft, "ft", units),
            with_doubt(quantity(level.weight_lb, "lb", units), own.get(f"w_{n}", "")),
            share(level.C_vx),
            with_doubt(quantity(level.force_lb, "lb", units), own.get(f"F_{n}", "")),
        )
        for n, level in enumerate(forces.levels)
    )
    total: tuple[Inline, ...] = (
        "all levels",
        "",
        with_doubt(quantity(forces.weight_lb, "lb", units), own.get("W", "")),
        "",
        with_doubt(quantity(forces.base_shear_lb, "lb", units), own.get("V", "")),
    )
    columns = (
        Column("Level", share=1.3),
        Column("Height above the base", align="end", share=0.8),
        Column("Seismic weight", align="end", share=1.2),
        Column("Share of V", align="end"),
        Column("Force, strength", align="end", share=1.2),
    )
    return TableBlock(columns, (*rows, total), "Force of each level", heavy=frozenset({len(rows)}))


def missing_lines(forces: Forces) -> tuple[Block, ...]:
    """What no sharing can make good: a direction without enough lines."""
    return tuple(Remark("warning", sentence(missing.reason), "No equilibrium") for missing in forces.missing)


def force_warnings(warnings: Sequence[str]) -> tuple[Block, ...]:
    """The warnings, each once."""
    found = tuple(dict.fromkeys(warnings))
    if not found:
        return ()
    lead = Remark("warning", f"The figures come with {counted(len(found), 'warning')}:")
    return (lead, BulletList(tuple(sentence(w) for w in found)))
