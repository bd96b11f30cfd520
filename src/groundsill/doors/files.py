"""House files on disk: opened whole or refused, replaced whole or left as they were.

A house file is one UTF-8 JSON document, its photographs beside it by name, or a zip that holds ``house.json`` and
``photos/``. Writing goes to a new file in the same folder, is forced to the disk, and only then takes the old one's
name, so that a power cut or a full disk leaves the old file or the new one and never half of either.
"""

from __future__ import annotations

import contextlib
import io
import os
import secrets
import zipfile
import zlib
from collections.abc import Iterator, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Final

from groundsill.doors.decode import decode
from groundsill.doors.encode import encode
from groundsill.doors.text import MOST_BYTES, too_large
from groundsill.house.checks import is_file_name
from groundsill.work.checks import check_house
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey, CannotWrite, Fault

__all__ = ["open_house", "photo_names", "read_house", "read_photo", "write_bytes", "write_house"]

HOUSE: Final = "house.json"
PHOTOS: Final = "photos/"
MOST_MEMBERS: Final = 5000
MOST_PHOTO_BYTES: Final = 60_000_000
MOST_ZIP_BYTES: Final = 2_000_000_000

_NO_PHOTOS: Final[Mapping[str, bytes]] = MappingProxyType({})
_BROKEN_ZIP: Final = (zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError, RuntimeError, OSError, ValueError)


def read_house(path: Path) -> House:
    """A house that is sound: its file opened, every field in its limits, every part fitting the others.

    Raises:
        BadSurvey: one fault for each thing wrong.
    """
    house = open_house(path)
    faults = check_house(house)
    if faults:
        raise BadSurvey(faults)
    return house


def open_house(path: Path) -> House:
    """A house whose fields are sound, though its parts may not yet fit together (a survey under way, or a merge).

    Raises:
        BadSurvey: the file cannot be opened, or a field is at fault.
    """
    return decode(_house_bytes(path), path.name)


def photo_names(path: Path) -> tuple[str, ...]:
    """The names of the photographs in a zip, or beside a plain file those that its house names and that are there."""
    if _is_zip(path):
        with _zip(path) as archive:
            names = [name.removeprefix(PHOTOS) for name in archive.namelist() if name.startswith(PHOTOS)]
        return tuple(sorted(name for name in names if is_file_name(name)))
    named = {photo.file for photo in open_house(path).survey.photos.values()}
    return tuple(sorted(name for name in named if is_file_name(name) and (path.parent / name).is_file()))


def read_photo(path: Path, name: str) -> bytes:
    """One photograph of a house file.

    Raises:
        BadSurvey: no such photograph, or a name that is not a plain file name, or a file too large for a photograph.
    """
    if not is_file_name(name):
        raise BadSurvey((Fault(path.name, f"the photograph [{name[:60]}]", "a plain file name, without folders"),))
    missing = Fault(path.name, f"the photograph {name}", "no such photograph is kept with the house")
    if not _is_zip(path):
        beside = path.parent / name
        if not beside.is_file():
            raise BadSurvey((missing,))
        _must_be_at_most(name, beside.stat().st_size, MOST_PHOTO_BYTES)
        return beside.read_bytes()
    with _zip(path) as archive:
        if PHOTOS + name not in archive.namelist():
            raise BadSurvey((missing,))
        return _member(path, archive, PHOTOS + name, MOST_PHOTO_BYTES)


def write_house(path: Path, house: House, photos: Mapping[str, bytes] = _NO_PHOTOS) -> None:
    """Write a house file, or replace it, in one step.

    Args:
        path: ``….json`` for a plain document (photographs go beside it), ``….zip`` for both in one file; a zip keeps
            the photographs it had.
        house: what to write.
        photos: photographs to add or replace, by file name.

    Raises:
        CannotWrite: nothing was changed.
    """
    for name in photos:
        if not is_file_name(name):
            raise CannotWrite(f"{name!r} is not a plain file name; nothing was written")
    try:
        text = encode(house).encode("utf-8")
    except ValueError as fault:
        raise CannotWrite(f"{path}: the house cannot stand in a file ({fault}); nothing was written") from fault
    if len(text) > MOST_BYTES:
        raise CannotWrite(f"{too_large(path.name, len(text)).line()}; nothing was written")
    if path.suffix.lower() == ".zip":
        write_bytes(path, _zipped(path, text, photos))
        return
    for name, data in photos.items():
        write_bytes(path.parent / name, data)
    write_bytes(path, text)


