"""How wide words are on paper, near enough to place them: in the serif face that the PDF writer carries.

The figures are that face's own advance widths in thousandths of the letter size (Libertinus Serif Regular, read from
the font inside the typst package); a test measures them again. Screens may fall back to another serif, so nothing
depends on more than a rough fit there.
"""

from __future__ import annotations

__all__ = ["ASCENT", "CAP_HEIGHT", "DESCENT", "text_width", "wrapped"]

CAP_HEIGHT = 0.658
ASCENT = 0.72
DESCENT = 0.22

_FIRST = 32
_WIDTHS = (
    250, 288, 336, 465, 465, 637, 705, 190, 298, 298, 369, 550, 220, 338, 220, 323,
    465, 465, 465, 465, 465, 465, 465, 465, 465, 465, 236, 236, 550, 550, 550, 435,
    895, 695, 588, 646, 701, 557, 485, 685, 730, 297, 322, 637, 528, 839, 699, 702,
    541, 702, 587, 485, 597, 661, 652, 951, 660, 575, 604, 356, 287, 356, 518, 486,
    392, 457, 493, 428, 506, 447, 310, 500, 538, 271, 272, 512, 264, 790, 542, 504,
    519, 503, 372, 390, 316, 531, 497, 747, 490, 515, 424, 277, 205, 277, 449,
)  # fmt: skip
_OTHER = {"½": 660, "¼": 660, "¾": 660, "⅛": 660, "⅜": 660, "⅝": 660, "⅞": 660, "–": 548, "—": 742, "·": 250, "°": 267}
_ELSE = 600


def text_width(text: str, size: float) -> float:
    """The width of one line of words at a letter size, in the size's own unit (kerning left out)."""
    total = 0
    for letter in text:
        place = ord(letter) - _FIRST
        total += _WIDTHS[place] if 0 <= place < len(_WIDTHS) else _OTHER.get(letter, _ELSE)
    return total * size / 1000.0


def wrapped(text: str, width: float, size: float) -> tuple[str, ...]:
    """The words broken into lines no wider than ``width``; a single longer word gets a line of its own."""
    lines: list[str] = []
    for paragraph in text.split("\n"):
        line = ""
        for word in paragraph.split():
            longer = f"{line} {word}" if line else word
            if line and text_width(longer, size) > width:
                lines.append(line)
                line = word
            else:
                line = longer
        lines.append(line)
    return tuple(lines)
