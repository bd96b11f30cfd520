"""What is proved of a stretch of old brick: its bond, and its mortar by in-place shear tests.

Both come from the existing-building code's appendix for buildings of unreinforced masonry (A1). On a foundation stem
that is an extension, and every value it gives is *indicated* at best. Stretches of brick of one age are taken for one
class of masonry (our choice, printed with the result): its tests count together, and each line must have its own two.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from groundsill.forces.reading import doubted
from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationSegment, FoundationTest
from groundsill.loadpath.case import LineCase
from groundsill.loadpath.stem import height_of
from groundsill.standards.iebc_2021.masonry import (
    bonded_wythes,
    lower_bound_mortar,
    mortar_shear,
    mortar_tests_asked,
    needs_pointing,
    table_a106_2,
)
from groundsill.standards.old_materials.tables import table_brick
from groundsill.work.pieces import ConcretePiece
from groundsill.working.steps import add, divide, given, greatest, note, subtract
from groundsill.working.value import Mark, marks_of

__all__ = [
    "AS_IN_CONCRETE", "CLASS_WORDS", "ON_A_STEM", "Bond", "Mortar", "bond_of", "brick_bearing", "inner_words",
    "mortar_of", "stretches_alike",
]  # fmt: skip

ON_A_STEM = "IEBC appendix A1, written for walls of buildings of unreinforced masonry, used on a foundation stem"
AS_IN_CONCRETE = ", as ACI 318-19 asks of anchors in concrete"
CLASS_WORDS = "brick of one age is taken for one class of masonry (our choice)"
_LINE_OF = "tests in a line of the first and top story, least"
_ROW = "solid units, laid in wythes"


@dataclass(frozen=True, slots=True)
class Bond:
    """How many wythes of a stretch count as one wall, of how many; ``why_not`` where nobody can say.

    ``words`` say what rests on it or was not seen; ``marks`` are those of the facts it follows from.
    """

    counted: float
    wythes: float
    words: str = ""
    why_not: str = ""
    marks: frozenset[Mark] = frozenset()


@dataclass(frozen=True, slots=True)
class Mortar:
    """The lower bound of the mortar's shear strength, psi, or ``why_not`` and what would settle it.

    ``words`` tell of the tests it is from, ``marks`` are those of the rules that say whether they are enough.
    """

    v_tL: float | None
    words: str = ""
    why_not: str = ""
    marks: frozenset[Mark] = frozenset()


# ---- Bond -----------------------------------------------------------------------------------------------------------


def bond_of(case: LineCase, id: str, segment: FoundationSegment) -> Bond:
    """Which wythes of a stretch act together: those that headers tie, as far as they were looked at."""
    path = f"survey.foundation.segments.{id}"
    names = ("wythes", "header_course", "header_percent", "header_clear_in", "collar_joint_filled")
    marks = case.reading.noted(f"how the wythes of {segment.mark or id} are bonded", path, *names)
    many = segment.wythes.value
    if many is None:
        return Bond(0.0, 0.0, why_not="how many wythes the brick has is not known", marks=marks)
    if many < 2:
        return Bond(many, many, "one wythe", marks=marks)
    share, clear = segment.header_percent.value, segment.header_clear_in.value
    if segment.header_course.value is None and (share is None or clear is None):
        reason = "whether headers tie the wythes was not seen: count header courses inside and outside"
        return Bond(0.0, many, why_not=reason, marks=marks)
    filled = _collar(segment.collar_joint_filled)
    tied = segment.header_course.value is not False
    taken = "unknown" in (segment.header_percent.state, segment.header_clear_in.state)
    if share is not None and clear is not None and (tied or not taken):
        p_h = given("p_h", share / 100, "1", "headers, share of the face", marks)
        tied = bonded_wythes(p_h, given("s_h", clear, "in", "clear distance between headers", marks))
        seen = f"headers {share:g} % of the face, {clear:g} in. clear between them"
        seen = (
            f"headers seen and not measured: taken as {share:g} % of the face, {clear:g} in. clear" if taken else seen
        )
    elif tied:
        reason = "headers were seen, and nobody can tell their share of the face or how far apart they are: count them"
        return Bond(0.0, many, why_not=reason, marks=marks)
    else:
        seen = "no headers"
    if tied:
        return Bond(many, many, f"{many:g} wythes, {seen}, {filled}", marks=marks)
    return Bond(1.0, many, f"one of {many:g} wythes counts ({seen}: A106.2.2.1 makes the others veneer)", marks=marks)


def _collar(fact: Fact[bool]) -> str:
    if fact.value is None:
        return "collar joint not seen"
    return "collar joint filled" if fact.value else "collar joint not filled"


# ---- Mortar ---------------------------------------------------------------------------------------------------------


def stretches_alike(case: LineCase, segment: FoundationSegment) -> dict[str, FoundationSegment]:
    """The stretches of the house that are of one class of masonry with this one."""
    return {
        id: other
        for id, other in case.reading.in_order(case.reading.house.survey.foundation.segments)
        if other.material == segment.material and other.year.value == segment.year.value
    }


def mortar_of(case: LineCase, id: str, segment: FoundationSegment) -> Mortar:
    """What the in-place shear tests of a class of masonry prove for one line of it."""
    alike, every = stretches_alike(case, segment), "survey.foundation.segments"
    same = [id for id, s in case.reading.house.survey.foundation.segments.items() if s.material == segment.material]
    doubts = case.reading.noted("which brick is of one class", every, *(f"{id}.year" for id in same))
    doubts |= case.reading.noted("whether there is mortar", f"{every}.{id}.mortar")
    if segment.mortar.value == "missing":
        return Mortar(None, why_not="mortar is missing: the joints are packed first, then tested", marks=doubts)
    tests = [
        (key, t)
        for key, t in case.reading.in_order(case.reading.house.survey.foundation.tests)
        if t.kind == "mortar shear" and t.segment in alike
    ]
    left_out = [f"{t.mark or key} {why}" for key, t in tests if (why := _not_counted(t, alike[t.segment]))]
    counted = [(key, t) for key, t in tests if not _not_counted(t, alike[t.segment])]
    here = [(key, t) for key, t in counted if alike[t.segment].line == case.id]
    asked, of_line = _asked(case, alike, counted), table_a106_2().read(_ROW, _LINE_OF, "n_line")
    marks = doubts | marks_of((asked, of_line))
    total, own = sum(t.count for _, t in counted), sum(t.count for _, t in here)
    if total < asked or own < of_line:
        enough = f"{own} of {float(of_line):g} on this line, {total} of {float(asked):g} of its class"
        return Mortar(None, why_not="; ".join((f"in-place shear tests: {enough} (A106.2.3.5)", *left_out)), marks=marks)
    values = {key: _value(case, key, t, alike[t.segment]) for key, t in counted}
    marks |= marks_of(values.values())
    if needs_pointing([v for key, t in here for v in [values[key]] * t.count]):
        found = ", ".join(f"{t.mark or key} {float(values[key]):.0f}" for key, t in here)
        why = f"more than half of this line's mortar tests are under 30 psi ({found}): the wall is pointed and tested"
        return Mortar(None, why_not=f"{why} again (A106.2.3.6, A106.2.3.9)", marks=marks)
    bound = lower_bound_mortar([v for key, t in counted for v in [values[key]] * t.count])
    words = f"mortar {float(bound):.0f} psi by {total} in-place shear tests, {own} on this line; {CLASS_WORDS}"
    return Mortar(bound, "; ".join((words, *left_out)), marks=marks)


def _not_counted(test: FoundationTest, segment: FoundationSegment) -> str:
    """What keeps a mortar test from counting, in words; nothing when it counts."""
    if not segment.from_in <= test.station_in <= segment.to_in:
        return "stands off the stretch it names"
    if not test.by.strip() or not test.when.strip():
        return "does not say who made it and when"
    if test.axial_psi is None and segment.top_width_in.value is None:
        return "has no stress of the load on its joints, and the width of the wall is not known"
    if test.unit == "lb":
        return "" if test.bed_joints_in2 else "gives a load without the area of the bed joints"
    if test.unit != "psi":
        return "is neither in psi nor in lb"
    return ""


def _asked(case: LineCase, alike: dict[str, FoundationSegment], tests: Sequence[tuple[str, FoundationTest]]) -> float:
    """How many tests the class needs: two in each line that is tested or asked about, eight at the least."""
    lines = {alike[t.segment].line for _, t in tests} | {case.id}
    surface = sum((s.to_in - s.from_in) * (height_of(s) or 0.0) / 144 for s in alike.values())
    return mortar_tests_asked(float(len(lines)), surface)


def _value(case: LineCase, id: str, test: FoundationTest, segment: FoundationSegment) -> float:
    """One test's shear value, less the friction of the load on its joints."""
    note(f"mortar test {test.mark or id}")
    stress = _stress(case, test, segment)
    if test.unit == "lb" and test.bed_joints_in2:
        V = given("V_test", test.result, "lb", f"load at the first movement, test {test.mark or id}")
        return mortar_shear(V, given("A_b", test.bed_joints_in2, "in^2", "both bed joints"), stress)
    read = given("v_test", test.result, "psi", f"shear at the first movement, test {test.mark or id}")
    return greatest(subtract(read, stress, symbol="v_to"), 0.0, symbol="v_to", label="mortar shear test value")


