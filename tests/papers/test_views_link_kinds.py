"""One link of each kind is set out: no clause and no formula of a stage goes untold, and none is told twice."""

from __future__ import annotations

from collections.abc import Callable

from groundsill.loadpath.chain import Link
from groundsill.papers.views.link_kinds import kinds_of, not_worked_out
from tests.papers.views_sample import link, stage


def by(rules: dict[str, set[str]]) -> Callable[[Link], frozenset[str]]:
    return lambda one: frozenset(rules.get(one.title, ()))


def told(*links: Link, **rules: set[str]) -> list[tuple[str, list[str]]]:
    found = kinds_of(stage("footing", *links), by(rules))
    return [(kind.shown.title, [other.title for other in kind.alike]) for kind in found]


def test_a_least_cover_never_stands_for_the_bending_of_the_footing() -> None:
    cover = link("footing", "passes", "cover", clause="ACI 318-19 20.5.1.3", ratio=1.0)
    sagging = link("footing", "passes", "sagging", clause="ACI 318-19 22.2", ratio=0.4)
    hogging = link("footing", "passes", "hogging", clause="ACI 318-19 22.2", ratio=0.6)
    shear = link("footing", "passes", "shear", clause="ACI 318-19 22.5", ratio=0.2)
    assert told(cover, sagging, hogging, shear, sagging={"M"}, hogging={"M"}, shear={"V"}) == [
        ("cover", []), ("hogging", ["sagging"]), ("shear", []),
    ]  # fmt: skip


def test_a_branch_that_only_one_link_takes_is_set_out_and_one_that_takes_less_is_told_by_it() -> None:
    plain = link("sill", "passes", "plain", ratio=0.9)
    long = link("sill", "passes", "long", ratio=0.5)
    longer = link("sill", "passes", "longer", ratio=0.6)
    few = link("sill", "passes", "few", ratio=0.1)
    assert told(plain, long, longer, few, plain={"a"}, long={"a", "b"}, longer={"a", "b"}, few={"b"}) == [
        ("plain", []), ("longer", ["long", "few"]),
    ]  # fmt: skip


def test_the_link_that_stands_for_the_stage_comes_first_even_if_it_cannot_be_checked() -> None:
    unknown = link("post", "cannot be checked", "unknown", reason="size not seen")
    other = link("post", "cannot be checked", "other", reason="size not seen")
    checked = link("post", "passes", "checked")
    assert told(checked, unknown, other) == [("unknown", []), ("checked", [])]
    assert not_worked_out(stage("post", checked, unknown, other)) == (unknown, other)


def test_what_does_not_apply_is_no_kind() -> None:
    assert told(link("post", "does not apply", "post")) == []
    assert told(link("post", "passes", "a"), link("post", "does not apply", "b", clause="IBC 1")) == [("a", [])]
