"""Runs what the pages show: commands, pieces of a house file, and the answers that stand under them.

A page is read from top to bottom in a folder of its own. Its fenced blocks say by the words after the fence what they
are:

- ``shell``: commands, one a line: ``groundsill ...``, ``mkdir NAME`` or ``cd NAME``. A comment ``# exit code 2`` says
  what the command comes to; without one it is 0.
- ``json at=PATH``: what is put at that path of the page's house file (``survey.site``), in place of what stood there.
  ``json`` alone must be JSON, and no more is asked of it.
- ``text answer``: what the last command printed, whole. ``text answer FROM``: the paragraph whose first line begins
  with those words. ``text answer FROM TO``: from there to the line before the one that begins with TO, or to the end
  for ``.``. ``FROM`` and ``TO`` stand in quotes where they are several words.
- anything else (``text``, ``toml``) is only to be looked at.

A comment ``<!-- begins with: NAME -->`` puts a copy of ``docs/NAME`` into the folder first, as ``house.json``.
"""

from __future__ import annotations

import contextlib
import io
import json
import os
import re
import shlex
import shutil
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

__all__ = ["HERE", "Block", "Fault", "Played", "blocks_of", "pages", "play", "with_answers"]

HERE = Path(__file__).resolve().parent
_FENCE = re.compile(r"^(?P<tick>`{3,})(?P<info>[^`]*)$")
_BEGINS = re.compile(r"<!-- begins with: (\S+) -->")
_COMES_TO = re.compile(r"\s+#\s*exit code (\d+)\s*$")
_FAULT = re.compile(r"\d+\. |\.\.\. and ")


class Fault(Exception):
    """What a page shows and what happens differ; the message names page and line."""


@dataclass(frozen=True, slots=True)
class Block:
    """A fenced block: the words after its fence, the number of its first line inside, and those lines."""

    words: tuple[str, ...]
    line: int
    lines: tuple[str, ...]

    @property
    def text(self) -> str:
        """The lines as one text."""
        return "\n".join(self.lines)


@dataclass(frozen=True, slots=True)
class Played:
    """What came of a page: each answer as it would stand now, by the block it stands in; the commands; the house."""

    answers: tuple[tuple[Block, tuple[str, ...]], ...]
    commands: tuple[str, ...]
    house: dict[str, Any] | None


@dataclass(slots=True)
class _Stage:
    """The folder a page is played in, the house file in it, and what the last command said."""

    page: str
    folder: Path
    file: Path | None = None
    said: tuple[str, ...] = ()
    answers: list[tuple[Block, tuple[str, ...]]] = field(default_factory=list)
    commands: list[str] = field(default_factory=list)


def blocks_of(text: str) -> tuple[Block, ...]:
    """The fenced blocks of a page, in order."""
    found: list[Block] = []
    opened: Block | None = None
    tick, inside = "", []
    for number, line in enumerate(text.splitlines(), start=1):
        fence = _FENCE.match(line)
        if opened is None and fence:
            opened, tick, inside = Block(tuple(shlex.split(fence["info"])), number + 1, ()), fence["tick"], []
        elif opened is not None and line == tick:
            found.append(replace(opened, lines=tuple(inside)))
            opened = None
        elif opened is not None:
            inside.append(line)
    if opened is not None:
        raise Fault(f"line {opened.line - 1}: the block is never closed")
    return tuple(found)


def play(name: str, text: str, folder: Path) -> Played:
    """Do what a page shows, in an empty folder.

    Args:
        name: the page, for messages.
        text: the page itself.
        folder: where to play it; the process goes there and comes back.

    Raises:
        Fault: a command that cannot be run or comes to another exit code, JSON that is none, an answer not to be found.
    """
    stage = _Stage(name, folder)
    if begins := _BEGINS.search(text):
        stage.file = folder / "house.json"
        shutil.copyfile(HERE / begins[1], stage.file)
    with contextlib.chdir(folder):
        for block in blocks_of(text):
            _do(stage, block)
    house = json.loads(stage.file.read_text("utf-8")) if stage.file else None
    return Played(tuple(stage.answers), tuple(stage.commands), house)


def with_answers(text: str, played: Played) -> str:
    """The page with every answer as it would stand now."""
    lines = text.splitlines()
    for block, answer in reversed(played.answers):
        lines[block.line - 1 : block.line - 1 + len(block.lines)] = answer
    return "\n".join(lines) + "\n"


