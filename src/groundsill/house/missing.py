"""What a survey still lacks before the force can be followed from floor to soil: not faults, a list for the next visit.

Each entry names the field, and what cannot be worked out without it. A fact that takes a range by its age is not
missing (:mod:`groundsill.house.settle` lists those); a fact nobody can assume is.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from groundsill.house.cores import range_by_cores
from groundsill.house.fact import Fact
from groundsill.house.survey import Survey, in_order
from groundsill.house.underfloor import SillPiece

__all__ = ["Missing", "incomplete", "together"]


@dataclass(frozen=True, slots=True)
class Missing:
    """One thing a survey lacks: the field's path, what it is in words, and what needs it."""

    path: str
    what: str
    needed_for: str

    def line(self) -> str:
        """The entry as it is printed."""
        return f"{self.path}: {self.what}; without it {self.needed_for}"


def together(missing: Sequence[Missing]) -> tuple[tuple[Missing, tuple[str, ...]], ...]:
    """The same list for a person: what is missing of several things alike is said once, with the paths of all.

    Alike are entries of one field that wait for the same thing; each is one line with every thing named in it.
    """
    groups: dict[tuple[str, str], list[Missing]] = {}
    for one in missing:
        path = one.path.split(".")
        field = ".".join(part for n, part in enumerate(path) if n != 3)  # an id stands fourth: survey.a.b.<id>
        groups.setdefault((field, one.needed_for), []).append(one)
    found = []
    for alike in groups.values():
        what = _joined([one.what for one in alike])
        for shown in (what,) if what else tuple(one.what for one in alike):
            paths = tuple(one.path for one in alike if what or one.what == shown)
            found.append((Missing(paths[0], shown, alike[0].needed_for), paths))
    return tuple(found)


def _joined(sentences: Sequence[str]) -> str:
    """Sentences that differ in one stretch of words, as one with all of them; empty when they differ in more."""
    words = [sentence.split(" ") for sentence in dict.fromkeys(sentences)]
    if len(words) == 1:
        return sentences[0]
    least = min(len(each) for each in words)
    start = next((n for n in range(least) if len({each[n] for each in words}) > 1), least)
    end = next((n for n in range(least - start) if len({each[-1 - n] for each in words}) > 1), least - start)
    middles = [" ".join(each[start : len(each) - end]) for each in words]
    if any(not middle or " " in middle for middle in middles):
        return ""
    return " ".join(
        (*words[0][:start], f"{', '.join(middles[:-1])} and {middles[-1]}", *words[0][len(words[0]) - end :])
    )


def incomplete(survey: Survey, at: str = "survey") -> tuple[Missing, ...]:
    """What a survey lacks for a load path from floor to soil, in the order of the job.

    Args:
        survey: a survey that has no faults (one with faults is answered too).
        at: the path the survey stands at, for messages.
    """
    return (
        *_of_site(survey, at),
        *_of_building(survey, at),
        *_of_lines(survey, at),
        *_of_walls(survey, at),
        *_of_sills(survey, at),
        *_of_bolts(survey, at),
        *_of_foundation(survey, at),
    )


def _of_site(survey: Survey, at: str) -> Iterator[Missing]:
    """Ground motion and soil."""
    no_force = "there is no earthquake force"
    hazard = survey.site.hazard
    if hazard is None:
        yield Missing(f"{at}.site.hazard", "the ground motion of the site is not given", no_force)
    elif not hazard.source:
        what = "where the ground motion came from is not given"
        yield Missing(f"{at}.site.hazard.source", what, "the force cannot be vouched for")
    if survey.site.slope_rise_per_run.value is None:
        what = "the slope of the ground is not known"
        yield Missing(f"{at}.site.slope_rise_per_run", what, "nobody can say whether this is a hillside house")


def _of_building(survey: Survey, at: str) -> Iterator[Missing]:
    """What the weights are made of."""
    building, no_weight = survey.building, "its weight is not counted"
    if building.year_built.value is None:
        what = "the year the house was built is not known"
        yield Missing(f"{at}.building.year_built", what, "untested materials take the range of every age")
    parts = (
        ("storeys", "no storey is drawn"), ("walls", "no wall of the house above is drawn"),
        ("roof", "no roof is drawn"),
    )  # fmt: skip
    for name, what in parts:
        if not getattr(building, name):
            yield Missing(f"{at}.building.{name}", what, no_weight)
    if building.storeys and not building.partitions:
        what = "no partition is drawn; old plaster partitions often weigh more than the code's least"
        yield Missing(
            f"{at}.building.partitions",
            what,
            "none is counted in the weight; the code asks for at least 10 psf where they may stand",
        )
    for key, assembly in in_order(building.assemblies):
        if not assembly.layers:
            what = f"{assembly.name} has no layers"
            yield Missing(f"{at}.building.assemblies.{key}.layers", what, no_weight)


def _of_lines(survey: Survey, at: str) -> Iterator[Missing]:
    """What a braced line must say of itself."""
    under = survey.underfloor
    if not under.lines:
        yield Missing(f"{at}.underfloor.lines", "no braced line is drawn", "no force can be followed to the soil")
    if not under.joists:
        what = "the floor joists and boards are not described"
        yield Missing(f"{at}.underfloor.joists", what, "the floor cannot be checked as a diaphragm")
    seen: dict[str, set[str]] = {
        name: {item.line for item in collection.values()}
        for name, collection in (
            ("segments", under.segments), ("sills", under.sills), ("foundation", survey.foundation.segments),
        )
    }  # fmt: skip
    for key, line in in_order(under.lines):
        path, name = f"{at}.underfloor.lines.{key}", line.mark or key
        if key not in seen["segments"]:
            yield Missing(path, f"{name} has no wall segment", "its bracing cannot be checked")
        if key not in seen["foundation"]:
            yield Missing(path, f"no foundation stretch lies under {name}", "its anchorage and soil cannot be checked")
        if key not in seen["sills"] and line.position == "perimeter":
            yield Missing(path, f"{name} has no sill piece", "its sill and bolts cannot be checked")
        yield from _of_floor_joint(path, name, line)


