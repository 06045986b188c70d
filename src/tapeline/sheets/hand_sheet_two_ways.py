"""A page of the hand sheet for the classroom: one looseness drawn by the rule, and cut and spread, over each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from tapeline.alter import SAME_MM, Placed, TwoWays
from tapeline.geometry import Path, Point, Vector, extent
from tapeline.lengths import Length
from tapeline.sheets.hand_sheet_drawing import BAR_MM, SIDE_MM, TITLE_MM, Look, Shrunk, sampled, scale_bar
from tapeline.sheets.hand_sheet_marks import Dot, Picture, Stroke, Words
from tapeline.sheets.hand_sheet_names import NameTable
from tapeline.sheets.hand_sheet_pages import GAP_MM, Leaves, rows_of
from tapeline.sheets.hand_sheet_rows import EMPTY
from tapeline.sheets.hand_sheet_table import row
from tapeline.sheets.hand_sheet_text import Block, lines_of, stacked
from tapeline.units import Unit

__all__ = ["two_ways_page"]

RULED_MM, RULED_GREY = 1.3, 0.72
"""The extended outline: a broad band of light grey, so that the other shows on it."""
CUT_MM = 0.35
CLOSE_MM, CLOSE_GREY = 0.18, 0.35
CLOSE_DASHES_MM = (0.8, 0.8)
CUT_LINE_MM, CUT_LINE_DASHES_MM = 0.3, (3.0, 1.2)
NAME_MM = 2.5
OVER_MM = 7.0
SHAPE_MM = 80.0
"""The longer half of a class sheet, whoever the docket's wearer is."""
COLUMNS = (0.0, 62.0, 106.0, 150.0)
LETTERS = {"strip": "A", "fold": "B", "shoulder": "C", "armhole": "D"}


def two_ways_page(leaves: Leaves, ways: Sequence[TwoWays], unit: Unit, scales: Sequence[float] | None) -> None:
    """Words, what the scissors do, the pictures, and how far the two ways lie apart: one new page.

    Args:
        leaves: The pages so far.
        ways: The halves.
        unit: In which lengths are told.
        scales: The first at which all of it fits on the page is taken, or the last; None for a class sheet, with empty
            boxes, and drawings that are as long for everybody.
    """
    blank = scales is None
    above, below = _above(leaves, ways, unit, blank=blank), _below(leaves, ways, unit, blank=blank)
    longest = max(extent([one.ruled.seam_line], Vector(0, 1)) for one in ways)
    room = leaves.tallest - above.height - sum(block.height for block in below) - 2.0
    drawn: tuple[Picture, ...] = ()
    for scale in scales or (longest / SHAPE_MM,):
        look = Look(scale, unit, leaves.width_of, measured=not blank)
        drawn = tuple(_picture(one, look) for one in ways)
        if max(picture.height for picture in drawn) <= room and len(rows_of(drawn, leaves.width)) == 1:
            break
    leaves.turn()
    leaves.put(above)
    for row_of in rows_of(drawn, leaves.width):
        x, tall = 0.0, max(picture.height for picture in row_of)
        if tall > leaves.left_over:
            leaves.turn()
        for picture in row_of:
            leaves.picture(picture, x, leaves.top)
            x += picture.width + GAP_MM
        leaves.top -= tall + 2.0
    for number, block in enumerate(below):
        if block.height > leaves.left_over:
            leaves.turn()
        if 0 < number < len(below) - 1:
            leaves.rule(0.8)
        leaves.put(block)


def _above(leaves: Leaves, ways: Sequence[TwoWays], unit: Unit, *, blank: bool) -> Block:
    width, width_of = leaves.width, leaves.width_of
    texts = [lines_of([("Looser in two ways: the rule, and why it is right", True)], width_of, width, 3.6)]
    tried = "Paper that is cut and spread comes out the same. Try it:"
    texts += [lines_of([(text, False)], width_of, width) for text in (_rule(ways[0], unit), tried)]
    for letter, text in _orders(ways, unit, blank=blank):
        texts.append(lines_of([(letter, True), (text, False)], width_of, width, indent=4.5))
    legend = (
        "Broad and grey: extended by the rule. Thin and black: cut and spread. "
        "Dotted: the close block; dashed: where it is cut."
    )
    texts += [Block(1.0), lines_of([(legend, False)], width_of, width), Block(1.0)]
    return stacked(texts)


def _below(leaves: Leaves, ways: Sequence[TwoWays], unit: Unit, *, blank: bool) -> list[Block]:
    """The rows of the table, and what they show."""

    def told(*cells: tuple[str, bool]) -> Block:
        return row(leaves.width_of, leaves.width, [[cell] for cell in cells], COLUMNS)

    heads = ("place: out from the centre, below the nape", "extended", "cut and spread", "apart")
    rows = [told(*((text, False) for text in heads))]
    for one in ways:
        for placed in one.places:
            at = [(_at(spot, unit, blank=blank), False) for spot in (placed.ruled, placed.cut)]
            rows.append(told((f"{one.half}, {placed.name}", True), *at, (_apart(placed.apart_mm, blank=blank), True)))
        between = (f"{one.half}, armhole, at the widest", False)
        rows.append(told(between, ("", False), ("", False), (_apart(one.armhole_apart_mm, blank=blank), False)))
    conclusion = lines_of([(_conclusion(ways, blank=blank), False)], leaves.width_of, leaves.width)
    return [*rows, stacked([Block(1.0), conclusion])]


