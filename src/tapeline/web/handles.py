"""The handles of the drawing: points that a line of the docket governs, with the line as it stands."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from tapeline.blocks.sleeve_choices import SleeveLength
from tapeline.geometry import Point, Vector
from tapeline.lengths import Length
from tapeline.pattern import Choice, Garment, Piece, choices_of
from tapeline.styles.governed import GOVERNED

__all__ = ["Handle", "handles"]

_WAYS = {"down": Vector(0, -1), "up": Vector(0, 1), "out": Vector(1, 0), "inward": Vector(-1, 0)}

ON_IT_MM = 0.1


@dataclass(frozen=True, slots=True)
class Handle:
    """A governed point of one garment, with the choice as it stands."""

    label: str
    at: Point
    keys: tuple[str, ...]
    """As in the docket: `garment`, `neckline`, `widen`."""
    way: Vector
    """In the axes of the piece; a move of the point, multiplied with it, is how much the choice grows."""
    now_mm: float
    limits: Choice
    """In cm."""
    on: str
    """The piece that it lies on: where its own was cut apart, the part that has the point now."""


def handles(garment: Garment, choices: Any) -> list[Handle]:  # noqa: ANN401 - any style's own choices
    """The governed points that a garment has."""
    points, made = garment.points, []
    girths = {girth.name for girth in garment.girths}
    parts = _parts(garment)
    for row in GOVERNED:
        found = _choice(choices, row.keys)
        if row.label not in points or found is None or (row.girth and row.girth not in girths):
            continue
        value, limits = found
        if isinstance(value, SleeveLength):
            # The docket counts from the shoulder; a shoulder that was dropped has taken its part of the sleeve.
            dropped = getattr(choices, "shoulder_drop", None)
            length = garment.step("sleeve_length").lengths[0]
            now_mm = length.mm + (dropped.mm if isinstance(dropped, Length) else 0.0)
        else:
            now_mm = value.mm
        way = _WAYS.get(row.way)
        if way is None:
            way = garment.lines[f"{row.label.partition('.')[0]}.{row.way}"].leaves
        at, keys = points[row.label], ("garment", *row.keys)
        on = _on(garment, row.label.partition(".")[0], at, parts)
        made.append(Handle(row.label, at, keys, way * (1 / row.share), now_mm, limits, on))
    return made


def _parts(garment: Garment) -> dict[str, list[Piece]]:
    """By sheet: other pieces that have edges of what was drawn on it, for they were cut from it."""
    found: dict[str, list[Piece]] = {}
    for piece in garment.pieces:
        sheets = {
            need.partition(".")[0]
            for step in garment.steps
            if step.path is not None and step.sheet == piece.name
            for need in step.needs
            if "." in need
        }
        for sheet in sheets - {piece.name}:
            found.setdefault(sheet, []).append(piece)
    return found


def _on(garment: Garment, sheet: str, at: Point, parts: dict[str, list[Piece]]) -> str:
    own = next((piece for piece in garment.pieces if piece.name == sheet), None)
    if sheet not in parts or (own is not None and _has(own, at)):
        return sheet
    return next((piece.name for piece in parts[sheet] if _has(piece, at)), sheet)


def _has(piece: Piece, at: Point) -> bool:
    """Whether a point lies on the outline of a piece: as a rule on a corner."""
    corners = (edge.path.start for edge in piece.edges)
    return any(at.distance_to(one) < ON_IT_MM for one in corners) or piece.seam_line.distance_to(at) < ON_IT_MM


def _choice(choices: Any, keys: tuple[str, ...]) -> tuple[Any, Choice] | None:  # noqa: ANN401 - any style's own choices
    for key in keys[:-1]:
        choices = getattr(choices, key, None)
    value = getattr(choices, keys[-1], None)
    if not isinstance(value, Length | SleeveLength):
        return None
    return value, choices_of(type(choices))[keys[-1]]