def write_bytes(path: Path, data: bytes) -> None:
    """Write one file, or replace it, in one step: a new file beside it, forced to the disk, then renamed.

    Raises:
        CannotWrite: with the reason; the old file stands as it was, and nothing is left beside it.
    """
    target = path.resolve()  # a link keeps pointing at the file it points at
    part = target.with_name(f".{target.name[:100]}.{secrets.token_hex(4)}.part")
    try:
        mode = target.stat().st_mode & 0o777 if target.exists() else 0o666
        handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL, mode)
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(data)
                file.flush()
                os.fsync(file.fileno())
            part.replace(target)
        except BaseException:
            with contextlib.suppress(OSError):
                part.unlink()
            raise
        _sync_folder(target.parent)
    except OSError as fault:
        raise CannotWrite(f"{path}: {fault.strerror or fault}; nothing was changed") from fault


def _sync_folder(folder: Path) -> None:
    """Force the new name to the disk, where the system knows how."""
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


# ---- Reading --------------------------------------------------------------------------------------------------------


def _house_bytes(path: Path) -> bytes:
    """The bytes of the document, out of the zip if it is one; too large is told before anything is read."""
    if not _is_zip(path):
        _must_be_at_most(path.name, path.stat().st_size, MOST_BYTES)
        return path.read_bytes()
    with _zip(path) as archive:
        if HOUSE not in archive.namelist():
            layout = f"{HOUSE} at its top, photographs in {PHOTOS}"
            raise BadSurvey((Fault(path.name, f"a zip without {HOUSE}", layout),))
        return _member(path, archive, HOUSE, MOST_BYTES)


def _is_zip(path: Path) -> bool:
    """Whether the file is a zip, by its first bytes and not its name."""
    if not path.is_file():
        what = "a folder" if path.is_dir() else "nothing that can be read"
        raise BadSurvey((Fault(str(path), what, "give the path of a survey file"),))
    try:
        with path.open("rb") as file:
            return file.read(4) == b"PK\x03\x04"
    except OSError as fault:
        why = f"a file that cannot be read ({fault.strerror})"
        raise BadSurvey((Fault(str(path), why, "a readable file"),)) from None


@contextlib.contextmanager
def _zip(path: Path) -> Iterator[zipfile.ZipFile]:
    """The open archive; whatever is broken in it is a fault of the survey file."""
    _must_be_at_most(path.name, path.stat().st_size, MOST_ZIP_BYTES)
    try:
        with zipfile.ZipFile(path) as archive:
            if len(archive.namelist()) > MOST_MEMBERS:
                raise BadSurvey((Fault(path.name, f"{len(archive.namelist()):,} files", f"at most {MOST_MEMBERS:,}"),))
            yield archive
    except _BROKEN_ZIP as fault:
        raise BadSurvey((Fault(path.name, f"a broken zip ({fault})", f"a zip with {HOUSE} at its top"),)) from None


def _member(path: Path, archive: zipfile.ZipFile, name: str, most: int) -> bytes:
    """One file of the archive, never more of it than allowed, whatever its header claims."""
    _must_be_at_most(f"{path.name}: {name}", archive.getinfo(name).file_size, most)
    with archive.open(name) as file:
        data = file.read(most + 1)
    _must_be_at_most(f"{path.name}: {name}", len(data), most)
    return data


def _must_be_at_most(name: str, size: int, most: int) -> None:
    if size > most:
        plain = Fault(name, f"{size:,} bytes", f"at most {most:,} bytes")
        raise BadSurvey((too_large(name, size) if most == MOST_BYTES else plain,))


# ---- Zips -----------------------------------------------------------------------------------------------------------


def _zipped(path: Path, text: bytes, photos: Mapping[str, bytes]) -> bytes:
    """The archive's bytes: the house, the photographs given, and those it already held."""
    kept: dict[str, bytes] = {}
    if path.exists():
        try:
            kept = {name: read_photo(path, name) for name in photo_names(path)} if _is_zip(path) else {}
        except BadSurvey as fault:
            raise CannotWrite(f"the photographs in {path.name} cannot be kept: {fault}; nothing was changed") from fault
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        _put(archive, HOUSE, text, zipfile.ZIP_DEFLATED)
        for name, data in sorted({**kept, **photos}.items()):
            _put(archive, PHOTOS + name, data, zipfile.ZIP_STORED)
    return buffer.getvalue()


def _put(archive: zipfile.ZipFile, name: str, data: bytes, how: int) -> None:
    """One file of the archive, without a date, so that the same house gives the same bytes."""
    info = zipfile.ZipInfo(name, date_time=(1980, 1, 1, 0, 0, 0))
    info.external_attr = 0o644 << 16
    archive.writestr(info, data, how)
