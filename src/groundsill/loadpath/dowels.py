"""Bars glued into the old concrete of a line: what each holds against the force told for it, or how many to pull first.

The force on one bar is the designer's own figure, at strength level. What the old concrete gives is ACI 318-19 chapter
17; where the adhesive's bond is neither in a report nor allowed by the standard's minimum, nothing can be said of the
bars before some are pulled, and how many, how hard and how far stands beside it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from groundsill.house.foundation import FoundationSegment
from groundsill.loadpath.case import LineCase, cannot, checked, foundation_at
from groundsill.loadpath.chain import Link, Stage
from groundsill.loadpath.ends import to_end
from groundsill.loadpath.hold_downs import MASONRY, MASONRY_CLAUSE, in_masonry
from groundsill.loadpath.prying import PLAIN_FORCE
from groundsill.loadpath.stem import cored_strength, height_facts, height_of, near_break, strength_of
from groundsill.standards.aci318_19.bond import INDOOR, OUTDOOR
from groundsill.standards.aci318_19.dowels import Dowel, dowel_in_old_concrete
from groundsill.standards.aci318_19.strength_factors import interaction
from groundsill.standards.aci318_19.tables import table_bars
from groundsill.standards.common_practice.pull_tests import pull_tests
from groundsill.work.pieces import Adhesive, DowelPiece
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import section
from groundsill.working.steps import given, scale
from groundsill.working.value import Mark, marks_of

__all__ = ["dowel_stages"]

_CLAUSE = "ACI 318-19 17.6, 17.7, 17.10"
_TOGETHER = "ACI 318-19 17.8.3"
_BOND_CLAUSE = "ACI 318-19 17.6.5.2.5"
_CONCRETE = "poured concrete"
_ENVIRONMENT = {"outdoor": OUTDOOR, "indoor": INDOOR}
_LOWEST = 3
_ALLOWABLE = 0.7  # of a strength-level earthquake force, ASCE 7 2.4.5
_PRIED = 2.0  # a bar pries out at twice its pull, 17.7.3.1
_BESIDE_END_IN = 0.5


def dowel_stages(case: LineCase) -> tuple[Stage, ...]:
    """The bars glued into the line's old concrete, as a stage of their own; none where none are laid."""
    links: list[Link] = []
    for id, piece in case.of_kind(DowelPiece):
        assert isinstance(piece, DowelPiece)
        links += _links(case, id, piece)
    if not links:
        return ()
    note = "the force on one bar is the designer's own figure, entered with the piece"
    return (Stage("dowels", "Bars glued into old concrete", "every link must pass", tuple(links), note),)


def _links(case: LineCase, id: str, piece: DowelPiece) -> Iterator[Link]:
    title, address = f"bars {piece.mark or id}", f"line/{case.id}/dowels/{id}"
    refused = _refused(case, piece)
    if refused:
        yield cannot(f"{address}/both", title, "line", case.id, clause=refused[0], reason=refused[1])
        return
    under = foundation_at(case.reading, case.id, piece.from_in)
    assert under is not None
    with section(f"{address}/both"):
        try:
            found, marks = _strength(case, piece, *under)
        except OutsideLimits as outside:
            yield cannot(f"{address}/both", title, "line", case.id, clause=_CLAUSE, reason=str(outside))
            return
        advice = _advice(piece) if found.first else ""
    if found.first:
        yield cannot(
            f"{address}/both", title, "line", case.id, clause=_BOND_CLAUSE, marks=marks,
            reason="; ".join(text for text in (found.first, _unmet(found), advice) if text),
        )  # fmt: skip
        return
    yield from _checked(case, piece, (title, address), found, marks)


