"""True: findings, girths as rings, seams, joins."""

from __future__ import annotations

from typing import Any

from tapeline.web.view import View

__all__ = ["girths", "rings"]


def girths(view: View) -> list[dict[str, Any]]:
    """Tape, garment and ease at each level."""
    if view.drafted is None:
        return []
    unit = view.unit
    return [
        {
            "name": found.girth.name.replace("_", " "),
            "tape": f"{found.girth.tape.mm / unit.mm:.1f}",
            "garment": f"{found.garment_mm / unit.mm:.1f}",
            "ease": f"{found.ease_mm / unit.mm:+.1f}",
        }
        for found in view.drafted.truing.girths
    ]


def rings(view: View) -> list[dict[str, Any]]:
    """For each girth, two circles to one scale: the tape, and the garment round it."""
    if view.drafted is None:
        return []
    measured = view.drafted.truing.girths
    widest = max((max(found.garment_mm, found.girth.tape.mm) for found in measured), default=1.0)
    return [
        {
            "name": found.girth.name.replace("_", " "),
            "tape": 46 * found.girth.tape.mm / widest,
            "garment": 46 * found.garment_mm / widest,
            "ease": f"{found.ease_mm / view.unit.mm:+.1f} {view.unit.sign}",
        }
        for found in measured
    ]
