"""The player of pages itself: it runs what it should, and refuses what it cannot run with page and line."""

from __future__ import annotations

from pathlib import Path

import pytest

from docs.running import Fault, blocks_of, play, with_answers


def page(*lines: str) -> str:
    return "\n".join(lines) + "\n"


def test_a_house_is_made_changed_and_asked(tmp_path: Path) -> None:
    text = page(
        "```shell", "mkdir here", "cd here", 'groundsill new a.json --name "A house"', "```",
        "```json at=survey.underfloor.bolts", "{}", "```",
        "```shell", "groundsill check a.json  # the file is sound", "```",
        "```text answer", "old", "```",
        '```text answer "Nothing that"', "old", "old", "```",
    )  # fmt: skip
    found = play("x.md", text, tmp_path)
    assert found.house is not None
    assert found.house["survey"]["underfloor"]["bolts"] == {}
    whole, part = (answer for _, answer in found.answers)
    assert whole[0] == "A house: the file is sound"
    assert part == ("Nothing that a load path needs is missing.",)
    fresh = with_answers(text, found)
    assert fresh.splitlines()[-3:] == [
        '```text answer "Nothing that"', "Nothing that a load path needs is missing.", "```"
    ]  # fmt: skip
    assert "A house: the file is sound" in fresh
    assert "old" not in fresh


def test_an_answer_goes_from_its_words_to_the_next(tmp_path: Path) -> None:
    text = page(
        "```shell", "groundsill new a.json", "groundsill check a.json", "```",
        '```text answer "walls" "bolts"', "```", '```text answer "bolts" .', "```",
    )  # fmt: skip
    (_, first), (_, rest) = play("x.md", text, tmp_path).answers
    assert [line.split()[0] for line in first] == ["walls", "lines", "wall", "sill"]
    assert rest[0].startswith("bolts")
    assert rest[-1] == "Nothing that a load path needs is missing."


@pytest.mark.parametrize(
    ("lines", "why"),
    [
        (
            ("```shell", "groundsill check none.json", "```"),
            "x.md:2: groundsill check none.json: exit code 2, the page",
        ),
        (("```shell", "rm -r .", "```"), "x.md:2: rm -r .: only groundsill, mkdir and cd are run"),
        (("```json at=survey.name", '"x"', "```"), "x.md:1: there is no house file yet"),
        (("```json", "{1}", "```"), "x.md:1: not JSON: "),
        (("```json to=survey", "{}", "```"), "x.md:1: nobody knows what 'json to=survey' asks for"),
        (("```python run", "1", "```"), "x.md:1: nobody knows what 'python run' asks for"),
        (("```shell", "groundsill --version"), "line 1: the block is never closed"),
        (
            ("```shell", "groundsill --version", "```", "```text answer L9", "```"),
            "x.md:4: no line of the answer begins",
        ),
    ],
)
def test_what_cannot_be_played_is_named_with_its_line(lines: tuple[str, ...], why: str, tmp_path: Path) -> None:
    with pytest.raises(Fault) as refused:
        play("x.md", page(*lines), tmp_path)
    assert str(refused.value).startswith(why)


def test_a_block_inside_a_longer_fence_is_only_text() -> None:
    (only,) = blocks_of(page("````text", "```shell", "groundsill x", "```", "````"))
    assert only.words == ("text",)
    assert only.lines == ("```shell", "groundsill x", "```")
