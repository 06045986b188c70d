"""The `Cloth` a garment is cut from, as far as drafting and truing need to know it."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.pattern.choice import choice

__all__ = ["Cloth"]


@dataclass(frozen=True, slots=True)
class Cloth:
    """One cloth. Stretch is how much longer a strip gets when pulled as far as it comes back from."""

    kind: str = "single jersey"
    width: float | None = choice(None, 20, 400, "width of the cloth between the selvedges")
    """In mm once read."""
    stretch_across: float = choice(35.0, 0, 300, "stretch across, per cent")
    stretch_along: float = choice(15.0, 0, 300, "stretch along, per cent")
    shrink_length: float = choice(0.0, -5, 25, "shrinkage in length at the first wash, per cent")
    shrink_width: float = choice(0.0, -5, 25, "shrinkage in width at the first wash, per cent")
