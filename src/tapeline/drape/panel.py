"""A `Panel` is one piece of cloth as it is worn: halves opened out, each of a pair by itself, bands folded."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from tapeline.drape.cloth import Hand
from tapeline.drape.compiled import Array, Whole
from tapeline.drape.spacing import Spacing
from tapeline.geometry import Path
from tapeline.geometry.triangulate import lost_edges, triangulate
from tapeline.pattern import Edge, EdgeKind, Garment, Piece, Seam
from tapeline.problems import InputError, Problem, Severity

__all__ = ["CREASE", "Panel", "folded", "must_be_drapable", "panels"]

CREASE = "crease"
"""The mark along which a band is folded, and the name of the edge it becomes."""
BODY = frozenset({"front", "back", "yoke", "sleeve"})
LAID = frozenset({"facing", "collar", "stand", "hood", "pocket", "placket", "gusset", "strip", "binding"})
"""Words in the names of pieces that hang by themselves, and of those that lie on others."""


@dataclass(frozen=True, slots=True)
class Panel:
    """One piece of cloth, meshed flat."""

    name: str
    piece: Piece
    side: int
    """1 as drawn, -1 turned over, 0 both halves in one."""
    drawn: Array
    """Of each node: its place on the drawing, turned over for a mirrored piece; mm."""
    triangles: Whole
    edges: Mapping[tuple[str, int], Whole]
    """By edge and side: its nodes, from the edge's start."""
    layers: int

    def flat(self, hand: Hand) -> Array:
        """Across and along the cloth, after it has shrunk."""
        way = self.piece.grain.end - self.piece.grain.start
        angle = np.pi / 2 - np.arctan2(way.y, way.x)
        turned = -angle if self.side < 0 else angle
        cosine, sine = np.cos(turned), np.sin(turned)
        out: Array = self.drawn @ np.array([[cosine, sine], [-sine, cosine]])
        shrunk: Array = out * (1 - np.array([hand.shrinks_across, hand.shrinks_along]))
        return shrunk


def folded(garment: Garment) -> tuple[Garment, tuple[Seam, ...], frozenset[str]]:
    """The garment with its bands folded along the crease, the seams that are left to sew, and which are bands."""
    bands = frozenset(p.name for p in garment.pieces if any(mark.name == CREASE for mark in p.marks))
    turned: set[str] = set()
    seams: list[Seam] = []
    for seam in garment.seams:
        names = {ref.piece for ref in (*seam.a, *seam.b)}
        if len(names) == 1 and names <= bands and len(seam.a) == len(seam.b) == 1 and not _ends(garment, seam):
            turned.add(f"{seam.a[0].piece}.{seam.a[0].edge}")
        else:
            seams.append(seam)
    pieces = tuple(_at_crease(p, turned) if p.name in bands else p for p in garment.pieces)
    return replace(garment, pieces=pieces), tuple(seams), bands


def must_be_drapable(garment: Garment, bands: frozenset[str]) -> None:
    """Raises `InputError` (`drape-piece`) for every piece that cannot be draped yet."""
    problems = []
    for piece in garment.pieces:
        words = set(piece.name.split("_"))
        says = ""
        if words & LAID or not (words & BODY or piece.name in bands):
            says = "lies on other pieces once it is sewn, and layers cannot be draped yet"
        elif "sleeve" in words and words & {"front", "back"}:
            says = "is one part of a sleeve in two, which cannot be placed on the form yet"
        elif not piece.on_fold and piece.cut.quantity != 2:
            says = "is neither a half on the fold nor one of a pair, and others cannot be draped yet"
        if says:
            spoken = piece.name.replace("_", " ")
            problems.append(
                Problem("drape-piece", Severity.ERROR, f"the {spoken} {says}", piece.name, "nothing was draped")
            )
    if problems:
        raise InputError(problems)


def _ends(garment: Garment, seam: Seam) -> bool:
    """Whether a band's seam joins its two ends rather than its two long edges: the crease cuts its edges."""
    piece = garment.piece(seam.a[0].piece)
    crease = next(mark.path for mark in piece.marks if mark.name == CREASE)
    return any(
        piece.edge(ref.edge).path.distance_to(point) < 1.0
        for ref in (seam.a[0], seam.b[0])
        for point in (crease.start, crease.end)
    )


