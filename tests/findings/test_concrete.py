"""Concrete by itself, and the footing under it: each question at three answers, limits, laws, and what guides say."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from groundsill.findings.finding import WEIGHTS
from groundsill.house.fact import Fact, measured, unknown
from groundsill.standards.ibc_2021.concrete import table_1808_8_1
from groundsill.standards.irc_2012.tables import table_r403_1
from tests.findings.changed import FINE, answers, house_with, noted, probed, the, weights

ADDRESS = "finding/concrete/fs2"
FAIR = (probed(0.1),)


def of(tests=FAIR, seen=(), frost=0.0, **facts):
    """The finding on a stretch of concrete, fine but for these facts."""
    return the(house_with(tests=tests, noted=seen, frost=frost, **FINE | facts), ADDRESS)


def test_hard_sound_concrete_on_a_good_footing_is_left_alone():
    found = of()
    assert weights(found) == ("does not matter",) * 3
    assert found.sure
    assert [cure.key for cure in found.cures] == ["leave"]


@pytest.mark.parametrize(
    ("facts", "key", "expected"),
    [
        ({"condition": measured("crumbling")}, "whole", ("matters", "matters", "watch")),
        ({"condition": unknown()}, "whole", ("cannot tell", "cannot tell", "cannot tell")),
        ({"strength_psi": measured(1500.0)}, "strong", ("does not matter", "watch", "does not matter")),
        ({"strength_psi": unknown()}, "strong", ("does not matter", "cannot tell", "does not matter")),
        ({"reinforced": unknown()}, "rusting", ("does not matter", "does not matter", "cannot tell")),
        ({"reinforced": measured(True)}, "rusting", ("does not matter", "does not matter", "cannot tell")),
        ({"footing_width_in": measured(11.0)}, "wide", ("watch", "does not matter", "does not matter")),
        ({"footing_width_in": unknown()}, "wide", ("cannot tell", "does not matter", "does not matter")),
        ({"footing_thickness_in": measured(5.0)}, "thick", ("watch", "does not matter", "does not matter")),
        ({"depth_in": measured(8.0)}, "deep", ("watch", "does not matter", "does not matter")),
    ],
)
def test_each_question_unmet_or_open(facts, key, expected):
    found = of(**facts)
    assert weights(found) == expected
    assert answers(found)[key] == ("cannot tell" if "cannot tell" in expected else "no")
    assert ("cannot tell" in expected) == bool(
        [r for j in (found.gravity, found.earthquake, found.durability) for r in j.reasons if r.settle]
    )


@pytest.mark.parametrize(("depth", "answer"), [(0.0, "yes"), (0.25, "yes"), (0.26, "no"), (2.0, "no")])
def test_a_screwdriver_tells_hard_from_soft(depth, answer):
    assert answers(of(tests=(probed(depth),)))["hard"] == answer


def test_the_deepest_probe_speaks_and_none_leaves_it_open():
    assert answers(of(tests=(probed(0.0), probed(0.5))))["hard"] == "no"
    found = of(tests=())
    assert answers(found)["hard"] == "cannot tell"
    assert found.cures[0].key == "probe"


@pytest.mark.parametrize(("psi", "answer"), [(2499.0, "no"), (2500.0, "yes")])
def test_the_least_strength_is_the_table_s(psi, answer):
    """IBC 2021 Table 1808.8.1: 2,500 psi under a dwelling of light framing."""
    assert table_1808_8_1().read("dwelling of light framing, two stories or less, category D, E or F") == 2500
    assert answers(of(strength_psi=measured(psi)))["strong"] == answer


@pytest.mark.parametrize(
    ("floors", "soil", "width"),
    [(1, 1500, 12), (2, 1500, 15), (3, 1500, 23), (2, 2000, 12), (3, 2000, 17), (3, 3000, 12), (3, 4000, 12)],
)
def test_widths_of_footings_are_those_printed(floors, soil, width):
    """IRC Table R403.1 before 2015, light framing (http://www.docstoc.com/docs/18940987/deck_footings)."""
    assert table_r403_1().read(str(floors), float(soil)) == width


@pytest.mark.parametrize(("width", "answer"), [(12.0, "yes"), (11.9, "no")])
def test_one_floor_on_clay_asks_for_a_foot_of_width(width, answer):
    assert answers(of(footing_width_in=measured(width)))["wide"] == answer


@pytest.mark.parametrize(
    ("depth", "frost", "answer"),
    [(18.0, 18.0, "yes"), (18.0, 24.0, "no"), (18.0, None, "cannot tell"), (None, 18.0, "cannot tell")],
)
def test_the_bottom_lies_below_the_frost_or_not(depth, frost, answer):
    deep = unknown() if depth is None else measured(depth)
    assert answers(of(frost=frost, depth_in=deep))["frost"] == answer


def front(**facts):
    """The finding on the front stretch, which holds up floor and roof, fine but for these facts."""
    return the(house_with(id="fs1", tests=(probed(0.1, "fs1"),), **FINE | facts), "finding/concrete/fs1")


def test_what_the_house_presses_is_worked_out_from_its_weight():
    """By hand, 30 ft of front: live 5 ft of floor at 40 psf, 6,000 lb; snow 352 sq ft at 20 psf, 7,040 lb; dead 12,484
    lb from the take-down, which has tests of its own. D + 0.75 (L + S) = 22,264 lb, 742 plf. The concrete: 26 in. of
    6 in. stem and 5 in. of footing on either side, 8 in. thick: 236 sq in. at 150 pcf, 246 plf. 988 plf on 16 in.:
    741 psf. On 6 in. alone: (742 + 162.5)/0.5 = 1,809 psf, more than the 1,500 psf of clay (IBC Table 1806.2)."""
    wide, narrow = front(), front(footing_width_in=measured(6.0))
    assert (answers(wide)["pressing"], answers(narrow)["pressing"]) == ("yes", "no")
    assert narrow.gravity.weight == "watch"
    assert "presses 740 psf" in {r.key: r.text for r in wide.gravity.reasons}["pressing"]
    assert "presses 1,810 psf" in {r.key: r.text for r in narrow.gravity.reasons}["pressing"]
    assert "1,500 psf" in {r.key: r.text for r in narrow.gravity.reasons}["pressing"]


def test_a_width_that_may_be_either_leaves_the_pressure_open():
    assert answers(front(footing_width_in=Fact(value=8.0, low=6.0, high=20.0)))["pressing"] == "cannot tell"
    assert answers(front(footing_width_in=unknown()))["pressing"] == "cannot tell"


def test_a_hollow_under_it_matters_and_water_comes_first():
    found = of(seen=(noted("undermining", "fs2", "hollow a foot deep"),))
    assert found.gravity.weight == "matters"
    assert [cure.key for cure in found.cures][:2] == ["water", "underfill"]
    assert any("hollow a foot deep" in r.text for r in found.gravity.reasons)


def test_rust_stains_matter_to_its_life():
    found = of(seen=(noted("rust", "fs2", "brown streaks along a bar"),))
    assert found.durability.weight == "matters"
    assert "bars" in [cure.key for cure in found.cures]


def test_a_skin_is_mended_only_where_the_concrete_holds_together():
    assert "skin" in [c.key for c in of(tests=(probed(0.75),)).cures]
    assert "skin" not in [c.key for c in of(tests=(probed(0.75),), condition=measured("crumbling")).cures]
    assert "skin" not in [c.key for c in of(tests=(probed(1.5),)).cures]


# ---- What guides say of cases ----

BUILDER = "http://jimgardnerconstruction.com/category/foundation/"


def test_sandy_concrete_that_comes_apart_in_the_fingers_is_a_major_concern():
    """A builder's page: much sand, drainage bad, so soft that fingers pull it apart: a major concern."""
    found = of(tests=(probed(2.0),), seen=(noted("crumbling", "fs2", "comes apart in the fingers"),))
    assert (found.gravity.weight, found.earthquake.weight) == ("matters", "matters")


def test_the_ugliest_concrete_full_of_stones_may_be_strong_and_is_less_of_a_concern():
    """The same page: ugly concrete with stones and voids can be quite strong, and is less of a concern."""
    found = of(seen=(noted("honeycomb", "fs2", "stones and voids"),))
    assert found.weight == "watch"
    assert found.earthquake.weight == "does not matter"


# ---- Laws ----

depths = st.floats(0, 6).map(lambda x: round(x, 2))
sizes = st.one_of(st.just(unknown()), st.floats(2, 40).map(lambda x: measured(round(x, 1))))


@given(
    probe=depths, wide=sizes, thick=sizes, deep=sizes, psi=st.floats(200, 5000), times=st.floats(1, 4),
    worse=st.sampled_from((("sound", "weathered"), ("sound", "crumbling"), ("weathered", "crumbling"))),
)  # fmt: skip
@settings(max_examples=12, deadline=None)
def test_worse_never_weighs_less_and_the_unknown_never_reads_as_nothing(probe, wide, thick, deep, psi, times, worse):
    def facts(by, condition):
        small = {k: measured(f.value / by) if f.known else f for k, f in sizes_of.items()}
        return {**small, "strength_psi": measured(psi / by), "condition": measured(condition)}

    sizes_of = {"footing_width_in": wide, "footing_thickness_in": thick, "depth_in": deep}
    better, heavier = (
        of(tests=(probed(probe),), **facts(1, worse[0])),
        of(tests=(probed(probe * times),), **facts(times, worse[1])),
    )
    for name in ("gravity", "earthquake", "durability"):
        a, b = getattr(better, name).weight, getattr(heavier, name).weight
        assert WEIGHTS.index(b) <= WEIGHTS.index(a)
    if not all(f.known for f in sizes_of.values()):
        assert better.gravity.weight != "does not matter"
