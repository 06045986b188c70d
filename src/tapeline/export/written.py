"""Pages that are laid out already - words, strokes, dots, boxes and pictures - written as a PDF.

Whoever lays them out only has to have these attributes; nothing is known here of what the pages say.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from io import BytesIO
from typing import Protocol

from tapeline.export.fonts import BOLD, REGULAR, letters_problem, register, writable
from tapeline.export.ink import UNIT, Ink
from tapeline.finish import Title
from tapeline.geometry import Path, Point
from tapeline.problems import Problem

__all__ = ["Written", "letters_width", "written"]


class _Words(Protocol):
    @property
    def text(self) -> str: ...
    @property
    def x(self) -> float: ...
    @property
    def y(self) -> float: ...
    @property
    def size_mm(self) -> float: ...
    @property
    def bold(self) -> bool: ...
    @property
    def grey(self) -> float: ...


class _Stroke(Protocol):
    @property
    def path(self) -> Path: ...
    @property
    def width_mm(self) -> float: ...
    @property
    def grey(self) -> float: ...
    @property
    def dashes_mm(self) -> Sequence[float]: ...


class _Dot(Protocol):
    @property
    def at(self) -> Point: ...
    @property
    def radius_mm(self) -> float: ...
    @property
    def grey(self) -> float: ...


class _Box(Protocol):
    @property
    def x(self) -> float: ...
    @property
    def y(self) -> float: ...
    @property
    def width(self) -> float: ...
    @property
    def height(self) -> float: ...


class _Label(Protocol):
    @property
    def words(self) -> _Words: ...
    @property
    def lead(self) -> Path | None: ...


class _Picture(Protocol):
    @property
    def width(self) -> float: ...
    @property
    def window(self) -> tuple[float, float]: ...
    @property
    def strokes(self) -> Sequence[_Stroke]: ...
    @property
    def dots(self) -> Sequence[_Dot]: ...
    @property
    def labels(self) -> Sequence[_Label]: ...
    @property
    def words(self) -> Sequence[_Words]: ...
    @property
    def bar(self) -> Sequence[_Stroke]: ...


class _Page(Protocol):
    @property
    def words(self) -> Sequence[_Words]: ...
    @property
    def strokes(self) -> Sequence[_Stroke]: ...
    @property
    def boxes(self) -> Sequence[_Box]: ...
    @property
    def pictures(self) -> Sequence[tuple[Point, _Picture]]: ...


@dataclass(frozen=True, slots=True)
class Written:
    """A file, and what is worth knowing about it."""

    data: bytes
    pages: int
    problems: tuple[Problem, ...]


def letters_width(text: str, size_mm: float, *, bold: bool = False) -> float:
    """How wide a line of text is in the letters of the print, in mm.

    >>> letters_width("ii", 3) < letters_width("mm", 3) < letters_width("mm", 3, bold=True)
    True
    """
    from reportlab.pdfbase.pdfmetrics import stringWidth

    register()
    return float(stringWidth(writable(text)[0], BOLD if bold else REGULAR, size_mm))


def written(pages: Sequence[_Page], paper_mm: tuple[float, float], title: Title, subject: str) -> Written:
    """A file of pages, the same bytes whenever the same is asked for.

    Args:
        pages: In their order; marks in mm from the lower left corner of the paper.
        paper_mm: Width and height.
        title: Goes into the file's own data.
        subject: What the pages are called, there.
    """
    from reportlab.pdfgen.canvas import Canvas

    buffer = BytesIO()
    size = (paper_mm[0] * UNIT, paper_mm[1] * UNIT)
    canvas = Canvas(buffer, pagesize=size, pageCompression=1, invariant=1, initialFontName="Helvetica", lang="en")
    canvas.setTitle(subject)
    canvas.setCreator(f"Tapeline {title.version}".strip())
    canvas.setAuthor("")
    canvas.setSubject(title.docket)
    canvas.setViewerPreference("PrintScaling", "None")
    canvas.setViewerPreference("DisplayDocTitle", "true")
    ink = Ink(canvas)
    for page in pages:
        _page(ink, page)
        canvas.showPage()
    canvas.save()
    problems = (letters_problem("".join(ink.replaced)),) if ink.replaced else ()
    return Written(buffer.getvalue(), len(pages), problems)


def _page(ink: Ink, page: _Page) -> None:
    _strokes(ink, page.strokes)
    ink.pen(0.2)
    for box in page.boxes:
        ink.box(box.x, box.y, box.width, box.height)
    _words(ink, page.words)
    for corner, picture in page.pictures:
        with ink.at(corner.x, corner.y):
            _picture(ink, picture)


def _picture(ink: Ink, picture: _Picture) -> None:
    low, high = picture.window
    with ink.at(0, low), ink.within(picture.width, high - low), ink.at(0, -low):
        _strokes(ink, picture.strokes)
    _strokes(ink, picture.bar)
    for dot in picture.dots:
        ink.dot(dot.at, dot.radius_mm, dot.grey)
    ink.pen(0.12, grey=0.3)
    for label in picture.labels:
        if label.lead is not None:
            ink.path(label.lead)
    _words(ink, [*picture.words, *(label.words for label in picture.labels)])


def _strokes(ink: Ink, strokes: Sequence[_Stroke]) -> None:
    for stroke in strokes:
        ink.pen(stroke.width_mm, stroke.dashes_mm, stroke.grey)
        ink.path(stroke.path)


def _words(ink: Ink, words: Sequence[_Words]) -> None:
    for word in words:
        ink.words(word.text, word.x, word.y, word.size_mm, bold=word.bold, grey=word.grey)
