"""Human shape data, read as plain files: the base mesh, its shapes, and which part of the body a vertex belongs to."""

from __future__ import annotations

import gzip
import json
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from scipy.spatial import cKDTree

__all__ = ["PHENOTYPE", "WORDS", "Assets", "read"]

Array = NDArray[np.float64]

WORDS = {
    "race": ("african", "asian", "caucasian"),
    "gender": ("male", "female"),
    "age": ("baby", "child", "young", "old"),
    "muscle": ("minmuscle", "averagemuscle", "maxmuscle"),
    "weight": ("minweight", "averageweight", "maxweight"),
    "height": ("minheight", "maxheight"),
    "proportions": ("idealproportions", "uncommonproportions"),
    "cupsize": ("mincup", "averagecup", "maxcup"),
    "firmness": ("minfirmness", "averagefirmness", "maxfirmness"),
}
"""The words that names of shape files are made of: each file is a corner of these properties."""

PHENOTYPE = tuple(WORDS)[1:]
"""The properties that the form varies; of the first the mean is taken."""

_MM = 100.0
"""The files are in decimetres."""


@dataclass(frozen=True, slots=True)
class Assets:
    """The base mesh and all that changes it; mm, x to the wearer's left, y up, z to the front."""

    folder: Path
    vertices: Array
    faces: NDArray[np.int64]
    """Quads of the skin."""
    groups: dict[str, NDArray[np.int64]]
    """Vertices of each group, joints among them."""
    part: dict[str, Array]
    """Of each vertex, how much it belongs to `upper_arm` (with the shoulder's muscle), `lower_arm`, `leg`, `head`; of
    the left side only."""
    mirror: NDArray[np.int64]
    """Of each vertex, the one on the other side."""

    def change(self, path: Path) -> Array:
        """A shape file: by how much each vertex moves."""
        moved = np.zeros_like(self.vertices)
        with gzip.open(path, "rt") as file:
            for line in file:
                words = line.split()
                if len(words) == 4 and words[0].isdigit():
                    moved[int(words[0])] = [float(word) * _MM for word in words[1:]]
        # The files' two sides differ by less than half a millimetre; a stand has none of it.
        skin = self.groups["body"]
        moved[skin] = (moved[skin] + moved[self.mirror[skin]] * [-1, 1, 1]) / 2
        return moved

    def corners(self) -> list[tuple[list[bool], NDArray[np.float32]]]:
        """The shapes that are mixed by phenotype: for each, which words its name has, and its change."""
        words = [word for row in WORDS.values() for word in row]
        found = []
        for path in sorted(p for sub in ("macrodetails", "breast") for p in self.targets(sub).rglob("*.target.gz")):
            name = [word for word in path.name.removesuffix(".target.gz").split("-") if word != "universal"]
            if set(name) & set(words) and set(name) <= set(words):
                found.append(([word in name for word in words], self.change(path).astype(np.float32)))
        return found

    def local(self, name: str) -> tuple[Array, Array] | None:
        """A local change both ways, symmetric; None where there is no file. `*` stands for both sides."""
        for ends in (("incr", "decr"), ("up", "down"), ("out", "in"), ("forward", "backward")):
            sides = ("l", "r") if "*" in name else ("",)
            paths = [[self.found(f"{name.replace('*', side)}-{end}") for side in sides] for end in ends]
            if all(path for row in paths for path in row):
                more, less = (sum((self.change(p) for p in row if p), np.zeros_like(self.vertices)) for row in paths)
                return more, less
        return None

    def found(self, name: str) -> Path | None:
        """The file of a shape, by its name."""
        return next(iter(sorted(self.targets("").rglob(f"{name}.target.gz"))), None)

    def targets(self, sub: str) -> Path:
        """The folder of shapes."""
        return self.folder / "targets" / sub


def read(folder: Path) -> Assets:
    """Read the base mesh, its groups and the weights of its bones."""
    points: list[list[float]] = []
    faces: list[list[int]] = []
    groups: dict[str, set[int]] = {}
    group = ""
    for line in (folder / "3dobjs" / "base.obj").read_text(encoding="utf-8").splitlines():
        kind, _, rest = line.partition(" ")
        if kind == "v":
            points.append([float(word) * _MM for word in rest.split()[:3]])
        elif kind == "g":
            group = rest.strip()
        elif kind == "f":
            face = [int(word.split("/")[0]) - 1 for word in rest.split()]
            groups.setdefault(group, set()).update(face)
            if group == "body":
                faces.append(face)
    vertices = np.array(points)
    skin = np.array(sorted(groups["body"]))
    mirror = _mirror(vertices, skin)
    vertices[skin] = (vertices[skin] + vertices[mirror[skin]] * [-1, 1, 1]) / 2
    return Assets(
        folder,
        vertices,
        np.array(faces),
        {name: np.array(sorted(group)) for name, group in groups.items()},
        _parts(folder, len(vertices)),
        mirror,
    )


def _mirror(vertices: Array, skin: NDArray[np.int64]) -> NDArray[np.int64]:
    """By the skin alone, for other groups lie on it in places; what is not skin keeps to itself."""
    other = np.arange(len(vertices))
    other[skin] = skin[cKDTree(vertices[skin]).query(vertices[skin] * [-1, 1, 1])[1]]
    if not np.array_equal(other[other], np.arange(len(other))):
        raise ValueError("the base mesh is not symmetric")
    return other


def _parts(folder: Path, count: int) -> dict[str, Array]:
    starts = {
        "upper_arm": ("upperarm", "shoulder"),
        "lower_arm": ("lowerarm", "wrist", "finger", "metacarpal"),
        "leg": ("upperleg", "lowerleg", "foot", "toe"),
    }
    torso = ("spine", "root", "pelvis", "clavicle", "breast", *(s for row in starts.values() for s in row))
    bones = json.loads((folder / "rigs/standard/weights.default.json").read_text(encoding="utf-8"))["weights"]
    part = {name: np.zeros(count) for name in (*starts, "head")}
    total = np.full(count, 1e-9)
    for bone, rows in bones.items():
        where, how_much = (np.array(column) for column in zip(*rows, strict=True)) if rows else (np.array([], int),) * 2
        total[where] += how_much
        for name, words in starts.items():
            if bone.startswith(words) and bone.endswith(".L"):
                part[name][where] += how_much
        if not bone.startswith(torso):
            part["head"][where] += how_much
    return {name: weight / total for name, weight in part.items()}
