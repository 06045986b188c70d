"""Points, curves, paths and fair lines, on plain floats in millimetres and radians; x to the side, y up."""

from tapeline.geometry.empty import empty_boxes
from tapeline.geometry.extent import extent
from tapeline.geometry.fair_line import fair_line
from tapeline.geometry.ground import (
    Outline,
    bounds,
    clearance,
    closed_up,
    common_ground,
    ground,
    grown,
    outline_of,
    placed,
    simpler,
    swept,
    united,
    unsound,
)
from tapeline.geometry.path import Path
from tapeline.geometry.point import Point, Vector
from tapeline.geometry.region import area, crosses_itself, outlines_overlap
from tapeline.geometry.rigid import Rigid
from tapeline.geometry.segment import Cubic, Line, Segment
from tapeline.geometry.slide import Solid, push_left
from tapeline.geometry.solve import solve, solve_one

__all__ = [
    "Cubic",
    "Line",
    "Outline",
    "Path",
    "Point",
    "Rigid",
    "Segment",
    "Solid",
    "Vector",
    "area",
    "bounds",
    "clearance",
    "closed_up",
    "common_ground",
    "crosses_itself",
    "empty_boxes",
    "extent",
    "fair_line",
    "ground",
    "grown",
    "outline_of",
    "outlines_overlap",
    "placed",
    "push_left",
    "simpler",
    "solve",
    "solve_one",
    "swept",
    "united",
    "unsound",
]
