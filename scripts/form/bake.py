"""From shape files to the stand's own file: what may vary, in as few numbers as show it."""

from __future__ import annotations

from pathlib import Path

import numpy as np
from scipy import sparse

from scripts.form.assets import PHENOTYPE, WORDS, Array, Assets, read
from scripts.form.landmarks import landmarks
from scripts.form.pose import Pose
from scripts.form.stand import Stand

__all__ = ["bake"]

MODEL = {"gender": 0.85, "age": 0.7, "cupsize": 0.5}
"""The body on which cuts and rings are laid out; what is missing is 0.5."""
FULL = {"gender": 1.0, "age": 0.67, "cupsize": 1.0, "firmness": 0.7}
"""One on which the bust point shows."""
NECK_ABOVE, NECK_LONGER = 44.0, 62.0
"""The neck ends so far above its joint, in mm; it is cut longer first, so that smoothing does not reach its edge."""
WRIST_BEYOND, WRIST_LONGER = 12.0, 35.0
"""The arm ends so far beyond the joint of the hand; the same."""
BELOW_ARMPIT = 9.0
"""The rings of the trunk begin so far below the armpit."""
RING = 16.0
"""Millimetres from ring to ring."""
ABOVE_KNEE = 25.0
"""The stand ends so far above the knees."""
PASSES = 12
"""So often the surface is smoothed: what is anatomy goes, what is shape stays."""
RANK = 40
"""Mixtures of the shape files that are kept."""
SEEN = 3000
"""Random bodies from which the mixtures are found."""
LOCAL = (
    "measure-bust-circ",
    "measure-underbust-circ",
    "measure-waist-circ",
    "measure-hips-circ",
    "measure-neck-circ",
    "measure-upperarm-circ",
    "measure-wrist-circ",
    "measure-shoulder-dist",
    "measure-napetowaist-dist",
    "measure-waisttohip-dist",
    "measure-frontchest-dist",
    "measure-upperarm-length",
    "measure-lowerarm-length",
    "measure-neck-height",
    "measure-upperleg-height",
    "measure-lowerleg-height",
    "torso-scale-horiz",
    "torso-scale-depth",
    "torso-scale-vert",
    "torso-vshape",
    "torso-muscle-dorsi",
    "torso-muscle-pectoral",
    "hip-scale-horiz",
    "hip-scale-depth",
    "stomach-tone",
    "stomach-pregnant",
    "buttocks-volume",
    "breast-dist",
    "breast-trans",
    "breast-volume-vert",
    "*-upperarm-fat",
    "*-lowerarm-fat",
    "*-upperarm-muscle",
    "*-upperarm-shoulder-muscle",
    "*-upperleg-fat",
    "hip-waist",
    "pelvis-tone",
    "neck-scale-depth",
    "neck-scale-horiz",
)
"""Local changes that the form may use; `*` stands for both sides."""
JOINTS = ("shoulder", "elbow", "hand", "crown", "floor")


