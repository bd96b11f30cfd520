"""``groundsill new`` and ``groundsill check``: begin a house file; see whether it is sound and what it still lacks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence, Sized
from pathlib import Path
from typing import TYPE_CHECKING

from groundsill.cli.exits import DONE
from groundsill.cli.layout import facts, faint, lines, strong, unbroken, words
from groundsill.cli.speech import say_json, show
from groundsill.doors.answers import Checked, Written
from groundsill.doors.files import read_house, write_house
from groundsill.house.missing import Missing, incomplete, together
from groundsill.working.errors import BadSurvey, CannotWrite, Fault

if TYPE_CHECKING:
    from rich.console import RenderableType
    from rich.text import Text

    from groundsill.work.document import House

__all__ = ["check", "new"]


def new(file: Path, name: str, units: str, force: bool, as_json: bool) -> int:
    """Write a starting house file.

    Raises:
        BadSurvey: a file that is there already, a name or units that will not do.
        CannotWrite: when the file cannot be written; nothing was changed.
    """
    from groundsill.cli.starting import starting_house

    faults = []
    if units not in ("us", "si"):
        faults.append(Fault("--units", repr(units), "it is us or si"))
    if not name.strip():
        faults.append(Fault("--name", repr(name), "a house has a name"))
    if file.suffix.lower() not in (".json", ".zip"):
        faults.append(
            Fault(str(file), f"the ending {file.suffix!r}", "a house file ends in .json, or .zip with photographs")
        )
    elif file.exists() and not force:
        faults.append(
            Fault(str(file), "a file that is there already", "choose another name, or say --force to replace it")
        )
    elif not file.parent.is_dir():
        faults.append(Fault(str(file.parent), "a folder that is not there", "make the folder first"))
    if faults:
        raise BadSurvey(tuple(faults))
    if file.is_dir():
        raise CannotWrite(f"{file} is a folder; nothing was changed")
    house = starting_house(name.strip(), "si" if units == "si" else "us")
    write_house(file, house)
    if as_json:
        say_json(Written((str(file),), {}))
        return DONE
    show(_begun(file))
    return DONE


def _begun(file: Path) -> Iterator[RenderableType]:
    yield unbroken(f"{file}: a small house to start from")
    yield lines(
        (
            "Every figure in it is an example. Replace each with what you measure, ground motion first; what you "
            'cannot see is {"state": "unknown"}.',
            'A length may be typed as measured: "7\'-6 1/2\\"", "2.3 m", "90 in".',
            "Then see what it still lacks:",
        )
    )
    yield unbroken(f"  groundsill check {file}")


def check(file: Path, as_json: bool) -> int:
    """Say whether a file is sound and what a load path still needs.

    Raises:
        BadSurvey: one fault for each thing wrong.
    """
    house = read_house(file)
    from groundsill.study.unread import unread

    lacks = (*incomplete(house.survey), *unread(house))
    answer = Checked(str(file), house.survey.name, _holds(house), lacks)
    if as_json:
        say_json(answer)
        return DONE
    show(_page(answer, together(lacks)))
    return DONE


def _holds(house: House) -> dict[str, int]:
    """How many of everything the file holds, in the words of the trade."""
    survey = house.survey
    under, building = survey.underfloor, survey.building
    found: dict[str, Sized] = {
        "storeys": building.storeys, "walls": building.walls, "lines": under.lines, "wall segments": under.segments,
        "sill pieces": under.sills, "bolts": under.bolts, "foundation segments": survey.foundation.segments,
        "obstructions": under.obstructions, "observations": survey.observations, "photographs": survey.photos,
        "alternatives": house.alternatives,
    }  # fmt: skip
    return {name: len(collection) for name, collection in found.items()}


def _page(answer: Checked, lacks: Sequence[tuple[Missing, tuple[str, ...]]]) -> Iterator[RenderableType]:
    yield strong(f"{answer.name}: the file is sound")
    yield facts((name, str(count), "") for name, count in answer.holds.items() if count)
    yield ""
    if not answer.missing:
        yield strong("Nothing that a load path needs is missing.")
        return
    count = len(answer.missing)
    yield strong(f"A load path still lacks {'one fact' if count == 1 else f'{count} facts'}:")
    yield lines(_one(missing, paths) for missing, paths in lacks)
    yield faint("What is missing shows as 'cannot be checked', which is never a pass.")


def _one(missing: Missing, paths: Sequence[str]) -> Text:
    """What is missing, what cannot be said without it, and its place in the file (or those of all that are alike)."""
    from rich.text import Text

    where = paths[0] if len(paths) == 1 else f"{paths[0]} and {len(paths) - 1} like it"
    return Text.assemble(words(f"{missing.what}: {missing.needed_for}"), "\n", faint(where))
