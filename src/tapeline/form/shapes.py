"""The shapes that a stand may have: a mean, mixtures of it, local changes; and its mesh."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

import numpy as np
from numpy.typing import NDArray

__all__ = ["PHENOTYPE", "Array", "Place", "Shapes", "Whole", "shapes", "shapes_at"]

Array = NDArray[np.float64]
Whole = NDArray[np.int64]

_WORDS = {
    "race": 3,
    "gender": 2,
    "age": 4,
    "muscle": 3,
    "weight": 3,
    "height": 2,
    "proportions": 2,
    "cupsize": 3,
    "firmness": 3,
}
"""Properties of the data's bodies, and how many corners each has, evenly from 0 to 1."""

PHENOTYPE = tuple(_WORDS)[1:]
"""The properties that the form varies, from 0 to 1; of the first the mean is taken."""

_SPREAD = 12
"""So often the arm's weight is handed to the neighbours before the arm is turned."""

RESTING = np.radians(41.0)
"""By how much the arms stand off in the data: from the shoulder's joint to the elbow's, against hanging straight."""


@dataclass(frozen=True, slots=True, eq=False)
class Place:
    """A point of the stand: a fixed mixture of its vertices and joints."""

    at: Whole
    shares: Array

    def of(self, points: Array) -> Array:
        """Where it is."""
        return np.asarray(self.shares @ points[self.at])

    def towards(self, other: Place, share: float) -> Place:
        """The place that lies between this and another."""
        return Place(np.r_[self.at, other.at], np.r_[self.shares * (1 - share), other.shares * share])


@dataclass(frozen=True, slots=True, eq=False)
class Shapes:
    """All stands in one pose: `half` holds the left half and the joints, row by row; the right is its mirror."""

    arms: float
    """Angle of the arms against hanging straight down, radians."""
    mean: Array
    """(3 rows,), mm."""
    basis: Array
    """(mixtures, 3 rows)."""
    local: Array
    """(2 local changes, 3 rows): each both ways, more and less."""
    local_names: tuple[str, ...]
    masks: NDArray[np.bool_]
    mixed_mean: Array
    project: Array
    triangles: Whole
    """Of the whole stand, anticlockwise from outside."""
    count: int
    """Vertices of the whole stand; joints follow."""
    row: Whole
    """Of each vertex and joint of the whole, its row in the half."""
    sign: Array
    """Of each vertex and joint of the whole, (1, 1, 1) or (-1, 1, 1)."""
    arm: Array
    """Of each vertex and joint of the whole, how much it belongs to an arm."""
    places: Mapping[str, Place]
    """Landmarks and joints by name; on the right with `right_` before it."""
    rings: Whole
    """Rings of the trunk from above: the left half's vertices from front to back."""

    def coefficients(self, phenotype: Array) -> Array:
        """How much of each mixture a body has."""
        columns = [np.full(3, 1 / 3)]
        for value, corners in zip(phenotype, list(_WORDS.values())[1:], strict=True):
            columns.append(_between(float(value), corners))
        mixed = np.where(self.masks, np.concatenate(columns), 1.0).prod(axis=1)
        return np.asarray((mixed - self.mixed_mean) @ self.project)

    def half(self, phenotype: Array, local: Array) -> Array:
        """The rows of a body: (rows, 3), mm."""
        ways = np.empty(2 * len(local))
        ways[0::2], ways[1::2] = np.maximum(local, 0), np.maximum(-local, 0)
        return np.asarray((self.mean + self.coefficients(phenotype) @ self.basis + ways @ self.local).reshape(-1, 3))

    def whole(self, half: Array) -> Array:
        """Vertices and joints of both sides."""
        return np.asarray(half[self.row] * self.sign)

    def folded(self, at: Whole, slopes: Array) -> Array:
        """Slopes by points of the whole, as slopes by rows of the half."""
        out = np.zeros((int(self.row.max()) + 1, 3))
        np.add.at(out, self.row[at], slopes * self.sign[at])
        return out


def _between(value: float, corners: int) -> Array:
    """Shares of the two corners that a value lies between; beyond the ends the line goes on straight."""
    at = value * (corners - 1)
    low = int(min(max(np.floor(at), 0), corners - 2))
    shares = np.zeros(corners)
    shares[low], shares[low + 1] = 1 - (at - low), at - low
    return shares


