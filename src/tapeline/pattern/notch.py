"""A `Notch` is a small mark on an edge that meets its partner on another."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

__all__ = ["Notch", "NotchKind"]


class NotchKind(StrEnum):
    """How many ticks: one for the front, two for the back (common practice in the trade, no source)."""

    SINGLE = "single"
    DOUBLE = "double"
    CROWN = "crown"
    """On the crown of a sleeve: meets the shoulder seam."""
    PLEAT = "pleat"
    """Where a pleat is laid onto its first notch: it meets that one, and nothing on the partner."""


@dataclass(frozen=True, slots=True)
class Notch:
    """A mark a length along an edge, in mm from the edge's start."""

    edge: str
    at_mm: float
    kind: NotchKind = NotchKind.SINGLE
