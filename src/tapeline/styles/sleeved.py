"""A sleeve made fuller, by cutting and spreading what has been drawn: puffed head, bell, gathered into a band."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter import Edges, Spread, across, grain_upright, lengthen, level, split, spread, true_line, upright
from tapeline.blocks.rolled_cuff import IN_A_POINT
from tapeline.blocks.sleeve_band import sleeve_band
from tapeline.blocks.sleeve_choices import SleeveChoices
from tapeline.blocks.sleeve_fullness import SleeveHead
from tapeline.draft import Draft, edge, seam
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, Join, NotchKind, Seam
from tapeline.styles.cuffed import cuffed

__all__ = ["sleeved"]

ABOVE_THE_NOTCH = 0.6
"""The cap is cut across at this share of the way from the crown down to the higher notch, and raised there."""
CUTS_EACH_SIDE = 2
"""A head is spread at so many lines on either side of the crown."""
STILL_MM = 1e-6
BELL_CUTS = 6
LEAST_BELL = cm(10)
"""From the elbow to the hem: shorter, and it is a frill."""
GATHERED_HEAD = "the head is gathered into the armhole between the notches, front and back, and stands out there"
GATHERED_HEM = "the sleeve is gathered into the band, as evenly before the notch as behind it"
GATHERED_RIB = "the sleeve is gathered into the rib, which is stretched on"
ROUND_EDGE = "the upper edge of the bell is round, drawn through the ends of the cuts, and a little longer so"


def sleeved(d: Draft, garment: Garment, c: SleeveChoices, *, at_wrist: bool) -> Garment:
    """The garment with its sleeve as full as was chosen; as it is where that is smooth and hemmed.

    `at_wrist` says whether it comes to the wrist.

    Raises `InputError`: `bell-too-short`, `nothing-to-gather`, and what spreading says.
    """
    lower = "hem"
    if c.end.bell.mm > 0 or c.end.made_up.mm > 0:
        # A hem that is spread or gathered says nothing of how close the sleeve comes to the wrist.
        garment = replace(garment, girths=tuple(girth for girth in garment.girths if girth.name != "wrist"))
    if c.end.rolled.mm > 0:
        garment = replace(garment, joins=tuple(map(_folded_straight, garment.joins)))
    if c.end.bell.mm > 0:
        garment, lower = _bell(d, garment, c), "elbow"
    if c.head.gathered:
        garment = _puffed(garment, c.head, lower)
    if c.end.band.mm > 0:
        garment = _banded(d, garment, c, at_wrist=at_wrist)
    return cuffed(d, garment, c.end, at_wrist=at_wrist) if c.end.cuff.mm > 0 else garment


def _folded_straight(join: Join) -> Join:
    return replace(join, corner=IN_A_POINT) if join.line == "sleeve hem" else join


def _puffed(garment: Garment, head: SleeveHead, lower: str) -> Garment:
    """Raised above the notches, spread between them, hinged at the lower edge; below the notches nothing changes."""
    before = garment.piece("sleeve")
    cap_front, cap_back = before.edge("cap_front"), before.edge("cap_back")
    front = next(n.at_mm for n in before.notches_on("cap_front") if n.kind is NotchKind.SINGLE)
    back = next(n.at_mm for n in before.notches_on("cap_back") if n.kind is NotchKind.DOUBLE)
    front_place, back_place = cap_front.path.at(front), cap_back.path.at(back)
    crown = cap_front.path.start
    if head.raised.mm > 0:
        down = Length((crown.y - max(front_place.y, back_place.y)) * ABOVE_THE_NOTCH, "above_the_notches")
        garment = lengthen(garment, "sleeve", level(garment, "sleeve.crown", down=down).turned, head.raised)
    if head.spread.mm > 0:
        each = head.spread / (2 * CUTS_EACH_SIDE)
        steps = [k / (CUTS_EACH_SIDE + 1) for k in range(1, CUTS_EACH_SIDE + 1)]
        outs = [*((back_place.x - crown.x) * step for step in reversed(steps))]
        outs += [(front_place.x - crown.x) * step for step in steps]
        cuts = [Spread(upright(garment, "sleeve.crown", out=Length(out)), each, hinge=lower) for out in outs]
        garment = grain_upright(spread(garment, "sleeve", cuts), "sleeve")
    made = garment.piece("sleeve")
    # Below the notches nothing is gathered: they lie as far from the underarm as before.
    places = {
        NotchKind.SINGLE: ("cap_front", made.edge("cap_front").length - (cap_front.length - front)),
        NotchKind.DOUBLE: ("cap_back", back),
    }
    notches = tuple(
        replace(n, at_mm=places[n.kind][1]) if places.get(n.kind, ("",))[0] == n.edge else n for n in made.notches
    )
    pieces = tuple(replace(made, notches=notches) if piece is made else piece for piece in garment.pieces)
    garment = replace(garment, pieces=pieces)
    heads = dict.fromkeys(("armhole_front", "armhole_back"), GATHERED_HEAD)
    return _resewn(garment, {**heads, "cuff": GATHERED_RIB, "elbow": ROUND_EDGE}, "gathers")


def _resewn(garment: Garment, seams: dict[str, str], name: str) -> Garment:
    """Seams whose edges are longer than they were: the difference is meant, with its reason."""

    def sewn(one: Seam) -> Seam:
        if one.name not in seams:
            return one
        more = garment.run_length(one.a) - garment.run_length(one.b)
        still = abs(more - one.ease.mm) < STILL_MM
        return one if still else replace(one, ease=Length(more, name), reason=seams[one.name])

    return replace(garment, seams=tuple(map(sewn, garment.seams)))


def _bell(d: Draft, garment: Garment, c: SleeveChoices) -> Garment:
    """Cut off at the elbow, and spread at even lines, hinged at the new seam."""
    points = garment.points
    d.require(
        "bell-too-short",
        Length(points["sleeve.elbow_level"].y - points["sleeve.hem_level"].y, "elbow_to_hem"),
        LEAST_BELL,
        says="the sleeve ends so near the elbow that no bell can hang below it",
        where="garment.sleeve.end",
        hint="make garment.sleeve.length three-quarter or long, or garment.sleeve.shape flared",
    )
    cut = level(garment, "sleeve.elbow_level")
    garment = split(garment, "sleeve", cut, name="bell", title="Bell", seam="elbow")
    each = c.end.bell / BELL_CUTS
    shares = [k / (BELL_CUTS + 1) for k in range(1, BELL_CUTS + 1)]
    cuts = [Spread(across(garment, "bell", ("elbow", at), ("hem", 1 - at)), each, hinge="elbow") for at in shares]
    garment = grain_upright(spread(garment, "bell", cuts, edges=Edges.STRAIGHT), "bell")
    for line in ("elbow", "hem"):
        garment = true_line(
            garment, "bell", line, square_at_start=False, square_at_end=False, by_its_middle=line == "hem"
        )
    return _resewn(garment, {"elbow": ROUND_EDGE, "cuff": GATHERED_RIB}, "drawn_round")


def _banded(d: Draft, garment: Garment, c: SleeveChoices, *, at_wrist: bool) -> Garment:
    """The hem gathered into a band."""
    hem = next(piece for piece in garment.pieces if piece.name in ("bell", "sleeve") and _has_hem(garment, piece.name))
    before = len(d.steps)
    long = d.measured("gathered_hem", "Along the sleeve's hem, to be gathered", Length(hem.edge("hem").length))
    band = sleeve_band(d, c.end, long, at_wrist=at_wrist)
    name = band.piece.name
    seams = (
        seam("sleeve_band", edge(hem.name, "hem"), edge(name, "hem"), ease=band.gathers, reason=GATHERED_HEM),
        seam("sleeve_band_turned", edge(name, "hem_turned"), edge(name, "hem").backward),
        seam("sleeve_band_ends", edge(name, "front_end"), edge(name, "back_end").backward),
    )
    sizes = {size.name for size in garment.sizes}
    return replace(
        garment,
        pieces=(*garment.pieces, band.piece),
        seams=(*garment.seams, *seams),
        sizes=(*garment.sizes, *(size for size in d.sizes.values() if size.name not in sizes)),
        steps=(*garment.steps, *d.steps[before:]),
    )


def _has_hem(garment: Garment, piece: str) -> bool:
    return any(one.name == "hem" for one in garment.piece(piece).edges)
