"""The search for a short lay: a first plan at once, then starts of the engine, whole and in parts."""

from __future__ import annotations

import time
from collections.abc import Iterator, Sequence
from contextlib import ExitStack
from dataclasses import dataclass, replace
from itertools import groupby

from tapeline.lay.block import Bound, bound
from tapeline.lay.cloth import LayCloth
from tapeline.lay.drop import dropped, settled
from tapeline.lay.engine import Found, Run, cores
from tapeline.lay.layout import Layout
from tapeline.lay.parts import in_a_row, part, parts, row_of, shares
from tapeline.lay.piece import LayPiece
from tapeline.lay.plan import LayPlan
from tapeline.lay.proof import faults
from tapeline.lay.schedule import Start, schedule
from tapeline.lay.wanted import cannot_be_laid
from tapeline.problems import InputError, Problem, Severity

__all__ = ["lay"]

LOOK_S = 0.05
"""So often the engines are asked what they found."""
TAKE_S = 0.3
"""So often at most a plan of one engine is worked out while it goes on improving."""
SHORTER_MM = 0.01
"""What saves less is no better plan."""


def lay(
    pieces: Sequence[LayPiece],
    cloth: LayCloth,
    seconds: float = 20.0,
    *,
    start: LayPlan | None = None,
    seed: int = 0,
    workers: int | None = None,
) -> Iterator[LayPlan]:
    """Plans, each proved and shorter than the one before; the first within a second or two, the last when time is over.

    Stop reading whenever the plan is short enough: the engines are ended with the generator.

    Args:
        pieces: All that is cut from the cloth.
        cloth: How it lies.
        seconds: How long to look.
        start: A plan to go on from: only shorter ones come after it.
        seed: Another one looks in other places.
        workers: Engines at the same time; as many as there are processors unless given.

    Raises:
        InputError: Everything for which there can be no plan (`lay-cloth`, `lay-empty`, `lay-zero`, `lay-outline`,
            `lay-too-narrow`, `lay-block`), `lay-time` for no time, `lay-invalid` for a plan to go on from that does not
            hold, `lay-no-plan` when none was found.
    """
    problems = list(cannot_be_laid(pieces, cloth))
    if not 0 < seconds <= LONGEST_S:
        says = f"{seconds:g} seconds are given; a lay takes more than 0 and at most {LONGEST_S} seconds"
        problems.append(Problem("lay-time", Severity.ERROR, says, "seconds", "Nothing was laid"))
    if start is not None and not problems:
        problems += faults(start)
    if problems:
        raise InputError(problems)
    return _Search(bound(pieces, cloth), cloth, seconds, seed, workers or cores()).plans(start)


LONGEST_S = 24 * 3600
"""A day."""


@dataclass
class _Engine:
    """One engine at work, and when its last plan was worked out."""

    start: Start
    layout: Layout
    run: Run
    until: float
    waiting: Found | None = None
    taken: float = 0.0


