"""The small drawings: a piece so far, what is new strong and named, what is older thin."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

import numpy as np

from tapeline.geometry import Path, Point, Segment
from tapeline.pattern import StepKind
from tapeline.sheets.hand_sheet_marks import Dot, Picture, Stroke, WidthOf, Words
from tapeline.sheets.hand_sheet_names import NameTable
from tapeline.sheets.hand_sheet_rows import Entry, Group, plain_name
from tapeline.units import Unit

__all__ = ["BAR_MM", "SIDE_MM", "TITLE_MM", "Look", "Shrunk", "pictures", "reach_of", "sampled", "scale_bar"]

NAME_MM = 2.3
OLD_NAME_MM = 2.1
OLD_GREY = 0.4
"""Dark enough for a weak printer."""
NEW_WIDTH_MM, OLD_WIDTH_MM = 0.5, 0.18
SIDE_MM = (5.0, 30.0)
"""Left and right of the piece: names are written there."""
OVER_MM = 5.0
SMALL_OVER_MM = 13.0
"""Above and below; more where the piece itself has no room for names."""
SMALL_PIECE_MM = 30.0
TITLE_MM, BAR_MM = 5.0, 9.0
AROUND_MM = 70.0
"""What is shown above and below the new lines, on the pattern."""
HELP_DASHES_MM = (0.8, 0.8)
SAME_MM = 0.01
"""Points closer than that, or lines that far out of level, are the same to the eye."""
WORTH_CUTTING = 0.75
"""A part is shown only where it is lower than this share of the whole."""


@dataclass(frozen=True, slots=True)
class Look:
    """How the drawings of a sheet are made."""

    scale: float
    unit: Unit
    width_of: WidthOf
    measured: bool = True
    """Whether it may be measured: with a scale bar."""


@dataclass(frozen=True, slots=True)
class Shrunk:
    """From the pattern to the picture: mm smaller by the scale, and moved."""

    scale: float
    left: float
    low: float
    over: float

    def point(self, p: Point) -> Point:
        """Where a point comes to lie."""
        return Point((p.x - self.left) / self.scale + SIDE_MM[0], (p.y - self.low) / self.scale + BAR_MM + self.over)

    def path(self, path: Path) -> Path:
        """Where a line comes to lie."""
        return Path(tuple(self._segment(segment) for segment in path.segments))

    def _segment(self, segment: Segment) -> Segment:
        return type(segment)(*map(self.point, segment.control_points))


def reach_of(entries: Iterable[Entry]) -> tuple[float, float, float, float]:
    """Left, lower, right and upper end of all points and lines of some steps, mm; all 0 without any."""
    steps = [entry.step for entry in entries]
    found = [np.array([(p.x, p.y)]) for step in steps if (p := step.point) is not None]
    found += [path.sampled(0.5) for step in steps if (path := step.path) is not None]
    if not found:
        return 0.0, 0.0, 0.0, 0.0
    places = np.vstack(found)
    (left, low), (right, high) = places.min(axis=0).tolist(), places.max(axis=0).tolist()
    return left, low, right, high


def pictures(before: Sequence[Entry], group: Group, look: Look) -> tuple[Picture, ...]:
    """A picture for every piece that a group draws on."""
    return tuple(_picture(sheet, before, group, look) for sheet in group.sheets)


def _picture(sheet: str, before: Sequence[Entry], group: Group, look: Look) -> Picture:
    old = [e for e in before if e.step.sheet == sheet and e.step.kind is not StepKind.SIZE]
    new = [e for e in group.entries if e.step.sheet == sheet and e.step.kind is not StepKind.SIZE]
    left, low, right, high = reach_of([*old, *new])
    _, new_low, _, new_high = reach_of(new)
    shown_low, shown_high = max(low, new_low - AROUND_MM), min(high, new_high + AROUND_MM)
    if shown_high - shown_low > WORTH_CUTTING * (high - low):
        shown_low, shown_high = low, high
    cut_low, cut_high = shown_low > low, shown_high < high
    over = OVER_MM if (shown_high - shown_low) / look.scale > SMALL_PIECE_MM else SMALL_OVER_MM
    place = Shrunk(look.scale, left, shown_low, over)
    bottom, top = place.point(Point(left, shown_low)).y, place.point(Point(left, shown_high)).y
    title = f"{plain_name(sheet).capitalize()} so far" + (", a part of it" if cut_low or cut_high else "")
    bar, bar_words = scale_bar(look)
    width = max(
        (right - left) / look.scale + sum(SIDE_MM),
        look.width_of(title, 2.8, bold=True) + 2,
        max((word.x + look.width_of(word.text, word.size_mm, bold=word.bold) for word in bar_words), default=0.0),
    )
    height = top + over + TITLE_MM
    window = (bottom if cut_low else 0.0, top if cut_high else height)
    strokes = _help_lines(place, [*old, *new], new, (shown_low, shown_high))
    strokes += [Stroke(place.path(e.step.path), OLD_WIDTH_MM, OLD_GREY) for e in old if e.step.path is not None]
    strokes += [Stroke(place.path(e.step.path), NEW_WIDTH_MM) for e in new if e.step.path is not None]
    visible = [e for e in old if e.step.point is not None and shown_low - 1 <= e.step.point.y <= shown_high + 1]
    dots = [Dot(place.point(e.step.point), 0.45, OLD_GREY) for e in visible if e.step.point is not None]
    dots += [Dot(place.point(e.step.point), 0.8) for e in new if e.step.point is not None]
    table = NameTable(
        width,
        height - TITLE_MM,
        BAR_MM,
        look.width_of,
        sampled([s.path for s in strokes if s.width_mm == NEW_WIDTH_MM]),
        sampled([s.path for s in strokes if s.width_mm != NEW_WIDTH_MM]),
        np.array([(d.at.x, d.at.y) for d in dots]).reshape(-1, 2),
    )
    _names(table, place, new, _asked_for(visible, group))
    edges = [
        Stroke(Path.through(Point(0, y), Point(width, y)), 0.18, OLD_GREY, (2.0, 1.0))
        for y, cut in ((bottom, cut_low), (top, cut_high))
        if cut
    ]
    return Picture(
        sheet, look.scale, width, height, window, tuple(strokes), tuple(dots), tuple(table.labels),
        (Words(title, 0.0, height - 3.2, 2.8, bold=True), *bar_words), (*bar, *edges),
    )  # fmt: skip


def _help_lines(
    place: Shrunk, drawn: Sequence[Entry], new: Sequence[Entry], shown: tuple[float, float]
) -> list[Stroke]:
    """The upright centre line, and from each new point the level or upright line to those it was measured from."""
    points = {e.step.label: e.step.point for e in drawn if e.step.point is not None}
    lines = [(Point(0.0, shown[0]), Point(0.0, shown[1]))] if shown[1] - shown[0] > SAME_MM else []
    for e in new:
        here = e.step.point
        for there in (points[label] for label in e.step.needs if label in points):
            if here is None or here.distance_to(there) < SAME_MM:
                continue
            if min(abs(here.x - there.x), abs(here.y - there.y)) < SAME_MM and max(abs(here.x), abs(there.x)) > SAME_MM:
                lines.append((there, here))
    return [Stroke(place.path(Path.through(a, b)), OLD_WIDTH_MM, OLD_GREY, HELP_DASHES_MM) for a, b in lines]


def _asked_for(old: Iterable[Entry], group: Group) -> list[Entry]:
    """Older points that the group's steps start from."""
    asked = {label for e in group.entries for label in e.step.needs}
    return [e for e in old if e.step.label in asked]


