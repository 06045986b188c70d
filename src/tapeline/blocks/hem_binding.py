"""The binding of a hem: a narrow strip folded over its edge, as a neck or an armhole is bound.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.neckband import BINDING_SHARES, BindingChoices
from tapeline.blocks.strip import strip
from tapeline.draft import Draft, folded, notch_along, sewn
from tapeline.lengths import Length
from tapeline.pattern import Cut, NotchKind, Piece

__all__ = ["HemBinding", "hem_binding"]


@dataclass(frozen=True, slots=True)
class HemBinding:
    """The binding, and how much shorter than the hem it is."""

    piece: Piece
    ease: Length
    seamed: str
    """Which of its ends is sewn: to the other half at the centre back, or folded in where a front opens."""


def hem_binding(d: Draft, c: BindingChoices, front_hem: Length, back_hem: Length, *, opened: bool) -> HemBinding:
    """Half a binding; its long edges have allowances as wide as it is, for it is folded over them."""
    d.section("The hem binding's sizes")
    hem = d.measured("half_hem", "Half the hem", front_hem + back_hem)
    share = d.share(c.stretch, BINDING_SHARES)
    long = d.measured("hem_binding_half_length", "Half the binding: as a cloth that stretches so needs", hem * share)
    side = d.measured("hem_binding_side", "From the centre front to the side seam, in proportion", front_hem * share)
    s = d.sheet("hem_binding")
    s.section("The hem binding")
    left = "The centre front, folded in" if opened else "The centre front, on the fold of the cloth"
    right = "The centre back, on the fold of the cloth" if opened else "The seam at the centre back"
    made = strip(s, long, c.width, left=left, right=right)
    front_end, back_end = (sewn, folded) if opened else (folded, sewn)
    piece = s.piece(
        "Hem binding",
        front_end("centre_front", made.left),
        sewn("hem", made.top, c.width),
        back_end("centre_back", made.right),
        sewn("hem_turned", made.bottom, c.width),
        grain=made.grain,
        cut=Cut(1, c.cloth),
        notches=(
            notch_along("hem", side, NotchKind.SINGLE),
            notch_along("hem_turned", long - side, NotchKind.SINGLE),
        ),
        marks=(made.crease,),
    )
    return HemBinding(piece, long - hem, "centre_front" if opened else "centre_back")
