"""The calculation package whole: what must stand in it, what may never, and that it can be printed and read back."""

from __future__ import annotations

import io
import math
import re
from dataclasses import replace

import pikepdf
import pytest

from groundsill.papers.document import (
    Document,
    Figure,
    Heading,
    KeyValues,
    PageBreak,
    Paragraph,
    Reference,
    Remark,
    TableBlock,
    Working,
    spans,
)
from groundsill.papers.views.calculations import calculation_package
from groundsill.papers.views.forces_view import forces_blocks
from groundsill.papers.views.summary import summary_terminal
from groundsill.papers.writers.html import to_html
from groundsill.papers.writers.terminal import to_text
from groundsill.papers.writers.typst import to_pdf
from groundsill.study import run as worked_out
from groundsill.study import working
from groundsill.study.result import Move, UncertainFact
from groundsill.work.apply import Misplaced
from groundsill.work.document import Basis
from groundsill.working.sheet import Sheet
from tests.loadpath.houses import known_house
from tests.papers.reading_pdf import page_texts, squeezed
from tests.papers.views_sample import captioned, chain, link, rows_of, small_package, small_study, stage, tables, words


@pytest.fixture(scope="module")
def package() -> Document:
    return small_package()


@pytest.fixture(scope="module")
def text(package: Document) -> str:
    return to_text(package, 200)


@pytest.fixture(scope="module")
def pdf(package: Document) -> bytes:
    return to_pdf(package)


def headings(package: Document, level: int = 1) -> list[str]:
    return [block.text for block in package.blocks if isinstance(block, Heading) and block.level == level]


def test_the_order_is_a_readers(package: Document) -> None:
    assert headings(package) == [
        "Design criteria",
        "Summary",
        "The chains in pictures",
        "What this package is, and is not",
        "Basis",
        "Plans and new work",
        "Weights and earthquake force",
        "Gravity loads",
        "Load path, as found",
        "Load path, Strengthen",
        "Load path, Leave alone",
        "The storeys above",
        "Prescriptive or engineered",
        "Tests and decisions",
        "What was noted on the visit",
        "Facts that may lie elsewhere",
    ]


def test_the_cover_names_house_survey_program_and_input_and_leaves_places_blank(package: Document) -> None:
    _, study, _ = small_study()
    (facts,) = [block for block in package.blocks[:2] if isinstance(block, KeyValues)]
    told = {row.key: words(row.value) for row in facts.rows}
    assert told["House"] == "7 Alder Street, Port Ellery"
    assert told["Address"] == "7 Alder Street, Port Ellery, Washington"
    assert told["Surveyed"] == "2026-04-02"
    assert told["Prepared by"] == told["Checked by"] == told["Date"] == "_" * 28
    assert study.manifest.program in package.stamp[0]
    assert study.manifest.house_hash in package.stamp[0]
    (seal, *_) = [block for block in package.blocks if isinstance(block, Figure)]
    assert seal.caption == "Left blank for seal and approval."


def test_the_summary_begins_on_the_third_page(pdf: bytes) -> None:
    assert "Summary" in page_texts(pdf)[2].splitlines()[1]


def test_the_criteria_box_names_what_a_plan_check_asks_for(package: Document) -> None:
    _, study, _ = small_study()
    rows = {row[0]: row[1:] for row in rows_of(captioned(package, "Design criteria")) if len(row) == 3}
    assert rows["Building code"][0] == "IBC 2021"
    assert "ASCE 7-16" in rows["Building code"][1]
    assert rows["Ss, S1"] == ("1.5 g, 0.6 g", "invented for this house, 2026-03-01")
    assert rows["Seismic category"][0] == study.forces.category
    assert rows["R, Ω0, Cd"][0] == "6.5, 3, 4"
    assert rows["Share of the force"] == ("0.75", "existing building")
    assert rows["V along x, V along y"][0].startswith(f"{study.forces.base_shear_lb:,.0f} lb each")
    assert rows["Wind"][0] == "not worked out"
    assert rows["Soil"] == ("clay", "hand auger at the rear")
    assert rows["Liquefaction"] == ("no", "county map, 2019")
    assert {"Redundancy ρ", "Cs", "W", "SDS", "Risk category, site class", "Anchors in concrete"} <= set(rows)