class _Search:
    def __init__(self, given: Bound, cloth: LayCloth, seconds: float, seed: int, workers: int) -> None:
        self.given, self.cloth, self.seed, self.workers = given, cloth, seed, workers
        self.began = time.monotonic()
        self.until = self.began + seconds
        self.whole = shares(given.pieces)
        self.plain = replace(cloth, flaws=())
        self.best: LayPlan | None = None
        self.of_part: dict[int, LayPlan] = {}
        self.failures: list[str] = []

    def plans(self, start: LayPlan | None) -> Iterator[LayPlan]:
        """Each better than the one before."""
        if start is not None:
            self.best = start
            yield start
        yield from self._first()
        with ExitStack() as ended:
            yield from self._engines(ended)
        yield from self._last()
        if self.best is None:
            why = f": {self.failures[0]}" if self.failures else ""
            says = f"no plan was found in {self.until - self.began:g} seconds{why}"
            raise InputError(Problem("lay-no-plan", Severity.ERROR, says, f"cloth {self.cloth.name}", "give it longer"))

    def _first(self) -> Iterator[LayPlan]:
        """Pushed together, at once: of one share of the garments, and as many in a row as are needed."""
        for size in sorted({1, min(2, self.whole)}):
            plan = dropped(part(self.given.pieces, size), self.plain)
            if plan is not None:
                yield from self._offer(size, replace(plan, found="pushed together"))

    def _engines(self, ended: ExitStack) -> Iterator[LayPlan]:
        sizes = parts(self.given.pieces)
        starts = schedule(
            sizes,
            self.until - time.monotonic(),
            self.workers,
            self._used,
            many_orders=bool(self._halves()),
            seed=self.seed,
        )
        working: list[_Engine] = []
        while (now := time.monotonic()) < self.until:
            while len(working) < self.workers and self.until - now > 1.0 and (begun := next(starts, None)):
                working += self._begun(begun, ended)
            if not working:
                break
            for engine in list(working):
                yield from self._looked_at(engine, over=now >= min(engine.until, self.until))
                if engine.run.ended:
                    working.remove(engine)
            time.sleep(LOOK_S)
        for engine in working:
            engine.run.interrupt()
        for engine in working:
            yield from self._looked_at(engine, over=True)

    def _looked_at(self, engine: _Engine, *, over: bool) -> Iterator[LayPlan]:
        """What an engine has found; when its time is over it is stopped, and gives its last."""
        if over:
            engine.run.interrupt()
        for found in engine.run.stopped() if over else engine.run.ready():
            engine.waiting = found
        over = over or engine.run.ended
        if over or time.monotonic() - engine.taken > TAKE_S:
            yield from self._taken(engine, last=over)
        if over:
            if engine.run.failed:
                self.failures.append(engine.run.failed)
            engine.run.end()

    def _begun(self, start: Start, ended: ExitStack) -> list[_Engine]:
        layout = Layout(part(self.given.pieces, start.size), self.plain, start.seed)
        if not layout.fits:
            self.failures.append("a piece with its stripes does not fit across the cloth")
            return []
        run = ended.enter_context(Run(layout.task(start.seconds)))
        return [_Engine(start, layout, run, time.monotonic() + start.seconds)]

    def _taken(self, engine: _Engine, *, last: bool) -> Iterator[LayPlan]:
        found, engine.waiting = engine.waiting, None
        if found is None:
            return
        engine.taken = time.monotonic()
        size = engine.start.size
        plan = engine.layout.plan(found)
        if last or self.plain.repeat_along_mm or self.plain.repeat_across_mm:
            plan = settled(plan)
        known = self.of_part.get(size)
        if (known is None or plan.length_mm < known.length_mm - SHORTER_MM) and not faults(plan):
            yield from self._offer(size, replace(plan, found=f"start {engine.start.seed}"))

    def _offer(self, size: int, plan: LayPlan) -> Iterator[LayPlan]:
        """A part became shorter: so may the whole."""
        known = self.of_part.get(size)
        if known is not None and plan.length_mm >= known.length_mm:
            return
        self.of_part[size] = plan
        if size not in self._used():
            return
        row = self._used()
        if row == (self.whole,):
            yield from self._better(plan, plan.found)
        else:
            in_row = in_a_row(self.of_part, row, self.given.pieces, self.plain)
            yield from self._better(in_row, f"{_lays(row)} garments in a row")

    def _better(self, plan: LayPlan, found: str) -> Iterator[LayPlan]:
        """Proved, and shorter than all before; a plan that is not is never shown."""
        plan = replace(self.given.loosed(plan), cloth=self.cloth)
        if self.cloth.flaws:
            plan = settled(plan)
        if self.best is not None and plan.length_mm >= self.best.length_mm - SHORTER_MM:
            return
        if wrong := faults(plan):
            self.failures.append(wrong[0].says)
            return
        self.best = replace(plan, found=found, seconds=round(time.monotonic() - self.began, 2))
        yield self.best

    def _last(self) -> Iterator[LayPlan]:
        """The best once more, pushed together."""
        if self.best is not None and not any(piece.block for piece in self.given.before):
            yield from self._better_as_is(settled(self.best))

    def _better_as_is(self, plan: LayPlan) -> Iterator[LayPlan]:
        if self.best is not None and plan.length_mm < self.best.length_mm - SHORTER_MM and not faults(plan):
            self.best = replace(plan, seconds=round(time.monotonic() - self.began, 2))
            yield self.best

    def _used(self) -> tuple[int, ...]:
        """The lays that make the shortest row now."""
        lengths = {size: plan.length_mm for size, plan in self.of_part.items()}
        odd_once = self.cloth.spread.layers == 2
        return row_of(lengths, self.whole, self.cloth.gap_mm, odd_once=odd_once)

    def _halves(self) -> list[LayPiece]:
        return [piece for piece in self.given.pieces if piece.on_fold]


def _lays(sizes: Sequence[int]) -> str:
    """How many garments lie in each lay of a row, and how often there is such a lay.

    >>> _lays((2, 2, 2, 1))
    '3 times 2 + 1'
    """
    counts = [(size, len(list(alike))) for size, alike in groupby(sizes)]
    return " + ".join(f"{size}" if count == 1 else f"{count} times {size}" for size, count in counts)
