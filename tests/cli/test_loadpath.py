"""``groundsill forces`` and ``groundsill loadpath``: the same study a machine gets, in words a practitioner reads."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from groundsill.doors.files import read_house, write_house
from groundsill.doors.plain import plain
from groundsill.house.site import DesignValues
from groundsill.papers.views.words import ratio
from groundsill.papers.writers.shapes import SIGNS
from groundsill.study import Study, run
from groundsill.study.compare import by_edition
from tests.cli.asking import Asker
from tests.fixtures.small_house import small_house

SAMPLES = Path(__file__).resolve().parents[2] / "samples"


@pytest.fixture(scope="module")
def study(alder: Path) -> Study:
    return run(read_house(alder))


def test_forces_go_from_ground_motion_to_every_line(ask: Asker, alder: Path, study: Study) -> None:
    said = ask("forces", alder)
    assert said.code == 0
    forces = study.forces
    for words in (
        "7 Alder Street, Port Ellery: earthquake force",
        "Base shear V",
        f"{forces.base_shear_lb:,.0f} lb",
        f"{forces.weight_lb:,.0f} lb",
        "Seismic design category",
        "ibc-2021, asce7-16, strength level",
    ):
        assert words in said.flat, words
    for line in forces.lines.values():
        if line.relied_on:
            row = re.search(rf"^{line.mark} .*?([\d,]+) lb", said.out, re.MULTILINE)
            assert row
            assert row[1] == f"{line.force_lb:,.0f}"


def test_forces_and_load_path_by_the_newer_edition_print_it_everywhere(ask: Asker, tmp_path: Path) -> None:
    house = by_edition(small_house(), DesignValues(edition="asce7-22", S_DS=1.2, S_D1=0.7, source="for this test"))
    file = tmp_path / "newer.json"
    write_house(file, house)
    said = ask("forces", file)
    assert "ibc-2021, asce7-22, strength level" in said.flat
    assert "no site coefficient: as entered" in said.flat
    assert "asce7-16" not in said.flat
    told = ask("forces", file, "--json").json
    assert (told["forces"]["edition"], told["manifest"]["editions"]["asce7"]) == ("asce7-22", "asce7-22")
    said = ask("loadpath", file, "--working", "line/line1/demand")
    assert "ASCE 7-22 Eq. 12.4-3" in said.flat
    assert "ASCE 7-16" not in said.flat


def test_forces_are_told_to_machines_with_their_manifest(ask: Asker, alder: Path, study: Study) -> None:
    told = ask("forces", alder, "--json").json
    assert told["answer"] == "forces"
    assert told["forces"] == plain(study.forces)
    assert told["manifest"]["code"] == "ibc-2021"
    total = sum(line["force_lb"] for line in told["forces"]["lines"].values() if line["direction"] == "x")
    assert total == pytest.approx(told["forces"]["base_shear_lb"], rel=1e-9)


def test_machines_are_told_the_same_line_forces_as_the_screen_shows(ask: Asker) -> None:
    """Larch Street's floor is also taken as rigid: a reader of the flexible forces alone would be told too little."""
    path = SAMPLES / "larch-street" / "house.json"
    screen, told = ask("forces", path), ask("forces", path, "--json").json
    shown = dict(re.findall(r"^(L\d+) .*?([\d,]+) lb ", screen.out, re.MULTILINE)[: len(told["forces"]["lines"])])
    found = told["states"][0]
    assert (found["key"], bool(found["floor"])) == ("as-found", True)
    governing = {line["mark"]: line for line in found["lines"].values() if line["relied_on"]}
    for mark, line in governing.items():
        assert shown[mark] == f"{line['force_lb']:,.0f}", mark
    flexible = {line["mark"]: line["force_lb"] for line in told["forces"]["lines"].values()}
    more = [mark for mark, line in governing.items() if line["force_lb"] > 1.05 * flexible[mark]]
    assert more
    assert all(governing[mark]["floor"] == "rigid floor" for mark in more)
    assert len(told["states"]) == 1 + len(read_house(path).alternatives)


def test_the_load_path_as_found_tells_every_stage_of_every_line(ask: Asker, alder: Path, study: Study) -> None:
    said = ask("loadpath", alder)
    assert said.code == 1
    found = study.runs[0]
    assert found.verdict != "passes"
    assert f"{SIGNS[found.verdict]} {found.verdict}" in said.out  # type: ignore[index]
    for chain in (*found.chains, *found.bodies):
        assert f"{chain.mark}  {chain.name}" in said.flat.replace(chain.mark + " ", chain.mark + "  ")
        for stage in chain.stages if chain.relied_on else ():
            for link in stage.links:
                if link.address == chain.governing and link.ratio is not None:
                    assert f"{SIGNS[link.status]} {link.status}" in said.out
                    assert ratio(link.ratio) in said.out
    assert "Other states of the house" in said.out
    assert "--with A" in said.out


def test_every_verdict_is_a_word_with_its_shape(ask: Asker, alder: Path) -> None:
    text = ask("loadpath", alder, "--full").out
    shapes = "".join(SIGNS.values()).replace("–", "")
    for shape in shapes:
        word = next(word for word, sign in SIGNS.items() if sign == shape)
        for after in re.findall(rf"{shape}(.{{1,20}})", text):
            assert after.startswith(f" {word}")


def test_full_tells_every_link_with_its_address_and_reason(ask: Asker, alder: Path, study: Study) -> None:
    said = ask("loadpath", alder, "--full")
    whole = said.out.replace("\n", "").replace(" ", "")
    for chain in (*study.runs[0].chains, *study.runs[0].bodies):
        for link in chain.links if chain.relied_on else ():
            assert link.address.replace(" ", "") in whole
            assert link.reason.replace(" ", "") in whole