def test_the_cautions_of_the_trade_stand_in_it(package: Document, text: str) -> None:
    titles = {block.title for block in package.blocks if isinstance(block, Remark) and block.kind == "caution"}
    assert titles == {
        "The space under the floor", "Taking away support", "Dust", "Gas", "Electricity", "Digging, and wet ground",
    }  # fmt: skip
    for word in ("licensed", "building official", "shoring", "silica", "lead", "asbestos"):
        assert word in text


def test_no_paper_says_that_a_house_is_safe(text: str) -> None:
    assert re.findall(r"\b(?:un)?saf(?:e|er|ely|ety)\b", text, re.IGNORECASE) == []


def test_every_state_of_every_line_stands_in_the_summary(package: Document) -> None:
    _, study, _ = small_study()
    table = captioned(package, "What each braced line carries of the force required of it")
    groups: dict[str, list[str]] = {}
    for row in rows_of(table):
        if len(row) == 1:
            groups[row[0].split()[0]] = []
        else:
            groups[list(groups)[-1]].append(row[0])
    assert list(groups) == ["L1", "L2", "L3", "L4", "L5"]
    for states in groups.values():
        told = re.split(r", | and ", ", ".join(states))
        assert sorted(told) == sorted(run.name for run in study.runs)


def test_states_alike_in_every_figure_share_a_row(package: Document) -> None:
    rows = rows_of(captioned(package, "What each braced line carries of the force required of it"))
    place = next(n for n, row in enumerate(rows) if row[0].startswith("L5"))
    assert rows[place + 1][0] == "as found, Strengthen and Leave alone"
    assert rows[place + 1][1] == "–"


def test_a_share_is_cut_down_never_rounded_up() -> None:
    _, study, _ = small_study()
    only = link("floor", "fails", ratio=1.0004)
    near = chain(stage("floor", only), id="line1", percent=99.96, governing=only.address)
    study = replace(study, runs=(replace(study.runs[0], chains=(near,), bodies=()),))
    rows = rows_of(tables(summary_terminal(study))[0])
    assert rows[1][1] == "99 %"
    assert "ratio 1.0004" in rows[1][2]


def test_foundation_bodies_are_a_group_of_their_own(package: Document) -> None:
    caption = "Foundation bodies and the soil under them: sliding, overturning, bearing"
    _, study, _ = small_study()
    marks = {row[0].split()[0] for row in rows_of(captioned(package, caption)) if len(row) == 1}
    assert marks == {chain.mark for chain in study.runs[0].bodies}


def test_what_is_not_checked_is_listed_with_its_reason(package: Document) -> None:
    _, study, _ = small_study()
    table = captioned(package, "What is not checked, and why")
    reasons = " ".join(row[2] for row in rows_of(table))
    for run in study.runs:
        for found in (*run.chains, *run.bodies):
            for one in found.links:
                if one.verdict == "cannot be checked" and found.relied_on:
                    assert one.reason[1:].rstrip(".") in reasons, one.address


def test_every_line_relied_on_and_every_body_has_its_picture_with_words(package: Document) -> None:
    _, study, _ = small_study()
    pictures = {block.anchor: block for block in package.blocks if isinstance(block, Figure)}
    for found in (*study.runs[0].chains, *study.runs[0].bodies):
        if found.relied_on:
            picture = pictures[f"strip/{found.kind}/{found.id}"]
            assert "as found" in picture.alternative
            assert "Strengthen" in picture.alternative
    assert all(picture.alternative for picture in pictures.values())


def test_the_sums_of_the_sharing_table_close(package: Document) -> None:
    _, study, _ = small_study()
    for way in ("x", "y"):
        table = captioned(package, f"Lines along {way}: share of each level's force")
        total = rows_of(table)[-1]
        assert total[0] == "sum"
        assert total[2 : 2 + len(study.forces.levels)] == ("1.000",) * len(study.forces.levels)
        assert total[-2] == f"{study.forces.base_shear_lb:,.0f} lb"
        relied = [line for line in study.forces.lines.values() if line.direction == way and line.relied_on]
        assert math.fsum(line.force_lb for line in relied) == pytest.approx(study.forces.base_shear_lb)


