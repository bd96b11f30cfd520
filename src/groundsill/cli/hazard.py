"""``groundsill hazard``: the ground motion a house file holds; looked up at a public service only when told to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from groundsill.cli.exits import DONE
from groundsill.cli.layout import facts, faint, lines, strong, unbroken, words
from groundsill.cli.progress import busy
from groundsill.cli.speech import say_json, show
from groundsill.doors.files import open_house, write_house
from groundsill.doors.hazard_answers import HazardChange, HazardFound, HazardHeld, HazardTold
from groundsill.doors.hazard_service import (
    SERVICE,
    TIMEOUT_S,
    address_of,
    beside,
    changes_of,
    edition_of,
    held_by,
    look_up,
    question_of,
    with_found,
)
from groundsill.working.errors import BadSurvey, CannotWrite, Fault
from groundsill.working.explain import figure

if TYPE_CHECKING:
    from rich.console import RenderableType
    from rich.text import Text

    from groundsill.work.document import House

__all__ = ["Wanted", "hazard"]


@dataclass(frozen=True, slots=True)
class Wanted:
    """What was asked for besides the file: a look-up, at which service, by which edition, for how long; writing."""

    look_up: bool
    service: str | None
    edition: str | None
    timeout_s: float | None
    write: bool


def hazard(file: Path, wanted: Wanted, as_json: bool) -> int:
    """Print the ground motion of a house and its source; with a look-up, what the service answers and would change.

    Raises:
        BadSurvey: a file at fault, options that do not go together, or a fact that the question lacks.
        NoAnswer: when the service gave nothing that can be used; nothing was changed.
        CannotWrite: when the file cannot be written; nothing was changed.
    """
    house = open_house(file)
    goes_by = edition_of(house)
    _must_fit(wanted)
    edition = wanted.edition or goes_by
    site = house.survey.site
    told = HazardTold(
        str(file), house.survey.name, edition, site.latitude, site.longitude, site.risk_category, held_by(house),
        beside(house), None, (), False,
    )  # fmt: skip
    if wanted.look_up:
        found = _ask(house, wanted)
        changes = changes_of(house, found)
        if wanted.write and changes:
            _write(file, house, found)
        told = replace(told, found=found, changes=changes, written=wanted.write and bool(changes))
    if as_json:
        say_json(told)
        return DONE
    show(_page(told, goes_by))
    return DONE


def _must_fit(wanted: Wanted) -> None:
    faults = []
    if not wanted.look_up:
        given = {
            "--service": wanted.service,
            "--edition": wanted.edition,
            "--timeout": wanted.timeout_s,
            "--write": wanted.write or None,
        }
        faults += [
            Fault(name, "without --look-up", "it goes with --look-up, which asks the service")
            for name, value in given.items()
            if value is not None
        ]
    if wanted.timeout_s is not None and not 0 < wanted.timeout_s <= 600:
        faults.append(Fault("--timeout", f"{wanted.timeout_s:g}", "seconds, above 0 and at most 600"))
    if faults:
        raise BadSurvey(tuple(faults))


def _ask(house: House, wanted: Wanted) -> HazardFound:
    question = question_of(house, wanted.edition)
    service = wanted.service or SERVICE
    address_of(question, service)
    today = datetime.now().astimezone().date()
    with busy(f"Asking {service}"):
        return look_up(question, today, service, TIMEOUT_S if wanted.timeout_s is None else wanted.timeout_s)


def _write(file: Path, house: House, found: HazardFound) -> None:
    """Put the answer into the file as it is now; what somebody changed meanwhile stays, unless it was the question."""
    now = open_house(file)
    if now.survey.site != house.survey.site or now.basis != house.basis:
        raise CannotWrite(f"{file}: its site was changed while the service was asked; nothing was written, ask again")
    write_house(file, with_found(now, found))


# ---- On the screen --------------------------------------------------------------------------------------------------


def _page(told: HazardTold, goes_by: str) -> Iterator[RenderableType]:
    yield strong(f"{told.name}: ground motion")
    place = "not in the file"
    if told.latitude is not None and told.longitude is not None:
        place = f"latitude {told.latitude:g}, longitude {told.longitude:g}"
    yield facts((("Place", place, ""), ("Risk category", told.risk_category, ""), ("The house goes by", goes_by, "")))
    yield ""
    yield strong("In the file")
    if told.held is None:
        yield words("No ground motion yet: no earthquake force can be worked out.")
    else:
        yield facts(_held_rows(told.held))
    for kept in told.beside:
        yield ""
        yield strong(f"Beside it, to compare: {kept.edition}")
        yield facts(
            (
                ("S_DS", _g(kept.S_DS), ""),
                ("S_D1", _g(kept.S_D1), ""),
                ("Source", kept.source or "not said", ""),
                ("Date", kept.when or "not said", ""),
            )
        )
    if told.found is None:
        yield ""
        yield faint("With --look-up the public service is asked; without it nothing is.")
        return
    yield ""
    yield from _found_page(told.found, told, goes_by)


def _held_rows(held: HazardHeld) -> Iterator[tuple[str, str, str]]:
    yield from _motion_rows(held)
    yield ("S_DS", _g(held.S_DS), "entered")
    yield ("S_D1", _g(held.S_D1), "entered")
    yield ("Site class", held.site_class, "")
    yield ("Source", held.source or "not said", "")
    yield ("Date", held.when or "not said", "")


def _motion_rows(motion: HazardHeld | HazardFound) -> Iterator[tuple[str, str, str]]:
    yield ("S_S", _g(motion.S_S), "short periods, mapped")
    yield ("S_1", _g(motion.S_1), "one second, mapped")
    yield ("T_L", "" if motion.T_L is None else f"{figure(motion.T_L)} s", "long-period transition")


def _g(value: float | None) -> str:
    return "" if value is None else f"{figure(value)} g"


def _found_page(found: HazardFound, told: HazardTold, goes_by: str) -> Iterator[RenderableType]:
    yield strong(f"Found for {found.edition}, site class {found.site_class}, risk category {found.risk_category}")
    yield facts(
        (
            *_motion_rows(found),
            ("S_MS", _g(found.S_MS), "for the site class"),
            ("S_M1", _g(found.S_M1), "for the site class"),
            ("S_DS", _g(found.S_DS), "design value"),
            ("S_D1", _g(found.S_D1), "design value"),
            ("Category", found.category, "as the service has it"),
            ("Date", found.when, ""),
        )
    )
    yield unbroken(found.url)
    yield ""
    if found.remarks:
        yield lines(found.remarks, "!")
        yield ""
    if not told.changes:
        yield words("The file holds these values already.")
        return
    if found.edition != goes_by:
        yield words(f"The house goes by {goes_by}: values by {found.edition} stand beside its own, to compare.")
    yield strong("Written to the file" if told.written else "It would change in the file")
    yield lines(_change(change) for change in told.changes)
    if not told.written:
        yield faint("Nothing was written; --write puts it in the file.")


def _change(change: HazardChange) -> Text:
    """One field: what it is, what stood there, what comes."""
    from rich.text import Text

    unit = f" {change.unit}" if change.unit else ""
    before, after = (
        "nothing" if side in (None, "") else f"{figure(side)}{unit}" if isinstance(side, float) else str(side)
        for side in (change.before, change.after)
    )
    return Text.assemble(words(f"{change.label}: {after}"), "\n", faint(f"before: {before}"))
