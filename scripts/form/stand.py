"""The stand's mesh: each of its vertices as a fixed mixture of vertices of the base mesh.

Everything here is linear: cutting, wrapping, capping and smoothing are done once, on a model body, and come out as one
matrix. The same matrix then makes a stand of every shape.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray
from scipy import sparse
from scipy.spatial import ConvexHull

from scripts.form.assets import Array, Assets

__all__ = ["Stand"]

Mixture = Mapping[int, float]
Whole = NDArray[np.int64]

CENTRE = 0.6
"""Nearer than this to the middle, in mm, a vertex lies on it."""
SNAP = 7.0
"""A vertex nearer than this to a cut, in mm, is drawn onto it, so that no thin triangles are left there."""
EVEN_AFTER = 6
"""After so many rings the vertices of a ring lie evenly round it."""


@dataclass(slots=True)
class Stand:
    """One half of the mesh, left of the middle, while it is built; the other half is its mirror."""

    assets: Assets
    body: Array
    """The model body: the vertices of the base mesh in the pose that is baked."""
    matrix: sparse.csr_matrix = field(init=False)
    """Rows: vertices of the stand; columns: those of the base mesh. The first rows are the base mesh itself."""
    triangles: Whole = field(init=False)
    trunk: set[int] = field(init=False)
    """The vertices that lie on rings of the trunk."""
    rings: list[list[int]] = field(init=False)

    def __post_init__(self) -> None:
        self.matrix = sparse.identity(len(self.body), format="csr")
        left = self.assets.faces[(self.body[self.assets.faces][:, :, 0] > -CENTRE).all(axis=1)]
        self.triangles = np.concatenate([left[:, [0, 1, 2]], left[:, [0, 2, 3]]])
        self.trunk, self.rings = set(), []

    @property
    def places(self) -> Array:
        """The vertices on the model body."""
        return np.asarray(self.matrix @ self.body)

    @property
    def arm(self) -> Array:
        """How much each vertex belongs to the left arm."""
        part = self.assets.part
        return np.asarray(self.matrix @ (part["upper_arm"] + part["lower_arm"]))

    def cut(self, beyond: Array) -> list[int]:
        """Cut off what has a positive number and leave a clean edge; the edge's vertices in order are returned."""
        beyond = self._snapped(beyond.copy())
        made: dict[tuple[int, int], int] = {}
        mixtures: list[Mixture] = []
        first = self.matrix.shape[0]

        def on_edge(a: int, b: int) -> int:
            key = (min(a, b), max(a, b))
            if key not in made:
                share = beyond[a] / (beyond[a] - beyond[b])
                made[key] = first + len(mixtures)
                mixtures.append({a: 1 - share, b: share})
            return made[key]

        kept = []
        for triangle in self.triangles:
            signs = beyond[triangle]
            if (signs >= 0).all():
                continue
            if (signs <= 0).all():
                kept.append(tuple(triangle))
                continue
            corners: list[int] = []
            for a, b in zip(triangle, np.roll(triangle, -1), strict=True):
                if beyond[a] <= 0:
                    corners.append(int(a))
                if beyond[a] * beyond[b] < 0:
                    corners.append(on_edge(int(a), int(b)))
            kept += [(corners[0], corners[i], corners[i + 1]) for i in range(1, len(corners) - 1)]
        self.triangles = np.array(kept)
        self._add(mixtures)
        on_cut = {int(i) for i in np.flatnonzero(np.abs(beyond) < 1e-9)} | set(made.values())
        return self._edge(on_cut)

    def wrap(self, edge: list[int], heights: Sequence[float]) -> list[int]:
        """Below an edge of the trunk, rings as a taut tape lies round body and legs; the last ring is returned."""
        places = self.places[edge]
        own = _along(places)
        even = np.linspace(0, 1, len(edge))
        ring = edge
        for number, height in enumerate(heights, 1):
            blend = min(number / EVEN_AFTER, 1)
            line = self._taut(height)
            lengths = _along(np.array([self._place(mixture) for mixture in line]))
            mixtures = [_between(line, lengths, share) for share in (1 - blend) * own + blend * even]
            new = self._add(mixtures)
            strips = [(ring[i + 1], ring[i], new[i]) for i in range(len(ring) - 1)]
            strips += [(ring[i + 1], new[i], new[i + 1]) for i in range(len(ring) - 1)]
            self.triangles = np.vstack([self.triangles, np.array(strips)])
            self.trunk.update(new)
            self.rings.append(new)
            ring = new
        return ring

    def cap(self, edge: list[int], *, closed: bool, steps: int = 3) -> None:
        """Close an edge with smaller rings and a point in its middle."""
        size = len(edge)
        mirror = self.assets.mirror
        rows = self.matrix[edge]
        whole = rows if closed else sparse.vstack([rows, rows[1:-1][:, mirror]])
        middle = np.asarray(whole.mean(axis=0)).ravel()
        centre = {int(i): float(middle[i]) for i in np.flatnonzero(middle)}
        ring = edge
        for step in range(1, steps):
            share = step / steps
            mixtures = []
            for vertex in edge:
                mixture = {key: share * value for key, value in centre.items()}
                mixture[vertex] = mixture.get(vertex, 0) + 1 - share
                mixtures.append(mixture)
            new = self._add(mixtures)
            pairs = [(i, (i + 1) % size) for i in range(size if closed else size - 1)]
            strips = [(ring[j], ring[i], new[i]) for i, j in pairs] + [(ring[j], new[i], new[j]) for i, j in pairs]
            self.triangles = np.vstack([self.triangles, np.array(strips)])
            ring = new
        [point] = self._add([centre])
        pairs = [(i, (i + 1) % size) for i in range(size if closed else size - 1)]
        self.triangles = np.vstack([self.triangles, np.array([(ring[j], ring[i], point) for i, j in pairs])])

    def smooth(self, passes: int) -> None:
        """Each vertex moves towards its neighbours; open edges stay."""
        used = np.unique(self.triangles)
        open_ends = self._open_ends()
        at = np.full(self.matrix.shape[0], -1)
        at[used] = np.arange(len(used))
        matrix, triangles = self.matrix[used], at[self.triangles]
        # Neighbours across the middle are mirrors: their rows are the same with left and right vertices exchanged.
        middle = np.abs((matrix @ self.body)[:, 0]) < CENTRE
        still = np.isin(used, list(open_ends))
        pairs = _pairs(triangles)
        near = sparse.csr_matrix((np.ones(len(pairs)), pairs.T), shape=(len(used), len(used)))
        near = near + near.T
        # A vertex in the middle has its neighbours on both sides; those that are in the middle themselves count once.
        across = sparse.diags(middle.astype(float)) @ near @ sparse.diags(np.where(middle, 0.0, 1.0))
        degree = sparse.diags(1 / np.asarray((near + across).sum(axis=1)).ravel())
        move = sparse.diags(np.where(still, 0.0, 0.6))
        stay = sparse.diags(np.where(still, 1.0, 0.4))
        for _ in range(passes):
            other = matrix[:, self.assets.mirror]
            matrix = (stay @ matrix + move @ degree @ (near @ matrix + across @ other)).tocsr()
            matrix.data[np.abs(matrix.data) < 1e-7] = 0
            matrix.eliminate_zeros()
        rows = self.matrix.tolil()
        rows[used] = matrix
        self.matrix = rows.tocsr()

    def finish(self) -> tuple[sparse.csr_matrix, Whole, list[list[int]]]:
        """Drop what is not used: the matrix, the triangles and the rings of the half."""
        used = np.unique(self.triangles)
        at = np.full(self.matrix.shape[0], -1)
        at[used] = np.arange(len(used))
        return self.matrix[used], at[self.triangles], [[int(at[i]) for i in ring] for ring in self.rings]

    def _open_ends(self) -> set[int]:
        """Vertices of open edges; the middle is none, for there the other half begins."""
        count = Counter(map(frozenset, np.vstack([self.triangles[:, [i, (i + 1) % 3]] for i in range(3)]).tolist()))
        across = np.abs(self.places[:, 0])
        return {i for pair, times in count.items() if times == 1 and across[list(pair)].max() > CENTRE for i in pair}

    def _snapped(self, beyond: Array) -> Array:
        places = self.places
        near = [int(i) for i in np.unique(self.triangles) if abs(beyond[i]) < SNAP]
        others: dict[int, set[int]] = {i: set() for i in near}
        for triangle in self.triangles.tolist():
            for i in triangle:
                if i in others:
                    others[i].update(triangle)
        rows = self.matrix.tolil()
        for i in near:
            middle = abs(places[i][0]) < CENTRE
            choice = [
                j
                for j in others[i]
                if beyond[j] * beyond[i] < 0 and abs(beyond[j]) > SNAP and (not middle or abs(places[j][0]) < CENTRE)
            ]
            if not choice:
                continue
            best = max(choice, key=lambda j: abs(beyond[j] - beyond[i]) / float(np.linalg.norm(places[j] - places[i])))
            share = beyond[i] / (beyond[i] - beyond[best])
            rows[i] = (1 - share) * self.matrix[i] + share * self.matrix[best]
            beyond[i] = 0
        self.matrix = rows.tocsr()
        return beyond

    def _edge(self, on_cut: set[int]) -> list[int]:
        """The open edge along a cut: from front to back middle, or round and round."""
        directed = [(int(t[i]), int(t[(i + 1) % 3])) for t in self.triangles for i in range(3)]
        count = Counter(frozenset(pair) for pair in directed)
        across = np.abs(self.places[:, 0])
        follow = {
            a: b
            for a, b in directed
            # An edge in the middle is open too, but there the other half begins.
            if count[frozenset((a, b))] == 1 and a in on_cut and b in on_cut and max(across[a], across[b]) > CENTRE
        }
        starts = set(follow) - set(follow.values())
        here = next(iter(starts)) if starts else next(iter(follow))
        line = [here]
        while line[-1] in follow and follow[line[-1]] != line[0]:
            line.append(follow[line[-1]])
        if len(line) < len(follow):
            raise ValueError(f"an edge of {len(follow)} is in several parts: one of them has {len(line)}")
        return line

    def _add(self, mixtures: Sequence[Mixture]) -> list[int]:
        first = self.matrix.shape[0]
        if mixtures:
            data = [w for mixture in mixtures for w in mixture.values()]
            where = [i for mixture in mixtures for i in mixture]
            ends = np.cumsum([0] + [len(mixture) for mixture in mixtures])
            mix = sparse.csr_matrix((data, where, ends), shape=(len(mixtures), first))
            self.matrix = sparse.vstack([self.matrix, mix @ self.matrix], format="csr")
        return list(range(first, first + len(mixtures)))

    def _place(self, mixture: Mixture) -> Array:
        return np.asarray(sum((w * self.body[i] for i, w in mixture.items()), np.zeros(3)))

    def _taut(self, height: float) -> list[Mixture]:
        """Half a taut tape round body and legs at a height, from the front middle to the back middle."""
        arm = self.assets.part["upper_arm"] + self.assets.part["lower_arm"]
        faces = self.assets.faces
        pairs = np.vstack([faces[:, [i, (i + 1) % 4]] for i in range(4)])
        pairs = pairs[(arm[pairs] < 0.6).all(axis=1) & (arm[self.assets.mirror[pairs]] < 0.6).all(axis=1)]
        off = self.body[pairs][:, :, 1] - height
        pairs = pairs[(off[:, 0] < 0) & (off[:, 1] >= 0)]
        low, high = self.body[pairs[:, 0]], self.body[pairs[:, 1]]
        share = (height - low[:, 1]) / (high[:, 1] - low[:, 1])
        points = low + share[:, None] * (high - low)
        corners = ConvexHull(points[:, [0, 2]]).vertices
        mirror = self.assets.mirror
        turn = np.arctan2(points[corners, 0], points[corners, 2] - points[:, 2].mean())
        left = [k for k in corners[np.argsort(turn)] if points[k, 0] > CENTRE]
        half: list[Mixture] = [{int(pairs[k, 0]): 1 - share[k], int(pairs[k, 1]): share[k]} for k in left]

        def middle(mixture: Mixture) -> Mixture:
            both: dict[int, float] = {}
            for i, w in mixture.items():
                both[i] = both.get(i, 0) + w / 2
                both[int(mirror[i])] = both.get(int(mirror[i]), 0) + w / 2
            return both

        return [middle(half[0]), *half, middle(half[-1])]


def _pairs(triangles: Whole) -> Whole:
    return np.unique(np.sort(np.vstack([triangles[:, [i, (i + 1) % 3]] for i in range(3)])), axis=0)


def _along(points: Array) -> Array:
    lengths = np.r_[0.0, np.cumsum(np.linalg.norm(np.diff(points, axis=0), axis=1))]
    return np.asarray(lengths / lengths[-1])


def _between(line: Sequence[Mixture], lengths: Array, share: float) -> Mixture:
    k = min(max(int(np.searchsorted(lengths, share, side="right")) - 1, 0), len(line) - 2)
    part = (share - lengths[k]) / (lengths[k + 1] - lengths[k]) if lengths[k + 1] > lengths[k] else 0.0
    mixture = {i: w * (1 - part) for i, w in line[k].items()}
    for i, w in line[k + 1].items():
        mixture[i] = mixture.get(i, 0) + w * part
    return mixture
