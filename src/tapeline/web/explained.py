"""What moves a line, point or size of the drawing, as the page shows it."""

from __future__ import annotations

from typing import Any

from tapeline.measures import TAPES
from tapeline.project import Drafted, explain

__all__ = ["explained"]

SHOWN_MM = 0.05
"""Less than this is not worth telling: it would be shown as 0.0."""


def explained(drafted: Drafted, what: str) -> dict[str, Any]:
    """The tapes that move it, the strongest first: mm for each centimetre more, and which way.

    Raises:
        InputError: `not-explained`; or what drafting says, where a tape lies at the limit of what can be drafted.
    """
    if what in drafted.docket.wearer.tapes:
        return {"what": what, "movers": []}
    found = explain(drafted, what)
    return {
        "what": found.what,
        "movers": [
            {
                "tape": mover.tape.replace("_", " "),
                "mm": mover.mm_per_cm,
                "out": _shown(mover.dx),
                "up": _shown(mover.dy),
                "per": " per degree" if TAPES[mover.tape].angle else "",
            }
            for mover in found.movers
            if abs(mover.mm_per_cm) >= SHOWN_MM
        ],
    }


def _shown(mm: float) -> float:
    return mm if abs(mm) >= SHOWN_MM else 0.0
