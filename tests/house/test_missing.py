"""What the next visit must bring, named by field and by what waits for it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from groundsill.house.fact import Fact, measured, unknown
from groundsill.house.missing import Missing, incomplete, together
from groundsill.house.survey import Survey
from groundsill.house.underfloor import FloorConnection
from tests.fixtures.small_house import small_house
from tests.house.test_checks import edited

SURVEY = small_house().survey


def told(survey: Survey) -> list[str]:
    return [missing.line() for missing in incomplete(survey)]


def added(path: str, **fields: Any) -> list[str]:
    """What is missing once some fields are gone, beyond what was missing before."""
    before = told(SURVEY)
    return [line for line in told(edited(SURVEY, path, **fields)) if line not in before]


def test_the_small_house_lacks_only_the_footing_under_its_brick() -> None:
    assert told(SURVEY) == [
        "survey.foundation.segments.fs4.footing_width_in: the footing width of F5 is not known; without it sliding, "
        "overturning and bearing cannot be checked",
        "survey.foundation.segments.fs4.depth_in: the depth of F5 in the soil is not known; without it sliding, "
        "overturning and bearing cannot be checked",
    ]


def test_an_empty_survey_lacks_its_beginnings() -> None:
    assert [line.split(":")[0] for line in told(Survey(name="x"))] == [
        "survey.site.hazard", "survey.site.slope_rise_per_run", "survey.building.year_built", "survey.building.storeys",
        "survey.building.walls", "survey.building.roof", "survey.underfloor.lines", "survey.underfloor.joists",
    ]  # fmt: skip


JOINT = "the joint between floor and plate cannot be checked"
OLD_PLASTER = "no partition is drawn; old plaster partitions often weigh more than the code's least"
CRUMBLES = "the strength of F1, which crumbles (no range stands in for it), is not known"


@pytest.mark.parametrize(
    ("path", "fields", "at", "what", "needed_for"),
    [
        ("site", {"hazard": None}, "site.hazard", "the ground motion of the site is not given",
         "there is no earthquake force"),
        ("building", {"partitions": {}}, "building.partitions", OLD_PLASTER,
         "none is counted in the weight; the code asks for at least 10 psf where they may stand"),
        ("building.assemblies.as-roof", {"layers": ()}, "building.assemblies.as-roof.layers", "Roof has no layers",
         "its weight is not counted"),
        ("underfloor.lines.line1", {"joists": "not seen"}, "underfloor.lines.line1.joists",
         "how the joists run to L1 was not seen", JOINT),
        ("underfloor.lines.line1", {"floor_connection": FloorConnection()},
         "underfloor.lines.line1.floor_connection.kind", "how the floor is held to L1 was not seen", JOINT),
        ("underfloor.segments.sg2", {"height_in": unknown()}, "underfloor.segments.sg2.height_in",
         "the height of S3 is not known", "its bracing and overturning cannot be checked"),
        ("underfloor.sills.si2", {"projects_inside_in": unknown()}, "underfloor.sills.si2.projects_inside_in",
         "how far K3 stands out inside is not known", "a panel's edge has no nailing"),
        ("underfloor.bolts.bt1", {"embedment_in": unknown()}, "underfloor.bolts.bt1.embedment_in",
         "the embedment of A1 is not known", "it does not count"),
        ("foundation.segments.fs1", {"condition": measured("crumbling")}, "foundation.segments.fs1.strength_psi",
         CRUMBLES, "its anchors cannot be checked"),
    ],
)  # fmt: skip
def test_what_is_taken_from_a_survey_is_missed(
    path: str, fields: dict[str, Any], at: str, what: str, needed_for: str
) -> None:
    assert added(path, **fields) == [f"survey.{at}: {what}; without it {needed_for}"]


def test_a_fact_that_is_bounded_or_looked_for_and_not_there_is_not_missing() -> None:
    assert added("underfloor.bolts.bt1", embedment_in=Fact(low=4.0, high=8.0, state="unknown")) == []
    assert added("underfloor.bolts.bt1", nut=Fact(state="absent")) == []


def test_a_tested_bolt_needs_no_embedment() -> None:
    assert added("underfloor.bolts.bt1", embedment_in=unknown(), test_lb=measured(2000.0)) == []


def test_a_line_without_segment_sill_or_foundation_is_told_of_each() -> None:
    bare = replace(SURVEY, foundation=replace(SURVEY.foundation, segments={}, tests={}))
    bare = edited(bare, "underfloor", segments={}, sills={}, bolts={})
    lines = [line for line in told(bare) if line.startswith("survey.underfloor.lines.line2:")]
    assert lines == [
        "survey.underfloor.lines.line2: L2 has no wall segment; without it its bracing cannot be checked",
        "survey.underfloor.lines.line2: no foundation stretch lies under L2; without it its anchorage and soil "
        "cannot be "
        "checked",
        "survey.underfloor.lines.line2: L2 has no sill piece; without it its sill and bolts cannot be checked",
    ]


# --- for a person ----------------------------------------------------------------------------------------------------


def test_what_is_missing_of_several_things_alike_is_said_once() -> None:
    lacks = [
        Missing(
            f"survey.underfloor.bolts.b{n}.embedment_in", f"the embedment of B{n} is not known", "it does not count"
        )
        for n in (1, 2, 10)
    ]
    ((one, paths),) = together(lacks)
    assert one.what == "the embedment of B1, B2 and B10 is not known"
    assert one.path == lacks[0].path
    assert paths == tuple(lack.path for lack in lacks)


def test_sentences_that_differ_in_more_than_a_name_stay_apart() -> None:
    lacks = [
        Missing("survey.a.b.x.f", "the nail of J1, '8d', is in no table", "why"),
        Missing("survey.a.b.y.f", "the wood of J2 was not told", "why"),
        Missing("survey.a.b.z.g", "the wood of J3 was not told", "why"),
    ]
    assert [one.what for one, _ in together(lacks)] == [lack.what for lack in lacks]
    assert sum(len(paths) for _, paths in together(lacks)) == 3


def test_a_sill_under_joists_is_not_asked_how_far_it_stands_out() -> None:
    segments = {
        key: replace(s, kind="joists on sill") if s.line == "line2" else s
        for key, s in SURVEY.underfloor.segments.items()
    }
    survey = replace(SURVEY, underfloor=replace(SURVEY.underfloor, segments=segments))
    bare = edited(survey, "underfloor.sills.si2", projects_inside_in=unknown())
    assert told(bare) == told(survey)
