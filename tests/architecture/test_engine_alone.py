"""The engine (working up to price) needs the standard library and nothing else.

Shown three ways: every import is read; every engine module is imported by an interpreter that has no site-packages;
and the import contract in pyproject.toml names every engine package there is.
"""

from __future__ import annotations

import subprocess
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

from tests.architecture.reading import (
    ENGINE,
    PACKAGE,
    ROOT,
    SRC,
    Module,
    engine_modules,
    hold,
    imports_of,
    module_from,
    package_modules,
)

IMPORT_ALL = """
import importlib, sys
sys.path.insert(0, sys.argv[1])
for name in sys.argv[2:]:
    importlib.import_module(name)
for name, module in sorted(sys.modules.items()):
    place = getattr(module, "__file__", None) or ""
    if "site-packages" in place or "dist-packages" in place:
        sys.exit(f"{name} came from {place}")
print(len(sys.argv) - 2)
"""


def run_alone(path: Path, names: list[str]) -> subprocess.CompletedProcess[str]:
    """Import the modules with ``path`` and the standard library alone (-I: no user's settings, -S: no site)."""
    command = [sys.executable, "-I", "-S", "-W", "error", "-c", IMPORT_ALL, str(path), *names]
    return subprocess.run(command, capture_output=True, text=True, check=False)


def foreign(module: Module) -> Iterator[str]:
    """Imports of anything but the standard library and this package."""
    known = frozenset(m.name for m in package_modules())
    for found in imports_of(module, known):
        top = found.target.split(".")[0]
        if top != PACKAGE and top not in sys.stdlib_module_names:
            yield f"{module.path}:{found.line}: {module.name} imports {found.target}, which is not standard library"


def test_engine_imports_only_the_standard_library() -> None:
    hold(fault for module in engine_modules() for fault in foreign(module))


def test_a_foreign_import_is_named_even_when_late() -> None:
    text = '"""Room."""\nimport math\n\ndef solve():\n    import numpy.linalg\n'
    assert list(foreign(module_from(text))) == [
        "src/groundsill/sample.py:5: groundsill.sample imports numpy.linalg, which is not standard library"
    ]


def test_engine_runs_in_an_interpreter_without_site_packages() -> None:
    names = [module.name for module in engine_modules()]
    done = run_alone(SRC, names)
    assert done.returncode == 0, done.stderr
    assert done.stdout.strip() == str(len(names))


def test_that_interpreter_really_has_no_site_packages(tmp_path: Path) -> None:
    (tmp_path / "spoiled.py").write_text("import pydantic\n")
    done = run_alone(tmp_path, ["spoiled"])
    assert done.returncode == 1
    assert "No module named 'pydantic'" in done.stderr


def test_the_import_contract_names_every_engine_package() -> None:
    config = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    contracts = {c["id"]: c for c in config["tool"]["importlinter"]["contracts"]}
    there = {f"{PACKAGE}.{name}" for name in ENGINE if (SRC / PACKAGE / name / "__init__.py").exists()}
    assert set(contracts["engine"]["source_modules"]) == there, "pyproject.toml: contract 'engine', source_modules"
    outside = {d.split(">")[0] for d in config["project"]["dependencies"]}
    assert outside <= set(contracts["engine"]["forbidden_modules"]), "pyproject.toml: contract 'engine', forbidden"
