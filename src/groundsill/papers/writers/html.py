"""A document as one HTML page, whole in itself: MathML, drawings as SVG in the page, no script, nothing fetched.

The page carries its own content policy, which allows its one stylesheet (by hash) and nothing else, so it can be
mailed, kept and opened years later. It follows the reader's light or dark setting, prints sensibly, can be read by
ear and walked through by keyboard. :func:`article` gives the contents alone, for a page that has a frame of its own.
"""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Iterator
from importlib.resources import files

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
from groundsill.papers.placing import leaf_of_sheet
from groundsill.papers.sheet import Sheet
from groundsill.papers.writers.escape import clean, markup
from groundsill.papers.writers.numbering import numbered
from groundsill.papers.writers.shapes import shape_svg
from groundsill.papers.writers.steps import Derivation, MarkNumbers, SetStep, Small, set_step
from groundsill.papers.writers.svg import paper_svg, screen_svg
from groundsill.working.mathtree import Math
from groundsill.working.render import as_mathml

__all__ = ["article", "stylesheet", "to_html"]

_REMARKS = {"caution": "Caution", "warning": "Warning", "note": "Note"}


def stylesheet() -> str:
    """The looks of a page and of the drawings on it, as CSS."""
    here = files(__package__)
    return "".join(here.joinpath(name).read_text(encoding="utf-8") for name in ("page.css", "drawing.css"))


def to_html(document: Document) -> str:
    """The document as one whole page."""
    css = stylesheet()
    digest = base64.b64encode(hashlib.sha256(css.encode()).digest()).decode()
    policy = f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
    running = " · ".join(markup(text) for text in (document.header, document.header_end, document.footer) if text)
    return "\n".join(
        (
            "<!doctype html>",
            f'<html lang="{markup(document.language)}">',
            "<head>",
            '<meta charset="utf-8">',
            f'<meta http-equiv="Content-Security-Policy" content="{policy}">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            '<meta name="color-scheme" content="light dark">',
            f"<title>{markup(document.title)}</title>",
            f"<style>{css}</style>",
            "</head>",
            "<body>",
            '<a class="gs-skip" href="#gs-main">Skip to the text</a>',
            article(document),
            f'<footer class="gs-footer">{running}</footer>' if running else "",
            "</body>",
            "</html>",
            "",
        )
    )


def article(document: Document) -> str:
    """Title, contents and blocks, without the page around them."""
    subtitle = f'<p class="gs-subtitle">{markup(document.subtitle)}</p>' if document.subtitle else ""
    stamp = "<br>".join(markup(line) for line in document.stamp)
    marks = MarkNumbers.of(document)
    return "\n".join(
        part
        for part in (
            '<header class="gs-header">',
            f"<h1>{markup(document.title)}</h1>",
            subtitle,
            f'<p class="gs-stamp">{stamp}</p>' if stamp else "",
            "</header>",
            _contents(document),
            '<main id="gs-main" class="gs-main">',
            *(_block(block, number, marks) for block, number in numbered(document)),
            "</main>",
        )
        if part
    )


def _contents(document: Document) -> str:
    """The table of contents as nested lists, each heading a link."""
    entries = [
        (block.level, _heading_id(block, number), number, block.text)
        for block, number in numbered(document)
        if isinstance(block, Heading) and block.level <= document.contents
    ]
    if not entries:
        return ""
    items = "".join(
        f'<li class="gs-level-{level}"><a href="#{anchor}"><span>{number}</span> {markup(text)}</a></li>'
        for level, anchor, number, text in entries
    )
    return f'<nav class="gs-contents" aria-label="Contents"><ol>{items}</ol></nav>'


# --- words ----------------------------------------------------------------------------------------------------------


def _anchor(anchor: str) -> str:
    return "a-" + anchor.encode("utf-8", "backslashreplace").hex()


def _heading_id(block: Heading, number: str) -> str:
    """The id a heading is reached by: its own anchor, or its number, or what its words come to."""
    if block.anchor:
        return _anchor(block.anchor)
    return f"h-{number}" if number else _anchor(f"heading {block.text}")


def _span(span: Span) -> str:
    if isinstance(span, StatusWord):
        shape = shape_svg(span.status, "currentColor", ' aria-hidden="true" focusable="false"')
        return f'<span class="gs-status">{shape} {markup(span.text)}</span>'
    words = markup(span.text)
    if isinstance(span, Reference):
        return f'<a href="#{_anchor(span.anchor)}">{words}</a>'
    tag = {"plain": "", "strong": "strong", "emphasis": "em", "small": "small", "code": "code"}[span.style]
    return f"<{tag}>{words}</{tag}>" if tag else words


def _inline(text: Inline) -> str:
    return "".join(_span(span) for span in spans(text))


# --- blocks ---------------------------------------------------------------------------------------------------------


def _block(block: Block, number: str, marks: MarkNumbers) -> str:
    match block:
        case Heading():
            tag = f"h{block.level + 1}"
            shown = f'<span class="gs-number">{number}</span> ' if number else ""
            return f'<{tag} id="{_heading_id(block, number)}">{shown}{markup(block.text)}</{tag}>'
        case Paragraph():
            return f"<p>{_inline(block.text)}</p>"
        case Remark():
            word = _REMARKS[block.kind] + (f": {markup(block.title)}." if block.title else ".")
            return f'<p class="gs-remark gs-{block.kind}" role="note"><strong>{word}</strong> {_inline(block.text)}</p>'
        case BulletList():
            return f"<ul>{''.join(f'<li>{_inline(item)}</li>' for item in block.items)}</ul>"
        case NumberedList():
            return f'<ol start="{block.start}">{"".join(f"<li>{_inline(item)}</li>" for item in block.items)}</ol>'
        case KeyValues():
            return _facts(block)
        case TableBlock():
            return _table(block, number)
        case Figure():
            return _figure(block, number)
        case Working():
            return _step(set_step(block.step, marks))
        case PageBreak():
            return '<div class="gs-page-break"></div>'


