"""The calculation package: one document from cover to the last step, made from a house, its study and its sheets.

The order is a reader's: the house and the criteria; the summary an owner can follow, with its pictures; what this is
and is not; then what an engineer or an official asks for: basis, plans, weights, force, gravity, every chain with its
working, and the facts that may lie elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from groundsill.house.survey import in_order
from groundsill.loadpath.prescriptive import doubts_of
from groundsill.loadpath.storey_above import own_system
from groundsill.papers.document import Block, Document, Heading, PageBreak, Paragraph
from groundsill.papers.views.basis_view import basis_blocks, facts_table
from groundsill.papers.views.cautions import dig_cautions, limits_blocks, work_cautions
from groundsill.papers.views.chains_section import Setting, chain_anchor, chains_blocks
from groundsill.papers.views.cover import cover_blocks, criteria_table, field_conditions, seal_figure, stamp_lines
from groundsill.papers.views.doubts import Doubts, numbered_doubts
from groundsill.papers.views.forces_view import base_shear_table, level_table, missing_lines
from groundsill.papers.views.gravity_view import gravity_blocks
from groundsill.papers.views.noted_view import noted_blocks
from groundsill.papers.views.plan_view import found_plan, work_plan
from groundsill.papers.views.plan_work import work_table
from groundsill.papers.views.prescriptive_view import both_ways_blocks, remarks_blocks, scope_blocks, worked_blocks
from groundsill.papers.views.proofs_view import proof_blocks
from groundsill.papers.views.sharing_view import sharing_blocks
from groundsill.papers.views.storeys_view import next_blocks, storeys_blocks
from groundsill.papers.views.strength_view import CONCRETE, settling_blocks, strength_blocks, worked_cores
from groundsill.papers.views.summary import strips_blocks, summary_blocks
from groundsill.papers.views.weights_picture import weights_picture_blocks
from groundsill.papers.views.weights_view import WEIGHTS, weight_blocks
from groundsill.papers.views.wind_view import wind_blocks
from groundsill.papers.views.words import sentence
from groundsill.papers.views.working_view import steps_of, working_blocks
from groundsill.study import Run, Study
from groundsill.work.apply import with_work
from groundsill.work.document import House
from groundsill.work.inner import inner_of
from groundsill.working.sheet import Sheet

__all__ = ["calculation_package"]

_SITE, _SHEAR, _WIND = "forces/site", "forces/base-shear", "forces/wind"

_LineDaggers = Mapping[str, Mapping[str, str]]
"""The daggers of the lines' forces, by the state's key and then by ``line/<id>``."""


def calculation_package(house: House, study: Study, sheets: Mapping[str, Sheet]) -> Document:
    """The whole package as a document.

    Args:
        house: the house document the study was made from.
        study: its finished study.
        sheets: the sheet of each state by its key (``as-found``, the id of an alternative); a state without one is
            printed without steps.
    """
    first = sheets.get(study.runs[0].key) or Sheet()
    doubts = _doubts(study, sheets)
    setting = Setting(doubts, study.units)
    lines = {run.key: _line_daggers(sheets.get(run.key), run.line_forces, doubts) for run in study.runs}
    daggers = _daggers(first, doubts) | lines[study.runs[0].key]
    blocks = (
        *_front(house, study, daggers),
        *_summary(study, daggers),
        Heading("Basis", 1, "basis"),
        *basis_blocks(study, doubts),
        *_plans(house, study, daggers, lines),
        *_forces(house, study, first, setting, daggers, lines),
        Heading("Gravity loads", 1, "gravity"),
        *gravity_blocks(house, study.forces.gravity, study.units, daggers.get("W", "")),
        *_chains(study, sheets, setting),
        *_storeys(study, doubts),
        *_prescriptive(study, first, setting),
        PageBreak(),
        Heading("Tests and decisions", 1, "proofs"),
        *proof_blocks(house, study),
        *_strength(study, first, setting),
        Heading("What was noted on the visit", 1, "noted"),
        *noted_blocks(house),
        Heading("Facts that may lie elsewhere", 1, "facts"),
        *facts_table(study),
    )
    return Document(
        title="Calculations",
        subtitle=study.name,
        blocks=blocks,
        header=study.name,
        header_end=f"{study.manifest.program} · house file {study.manifest.house_hash[:12]}",
        footer="An aid, not a licensed professional's work until one has signed it. † marks a figure to be confirmed.",
        stamp=stamp_lines(study),
        contents=1,
        paper="letter" if study.units == "us" else "a4",
        marks=doubts.marks,
    )


def _same(study: Study) -> dict[str, str]:
    """Chains of later states that equal the first one's, and where that stands."""
    first = study.runs[0]
    known = {(chain.kind, chain.id): chain for chain in (*first.chains, *first.bodies)}
    return {
        chain_anchor(run.key, chain): chain_anchor(first.key, chain)
        for run in study.runs[1:]
        for chain in (*run.chains, *run.bodies)
        if known.get((chain.kind, chain.id)) == chain
    }


