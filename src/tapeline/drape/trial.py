"""Cloth of a known answer, solved as a garment is: rectangles that hang, bend, and go round cylinders."""

from __future__ import annotations

import numpy as np

from tapeline.drape.balance import Balance
from tapeline.drape.band import Distance, distance_by
from tapeline.drape.cloth import Hand
from tapeline.drape.compiled import Array, Whole
from tapeline.drape.fabric import UP, fabric
from tapeline.drape.strain import Strain, strain
from tapeline.geometry.triangulate import triangulate

__all__ = ["hung", "over_edge", "rectangle", "round_form", "settled"]

GRID_MM = 4.0


def rectangle(width: float, length: float, edge: float) -> tuple[Array, Whole]:
    """A mesh of a rectangle, its lower left corner at nothing."""
    across, up = max(1, round(width / edge)), max(1, round(length / edge))
    x, y = np.linspace(0, width, across + 1), np.linspace(0, length, up + 1)
    outline = np.vstack(
        [
            np.column_stack([x[:-1], 0 * x[:-1]]),
            np.column_stack([0 * y[:-1] + width, y[:-1]]),
            np.column_stack([x[:0:-1], 0 * x[1:] + length]),
            np.column_stack([0 * y[1:], y[:0:-1]]),
        ]
    )
    nodes, triangles = triangulate(outline, edge)
    return nodes, triangles


def settled(balance: Balance, first: float = 1e3, rounds: int = 60, near_mm: float = 1e-7) -> Balance:
    """Let go of inertia, a factor of 10 each time nothing moves any more, until there is none."""
    inertia = first
    for _ in range(6):
        for _ in range(rounds):
            if balance.step(inertia, newton=3, accuracy=1e-4, most=2000) < max(near_mm, 1e-5 * inertia):
                break
        if not inertia:
            break
        inertia = inertia / 10 if inertia > 1 else 0.0
    return balance


def hung(hand: Hand, width: float, length: float, edge: float) -> float:
    """How much longer a strip gets that hangs from its upper edge, mm."""
    flat, triangles = rectangle(width, length, edge)
    x = np.column_stack([flat, 0 * flat[:, 0]])
    balance = settled(Balance(fabric(flat, triangles, hand), x, free=flat[:, 1] < length - 1e-6), first=10.0)
    return float(-balance.x[flat[:, 1] < 1e-6, UP].mean())


def over_edge(hand: Hand, width: float, length: float, edge: float) -> float:
    """The slope from the edge to the tip, in degrees, of a strip along the cloth.

    Both of its ends hang, so that the middle lies level.
    """
    half, triangles = rectangle(width, length, edge)
    ridge = half[:, 1] < 1e-6
    other = np.where(ridge, np.arange(len(half)), np.cumsum(~ridge) - 1 + len(half))
    flat = np.vstack([half, half[~ridge] * [1, -1]])
    both = np.vstack([triangles, other[triangles][:, [0, 2, 1]]])
    x = np.column_stack([flat[:, 1], 0 * flat[:, 0], flat[:, 0]])
    balance = settled(Balance(fabric(flat, both, hand), x, free=np.abs(flat[:, 1]) > 1e-6))
    ends = np.abs(flat[:, 1]) > length - 1e-6
    return float(np.degrees(np.arctan2(-balance.x[ends, UP].mean(), np.abs(balance.x[ends, 0]).mean())))


def round_form(
    hand: Hand,
    cut_radius: float,
    radii: tuple[float, float, float],
    length: float,
    edge: float,
    *,
    turned: float = 0.0,
    mirrored: bool = False,
    gravity: float = 0.0,
) -> tuple[Balance, Strain]:
    """A tube, cut to a radius and welded, round an upright form of elliptical section.

    `radii` are those of the section at half the tube's height, and how much larger it gets on each mm further down.
    """
    girth = 2 * np.pi * cut_radius
    flat, triangles = rectangle(girth, length, edge)
    wide, deep, flare = radii

    def rule(places: Array) -> Array:
        x = places[..., 0] * np.cos(turned) + places[..., 2] * np.sin(turned)
        z = -places[..., 0] * np.sin(turned) + places[..., 2] * np.cos(turned)
        grown = 1 + flare * (length / 2 - places[..., UP])
        size = np.hypot(x / wide, z / deep)
        slope = np.hypot(x / wide**2, z / deep**2) / np.maximum(size, 1e-9)
        out: Array = (size - grown) / np.maximum(slope, 1e-9)
        return out

    # A grid that is itself symmetrical.
    reach = GRID_MM * np.ceil((max(wide, deep) * (1 + abs(flare) * length) + 30) / GRID_MM)
    form: Distance = distance_by(rule, np.array([-reach, -30, -reach]), np.array([reach, length + 30, reach]), GRID_MM)
    left = np.flatnonzero(flat[:, 0] < 1e-6)
    right = np.flatnonzero(flat[:, 0] > girth - 1e-6)
    left, right = left[np.argsort(flat[left, 1])], right[np.argsort(flat[right, 1])]
    node = np.arange(len(flat))
    node[right] = left
    node = np.unique(node, return_inverse=True)[1].ravel()
    cloth = fabric(flat, triangles, hand, node)
    angle = flat[:, 0] / cut_radius * (-1 if mirrored else 1) + turned
    size = 1.03 * (1 + abs(flare) * length / 2) * (max(wide, deep))
    at_corners = np.column_stack([size * np.cos(angle), flat[:, 1], size * np.sin(angle)])
    x = np.zeros((cloth.count, 3))
    x[cloth.node] = at_corners
    balance = settled(Balance(cloth, x, form, friction=0.0, gravity=gravity), first=100.0)
    return balance, strain(cloth, balance.x)
