"""The pose that is baked: legs closed, forearms in line with the upper arms."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from scripts.form.assets import Array, Assets

__all__ = ["Pose"]

LEGS_IN = np.radians(5.0)
"""The base mesh stands with its feet apart, which makes the hip wider than a tape taken with the feet together."""
FOREARM = np.radians(8.0)
"""By this angle the forearm is left bent to the front, as an arm hangs."""
JOINTS = ("shoulder", "elbow", "hand")
Whole = NDArray[np.int64]


class Pose:
    """Turns about fixed axes with fixed angles, so that a turned mixture of shapes is the mixture of turned shapes."""

    def __init__(self, assets: Assets) -> None:
        rest = assets.vertices
        self.skin, self.mirror = assets.groups["body"], assets.mirror
        shoulder, elbow, hand = (rest[assets.groups[f"joint-l-{name}"]].mean(axis=0) for name in JOINTS)
        down = (elbow - shoulder) / np.linalg.norm(elbow - shoulder)
        ahead = np.array([0.0, 0.0, 1.0]) - down[2] * down
        wanted = np.cos(FOREARM) * down + np.sin(FOREARM) * ahead / np.linalg.norm(ahead)
        now = (hand - elbow) / np.linalg.norm(hand - elbow)
        flip = np.diag([-1.0, 1.0, 1.0])
        self.turns: list[tuple[Array, Whole, Array]] = []
        for name, joint, turn in (
            ("lower_arm", "elbow", _from_to(now, wanted)),
            ("leg", "upper-leg", _about_z(-LEGS_IN)),
        ):
            weight = assets.part[name].copy()
            other = np.where(assets.mirror != np.arange(len(rest)), weight[assets.mirror], 0)
            if name == "lower_arm":
                weight[assets.groups["joint-l-hand"]] = 1
            self.turns.append((weight, assets.groups[f"joint-l-{joint}"], turn))
            self.turns.append((other, assets.groups[f"joint-r-{joint}"], flip @ turn @ flip))

    def __call__(self, change: Array) -> Array:
        """The base mesh, or a change of it, in the pose: both sides turned at once, so that they stay mirrors."""
        out = change.copy()
        for weight, joint, turn in self.turns:
            about = change - change[joint].mean(axis=0)
            out += weight[:, None] * (about @ (turn - np.eye(3)).T)
        out[self.skin] = (out[self.skin] + out[self.mirror[self.skin]] * [-1, 1, 1]) / 2
        return out


def _from_to(a: Array, b: Array) -> Array:
    axis = np.cross(a, b)
    cross = np.array([[0, -axis[2], axis[1]], [axis[2], 0, -axis[0]], [-axis[1], axis[0], 0]])
    return np.asarray(np.eye(3) + cross + cross @ cross / (1 + a @ b))


def _about_z(angle: float) -> Array:
    c, s = np.cos(angle), np.sin(angle)
    return np.array([[c, -s, 0], [s, c, 0], [0, 0, 1]])
