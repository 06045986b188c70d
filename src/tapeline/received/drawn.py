"""What a thing draws, as places in millimetres: straight lines, arcs, curves."""

from __future__ import annotations

import math

from tapeline.received.curves import arc, bulged, ellipse, spline
from tapeline.received.things import NotUnderstoodError, Thing, number_of

__all__ = ["chain_of", "place_of", "plane_of"]

Place = tuple[float, float]
CHORD_MM = 0.005
FLAT = 1e-6
FAINT = 1e-9
"""A direction's part that is nothing."""


def place_of(thing: Thing, scale: float, code: int = 10) -> Place:
    """A place of a thing; group 10 or another, and its neighbour ten further."""
    return thing.number(code) * scale, thing.number(code + 10) * scale


def plane_of(thing: Thing) -> int:
    """1, or -1 where the plane of a thing is seen from behind; other planes are not understood."""
    x, y, z = (thing.number(code, otherwise) for code, otherwise in ((210, 0.0), (220, 0.0), (230, 1.0)))
    if abs(x) > FLAT or abs(y) > FLAT or abs(z) < FAINT:
        raise NotUnderstoodError("it lies in another plane")
    return 1 if z > 0 else -1


def chain_of(thing: Thing, scale: float) -> tuple[list[Place], bool]:
    """The places that a line of any kind runs through, and whether it is closed.

    Raises:
        NotUnderstoodError: it is no line, or its numbers make none.
        ValueError: the numbers of a spline do not fit together.
    """
    match thing.kind:
        case "LINE":
            return [place_of(thing, scale), place_of(thing, scale, 11)], False
        case "POLYLINE" | "LWPOLYLINE":
            return _polyline(thing, scale)
        case "ARC" | "CIRCLE":
            return _round(thing, scale)
        case "ELLIPSE":
            if plane_of(thing) != 1:
                raise NotUnderstoodError("an ellipse that is turned over")
            span = (thing.number(41, 0.0), thing.number(42, math.tau))
            whole = abs((span[1] - span[0] + FLAT) % math.tau) < 2 * FLAT
            middle, major = place_of(thing, scale), place_of(thing, scale, 11)
            return ellipse(middle, major, thing.number(40), span, CHORD_MM), whole
        case "SPLINE":
            return _spline(thing, scale)
        case _:
            raise NotUnderstoodError("this kind is not read")


def _round(thing: Thing, scale: float) -> tuple[list[Place], bool]:
    turned, circle = plane_of(thing), thing.kind == "CIRCLE"
    radius = thing.number(40) * scale
    if radius <= 0:
        raise NotUnderstoodError("its radius is not more than nothing")
    start, end = (0.0, math.tau) if circle else (math.radians(thing.number(code)) for code in (50, 51))
    return [(x * turned, y) for x, y in arc(place_of(thing, scale), radius, start, end, CHORD_MM)], circle


def _polyline(thing: Thing, scale: float) -> tuple[list[Place], bool]:
    flags, turned = thing.whole(70), plane_of(thing)
    if flags & (16 | 64):
        raise NotUnderstoodError("a mesh, not a line")
    corners = list(_vertices(thing, scale) if thing.kind == "POLYLINE" else _light(thing, scale))
    if len(corners) < 2:
        raise NotUnderstoodError("it has fewer than two places")
    closed = bool(flags & 1)
    places = [corners[0][0]]
    ends = [*corners[1:], corners[0]] if closed else corners[1:]
    for (a, bulge), (b, _) in zip(corners, ends, strict=False):
        places += bulged(a, b, bulge, CHORD_MM)[1:]
    return [(x * turned, y) for x, y in places], closed


def _vertices(thing: Thing, scale: float) -> list[tuple[Place, float]]:
    """Places and bulges; those of the frame of a spline are not on its line."""
    return [(place_of(v, scale), v.number(42, 0.0)) for v in thing.parts if not v.whole(70) & 16]


def _light(thing: Thing, scale: float) -> list[tuple[Place, float]]:
    bulges: dict[int, float] = {}
    places = _places(thing, scale, bulges)
    return [(place, bulges.get(number, 0.0)) for number, place in enumerate(places)]


def _spline(thing: Thing, scale: float) -> tuple[list[Place], bool]:
    controls = _places(thing, scale, {})
    if not controls:
        raise NotUnderstoodError("a spline without control points")
    knots, weights = ([number_of(value) for code, value in thing.values if code == wanted] for wanted in (40, 41))
    places = spline(thing.whole(71, 3), knots, controls, weights, CHORD_MM)
    return places, math.dist(places[0], places[-1]) <= FLAT


def _places(thing: Thing, scale: float, bulges: dict[int, float]) -> list[Place]:
    """Places that stand in one thing after the other; a bulge goes with the place before it."""
    places: list[Place] = []
    x: float | None = None
    for code, value in thing.values:
        if code == 10:
            x = number_of(value) * scale
        elif code == 20 and x is not None:
            places.append((x, number_of(value) * scale))
            x = None
        elif code == 42 and thing.kind == "LWPOLYLINE" and places:
            bulges[len(places) - 1] = number_of(value)
    return places