def _facts(block: KeyValues) -> str:
    caption = f'<p class="gs-facts-caption"><strong>{markup(block.caption)}</strong></p>' if block.caption else ""
    rows = "".join(
        f"<div><dt>{markup(row.key)}</dt><dd>{_inline(row.value)}"
        + (f"<br><small>{_inline(row.note)}</small>" if plain_text(row.note) else "")
        + "</dd></div>"
        for row in block.rows
    )
    return f'{caption}<dl class="gs-facts">{rows}</dl>'


def _table(block: TableBlock, number: str) -> str:
    """A table in a box that scrolls sideways by itself, so that the page never has to."""
    head = "".join(
        f'<th scope="col" class="gs-{column.align}">{markup(column.heading)}'
        + (f'<br><span class="gs-unit">{markup(column.unit)}</span>' if column.unit else "")
        + "</th>"
        for column in block.columns
    )
    notes = "".join(f"<p>{_inline(note)}</p>" for note in block.footnotes)
    ident = f' id="{_anchor(block.anchor)}"' if block.anchor else ""
    caption = f"<strong>{number}.</strong> {markup(block.caption)}"
    return (
        f'<div class="gs-table"{ident} role="region" tabindex="0" aria-label="{markup(f"{number}. {block.caption}")}">'
        f"<table><caption>{caption}</caption><thead><tr>{head}</tr></thead>"
        f"<tbody>{''.join(_rows(block))}</tbody></table>"
        f"</div>{f'<div class=gs-notes>{notes}</div>' if notes else ''}"
    )


def _rows(block: TableBlock) -> Iterator[str]:
    for place, row in enumerate(block.rows):
        if isinstance(row, GroupRow):
            span = len(block.columns)
            yield f'<tr class="gs-group"><th scope="rowgroup" colspan="{span}">{_inline(row.text)}</th></tr>'
            continue
        first, *others = zip(row, block.columns, strict=True)
        cells = "".join(f'<td class="gs-{column.align}">{_inline(cell)}</td>' for cell, column in others)
        heavy = ' class="gs-heavy-row"' if place in block.heavy else ""
        yield f'<tr{heavy}><th scope="row" class="gs-{first[1].align}">{_inline(first[0])}</th>{cells}</tr>'


def _figure(block: Figure, number: str) -> str:
    ident = number.lower().replace(" ", "-")
    if isinstance(block.drawing, Sheet):
        drawn = paper_svg(leaf_of_sheet(block.drawing), ident=ident)
        drawn = f'<div class="gs-sheet" role="img" aria-label="{markup(block.alternative)}">{drawn}</div>'
    else:
        drawn = screen_svg(
            block.drawing, title=block.caption, alternative=block.alternative, scale=block.scale, ident=ident
        )
    anchor = f' id="{_anchor(block.anchor)}"' if block.anchor else ""
    caption = f"<figcaption><strong>{number}.</strong> {markup(block.caption)}</figcaption>"
    return f'<figure class="gs-figure"{anchor}>{drawn}{caption}</figure>'


# --- working --------------------------------------------------------------------------------------------------------


def _maths(node: Math, before: str = "") -> str:
    """A ``<math>`` element in display style; ``before`` is an operator set in front."""
    inside = clean(as_mathml(node)).partition(">")[2].removesuffix("</math>")
    sign = f"<mo>{before}</mo>" if before else ""
    return f'<math displaystyle="true"><mrow>{sign}{inside}</mrow></math>'


def _step(step: SetStep) -> str:
    cite = f'<p class="gs-cite">{markup(step.cite)}</p>' if step.cite else ""
    marks = "".join(f'<p class="gs-doubt">† {markup(mark)}</p>' for mark in step.marks)
    depth = min(step.depth, 4)
    title = markup(step.title)
    if step.rank == "fact":
        body = f'<p class="gs-fact"><span>{"".join(_chain(step))}</span> <small>{title}</small></p>'
    else:
        tag = "em" if step.rank == "heading" else "strong"
        body = (f"<p class=gs-step-title><{tag}>{title}</{tag}></p>" if title else "") + "".join(_parts(step))
    return f'<div class="gs-step gs-{step.rank} gs-depth-{depth}">{cite}<div>{body}{marks}</div></div>'


def _chain(step: SetStep) -> Iterator[str]:
    for part in step.parts:
        if isinstance(part, Derivation):
            yield _maths(part.name)
            yield from (_maths(side, "=") for side in part.sides)
        else:
            yield _small(part)


def _parts(step: SetStep) -> Iterator[str]:
    for part in step.parts:
        if isinstance(part, Derivation):
            sides = "".join(f"<div>{_maths(side, '=')}</div>" for side in part.sides)
            yield f'<div class="gs-derivation"><div>{_maths(part.name)}</div><div>{sides}</div></div>'
        else:
            yield _small(part)


def _small(part: Small) -> str:
    maths = f"{_maths(part.math)} " if part.math is not None else ""
    word = f"{markup(part.word)} " if part.word else ""
    return f'<p class="gs-small">{word}{maths}{markup(part.text)}</p>'
