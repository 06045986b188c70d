"""The seams, walked: both sides, the ease between them, and every part between two notches."""

from __future__ import annotations

import math

from tapeline.sheets.html import paragraph, part, table
from tapeline.sheets.numbers import change, plain
from tapeline.truing import Truing
from tapeline.truing.joins import JOIN_TOLERANCE, SQUARE_TOLERANCE
from tapeline.truing.walk import SEAM_TOLERANCE_MM, SeamWalk
from tapeline.units import Unit

__all__ = ["seams"]


def seams(truing: Truing, unit: Unit) -> str:
    """Every seam, and how the lines run on across it."""
    rows = [_row(walked, unit) for walked in truing.walks]
    head = [
        "seam",
        "sewn together",
        f"first, {unit.sign}",
        f"second, {unit.sign}",
        "first is longer by",
        "off, mm",
        "parts between marks",
    ]
    joins = [
        [j.line, j.seam, f"{math.degrees(abs(j.bend)):.2f}" + (" (meant)" if j.meant else "")] for j in truing.joins
    ]
    return part(
        "seams",
        "Seams",
        paragraph(
            f"Two edges that should be equal, and differ by more than {SEAM_TOLERANCE_MM:g} mm from what is meant, "
            "would be an error."
        ),
        table("Seams, walked from end to end", head, rows, numbers=[2, 3, 4, 5]),
        _reasons(truing),
        table("Lines that run on across a seam when it is sewn", ["line", "across", "bends, degrees"], joins, [2])
        if joins
        else "",
        paragraph(_squares(truing)),
    )


def _row(walked: SeamWalk, unit: Unit) -> list[str]:
    seam = walked.seam
    sides = f"{seam.side_text(seam.a)} to {seam.side_text(seam.b)}"
    parts = "; ".join(f"{plain(a, unit)} to {plain(b, unit)}" for a, b in walked.parts) if len(walked.parts) > 1 else ""
    return [
        seam.name.replace("_", " "),
        sides.replace("_", " "),
        plain(walked.a_mm, unit),
        plain(walked.b_mm, unit),
        change(walked.a_mm - walked.b_mm, unit),
        f"{abs(walked.off_mm):.2f}",
        parts,
    ]


def _reasons(truing: Truing) -> str:
    why = [
        f"{walked.seam.name.replace('_', ' ')}: {walked.seam.reason}"
        for walked in truing.walks
        if walked.seam.reason and abs(walked.seam.ease.mm) > SEAM_TOLERANCE_MM
    ]
    why += [f"the corner of the {join.line} at the {join.seam}: {join.meant}" for join in truing.joins if join.meant]
    return paragraph("Meant to differ - " + "; ".join(why) + ".") if why else ""


def _squares(truing: Truing) -> str:
    if not truing.squares:
        return ""
    worst = max(math.degrees(abs(square.off)) for square in truing.squares)
    return (
        f"Every line that meets a fold is square to it within {max(worst, 0.01):.2f} degrees "
        f"(allowed: {math.degrees(SQUARE_TOLERANCE):g}); lines across a seam may bend by "
        f"{math.degrees(JOIN_TOLERANCE):g} degree."
    )
