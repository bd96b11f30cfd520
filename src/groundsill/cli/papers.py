"""``groundsill papers``: the calculation package of a house as a PDF, and its summary for machines."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from groundsill.cli.exits import DONE, NOT_PASSED
from groundsill.cli.layout import facts, faint, lines, strong, unbroken, verdict, words
from groundsill.cli.loadpath import run_asked
from groundsill.cli.opening import house_and_study
from groundsill.cli.progress import busy
from groundsill.cli.speech import say_json, show
from groundsill.doors.answers import Written, to_map
from groundsill.doors.files import write_bytes
from groundsill.doors.house_answers import summary_of
from groundsill.doors.plain import text_of
from groundsill.papers.views.calculations import calculation_package
from groundsill.papers.views.words import sentence
from groundsill.papers.writers.typst import to_pdf
from groundsill.study import Study, working
from groundsill.working.errors import CannotWrite

if TYPE_CHECKING:
    from rich.console import RenderableType

    from groundsill.work.document import House

__all__ = ["PDF", "SUMMARY", "papers", "write_all", "write_package", "written_page", "written_told"]

PDF = "calculations.pdf"
SUMMARY = "summary.json"


def papers(file: Path, out: Path, alternative: str | None, as_json: bool) -> int:
    """Write the package; the exit code tells whether the state asked for *passes*.

    Raises:
        BadSurvey: one fault for each thing wrong with the file or with what was asked for.
        CannotWrite: when a file cannot be written; nothing was changed.
    """
    house, study = house_and_study(file)
    asked = run_asked(study, house, alternative)
    if alternative is not None:
        study = replace(study, runs=(study.runs[0], asked))
    written = write_package(house, study, out)
    if as_json:
        say_json(written_told(study, written))
    else:
        show(written_page(study, written))
    return DONE if asked.verdict == "passes" else NOT_PASSED


def write_package(house: House, study: Study, out: Path) -> tuple[Path, ...]:
    """Make both files, and write them once both are whole.

    Raises:
        CannotWrite: nothing was changed.
    """
    with busy("Setting the calculation package"):
        sheets = {run.key: working(house, run.key) for run in study.runs}
        pdf = to_pdf(calculation_package(house, study, sheets))
    summary = text_of(to_map(summary_of(study, (PDF, SUMMARY)))).encode()
    write_all(out, {PDF: pdf, SUMMARY: summary})
    return (out / PDF, out / SUMMARY)


def write_all(out: Path, made: Mapping[str, bytes]) -> None:
    """Write several files of one folder; when one cannot be written, those before it are put back as they were."""
    try:
        out.mkdir(parents=True, exist_ok=True)
    except OSError as fault:
        raise CannotWrite(f"{out}: {fault.strerror or fault}; nothing was changed") from fault
    before: dict[Path, bytes | None] = {}
    for name, data in made.items():
        path = out / name
        try:
            old = path.read_bytes() if path.is_file() else None
            write_bytes(path, data)
        except (CannotWrite, OSError) as fault:
            for done, content in before.items():
                _put_back(done, content)
            said = (
                str(fault)
                if isinstance(fault, CannotWrite)
                else f"{path}: {fault.strerror or fault}; nothing was changed"
            )
            raise CannotWrite(said) from fault
        before[path] = old


def _put_back(path: Path, content: bytes | None) -> None:
    with contextlib.suppress(OSError, CannotWrite):
        if content is None:
            path.unlink(missing_ok=True)
        else:
            write_bytes(path, content)


def written_told(study: Study, written: tuple[Path, ...]) -> Written:
    """What was written, and the headline of every line as found and with each alternative."""
    headlines = {
        f"{run.key}/{chain.mark}": chain.headline for run in study.runs for chain in (*run.chains, *run.bodies)
    }
    return Written(tuple(str(path) for path in written), headlines)


def written_page(study: Study, written: tuple[Path, ...]) -> Iterator[RenderableType]:
    """What was made, and the headline of each line in each state."""
    for run in study.runs:
        yield facts(((f"{study.name}, {run.name}", verdict(run.verdict), ""),))
        yield lines((words(f"{c.mark} {c.name}: {sentence(c.headline)}") for c in run.chains), " ")
        yield ""
    yield strong("Written")
    for path in written:
        yield unbroken(f"- {path} ({path.stat().st_size / 1000:,.0f} kB)")
    yield faint(
        "An aid, not a licensed professional's work. Read its warnings and its marks of doubt before its figures."
    )
