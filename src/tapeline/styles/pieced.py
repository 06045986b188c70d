"""A garment cut apart and sewn together again: yoke, colour block and panels, by splitting what has been drawn."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter import along, join, level, remarked, split
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices, YokeChoices
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import ONE_SIDE, Garment, Notch, NotchKind, Piece
from tapeline.styles.panelled import panelled, upright_lines

__all__ = ["blocked", "pieced"]

CENTRE = "centre"
"""The mark from which a piece is measured whose middle is filled by another."""
CLEAR = cm(2)
"""A seam stays this far from shoulder, neckline, underarm and hem: nearer, and it cannot be sewn beside their seams."""
TURN = 0.02
"""Radians; a line that turns less runs on."""
SAME_MM = 1e-6
STRAIGHT = cm(0.01)
"""A line that leaves its chord by less is straight to the shears."""


def pieced(
    d: Draft, garment: Garment, yoke: YokeChoices, colour_block: ColourBlockChoices, panel: PanelChoices
) -> Garment:
    """The garment with its yoke, its block of another colour and its side panels.

    Raises `InputError`: `yoke-too-shallow`, `yoke-too-deep`, `yoke-past-neckline`, `yoke-not-in-one`,
    `block-near-underarm`, `block-past-side`, and what splitting and joining say.
    """
    lines = upright_lines(d, garment, panel, colour_block)
    back, front = yoke.shape.back.mm > 0, yoke.shape.front.mm > 0
    if back:
        garment = _back_yoke(d, garment, yoke)
    if front:
        garment = _front_yoke(d, garment, yoke)
    if back and front:
        garment = _in_one(d, garment)
    return blocked(d, panelled(garment, panel, lines), colour_block)


def _back_yoke(d: Draft, garment: Garment, yoke: YokeChoices) -> Garment:
    points, piece = garment.points, garment.piece("back")
    nape, centre = points["back.nape"], piece.edge("neckline").path.start
    tip, chest = piece.edge("armhole").path.start, points["back.chest_level"]
    lowest = Length(nape.y - min(centre.y, tip.y), "neckline_or_shoulder_below_the_nape")
    d.require(
        "yoke-too-shallow",
        yoke.shape.back,
        lowest + CLEAR,
        says="the yoke would end within 2 cm of the neckline or of the shoulder's end",
        where="garment.yoke.shape.back",
        hint="make garment.yoke.shape.back larger",
    )
    d.require(
        "yoke-too-deep",
        Length(nape.y - chest.y, "chest_line_below_the_nape") - CLEAR,
        yoke.shape.back,
        says="the yoke would come down to the underarm",
        where="garment.yoke.shape.back",
        hint="make garment.yoke.shape.back smaller; garment.colour_block cuts the body lower down",
    )
    line = level(garment, "back.nape", down=yoke.shape.back).turned
    return _of_cloth(split(garment, "back", line, name="yoke", title="Yoke", seam="yoke_back"), "yoke", yoke.cloth)


def _front_yoke(d: Draft, garment: Garment, yoke: YokeChoices) -> Garment:
    line = along(garment, "front.shoulder").beside(yoke.shape.front)
    # Farther from the shoulder than the neckline is deep, the line would meet the centre, and unfold to a point.
    centre = garment.piece("front").edge("neckline").path.start
    d.require(
        "yoke-past-neckline",
        Length((line.path.start - centre).dot(line.beyond), "neckline_below_the_yoke"),
        CLEAR,
        says="the front yoke would end within 2 cm of where the neckline meets the centre front",
        where="garment.yoke.shape.front",
        hint="make garment.yoke.shape.front smaller, or lower the neckline with garment.neckline.lower_front",
    )
    whole = garment.piece("front")
    made = split(garment, "front", line, name="front_yoke", title="Front yoke", seam="yoke_front")
    made = remarked(made, whole, CENTRE, "front")
    return _of_cloth(made, "front_yoke", yoke.cloth)


def _in_one(d: Draft, garment: Garment) -> Garment:
    """The front yoke is laid to the back's along the shoulder; where that was, neckline and armhole are marked."""
    line = garment.piece("yoke").edge("shoulder").path
    d.require(
        "yoke-not-in-one",
        STRAIGHT,
        Length(line.at(line.length / 2).distance_to(line.start.toward(line.end, 0.5)), "bow_of_the_shoulder"),
        says="the shoulder is bent, down the arm or up the neck, so back and front yoke cannot be cut in one",
        where="garment.yoke.shape.front",
        hint="set garment.yoke.shape.front to 0, or leave the back yoke out",
    )
    shoulder = next(seam for seam in garment.seams if seam.name == "shoulder")
    # The first of a seam's pieces keeps its name and its place on the fold: that is the back's.
    turned = replace(shoulder, a=shoulder.b, b=shoulder.a, ease=cm(0) - shoulder.ease)
    seams = tuple(turned if seam is shoulder else seam for seam in garment.seams)
    neckline, armhole = (garment.piece("yoke").edge(name).length for name in ("neckline", "armhole"))
    made = join(replace(garment, seams=seams), "shoulder")
    piece = made.piece("yoke")
    # The neckline runs from the fold to the shoulder and on; the armhole from the front to the shoulder and down.
    past = piece.edge("armhole").length - armhole
    marks = [Notch("armhole", past, NotchKind.CROWN)]
    if not _bends_after(piece, "neckline", neckline):
        marks.append(Notch("neckline", neckline, NotchKind.CROWN))
    return _with(made, replace(piece, notches=(*piece.notches, *marks)))


