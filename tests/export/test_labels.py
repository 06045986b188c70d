"""Words on the pieces: inside, apart from each other, large."""

from __future__ import annotations

import itertools

import pytest
from shapely import LineString, Polygon

from tapeline.export.drawing import draw
from tapeline.export.fonts import BOLD, REGULAR, register
from tapeline.export.labels import Label, text_width
from tests.export.garments import tee

CASES = [(sleeve, bust) for sleeve in ("short", "long") for bust in (800.0, 940.0, 1100.0)]


def room(label: Label) -> Polygon:
    """The ground that a label covers."""
    return Polygon([(p.x, p.y) for p in label.outline()])


@pytest.mark.parametrize(("sleeve", "bust"), CASES)
def test_words_lie_inside_the_seam_line_and_clear_of_every_line(sleeve: str, bust: float) -> None:
    """Nothing of the block of words is under a line or beyond the seams, on small and large pieces."""
    for piece in tee(sleeve, bust=bust).pieces:
        drawing = draw(piece)
        inside = Polygon([(p.x, p.y) for p in piece.piece.seam_line.flattened(0.1)])
        words = [label for label in drawing.labels if label.text not in ("grain", "on the fold")]
        for label in words:
            assert inside.contains(room(label)), label
            for stroke in drawing.strokes:
                assert not LineString([(p.x, p.y) for p in stroke.path.flattened(0.1)]).intersects(room(label)), label
        for one, other in itertools.combinations(drawing.labels, 2):
            assert room(one).intersection(room(other)).area < 1.0, (one, other)
        for word in piece.words:
            assert any(word in label.text for label in words)


@pytest.mark.parametrize(("sleeve", "bust"), CASES)
def test_titles_can_be_read_at_arms_length(sleeve: str, bust: float) -> None:
    """On body and sleeve the capitals of a title are 4 mm high or more (0.73 of the size, measured on the face)."""
    for piece in tee(sleeve, bust=bust).pieces:
        (title,) = [label for label in draw(piece).labels if label.bold]
        least = 4.0 if piece.piece.name != "neckband" else 1.5
        assert title.size_mm * 0.73 >= least


def test_texts_are_no_wider_than_said() -> None:
    """The width that room is made for holds the text as it is printed."""
    from reportlab.pdfbase.pdfmetrics import stringWidth

    register()
    for piece in tee(wearer="Wilhelmina Mommsen").pieces:
        for text in (*piece.words, ", ".join(piece.words)):
            assert stringWidth(text, REGULAR, 10) <= text_width(text, 10) * 1.01
            assert stringWidth(text, BOLD, 10) <= text_width(text, 10, bold=True) * 1.02


def test_a_fold_is_drawn_once_as_fold() -> None:
    """Where the piece lies on the fold there is no unbroken cut line to cut along by mistake."""
    for piece in tee().pieces:
        drawing = draw(piece)
        length = {
            kind: sum(s.path.length for s in drawing.strokes if s.kind.label == kind)
            for kind in ("cut-line", "fold-line")
        }
        assert length["cut-line"] + length["fold-line"] == pytest.approx(piece.cut_line.length)
        folds = sum(edge.length for edge in piece.piece.edges if edge.fold)
        assert (length["fold-line"] >= folds - 1e-6) if folds else length["fold-line"] == 0
