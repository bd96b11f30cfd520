"""How the bolts of a line in weak concrete share: a picture of the sill with every bolt's part, tables, and what to do.

In the picture the sill lies from end to end with its joints; above it are the braced parts that press on it, below it
hangs a bar at every bolt, as long as the force on it: grey elastically, the dashed outline with hole slack, the dotted
line an even share.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from groundsill.loadpath.shares import BoltShare, LineShares, SillShares
from groundsill.papers.document import Block, BulletList, Column, Figure, Paragraph, Row, TableBlock, strong
from groundsill.papers.drawing import Circle, Drawing, Layer, Line, Mark, Polygon, Text
from groundsill.papers.letters import text_width
from groundsill.papers.sheet import FULL_SIZE
from groundsill.papers.views.words import DASH, Units, counted, quantity, sentence, short, size, tape

__all__ = ["bolts_figure", "bolts_table", "joints_table", "share_blocks", "told_in_short", "told_of_pieces"]

WIDTH, HANGS = 5.5, 1.25
"""Paper inches: the whole line, and the longest bar under a bolt."""
_BAR, _SILL, _PANEL, _SIZE = 0.075, 0.07, 0.16, 6.5

_WOOD = Layer("shares sill", 35, style="existing")
_PRESS = Layer("shares panel", 18, style="new")
_ELASTIC = Layer("shares elastic", 25, style="plain")
_SLACK = Layer("shares slack", 18, "dashed", style="note")
_EVEN = Layer("shares even", 13, "dotted", style="note", ink=0.7)
_STRAP = Layer("shares strap", 70, style="new")
_WORDS = Layer("shares words", 18, style="note")


def share_blocks(mark: str, shares: LineShares, units: Units) -> Iterator[Block]:
    """The chapter's part: what was done and why, the picture, the shares of the bolts, the joints, the assumptions."""
    yield Paragraph((strong("How the bolts share. "), told_in_short(shares, units)))
    yield bolts_figure(mark, shares, units)
    yield bolts_table(mark, shares, units)
    yield BulletList(tuple(told_of_pieces(shares, units)))
    if shares.joints:
        yield joints_table(mark, shares, units)
    yield Paragraph(f"Taken here: {'; '.join(shares.notes)}.")


def told_in_short(shares: LineShares, units: Units) -> str:
    """Why, how many bolts really work, what more a continuous sill would bring, how far it passes force on."""
    said = [
        sentence(f"Sharing alike is not taken for granted here, since {shares.why}"),
        f"Elastically {short(shares.works)} of {counted(shares.count, 'bolt')} work: so many, sharing evenly, would "
        "each take what the worst one takes.",
    ]
    if shares.unheld_lb > 0.5:
        unheld = quantity(shares.unheld_lb, "lb", units)
        said.append(f"{unheld} more comes down on pieces of the sill that no bolt holds.")
    if shares.joints:
        said.append(f"Strapped into one piece, {short(shares.works_as_one)} of them would.")
    axial = quantity(shares.axial_lb, "lb", units)
    said.append(f"The greatest pull or push in the sill is {axial}, {tape(shares.axial_at_in, units)} along the line.")
    if shares.transfer_in is not None:
        said.append(
            f"Beyond a panel's end what is left in the sill falls to 37 % over each {size(shares.transfer_in, units)}."
        )
    said.append(f"Forces are {shares.level}: {quantity(shares.force_lb, 'lb', units)} on the line.")
    return " ".join(said)


def told_of_pieces(shares: LineShares, units: Units) -> Iterator[str]:
    """Of each sill piece: what comes down on it, how many of its bolts work in each state, what its wood stands on."""
    for sill in shares.sills:
        states = [f"elastic {short(sill.works_elastic)}", f"with hole slack {short(sill.works_slack)}"]
        if sill.works_yield is not None:
            states.append(f"all at yield {short(sill.works_yield)}")
        force = quantity(sill.force_lb, "lb", units)
        if not sill.works_elastic:
            yield f"Sill {_named(sill)}: no force comes to its bolts."
            continue
        yield sentence(
            f"Sill {_named(sill)}: {force} comes down on it; of {counted(len(sill.bolts), 'bolt')} there work "
            f"{', '.join(states)}. In wood they {'may' if sill.by_yield else 'may not'} count as all at yield: "
            f"{sill.yield_words}"
        )


