"""Makes any text harmless to print, whatever a person typed or a file held.

Nothing is silently lost: a character that may not stand in a document (a terminal's control code, half of a pair, a
sign that turns the reading direction and could make 12 read as 21) is written out as ``[U+001B]``. White space of every
kind becomes one plain space, since a block decides itself where lines break.
"""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache
from html import escape
from importlib.resources import files

__all__ = ["clean", "markup", "printable"]

_SPACES = re.compile("[\t\n\v\f\r\x1c-\x1f\x85\u2028\u2029]+")
# control codes, surrogates, private use, reading-direction controls, byte order marks, non-characters, unseen tags
_UNFIT = re.compile(
    "[\x00-\x1f\x7f-\x9f\u061c\u200e\u200f\u202a-\u202e\u2060-\u206f\ud800-\uf8ff\ufdd0-\ufdef\ufeff\ufff0-\uffff"
    "\U000e0000-\U0010ffff]"
)
_LONG_WORD = re.compile(r"\S{40,}")


def _named(match: re.Match[str]) -> str:
    return "[" + " ".join(f"U+{ord(letter):04X}" for letter in match[0]) + "]"


def clean(text: str) -> str:
    """The text with every unfit character written out and all white space plain."""
    return _UNFIT.sub(_named, _SPACES.sub(" ", text))


def markup(text: str) -> str:
    """The text for HTML and SVG, between tags or inside a quoted attribute."""
    return escape(clean(text), quote=True)


@lru_cache(maxsize=1)
def _glyphs() -> tuple[re.Pattern[str], re.Pattern[str]]:
    """What none of the PDF's fonts can draw, and the combining marks that would not sit on their letter.

    A letter and its marks must come from one font, so only the serif face's own letters may carry marks.
    """
    sections: dict[str, list[str]] = {}
    name = ""
    for line in files(__package__).joinpath("glyphs.txt").read_text(encoding="utf-8").splitlines():
        if line.startswith("["):
            name = line.strip("[]")
        elif not line.startswith("#"):
            first, _, last = line.partition("-")
            sections.setdefault(name, []).append(f"\\U{int(first, 16):08x}-\\U{int(last or first, 16):08x}")
    drawn, serif = "".join(sections["all"]), "".join(sections["serif"])
    marks = "".join(chr(c) for c in range(0x300, 0x20000) if unicodedata.category(chr(c)).startswith("M"))
    return re.compile(f"[^{drawn}]+"), re.compile(f"((?![{marks}])[{serif}](?:(?=[{serif}])[{marks}])*)|[{marks}]+")


def _seated(match: re.Match[str]) -> str:
    """A letter of the serif face with the marks it carries, or marks without a seat, written out."""
    return match[1] or _named(match)


def printable(text: str) -> str:
    """The text as the PDF's own fonts can print it: what they cannot draw is written out as its number.

    A word of forty letters or more gets places (zero-width spaces) where it may be broken, so that it never runs off
    the page.
    """
    shown = clean(text)
    if not shown.isascii():
        undrawn, seats = _glyphs()
        shown = undrawn.sub(_named, seats.sub(_seated, unicodedata.normalize("NFC", shown)))
    return _LONG_WORD.sub(lambda word: "\u200b".join(re.findall(".{1,16}", word[0])), shown)
