"""A foundation that leans: one finding for each stretch whose lean the survey gives.

For the weight of the house the questions are whether the load still comes down within the middle third of the base,
whether the ground bears the edge it leans to, whether the lean grows, and how much of the sill is left on it. For an
earthquake they are the seat of the sill and the distance of bolts from the face. What brought it about is asked cause
by cause; ground that creeps, fill and a lean that grows go to a geotechnical engineer, and drains alone are offered
only where those are ruled out.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from groundsill.findings.answer import Answer, at_most, every, holds, opposite
from groundsill.findings.asking import Asking
from groundsill.findings.finding import Finding, Judgement, Reason, Weight
from groundsill.findings.ground_beside import Beside
from groundsill.findings.monitors import gauge_says
from groundsill.findings.standing import Ends, Standing, ends_of, height_ends, over_all, standing_of, top_load_plf
from groundsill.forces.reading import Reading
from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.footings import parts_on
from groundsill.loadpath.ground import allowable_pressure, no_bearing
from groundsill.standards.statics.lean import lean_shift

__all__ = ["lean"]

_PATH: Final = "survey.foundation.segments"
_AT_IT_IN: Final = 12.0  # what was seen within a foot of a stretch was seen on it; our choice
_SLIGHT: Final = 1 / 8  # in/ft: no more than a rough face hides; our choice
_LEAST_SEAT_IN: Final = 3.0  # IRC R502.6, on concrete or masonry
_BOLT_FT: Final = 7 / 12  # depth of the bolt whose lower end is asked about
_WANDERS_IN: Final = 0.25
_OLD: Final = ("later work fits it", "old paint or dirt in its gaps")
_FACTS: Final = (
    "lean_in_per_ft", "lean_moving", "lean_signs", "drainage_mended_year", "wet_side", "load_added",
    "above_inside_soil_in", "above_outside_soil_in", "depth_in", "footing_width_in", "top_width_in",
)  # fmt: skip
_CAUSES: Final = ("wet", "retained", "creep", "fill", "roots", "undermined", "footing", "added")
_BEYOND_DRAINS: Final = ("creep", "fill")


def lean(reading: Reading) -> Iterator[Finding]:
    """The findings on every stretch of foundation that leans, or may; one that stands plumb has none."""
    for id, segment in reading.in_order(reading.house.survey.foundation.segments):
        leans = ends_of(segment.lean_in_per_ft)
        if leans is not None and leans != (0.0, 0.0):
            yield _Leaning(reading, id, segment, Beside(reading, id, segment)).finding()


@dataclass(frozen=True, slots=True)
class _Leaning:
    """One leaning stretch and the questions asked of it."""

    reading: Reading
    id: str
    segment: FoundationSegment
    beside: Beside

    def finding(self) -> Finding:
        """The three weighings, what may have caused it, and what fits."""
        gravity, earthquake, durability = self.gravity(), self.earthquake(), self.durability()
        causes = tuple(self.causes())
        active = self.still()
        asked = (*gravity.reasons, *earthquake.reasons, *durability.reasons, active, *causes)
        line = self.reading.house.survey.underfloor.lines[self.segment.line]
        stretch = f"{self.ask.shown(self.segment.from_in)} to {self.ask.shown(self.segment.to_in)}"
        return Finding(
            address=f"finding/lean/{self.id}",
            mark=self.segment.mark,
            title="Foundation leans",
            place=f"line {line.mark or self.segment.line}, {stretch} from its start",
            line=self.segment.line,
            station_in=None,
            observed=tuple(self.seen()),
            gravity=gravity,
            earthquake=earthquake,
            durability=durability,
            cause=tuple(r for r in causes if r.answer == "yes") or tuple(r for r in causes if r.answer != "no"),
            active=active,
            confirm=tuple(dict.fromkeys(r.settle for r in asked if r.settle)),
            cures=self.ask.cures(*self.cures(gravity.weight, earthquake.weight, causes)),
            left_alone=self.ask.left_alone(self.left_alone(gravity)),
            marks=tuple(sorted(self.reading.marked(f"{_PATH}.{self.id}", *_FACTS))),
            worked=() if (found := self.standing()) is None else found.working,
        )

    @property
    def ask(self) -> Asking:
        """The book of the topic, and the house."""
        return Asking(self.reading, "lean")

    def between(self, ends: Ends) -> str:
        """A length that may lie anywhere between two, in the units of the house."""
        low, high = (self.ask.shown(round(end * 16) / 16) for end in ends)
        return low if low == high else f"{low} to {high}"

    @property
    def steepest(self) -> float:
        """The most that it may lean, either way, in/ft."""
        return max(abs(end) for end in ends_of(self.segment.lean_in_per_ft) or (0.0,))

    # ---- The questions ----

    def standing(self) -> Standing | None:
        """Where its load comes down; None where that cannot be worked out."""
        load = top_load_plf(self.reading, self.segment.line)
        return None if load is None else standing_of(self.reading, self.segment, load)

    def kern(self) -> Reason:
        """Whether the load comes down within the middle third of the base."""
        found = self.standing()
        if found is None:
            return self.ask.asked("kern", "cannot tell")
        figures = {"e": self.between(found.off), "kern": self.between(found.kern), "base": self.between(found.base)}
        return self.ask.asked("kern", found.inside, **figures)

    def toe(self) -> Reason:
        """Whether the ground bears what the edge it leans to presses."""
        found, parts = self.standing(), parts_on(self.reading, self.segment.line)
        allowed = None if no_bearing(self.reading, parts) else allowable_pressure(self.reading)
        if found is None or allowed is None:
            return self.ask.asked("toe", "cannot tell")
        low, high = found.pressure
        answer: Answer = "yes" if high <= allowed else "no" if low > allowed else "cannot tell"
        pressed = f"up to {high:,.0f} psf" if high < float("inf") else "all of the load on next to no width"
        return self.ask.asked("toe", answer, q=pressed, allowed=f"{allowed:,.0f} psf")

    def still(self) -> Reason:
        """Whether it lies still: as recorded, else by plumb marks on it, else by what was built to fit its lean."""
        segment = self.segment
        recorded = opposite(holds(segment.lean_moving))
        if recorded != "cannot tell":
            return self.ask.asked("still", recorded, why=segment.lean_moving.how or "as recorded in the survey")
        by_marks, why = self.reading.once(("plumb", self.id), lambda: gauge_says(self.reading, self.id, "plumb"))
        if by_marks != "cannot tell":
            return self.ask.asked("still", by_marks, why=why)
        signs = segment.lean_signs.value
        if signs in _OLD:
            mended = segment.drainage_mended_year.value
            since = f", and the drainage there was mended in {mended:.0f}" if mended is not None else ""
            return self.ask.asked("still", "yes", why=f"{signs}{since}")
        return self.ask.asked("still", "no" if signs == "fresh gaps" else "cannot tell", why=signs or "")

    def bearing(self) -> Ends | None:
        """How much of the sills on it stands on it, in: as measured, else what the lean leaves of a full seat."""
        found: list[float] = []
        height = height_ends(self.segment)
        for _, sill in self.reading.on_line(self.reading.house.survey.underfloor.sills, self.segment.line):
            if min(sill.to_in, self.segment.to_in) - max(sill.from_in, self.segment.from_in) <= 0:
                continue
            seat = ends_of(sill.bearing_in)
            if seat is None:
                wide, top = ends_of(sill.width_in), ends_of(self.segment.top_width_in)
                if wide is None or top is None or height is None:
                    return None
                moved = lean_shift(self.steepest, height[1] / 12) if height[1] > 0 else 0.0
                seat = max(min(wide[0], top[0]) - moved, 0.0), min(wide[1], top[1])
            found.extend(seat)
        return over_all(found) if found else None

    def seat(self) -> Reason:
        """Whether enough of the sill stands on it."""
        bearing = self.bearing()
        answer: Answer = "cannot tell"
        if bearing is not None:
            answer = "yes" if bearing[0] >= _LEAST_SEAT_IN else "no" if bearing[1] < _LEAST_SEAT_IN else "cannot tell"
        figure = "" if bearing is None else self.ask.shown(int(bearing[0] * 16) / 16)
        return self.ask.asked("seat", answer, bearing=figure, least=self.ask.shown(_LEAST_SEAT_IN))

    def edge(self) -> Reason:
        """Whether a bolt set upright keeps its distance from the face it leans to."""
        low, high = sorted(abs(end) for end in ends_of(self.segment.lean_in_per_ft) or (0.0, 0.0))
        answer: Answer = (
            "yes" if high * _BOLT_FT <= _WANDERS_IN else "no" if low * _BOLT_FT > _WANDERS_IN else "cannot tell"
        )
        return self.ask.asked("edge", answer, loss=self.ask.shown(round(high * _BOLT_FT * 16) / 16))

    # ---- The three weighings ----

    def gravity(self) -> Judgement:
        """For the weight of the house: where it comes down, does it go on, is the sill seated."""
        kern, toe, still, seat = reasons = (self.kern(), self.toe(), self.still(), self.seat())
        if kern.answer == "no":
            return Judgement("matters", "one edge of its base presses hard and the other no longer", reasons)
        if still.answer == "no":
            return Judgement("matters", "its lean grows", reasons)
        if seat.answer == "no":
            return Judgement("matters", "too little of the sill stands on it", reasons)
        if every(r.answer for r in reasons) == "yes":
            return Judgement("does not matter", "it carries the house as it stands", reasons)
        if every((kern.answer, still.answer, seat.answer)) == "yes" and toe.answer == "no":
            return Judgement("watch", "its lower edge presses more than the ground is presumed to bear", reasons)
        return Judgement("cannot tell", "until the open questions are answered", reasons)

    def earthquake(self) -> Judgement:
        """For an earthquake: can the house be anchored to it as it stands."""
        kern, still, seat, edge = reasons = (self.kern(), self.still(), self.seat(), self.edge())
        first = every((kern.answer, still.answer, seat.answer))
        if first == "no":
            return Judgement("matters", "no foundation to anchor the house to until that is mended", reasons)
        if first == "cannot tell" or edge.answer == "cannot tell":
            return Judgement("cannot tell", "until the open questions are answered", reasons)
        if edge.answer == "no":
            return Judgement("watch", "bolts are set with its lean in mind", reasons)
        return Judgement("does not matter", "no bar to bolting down the sill on it", reasons)

    def durability(self) -> Judgement:
        """For the life of the structure: does the ground that turned it stay wet."""
        wet, why = self.beside.water()
        reason = self.ask.asked("dry", opposite(wet), why=why)
        weight: Weight = {"yes": "watch", "no": "does not matter"}.get(wet, "cannot tell")  # type: ignore[assignment]
        says = {"yes": "wet ground rots the sill and works on the stem", "no": "dry as far as anybody saw"}
        return Judgement(weight, says.get(wet, "until somebody has looked in a wet month"), (reason,))

    # ---- Cause, cures, and what happens if nothing is done ----

    def causes(self) -> Iterator[Reason]:
        """Every cause that such a lean may have, each with its answer."""
        for key in _CAUSES:
            answer, why = getattr(self.beside, f"by_{key}")()
            yield self.ask.asked(key, answer, why=why, height=why)

    def cures(self, gravity: Weight, earthquake: Weight, causes: tuple[Reason, ...]) -> Iterator[str]:
        """The remedies that fit, the least that works first."""
        answers = {cause.key: cause.answer for cause in causes}
        still, seat, kern = self.still().answer, self.seat().answer, self.kern().answer
        ruled_out = still != "no" and all(answers[key] == "no" for key in _BEYOND_DRAINS)
        if still == "cannot tell":
            yield "plumb"
        if still == "no" or "yes" in (answers[key] for key in _BEYOND_DRAINS):
            yield "engineer"
        if still != "yes" and ruled_out:
            if answers["wet"] == "yes":
                yield "water"
            if answers["retained"] == "yes":
                yield "grade"
        if self.edge().answer == "no" and "no" not in (still, seat, kern):
            yield "bolts"
        if seat == "no":
            yield "seat"
        if kern == "no":
            yield "replace"
        if {gravity, earthquake} <= {"does not matter", "watch"}:
            yield "leave"

    def left_alone(self, gravity: Judgement) -> str:
        """Which words tell what happens if nothing is done."""
        answers = {reason.key: reason.answer for reason in gravity.reasons}
        if answers["still"] == "no":
            return "moving"
        if answers["kern"] == "no":
            return "turning"
        return "still" if answers["still"] == "yes" else "open"

    def seen(self) -> Iterator[str]:
        """What the survey says of it, in words; slight leans are called so, and the push of the load is worked out."""
        leans = ends_of(self.segment.lean_in_per_ft) or (0.0, 0.0)
        way = "outward" if leans[0] >= 0 else "inward" if leans[1] <= 0 else "one way or the other"
        low, high = sorted(abs(end) for end in leans)
        if leans[0] < 0 < leans[1]:
            low = 0.0
        fact = self.segment.lean_in_per_ft
        slight = ", no more than a rough face hides" if at_most(fact, _SLIGHT) == "yes" and high <= _SLIGHT else ""
        how = f" ({fact.how})" if fact.how else ""
        yield f"its top leans {way} by {self.between((low, high))} in a foot{slight}{how}"
        found = self.standing()
        if found is not None:
            yield f"worked out: its top has moved by {self.between(found.shift)}"
            push = f"{found.thrust[1]:.0f} plf"
            yield f"worked out: the load on it pushes its top {way} with {push}, which the floor holds"
        yield from self.beside.readings()
        yield from self.beside.observed("lean", near_in=_AT_IT_IN)
        yield from self.beside.observed("undermining")
