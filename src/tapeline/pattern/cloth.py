"""The `Cloth` a garment is cut from, as far as drafting and truing need to know it."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.pattern.choice import Word, choice

__all__ = ["Cloth", "ClothSort"]


class ClothSort(Word):
    """How a cloth is made, and how heavy it is: what sewing asks of it, where its stretch does not say."""

    UNSAID = "unsaid", "nothing is said: each style has the numbers of the cloth that it is usually made of"
    LIGHT_KNIT = "light-knit", "jersey and rib"
    HEAVY_KNIT = "heavy-knit", "sweatshirt fleece and thick knits"
    LIGHT_WOVEN = "light-woven", "poplin, lawn, shirting: closely woven, hardly to be eased"
    HEAVY_WOVEN = "heavy-woven", "wool, brushed cotton, linen: loose or thick enough to be eased with steam"

    @property
    def woven(self) -> bool:
        """Whether it is woven."""
        return self in (ClothSort.LIGHT_WOVEN, ClothSort.HEAVY_WOVEN)


@dataclass(frozen=True, slots=True)
class Cloth:
    """One cloth. Stretch is how much longer a strip gets when pulled as far as it comes back from."""

    kind: str = "single jersey"
    sort: ClothSort = ClothSort.UNSAID
    width: float | None = choice(None, 20, 400, "width of the cloth between the selvedges")
    """In mm once read."""
    stretch_across: float = choice(35.0, 0, 300, "stretch across, per cent")
    stretch_along: float = choice(15.0, 0, 300, "stretch along, per cent")
    shrink_length: float = choice(0.0, -5, 25, "shrinkage in length at the first wash, per cent")
    shrink_width: float = choice(0.0, -5, 25, "shrinkage in width at the first wash, per cent")
