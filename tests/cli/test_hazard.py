"""``groundsill hazard``: what a file holds, what a service answers, and a file that changes only when it is told to."""

from __future__ import annotations

import urllib.request
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from groundsill.cli import hazard as command
from groundsill.doors.encode import to_map
from groundsill.doors.files import open_house, photo_names, read_house, write_house
from groundsill.house.site import Hazard
from groundsill.work.document import EditionOverride, House
from tests.cli.asking import Asker
from tests.fixtures.small_house import small_house
from tests.fixtures.stand_in import StandIn, stand_in


@pytest.fixture
def service(monkeypatch: pytest.MonkeyPatch) -> Iterator[StandIn]:
    monkeypatch.setenv("NO_PROXY", "*")
    with stand_in() as said:
        yield said


def placed(**site: Any) -> House:
    house = small_house()
    moved = replace(house.survey.site, **{"latitude": 47.6062, "longitude": -122.3321, **site})
    return replace(house, survey=replace(house.survey, site=moved))


def by_22(house: House) -> House:
    reason = {"asce7": EditionOverride(edition="asce7-22", reason="the town asks for it")}
    return replace(house, basis=replace(house.basis, overrides={**house.basis.overrides, **reason}))


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "alder.json"
    write_house(path, placed())
    return path


def test_without_look_up_nothing_is_asked_and_the_file_tells_its_source(
    ask: Asker, file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def nobody(*_: object) -> None:
        raise AssertionError("somebody was asked")

    monkeypatch.setattr(urllib.request, "build_opener", nobody)
    said = ask("hazard", file)
    assert said.code == 0
    for line in (
        "7 Alder Street, Port Ellery: ground motion",
        "Place latitude 47.6062, longitude -122.332",
        "S_S 1.5 g short periods, mapped",
        "Site class D-default",
        "Source invented for this house",
        "Date 2026-03-01",
        "With --look-up the public service is asked; without it nothing is.",
    ):
        assert line in said.flat
    told = ask("hazard", file, "--json").json
    assert (told["answer"], told["found"], told["changes"], told["written"]) == ("hazard", None, [], False)
    assert told["held"]["S_S"] == 1.5
    assert told["edition"] == "asce7-16"


def test_a_file_without_ground_motion_or_place_says_so(ask: Asker, tmp_path: Path) -> None:
    path = tmp_path / "begun.json"
    write_house(path, placed(hazard=None, latitude=None))
    said = ask("hazard", path)
    assert said.code == 0
    assert "Place not in the file" in said.flat
    assert "No ground motion yet: no earthquake force can be worked out." in said.flat
    assert ask("hazard", path, "--json").json["held"] is None


def test_a_look_up_shows_what_was_found_and_leaves_the_file_alone(ask: Asker, file: Path, service: StandIn) -> None:
    before = file.read_bytes()
    said = ask("hazard", file, "--look-up", "--service", service.url)
    assert said.code == 0
    for line in (
        "Found for asce7-16, site class D-default, risk category II",
        "S_S 1.4 g short periods, mapped",
        "S_DS 1.12 g design value",
        f"{service.url}asce7-16.json?latitude=47.6062&longitude=-122.3321&riskCategory=II&siteClass=D-default",
        "! the service works out S_DS 1.12 g from these values, and so does this program",
        "It would change in the file",
        "- Short-period ground motion: 1.4 g before: 1.5 g",
        "- Date of the values: ",
        "Nothing was written; --write puts it in the file.",
    ):
        assert line in said.flat
    assert file.read_bytes() == before
    assert len(service.asked) == 1


def test_told_to_write_it_puts_the_values_their_date_and_source_into_the_file_and_nothing_else(
    ask: Asker, file: Path, service: StandIn
) -> None:
    told = ask("hazard", file, "--look-up", "--service", service.url, "--write", "--json").json
    assert told["written"] is True
    house = read_house(file)
    hazard = house.survey.site.hazard
    assert hazard is not None
    assert (hazard.S_S, hazard.S_1, hazard.T_L, hazard.site_class) == (1.4, 0.48, 6.0, "D-default")
    assert hazard.when == told["found"]["when"]
    assert hazard.source == told["found"]["source"]
    assert service.url in hazard.source
    after, before = to_map(house), to_map(placed())
    del after["survey"]["site"]["hazard"], before["survey"]["site"]["hazard"]
    assert after == before
    assert sorted(file.parent.iterdir()) == [file]


def test_values_that_are_there_already_write_nothing(ask: Asker, file: Path, service: StandIn) -> None:
    assert ask("hazard", file, "--look-up", "--service", service.url, "--write").code == 0
    kept = (file.read_bytes(), file.stat().st_mtime_ns)
    said = ask("hazard", file, "--look-up", "--service", service.url, "--write")
    assert "The file holds these values already." in said.flat
    assert (file.read_bytes(), file.stat().st_mtime_ns) == kept
    assert ask("hazard", file, "--look-up", "--service", service.url, "--write", "--json").json["written"] is False


def test_a_zip_keeps_its_photographs(ask: Asker, tmp_path: Path, service: StandIn) -> None:
    path = tmp_path / "alder.zip"
    write_house(path, placed(), {"sill.jpg": b"\xff\xd8 a picture"})
    assert ask("hazard", path, "--look-up", "--service", service.url, "--write").code == 0
    assert photo_names(path) == ("sill.jpg",)
    hazard = open_house(path).survey.site.hazard
    assert hazard is not None
    assert hazard.S_S == 1.4


def test_a_house_by_7_22_keeps_the_design_values_themselves(ask: Asker, tmp_path: Path, service: StandIn) -> None:
    path = tmp_path / "newer.json"
    write_house(path, by_22(placed(hazard=None)))
    said = ask("hazard", path, "--look-up", "--service", service.url, "--write")
    assert said.code == 0
    assert "Found for asce7-22, site class Default, risk category II" in said.flat
    assert "- Entered SDS: 1.22 g before: nothing" in said.flat
    assert "Written to the file" in said.flat
    hazard = read_house(path).survey.site.hazard
    assert hazard is not None
    assert (hazard.S_DS, hazard.S_D1) == (1.22, 1.02)


def test_values_by_another_edition_stand_beside_the_houses_own_to_compare(
    ask: Asker, file: Path, service: StandIn
) -> None:
    asked = ("--look-up", "--service", service.url, "--edition", "asce7-22", "--write")
    said = ask("hazard", file, *asked)
    assert said.code == 0
    assert "The house goes by asce7-16: values by asce7-22 stand beside its own, to compare." in said.flat
    assert "- SDS: 1.22 g before: nothing" in said.flat
    house = read_house(file)
    (kept,) = house.survey.site.design_values.values()
    assert (kept.edition, kept.S_DS, kept.S_D1) == ("asce7-22", 1.22, 1.02)
    assert service.url in kept.source
    assert house.survey.site.hazard == placed().survey.site.hazard
    service.data = {"sds": 1.23, "sms": 1.845}
    assert "- SDS: 1.23 g before: 1.22 g" in ask("hazard", file, *asked).flat
    (again,) = read_house(file).survey.site.design_values.values()
    assert again.S_DS == 1.23
    assert read_house(file).survey.site.design_values.keys() == house.survey.site.design_values.keys()
    assert "The file holds these values already." in ask("hazard", file, *asked).flat
    assert "Beside it, to compare: asce7-22 S_DS 1.23 g S_D1 1.02 g Source design-value service" in (
        ask("hazard", file).flat
    )
    assert [v["S_DS"] for v in ask("hazard", file, "--json").json["beside"]] == [1.23]
    variants = ask("compare-editions", file, "--json").json["variants"]
    by_22 = [v for v in variants if v["edition"] == "asce7-22"]
    assert by_22
    assert {v["S_DS"] for v in by_22} == {1.23}


def test_options_that_go_with_a_look_up_are_refused_without_it(ask: Asker, file: Path) -> None:
    said = ask("hazard", file, "--write", "--service", "http://127.0.0.1:1/", "--edition", "asce7-22", "--timeout", "0")
    assert said.code == 2
    assert said.faults == [
        *(
            f"{n}. {name}: without --look-up is not allowed; it goes with --look-up, which asks the service"
            for n, name in enumerate(("--service", "--edition", "--timeout", "--write"), start=1)
        ),
        "5. --timeout: 0 is not allowed; seconds, above 0 and at most 600",
    ]


def test_a_house_with_no_place_cannot_be_asked_about(ask: Asker, alder: Path, service: StandIn) -> None:
    said = ask("hazard", alder, "--look-up", "--service", service.url)
    assert said.code == 2
    assert [line.split(":")[0] for line in said.faults] == [
        "1. survey.site.latitude",
        "2. survey.site.longitude",
    ]
    assert service.asked == []


@pytest.mark.parametrize("write", [(), ("--write",)])
def test_a_service_that_fails_is_told_in_one_line_and_the_file_stays(
    ask: Asker, file: Path, service: StandIn, write: tuple[str, ...]
) -> None:
    before = file.read_bytes()
    service.status = 500
    said = ask("hazard", file, "--look-up", "--service", service.url, *write)
    host = service.url.split("/")[2]
    assert (said.code, said.out) == (2, "")
    assert said.faults == [
        f"1. the design-value service at {host} answered 500 Internal Server Error; nothing was changed"
    ]
    assert file.read_bytes() == before
    told = ask("hazard", file, "--look-up", "--service", service.url, "--json", *write)
    assert told.json["answer"] == "faults"


def test_patience_can_be_set(ask: Asker, file: Path, service: StandIn) -> None:
    service.wait_s = 5.0
    said = ask("hazard", file, "--look-up", "--service", service.url, "--timeout", "0.2")
    assert said.code == 2
    assert "gave no whole answer within 0.2 s; nothing was changed" in said.err


def test_a_site_that_changed_while_the_service_was_asked_is_not_written_over(
    ask: Asker, file: Path, service: StandIn, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = command.look_up

    def slow(*asked: Any) -> Any:
        found = real(*asked)
        write_house(file, placed(hazard=Hazard(S_S=1.1, S_1=0.4, source="typed meanwhile")))
        return found

    monkeypatch.setattr(command, "look_up", slow)
    said = ask("hazard", file, "--look-up", "--service", service.url, "--write")
    assert said.code == 2
    assert "its site was changed while the service was asked; nothing was written, ask again" in said.err
    hazard = open_house(file).survey.site.hazard
    assert hazard is not None
    assert hazard.source == "typed meanwhile"


def test_what_else_changed_meanwhile_stays(
    ask: Asker, file: Path, service: StandIn, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = command.look_up

    def slow(*asked: Any) -> Any:
        found = real(*asked)
        now = placed()
        write_house(file, replace(now, survey=replace(now.survey, name="renamed meanwhile")))
        return found

    monkeypatch.setattr(command, "look_up", slow)
    assert ask("hazard", file, "--look-up", "--service", service.url, "--write").code == 0
    house = open_house(file)
    assert house.survey.name == "renamed meanwhile"
    assert house.survey.site.hazard is not None
    assert house.survey.site.hazard.S_S == 1.4


def test_a_file_that_is_no_house_is_refused_before_anything_is_asked(
    ask: Asker, tmp_path: Path, service: StandIn
) -> None:
    path = tmp_path / "house.json"
    path.write_text("{")
    said = ask("hazard", path, "--look-up", "--service", service.url)
    assert said.code == 2
    assert service.asked == []
