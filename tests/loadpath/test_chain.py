"""Status, verdict and the least favourable case: nothing unknown and nothing indicated ever counts as a pass."""

from __future__ import annotations

import itertools
import math
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.loadpath.case import cannot, checked, expected_at
from groundsill.loadpath.chain import Link, Status, Verdict, governing, status_of, verdict_of, with_ends
from groundsill.working.value import Mark, Value

STATUSES: tuple[Status, ...] = get_args(Status)
VERDICTS: tuple[Verdict, ...] = get_args(Verdict)
FACTS = ("strength of the concrete (F1)",)


def link(status: Status, ratio: float | None = None) -> Link:
    """A link of this status, with a ratio that fits it."""
    if status in ("cannot be checked", "does not apply"):
        return cannot("line/l1/x/s1/both", "x", "sill", "s1", clause="c", reason="r", applies=status[0] == "c")
    ratio = {"passes": 0.5, "indicated": 0.8, "fails": 1.5}[status] if ratio is None else ratio
    capacity = 0.0 if ratio == math.inf else 100.0 / ratio
    extension = "beyond the tables" if status == "indicated" else ""
    made = checked(
        "line/l1/x/s1/both", "x", "sill", "s1", level="allowable", unit="lb", demand=100.0, capacity=capacity,
        clause="c", extension=extension,
    )  # fmt: skip
    assert made.status == status
    return made


# --- one link --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("demand", "capacity", "extension", "status", "ratio"),
    [
        (50.0, 100.0, "", "passes", 0.5),
        (100.0, 100.0, "", "passes", 1.0),
        (math.nextafter(100.0, 200.0), 100.0, "", "fails", math.nextafter(100.0, 200.0) / 100.0),
        (150.0, 100.0, "", "fails", 1.5),
        (50.0, 100.0, "weak concrete", "indicated", 0.5),
        (150.0, 100.0, "weak concrete", "fails", 1.5),
        (50.0, 0.0, "", "fails", None),
        (50.0, -1.0, "", "fails", None),
        (50.0, 0.0, "weak concrete", "fails", None),
        (None, 100.0, "", "cannot be checked", None),
        (50.0, None, "", "cannot be checked", None),
        (None, None, "weak concrete", "cannot be checked", None),
    ],
)
def test_status_and_ratio(
    demand: float | None, capacity: float | None, extension: str, status: str, ratio: float | None
) -> None:
    assert status_of(demand, capacity, extension) == (status, ratio)


@pytest.mark.parametrize("capacity", [0.0, 100.0])
def test_a_link_without_force_has_nothing_to_pass(capacity: float) -> None:
    assert status_of(0.0, capacity) == ("does not apply", None)


@given(st.floats(0.1, 1e6), st.floats(0.0, 1e6), st.floats(0.0, 1e6), st.booleans())
def test_at_a_fixed_demand_more_capacity_never_lowers_a_link(
    demand: float, one: float, more: float, beyond: bool
) -> None:
    extension = "beyond the tables" if beyond else ""
    before, ratio = status_of(demand, one, extension)
    after, lower = status_of(demand, one + more, extension)
    order = ("fails", "indicated", "passes")
    assert order.index(after) >= order.index(before)
    assert ratio is None or (lower is not None and lower <= ratio)
    assert not (beyond and after == "passes")


def test_a_checked_link_holds_plain_numbers_and_all_their_doubts() -> None:
    mine, other, told = Mark("estimated", "a"), Mark("from memory", "b"), Mark("assumed range", "c")
    made = checked(
        "line/l1/x/s1/both", "x", "sill", "s1", level="allowable", unit="lb", clause="c", marks=(told,),
        demand=Value(50.0, "lb", "V", None, frozenset({other})),
        capacity=Value(100.0, "lb", "Z", None, frozenset({mine})),
    )  # fmt: skip
    assert type(made.demand) is type(made.capacity) is type(made.ratio) is float
    assert made.marks == tuple(sorted((mine, other, told)))
    assert (made.verdict, made.least_favourable) == ("passes", 0.5)


@pytest.mark.parametrize(("applies", "status"), [(True, "cannot be checked"), (False, "does not apply")])
def test_what_is_not_checked_has_no_figures_but_a_reason(applies: bool, status: str) -> None:
    made = cannot("a", "t", "line", "l1", clause="NDS 2018 12.3", reason="not seen", applies=applies)
    assert (made.status, made.verdict, made.ratio, made.demand, made.capacity) == (status, status, None, None, None)
    assert (made.clause, made.reason) == ("NDS 2018 12.3", "not seen")


def test_the_expected_force_on_the_line_is_the_links_own_over_its_share() -> None:
    found = expected_at(1000.0, 0.25, (0.8, 1.25), "ductile", "yield")
    assert found is not None
    assert (found.low_lb, found.best_lb, found.high_lb, found.manner) == (3200.0, 4000.0, 5000.0, "ductile")
    assert expected_at(None, 0.25, (0.8, 1.25), "ductile", "yield") is None
    assert expected_at(1000.0, 0.0, (0.8, 1.25), "ductile", "yield") is None


