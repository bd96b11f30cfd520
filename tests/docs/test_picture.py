"""The picture of the README: there, small enough to load anywhere, and told in words to who cannot see it."""

from __future__ import annotations

import re

from PIL import Image

from docs.picture import PICTURE, WIDE
from docs.running import HERE


def test_the_picture_is_wide_enough_to_read_and_small_enough_to_load() -> None:
    with Image.open(PICTURE) as picture:
        assert picture.format == "PNG"
        assert picture.width == WIDE
        assert 600 < picture.height < 1600
        dark = sum(picture.convert("L").histogram()[:128])
    assert dark > 10_000, "hardly anything is drawn on it"
    assert PICTURE.stat().st_size < 300_000


def test_the_readme_shows_it_and_says_in_words_what_is_on_it() -> None:
    readme = " ".join((HERE.parent / "README.md").read_text("utf-8").split())
    shown = f"docs/{PICTURE.relative_to(HERE).as_posix()}"
    (words,) = re.findall(rf"!\[([^\]]+)\]\({re.escape(shown)}\)", readme)
    for each in ("as found", "with the work", "carries the required force", "fails", "indicated", "cannot be checked"):
        assert each in words
