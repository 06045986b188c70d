"""Small pictures of the pieces with the lines that a choice changes drawn strong."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from tapeline.geometry import Rigid
from tapeline.pattern import Garment

__all__ = ["Thumbnail", "thumbnail"]

MARGIN_MM = 12.0
CHANGES: dict[str, tuple[str, ...]] = {
    "garment.looseness": ("back.side", "back.armhole", "back.shoulder"),
    "garment.looseness.side": ("back.side", "front.side"),
    "garment.looseness.drop": ("back.armhole", "front.armhole"),
    "garment.looseness.shoulder": ("back.shoulder", "front.shoulder"),
    "garment.looseness.hem": ("back.hem", "front.hem"),
    "garment.looseness.scoop": ("front.armhole",),
    "garment.neckline.widen": ("back.neckline", "front.neckline"),
    "garment.neckline.lower_front": ("front.neckline",),
    "garment.neckline.lower_back": ("back.neckline",),
    "garment.waist": ("back.side", "front.side"),
    "garment.length": ("back.hem", "front.hem"),
    "garment.band": ("neckband.neckline", "neckband.neckline_turned", "neckband.centre_back"),
    "garment.band.width": ("neckband.centre_back", "neckband.centre_front"),
    "garment.band.stretch": ("neckband.neckline", "neckband.neckline_turned"),
    "garment.sleeve.length": ("sleeve.hem",),
    "garment.sleeve.cap": ("sleeve.cap_back", "sleeve.cap_front"),
    "garment.sleeve.cap.share": ("sleeve.cap_back", "sleeve.cap_front"),
    "garment.sleeve.cap.extra": ("sleeve.cap_back", "sleeve.cap_front"),
    "garment.sleeve.ease": ("sleeve.cap_back", "sleeve.cap_front"),
    "garment.sleeve.wrist_ease": ("sleeve.underarm_back", "sleeve.underarm_front", "sleeve.hem"),
}
"""Which edges a choice of the docket moves most; a choice that is not here has no picture."""


@dataclass(frozen=True, slots=True)
class Thumbnail:
    """Pieces side by side as one picture."""

    box: str
    outlines: tuple[str, ...]
    changed: tuple[str, ...]


def thumbnail(garment: Garment, key: str) -> Thumbnail | None:
    """The pieces that a choice changes, with its edges apart; None where there is nothing to show."""
    there = {f"{piece.name}.{edge.name}" for piece in garment.pieces for edge in piece.edges}
    edges = [edge for edge in CHANGES.get(key, ()) if edge in there]
    if not edges:
        return None
    x, height = MARGIN_MM, 0.0
    outlines: list[str] = []
    changed: list[str] = []
    for name in _pieces(edges):
        piece = garment.piece(name)
        points = piece.seam_line.sampled(1.0)
        (left, low), (right, top) = points.min(axis=0).tolist(), points.max(axis=0).tolist()
        flip = Rigid(1, 0, 0, -1, x - left, MARGIN_MM + top)
        outlines.append(piece.seam_line.moved(flip).svg(1))
        changed += [
            piece.edge(edge.partition(".")[2]).path.moved(flip).svg(1) for edge in edges if edge.startswith(f"{name}.")
        ]
        x += right - left + MARGIN_MM
        height = max(height, top - low)
    return Thumbnail(f"0 0 {x:.0f} {height + 2 * MARGIN_MM:.0f}", tuple(outlines), tuple(changed))


def _pieces(edges: Iterable[str]) -> list[str]:
    return list(dict.fromkeys(edge.partition(".")[0] for edge in edges))