def _checked(
    case: LineCase, piece: DowelPiece, named: tuple[str, str], found: Dowel, marks: frozenset[Mark]
) -> Iterator[Link]:
    title, address = named
    parts = (
        ("shear", piece.shear_lb, found.shear, found.shear_by),
        ("pull", piece.pull_lb, found.tension, found.tension_by),
    )
    if not piece.shear_lb and not piece.pull_lb:
        told = ", ".join(f"{key} {float(holds):,.0f} lb by {by}" for key, _, holds, by in parts if holds is not None)
        yield cannot(
            f"{address}/both", title, "line", case.id, clause=_CLAUSE, applies=False, marks=marks,
            reason=f"no force on them is told; one holds, at strength level: {told}",
        )  # fmt: skip
        return
    asked: list[Link] = []
    for key, force, holds, by in parts:
        if not force or holds is None:
            continue
        with section(f"{address}-{key}/both"):
            entered = given("V_u" if key == "shear" else "N_u", force, "lb", f"{key} on one bar, as entered")
            more, told = _with_overstrength(case, piece, entered)
        asked.append(checked(
            f"{address}-{key}/both", f"{title}, {key} on one", "line", case.id, level="strength", unit="lb",
            demand=more, capacity=holds, clause=_CLAUSE, extension=found.extension,
            reason=f"{by} gives first{f', pushed {piece.push}' if key == 'shear' else ''}{told}",
            marks=marks, working=(f"{address}/both",),
        ))  # fmt: skip
    yield from asked
    if len(asked) > 1:
        yield _together(case, named, asked)


def _with_overstrength(case: LineCase, piece: DowelPiece, entered: float) -> tuple[float, str]:
    """The force with overstrength where anchors must have it and the entry does not hold it, and a word of it."""
    if piece.with_overstrength or case.forces.category in PLAIN_FORCE:
        return entered, ""
    Omega_0 = case.forces.system.Omega_0
    more = scale(entered, Omega_0, symbol="E_mh", label="with overstrength (ACI 318-19 17.10.5.3, 17.10.6.3)")
    return more, f"; times {float(Omega_0):g}, as nobody says that the force holds overstrength (17.10.6.3)"


def _together(case: LineCase, named: tuple[str, str], asked: Sequence[Link]) -> Link:
    """Shear and pull on one bar at the same time, both of the bar at the row's worse end."""
    title, address = f"{named[0]}, shear and pull on one together", f"{named[1]}-together/both"
    shear, pull = asked
    if shear.ratio is None or pull.ratio is None:
        reason = "a bar holds nothing of the one or of the other"
        return cannot(address, title, "line", case.id, clause=_TOGETHER, reason=reason, marks=shear.marks + pull.marks)
    with section(address):
        r_N = given("r_N", pull.ratio, "1", "pull over its design strength", pull.marks)
        r_V = given("r_V", shear.ratio, "1", "shear over its design strength", shear.marks)
        used = interaction(r_N, r_V)
        most = given("1", 1.0, "1", "of it")
    how = "each in full: the other is a fifth of what it may be, or less" if min(r_N, r_V) <= 0.2 else "added, over 1.2"
    return checked(
        address, title, "line", case.id, level="strength", unit="1", demand=used, capacity=most, clause=_TOGETHER,
        reason=how, extension=shear.extension, working=tuple(link.address for link in asked),
    )  # fmt: skip


def _refused(case: LineCase, piece: DowelPiece) -> tuple[str, str] | None:
    """The clause and the reason why nothing can be said of a row of bars, from what the survey has of the concrete."""
    under = [foundation_at(case.reading, case.id, station) for station in (piece.from_in, piece.to_in)]
    if under[0] is None or under[1] is None:
        return _CLAUSE, "no poured concrete was surveyed under them"
    (id, stem), (other, _) = under[0], under[1]
    if stem.material in MASONRY:
        return MASONRY_CLAUSE, in_masonry(stem.material)
    if stem.material != _CONCRETE:
        return _CLAUSE, "no poured concrete was surveyed under them"
    if id != other:
        return _CLAUSE, "they stand in two stretches of foundation: lay a row for each"
    for station in (piece.from_in, piece.to_in):
        near = near_break(case, station)
        if near:
            return _CLAUSE, near
    if stem.strength_psi.value is None:
        return _CLAUSE, "the strength of the concrete is not known"
    if stem.top_width_in.value is None:
        return _CLAUSE, "the width of the concrete is not known"
    if height_of(stem) is None:
        return _CLAUSE, "how high the concrete is is not known"
    if piece.into == "side" and piece.edge_in is None:
        return _CLAUSE, "how far they lie below the top of the concrete is not told"
    return None


