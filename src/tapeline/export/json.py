"""The data: one object with everything drafted, for programs.

Its schema is `tapeline.schema.json`, beside this file.
"""

from __future__ import annotations

import json
import math
from collections.abc import Iterable, Mapping
from importlib import resources
from typing import Any

from tapeline.finish import Finished, FinishedPiece
from tapeline.geometry import Point
from tapeline.pattern import Size, Step, StepKind
from tapeline.problems import Problem
from tapeline.truing import Truing
from tapeline.truing.walk import SeamWalk
from tapeline.units import Unit

__all__ = ["GIRTHS", "document", "schema", "text"]

GIRTHS = ("chest", "waist", "hip", "upper_arm", "wrist")
"""Always there; one that the garment does not reach is null."""
DIGITS = 4
"""Decimals of a millimetre: below the wavelength of light."""


def document(
    finished: Finished, truing: Truing, problems: Iterable[Problem], docket: Mapping[str, Any], unit: Unit = Unit.CM
) -> dict[str, Any]:
    """Everything about a garment, in mm, y up, each piece in its own axes; words of the steps in `unit`.

    Paths are SVG path strings. Raises `ValueError` for a number that is none (NaN) or has no end.
    """
    garment = finished.garment
    made: dict[str, Any] = {
        "tapeline": finished.title.version,
        "docket": dict(docket),
        "unit": "mm",
        "sizes": {size.name: _size(size, unit) for size in garment.sizes},
        "pieces": {piece.piece.name: _piece(piece) for piece in finished.pieces},
        "seams": [_seam(walked) for walked in truing.walks],
        "girths": _girths(truing),
        "points": {label: _point(point) for label, point in garment.points.items()},
        "steps": [_step(step, unit) for step in garment.steps],
        "problems": [problem.data for problem in problems],
    }
    return made


def text(made: Mapping[str, Any], indent: int | None = None) -> str:
    """A document as JSON, letters as they are; raises `ValueError` rather than write NaN."""
    return json.dumps(made, ensure_ascii=False, allow_nan=False, indent=indent, default=str)


def schema() -> dict[str, Any]:
    """The JSON Schema of a document.

    >>> schema()["title"]
    'A garment drafted by Tapeline'
    """
    found: dict[str, Any] = json.loads(
        resources.files("tapeline.export").joinpath("tapeline.schema.json").read_text("utf-8")
    )
    return found


def _number(value: float) -> float:
    if not math.isfinite(value):
        raise ValueError(f"{value} is no length")
    return round(float(value), DIGITS) + 0.0


def _point(point: Point) -> list[float]:
    return [_number(point.x), _number(point.y)]


def _size(size: Size, unit: Unit) -> dict[str, Any]:
    return {
        "mm": _number(size.length.mm),
        "source": str(size.source),
        "sd_mm": None if size.sd_mm is None else _number(size.sd_mm),
        "formula": size.length.equation(unit),
        "says": size.says,
    }


def _piece(finished: FinishedPiece) -> dict[str, Any]:
    piece = finished.piece
    allowances = dict(finished.allowances)
    return {
        "title": piece.title,
        "edges": {
            edge.name: {
                "path": edge.path.svg(),
                "length_mm": _number(edge.length),
                "kind": str(edge.kind),
                "fold": edge.fold,
                "allowance_mm": _number(allowances[edge.name]),
            }
            for edge in piece.edges
        },
        "seam_line": piece.seam_line.svg(),
        "cut_line": finished.cut_line.svg(),
        "notches": [{"edge": n.edge, "at_mm": _number(n.at_mm), "kind": str(n.kind)} for n in piece.notches],
        "marks": {mark.name: mark.path.svg() for mark in piece.marks},
        "grain": [_point(piece.grain.start), _point(piece.grain.end)],
        "cut": {
            "quantity": piece.cut.quantity,
            "cloth": piece.cut.cloth,
            "mirrored": piece.cut.mirrored,
            "on_fold": piece.on_fold,
        },
        "words": list(finished.words),
    }


def _seam(walked: SeamWalk) -> dict[str, Any]:
    seam = walked.seam
    return {
        "name": seam.name,
        "a": seam.side_text(seam.a),
        "b": seam.side_text(seam.b),
        "a_mm": _number(walked.a_mm),
        "b_mm": _number(walked.b_mm),
        "ease_mm": _number(seam.ease.mm),
        "reason": seam.reason,
    }


def _girths(truing: Truing) -> dict[str, Any]:
    found: dict[str, Any] = dict.fromkeys(GIRTHS)
    for measured in truing.girths:
        found[measured.girth.name] = {
            "tape_mm": _number(measured.girth.tape.mm),
            "garment_mm": _number(measured.garment_mm),
            "ease_mm": _number(measured.ease_mm),
        }
    return found


def _step(step: Step, unit: Unit) -> dict[str, Any]:
    made: dict[str, Any] = {
        "label": step.label,
        "kind": str(step.kind),
        "says": step.says,
        "how": step.how_text(unit),
        "formula": [length.symbols(unit) for length in step.lengths],
        "numbers": [length.numbers(unit) for length in step.lengths],
        "equations": list(step.equations(unit)),
        "needs": list(step.needs),
        "source": step.source,
    }
    if step.kind is StepKind.SIZE and step.lengths:
        made["mm"] = _number(step.lengths[-1].mm)
    if step.point is not None:
        made["point"] = _point(step.point)
    if step.path is not None:
        made["path"] = step.path.svg()
    return made
