"""Strip packing as the benchmarks of research state it: outlines, how often, allowed turns, the width of the strip."""

from __future__ import annotations

import json
import math
import time
from collections.abc import Iterator, Mapping
from contextlib import ExitStack
from dataclasses import dataclass, replace
from typing import Any

from tapeline.geometry import Outline, Point, Rigid, Vector, bounds, common_ground, ground, placed, unsound
from tapeline.lay.engine import Found, Item, Run, Task, cores
from tapeline.problems import InputError, Problem, Severity

__all__ = ["Instance", "Packed", "pack", "read_instance"]

EXACT_FITS = 1.0001
"""Pieces of some instances fit exactly across the strip; the engine keeps outlines strictly apart. As the paper on the
engine does (arXiv 2509.13329), the strip is so much wider while density is told of the stated width."""
LOOK_S = 0.05


@dataclass(frozen=True, slots=True)
class Instance:
    """One problem, in its own unit."""

    name: str
    width: float
    items: tuple[Item, ...]

    @property
    def area(self) -> float:
        """Of all pieces."""
        return math.fsum(ground(item.outline) * item.demand for item in self.items)


@dataclass(frozen=True, slots=True)
class Packed:
    """A packing: item, turn in degrees, x and y of each piece."""

    instance: Instance
    placed: tuple[tuple[str, float, float, float], ...]
    seconds: float
    seed: int

    def outlines(self) -> list[Outline]:
        """Where every piece lies."""
        by_name = {item.name: item.outline for item in self.instance.items}
        return [
            placed(by_name[name], Rigid.turn(math.radians(turn)).then(Rigid.shift(Vector(x, y))))
            for name, turn, x, y in self.placed
        ]

    @property
    def length(self) -> float:
        """From the first place of a piece to the last, measured on the pieces."""
        boxes = [bounds(outline) for outline in self.outlines()]
        return max(box[2] for box in boxes) - min(box[0] for box in boxes)

    @property
    def density(self) -> float:
        """Area of the pieces over length times the stated width, 0 to 1."""
        return self.instance.area / (self.length * self.instance.width)

    def faults(self) -> list[str]:
        """What is wrong with it: missing pieces, turns that are not allowed, overlap, beyond the strip."""
        says = []
        outlines = self.outlines()
        for item in self.instance.items:
            turns = [turn for name, turn, _, _ in self.placed if name == item.name]
            if len(turns) != item.demand:
                says.append(f"{item.name} lies {len(turns)} times in place of {item.demand}")
            allowed = item.turns if item.turns is not None else turns
            if any(all(abs(math.remainder(turn - way, 360)) > 1e-4 for way in allowed) for turn in turns):
                says.append(f"{item.name} is turned as it may not be")
        slack = 1e-9 * self.instance.width**2
        says += [f"pieces {i} and {j} overlap by {area:g}" for i, j, area in common_ground(outlines) if area > slack]
        boxes = [bounds(outline) for outline in outlines]
        height = max(box[3] for box in boxes) - min(box[1] for box in boxes)
        if height > self.instance.width * EXACT_FITS * (1 + 1e-9):
            says.append(f"the pieces take {height:g} of the width {self.instance.width:g}")
        return says


def read_instance(text: str, where: str = "the instance") -> Instance:
    """An instance from JSON: `name`, `width`, `items` with `id`, `demand`, `rotations` (degrees) and `polygon`.

    >>> square = {"id": 0, "demand": 2, "rotations": [0], "polygon": [[0, 0], [5, 0], [5, 5], [0, 5]]}
    >>> read_instance(json.dumps({"name": "two", "width": 10, "items": [square]})).area
    50.0

    Raises:
        InputError: `lay-instance`, with what is wrong.
    """
    try:
        table = json.loads(text)
        items = tuple(_item(number, item) for number, item in enumerate(table["items"]))
        instance = Instance(str(table.get("name", "")), float(table["width"]), items)
        if not 0 < instance.width < 1e9:
            raise ValueError(f"the width is {table['width']}")  # noqa: TRY301 - all that is wrong ends below
        if not items:
            raise ValueError("it has no items")  # noqa: TRY301 - the same
    except (ValueError, TypeError, KeyError, AttributeError, RecursionError) as error:
        reason = f"{error.args[0]} is missing" if isinstance(error, KeyError) else str(error)
        says = f"{where} is no instance: {reason}"
        raise InputError(Problem("lay-instance", Severity.ERROR, says, where, "Nothing was laid")) from error
    wide = [item.name for item in items if _least(item) > instance.width * EXACT_FITS]
    if wide:
        says = f"{where}: item {wide[0]} is wider than the strip of {instance.width:g} in every turn it may have"
        raise InputError(Problem("lay-too-narrow", Severity.ERROR, says, where, "Nothing was laid"))
    return instance


def pack(instance: Instance, seconds: float, *, seed: int = 0, starts: int = 1) -> Iterator[Packed]:
    """Packings, each shorter than the one before, until the time is over; what overlaps is never given.

    Args:
        instance: The problem.
        seconds: How long.
        seed: Of the first start.
        starts: Engines side by side, each with another seed; they share the processors. One that has them all was the
            denser in a minute for instances of fifty and a hundred pieces (measured).

    Raises:
        InputError: `lay-no-plan` when the engine failed, with what it said.
    """
    began = time.monotonic()
    until = began + seconds
    count = max(1, starts)
    best: Packed | None = None
    failed = ""
    # Strictly apart, and across the strip within a ten-thousandth of its width.
    task = Task(instance.width * EXACT_FITS, instance.items, seconds, seed, max(1, cores() // count))
    with ExitStack() as ended:
        runs = [ended.enter_context(Run(replace(task, seed=seed + n))) for n in range(count)]
        over = False
        while not over:
            over = time.monotonic() >= until or all(run.ended for run in runs)
            for number, run in enumerate(runs):
                if over:
                    run.interrupt()
                found: Found | None = None
                for found in run.stopped() if over else run.ready():  # noqa: B007 - the last one counts
                    pass
                failed = failed or run.failed
                if found is None:
                    continue
                packed = Packed(instance, found.placed, round(time.monotonic() - began, 2), seed + number)
                if (best is None or packed.length < best.length) and not packed.faults():
                    best = packed
                    yield packed
            time.sleep(0 if over else LOOK_S)
    if best is None:
        says = f"no packing was found in {seconds:g} seconds{': ' + failed if failed else ''}"
        raise InputError(Problem("lay-no-plan", Severity.ERROR, says, instance.name, "give it longer"))


def _item(number: int, table: Mapping[str, Any]) -> Item:
    outline = tuple(Point(float(x), float(y)) for x, y in table["polygon"])
    name = str(table.get("id", number))
    if wrong := unsound(outline):
        raise ValueError(f"item {name}: {wrong}")
    demand = table["demand"]
    if isinstance(demand, bool) or not isinstance(demand, int) or not 1 <= demand <= 10000:
        raise ValueError(f"item {name} is wanted {demand} times")
    turns = tuple(float(turn) for turn in table["rotations"]) or (0.0,)
    if not all(math.isfinite(turn) for turn in turns):
        raise ValueError(f"item {name} has a turn that is no number")
    return Item(str(number), outline if ground(outline) > 0 else outline[::-1], demand, turns)


def _least(item: Item) -> float:
    boxes = [bounds(placed(item.outline, Rigid.turn(math.radians(turn)))) for turn in item.turns or (0.0,)]
    return min(box[3] - box[1] for box in boxes)
