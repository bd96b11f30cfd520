"""``groundsill papers`` and ``groundsill demo``: whole files or none."""

from __future__ import annotations

import json
from pathlib import Path

import pypdfium2
import pytest

from groundsill.cli import demo as sampler
from groundsill.cli import papers as packer
from groundsill.doors.files import write_bytes
from groundsill.working.errors import CannotWrite
from tests.cli.asking import Asker, validator


def text_of(path: Path) -> str:
    with pypdfium2.PdfDocument(path) as document:
        return " ".join(page.get_textpage().get_text_bounded() for page in document)


def test_papers_writes_the_package_and_its_summary(ask: Asker, alder: Path, tmp_path: Path) -> None:
    out = tmp_path / "papers" / "alder"
    said = ask("papers", alder, "--out", out, "--with", "A")
    assert said.code == 1  # the design does not pass, and the papers say so
    assert sorted(path.name for path in out.iterdir()) == ["calculations.pdf", "summary.json"]
    assert "calculations.pdf" in said.flat
    assert "L1 front" in said.flat
    summary = json.loads((out / "summary.json").read_text("utf-8"))
    validator().validate(summary)
    assert summary["answer"] == "summary"
    assert [run["key"] for run in summary["runs"]] == ["as-found", "strengthen"]
    assert summary["files"] == ["calculations.pdf", "summary.json"]
    text = text_of(out / "calculations.pdf")
    assert "7 Alder Street" in text
    assert "Calculations" in text


def test_the_same_house_gives_the_same_bytes(ask: Asker, alder: Path, tmp_path: Path) -> None:
    for name in ("one", "two"):
        ask("papers", alder, "--out", tmp_path / name)
    for file in ("calculations.pdf", "summary.json"):
        assert (tmp_path / "one" / file).read_bytes() == (tmp_path / "two" / file).read_bytes()


def test_papers_tell_machines_what_was_written(ask: Asker, alder: Path, tmp_path: Path) -> None:
    told = ask("papers", alder, "--out", tmp_path, "--with", "A", "--json").json
    assert told["answer"] == "written"
    assert told["files"] == [str(tmp_path / "calculations.pdf"), str(tmp_path / "summary.json")]
    assert "as-found/L1" in told["headlines"]
    assert "strengthen/L1" in told["headlines"]


def test_a_folder_that_cannot_be_made_is_a_line_and_nothing_is_written(ask: Asker, alder: Path, tmp_path: Path) -> None:
    (tmp_path / "file").write_text("here already")
    said = ask("papers", alder, "--out", tmp_path / "file" / "deeper")
    assert said.code == 2
    assert said.err.startswith(f"1. {tmp_path / 'file' / 'deeper'}: Not a directory; nothing was changed")
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def test_when_the_second_file_cannot_be_written_the_first_is_put_back(
    ask: Asker, alder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "calculations.pdf").write_bytes(b"last year's")

    def full_disk(path: Path, data: bytes) -> None:
        if path.name == "summary.json":
            raise CannotWrite(f"{path}: No space left on device; nothing was changed")
        write_bytes(path, data)

    monkeypatch.setattr(packer, "write_bytes", full_disk)
    said = ask("papers", alder, "--out", tmp_path)
    assert said.code == 2
    assert said.faults == [f"1. {tmp_path / 'summary.json'}: No space left on device; nothing was changed"]
    assert (tmp_path / "calculations.pdf").read_bytes() == b"last year's"
    assert [path.name for path in tmp_path.iterdir()] == ["calculations.pdf"]


def test_an_unknown_alternative_writes_nothing(ask: Asker, alder: Path, tmp_path: Path) -> None:
    said = ask("papers", alder, "--out", tmp_path / "out", "--with", "Z")
    assert said.code == 2
    assert not (tmp_path / "out").exists()


@pytest.mark.proof
def test_the_demo_works_out_every_sample(ask: Asker, tmp_path: Path) -> None:
    assert ask("demo", "--out", tmp_path / "demo").code == 0
    for sample in sampler.samples():
        assert (tmp_path / "demo" / sample.parent.name / "calculations.pdf").read_bytes().startswith(b"%PDF-")


def test_the_demo_is_done_whatever_the_verdict_of_its_house(ask: Asker, tmp_path: Path) -> None:
    said = ask("demo", "larch-street", "--out", tmp_path / "demo")
    assert said.code == 0
    made = tmp_path / "demo" / "larch-street"
    assert sorted(path.name for path in made.iterdir()) == ["calculations.pdf", "summary.json"]
    assert (made / "calculations.pdf").read_bytes().startswith(b"%PDF-")
    summary = json.loads((made / "summary.json").read_text("utf-8"))
    validator().validate(summary)
    assert "Larch Street, as found" in said.out
    for line in summary["runs"][0]["lines"]:
        if line["kind"] == "line":
            assert f"{line['mark']} {line['name']}: " in said.flat
    assert "safe" not in said.flat.lower()


def test_one_sample_is_worked_out_by_its_name_and_another_name_is_refused(ask: Asker, tmp_path: Path) -> None:
    assert [sample.parent.name for sample in sampler.chosen("quarry-lane")] == ["quarry-lane"]
    said = ask("demo", "elm-row", "--out", tmp_path / "demo")
    assert said.code == 2
    names = "ferry-hill, heron-walk, larch-street, quarry-lane"
    assert said.err == f"1. HOUSE: 'elm-row' is not allowed; the samples are {names}\n"
    assert not (tmp_path / "demo").exists()


def test_a_demo_without_samples_says_so(ask: Asker, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(sampler, "__file__", str(tmp_path / "a" / "b" / "c" / "d.py"))
    said = ask("demo", "--out", tmp_path / "demo")
    assert said.code == 2
    assert said.err.startswith("1. the sample houses are not there")
