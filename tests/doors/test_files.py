"""House files on disk: plain and zipped, replaced in one step, never half-written."""

from __future__ import annotations

import os
import zipfile
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from groundsill.doors import files
from groundsill.doors.encode import encode
from groundsill.doors.files import open_house, photo_names, read_house, read_photo, write_bytes, write_house
from groundsill.house.underfloor import Bolt
from groundsill.work.document import House
from groundsill.working.errors import BadSurvey, CannotWrite
from tests.fixtures.small_house import small_house

PICTURE = b"\xff\xd8\xff\xe0 rear crack"


def refusal(path: Path) -> str:
    with pytest.raises(BadSurvey) as refused:
        read_house(path)
    return str(refused.value)


def unsound() -> House:
    """Every field is right, but one bolt stands beyond the end of its line."""
    house = small_house()
    under = replace(house.survey.underfloor, bolts={"bt1": Bolt(line="line1", station_in=500)})
    return replace(house, survey=replace(house.survey, underfloor=under))


@pytest.mark.parametrize("name", ["house.json", "house.zip", "House with spaces.ZIP", "häuschen.json"])
def test_a_house_comes_back_from_disk_as_it_went(tmp_path: Path, name: str) -> None:
    path = tmp_path / name
    write_house(path, small_house())
    assert read_house(path) == small_house()
    assert [p.name for p in tmp_path.iterdir()] == [name]


def test_a_zip_is_told_by_its_bytes_and_not_by_its_name(tmp_path: Path) -> None:
    write_house(tmp_path / "a.zip", small_house())
    (tmp_path / "a.zip").rename(tmp_path / "a.json")
    assert read_house(tmp_path / "a.json") == small_house()


def test_the_same_house_and_photographs_give_the_same_bytes(tmp_path: Path) -> None:
    for name in ("a.zip", "b.zip"):
        write_house(tmp_path / name, small_house(), {"rear-crack.jpg": PICTURE})
    assert (tmp_path / "a.zip").read_bytes() == (tmp_path / "b.zip").read_bytes()


def test_a_zip_keeps_its_photographs_when_the_house_in_it_is_replaced(tmp_path: Path) -> None:
    path = tmp_path / "house.zip"
    write_house(path, small_house(), {"rear-crack.jpg": PICTURE})
    write_house(path, replace(small_house(), units="si"), {"front.jpg": b"front"})
    assert read_house(path).units == "si"
    assert photo_names(path) == ("front.jpg", "rear-crack.jpg")
    assert read_photo(path, "rear-crack.jpg") == PICTURE


def test_photographs_lie_beside_a_plain_file(tmp_path: Path) -> None:
    path = tmp_path / "house.json"
    write_house(path, small_house(), {"rear-crack.jpg": PICTURE})
    assert photo_names(path) == ("rear-crack.jpg",)
    assert read_photo(path, "rear-crack.jpg") == PICTURE
    (tmp_path / "rear-crack.jpg").unlink()
    assert photo_names(path) == ()
    with pytest.raises(BadSurvey, match=r"the photograph rear-crack\.jpg is not allowed; no such photograph"):
        read_photo(path, "rear-crack.jpg")


@pytest.mark.parametrize(
    "name", ["../house.json", "/etc/passwd", "a\\b.jpg", "", ".hidden", "a\0b", "x" * 121, "c:d.jpg"]
)
def test_a_photograph_has_a_plain_file_name(tmp_path: Path, name: str) -> None:
    path = tmp_path / "house.json"
    write_house(path, small_house())
    with pytest.raises(BadSurvey, match="a plain file name, without folders"):
        read_photo(path, name)
    with pytest.raises(CannotWrite, match="is not a plain file name; nothing was written"):
        write_house(path, small_house(), {name: PICTURE})


def test_a_survey_under_way_is_opened_and_its_misfits_are_faults_only_when_it_must_be_sound(tmp_path: Path) -> None:
    path = tmp_path / "house.json"
    write_house(path, unsound())
    assert open_house(path) == unsound()
    assert "survey.underfloor.bolts.bt1.station_in: 500 is not allowed; a station on its line" in refusal(path)


# ---- What cannot be opened ------------------------------------------------------------------------------------------


def test_a_path_that_leads_to_no_file_says_so(tmp_path: Path) -> None:
    gone = tmp_path / "gone.json"
    assert refusal(gone) == f"1. {gone}: nothing that can be read is not allowed; give the path of a survey file"
    assert refusal(tmp_path) == f"1. {tmp_path}: a folder is not allowed; give the path of a survey file"


def zipped(path: Path, members: dict[str, bytes]) -> Path:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in members.items():
            archive.writestr(name, data)
    return path


def test_a_zip_without_a_house_says_where_it_belongs(tmp_path: Path) -> None:
    path = zipped(tmp_path / "a.zip", {"other.json": b"{}"})
    assert refusal(path) == (
        "1. a.zip: a zip without house.json is not allowed; house.json at its top, photographs in photos/"
    )


