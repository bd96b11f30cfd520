"""How bolts share, on paper and terminal: every bolt and joint, in the house's units, and in the picture."""

from __future__ import annotations

import io
from typing import Any

import pytest
from rich.console import Console

from groundsill.cli.bolts_told import bolts_told, works_told
from groundsill.doors.plain import plain
from groundsill.loadpath.shares import BoltShare, JointPull, LineShares, PanelShear, SillShares
from groundsill.papers.document import Document, Figure, TableBlock, plain_text
from groundsill.papers.drawing import Drawing, Line, Polygon, Text
from groundsill.papers.views.bolt_shares_view import HANGS, WIDTH, bolts_figure, bolts_table, joints_table, share_blocks
from groundsill.papers.writers.terminal import to_text


def bolt(mark: str, station: float, elastic: float, slack: float, yields: float | None = 1000.0) -> BoltShare:
    return BoltShare(f"id-{mark}", mark, station, 95_459.0, 0.0625, 2100.0, elastic, slack, yields, 1000.0)


SHARES = LineShares(
    "the concrete of C1 crumbles", "for the overstrength force (17.10.6)", 5000.0,
    (
        SillShares(
            "s1", "M1", 0.0, 120.0, 8.25e6, 3000.0, (bolt("A1", 30.0, 1200.0, 3000.0), bolt("A2", 42.0, 800.0, 2900.0)),
            1.67, 1.0, 2.0, True, "the wood yields before the concrete breaks, at expected strengths",
        ),
        SillShares("s2", "M2", 120.0, 200.0, 8.25e6, 2000.0, (bolt("A3", 150.0, 2000.0, 2000.0, None),), 1.0, 1.0, None,
                   False, "what the bolts yield at in wood is not known"),
    ),
    (JointPull("s1", 120.0, "splice S1 (report 9)", 250.0, 400.0, 310.0), JointPull("s2", 200.0, "", 0.0, 0.0, None)),
    (PanelShear(24.0, 72.0, 750.0),),
    3, 2.5, 2.9, 900.0, 72.0, 32.2, 600.0, ("the sill as an elastic bar",),
)  # fmt: skip


def figure() -> Figure:
    return bolts_figure("L1", SHARES, "us")


def test_the_table_holds_every_bolt_in_every_state() -> None:
    rows = [
        [plain_text(cell) for cell in row] for row in bolts_table("L1", SHARES, "us").rows if isinstance(row, tuple)
    ]
    assert rows[0] == ["A1", "2'-6\"", "1/16 in", "1,000 lb", "1,200 lb", "3,000 lb", "1,000 lb", "2,100 lb"]
    assert rows[2] == ["A3", "12'-6\"", "1/16 in", "1,000 lb", "2,000 lb", "2,000 lb", "–", "2,100 lb"]
    assert plain_text(bolts_table("L1", SHARES, "si").rows[0][4]) == "5.34 kN"  # type: ignore[index]


def test_the_joints_tell_what_goes_through_them_and_the_strap() -> None:
    rows = [
        [plain_text(cell) for cell in row] for row in joints_table("L1", SHARES, "us").rows if isinstance(row, tuple)
    ]
    assert rows == [
        ["10'-0\"", "splice S1 (report 9)", "250 lb", "400 lb", "310 lb"],
        ["16'-8\"", "nothing", "–", "–", "do not meet"],
    ]


def test_the_chapter_says_why_how_many_work_and_what_the_wood_stands_on() -> None:
    text = " ".join(to_text(Document("bolts", tuple(share_blocks("L1", SHARES, "us"))), 200).split())
    for words in (
        "since the concrete of C1 crumbles", "2.5 of 3 bolts work",
        "600 lb more comes down on pieces of the sill that no bolt holds", "Strapped into one piece, 2.9 of them would",
        "The greatest pull or push in the sill is 900 lb, 6'-0\" along the line", "37 % over each 32 3/16 in",
        "Sill M1: 3,000 lb comes down on it; of 2 bolts there work elastic 1.67, with hole slack 1, all at yield 2",
        "In wood they may not count as all at yield: what the bolts yield at in wood is not known",
        "A1 at 2'-6\": 1,200 lb elastic, 3,000 lb with hole slack, 1,000 lb evenly",
        "Taken here: the sill as an elastic bar.",
    ):  # fmt: skip
        assert words in text


def test_a_bar_hangs_under_every_bolt_as_long_as_its_force() -> None:
    drawing = figure().drawing
    assert isinstance(drawing, Drawing)
    bars = {m.label: m for m in drawing.marks if isinstance(m, Polygon) and m.label.startswith("bolt")}
    assert len(bars) == 6
    foot = {label: min(y for _, y in bar.points) for label, bar in bars.items()}
    assert foot["bolt A1 with hole slack"] == pytest.approx(-HANGS)
    assert foot["bolt A1: 1,200 lb elastic"] == pytest.approx(-HANGS * 1200 / 3000)
    middles = [sum(x for x, _ in bar.points) / 4 for label, bar in bars.items() if "slack" in label]
    assert middles == pytest.approx([WIDTH * station / 200 for station in (30, 42, 150)])
    assert {m.text for m in drawing.marks if isinstance(m, Text)} >= {"A1", "A2", "A3", "M1", "M2", "750 plf"}
    labels = [m.label for m in drawing.marks if isinstance(m, Line)]
    assert "splice S1 (report 9)" in labels
    assert labels.count("joint at 10.0 ft") == 1


def test_the_terminal_tells_it_in_a_line_and_in_full() -> None:
    short = "2.5 of 3 bolts work elastically; strapped into one piece, 2.9"
    assert works_told(SHARES) == f"   How the bolts share: {short} (the concrete of C1 crumbles)."
    out = io.StringIO()
    console = Console(file=out, width=80, no_color=True)
    for part in bolts_told(SHARES, "us"):
        console.print(part)
    assert "2,100 lb" in out.getvalue()
    assert "bears" in out.getvalue()
    assert max(map(len, out.getvalue().splitlines())) <= 80


def test_machines_are_told_the_same() -> None:
    told: Any = plain(SHARES, "shares")
    assert told["sills"][0]["bolts"][0]["slack_lb"] == 3000.0
    assert told["joints"][1]["strap_lb"] is None


def test_a_table_is_a_table() -> None:
    assert all(
        isinstance(block, TableBlock) for block in (bolts_table("", SHARES, "us"), joints_table("", SHARES, "us"))
    )
