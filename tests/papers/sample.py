"""One paper with every block on it, and a wall of forty feet: what the tests of the writers write."""

from __future__ import annotations

from groundsill.papers.document import (
    Block,
    BulletList,
    Column,
    Document,
    Figure,
    GroupRow,
    Heading,
    KeyValue,
    KeyValues,
    NumberedList,
    PageBreak,
    Paragraph,
    Reference,
    Remark,
    StatusWord,
    TableBlock,
    Working,
    emphasis,
    small,
    strong,
)
from groundsill.papers.drawing import (
    Arc,
    Circle,
    Dimension,
    Drawing,
    Line,
    Mark,
    Polygon,
    Polyline,
    Symbol,
    Text,
    layer,
)
from groundsill.papers.sheet import PAPERS, SCALES, Scale, Sheet, TitleBlock, View, sheet_of
from groundsill.standards.nds_2018.yield_modes import k_3, yield_mode_is
from groundsill.working.sheet import Sheet as Calculation
from groundsill.working.sheet import Step
from groundsill.working.steps import condition, convert, given, least, note
from groundsill.working.value import Mark as Doubt

WALL_IN = 480.0
FROM_MEMORY = Doubt("from memory", "dowel bearing strength of the old sill")
TITLE_BLOCK = TitleBlock(
    "Larch Street house",
    "418 Larch Street, Port Ellery, Washington",
    "North wall, from outside",
    "S2 of 4",
    ("groundsill 0.1.0", "survey of 3 May 2026"),
)


def scale_named(name: str) -> Scale:
    return next(scale for scales in SCALES.values() for scale in scales if scale.name == name)


def wall(length_in: float = WALL_IN, shown_in: str = "ft-in") -> Drawing:
    """A cripple wall on its stem, with a dimension along it."""
    outline = ((0.0, 0.0), (length_in, 0.0), (length_in, 30.0), (0.0, 30.0))
    marks: list[Mark] = [
        Polygon(
            ((0, -12), (length_in, -12), (length_in, 0), (0, 0)), layer("foundation"), "concrete", "footing/f1", "F1"
        ),
        Polygon(outline, layer("wall"), address="line/l2", label="Wall line L2"),
        Polygon(((0, 0), (96, 0), (96, 30), (0, 30)), layer("new panel"), "hatched", "panel/p1", "Panel P1"),
        Polyline(((0, 1.5), (length_in, 1.5)), layer("framing")),
        Line((0, -20), (length_in, -20), layer("footing below")),
        Circle((240, 15), 3, layer("obstruction"), "paper", "pipe/1", "Gas pipe"),
        Arc((240, 15), 6, 0, 90, layer("obstruction")),
        Symbol("tag", (48, 15), layer("symbol"), 18, text="P1", address="panel/p1", label="Panel P1"),
        Symbol("bolt", (24, -3), layer("new anchor"), address="bolt/b1", label="Bolt B1"),
        Text((200, 40), "old siding above", layer("text"), rotation=10),
        Dimension(
            (0, -20),
            (length_in, -20),
            layer("dimension"),
            side="right",
            shown_in=shown_in,  # type: ignore[arg-type]
            address="line/l2",
            label="Wall line L2",
        ),
    ]
    return Drawing("North wall", tuple(marks))


def wall_sheet(scale: str = '1/4" = 1\'-0"', paper: str = "tabloid", shown_in: str = "ft-in") -> Sheet:
    view = View(wall(shown_in=shown_in), "Wall line L2")
    return sheet_of(PAPERS[paper], (view,), TITLE_BLOCK, scale=scale_named(scale), north_deg=30.0)


def steps() -> tuple[Step, ...]:
    """Part of the calculation of a half-inch bolt in an old sill."""
    with Calculation() as sheet:
        D = given("D", 0.5, "in", "bolt diameter, survey")
        l_s = given("l_s", 1.5, "in", "sill thickness, survey")
        F_es = given("F_es", 3150.0, "psi", "Douglas fir, across the grain", [FROM_MEMORY])
        z = yield_mode_is(D, l_s, F_es, given("R_d", 5.0, "1", "Table 12.3.1B"))
        k_3(given("R_e", 1.4, "1", "ratio"), given("F_yb", 45000.0, "psi", "mild steel"), D, 4500.0, 1.5)
        least(z, given("Z_IV", 590.0, "lb", "mode IV"), symbol="Z", label="Least of the modes")
        condition("nut and washer sound", None)
        convert(given("h", 24.0, "in", "wall height"), "in", "ft")
        note("Old bolts are not counted: their embedment is unknown.")
    return tuple(sheet.steps)


def table(rows: int = 6) -> TableBlock:
    status = ("passes", "fails", "indicated", "cannot be checked", "does not apply", "depends")
    lines = tuple(
        (
            f"S{n}",
            "Sill bolts in wood",
            f"{1000 + n:,}",
            StatusWord(status[n % 6], "depends on tests n1" if n % 6 == 5 else ""),
        )
        for n in range(rows)
    )
    return TableBlock(
        (Column("Piece"), Column("Link", share=1.0), Column("Demand", "lb", "end"), Column("Verdict")),
        (GroupRow("Line L2"), *lines),
        "Sill pieces of line L2",
        ("Forces at allowable level.",),
        frozenset({2}),
        anchor="table/l2",
    )


def every_block() -> tuple[Block, ...]:
    return (
        Heading("Basis", 1, "basis"),
        Paragraph(
            (
                "Measured on 3 May 2026; ",
                strong("carries 41 % of the required force"),
                "; ",
                emphasis("then the bolts stop it"),
                small(", from memory"),
                ". See ",
                Reference("the sill pieces", "table/l2"),
                ". ",
                StatusWord("fails"),
            )
        ),
        Remark("caution", "Air the space before entering it.", "confined space"),
        Remark("warning", "The concrete is weaker than the anchor rules begin at."),
        Remark("note", "Prices are of May 2026."),
        KeyValues((KeyValue("Site class", "D", "assumed"), KeyValue("Code", "IEBC 2021")), "Design criteria"),
        BulletList(("Bolts every 6'-0\" at most", ("a ", strong("second"), " item"))),
        NumberedList(("Shore", "Dig", "Pour"), start=3),
        Heading("Line L2", 2),
        table(),
        Figure(
            wall(),
            "North wall from outside",
            "A cripple wall forty feet long with one new panel.",
            anchor="figure/wall",
        ),
        Heading("Sill bolts", 3),
        *(Working(step) for step in steps()),
        PageBreak(),
        Heading("Drawings", 1),
        Figure(wall_sheet(), "Sheet S2", "The north wall at a quarter inch to the foot."),
        Paragraph("The end."),
    )


def paper(*blocks: Block, **more: object) -> Document:
    fields = {
        "subtitle": "418 Larch Street, Port Ellery, Washington",
        "header": "Larch Street house",
        "header_end": "groundsill 0.1.0",
        "footer": "As found",
        "stamp": ("groundsill 0.1.0", "survey of 3 May 2026"),
        "contents": 2,
    }
    return Document("Calculations", blocks or every_block(), **{**fields, **more})  # type: ignore[arg-type]
