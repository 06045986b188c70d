"""Sizes of the block as a fitting corrects them: a longer or shorter back, a fuller front, an eased shoulder.

Common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.draft import Draft, corrected
from tapeline.lengths import Length, cm

__all__ = ["BackLengths", "Quarters", "back_lengths", "chest_quarters", "eased_shoulder", "longer_front"]

QUARTERS = 4
MORE_THAN_TAPED = cm(0.5)
"""So much more than bust and upper chest say may be given to the front; our own choice, for tapes are not exact."""
SHOULDER_SEAMS = ("shoulder", "overarm")
"""What the shoulder's line becomes: a seam of its own, or part of a raglan's."""
OVER_THE_BLADES = "the back shoulder is eased in over its middle third, so that it rounds over the blade"
OVER_THE_BUST = "the longer front is eased in between underarm and waist, so that it rounds over the bust"


@dataclass(frozen=True, slots=True)
class BackLengths:
    """From the nape down the centre back."""

    to_chest: Length
    to_waist: Length


@dataclass(frozen=True, slots=True)
class Quarters:
    """From the centre to the underarm, back and front."""

    back: Length
    front: Length


def back_lengths(d: Draft, chest_depth: Length, back_length: Length) -> BackLengths:
    """Longer over a rounded back, shorter over an erect one: cut across at the blades, opened or overlapped there.

    The cut is hinged at the armhole and the centre back is drawn straight again, so that it still lies on the fold: the
    nape and the neck point rise or sink by the amount, the shoulder point and all below the cut stay.
    """
    rounded, erect = d.correction("rounded_back"), d.correction("erect_back")

    def made(name: str, says: str, length: Length) -> Length:
        longer = corrected(length, more=(rounded,), less=(erect,))
        return length if longer is length else d.measured(name, says, longer)

    return BackLengths(
        made("back_chest_depth", "Nape to chest line over this back", chest_depth),
        made("corrected_back_length", "Nape to waist over this back", back_length),
    )


def longer_front(d: Draft, back_length: Length) -> Length:
    """Down to the front's waist line: further where length is put in below the bust line for a full bust."""
    longer = d.correction("full_bust.length")
    if not longer.mm:
        return back_length
    d.eased("side", longer, OVER_THE_BUST)
    return d.measured("front_waist_depth", "Level of the nape to the front's waist line", back_length + longer)


def chest_quarters(d: Draft, quarter: Length) -> Quarters:
    """Back and front alike, or some of the back's width given to the front; the whole girth stays."""
    given = d.correction("full_bust.width")
    if not given.mm:
        return Quarters(quarter, quarter)
    d.require(
        "bust-given-too-much",
        (d.tape("bust") - d.tape("upper_chest")) / QUARTERS + MORE_THAN_TAPED,
        given,
        says="the front would take more width from the back than the bust has over the upper chest in a quarter",
        where="garment.corrections.full_bust.width",
        hint="make garment.corrections.full_bust.width smaller, or take bust and upper chest again",
    )
    return Quarters(
        d.measured("back_chest_quarter", "Centre back to underarm", quarter - given),
        d.measured("front_chest_quarter", "Centre front to underarm", quarter + given),
    )


def eased_shoulder(d: Draft, length: Length, blades: Length) -> Length:
    """The back shoulder: longer than the front's where it is eased in over the blades."""
    if blades.mm:
        for seam in SHOULDER_SEAMS:
            d.eased(seam, corrected(Length(0), less=(blades,)), OVER_THE_BLADES)
    return corrected(length, more=(blades,))
