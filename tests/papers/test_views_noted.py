"""What was noted on the visit reaches the package in the surveyor's own words, and is not judged there."""

from __future__ import annotations

from dataclasses import replace

from groundsill.house.building import Point
from groundsill.house.fact import measured, unknown
from groundsill.house.record import Observation
from groundsill.house.underfloor import Utility
from groundsill.papers.document import Paragraph, TableBlock
from groundsill.papers.views.noted_view import noted_blocks
from groundsill.work.document import House
from tests.fixtures.small_house import small_house


def tables(house: House) -> dict[str, TableBlock]:
    return {block.caption: block for block in noted_blocks(house) if isinstance(block, TableBlock)}


def with_records(**changes: object) -> House:
    house = small_house()
    return replace(house, survey=replace(house.survey, **changes))  # type: ignore[arg-type]


def test_every_observation_is_told_with_its_place_its_size_and_its_photographs() -> None:
    seen = tables(small_house())["Observations"]
    crack, soil = seen.rows
    assert crack == (
        "N1", "crack", "foundation F4, at 16'-8\"", "1/16 in, estimated",
        "Vertical crack, full height, no offset felt. Photographs: P1.", "RT, 2026-04-02",
    )  # fmt: skip
    assert soil[4] == "Flower bed."


def test_an_observation_that_sits_on_nothing_keeps_its_words() -> None:
    house = with_records(observations={"o": Observation(mark="D6", words="open porch on three brick piers")})
    (row,) = tables(house)["Observations"].rows
    assert row == ("D6", "other", "–", "–", "Open porch on three brick piers.", "–")


def test_a_gauge_shows_its_first_and_its_last_reading() -> None:
    (row,) = tables(small_house())["Gauges and marks read over time"].rows
    assert row[3:] == ("0.05 in on 2026-01-10", "0.06 in on 2026-04-02", "2")


def test_a_water_heater_is_told_strapped_or_not() -> None:
    house = small_house()
    heaters = {
        "u1": Utility(mark="U1", at=Point(x_in=12, y_in=24), strapped=measured(False), note="in the wing"),
        "u2": Utility(mark="U2", kind="gas line", at=Point(x_in=0, y_in=0), strapped=unknown()),
    }
    under = replace(house.survey.underfloor, utilities=heaters)
    table = next(
        table for caption, table in tables(with_records(underfloor=under)).items() if "Water heater" in caption
    )
    assert [row[3] for row in table.rows] == ["no", "not seen"]
    assert table.rows[0][4] == "In the wing."


def test_a_survey_without_notes_says_so() -> None:
    house = with_records(observations={}, monitors={})
    house = replace(house, survey=replace(house.survey, underfloor=replace(house.survey.underfloor, utilities={})))
    (only,) = noted_blocks(house)
    assert isinstance(only, Paragraph)
