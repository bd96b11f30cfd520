"""Takes the picture of the README again: two chains of the sample's package, as they stand on the printed page.

``python docs/picture.py`` works out the first sample, finds the page, and writes the chains of its first two lines as
a PNG of 1200 pixels' width. It is run by hand, when the package looks different: a picture made anew on every machine
would differ by a hair on each.
"""

from __future__ import annotations

import tempfile
from pathlib import Path
from typing import Any

HERE = Path(__file__).resolve().parent
PICTURE = HERE / "pictures" / "chains-larch-street.png"
SAMPLE = HERE.parent / "samples" / "larch-street" / "house.json"
WIDE = 1200
GREYS = 16
ABOVE, BELOW = "Braced lines", "Figure 3."
FINE = 4  # pixels to a point, before it is made smaller
EDGE = 24  # pixels of paper left round it


def main() -> None:
    """Write the picture."""
    import pypdfium2

    from groundsill.cli.run import run

    with tempfile.TemporaryDirectory() as folder:
        run(["papers", str(SAMPLE), "--out", folder, "--with", "1"])
        document = pypdfium2.PdfDocument(Path(folder) / "calculations.pdf")
        texts = (page.get_textpage().get_text_range() for page in document)
        place = next(n for n, text in enumerate(texts) if ABOVE in text and BELOW in text and n > 2)
        picture = _taken(document[place])
        document.close()
    PICTURE.parent.mkdir(exist_ok=True)
    picture.save(PICTURE, optimize=True)
    size = f"{picture.width} by {picture.height}, {PICTURE.stat().st_size / 1000:.0f} kB"
    print(f"{PICTURE.name}: page {place + 1}, {size}")


def _taken(page: Any) -> Any:
    """What stands on a page between two texts, in shades of grey."""
    from PIL import Image, ImageOps

    words = page.get_textpage()
    _, top, _, _ = _box(words, ABOVE)
    _, bottom, _, _ = _box(words, BELOW)
    drawn = page.render(scale=FINE).to_pil().convert("L")
    high = page.get_height()
    strip = drawn.crop((0, int((high - top + 4) * FINE), drawn.width, int((high - bottom + 4) * FINE)))
    strip = ImageOps.expand(strip.crop(ImageOps.invert(strip).getbbox()), EDGE, 255)
    size = (WIDE, round(strip.height * WIDE / strip.width))
    return strip.resize(size, Image.Resampling.LANCZOS).quantize(GREYS)


def _box(words: Any, text: str) -> tuple[float, float, float, float]:
    """Where a text stands: left, bottom, right, top in points from the page's lower left corner."""
    index, _ = words.search(text).get_next()
    left, bottom, right, top = words.get_charbox(index)
    return left, bottom, right, top


if __name__ == "__main__":
    main()
