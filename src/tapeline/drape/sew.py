"""All panels of a garment in one mesh, with the pairs of nodes that its seams bring together; and the welding."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from tapeline.drape.cloth import Hand
from tapeline.drape.compiled import Array, Whole
from tapeline.drape.fabric import Fabric, fabric
from tapeline.drape.panel import Panel, folded, must_be_drapable, panels
from tapeline.drape.spacing import runs, spacing
from tapeline.pattern import EdgeRef, Garment, Seam

__all__ = ["Sewn", "sewn", "welds"]


@dataclass(frozen=True, slots=True)
class Sewn:
    """The panels of a garment, and how they are sewn."""

    panels: tuple[Panel, ...]
    hands: tuple[Hand, ...]
    flat: Array
    triangles: Whole
    panel: Whole
    """Of each node: which panel it is of."""
    layers: Array
    which: Whole
    """Of each triangle: which of the hands it is."""
    seams: Mapping[str, Whole]
    """By seam: the pairs of nodes."""

    @property
    def pairs(self) -> Whole:
        """Of all seams."""
        return np.vstack(list(self.seams.values()))

    def of(self, name: str) -> Whole:
        """The nodes of a panel."""
        index = next(k for k, panel in enumerate(self.panels) if panel.name == name)
        return np.flatnonzero(self.panel == index)

    def loose(self) -> Fabric:
        """The cloth before it is sewn."""
        return fabric(self.flat, self.triangles, self.hands, None, self.layers, self.which)

    def welded(self) -> Fabric:
        """The cloth with every seam closed: what a seam joins is one node."""
        return fabric(self.flat, self.triangles, self.hands, welds(len(self.flat), self.pairs), self.layers, self.which)


def sewn(garment: Garment, hands: Mapping[str, Hand], side_mm: float) -> Sewn:
    """Mesh and sew a garment; `hands` says which cloth is cut for `shell`, `rib` and so on.

    Raises `InputError` where a piece or a seam cannot be draped yet.
    """
    garment, seams, bands = folded(garment)
    must_be_drapable(garment, bands)
    nodes = spacing(garment, seams, side_mm)
    made = panels(garment, nodes, side_mm, bands)
    kinds = sorted({panel.piece.cut.cloth for panel in made})
    chosen = tuple(hands[kind] for kind in kinds)
    offsets = np.cumsum([0, *(len(panel.drawn) for panel in made)])
    counts = {key: len(along) for key, along in nodes.items()}
    flats = [panel.flat(hands[panel.piece.cut.cloth]) for panel in made]
    return Sewn(
        tuple(made),
        chosen,
        np.vstack(flats),
        np.vstack([panel.triangles + at for panel, at in zip(made, offsets[:-1], strict=True)]),
        np.repeat(np.arange(len(made)), np.diff(offsets)),
        np.concatenate([np.full(len(panel.triangles), float(panel.layers)) for panel in made]),
        np.concatenate([np.full(len(panel.triangles), kinds.index(panel.piece.cut.cloth)) for panel in made]),
        {seam.name: _pairs(seam, made, offsets, counts) for seam in seams},
    )


def _pairs(seam: Seam, made: Sequence[Panel], offsets: Whole, counts: Mapping[tuple[str, str], int]) -> Whole:
    """Left with left and right with right; an edge that stands for both sides is sewn to its own mirror."""
    mirrored = seam.a == seam.b
    pairs = []
    for one, two in runs(seam, counts):
        pairs += [
            (_node(one, side, made, offsets), _node(two, -side if mirrored else side, made, offsets))
            for side in ((1,) if mirrored else (1, -1))
        ]
    return np.unique(np.array(pairs), axis=0)


def _node(at: tuple[EdgeRef, int], side: int, made: Sequence[Panel], offsets: Whole) -> int:
    ref, k = at
    for index, panel in enumerate(made):
        if panel.piece.name == ref.piece and (ref.edge, side) in panel.edges:
            return int(offsets[index] + panel.edges[ref.edge, side][k])
    raise KeyError(f"{ref} {side}")


def welds(count: int, pairs: Whole) -> Whole:
    """Of each node the welded one it becomes; what is sewn to one node in several steps is one too.

    >>> welds(5, np.array([[0, 2], [2, 4]])).tolist()
    [0, 1, 0, 2, 0]
    """
    root = list(range(count))

    def top(k: int) -> int:
        while root[k] != k:
            root[k] = root[root[k]]
            k = root[k]
        return k

    for one, two in pairs.tolist():
        a, b = top(one), top(two)
        root[max(a, b)] = min(a, b)
    return np.unique([top(k) for k in range(count)], return_inverse=True)[1].ravel().astype(np.int64)
