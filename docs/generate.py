"""Write the pages that are made from the code, and the answers on the written ones, so that they cannot drift from it.

``make docs`` runs this; a test fails when a page differs from what this would write. A new page is one function that
returns the page's text, and one entry in ``PAGES``. On the pages written by hand only the answers under the commands
are written anew (see ``running``).
"""

from __future__ import annotations

import ast
import contextlib
import io
import json
import os
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path

HERE = Path(__file__).resolve().parent
PACKAGE = HERE.parent / "src" / "groundsill"
# The house of the tutorial as it stands at its end: the how-to pages begin with it.
EXAMPLE = HERE / "examples" / "net-loft-lane.json"
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


def commands() -> str:
    """Every command's own help, as it stands at 80 columns."""
    from groundsill.cli.commands import COMMANDS

    parts = [NOTE, "\n# The commands\n", "\n`groundsill COMMAND --help` prints the same.\n", _help()]
    parts += [f"\n## {name}\n{_help(name)}" for name in COMMANDS]
    return "".join(parts)


def _help(*words: str) -> str:
    """One help page in a block of its own; ``commands`` and tests run anywhere, so the width is set here."""
    from groundsill.cli.run import run

    width, os.environ["COLUMNS"] = os.environ.get("COLUMNS"), "80"
    said = io.StringIO()
    try:
        with contextlib.redirect_stdout(said):
            run([*words, "--help"])
    finally:
        del os.environ["COLUMNS"]
        if width is not None:
            os.environ["COLUMNS"] = width
    return f"\n```text\n{said.getvalue().strip()}\n```\n"


def house_file() -> str:
    """Every object and field of a house file."""
    from docs.house_file_page import house_file as page

    return NOTE + page()


def words() -> str:
    """The words of a house file that are looked up in tables."""
    from docs.words_page import words as page

    return NOTE + page()


def formulas() -> str:
    """Every formula and table, and how each is known."""
    from docs.formulas_page import formulas as page

    return NOTE + page()


def witnesses() -> str:
    """Values printed by others beside the program's own."""
    from docs.formulas_page import witnesses as page

    return NOTE + page()


PAGES: dict[str, Callable[[], str]] = {
    "reference/rooms.md": rooms,
    "reference/commands.md": commands,
    "reference/house-file.md": house_file,
    "reference/words.md": words,
    "reference/formulas.md": formulas,
    "validation/witnesses.md": witnesses,
}


def main() -> None:
    """Write every page, then the answers on the pages written by hand."""
    from docs.running import pages, play, with_answers

    for name, page in PAGES.items():
        path = HERE / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(page(), encoding="utf-8")
        print(f"docs/{name}")
    for name, path in pages():
        with tempfile.TemporaryDirectory() as folder:
            text = path.read_text(encoding="utf-8")
            played = play(name, text, Path(folder))
            path.write_text(with_answers(text, played), encoding="utf-8")
        if name == "tutorial.md":
            EXAMPLE.parent.mkdir(exist_ok=True)
            EXAMPLE.write_text(json.dumps(played.house, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")
        print(f"docs/{name}: answers")


if __name__ == "__main__":
    sys.path.insert(0, str(HERE.parent))
    main()