def _stress(case: LineCase, test: FoundationTest, segment: FoundationSegment) -> float:
    """The stress on the joints of a tested brick: as entered, else what the take-down brings on the top of the stem."""
    if test.axial_psi is not None:
        return given("p_D+L", test.axial_psi, "psi", "stress on the joints, as entered with the test")
    width, load = segment.top_width_in.value, case.forces.gravity.lines[segment.line]
    assert width is not None
    D = given("D", max(float(load.dead), 0.0), "lb", "dead load on the line from the take-down", marks_of((load.dead,)))
    L = given("L", max(float(load.live), 0.0), "lb", "live load on the line", marks_of((load.live,)))
    long = 12 * case.forces.lines[segment.line].length_ft
    known = case.reading.marked(f"survey.foundation.segments.{test.segment}", "top_width_in")
    A = given("A", long * width, "in^2", "top of the wall along the line", known)
    return divide(add(D, L, symbol="D+L"), A, symbol="p_D+L", unit="psi", label="stress on the joints of the test")


# ---- What stands on it ----------------------------------------------------------------------------------------------


def brick_bearing(case: LineCase, id: str, segment: FoundationSegment) -> float:
    """Compressive strength taken for the bearing of a bolt in untested brick, psi: the guideline's fair or poor row."""
    path = f"survey.foundation.segments.{id}"
    marks = case.reading.noted(f"the condition of {segment.mark or id}", path, "condition", "mortar")
    good = segment.condition.value == "sound" and segment.mortar.value == "hard"
    return doubted(table_brick().read("fair" if good else "poor", "compression", "f'_m"), marks)


def inner_words(case: LineCase) -> str:
    """Concrete that a design draws inside this line, in words: no check counts it; nothing when it draws none."""
    marks = [
        piece.mark or id
        for id, piece in case.of_kind(ConcretePiece)
        if isinstance(piece, ConcretePiece) and piece.purpose == "inner foundation"
    ]
    if not marks:
        return ""
    return (
        f"concrete drawn inside this line ({', '.join(marks)}) is counted by no check: to be worked out it must be a "
        "piece of kind inner foundation"
    )
