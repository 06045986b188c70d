"""What the cut line does at a corner of the seam line: run on and meet, meet the fold, mirror, or mitre.

Every rule looks at the corner along two arms: the two cut lines beside its edges, each walked away from the corner.
An arm can run on straight behind its start, past the corner. Rules here are common practice in the trade, no source.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from tapeline.geometry import Line, Path, Point, Rigid, Segment, Vector
from tapeline.geometry.crossing import crossings, first_crossing

__all__ = ["LONGEST_MITRE", "Arm", "Corner", "NoCornerError", "at_fold", "mirrored", "mitred", "run_on"]

LONGEST_MITRE = 2.5
"""A point of the cut line is cut off square when it is further from the corner than this times the wider allowance."""
MITRE_MM = 6.0
"""Of allowance outside the stitches of a mitre: it is trimmed to a point inside; common practice, no source."""
JOINED_MM = 0.005
"""Cut lines whose ends are this close run on without a corner: a twentieth of a pencil line."""
REACH = 40.0
"""How many allowances far an arm may run on to find its neighbour; anything further is no corner."""
NEARLY_BACK = 0.02
"""Sine of a turn under which two edges lie on each other, and the way to their point is the way they run."""


class NoCornerError(Exception):
    """The allowances do not fit the corner: the lines beside its edges never meet."""


@dataclass(frozen=True, slots=True)
class Arm:
    """One side of a corner, walked away from the corner."""

    edge: Path
    """The seam line, starting at the corner."""
    beside: Path
    """The cut line beside it, starting square to the corner."""
    allowance: float

    @property
    def out(self) -> Vector:
        """The way past the corner: the way the edge comes in."""
        return -self.edge.leaves

    def run_on(self, far: float) -> Path:
        """The cut line, lengthened straight past the corner."""
        return Path((Line(self.beside.start + self.out * far, self.beside.start),)).joined(self.beside)


@dataclass(frozen=True, slots=True)
class Corner:
    """How two cut lines are joined: how much each loses (below zero: gains), and what lies between."""

    before_mm: float
    link: tuple[Segment, ...]
    after_mm: float

    @property
    def swapped(self) -> Corner:
        """The same corner, walked the other way."""
        return Corner(self.after_mm, tuple(s.reversed() for s in reversed(self.link)), self.before_mm)


def run_on(before: Arm, after: Arm) -> Corner:
    """Neighbours run on along their tangents until they meet; where the seam line turns inward they are trimmed there.

    The point is bounded (`LONGEST_MITRE`). Where the seam line hardly turns and the allowances differ, there is a step
    square to the wider one. Raises `NoCornerError` when trimmed lines never meet.
    """
    if before.beside.start.distance_to(after.beside.start) < JOINED_MM:
        return Corner(0.0, (), 0.0)
    turn = before.out.turn_to(-after.out)
    narrow, wide = sorted((before.allowance, after.allowance))
    if narrow < wide * math.cos(turn):
        return _step(before, after) if before.allowance < after.allowance else _step(after, before).swapped
    if turn > 0:
        # A curved line may have to run on a little to its neighbour even here.
        return _nearest(before, after, far=wide)
    point = before.edge.start
    limit = LONGEST_MITRE * wide
    if math.cos(turn) < 0 and abs(math.sin(turn)) < NEARLY_BACK:
        return _cut_off(before, after, point, (before.out + after.out).unit, limit)
    gain = (after.allowance - before.allowance * math.cos(turn)) / -math.sin(turn)
    gain_after = (before.allowance - after.allowance * math.cos(turn)) / -math.sin(turn)
    tip = before.beside.start + before.out * gain
    if tip.distance_to(point) > limit:
        return _cut_off(before, after, point, (tip - point).unit, limit)
    return Corner(-gain, (), -gain_after)


def mitred(before: Arm, after: Arm) -> Corner:
    """Two edges that are both turned back meet in a mitre: their corner is cut off, `MITRE_MM` outside its stitches.

    Turned back, both allowances end where the lines inside the piece, beside both edges by their allowances, cross.
    That place lies on either cut line too, before it is turned: from the one through the corner to the other the mitre
    is stitched. Runs on to a whole corner where that would cut nothing off.
    """
    whole = run_on(before, after)
    if not before.allowance or not after.allowance or whole.link:
        return whole
    corner = before.edge.start
    out = [(arm.beside.start - corner).unit for arm in (before, after)]
    across = out[0].cross(out[1])
    if abs(across) < NEARLY_BACK:
        return whole
    # Where the lines inside cross, from the corner.
    inside = Vector(
        -(before.allowance * out[1].y - after.allowance * out[0].y) / across,
        -(after.allowance * out[0].x - before.allowance * out[1].x) / across,
    )
    unfolded = [inside + side * (-2 * inside.dot(side)) for side in out]
    stitched = (unfolded[0] - unfolded[1]).unit
    gains, ends = [], []
    for arm, place, most in zip((before, after), unfolded, (-whole.before_mm, -whole.after_mm), strict=True):
        gain = place.dot(arm.out) + MITRE_MM / abs(stitched.cross(arm.out))
        if gain >= most:
            return whole
        gains.append(gain)
        ends.append(arm.beside.at(-gain) if gain < 0 else arm.beside.start + arm.out * gain)
    return Corner(-gains[0], (Line(*ends),), -gains[1])


def at_fold(before: Arm, after: Arm) -> Corner:
    """One of the two lies on the fold: the other's cut line meets the fold, lengthened or trimmed.

    A slender point on the fold is cut off square to it (`LONGEST_MITRE`). Raises `NoCornerError` when they never meet.
    """
    wide = max(before.allowance, after.allowance)
    if wide == 0:
        return Corner(0.0, (), 0.0)
    found = _nearest(before, after, far=REACH * wide)
    point, limit = before.edge.start, LONGEST_MITRE * wide
    fold_gain, other_gain = (
        (-found.before_mm, -found.after_mm) if before.allowance == 0 else (-found.after_mm, -found.before_mm)
    )
    if fold_gain > limit and other_gain > 0:
        fold = before if before.allowance == 0 else after
        return _cut_off(before, after, point, fold.out, limit)
    return found


def mirrored(line: Arm, seam: Arm) -> Corner:
    """Past the seam, the cut line of the crossing line is its own mirror image about the seam.

    When the allowance is pressed back along the seam, its end lies exactly on the cut line beneath it. The corner is
    returned walked from the line to the seam. Where the image would make a spike the lines run on and meet instead.
    """
    corner, wide = seam.edge.start, max(line.allowance, seam.allowance)
    if seam.allowance == 0:
        return run_on(line, seam)
    far = REACH * wide
    whole = line.run_on(far)
    seam_run_on = Path.through(corner + seam.out * far, corner + seam.edge.leaves * JOINED_MM)
    found = crossings(whole, seam_run_on)
    if not found:
        return run_on(line, seam)
    at = min((along for along, _ in found), key=lambda along: abs(along - far))
    over = Rigid.over(corner, seam.out)
    rest = whole.part(at, whole.length)
    run = (*rest.segments, Line(rest.end, rest.end + rest.arrives * far))
    met = first_crossing((segment.moved(over) for segment in run), seam.run_on(far))
    if met is None:
        return run_on(line, seam)
    image, seam_mm = met
    if max(corner.distance_to(image[0].start), corner.distance_to(image[-1].end)) > LONGEST_MITRE * wide:
        return run_on(line, seam)
    return Corner(at - far, tuple(image), seam_mm - far)


def _nearest(before: Arm, after: Arm, far: float) -> Corner:
    """The crossing of two arms nearest to their starts; both may run on by `far` mm."""
    found = crossings(before.run_on(far), after.run_on(far))
    if not found:
        raise NoCornerError
    a, b = min(found, key=lambda pair: abs(pair[0] - far) + abs(pair[1] - far))
    return Corner(a - far, (), b - far)


def _cut_off(before: Arm, after: Arm, point: Point, way: Vector, limit: float) -> Corner:
    """A straight cut across two arms that run on, square to the way their point lies, a limit in mm from the corner."""
    gains = []
    for arm in (before, after):
        reach = limit - (arm.beside.start - point).dot(way)
        gains.append(reach / arm.out.dot(way))
    ends = [arm.beside.start + arm.out * gain for arm, gain in zip((before, after), gains, strict=True)]
    return Corner(-gains[0], (Line(*ends),), -gains[1])


def _step(narrow: Arm, wide: Arm) -> Corner:
    """From the narrow cut line straight out to the start of the wide one, square to the wide edge."""
    corner, far = wide.edge.start, 2 * wide.allowance
    if narrow.allowance == 0:
        return Corner(0.0, (Line(corner, wide.beside.start),), 0.0)
    found = crossings(narrow.run_on(far), Path.through(corner, wide.beside.start))
    if not found:
        raise NoCornerError
    at = min((along for along, _ in found), key=lambda along: abs(along - far))
    return Corner(at - far, (Line(narrow.run_on(far).at(at), wide.beside.start),), 0.0)
