"""A tee made by hand for the tests of the writers: plausible shapes, invented wearer, every feature once."""

from __future__ import annotations

from tapeline.finish.finished import CuttingListRow, Finished, FinishedPiece, Tick, Title
from tapeline.geometry import Cubic, Line, Path, Point, Vector, area
from tapeline.lengths import Length, cm
from tapeline.pattern import (
    Cut,
    Edge,
    EdgeKind,
    EdgeRef,
    Garment,
    Girth,
    Mark,
    Notch,
    NotchKind,
    Piece,
    Seam,
    Size,
    Source,
    Step,
    StepKind,
)

ALLOWANCE_MM = 10.0
BUST = Length(940, "bust")


def straight(*xy: tuple[float, float]) -> Path:
    """Straight from place to place."""
    return Path.through(*(Point(x, y) for x, y in xy))


def curve(*xy: tuple[float, float]) -> Path:
    """One cubic."""
    return Path((Cubic(*(Point(x, y) for x, y in xy)),))


def body(name: str, neck_depth: float, hem_drop: float) -> Piece:
    """Half a front or back: centre on the left, nape level at y = 0."""
    edges = (
        Edge("neckline", curve((0, -neck_depth), (55, -neck_depth), (84, -neck_depth / 3), (84, 25))),
        Edge("shoulder", straight((84, 25), (210, -20))),
        Edge("armhole", curve((210, -20), (170, -110), (185, -215), (255, -225))),
        Edge("side", curve((255, -225), (240, -400), (250, -500), (262, -640))),
        Edge("hem", curve((262, -640), (150, -650 - hem_drop), (90, -650 - hem_drop), (0, -650 - hem_drop)), EdgeKind.HEM),
        Edge("centre", straight((0, -650 - hem_drop), (0, -neck_depth)), EdgeKind.FOLD),
    )
    return Piece(
        name,
        name.capitalize(),
        edges,
        Line(Point(60, -560), Point(60, -200)),
        Cut(1),
        (Notch("armhole", 110, NotchKind.SINGLE if name == "front" else NotchKind.DOUBLE),),
        (Mark("chest line", straight((0, -225), (255, -225))),),
    )


def sleeve(length: float) -> Piece:
    """A sleeve, crown at the top."""
    edges = (
        Edge("cap_back", curve((-190, 0), (-130, 0), (-90, 130), (0, 130))),
        Edge("cap_front", curve((0, 130), (80, 130), (110, -5), (185, 0))),
        Edge("underarm_front", straight((185, 0), (165, 130 - length))),
        Edge("hem", straight((165, 130 - length), (-168, 130 - length)), EdgeKind.HEM),
        Edge("underarm_back", straight((-168, 130 - length), (-190, 0))),
    )
    return Piece(
        "sleeve",
        "Sleeve",
        edges,
        Line(Point(0, 90), Point(0, 150 - length)),
        Cut(2, mirrored=True),
        (
            Notch("cap_front", 0, NotchKind.CROWN),
            Notch("cap_front", 120, NotchKind.SINGLE),
            Notch("cap_back", 110, NotchKind.DOUBLE),
        ),
    )


def neckband() -> Piece:
    """Half a rib band, folded along its middle."""
    edges = (
        Edge("seam", straight((0, 40), (245, 40))),
        Edge("join", straight((245, 40), (245, 0))),
        Edge("other_seam", straight((245, 0), (0, 0))),
        Edge("centre", straight((0, 0), (0, 40)), EdgeKind.FOLD),
    )
    mark = (Mark("fold line", straight((0, 20), (245, 20))),)
    return Piece("neckband", "Neckband", edges, Line(Point(122, 6), Point(122, 34)), Cut(1, "rib"), (), mark)


def cut_line(piece: Piece) -> Path:
    """The seam line moved out by the allowance, but not at the fold; corners run on until they meet."""
    sides = [edge.path.offset_left(0 if edge.fold else ALLOWANCE_MM) for edge in piece.edges]
    corners = []
    for before, after in zip(sides[-1:] + sides[:-1], sides, strict=True):
        u, v = before.arrives, after.leaves
        along = (after.start - before.end).cross(v) / u.cross(v) if abs(u.cross(v)) > 1e-6 else 0.0
        corners.append(before.end + u * along)
    segments: list[Line | Cubic] = []
    for side, start, end in zip(sides, corners, corners[1:] + corners[:1], strict=True):
        segments += [Line(start, side.start)] if start.distance_to(side.start) > 1e-6 else []
        segments += side.segments
        segments += [Line(side.end, end)] if end.distance_to(side.end) > 1e-6 else []
    outline = Path(tuple(segments))
    assert area(outline) < 0, "runs clockwise"
    return outline


