"""How much longer a cap line is than the armhole: by the cloth that has to be eased in, or as the maker says.

From memory of trade handbooks: a shirt's cap is 0 to 1.5 cm longer, a blouse's 2 to 3.5, one of knitted cloth 0 to
0.5, that of a dropped shoulder not at all. Which cloth gets which end of a range is our own choice: the looser and
thicker it is woven, the more can be eased in without a pleat; a knit stretches to the armhole by itself.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from tapeline.draft import Draft, Reading
from tapeline.lengths import Length, cm
from tapeline.pattern import ClothSort

__all__ = ["BY_CLOTH", "CapEase", "cap_ease"]

EASY, FORMAL = Fraction(1, 4), Fraction(1, 3)
"""Height of the caps that a shirt and a blouse have, as a share of the armhole; between them it goes in proportion."""
BY_CLOTH: dict[ClothSort, tuple[float, float]] = {
    ClothSort.LIGHT_KNIT: (0, 0),
    ClothSort.HEAVY_KNIT: (0.5, 0.5),
    ClothSort.LIGHT_WOVEN: (0.5, 2),
    ClothSort.HEAVY_WOVEN: (1.5, 3.5),
}
"""Cap ease in cm under an easy and under a formal cap."""
WHY = {
    ClothSort.LIGHT_KNIT: "a light knit stretches to the armhole by itself",
    ClothSort.HEAVY_KNIT: "a heavy knit takes a little, for it gives",
    ClothSort.LIGHT_WOVEN: "a light woven cloth can hardly be eased without pleats",
    ClothSort.HEAVY_WOVEN: "a heavy woven cloth can be eased in with steam, and curves over the shoulder so",
}
SOURCE = "from memory of trade handbooks"


@dataclass(frozen=True, slots=True)
class CapEase:
    """By the cloth, or a length of the maker's."""

    given: Length | None = None
    usual: Length = field(default=cm(0), compare=False)
    """The style's, for a docket that does not say of what sort the cloth is."""


def cap_ease(d: Draft, c: CapEase, cap_share: float | Fraction, *, dropped: bool) -> Length:
    """The cap ease, as a step that says why it is so much."""
    sort = d.cloth.sort
    if c.given is not None:
        return d.size("cap_ease", "The cap line is longer than the armhole: by what was chosen", c.given)
    if sort is ClothSort.UNSAID:
        says = "The cap line is longer than the armhole: as is usual for the style, for the cloth's sort is not said"
        return d.size("cap_ease", says, Reading(c.usual, ("usual for the style",), ()), source=SOURCE)
    if dropped:
        says = "The cap line is as long as the armhole: on a dropped shoulder it is flat, and nothing is eased in"
        return d.size("cap_ease", says, Reading(cm(0), ("nothing below a dropped shoulder",), ()), source=SOURCE)
    easy, formal = BY_CLOTH[sort]
    found = d.share(float(cap_share), ((float(EASY), easy), (float(FORMAL), formal)))
    how = f"for {str(sort).replace('-', ' ')} cloth {easy:g} cm under an easy cap, {formal:g} cm under a formal one"
    return d.size(
        "cap_ease",
        f"The cap line is longer than the armhole: {WHY[sort]}",
        Reading(cm(found), (how,), ()),
        source=SOURCE,
    )