def test_every_weight_of_the_house_is_an_item_and_every_level_is_summed(package: Document) -> None:
    _, study, _ = small_study()
    rows = {row[0]: row for row in rows_of(captioned(package, "Weights, item by item"))}
    for item in study.forces.items:
        assert rows[item.label][3].split(" †")[0] == f"{item.weight_lb:,.0f} lb"
    for level in study.forces.levels:
        assert rows[f"at the {level.name}"][3].startswith(f"{level.weight_lb:,.0f} lb")
    assert rows["all levels, W"][3].startswith(f"{study.forces.weight_lb:,.0f} lb")


def test_an_assembly_is_the_sum_of_its_layers(package: Document) -> None:
    rows = rows_of(captioned(package, "Unit weights of the assemblies"))
    place = rows.index(("Outside wall, wall (in the attic)",))
    assert [row[:2] for row in rows[place + 1 : place + 4]] == [
        ("bevel siding and boards", "5.0 psf"),
        ("studs, lath and plaster", "10.0 psf"),
        ("together", "15.0 psf"),
    ]


def test_gravity_reaches_every_line_girder_and_post(package: Document) -> None:
    _, study, _ = small_study()
    rows = rows_of(captioned(package, "Gravity loads taken down to the foundation"))
    listed = {row[0] for row in rows if len(row) > 1}
    assert {"L1 front", "L5 under the girder", "post C1", "post C3"} <= listed
    (front,) = [row for row in rows if row[0] == "L1 front"]
    assert front[2] == f"{study.forces.gravity.lines['line1'].dead:,.0f} lb"


def test_base_shear_is_worked_out_before_the_eyes_of_the_reader(package: Document) -> None:
    ids = {block.step.id for block in package.blocks if isinstance(block, Working)}
    assert any("12.8" in id for id in ids)
    _, _, sheets = small_study()
    shear = sheets["as-found"].under("forces/base-shear")
    printed = [block.step for block in package.blocks if isinstance(block, Working)]
    assert any(step in printed for step in shear)


def test_every_governing_link_is_closed_with_its_check(package: Document) -> None:
    _, study, _ = small_study()
    anchors = {block.anchor for block in package.blocks if isinstance(block, Heading)}
    checks = [b for b in package.blocks if isinstance(b, Paragraph) and words(b.text).startswith("Check: ")]
    assert len(checks) == sum(anchor.count("/") >= 3 and not anchor.endswith("/demand") for anchor in anchors)
    for found in study.runs[0].chains:
        if found.relied_on:
            assert f"as-found/line/{found.id}" in anchors


def test_links_that_are_not_worked_out_in_full_leave_their_address(package: Document) -> None:
    _, study, _ = small_study()
    told = " ".join(words(block.text) for block in package.blocks if isinstance(block, Paragraph))
    for found in study.runs[0].chains:
        for one_stage in found.stages:
            others = [one for one in one_stage.links if one.verdict != "does not apply"]
            if len(others) > 1:
                assert f"line/{found.id}/{one_stage.key}/ " in told
    assert "groundsill loadpath HOUSE.json --working ADDRESS" in told


def test_chains_that_the_work_leaves_alone_are_not_printed_twice(package: Document) -> None:
    """Leaving alone changes nothing: its chapter is a list that leads to the chains as found."""
    place = headings(package).index("Load path, Leave alone")
    blocks = list(package.blocks)
    start = next(n for n, b in enumerate(blocks) if isinstance(b, Heading) and b.text == headings(package)[place])
    chapter = []
    for block in blocks[start + 1 :]:
        if isinstance(block, (PageBreak,)):
            break
        chapter.append(block)
    assert not any(isinstance(block, (TableBlock, Working)) for block in chapter)
    leads = [s for b in chapter for t in getattr(b, "items", ()) for s in spans(t) if isinstance(s, Reference)]
    assert {span.anchor for span in leads} >= {f"as-found/line/line{n}" for n in (1, 2, 3, 4, 5)}


def test_sheets_are_numbered_as_they_stand_in_the_package() -> None:
    """A package of the second alternative alone has sheets C-1 and C-2, not C-1 and C-3."""
    house, study, sheets = small_study()
    work = next(run for run in study.runs if house.alternatives.get(run.key) and house.alternatives[run.key].pieces)
    before = replace(house.alternatives[work.key], order=-1.0, name="Before it", mark="Z")
    two = replace(house, alternatives={"before": before, **house.alternatives})
    found = calculation_package(two, replace(study, runs=(study.runs[0], work)), sheets)
    anchors = [b.anchor for b in found.blocks if isinstance(b, Figure) and b.anchor.startswith("plan/")]
    assert anchors[-1] == "plan/2"
    assert "plan/3" not in anchors


