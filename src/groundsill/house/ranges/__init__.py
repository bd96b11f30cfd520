"""Ranges that stand in for facts nobody could see, by age and material, each with how it is known.

`lumber` sizes of old sills, studs, plates and boards · `foundation` concrete, mortar, chimneys, damp, soil. The figures
are data files; this package reads them. A rule names the field it serves, the conditions it holds under, the years it
covers and either low, best and high or the table of old materials it reads. A measured fact never asks here.
"""

from __future__ import annotations

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any, Final

from groundsill.standards.old_materials.ranges import old_concrete_strength, unit_weight
from groundsill.working.sheet import Sheet
from groundsill.working.value import Mark, marks_of

__all__ = ["TABLES", "Assumed", "Rule", "Years", "assumed_for", "rules"]

End = float | bool | str
Years = tuple[float, float, float]

_FILES: Final = ("foundation.toml", "lumber.toml")


@dataclass(frozen=True, slots=True)
class Rule:
    """One range: the field it serves (a path without ids), the conditions and years it holds for, and what it says."""

    serves: str
    where: str
    how: str
    low: End | None = None
    best: End | None = None
    high: End | None = None
    table: str = ""
    years: tuple[float, float] | None = None
    when: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Assumed:
    """What is taken for an unknown fact: its ends, where they come from in words, and the marks they carry."""

    low: End
    best: End
    high: End
    words: str
    marks: tuple[Mark, ...]


@lru_cache(maxsize=1)
def rules() -> Mapping[str, tuple[Rule, ...]]:
    """Every rule by the field it serves, in the order of the files."""
    found: dict[str, list[Rule]] = {}
    for name in _FILES:
        written = tomllib.loads((files(__package__) / name).read_text(encoding="utf-8"))
        for entry in written["range"]:
            rule = _rule(entry, written["sources"])
            found.setdefault(rule.serves, []).append(rule)
    return MappingProxyType({key: tuple(of_field) for key, of_field in found.items()})


def _rule(entry: dict[str, Any], sources: dict[str, dict[str, str]]) -> Rule:
    source = sources[entry["source"]] if "source" in entry else {"how": "", "where": ""}
    years = entry.get("years")
    return Rule(
        serves=entry["field"],
        where=source["where"],
        how=source["how"],
        low=entry.get("low"),
        best=entry.get("best"),
        high=entry.get("high"),
        table=entry.get("from", ""),
        years=(years[0], years[1]) if years else None,
        when={name: tuple(values) for name, values in entry.get("when", {}).items()},
    )


def assumed_for(key: str, known: Callable[[str], str | None], years: Years | None) -> Assumed | None:
    """What stands in for an unknown fact, or None when nothing does.

    Args:
        key: the fact's path without ids: ``survey.underfloor.sills.thickness_in``.
        known: the value of a field beside the fact, or of the object around it, in words (``"unknown"`` for an unknown
            fact, None for no such field).
        years: earliest, best and latest year the thing may be of; None when nobody knows.
    """
    fitting = [rule for rule in rules().get(key, ()) if _holds(rule, known)]
    if not fitting:
        return None
    earliest, best_year, latest = years or (1700, None, 2100)
    of_age = [r for r in fitting if r.years is None or (r.years[0] <= latest and earliest <= r.years[1])]
    ends = [_ends(rule, years) for rule in of_age]
    if not ends:
        return None
    own = next((n for n, r in enumerate(of_age) if best_year is None or r.years is None or _within(best_year, r)), 0)
    low, high = ends[own].low, ends[own].high
    if all(isinstance(e.low, float) and isinstance(e.high, float) for e in ends):
        low, high = min(e.low for e in ends), max(e.high for e in ends)
    marks = tuple(sorted({mark for e in ends for mark in e.marks}))
    return Assumed(low, ends[own].best, high, ends[own].words, marks)


def _holds(rule: Rule, known: Callable[[str], str | None]) -> bool:
    return all(known(name) in values for name, values in rule.when.items())


def _within(year: float, rule: Rule) -> bool:
    return rule.years is None or rule.years[0] <= year <= rule.years[1]


def _ends(rule: Rule, years: Years | None) -> Assumed:
    """What one rule says, from its own figures or from the table it reads."""
    if rule.table:
        return TABLES[rule.table](years)
    if rule.low is None or rule.best is None or rule.high is None:
        raise ValueError(f"the range of {rule.serves} says neither low, best and high nor a table")
    age = f" for {rule.years[0]:g} to {rule.years[1]:g}" if rule.years else ""
    words = f"assumed range{age}; {rule.how}: {rule.where}"
    marks = [Mark("assumed range", f"{rule.serves.removeprefix('survey.')}{age}: {rule.where}")]
    if rule.how == "from memory":
        marks.append(Mark("from memory", rule.where))
    return Assumed(_end(rule.low), _end(rule.best), _end(rule.high), words, tuple(marks))


def _end(written: End) -> End:
    """A whole number of the file as the float it is."""
    return written if isinstance(written, bool | str) else float(written)


# ---- Ranges that stand in a table of their own ----------------------------------------------------------------------


@lru_cache(maxsize=512)
def _concrete(years: Years | None) -> Assumed:
    """Untested concrete by its age: the widest of the ages it may be of."""
    with Sheet():  # with a sheet open the table's figures bring their marks
        ranges = [old_concrete_strength(year) for year in (years or (None,))]
    best = ranges[1] if len(ranges) > 1 else ranges[0]
    low, high = min(float(r.low) for r in ranges), max(float(r.high) for r in ranges)
    marks = marks_of([end for r in ranges for end in (r.low, r.best, r.high)])
    return Assumed(low, float(best.best), high, f"untested concrete by age: {best.row}", tuple(sorted(marks)))


@lru_cache(maxsize=1)
def _brick(years: Years | None) -> Assumed:
    """Brick masonry by volume."""
    with Sheet():
        weight = unit_weight("brick masonry")
    marks = tuple(sorted(marks_of([weight.low, weight.best, weight.high])))
    words = "brick masonry, from the table of unit weights"
    return Assumed(float(weight.low), float(weight.best), float(weight.high), words, marks)


TABLES: Final[Mapping[str, Callable[[Years | None], Assumed]]] = MappingProxyType(
    {"concrete by age": _concrete, "brick masonry": _brick}
)
