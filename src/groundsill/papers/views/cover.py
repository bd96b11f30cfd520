"""The first sheets: whose house, when surveyed, made by what from what, and the design criteria in one table.

What a criteria box is asked for and the study does not hold is printed as "not worked out", never left out; places for
names, seal and approval are left blank for people to fill.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from importlib import import_module

from groundsill.house.foundation import FoundationSegment
from groundsill.house.survey import in_order
from groundsill.papers.document import (
    Block,
    Column,
    Figure,
    GroupRow,
    KeyValue,
    KeyValues,
    Paragraph,
    Row,
    TableBlock,
    strong,
)
from groundsill.papers.drawing import Drawing, Line, Mark, Polygon, Text, layer
from groundsill.papers.sheet import FULL_SIZE
from groundsill.papers.views.forces_view import Daggers
from groundsill.papers.views.words import (
    DASH,
    NOT_WORKED_OUT,
    Units,
    counted,
    listed,
    quantity,
    sentence,
    short,
    with_doubt,
)
from groundsill.standards.shelf import documents, package_of
from groundsill.study import Study
from groundsill.work.document import House
from groundsill.working.source import Source

__all__ = [
    "cover_blocks",
    "criteria_table",
    "edition_short",
    "edition_title",
    "field_conditions",
    "grouped",
    "seal_figure",
    "stamp_lines",
]

_BLANK = "____________________________"
_DEFAULT = "the program's default"


def stamp_lines(study: Study) -> tuple[str, ...]:
    """What the paper was made from, for the head of the first page."""
    return (f"Made by {study.manifest.program} from the house file with hash {study.manifest.house_hash}",)


def cover_blocks(house: House, study: Study) -> tuple[Block, ...]:
    """The facts of the first page."""
    site, survey = house.survey.site, house.survey
    place = ""
    if site.latitude is not None and site.longitude is not None:
        north, east = "N" if site.latitude >= 0 else "S", "E" if site.longitude >= 0 else "W"
        place = f"{short(abs(site.latitude), 5)}° {north}, {short(abs(site.longitude), 6)}° {east}"
    year = survey.building.year_built.value
    built = f"{year:.0f}" if year is not None else "not known"
    address = ", ".join(filter(None, (site.address, site.jurisdiction))) or "not given"
    rows = (
        KeyValue("House", survey.name, f"built {built}, {counted(survey.building.families, 'dwelling')}"),
        KeyValue("Address", address, place),
        KeyValue(
            "Surveyed", survey.surveyed_on or "date not given", f"by {survey.surveyed_by}" if survey.surveyed_by else ""
        ),
        KeyValue("Scope", _scope(house)),
        KeyValue("States worked out", listed(f"“{run.name or run.key}”" for run in study.runs)),
        KeyValue("Prepared by", _BLANK),
        KeyValue("Checked by", _BLANK),
        KeyValue("Date", _BLANK),
    )
    return (KeyValues(rows),)


def _scope(house: House) -> str:
    if house.choices.scope == "voluntary":
        return "voluntary work: done by the owner's own wish, to the extent described"
    return "required work: asked for by a code or an official"


def seal_figure() -> Figure:
    """A blank place for a professional's seal and the official's approval."""
    wide, high, ink = 5.5, 1.45, layer("title rule")
    marks: list[Mark] = [
        Polygon(((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)), ink),
        Line((wide / 2, 0.0), (wide / 2, high), ink),
        Text((0.08, high - 0.16), "Seal of the licensed professional, where asked for", layer("text"), 7.5),
        Text((wide / 2 + 0.08, high - 0.16), "Approval", layer("text"), 7.5),
    ]
    return Figure(
        Drawing("seal and approval", tuple(marks)),
        "Left blank for seal and approval.",
        "Two empty boxes, one for the seal of a licensed professional and one for the approval of the official.",
        scale=FULL_SIZE,
        show_scale=False,
    )


# --- the design-criteria box ------------------------------------------------------------------------------------------


def criteria_table(house: House, study: Study, daggers: Daggers, units: Units) -> TableBlock:
    """The design-criteria box."""
    rows: list[Row] = [
        GroupRow("Codes and editions"),
        *_codes(study),
        GroupRow("Ground motion and site"),
        *_ground(house, study, daggers),
        GroupRow("System and force"),
        *_system(house, study, daggers, units),
        GroupRow("Other loads"),
        *_other_loads(house, study, units),
        GroupRow("Foundation and soil"),
        *_soil(house, units),
    ]
    columns = (
        Column("Criterion", share=0.8),
        Column("Value", share=0.95),
        Column("Source or reason", share=1.75),
    )
    return TableBlock(columns, tuple(rows), "Design criteria", anchor="criteria")


def edition_title(edition: str) -> str:
    """A document's title by its id; the id itself when the program does not hold it."""
    source = _source(edition)
    return f"{source.short}: {source.title}" if source is not None else edition


