"""Pages made from the code say what the code says now, and links between the project's own pages lead somewhere."""

from __future__ import annotations

import importlib.util
import re
from collections.abc import Callable, Iterator
from pathlib import Path

from tests.architecture.reading import ROOT, hold, project_files

TARGET = re.compile(r"(?:`|^)make ([a-z]+)\b", re.MULTILINE)
LINK = re.compile(r"\]\((?!https?:|mailto:|#)([^)#\s]+)")


def generated() -> dict[str, Callable[[], str]]:
    spec = importlib.util.spec_from_file_location("docs_generate", ROOT / "docs" / "generate.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    pages: dict[str, Callable[[], str]] = module.PAGES
    return pages


def stale(name: str, written: str, would_be: str) -> Iterator[str]:
    """The first line at which a page differs from what the code says."""
    if written != would_be:
        old, new = written.splitlines(), would_be.splitlines()
        same = next((n for n, (a, b) in enumerate(zip(old, new, strict=False)) if a != b), min(len(old), len(new)))
        yield f"docs/{name}:{same + 1}: differs from the code; run `make docs`"


def dangling(path: Path, text: str) -> Iterator[str]:
    for number, line in enumerate(text.splitlines(), start=1):
        for target in LINK.findall(line):
            if not (path.parent / target).exists():
                yield f"{path.relative_to(ROOT).as_posix()}:{number}: the link {target!r} leads nowhere"


def test_generated_pages_are_current() -> None:
    for name, page in generated().items():
        path = ROOT / "docs" / name
        hold(stale(name, path.read_text(encoding="utf-8") if path.exists() else "", page()))


def test_a_stale_page_is_named_with_its_line() -> None:
    assert list(stale("reference/rooms.md", "a\nb\n", "a\nc\n")) == [
        "docs/reference/rooms.md:2: differs from the code; run `make docs`"
    ]
    assert list(stale("reference/rooms.md", "a\n", "a\nc\n")) == [
        "docs/reference/rooms.md:2: differs from the code; run `make docs`"
    ]
    assert list(stale("reference/rooms.md", "a\n", "a\n")) == []


def test_links_between_pages_lead_somewhere() -> None:
    pages = [p for p in project_files() if p.suffix == ".md"]
    hold(fault for path in pages for fault in dangling(path, path.read_text(encoding="utf-8")))


def test_a_dangling_link_is_named_with_its_line() -> None:
    text = "[a](README.md) [b](https://a.example/x)\n[c](nowhere.md#part)\n"
    assert list(dangling(ROOT / "NOTES.md", text)) == ["NOTES.md:2: the link 'nowhere.md' leads nowhere"]


def unknown_targets(shown: str, text: str, makefile: str) -> Iterator[str]:
    known = set(re.findall(r"^([a-z]+):", makefile, re.MULTILINE))
    for number, line in enumerate(text.splitlines(), start=1):
        for target in TARGET.findall(line):
            if target not in known:
                yield f"{shown}:{number}: the Makefile has no target {target!r}"


def test_every_make_target_that_a_page_names_exists() -> None:
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    for path in (p for p in project_files() if p.suffix == ".md"):
        hold(unknown_targets(path.relative_to(ROOT).as_posix(), path.read_text(encoding="utf-8"), makefile))


def test_an_unknown_target_is_named_with_its_line() -> None:
    assert list(unknown_targets("README.md", "say `make test`\nmake tests\n", "test: stamp\n\tpytest\n")) == [
        "README.md:2: the Makefile has no target 'tests'"
    ]
