"""The words on a piece: what it is, for whom, how it is cut, and where it comes from."""

from __future__ import annotations

from tapeline.finish.finished_piece import Title
from tapeline.pattern import Cut, EdgeKind, Piece

__all__ = ["VENT_WORDS", "cut_words", "words"]

VENT_WORDS = "vent: mitre its corner, reinforce its top at the notch"
"""The end of a seam at a slit takes all the strain; a bar of stitches or a scrap of tape holds it (common practice)."""


def words(piece: Piece, title: Title) -> tuple[str, ...]:
    """Lines of text for a piece, most needed first: title, garment and wearer, cut quantity, vent, docket, version.

    >>> from tapeline.geometry import Path, Point
    >>> from tapeline.pattern import Edge
    >>> line = Path.through(Point(0, 0), Point(0, 9))
    >>> sleeve = Piece("sleeve", "Sleeve", (Edge("hem", line),), line.segments[0], Cut(2, mirrored=True))
    >>> for row in words(sleeve, Title("tee.toml", "Marit", "tee", "2024-05-01", "0.1.0")):
    ...     print(row)
    Sleeve
    tee, Marit
    cut 2 in shell, one turned over
    tee.toml, 2024-05-01
    Tapeline 0.1.0
    """
    rows = (
        piece.title,
        _list(title.style, title.wearer),
        cut_words(piece.cut, on_fold=piece.on_fold),
        VENT_WORDS if any(edge.kind is EdgeKind.VENT for edge in piece.edges) else "",
        _list(title.docket, title.date),
        f"Tapeline {title.version}" if title.version else "",
    )
    return tuple(row for row in rows if row)


def cut_words(cut: Cut, *, on_fold: bool) -> str:
    """How many, of which cloth, and how laid.

    >>> cut_words(Cut(1), on_fold=True)
    'cut 1 in shell, on the fold'
    >>> cut_words(Cut(4, "rib", mirrored=True), on_fold=False)
    'cut 4 in rib, half of them turned over'
    """
    laid = ["on the fold"] if on_fold else []
    if cut.mirrored:
        laid.append("one turned over" if cut.quantity == 2 else "half of them turned over")
    return _list(f"cut {cut.quantity} in {cut.cloth}", *laid)


def _list(*parts: str) -> str:
    return ", ".join(part for part in parts if part)
