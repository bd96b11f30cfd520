"""New work on a plan: each piece where it goes, with its neutral mark (P panel, T tie, H hold-down, S splice, A anchor,
F footing), and the list that says what each mark is: steel, fastener, capacity, never a maker's name.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from groundsill.house.survey import in_order
from groundsill.papers.document import Column, GroupRow, Row, TableBlock
from groundsill.papers.drawing import Anchor, Layer, Line, Mark, Point, Polygon, Polyline, Symbol, Text, layer
from groundsill.papers.views.inner_view import inner_told, strip_marks
from groundsill.papers.views.plan_frame import Frame
from groundsill.papers.views.plan_labels import SMALL, Labels
from groundsill.papers.views.words import DASH, Units, counted, quantity, short, size, span_words, tape
from groundsill.work.document import Alternative, House
from groundsill.work.pieces import (
    BoltPiece,
    ConcretePiece,
    DowelPiece,
    DrainagePiece,
    HoldDownPiece,
    InnerFoundationPiece,
    PanelPiece,
    Piece,
    SideplatePiece,
    SillBlockingPiece,
    SoilPiece,
    SplicePiece,
    StrapPiece,
    TiePiece,
)

__all__ = ["line_of", "mark_runs", "work_marks", "work_table"]

_LOW = BoltPiece | SideplatePiece | ConcretePiece | DowelPiece | SoilPiece
_DRAIN = Layer("C-STRM-N", 25, "dashed", style="new")
_EARTH = Layer("C-GRAD-N", 25, style="new")
_KINDS: tuple[tuple[type, str], ...] = (
    (PanelPiece, "Panels (P)"),
    (SillBlockingPiece, "Blocking on the sill"),
    (TiePiece, "Ties (T)"),
    (HoldDownPiece, "Hold-downs (H)"),
    (SplicePiece, "Splices (S)"),
    (StrapPiece, "Straps (S)"),
    (BoltPiece, "Anchors through the sill (A)"),
    (SideplatePiece, "Anchors by side plates (A)"),
    (InnerFoundationPiece, "New foundation inside the old (F)"),
    (ConcretePiece, "Concrete (F)"),
    (DowelPiece, "Bars glued into old concrete (D)"),
    (DrainagePiece, "Drainage"),
    (SoilPiece, "Soil"),
)


def line_of(house: House, piece: Piece) -> str | None:
    """The line a piece stands on, by its own line or by its wall segment's; None when it has none or it is gone."""
    under = house.survey.underfloor
    if isinstance(piece, (PanelPiece, SillBlockingPiece, HoldDownPiece)):
        segment = under.segments.get(piece.segment)
        return segment.line if segment is not None else None
    if isinstance(piece, DrainagePiece | InnerFoundationPiece):
        return None
    return piece.line if piece.line in under.lines else None


def work_marks(
    house: House, alternative: Alternative, known: Mapping[str, Frame], labels: Labels, units: Units
) -> Iterator[Mark]:
    """Every piece of an alternative that has a place on the plan; the words find theirs after the pieces are drawn.

    ``house`` is the house with the lines that the work makes.
    """
    words: list[_Words] = []
    for id, piece in in_order(alternative.pieces):
        frame = known.get(line_of(house, piece) or "")
        address = f"piece/{id}"
        if isinstance(piece, InnerFoundationPiece):
            if id in known:
                yield from strip_marks(house, piece, known[id], address, labels, units)
        elif isinstance(piece, DrainagePiece):
            points = tuple((p.x_in, p.y_in) for p in piece.path)
            if len(points) > 1:
                yield Polyline(points, _DRAIN, address, piece.what)
                yield _drain_label(piece, points, address, labels)
        elif isinstance(piece, ConcretePiece) and len(piece.outline) > 2:
            yield from _footing(piece, tuple((p.x_in, p.y_in) for p in piece.outline), address)
        elif frame is not None:
            yield from _below(piece, frame, address) if isinstance(piece, _LOW) else _on_wall(piece, frame, address)
            words.append(_Words(piece, frame, address))
    for one in sorted(words, key=lambda one: not isinstance(one.piece, BoltPiece | SideplatePiece)):
        yield from _worded(one, labels)


@dataclass(frozen=True, slots=True)
class _Words:
    """A piece whose mark still has to be written."""

    piece: Piece
    frame: Frame
    address: str


