"""What a chain comes to in words: the share it carries, what stops it, what is unknown, what gives first."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.loadpath.case import cannot, checked, expected_at
from groundsill.loadpath.chain import Chain, Expected, Link, Stage
from groundsill.loadpath.headline import concluded, first_to_fail, in_short, spread_words


def link(name: str, ratio: float | None, extension: str = "", expected: Expected | None = None) -> Link:
    """A checked link of this ratio; None is a link without any capacity."""
    capacity = 0.0 if ratio is None else 1000.0 / ratio
    return checked(
        f"line/l1/{name}/l1/both", name, "line", "l1", level="allowable", unit="lb", demand=1000.0, capacity=capacity,
        clause="c", extension=extension, expected=expected,
    )  # fmt: skip


def minimum(name: str, ratio: float) -> Link:
    return replace(link(name, ratio), minimum=True)


def unknown(name: str) -> Link:
    return cannot(f"line/l1/{name}/l1/both", name, "line", "l1", clause="c", reason="not seen")


def idle(name: str) -> Link:
    return cannot(f"line/l1/{name}/l1/both", name, "line", "l1", clause="", reason="none", applies=False)


def chain(*links: Link, relied_on: bool = True) -> Chain:
    stages = tuple(Stage(one.title, one.title, "every link must pass", (one,)) for one in links)
    return Chain("l1", "L1", "front", "line", "x", relied_on, "a reason", 1000.0, stages)


def test_the_weakest_link_says_how_much_the_chain_carries_and_what_stops_it() -> None:
    found = concluded(chain(link("boards", 0.5), link("bolts", 1.6), link("nails", 1.2)))
    assert found.percent == pytest.approx(62.5)
    assert found.governing == "line/l1/bolts/l1/both"
    assert found.verdict == "fails"
    assert found.headline.startswith("carries 62 % of the required force; then bolts stops it")


def test_a_cover_met_exactly_is_not_the_nearest_to_its_limit() -> None:
    found = concluded(chain(minimum("cover of the bars", 1.0), link("soil", 0.99), link("drag", 0.81)))
    assert (found.governing, found.verdict) == ("line/l1/soil/l1/both", "passes")
    assert found.headline == "every link that could be checked carries the required force; the nearest to its limit " \
        "is soil at 0.99"  # fmt: skip
    assert found.first_to_fail == ("no expected strength is known for: soil; drag",)


def test_a_cover_that_is_not_kept_stops_the_line() -> None:
    found = concluded(chain(minimum("cover of the bars", 1.5), link("soil", 0.99)))
    assert (found.governing, found.verdict) == ("line/l1/cover of the bars/l1/both", "fails")
    assert "then cover of the bars stops it" in found.headline


def test_minima_alone_still_name_the_tightest_of_them() -> None:
    assert concluded(chain(minimum("cover", 0.5), minimum("width", 0.7))).governing == "line/l1/width/l1/both"


def test_what_passes_at_another_end_of_a_fact_is_stopped_only_as_surveyed() -> None:
    found = concluded(chain(replace(link("sliding", 1.25), verdict="depends", depends_on=("Soil",))))
    assert found.verdict == "depends"
    assert found.headline.startswith(
        "carries 80 % of the required force; then sliding stops it as surveyed; depends on"
    )


def test_every_link_without_any_capacity_is_listed() -> None:
    found = concluded(chain(link("boards", 0.5), link("plate", None), link("bolts", None), link("nails", 2.0)))
    assert found.percent == 0.0
    assert found.headline.startswith("carries none of the required force: plate; bolts")


def test_a_little_force_that_nothing_carries_is_said_and_leads_no_headline() -> None:
    joint = replace(link("sill joint at 16.0 ft", None), demand=25.0)
    found = concluded(chain(link("boards", 0.5), joint, link("bolts", 1.25)))
    assert (found.percent, found.governing) == (80.0, "line/l1/bolts/l1/both")
    assert found.verdict == "fails"
    assert found.headline == (
        "carries 80 % of the required force; then bolts stops it; nothing at all carries a small force at: "
        "sill joint at 16.0 ft, 25 lb of 1,000 lb"
    )
    alone = concluded(chain(link("boards", 0.5), joint))
    assert (alone.percent, alone.verdict) == (97.5, "fails")
    assert alone.headline.startswith("carries 97 % of the required force; nothing at all carries a small force at: ")
    only = concluded(chain(joint))
    assert (only.percent, only.governing) == (97.5, joint.address)
    much = concluded(chain(link("boards", 0.5), replace(joint, demand=51.0)))
    assert (much.percent, much.headline) == (0.0, "carries none of the required force: sill joint at 16.0 ft")


def test_every_link_that_cannot_be_checked_is_listed_behind() -> None:
    found = concluded(chain(link("boards", 0.5), unknown("sill"), unknown("concrete")))
    assert found.verdict == "cannot be checked"
    assert "cannot be checked: sill; concrete" in found.headline
    assert found.headline.startswith("every link that could be checked carries the required force")
    none = concluded(chain(link("plate", None), unknown("sill")))
    assert none.headline.startswith("carries none of the required force: plate")
    assert "cannot be checked: sill" in none.headline


def test_a_chain_that_carries_it_all_names_the_link_nearest_to_its_limit() -> None:
    found = concluded(chain(link("boards", 0.5), link("bolts", 0.93), idle("joints")))
    assert found.verdict == "passes"
    assert found.percent == pytest.approx(100 / 0.93)
    assert "nearest to its limit is bolts at 0.93" in found.headline


def test_a_name_that_comes_twice_is_said_once() -> None:
    found = concluded(chain(link("bolts", None), link("bolts", None), unknown("sill"), unknown("sill")))
    assert found.headline.count("bolts") == found.headline.count("sill") == 1


def test_where_nothing_could_be_checked_it_says_so() -> None:
    found = concluded(chain(unknown("boards"), unknown("bolts"), idle("joints")))
    assert (found.verdict, found.percent, found.governing) == ("cannot be checked", None, None)
    assert found.headline.startswith("nothing could be checked")
    assert "boards; bolts" in found.headline


def test_where_no_force_comes_there_is_nothing_to_carry() -> None:
    found = concluded(chain(idle("boards"), idle("bolts")))
    assert (found.verdict, found.percent) == ("does not apply", None)
    assert found.headline == "no force comes to it"


def test_a_line_that_is_not_relied_on_gives_its_reason() -> None:
    found = concluded(chain(link("boards", 2.0), relied_on=False))
    assert (found.verdict, found.percent, found.headline) == ("does not apply", None, "not relied on: a reason")


def test_what_is_indicated_never_reads_as_a_pass() -> None:
    found = concluded(chain(link("boards", 0.5), link("bolts", 0.8, extension="weak concrete")))
    assert found.verdict == "indicated"


def test_the_verdict_is_that_over_all_ends_and_the_share_that_of_the_best_values() -> None:
    doubtful = replace(link("bolts", 0.8), verdict="depends", depends_on=("thickness (K1)",), least_favourable=1.4)
    found = concluded(chain(link("boards", 0.5), doubtful))
    assert found.verdict == "depends"
    assert found.percent == pytest.approx(125.0)


@given(
    st.lists(st.sampled_from([0.3, 0.99, 1.0, 1.01, 1.7, 8.0, None, "unknown", "idle"]), min_size=1, max_size=8),
)
def test_share_governing_link_and_verdict_agree_in_every_chain(kinds: list[float | str | None]) -> None:
    made = {"unknown": unknown, "idle": idle}
    links = [made[k](f"n{i}") if isinstance(k, str) else link(f"n{i}", k) for i, k in enumerate(kinds)]
    found = concluded(chain(*links))
    numbers = [k for k in kinds if isinstance(k, float)]
    assert (found.percent == 0.0) == (None in kinds)
    if numbers and None not in kinds:
        told = max(numbers) > 1 or "unknown" not in kinds  # else what was not checked may stop it sooner
        assert found.percent == (pytest.approx(100 / max(numbers)) if told else None)
        assert (max(numbers) > 1) == found.headline.startswith("carries")
        assert found.links[[link.address for link in found.links].index(found.governing)].ratio == max(numbers)  # type: ignore[arg-type]
    assert (found.verdict == "passes") == (
        bool(numbers) and None not in kinds and "unknown" not in kinds and max(numbers) <= 1.0
    )
    assert "safe" not in found.headline.lower()


def test_in_short_what_cannot_be_checked_is_counted() -> None:
    found = concluded(chain(link("bolts", 1.25), unknown("a"), unknown("b")))
    assert in_short(found) == "carries 80 % of the required force; then bolts stops it; 2 more links cannot be checked"
    plain = concluded(chain(link("bolts", 1.25)))
    assert in_short(plain) == plain.headline


# --- what gives first ------------------------------------------------------------------------------------------------


def gives(at: float, low: float, high: float, manner: str = "ductile") -> Expected:
    return Expected(low, at, high, manner, "a rule")  # type: ignore[arg-type]


def test_links_give_in_the_order_of_the_line_force_they_reach() -> None:
    order = first_to_fail([
        link("panel", 0.5, expected=gives(9000, 8000, 10000)),
        link("bolts", 0.5, expected=gives(3000, 2500, 3500, "brittle")),
        link("nails", 0.5, expected=gives(5000, 4000, 6000)),
    ])  # fmt: skip
    assert [line.split(":")[0] for line in order] == ["bolts", "nails", "panel"]
    assert "brittle" in order[0]
    assert "too close to call" not in " ".join(order)


def test_two_whose_ranges_overlap_are_too_close_to_call() -> None:
    order = first_to_fail([
        link("bolts", 0.5, expected=gives(3000, 2500, 4100)),
        link("nails", 0.5, expected=gives(5000, 4000, 6000)),
        link("panel", 0.5, expected=gives(9000, 8000, 10000)),
    ])  # fmt: skip
    assert ["too close to call" in line for line in order[:3]] == [True, False, False]


def test_a_panel_and_its_edge_nailing_give_together() -> None:
    order = first_to_fail([
        link("bolts", 0.5, expected=gives(3000, 2500, 3500)),
        link("panel P1", 0.5, expected=gives(9000, 8000, 10000)),
        link("its nails at the plate", 0.5, expected=gives(9000, 8000, 10000)),
    ])  # fmt: skip
    assert len(order) == 2
    assert order[1].startswith("panel P1 and its nails at the plate: at about 9,000 lb")  # told apart by address alone
    assert "too close" not in order[1]


def test_a_spread_is_written_in_pounds_on_the_line() -> None:
    spread = expected_at(1000.0, 0.25, (0.8, 1.25), "ductile", "yield")
    assert spread is not None
    assert spread_words(spread) == "at about 4,000 lb on the line (3,200 to 5,000)"


def test_a_share_that_is_nothing_but_rounding_gives_at_no_force() -> None:
    assert expected_at(1000.0, 3e-17, (0.8, 1.25), "ductile", "yield") is None


def test_a_chain_that_knows_no_strength_names_nothing_that_gives() -> None:
    assert [line for line in first_to_fail([unknown("a"), idle("b")]) if "lb on the line" in line] == []
