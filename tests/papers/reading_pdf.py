"""Reads a PDF back with two programs that are not ours: pikepdf's content streams and PDFium's page objects."""

from __future__ import annotations

import ctypes
import io
import unicodedata

import pikepdf
import pypdfium2
import pypdfium2.raw as pdfium

Point = tuple[float, float]
Path = tuple[Point, ...]
Matrix = tuple[float, float, float, float, float, float]


def times(inner: Matrix, outer: Matrix) -> Matrix:
    a, b, c, d, e, f = inner
    A, B, C, D, E, F = outer
    return (a * A + b * C, a * B + b * D, c * A + d * C, c * B + d * D, e * A + f * C + E, e * B + f * D + F)


def stroked_paths(pdf: bytes, page: int) -> list[Path]:
    """Every stroked path of a page, in points of the page, by walking its content stream."""
    with pikepdf.open(io.BytesIO(pdf)) as opened:
        instructions = pikepdf.parse_content_stream(opened.pages[page])
        stack: list[Matrix] = []
        now: Matrix = (1, 0, 0, 1, 0, 0)
        path: list[Point] = []
        found: list[Path] = []
        for operands, operator in instructions:
            name = str(operator)
            if name == "q":
                stack.append(now)
            elif name == "Q":
                now = stack.pop()
            elif name == "cm":
                now = times(tuple(float(v) for v in operands), now)  # type: ignore[arg-type]
            elif name in ("m", "l"):
                x, y = float(operands[0]), float(operands[1])
                path.append((x * now[0] + y * now[2] + now[4], x * now[1] + y * now[3] + now[5]))
            elif name in ("S", "s", "B", "b", "f", "n", "B*", "b*", "f*"):
                if path and name in ("S", "s", "B", "b", "B*", "b*"):
                    found.append(tuple(path))
                path = []
        return found


def pdfium_paths(pdf: bytes, page: int) -> list[Path]:
    """The corner points of every path object of a page, as PDFium sees them."""
    found: list[Path] = []
    with pypdfium2.PdfDocument(pdf) as document:
        for item in document[page].get_objects(max_depth=8):
            if item.type != pdfium.FPDF_PAGEOBJ_PATH:
                continue
            matrix = item.get_matrix()
            points: list[Point] = []
            for place in range(pdfium.FPDFPath_CountSegments(item.raw)):
                x, y = ctypes.c_float(), ctypes.c_float()
                segment = pdfium.FPDFPath_GetPathSegment(item.raw, place)
                pdfium.FPDFPathSegment_GetPoint(segment, ctypes.byref(x), ctypes.byref(y))
                points.append(matrix.on_point(x.value, y.value))
            found.append(tuple(points))
    return found


def extent(path: Path) -> tuple[float, float]:
    """Width and height of a path's box."""
    xs, ys = [x for x, _ in path], [y for _, y in path]
    return (max(xs) - min(xs), max(ys) - min(ys))


def page_texts(pdf: bytes) -> list[str]:
    """The text of each page, as PDFium extracts it."""
    with pypdfium2.PdfDocument(pdf) as document:
        return [page.get_textpage().get_text_range() for page in document]


def squeezed(text: str) -> str:
    """Text without any white space or unseen break, in compatibility form: ligatures apart, accents composed."""
    folded = unicodedata.normalize("NFKC", text)
    return "".join(c for c in folded if not c.isspace() and c not in "\u200b\u200c\u200d\xad\ufffe\x02")
