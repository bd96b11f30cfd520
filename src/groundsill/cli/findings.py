"""``groundsill findings``: what of the foundation matters, what does not, and why; on screen, as JSON, as a report."""

from __future__ import annotations

from pathlib import Path

from groundsill.cli.exits import DONE
from groundsill.cli.opening import study_of
from groundsill.cli.papers import write_all
from groundsill.cli.progress import busy
from groundsill.cli.speech import console, say_json
from groundsill.doors.answers import Written
from groundsill.doors.files import read_house
from groundsill.doors.house_answers import findings_told
from groundsill.findings import findings_of
from groundsill.papers.document import Document
from groundsill.papers.views.findings_view import findings_blocks, findings_report
from groundsill.papers.writers.terminal import print_document
from groundsill.papers.writers.typst import to_pdf

__all__ = ["PDF", "findings"]

PDF = "findings.pdf"


def findings(file: Path, out: Path | None, as_json: bool) -> int:
    """Print the findings of a house, or write them as a report.

    Raises:
        BadSurvey: one fault for each thing wrong with the file.
        CannotWrite: when the report cannot be written; nothing was changed.
    """
    house = read_house(file)
    found = findings_of(house)
    if out is not None:
        study = study_of(house, ranges=False)
        with busy("Setting the findings report"):
            pdf = to_pdf(findings_report(house, study, found))
        write_all(out, {PDF: pdf})
        told = Written((str(out / PDF),), {f.address: f.weight for f in found.findings})
        if as_json:
            say_json(told)
            return DONE
    elif as_json:
        say_json(findings_told(house, found))
        return DONE
    print_document(Document(f"{house.survey.name}: findings", findings_blocks(house, found), numbered=False), console())
    return DONE
