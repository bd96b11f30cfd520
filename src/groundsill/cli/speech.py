"""How the commands speak: answers on stdout, refusals and progress on stderr, in letters the terminal has.

A terminal that knows Unicode gets the trade's own signs; any other gets them spelled (``psi_ed,V``, ``<=``, ``*``) with
the columns of a table kept. Control codes in anybody's words are written out, so that a survey cannot drive the
terminal. Bold and faint type only, no colour at all.
"""

from __future__ import annotations

import io
import re
import sys
import unicodedata
from collections.abc import Iterable
from functools import lru_cache
from types import MappingProxyType
from typing import TYPE_CHECKING, Final, TextIO

if TYPE_CHECKING:
    from rich.console import Console, RenderableType

__all__ = ["ReaderGone", "complain", "console", "say_json", "show", "speaks_unicode", "spell"]

# The verdicts' shapes stay apart as letters: * passes, X fails, # indicated, ? cannot be checked, ~ depends, - not.
_SPELLED: Final = MappingProxyType(
    {
        "●": "*", "✕": "X", "▨": "#", "□": "?", "◐": "~", "–": "-", "—": "-", "−": "-", "‐": "-", "‑": "-",
        "·": "*", "×": "x", "÷": "/", "≤": "<=", "≥": ">=", "≠": "!=", "≈": "~", "√": "sqrt", "∥": "||", "⊥": "_|_",
        "²": "^2", "³": "^3",
        "†": "+", "‡": "+", "§": "S.", "°": " deg", "…": "...", "′": "'", "″": '"', "’": "'", "‘": "'", "“": '"',
        "”": '"', "½": "1/2", "¼": "1/4", "¾": "3/4", "•": "-", "→": "->", "↓": "v", "│": "|", "├": "|", "└": "`",
        "─": "-", "━": "-", "═": "=", "┃": "|", "┌": "+", "┐": "+", "┘": "+", "┼": "+", "▲": "^", "►": ">", "▸": ">",
        "α": "alpha", "β": "beta", "γ": "gamma", "δ": "delta", "Δ": "Delta", "ε": "epsilon", "θ": "theta",
        "λ": "lambda", "μ": "mu", "ν": "nu", "ρ": "rho", "σ": "sigma", "τ": "tau", "φ": "phi", "ψ": "psi", "Ω": "Omega",
        "π": "pi", "\u00a0": " ", "\u202f": " ", "\u2009": " ", "\u200b": "",
    }
)  # fmt: skip


_BLANK_ENDS: Final = re.compile(" +(?=\n)")


@lru_cache(maxsize=4096)
def _spelled_letter(letter: str, encoding: str) -> str:
    """One letter as the encoding can write it."""
    try:
        letter.encode(encoding)
    except UnicodeEncodeError:
        plain = "".join(c for c in unicodedata.normalize("NFKD", letter) if c.isascii())
        return _SPELLED.get(letter, plain or f"[U+{ord(letter):04X}]")
    return letter


def spell(text: str, encoding: str = "ascii") -> str:
    """The text in letters the encoding has; where a sign grows, the gap behind it shrinks, so that columns stay."""
    lines = []
    for line in text.split("\n"):
        made: list[str] = []
        grown = 0
        for place, letter in enumerate(line):
            if letter == " " and grown > 0 and line[place + 1 : place + 2] == " ":
                grown -= 1
                continue
            written = _spelled_letter(letter, encoding)
            grown += len(written) - 1
            made.append(written)
        lines.append("".join(made))
    return "\n".join(lines)


class ReaderGone(Exception):
    """Whoever read the answer, at the other end of a pipe, has gone."""


class _Careful(io.TextIOBase):
    """A stream that spells what its encoding lacks and, away from a terminal, leaves no blanks at the ends of lines."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream

    @property
    def encoding(self) -> str:  # type: ignore[override]
        return self._stream.encoding

    def write(self, text: str, /) -> int:
        if not self.isatty():
            text = _BLANK_ENDS.sub("", text)
        try:
            return self._stream.write(text if speaks_unicode(self._stream) else spell(text, self.encoding))
        except BrokenPipeError:
            raise ReaderGone from None

    def flush(self) -> None:
        try:
            self._stream.flush()
        except BrokenPipeError:
            raise ReaderGone from None

    def isatty(self) -> bool:
        return self._stream.isatty()

    def fileno(self) -> int:
        return self._stream.fileno()


def speaks_unicode(stream: TextIO) -> bool:
    """Whether a stream can write every letter."""
    return (getattr(stream, "encoding", None) or "utf-8").lower().replace("_", "-").startswith("utf")


def _stream(error: bool = False) -> TextIO:
    return _Careful(sys.stderr if error else sys.stdout)  # type: ignore[return-value]


def console(error: bool = False) -> Console:
    """A Rich console on stdout (or stderr) that reads no markup and colours nothing by itself."""
    from rich.console import Console

    return Console(file=_stream(error), markup=False, emoji=False, highlight=False)


def show(parts: Iterable[RenderableType]) -> None:
    """The parts of an answer on stdout, one under the other; a text that may not wrap stays whole on its line."""
    from rich.text import Text

    screen = console()
    for part in parts:
        screen.print(part, soft_wrap=isinstance(part, Text) and bool(part.no_wrap))


def complain(lines: Iterable[str]) -> None:
    """Lines on stderr, each on a line of its own whatever stands in it."""
    from groundsill.papers.writers.escape import clean

    for line in lines:
        print(clean(line), file=_stream(error=True))


def say_json(answer: object) -> None:
    """An answer as JSON on stdout."""
    from groundsill.doors.answers import to_map
    from groundsill.doors.plain import text_of

    _stream().write(text_of(to_map(answer), ascii_only=not speaks_unicode(sys.stdout)))