def _on_wall(piece: Piece, frame: Frame, address: str) -> Iterator[Mark]:
    """What is fastened to wall, plate and floor."""
    said = f"{piece.kind} {piece.mark}".strip()
    match piece:
        case PanelPiece():
            side = 1.0 if piece.face == "outside" else -1.0
            box = frame.box(piece.from_in, piece.to_in, side * 0.06 * frame.paper, side * 0.12 * frame.paper)
            yield Polygon(box, layer("new panel"), "hatched", address, said)
        case SillBlockingPiece():
            a, b = frame.at(piece.from_in, paper=-0.045), frame.at(piece.to_in, paper=-0.045)
            yield Line(a, b, layer("new wood"), address, said)
        case TiePiece() | StrapPiece():
            off, ink = _off(piece), layer("new hardware")
            yield Line(frame.at(piece.from_in, paper=off), frame.at(piece.to_in, paper=off), ink, address, said)
            for station in (piece.from_in, piece.to_in):
                ends = (frame.at(station, paper=off - 0.04), frame.at(station, paper=off + 0.04))
                yield Line(*ends, ink, address, said)
        case HoldDownPiece():
            at = frame.at(piece.station_in, paper=-0.09)
            yield Symbol("hold-down", at, layer("new hardware"), 7.0, address=address, label=said)
        case SplicePiece():
            at = frame.at(piece.station_in, paper=-0.04)
            yield Symbol("strap", at, layer("new hardware"), 11.0, rotation=frame.turn, address=address, label=said)


def _below(piece: Piece, frame: Frame, address: str) -> Iterator[Mark]:
    """What goes into or onto foundation and ground."""
    said = f"{piece.kind} {piece.mark}".strip()
    match piece:
        case BoltPiece() | SideplatePiece():
            yield Symbol("bolt", frame.at(piece.station_in), layer("new anchor"), 7.0, address=address, label=said)
        case ConcretePiece():
            box = frame.box(0.0, frame.length, -0.16 * frame.paper, -0.30 * frame.paper)
            yield Polygon(box, layer("new concrete"), "concrete", address, said)
        case DowelPiece():
            for station in _stations(piece):
                yield Symbol("bolt", frame.at(station), layer("new anchor"), 5.0, address=address, label=said)
        case SoilPiece():
            box = frame.box(piece.from_in, piece.to_in, 0.30 * frame.paper, 0.40 * frame.paper)
            yield Polygon(box, _EARTH, "earth", address, said)


def _stations(piece: DowelPiece) -> tuple[float, ...]:
    """Where the bars of a row stand, evenly from the first to the last."""
    step = (piece.to_in - piece.from_in) / max(piece.count - 1, 1)
    return tuple(piece.from_in + n * step for n in range(piece.count))


def _off(piece: TiePiece | StrapPiece) -> float:
    return -0.34 if isinstance(piece, TiePiece) else -0.46


def _worded(one: _Words, labels: Labels) -> Iterator[Mark]:
    """The mark of one piece, beside it."""
    piece, frame, address = one.piece, one.frame, one.address
    said = f"{piece.kind} {piece.mark}".strip()

    def along(station: float, text: str, *offs: float) -> Text:
        return labels.along(frame, station, text, offs, address, said, heavy=True)

    match piece:
        case PanelPiece():
            side = 1.0 if piece.face == "outside" else -1.0
            yield along((piece.from_in + piece.to_in) / 2, piece.mark, side * 0.19, side * 0.27)
        case TiePiece() | StrapPiece():
            off = _off(piece)
            count = f" ({piece.count})" if isinstance(piece, TiePiece) else ""
            yield along((piece.from_in + piece.to_in) / 2, f"{piece.mark}{count}", off - 0.08, off + 0.08)
        case HoldDownPiece():
            yield along(piece.station_in, piece.mark, -0.20, -0.27)
        case SplicePiece():
            yield along(piece.station_in, piece.mark, -0.13, -0.20, 0.13)
        case BoltPiece() | SideplatePiece():
            yield labels.across(frame, piece.station_in, piece.mark, (0.08,), address)
        case ConcretePiece():
            yield along(frame.middle, piece.mark or piece.purpose, -0.36, -0.23)
        case DowelPiece():
            yield along((piece.from_in + piece.to_in) / 2, f"{piece.mark} ({piece.count})".strip(), -0.13, 0.13)
        case SoilPiece():
            yield along((piece.from_in + piece.to_in) / 2, piece.mark or piece.what, 0.47, 0.24)


def _drain_label(piece: DrainagePiece, points: tuple[Point, ...], address: str, labels: Labels) -> Text:
    """A drain's mark and name at the end of its path, above or below it."""
    (x, y), words, off = points[-1], f"{piece.mark} {piece.what}".strip(), 0.05 * labels.denominator
    ink = layer("text")
    places: tuple[tuple[Point, Anchor], ...] = (
        ((x + off, y), "start"),
        ((x - off, y + off), "end"),
        ((x - off, y - off), "end"),
    )
    return labels.first(
        Text(at, words, ink, SMALL, anchor=anchor, baseline="middle", heavy=True, address=address)
        for at, anchor in places
    )


