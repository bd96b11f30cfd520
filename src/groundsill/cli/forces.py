"""``groundsill forces``: weights, base shear, and the share of every line."""

from __future__ import annotations

from pathlib import Path

from groundsill.cli.exits import DONE
from groundsill.cli.opening import house_and_study
from groundsill.cli.speech import console, say_json
from groundsill.doors.house_answers import forces_told
from groundsill.papers.document import Document
from groundsill.papers.views.forces_view import forces_blocks
from groundsill.papers.writers.terminal import print_document

__all__ = ["forces"]


def forces(file: Path, as_json: bool) -> int:
    """Print the earthquake force of a house.

    Raises:
        BadSurvey: one fault for each thing wrong, or missing for any force at all.
    """
    _, study = house_and_study(file, ranges=False)
    if as_json:
        say_json(forces_told(study))
        return DONE
    made = study.manifest
    stamp = f"{made.code}, {made.editions.get('asce7', '')}, strength level; house {made.house_hash}"
    page = Document(f"{study.name}: earthquake force", forces_blocks(study), stamp=(stamp,), numbered=False)
    print_document(page, console())
    return DONE
