"""The design-value service, asked at a stand-in on this machine: what is sent, what is kept, and every way to fail."""

from __future__ import annotations

import json
import socket
import threading
import time
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from groundsill.doors import hazard_service
from groundsill.doors.encode import to_map
from groundsill.doors.hazard_service import (
    MOST_BYTES,
    SERVICE,
    NoAnswer,
    Question,
    address_of,
    changes_of,
    held_by,
    look_up,
    question_of,
    with_found,
)
from groundsill.house.site import DesignValues, Hazard
from groundsill.work.document import EditionOverride, House
from groundsill.working.errors import BadSurvey
from tests.fixtures.small_house import small_house
from tests.fixtures.stand_in import StandIn, stand_in

TODAY = date(2026, 11, 25)
HERE = Question("asce7-16", 47.6062, -122.3321, "II", "D-default")
BY_22 = replace(HERE, edition="asce7-22", site_class="Default")


@pytest.fixture
def service(monkeypatch: pytest.MonkeyPatch) -> Iterator[StandIn]:
    monkeypatch.setenv("NO_PROXY", "*")
    with stand_in() as said:
        yield said


def placed(house: House | None = None, **site: Any) -> House:
    """The small house, standing at the place asked about."""
    house = house or small_house()
    moved = replace(house.survey.site, **{"latitude": 47.6062, "longitude": -122.3321, **site})
    return replace(house, survey=replace(house.survey, site=moved))


def why_not(service: StandIn, question: Question = HERE, timeout_s: float = 5.0) -> str:
    """The one line in which a look-up is refused, after the service's name."""
    with pytest.raises(NoAnswer) as refused:
        look_up(question, TODAY, service.url, timeout_s)
    line = str(refused.value)
    assert "\n" not in line
    head, tail = f"the design-value service at {service.url.split('/')[2]} ", "; nothing was changed"
    assert line.startswith(head)
    assert line.endswith(tail)
    return line.removeprefix(head).removesuffix(tail)


# --- what is asked ---------------------------------------------------------------------------------------------------


def test_place_risk_and_ground_are_sent_and_nothing_else_of_the_house(service: StandIn) -> None:
    house = placed(latitude=47.606249, longitude=-122.0)
    assert question_of(house).latitude == 47.6062
    look_up(question_of(house), TODAY, service.url)
    assert service.asked == [
        "/ws/designmaps/asce7-16.json?latitude=47.6062&longitude=-122&riskCategory=II&siteClass=D-default&title=house"
    ]
    assert service.agents[0].startswith("groundsill/")


@pytest.mark.parametrize(
    ("site_class", "edition", "asked"),
    [
        ("D-default", "asce7-16", "D-default"),
        ("D-default", "asce7-22", "Default"),
        ("B-estimated", "asce7-22", "B"),
        ("C", "asce7-22", "C"),
    ],
)
def test_a_site_class_is_asked_about_by_the_editions_own_name(site_class: str, edition: str, asked: str) -> None:
    house = placed(hazard=Hazard(S_S=1.0, S_1=0.4, site_class=site_class))  # type: ignore[arg-type]
    assert question_of(house, edition).site_class == asked


def test_where_no_ground_motion_is_held_the_unknown_ground_is_asked_about() -> None:
    assert question_of(placed(hazard=None)).site_class == "D-default"
    assert question_of(placed(hazard=None), "asce7-22").site_class == "Default"


def test_the_edition_is_that_of_the_house_unless_another_is_named() -> None:
    newer = by_22(placed())
    assert question_of(placed()).edition == "asce7-16"
    assert question_of(newer).edition == "asce7-22"
    assert question_of(newer, "asce7-16").edition == "asce7-16"


def test_all_that_a_question_lacks_is_told_at_once() -> None:
    with pytest.raises(BadSurvey) as refused:
        question_of(placed(latitude=None, longitude=None), "asce7-10")
    assert [fault.line() for fault in refused.value.faults] == [
        "--edition: 'asce7-10' is not allowed; the service is asked by asce7-16 or asce7-22",
        "survey.site.latitude: nothing is not allowed; the service is asked by place: the latitude in degrees",
        "survey.site.longitude: nothing is not allowed; the service is asked by place: the longitude in degrees",
    ]


@pytest.mark.parametrize(
    "wrong", ["file:///etc/passwd", "ftp://example.org/", "earthquake.usgs.gov", "http://", "https://a.b/?x=1", ""]
)
def test_only_a_web_service_is_asked(wrong: str) -> None:
    with pytest.raises(BadSurvey) as refused:
        look_up(HERE, TODAY, wrong)
    (fault,) = refused.value.faults
    assert fault.line() == f'--service: "{wrong}" is not allowed; the address of a web service, as {SERVICE}'


