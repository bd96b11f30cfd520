"""Soil against the wood, or too near it: one finding for each stretch of an outer wall where the code's distance fails.

For the life of the structure the question is how near soil comes, and whether the wood is of a kind that bears it. For
the weight of the house and for an earthquake it is whether the wood that carries has rotted. Lowering the ground and
the retained air gap have conditions of their own, each answered; a remedy is offered only where all of its are met.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Final

from groundsill.findings.air_gap import fence_for, working_of, works_to_in
from groundsill.findings.answer import Answer, at_least, at_most, every, holds, opposite, some
from groundsill.findings.asking import Asking
from groundsill.findings.book import book
from groundsill.findings.finding import Cure, Finding, Judgement, Reason
from groundsill.findings.ground_beside import Beside
from groundsill.findings.standing import active_pressure, ends_of
from groundsill.forces.reading import Reading
from groundsill.house.fact import Fact
from groundsill.house.foundation import FoundationSegment
from groundsill.house.underfloor import SillPiece
from groundsill.loadpath.footings import parts_on
from groundsill.loadpath.ground import lateral_value, shrinks
from groundsill.standards.irc_2021.decay import table_r317_1

__all__ = ["soil"]

_PATH: Final = "survey.foundation.segments"
_AT_IT_IN: Final = 12.0  # rot and soil that were seen within a foot of a stretch were seen on it; our choice
_COVER_IN: Final = 12.0  # IBC 2021 1809.4
_FACTS: Final = (
    "above_outside_soil_in", "above_inside_soil_in", "siding_above_soil_in", "depth_in", "outside_use",
    "drains_to_daylight",
)  # fmt: skip
_GAP: Final = ("behind", "ground", "trench", "outlet", "strong")
_LOWER: Final = ("behind", "cover")
_ROTTEN: Final = ("soft", "decayed")


def soil(reading: Reading) -> Iterator[Finding]:
    """The findings on every stretch of an outer foundation with soil nearer to its wood than the code asks."""
    lines = reading.house.survey.underfloor.lines
    for id, segment in reading.in_order(reading.house.survey.foundation.segments):
        if lines[segment.line].position == "perimeter" and segment.material != "none":
            near = _Near(reading, id, segment, Beside(reading, id, segment))
            if "no" in (near.clear().answer, near.within().answer):
                yield near.finding()


def _least(wood: str) -> float:
    """The code's distance of a kind of wood from the ground, in."""
    return float(table_r317_1().read(wood))


