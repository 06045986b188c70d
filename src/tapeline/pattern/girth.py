"""A `Girth` is the garment round the body at one level: the tape, and the ease that the method means to give."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.lengths import Length

__all__ = ["Girth"]


@dataclass(frozen=True, slots=True)
class Girth:
    """What is meant; what was drawn is measured on the pieces by truing."""

    name: str
    """`chest`, `waist`, `hip`, `upper_arm`, `wrist`."""
    tape: Length
    """Round the body."""
    ease: Length
    """What the method adds."""
    across: tuple[tuple[str, str, float], ...]
    """How it is measured on the pieces: piece, point of the level on it (or an edge), how often it goes."""
