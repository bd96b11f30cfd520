"""Write the pages under docs/reference that are made from the code, so that they cannot drift from it.

``make docs`` runs this; a test fails when a page differs from what this would write. A new page is one function that
returns the page's text, and one entry in ``PAGES``.
"""

from __future__ import annotations

import ast
from collections.abc import Callable
from pathlib import Path

HERE = Path(__file__).resolve().parent
PACKAGE = HERE.parent / "src" / "groundsill"
NOTE = "<!-- Made by `make docs` from the code. Change the code, not this page. -->\n"


def rooms() -> str:
    """What lives where: each package's own docstring, and the first sentence of each of its modules."""
    parts = [NOTE, "\n# The rooms of the code\n", f"\n{_docstring(PACKAGE / '__init__.py')}\n"]
    for room in sorted(path.parent for path in PACKAGE.glob("*/__init__.py")):
        parts.append(f"\n## {room.name}\n\n{_docstring(room / '__init__.py')}\n")
        inside = sorted(p for p in room.rglob("*.py") if p != room / "__init__.py")
        if inside:
            parts.append("\n| module | what it is for |\n| --- | --- |\n")
        for path in inside:
            shown = path.relative_to(room).with_suffix("").as_posix().removesuffix("/__init__").replace("/", ".")
            parts.append(f"| `{shown}` | {_first_sentence(path)} |\n")
    return "".join(parts)


def _docstring(path: Path) -> str:
    return ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""


def _first_sentence(path: Path) -> str:
    paragraph = " ".join(_docstring(path).split("\n\n")[0].split())
    return paragraph.replace("|", "\\|")


PAGES: dict[str, Callable[[], str]] = {"reference/rooms.md": rooms}


def main() -> None:
    """Write every page."""
    for name, page in PAGES.items():
        path = HERE / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(page(), encoding="utf-8")
        print(f"docs/{name}")


if __name__ == "__main__":
    main()