def test_a_fact_used_from_a_range_shows_its_ends_and_why() -> None:
    house, study, sheets = small_study()
    fact = UncertainFact("survey.x", "Over 19 % moisture (K1)", "", False, False, True, "nobody had a meter")
    found = calculation_package(house, replace(study, facts=(fact,)), sheets)
    (row,) = rows_of(captioned(found, "Facts used from a range"))
    assert row == ("Over 19 % moisture (K1)", "no", "no", "yes", "Nobody had a meter.")
    none = calculation_package(house, replace(study, facts=()), sheets)
    assert "Every fact that a check used was plainly measured." in to_text(none, 200)


def test_facts_most_worth_measuring_come_first_with_what_they_change() -> None:
    house, study, sheets = small_study()
    moves = (
        Move("survey.a", "Embedment (B1)", ("as found: L1", "Strengthen: L1"), 0.7, "as found: L1"),
        Move("survey.b", "Soil kind", (), 0.0, ""),
    )
    found = calculation_package(house, replace(study, measure_next=moves), sheets)
    rows = rows_of(captioned(found, "Measure this next"))
    assert rows == [("1", "Embedment (B1)", "as found: L1 and Strengthen: L1", "0.70", "as found: L1")]


def test_work_that_no_check_counts_is_named() -> None:
    house, study, sheets = small_study()
    runs = (study.runs[0], replace(study.runs[1], uncounted=("F9, concrete: no check of new concrete yet",)))
    text = to_text(calculation_package(house, replace(study, runs=runs), sheets), 300)
    assert "No check counts these pieces of work in “Strengthen” yet" in text
    assert "F9, concrete: no check of new concrete yet." in text


def test_a_fact_that_a_verdict_hangs_on_is_named_on_the_cover() -> None:
    house, study, sheets = small_study()
    facts = ("Embedment (B1)", "Embedment (B3)", "Soil kind")
    hanging = chain(stage("floor", link("floor", "depends", depends_on=facts)), id="line1")
    study = replace(study, runs=(replace(study.runs[0], chains=(hanging,), bodies=()),))
    told = [words(b.text) for b in calculation_package(house, study, sheets).blocks if isinstance(b, Paragraph)]
    assert any("A verdict hangs on each of these: Embedment (B1, B3); Soil kind." in text for text in told)


def test_work_without_a_place_is_reported_not_dropped() -> None:
    house, study, sheets = small_study()
    lost = Misplaced("pn11", "P1", "panel", "a vent stands there")
    runs = (study.runs[0], replace(study.runs[1], misplaced=(lost,)))
    text = to_text(calculation_package(house, replace(study, runs=runs), sheets), 300)
    assert "1 piece of work in “Strengthen” cannot stand where the design puts it" in text
    assert "P1, panel: a vent stands there." in text


def test_an_edition_against_the_code_is_printed_with_its_reason() -> None:
    house, study, sheets = small_study()
    manifest = replace(
        study.manifest,
        editions={**study.manifest.editions, "sdpws": "sdpws-2015"},
        edition_reasons={"sdpws": "the official asked for it"},
    )
    found = calculation_package(house, replace(study, manifest=manifest), sheets)
    rows = rows_of(captioned(found, "Design criteria"))
    assert ("Used instead", "SDPWS 2015", "The official asked for it.") in rows
    listed = rows_of(captioned(found, "Documents used, on the basis of IBC 2021"))
    assert [row[2] for row in listed if row[0] == "sdpws-2015"] == ["The official asked for it."]


def test_a_house_on_the_code_of_2021_shows_that_edition_from_its_table_to_its_criteria_and_no_other() -> None:
    house = replace(known_house(), basis=Basis(code="ibc-2021"))
    study = worked_out(house, ranges=False)
    sheets = {state.key: working(house, state.key) for state in study.runs}
    found = calculation_package(house, study, sheets)
    paper = squeezed(" ".join(page_texts(to_pdf(found))))
    for cite in ("SDPWS 2021 Table 4.3A", "SDPWS 2021 4.1.4.1", "SDPWS 2021 4.3.7.1"):
        assert squeezed(cite) in paper
    assert squeezed("SDPWS 2015") not in paper
    listed = rows_of(captioned(found, "Documents used, on the basis of IBC 2021"))
    assert [row[2] for row in listed if row[0] == "sdpws-2021"] == ["Adopted by IBC 2021."]


