"""How strong the old concrete is, what says so, and which tests would settle the lines that hang on it."""

from __future__ import annotations

from collections.abc import Iterator

from groundsill.loadpath.proof import RULE
from groundsill.papers.document import Block, BulletList, Column, Heading, Paragraph, Row, TableBlock
from groundsill.papers.views.doubts import Doubts
from groundsill.papers.views.words import DASH, Units, listed, quantity, sentence, share, tape, verdict, with_doubt
from groundsill.papers.views.working_view import Printed, steps_of, working_blocks
from groundsill.study import Run, Study
from groundsill.study.settled_by import FORESEEN, GREATEST_PSI, LEAST_PSI
from groundsill.study.strength import ConcreteStrength, CoreSite, SettlingTest, Threshold
from groundsill.working.sheet import Sheet

__all__ = [
    "CONCRETE", "HOW_FOUND", "lines_of_strength", "settling_blocks", "settling_words", "strength_blocks",
    "strength_words", "worked_cores",
]  # fmt: skip

CONCRETE = "concrete"

HOW_FOUND = (
    f"Each strength is found by working the line out again as if cores had given it, from {LEAST_PSI:,.0f} to "
    f"{GREATEST_PSI:,.0f} psi, with every other uncertain fact at its worse end. It is an equivalent strength, not "
    f"that of one core; the means are for cores that scatter by {100 * FORESEEN:.0f} % (common practice, no source). "
    "A core keeps clear of bars, bolts, edges and cracks; its hole is filled with non-shrink mortar. Tests of anchors "
    f"in place: {RULE.removeprefix('rule: ')}."
)
_TWO_ORDERS = (
    "Checks run at both ends of each range and must pass at the lower; the mean of the cores belongs to the order in "
    "which links are expected to fail, and to no check. A rebound number is no strength, and a probe is none either."
)


# ---- What is known --------------------------------------------------------------------------------------------------


def strength_blocks(study: Study, doubts: Doubts) -> Iterator[Block]:
    """Every stretch of poured concrete with its range, its cores and its remarks."""
    if not study.concrete:
        yield Paragraph("No stretch of poured concrete was surveyed.")
        return
    columns = (
        Column("Stretch"), Column("Lower", align="end"), Column("Counted", align="end"), Column("Upper", align="end"),
        Column("Cores", align="end"), Column("Mean", align="end"), Column("Spread", align="end"),
        Column("ACI 562", align="end"), Column("ACI 214.4R", align="end"), Column("Where from", share=1.2),
    )  # fmt: skip
    rows = tuple(_strength_row(each, study.units, doubts.dagger(each.marks)) for each in study.concrete)
    yield TableBlock(columns, rows, "Strength of the concrete", (_TWO_ORDERS,))
    told = tuple(f"{each.mark}: {sentence('; '.join(each.remarks))}" for each in study.concrete if each.remarks)
    if told:
        yield BulletList(told)


def _strength_row(each: ConcreteStrength, units: Units, dagger: str) -> Row:
    figures = (each.low, each.best, each.high)
    spread = DASH if each.variation is None else f"{_psi(each.spread, units)} ({share(each.variation)})"
    by_cores = each.counted >= 2 and each.why.startswith(f"{len(each.cores)} core")
    return (
        f"{each.mark} ({each.line})",
        *(_psi(figure, units) for figure in figures),
        f"{each.counted} of {len(each.cores)}" if each.cores else DASH,
        _psi(each.mean, units),
        spread,
        _psi(each.code, units),
        _psi(each.guide, units),
        with_doubt(sentence("the cores" if by_cores else each.why), dagger),
    )


def _psi(number: float | None, units: Units) -> str:
    return quantity(number, "psi", units)


def lines_of_strength(study: Study) -> tuple[str, ...]:
    """Every stretch in a line of words, for a terminal."""
    return tuple(strength_words(each, study.units) for each in study.concrete)


def strength_words(each: ConcreteStrength, units: Units) -> str:
    """One stretch of concrete: the range it is checked at, where that comes from, and what tests say of it."""
    told = "strength not known"
    if each.low is not None and each.best is not None and each.high is not None:
        told = _psi(each.best, units)
        if each.low != each.high:
            told += f", from {_psi(each.low, units)} to {_psi(each.high, units)}"
    remarks = [remark for remark in each.remarks if remark not in each.why]
    return f"{each.mark} ({each.line}): {sentence('; '.join((told, each.why, *remarks)))}"


# ---- What would settle it -------------------------------------------------------------------------------------------


def settling_words(test: SettlingTest, units: Units) -> tuple[str, ...]:
    """The tests for one line, sentence by sentence: what strength, how many cores and where, what instead."""
    return tuple(sentence(text) for text in (_needs(test, units), *_cores(test, units), _anchors(test, units)) if text)


