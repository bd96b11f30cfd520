"""Opening a house for a command, and running its study under a progress display."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from groundsill.cli.progress import busy
from groundsill.doors.files import read_house

if TYPE_CHECKING:
    from groundsill.study import Study
    from groundsill.work.document import House

__all__ = ["house_and_study", "study_of"]


def house_and_study(file: Path, ranges: bool = True) -> tuple[House, Study]:
    """A sound house and its study; ``ranges`` also runs it at both ends of every uncertain fact.

    Raises:
        BadSurvey: one fault for each thing wrong with the file, or missing for any force at all.
    """
    house = read_house(file)
    return house, study_of(house, ranges)


def study_of(house: House, ranges: bool = True) -> Study:
    """The study of a house, with its progress shown."""
    from groundsill.study import run

    with busy("Working out the load path") as report:
        return run(house, report, ranges)