# --- several together ------------------------------------------------------------------------------------------------

EVERY_SET = [found for size in range(len(VERDICTS) + 1) for found in itertools.combinations(VERDICTS, size)]


@pytest.mark.parametrize("found", EVERY_SET, ids=lambda found: " + ".join(found) or "nothing")
def test_the_verdict_of_several_is_the_worst_of_them(found: tuple[Verdict, ...]) -> None:
    verdict = verdict_of(found)
    counted = set(found) - {"does not apply"}
    if not counted:
        assert verdict == "does not apply"
        return
    assert verdict in counted
    assert (verdict == "passes") == (counted == {"passes"})
    assert verdict_of([*found, *found]) == verdict_of(reversed(found)) == verdict
    for worse, better in itertools.pairwise(("fails", "cannot be checked", "depends", "indicated", "passes")):
        assert not (worse in counted and verdict == better)


def test_nothing_unknown_and_nothing_indicated_is_a_pass() -> None:
    for word in set(VERDICTS) - {"passes", "does not apply"}:
        assert verdict_of(["passes", word, "does not apply"]) == word


def test_the_governing_link_has_the_highest_ratio_and_none_at_all_comes_first() -> None:
    some, more = link("passes", 0.5), link("fails", 1.5)
    none = link("fails", math.inf)
    assert governing([some, more, link("cannot be checked")]) is more
    assert governing([some, none, more]) is none
    assert governing([link("indicated", 0.9), some]).ratio == pytest.approx(0.9)  # type: ignore[union-attr]
    assert governing([link("cannot be checked"), link("does not apply")]) is None
    assert governing([]) is None


# --- over both ends of every doubtful fact ---------------------------------------------------------------------------

EVERY_CASE = [
    (best, ends)
    for best in STATUSES
    for size in range(4)
    for ends in itertools.combinations_with_replacement(STATUSES, size)
]


@pytest.mark.parametrize(
    ("best", "ends"), EVERY_CASE, ids=lambda part: "+".join(part) if isinstance(part, tuple) else part
)
def test_a_link_passes_only_if_the_least_favourable_case_passes(best: Status, ends: tuple[Status, ...]) -> None:
    found = with_ends(link(best), [link(end) for end in ends], FACTS)
    seen = {best, *ends}
    if seen == {best}:
        assert (found.verdict, found.depends_on) == (best, ())  # no end differs: nothing decides
    elif seen <= {"passes", "does not apply"}:
        assert (found.verdict, found.depends_on) == ("passes", ())
    elif seen <= {"passes", "indicated", "does not apply"}:
        assert found.verdict == "indicated"
    elif "cannot be checked" in seen:
        assert found.verdict in ("cannot be checked", "fails")
        assert found.verdict != "fails" or "fails" in seen
    else:
        assert found.verdict == "depends"
        assert found.depends_on == FACTS
        assert "fails" in seen
    assert (found.verdict == "passes") == (seen <= {"passes", "does not apply"} and "passes" in seen)


RATIOS = st.sampled_from([0.2, 0.9, 1.0, 1.1, 3.0, math.inf])
LINKS = RATIOS.map(lambda ratio: link("passes" if ratio <= 1 else "fails", ratio)) | st.sampled_from(STATUSES).map(link)


@given(LINKS, st.lists(LINKS, max_size=5))
def test_the_least_favourable_ratio_is_the_greatest_of_all_and_none_where_there_is_no_capacity(
    best: Link, ends: list[Link]
) -> None:
    found = with_ends(best, ends, FACTS)
    ratios = [each.ratio for each in (best, *ends) if each.ratio is not None]
    if any(each.status == "fails" and each.ratio is None for each in (best, *ends)):
        assert found.least_favourable is None
    else:
        assert found.least_favourable == max(ratios, default=None)
    assert (found.status, found.ratio, found.address, found.marks) == (
        best.status,
        best.ratio,
        best.address,
        best.marks,
    )


@given(LINKS, st.lists(LINKS, max_size=4), LINKS)
def test_one_more_case_never_makes_a_pass_of_what_was_none(best: Link, ends: list[Link], one_more: Link) -> None:
    before = with_ends(best, ends, FACTS).verdict
    after = with_ends(best, [*ends, one_more], FACTS).verdict
    assert not (after == "passes" and before not in ("passes", "does not apply"))
    order = ("fails", "cannot be checked", "depends", "indicated", "passes", "does not apply")
    if before in ("passes", "indicated", "depends") and after != "does not apply":
        assert order.index(after) <= order.index(before)


@given(LINKS, st.lists(LINKS, max_size=4), st.randoms())
def test_the_order_of_the_cases_does_not_matter(best: Link, ends: list[Link], chance: object) -> None:
    mixed = list(ends)
    chance.shuffle(mixed)  # type: ignore[attr-defined]
    assert with_ends(best, mixed, FACTS) == with_ends(best, ends, FACTS)
