"""The noun: a dress stand with a wearer's tapes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from tapeline.measures import Figure

__all__ = ["Form", "Reading"]

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Reading:
    """One tape as it is read off the stand."""

    name: str
    wanted: float
    """What the wearer's tape says, or the estimate where it was not taken; mm, or radians for an angle."""
    read: float
    given: bool
    """Whether it was taken: then the stand has it, otherwise it only stays near."""
    line: Array
    """(k, 3): where the tape lies, mm; a closed one ends where it begins."""

    @property
    def off(self) -> float:
        """By how much the stand reads more than wanted."""
        return self.read - self.wanted


@dataclass(frozen=True, slots=True, eq=False)
class Form:
    """A plain stand: trunk, neck stump, arms to the wrists; smooth, closed, and nothing that a stand does not have.

    mm; x to the wearer's left, y up from the floor, z to the front; the left half is the right one's mirror.
    """

    figure: Figure
    arms: float
    """By how much the arms stand off from hanging straight down, radians."""
    vertices: Array
    """(n, 3)."""
    triangles: NDArray[np.int64]
    """(m, 3), anticlockwise seen from outside; every edge belongs to two of them."""
    arm: Array
    """(n,): how much each vertex belongs to an arm, from 0 to 1."""
    points: Mapping[str, Array]
    """Landmarks by name, (3,) each; on the right side with `right_` before the name: `nape`, `hollow`,
    `neck_point`, `shoulder_point`, `armpit`, `front_fold` and `back_fold` (where the arm joins, half way down the
    armhole), `bust_point`, `elbow`, `wrist`, `waist` (at the side), `seat` (middle of the back, at the hip),
    `crown` and `floor` (heights only), and the joints `shoulder_joint`, `elbow_joint`, `hand_joint`."""
    levels: Mapping[str, float]
    """Heights above the floor: `armpit`, `upper_chest`, `bust`, `waist`, `hip`, and `end`, where the stand ends."""
    armholes: tuple[Array, Array]
    """Closed rings round left and right shoulder: over the end of the bone and under the arm."""
    readings: Mapping[str, Reading]
    """Every tape that has a place on the stand, by name."""

    @property
    def residual_mm(self) -> float:
        """The largest difference between a tape that was taken and the same tape on the stand.

        An angle counts as what it makes over a shoulder of 150 mm.
        """
        return max(
            (abs(r.off) * (150.0 if r.name == "shoulder_slope" else 1.0) for r in self.readings.values() if r.given),
            default=0.0,
        )

    @property
    def inverted(self) -> int:
        """Triangles that look inwards, against the surface at their corners: a sound form has none."""
        corner = self.vertices[self.triangles]
        across = np.cross(corner[:, 1] - corner[:, 0], corner[:, 2] - corner[:, 0])
        normals = np.zeros_like(self.vertices)
        for k in range(3):
            np.add.at(normals, self.triangles[:, k], across)
        normals /= np.maximum(np.linalg.norm(normals, axis=1, keepdims=True), 1e-12)
        return int((np.einsum("ij,ij->i", across, normals[self.triangles].mean(axis=1)) <= 0).sum())

    @property
    def volume_litres(self) -> float:
        """What the closed surface holds."""
        a, b, c = self.vertices[self.triangles].transpose(1, 0, 2)
        return float(np.einsum("ij,ij->", a, np.cross(b, c)) / 6e6)