def test_one_line_is_asked_for_by_its_mark_or_id(ask: Asker, alder: Path) -> None:
    by_mark, by_id = ask("loadpath", alder, "--line", "l2"), ask("loadpath", alder, "--line", "line2")
    assert by_mark.out == by_id.out
    assert "L2  right" in by_mark.out
    assert "L1  front" not in by_mark.out
    told = ask("loadpath", alder, "--line", "L2", "--json").json
    assert [c["id"] for run in told["runs"] for c in (*run["chains"], *run["bodies"])] == ["line2"]
    said = ask("loadpath", alder, "--line", "L77")
    assert said.code == 2
    assert said.err.startswith("1. --line: 'L77' is not allowed; the house has L1, L2, L3")


def test_an_alternative_is_asked_for_by_mark_id_or_name(ask: Asker, alder: Path, study: Study) -> None:
    name = study.runs[1].name
    answers = [ask("loadpath", alder, "--with", word) for word in ("A", "strengthen", name, name.upper())]
    assert len({answer.out for answer in answers}) == 1
    assert f"with {name}" in answers[0].out
    told = ask("loadpath", alder, "--with", "A", "--json").json
    assert [run["key"] for run in told["runs"]] == ["strengthen"]
    said = ask("loadpath", alder, "--with", "Z")
    assert said.code == 2
    assert said.err == f"1. --with: 'Z' is not allowed; the house has A ({name}), B (Leave alone)\n"
    for part in (name[:5], name[:-2] + "x"):
        said = ask("loadpath", alder, "--with", part)
        assert said.err.endswith(f"B (Leave alone); did you mean A ({name})?\n")


def test_as_found_and_with_exclude_each_other(ask: Asker, alder: Path) -> None:
    said = ask("loadpath", alder, "--as-found", "--with", "A")
    assert (said.code, said.err) == (2, "1. --with: 'A' is not allowed; give --as-found or --with, not both\n")


def test_machines_get_the_whole_study(ask: Asker, alder: Path, study: Study) -> None:
    said = ask("loadpath", alder, "--json")
    assert said.code == 1
    told = said.json
    assert told.pop("answer") == "study"
    assert told == plain(study)


def test_the_exit_code_is_that_of_the_state_asked_for(
    ask: Asker, alder: Path, study: Study, monkeypatch: pytest.MonkeyPatch
) -> None:
    from dataclasses import replace

    from groundsill.cli import loadpath

    passing = replace(study.runs[1], verdict="passes")
    monkeypatch.setattr(
        loadpath,
        "house_and_study",
        lambda file, ranges=True: (small_house(), replace(study, runs=(study.runs[0], passing))),
    )
    assert ask("loadpath", alder).code == 1
    assert ask("loadpath", alder, "--with", "A").code == 0


def test_the_working_of_a_link_shows_every_step_it_stands_on(ask: Asker, alder: Path, study: Study) -> None:
    link = next(k for c in study.runs[1].chains for k in c.links if k.ratio and k.capacity)
    told = ask("loadpath", alder, "--with", "A", "--working", link.address, "--json").json
    assert told["answer"] == "working"
    sections = [section["address"] for section in told["sections"]]
    assert link.address in sections
    assert f"line/{link.address.split('/')[1]}/demand" in sections
    symbols = {step["value"] for section in told["sections"] for step in section["steps"]}
    assert link.demand in symbols or link.capacity in symbols
    page = ask("loadpath", alder, "--with", "A", "--working", link.address)
    assert page.code == 0
    assert link.address in page.out


def test_working_may_be_asked_for_by_a_lines_mark_or_a_beginning(ask: Asker, alder: Path) -> None:
    by_mark = ask("loadpath", alder, "--working", "L1", "--json").json["sections"]
    assert len(by_mark) > 3
    assert {section["address"].split("/")[1] for section in by_mark} == {"line1"}
    shear = ask("loadpath", alder, "--working", "forces/base-shear")
    assert "C_s" in shear.out
    assert "[ASCE 7-16 12.8.1.1" in shear.flat or "ASCE 7-16 12.8.1" in shear.flat


def test_the_working_of_every_link_that_has_a_figure_can_be_shown(ask: Asker, alder: Path, study: Study) -> None:
    for link in (k for c in (*study.runs[1].chains, *study.runs[1].bodies) for k in c.links if k.demand is not None):
        said = ask("loadpath", alder, "--with", "A", "--working", link.address, "--json")
        assert said.code == 0, said.err
        assert any(section["steps"] for section in said.json["sections"])


def test_every_line_stands_in_one_row_at_the_end(ask: Asker, alder: Path, study: Study) -> None:
    text = ask("loadpath", alder, "--with", "A").out
    glance = text[text.index("Carries   Verdict") :]
    for chain in (*study.runs[1].chains, *study.runs[1].bodies):
        share = "" if chain.percent is None else rf"{min(int(chain.percent), 100)} % +"
        assert re.search(rf"^{chain.mark} .*{share}{SIGNS[chain.verdict]} {chain.verdict}$", glance, re.MULTILINE)


def test_an_address_that_leads_nowhere_is_a_fault_that_says_where_to_look(ask: Asker, alder: Path) -> None:
    said = ask("loadpath", alder, "--working", "line/line9/roof")
    assert said.code == 2
    assert said.err.startswith("1. --working: 'line/line9/roof' is not allowed; an address as --full shows it")
    assert "the beginning of one: forces, L1, L2, L3" in said.err
