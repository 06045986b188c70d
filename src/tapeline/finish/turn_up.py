"""How wide a curved hem can be turned up: its raw edge must lie on a line that is longer or shorter than itself."""

from __future__ import annotations

from collections.abc import Iterator

from tapeline.finish.choices import FinishChoices, allowances
from tapeline.pattern import EdgeKind, Garment
from tapeline.problems import InputError, Problem, Severity
from tapeline.units import Unit

__all__ = ["MOST_CROWDED", "turn_up_doubts"]

MOST_CROWDED = 0.25
"""A raw edge that is at one place a quarter longer or shorter than where it is to lie makes a row of small pleats, or
pulls; eased by steam and stitches it bears about so much (our own limit: common practice only says `narrow`)."""


def turn_up_doubts(garment: Garment, choices: FinishChoices, unit: Unit = Unit.CM) -> Iterator[Problem]:
    """Every hem that bends too tightly for the width it is turned up by.

    Where a hem of radius r is turned up by w, its raw edge has the radius r + w (or r - w) and comes to lie where the
    radius is r - w (r + w): it differs by a share of 2 w / r.
    """
    try:
        widths = allowances(garment, choices)
    except InputError:
        return  # is raised again where the garment is finished
    for piece in garment.pieces:
        for edge in piece.edges:
            if edge.kind is not EdgeKind.HEM:
                continue
            width = widths[piece.name][edge.name]
            bend = max(map(abs, edge.path.curvatures()))
            if 2 * width * bend > MOST_CROWDED:
                most = MOST_CROWDED / 2 / bend
                yield Problem(
                    "hem-curve-wide",
                    Severity.DOUBT,
                    f"the {edge.name.replace('_', ' ')} of the {piece.name.replace('_', ' ')} is turned up by "
                    f"{width / unit.mm:.1f} {unit.sign}, and bends so much that its raw edge is "
                    f"{200 * width * bend:.0f} % longer or shorter there than where it is to lie",
                    f"{piece.name}.{edge.name}",
                    f"a curve is turned up narrow: {most / unit.mm:.1f} {unit.sign} here "
                    f"(finish.allowance.{piece.name}.{edge.name}), or is faced or bound",
                )
