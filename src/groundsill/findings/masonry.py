"""Brick and stone, one finding for each stretch: its joints, its mortar, its bond, and whether tests prove it.

Good brick in sound lime mortar stands for centuries, and now and then is good enough to bolt to directly; usually it is
not (common practice, no source), and nobody knows without two proofs: shear tests of its mortar, and anchors tested in
that wall. Where the owner wishes to keep its look, what takes the old wall away is left out.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from groundsill.findings.answer import Answer, at_most, every, holds, is_one_of
from groundsill.findings.asking import Asking, settles
from groundsill.findings.finding import Finding, Reason
from groundsill.findings.footings import Footing
from groundsill.forces.reading import Reading
from groundsill.house.foundation import FoundationSegment
from groundsill.standards.iebc_2021.masonry import bonded_wythes, mortar_tests_asked
from groundsill.working.sheet import quiet

__all__ = ["masonry"]

_PATH: Final = "survey.foundation.segments"
_MATERIALS: Final = {"brick": "Brick", "stone": "Stone", "block": "Block"}
_KINDS: Final = ("soft mortar", "missing mortar", "crumbling", "undermining", "repair", "rust", "damp", "drainage")
_FACTS: Final = (
    "condition", "mortar", "wythes", "header_course", "header_percent", "header_clear_in", "collar_joint_filled",
    "footing_width_in", "footing_thickness_in", "depth_in",
)  # fmt: skip
_ERODED_IN: Final = 0.25  # a joint that lost more of its mortar is pointed
_PULLS: Final = ("anchor pull", "anchor shear", "torque")
_SPOILS: Final = ("replace",)  # what takes the old wall away, and with it its look


def masonry(reading: Reading) -> Iterator[Finding]:
    """The findings on every stretch of brick, stone and block."""
    for id, segment in reading.in_order(reading.house.survey.foundation.segments):
        if segment.material in _MATERIALS:
            yield _Stretch(reading, id, segment).finding()


@dataclass(frozen=True, slots=True)
class _Stretch:
    """One stretch of masonry and the questions asked of it."""

    reading: Reading
    id: str
    segment: FoundationSegment

    @property
    def ask(self) -> Asking:
        """The book of masonry."""
        return Asking(self.reading, "masonry")

    @property
    def footing(self) -> Footing:
        """Its footing."""
        return Footing(self.reading, self.id, self.segment)

    def finding(self) -> Finding:
        """The three weighings, and what fits."""
        segment, footing, mortar = self.segment, self.footing, self.mortar()
        holding = (self.whole(), self.jointed())
        gravity = self.ask.weighed(
            "gravity", (*holding, *footing.hollow()), (mortar, *self.bonded(), *footing.sizes(), footing.pressing())
        )
        proved, perimeter = self.proved(), self.perimeter()
        heavy = (*holding, *(() if proved.answer == "yes" else (perimeter,)))
        light = (proved, mortar, *self.bonded(), *self.filled(), *((perimeter,) if proved.answer == "yes" else ()))
        earthquake = self.ask.weighed("earthquake", heavy, light)
        durability = self.ask.weighed("durability", (), (self.whole(), self.eroded()))
        active = self.ask.asked("dry", "no" if self.wet() else "cannot tell", seen=self.wet())
        return Finding(
            address=f"finding/masonry/{self.id}",
            mark=segment.mark,
            title=f"{_MATERIALS[segment.material]} {self.state()}",
            place=self.ask.stretch(segment.line, segment.from_in, segment.to_in),
            line=segment.line,
            station_in=(segment.from_in + segment.to_in) / 2,
            observed=tuple(self.seen()),
            gravity=gravity,
            earthquake=earthquake,
            durability=durability,
            cause=tuple(self.cause()),
            fits=self.keeping(),
            active=active,
            confirm=settles(active, gravity, earthquake, durability),
            cures=self.ask.cures(*self.cures()),
            left_alone=self.ask.left_alone(self.alone()),
            marks=tuple(sorted(self.reading.marked(f"{_PATH}.{self.id}", *_FACTS))),
        )

    # ---- The questions ----

    def whole(self) -> Reason:
        """Whether the units hold together."""
        crumbles = self.ask.noted(self.id, "crumbling")
        return self.ask.asked("whole", "no" if crumbles else is_one_of(self.segment.condition, "sound", "weathered"))

    def jointed(self) -> Reason:
        """Whether there is mortar in its joints."""
        gone = self.ask.noted(self.id, "missing mortar")
        return self.ask.asked("jointed", "no" if gone else is_one_of(self.segment.mortar, "hard", "soft"))

    def mortar(self) -> Reason:
        """Whether its mortar is hard."""
        soft = self.ask.noted(self.id, "soft mortar")
        return self.ask.asked("mortar", "no" if soft else is_one_of(self.segment.mortar, "hard"))

    def bonded(self) -> tuple[Reason, ...]:
        """Whether headers tie its wythes; not asked of one wythe, nor of stone and block."""
        if self.segment.material != "brick" or at_most(self.segment.wythes, 1) == "yes":
            return ()
        return (self.ask.asked("bonded", self.tied()),)

    def tied(self) -> Answer:
        """Headers enough, by their share and spacing where they were measured, else by whether any were seen."""
        share, clear = self.segment.header_percent, self.segment.header_clear_in
        if share.value is None or clear.value is None:
            return holds(self.segment.header_course)
        shares, apart = ((f.low, f.value, f.high) for f in (share, clear))
        with quiet():
            found = {bonded_wythes(p / 100, s) for p in shares if p is not None for s in apart if s is not None}
        return "cannot tell" if len(found) > 1 else "yes" if found.pop() else "no"

    def filled(self) -> tuple[Reason, ...]:
        """Whether the joint between the wythes is filled; asked of brick of several wythes alone."""
        return (self.ask.asked("filled", holds(self.segment.collar_joint_filled)),) if self.bonded() else ()

    def eroded(self) -> Reason:
        """Whether its joints lost little of their mortar, by the deepest place that was noted."""
        gone = [seen.size_in for seen in self.ask.noted(self.id, "missing mortar", "soft mortar")]
        answer: Answer = "yes" if self.mortar().answer == "yes" else "cannot tell"
        if gone:
            answer = every(at_most(size, _ERODED_IN) for size in gone)
        if self.jointed().answer == "no":
            answer = "no"
        return self.ask.asked("eroded", answer, limit=self.ask.shown(_ERODED_IN))

    def proved(self) -> Reason:
        """Whether both proofs are entered: shear tests enough of this masonry, and anchors tested in this wall."""
        shear, anchors, asked = self.shear_tests(), self.anchor_tests(), self.asked()
        answer: Answer = "yes" if shear >= asked and anchors else "cannot tell"
        return self.ask.asked("proved", answer, shear=f"{shear}", anchors=f"{anchors}", asked=f"{asked:g}")

    def perimeter(self) -> Reason:
        """Whether it holds up an outside wall, which the chapter on old houses names a weakness."""
        line = self.reading.house.survey.underfloor.lines[self.segment.line]
        return self.ask.asked("perimeter", "no" if line.position == "perimeter" else "yes")

    def shear_tests(self) -> int:
        """In-place shear tests of masonry of one kind and year with it."""
        segments = self.reading.house.survey.foundation.segments
        alike = {
            id for id, other in segments.items()
            if (other.material, other.year.value) == (self.segment.material, self.segment.year.value)
        }  # fmt: skip
        tests = self.reading.house.survey.foundation.tests.values()
        return sum(test.count for test in tests if test.kind == "mortar shear" and test.segment in alike)

    def anchor_tests(self) -> int:
        """Anchors tested in this stretch."""
        tests = self.reading.house.survey.foundation.tests.values()
        return sum(test.count for test in tests if test.kind in _PULLS and test.segment == self.id)

    def asked(self) -> float:
        """How many shear tests a class of masonry needs at least."""
        with quiet():
            return float(mortar_tests_asked(1.0, 0.0))

    def wet(self) -> str:
        """What tells that water comes to it."""
        return "; ".join(self.ask.in_words(self.ask.noted(self.id, "damp", "drainage", "undermining")))

    # ---- Cause, cures, and what happens if nothing is done ----

    def cause(self) -> Iterator[Reason]:
        """What may have brought it about."""
        if "no" in (self.mortar().answer, self.jointed().answer):
            yield self.ask.asked("lime", "cannot tell")

    def cures(self) -> tuple[str, ...]:
        """The remedies that fit, the least that works first; none that spoils a look the owner wishes to keep."""
        return tuple(key for key in self.fitting() if not (self.keeping() and key in _SPOILS))

    def keeping(self) -> tuple[Reason, ...]:
        """The owner's wish to keep its look, where there is one: it chooses between remedies."""
        if holds(self.reading.house.survey.building.keep_character) != "yes":
            return ()
        return (self.ask.asked("character", "yes"),)

    def fitting(self) -> Iterator[str]:
        """The remedies that fit what was found."""
        bad = "no" in (self.whole().answer, self.jointed().answer)
        if self.footing.hollow():
            yield from ("water", "underfill")
        if "cannot tell" in (self.whole().answer, self.jointed().answer, self.mortar().answer):
            yield "look"
        if self.perimeter().answer == "no" and self.proved().answer != "yes":
            yield "inner"
        if self.eroded().answer == "no" or self.mortar().answer == "no":
            yield "point"
        if not bad:
            yield "direct"
        if bad:
            yield from ("rebuild", "replace")
        if self.perimeter().answer == "yes" and not bad and self.mortar().answer == "yes":
            yield "leave"

    def alone(self) -> str:
        """Which words tell what happens if nothing is done."""
        bad = "no" in (self.whole().answer, self.jointed().answer)
        return "falling" if bad else "soft" if self.mortar().answer == "no" else "standing"

    # ---- Words ----

    def state(self) -> str:
        """What its joints are like, in a few words."""
        if self.whole().answer == "no":
            return "that crumbles"
        if self.jointed().answer == "no":
            return "with mortar gone from its joints"
        return {"yes": "in hard mortar", "no": "in soft mortar"}.get(self.mortar().answer, "whose mortar was not tried")

    def seen(self) -> Iterator[str]:
        """What the survey says of it, in words."""
        segment = self.segment
        for label, fact in (("", segment.condition), ("mortar ", segment.mortar)):
            if fact.known:
                yield f"{label}{fact.value}" + (f" ({fact.how})" if fact.how else "")
        if segment.wythes.value is not None:
            yield f"{segment.wythes.value:g} wythe{'' if segment.wythes.value == 1 else 's'}"
        if self.shear_tests() or self.anchor_tests():
            yield f"{self.shear_tests()} in-place shear tests of its kind, {self.anchor_tests()} anchors tested in it"
        yield from self.ask.in_words(self.ask.noted(self.id, *_KINDS))
