"""The commands and their options, and nothing else: each hands over to its own module, which is imported only then."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Final, Optional

import typer

from groundsill.working.version import VERSION

__all__ = ["COMMANDS", "app"]

COMMANDS: Final = (
    "demo", "new", "check", "hazard", "findings", "forces", "loadpath", "compare-editions", "papers", "formula",
)  # fmt: skip

app = typer.Typer(
    name="groundsill",
    help="From a crawlspace survey to checked strengthening of an old wood-framed house on an old foundation.",
    epilog=(
        "Exit codes: 0 done; 1 the verdict asked for is not 'passes'; 2 bad input, one numbered line for each fault. "
        "This assists and does not replace a licensed professional, the local code or the building official."
    ),
    rich_markup_mode=None,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["--help", "-h"], "max_content_width": 100},
)

House = Annotated[Path, typer.Argument(metavar="FILE", help="A house file: .json, or .zip with its photographs.")]
Json = Annotated[bool, typer.Option("--json", help="Give the answer as JSON on stdout.")]
# Typer reads these at run time, in Python 3.11's own words.
OptionalText = Optional[str]  # noqa: UP045
OptionalNumber = Optional[float]  # noqa: UP045
OptionalPath = Optional[Path]  # noqa: UP045


def _version(asked: bool) -> None:
    if asked:
        typer.echo(f"groundsill {VERSION}")
        raise typer.Exit


@app.callback()
def _whole(
    version: Annotated[
        bool, typer.Option("--version", callback=_version, is_eager=True, help="Print the version and stop.")
    ] = False,
) -> None:
    pass


@app.command(name="demo", short_help="Work out the sample houses and write their papers.")
def _demo(
    only: Annotated[
        OptionalText, typer.Argument(metavar="[HOUSE]", help="Only this sample, by its folder's name.")
    ] = None,
    out: Annotated[Path, typer.Option("--out", metavar="FOLDER", help="Folder to write into; made if need be.")] = Path(
        "demo"
    ),
    json: Json = False,
) -> int:
    """Work out the sample houses and write their calculation packages, to see what comes out."""
    from groundsill.cli.demo import demo

    return demo(out, only, json)


@app.command(name="new", short_help="Write a small house file to start from.")
def _new(
    file: Annotated[Path, typer.Argument(metavar="FILE", help="Where to write it.")] = Path("house.json"),
    name: Annotated[str, typer.Option("--name", metavar="NAME", help="What the house is called.")] = "New house",
    units: Annotated[str, typer.Option("--units", metavar="us|si", help="Units on screen and paper.")] = "us",
    force: Annotated[bool, typer.Option("--force", help="Replace a file that is there.")] = False,
    json: Json = False,
) -> int:
    """Write a small complete house file to start from; every figure in it is an example to be replaced."""
    from groundsill.cli.survey import new

    return new(file, name, units, force, json)


@app.command(name="check", short_help="Is a house file sound, and what does it lack?")
def _check(file: House, json: Json = False) -> int:
    """Is the house file sound, and what does a load path still need?"""
    from groundsill.cli.survey import check

    return check(file, json)


@app.command(name="hazard", short_help="The ground motion in the file; looked up only when told to.")
def _hazard(
    file: House,
    look_up: Annotated[
        bool, typer.Option("--look-up", help="Ask the public design-value service; nothing is asked without it.")
    ] = False,
    write: Annotated[
        bool, typer.Option("--write", help="Put what was found into the file, with date and source.")
    ] = False,
    edition: Annotated[
        OptionalText,
        typer.Option("--edition", metavar="EDITION", help="asce7-16 or asce7-22; else the one the house goes by."),
    ] = None,
    service: Annotated[
        OptionalText, typer.Option("--service", metavar="URL", help="Another address of the service to ask.")
    ] = None,
    timeout: Annotated[
        OptionalNumber, typer.Option("--timeout", metavar="SECONDS", help="How long to wait for it (20).")
    ] = None,
    json: Json = False,
) -> int:
    """The ground motion a house file holds and where it came from.

    With --look-up: what the public seismic design service of the U.S. Geological Survey answers for the latitude,
    longitude, risk category and site class in the file (nothing else is sent), and what that would change.
    """
    from groundsill.cli.hazard import Wanted, hazard

    return hazard(file, Wanted(look_up, service, edition, timeout, write), json)


@app.command(name="findings", short_help="What matters about the old foundation, and what does not.")
def _findings(
    file: House,
    out: Annotated[
        OptionalPath, typer.Option("--out", metavar="FOLDER", help="Also write the report findings.pdf there.")
    ] = None,
    json: Json = False,
) -> int:
    """What matters about the old foundation, what does not, what nobody can tell yet, and the least that helps."""
    from groundsill.cli.findings import findings

    return findings(file, out, json)


@app.command(name="forces", short_help="Weights, base shear, and the force of every line.")
def _forces(file: House, json: Json = False) -> int:
    """The code's earthquake force: weights, base shear, and the share of every line."""
    from groundsill.cli.forces import forces

    return forces(file, json)


