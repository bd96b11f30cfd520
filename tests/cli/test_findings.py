"""``groundsill findings`` on screen, as JSON and as a report."""

from __future__ import annotations

from pathlib import Path

from groundsill.doors.files import write_house
from tests.cli.asking import Asker, validator
from tests.findings.cracked import HARMLESS, cracked


def test_the_plain_page_comes_first_and_names_the_least_that_works(ask: Asker, tmp_path: Path) -> None:
    write_house(tmp_path / "h.json", cracked(**HARMLESS))
    said = ask("findings", tmp_path / "h.json")
    assert said.code == 0
    short, each = said.out.index("In short"), said.out.index("Each finding")
    assert short < said.out.index("What does not matter (") < each
    assert "First: Leave it alone." in said.flat
    assert "safe" not in said.out.lower()


def test_json_holds_every_reason_with_its_source(ask: Asker, tmp_path: Path) -> None:
    write_house(tmp_path / "h.json", cracked())
    said = ask("findings", tmp_path / "h.json", "--json")
    assert said.code == 0
    validator().validate(said.json)
    (found,) = [f for f in said.json["findings"] if f["address"] == "finding/crack/crack-1"]
    assert found["earthquake"]["weight"] == "cannot tell"
    assert all(reason["source"] for reason in found["earthquake"]["reasons"])


def test_a_spoiled_file_is_answered_line_by_line(ask: Asker, tmp_path: Path) -> None:
    path = tmp_path / "h.json"
    path.write_text('{"format": "groundsill.house/1"}', encoding="utf-8")
    said = ask("findings", path)
    assert said.code == 2
    assert said.err.startswith("1. ")


def test_the_report_is_written_beside_it(ask: Asker, tmp_path: Path) -> None:
    write_house(tmp_path / "h.json", cracked(**HARMLESS))
    said = ask("findings", tmp_path / "h.json", "--out", tmp_path / "out", "--json")
    assert said.code == 0
    assert (tmp_path / "out" / "findings.pdf").read_bytes().startswith(b"%PDF")
    assert said.json["headlines"]["finding/crack/crack-1"] == "does not matter"
    assert "finding/unseen/next" in said.json["headlines"]
