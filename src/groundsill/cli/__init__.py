"""The commands a person types: thin, each one reads a house file, calls the rooms below and prints the answer.

Exit code 0: done. 1: the verdict asked for is not *passes*. 2: bad input, one numbered line for each fault on stderr
and nothing written. 3: a fault of the program itself, told in one line. ``--json`` gives machines what the tables give
people. Heavy libraries are imported late, so that ``groundsill --help`` feels instant. Nothing is computed here.
"""

from __future__ import annotations

__all__ = ["main"]


def main() -> None:
    """Run the command line and leave with its exit code."""
    import sys

    from groundsill.cli.run import run

    sys.exit(run(sys.argv[1:]))
