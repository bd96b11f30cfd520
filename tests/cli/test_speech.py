"""Letters the terminal has: spelled signs keep their columns and their meaning; no colour carries any."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from groundsill.cli.progress import busy
from groundsill.cli.speech import spell
from groundsill.papers.writers.shapes import SIGNS
from tests.cli.asking import ROOT, Asker


def groundsill(*words: str, **env: str) -> subprocess.CompletedProcess[bytes]:
    whole = {**os.environ, "PYTHONPATH": "src", "COLUMNS": "80", **env}
    command = [sys.executable, "-m", "groundsill", *words]
    return subprocess.run(command, cwd=ROOT, env=whole, capture_output=True, check=False)


@pytest.mark.parametrize(
    ("text", "spelled"),
    [
        ("ψ_ed,V ≤ 1.0", "psi_ed,V <= 1.0"),
        ("4 ≥ 3 · 1", "4 >= 3 * 1"),
        ("½ in. – 7′-6″", "1/2 in. - 7'-6\""),
        ("Peña", "Pena"),
        ("木", "[U+6728]"),
        ("plain", "plain"),
    ],
)
def test_signs_are_spelled_as_a_person_would_write_them(text: str, spelled: str) -> None:
    assert spell(text) == spelled


def test_every_verdict_keeps_a_letter_of_its_own() -> None:
    assert len({spell(sign) for sign in SIGNS.values()}) == len(SIGNS)


def test_a_sign_that_grows_takes_the_room_from_the_gap_behind_it() -> None:
    assert spell("θ          angle\nD          size") == "theta      angle\nD          size"
    assert spell("θ angle") == "theta angle"


def test_what_an_encoding_has_is_left_alone() -> None:
    assert spell("1 ÷ 2 · ½ ≤", "latin-1") == "1 ÷ 2 · ½ <="


def test_a_terminal_without_unicode_gets_the_whole_answer_in_ascii() -> None:
    done = groundsill("formula", "nds.sill-bolt", "D=5/8in", "l_s=1.5in", PYTHONIOENCODING="ascii")
    assert done.returncode == 0
    text = done.stdout.decode("ascii")
    assert "K_theta = 1 + 0.25 * theta / 90" in text
    assert "[U+" not in text


def test_the_load_path_reads_in_ascii_too(alder: Path) -> None:
    done = groundsill("loadpath", str(alder), "--line", "L1", PYTHONIOENCODING="ascii")
    assert done.returncode == 1
    text = done.stdout.decode("ascii")
    assert "X fails" in text
    assert "[U+" not in text


def test_nothing_is_coloured_and_no_color_keeps_the_words() -> None:
    shown = groundsill("formula", "sill", "bolt", FORCE_COLOR="1", TERM="xterm-256color").stdout.decode()
    assert "\x1b[1m" in shown  # bold there is
    assert not [code for code in range(30, 50) if f"\x1b[{code}m" in shown or f";{code}m" in shown]
    plain = groundsill("formula", "sill", "bolt").stdout.decode()
    assert "\x1b" not in plain
    bare = groundsill("formula", "sill", "bolt", FORCE_COLOR="1", NO_COLOR="1", TERM="xterm-256color").stdout.decode()
    assert "nds.sill-bolt" in bare


@pytest.mark.parametrize("width", ["60", "80", "120"])
def test_no_line_is_wider_than_the_terminal(
    ask: Asker, alder: Path, monkeypatch: pytest.MonkeyPatch, width: str
) -> None:
    monkeypatch.setenv("COLUMNS", width)
    for words in (("formula",), ("formula", "sill", "bolt"), ("loadpath", alder, "--full"), ("forces", alder)):
        lines = ask(*words).out.splitlines()
        assert max(len(line) for line in lines) <= int(width)
        assert not [line for line in lines if line != line.rstrip()]


def test_quick_work_says_nothing_and_long_work_says_what_it_is(capsys: pytest.CaptureFixture[str]) -> None:
    with busy("Setting the paper", patience_s=5) as report:
        report(1, 2)
    assert capsys.readouterr().err == ""
    with busy("Setting the paper", patience_s=0.01) as report:
        report(3, 8)
        time.sleep(0.1)
    captured = capsys.readouterr()
    assert (captured.out, captured.err) == ("", "Setting the paper ... (3 of 8 done)\n")


def test_a_bar_on_a_terminal_goes_away_at_the_end(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    monkeypatch.setenv("TERM", "xterm")
    with busy("Setting the paper", patience_s=0.01) as report:
        time.sleep(0.1)
        report(1, 2)
        time.sleep(0.2)
    shown = capsys.readouterr().err
    assert "Setting the paper" in shown
    assert shown.endswith(("\x1b[2K", "\x1b[2K\x1b[?25h", "\x1b[?25h\r\x1b[1A\x1b[2K"))


def test_a_progress_that_ends_badly_lets_the_fault_through() -> None:
    with pytest.raises(ValueError, match="no paper"), busy("Setting the paper", patience_s=0.01):
        raise ValueError("no paper")