def _footing(piece: ConcretePiece, points: tuple[Point, ...], address: str) -> Iterator[Mark]:
    yield Polygon(points, layer("new concrete"), "concrete", address, f"{piece.purpose} {piece.mark}".strip())
    xs, ys = [x for x, _ in points], [y for _, y in points]
    middle = ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    words = piece.mark or piece.purpose
    yield Text(middle, words, layer("text"), SMALL, anchor="middle", baseline="middle", heavy=True, address=address)


# --- the list of new work -------------------------------------------------------------------------------------------


def work_table(house: House, alternative: Alternative, units: Units) -> TableBlock:
    """What each mark on the plan is: pieces alike but for their place share a row; reports stand under the table."""
    rows: list[Row] = []
    reports: dict[str, int] = {}
    for kind, heading in _KINDS:
        pieces = [(id, piece) for id, piece in in_order(alternative.pieces) if isinstance(piece, kind)]
        if pieces:
            rows.append(GroupRow(f"{heading}: {len(pieces)}"))
            rows.extend(_work_rows(house, pieces, units, reports))
    columns = (
        Column("Mark", share=0.6),
        Column("Where, from the start of the line", share=1.3),
        Column("What", share=1.3),
        Column("Capacity", share=0.6),
    )
    notes = tuple(f"({number}) {report}" for report, number in reports.items())
    return TableBlock(columns, tuple(rows), f"New work: {alternative.name}", notes)


def _work_rows(
    house: House, pieces: Sequence[tuple[str, Piece]], units: Units, reports: dict[str, int]
) -> Iterator[Row]:
    alike: dict[tuple[str, str], list[tuple[str, str, str]]] = {}
    for id, piece in pieces:
        line = line_of(house, piece)
        where, what, capacity = _told(piece, units)
        report = getattr(piece, "report", "")
        pointer = f"({reports.setdefault(report, len(reports) + 1)})" if report else ""
        on = house.survey.underfloor.lines[line].mark if line else ""
        alike.setdefault((what, f"{capacity} {pointer}".strip()), []).append((piece.mark or id, on, where))
    for (what, capacity), places in alike.items():
        lines: dict[str, list[str]] = {}
        for _, on, where in places:
            lines.setdefault(on, []).extend([where] if where else [])
        where = "; ".join(": ".join(filter(None, (on, ", ".join(found)))) for on, found in lines.items())
        yield (mark_runs([mark for mark, _, _ in places]), where or DASH, what, capacity or DASH)


def mark_runs(marks: Sequence[str]) -> str:
    """Marks with three or more in a row drawn together: ``A1–A6, A9``."""
    runs: list[list[str]] = []
    for mark in marks:
        if runs and _follows(runs[-1][-1], mark):
            runs[-1].append(mark)
        else:
            runs.append([mark])
    return ", ".join(f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(run) for run in runs)


def _follows(one: str, next_one: str) -> bool:
    """Whether two marks have the same letters and the second the next number."""
    letters, number = one.rstrip("0123456789"), next_one.rstrip("0123456789")
    a, b = one[len(letters) :], next_one[len(number) :]
    return letters == number and a.isdigit() and b.isdigit() and int(b) == int(a) + 1


def _told(piece: Piece, units: Units) -> tuple[str, str, str]:
    """Where on the line, what it is, and what it is good for."""
    match piece:
        case PanelPiece():
            made_of = "" if piece.made_of == "plywood" else f" of {piece.made_of}"
            nails = f"{piece.panel}{made_of}, nails {size(piece.edge_spacing_in, units)} on centre at edges"
            over = "" if piece.over == "the studs" else f" over {piece.over}"
            bottom = f"on the {piece.face}{over}; bottom edge to {_bottoms(piece)}"
            return span_words(piece.from_in, piece.to_in, units), f"{nails}, {bottom}", ""
        case SillBlockingPiece():
            nails = f"{piece.nail} nails at {size(piece.spacing_in, units)}, {counted(piece.rows, 'row')}"
            return (
                span_words(piece.from_in, piece.to_in, units),
                f"{size(piece.thickness_in, units)} thick, {nails}",
                "",
            )
        case TiePiece():
            rim = ", with new blocking between the joists" if piece.adds_rim else ""
            each = f"{_load(piece, units)} each" if piece.capacity_lb is not None else ""
            clips = f"{piece.count} clips, floor to top plate{rim}{_made(piece, units)}"
            return span_words(piece.from_in, piece.to_in, units), clips, each
        case HoldDownPiece():
            thick, deep = size(piece.anchor_diameter_in, units), size(piece.anchor_embedment_in, units)
            seat = "" if piece.seat == "inside of the end post" else f", {piece.seat}"
            rod = f"rod {thick}, {deep} into the foundation{seat}"
            return (
                tape(piece.station_in, units),
                rod,
                quantity(piece.capacity_lb, "lb", units),
            )
        case SplicePiece():
            joint = f"across the joint of the {piece.member}{_made(piece, units)}"
            return tape(piece.station_in, units), joint, _load(piece, units)
        case StrapPiece():
            flat = f"flat strap along the line{_made(piece, units)}"
            return span_words(piece.from_in, piece.to_in, units), flat, _load(piece, units)
        case _:
            return _told_below(piece, units)