def test_the_public_address_is_the_documented_one() -> None:
    assert address_of(HERE) == (
        "https://earthquake.usgs.gov/ws/designmaps/asce7-16.json?latitude=47.6062&longitude=-122.3321&riskCategory=II"
        "&siteClass=D-default&title=house"
    )


# --- what is kept ----------------------------------------------------------------------------------------------------


def test_by_7_16_the_mapped_values_are_kept_and_the_design_values_left_to_the_tables(service: StandIn) -> None:
    found = look_up(HERE, TODAY, service.url)
    assert (found.S_S, found.S_1, found.T_L, found.S_DS, found.S_D1) == (1.4, 0.48, 6.0, 1.12, None)
    assert found.remarks == ("the service works out S_DS 1.12 g from these values, and so does this program",)
    entered = placed(hazard=Hazard(S_S=1.0, S_1=0.4, S_DS=0.9, site_class="D-default", source="an old report"))
    hazard = with_found(entered, found).survey.site.hazard
    assert hazard is not None
    assert (hazard.S_S, hazard.S_1, hazard.T_L, hazard.S_DS, hazard.S_D1) == (1.4, 0.48, 6.0, None, None)
    assert (hazard.when, hazard.site_class) == ("2026-11-25", "D-default")


def by_22(house: House) -> House:
    """The house going by ASCE 7-22."""
    reason = {"asce7": EditionOverride(edition="asce7-22", reason="the town asks for it")}
    return replace(house, basis=replace(house.basis, overrides={**house.basis.overrides, **reason}))


def test_a_house_by_7_22_keeps_the_design_values_as_entered(service: StandIn) -> None:
    found = look_up(BY_22, TODAY, service.url)
    hazard = with_found(by_22(placed()), found).survey.site.hazard
    assert hazard is not None
    assert (hazard.S_S, hazard.S_1, hazard.S_DS, hazard.S_D1) == (1.5, 0.5, 1.22, 1.02)
    assert hazard.site_class == "D-default"  # the survey's own word for ground that is not known stays
    assert (found.category, found.S_MS, found.S_M1, found.remarks) == ("D", 1.83, 1.53, ())


def test_by_another_edition_the_design_values_stand_beside_the_houses_own(service: StandIn) -> None:
    house = placed()
    found = look_up(BY_22, TODAY, service.url)
    after = with_found(house, found).survey.site
    ((id, kept),) = after.design_values.items()
    assert (kept.edition, kept.S_DS, kept.S_D1, kept.S_1) == ("asce7-22", 1.22, 1.02, 0.5)
    assert kept.when == "2026-11-25"
    assert after.hazard == house.survey.site.hazard
    assert [c.path for c in changes_of(house, found)] == [
        f"survey.site.design_values.{id}.{name}" for name in ("edition", "S_DS", "S_D1", "S_1", "source", "when")
    ]
    taken = replace(house.survey.site, design_values={id: DesignValues(edition="asce7-41", S_DS=1.0)})
    both = with_found(replace(house, survey=replace(house.survey, site=taken)), found).survey.site.design_values
    assert [(key == id, kept.edition) for key, kept in both.items()] == [(True, "asce7-41"), (False, "asce7-22")]


def test_another_edition_without_a_design_value_is_nothing_to_compare_by(service: StandIn) -> None:
    service.data = {"sds": None}
    found = look_up(HERE, TODAY, service.url)
    with pytest.raises(NoAnswer, match="gave no S_DS by asce7-16, so there is nothing to compare by"):
        with_found(by_22(placed()), found)


def test_every_other_fact_of_the_house_stays(service: StandIn) -> None:
    house = placed()
    changed = to_map(with_found(house, look_up(HERE, TODAY, service.url)))
    before = to_map(house)
    del changed["survey"]["site"]["hazard"], before["survey"]["site"]["hazard"]
    assert changed == before
    assert held_by(house) == held_by(placed())  # the house that was asked about is not touched


def test_a_house_without_ground_motion_gets_one(service: StandIn) -> None:
    bare = placed(hazard=None)
    assert held_by(bare) is None
    found = look_up(question_of(bare), TODAY, service.url)
    held = held_by(with_found(bare, found))
    assert held is not None
    assert (held.S_S, held.site_class) == (1.4, "D-default")
    assert [c.path.rpartition(".")[2] for c in changes_of(bare, found)] == [
        "S_S", "S_1", "T_L", "site_class", "source", "when",
    ]  # fmt: skip