def _bends_after(piece: Piece, name: str, along: float) -> bool:
    """Whether an edge ends a length along it in a corner, which is mark enough."""
    at = next(k for k, edge in enumerate(piece.edges) if edge.name == name)
    edge, following = piece.edges[at], piece.edges[(at + 1) % len(piece.edges)]
    return along > edge.length - SAME_MM and abs(edge.path.arrives.turn_to(following.path.leaves)) > TURN


def blocked(d: Draft, garment: Garment, block: ColourBlockChoices) -> Garment:
    """The garment with its block of another colour round the lower body, where one was chosen.

    Raises `InputError`: `block-near-underarm`, `block-past-side`, and what splitting says.
    """
    if block.below.mm == 0:
        return garment
    # On the side of a lower shoulder the underarm is lower, too; the block is level from there to the other side.
    lower = tuple(by for by in map(d.correction, ONE_SIDE) if by.mm)
    below = block.below - sum(lower, cm(0)) if lower else block.below
    d.require(
        "block-near-underarm",
        below,
        CLEAR,
        says="the colour block would begin within 2 cm of the underarm, or above it on the side of a lower shoulder",
        where="garment.colour_block.below",
        hint="make garment.colour_block.below larger, or 0 to leave it out",
    )
    for half in ("back", "front"):
        side, hem = (garment.piece(half).edge(name).path for name in ("side", "hem"))
        # Over a sway back the hem rises to the centre, and a shaped one may do so at the front.
        risen = max(knot.y for knot in hem.knots)
        room = (
            Length(side.start.y - risen, f"{half}_underarm_down_to_the_hem")
            if risen > side.end.y
            else Length(side.start.y - side.end.y, f"{half}_side_downward")
        )
        d.require(
            "block-past-side",
            room - CLEAR,
            below,
            says="the colour block would begin at the hem or below it",
            where="garment.colour_block.below",
            hint="make garment.colour_block.below smaller",
        )
        line = level(garment, f"{half}.underarm", down=below)
        title, seam = f"Lower {half}", f"block_{half}"
        whole = garment.piece(half)
        garment = split(garment, half, line, name=f"{half}_lower", title=title, seam=seam)
        garment = remarked(garment, whole, CENTRE, half, f"{half}_lower")
        garment = _of_cloth(garment, f"{half}_lower", block.cloth)
    return garment


def _of_cloth(garment: Garment, name: str, cloth: str) -> Garment:
    piece = garment.piece(name)
    return _with(garment, replace(piece, cut=replace(piece.cut, cloth=cloth)))


def _with(garment: Garment, piece: Piece) -> Garment:
    pieces = tuple(piece if one.name == piece.name else one for one in garment.pieces)
    return replace(garment, pieces=pieces)