def bolts_table(mark: str, shares: LineShares, units: Units) -> TableBlock:
    """Every bolt in every state; breakout is held to the greatest of them."""
    columns = (
        Column("Bolt"),
        Column("Station", align="end"),
        Column("Play", align="end"),
        Column("Evenly", align="end"),
        Column("Elastic", align="end"),
        Column("Slack", align="end"),
        Column("At yield", align="end"),
        Column("Wood bears", align="end"),
    )
    rows = tuple(_row(bolt, units) for sill in shares.sills for bolt in sill.bolts)
    notes = (
        "Force on each bolt. Play: how far its hole in the sill lets it move. Slack: it touches first of all, and "
        "brings no more than its joint in wood bears at the high end of what is expected. Breakout of the concrete is "
        "held to the greatest of the four. Wood bears: what its joint in wood is expected to yield at; the basis of "
        "the anchors may count on that, with a reason.",
    )
    return TableBlock(columns, rows, f"{mark}: what each bolt takes", notes)


def _row(bolt: BoltShare, units: Units) -> Row:
    forces = (bolt.even_lb, bolt.elastic_lb, bolt.slack_lb, bolt.yield_lb, bolt.wood_lb)
    return (
        bolt.name,
        tape(bolt.station_in, units),
        size(bolt.slack_in, units) if bolt.slack_in else "none",
        *(quantity(force, "lb", units) for force in forces),
    )


def joints_table(mark: str, shares: LineShares, units: Units) -> TableBlock:
    """Every joint of the sill: what goes through it, and the strap that would make one piece of the sill."""
    columns = (
        Column("Joint at", align="end"),
        Column("Tied by", share=1.0),
        Column("Goes through it", "elastic", "end"),
        Column("With slack", "at most", "end"),
        Column("A strap needs", "allowable", align="end"),
    )
    rows = tuple(
        (
            tape(joint.station_in, units),
            joint.tied_by or "nothing",
            quantity(joint.pull_lb, "lb", units) if joint.tied_by else DASH,
            quantity(joint.slack_lb, "lb", units) if joint.tied_by else DASH,
            "do not meet" if joint.strap_lb is None else quantity(joint.strap_lb, "lb", units),
        )
        for joint in shares.joints
    )
    notes = (
        "A strap needs what passes elastically with every joint strapped as one piece, at allowable-stress level. It "
        "is held to that: with slack more may come on it, until it has stretched by the play of the holes beyond it. A "
        "strap that is laid and whose give is told gets less, since it gives: what goes through it stands before that.",
    )
    return TableBlock(columns, rows, f"{mark}: joints of the sill", notes)


def _named(sill: SillShares) -> str:
    return sill.mark or sill.id


# ---- The picture ----------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Paper:
    """From stations and pounds to paper inches."""

    start: float
    across: float
    down: float

    def x(self, station: float) -> float:
        """Where a station lies."""
        return (station - self.start) * self.across

    def y(self, force: float) -> float:
        """How far down a bar of a force reaches."""
        return -force * self.down


def bolts_figure(mark: str, shares: LineShares, units: Units) -> Figure:
    """The sill of one line with its braced parts above and a bar for every bolt below."""
    ends = [x for sill in shares.sills for x in (sill.from_in, sill.to_in)]
    ends += [x for panel in shares.panels for x in (panel.from_in, panel.to_in)]
    ends += [joint.station_in for joint in shares.joints]
    start, end = min(ends), max(ends)
    most = max((bolt.worst_lb for sill in shares.sills for bolt in sill.bolts), default=1.0)
    paper = _Paper(start, WIDTH / (end - start), HANGS / most)
    caption = f"{mark}: what each bolt takes of the force on the sill"
    marks = (*_above(shares, paper, units), *_bolts(shares, paper, units), *_joints(shares, paper))
    drawing = Drawing(caption, marks)
    return Figure(drawing, caption, _alternative(shares, units), scale=FULL_SIZE, show_scale=False)


