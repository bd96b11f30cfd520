"""Old materials: ranges by age and name with their marks, and the older sill rule."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from groundsill.standards.ibc_2006.sill import sill_rule
from groundsill.standards.old_materials import tables
from groundsill.standards.old_materials.existing import existing_strength
from groundsill.standards.old_materials.ranges import old_concrete_strength, unit_weight, wood_gravity
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import Sheet
from groundsill.working.value import marks_of

RANGES = (tables.table_concrete_by_age(), tables.table_unit_weights(), tables.table_wood_gravity())


@pytest.mark.parametrize("table", RANGES, ids=[t.number for t in RANGES])
def test_every_range_runs_from_low_over_best_to_high(table: tables.Table) -> None:
    for row in table.rows:
        low, best, high = (table.read(row, column) for column in ("low", "best", "high"))
        assert 0 < low <= best <= high, row


@pytest.mark.parametrize(
    ("year", "row"),
    [
        (1912, "before 1920"), (1919, "before 1920"), (1920, "1920 to 1929"), (1929, "1920 to 1929"),
        (1930, "1930 to 1949"), (1949, "1930 to 1949"), (1950, "1950 to 1969"), (1969, "1950 to 1969"),
        (1970, "1970 or later"), (2020, "1970 or later"), (None, "unknown"),
    ],
)  # fmt: skip
def test_the_year_picks_the_row(year: float | None, row: str) -> None:
    assert old_concrete_strength(year).row == row


def test_a_foundation_of_1912_is_taken_between_1000_and_2500_psi() -> None:
    got = old_concrete_strength(1912)
    assert (got.low, got.best, got.high) == (1000.0, 1500.0, 2500.0)


@given(st.integers(1850, 2020), st.integers(0, 100))
def test_later_concrete_is_never_taken_for_weaker(year: int, later: int) -> None:
    first, second = old_concrete_strength(year), old_concrete_strength(min(year + later, 2100))
    assert second.low >= first.low
    assert second.best >= first.best
    assert second.high >= first.high


def test_an_unknown_year_is_never_taken_for_better_than_a_known_one() -> None:
    unknown = old_concrete_strength(None)
    for year in (1912, 1925, 1940, 1960):
        assert unknown.low <= old_concrete_strength(year).low
        assert unknown.best <= old_concrete_strength(year).best


def test_a_year_that_cannot_be_is_refused() -> None:
    with pytest.raises(OutsideLimits, match=r"concrete strength by age: year = 19; must be 1700 to 2100"):
        old_concrete_strength(19)


def test_every_end_of_a_range_says_that_it_is_assumed_and_how_it_is_known() -> None:
    with Sheet():
        got = old_concrete_strength(1912)
        fir = wood_gravity("Douglas fir, old growth")
    for end in (got.low, got.best, got.high):
        assert sorted(mark.kind for mark in marks_of((end,))) == ["assumed range", "from memory"]
    assert [mark.kind for mark in marks_of((fir.best,))] == ["assumed range"]


def test_old_redwood_is_light_and_unknown_wood_covers_what_is_common() -> None:
    assert wood_gravity("redwood, old growth").best == 0.37
    unknown = wood_gravity("unknown softwood")
    for wood in tables.table_wood_gravity().rows:
        assert unknown.low <= wood_gravity(wood).low
        assert wood_gravity(wood).high <= unknown.high


def test_a_wood_that_is_not_in_the_table_is_refused_with_those_that_are() -> None:
    with pytest.raises(OutsideLimits, match=r"no row 'oak' \(wood\); it has Douglas fir, old growth"):
        wood_gravity("oak")


def test_concrete_weighs_about_145_pounds_a_cubic_foot() -> None:
    got = unit_weight("poured concrete")
    assert (got.low, got.best, got.high) == (140.0, 145.0, 150.0)


def test_plaster_on_wood_lath_has_a_value_only_as_existing_and_marked_as_an_extension() -> None:
    with Sheet():
        got = existing_strength("crosswall, plaster on wood or metal lath, one side")
    assert got == 600.0
    assert {mark.kind for mark in marks_of((got,))} == {"from memory", "extension"}


def test_better_brick_is_never_weaker() -> None:
    for column in ("compression", "shear"):
        cells = [tables.table_brick().read(row, column) for row in ("poor", "fair", "good")]
        assert cells == sorted(cells)


@given(v=st.floats(0.0, 2000.0))
def test_the_older_sill_rule_asks_more_as_shear_grows(v: float) -> None:
    got = sill_rule(v)
    assert got.two_by_serves == (v <= 600.0)
    assert got.bolt_factor == (1.0 if v <= 350.0 else 2.0 if v <= 600.0 else 0.0)


@pytest.mark.parametrize(("v", "level"), [(-1.0, "ASD"), (float("nan"), "ASD"), (300.0, "service")])
def test_the_older_sill_rule_refuses_what_it_does_not_speak_of(v: float, level: str) -> None:
    with pytest.raises(OutsideLimits, match=r"IBC 2006 2305\.3\.11: v = .* asks for v from 0, ASD or LRFD"):
        sill_rule(v, level)
