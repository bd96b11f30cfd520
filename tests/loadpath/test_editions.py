"""Joints in wood by the edition of the house's basis: other names on paper, and here no other figure."""

from __future__ import annotations

from dataclasses import fields, replace
from functools import cache

import pytest

from groundsill.loadpath.chain import Link
from groundsill.study import Study, run, working
from groundsill.work.document import Basis, EditionOverride, House
from groundsill.working.errors import BadSurvey
from tests.loadpath.houses import known_house

OLDER = {
    family: EditionOverride(edition=edition, reason="only the wood's edition is compared")
    for family, edition in (("asce7", "asce7-16"), ("sdpws", "sdpws-2015"))
}


@cache
def by_2024() -> House:
    """A house whose building code goes by NDS 2024."""
    return replace(known_house(), basis=Basis(code="ibc-2024", overrides=OLDER))


def every_link(study: Study) -> list[tuple[str, Link]]:
    """Each link with the state it stands in."""
    return [(r.key, link) for r in study.runs for chain in r.chains for link in chain.links]


def test_a_house_by_the_2024_code_is_checked_by_nds_2024_and_prints_it() -> None:
    found, before = run(by_2024(), ranges=False), run(known_house(), ranges=False)
    assert found.manifest.editions["nds"] == "nds-2024"
    clauses = {link.clause for _, link in every_link(found) if "NDS" in link.clause}
    assert clauses
    assert not any("NDS 2018" in clause for clause in clauses)
    assert any("NDS 2024" in text for text in found.manifest.from_memory)
    assert not any("NDS 2018" in text for text in (*found.manifest.from_memory, *found.manifest.unverified))
    for (key, link), (_, old) in zip(every_link(found), every_link(before), strict=True):
        for name in ("address", "status", "demand", "capacity", "ratio", "expected"):
            assert getattr(link, name) == getattr(old, name), (key, link.address, name)
        assert link.clause == old.clause.replace("NDS 2018", "NDS 2024")
    assert len(fields(found.manifest)) == len(fields(before.manifest))


def test_no_step_of_its_working_names_the_older_edition() -> None:
    sheet = working(by_2024(), next(iter(by_2024().alternatives)))
    assert [step.cite for step in sheet.steps if "NDS 2018" in step.cite] == []
    assert any(step.cite.startswith("NDS 2024") for step in sheet.steps)


def test_an_edition_that_no_check_is_made_by_is_refused_with_those_there_are() -> None:
    older = {"nds": EditionOverride(edition="nds-2015", reason="an old drawing")}
    house = replace(known_house(), basis=replace(known_house().basis, overrides=older | known_house().basis.overrides))
    with pytest.raises(BadSurvey, match=r"the checks are made by nds-2018 or nds-2024: give basis\.overrides\.nds"):
        run(house, ranges=False)
