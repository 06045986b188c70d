"""Pieces to finish: some by hand, some by chance, and an invented top."""

from __future__ import annotations

import math
from collections.abc import Sequence

from hypothesis import strategies as st

from tapeline.finish import Title
from tapeline.geometry import Line, Path, Point, Vector, fair_line
from tapeline.lengths import Length
from tapeline.pattern import Cut, Edge, EdgeKind, EdgeRef, Garment, Join, Notch, NotchKind, Piece, Seam

TITLE = Title("tee.toml", "Marit", "tee", "2024-05-01", "0.1.0")


def straight(
    *corners: tuple[float, float],
    hems: str = "",
    folds: str = "",
    cut: Cut | None = None,
    notches: Sequence[Notch] = (),
) -> Piece:
    """A piece with straight edges a, b, c ... from corner to corner, clockwise; grain straight up."""
    points = [Point(*corner) for corner in corners]
    edges = [
        Edge(name, Path.through(a, b), _kind(name, hems, folds))
        for name, a, b in zip("abcdefghijkl", points, points[1:] + points[:1], strict=False)
    ]
    return Piece("shape", "Shape", tuple(edges), Line(Point(0, 0), Point(0, 50)), cut or Cut(1), tuple(notches))


def _kind(name: str, hems: str, folds: str) -> EdgeKind:
    return EdgeKind.HEM if name in hems else EdgeKind.FOLD if name in folds else EdgeKind.SEAM


def half(name: str, neck_depth: float) -> Piece:
    """Half a front or back with a curved hem; its shoulder is not square to its neckline nor to its armhole."""
    nape, neck, tip = Point(0, 25 - neck_depth), Point(75, 25), Point(200, -25)
    underarm, side_hem, centre_hem = Point(255, -215), Point(245, -560), Point(0, -575)
    along = (underarm - side_hem).unit
    neckline = fair_line([nape, neck], leave=Vector(1, 0), arrive=Vector(0.1, 1))
    armhole = fair_line(
        [tip, Point(180, -130), Point(205, -190), underarm], leave=Vector(-0.5, -1.2), arrive=along.right
    )
    hem = fair_line([side_hem, centre_hem], leave=along.left, arrive=Vector(-1, 0))
    edges = (
        Edge("centre", Path.through(centre_hem, nape), EdgeKind.FOLD),
        Edge("neckline", neckline),
        Edge("shoulder", Path.through(neck, tip)),
        Edge("armhole", armhole),
        Edge("side", Path.through(underarm, side_hem)),
        Edge("hem", hem, EdgeKind.HEM),
    )
    kind = NotchKind.SINGLE if name == "front" else NotchKind.DOUBLE
    notches = (Notch("armhole", 120, kind),)
    return Piece(name, name.title(), edges, Line(Point(80, -500), Point(80, -100)), Cut(1), notches)


def sleeve() -> Piece:
    """A sleeve that tapers to a straight hem."""
    back, front, crown = Point(-180, 0), Point(180, 0), Point(0, 140)
    hem_back, hem_front = Point(-110, -400), Point(110, -400)
    cap_back = fair_line([back, Point(-90, 75), crown], leave=(back - hem_back).unit.right, arrive=Vector(1, 0))
    cap_front = fair_line([crown, Point(90, 65), front], leave=Vector(1, 0), arrive=(hem_front - front).unit.left)
    edges = (
        Edge("cap_back", cap_back),
        Edge("cap_front", cap_front),
        Edge("underarm_front", Path.through(front, hem_front)),
        Edge("hem", Path.through(hem_front, hem_back), EdgeKind.HEM),
        Edge("underarm_back", Path.through(hem_back, back)),
    )
    notches = (
        Notch("cap_back", 100, NotchKind.DOUBLE),
        Notch("cap_front", 0, NotchKind.CROWN),
        Notch("cap_front", 120),
    )
    return Piece("sleeve", "Sleeve", edges, Line(Point(0, -300), Point(0, 0)), Cut(2, mirrored=True), notches=notches)


def band() -> Piece:
    """A neckband: a strip of rib."""
    corners = [Point(0, 0), Point(0, 60), Point(400, 60), Point(400, 0), Point(0, 0)]
    names = ("end", "seam", "other_end", "other_seam")
    edges = tuple(Edge(n, Path.through(a, b)) for n, a, b in zip(names, corners, corners[1:], strict=False))
    return Piece("neckband", "Neckband", edges, Line(Point(200, 10), Point(200, 50)), Cut(1, "rib"))


def top() -> Garment:
    """An invented top: enough of a garment to be finished, not one to be worn."""

    def seam(name: str, a: str, b: str) -> Seam:
        (one, first), (two, second) = a.split("."), b.split(".")
        return Seam(name, (EdgeRef(one, first),), (EdgeRef(two, second),), Length(0))

    seams = (
        seam("shoulder", "back.shoulder", "front.shoulder"),
        seam("side", "back.side", "front.side"),
        seam("underarm", "sleeve.underarm_front", "sleeve.underarm_back"),
        Seam(
            "band",
            (EdgeRef("neckband", "seam"),),
            (EdgeRef("back", "neckline"), EdgeRef("front", "neckline")),
            Length(-100),
        ),
    )
    joins = (
        Join("neckline", "shoulder", (("back", "neckline", "shoulder"), ("front", "neckline", "shoulder"))),
        Join("armhole", "shoulder", (("back", "armhole", "shoulder"), ("front", "armhole", "shoulder"))),
        Join("armhole", "side", (("back", "armhole", "side"), ("front", "armhole", "side"))),
        Join("hem", "side", (("back", "hem", "side"), ("front", "hem", "side"))),
        Join("cap", "underarm", (("sleeve", "cap_front", "underarm_front"), ("sleeve", "cap_back", "underarm_back"))),
    )
    pieces = (half("back", 25), half("front", 95), band(), sleeve())
    return Garment("tee", pieces, seams, joins, (), (), ())


@st.composite
def outlines(draw: st.DrawFn) -> Piece:
    """A clockwise outline of straight and fair edges, with corners that turn out and corners that turn in."""
    count = draw(st.integers(4, 8))
    radii = draw(st.lists(st.floats(180, 320), min_size=count, max_size=count))
    angles = [-(k + draw(st.floats(-0.2, 0.2))) * math.tau / count for k in range(count)]
    corners = [Point(r * math.cos(a), r * math.sin(a)) for r, a in zip(radii, angles, strict=True)]
    edges = []
    for k, (a, b) in enumerate(zip(corners, corners[1:] + corners[:1], strict=True)):
        chord = b - a
        bulge = draw(st.sampled_from([0.0, 0.0, 0.08, -0.08, 0.15]))
        path = Path.through(a, b)
        if bulge:
            path = fair_line([a, a.toward(b, 0.5) + chord.left * bulge, b])
        edges.append(Edge("abcdefgh"[k], path))
    return Piece("shape", "Shape", tuple(edges), Line(Point(0, 0), Point(0, 50)), Cut(1))


def inside_angles(piece: Piece) -> list[float]:
    """Degrees inside the piece at each corner."""
    pairs = zip(piece.edges, piece.edges[1:] + piece.edges[:1], strict=True)
    return [math.degrees(piece.corner(a.name, b.name)[1]) for a, b in pairs]