def _above(shares: LineShares, paper: _Paper, units: Units) -> Iterator[Mark]:
    """The sill pieces that have bolts, and over them the parts that press on them with their unit shears."""
    for sill in shares.sills:
        left, right = paper.x(sill.from_in), paper.x(sill.to_in)
        yield Polygon(((left, 0), (right, 0), (right, _SILL), (left, _SILL)), _WOOD, "wood")
        middle = (left + right) / 2
        yield Text((middle, _SILL + 0.03), _named(sill), _WORDS, _SIZE, anchor="middle")
    low = _SILL + 0.16
    for panel in shares.panels:
        left, right = paper.x(panel.from_in), paper.x(panel.to_in)
        yield Polygon(((left, low), (right, low), (right, low + _PANEL), (left, low + _PANEL)), _PRESS, "hatched")
        words = quantity(panel.shear_plf, "plf", units)
        if text_width(words, _SIZE) / 72 < right - left + 0.3:
            yield Text(((left + right) / 2, low + _PANEL + 0.03), words, _WORDS, _SIZE, anchor="middle")


def _bolts(shares: LineShares, paper: _Paper, units: Units) -> Iterator[Mark]:
    """A bar for every bolt, its mark under it, and the even share of each piece."""
    every = [bolt for sill in shares.sills for bolt in sill.bolts]
    places = [paper.x(bolt.station_in) for bolt in every]
    close = min((b - a for a, b in zip(places, places[1:], strict=False)), default=1.0) < 0.3
    n = 0
    for sill in shares.sills:
        for bolt in sill.bolts:
            x = paper.x(bolt.station_in)
            said = f"bolt {bolt.name}: {quantity(bolt.elastic_lb, 'lb', units)} elastic"
            yield _bar(x, paper.y(bolt.elastic_lb), said, slack=False)
            yield _bar(x, paper.y(bolt.slack_lb), f"bolt {bolt.name} with hole slack", slack=True)
            foot = paper.y(max(bolt.elastic_lb, bolt.slack_lb)) - 0.11 - (0.1 if close and n % 2 else 0.0)
            yield Text((x, foot), bolt.name, _WORDS, _SIZE, anchor="middle")
            yield Circle((x, _SILL / 2), 0.018, _WORDS, "ink")
            n += 1
        if sill.bolts:
            y = paper.y(sill.bolts[0].even_lb)
            yield Line((paper.x(sill.from_in), y), (paper.x(sill.to_in), y), _EVEN)


def _bar(x: float, foot: float, said: str, slack: bool) -> Polygon:
    left, right = x - _BAR / 2, x + _BAR / 2
    points = ((left, 0.0), (right, 0.0), (right, foot), (left, foot))
    return Polygon(points, _SLACK if slack else _ELASTIC, "none" if slack else "tint", label=said)


def _joints(shares: LineShares, paper: _Paper) -> Iterator[Mark]:
    """Every joint as a cut through the sill, and a strap over each that something ties."""
    for joint in shares.joints:
        x = paper.x(joint.station_in)
        yield Line((x, -0.05), (x, _SILL + 0.05), _WOOD, label=f"joint at {joint.station_in / 12:.1f} ft")
        if joint.tied_by:
            yield Line((x - 0.12, _SILL), (x + 0.12, _SILL), _STRAP, label=joint.tied_by)


def _alternative(shares: LineShares, units: Units) -> str:
    told = [
        f"{bolt.name} at {tape(bolt.station_in, units)}: {quantity(bolt.elastic_lb, 'lb', units)} elastic, "
        f"{quantity(bolt.slack_lb, 'lb', units)} with hole slack, {quantity(bolt.even_lb, 'lb', units)} evenly"
        for sill in shares.sills
        for bolt in sill.bolts
    ]
    panels = [f"{tape(p.from_in, units)} to {tape(p.to_in, units)}" for p in shares.panels]
    return f"Braced parts press on the sill from {', '.join(panels)}. {'; '.join(told)}."
