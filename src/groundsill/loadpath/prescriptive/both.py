"""One line by both ways: feet of panel that the prescriptive way asks, and feet that the line's force needs.

The engineered figure is of the very panel that the prescriptive way describes, on this line's own studs, for this
house's own force on it: at the full force of a new building, and at the share of it that a designer may use on an
existing one. It is what the sheathing alone needs; bolts, ends, floor and soil have their own links in the chain.
"""

from __future__ import annotations

from groundsill.forces.lines import LineForce
from groundsill.forces.reading import doubted
from groundsill.forces.seismic import Forces
from groundsill.loadpath.editions import panel_standard
from groundsill.loadpath.prescriptive.asking import Asking, feet_up
from groundsill.loadpath.prescriptive.result import BothWays
from groundsill.standards.iebc_2021.bracing import BracingAsked
from groundsill.standards.iebc_2021.forces import table_reduced_force
from groundsill.standards.nds import rules_of
from groundsill.standards.statics.walls import sheathed_length, unit_shear
from groundsill.working.errors import OutsideLimits
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import convert, divide, given, note, scale
from groundsill.working.value import marks_of

__all__ = ["both_ways"]

_PANEL, _EDGE_IN = "15/32, 8d", 4.0
_CLAUSE = "A301.3"


def both_ways(asking: Asking, forces: Forces, force: LineForce, asked: BracingAsked | str) -> BothWays:
    """Both ways for one line, worked out on the sheet."""
    with section(asking.address("both")):
        reduced = _reduced(forces)
        if asking.measures.length_in <= 0:
            return _untold(asked, reduced, f"{asking.measures.unbraced}: no panel is asked for")
        if not force.relied_on:
            return _untold(asked, reduced, f"the line is not relied on ({force.reason}): no force comes to it")
        try:
            allowable = _allowable(asking, asked)
        except OutsideLimits as refused:
            return _untold(asked, reduced, str(refused))
        if isinstance(allowable, str):
            return _untold(asked, reduced, allowable)
        full = _full_force(forces, force)
        lesser = scale(full, reduced, symbol="V_r", label="the reduced force for work on an existing house")
        note("the panels are taken to carry all of the line's force, as the links below them do")
        needs = [sheathed_length(V, allowable) for V in (full, lesser)]
        if isinstance(asked, str):
            full_ft, lesser_ft = (feet_up(need) for need in needs)
            words = f"engineered {full_ft} at full force, {lesser_ft} at {_share(reduced)}"
            lacks = f"what the prescriptive way asks cannot be told: {asked}"
            return BothWays(
                None, float(needs[0]), float(needs[1]), float(reduced), float(allowable), None, None, None,
                asked, f"{words}; {lacks}", tuple(sorted(marks_of((*needs, allowable)))),
            )  # fmt: skip
        v = unit_shear(full, asked.total_ft)
        v_r = unit_shear(lesser, asked.total_ft)
        ratios = float(v) / float(allowable), float(v_r) / float(allowable)
        return BothWays(
            float(asked.total_ft), float(needs[0]), float(needs[1]), float(reduced), float(allowable), float(v),
            *ratios, "", _words(asked, needs, ratios, float(reduced)),
            tuple(sorted(marks_of((*needs, allowable, v, v_r, asked.total_ft)))),
        )  # fmt: skip


def _reduced(forces: Forces) -> float:
    """The reduced share of the full force: the house's own choice, else what the chapter lets a designer use."""
    if forces.factor < 1:
        return given("f_E", forces.factor, "1", "the share of the full force chosen for this house")
    return table_reduced_force().read(_CLAUSE, symbol="f_E")


def _untold(asked: BracingAsked | str, reduced: float, why: str) -> BothWays:
    prescriptive = None if isinstance(asked, str) else float(asked.total_ft)
    words = why if prescriptive is None else f"prescriptive asks {feet_up(prescriptive)}; engineered: {why}"
    marks = () if isinstance(asked, str) else tuple(sorted(marks_of((asked.total_ft,))))
    return BothWays(prescriptive, None, None, float(reduced), None, None, None, None, why, words, marks)


def _full_force(forces: Forces, force: LineForce) -> float:
    """The line's force at the full force of a new building, allowable level."""
    Q_E = force.force_lb
    if forces.factor != 1:
        f = given("f", forces.factor, "1", "share of the full force that this house is worked out by")
        Q_E = divide(Q_E, f, symbol="Q_E", unit="lb", label="at the full force of a new building")
    effects = forces.rules.effects
    return effects.asd_earthquake(effects.horizontal_effect(forces.rho, Q_E))


def _allowable(asking: Asking, asked: BracingAsked | str) -> float | str:
    """Allowable unit shear of the chapter's panel on the line's weakest studs, plf; in words why nobody can say."""
    pairs = [(id, segment) for id, segment in asking.measures.walls if segment.kind == "cripple wall"]
    walls = [segment for _, segment in pairs]
    species = {segment.stud.species.value or "" for segment in walls}
    if "" in species:
        return "the studs' species is not known, and the panel's value depends on it"
    heights = [segment.height_in.value for segment in walls]
    known = [height for height in heights if height is not None]
    if len(known) < len(heights) or not known:
        return "the height of a wall is not known"
    nds, sdpws = rules_of(asking.reading.edition("nds")), panel_standard(asking.reading.house)
    with quiet():
        try:
            weakest = min(species, key=lambda name: float(nds.specific_gravity(name)))
        except OutsideLimits:
            return f"the wood tables do not name the studs' species ({', '.join(sorted(species))})"
    h = convert(
        given("h", max(known), "in", "height of the tallest wall in the line", asking.measures.marks), "in", "ft"
    )
    b = asked.least_ft if isinstance(asked, BracingAsked) else given("b_s", 4.0, "ft", "a panel of 4 ft")
    s = given("s", _EDGE_IN, "in", "edge nails as the prescriptive way asks them")
    woods = (asking.reading.marked(f"survey.underfloor.segments.{id}.stud.species") for id, _ in pairs)
    G = doubted(nds.specific_gravity(weakest), *woods)
    return sdpws.panel_unit_shear(_PANEL, s, h, b, G).asd


def _share(part: float) -> str:
    return f"{100 * float(part):.0f} %"


def _words(asked: BracingAsked, needs: list[float], ratios: tuple[float, float], reduced: float) -> str:
    """Both ways in one sentence."""
    long, share = feet_up(asked.total_ft), _share(reduced)
    if not asked.fits:
        short = f"the line is shorter than the one panel of {feet_up(asked.least_ft)} that its studs ask"
        return f"{short}: designed by {_CLAUSE}; engineered {feet_up(needs[0])} at full force"
    first = (
        f"prescriptive asks {long}; engineered {feet_up(needs[0])} at full force, {feet_up(needs[1])} at {share}; "
        f"panels of the prescriptive length"
    )
    full, lesser = (f"ratio {_two(ratio)}" for ratio in ratios)
    if ratios[0] <= 1:
        return f"{first} would carry the full force in shear, {full}"
    if ratios[1] <= 1:
        return f"{first} would fail at full force, {full}, and not at {share}, {lesser}"
    return f"{first} would fail at full force, {full}, and at {share}, {lesser}"


def _two(ratio: float) -> str:
    """A ratio with two places, and with more where two would hide on which side of one it lies."""
    text = f"{ratio:.2f}"
    return text if text != "1.00" else f"{ratio:.4f}"
