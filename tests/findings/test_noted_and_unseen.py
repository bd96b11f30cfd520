"""Nothing the surveyor wrote is lost, what nobody looked at is said, and no house stops the findings."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import get_args, get_type_hints

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.doors.decode import decode_map
from groundsill.doors.encode import to_map
from groundsill.doors.files import read_house
from groundsill.findings import findings_of
from groundsill.house.fact import measured, unknown
from groundsill.house.missing import incomplete
from groundsill.house.model import places
from groundsill.house.record import Observation, Photo
from groundsill.working.measure import show
from tests.findings.changed import FINE, house_with, noted, probed, the
from tests.fixtures.small_house import small_house

KINDS = get_args(get_type_hints(Observation)["kind"])
SAMPLES = sorted(Path("samples").glob("*/house.json"))


# ---- What was noted ----


@pytest.mark.parametrize("kind", KINDS)
def test_each_kind_that_no_finding_reads_stands_in_its_own_words(kind):
    house = house_with(noted=(Observation(mark="N1", kind=kind, words="as found, word for word"),))
    holding = [f for f in findings_of(house).findings if any("as found, word for word" in t for t in f.observed)]
    assert len(holding) == 1
    assert holding[0].weight != "does not matter"
    assert holding[0].confirm


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.parent.name)
def test_every_word_noted_at_a_sample_house_is_in_a_finding(path):
    house = read_house(path)
    told = "\n".join(text for f in findings_of(house).findings for text in f.observed)
    for seen in house.survey.observations.values():
        assert (seen.words.rstrip(" .") or seen.kind) in told


@given(
    on=st.sampled_from((None, "fs2", "si2", "bt3", "po2", "line2", "sg2", "jf1", "br2", "wl1")),
    kind=st.sampled_from(KINDS),
)
@settings(max_examples=15, deadline=None)
def test_wherever_it_was_seen_its_words_are_in_a_finding(on, kind):
    house = house_with(noted=(replace(noted(kind, on or "", "word for word"), on=on),))
    assert any("word for word" in text for f in findings_of(house).findings for text in f.observed)


def test_what_a_finding_has_read_is_not_said_twice():
    house = house_with(noted=(noted("crumbling", "fs2", "sand and pebbles"),))
    assert [f.address for f in findings_of(house).findings if any("sand and pebbles" in t for t in f.observed)] == [
        "finding/concrete/fs2"
    ]


def test_its_photograph_and_its_size_stand_beside_it():
    house = house_with(noted=(replace(noted("damp", "line2", "stain", measured(12.0)), photos=("ph9",)),))
    photos = {"ph9": Photo(mark="P9", file="stain.jpg")}
    house = replace(house, survey=replace(house.survey, photos=photos))
    (text,) = the(house, "finding/noted/seen-0").observed
    assert "[photograph P9]" in text
    assert show(12.0, "length", "in", "us") in text


def test_a_crack_noted_at_a_break_is_read_by_the_finding_on_that_break():
    house = house_with(noted=(replace(noted("crack", "fs3b", "hairline"), station_in=203.0),))
    assert any("hairline" in text for text in the(house, "finding/crack/br2").observed)
    away = house_with(noted=(replace(noted("crack", "fs3b", "hairline"), station_in=300.0),))
    assert the(away, "finding/noted/seen-0")


# ---- What nobody looked at ----


def test_all_that_a_survey_lacks_is_said_line_by_line():
    house = house_with("underfloor.sills", "si2", width_in=unknown(), species=unknown())
    found = the(house, "finding/unseen/line2")
    text = " ".join(reason.text for reason in found.earthquake.reasons)
    assert "width of K3" in text
    assert "wood of K3" in text
    assert found.weight == "cannot tell"
    for lacks in incomplete(house.survey):
        assert any(lacks.needed_for in r.text for f in findings_of(house).findings for r in f.earthquake.reasons)


def test_what_bears_on_the_weight_is_told_apart():
    house = house_with(id="fs2", footing_width_in=unknown())
    found = the(house, "finding/unseen/line2")
    assert [r for r in found.gravity.reasons if "footing width" in r.text]
    assert not [r for r in found.durability.reasons if "footing width" in r.text]


@pytest.mark.parametrize(
    ("key", "change"),
    [
        ("probes", {"tests": (probed(0.1),)}),
        ("water", {"noted": (noted("drainage", "line2"),)}),
        ("insects", {"noted": (noted("insects", "si2"),)}),
        ("pits", FINE),
    ],
)
def test_a_look_never_taken_is_named_until_it_is_taken(key, change):
    bare = {"footing_thickness_in": unknown()}
    assert key in [r.key for r in the(house_with(**bare), "finding/unseen/kinds").gravity.reasons]
    assert key not in [r.key for r in the(house_with(**bare | change), "finding/unseen/kinds").gravity.reasons]


def test_the_look_that_settles_most_findings_by_itself_comes_first():
    found = the(house_with(), "finding/unseen/next")
    counts = [int(r.text.split("alone: ")[1].split(" ")[0].replace("none", "0")) for r in found.gravity.reasons]
    assert counts == sorted(counts, reverse=True)
    assert 0 < len(counts) <= 6
    first = next(f for f in findings_of(house_with()).findings if f.weight == "cannot tell")
    assert first.address == "finding/unseen/next"


# ---- No house stops them ----


@cache
def fact_paths():
    """The paths of every fact of the small house but those in lists."""
    every = places(small_house().survey, "survey")
    return [p.path for p in every if p.field.shape.kind == "fact" and not any(k.isdigit() for k in p.path.split("."))]


@given(data=st.data(), state=st.sampled_from(("unknown", "absent")))
@settings(max_examples=12, deadline=None)
def test_any_facts_may_be_unknown_or_absent(data, state):
    raw = to_map(small_house())
    for path in data.draw(st.lists(st.sampled_from(fact_paths()), min_size=1, max_size=40, unique=True)):
        *keys, last = path.split(".")
        owner = raw
        for key in keys:
            owner = owner.setdefault(key, {})
        owner[last] = {"state": state}
    found = findings_of(decode_map(raw))
    for finding in found.findings:
        for judged in (finding.gravity, finding.earthquake, finding.durability):
            assert all(reason.source and reason.known for reason in judged.reasons)
            if any(reason.answer == "cannot tell" for reason in judged.reasons):
                assert judged.weight != "does not matter"


def test_an_empty_house_is_answered():
    house = small_house()
    bare = replace(
        house.survey, underfloor=type(house.survey.underfloor)(), foundation=type(house.survey.foundation)(),
        observations={}, photos={}, monitors={}, levels={},
    )  # fmt: skip
    found = findings_of(replace(house, survey=bare, alternatives={}, record={}))
    assert [f for f in found.findings if f.address.startswith("finding/unseen/")]
