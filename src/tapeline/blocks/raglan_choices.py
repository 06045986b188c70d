"""What a maker chooses of a raglan: where its seams leave the neckline, and the sleeve below."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.sleeve_choices import CAPS, SLEEVE_LENGTHS, SLEEVE_SHAPES, CapShape, SleeveLength, SleeveShape
from tapeline.lengths import Length, cm
from tapeline.pattern import choice

__all__ = ["RaglanChoices", "RaglanSleeveChoices"]


@dataclass(frozen=True, slots=True)
class RaglanChoices:
    """Common practice, no source: from a quarter to a half of each neckline lies on the sleeve."""

    front: float = choice(0.3, 0.15, 0.7, "share of the front neckline, from the shoulder, that lies on the sleeve")
    back: float = choice(0.4, 0.15, 0.7, "share of the back neckline, from the shoulder, that lies on the sleeve")


@dataclass(frozen=True, slots=True)
class RaglanSleeveChoices:
    """As of a set-in sleeve; there is no cap seam to ease."""

    length: SleeveLength = choice(
        SLEEVE_LENGTHS["short"], 8, 90, "short, elbow, three-quarter, long, or a length from the shoulder point"
    )
    shape: SleeveShape = SLEEVE_SHAPES["tapered"]
    cap: CapShape = CAPS["easy"]
    wrist_ease: Length = choice(
        cm(7), 2, 40, "hem of a long sleeve wider than the wrist; shorter sleeves follow the same line"
    )
