"""What the ground may be counted with at a check: values of a report, else those of the code's table where it holds.

The table is for undisturbed soil of its classes, above the water. Mud, organic soil and fill have no value in it, and
it says nothing of soil under water or of expansive soil. A value of a report stands in its place, whatever the class.
Where the ground itself may give way (liquefaction in an earthquake, a slide under the house) no value of either kind
answers the check; what was found not to hold stays a failure all the same. Which hazard stops which check is in no
document: chosen here, by what each check takes for granted.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import Final, Literal

from groundsill.forces.reading import Reading, doubted
from groundsill.forces.wind import Lateral
from groundsill.house.fact import Fact
from groundsill.house.site import SiteFlag
from groundsill.loadpath.case import cannot
from groundsill.loadpath.chain import Link
from groundsill.loadpath.footings import Part
from groundsill.standards.ibc_2021.soils import expansive_soil, presumptive_bearing, presumptive_lateral
from groundsill.working.sheet import quiet, section
from groundsill.working.steps import given
from groundsill.working.value import Mark

__all__ = [
    "EXPANSIVE", "SOIL", "Check", "allowable_pressure", "as_the_ground_allows", "doubts_of_ground", "lateral_value",
    "lifted_by_water_ft", "no_bearing", "reported", "shrinks", "soil_class", "table_holds", "where_from",
]  # fmt: skip

Check = Literal["sliding", "overturning", "bearing"]

SOIL: Final = "survey.site.soil.kind"
EXPANSIVE: Final = "expansive soil: how it lifts and settles as it wets and dries is not looked at (IBC 1808.6)"
_AT: Final = "survey.site.soil"
_CLASSES: Final = {"crystalline rock": "1", "sedimentary rock": "2", "gravel": "3", "sand": "4", "clay": "5"}
_ROCK: Final = ("1", "2")
_INVESTIGATE: Final = "IBC 2021 1803.5.11, 1803.5.12"
_STOPS: Final[dict[str, tuple[Check, ...]]] = {
    "liquefaction": ("sliding", "overturning", "bearing"),  # with the earthquake alone
    "landslide": ("sliding",),
}
_WORDS: Final = {
    "liquefaction": ("the ground may liquefy", "no value of the soil holds in the earthquake"),
    "landslide": ("the ground under the house may itself slide", "no value of the soil holds it"),
}
_BESIDE: Final[dict[str, tuple[tuple[Check, ...], str]]] = {
    "landslide": (("overturning", "bearing"), "landslide: movement of the ground itself is not looked at"),
    "fault zone": (("sliding",), "fault zone: a rupture of the ground under the house is not looked at"),
    "flood": (("sliding", "bearing"), "flood: scour, and water that lifts and softens, are not looked at"),
}


# ---- Values ---------------------------------------------------------------------------------------------------------


def soil_class(reading: Reading) -> str | None:
    """The class of Table 1806.2 of the ground; None when it is not known or has no presumptive value."""
    kind = reading.house.survey.site.soil.kind.value
    return _CLASSES.get(kind) if kind else None


def table_holds(reading: Reading, parts: Iterable[Part] = ()) -> str:
    """Why the code's table gives nothing for the ground under these parts, in words; empty where it does."""
    soil = reading.house.survey.site.soil
    if soil.kind.value is None:
        return "the kind of soil is not known: look at it in a pit beside the footing, or a report must say"
    if soil_class(reading) is None:
        return "the soil is of a kind that has no presumptive value until a report gives one"
    if soil.fill.value:
        return "the footing stands on fill, which has no presumptive value until a report gives one"
    rise = lifted_by_water_ft(reading, parts)
    if rise > 0 and soil_class(reading) not in _ROCK:
        return (
            f"ground water stands {rise:.1f} ft above the footing's bottom: the table's values are for soil above the "
            "water, a report must say what holds there"
        )
    return ""


def lifted_by_water_ft(reading: Reading, parts: Iterable[Part]) -> float:
    """How far ground water stands above the deepest bottom of these parts, ft; 0 where either is not known."""
    water = reading.house.survey.site.soil.water_depth_in.value
    deepest = max((p.segment.depth_in.value or 0.0 for p in parts), default=0.0)
    return 0.0 if water is None else max(deepest - water, 0.0) / 12


def shrinks(reading: Reading) -> bool:
    """Whether the soil counts as expansive, so that it may have shrunk away from what stands in it."""
    soil = reading.house.survey.site.soil
    with quiet():
        return bool(expansive_soil(soil.plasticity_index.value, soil.expansion_index.value))


def reported(reading: Reading, name: str, symbol: str, unit: str, label: str) -> float | None:
    """A value of a soil report, recorded with who gave it and when; marked where nobody says so. None without one."""
    fact: Fact[float] = getattr(reading.house.survey.site.soil, name)
    if fact.value is None:
        return None
    marks = set(reading.marked(f"{_AT}.{name}"))
    if not (fact.by and fact.when):
        marks.add(Mark("unverified", f"{label} of a soil report: who gave it, and when, is not on record"))
    by = f" ({', '.join(filter(None, (fact.by, fact.when)))})" if fact.by or fact.when else ""
    return given(symbol, fact.value, unit, f"{label} from a soil report{by}", marks)


