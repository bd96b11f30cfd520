"""The sill, piece by piece, and the old bolts through it, line by line.

How much strength decay took nobody can tell from its look, so wood that is soft where nails and bolts bear counts as
lost until it is cut out. An old bolt counts only with a tight nut, a washer, a hole that fits, little rust, and an
embedment that somebody knows or a test.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from groundsill.findings.answer import Answer, at_most, every, holds, is_one_of, opposite
from groundsill.findings.asking import Asking, settles
from groundsill.findings.finding import Finding, Judgement, Reason
from groundsill.forces.reading import Reading
from groundsill.house.fact import Fact
from groundsill.house.underfloor import Bolt, SillPiece
from groundsill.loadpath.bolts_counted import FITS_IN
from groundsill.working.value import Mark

__all__ = ["bolts", "sills"]

_SILLS: Final = "survey.underfloor.sills"
_BOLTS: Final = "survey.underfloor.bolts"
_SILL_FACTS: Final = ("condition", "soft_depth_in", "damp", "gap_in", "thickness_in")
_BOLT_FACTS: Final = ("nut", "hole_in", "diameter_in", "rust", "embedment_in", "test_lb")
_HALF: Final = 0.5  # a sill soft through no more of its thickness still bears on what is left: our choice
_GAP_IN: Final = 0.125  # a gap no wider than this closes under the weight: our choice
_TAPE_IN: Final = 0.01


# ---- The sill -------------------------------------------------------------------------------------------------------


def sills(reading: Reading) -> Iterator[Finding]:
    """The findings on every piece of sill."""
    for id, piece in reading.in_order(reading.house.survey.underfloor.sills):
        yield _Sill(reading, id, piece).finding()


@dataclass(frozen=True, slots=True)
class _Sill:
    """One piece of sill and the questions asked of it."""

    reading: Reading
    id: str
    piece: SillPiece

    @property
    def ask(self) -> Asking:
        """The book of sills."""
        return Asking(self.reading, "sills")

    def finding(self) -> Finding:
        """The three weighings, and what fits."""
        piece, sound, dry = self.piece, self.sound(), self.dry()
        gravity = self.ask.weighed("gravity", (self.bearing(),), (sound, self.seated()))
        earthquake = self.ask.weighed("earthquake", (sound, *self.insects()), (self.seated(),))
        durability = self.ask.weighed("durability", (sound, *self.insects()), (dry,))
        active = self.ask.asked("dry", dry.answer)
        return Finding(
            address=f"finding/sill/{self.id}",
            mark=piece.mark,
            title={"no": "Decayed sill", "yes": "Sill"}.get(sound.answer, "Sill that nobody probed"),
            place=self.ask.stretch(piece.line, piece.from_in, piece.to_in),
            line=piece.line,
            station_in=(piece.from_in + piece.to_in) / 2,
            observed=tuple(self.seen()),
            gravity=gravity,
            earthquake=earthquake,
            durability=durability,
            cause=(self.ask.asked("wet", "cannot tell"),) if sound.answer == "no" else (),
            active=active,
            confirm=settles(active, gravity, earthquake, durability),
            cures=self.ask.cures(*self.cures(gravity, earthquake, durability)),
            left_alone=self.ask.left_alone({"yes": "sound", "no": "decayed"}.get(sound.answer, "open")),
            marks=tuple(sorted(self.reading.marked(f"{_SILLS}.{self.id}", *_SILL_FACTS))),
        )

    # ---- The questions ----

    def sound(self) -> Reason:
        """Whether a probe finds it hard: by its condition, by its soft depth, and by what was noted on it."""
        depth = self.piece.soft_depth_in
        soft = self.ask.noted(self.id, "decay") or (depth.known and at_most(depth, 0.0) == "no")
        return self.ask.asked("sound", "no" if soft else is_one_of(self.piece.condition, "sound"))

    def bearing(self) -> Reason:
        """Whether enough of its thickness is left to stand on."""
        thick, sound = self.piece.thickness_in, self.sound().answer
        depth = self.depth()
        if sound == "yes":
            answer: Answer = "yes"
        else:
            answer = "cannot tell" if thick.value is None else at_most(depth, _HALF * thick.value)
            if answer == "cannot tell" and self.piece.condition.value == "decayed":
                answer = "no"  # decayed is the worst word a surveyor has, and no depth speaks against it
        return self.ask.asked("bearing", answer, depth=self.ask.told(depth), thick=self.ask.told(thick))

    def depth(self) -> Fact[float]:
        """How deep it is soft: as measured, else the deepest that was noted on it."""
        if self.piece.soft_depth_in.known:
            return self.piece.soft_depth_in
        sizes = [seen.size_in for seen in self.ask.noted(self.id, "decay") if seen.size_in.known]
        return max(sizes, key=lambda f: max(f.value or 0.0, f.high or 0.0), default=Fact(state="unknown"))

    def insects(self) -> tuple[Reason, ...]:
        """Whether insects are in it; asked only where they were noted."""
        seen = self.ask.noted(self.id, "insects")
        return (self.ask.asked("insects", "no", seen="; ".join(self.ask.in_words(seen))),) if seen else ()

    def dry(self) -> Reason:
        """Whether it is dry enough for decay to stand still."""
        return self.ask.asked("dry", opposite(holds(self.piece.damp)))

    def seated(self) -> Reason:
        """Whether it lies tight on the foundation."""
        gap = self.piece.gap_in
        return self.ask.asked("seated", at_most(gap, _GAP_IN), gap=self.ask.told(gap))

    # ---- Cures and words ----

    def cures(self, *judged: Judgement) -> Iterator[str]:
        """The remedies that fit, the least that works first."""
        if self.dry().answer == "no":
            yield "dry"
        if self.sound().answer == "no":
            yield "cut"
        if self.insects():
            yield "treat"
        if self.seated().answer == "no":
            yield "pack"
        if any(each.weight == "cannot tell" for each in judged):
            yield "probe"
        if all(each.weight == "does not matter" for each in judged):
            yield "leave"

    def seen(self) -> Iterator[str]:
        """What the survey says of it, in words."""
        piece = self.piece
        if piece.condition.known:
            yield f"{piece.condition.value}" + (f" ({piece.condition.how})" if piece.condition.how else "")
        if piece.soft_depth_in.known:
            yield f"soft {self.ask.told(piece.soft_depth_in)} deep"
        if piece.damp.known:
            yield ("damp" if piece.damp.value else "dry") + (f" ({piece.damp.how})" if piece.damp.how else "")
        if piece.gap_in.value:
            yield f"a gap of {self.ask.told(piece.gap_in)} under it" + (
                f" ({piece.gap_in.how})" if piece.gap_in.how else ""
            )
        yield from self.ask.in_words(self.ask.noted(self.id, "decay", "insects", "damp", "repair"))


# ---- Old bolts ------------------------------------------------------------------------------------------------------


def bolts(reading: Reading) -> Iterator[Finding]:
    """The findings on the old bolts, one for each line that has any."""
    under = reading.house.survey.underfloor
    for line, _ in reading.in_order(under.lines):
        found = reading.on_line(under.bolts, line)
        if found:
            yield _Bolts(reading, line, tuple(found)).finding()


@dataclass(frozen=True, slots=True)
class _Bolts:
    """The old bolts of one line and the questions asked of them."""

    reading: Reading
    line: str
    every: Sequence[tuple[str, Bolt]]

    @property
    def ask(self) -> Asking:
        """The book of sills."""
        return Asking(self.reading, "sills")

    def finding(self) -> Finding:
        """The three weighings, and what fits."""
        rusted = self.of_all("rust", lambda bolt: is_one_of(bolt.rust, "none", "surface"), absent="yes")
        count = (
            self.of_all("nut", lambda bolt: is_one_of(bolt.nut, "tight")),
            self.of_all("washer", _washer),
            self.of_all("hole", _fits),
            rusted,
            self.of_all("kind", _kind),
            self.of_all("embedded", _embedded),
        )
        gravity, earthquake = self.ask.weighed("gravity"), self.ask.weighed("earthquake", count)
        gravity = Judgement(gravity.weight, "bolts carry no weight", ())
        durability = Judgement("watch", "rust goes on where they stay damp", (rusted,))
        if rusted.answer != "no":
            says = "no heavy rust" if rusted.answer == "yes" else "until the open questions are answered"
            durability = Judgement("does not matter" if rusted.answer == "yes" else "cannot tell", says, (rusted,))
        active = self.ask.asked("damp_bolts", "cannot tell")
        return Finding(
            address=f"finding/bolts/{self.line}",
            mark=", ".join(bolt.mark or id for id, bolt in self.every),
            title="Old bolts" if len(self.every) > 1 else "Old bolt",
            place=f"line {self.ask.line_mark(self.line)}",
            line=self.line,
            station_in=None,
            observed=tuple(self.seen()),
            gravity=gravity,
            earthquake=earthquake,
            durability=durability,
            cause=(),
            active=active,
            confirm=settles(active, gravity, earthquake, durability),
            cures=self.ask.cures(*self.cures(count)),
            left_alone=self.ask.left_alone(self.alone(count)),
            marks=tuple(sorted(self.marks())),
        )  # fmt: skip

    def alone(self, count: Sequence[Reason]) -> str:
        """Which words tell what happens if nothing is done."""
        return {"yes": "held", "no": "loose"}.get(every(reason.answer for reason in count), "unheld")

    def of_all(self, key: str, asked: Callable[[Bolt], Answer], absent: Answer | None = None) -> Reason:
        """One question asked of every bolt; the answer names those it is about."""
        answers = {id: absent if absent and bolt.rust.state == "absent" else asked(bolt) for id, bolt in self.every}
        answer = every(answers.values())
        which = [bolt.mark or id for id, bolt in self.every if answer == "yes" or answers[id] == answer]
        return self.ask.asked(key, answer, which=", ".join(which))

    def cures(self, count: Sequence[Reason]) -> Iterator[str]:
        """The remedies that fit, the least that works first."""
        bad = {reason.key for reason in count if reason.answer == "no"}
        if "cannot tell" in {reason.answer for reason in count}:
            yield "look"
        if bad & {"nut", "washer"} and not bad & {"hole", "rust", "kind"}:
            yield "tighten"
        if bad & {"hole", "rust", "kind"} or "embedded" in {r.key for r in count if r.answer != "yes"}:
            yield "beside"
        if not bad:
            yield "leave"

    def marks(self) -> frozenset[Mark]:
        """The marks of what is known of them."""
        return frozenset(m for id, _ in self.every for m in self.reading.marked(f"{_BOLTS}.{id}", *_BOLT_FACTS))

    def seen(self) -> Iterator[str]:
        """What the survey says of each, in words."""
        for id, bolt in self.every:
            size = "size not known" if bolt.diameter_in.value is None else self.ask.shown(bolt.diameter_in.value)
            told = [
                size, "kind not seen" if bolt.kind == "not seen" else bolt.kind,
                *(f"nut {bolt.nut.value}" for _ in (0,) if bolt.nut.known),
                *(f"rust {bolt.rust.value}" for _ in (0,) if bolt.rust.known),
                *(f"hole {self.ask.told(bolt.hole_in)}" for _ in (0,) if bolt.hole_in.known),
            ]  # fmt: skip
            yield f"{bolt.mark or id}: {', '.join(told)}"
            yield from self.ask.in_words(self.ask.noted(id))


def _washer(bolt: Bolt) -> Answer:
    """Whether it has a washer under its nut."""
    return {"none": "no", "not seen": "cannot tell"}.get(bolt.washer, "yes")  # type: ignore[return-value]


def _fits(bolt: Bolt) -> Answer:
    """Whether its hole in the sill fits it."""
    diameter = bolt.diameter_in.value
    return "cannot tell" if diameter is None else at_most(bolt.hole_in, diameter + FITS_IN + _TAPE_IN)


def _kind(bolt: Bolt) -> Answer:
    """Whether it is of a kind that counts without a report."""
    return {"expansion": "no", "screw": "no", "not seen": "cannot tell"}.get(bolt.kind, "yes")  # type: ignore[return-value]


def _embedded(bolt: Bolt) -> Answer:
    """Whether somebody knows how deep it goes, or tested it."""
    return "yes" if bolt.embedment_in.known or bolt.test_lb.value else "cannot tell"
