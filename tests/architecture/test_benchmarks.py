"""Every benchmark says what a person waits for, and the report reads as meant."""

from __future__ import annotations

import importlib
import inspect

import pytest

from benchmarks.__main__ import main
from benchmarks.timing import Row, readable, seconds_for
from tests.architecture.reading import ROOT

NAMES = sorted(p.stem for p in (ROOT / "benchmarks").glob("bench_*.py"))


@pytest.mark.parametrize("name", NAMES)
def test_a_benchmark_has_a_title_and_rows(name: str) -> None:
    module = importlib.import_module(f"benchmarks.{name}")
    assert (module.__doc__ or "").splitlines()[0].endswith(".")
    assert inspect.isgeneratorfunction(module.rows), f"benchmarks/{name}.py: rows() yields Row"


def test_a_word_that_fits_no_benchmark_is_answered_with_their_names(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["no-such-thing"]) == 1
    assert capsys.readouterr().err == f"no benchmark is called no-such-thing; there are: {', '.join(NAMES)}\n"


def test_a_row_shows_time_ratio_and_aim() -> None:
    row = Row("the equation, no sheet open", 1.5e-6, "the body", 0.5e-6, "aim: about 1 us")
    assert " ".join(row.line().split()) == "the equation, no sheet open 1.5 us 3.00 x the body aim: about 1 us"
    assert Row("alone", 0.25).line().split() == ["alone", "250", "ms"]


def test_times_are_shown_in_the_unit_a_reader_expects() -> None:
    assert [readable(s) for s in (2.4, 0.0183, 1.25e-6, 42e-9)] == ["2.4 s", "18.3 ms", "1.25 us", "42 ns"]


def test_a_longer_run_takes_longer() -> None:
    assert seconds_for(lambda: sum(range(20_000)), rounds=2) > 5 * seconds_for(lambda: sum(range(200)), rounds=2)