def edition_short(edition: str) -> str:
    """A document as the trade calls it (``NDS 2018``); its id when the program does not hold it."""
    source = _source(edition)
    return source.short if source is not None else edition


def _source(edition: str) -> Source | None:
    if edition not in documents():
        return None
    found = getattr(import_module(package_of(edition)), "SOURCE", None)
    return found if isinstance(found, Source) else None


def _codes(study: Study) -> Iterator[Row]:
    manifest = study.manifest
    adopted = [e for f, e in manifest.editions.items() if f not in manifest.edition_reasons and e != manifest.code]
    with_it = listed(edition_short(e) for e in adopted)
    yield ("Building code", edition_short(manifest.code), f"and the editions it adopts: {with_it}" if adopted else "")
    for family, reason in manifest.edition_reasons.items():
        yield ("Used instead", edition_short(manifest.editions.get(family, family)), sentence(reason))


def _ground(house: House, study: Study, daggers: Daggers) -> Iterator[Row]:
    forces, site = study.forces, house.survey.site
    where = "" if site.hazard is None else ", ".join(filter(None, (site.hazard.source, site.hazard.when)))
    mapped = f"{short(forces.site.S_S)} g, {short(forces.site.S_1)} g"
    coefficient = "as entered, no Fa" if forces.site.F_a is None else f"Fa {short(forces.site.F_a)}"
    yield ("Ss, S1", with_doubt(mapped, daggers.get("S_S", "")), where or "source not given")
    yield ("Risk category, site class", f"{site.risk_category}; {forces.site.site_class}", "")
    yield ("SDS", with_doubt(f"{short(forces.S_DS)} g", daggers.get("S_DS", "")), coefficient)
    yield ("Seismic category", forces.category, "")
    for words, present in (("yes", True), ("not known", None), ("no", False)):
        flags = [flag for _, flag in in_order(site.flags) if flag.present.value is present]
        if flags:
            sources = "; ".join(dict.fromkeys(flag.source for flag in flags if flag.source))
            yield (", ".join(flag.kind for flag in flags).capitalize(), words, sources)


def _system(house: House, study: Study, daggers: Daggers, units: Units) -> Iterator[Row]:
    forces, choices, system = study.forces, house.choices, study.forces.system

    def row(name: str, value: str, symbol: str, why: str) -> Row:
        return (name, with_doubt(value, daggers.get(symbol, "")), why)

    factors = ", ".join(short(v) for v in (system.R, system.Omega_0, system.C_d))
    shear = f"{quantity(forces.base_shear_lb, 'lb', units)} each"
    yield row("Bracing system", system.system, "system", choices.system_reason or "reason not given")
    yield row("R, Ω0, Cd", factors, "R", "of that row of Table 12.2-1")
    yield row("Redundancy ρ", short(forces.rho), "rho", choices.redundancy_reason or "as the category asks")
    yield row("Cs", short(forces.C_s), "C_s", sentence(forces.C_s_governs).rstrip("."))
    yield row(
        "Share of the force", short(forces.factor), "f", choices.force_reason or "the full force for new buildings"
    )
    yield row("W", quantity(forces.weight_lb, "lb", units), "W", "effective seismic weight")
    yield row("V along x, V along y", shear, "V", "strength level; one system in both directions")
    yield row("Anchors in concrete", choices.anchor_basis, "anchors", choices.anchor_reason or _DEFAULT)
    yield ("Hold-downs in concrete", choices.anchor_tension, choices.anchor_tension_reason or _DEFAULT)
    yield ("Overturning from storeys above", choices.storeys_above, choices.storeys_above_reason or _DEFAULT)
    if choices.rim_tie == "counted":
        yield ("Rim as a tie between segments", choices.rim_tie, choices.rim_tie_reason or "no reason: not counted")


