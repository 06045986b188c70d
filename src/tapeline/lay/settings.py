"""What a docket, or a command, says about the lay: each cloth, how many garments, what stays together."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from tapeline.lay.cloth import LayCloth

__all__ = ["LaySettings"]


@dataclass(frozen=True, slots=True)
class LaySettings:
    """Settings of the lays of one garment.

    >>> LaySettings().cloth("rib").name
    'rib'
    """

    cloths: Mapping[str, LayCloth] = field(default_factory=dict, hash=False)
    """By name; a cloth that is not named is as `LayCloth` is by default."""
    garments: int = 1
    """How many alike."""
    together: tuple[tuple[str, ...], ...] = ()
    """Names of pieces that are laid beside each other, as one block."""
    unmatched: tuple[str, ...] = ()
    """Names of pieces that need not match stripes or checks."""

    def cloth(self, name: str) -> LayCloth:
        """The cloth of that name."""
        return self.cloths.get(name) or LayCloth(name=name)

    @property
    def blocks(self) -> dict[str, str]:
        """By piece, the word of its block."""
        return {piece: " + ".join(block) for block in self.together for piece in block}