@app.command(name="loadpath", short_help="Follow the force from floor to soil, link by link.")
def _loadpath(
    file: House,
    line: Annotated[
        OptionalText, typer.Option("--line", metavar="LINE", help="Only this line, by its mark (L3) or id.")
    ] = None,
    as_found: Annotated[bool, typer.Option("--as-found", help="The house as found (the default).")] = False,
    with_: Annotated[
        OptionalText,
        typer.Option("--with", metavar="ALTERNATIVE", help="With an alternative laid on it, by mark or id."),
    ] = None,
    working: Annotated[
        OptionalText, typer.Option("--working", metavar="ADDRESS", help="The working of one link, by its address.")
    ] = None,
    full: Annotated[
        bool, typer.Option("--full", help="Every link, with its address; not only those that decide.")
    ] = False,
    json: Json = False,
) -> int:
    """Follow the force link by link, from the floor to the soil, and name the weakest.

    Exit code 1 when the verdict (as found, or of the alternative asked for) is not 'passes'.
    """
    from groundsill.cli.loadpath import Asked, loadpath

    return loadpath(file, Asked(line, with_, as_found, working, full), json)


@app.command(name="compare-editions", short_help="The same house by other editions and choices.")
def _compare(file: House, json: Json = False) -> int:
    """The same house by ASCE 7-16 and 7-22, by full and reduced force, and by other bracing systems, in one table."""
    from groundsill.cli.compare import compare

    return compare(file, json)


@app.command(name="papers", short_help="Write the calculation package as a PDF.")
def _papers(
    file: House,
    out: Annotated[Path, typer.Option("--out", metavar="FOLDER", help="Folder to write into; made if need be.")],
    with_: Annotated[
        OptionalText,
        typer.Option(
            "--with", metavar="ALTERNATIVE", help="The design to show beside the house as found; left out, the first."
        ),
    ] = None,
    json: Json = False,
) -> int:
    """Write the calculation package: calculations.pdf and summary.json."""
    from groundsill.cli.papers import papers

    return papers(file, out, with_, json)


def _names(incomplete: str) -> list[str]:
    """Ids and trade names that begin so, for the shell's completion."""
    from groundsill.standards.catalogue import entries

    names = {name for entry in entries() for name in (entry.alias, entry.id) if name}
    return sorted(name for name in names if name.startswith(incomplete))


@app.command(name="formula", short_help="Look up and work out a published formula or table.")
def _formula(
    words: Annotated[
        Optional[list[str]],  # noqa: UP045
        typer.Argument(
            metavar="NAME [name=value]",
            hidden=True,
            autocompletion=_names,
        ),
    ] = None,
    code: Annotated[
        OptionalText,
        typer.Option("--code", metavar="CODE", help="Building code whose editions a trade name means, as ibc-2021."),
    ] = None,
    json: Json = False,
) -> int:
    """Look up any published formula or table in the program, and work it out with all steps.

    Without words: all of them, by document, with how each is known. NAME is a trade name (nds.sill-bolt), an id
    (nds-2018/12E), or words to look for. Values are written as you would say them: D=5/8in l_s=1.5in. A table takes
    row="..." and column=..., or at=... to read between its columns.
    """
    from groundsill.cli.formula import formula

    return formula(words or [], code, json)
