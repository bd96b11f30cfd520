"""The small house made checkable, its doubtful brother, and the moves that must not change an answer.

``known_house`` has every fact measured and nothing outside what the tables name, so that hardly a link is left that
cannot be checked; ``doubtful_house`` is the same with a few facts that may lie elsewhere. The moves (mirror, turn, run
a line the other way, shuffle the file) describe the same house in other words.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields, is_dataclass, replace
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

from groundsill.doors.decode import decode
from groundsill.house.building import Point
from groundsill.house.fact import Fact, measured
from groundsill.house.foundation import FoundationTest
from groundsill.house.settle import prepare
from groundsill.house.underfloor import Bolt
from groundsill.work.document import Alternative, House
from groundsill.work.pieces import BoltPiece, HoldDownPiece, PanelPiece, Piece, SillBlockingPiece, TiePiece
from tests.fixtures.small_house import LENGTHS_IN, small_house

FIR = "Douglas fir-larch"
BOARDS = "horizontal lumber sheathing, 1x"
PANEL = "15/32, 8d"
SOUND_SILL = {
    "species": measured(FIR), "thickness_in": measured(1.5), "projects_inside_in": measured(0.0),
    "gap_in": measured(0.0),
}  # fmt: skip
SAMPLE = Path(__file__).resolve().parents[2] / "samples" / "larch-street" / "house.json"

# --- the house -------------------------------------------------------------------------------------------------------


@cache
def known_house() -> House:
    """Everything measured and within the tables; new work on every wall line."""
    house = _chosen(small_house())
    under, base = house.survey.underfloor, house.survey.foundation
    steady = replace(
        house.survey.site, soil=replace(house.survey.site.soil, kind=measured("sand"), fill=measured(False))
    )
    under = replace(
        under,
        joists=_each(under.joists, species=measured(FIR), boards="diagonal boards"),
        lines={
            key: replace(line, joists="across", top_plate=replace(line.top_plate, species=measured(FIR), layers=2))
            for key, line in under.lines.items()
        },
        segments={
            key: replace(
                segment,
                stud=replace(segment.stud, species=measured(FIR), grade="No. 2"),
                outside=replace(segment.outside, material=BOARDS, condition=measured("sound")),
            )
            for key, segment in under.segments.items()
        },
        splices={
            key: replace(s, kind="lap", nail="16d common", nails_each_side=measured(8.0))
            for key, s in under.splices.items()
        },
        sills=_each(under.sills, **SOUND_SILL),
        bolts=_each(under.bolts, embedment_in=measured(7.0), hole_in=measured(0.5625), rust=measured("none"))
        | {"bt2": _near_the_end(under.bolts["bt2"])},
        openings={},
        obstructions={},
    )
    segments = {
        key: replace(
            segment,
            material="poured concrete",
            strength_psi=measured(3000.0),
            footing_width_in=measured(12.0),
            depth_in=measured(12.0),
            top_width_in=measured(8.0),
            above_inside_soil_in=measured(10.0),
            above_outside_soil_in=measured(10.0),
        )
        for key, segment in base.segments.items()
        if segment.line != "line5"
    }
    cores = {
        f"core-{key}": FoundationTest(
            segment=key, station_in=stem.from_in + 20.0, kind="core", result=3000.0, unit="psi", by="lab"
        )
        for key, stem in segments.items()
    }
    steps_only = {key: b for key, b in base.breaks.items() if b.kind == "step"}
    base = replace(base, segments=segments, breaks=steps_only, tests=base.tests | cores)
    chimneys = _each(house.survey.building.chimneys, pcf=measured(120.0), tied=measured(False))
    building = replace(house.survey.building, chimneys=chimneys)
    survey = replace(house.survey, site=steady, building=building, underfloor=under, foundation=base)
    alternatives = {"strengthen": _work(), "leave": house.alternatives["leave"]}
    return _plainly_measured(prepare(replace(house, survey=survey, alternatives=alternatives, record={})).best.house)


def _chosen(house: House) -> House:
    """Between the two bounds of what the storeys above turn a check has no figure: one of them is chosen."""
    choices = replace(house.choices, storeys_above="not counted", storeys_above_reason="a test")
    return replace(house, choices=choices)


@cache
def doubtful_house() -> House:
    """The known house with facts that may lie elsewhere: on a line, in the concrete, in the weights and in the soil."""
    house = known_house()
    under, base = house.survey.underfloor, house.survey.foundation
    sills = dict(under.sills)
    for key in ("si1a", "si2", "si3b"):
        sills[key] = replace(sills[key], thickness_in=about(1.5, 1.25, 2.0))
    segments = dict(under.segments)
    segments["sg2"] = replace(segments["sg2"], height_in=about(24.0, 20.0, 30.0))
    splices = dict(under.splices)
    splices["sp1"] = replace(splices["sp1"], nails_each_side=about(8.0, 4.0, 10.0))
    lines = dict(under.lines)
    toenails = replace(lines["line4"].floor_connection, spacing_in=about(16.0, 12.0, 24.0))
    lines["line4"] = replace(lines["line4"], floor_connection=toenails)
    walls = dict(base.segments)
    walls["fs1"] = replace(walls["fs1"], strength_psi=about(2600.0, 1800.0, 3500.0), footing_width_in=about(12, 8, 16))
    walls["fs2"] = replace(walls["fs2"], depth_in=about(12.0, 6.0, 18.0))
    chimneys = {k: replace(c, pcf=about(120.0, 100.0, 140.0)) for k, c in house.survey.building.chimneys.items()}
    survey = replace(
        house.survey,
        building=replace(house.survey.building, chimneys=chimneys),
        underfloor=replace(under, sills=sills, segments=segments, splices=splices, lines=lines),
        foundation=replace(base, segments=walls, tests={}),
    )
    return replace(house, survey=survey)


def _near_the_end(bolt: Bolt) -> Bolt:
    """A sound bolt three inches from the end of its sill, where it may not be counted in full."""
    return replace(bolt, station_in=357.0, embedment_in=measured(7.0), hole_in=measured(0.5625), rust=measured("none"))


def _plainly_measured(thing: Any) -> Any:
    """Every fact that has a value as if a tape had been on it: no range, no doubt."""
    if isinstance(thing, Fact):
        return thing if thing.value is None else measured(thing.value)
    if isinstance(thing, dict):
        return {key: _plainly_measured(item) for key, item in thing.items()}
    if isinstance(thing, tuple):
        return tuple(_plainly_measured(item) for item in thing)
    if not is_dataclass(thing) or isinstance(thing, type):
        return thing
    return replace(thing, **{f.name: _plainly_measured(getattr(thing, f.name)) for f in fields(thing)})


def about(best: float, low: float, high: float) -> Fact[float]:
    """An estimate between two ends."""
    return Fact(value=float(best), low=float(low), high=float(high), state="estimated", how="by eye")


@cache
def sample_house() -> House:
    """Larch Street, the sample that ships."""
    return decode(SAMPLE.read_bytes(), SAMPLE.name)


def _each(collection: dict[str, Any], **changes: Any) -> dict[str, Any]:
    return {key: replace(item, **changes) for key, item in collection.items()}


def _work() -> Alternative:
    """Panels near both ends of every wall line, clips over them, new bolts under them, hold-downs on one line."""
    pieces: dict[str, Piece] = {}
    panels = [
        ("pn11", "sg1a", 0, 96), ("pn12", "sg1b", 264, 360), ("pn21", "sg2", 0, 72), ("pn22", "sg2", 168, 240),
        ("pn31", "sg3a", 0, 96), ("pn32", "sg3b", 264, 360), ("pn41", "sg4", 0, 72), ("pn42", "sg4", 168, 240),
    ]  # fmt: skip
    for n, (key, segment, start, end) in enumerate(panels, start=1):
        bottom: Any = "blocking on sill" if key in ("pn21", "pn22") else "sill"
        pieces[key] = PanelPiece(
            order=n, mark=f"P{n}", segment=segment, from_in=float(start), to_in=float(end), panel=PANEL,
            edge_spacing_in=4.0, bottom=bottom,
        )  # fmt: skip
        if bottom != "sill":
            pieces[f"bk{key[2:]}"] = SillBlockingPiece(
                order=20 + n, segment=segment, from_in=float(start), to_in=float(end), spacing_in=3.0
            )
    for line in ("line1", "line2", "line3", "line4"):
        length = LENGTHS_IN[line]
        stations = [30.0, 78.0, 126.0, length - 126.0 + 12.0, length - 78.0, length - 30.0]
        if length == 240.0:
            stations = [30.0, 78.0, 162.0, 210.0]
        for n, station in enumerate(stations):
            pieces[f"nb-{line}-{n}"] = BoltPiece(
                order=40 + n, mark=f"A{line[-1]}{n}", line=line, station_in=station, anchor="cast-in",
                diameter_in=0.625, embedment_in=7.0, edge_in=3.0, report="anchor report to be named",
            )  # fmt: skip
        pieces[f"ti-{line}"] = TiePiece(
            order=60, mark=f"T{line[-1]}", line=line, from_in=0.0, to_in=length, count=12, capacity_lb=450.0,
            report="clip report to be named",
        )  # fmt: skip
    for n, station in enumerate((3.0, 69.0)):
        pieces[f"hd-{n}"] = HoldDownPiece(
            order=70, mark=f"H{n}", segment="sg2", station_in=station, capacity_lb=3000.0, report="to be named"
        )
    return Alternative(order=1, mark="A", name="Strengthen", purpose="brace every wall line", pieces=pieces)


def with_pieces(house: House, key: str, change: Callable[[str, Piece], Piece | None]) -> House:
    """The house with each piece of one alternative changed, or taken out where ``change`` gives None."""
    alternative = house.alternatives[key]
    pieces = {id: made for id, piece in alternative.pieces.items() if (made := change(id, piece)) is not None}
    return replace(house, alternatives=house.alternatives | {key: replace(alternative, pieces=pieces)})


# --- the same house in other words -----------------------------------------------------------------------------------


def moved(thing: Any, point: Callable[[float, float], tuple[float, float]], angle: Callable[[float], float]) -> Any:
    """Anything of a house with every place on the plan and every direction moved."""
    if isinstance(thing, dict):
        return {key: moved(item, point, angle) for key, item in thing.items()}
    if isinstance(thing, tuple):
        return tuple(moved(item, point, angle) for item in thing)
    if not is_dataclass(thing) or isinstance(thing, (type, Fact)):
        return thing
    changes: dict[str, Any] = {}
    for f in fields(thing):
        value = getattr(thing, f.name)
        if f.name.endswith("_deg") and isinstance(value, float):
            changes[f.name] = angle(value)
        elif is_dataclass(value) or isinstance(value, (dict, tuple)):
            changes[f.name] = moved(value, point, angle)
    made = replace(thing, **changes)
    if isinstance(thing, Point) or {"x_in", "y_in"} <= {f.name for f in fields(thing)}:
        x, y = point(made.x_in, made.y_in)
        made = replace(made, x_in=x, y_in=y)
    return made


def mirrored(house: House) -> House:
    """Seen in a mirror that stands along y: what was east is west. Stations stay, since lines keep their starts."""
    return moved(house, lambda x, y: (-x, y), lambda deg: (180.0 - deg) % 360)  # type: ignore[no-any-return]


def turned(house: House) -> House:
    """Turned by a quarter to the left: what ran along x runs along y."""
    return moved(house, lambda x, y: (-y, x), lambda deg: (deg + 90.0) % 360)  # type: ignore[no-any-return]


def shifted(house: House, by_x: float, by_y: float) -> House:
    """Drawn elsewhere on the plan."""
    return moved(house, lambda x, y: (x + by_x, y + by_y), lambda deg: deg)  # type: ignore[no-any-return]


def run_backward(house: House, line_id: str) -> House:
    """The same house with one line written down from its other end: every station on it is counted from there."""
    line = house.survey.underfloor.lines[line_id]
    corners = house.survey.building.corners
    a, b = corners[line.start], corners[line.end]
    length = abs(b.x_in - a.x_in) + abs(b.y_in - a.y_in)
    on_line = {k for k, s in house.survey.underfloor.segments.items() if s.line == line_id}
    stems = {k for k, s in house.survey.foundation.segments.items() if s.line == line_id}

    def back(thing: Any) -> Any:
        if isinstance(thing, dict):
            return {key: back(item) for key, item in thing.items()}
        if not is_dataclass(thing) or isinstance(thing, (type, Fact)):
            return thing
        names = {f.name for f in fields(thing)}
        changes = {
            name: back(getattr(thing, name))
            for name in names
            if isinstance(getattr(thing, name), dict) or is_dataclass(getattr(thing, name))
        }
        mine = getattr(thing, "line", None) == line_id or getattr(thing, "segment", None) in (on_line | stems)
        if mine and "station_in" in names:
            changes["station_in"] = length - thing.station_in
        if mine and {"from_in", "to_in"} <= names:
            changes |= {"from_in": length - thing.to_in, "to_in": length - thing.from_in}
        return replace(thing, **changes)

    made: House = back(house)
    lines = made.survey.underfloor.lines | {line_id: replace(line, start=line.end, end=line.start)}
    return replace(made, survey=replace(made.survey, underfloor=replace(made.survey.underfloor, lines=lines)))


def shuffled(house: House, chance: Random) -> House:
    """The same file with the members of every collection written in another order."""

    def mix(thing: Any) -> Any:
        if isinstance(thing, dict):
            keys = list(thing)
            chance.shuffle(keys)
            return {key: mix(thing[key]) for key in keys}
        if not is_dataclass(thing) or isinstance(thing, (type, Fact)):
            return thing
        return replace(thing, **{f.name: mix(getattr(thing, f.name)) for f in fields(thing)})

    return mix(house)  # type: ignore[no-any-return]


def listed_otherwise(house: House, chance: Random) -> House:
    """The same house with other order keys: lists on screen and paper come in another order."""

    def mix(thing: Any) -> Any:
        if isinstance(thing, dict):
            return {key: mix(item) for key, item in thing.items()}
        if not is_dataclass(thing) or isinstance(thing, (type, Fact)):
            return thing
        changes = {f.name: mix(getattr(thing, f.name)) for f in fields(thing)}
        if "order" in changes:
            changes["order"] = chance.uniform(-100.0, 100.0)
        return replace(thing, **changes)

    return mix(house)  # type: ignore[no-any-return]