def _do(stage: _Stage, block: Block) -> None:
    kind, rest = block.words[0] if block.words else "", block.words[1:]
    if kind == "shell":
        for offset, line in enumerate(block.lines):
            _command(stage, line, block.line + offset)
    elif kind == "json":
        _json(stage, block, rest)
    elif kind == "text" and rest[:1] == ("answer",):
        stage.answers.append((block, _cut(stage, block, rest[1:])))
    elif rest:
        raise Fault(f"{stage.page}:{block.line - 1}: nobody knows what {' '.join(block.words)!r} asks for")


# ---- Commands -------------------------------------------------------------------------------------------------------


def _command(stage: _Stage, line: str, number: int) -> None:
    comes_to = _COMES_TO.search(line)
    words = shlex.split(line, comments=True)
    if not words:
        return
    stage.commands.append(line)
    if words[0] == "mkdir" and len(words) == 2:
        Path(words[1]).mkdir()
    elif words[0] == "cd" and len(words) == 2:
        os.chdir(words[1])
    elif words[0] == "groundsill":
        code, stage.said = _groundsill(words[1:])
        expected = int(comes_to[1]) if comes_to else 0
        if code != expected:
            said = "\n".join(stage.said)
            raise Fault(f"{stage.page}:{number}: {line.strip()}: exit code {code}, the page says {expected}\n{said}")
        if words[1:2] == ["new"]:
            stage.file = Path.cwd() / next(word for word in words[2:] if word.endswith(".json"))
    else:
        raise Fault(f"{stage.page}:{number}: {line.strip()}: only groundsill, mkdir and cd are run")


def _groundsill(words: list[str]) -> tuple[int, tuple[str, ...]]:
    """Exit code, and the lines a person sees at 80 columns: what was printed, else the numbered faults."""
    from groundsill.cli.run import run

    out, err = io.StringIO(), io.StringIO()
    before = {name: os.environ.get(name) for name in ("COLUMNS", "NO_COLOR")}
    os.environ.update({"COLUMNS": "80", "NO_COLOR": "1"})
    try:
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            code = run(words)
    finally:
        for name, value in before.items():
            os.environ.pop(name)
            if value is not None:
                os.environ[name] = value
    printed = [line.rstrip() for line in out.getvalue().splitlines()]
    faults = [line.rstrip() for line in err.getvalue().splitlines() if _FAULT.match(line)]
    return code, tuple(printed or faults)


def _cut(stage: _Stage, block: Block, ends: tuple[str, ...]) -> tuple[str, ...]:
    """The lines of the last answer that a block shows."""
    lines = list(stage.said)
    if ends:
        first = _begins(lines, ends[0], 0)
        if ends[1:] == (".",):
            last = len(lines)
        else:
            last = _begins(lines, ends[1], first + 1) if len(ends) > 1 else _begins([*lines, ""], "", first)
        if first < 0 or last < 0:
            what = ends[0] if first < 0 else ends[1]
            said = "\n".join(stage.said)
            raise Fault(f"{stage.page}:{block.line - 1}: no line of the answer begins with {what!r}:\n{said}")
        lines = lines[first:last]
    while lines and not lines[-1]:
        lines.pop()
    while lines and not lines[0]:
        lines.pop(0)
    return tuple(lines)


def _begins(lines: list[str], words: str, start: int) -> int:
    """The place of the first line that begins with these words (of an empty line for none), or -1."""
    places = range(max(start, 0), len(lines))
    return next((n for n in places if (lines[n].strip().startswith(words) if words else not lines[n].strip())), -1)


# ---- Pieces of a house file -----------------------------------------------------------------------------------------


def _json(stage: _Stage, block: Block, rest: tuple[str, ...]) -> None:
    where = f"{stage.page}:{block.line - 1}"
    try:
        piece = json.loads(block.text)
    except ValueError as wrong:
        raise Fault(f"{where}: not JSON: {wrong}") from None
    if not rest:
        return
    key, _, path = rest[0].partition("=")
    if len(rest) > 1 or key != "at" or not path:
        raise Fault(f"{where}: nobody knows what {' '.join(block.words)!r} asks for")
    if stage.file is None:
        raise Fault(f"{where}: there is no house file yet")
    raw = json.loads(stage.file.read_text("utf-8"))
    _put(raw, path.split("."), piece)
    stage.file.write_text(json.dumps(raw, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")


def _put(raw: dict[str, Any], way: list[str], piece: object) -> None:
    """Put a piece at its place, and make the objects on the way to it where they are not there yet."""
    for step in way[:-1]:
        raw = raw.setdefault(step, {})
    raw[way[-1]] = piece


def pages() -> Iterator[tuple[str, Path]]:
    """The pages that show commands or pieces of a house file: the tutorial, the how-to pages and the explanations."""
    for path in (*sorted(HERE.glob("*.md")), *sorted(HERE.glob("how-to/*.md"))):
        yield path.relative_to(HERE).as_posix(), path