def _other_loads(house: House, study: Study, units: Units) -> Iterator[Row]:
    site = house.survey.site
    yield _wind(study, house)
    snow = "not known" if site.snow_psf.value is None else quantity(site.snow_psf.value, "psf", units)
    live = sorted({storey.live_psf for storey in house.survey.building.storeys.values()})
    yield ("Roof snow, live load", f"{snow}; {listed(quantity(p, 'psf', units) for p in live) or DASH}", "")


def _wind(study: Study, house: House) -> Row:
    """Basic wind speed, exposure and topographic factor with their source, or why wind was not looked at."""
    wind, fact = study.forces.wind, house.survey.site.wind_mph
    if wind is None:
        return ("Wind", NOT_WORKED_OUT, sentence(study.forces.wind_lacks).rstrip("."))
    value = f"{short(wind.speed_mph)} mph, exposure {wind.exposure}, Kzt {short(wind.K_zt)}"
    return ("Wind", value, f"{fact.how or 'source not given'}; by {edition_short(wind.document)}, chapter 27")


def _soil(house: House, units: Units) -> Iterator[Row]:
    soil = house.survey.site.soil
    yield ("Soil", soil.kind.value or "not known", soil.source or "source not given")
    bearing = soil.bearing_psf.value
    if bearing is None:
        yield ("Allowable bearing", "presumptive", "by the class of soil, where a foundation body is checked")
    else:
        yield ("Allowable bearing", quantity(bearing, "psf", units), soil.source or "source not given")
    materials: dict[str, dict[str, list[str]]] = {}
    for _, stretch in in_order(house.survey.foundation.segments):
        materials.setdefault(stretch.material, {}).setdefault(_stretch(stretch, units), []).append(stretch.mark)
    for material, found in materials.items():
        told = "; ".join(
            f"{words}: {', '.join(marks)}" if words else ", ".join(marks) for words, marks in found.items()
        )
        yield ("Foundation", material, told)


def _stretch(stretch: FoundationSegment, units: Units) -> str:
    """A stretch of foundation by condition and strength."""
    parts = [stretch.condition.value] if stretch.condition.value else []
    if stretch.material == "poured concrete":
        strength = stretch.strength_psi.value
        parts.append("not tested" if strength is None else quantity(strength, "psi", units))
    return ", ".join(parts)


def field_conditions(study: Study) -> Block:
    """What has to be verified in the field: the facts that a verdict hangs on, and what always has to be."""
    deciding = dict.fromkeys(
        fact
        for run in study.runs
        for chain in (*run.chains, *run.bodies)
        for link in chain.links
        for fact in link.depends_on
    )
    hanging = f" A verdict hangs on each of these: {grouped(deciding)}." if deciding else ""
    return Paragraph(
        (
            strong("Existing conditions to verify in the field "),
            "before and while work is done: size, species and soundness of all wood that work is fastened to; "
            "number, diameter, embedment and nut of every bolt that a check counts; gas, water, drain and electric "
            f"lines where work cuts or drills.{hanging} What is found otherwise goes back to the designer.",
        )
    )


def grouped(labels: Iterable[str]) -> str:
    """Labels that end in a mark, gathered by what they are: ``Embedment (B1, B3); Concrete strength (C4)``."""
    found: dict[str, list[str]] = {}
    for label in labels:
        name, _, mark = label.rpartition(" (")
        found.setdefault(name or label, []).extend([mark.removesuffix(")")] if name else [])
    return "; ".join(f"{name} ({', '.join(marks)})" if marks else name for name, marks in found.items())