def _needs(test: SettlingTest, units: Units) -> str:
    """The strengths at which the checks of the line that strength moves turn."""
    never = [t.title for t in test.thresholds if t.holds_at is None]
    beyond = [t.title for t in test.thresholds if t.holds_at is not None and t.passes_at is None]
    others = "other " if never else ""
    told = []
    if never:
        told.append(f"no strength up to {_psi(GREATEST_PSI, units)} makes {listed(never)} hold")
    if test.holds_psi is not None:
        told.append(f"from {_psi(test.holds_psi, units)} on no {others}check that strength moves fails")
    if test.needs_psi is not None:
        told.append(f"from {_psi(test.needs_psi, units)} on {'the others' if never or beyond else 'they all'} pass")
    loose = [t.title for t in test.thresholds if t.holds_at is not None and not t.at_worst]
    if loose:
        told.append(f"for {listed(loose)} only with the other facts at their best")
    if beyond:
        told.append(f"no strength lifts {listed(beyond)} from indicated")
    if test.highest_psi is not None and test.needs_psi is not None and test.needs_psi > test.highest_psi:
        told.append(
            f"that is more than the {_psi(test.highest_psi, units)} looked for here at the most: cores alone will "
            "hardly settle it"
        )
    return "; ".join(told)


def _cores(test: SettlingTest, units: Units) -> Iterator[str]:
    """How many cores, where, and at what mean they must break."""
    wanted = [site for site in test.sites if site.wanted]
    if wanted:
        yield f"cores: {'; '.join(_site(site, units) for site in wanted)}"
    if len(wanted) > 1:
        yield "fewer do where stretches are written down as one pour, with what shows it"
    if test.needs_psi is not None and wanted:
        means = listed((f"{mean.cores} at a mean of {_psi(mean.mean_psi, units)}" for mean in test.means), "or")
        yield f"to pass they must break at about this: {means}"
    enough = [site for site in test.sites if not site.wanted]
    if enough:
        had = listed(f"{listed(site.stretches)} {site.on_record}" for site in enough)
        yield f"cores on record, enough for a strength: {had}; more of them narrow only what scatter leaves"


def _site(site: CoreSite, units: Units) -> str:
    """``3 in C4, at 4'-0", 9'-0" and 14'-0"``; of several stretches that are one pour, each with its places."""
    more = f" more, besides {site.on_record} on record," if site.on_record else ""
    by_stretch: dict[str, list[str]] = {}
    for place in site.places:
        by_stretch.setdefault(place.stretch, []).append(tape(place.station_in, units))
    serve = f", which serve {listed(site.also)} too, written down as the same pour" if site.also else ""
    if len(site.stretches) == 1:
        return f"{site.wanted}{more} in {site.stretches[0]}, at {listed(by_stretch.get(site.stretches[0], ()))}{serve}"
    at = listed(f"{stretch} at {listed(stations)}" for stretch, stations in by_stretch.items())
    return f"{site.wanted}{more} for {listed(site.stretches)}, one pour: {at}{serve}"


def _anchors(test: SettlingTest, units: Units) -> str:
    if test.anchor_lb is None:
        return ""
    return f"or, for the bolts, tests in place to {quantity(test.anchor_lb, 'lb', units)} on one anchor"


def settling_blocks(run: Run, units: Units) -> Iterator[Block]:
    """The tests for every line of one state, and the strength at which each of its checks turns."""
    if not run.settled_by:
        yield Paragraph("No line of this state hangs on the strength of its concrete.")
        return
    columns = (
        Column("Check", share=1.4), Column("Now", share=0.7), Column("Holds from", align="end"),
        Column("Passes from", align="end"), Column("Otherwise", share=1.0),
    )  # fmt: skip
    for test in run.settled_by:
        yield Heading(f"Line {test.mark}", 3)
        yield BulletList(settling_words(test, units))
        rows = tuple(_threshold_row(t, units) for t in test.thresholds)
        yield TableBlock(columns, rows, f"Line {test.mark}: strength of the concrete at which each check turns")
    yield Paragraph(HOW_FOUND)


def _threshold_row(each: Threshold, units: Units) -> Row:
    worst = "not enough at the worse end of other facts: these figures stand on the house as surveyed"
    if each.holds_at is None:
        worst = "not even with the other facts at their best"
    said = ("" if each.at_worst else worst, f"stays indicated: {each.beyond}" if each.beyond else "")
    return (
        each.title,
        verdict(each.verdict),
        _turns_at(each.holds_at, units),
        _turns_at(each.passes_at, units),
        sentence("; ".join(filter(None, said))) or DASH,
    )


def _turns_at(psi: float | None, units: Units) -> str:
    """The strength at which a check turns; at the least tried it may be less."""
    if psi is None:
        return f"none up to {_psi(GREATEST_PSI, units)}"
    return f"{_psi(psi, units)}{' or less' if psi == LEAST_PSI else ''}"


def worked_cores(study: Study, sheet: Sheet, printed: Printed, doubts: Doubts) -> Iterator[Block]:
    """The cores of each stretch, worked out: from the strength each broke at to the equivalent strength."""
    for each in study.concrete:
        at = f"{CONCRETE}/{each.segment}"
        steps = steps_of(sheet, (at,))
        if steps:
            yield Heading(f"Cores that speak for {each.mark}, worked out", 3, at)
            yield from working_blocks(steps, at, f"cores of {each.mark}", printed, doubts)
