"""Hem and side of back and front: how long, how shaped, how slit."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.blocks.dartless import Dartless, Half
from tapeline.blocks.front_side import FittedSides, as_drawn, fitted, hem_centre_of_back
from tapeline.blocks.hems import HemChoices
from tapeline.blocks.outline import SideLines
from tapeline.blocks.shaped_side import SideShape, shaped_side, vented
from tapeline.draft import Draft, Place, corrected
from tapeline.lengths import Length, cm

__all__ = ["LENGTH", "SideChoices", "Sides", "sides"]

LENGTH = (-40, 90, "hem below the hip line; below nothing it lies above it, as of a cropped top")
"""The range of a top's length, and its reason: from just under the bust to the ankle."""
LEAST_BELOW_HIP = 1.5
"""From hip to hem, for each part of flare at the side: steeper, and the side seam sags on the bias."""
LEAST_SIDE = cm(5)
"""From the underarm to the hem: less, and nothing holds the garment down."""
MOST_SWEEP = 1.0
"""A hem sinks no further from the side to the centre than it is wide: steeper, and it is an edge, not a hem."""


@dataclass(frozen=True, slots=True)
class Sides:
    """Where the hems lie on the centre lines, and the sides that end in them."""

    back_hem: Place
    front_hem: Place
    back: SideLines
    front: SideLines


@dataclass(frozen=True, slots=True)
class SideChoices:
    """What was chosen of the side and the hem."""

    waist: Length
    flare: Length
    hem: HemChoices


def sides(d: Draft, points: Dartless, c: SideChoices, hem: Length, front_drop: Length) -> Sides:
    """Draw the places of the hem and the sides down to it; `hem` is how far below the hip line a level hem lies.

    Raises `InputError`: `hem-too-high`, `flare-too-wide`, `hem-too-steep`, `step-without-vent`, `vent-too-long`.
    """
    back, front = points.back, points.front
    sheets = points.neck.back, points.neck.front
    shape, slit = c.hem.shape, c.hem.vent.mm > 0
    side = SideShape(c.waist, c.flare, shape.rise)
    name = "side_and_vent" if slit else "side"

    sheets[0].section("Hem and side of the back")
    hem_below = d.measured("hem_below_hip", "How far the hem lies below the hip line", hem)
    _can_be_drawn(d, points, c, hem_below)
    plain = not (shape.back_lower.mm or shape.back_longer.mm)
    first = "hem_centre" if plain else "hem_level"
    level = sheets[0].point(first, "The hem, on the centre back", _from_hip(d, back, hem_below))
    if shape.back_longer.mm:
        longer = "hem_longer" if shape.back_lower.mm else "hem_centre"
        level = sheets[0].point(longer, "The back is longer all along", level.down(shape.back_longer))
    back_side = shaped_side(sheets[0], back, side, level, name)
    back_hem = level
    if shape.back_lower.mm:
        back_hem = sheets[0].point("hem_centre", "The hem sinks to the centre back", level.down(shape.back_lower))
    back_hem = hem_centre_of_back(d, sheets[0], back_hem)

    sheets[1].section("Hem and side of the front")
    level = sheets[1].point("hem_level", "The back's hem, on the centre front", _from_hip(d, front, hem_below))
    front_hem = sheets[1].point("hem_centre", "Lower by the front drop", level.down(front_drop))
    over_waist = replace(side, waist=corrected(c.waist, less=(d.correction("full_waist"),)))
    front_side = shaped_side(sheets[1], front, over_waist, level, as_drawn(d, name))
    made = fitted(
        d,
        sheets[1],
        FittedSides(back_side, front_side, front_hem),
        straight_from=front.side_hip if "hip" in back_side.reaches else None,
        name=name,
    )
    found = Sides(back_hem, made.front_hem, made.back, made.front)
    return _slit(d, points, found, c.hem.vent) if slit else found


def _from_hip(d: Draft, half: Half, below: Length) -> Place:
    """A level hem's place on the centre line."""
    if below.mm >= 0:
        return half.hip_level.down(below)
    return half.hip_level.up(d.measured("hem_above_hip", "How far the hem lies above the hip line", cm(0) - below))


def _slit(d: Draft, points: Dartless, found: Sides, vent: Length) -> Sides:
    """Both sides are sewn as far as the front's vent leaves; what is eased in lies above it."""
    whole = d.measured("side_with_vent", "The front's side, from the underarm to the hem", found.front.side.reading())
    sewn = d.measured("side_sewn", "As far as it is sewn", whole - vent)
    d.require(
        "vent-too-long",
        sewn,
        LEAST_SIDE,
        says="the vents are so long that hardly any side is left to sew",
        where="garment.hem.vent",
        hint="make garment.hem.vent smaller, or garment.length longer",
    )
    halves = []
    of_back = corrected(sewn, less=(d.correction("full_bust.length"),))
    for sheet, half, side, as_far in (
        (points.neck.back, points.back, found.back, of_back),
        (points.neck.front, points.front, found.front, sewn),
    ):
        sheet.section(f"The vent of the {sheet.name}")
        halves.append(vented(sheet, half, side, as_far))
    slit = Sides(found.back_hem, found.front_hem, *halves)
    if "waist" in found.front.reaches:
        d.remark(
            "vent-high",
            Length(slit.front.side.path.end.y - points.front.waist_level.point.y, "from_the_vent_to_the_waist"),
            above=cm(0),
            says="the vents begin above the waist, where a slit shows the body and the seam takes the strain",
            where="garment.hem.vent",
            hint="make garment.hem.vent smaller",
        )
    return slit


def _can_be_drawn(d: Draft, points: Dartless, c: SideChoices, hem_below: Length) -> None:
    """Whether hem and side can be as they were chosen."""
    back, shape = points.back, c.hem.shape
    if hem_below.mm < 0 or shape.rise.mm:
        side = d.measured(
            "underarm_to_hip",
            "Down the back, from the underarm to the hip line",
            back.underarm.reading_down_to(back.hip_level),
        )
        d.require(
            "hem-too-high",
            side + hem_below - shape.rise,
            LEAST_SIDE,
            says="the hem lies so high at the side that hardly any side is left to sew",
            where="garment.length",
            hint="make garment.length longer, or garment.hem.shape.rise smaller",
        )
    if c.flare.mm:
        d.require(
            "flare-too-wide",
            hem_below,
            c.flare * LEAST_BELOW_HIP,
            says="the side would flare out more steeply than a seam can hang",
            where="garment.flare",
            hint="make garment.flare smaller, or garment.length longer",
        )
    if shape.rise.mm or shape.back_lower.mm:
        d.require(
            "hem-too-steep",
            d.sizes["hip_quarter"].length * MOST_SWEEP,
            shape.rise + shape.back_lower,
            says="the hem would sink from the side to the centre by more than the piece is wide",
            where="garment.hem.shape",
            hint="make garment.hem.shape.rise or back_lower smaller",
        )
    if shape.back_longer.mm:
        d.require(
            "step-without-vent",
            c.hem.vent,
            cm(0),
            says="the back is longer than the front all along, and no vent lets both hems end",
            where="garment.hem.vent",
            hint="choose garment.hem.vent, or a back that sinks in one sweep: garment.hem.shape.back_lower",
        )
