"""The first gate: bytes of a survey file turned into plain maps, lists, texts and numbers, or refused.

Refused before anything is understood: what is too large, not UTF-8, not JSON (with line and column), nested past all
reason, or writes a key twice (the second would silently win). NaN, infinities and 1e999 are let through to the decoder,
which refuses them by their place.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from typing import Any, Final

from groundsill.working.errors import BadSurvey, Fault

__all__ = ["MOST_BYTES", "MOST_ENTRIES", "parse", "shorten", "too_large"]

MOST_BYTES: Final = 16_000_000  # a thousand times a rich house; photographs are not counted
MOST_ENTRIES: Final = 400_000
MOST_DIGITS: Final = 40
LONGEST_SHOWN: Final = 60
_ONCE: Final = "a key may stand once in an object"


def parse(data: bytes | str, name: str = "the file") -> dict[str, Any]:
    """One JSON object as plain maps.

    Args:
        data: the file's bytes, or its text.
        name: what to call it in a message.

    Raises:
        BadSurvey: with one fault, or one for each key written twice.
    """
    if len(data) > MOST_BYTES:
        raise BadSurvey((too_large(name, len(data)),))
    text = _text(data, name) if isinstance(data, bytes) else data.removeprefix("\ufeff")
    reader = _Reader()
    try:
        raw = json.loads(text, object_pairs_hook=reader.pairs, parse_int=reader.whole)
    except json.JSONDecodeError as fault:
        raise BadSurvey((_not_json(name, text, fault),)) from None
    except RecursionError:
        deep = Fault(name, "hundreds of brackets inside brackets", "a survey nests 12 deep at most")
        raise BadSurvey((deep,)) from None
    except _Refused as refused:
        raise BadSurvey((Fault(name, refused.value, refused.allowed),)) from None
    if reader.twice:
        raise BadSurvey(tuple(_find_twice(raw, reader.twice, "")))
    if not isinstance(raw, dict):
        raise BadSurvey((Fault(name, shorten(raw), "a survey file is one JSON object, from { to }"),))
    return raw


def too_large(name: str, size: int) -> Fault:
    """The fault of a file beyond the limit, told from its size alone."""
    most = f"at most {MOST_BYTES // 1_000_000} million bytes of survey; photographs go beside it in a zip"
    return Fault(name, f"{size:,} bytes", most)


def shorten(value: object) -> str:
    """A value as it is written in the file, on one line, its end left off when it is long."""
    if isinstance(value, dict | list | tuple) and len(value) > LONGEST_SHOWN:
        return f"{'an object' if isinstance(value, dict) else 'a list'} of {len(value):,} entries"
    try:
        text = json.dumps(value, ensure_ascii=False, default=repr)
    except (TypeError, ValueError, RecursionError):
        text = repr(value)
    text = "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in text[: LONGEST_SHOWN + 1])
    return text if len(text) <= LONGEST_SHOWN else text[: LONGEST_SHOWN - 3] + "..."


class _Refused(Exception):
    """Something the JSON reader met that no survey holds."""

    def __init__(self, value: str, allowed: str) -> None:
        self.value = value
        self.allowed = allowed
        super().__init__(value)


class _Twice(dict[str, Any]):
    """An object in which a key was written twice."""


class _Reader:
    """One reading under way: how many entries came by, and the keys written twice in each object."""

    def __init__(self) -> None:
        self.entries = 0
        self.twice: dict[int, tuple[str, ...]] = {}
        self._kept: list[_Twice] = []  # holds the objects, so that their identities are not used again

    def pairs(self, pairs: list[tuple[str, Any]]) -> dict[str, Any]:
        """An object of the file."""
        self.entries += len(pairs)
        if self.entries > MOST_ENTRIES:
            raise _Refused(f"more than {MOST_ENTRIES:,} entries", f"at most {MOST_ENTRIES:,} entries in one survey")
        found = dict(pairs)
        if len(found) == len(pairs):
            return found
        marked = _Twice(found)
        keys = [key for key, _ in pairs]
        self.twice[id(marked)] = tuple(sorted({key for key in keys if keys.count(key) > 1})) if len(keys) < 5000 else ()
        self._kept.append(marked)
        return marked

    def whole(self, digits: str) -> int | float:
        """A whole number; hundreds of digits are no measurement, and slow to read."""
        if len(digits) > MOST_DIGITS:
            raise _Refused(f"{digits[:12]}... ({len(digits):,} digits)", f"a number has at most {MOST_DIGITS} digits")
        return int(digits)


def _text(data: bytes, name: str) -> str:
    """The bytes as text; a UTF-8 mark in front, as some editors write, is let go."""
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raise BadSurvey((Fault(name, "UTF-16 text", "save it as UTF-8"),))
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as fault:
        line = data.count(b"\n", 0, fault.start) + 1
        bad = f"the byte 0x{data[fault.start]:02x} at byte {fault.start:,}"
        raise BadSurvey((Fault(f"{name}, line {line}", bad, "the file must be UTF-8 text"),)) from None


def _not_json(name: str, text: str, fault: json.JSONDecodeError) -> Fault:
    """Where the JSON breaks off, what stands there, and what was expected."""
    place = f"{name}, line {fault.lineno}, column {fault.colno}"
    rest = text[fault.pos : fault.pos + 20].split("\n")[0]
    stands = shorten(rest) if rest else ("the end of the line" if fault.pos < len(text) else "the end of the file")
    return Fault(place, stands, f"here JSON reads: {fault.msg[:1].lower()}{fault.msg[1:]}")


def _find_twice(raw: Any, twice: dict[int, tuple[str, ...]], path: str) -> list[Fault]:
    """A fault for each key written twice, by its path."""
    found: list[Fault] = []
    if isinstance(raw, _Twice):
        keys = twice[id(raw)]
        found += [Fault(f"{path}.{key}" if path else key, "written twice", _ONCE) for key in keys]
        found += [] if keys else [Fault(path or "the file", "keys written twice", _ONCE)]
    entries: Iterable[tuple[object, Any]] = raw.items() if isinstance(raw, dict) else enumerate(raw)
    for name, value in entries:
        if isinstance(value, dict | list):
            found += _find_twice(value, twice, f"{path}.{name}" if path else str(name))
    return found