def _rule(one: TwoWays, unit: Unit) -> str:
    side, drop, shoulder = (length.show(unit) for length in (one.side, one.drop, one.shoulder))
    parts = [f"the side seam {side} out"] if one.side.mm else []
    parts += [f"the underarm {drop} down"] if one.drop.mm else []
    parts += [f"the shoulder tip {shoulder} out along its seam"] if one.shoulder.mm else []
    moved = " and ".join(filter(None, (", ".join(parts[:-1]), parts[-1])))
    return (
        f"The block is made looser by extending: {moved}. That is quick to draw. Here it is shown on the plain block, "
        "to its hip line and before any correction."
    )


def _orders(ways: Sequence[TwoWays], unit: Unit, *, blank: bool) -> Iterator[tuple[str, str]]:
    """What the hand does with each cut."""

    def told(length: Length) -> str:
        return f"{EMPTY} {unit.sign}" if blank else length.show(unit)

    by = ways[0]
    made = {name for name, _ in by.lines}
    yield "1", "Trace the close block, back and front, and cut it out."
    if "strip" in made:
        wide = by.drop.show(unit)
        yield "A", f"Cut across, just below the armhole point, and put in a strip {wide} wide: the armhole is lower."
        yield "B", f"Fold as much away, {wide}, just below the underarm: waist and hip are where they were."
    if "shoulder" in made:
        moved = "; ".join(f"{told(one.out)} out and {told(one.fall)} down at the {one.half}" for one in ways)
        along = f"What is outside goes {by.shoulder.show(unit)} out along the shoulder seam, and stays upright"
        yield "C", f"Cut straight up from hem to shoulder. {along}: {moved}."
    if "armhole" in made:
        rest = "; ".join(
            f"{told(by.side - one.out)} out" + (f" and {told(one.fall)} up" if by.shoulder.mm else "")
            + f" at the {one.half}"
            for one in ways
        )  # fmt: skip
        again = ", and up again by what C took down" if by.shoulder.mm else ""
        yield "D", f"Cut straight up from hem to armhole. What is outside goes out by the rest{again}: {rest}."
    yield "2", "Draw shoulder, armhole, side and hem as fair lines, and lay it on the block that was extended."


def _picture(one: TwoWays, look: Look) -> Picture:
    outlines = [piece.seam_line for piece in (one.close, one.ruled, one.cut)]
    spots = np.vstack([outline.sampled(0.5) for outline in outlines])
    (left, low), (right, high) = spots.min(axis=0).tolist(), spots.max(axis=0).tolist()
    place = Shrunk(look.scale, left, low, OVER_MM)
    title = one.half.capitalize()
    bar, bar_words = scale_bar(look)
    width = max(
        (right - left) / look.scale + sum(SIDE_MM),
        max((word.x + look.width_of(word.text, word.size_mm, bold=word.bold) for word in bar_words), default=0.0),
    )
    height = place.point(Point(left, high)).y + OVER_MM + TITLE_MM
    close, ruled, cut = (place.path(outline) for outline in outlines)
    strokes = [
        Stroke(ruled, RULED_MM, RULED_GREY),
        Stroke(close, CLOSE_MM, CLOSE_GREY, CLOSE_DASHES_MM),
        *(Stroke(place.path(line), CUT_LINE_MM, CLOSE_GREY, CUT_LINE_DASHES_MM) for _, line in one.lines),
        Stroke(cut, CUT_MM),
    ]
    dots = [Dot(place.point(placed.cut), 0.8) for placed in one.places]
    table = NameTable(
        width, height - TITLE_MM, BAR_MM, look.width_of, sampled([cut, ruled]),
        sampled([stroke.path for stroke in strokes if stroke.width_mm in (CLOSE_MM, CUT_LINE_MM)]),
        np.array([(dot.at.x, dot.at.y) for dot in dots]).reshape(-1, 2),
    )  # fmt: skip
    for placed in one.places:
        table.place((placed.name,), [place.point(placed.cut)], NAME_MM, bold=False)
    for name, line in one.lines:
        ends = _ends(place.path(line), upright=name in ("shoulder", "armhole"))
        table.place((LETTERS[name],), ends, NAME_MM, bold=True)
    words = (Words(title, 0.0, height - 3.2, 2.8, bold=True), *bar_words)
    return Picture(
        one.half, look.scale, width, height, (0.0, height), tuple(strokes), tuple(dots), tuple(table.labels),
        words, tuple(bar),
    )  # fmt: skip


def _ends(line: Path, *, upright: bool) -> list[Point]:
    """Where a cut may be named: near its lower end, or near its inner one."""
    one, other = sorted((line.start, line.end), key=lambda end: end.y if upright else end.x)
    return [one.toward(other, share) for share in (0.12, 0.2, 0.3, 0.4)]


def _at(spot: Point, unit: Unit, *, blank: bool) -> str:
    if blank:
        return f"{EMPTY} {EMPTY} {unit.sign}"
    return f"{Length(spot.x).show(unit)}, {Length(-spot.y).show(unit)}"


def _apart(mm: float, *, blank: bool) -> str:
    return f"{EMPTY} mm" if blank else f"{mm:.1f} mm"


def _conclusion(ways: Sequence[TwoWays], *, blank: bool) -> str:
    """What the table shows."""
    between = (
        "Between shoulder tip and underarm the armhole is a matter of drawing: the rule draws its guide points anew, "
        "the paper keeps those of the close block."
    )
    if blank:
        return f"The places should lie within {SAME_MM:g} mm of each other. {between}"
    off = [f"{one.half} {placed.name}" for one in ways for placed in _off(one)]
    if off:
        return f"These lie more than {SAME_MM:g} mm apart: {', '.join(off)}. {between}"
    return f"Each place lies within {SAME_MM:g} mm of its other one: both ways are the same. {between}"


def _off(one: TwoWays) -> list[Placed]:
    return [placed for placed in one.places if placed.apart_mm > SAME_MM]