@cache
def shapes() -> Shapes:
    """The stands with their arms as in the data. Read once.

    The file is made by `scripts/bake_form.py` from shape data that state CC0; the text is in `data/shapes.LICENSE.md`.
    """
    with files("tapeline.form").joinpath("data", "shapes.npz").open("rb") as file, np.load(file) as table:
        data = {name: table[name] for name in table.files}
    mean = data["mean"].astype(float).reshape(-1, 3)
    joints = [str(name) for name in data["joints"]]
    count = len(mean) - len(joints)
    off = np.flatnonzero(np.abs(mean[:count, 0]) > 1e-3)
    mirror = np.arange(count)
    mirror[off] = count + np.arange(len(off))
    paired = [count + i for i, name in enumerate(joints) if name not in {"crown", "floor"}]
    row = np.r_[np.arange(count), off, count + np.arange(len(joints)), paired]
    whole = count + len(off)
    sign = np.ones((len(row), 3))
    sign[count:whole, 0] = sign[whole + len(joints) :, 0] = -1
    arm = np.r_[data["arm"] / 255, np.array([name not in {"crown", "floor"} for name in joints], float)][row]
    triangles = data["triangles"].astype(int)
    triangles = np.vstack([triangles, mirror[triangles][:, ::-1]])
    places: dict[str, Place] = {}
    for name, at, shares in zip(data["marks"], data["mark_vertices"].astype(int), data["mark_shares"], strict=True):
        left, right = Place(at, shares.astype(float)), Place(mirror[at], shares.astype(float))
        if name in {"nape", "hollow", "seat"}:
            places[str(name)] = left.towards(right, 0.5)
        else:
            places[str(name)], places[f"right_{name}"] = left, right
    for i, name in enumerate(joints):
        places[f"{name}_joint" if name not in {"crown", "floor"} else name] = Place(np.array([whole + i]), np.ones(1))
    rings = data["rings"].astype(int)
    if mean[rings[0, 0], 2] < mean[rings[0, -1], 2]:
        rings = rings[:, ::-1]
    return Shapes(
        RESTING,
        mean.ravel(),
        data["basis"] * data["basis_scale"].astype(float)[:, None],
        data["local"] * data["local_scale"].astype(float)[:, None],
        tuple(str(name) for name in data["local_names"]),
        data["masks"].astype(bool),
        data["mixed_mean"].astype(float),
        data["project"].astype(float),
        triangles,
        whole,
        row,
        sign,
        arm,
        places,
        rings,
    )


def _spread(weight: Array, triangles: Whole) -> Array:
    """A weight taken gently from vertex to vertex, so that the surface at the armpit turns bit by bit."""
    pairs = np.vstack([triangles[:, [i, (i + 1) % 3]] for i in range(3)])  # each edge both ways: the mesh is closed
    neighbours = np.bincount(pairs[:, 0], minlength=len(weight))
    for _ in range(_SPREAD):
        weight = 0.5 * weight + 0.5 * np.bincount(pairs[:, 0], weight[pairs[:, 1]], len(weight)) / neighbours
    return weight


@cache
def shapes_at(arms: float) -> Shapes:
    """The stands with their arms at an angle.

    A turn by a fixed angle about a joint is linear in the shape, so it is applied to the mean and to every change once.
    """
    from dataclasses import replace

    rest = shapes()
    turn = arms - rest.arms
    c, s = np.cos(turn), np.sin(turn)
    # About the axis from back to front, outwards and up for a larger angle.
    matrix = np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]]) - np.eye(3)
    rows = int(rest.row.max()) + 1
    share = np.zeros(rows)
    share[rest.row] = np.r_[_spread(rest.arm[: rest.count], rest.triangles), rest.arm[rest.count :]]
    shoulder = int(rest.row[rest.places["shoulder_joint"].at[0]])

    def turned(flat: Array) -> Array:
        points = flat.reshape(*flat.shape[:-1], rows, 3)
        about = points - points[..., shoulder : shoulder + 1, :]
        return np.asarray((points + share[:, None] * (about @ matrix.T)).reshape(flat.shape))

    return replace(rest, arms=arms, mean=turned(rest.mean), basis=turned(rest.basis), local=turned(rest.local))
