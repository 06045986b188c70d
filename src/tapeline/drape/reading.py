"""What a draped garment says, in numbers: pull and air by zone, how the hem falls, where the seams run, the neck."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from tapeline.drape.compiled import Flags, Whole
from tapeline.drape.drape import Draped
from tapeline.drape.fabric import UP

__all__ = ["Falls", "Runs", "Zone", "hem_falls", "neck_gap", "seams_run", "zones"]

REACH = 0.6
"""A level is read from the nodes so far above and below it, in sides of a triangle: no narrower level is mixed in."""
CENTRE_MM = 30.0
BODY = ("front", "back")
LEVELS = {"chest": "bust", "waist": "waist", "hip": "hip"}
"""Zones of the body, and the form's name for their level."""
TOUCHES_MM = 1.0
FRONT = 2


@dataclass(frozen=True, slots=True)
class Zone:
    """One part of the garment; stretch as a share, lengths in mm, pressure in kPa."""

    name: str
    nodes: int
    round: float
    """Mean stretch across the cloth."""
    along: float
    strongest: float
    """The most stretch in any direction that one node in twenty reaches."""
    air: float
    """Mean distance to the form."""
    touching: float
    """Share of the cloth that lies on the form."""
    pressure: float
    """Mean where it touches."""


@dataclass(frozen=True, slots=True)
class Falls:
    """Height of the hem above the floor, mm."""

    front: float
    side: float
    back: float
    lowest: float
    highest: float


@dataclass(frozen=True, slots=True)
class Runs:
    """Where a seam runs."""

    seam: str
    forward: float
    """How much further to the front its lower end is than its upper one, mm.

    Of a shoulder seam: how far in front of the line from neck point to shoulder point it lies, on the mean."""


def zones(draped: Draped) -> Iterator[Zone]:
    """Body levels, then each piece that is not of the body."""
    body = _body(draped)
    for name, level in LEVELS.items():
        near = body[np.abs(draped.x[body, UP] - draped.form.levels[level]) < REACH * draped.side_mm]
        if len(near):
            yield _zone(draped, name, near)
    others: dict[str, list[str]] = {}
    for panel in draped.sewn.panels:
        if panel.layers > 1 or not panel.name.startswith(BODY) or "sleeve" in panel.name:
            others.setdefault(panel.piece.name, []).append(panel.name)
    for piece, names in others.items():
        yield _zone(draped, piece, np.unique(np.concatenate([draped.nodes_of(name) for name in names])))


def hem_falls(draped: Draped) -> Falls | None:
    """How high the lowest edge of the body hangs; None where no body piece has a hem."""
    hem = [
        draped.fabric.node[draped.sewn.of(panel.name)[ids]]
        for panel in draped.sewn.panels
        if panel.name.startswith(BODY) or panel.piece.name == "hem_band"
        for (edge, _), ids in panel.edges.items()
        if edge in ("hem", "crease") and (panel.layers > 1) == (edge == "crease")
    ]
    if not hem:
        return None
    x = draped.x[np.unique(np.concatenate(hem))]
    lowest, middle = x[:, UP].min(), np.abs(x[:, 0]) < CENTRE_MM
    sides = np.abs(x[:, 0]) > 0.9 * np.abs(x[:, 0]).max()

    def height(which: Flags) -> float:
        return float(x[which, UP].mean()) if which.any() else float("nan")

    centre = x[:, FRONT].mean()
    return Falls(
        height(middle & (x[:, FRONT] > centre)),
        height(sides),
        height(middle & (x[:, FRONT] < centre)),
        float(lowest),
        float(x[:, UP].max()),
    )


def seams_run(draped: Draped) -> Iterator[Runs]:
    """Side seams and shoulder seams."""
    for name, pairs in draped.sewn.seams.items():
        x = draped.x[np.unique(draped.fabric.node[pairs])]
        if name.startswith("side"):
            swings = []
            for way in (1, -1):
                one = x[x[:, 0] * way > 0]
                if len(one) > 2:
                    swings.append(one[one[:, UP].argmin(), FRONT] - one[one[:, UP].argmax(), FRONT])
            if swings:
                yield Runs(name, float(np.mean(swings)))
        elif name.startswith("shoulder"):
            start, end = draped.form.points["neck_point"], draped.form.points["shoulder_point"]
            share = np.clip((np.abs(x[:, 0]) - start[0]) / (end[0] - start[0]), 0, 1)
            yield Runs(name, float((x[:, FRONT] - (start[FRONT] + share * (end[FRONT] - start[FRONT]))).mean()))


def neck_gap(draped: Draped) -> tuple[float, float] | None:
    """Mean and largest distance of the neckline to the form, mm."""
    ids = [
        draped.fabric.node[draped.sewn.of(panel.name)[nodes]]
        for panel in draped.sewn.panels
        for (edge, _), nodes in panel.edges.items()
        if edge.startswith("neckline") and panel.layers == 1
    ]
    if not ids:
        return None
    near = draped.near[np.unique(np.concatenate(ids))]
    return float(near.mean()), float(near.max())


def _body(draped: Draped) -> Whole:
    found = [
        draped.nodes_of(panel.name)
        for panel in draped.sewn.panels
        if panel.layers == 1 and panel.name.startswith(BODY) and "sleeve" not in panel.name
    ]
    return np.unique(np.concatenate(found)) if found else np.zeros(0, np.int64)


def _zone(draped: Draped, name: str, nodes: Whole) -> Zone:
    share = draped.fabric.share[nodes] / draped.fabric.share[nodes].sum()
    strain, touching = draped.strain, draped.near[nodes] < TOUCHES_MM
    pressed = float((share * draped.pressure[nodes])[touching].sum() / max(float(share[touching].sum()), 1e-12))
    return Zone(
        name,
        len(nodes),
        float((share * strain.across[nodes]).sum()),
        float((share * strain.along[nodes]).sum()),
        float(np.quantile(strain.most[nodes], 0.95)),
        float((share * np.minimum(draped.near[nodes], 1e3)).sum()),
        float(share[touching].sum()),
        pressed,
    )
