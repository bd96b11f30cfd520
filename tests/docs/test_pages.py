"""Every page under docs/: its commands run and come to what it says, and its answers are what the program says now."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest

from docs.running import HERE, Block, Played, blocks_of, pages, play
from groundsill.doors.decode import decode
from groundsill.work.checks import check_house
from tests.architecture.reading import hold

PAGES = dict(pages())
KINDS = {"shell", "json", "text", "toml", ""}


@pytest.mark.parametrize("name", sorted(PAGES))
def test_commands_run_and_answers_are_current(name: str, tmp_path: Path) -> None:
    found = play(name, PAGES[name].read_text("utf-8"), tmp_path)
    hold(stale(name, found))
    if found.house is not None:
        left = [fault.line() for fault in check_house(decode(json.dumps(found.house)))]
        assert left == [], f"the house file that {name} ends with has faults"
    if name == "tutorial.md":
        kept = json.loads((HERE / "examples" / "net-loft-lane.json").read_text("utf-8"))
        assert kept == found.house, "the how-to pages begin with another house; run `make docs`"
        written = {path.name for path in (tmp_path / "net-loft-lane" / "papers").iterdir()}
        assert written == {"calculations.pdf", "summary.json"}


def stale(name: str, found: Played) -> Iterator[str]:
    """Answers that differ from what the program says now, each with its first line that differs."""
    for block, now in found.answers:
        if block.lines != now:
            pairs = enumerate(zip(block.lines, now, strict=False))
            first = next((n for n, (a, b) in pairs if a != b), min(len(block.lines), len(now)))
            where = f"docs/{name}:{block.line + first}"
            yield f"{where}: the answer is another now; run `make docs` and read the page again"


@pytest.mark.parametrize("name", sorted(PAGES))
def test_every_block_says_what_it_is(name: str) -> None:
    blocks = blocks_of(PAGES[name].read_text("utf-8"))
    assert [b.words for b in blocks if (b.words[:1] or ("",))[0] not in KINDS] == []
    unseen = [b.line for b in blocks if b.words[:1] in (("text",), ()) and "groundsill " in b.text.split("\n")[0][:12]]
    assert unseen == [], "a command stands in a block that is not run"


def test_a_stale_answer_is_named_with_its_line() -> None:
    block = Block(("text", "answer"), 7, ("one", "two"))
    assert list(stale("how-to/x.md", Played(((block, ("one", "three")),), (), None))) == [
        "docs/how-to/x.md:8: the answer is another now; run `make docs` and read the page again"
    ]
    assert list(stale("x.md", Played(((block, ("one", "two")),), (), None))) == []


def test_every_command_stands_on_a_page() -> None:
    """A command that no page shows is one that nobody finds."""
    from groundsill.cli.commands import COMMANDS

    shown = "\n".join(path.read_text("utf-8") for path in PAGES.values())
    assert [name for name in COMMANDS if f"groundsill {name}" not in shown] == []


def test_every_page_is_reached_from_the_first() -> None:
    first = (HERE / "README.md").read_text("utf-8")
    assert [name for name in PAGES if name != "README.md" and f"]({name})" not in first] == []