def test_without_sheets_the_package_still_holds_every_figure_of_the_study() -> None:
    house, study, _ = small_study()
    found = calculation_package(house, study, {})
    assert not any(isinstance(block, Working) for block in found.blocks)
    assert captioned(found, "Weights, item by item")
    assert isinstance(calculation_package(house, study, {"as-found": Sheet()}), Document)


def test_one_doubtful_weight_marks_every_figure_that_rests_on_it(package: Document) -> None:
    """The taint: the chimney's estimated weight is in W, V, the levels, the lines' forces and the links."""
    (mark,) = [m for m in package.marks if m.what.startswith("Unit weight over its outside volume")]
    number = package.marks.index(mark) + 1

    def carries(cell: str) -> bool:
        daggers = cell.partition("†")[2]
        for part in re.findall(r"\d+–\d+|\d+", daggers):
            low, _, high = part.partition("–")
            if int(low) <= number <= int(high or low):
                return True
        return False

    shear = {row[0]: row for row in rows_of(captioned(package, "From ground motion to base shear"))}
    assert carries(shear["Effective seismic weight W"][1])
    assert carries(shear["Base shear V"][1])
    assert not carries(shear["Mapped ground motion Ss, S1"][1])
    weights = {row[0]: row for row in rows_of(captioned(package, "Weights, item by item"))}
    assert carries(next(row for name, row in weights.items() if name.startswith("chimney"))[3])
    assert not carries(weights["floor, Main floor"][3])
    sharing = rows_of(captioned(package, "Lines along x: share of each level's force"))
    assert carries(sharing[0][-2])


# --- printed ----------------------------------------------------------------------------------------------------------


def test_the_pdf_is_tagged_and_every_picture_in_it_has_words(pdf: bytes) -> None:
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        assert opened.Root.MarkInfo.Marked
        assert str(opened.Root.Lang).startswith("en")
        figures = []

        def walk(node: pikepdf.Object) -> None:
            if isinstance(node, pikepdf.Array):
                for child in node:  # type: ignore[attr-defined]
                    walk(child)
            elif isinstance(node, pikepdf.Dictionary):
                if node.get("/S") == "/Figure":
                    figures.append(str(node.get("/Alt", "")))
                if "/K" in node:
                    walk(node.K)

        walk(opened.Root.StructTreeRoot)
    assert len(figures) > 5
    assert all(figures)


def test_the_pdf_holds_forces_verdicts_and_daggers_as_text(pdf: bytes) -> None:
    _, study, _ = small_study()
    whole = squeezed(" ".join(page_texts(pdf)))
    assert squeezed(f"{study.forces.base_shear_lb:,.0f} lb") in whole
    for line in study.forces.lines.values():
        if line.relied_on:
            assert squeezed(f"{line.force_lb:,.0f} lb") in whole
    assert squeezed("cannot be checked") in whole
    assert "†" in whole


def test_a_small_house_stays_a_book_not_a_shelf(pdf: bytes) -> None:
    assert len(page_texts(pdf)) < 100


def test_equal_input_gives_equal_bytes(package: Document, pdf: bytes) -> None:
    assert to_pdf(calculation_package(*small_study())) == pdf


def test_the_same_package_is_a_page_for_the_web(package: Document) -> None:
    page = to_html(package)
    assert "What each braced line carries" in page
    assert page.count("<figure") == sum(isinstance(block, Figure) for block in package.blocks)


def test_a_metric_house_is_printed_in_metric_units() -> None:
    house, study, sheets = small_study()
    found = calculation_package(house, replace(study, units="si"), sheets)
    assert found.paper == "a4"
    rows = rows_of(captioned(found, "Lines along x: share of each level's force"))
    assert rows[0][1] == "9.144 m"
    assert rows[0][-2].split(" †")[0].endswith(" kN")
    assert to_pdf(found).startswith(b"%PDF")


def test_the_terminal_prints_the_same_force_tables() -> None:
    _, study, _ = small_study()
    text = to_text(Document("Forces", forces_blocks(study), numbered=False), 110)
    assert f"{study.forces.base_shear_lb:,.0f} lb" in text
    assert "Lines along x: share of each level's force" in text
    assert "are from memory, unverified, assumed or" in text
