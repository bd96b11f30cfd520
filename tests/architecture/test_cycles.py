"""No import cycle in the package. A late import counts; one under ``if TYPE_CHECKING`` never runs and does not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from tests.architecture.reading import Import, Module, hold, imports_of, module_from, package_modules

Graph = dict[str, dict[str, Import]]


def graph_of(modules: Sequence[Module]) -> Graph:
    known = frozenset(m.name for m in modules)
    graph: Graph = {name: {} for name in known}
    for module in modules:
        for found in imports_of(module, known):
            if found.target in known and not found.for_types:
                graph[module.name].setdefault(found.target, found)
    return graph


def reachable(graph: Graph, start: str) -> frozenset[str]:
    """All that ``start`` imports, directly or through others (itself only if it lies on a cycle)."""
    seen: set[str] = set()
    waiting = list(graph[start])
    while waiting:
        name = waiting.pop()
        if name not in seen:
            seen.add(name)
            waiting.extend(graph[name])
    return frozenset(seen)


def cycles(modules: Sequence[Module]) -> Iterator[str]:
    """Each import that lies on a cycle: it leads from a module to one that leads back."""
    graph = graph_of(modules)
    reach = {name: reachable(graph, name) for name in graph}
    for name in sorted(graph):
        for target, found in sorted(graph[name].items()):
            if name in reach[target] or name == target:
                yield f"{found.module.path}:{found.line}: {name} imports {target}, which leads back to it"


def test_no_import_cycles() -> None:
    hold(cycles(package_modules()))


def test_a_cycle_is_named_import_by_import() -> None:
    modules = [
        module_from('"""A."""\nfrom g import b\n', "a.py", "g.a"),
        module_from('"""B."""\ndef late():\n    from .c import x\n', "b.py", "g.b"),
        module_from('"""C."""\nimport math\nimport g.a\n', "c.py", "g.c"),
        module_from('"""D."""\nfrom g.a import y\nif TYPE_CHECKING:\n    import g.e\n', "d.py", "g.d"),
        module_from('"""E."""\nimport g.d\n', "e.py", "g.e"),
        module_from('"""Top."""\n', "__init__.py", "g"),
    ]
    assert list(cycles(modules)) == [
        "a.py:2: g.a imports g.b, which leads back to it",
        "b.py:3: g.b imports g.c, which leads back to it",
        "c.py:3: g.c imports g.a, which leads back to it",
    ]
