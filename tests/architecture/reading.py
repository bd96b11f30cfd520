"""Reading the project's own files for the gates: what belongs to it, its modules, their syntax and their imports."""

from __future__ import annotations

import ast
import subprocess
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SRC = ROOT / "src"
PACKAGE = "groundsill"
# Standard library only, so that one day it can run on the phone itself.
ENGINE = ("working", "mechanics", "standards", "house", "work", "forces", "loadpath", "findings", "price")
LEFT_BY_TOOLS = {"__pycache__", "build", "dist", "demo", "node_modules"}


@dataclass(frozen=True, slots=True)
class Module:
    """One Python file: its path as shown in messages, its dotted name, its text and its syntax tree."""

    path: str
    name: str
    text: str
    tree: ast.Module

    @property
    def is_package(self) -> bool:
        return self.path.endswith("__init__.py")


@dataclass(frozen=True, slots=True)
class Import:
    """One imported name: who imports, the dotted target, the line, and whether only type checkers see it."""

    module: Module
    target: str
    line: int
    for_types: bool


def module_from(text: str, path: str = "src/groundsill/sample.py", name: str = "groundsill.sample") -> Module:
    return Module(path, name, text, ast.parse(text, filename=path))


def project_files() -> list[Path]:
    """Every file that is or would be committed; without git, every file that no tool left behind."""
    listed = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"],
        cwd=ROOT,
        capture_output=True,
        check=False,
    )
    if listed.returncode == 0:
        found = (ROOT / name.decode() for name in listed.stdout.split(b"\0") if name)
    else:
        found = (p for p in ROOT.rglob("*") if not _left_by_tools(p.relative_to(ROOT)))
    return sorted(p for p in found if p.is_file())


def _left_by_tools(path: Path) -> bool:
    return any(part in LEFT_BY_TOOLS or (part.startswith(".") and part != ".ci") for part in path.parts[:-1])


@cache
def package_modules() -> tuple[Module, ...]:
    """Every module of the package, in order of name."""
    return tuple(_read(path) for path in sorted((SRC / PACKAGE).rglob("*.py")))


@cache
def all_modules() -> tuple[Module, ...]:
    """Every Python file of the project: package, tests, benchmarks, docs and samples."""
    return tuple(_read(path) for path in project_files() if path.suffix == ".py")


def engine_modules() -> tuple[Module, ...]:
    return tuple(m for m in package_modules() if m.name.split(".")[1:2] and m.name.split(".")[1] in ENGINE)


def _read(path: Path) -> Module:
    shown = path.relative_to(ROOT).as_posix()
    parts = path.relative_to(SRC if path.is_relative_to(SRC) else ROOT).with_suffix("").parts
    name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
    return module_from(path.read_text(encoding="utf-8"), shown, name)


def imports_of(module: Module, known: frozenset[str]) -> Iterator[Import]:
    """Every import in the module, late ones and those for types too; ``known`` tells a module from a name in it."""
    unseen = {
        id(inner)
        for node in ast.walk(module.tree)
        if isinstance(node, ast.If) and ast.unparse(node.test).split(".")[-1] == "TYPE_CHECKING"
        for statement in node.body
        for inner in ast.walk(statement)
    }
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield Import(module, alias.name, node.lineno, id(node) in unseen)
        elif isinstance(node, ast.ImportFrom):
            base = _base_of(module, node)
            for alias in node.names:
                inner = f"{base}.{alias.name}"
                yield Import(module, inner if inner in known else base, node.lineno, id(node) in unseen)


def _base_of(module: Module, node: ast.ImportFrom) -> str:
    if node.level == 0:
        return node.module or ""
    parts = module.name.split(".")
    up = node.level - 1 if module.is_package else node.level
    parts = parts[: len(parts) - up]
    return ".".join([*parts, node.module] if node.module else parts)


def hold(faults: Iterable[str]) -> None:
    """Fail with every fault on a line of its own."""
    found = list(faults)
    assert not found, "\n".join(["", *found])
