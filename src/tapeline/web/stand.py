"""A plain dress stand, front and back, and where each tape lies on it; drawn by our own lines."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from tapeline.geometry import Path, Point, Rigid, Vector, fair_line

__all__ = ["HEIGHT", "WIDTH", "Stand", "TapeLine", "stand"]

WIDTH, HEIGHT = 260, 190
"""Of the whole picture, in its own units: about a centimetre of the stand is one."""
FRONT, BACK = 66.0, 194.0
"""Where the centre lines of the two views stand."""

NECK, SHOULDER, ARMPIT = Point(13, 26), Point(38, 37), Point(34, 62)
BUST, WAIST, HIP, FOOT = Point(36.5, 75), Point(26.5, 108), Point(38, 146), Point(36, 164)
ELBOW, WRIST = Point(50, 95), Point(53, 140)
NAPE, PIT = Point(0, 24), Point(0, 34)


@dataclass(frozen=True, slots=True)
class TapeLine:
    """A tape as it lies on the stand."""

    name: str
    paths: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Stand:
    """The picture: outlines, and a line for each tape."""

    outlines: tuple[str, ...]
    tapes: tuple[TapeLine, ...]


@cache
def stand() -> Stand:
    """The picture; it is the same for every wearer, for it says where, not how much."""
    return Stand(
        tuple(_outline(centre) + _arm(centre) for centre in (FRONT, BACK)),
        tuple(
            TapeLine(name, tuple(_at(centre, line).svg(1) for centre, line in lines))
            for name, lines in _tapes().items()
        ),
    )


def _outline(centre: float) -> str:
    side = fair_line([ARMPIT, BUST, WAIST, HIP, FOOT], leave=Vector(0.25, 1), arrive=Vector(-0.1, 1))
    neck = fair_line([Point(11.5, 12), NECK, SHOULDER], leave=Vector(0, 1), arrive=Vector(1, 0.3))
    armhole = fair_line([SHOULDER, Point(33.5, 50), ARMPIT], leave=Vector(-0.2, 1))
    half = neck.joined(armhole).joined(side)
    other = half.moved(Rigid(a=-1)).reversed()
    foot = fair_line([FOOT, Point(0, 168), Point(-FOOT.x, FOOT.y)])
    top = fair_line([Point(-11.5, 12), Point(0, 9.5), Point(11.5, 12)])
    return _at(centre, half.joined(foot).joined(other).joined(top)).svg(1) + " Z"


def _arm(centre: float) -> str:
    outer = fair_line([SHOULDER, Point(46, 60), Point(55, 95), Point(57.5, 140)], leave=Vector(1, 0.5))
    inner = fair_line([Point(48.5, 140), Point(45, 97), Point(36, 66)])
    cuff = Path.through(outer.end, inner.start)
    return " " + _at(centre, outer.joined(cuff).joined(inner)).svg(1)


def _at(centre: float, path: Path) -> Path:
    return path.moved(Rigid.shift(Vector(centre, 0)))


def _round(half_width: float, level: float, sag: float = 4) -> Path:
    """A tape round the stand, as the near half of it is seen."""
    return fair_line([Point(-half_width, level), Point(0, level + sag), Point(half_width, level)])


def _tapes() -> dict[str, list[tuple[float, Path]]]:
    line = Path.through
    both = (FRONT, BACK)
    arm = fair_line([SHOULDER, ELBOW, WRIST])
    armhole = fair_line(
        [SHOULDER, Point(30.5, 52), Point(36, 64), Point(40, 52), SHOULDER],
        leave=Vector(-1, 0.6),
        arrive=Vector(-1, -0.6),
    )
    return {
        "bust": [(centre, _round(36.5, 75)) for centre in both],
        "chest": [(centre, _round(36.5, 75)) for centre in both],
        "upper_chest": [(centre, _round(34, 62)) for centre in both],
        "waist": [(centre, _round(26.5, 108)) for centre in both],
        "hip": [(centre, _round(38, 146)) for centre in both],
        "shoulder_width": [(BACK, fair_line([Point(-SHOULDER.x, SHOULDER.y), NAPE, SHOULDER]))],
        "back_length": [(BACK, line(NAPE, Point(0, 108)))],
        "hip_depth": [(BACK, line(Point(0, 108), Point(0, 146)))],
        "arm_length": [(FRONT, arm)],
        "neck": [(FRONT, fair_line([Point(-13, 26), PIT, NECK])), (BACK, fair_line([Point(-13, 26), NAPE, NECK]))],
        "back_width": [(BACK, _round(33, 54, 1))],
        "chest_width": [(FRONT, _round(33, 54, 1))],
        "armhole_depth": [(BACK, line(NAPE, Point(0, 62)))],
        "armhole_girth": [(FRONT, armhole)],
        "shoulder_length": [(FRONT, line(NECK, SHOULDER))],
        "shoulder_slope": [(BACK, line(NECK, SHOULDER)), (BACK, line(NECK, Point(38, 26)))],
        "upper_arm": [(FRONT, fair_line([Point(37, 69), Point(43, 71), Point(48.5, 68)]))],
        "elbow": [(FRONT, fair_line([Point(45, 96), Point(50, 98), Point(55, 95)]))],
        "wrist": [(FRONT, fair_line([Point(48.4, 138), Point(53, 140), Point(57.4, 138)]))],
        "head_girth": [(FRONT, fair_line([Point(-12, 4), Point(0, 7), Point(12, 4), Point(0, 1), Point(-12, 4)]))],
        "neck_to_crown": [(FRONT, fair_line([NECK, Point(12, 12), Point(0, 1)], arrive=Vector(-1, 0)))],
        "height": [(FRONT, line(Point(-56, 1), Point(-56, 186)))],
        "bust_point_depth": [(FRONT, fair_line([NECK, Point(15, 50), Point(16, 75)]))],
        "bust_span": [(FRONT, line(Point(-16, 76), Point(16, 76)))],
    }
