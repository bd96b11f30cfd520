"""``groundsill compare-editions``: the same house by other editions, shares of the force and bracing systems."""

from __future__ import annotations

from pathlib import Path

from groundsill.cli.exits import DONE
from groundsill.cli.speech import console, say_json
from groundsill.doors.files import read_house
from groundsill.papers.document import Document
from groundsill.papers.views.compare_view import compare_blocks
from groundsill.papers.writers.terminal import print_document
from groundsill.study.compare import compare_editions

__all__ = ["compare"]


def compare(file: Path, as_json: bool) -> int:
    """Print one table of the house by every variant.

    Raises:
        BadSurvey: one fault for each thing wrong with the file.
    """
    house = read_house(file)
    found = compare_editions(house)
    if as_json:
        say_json(found)
        return DONE
    page = Document(f"{found.name}: compared", compare_blocks(found.variants, house.units), numbered=False)
    print_document(page, console())
    return DONE
