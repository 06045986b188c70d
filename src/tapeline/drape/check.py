"""The solver beside the textbooks: cloths of a known answer, each solved as a garment is, in a table."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np

from tapeline.drape.cloth import HANDS
from tapeline.drape.compiled import Array
from tapeline.drape.contact import HALF_THICKNESS_MM
from tapeline.drape.exact import hanging_strip, strip_over_edge, tube
from tapeline.drape.fabric import GRAVITY_MM, UP
from tapeline.drape.pull import Pull
from tapeline.drape.strain import Strain
from tapeline.drape.trial import hung, over_edge, round_form

__all__ = ["Row", "check"]

JERSEY = HANDS["single jersey"]
# Held along its whole upper edge a strip cannot narrow there, which the textbook's can: this one does not narrow.
PLAIN = replace(JERSEY, narrows=0.0)
KNIT = replace(PLAIN, along=Pull(60.0, 2e6))
BENT = replace(JERSEY, bend_across=12.0, bend_along=12.0)
TUBE = (140.0, 1.1, 250.0)
"""Radius as cut, how much wider the cylinder is, and length in mm."""
OVAL = (172.0, 140.0, 0.0003)
TURN = math.radians(37)


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table."""

    what: str
    edge: float
    """How long the triangles' sides are, mm."""
    unit: str
    exact: float
    found: float
    allowed: float
    """How far they may be from each other, in the row's unit."""
    source: str

    @property
    def off(self) -> float:
        """How far they are from each other."""
        return self.found - self.exact

    @property
    def holds(self) -> bool:
        """Whether that is allowed."""
        return abs(self.off) <= self.allowed


def check(*, quick: bool = False) -> Iterator[Row]:
    """Every line of the table; `quick` leaves out the finer meshes."""
    yield from _hanging(quick=quick)
    yield from _bending(quick=quick)
    for edge in (12.0,) if quick else (12.0, 9.0):
        yield from _tube(edge)
    yield from _symmetry()


def _hanging(*, quick: bool) -> Iterator[Row]:
    for hand, what in ((PLAIN, "hanging strip"), (KNIT, "hanging strip that stiffens")):
        for edge in (12.0,) if quick else (12.0, 9.0):
            exact = hanging_strip(hand, 500.0)
            found = hung(hand, 100.0, 500.0, edge)
            yield Row(what, edge, "mm longer", exact, found, exact / 100, "weight below, height by height")


def _bending(*, quick: bool) -> Iterator[Row]:
    # What a coarse mesh misses is said, not hidden: a curve needs eight sides along the part that bends.
    for edge, allowed in ((12.0, 15.0), (6.0, 2.5)) if quick else ((12.0, 15.0), (6.0, 2.5), (3.0, 0.75)):
        for ratio, source in ((2.0, "41.5 degrees: Peirce 1930"), (3.0, "heavy elastica: Bickley 1934")):
            exact = 41.5 if ratio == 2.0 else strip_over_edge(ratio)
            found = over_edge(BENT, 30.0, ratio * BENT.bend_along, edge)
            yield Row(f"strip over an edge, {ratio:g} bending lengths", edge, "degrees", exact, found, allowed, source)


def _tube(edge: float) -> Iterator[Row]:
    cut, wider, length = TUBE
    radius = cut * wider
    exact = tube(JERSEY, cut, radius + HALF_THICKNESS_MM)
    balance, found = round_form(JERSEY, cut, (radius, radius, 0.0), length, edge)
    fabric = balance.fabric
    middle = np.abs(fabric.flat[fabric.corners].mean(axis=1)[:, 1] - length / 2) < length / 4
    nodes = np.abs(balance.x[:, UP] - length / 2) < length / 4

    def mean(values: Array) -> float:
        return float((values * fabric.area)[middle].sum() / fabric.area[middle].sum())

    force = balance.pressed * np.maximum(balance.thick - balance.near, 0)
    pressure = float(force[nodes].sum() / fabric.share[nodes].sum())
    for what, unit, times, right, here, source in (
        ("tube on a larger cylinder, round", "per cent", 100.0, exact.hoop, mean(found.across), "radius over radius"),
        (
            "tube on a larger cylinder, along",
            "per cent",
            100.0,
            exact.shortens,
            mean(found.along),
            "narrowing, E1 = -n E0",
        ),
        (
            "tube on a larger cylinder, pressure",
            "Pa",
            1000.0,
            exact.pressure,
            pressure,
            "tension over radius (Laplace)",
        ),
    ):
        yield Row(what, edge, unit, right * times, here * times, abs(right * times) / 100, source)


def _symmetry() -> Iterator[Row]:
    cut, _, length = TUBE

    def on_oval(*, turned: float = 0.0, mirrored: bool = False) -> Strain:
        where = {"turned": turned, "gravity": GRAVITY_MM}
        return round_form(JERSEY, cut, OVAL, length, 12.0, mirrored=mirrored, **where)[1]

    plain = on_oval()
    for what, other in (("mirrored", on_oval(mirrored=True)), ("turned by 37 degrees", on_oval(turned=TURN))):
        pairs = ((plain.across, other.across), (plain.along, other.along))
        worst = max(float(np.abs(one - two).max()) for one, two in pairs)
        allowed = 0.001 if what == "mirrored" else 0.1
        name = f"heavy tube on an oval form, {what}"
        yield Row(name, 12.0, "points of strain", 0.0, worst * 100, allowed, "alike but for place")