def no_bearing(reading: Reading, parts: Iterable[Part] = ()) -> str:
    """Why nothing says what the ground bears, in words; empty where a report or the table does."""
    return "" if reading.house.survey.site.soil.bearing_psf.value is not None else table_holds(reading, parts)


def allowable_pressure(reading: Reading) -> float | None:
    """Allowable bearing pressure, psf: of a report, else of the table for the class of soil; None where neither is."""
    report = reported(reading, "bearing_psf", "q_a", "psf", "bearing")
    soil = soil_class(reading)
    if report is not None or soil is None:
        return report
    return doubted(presumptive_bearing(soil), reading.noted("the kind of soil", SOIL))


def lateral_value(reading: Reading, parts: Iterable[Part]) -> float | None:
    """Allowable lateral bearing for each foot of depth, psf/ft: of a report, else of the table where it holds."""
    report = reported(reading, "lateral_pcf", "S_L", "psf/ft", "lateral bearing")
    soil = soil_class(reading)
    if report is not None or soil is None or table_holds(reading, parts):
        return report
    return doubted(presumptive_lateral(soil), reading.noted("the kind of soil", SOIL))


def where_from(reading: Reading, *names: str) -> str:
    """The clause that a value comes from: the report's where all of these are its, else the table's."""
    soil = reading.house.survey.site.soil
    given_all = all(getattr(soil, name).value is not None for name in names)
    return "soil report, IBC 2021 1806.1" if given_all else "IBC 2021 Table 1806.2"


_FACTS: Final[dict[Check, tuple[str, ...]]] = {
    "sliding": (
        "kind", "fill", "water_depth_in", "plasticity_index", "expansion_index", "friction", "cohesion_psf",
        "lateral_pcf",
    ),
    "overturning": (),
    "bearing": ("kind", "fill", "water_depth_in", "bearing_psf"),
}  # fmt: skip


def doubts_of_ground(reading: Reading, check: Check) -> frozenset[Mark]:
    """The marks of what is told of the ground and decides a check, with a line on the sheet where there are any."""
    doubts = reading.noted("the ground", _AT, *_FACTS[check]) if _FACTS[check] else frozenset[Mark]()
    for id, flag in reading.in_order(reading.house.survey.site.flags):
        if check in _STOPS.get(flag.kind, ()):
            doubts |= reading.noted(f"site flag {flag.kind}", f"survey.site.flags.{id}.present")
    return doubts


# ---- Hazards of the site --------------------------------------------------------------------------------------------


def as_the_ground_allows(
    reading: Reading, link: Link, check: Check, lateral: Lateral, parts: Sequence[Part] = ()
) -> Link:
    """A soil link as the hazards of the site leave it: what they stop cannot be checked, what they touch is told."""
    if link.status == "does not apply":
        return link
    with section(link.address):
        doubts = doubts_of_ground(reading, check)
    link = replace(link, marks=tuple(sorted(doubts.union(link.marks))))
    stopped = next(_stopping(reading, check, lateral), None)
    if stopped is not None and link.status not in ("fails", "cannot be checked"):
        reason = f"{stopped}; a geotechnical engineer must say"
        if link.ratio is not None:
            reason += f". In ground that stands it comes to {link.ratio:.2f}"
        return cannot(
            link.address, link.title, link.scope, link.scope_id, clause=_INVESTIGATE, reason=reason,
            marks=link.marks, working=link.working,
        )  # fmt: skip
    told = tuple(dict.fromkeys(_told(reading, check, parts)))
    return replace(link, reason="; ".join(text for text in (link.reason, *told) if text)) if told else link


def _flags(reading: Reading) -> Iterator[SiteFlag]:
    return (flag for _, flag in reading.in_order(reading.house.survey.site.flags))


def _stopping(reading: Reading, check: Check, lateral: Lateral) -> Iterator[str]:
    """Hazards that stop a check: those that are there, then those that somebody raised and nobody settled."""
    raised = list(_flags(reading))
    flags = [flag for flag in raised if check in _STOPS.get(flag.kind, ())]
    if lateral != "earthquake":
        flags = [flag for flag in flags if flag.kind != "liquefaction"]
    for there in (True, None):
        for flag in flags:
            if flag.present.value is there:
                hazard, why = _WORDS[flag.kind]
                source = f" ({flag.source})" if flag.source else ""
                yield f"{hazard}{source}: {why}" if there else f"whether {hazard} is not known{source}: {why} if so"


def _told(reading: Reading, check: Check, parts: Sequence[Part]) -> Iterator[str]:
    """What of the site a check leaves out, in words."""
    soil = reading.house.survey.site.soil
    for flag in _flags(reading):
        checks, words = _BESIDE.get(flag.kind, ((), ""))
        if flag.present.value and check in checks:
            yield words
    if check == "overturning":
        return
    asked = no_bearing(reading, parts) if check == "bearing" else table_holds(reading, parts)
    if not asked and not soil.fill.value and (soil.fill.value is None or reading.marks.get(f"{_AT}.fill")):
        yield "whether the footing stands on fill is not known: the figure is for undisturbed soil of the kind seen"
    if check == "bearing" and shrinks(reading):
        yield EXPANSIVE
