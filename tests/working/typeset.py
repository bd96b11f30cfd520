"""Setting maths with Typst itself, for tests that hold what the program writes to what the typesetter takes."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Any


@cache
def _compiler() -> Any:
    import typst

    return typst.Compiler(ignore_system_fonts=True, font_paths=typst.Fonts(include_system_fonts=False))


def compile_maths(lines: Iterable[str]) -> int:
    """Set every line as a formula of its own; the number of pages it fills.

    Raises:
        typst.TypstError: when a line is not Typst maths.
    """
    source = "#set page(width: 400pt, height: auto)\n" + "\n".join(f"$ {line} $\n" for line in lines)
    made = _compiler().compile(source.encode(), format="svg")
    return 1 if isinstance(made, bytes) else len(made)
