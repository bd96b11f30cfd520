"""A document as a PDF, through Typst: real mathematics, tables that run over pages, drawings at true scale.

The source written here is a list of calls of the functions in ``prelude.typ``; every word goes in as a quoted string,
so no text can become markup, and Typst is given nothing but this one source: no files, no system fonts, no packages.
The PDF is tagged after PDF/UA-1, which refuses a picture or an equation without words for it. Equal input gives equal
bytes.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING

from groundsill.papers.document import (
    Block,
    BulletList,
    Document,
    Figure,
    GroupRow,
    Heading,
    Inline,
    KeyValues,
    NumberedList,
    PageBreak,
    Paragraph,
    Reference,
    Remark,
    Span,
    StatusWord,
    TableBlock,
    Working,
    plain_text,
    spans,
)
from groundsill.papers.placing import Leaf, leaf_of_drawing, leaf_of_sheet
from groundsill.papers.sheet import ScaleSystem, Sheet, fitting_scale
from groundsill.papers.writers.escape import printable
from groundsill.papers.writers.numbering import numbered
from groundsill.papers.writers.shapes import SHAPES, shape_svg
from groundsill.papers.writers.steps import Derivation, MarkNumbers, SetStep, Small, set_step
from groundsill.papers.writers.svg import paper_svg, paper_words
from groundsill.working.errors import CannotWrite
from groundsill.working.mathtree import Math
from groundsill.working.render import as_text, as_typst

if TYPE_CHECKING:
    import typst

__all__ = ["to_pdf", "to_typst"]

FIGURE_WIDTH_IN = {"letter": 5.75, "a4": 5.55}
FIGURE_HEIGHT_IN = 7.0
"""Room for a drawing whose scale is chosen here."""
TEXT_WIDTH_IN = {"letter": 5.8, "a4": 5.57}
TEXT_HEIGHT_IN = 8.0
"""Room for a drawing whose scale was given."""
WIDE_TABLE = 7
"""From this many columns a table also uses the left margin."""
NO_NAME = "(no name)"
"""A heading without words: a tagged PDF may not have one."""
KEEP_TOGETHER = 9
"""A step of no more parts than this is not broken over two pages."""


def to_pdf(document: Document) -> bytes:
    """The document as PDF bytes.

    Raises:
        CannotWrite: when Typst refuses the source (its message is passed on).
    """
    import typst  # late: forty megabytes that nothing but this needs

    try:
        made = _compiler().compile(to_typst(document).encode(), format="pdf", timestamp=0, pdf_standards=["ua-1"])
    except typst.TypstError as error:
        raise CannotWrite(f"{document.title}: the PDF could not be made: {error.message}") from error
    if not isinstance(made, bytes):
        raise CannotWrite(f"{document.title}: Typst gave no PDF")
    return made


@lru_cache(maxsize=1)
def _compiler() -> typst.Compiler:
    """One compiler for the whole run: it keeps the fonts it has read, and nothing of any document."""
    import typst

    return typst.Compiler(ignore_system_fonts=True, font_paths=typst.Fonts(include_system_fonts=False))


def to_typst(document: Document) -> str:
    """The document as Typst source, whole in itself."""
    prelude = files(__package__).joinpath("prelude.typ").read_text(encoding="utf-8")
    shapes = "\n".join(
        f"#let shape-{status.replace(' ', '-')} = image(bytes({_quoted(shape_svg(status, '#000000'))}), height: 100%)"
        for status in SHAPES
    )
    lang, _, region = document.language.partition("-")
    stamp = "".join(f"{_word(line)}, " for line in document.stamp)
    paper = {"letter": "us-letter", "a4": "a4"}[document.paper]
    head = (
        f"#show: gs-document.with(title: {_word(document.title)}, subtitle: {_word(document.subtitle)}, "
        f"lang: {_quoted(lang)}, region: {_quoted(region) if region else 'none'}, paper: {_quoted(paper)}, "
        f"header: {_word(document.header)}, header-end: {_word(document.header_end)}, "
        f"footer: {_word(document.footer)}, stamp: ({stamp}), contents: {document.contents})"
    )
    marks = MarkNumbers.of(document)
    body = "\n".join(_block(block, number, document, marks) for block, number in numbered(document))
    return f"{prelude}\n{shapes}\n{head}\n{body}\n"


# --- words ----------------------------------------------------------------------------------------------------------


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _word(text: str) -> str:
    """Any text as a Typst string that its fonts can print."""
    return _quoted(printable(text))


def _span(span: Span) -> str:
    if isinstance(span, StatusWord):
        return f"status-run(shape-{span.status.replace(' ', '-')}, {_word(span.text)})"
    if isinstance(span, Reference):
        return f"reference-run({_quoted(_anchor(span.anchor))}, {_word(span.text)})"
    return _word(span.text) if span.style == "plain" else f"{span.style}-run({_word(span.text)})"


def _inline(text: Inline) -> str:
    return f"joined({', '.join(_span(span) for span in spans(text))})"


def _anchor(anchor: str) -> str:
    """An anchor as a label: any text will do, as long as two anchors stay two."""
    return "a-" + anchor.encode("utf-8", "backslashreplace").hex() if anchor else ""


# --- blocks ---------------------------------------------------------------------------------------------------------


def _block(block: Block, number: str, document: Document, marks: MarkNumbers) -> str:
    match block:
        case Heading():
            anchor = _quoted(_anchor(block.anchor))
            words = block.text if block.text.strip() else NO_NAME
            return f"#gs-heading({block.level}, {_quoted(number)}, {anchor}, {_word(words)})"
        case Paragraph():
            return f"#gs-paragraph({_inline(block.text)})"
        case Remark():
            return f"#gs-remark({_quoted(block.kind)}, {_word(block.title)}, {_inline(block.text)})"
        case BulletList():
            return f"#gs-bullets({', '.join(_inline(item) for item in block.items)})"
        case NumberedList():
            return f"#gs-numbers({', '.join((str(block.start), *(_inline(item) for item in block.items)))})"
        case KeyValues():
            return _facts(block)
        case TableBlock():
            return _table(block, number)
        case Figure():
            return _figure(block, number, document)
        case Working():
            return _step(set_step(block.step, marks))
        case PageBreak():
            return "#gs-page-break()"


def _facts(block: KeyValues) -> str:
    rows = "".join(
        f"({_word(row.key)}, {_inline(row.value)}, {_inline(row.note) if plain_text(row.note) else 'none'}), "
        for row in block.rows
    )
    return f"#gs-facts({_word(block.caption)}, ({rows}))"


def _table(block: TableBlock, number: str) -> str:
    def column(share: float) -> str:
        return f"{share:g}fr" if share else "auto"

    rows = []
    for place, row in enumerate(block.rows):
        if isinstance(row, GroupRow):
            rows.append(f'("group", {_inline(row.text)})')
        else:
            kind = "heavy" if place in block.heavy else "row"
            rows.append(f'("{kind}", {", ".join(_inline(cell) for cell in row)})')
    columns = block.columns
    listed = ",\n  ".join(rows)
    return (
        f"#gs-table(columns: ({''.join(f'{column(c.share)}, ' for c in columns)}), "
        f"aligns: ({''.join(f'{c.align} + top, ' for c in columns)}), "
        f"heads: ({''.join(f'{_word(c.heading)}, ' for c in columns)}), "
        f"units: ({''.join(f'{_word(c.unit)}, ' for c in columns)}), "
        f"number: {_quoted(number)}, caption: {_word(block.caption)}, "
        f"notes: ({''.join(f'{_inline(note)}, ' for note in block.footnotes)}), "
        f"anchor: {_quoted(_anchor(block.anchor))}, wide: {'true' if len(columns) >= WIDE_TABLE else 'false'}, "
        f"rows: (\n  {listed},\n))"
        if rows
        else f"#gs-paragraph({_word(f'{number}. {block.caption}: nothing to list.')})"
    )


def _figure(block: Figure, number: str, document: Document) -> str:
    alt, anchor = _word(block.alternative), _quoted(_anchor(block.anchor))
    if isinstance(block.drawing, Sheet):
        leaf = leaf_of_sheet(block.drawing)
        return f"#gs-sheet({leaf.width:.4f}pt, {leaf.height:.4f}pt, {anchor}, {_leaf(leaf, alt)})"
    width = FIGURE_WIDTH_IN[document.paper]
    system: ScaleSystem = "us" if document.paper == "letter" else "metric"
    scale = block.scale or fitting_scale((block.drawing,), width, FIGURE_HEIGHT_IN, system)
    leaf = leaf_of_drawing(block.drawing, scale)
    if leaf.width > TEXT_WIDTH_IN[document.paper] * 72 or leaf.height > TEXT_HEIGHT_IN * 72:
        size = f"{leaf.width / 72:.1f} in by {leaf.height / 72:.1f} in"
        raise CannotWrite(f"figure {block.caption!r} is {size} at {scale.name}, more than the page holds")
    shown = f"Scale {scale.name}." if block.show_scale else ""
    return f"#gs-figure({_quoted(number)}, {_word(block.caption)}, {_word(shown)}, {anchor}, {_leaf(leaf, alt)})"


def _leaf(leaf: Leaf, alt: str) -> str:
    words = "".join(
        f"gs-words({w.x:.4f}pt, {w.y:.4f}pt, {w.size:.4f}pt, {-w.mark.rotation:.4f}deg, {_quoted(w.mark.anchor)}, "
        f"{_quoted(w.mark.baseline)}, {700 if w.mark.heavy else 400}, luma({round(255 * (1 - w.mark.layer.ink))}), "
        f"{_word(w.mark.text)}); "
        for w in paper_words(leaf)
    )
    svg = _quoted(paper_svg(leaf, words=False))
    return f"gs-leaf({leaf.width:.4f}pt, {leaf.height:.4f}pt, {svg}, {alt}, {{ {words} }})"


# --- working --------------------------------------------------------------------------------------------------------


def _maths(node: Math, before: str = "") -> str:
    sign = "= " if before else ""
    return f"gs-maths({_word(before + as_text(node))}, ${sign}display({as_typst(node)})$)"


def _step(step: SetStep) -> str:
    cite, title = _word(step.cite), _word(step.title)
    marks = "".join(f"{_word(mark)}, " for mark in step.marks)
    if step.rank == "heading":
        return f"#gs-procedure({cite}, {title}, {step.depth}, ({marks}))"
    if step.rank == "fact":
        return f"#gs-fact({cite}, {title}, {step.depth}, ({marks}), {', '.join(_chain(step))})"
    body = " + ".join(_parts(step)) or "[]"
    keep = "true" if len(step.parts) <= KEEP_TOGETHER else "false"
    return f"#gs-step({cite}, {title}, {step.depth}, {keep}, ({marks}), {body})"


def _chain(step: SetStep) -> Iterator[str]:
    """A fact's equations on one line: ``h = 24 in = 2 ft``."""
    for part in step.parts:
        if isinstance(part, Derivation):
            yield _maths(part.name)
            yield from (_maths(side, "equals ") for side in part.sides)
        else:
            yield _small(part)


def _parts(step: SetStep) -> Iterator[str]:
    for part in step.parts:
        if isinstance(part, Derivation):
            sides = ", ".join(_maths(side, "equals ") for side in part.sides)
            yield f"gs-derivation({_maths(part.name)}, {sides})"
        else:
            yield _small(part)


def _small(part: Small) -> str:
    maths = _maths(part.math) if part.math is not None else "none"
    return f"gs-small({_word(part.word)}, {maths}, {_word(part.text)})"
