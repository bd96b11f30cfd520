"""Whether work makes an existing element worse off is compared item by item, never taken for granted."""

from __future__ import annotations

from dataclasses import replace

from groundsill.loadpath.chain import Chain
from groundsill.loadpath.rises import compared
from groundsill.study import AS_FOUND
from tests.loadpath.asking import chains_in, run_named, study_of
from tests.loadpath.two_storeys import BOARDS, above, two_storeys
from tests.papers.views_sample import chain, link, stage


def with_ratio(ratio: float | None) -> Chain:
    status = "cannot be checked" if ratio is None else "fails" if ratio > 1 else "passes"
    return chain(stage("floor-boards", link("floor-boards", status, "straight boards", ratio=ratio)))


def test_the_storey_above_is_the_same_before_and_after_and_the_sentence_says_so() -> None:
    _, storeys = above(two_storeys((BOARDS,)))
    found = compared((with_ratio(0.8),), (with_ratio(0.8),), storeys, storeys)
    assert (found.compared, found.storeys, found.rising) == (9, 8, ())
    assert found.headline == (
        "9 existing elements, 8 of them walls of the storeys above, were compared with the house as found: none has a "
        "higher ratio with the work"
    )


def test_a_fall_is_no_rise() -> None:
    assert compared((with_ratio(1.8),), (with_ratio(0.8),)).rising == ()


def test_a_rise_within_one_or_within_ten_per_cent_is_allowed_and_still_told() -> None:
    for before, after in ((0.5, 0.9), (2.0, 2.2)):
        found = compared((with_ratio(before),), (with_ratio(after),))
        (one,) = found.rising
        assert one.allowed
        assert abs(one.rise - (after / before - 1)) < 1e-12
        assert found.headline == (
            "1 existing element was compared with the house as found: 1 rises within what is allowed; most of all "
            f"straight boards at L1, {before:.2f} before and {after:.2f} with the work"
        )


def test_a_rise_beyond_the_allowance_is_named_with_its_clause() -> None:
    found = compared((with_ratio(1.38),), (with_ratio(2.63),))
    assert not found.rising[0].allowed
    assert found.headline == (
        "1 existing element was compared with the house as found: 1 rises with the work, 1 beyond what is allowed "
        "(IEBC 2021 503.4, ten per cent, from memory, to be confirmed); most of all straight boards at L1, 1.38 before "
        "and 2.63 with the work"
    )


def test_an_element_that_loses_its_ratio_is_named_and_never_counts_as_compared() -> None:
    found = compared((with_ratio(0.8),), (with_ratio(None),))
    assert (found.compared, found.without) == (0, ("L1: straight boards",))


def test_new_pieces_and_lines_not_relied_on_are_no_existing_elements() -> None:
    new = chain(
        stage("floor-boards", link("floor-boards", "passes", "straight boards")),
        stage("sheathing", link("sheathing", "fails", "new panel")),
    )
    found = compared((with_ratio(0.5),), (new,))
    assert found.compared == 1
    aside = replace(with_ratio(0.5), relied_on=False)
    assert compared((aside,), (aside,)).headline == "no existing element has a ratio in both states to compare"


def test_every_element_of_a_whole_study_is_compared_by_its_address() -> None:
    study = study_of("known")
    found, work = run_named(study, AS_FOUND), study.runs[1]
    ratios = [
        {link.address: link.ratio for c in chains_in(r) if c.relied_on for link in c.links if link.ratio is not None}
        for r in (found, work)
    ]
    both = ratios[0].keys() & ratios[1].keys()
    told = compared(chains_in(found), chains_in(work))
    assert told.compared == len(both) > 10
    assert {one.address for one in told.rising} == {a for a in both if ratios[1][a] > ratios[0][a] * (1 + 1e-9)}
