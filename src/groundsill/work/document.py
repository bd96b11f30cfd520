"""The house document: the survey, the choices, the alternatives laid on it, and the record of work done."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from groundsill.house.fact import about
from groundsill.house.survey import Survey
from groundsill.work.pieces import Piece

__all__ = ["FORMAT", "Acceptance", "Alternative", "Basis", "Choices", "EditionOverride", "House", "WorkRecord"]

FORMAT = "groundsill.house/1"


@dataclass(frozen=True, slots=True, kw_only=True)
class EditionOverride:
    """One document used in another edition than the building code names, and why."""

    edition: str = about("Edition", help="sdpws-2015")
    reason: str = about("Reason, as printed")


@dataclass(frozen=True, slots=True, kw_only=True)
class Basis:
    """The building code the house is designed by; it names the edition of every other document."""

    code: str = about("Building code", help="ibc-2018, ibc-2021, ibc-2024", default="ibc-2021")
    overrides: dict[str, EditionOverride] = about("Editions used instead", factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class Choices:
    """The judgements a designer makes and prints."""

    system: str = about("Bracing system", help="row of the system table", default="A.15")
    system_reason: str = about("Why this system", default="")
    force_factor: float = about("Share of the force for new buildings", least=0.1, most=1, default=1.0)
    force_reason: str = about("Why this share", default="")
    redundancy: float = about("Redundancy factor", least=1, most=1.3, default=1.3)
    redundancy_reason: str = about("Why this redundancy factor", default="")
    floor: Literal["as the rule says", "flexible", "envelope"] = about(
        "Floor taken as",
        help="envelope: flexible and rigid, every line the worse; the rule asks for it where heights differ much",
        default="as the rule says",
    )
    floor_reason: str = about("Why", default="")
    short_period_cap: bool = about("Use the cap on short-period force", default=False)
    anchor_basis: Literal[
        "overstrength", "sill exception", "wood yields first", "2016 proposal for existing footings"
    ] = about(
        "Concrete at sill bolts is checked by",
        help="the proposal was never adopted: by it a bolt is never more than indicated",
        default="overstrength",
    )
    anchor_reason: str = about("Why", default="")
    bolt_springs: Literal["close bolts in weak concrete", "every line"] = about(
        "Sill bolts share by the springs of their slip",
        help="and in concrete that crumbles at any distance; elsewhere the bolts of a sill piece share alike",
        default="close bolts in weak concrete",
    )
    anchor_tension: Literal["overstrength", "ductile anchor", "panel yields", "hold-down's limit"] = about(
        "Concrete at hold-downs is checked by",
        help="17.10.5.3: the overstrength tension; the anchor's own steel, which yields first; the pull when the panel "
        "yields; the most that the hold-down can pull",
        default="overstrength",
    )
    anchor_tension_reason: str = about("Why", help="without it the overstrength tension is taken", default="")
    storeys_above: Literal["both bounds", "not counted", "all of it"] = about(
        "Overturning that the storeys above bring down on a braced segment",
        help="both bounds: none of it, and the whole of the segment's share; where they part, it cannot be checked",
        default="both bounds",
    )
    storeys_above_reason: str = about("Why", help="without a reason both bounds are taken", default="")
    rim_tie: Literal["not counted", "counted"] = about(
        "The rim as a tie from one braced segment to the next",
        help="an extension: never more than indicated",
        default="not counted",
    )
    rim_tie_reason: str = about(
        "Why, and how it is known that the rim has no joint over the gaps",
        help="without it the rim is not counted",
        default="",
    )
    scope: Literal["voluntary", "required"] = about("Scope", default="voluntary")


@dataclass(frozen=True, slots=True, kw_only=True)
class Alternative:
    """One list of pieces of work laid on the survey."""

    order: float = 0
    mark: str = ""
    name: str = about("Name")
    purpose: str = about("What it is meant to do", default="")
    pieces: dict[str, Piece] = about("Pieces of work", factory=dict)


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkRecord:
    """A piece of work as it was built, which may differ from the drawing."""

    order: float = 0
    mark: str = ""
    piece: str = about("Piece of work")
    state: Literal["built as drawn", "built otherwise", "left out"] = "built as drawn"
    what: str = about("What was built", default="")
    by: str = about("Who", default="")
    when: str = about("When", default="")
    photos: tuple[str, ...] = about("Photographs", refers="photos", factory=tuple)


@dataclass(frozen=True, slots=True, kw_only=True)
class Acceptance:
    """A named engineer's decision that one link which a standard's limits leave *indicated* may count as it stands."""

    order: float = 0
    mark: str = ""
    link: str = about("Address of the link", help="line/<line>/sill-bolts/<sill>/both, as the load path prints it")
    alternative: str | None = about(
        "Alternative it was given for; left out: the house as found", help="id of an alternative", default=None
    )
    by: str = about("Engineer")
    licence: str = about("Licence, as printed")
    when: str = about("Date of the decision")
    reason: str = about("Reason, as printed")
    most_ratio: float = about("Highest demand over capacity it covers", least=0, most=1, default=1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class House:
    """The whole document of one house."""

    format: Literal["groundsill.house/1"] = FORMAT  # type: ignore[assignment]
    units: Literal["us", "si"] = about("Units on screen and paper", default="us")
    basis: Basis = about("Basis", factory=Basis)
    choices: Choices = about("Choices", factory=Choices)
    survey: Survey = about("Survey")
    alternatives: dict[str, Alternative] = about("Alternatives", factory=dict)
    record: dict[str, WorkRecord] = about("Record of the work", factory=dict)
    acceptances: dict[str, Acceptance] = about("Decisions of engineers", factory=dict)