def _of_floor_joint(path: str, name: str, line: Any) -> Iterator[Missing]:
    """How the floor is joined to a line."""
    joint = "the joint between floor and plate cannot be checked"
    if line.joists == "not seen":
        yield Missing(f"{path}.joists", f"how the joists run to {name} was not seen", joint)
    connection = line.floor_connection
    if connection.kind == "not seen":
        yield Missing(f"{path}.floor_connection.kind", f"how the floor is held to {name} was not seen", joint)
    elif connection.kind == "toenails":
        yield from _unknown(path, "floor_connection.spacing_in", connection.spacing_in, f"nails of {name}", joint)
        if not connection.nail:
            yield Missing(f"{path}.floor_connection.nail", f"which nails hold {name} was not noted", joint)


def _of_walls(survey: Survey, at: str) -> Iterator[Missing]:
    """Height and sheathing of cripple walls."""
    for key, segment in in_order(survey.underfloor.segments):
        path, name = f"{at}.underfloor.segments.{key}", segment.mark or key
        if segment.kind != "cripple wall":
            continue
        needs = "its bracing and overturning cannot be checked"
        yield from _unknown(path, "height_in", segment.height_in, f"height of {name}", needs)
        needs = "what a panel nailed to them carries is not known"
        yield from _unknown(path, "stud.species", segment.stud.species, f"wood of the studs of {name}", needs)


def _of_sills(survey: Survey, at: str) -> Iterator[Missing]:
    """Size, wood and condition of sills."""
    needs = "what its bolts and nails carry cannot be worked out"
    for key, sill in in_order(survey.underfloor.sills):
        path, name = f"{at}.underfloor.sills.{key}", sill.mark or key
        yield from _unknown(path, "width_in", sill.width_in, f"width of {name}", needs)
        yield from _unknown(path, "condition", sill.condition, f"condition of {name}", needs)
        if _under_studs(survey, sill):
            inside = f"how far {name} stands out inside"
            yield from _unknown(
                path, "projects_inside_in", sill.projects_inside_in, inside, "a panel's edge has no nailing"
            )
        yield from _unknown(path, "species", sill.species, f"wood of {name}", needs)


def _under_studs(survey: Survey, sill: SillPiece) -> bool:
    """Whether a cripple wall stands on a piece of sill, so that a panel may be nailed to it."""
    return any(
        segment.kind == "cripple wall"
        and segment.line == sill.line
        and min(segment.to_in, sill.to_in) > max(segment.from_in, sill.from_in)
        for segment in survey.underfloor.segments.values()
    )


def _of_bolts(survey: Survey, at: str) -> Iterator[Missing]:
    """What an old bolt needs before it counts."""
    needs = "it does not count"
    for key, bolt in in_order(survey.underfloor.bolts):
        path, name = f"{at}.underfloor.bolts.{key}", bolt.mark or key
        yield from _unknown(path, "diameter_in", bolt.diameter_in, f"diameter of {name}", needs)
        if bolt.test_lb.value is None:
            yield from _unknown(path, "embedment_in", bolt.embedment_in, f"embedment of {name}", needs)
        yield from _unknown(path, "edge_in", bolt.edge_in, f"edge distance of {name}", needs)
        yield from _unknown(path, "hole_in", bolt.hole_in, f"hole of {name} in the sill", needs)
        yield from _unknown(path, "nut", bolt.nut, f"nut of {name}", needs)


def _of_foundation(survey: Survey, at: str) -> Iterator[Missing]:
    """Sections of the foundation."""
    needs = "sliding, overturning and bearing cannot be checked"
    for key, segment in in_order(survey.foundation.segments):
        path, name = f"{at}.foundation.segments.{key}", segment.mark or key
        if segment.material == "none":
            continue
        if segment.material == "not seen":
            yield Missing(f"{path}.material", f"what {name} is made of was not seen", needs)
        facts: Mapping[str, tuple[Fact[Any], str]] = {
            "top_width_in": (segment.top_width_in, f"width of {name} at its top"),
            "footing_width_in": (segment.footing_width_in, f"footing width of {name}"),
            "depth_in": (segment.depth_in, f"depth of {name} in the soil"),
            "above_outside_soil_in": (segment.above_outside_soil_in, f"height of {name} above the soil outside"),
        }
        for field, (fact, what) in facts.items():
            yield from _unknown(path, field, fact, what, needs)
        crumbling = segment.material == "poured concrete" and segment.condition.value == "crumbling"
        if crumbling and range_by_cores(survey, key, None) is None:
            what = f"strength of {name}, which crumbles (no range stands in for it),"
            yield from _unknown(path, "strength_psi", segment.strength_psi, what, "its anchors cannot be checked")


def _unknown(path: str, field: str, fact: Fact[Any], what: str, needed_for: str) -> Iterator[Missing]:
    """A fact that is neither known nor bounded."""
    if fact.value is None and fact.state != "absent" and fact.low is None:
        yield Missing(f"{path}.{field}", f"{'' if what.startswith('how') else 'the '}{what} is not known", needed_for)