def _doubts(study: Study, sheets: Mapping[str, Sheet]) -> Doubts:
    """Every doubt behind a figure of the study, or on a step of its sheets."""
    links = [link for run in study.runs for chain in (*run.chains, *run.bodies) for link in chain.links]
    marks = {mark for link in links for mark in link.marks}
    if study.prescriptive is not None:
        marks |= doubts_of(study.prescriptive, tuple(run.prescriptive for run in study.runs))
    return numbered_doubts(marks | {mark for sheet in sheets.values() for step in sheet.steps for mark in step.marks})


def _daggers(sheet: Sheet, doubts: Doubts) -> dict[str, str]:
    """The dagger of every figure of force: by its symbol on the sheet or its level (``F_0``)."""
    found = {}
    levels = 0
    for step in steps_of(sheet, (_SITE, WEIGHTS, _SHEAR)):
        for value in step.results:
            found[value.symbol] = doubts.dagger(value.marks)
            if value.symbol == "F_x":
                found[f"F_{levels}"] = doubts.dagger(value.marks)
                levels += 1
    return found


def _line_daggers(sheet: Sheet | None, lines: Iterable[str], doubts: Doubts) -> dict[str, str]:
    """The dagger of every line's force in one state, by ``line/<id>``; none where the state has no sheet."""
    found = {}
    for id in lines if sheet is not None else ():
        steps = sheet.under(f"line/{id}/force") if sheet is not None else ()
        last = next((step.result for step in reversed(steps) if step.result is not None), None)
        if last is not None:
            found[f"line/{id}"] = doubts.dagger(last.marks)
    return found


def _front(house: House, study: Study, daggers: Mapping[str, str]) -> Iterator[Block]:
    yield from cover_blocks(house, study)
    yield seal_figure()
    yield field_conditions(study)
    yield PageBreak()
    yield Heading("Design criteria", 1, "criteria-box")
    yield criteria_table(house, study, daggers, study.units)
    yield PageBreak()


def _summary(study: Study, daggers: Mapping[str, str]) -> Iterator[Block]:
    yield Heading("Summary", 1, "summary")
    yield from summary_blocks(study, any(daggers.values()))
    yield Heading("The chains in pictures", 1, "strips")
    yield from strips_blocks(study, any(daggers.values()))
    yield Heading("What this package is, and is not", 1, "limits")
    yield from limits_blocks()
    yield from work_cautions()


def _plans(house: House, study: Study, daggers: Mapping[str, str], lines: _LineDaggers) -> Iterator[Block]:
    """What new work there is, then the sheets: as found, and with the work of each alternative."""
    laid = [
        (id, alternative)
        for id, alternative in in_order(house.alternatives)
        if alternative.pieces and any(run.key == id for run in study.runs)
    ]
    drawn = [(number, id, alternative) for number, (id, alternative) in enumerate(laid, start=2)]
    yield Heading("Plans and new work", 1, "plans")
    yield Paragraph("The plans stand on sheets of their own, drawn to scale from the survey's own measures.")
    for _, _, alternative in drawn:
        yield Heading(f"New work: {alternative.name}", 2)
        if alternative.purpose:
            yield Paragraph(sentence(alternative.purpose))
        yield work_table(with_work(house, alternative), alternative, study.units)
        if inner_of(in_order(alternative.pieces)):
            yield from dig_cautions()
    yield found_plan(house, study, daggers)
    for number, id, alternative in drawn:
        yield work_plan(house, study, lines[id], alternative, number)


