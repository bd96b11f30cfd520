"""How a command ends: exit codes, numbered lines, and never a traceback."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import time
from pathlib import Path

import pytest

from groundsill.cli import commands
from groundsill.cli import run as harness
from groundsill.working.errors import BadSurvey, CannotWrite, Fault
from groundsill.working.version import VERSION
from tests.cli.asking import ROOT, Asker

HEAVY = (
    "pydantic",
    "rich",
    "typst",
    "groundsill.study",
    "groundsill.standards",
    "groundsill.house",
    "groundsill.doors",
)


def python(*words: str, **env: str) -> subprocess.CompletedProcess[str]:
    """A command in a process of its own."""
    whole = {**os.environ, "PYTHONPATH": "src", "COLUMNS": "80", **env}
    return subprocess.run([sys.executable, *words], cwd=ROOT, env=whole, capture_output=True, text=True, check=False)


def failing(monkeypatch: pytest.MonkeyPatch, error: BaseException) -> None:
    """Make every command end in this way."""

    def fail(argv: object) -> int:
        raise error

    monkeypatch.setattr(harness, "_dispatch", fail)


def test_help_lists_every_command_and_the_exit_codes(ask: Asker) -> None:
    said = ask("--help")
    assert said.code == 0
    for name in commands.COMMANDS:
        assert re.search(rf"^  {name} +\w", said.out, re.MULTILINE), name
    assert "Exit codes: 0 done; 1 the verdict asked for is not 'passes'; 2 bad input" in said.flat
    assert "does not replace a licensed professional" in said.flat


def test_no_words_at_all_show_the_help(ask: Asker) -> None:
    assert ask() == ask("--help")


@pytest.mark.parametrize("name", commands.COMMANDS)
def test_each_command_explains_itself_and_knows_json(ask: Asker, name: str) -> None:
    said = ask(name, "--help")
    assert said.code == 0
    assert "--json" in said.out
    assert said.out.isascii()  # a help page must stand on any terminal


def test_the_version_is_the_programs_own(ask: Asker) -> None:
    assert ask("--version").out == f"groundsill {VERSION}\n"
    done = python("-m", "groundsill", "--version")
    assert (done.returncode, done.stdout) == (0, f"groundsill {VERSION}\n")


def test_help_imports_nothing_heavy() -> None:
    code = (
        "import sys; from groundsill.cli.run import run; assert run(['--help']) == 0; "
        f"print([m for m in sys.modules if m in {HEAVY!r}], file=sys.stderr)"
    )
    assert python("-c", code).stderr == "[]\n"


def test_help_is_there_in_three_tenths_of_a_second() -> None:
    taken = []
    for _ in range(5):
        start = time.perf_counter()
        assert python("-m", "groundsill", "--help").returncode == 0
        taken.append(time.perf_counter() - start)
    assert min(taken) < 0.3, taken


def test_a_wrong_word_on_the_command_line_is_one_numbered_line(ask: Asker) -> None:
    said = ask("chek", "house.json")
    assert (said.code, said.out) == (2, "")
    assert said.err == (
        "1. command line: no such command 'chek'. Did you mean 'check'?; groundsill --help says what may be written\n"
    )


def test_a_wrong_option_names_the_commands_own_help(ask: Asker) -> None:
    said = ask("forces", "house.json", "--jsn")
    assert said.code == 2
    assert said.err.startswith("1. command line: no such option: --jsn")
    assert "groundsill forces --help" in said.err
    assert ask("papers", "house.json").err.startswith("1. command line: missing option '--out'")


def test_json_gives_the_same_list_as_the_lines(ask: Asker, tmp_path: Path) -> None:
    said = ask("check", tmp_path / "nowhere.json", "--json")
    assert said.code == 2
    told = said.json
    assert (told["format"], told["answer"], told["more"]) == ("groundsill.study/1", "faults", 0)
    assert [f"{n}. {fault['line']}" for n, fault in enumerate(told["faults"], start=1)] == said.faults
    assert told["faults"][0]["path"] == str(tmp_path / "nowhere.json")


def test_a_complaint_about_the_command_line_is_json_too(ask: Asker) -> None:
    said = ask("check", "--json")
    assert said.code == 2
    assert [f"1. {said.json['faults'][0]['line']}"] == said.faults


def test_fifty_faults_are_shown_and_the_rest_counted(ask: Asker, monkeypatch: pytest.MonkeyPatch) -> None:
    faults = tuple(Fault(f"survey.x{n}", "nothing", "a number") for n in range(1, 64))
    failing(monkeypatch, BadSurvey(faults))
    said = ask("check", "house.json", "--json")
    assert len(said.faults) == 51
    assert said.faults[49] == "50. survey.x50: nothing is not allowed; a number"
    assert said.faults[50] == "... and 13 more"
    assert (len(said.json["faults"]), said.json["more"]) == (50, 13)


def test_a_refusal_that_is_no_list_is_one_numbered_line(ask: Asker, monkeypatch: pytest.MonkeyPatch) -> None:
    failing(monkeypatch, CannotWrite("out: No space left on device; nothing was changed"))
    said = ask("papers", "--json")
    assert said.code == 2
    assert said.faults == ["1. out: No space left on device; nothing was changed"]
    assert said.json["faults"][0]["line"] == "out: No space left on device; nothing was changed"


def test_a_fault_of_the_program_is_one_line_that_asks_to_be_reported(
    ask: Asker, monkeypatch: pytest.MonkeyPatch
) -> None:
    failing(monkeypatch, KeyError("no\nsuch line"))
    said = ask("check", "house.json")
    assert (said.code, said.out) == (3, "")
    assert said.err.count("\n") == 1
    assert said.err.startswith("groundsill met a fault of its own (KeyError at test_run.py:")
    assert "Please report it" in said.err
    assert "GROUNDSILL_DEBUG=1" in said.err


def test_whoever_mends_the_program_gets_the_traceback(ask: Asker, monkeypatch: pytest.MonkeyPatch) -> None:
    failing(monkeypatch, ZeroDivisionError("a"))
    monkeypatch.setenv("GROUNDSILL_DEBUG", "1")
    said = ask("check", "house.json")
    assert said.code == 3
    assert "Traceback (most recent call last)" in said.err


def test_an_interrupt_is_told_in_a_line(ask: Asker, monkeypatch: pytest.MonkeyPatch) -> None:
    failing(monkeypatch, KeyboardInterrupt())
    said = ask("papers", "house.json")
    assert (said.code, said.err) == (130, "interrupted; nothing was left half-written\n")


def test_a_reader_who_goes_away_ends_it_quietly() -> None:
    command = f"{sys.executable} -m groundsill formula; echo code $? >&2"
    done = subprocess.run(
        ["bash", "-c", f"({command}) | head -1"],
        cwd=ROOT,
        env={**os.environ, "PYTHONPATH": "src", "PYTHONUNBUFFERED": "1"},
        capture_output=True,
        text=True,
        check=False,
    )
    assert len(done.stdout.splitlines()) == 1
    assert done.stderr == "code 141\n"


def test_control_codes_in_a_file_name_do_not_reach_the_terminal(ask: Asker, tmp_path: Path) -> None:
    said = ask("check", tmp_path / "a\x1b[2Jb.json")
    assert said.code == 2
    assert "\x1b" not in said.err
    assert "a[U+001B][2Jb.json" in said.err


def test_json_is_ascii_where_the_terminal_is_not_unicode() -> None:
    done = python("-m", "groundsill", "formula", "nds-2018/12.3.1B-K-theta", "--json", PYTHONIOENCODING="ascii")
    assert done.returncode == 0
    assert done.stdout.isascii()
    assert json.loads(done.stdout)["arguments"][0]["symbol"] == "θ"
