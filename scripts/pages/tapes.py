"""docs/reference/tapes.md: every tape, how to take it, and between which limits it is believed."""

from __future__ import annotations

import math

from scripts.pages.markdown import NOTICE, table
from tapeline.measures import CONVERSIONS, TAPES, Figure, Tape

__all__ = ["page"]


def page() -> str:
    """The page."""
    parts = [
        NOTICE,
        "# Tapes\n",
        (
            "A tape is one measurement of a wearer.\n"
            "Eight are required; every other one replaces an estimate when it is taken.\n"
            "Women's fullest girth is called bust and men's chest; a child's may be called either.\n"
            "Names and clauses of ISO 8559-1:2017 were read in secondary texts.\n"
            "How to take a tape is told in our own words.\n"
            "Outside its limits a tape is an error, because it is nearly always a slip of the pen or the unit.\n"
        ),
    ]
    parts += [_entry(tape) for tape in TAPES.values()]
    parts.append(_conversions())
    return "\n".join(parts)


def _entry(tape: Tape) -> str:
    facts = [
        "Required." if tape.required else "Optional.",
        f"ISO 8559-1: {tape.iso_name}, {tape.iso_clause}." if tape.iso_name else "",
        f"The difference: {tape.iso_differs}." if tape.iso_differs else "",
        f"Limits: {_limits(tape)}; {tape.reason}.",
    ]
    return f"## {tape.name}\n\n{tape.title}.\n{_sentences(tape.take)}\n\n" + "\n".join(f for f in facts if f) + "\n"


def _sentences(text: str) -> str:
    """One sentence a line."""
    return text.replace(". ", ".\n")


def _limits(tape: Tape) -> str:
    def show(value: float) -> str:
        return f"{math.degrees(value):.0f}" if tape.angle else f"{value / 10:g}"

    unit = "degrees" if tape.angle else "cm"
    return (
        ", ".join(f"{figure} {show(ends.low)} to {show(ends.high)}" for figure, ends in tape.limits.items())
        + f" {unit}"
    )


def _conversions() -> str:
    rows = [
        [str(figure), name, row.says]
        for figure in Figure
        for name, row in CONVERSIONS.get(figure, {}).items()
        if row.says
    ]
    return (
        "## How the surveys' measurements become tapes\n\n"
        "A survey does not measure everything as a tape does; where the two differ it is converted before anything is "
        "compared.\n\n" + table(["figure", "tape", "conversion"], rows)
    )