def test_the_source_names_the_service_that_was_asked_and_the_question(service: StandIn) -> None:
    found = look_up(HERE, TODAY, service.url)
    assert found.source == (
        f"design-value service at {service.url.split('/')[2]}: ASCE 7-16, site class D-default, risk category II, "
        f"latitude 47.6062, longitude -122.3321; {found.url}"
    )
    assert "Geological Survey" not in found.source


def test_the_public_service_is_named_as_whose_it_is(service: StandIn, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(hazard_service, "SERVICE", service.url)
    found = look_up(HERE, TODAY, service.url)
    assert found.source.startswith(
        "U.S. Geological Survey, seismic design web service: ASCE 7-16, site class D-default"
    )


def test_what_would_change_is_told_field_by_field_and_then_nothing(service: StandIn) -> None:
    house = placed()
    found = look_up(HERE, TODAY, service.url)
    told = {c.path: (c.before, c.after) for c in changes_of(house, found)}
    assert told["survey.site.hazard.S_S"] == (1.5, 1.4)
    assert told["survey.site.hazard.when"] == ("2026-03-01", "2026-11-25")
    assert "survey.site.hazard.T_L" not in told
    assert changes_of(with_found(house, found), found) == ()


def test_without_a_long_period_transition_the_one_in_the_file_stands(service: StandIn) -> None:
    service.data = {"tl": None, "t-sub-l": None}
    found = look_up(HERE, TODAY, service.url)
    assert found.remarks[0] == "the service gave no long-period transition T_L; the one in the file stands"
    eight = placed(hazard=replace(small_house().survey.site.hazard, T_L=8.0))  # type: ignore[type-var]
    hazard = with_found(eight, found).survey.site.hazard
    assert hazard is not None
    assert hazard.T_L == 8.0


def test_an_answer_that_contradicts_itself_is_remarked_on(service: StandIn) -> None:
    service.data = {"sds": 1.3}
    assert look_up(HERE, TODAY, service.url).remarks == (
        "the service works out S_DS 1.3 g, this program 1.120 g: ask before relying on either",
    )
    assert look_up(BY_22, TODAY, service.url).remarks == (
        "S_DS 1.3 g is not two thirds of S_MS 1.83 g: ask before relying on it",
    )


def test_ground_that_needs_a_study_of_its_own_says_so(service: StandIn) -> None:
    service.data = {"fa": None, "sms": None, "sds": None}
    found = look_up(replace(HERE, site_class="E"), TODAY, service.url)
    assert found.remarks == (
        "no S_DS is given for this site class and ground motion: ASCE 7-16 11.4.8 asks for a site-specific study",
    )


# --- everything that can go wrong ------------------------------------------------------------------------------------


def test_a_service_that_is_not_there(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_PROXY", "*")
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        port = taken.getsockname()[1]
        nobody = StandIn(url=f"http://127.0.0.1:{port}/")
        assert why_not(nobody) == "cannot be reached (Connection refused)"


@pytest.mark.parametrize(
    ("said", "why"),
    [
        (b"", "broke off (RemoteDisconnected: Remote end closed connection without response)"),
        (b"hello\r\n\r\n", "broke off (BadStatusLine: hello\\r\\n)"),
        (b"HTTP/1.0 200 OK\r\nContent-Length: 900\r\n\r\n{", "answered with what is not JSON (line 1, column 2)"),
        (b"HTTP/1.1 200 OK\r\nTransfer-Encoding: chunked\r\n\r\nzz\r\n", "broke off (IncompleteRead: "),
    ],
)
def test_a_service_that_breaks_off(monkeypatch: pytest.MonkeyPatch, said: bytes, why: str) -> None:
    monkeypatch.setenv("NO_PROXY", "*")
    with socket.create_server(("127.0.0.1", 0)) as server:

        def once() -> None:
            line, _ = server.accept()
            with line:
                line.recv(65536)
                line.sendall(said)

        answering = threading.Thread(target=once, daemon=True)
        answering.start()
        assert why_not(StandIn(url=f"http://127.0.0.1:{server.getsockname()[1]}/")).startswith(why)
        answering.join(timeout=5)


def test_a_service_that_says_nothing(service: StandIn) -> None:
    service.wait_s = 5.0
    began = time.monotonic()
    assert why_not(service, timeout_s=0.2) == "gave no whole answer within 0.2 s"
    assert time.monotonic() - began < 3.0


def test_a_service_that_drips(service: StandIn) -> None:
    service.drip_s = 0.05
    began = time.monotonic()
    assert why_not(service, timeout_s=0.4) == "gave no whole answer within 0.4 s"
    assert time.monotonic() - began < 3.0


@pytest.mark.parametrize(
    ("code", "words"), [(500, "Internal Server Error"), (404, "Not Found"), (503, "Service Unavail")]
)
def test_a_service_that_answers_with_an_error(service: StandIn, code: int, words: str) -> None:
    service.status = code
    assert why_not(service).startswith(f"answered {code} {words}")


def test_a_service_that_points_elsewhere_is_not_followed(service: StandIn) -> None:
    service.status, service.headers = 302, {"Location": "http://127.0.0.1:1/elsewhere"}
    assert why_not(service) == 'answered 302 Found and points to "http://127.0.0.1:1/elsewhere"'
    assert len(service.asked) == 1


@pytest.mark.parametrize(
    ("body", "why"),
    [
        (b"", "answered with what is not JSON (line 1, column 1)"),
        (b"<html>maintenance</html>", "answered with what is not JSON (line 1, column 1)"),
        (b'{"request": {\n "status": ', "answered with what is not JSON (line 2, column 12)"),
        (b"\xff\xfe", "answered with what is not UTF-8 text"),
        (b"[]", "answered with [], not an object"),
        (b"{}", "answered without request"),
        (b'{"request": "success"}', "answered without request"),
        (b'{"request": {"status": NaN}}', "answered with NaN, which is no number"),
        (b"[" * 100_000, "answered with JSON that is past all reason"),
        (b"1" * 5000, "answered with JSON that is past all reason"),
        (b" " * (MOST_BYTES + 1), f"answered with more than {MOST_BYTES:,} bytes"),
    ],
    ids=lambda part: str(part)[:24],
)
def test_an_answer_that_is_none(service: StandIn, body: bytes, why: str) -> None:
    service.body = body
    assert why_not(service) == why


@pytest.mark.parametrize(
    ("data", "why"),
    [
        ({"ss": None}, "answered without ss"),
        ({"s1": None}, "answered without s1"),
        ({"ss": "1.4"}, 'answered ss = "1.4"; it is a number from 0 to 5'),
        ({"ss": True}, "answered ss = true; it is a number from 0 to 5"),
        ({"ss": -0.1}, "answered ss = -0.1; it is a number from 0 to 5"),
        ({"s1": 140.0}, "answered s1 = 140.0; it is a number from 0 to 3"),
        ({"t-sub-l": [6]}, "answered t-sub-l = [6]; it is a number from 0.5 to 20"),
        ({"sds": {"g": 1}}, 'answered sds = {"g": 1}; it is a number from 0 to 4'),
    ],
)
def test_a_field_that_is_missing_or_wrong(service: StandIn, data: dict[str, Any], why: str) -> None:
    service.data = data
    assert why_not(service) == why


@pytest.mark.parametrize("field", ["sds", "sd1"])
def test_by_7_22_the_design_values_must_be_there(service: StandIn, field: str) -> None:
    service.data = {field: None}
    assert why_not(service, BY_22) == f"answered without {field}"


@pytest.mark.parametrize(
    ("request_", "why"),
    [
        ({"status": "error"}, 'answered that it could not: "error"'),
        ({"referenceDocument": "ASCE7-10"}, 'answered by "ASCE7-10", asked by asce7-16'),
        ({"referenceDocument": None}, "answered by null, asked by asce7-16"),
        ({"parameters": {"latitude": 34.05}}, "answered about latitude 34.05, asked about 47.6062"),
        ({"parameters": {"longitude": "east"}}, 'answered about longitude "east", asked about -122.3321'),
        ({"parameters": {"siteClass": "E"}}, 'answered about siteClass "E", asked about D-default'),
        ({"parameters": {"riskCategory": "IV"}}, 'answered about riskCategory "IV", asked about II'),
    ],
)
def test_an_answer_to_another_question(service: StandIn, request_: dict[str, Any], why: str) -> None:
    service.request = request_
    assert why_not(service) == why


def test_a_refusal_in_the_services_own_words_is_told_on_one_line(service: StandIn) -> None:
    told = {"request": {"status": "error"}, "response": "latitude\nout of range \x1b[31m" + "x" * 200}
    service.body = json.dumps(told).encode()
    why = why_not(service)
    assert why.startswith('answered that it could not: "latitude\\nout of range \\u001b[31mxxx')
    assert len(why) < 100


def test_numbers_as_text_in_the_echo_and_no_echo_at_all_are_both_fine(service: StandIn) -> None:
    service.request = {"parameters": {"latitude": "47.6062", "longitude": "-122.3321"}}
    assert look_up(HERE, TODAY, service.url).S_S == 1.4
    service.request = {"parameters": None}
    assert look_up(HERE, TODAY, service.url).S_S == 1.4