def _at_crease(piece: Piece, turned: set[str]) -> Piece:
    """The half of a band that is sewn on, down to the crease."""
    crease = next(mark.path for mark in piece.marks if mark.name == CREASE)
    count = len(piece.edges)
    is_turned = [f"{piece.name}.{edge.name}" in turned for edge in piece.edges]
    edges: list[Edge] = []
    for k, edge in enumerate(piece.edges):
        path = edge.path
        crossed = min((crease.start, crease.end), key=path.distance_to)
        if is_turned[k - 1]:
            path = path.part(path.length_to(crossed), path.length)
        elif is_turned[(k + 1) % count]:
            path = path.part(0, path.length_to(crossed))
        edges.append(replace(edge, path=path))
    for k, edge in enumerate(edges):
        if is_turned[k]:
            across = Path.through(edges[k - 1].path.end, edges[(k + 1) % count].path.start)
            edges[k] = replace(edge, name=CREASE, kind=EdgeKind.NEATENED, path=across)
    return replace(piece, edges=tuple(edges), notches=(), marks=())


def panels(garment: Garment, nodes: Spacing, side_mm: float, bands: frozenset[str]) -> list[Panel]:
    """Every piece of cloth that is sewn together, meshed with sides of about `side_mm`."""
    out: list[Panel] = []
    for piece in garment.pieces:
        outline, edges = _outline(piece, nodes)
        drawn, triangles = triangulate(outline[::-1], side_mm)
        count = len(outline)
        if lost := lost_edges(triangles, count):
            raise InputError(
                Problem(
                    "drape-mesh",
                    Severity.ERROR,
                    f"the {piece.name} cannot be cut into triangles of {side_mm:g} mm: {len(lost)} places are narrow",
                    piece.name,
                    "take shorter sides; nothing was draped",
                )
            )
        # The mesh was made from the outline run the other way round.
        back = np.arange(len(drawn))
        back[:count] = count - 1 - np.arange(count)
        order = np.argsort(back)
        drawn, triangles = drawn[order], back[triangles]
        edges_of = {name: np.array(ids) % count for name, ids in edges.items()}
        layers = 2 if piece.name in bands else 1
        if piece.on_fold:
            out.append(_opened(piece, drawn, triangles, edges_of, layers))
        else:
            here = {(name, 1): ids for name, ids in edges_of.items()}
            there = {(name, -1): ids for name, ids in edges_of.items()}
            out.append(Panel(f"{piece.name} left", piece, 1, drawn, triangles, here, layers))
            turned = triangles[:, [0, 2, 1]]
            out.append(Panel(f"{piece.name} right", piece, -1, drawn * [-1, 1], turned, there, layers))
    return out


def _outline(piece: Piece, nodes: Spacing) -> tuple[Array, dict[str, list[int]]]:
    """The boundary's nodes as the edges run (clockwise), and which of them are each edge's."""
    places: list[tuple[float, float]] = []
    edges: dict[str, list[int]] = {}
    for edge in piece.edges:
        along = nodes[piece.name, edge.name]
        edges[edge.name] = [len(places) + k for k in range(len(along))]
        places += [(p.x, p.y) for p in (edge.path.at(float(a)) for a in along[:-1])]
    return np.array(places), edges


def _opened(piece: Piece, drawn: Array, triangles: Whole, edges: dict[str, Whole], layers: int) -> Panel:
    """Both halves: the other is this one's mirror, and the nodes on the fold belong to both."""
    fold = next(edge for edge in piece.edges if edge.fold)
    start = np.array([fold.path.start.x, fold.path.start.y])
    way = np.array([fold.path.end.x, fold.path.end.y]) - start
    way /= np.linalg.norm(way)
    along = (drawn - start) @ way
    mirrored = 2 * (start + along[:, None] * way) - drawn
    on_fold = np.zeros(len(drawn), bool)
    on_fold[edges[fold.name]] = True
    other = np.where(on_fold, np.arange(len(drawn)), np.cumsum(~on_fold) - 1 + len(drawn))
    both = {(name, 1): ids for name, ids in edges.items()} | {(name, -1): other[ids] for name, ids in edges.items()}
    everything = np.vstack([drawn, mirrored[~on_fold]])
    return Panel(piece.name, piece, 0, everything, np.vstack([triangles, other[triangles][:, [0, 2, 1]]]), both, layers)
