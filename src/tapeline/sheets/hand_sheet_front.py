"""The front of the hand sheet: for whom, how to use it, what is needed, and the numbers with their formulas."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from tapeline.finish import Title
from tapeline.pattern import Size, Source, StepKind
from tapeline.sheets.hand_sheet_drawing import reach_of
from tapeline.sheets.hand_sheet_pages import Leaves
from tapeline.sheets.hand_sheet_rows import EMPTY, Entry, Group, plain_name
from tapeline.sheets.hand_sheet_table import Cell, row
from tapeline.sheets.hand_sheet_text import Block, lines_of, stacked
from tapeline.units import Unit

__all__ = ["front"]

COLUMNS = (0.0, 8.0, 86.0, 111.0)
"""Where step, name, number and formula begin in the table."""
ROOM_MM = 50.0
"""Added to a piece for the paper it is drawn on: names and allowances stand round it."""

_ALWAYS = """
Draw at full size, one to one, on paper: step by step in the order of the numbers. What the pencil does stands below
each name; the formula below it says where its length is from.

You need a pencil, a ruler, a set square, a curve for the fair lines, and the paper below.

Out is away from the centre, in is toward it; up is toward the head, down is toward the hem.

A fair line bends evenly through its points, with no corner, and sets out and arrives square where it says so. Draw it
lightly, look along it, then draw it strong.

In the drawings what is new is strong and named with the number of its step; what is older is thin, and lines that only
help are dotted. A dashed edge: the piece goes on.

All lines are seam lines. Add allowances outside them before you cut.
"""


def front(
    leaves: Leaves,
    groups: Sequence[Group],
    tables: int,
    *,
    title: Title,
    sizes: Iterable[Size],
    unit: Unit,
    scale: float,
    blank: bool,
) -> None:
    """Writes the front; the first `tables` groups have only numbers, which are told here and nowhere else."""
    entries = [entry for group in groups for entry in group.entries]
    known = {size.name: size for size in sizes}
    for block in _opening(leaves, entries, title, unit, scale, blank=blank):
        leaves.put(block)
    if any(known[e.step.label].source is Source.SURVEY for e in entries if e.step.label in known):
        leaves.put(lines_of([(_survey(blank=blank), False)], leaves.width_of, leaves.width))
    for group in groups[:tables]:
        _table(leaves, group.title, group.entries, known, told=False)
    later = [e for group in groups[tables:] for e in group.entries if e.step.kind is StepKind.SIZE]
    if later:
        _table(leaves, "Worked out, or measured on the paper, while drawing", later, known, told=True)


def _opening(
    leaves: Leaves, entries: Sequence[Entry], title: Title, unit: Unit, scale: float, *, blank: bool
) -> Iterable[Block]:
    width, width_of = leaves.width, leaves.width_of
    name = title.style.capitalize() + (": class sheet" if blank else f" for {title.wearer}")
    yield lines_of([(name, True)], width_of, width, 5.5)
    lengths = "centimetres" if unit is Unit.CM else "inches"
    shown = "The drawings show shapes, not sizes." if blank else f"The drawings are 1:{scale:g}; check them by the bar."
    says = f"The construction, to draw along by hand. Lengths are in {lengths}. {shown}"
    if blank:
        says += (
            " An empty box is for your own number: fill the tapes and the frame first, the others as you come to them."
        )
    yield lines_of([(says, False)], width_of, width)
    yield Block(1.5)
    for text in _ALWAYS.split("\n\n"):
        yield lines_of([("•", False), (text, False)], width_of, width, indent=3.0)
    checks = "" if blank else "A line's length is told as a check: measure along what you drew. "
    zero = "The centre line of a piece stands upright: begin each piece by drawing it."
    yield lines_of([("•", False), (checks + zero, False)], width_of, width, indent=3.0)
    yield lines_of([("•", False), (_paper(entries, unit, blank=blank), False)], width_of, width, indent=3.0)


def _paper(entries: Sequence[Entry], unit: Unit, *, blank: bool) -> str:
    """How large a paper each piece needs."""
    if blank:
        return "Paper: for each piece a hand longer and a hand wider than it will be."
    needs = []
    for sheet in dict.fromkeys(e.step.sheet for e in entries if e.step.kind is not StepKind.SIZE):
        left, low, right, high = reach_of(e for e in entries if e.step.sheet == sheet)
        across, along = (math.ceil((v + ROOM_MM) / unit.mm) for v in (right - left, high - low))
        needs.append(f"{plain_name(sheet)} {across} by {along} {unit.sign}")
    return f"Paper, across by along: {', '.join(needs)}."


def _survey(*, blank: bool) -> str:
    if blank:
        return (
            "Where no formula stands, a size is measured, or taken from the wearer's own hand sheet: what the survey"
            ' expects cannot be worked out by hand. With frame = "proportional" in the docket the frame follows from'
            " the tapes alone."
        )
    return (
        "Sizes marked survey are what Tapeline expects of somebody with these tapes; they cannot be worked out by hand."
    )


def _table(leaves: Leaves, title: str, entries: Iterable[Entry], known: dict[str, Size], *, told: bool) -> None:
    """A row for each size; `told` where the reason stands in the step."""
    width_of = leaves.width_of
    head = stacked(
        [
            Block(3.0),
            lines_of([(title, True)], width_of, leaves.width, 3.6),
            _row(leaves, [[(text, False)] for text in ("step", "size", "number", "formula, or where it is from")]),
        ]
    )
    rows = [
        _row(
            leaves,
            [
                [(str(e.number), False)],
                [(e.name, True), *([] if told else [(f"- {e.says}.", False)])],
                [(e.result, True)],
                [(_origin(e, known.get(e.step.label), told=told), False)],
            ],
        )
        for e in entries
    ]
    if head.height + rows[0].height > leaves.left_over:
        leaves.turn()
    leaves.put(head)
    for made in rows:
        if made.height > leaves.left_over:
            leaves.turn()
        leaves.rule(0.8)
        leaves.put(made)


def _row(leaves: Leaves, cells: Sequence[Cell]) -> Block:
    return row(leaves.width_of, leaves.width, cells, COLUMNS, strong=2)


def _origin(entry: Entry, size: Size | None, *, told: bool) -> str:
    """The formula with its numbers where there is one; otherwise how it is found, or who said it."""
    if any(length.operator for length in entry.step.lengths):
        return "; ".join(equation.partition(f" = {EMPTY}")[0] for equation in entry.equations)  # its box stands beside
    found = []
    if size is not None and not (size.source in (Source.RULE, Source.SURVEY) and (entry.how or told)):
        found.append("your choice" if size.source is Source.CHOICE else str(size.source))
    if entry.how or told:
        found.append(entry.how or f"see step {entry.number}")
    found += [mark for equation in entry.equations if (mark := equation.partition(" (on the ruler ")[2])]
    return "; ".join(f"on the ruler {text[:-1]}" if text.endswith(" in)") else text for text in found)
