"""The hand sheet: a wearer's construction on paper, to draw along step by step with a ruler."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from tapeline.alter import TwoWays
from tapeline.finish import Title
from tapeline.pattern import Garment
from tapeline.problems import InputError, Problem, Severity
from tapeline.sheets.hand_sheet_drawing import Look, pictures, reach_of
from tapeline.sheets.hand_sheet_front import front
from tapeline.sheets.hand_sheet_marks import Page, Picture, WidthOf
from tapeline.sheets.hand_sheet_pages import GAP_MM, Head, Leaves, rows_of
from tapeline.sheets.hand_sheet_rows import Entry, Group, groups, plain_name
from tapeline.sheets.hand_sheet_text import SMALL_MM, Block, lines_of, stacked
from tapeline.sheets.hand_sheet_two_ways import two_ways_page
from tapeline.units import Unit

__all__ = ["SCALES", "HandSheet", "hand_sheet"]

SCALES = (4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0)
"""Tried in this order where none is asked for."""
LEAST_TEXT_MM = 74.0
"""Beside a drawing; where it leaves less, it stands below."""
SHAPE_MM = 120.0
"""The longest piece of a class sheet, whoever the docket's wearer is."""
NUMBER_MM = 8.5


@dataclass(frozen=True, slots=True)
class HandSheet:
    """All pages, and how large the paper is."""

    pages: tuple[Page, ...]
    paper_mm: tuple[float, float]
    scale: float


def hand_sheet(
    garment: Garment,
    title: Title,
    width_of: WidthOf,
    *,
    unit: Unit = Unit.CM,
    scale: float | None = None,
    blank: bool = False,
    ways: Sequence[TwoWays] = (),
    paper_mm: tuple[float, float] = (210.0, 297.0),
) -> HandSheet:
    """Lays the hand sheet of a garment out.

    Args:
        garment: What was drafted; its steps are all that is needed.
        title: For whom, when, from which docket.
        width_of: How wide a text is, for whoever writes it.
        unit: In which lengths are told.
        scale: How many times smaller than the pattern the drawings are; None for the first of `SCALES` that fits.
        blank: Empty boxes in place of the wearer's numbers, and no name: a sheet for a class.
        ways: The halves of the block loosened in two ways: they make a page at the end.
        paper_mm: Width and height of the paper, upright.

    Raises:
        InputError: `drawing-too-large` when a drawing at that scale does not fit on the paper.
    """
    told = groups(garment, unit, blank=blank)
    # The name and the day are the pupil's to write.
    who = f"Name: {'_' * 28}   date: {'_' * 12}" if blank else f"{title.style.capitalize()} for {title.wearer}"
    where = "cm" if unit is Unit.CM else "inches"
    head = Head(who, f"{'' if blank else title.date}   lengths in {where}".strip())
    made = Leaves(paper_mm, head, width_of)
    drawn = _drawn(told, made, unit, scale, blank=blank)
    tables = next((n for n, group in enumerate(told) if group.sheets), len(told))
    used = drawn[tables][0].scale if tables < len(told) and drawn[tables] else 1.0
    front(made, told, tables, title=title, sizes=garment.sizes, unit=unit, scale=used, blank=blank)
    made.turn()
    for group, beside in zip(told[tables:], drawn[tables:], strict=True):
        _group(made, group, beside)
    if ways:
        scales = None if blank else [used, *(s for s in SCALES if s > used)]
        two_ways_page(made, ways, unit, scales)
    return HandSheet(made.done(), paper_mm, used)


def _drawn(
    told: Sequence[Group], leaves: Leaves, unit: Unit, scale: float | None, *, blank: bool
) -> list[tuple[Picture, ...]]:
    """The pictures of every group, at the scale asked for or the first that fits."""
    entries = [entry for group in told for entry in group.entries]
    tries = (scale,) if scale is not None else SCALES
    if blank:
        reaches = [reach_of(e for e in entries if e.step.sheet == sheet) for g in told for sheet in g.sheets]
        tries = (max((max(r[2] - r[0], r[3] - r[1]) for r in reaches), default=SHAPE_MM) / SHAPE_MM,)
    for tried in tries:
        look = Look(tried, unit, leaves.width_of, measured=not blank)
        before, found = list[Entry](), list[tuple[Picture, ...]]()
        for group in told:
            found.append(pictures(before, group, look))
            before += group.entries
        if all(p.width <= leaves.width and p.height + 12 <= leaves.tallest for made in found for p in made):
            return found
    smaller = next((f"1:{s:g}" for s in SCALES if s > tries[-1]), "a larger paper")
    raise InputError(
        Problem(
            "drawing-too-large",
            Severity.ERROR,
            f"a drawing at 1:{tries[-1]:g} does not fit on the paper",
            "scale",
            f"try {smaller}. Nothing was written.",
        )
    )


def _group(leaves: Leaves, group: Group, drawn: Sequence[Picture]) -> None:
    """Heading and steps with the drawing beside them, or below where it is wide or there are several."""
    beside = len(drawn) == 1 and leaves.width - drawn[0].width - GAP_MM >= LEAST_TEXT_MM
    width = leaves.width - (drawn[0].width + GAP_MM if beside else 0.0)
    on = " and ".join(plain_name(sheet) for sheet in group.sheets)
    on = "" if f" {on}" in group.title else on
    heading = lines_of(
        [(group.title, True), *([(f"- on the {on}", False)] if on else [])], leaves.width_of, leaves.width, 3.6
    )
    blocks = [_step(leaves.width_of, entry, group, width) for entry in group.entries]
    needed = heading.height + max(blocks[0].height, drawn[0].height if beside else 0.0) + 4.0
    if needed > leaves.left_over:
        leaves.turn()
    if leaves.top < leaves.highest:
        leaves.put(Block(4.0))
        leaves.rule()
    leaves.put(heading)
    low, page = leaves.top, len(leaves.pages)
    if beside:
        leaves.picture(drawn[0], leaves.width - drawn[0].width, leaves.top)
        low -= drawn[0].height
    for block in blocks:
        leaves.put(block)
    if beside and len(leaves.pages) == page:
        leaves.top = min(leaves.top, low)
    for row in [] if beside else rows_of(drawn, leaves.width):
        tall = max(picture.height for picture in row)
        if tall > leaves.left_over:
            leaves.turn()
        x = 0.0
        for picture in row:
            leaves.picture(picture, x, leaves.top - 2.0)
            x += picture.width + GAP_MM
        leaves.top -= tall + 2.0


def _step(width_of: WidthOf, entry: Entry, group: Group, width: float) -> Block:
    """Number, name and reason; below, what the hand does; below, the reckoning."""
    several = len(group.sheets) > 1 and entry.step.sheet
    name = f"{plain_name(entry.step.sheet)}: {entry.name}" if several else entry.name
    inside = width - NUMBER_MM
    texts = [lines_of([(f"{name}:", True), (f"{entry.says}.", False)], width_of, inside)]
    if entry.how:
        texts.append(lines_of([(entry.how, False)], width_of, inside))
    texts += [lines_of([(text, False)], width_of, inside - 3.0, SMALL_MM, indent=3.0) for text in entry.equations]
    number = lines_of([(str(entry.number), True)], width_of, NUMBER_MM)
    block = stacked(texts)
    inset = block.moved(NUMBER_MM, 0)
    return Block(block.height + 1.4, (*number.words, *inset.words), inset.boxes)
