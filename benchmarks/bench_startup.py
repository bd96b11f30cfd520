"""How long a person waits before the first word: a new interpreter, with and without the program."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from functools import partial

from benchmarks.timing import Row, seconds_for

EMPTY = ("-c", "pass")
LAUNCHES = (
    ("import groundsill", ("-c", "import groundsill"), ""),
    ("import the engine's load path", ("-c", "import groundsill.loadpath"), ""),
    ("groundsill --help", ("-c", "from groundsill.cli import main; main()", "--help"), "aim: under 300 ms"),
)


def rows() -> Iterator[Row]:
    """Each launch against an interpreter that does nothing."""
    empty = seconds_for(partial(_launch, EMPTY))
    yield Row("an interpreter that does nothing", empty)
    for what, arguments, aim in LAUNCHES:
        yield Row(what, seconds_for(partial(_launch, arguments)), "an empty interpreter", empty, aim)


def _launch(arguments: tuple[str, ...]) -> None:
    subprocess.run([sys.executable, *arguments], check=True, stdout=subprocess.DEVNULL)