def _strength(case: LineCase, piece: DowelPiece, id: str, stem: FoundationSegment) -> tuple[Dowel, frozenset[Mark]]:
    """What one bar holds, and the marks of the facts of the concrete."""
    f_c, width, height = strength_of(case, id, stem), stem.top_width_in.value, height_of(stem)
    assert f_c is not None and width is not None and height is not None
    marks = case.reading.marked(f"survey.foundation.segments.{id}", "top_width_in", *height_facts(stem))
    across, along = (width, height) if piece.into == "top" else (height, width)
    near = across / 2 if piece.edge_in is None else piece.edge_in
    if not 0 < near < across:
        raise OutsideLimits(f"the bars stand {near:g} in. from a face of concrete {across:g} in. across")
    end = max(min(to_end(case, piece.from_in), to_end(case, piece.to_in)), _BESIDE_END_IN)
    spacing = (piece.to_in - piece.from_in) / (piece.count - 1) if piece.count > 1 else 0.0
    known = piece.adhesive or Adhesive()
    found = dowel_in_old_concrete(
        piece.bar,
        given("h_ef", piece.embedment_in, "in", "embedment of the bars"),
        f_c,
        given("c_near", min(near, across - near), "in", "bar to the nearer face", marks),
        given("c_far", max(near, across - near), "in", "bar to the far face", marks),
        given("c_end", end, "in", "last bar to the end of the concrete or a break"),
        given("h_a", along, "in", "old concrete along the bars", marks),
        given("n", float(piece.count), "1", "bars in the row"),
        given("s", spacing, "in", "their spacing"),
        strength="assumed" if cored_strength(case, id) is None else "tested",
        push=piece.push,
        tau_cr=_bond("tau_cr", known.cracked_psi, "bond stress in cracked concrete"),
        tau_uncr=_bond("tau_uncr", known.uncracked_psi, "bond stress in uncracked concrete"),
        environment=_ENVIRONMENT[known.place],
        qualified=True if known.report else None,
        hammer_drilled=None if not known.hole else known.hole == "rotary impact or rock drill",
        warm=known.warm,
        category=str(known.category or _LOWEST),
    )
    return found, marks | marks_of((f_c,))


def _bond(symbol: str, stress: float | None, what: str) -> float:
    """The product's own bond stress, recorded; 0 for none."""
    return 0.0 if stress is None else given(symbol, stress, "psi", f"{what}, from its report")


def _unmet(found: Dowel) -> str:
    """Which conditions of the standard's minimum bond are not met, and which nobody told."""
    groups = (("not met", False), ("not told", None))
    said = ((word, [c.text for c in found.conditions if c.met is answer]) for word, answer in groups)
    return "; ".join(f"{word}: {', '.join(texts)}" for word, texts in said if texts)


def _advice(piece: DowelPiece) -> str:
    """How many to pull, how hard, how long, how far: common practice. A shear is proved by half of it as a pull."""
    force = _ALLOWABLE * max(piece.pull_lb, piece.shear_lb / _PRIED)
    if force <= 0:
        return "tell the force on one bar, and the pull that proves it is told"
    T = given("T", force, "lb", "pull on one to prove, allowable-stress level")
    N = given("N", float(piece.count), "1", "bars of the row")
    tests = pull_tests(N, T, table_bars().read(piece.bar, "area", symbol="A_b"))
    return (
        f"pull {float(tests.count):g} of {piece.count} at {float(tests.load):,.0f} lb for {float(tests.minutes):g} "
        f"minutes, moved at most {float(tests.movement):.2f} in. (common practice); passed: {tests.passed}"
    )
