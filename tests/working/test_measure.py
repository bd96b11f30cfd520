"""What people type under a house, and how it is shown again. The cases are data, shared with the front end."""

from __future__ import annotations

import json
from collections import Counter
from fractions import Fraction
from importlib import resources
from typing import Any

import pytest

from groundsill.working.errors import GroundsillError, OutsideLimits, UnitError
from groundsill.working.measure import KINDS, MeasureError, kind_of, read, show
from groundsill.working.measure_show import exact_scale
from groundsill.working.unit import factor

CASES: list[dict[str, Any]] = json.loads(
    resources.files("groundsill.working").joinpath("measure_cases.json").read_text(encoding="utf-8")
)
READ = [case for case in CASES if "number" in case]
REFUSED = [case for case in CASES if "refused" in case]
SHOWN = [case for case in CASES if "show" in case]


def name_of(case: dict[str, Any]) -> str:
    return f"{case['kind']}: {case.get('text', case.get('show'))!r}"[:60]


@pytest.mark.parametrize("case", READ, ids=name_of)
def test_typed_measure_is_read(case):
    measure = read(case["text"], case["kind"], case["inside"], case.get("bare"))
    # A tangent lies between a slope and degrees; everything else is exact to the last bit.
    through_tangent = measure.exact is None
    assert measure.number == (pytest.approx(case["number"], rel=1e-15) if through_tangent else case["number"])
    assert (measure.typed, measure.inside) == (case["text"], case["inside"])
    if "echo" in case:
        assert measure.echo == case["echo"]


@pytest.mark.parametrize("case", REFUSED, ids=name_of)
def test_what_is_not_understood_is_refused_with_the_reason_and_an_example(case):
    with pytest.raises(MeasureError) as refusal:
        read(case["text"], case["kind"], case["inside"], case.get("bare"))
    message = str(refusal.value)
    assert case["refused"] in refusal.value.why
    assert refusal.value.typed == case["text"]
    assert message.startswith("cannot read [")
    assert f"write {KINDS[case['kind']].noun} like {KINDS[case['kind']].example}" in message
    assert message.isprintable()


@pytest.mark.parametrize("case", SHOWN, ids=name_of)
def test_number_is_shown_for_a_person(case):
    style, to = case.get("style"), case.get("to", 16)
    assert show(case["show"], case["kind"], case["inside"], case["system"], style, to) == case["shown"]


def test_case_list_is_large_whole_and_says_nothing_twice():
    keys = Counter(json.dumps({k: v for k, v in c.items() if k not in ("number", "refused", "echo")}) for c in CASES)
    assert [key for key, times in keys.items() if times > 1] == []
    assert len(READ) + len(REFUSED) >= 120
    assert len(READ) + len(REFUSED) + len(SHOWN) == len(CASES)
    assert {c["kind"] for c in READ} == {c["kind"] for c in REFUSED} == {c["kind"] for c in SHOWN} == set(KINDS)


def test_every_example_in_a_message_is_itself_understood():
    for kind, facts in KINDS.items():
        for example in facts.example.replace(" or ", ", ").replace(" (rise first)", "").split(", "):
            assert read(example, kind, facts.units[0]).number > 0, example


def test_every_unit_a_kind_allows_can_be_typed_as_the_program_spells_it():
    for kind, facts in KINDS.items():
        for unit in facts.units:
            if unit == "1":
                continue  # the pure number has no mark to type
            assert read(f"3 {unit}", kind, unit).number == 3.0


def test_refusal_carries_what_a_numbered_fault_line_needs():
    with pytest.raises(MeasureError) as refusal:
        read("7 6", "length", "in", bare="in")
    fault = refusal.value
    assert isinstance(fault, GroundsillError)
    assert fault.why == "nothing says which number in [7 6] is feet and which is inches"
    assert fault.allowed == (
        "write a length like 7'-6 1/2\", 90 1/2 in, 7.5 ft, 2.3 m or 2300 mm; a number alone is taken in in"
    )


def test_long_and_unprintable_text_is_cut_and_escaped_in_the_message():
    with pytest.raises(MeasureError, match=r"it is 5,?000 characters long") as refusal:
        read("9" * 5000, "length", "in")
    assert len(str(refusal.value)) < 300
    with pytest.raises(MeasureError, match=r"cannot read \[7\\x00 in\]"):
        read("7\x00 in", "length", "in")