@dataclass(frozen=True, slots=True)
class _Near:
    """One stretch with soil near its wood, and the questions asked of it."""

    reading: Reading
    id: str
    segment: FoundationSegment
    beside: Beside

    def finding(self) -> Finding:
        """The three weighings, and what fits."""
        bearing, durability = self.bearing(), self.durability()
        fits = self.fits()
        asked = (*bearing.reasons, *durability.reasons, *fits)
        line = self.reading.house.survey.underfloor.lines[self.segment.line]
        stretch = f"{self.shown(self.segment.from_in)} to {self.shown(self.segment.to_in)}"
        touches = self.touches()
        return Finding(
            address=f"finding/soil/{self.id}",
            mark=self.segment.mark,
            title="Soil against the wood" if touches == "yes" else "Soil too near the wood",
            place=f"line {line.mark or self.segment.line}, {stretch} from its start",
            line=self.segment.line,
            station_in=None,
            observed=tuple(self.seen()),
            gravity=bearing,
            earthquake=bearing,
            durability=durability,
            cause=(),
            active=self.ask.asked("goes_on", touches if touches != "cannot tell" else "no"),
            confirm=tuple(dict.fromkeys(r.settle for r in asked if r.settle)),
            cures=tuple(self.cure(key) for key in self.cures(fits)),
            left_alone=self.ask.left_alone(self.left_alone()),
            marks=tuple(sorted(self.reading.marked(f"{_PATH}.{self.id}", *_FACTS))),
            fits=fits,
            worked=self.working(),
        )

    @property
    def ask(self) -> Asking:
        """The book of the topic, and the house."""
        return Asking(self.reading, "soil")

    def cure(self, key: str) -> Cure:
        """A remedy of the book, with its figures filled in."""
        found, figures = book("soil").cures[key], self.figures()
        return replace(found, name=found.name.format_map(figures), what=found.what.format_map(figures))

    def shown(self, inches: float) -> str:
        """A length in the units of the house."""
        return self.ask.shown(round(inches * 16) / 16)

    # ---- How near ----

    def _distance(self, key: str, fact: Fact[float], wood: str) -> Reason:
        """Whether a measured distance is what the code asks of a kind of wood."""
        least, ends = _least(wood), ends_of(fact)
        low = 0.0 if ends is None else ends[0]
        where = f"stands {self.shown(-low)} above" if low < 0 else f"comes within {self.shown(low)} of"
        stands = f"{where if low else 'reaches'} the top of the foundation"
        answer = at_least(fact, least)
        return self.ask.asked(key, answer, above=self.shown(low), stands=stands, least=self.shown(least))

    def clear(self) -> Reason:
        """Whether the soil outside stays clear of framing."""
        return self._distance("clear", self.segment.above_outside_soil_in, "framing on an exterior foundation wall")

    def within(self) -> Reason:
        """Whether the soil of the crawlspace stays clear of framing."""
        return self._distance("within", self.segment.above_inside_soil_in, "framing on an exterior foundation wall")

    def siding(self) -> Reason:
        """Whether the soil stays clear of siding."""
        return self._distance("siding", self.segment.siding_above_soil_in, "siding and sheathing over the ground")

    def joists(self) -> Reason | None:
        """Whether the joists stay clear of the crawlspace's soil; None where nobody measured the room there."""
        rooms = self.reading.on_line(self.reading.house.survey.underfloor.headroom, self.segment.line)
        beside = [r.clear_in for _, r in rooms if self.over(r.from_in, r.to_in) and ends_of(r.clear_in) is not None]
        least = _least("joists over a crawlspace")
        if not beside:
            return None
        lowest = min((ends_of(fact) or (least,))[0] for fact in beside)
        answer = every(at_least(fact, least) for fact in beside)
        return self.ask.asked("joists", answer, above=self.shown(lowest), least=self.shown(least))

    def touches(self) -> Answer:
        """Whether soil reaches the wood, outside or inside."""
        return some(
            at_most(fact, 0.0)
            for fact in (
                self.segment.above_outside_soil_in,
                self.segment.above_inside_soil_in,
                self.segment.siding_above_soil_in,
            )
            if ends_of(fact) is not None
        )

    def over(self, low: float, high: float) -> bool:
        """Whether a stretch of the line lies over this one."""
        return min(high, self.segment.to_in) - max(low, self.segment.from_in) > 0

    def sills(self) -> list[SillPiece]:
        """The pieces of sill that lie on it."""
        found = self.reading.on_line(self.reading.house.survey.underfloor.sills, self.segment.line)
        return [sill for _, sill in found if self.over(sill.from_in, sill.to_in)]

    def protected(self) -> Reason:
        """Whether its sills are of wood that bears the ground's nearness."""
        sills = self.sills()
        return self.ask.asked("protected", every(holds(s.protected) for s in sills) if sills else "cannot tell")

    def sound(self) -> Reason:
        """Whether the wood over it is sound, as probed."""
        rotten = [f"sill {s.mark} is {s.condition.value}" for s in self.sills() if s.condition.value in _ROTTEN]
        rotten += list(self.beside.observed("decay", near_in=_AT_IT_IN))
        if rotten:
            return self.ask.asked("sound", "no", why="; ".join(rotten))
        probed = [s.condition.value == "sound" and not s.condition.uncertain for s in self.sills()]
        return self.ask.asked("sound", "yes" if probed and all(probed) else "cannot tell")

    # ---- The three weighings ----

    def bearing(self) -> Judgement:
        """For the weight of the house and for an earthquake: has the wood that carries rotted."""
        sound = self.sound()
        if sound.answer == "no":
            return Judgement("matters", "wood that carries and that bolts hold has rotted", (sound,))
        if sound.answer == "yes":
            return Judgement("does not matter", "the wood there is still sound", (sound,))
        return Judgement("cannot tell", "until the wood has been dug free and probed", (sound,))

    def durability(self) -> Judgement:
        """For the life of the structure: how near soil comes, and to what wood."""
        touches = self.ask.asked("touches", self.touches())
        near = tuple(r for r in (self.clear(), self.within(), self.siding(), self.joists()) if r is not None)
        reasons = (touches, *near, self.protected())
        if touches.answer == "yes":
            return Judgement("matters", "soil keeps wood wet where nobody sees it", reasons)
        if touches.answer == "cannot tell":
            return Judgement("cannot tell", "until somebody has measured how near the soil comes", reasons)
        if reasons[-1].answer == "yes" and all(r.answer != "no" for r in near if r.key in ("siding", "joists")):
            return Judgement("does not matter", "near, but the sill is of wood that bears it", reasons)
        return Judgement("watch", "nearer than the code asks of untreated wood", reasons)

    # ---- Whether a remedy fits ----

    @property
    def held_in(self) -> float:
        """How far the ground must come down along the wall, in: 0 where it lies deep enough outside."""
        ends = ends_of(self.segment.above_outside_soil_in)
        return 0.0 if ends is None else max(_least("framing on an exterior foundation wall") - ends[0], 0.0)

    def fits(self) -> tuple[Reason, ...]:
        """The conditions of lowering the ground and of the retained air gap."""
        if not self.held_in:
            return ()
        return (self.behind(), self.cover(), self.ground(), self.trench(), self.outlet(), self.strong())

    def behind(self) -> Reason:
        """Whether the ground behind carries nothing but itself."""
        use = self.segment.outside_use
        known = use.value is not None and not use.uncertain
        answer: Answer = "cannot tell" if not known else "yes" if use.value == "level garden" else "no"
        return self.ask.asked("behind", answer, use=use.value or "")

    def cover(self) -> Reason:
        """Whether the footing stays deep enough when the ground is lowered."""
        frost = ends_of(self.reading.house.survey.site.soil.frost_depth_in)
        cover = max(_COVER_IN, 0.0 if frost is None else frost[1])
        answer = at_least(self.segment.depth_in, self.held_in + cover)
        return self.ask.asked("cover", answer, held=self.shown(self.held_in), cover=self.shown(cover))

    def ground(self) -> Reason:
        """Whether the soil is natural ground that does not swell."""
        fill, tested = self.beside.by_fill()[0], self.reading.house.survey.site.soil
        if fill == "yes" or shrinks(self.reading):
            return self.ask.asked("ground", "no", why="fill" if fill == "yes" else "expansive clay")
        untested = tested.plasticity_index.value is None and tested.expansion_index.value is None
        unknown = untested and tested.kind.value == "clay"
        return self.ask.asked("ground", "cannot tell" if unknown or tested.kind.value is None else opposite(fill))

    def trench(self) -> Reason:
        """Whether the trench stays above the footing's bottom."""
        return self.ask.asked("trench", at_least(self.segment.depth_in, self.held_in), held=self.shown(self.held_in))

    def outlet(self) -> Reason:
        """Whether the trench can drain to open lower ground."""
        return self.ask.asked("outlet", holds(self.segment.drains_to_daylight))

    def strong(self) -> Reason:
        """Whether planks on stakes hold the soil back."""
        found = self.figures()
        if "most" not in found:
            return self.ask.asked("strong", "cannot tell")
        return self.ask.asked("strong", "yes" if "spacing" in found else "no", **found)

    def soil_values(self) -> tuple[float, float] | None:
        """What the soil pushes with and what it bears sideways, psf for each foot; None where nobody can say."""
        load = active_pressure(self.reading)
        bearing = lateral_value(self.reading, parts_on(self.reading, self.segment.line))
        return None if load is None or bearing is None or not self.held_in else (load, float(bearing))

    def working(self) -> tuple[str, ...]:
        """The fence of the gap line by line, where there is one."""
        values = self.soil_values()
        fence = fence_for(self.held_in, *values) if values else None
        return working_of(fence, *values) if values and fence else ()

    def figures(self) -> dict[str, str]:
        """Figures for the words of conditions and remedies: what the gap holds, and its planks and stakes."""
        found = {
            "held": self.shown(self.held_in),
            "least": self.shown(_least("framing on an exterior foundation wall")),
        }
        values = self.soil_values()
        if values is None:
            return found
        found["most"] = self.shown(works_to_in(*values))
        fence = fence_for(self.held_in, *values)
        if fence is not None:
            found |= {
                "spacing": self.shown(fence.spacing_in),
                "depth": self.shown(fence.depth_in),
                "needed": self.shown(fence.depth_needed_in),
                "plank": f"{fence.plank:.0%}",
                "stake": f"{fence.stake:.0%}",
            }
        return found

    def cures(self, fits: tuple[Reason, ...]) -> Iterator[str]:
        """The remedies that fit, the least that works first."""
        met = {reason.key for reason in fits if reason.answer == "yes"}
        touches, rotten = self.touches() == "yes", self.sound().answer == "no"
        if touches or self.sound().answer == "cannot tell":
            yield "probe"
        if not touches and not rotten:
            yield "keep"
        if met.issuperset(_LOWER):
            yield "lower"
        if met.issuperset(_GAP):
            yield "gap"
        if rotten:
            yield "wood"
        if touches:
            yield "cap"

    def left_alone(self) -> str:
        """Which words tell what happens if nothing is done."""
        if self.sound().answer == "no":
            return "rotten"
        if self.touches() == "yes":
            return "touches"
        return "dry" if self.protected().answer == "yes" else "near"

    def seen(self) -> Iterator[str]:
        """How near the soil comes, over what length, and which wood is at risk there."""
        for side, fact in (
            ("outside", self.segment.above_outside_soil_in), ("inside", self.segment.above_inside_soil_in),
        ):  # fmt: skip
            ends = ends_of(fact)
            if ends is not None:
                low, high = (self.shown(abs(end)) for end in ends)
                way = "above" if ends[1] < 0 else "below"
                yield f"soil {side} {low if low == high else f'{low} to {high}'} {way} the top of the foundation"
        long = self.shown(self.segment.to_in - self.segment.from_in)
        walls = self.reading.on_line(self.reading.house.survey.underfloor.segments, self.segment.line)
        at_risk = [f"sill {s.mark}" for s in self.sills() if s.mark]
        at_risk += [f"wall {w.mark}" for _, w in walls if w.mark and self.over(w.from_in, w.to_in)]
        yield f"along {long}: {', '.join(at_risk) or 'no wood of the survey'} and the siding over it"
        yield from self.beside.observed("soil on wood", near_in=_AT_IT_IN)
