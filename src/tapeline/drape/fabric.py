"""A `Fabric` is cloth made ready to be solved: welded nodes, triangles, hinges, weights, and where blocks stand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from tapeline.drape.bending import Hinges, hinges
from tapeline.drape.cloth import GRAVITY, Hand
from tapeline.drape.compiled import Array, Whole

__all__ = ["GRAVITY_MM", "UP", "Fabric", "fabric"]

GRAVITY_MM = GRAVITY * 1000
"""In mm a second squared: masses in kg then weigh mN."""
UP = 1
"""Which of the three numbers of a place is its height: x is to the wearer's left, y up, z to the front."""


@dataclass(frozen=True, slots=True)
class Fabric:
    """Cloth as nodes and triangles; several corners of the pieces share a node where a seam welds them."""

    flat: Array
    """Of each corner: across and along in the cloth, mm."""
    corners: Whole
    node: Whole
    """Of each corner: its node."""
    triangles: Whole
    """The same triangles by nodes."""
    inverse: Array
    area: Array
    stiff: Array
    """Of each triangle: across, coupling, along, shear; mN/mm."""
    stiffens: Array
    mass: Array
    """Of each node, kg."""
    share: Array
    """Of each node: the cloth about it, mm2."""
    hinges: Hinges
    starts: Whole
    columns: Whole
    """Where the blocks of the stiffness stand: rows are nodes."""
    slots: Whole
    diagonal: Whole
    bending: Array
    """The bending matrix, a number for each block."""

    @property
    def count(self) -> int:
        """How many nodes."""
        return len(self.mass)

    def gathered(self, at_corners: Array) -> Array:
        """From values at the corners to their mean at each node."""
        out: Array = np.zeros((self.count, at_corners.shape[1]))
        np.add.at(out, self.node, at_corners)
        return out / np.bincount(self.node, minlength=self.count)[:, None]


def fabric(
    flat: Array,
    corners: Whole,
    hands: Hand | Sequence[Hand],
    node: Whole | None = None,
    layers: Array | None = None,
    which: Whole | None = None,
) -> Fabric:
    """Cloth ready to be solved.

    Args:
        flat: Of each corner: across and along in the cloth, mm.
        corners: Triangles by corners.
        hands: The cloth, or the cloths that `which` tells apart.
        node: Of each corner the node it is welded into; left out, each is its own.
        layers: Of each triangle: how many layers lie on each other.
        which: Of each triangle: which of the hands it is.
    """
    hands = [hands] if isinstance(hands, Hand) else hands
    which = np.zeros(len(corners), np.int64) if which is None else which
    count = len(corners)
    node = np.arange(len(flat)) if node is None else node
    layers = np.ones(count) if layers is None else layers
    one, two = flat[corners[:, 1]] - flat[corners[:, 0]], flat[corners[:, 2]] - flat[corners[:, 0]]
    determinant = one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]
    area = np.abs(determinant) / 2
    # The inverse of the matrix whose columns are the two sides.
    inverse = np.empty((count, 2, 2))
    inverse[:, 0, 0], inverse[:, 0, 1] = two[:, 1] / determinant, -two[:, 0] / determinant
    inverse[:, 1, 0], inverse[:, 1, 1] = -one[:, 1] / determinant, one[:, 0] / determinant
    triangles = np.ascontiguousarray(node[corners])
    nodes = int(node.max()) + 1
    weight = np.array([hand.weight for hand in hands])[which]
    share, mass = np.zeros(nodes), np.zeros(nodes)
    for corner in range(3):
        np.add.at(share, triangles[:, corner], area / 3)
        np.add.at(mass, triangles[:, corner], layers * area / 3 * weight * 1e-9)
    once = np.array([_stiff(hand) for hand in hands])[which]
    stiffens = np.array([(hand.across.s, hand.along.s) for hand in hands])[which]
    rigid = np.array([(hand.rigidity_across, hand.rigidity_along) for hand in hands])[which] * layers[:, None]
    shared = hinges(flat, corners, node, area, rigid)
    keys = _keys(np.vstack([_pairs(triangles), _pairs(shared.nodes)]), nodes)
    starts = np.searchsorted(keys // nodes, np.arange(nodes + 1))
    bending = np.zeros(len(keys))
    values = shared.stiffness[:, None, None] * shared.weights[:, :, None] * shared.weights[:, None, :]
    np.add.at(bending, np.searchsorted(keys, shared.nodes[:, :, None] * nodes + shared.nodes[:, None, :]), values)
    return Fabric(
        flat,
        corners,
        node,
        triangles,
        inverse,
        area,
        np.ascontiguousarray(layers[:, None] * once),
        np.ascontiguousarray(layers[:, None] * stiffens),
        mass,
        share,
        shared,
        starts,
        keys % nodes,
        np.searchsorted(keys, triangles[:, :, None] * nodes + triangles[:, None, :]),
        np.searchsorted(keys, np.arange(nodes) * (nodes + 1)),
        bending,
    )


def _stiff(hand: Hand) -> tuple[float, float, float, float]:
    narrows_along = hand.narrows * hand.along.k / hand.across.k
    free = 1 - hand.narrows * narrows_along
    return hand.across.k / free, narrows_along * hand.across.k / free, hand.along.k / free, hand.shear


def _pairs(ids: Whole) -> Whole:
    width = ids.shape[1]
    return np.stack([np.repeat(ids, width, axis=1).ravel(), np.tile(ids, (1, width)).ravel()], axis=1)


def _keys(pairs: Whole, nodes: int) -> Whole:
    return np.unique(pairs[:, 0] * nodes + pairs[:, 1])