def test_exact_value_is_kept_beside_the_float():
    assert read("7'-6 1/3\"", "length", "in").exact == Fraction(271, 3)
    assert read("2.3 m", "length", "in").exact == Fraction(11500, 127)
    assert read("1:3", "slope", "1").exact == Fraction(1, 3)
    assert read("30 deg", "slope", "1").exact is None


def test_understood_is_the_head_of_the_echo_in_marks_any_field_takes():
    assert read("7 feet 6½", "length", "in").understood == "7'-6 1/2\""
    assert read("90", "length", "in", bare="in").understood == "90 in"
    assert read("-25 lb/sq ft", "pressure", "psf").understood == "-25 psf"


def test_unit_that_does_not_measure_the_kind_is_the_programs_fault_not_the_persons():
    with pytest.raises(UnitError, match=r"'psf' does not measure a length; use one of in, ft, mm, cm, m"):
        read("7 ft", "length", "psf")
    with pytest.raises(UnitError, match=r"'deg' does not measure a length"):
        read("7", "length", "in", bare="deg")
    with pytest.raises(UnitError, match=r"'colour' is not a kind of quantity"):
        read("7", "colour", "in")  # type: ignore[arg-type]
    with pytest.raises(UnitError, match=r"style 'psf' does not show a length; use one of ft-in, in, decimal-in"):
        show(7.0, "length", "in", style="psf")
    with pytest.raises(UnitError, match=r"an inch is not divided by 10 here"):
        show(7.0, "length", "in", to=10)
    with pytest.raises(UnitError, match=r"system 'metric' is not known; use 'us' or 'si'"):
        show(7.0, "length", "in", system="metric")  # type: ignore[arg-type]


@pytest.mark.parametrize("number", [float("nan"), float("inf"), float("-inf")])
@pytest.mark.parametrize("kind", list(KINDS))
def test_what_is_not_finite_is_never_shown(kind, number):
    with pytest.raises(OutsideLimits, match=r"cannot be shown as an? .*: it is not a finite number"):
        show(number, kind, KINDS[kind].units[0])


def test_vertical_is_not_shown_as_a_slope():
    with pytest.raises(OutsideLimits, match=r"90.0 degrees is not a slope"):
        show(90.0, "slope", "deg")


def test_kind_is_told_from_the_unit():
    assert {u: kind_of(u) for u in ("in", "ft", "lb", "plf", "lb/in", "psi", "psf", "pcf", "in^2", "deg", "%")} == {
        "in": "length", "ft": "length", "lb": "force", "plf": "force_per_length", "lb/in": "force_per_length",
        "psi": "pressure", "psf": "pressure", "pcf": "unit_weight", "in^2": "area", "deg": "angle", "%": "ratio",
    }  # fmt: skip
    assert kind_of("lb-in") is None
    assert kind_of("in^3") is None
    assert kind_of("furlong") is None


def test_exact_factors_are_the_factors_of_the_unit_module():
    for facts in KINDS.values():
        for a in facts.units:
            for b in facts.units:
                if "deg" in (a, b):
                    continue
                assert float(exact_scale(a)[0] / exact_scale(b)[0]) == pytest.approx(factor(a, b), rel=1e-14)


# Conversion factors as printed by others, to the digits printed: "Typical Conversion Table" (table 1.2) of a civil
# engineering handbook, credited there to the U.S. Department of the Interior Metric Manual and the National Bureau of
# Standards; seen at https://issuhub.com/view/index/4884?pageIndex=21.
@pytest.mark.parametrize(
    ("text", "kind", "inside", "printed"),
    [
        ("1 lb", "force", "N", 4.448222),
        ("1 psi", "pressure", "kPa", 6.894757),
        ("1 ksf", "pressure", "Pa", 4.788026e4),
        ("1 sq ft", "area", "m^2", 9.290304e-2),
    ],
)
def test_conversion_matches_the_printed_table(text, kind, inside, printed):
    assert read(text, kind, inside).number == pytest.approx(printed, rel=2e-7)  # half a unit in the seventh figure