def _forces(
    house: House,
    study: Study,
    sheet: Sheet,
    setting: Setting,
    daggers: Mapping[str, str],
    lines: _LineDaggers,
) -> Iterator[Block]:
    forces, units, doubts, printed = study.forces, study.units, setting.doubts, setting.printed
    yield PageBreak()
    yield Heading("Weights and earthquake force", 1, "forces")
    yield Heading("Weights", 2, WEIGHTS)
    yield from weight_blocks(house, forces, sheet, doubts, units)
    yield Heading("Where the weight sits", 2, "weights/where")
    yield from weights_picture_blocks(house, forces, units, daggers.get("W", ""))
    yield Heading("Base shear", 2)
    yield base_shear_table(forces, units, daggers)
    yield Heading("Ground motion, category and system, worked out", 3, _SITE)
    yield from working_blocks(steps_of(sheet, (_SITE,)), _SITE, "site and ground motion", printed, doubts)
    yield Heading("Base shear and its distribution over the height, worked out", 3, _SHEAR)
    yield from working_blocks(steps_of(sheet, (_SHEAR,)), _SHEAR, "base shear", printed, doubts)
    yield Heading("Force of each level and line", 2)
    yield level_table(forces, units, daggers)
    yield from sharing_blocks(study, lines)
    yield from missing_lines(forces)
    yield from _wind(study, sheet, setting)


def _wind(study: Study, sheet: Sheet, setting: Setting) -> Iterator[Block]:
    """Wind beside the earthquake, and how it was worked out."""
    along = tuple(f"{_WIND}/{way}" for way in (study.forces.wind.along if study.forces.wind is not None else ()))
    lines = study.forces.wind.lines if study.forces.wind is not None else {}
    places = {f"wind/{section.rpartition('/')[2]}": section for section in along}
    places |= {f"wind/{id}": f"line/{id}/wind" for id in lines}
    daggers = {}
    for name, section in places.items():
        found = [value for step in sheet.under(section) for value in step.results if value.symbol == "W"]
        daggers[name] = setting.doubts.dagger(found[-1].marks) if found else ""
    yield Heading("Wind", 2, "wind")
    yield from wind_blocks(study, daggers)
    if along:
        yield Heading("Wind on the house, worked out", 3, _WIND)
        steps = steps_of(sheet, (_WIND, *along))
        yield from working_blocks(steps, _WIND, "wind", setting.printed, setting.doubts)


def _chains(study: Study, sheets: Mapping[str, Sheet], setting: Setting) -> Iterator[Block]:
    same = _same(study)
    for run in study.runs:
        yield PageBreak()
        yield Heading(f"Load path, {_state(run)}", 1, f"run/{run.key}")
        if run.purpose:
            yield Paragraph(sentence(run.purpose))
        yield from chains_blocks(run, sheets.get(run.key), same, setting)


def _storeys(study: Study, doubts: Doubts) -> Iterator[Block]:
    """The storeys above as found, then what each state leaves as the next weakest and what it makes worse off."""
    yield PageBreak()
    yield Heading("The storeys above", 1, "storeys")
    yield from storeys_blocks(study.runs[0].storeys, own_system(study.forces), study.units, doubts)
    yield Heading("The next weakest level, and existing elements", 2, "storeys/next")
    for run in study.runs:
        yield from next_blocks(_state(run), run.next_weakest, run.compared)


def _strength(study: Study, sheet: Sheet, setting: Setting) -> Iterator[Block]:
    """How strong the old concrete is, and the tests that would settle the lines that hang on it."""
    yield Heading("How strong the concrete is", 2, CONCRETE)
    yield from strength_blocks(study, setting.doubts)
    yield from worked_cores(study, sheet, setting.printed, setting.doubts)
    for run in study.runs:
        yield Heading(f"Tests that would settle it, {_state(run)}", 2, f"settled-by/{run.key}")
        yield from settling_blocks(run, study.units)


def _prescriptive(study: Study, sheet: Sheet, setting: Setting) -> Iterator[Block]:
    """The prescriptive way beside the engineered one: scope, both ways in each state, and their arithmetic."""
    if study.prescriptive is None:
        return
    yield PageBreak()
    yield Heading("Prescriptive or engineered", 1, "prescriptive")
    yield from scope_blocks(study.prescriptive, setting.doubts)
    for run in study.runs:
        yield Heading(f"Both ways, {_state(run)}", 2, f"prescriptive/{run.key}")
        yield from both_ways_blocks(_state(run), run.prescriptive, study.units, setting.doubts)
    yield Heading("What it asks beyond this", 2, "prescriptive/remarks")
    yield from remarks_blocks(study.prescriptive)
    yield Heading("Both ways, worked out for the house as found", 2, "prescriptive/worked")
    yield from worked_blocks(study.runs[0].prescriptive, sheet, setting.printed, setting.doubts)


def _state(run: Run) -> str:
    return run.name or run.key
