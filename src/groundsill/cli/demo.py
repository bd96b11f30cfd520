"""``groundsill demo``: the sample houses worked out from their survey files to their calculation packages."""

from __future__ import annotations

from pathlib import Path

from groundsill.cli.exits import DONE
from groundsill.cli.opening import house_and_study
from groundsill.cli.papers import write_package, written_page, written_told
from groundsill.cli.speech import say_json, show
from groundsill.doors.answers import Written
from groundsill.working.errors import BadSurvey, CannotWrite, Fault

__all__ = ["demo", "samples"]


def samples() -> tuple[Path, ...]:
    """The house files of the samples: inside the package when it was installed, beside it in a clone.

    Raises:
        CannotWrite: when there are none.
    """
    package = Path(__file__).resolve().parents[1]
    for folder in (package / "samples", package.parents[1] / "samples"):
        found = tuple(sorted(folder.glob("*/house.json")))
        if found:
            return found
    raise CannotWrite("the sample houses are not there: neither in the installed package nor beside a clone's src")


def chosen(only: str | None) -> tuple[Path, ...]:
    """All the samples, or the one that is asked for by the name of its folder.

    Raises:
        BadSurvey: when there is no sample of that name.
    """
    found = samples()
    if only is None:
        return found
    named = tuple(sample for sample in found if sample.parent.name == only)
    if not named:
        names = ", ".join(sample.parent.name for sample in found)
        raise BadSurvey((Fault("HOUSE", repr(only), f"the samples are {names}"),))
    return named


def demo(out: Path, only: str | None, as_json: bool) -> int:
    """Work out every sample and write its package; done when all was produced, whatever the houses' verdicts.

    Raises:
        BadSurvey: when the one sample asked for is not there.
        CannotWrite: when a file cannot be written.
    """
    files: list[str] = []
    headlines: dict[str, str] = {}
    for sample in chosen(only):
        house, study = house_and_study(sample)
        written = write_package(house, study, out / sample.parent.name)
        told = written_told(study, written)
        files += told.files
        headlines |= {f"{sample.parent.name}/{key}": said for key, said in told.headlines.items()}
        if not as_json:
            show(written_page(study, written))
    if as_json:
        say_json(Written(tuple(files), headlines))
    return DONE
