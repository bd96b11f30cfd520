"""Run every benchmark, or those whose name holds one of the words given: ``python -m benchmarks startup``."""

from __future__ import annotations

import importlib
import pkgutil
import sys

import benchmarks


def main(words: list[str]) -> int:
    """Print each benchmark's title and rows; 1 if the words fit none."""
    names = [m.name for m in pkgutil.iter_modules(benchmarks.__path__) if m.name.startswith("bench_")]
    chosen = [n for n in names if not words or any(word in n for word in words)]
    if not chosen:
        print(f"no benchmark is called {' or '.join(words)}; there are: {', '.join(names)}", file=sys.stderr)
        return 1
    for name in chosen:
        module = importlib.import_module(f"benchmarks.{name}")
        print(f"{name.removeprefix('bench_')}: {(module.__doc__ or '').splitlines()[0]}")
        for row in module.rows():
            print(row.line(), flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
