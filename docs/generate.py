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
    """What lives where: each room's own docstring, and the first sentence of each package inside it."""
    parts = [NOTE, "\n# The rooms of the code\n", f"\n{_docstring(PACKAGE)}\n"]
    for room in _packages_in(PACKAGE):
        parts.append(f"\n## {room.name}\n\n{_docstring(room)}\n")
        inside = [f"- `{package.name}`: {_first_sentence(package)}\n" for package in _packages_in(room)]
        parts += ["\n", *inside] if inside else []
    return "".join(parts)


def _packages_in(folder: Path) -> list[Path]:
    return sorted(path.parent for path in folder.glob("*/__init__.py"))


def _docstring(package: Path) -> str:
    return ast.get_docstring(ast.parse((package / "__init__.py").read_text(encoding="utf-8"))) or ""


def _first_sentence(package: Path) -> str:
    return " ".join(_docstring(package).split("\n\n")[0].split())


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
