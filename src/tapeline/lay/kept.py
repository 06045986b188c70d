"""A plan kept as JSON: cloth, pieces and coordinates, enough to draw it, to cut from it and to go on from it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict, fields
from typing import Any

from tapeline.geometry import Point, unsound
from tapeline.lay.cloth import Direction, Flaw, LayCloth, Spread
from tapeline.lay.piece import LayLine, LayPiece
from tapeline.lay.plan import LayPlan, Placement
from tapeline.problems import InputError, Problem, Severity

__all__ = ["kept", "taken_up"]

FORMAT = "tapeline lay plan 1"
FINEST = 6
"""Decimals of a kept millimetre."""


def kept(plan: LayPlan) -> str:
    """A plan as JSON text: one object with `format`, `cloth`, `pieces`, `placements`; mm and radians.

    >>> corner = (Point(0, 0), Point(300, 0), Point(300, 200), Point(0, 200))
    >>> front = LayPiece("front", "marit", corner)
    >>> plan = LayPlan(LayCloth(), (front,), (Placement("marit/front", 1, 0.0, 0.0),))
    >>> taken_up(kept(plan)) == plan
    True
    """
    cloth = asdict(plan.cloth)
    pieces = [
        {
            **{f.name: getattr(piece, f.name) for f in fields(piece)},
            "outline": _pairs(piece.outline),
            "match": None if piece.match is None else [piece.match.x, piece.match.y],
            "lines": [{"kind": line.kind, "points": _pairs(line.points)} for line in piece.lines],
            "words": list(piece.words),
        }
        for piece in plan.pieces
    ]
    placements = [asdict(placement) for placement in plan.placements]
    document = {
        "format": FORMAT,
        "length_mm": round(plan.length_mm, 3),
        "density": round(plan.density, 6),
        "found": plan.found,
        "seconds": plan.seconds,
        "cloth": cloth,
        "pieces": pieces,
        "placements": placements,
    }
    return json.dumps(document, ensure_ascii=False, indent=1) + "\n"


def taken_up(text: str, where: str = "the kept plan") -> LayPlan:
    """The plan that was kept as a text.

    Args:
        text: What `kept` gave.
        where: Names it in problems.

    Raises:
        InputError: `lay-kept` when it is no plan, or one with numbers that no plan has.
    """
    try:
        document = json.loads(text)
        if not isinstance(document, dict) or document.get("format") != FORMAT:
            raise ValueError(f'it does not say "format": "{FORMAT}"')  # noqa: TRY301 - all that is wrong ends below
        plan = LayPlan(
            _cloth(document["cloth"]),
            tuple(_piece(piece) for piece in document["pieces"]),
            tuple(_placement(placement) for placement in document["placements"]),
            str(document.get("found", "")),
            float(document.get("seconds", 0.0)),
        )
        _whole(plan)
    except (ValueError, TypeError, KeyError, RecursionError, AttributeError) as error:
        reason = f"{error.args[0]} is missing" if isinstance(error, KeyError) else str(error)
        raise InputError(Problem("lay-kept", Severity.ERROR, f"{where} is no lay plan: {reason}", where)) from error
    problems = list(plan.cloth.problems())
    if problems:
        raise InputError(problems)
    return plan


def _whole(plan: LayPlan) -> None:
    for piece in plan.pieces:
        if wrong := unsound(piece.outline):
            raise ValueError(f"the outline of {piece.key}: {wrong}")
    for placement in plan.placements:
        if placement.piece not in plan.by_key:
            raise ValueError(f"a placement names the piece {placement.piece}, which is not there")
        if not all(abs(number) < 1e9 for number in (placement.x, placement.y, placement.turn)):
            raise ValueError(f"a placement of {placement.piece} is no place: {placement.x}, {placement.y}")


def _cloth(table: Mapping[str, Any]) -> LayCloth:
    flaws = tuple(Flaw(**flaw) for flaw in table["flaws"])
    rest = {key: value for key, value in table.items() if key not in {"flaws", "spread", "direction"}}
    return LayCloth(**rest, flaws=flaws, spread=Spread(table["spread"]), direction=Direction(table["direction"]))


def _piece(table: Mapping[str, Any]) -> LayPiece:
    own = {"outline", "match", "lines", "words"}
    rest = {key: value for key, value in table.items() if key not in own}
    for count in ("upright", "turned_over", "garments"):
        if not isinstance(rest[count], int) or not 0 <= rest[count] <= 10000:
            raise ValueError(f"{count} of {rest['name']} is {rest[count]}")
    return LayPiece(
        **rest,
        outline=_points(table["outline"]),
        match=None if table["match"] is None else _points([table["match"]])[0],
        lines=tuple(LayLine(str(line["kind"]), _points(line["points"])) for line in table["lines"]),
        words=tuple(map(str, table["words"])),
    )


def _placement(table: Mapping[str, Any]) -> Placement:
    x, y, turn = (float(table[name]) for name in ("x", "y", "turn"))
    return Placement(str(table["piece"]), int(table["garment"]), x, y, turn, bool(table["turned_over"]))


def _pairs(points: tuple[Point, ...]) -> list[list[float]]:
    return [[round(p.x, FINEST), round(p.y, FINEST)] for p in points]


def _points(pairs: list[list[float]]) -> tuple[Point, ...]:
    return tuple(Point(float(x), float(y)) for x, y in pairs)