def _names(table: NameTable, place: Shrunk, new: Sequence[Entry], asked: Sequence[Entry]) -> None:
    """Points first, for a name must lie at its point; a line has room along all its length."""
    for e in new:
        if e.step.point is not None:
            table.place((f"{e.number} {e.name}", str(e.number)), [place.point(e.step.point)], NAME_MM, bold=True)
    for e in new:
        if e.step.path is not None:
            line = place.path(e.step.path)
            places = [line.at(line.length * share) for share in (0.5, 0.35, 0.65, 0.2, 0.8)]
            table.place((f"{e.number} {e.name}", str(e.number)), places, NAME_MM, bold=True)
    for e in asked:
        if e.step.point is not None:
            texts = (f"{e.number} {e.name}", str(e.number))
            table.place(texts, [place.point(e.step.point)], OLD_NAME_MM, bold=False, grey=OLD_GREY)


def scale_bar(look: Look) -> tuple[list[Stroke], list[Words]]:
    """A bar that is as long as it says, with a tick at each quarter."""
    if not look.measured:
        return [], [Words("shows the shape, not your size", SIDE_MM[0], 2.0, 2.2)]
    most = (20 if look.unit is Unit.CM else 8) if look.scale <= 6 else (40 if look.unit is Unit.CM else 16)
    long = most * look.unit.mm / look.scale
    start, y = SIDE_MM[0], 5.0
    marks = [Path.through(Point(start, y), Point(start + long, y))]
    marks += [Path.through(Point(start + long * n / 4, y), Point(start + long * n / 4, y + 1.5)) for n in range(5)]
    words = [
        Words(text, start + long * share - look.width_of(text, 2.2) / 2, 1.6, 2.2)
        for text, share in (("0", 0.0), (f"{most // 2}", 0.5), (f"{most} {look.unit.sign}", 1.0))
    ]
    words.append(Words(f"1:{look.scale:g}", start + long + 6, 4.6, 2.6, bold=True))
    return [Stroke(mark, 0.25) for mark in marks], words


def sampled(paths: Iterable[Path]) -> np.ndarray:
    """Places on some lines, about a millimetre apart."""
    found = [np.empty((0, 2))]
    for path in paths:
        for segment in path.segments:
            count = max(2, round(segment.length)) if segment.length else 2
            spots = [segment.at(t) for t in np.linspace(0, 1, count).tolist()]
            found.append(np.array([(p.x, p.y) for p in spots]))
    return np.vstack(found)