def test_a_zip_that_swells_is_stopped_at_the_limit(tmp_path: Path) -> None:
    path = zipped(tmp_path / "a.zip", {"house.json": b" " * 50_000_000})
    assert path.stat().st_size < 100_000
    assert refusal(path).startswith("1. a.zip: house.json: 50,000,000 bytes is not allowed; at most 16 million bytes")


def test_a_zip_that_lies_about_its_size_is_no_house(tmp_path: Path) -> None:
    path = zipped(tmp_path / "a.zip", {"house.json": encode(small_house()).encode() + b" " * 20_000_000})
    size = 20_000_000 + len(encode(small_house()).encode())
    path.write_bytes(path.read_bytes().replace(size.to_bytes(4, "little"), b"\x10\0\0\0"))
    assert refusal(path).startswith("1. a.zip")


@pytest.mark.parametrize("at", [10, 60, 400, -40, -5])
def test_a_damaged_zip_is_refused_or_read_whole(tmp_path: Path, at: int) -> None:
    path = tmp_path / "a.zip"
    write_house(path, small_house(), {"rear-crack.jpg": PICTURE})
    data = bytearray(path.read_bytes())
    data[at] ^= 0xFF
    path.write_bytes(data)
    try:
        told, found = "", read_house(path)
    except BadSurvey as refused:
        told, found = str(refused), small_house()
    assert found == small_house()
    assert told == "" or told.startswith("1. a.zip")


def test_a_photograph_of_no_reasonable_size_is_left_where_it_is(tmp_path: Path) -> None:
    path = tmp_path / "house.json"
    write_house(path, small_house())
    with (tmp_path / "rear-crack.jpg").open("wb") as file:
        file.truncate(60_000_001)
    with pytest.raises(BadSurvey, match=r"60,000,001 bytes is not allowed; at most 60,000,000 bytes"):
        read_photo(path, "rear-crack.jpg")


# ---- Writing --------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("broken", ["fsync", "write", "replace"])
@pytest.mark.parametrize("name", ["house.json", "house.zip"])
def test_a_write_that_fails_leaves_the_old_file_and_nothing_beside_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, broken: str, name: str
) -> None:
    path = tmp_path / name
    write_house(path, small_house())
    before = path.read_bytes()

    def fails(*args: Any, **kwargs: Any) -> Any:
        raise OSError(28, "No space left on device")

    if broken == "replace":
        monkeypatch.setattr(Path, "replace", fails)
    elif broken == "fsync":
        monkeypatch.setattr(os, "fsync", fails)
    else:
        monkeypatch.setattr(os, "fdopen", lambda handle, mode: _Full(handle))
    with pytest.raises(CannotWrite, match=r"No space left on device; nothing was changed"):
        write_house(path, replace(small_house(), units="si"))
    monkeypatch.undo()
    assert path.read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == [name]


class _Full:
    """A file on a full disk: it takes some bytes, then no more."""

    def __init__(self, handle: int) -> None:
        self.handle = handle

    def __enter__(self) -> _Full:
        return self

    def __exit__(self, *reason: object) -> None:
        os.close(self.handle)

    def write(self, data: bytes) -> int:
        os.write(self.handle, data[:100])
        raise OSError(28, "No space left on device")


def test_an_interrupted_write_leaves_the_old_file_and_nothing_beside_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "house.json"
    path.write_bytes(b"old")

    def interrupted(handle: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", interrupted)
    with pytest.raises(KeyboardInterrupt):
        write_bytes(path, b"new")
    assert path.read_bytes() == b"old"
    assert [p.name for p in tmp_path.iterdir()] == ["house.json"]


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    path = tmp_path / "gone" / "house.json"
    with pytest.raises(CannotWrite, match=r"gone.house\.json: No such file or directory; nothing was changed"):
        write_house(path, small_house())


def test_a_house_that_cannot_be_written_as_json_writes_nothing(tmp_path: Path) -> None:
    path = tmp_path / "house.json"
    broken = replace(small_house(), choices=replace(small_house().choices, redundancy=float("inf")))
    with pytest.raises(CannotWrite, match=r"the house cannot stand in a file \(Out of range float values"):
        write_house(path, broken)
    assert list(tmp_path.iterdir()) == []


def test_a_broken_zip_is_not_written_over_for_its_photographs_would_be_lost(tmp_path: Path) -> None:
    path = tmp_path / "house.zip"
    path.write_bytes(b"PK\x03\x04 broken")
    with pytest.raises(CannotWrite, match=r"the photographs in house\.zip cannot be kept"):
        write_house(path, small_house())
    assert path.read_bytes() == b"PK\x03\x04 broken"


@pytest.mark.skipif(os.name != "posix", reason="file modes and links are those of POSIX")
def test_a_replaced_file_keeps_its_mode_and_a_link_keeps_pointing(tmp_path: Path) -> None:
    real, link = tmp_path / "real.json", tmp_path / "link.json"
    real.write_bytes(b"old")
    real.chmod(0o640)
    link.symlink_to(real)
    write_house(link, small_house())
    assert link.is_symlink()
    assert read_house(real) == small_house()
    assert real.stat().st_mode & 0o777 == 0o640


def test_nothing_but_the_door_names_the_member_of_a_zip() -> None:
    assert (files.HOUSE, files.PHOTOS) == ("house.json", "photos/")
