"""IRC 2021 R403.1: the least of a new concrete footing under a dwelling, and its bars where earthquakes are strong."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from groundsill.standards.conditions import Condition, all_met
from groundsill.standards.irc_2021 import SOURCE
from groundsill.working.equation import Q, equation, procedure
from groundsill.working.errors import OutsideLimits
from groundsill.working.steps import condition, note
from groundsill.working.table import Table

__all__ = ["DwellingFooting", "footing_depth", "footing_fits", "footing_thickness", "table_r403_1_3"]

Frost = Annotated[float, Q("in", "d_f", "depth that the ground freezes, 0 where it does not", at_least=0.0)]
Beyond = Annotated[float, Q("in", "P", "footing beyond the face of the wall on it", at_least=0.0)]

_STRONG = ("D0", "D1", "D2")
_ALL = ("A", "B", "C", *_STRONG)
_WIDTHS = "Tables R403.1(1) to (3), the widths by soil, snow and stories, were not read: only 12 in. is held to"


@dataclass(frozen=True, slots=True)
class DwellingFooting:
    """Whether a footing keeps to R403.1: each condition, and whether all are met; the widths by soil stay open."""

    conditions: tuple[Condition, ...]
    fits: bool | None


def table_r403_1_3() -> Table:
    """Bars of footings in categories D0 to D2: along the bottom, along the top, and the spacing of bars up."""
    return Table.load(__package__, "tables/r403_1_3.toml")


@equation(
    "irc-2021/R403.1.1",
    title="Thickness of a footing",
    clause="R403.1.1",
    source=SOURCE,
    constants={6: "in"},
)
def footing_thickness(P: Beyond) -> Annotated[float, Q("in", "T", "least thickness of the footing")]:
    """At least 6 in., and as thick as it reaches beyond the wall, in.

    Read in a town's reprint of the section (docstoc.com/docs/18940987) and at open-exam-prep.com, footings and
    foundations. 8 in. beyond the wall: 8 in.
    """
    return max(6, P)


@equation(
    "irc-2021/R403.1.4",
    title="Depth of a footing below undisturbed ground",
    clause="R403.1.4",
    source=SOURCE,
    constants={12: "in"},
)
def footing_depth(d_f: Frost) -> Annotated[float, Q("in", "D_f", "least depth of the footing's bottom")]:
    """At least 12 in., and to the frost line where the ground freezes and nothing else protects it, in.

    Read in a town's reprint of the section (docstoc.com/docs/18940987). No frost: 12 in.
    """
    return max(12, d_f)


@procedure(
    "irc-2021/R403.1",
    title="Does a new footing keep to the residential code?",
    clause="R403.1.1, R403.1.3, R403.1.4",
    source=SOURCE,
    alias="irc.footing",
)
def footing_fits(
    B: Annotated[float, Q("in", "W", "width of the footing", above=0.0)],
    h: Annotated[float, Q("in", "T", "thickness of the footing", above=0.0)],
    D_f: Annotated[float, Q("in", "D_f", "bottom of the footing below undisturbed ground", above=0.0)],
    P: Beyond,
    category: str,
    kind: str = "footing and stem cast apart",
    bottom: Annotated[float, Q("1", "n_b", "#4 bars along the bottom of the footing", at_least=0.0)] = 0.0,
    top: Annotated[float, Q("1", "n_t", "#4 bars along the top of the stem", at_least=0.0)] = 0.0,
    up: Annotated[float, Q("in", "s_v", "spacing of #4 bars up from the footing into the stem", above=0.0)] = 1000.0,
    d_f: Frost = 0.0,
) -> DwellingFooting:
    """Each rule for size and, in categories D0 to D2, for bars; met or not.

    Args:
        B: its width, in.
        h: its thickness, in.
        D_f: its bottom below undisturbed ground, in.
        P: how far it reaches beyond the face of the wall on it, in.
        category: seismic design category of the residential code: A, B, C, D0, D1 or D2.
        kind: row of Table R403.1.3: ``footing and stem cast apart``, ``cast in one``.
        bottom: #4 bars along the bottom of the footing.
        top: #4 bars along the top of the stem, or of what is cast in one.
        up: spacing of the #4 bars from the footing into the stem, in.
        d_f: depth that the ground freezes, in.; 0 where it does not.
    """
    if category not in _ALL:
        raise OutsideLimits(f"{SOURCE.cite('R403.1.3')}: category = {category!r}; must be one of {', '.join(_ALL)}")
    thick, deep = footing_thickness(P), footing_depth(d_f)
    found = [
        _asked("at least 12 in. wide", float(B) >= 12.0, "R403.1.1"),
        _asked(f"at least {float(thick):g} in. thick", float(h) >= float(thick), "R403.1.1"),
        _asked(
            "at least 2 in. beyond the wall, where it is a footing at all", float(P) == 0 or float(P) >= 2, "R403.1.1"
        ),
        _asked(f"bottom at least {float(deep):g} in. below undisturbed ground", float(D_f) >= float(deep), "R403.1.4"),
    ]
    note(_WIDTHS)
    if category in _STRONG:
        asked = table_r403_1_3()
        along = (
            asked.read(kind, "bars along the bottom", symbol="n_b,min"),
            asked.read(kind, "bars along the top", symbol="n_t,min"),
        )
        found.append(_asked(f"{float(along[0]):g} #4 along its bottom", float(bottom) >= float(along[0]), "R403.1.3"))
        found.append(_asked(f"{float(along[1]):g} #4 along the top", float(top) >= float(along[1]), "R403.1.3"))
        if kind == "footing and stem cast apart":
            apart = asked.read(kind, "spacing of bars up", symbol="s_v,max")
            found.append(_asked(f"#4 up into the stem at {float(apart):g} in.", float(up) <= float(apart), "R403.1.3"))
    return DwellingFooting(tuple(found), all_met(found))


def _asked(text: str, met: bool, clause: str) -> Condition:
    return Condition(text, condition(text, met, cite=SOURCE.cite(clause)))
