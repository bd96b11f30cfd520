"""What every study keeps, whatever the house: sound links, honest verdicts, plain finite numbers, whole JSON."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from typing import Any, get_args

import pytest

from groundsill.doors.study_json import study_text
from groundsill.house.settle import prepare
from groundsill.loadpath.chain import Chain, Link, Status, Verdict, verdict_of, weakest
from groundsill.loadpath.headline import slight
from groundsill.study import AS_FOUND, FORMAT, Study, run, working
from groundsill.work.document import House
from groundsill.working.value import Mark, Value
from tests.loadpath.asking import (
    HOUSES,
    badness,
    chain_named,
    chains_in,
    inside,
    links_in,
    run_named,
    stage_of,
    study_of,
)
from tests.loadpath.houses import doubtful_house, known_house

every_house = pytest.mark.parametrize("name", HOUSES)


# --- links -----------------------------------------------------------------------------------------------------------


@every_house
def test_every_link_has_an_address_of_its_own_that_says_where_it_belongs(name: str) -> None:
    for found in study_of(name).runs:
        addresses = [link.address for chain in chains_in(found) for link in chain.links]
        assert sorted(addresses) == sorted(set(addresses))
        for chain in chains_in(found):
            for stage in chain.stages:
                for link in stage.links:
                    kind, id, key, scope, direction = link.address.split("/")
                    assert (kind, id, key) == (chain.kind, chain.id, stage.key)
                    assert link.scope_id
                    assert scope.split(".")[0]
                    assert direction.startswith(("x", "y", "both") if kind == "body" else ("+", "-", "both"))
                    assert link.direction in ("both", direction[:1])


@every_house
def test_every_link_has_a_clause_or_a_reason(name: str) -> None:
    for key, link in links_in(study_of(name)).items():
        assert link.title, key
        assert link.clause or link.reason, key
        if link.status == "cannot be checked":
            assert link.reason, key  # what is missing
            assert link.clause, key  # and which clause asks for it
        if link.status == "does not apply" or link.ratio is None:
            assert link.reason, key
        if link.status == "indicated":
            assert link.extension, key


@every_house
def test_status_and_ratio_follow_from_demand_and_capacity(name: str) -> None:
    for key, link in links_in(study_of(name)).items():
        assert link.status in get_args(Status)
        assert link.verdict in get_args(Verdict)
        if link.ratio is None:
            assert link.status != "passes", key
            assert link.status != "indicated", key
            continue
        assert link.demand is not None
        assert link.capacity is not None
        assert link.unit, key
        assert link.ratio == pytest.approx(link.demand / link.capacity, rel=1e-12), key
        assert (link.status == "fails") == (link.ratio > 1), key
        assert (link.status == "passes") <= (link.extension == ""), key


@every_house
def test_marks_stand_once_each_and_in_order(name: str) -> None:
    for link in links_in(study_of(name)).values():
        assert list(link.marks) == sorted(set(link.marks))
        assert all(isinstance(mark, Mark) and mark.what for mark in link.marks)


# --- verdicts --------------------------------------------------------------------------------------------------------


@every_house
def test_a_link_that_passes_passes_in_its_least_favourable_case(name: str) -> None:
    for key, link in links_in(study_of(name)).items():
        if link.verdict == "passes":
            assert link.least_favourable is not None, key
            assert link.least_favourable <= 1, key
            assert link.status in ("passes", "does not apply"), key
        if link.ratio is not None and link.least_favourable is not None:
            assert link.least_favourable >= link.ratio, key
        if link.verdict == "depends":
            assert link.depends_on, key
        if link.status == "indicated":
            assert link.verdict not in ("passes", "does not apply"), key


@every_house
def test_chain_and_house_are_judged_by_their_worst(name: str) -> None:
    for found in study_of(name).runs:
        for chain in chains_in(found):
            if chain.relied_on:
                assert chain.verdict == verdict_of(link.verdict for link in chain.links)
            else:
                assert (chain.verdict, chain.links) == ("does not apply", ())
            assert chain.headline
        worst = verdict_of(chain.verdict for chain in chains_in(found))
        assert found.verdict == worst or found.verdict == "fails"  # a direction without lines fails the house besides
        assert (found.verdict == "passes") <= all(
            link.verdict in ("passes", "does not apply") for chain in chains_in(found) for link in chain.links
        )


@every_house
def test_a_headline_names_the_soil_under_its_own_line_and_counts_the_rest(name: str) -> None:
    for found in study_of(name).runs:
        line = weakest(found.chains)
        short = [body for body in found.bodies if body.percent is not None and body.percent < 100]
        under = [body for body in short if line is None or any(each.scope_id == line.id for each in body.links)]
        told = {body.mark for body in short if f"{body.mark} carries " in found.headline}
        assert told == {body.mark for body in under}
        others = len(short) - len(under)
        assert (f"{others} {'other ' if under else ''}part" in found.headline) == (others > 0)


def most_asked(links: tuple[Link, ...], chain: Chain) -> float:
    return max(link.demand or 0.0 for link in links) / chain.force_lb


@every_house
def test_the_share_a_chain_carries_is_that_of_its_governing_link(name: str) -> None:
    for found in study_of(name).runs:
        for chain in chains_in(found):
            little = slight(chain)
            none = [link for link in chain.links if link.status == "fails" and link.ratio is None]
            ratios = [link.ratio for link in chain.links if link.ratio is not None and not link.minimum]
            assert all(link.title in chain.headline for link in none)
            if len(none) > len(little):
                assert chain.percent == 0.0
            elif ratios and max(ratios) > 1 and little:
                assert chain.percent == pytest.approx(min(100 / max(ratios), 100 - 100 * most_asked(little, chain)))
            elif ratios:
                told = max(ratios) > 1 or all(link.status != "cannot be checked" for link in chain.links)
                assert chain.percent == (pytest.approx(100 / max(ratios)) if told else None)
                (governs,) = [link for link in chain.links if link.address == chain.governing]
                assert governs.ratio == max(ratios)
            for link in chain.links:
                if link.status == "cannot be checked":
                    assert link.title in chain.headline


def test_no_study_calls_a_house_safe() -> None:
    for name in HOUSES:
        words = [item for _, item in inside(study_of(name)) if isinstance(item, str)]
        assert [text for text in words if "safe" in text.lower().replace("unsafe", "")] == []


# --- both ends of every doubtful fact, the long way ------------------------------------------------------------------


def at_ends(house: House, ends: dict[str, str]) -> dict[tuple[str, str], Link]:
    """Every link with some facts at an end of their range, as a study of its own."""
    return links_in(run(prepare(house).at(ends).house, ranges=False))  # type: ignore[arg-type]


def hold_against(link: Link, found: Link, where: str) -> None:
    """What was told of a link over all ranges, against one case within them."""
    if found.ratio is not None and link.least_favourable is not None:
        assert link.least_favourable >= found.ratio - 1e-12, where
    if found.status == "fails":
        assert link.verdict in ("fails", "depends", "cannot be checked"), where
    if found.status == "cannot be checked":
        assert link.verdict in ("fails", "cannot be checked"), where
    if found.status == "indicated":
        assert link.verdict != "passes", where


def the_long_way(house: House, name: str, chosen: slice = slice(None)) -> None:
    """Every chosen fact at either end, each a whole study of its own, held against the one study over all ranges.

    With every fact chosen also, for links that several facts move, all those at their worse end together.
    """
    told, facts = links_in(study_of(name)), prepare(house).facts
    assert {fact.path for fact in study_of(name).facts} == {fact.path for fact in facts}
    worse: dict[tuple[str, str], dict[str, str]] = {}
    for fact in facts[chosen]:
        both = {end: at_ends(house, {fact.path: end}) for end in ("low", "high")}
        for end, there in both.items():
            for key in told.keys() & there.keys():
                link, found, where = told[key], there[key], f"{key} with {fact.path} at its {end} end"
                if (found.status, found.ratio) == (link.status, link.ratio):
                    continue
                hold_against(link, found, where)
                if found.status != link.status and link.verdict == "depends":
                    assert fact.label in link.depends_on, where
                if badness(found) > badness(link) and badness(found) >= max(badness(b[key]) for b in both.values()):
                    worse.setdefault(key, {})[fact.path] = end
            for key in there.keys() - told.keys():
                assert there[key].status in ("passes", "does not apply"), f"{key} only with {fact.path} at its {end}"
    assert worse
    if chosen != slice(None):
        return
    together = {tuple(sorted(ends.items())) for ends in worse.values() if len(ends) > 1}
    assert together
    for case in sorted(together)[:12]:
        there = at_ends(house, dict(case))
        for key, ends in worse.items():
            if tuple(sorted(ends.items())) == case:
                hold_against(told[key], there[key], f"{key} with {case}")


def test_no_end_of_any_fact_is_worse_than_the_least_favourable_case_told() -> None:
    the_long_way(HOUSES["doubtful"](), "doubtful")


def test_no_end_of_every_fourth_fact_of_the_small_house_is_worse_than_told() -> None:
    the_long_way(HOUSES["small"](), "small", slice(0, None, 4))


@pytest.mark.proof
@pytest.mark.parametrize("name", ["small", "sample"])
def test_no_end_of_any_fact_of_a_whole_survey_is_worse_than_told(name: str) -> None:
    the_long_way(HOUSES[name](), name)


def test_where_everything_is_known_nothing_depends() -> None:
    study = study_of("known")
    assert study.facts == ()
    for link in links_in(study).values():
        assert (link.verdict, link.least_favourable, link.depends_on) == (link.status, link.ratio, ())


def test_without_ranges_verdicts_stand_on_best_values() -> None:
    over_ranges = links_in(study_of("doubtful"))
    at_best = links_in(run(doubtful_house(), ranges=False))
    assert at_best.keys() == over_ranges.keys()
    for key, link in at_best.items():
        assert (link.status, link.ratio, link.marks) == (
            over_ranges[key].status, over_ranges[key].ratio, over_ranges[key].marks,
        )  # fmt: skip
        assert link.verdict == link.status


def test_a_thinner_sill_is_what_an_uncertain_bolt_depends_on() -> None:
    """The doubt that decides is named; a fact of another line is not."""
    found = links_in(study_of("doubtful"))
    doubtful, beside = (found[("as-found", f"line/line1/sill-bolts/{sill}/both")] for sill in ("si1a", "si1b"))
    assert doubtful.ratio is not None
    assert doubtful.least_favourable is not None
    assert doubtful.least_favourable > doubtful.ratio
    assert not any("(K1)" in label or "(K3)" in label for label in beside.depends_on)


def test_progress_is_told_fact_by_fact() -> None:
    told: list[tuple[int, int]] = []
    run(doubtful_house(), progress=lambda done, whole: told.append((done, whole)))
    whole = len(study_of("doubtful").facts)
    assert told
    assert {total for _, total in told} == {whole}
    assert [done for done, _ in told] == sorted(done for done, _ in told)


# --- numbers, JSON, working ------------------------------------------------------------------------------------------


@every_house
def test_a_study_holds_plain_finite_numbers_only(name: str) -> None:
    for path, thing in inside(study_of(name)):
        assert not isinstance(thing, Value), path
        assert not isinstance(thing, float) or math.isfinite(thing), path


@every_house
def test_the_json_has_no_nan_and_holds_every_link(name: str) -> None:
    def refuse(word: str) -> None:
        raise AssertionError(f"{word} is no JSON")

    text = study_text(study_of(name))
    told = json.loads(text, parse_constant=refuse)
    assert told["format"] == FORMAT == "groundsill.study/1"
    stages = [(r["key"], s) for r in told["runs"] for chain in (*r["chains"], *r["bodies"]) for s in chain["stages"]]
    addresses = [(key, link["address"]) for key, stage in stages for link in stage["links"]]
    assert sorted(addresses) == sorted(links_in(study_of(name)))


def test_the_same_house_gives_the_same_text_every_time() -> None:
    assert study_text(run(doubtful_house())) == study_text(study_of("doubtful"))


@pytest.mark.parametrize("key", [AS_FOUND, "strengthen"])
def test_the_working_of_a_state_ends_at_the_figures_of_its_links(key: str) -> None:
    sheet = working(doubtful_house(), key)
    sections = {step.section for step in sheet.steps}
    for (state, address), link in links_in(study_of("doubtful")).items():
        if state != key or link.ratio is None:
            continue
        for section in link.working:
            assert section in sections, f"{address} leans on {section}"
        steps = [step for place in (address, *link.working) for step in sheet.under(place)]
        shown = {float(result) for step in steps for result in step.results}
        assert link.demand in shown or link.capacity in shown, address


def test_working_can_be_asked_for_at_an_end_of_a_fact() -> None:
    path = "survey.underfloor.sills.si1a.thickness_in"

    def thickness(sheet: Any) -> set[float]:
        steps = sheet.under("line/line1/sill-bolts/si1a/both")
        return {float(s.result) for s in steps if s.kind == "given" and "thickness" in s.title}

    assert thickness(working(doubtful_house())) == {1.5}
    assert thickness(working(doubtful_house(), ends={path: "low"})) == {1.25}


def test_working_of_a_state_that_does_not_exist_names_it() -> None:
    with pytest.raises(KeyError, match="capped is neither as-found nor an alternative of this house"):
        working(known_house(), "capped")


# --- states ----------------------------------------------------------------------------------------------------------


def test_an_alternative_without_work_is_the_house_as_found() -> None:
    for name in ("known", "small"):
        as_found, left = run_named(study_of(name), AS_FOUND), run_named(study_of(name), "leave")
        assert left.chains == as_found.chains
        assert left.bodies == as_found.bodies


def test_the_survey_is_the_same_with_and_without_alternatives() -> None:
    alone = run(replace(known_house(), alternatives={}))
    assert [r.key for r in alone.runs] == [AS_FOUND]
    assert run_named(alone, AS_FOUND) == run_named(study_of("known"), AS_FOUND)
    assert alone.forces == study_of("known").forces


def test_states_come_as_found_first_then_in_their_order() -> None:
    assert [r.key for r in study_of("known").runs] == [AS_FOUND, "strengthen", "leave"]


def test_the_work_helps_where_it_stands() -> None:
    for line in ("line1", "line2", "line3", "line4"):
        before, after = (chain_named(study_of("known"), key, line) for key in (AS_FOUND, "strengthen"))
        assert before.percent is not None
        assert before.percent < 100
        assert after.percent is None or after.percent > before.percent  # None: what was checked carries the whole


def test_a_chain_runs_from_the_floor_boards_down() -> None:
    for name in HOUSES:
        for found in study_of(name).runs:
            for chain in found.chains:
                keys = [stage.key for stage in chain.stages]
                top = ["floor-boards", "floor-to-plate", "plate-splices", "chord", "nailing-top", "sheathing"]
                assert keys[:6] == (top if chain.relied_on else [])
                if "sill-joints" in keys:
                    assert keys.index("sill-bolts") < keys.index("sill-joints") < keys.index("bolts-concrete")
            for body in found.bodies:
                soil = ["bearing"] if body.id == "pads" else ["sliding", "overturning", "bearing"]
                assert [stage.key for stage in body.stages] == soil


def test_every_line_of_the_house_has_its_chain_in_order() -> None:
    study: Study = study_of("known")
    for found in study.runs:
        assert [chain.id for chain in found.chains] == ["line1", "line2", "line3", "line4", "line5"]
        assert [chain.relied_on for chain in found.chains] == [True, True, True, True, False]


def test_stages_with_nothing_in_them_say_so() -> None:
    for link in chain_named(study_of("known"), AS_FOUND, "line1").links:
        if stage_of(link) in ("nailing-top", "nailing-sill"):
            assert link.status == "does not apply"
            assert "panel" in link.reason


def test_the_manifest_says_what_the_study_was_made_with() -> None:
    manifest = study_of("sample").manifest
    assert manifest.program.startswith("groundsill ")
    assert len(manifest.house_hash) == 16
    assert manifest.editions
    assert manifest.from_memory
    kinds = {mark.kind for link in links_in(study_of("sample")).values() for mark in link.marks}
    assert "from memory" in kinds
    of_links = {
        mark.what for link in links_in(study_of("sample")).values() for mark in link.marks if mark.kind == "from memory"
    }
    assert of_links <= set(manifest.from_memory)