def ticks(piece: Piece) -> tuple[Tick, ...]:
    """Short lines square to the edge."""
    found = []
    for notch in piece.notches:
        path = piece.edge(notch.edge).path
        shifts = (-4.0, 4.0) if notch.kind is NotchKind.DOUBLE else (0.0,)
        lines = []
        for shift in shifts:
            foot, out = path.at(notch.at_mm + shift), path.direction_at(notch.at_mm + shift).left
            lines.append(Line(foot + out * ALLOWANCE_MM, foot + out * (ALLOWANCE_MM - 6)))
        found.append(Tick(notch.edge, notch.at_mm, notch.kind, tuple(lines)))
    return tuple(found)


def finished_piece(piece: Piece, wearer: str) -> FinishedPiece:
    """A piece with its allowance, ticks and words."""
    cut = f"cut {piece.cut.quantity}" + (" on the fold" if piece.on_fold else "")
    cut += ", one turned over" if piece.cut.mirrored else ""
    words = (piece.title, f"for {wearer}", f"{cut}, {piece.cut.cloth}", "allowance 1 cm included", "tee.toml, 2 May 2031")
    allowances = tuple((edge.name, 0.0 if edge.fold else ALLOWANCE_MM) for edge in piece.edges)
    return FinishedPiece(piece, cut_line(piece), allowances, ticks(piece), words)


def steps() -> tuple[Step, ...]:
    """A few steps of every kind."""
    depth = (Length(890, "upper_chest") / 4 - cm(1)).named("armhole_depth")
    return (
        Step(StepKind.SECTION, "frame", "The frame"),
        Step(StepKind.SIZE, "bust", "Taped", lengths=(BUST,)),
        Step(StepKind.SIZE, "armhole_depth", "From nape to chest line", lengths=(depth,), needs=("upper_chest",), source="common practice"),
        Step(StepKind.POINT, "front.neck_point", "Where neck & shoulder meet", ("from ", "nape, right by ", cm(8.4)), needs=("armhole_depth",), point=Point(84, 25)),
        Step(
            StepKind.LINE,
            "front.armhole",
            "Leaves the shoulder square",
            ("a fair line",),
            (depth,),
            ("front.neck_point", "armhole_depth"),
            "house rule",
            path=body("front", 95, 20).edge("armhole").path,
        ),
    )


def tee(*, wearer: str = "Marit Sjöström", sleeve_mm: float = 330.0, date: str = "2031-05-02") -> Finished:
    """The whole garment."""
    pieces = (body("back", 5, 0), body("front", 95, 20), sleeve(sleeve_mm), neckband())
    seams = (
        Seam("shoulder", (EdgeRef("back", "shoulder", backwards=True),), (EdgeRef("front", "shoulder", backwards=True),), cm(0)),
        Seam(
            "neckline",
            (EdgeRef("neckband", "seam"),),
            (EdgeRef("back", "neckline"), EdgeRef("front", "neckline", backwards=True)),
            cm(-6),
            "the band is stretched",
        ),
    )
    girths = (Girth("chest", BUST, cm(8), 1020.0), Girth("waist", Length(770, "waist"), cm(19), 960.0), Girth("hip", Length(1010, "hip"), cm(4), 1048.0))
    sizes = (
        Size("bust", "round the fullest part", BUST, Source.TAPED),
        Size("armhole_depth", "from nape to chest line", steps()[2].lengths[0], Source.SURVEY, 10.2),
    )
    garment = Garment("tee", pieces, seams, (), girths, sizes, steps())
    done = tuple(finished_piece(piece, wearer) for piece in pieces)
    listed = tuple(CuttingListRow(p.name, p.title, p.cut.cloth, p.cut.quantity, p.on_fold, p.cut.mirrored, 500, 680) for p in pieces)
    return Finished(garment, Title("tee.toml", wearer, "tee", date, "0.1.0"), done, listed)


assert Vector(1, 0).left == Vector(0, 1), "outside lies to the left of a clockwise outline"
