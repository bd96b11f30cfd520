"""Runs one command line and turns every way it can end into an exit code; no traceback ever reaches a person.

0 done; 1 the verdict asked for is not *passes*; 2 bad input, one numbered line for each fault; 3 a fault of this
program, told in one line (``GROUNDSILL_DEBUG=1`` shows where); 130 interrupted; 141 the reader of a pipe went away.
"""

from __future__ import annotations

import os
import sys
import traceback
from collections.abc import Sequence
from pathlib import Path

from groundsill.cli.exits import BAD_INPUT, DONE, INTERRUPTED, OWN_FAULT, PIPE_CLOSED
from groundsill.cli.speech import ReaderGone, complain, say_json
from groundsill.working.errors import BadSurvey, GroundsillError, numbered

__all__ = ["BadCommand", "run"]


class BadCommand(GroundsillError):
    """The command line itself cannot be understood; the message says why and where to look."""


def run(argv: Sequence[str]) -> int:
    """Run a command line (without the program's name) and give its exit code."""
    wants_json = "--json" in argv
    try:
        code = _dispatch(argv)
        sys.stdout.flush()
        return code
    except GroundsillError as refused:
        return _refuse(refused, wants_json)
    except KeyboardInterrupt:
        complain(["interrupted; nothing was left half-written"])
        return INTERRUPTED
    except (BrokenPipeError, ReaderGone):
        _let_go_of_stdout()
        return PIPE_CLOSED
    except Exception as fault:
        return _own_fault(fault)


def _dispatch(argv: Sequence[str]) -> int:
    """Hand the words to Typer; its complaints become faults like any other."""
    import typer

    from groundsill.cli.commands import app

    # the base of every complaint about the command line, wherever this Typer keeps it
    kinds = [cls for cls in typer.BadParameter.__mro__ if cls.__name__ == "ClickException"]
    complaint: type[BaseException] = kinds[0] if kinds else typer.BadParameter
    command = typer.main.get_command(app)
    try:
        code = command.main(args=list(argv) or ["--help"], prog_name="groundsill", standalone_mode=False)
    except complaint as fault:
        raise BadCommand(_complaint_in_words(fault, argv)) from None
    if code == INTERRUPTED:  # Typer has swallowed the interrupt
        raise KeyboardInterrupt
    return code if isinstance(code, int) else DONE


def _complaint_in_words(fault: BaseException, argv: Sequence[str]) -> str:
    """What is wrong with the command line itself, and where to look."""
    from groundsill.cli.commands import COMMANDS

    said = str(getattr(fault, "format_message", lambda: fault)()).strip().rstrip(".")
    command = next((word for word in argv if word in COMMANDS), "")
    shown = f"groundsill {command} --help" if command else "groundsill --help"
    return f"command line: {said[:1].lower()}{said[1:]}; {shown} says what may be written"


def _refuse(refused: GroundsillError, wants_json: bool) -> int:
    """Bad input: the numbered lines on stderr, and with ``--json`` the same list on stdout."""
    from groundsill.doors.answers import faults_answer

    faults = refused.faults if isinstance(refused, BadSurvey) else ()
    lines = numbered(faults) if faults else (f"1. {refused}",)
    complain(lines)
    if wants_json:
        say_json(faults_answer(refused))
        sys.stdout.flush()
    return BAD_INPUT


def _own_fault(fault: Exception) -> int:
    """Something nobody foresaw: one line, or the traceback when it is asked for."""
    if os.environ.get("GROUNDSILL_DEBUG"):
        traceback.print_exc()
        return OWN_FAULT
    last = traceback.extract_tb(fault.__traceback__)[-1]
    where = f"{Path(last.filename).name}:{last.lineno}"
    said = " ".join(str(fault).split())[:200]
    complain(
        [
            f"groundsill met a fault of its own ({type(fault).__name__} at {where}: {said}). Nothing was left "
            "half-written. Please report it with the command and, if you can, the file; GROUNDSILL_DEBUG=1 shows where."
        ]
    )
    return OWN_FAULT


def _let_go_of_stdout() -> None:
    """Whoever read the answer has gone; say no more, and let Python close in peace."""
    quiet = os.open(os.devnull, os.O_WRONLY)
    os.dup2(quiet, sys.stdout.fileno())