def _told_below(piece: Piece, units: Units) -> tuple[str, str, str]:
    """The same for what goes into or onto foundation and ground."""
    match piece:
        case BoltPiece():
            edge = "" if piece.edge_in is None else f", {size(piece.edge_in, units)} to the face of the concrete"
            washer = ", plate washer" if piece.plate_washer else ""
            thick, deep = size(piece.diameter_in, units), size(piece.embedment_in, units)
            kind, how = _bolt_kind(piece.anchor)
            hole = "" if piece.hole_in is None else f" in a hole of {size(piece.hole_in, units)}"
            bolt = f"{thick} {kind}{how}, {deep} deep{hole}{edge}{washer}"
            return tape(piece.station_in, units), bolt, ""
        case SideplatePiece():
            return tape(piece.station_in, units), _plate_words(piece, units), _load(piece, units)
        case InnerFoundationPiece():
            return inner_told(piece, units)
        case ConcretePiece():
            mix = quantity(piece.strength_psi, "psi", units)
            return "", f"{piece.purpose}, {size(piece.depth_in, units)} deep", f"concrete {mix}"
        case DowelPiece():
            edge = "" if piece.edge_in is None else f", {size(piece.edge_in, units)} from the nearer face"
            glued = f"{piece.count} {piece.bar} glued {size(piece.embedment_in, units)} into the {piece.into}{edge}"
            return span_words(piece.from_in, piece.to_in, units), glued, ""
        case DrainagePiece():
            return "", ", ".join(filter(None, (piece.what, piece.note))), ""
        case SoilPiece():
            return span_words(piece.from_in, piece.to_in, units), f"{piece.what}, {size(piece.depth_in, units)}", ""
    raise TypeError(f"{type(piece).__name__} has no words here")


def _load(piece: TiePiece | SplicePiece | StrapPiece | SideplatePiece, units: Units) -> str:
    """The load of its report; nothing where it is counted by its steel and fasteners."""
    return "" if piece.capacity_lb is None else quantity(piece.capacity_lb, "lb", units)


def _made(piece: TiePiece | SplicePiece | StrapPiece, units: Units) -> str:
    """Generic hardware in words."""
    made = piece.made_of
    if made is None:
        return ""
    steel = f"{made.steel}, {size(made.thickness_in, units)} x {size(made.width_in, units)}"
    return f": {steel}, {counted(made.nails, f'{made.nail} nail')} each side"


def _plate_words(piece: SideplatePiece, units: Units) -> str:
    """A side plate in words: its steel, screws and anchors as far as they are given."""
    told = f"plate on the face of the stem, anchors {size(piece.from_top_in, units)} below its top"
    if piece.thickness_in is not None and piece.width_in is not None:
        told = f"{piece.steel} {size(piece.thickness_in, units)} x {size(piece.width_in, units)} {told}"
    if piece.screw and piece.screw_length_in is not None:
        row = f"{counted(piece.screws, piece.screw)} {size(piece.screw_length_in, units)} long"
        told += f"; {row}, {size(piece.screw_spacing_in, units)} apart, into the side of the sill"
    if piece.anchor_diameter_in is not None and piece.anchor_embedment_in is not None:
        thick, deep = size(piece.anchor_diameter_in, units), size(piece.anchor_embedment_in, units)
        kind, how = _bolt_kind(piece.anchor)
        row = f"{counted(piece.anchors, kind)} {thick}{how}, {deep} deep"
        if piece.anchor_hole_in is not None:
            row += f" in a hole of {size(piece.anchor_hole_in, units)}"
        if piece.anchor_plate_in2 is not None:
            row += f", a steel plate of {short(piece.anchor_plate_in2)} sq in. on the far side"
        told += f"; {row}, {size(piece.anchor_spacing_in, units)} apart"
    return told


def _bolt_kind(anchor: str) -> tuple[str, str]:
    """What an anchor is called, and how it is set where the name does not say so."""
    named = {"through-bolt": ("through-bolt", ""), "embedded at 22.5 degrees": ("bolt", " embedded at 22.5 degrees")}
    return named.get(anchor, (f"{anchor} {'bolt' if anchor == 'grouted' else 'anchor'}", ""))


def _bottoms(piece: PanelPiece) -> str:
    return {"sill": "the sill", "blocking on sill": "blocking on the sill"}[piece.bottom]