def bake(folder: Path, out: Path) -> str:
    """Read the shape files in `folder`, write `out`; the answer says what was lost and how large the file is."""
    assets = read(folder)
    corners = assets.corners()
    masks = np.array([mask for mask, _ in corners])
    pose = Pose(assets)
    shapes = np.array([pose(change.astype(float)) for _, change in corners], np.float32)
    base = pose(assets.vertices)
    model, full = (base + np.tensordot(weights(masks, [body])[0], shapes, 1) for body in (MODEL, FULL))
    matrix, triangles, rings = _stand(assets, model).finish()
    keep = _Keep(assets, matrix, model)
    marks = landmarks(
        keep(model)[: len(keep.middle)], triangles, rings, _joints(assets, model), model[_apex(assets, full)]
    )
    small = np.array([keep(shape).ravel() for shape in shapes])
    mixed = weights(masks, _bodies())
    mean, mixed = mixed.mean(axis=0), mixed - mixed.mean(axis=0)
    project, basis = _mixtures(mixed, small)
    some = mixed[:: max(len(mixed) // 100, 1)]
    lost = np.linalg.norm((some @ small - some @ project @ basis).reshape(len(some), -1, 3), axis=2)
    local = []
    for name in LOCAL:
        both = assets.local(name)
        if both is None:
            raise ValueError(f"there is no shape file for {name}")
        local += [keep(pose(change)).ravel() for change in both]
    basis_steps, basis_scale = _rounded(basis)
    local_steps, local_scale = _rounded(np.array(local))
    arm = np.asarray(matrix @ (assets.part["upper_arm"] + assets.part["lower_arm"]))
    np.savez_compressed(
        out,
        mean=(keep(base).ravel() + mean @ small).astype(np.float32),
        basis=basis_steps,
        basis_scale=basis_scale,
        local=local_steps,
        local_scale=local_scale,
        local_names=np.array([name.replace("*-", "").replace("-", " ") for name in LOCAL]),
        masks=masks,
        mixed_mean=mean.astype(np.float32),
        project=project.astype(np.float32),
        triangles=triangles.astype(np.int16),
        arm=np.round(255 * np.clip(arm, 0, 1)).astype(np.uint8),
        joints=np.array(JOINTS),
        marks=np.array(list(marks)),
        mark_vertices=np.array([vertices for vertices, _ in marks.values()], np.int16),
        mark_shares=np.array([shares for _, shares in marks.values()], np.float32),
        rings=np.array(rings, np.int16),
    )
    return (
        f"{len(keep.middle)} vertices of a half, {len(triangles)} triangles; {RANK} mixtures of {len(shapes)} shapes "
        f"leave {float(np.sqrt((lost**2).mean())):.2f} mm rms, {float(lost.max()):.1f} mm at most; {len(LOCAL)} local "
        f"changes; {out.stat().st_size / 1e6:.2f} MB"
    )


class _Keep:
    """Of a change of the base mesh, what the half of the stand keeps: its vertices, then the joints."""

    def __init__(self, assets: Assets, matrix: sparse.csr_matrix, model: Array) -> None:
        skin, heights = assets.groups["body"], assets.vertices[assets.groups["body"], 1]
        self.matrix = matrix
        # Nothing but the middle itself is so near the middle.
        self.middle = np.abs((matrix @ model)[:, 0]) < 1.0
        self.joints = [assets.groups[f"joint-l-{name}"] for name in JOINTS[:3]]
        self.joints += [skin[[np.argmax(heights)]], skin[[np.argmin(heights)]]]

    def __call__(self, change: Array) -> Array:
        made = np.vstack([self.matrix @ change, *(change[joint].mean(axis=0)[None] for joint in self.joints)])
        made[: len(self.middle)][self.middle, 0] = 0
        made[-2:, 0] = 0  # crown and floor are heights
        return np.asarray(made)


def _joints(assets: Assets, model: Array) -> dict[str, Array]:
    keys = {name: f"joint-l-{name}" for name in ("shoulder", "elbow", "hand", "clavicle")} | {"neck": "joint-neck"}
    return {name: model[assets.groups[key]].mean(axis=0) for name, key in keys.items()}


def _apex(assets: Assets, full: Array) -> int:
    """The vertex that stands out most on a full bust."""
    elsewhere = sum((assets.part[name] for name in ("upper_arm", "lower_arm", "leg", "head")), np.zeros(len(full)))
    low = full[assets.groups["joint-spine-2"], 1].mean()
    skin = assets.groups["body"]
    chest = skin[(elsewhere[skin] < 0.1) & (full[skin, 0] > 30) & (full[skin, 1] > low)]
    return int(chest[np.argmax(full[chest, 2])])


def _bodies() -> list[dict[str, float]]:
    """Random grown-ups, half of them at the corners."""
    bodies = np.random.default_rng(0).random((SEEN, len(PHENOTYPE)))
    bodies[: SEEN // 2] = np.round(bodies[: SEEN // 2] * 2) / 2
    bodies[:, 1] = (2 + bodies[:, 1]) / 3  # from young to old
    return [dict(zip(PHENOTYPE, map(float, row), strict=True)) for row in bodies]


def _mixtures(mixed: Array, small: Array) -> tuple[Array, Array]:
    """Principal components of the bodies, by way of the shapes' own products: bodies are never laid side by side."""
    values, vectors = np.linalg.eigh(small @ small.T)
    sound = values > values.max() * 1e-12
    root = vectors[:, sound] * np.sqrt(values[sound])
    _, _, turned = np.linalg.svd(mixed @ root, full_matrices=False)
    return root @ turned[:RANK].T, (turned[:RANK] @ (vectors[:, sound] / np.sqrt(values[sound])).T) @ small


def weights(masks: Array, bodies: list[dict[str, float]]) -> Array:
    """How much of each shape a body has: the product of its nearness to each word in the shape's name."""
    rows = []
    for body in bodies:
        columns = [np.full(len(WORDS["race"]), 1 / len(WORDS["race"]))]
        for name in PHENOTYPE:
            at = body.get(name, 0.5) * (len(WORDS[name]) - 1)
            columns.append(np.maximum(1 - np.abs(np.arange(len(WORDS[name])) - at), 0))
        rows.append(np.where(masks, np.concatenate(columns), 1.0).prod(axis=1))
    return np.array(rows)


def _stand(assets: Assets, model: Array) -> Stand:
    def joint(name: str) -> Array:
        return np.asarray(model[assets.groups[f"joint-{name}"]].mean(axis=0))

    stand = Stand(assets, model)
    up = (joint("head") - joint("neck")) / np.linalg.norm(joint("head") - joint("neck"))
    along = (joint("l-hand") - joint("l-elbow")) / np.linalg.norm(joint("l-hand") - joint("l-elbow"))
    shoulder = joint("l-shoulder")

    def above_neck(more: float) -> Array:
        return np.where(stand.arm < 0.3, (stand.places - joint("neck") - more * up) @ up, -100)

    def beyond_wrist(more: float) -> Array:
        return np.where(stand.arm > 0.5, (stand.places - joint("l-hand") - more * along) @ along, -100)

    stand.cut(above_neck(NECK_LONGER))
    stand.cut(beyond_wrist(WRIST_LONGER))
    places = stand.places
    armpit = _armpit(assets, model, shoulder)
    level = armpit[1] - BELOW_ARMPIT
    near = (places[:, 0] < armpit[0] + 4) & (places[:, 1] > level - 30)
    edge = stand.cut(np.where((stand.arm < 0.3) | near, level - places[:, 1], -100))
    ring = stand.wrap(edge, np.arange(level - RING, joint("l-knee")[1] + ABOVE_KNEE, -RING).tolist())
    stand.smooth(PASSES)
    stand.cap(stand.cut(above_neck(NECK_ABOVE)), closed=False)
    stand.cap(stand.cut(beyond_wrist(WRIST_BEYOND)), closed=True)
    stand.cap(ring, closed=False)
    return stand


def _armpit(assets: Assets, model: Array, shoulder: Array) -> Array:
    """The highest place between trunk and arm: of faces below the shoulder that look down, the highest inside."""
    corner = model[assets.faces]
    out = np.cross(corner[:, 2] - corner[:, 0], corner[:, 3] - corner[:, 1])
    out = out / np.linalg.norm(out, axis=1, keepdims=True)
    middle = corner.mean(axis=1)
    near = (np.abs(middle[:, 0] - shoulder[0]) < 40) & (np.abs(middle[:, 2] - shoulder[2]) < 25)
    down = near & (out[:, 1] < -0.9) & (middle[:, 1] < shoulder[1] - 40)
    return np.asarray(middle[down][np.argmax(middle[down][:, 1])])


def _rounded(rows: Array) -> tuple[Array, Array]:
    scale = np.abs(rows).max(axis=1) / 32767 + 1e-20
    return np.round(rows / scale[:, None]).astype(np.int16), scale.astype(np.float32)
