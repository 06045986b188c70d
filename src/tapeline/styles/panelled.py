"""Panels at the sides of a top, cut off by an upright seam in front and behind that meet at the shoulder."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter import CutLine, remarked, split, upright
from tapeline.blocks.parts import ColourBlockChoices, PanelChoices
from tapeline.draft import Draft
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment
from tapeline.problems import InputError, Problem, Severity

__all__ = ["panelled", "upright_lines"]

CLEAR = cm(2)
"""The seam stays this far from both ends of the shoulder."""
HALVES = ("back", "front")


def upright_lines(d: Draft, garment: Garment, c: PanelChoices, block: ColourBlockChoices) -> dict[str, CutLine]:
    """Where back and front are cut: through the place so far along each shoulder, while there still is one.

    Raises `InputError`: `panel-off-shoulder`, `panel-with-block`, `panel-through-pocket`.
    """
    if c.from_neck.mm == 0:
        return {}
    if block.below.mm > 0:
        raise _refused(
            "panel-with-block",
            "a block round the hem and panels at the sides would cross each other",
            "set garment.panel.from_neck or garment.colour_block.below to 0",
        )
    lines = {}
    for half in HALVES:
        shoulder = garment.piece(half).edge("shoulder").path
        inside = Length(min(c.from_neck.mm, shoulder.length - c.from_neck.mm), "from_the_nearer_end_of_the_shoulder")
        d.require(
            "panel-off-shoulder",
            inside,
            CLEAR,
            says="the panel's seam would end within 2 cm of the neckline or of the shoulder's end",
            where="garment.panel.from_neck",
            hint="make it about half of the shoulder",
        )
        place = shoulder.at(c.from_neck.mm)
        start = garment.points[f"{half}.neckline_shoulder"]
        lines[half] = upright(garment, f"{half}.neckline_shoulder", out=Length(place.x - start.x, "out_to_the_panel"))
        for mark in garment.piece(half).marks:
            across = [knot.x for knot in mark.path.knots]
            if mark.name == "pocket" and min(across) - CLEAR.mm < place.x < max(across) + CLEAR.mm:
                raise _refused(
                    "panel-through-pocket",
                    "the panel's seam would run through the pocket, or hardly beside it",
                    "move it with garment.panel.from_neck, or leave the pocket out",
                )
    return lines


def panelled(garment: Garment, c: PanelChoices, lines: dict[str, CutLine]) -> Garment:
    """The garment with its panels; as it is where there are no lines."""
    for half, line in lines.items():
        name, whole = f"{half}_side", garment.piece(half)
        garment = split(garment, half, line, name=name, title=f"Side {half}", seam=f"panel_{half}")
        panel = garment.piece(name)
        pieces = tuple(
            replace(panel, cut=replace(panel.cut, cloth=c.cloth)) if piece is panel else piece
            for piece in garment.pieces
        )
        garment = remarked(replace(garment, pieces=pieces), whole, "centre", half)
    return garment


def _refused(code: str, says: str, hint: str) -> InputError:
    return InputError(Problem(code, Severity.ERROR, says, "garment.panel.from_neck", f"{hint}. Nothing was drafted."))
