"""A lay of many garments alike as a row of smaller lays: two and two and one may take less cloth than five at once."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace

from tapeline.lay.cloth import LayCloth
from tapeline.lay.piece import LayPiece
from tapeline.lay.plan import LayPlan, Placement

__all__ = ["in_a_row", "part", "parts", "row_of"]

SMALL = (1, 2, 3)
"""Rows are made of lays of so many garments of each kind; larger ones were never denser within a minute (measured)."""


def parts(pieces: Sequence[LayPiece]) -> tuple[int, ...]:
    """The sizes of lay worth trying, in shares of the whole: of 3 of one size and 6 of another 1, 2 and 3 times (1, 2).

    >>> parts([LayPiece("front", "marit", (), garments=10), LayPiece("front", "bo", (), garments=20)])
    (1, 2, 3, 10)
    """
    whole = shares(pieces)
    return tuple(sorted({n for n in (*SMALL, whole) if n <= whole}))


def shares(pieces: Sequence[LayPiece]) -> int:
    """The most even parts into which the garments can be divided."""
    return math.gcd(*(piece.garments for piece in pieces))


def part(pieces: Sequence[LayPiece], size: int) -> tuple[LayPiece, ...]:
    """The pieces of a lay of so many shares."""
    whole = shares(pieces)
    return tuple(replace(piece, garments=piece.garments // whole * size) for piece in pieces)


def row_of(lengths: Mapping[int, float], whole: int, gap_mm: float, *, odd_once: bool = False) -> tuple[int, ...]:
    """Which lays, one after the other, make the whole in the least length; empty when none do.

    Args:
        lengths: Of the lays there are, by their size.
        whole: How much is needed.
        gap_mm: Between two lays.
        odd_once: On two layers a piece may serve two garments: then only one lay may have an odd size.

    >>> row_of({1: 107, 2: 196, 5: 507}, 5, 0)
    (2, 2, 1)
    >>> row_of({1: 60, 2: 196}, 5, 0, odd_once=True)
    (2, 2, 1)
    """
    # The least length for each count, without and with an odd lay in it.
    best: dict[tuple[int, bool], tuple[float, tuple[int, ...]]] = {(0, False): (0.0, ())}
    for count in range(1, whole + 1):
        for size, length in lengths.items():
            odd = odd_once and size % 2 == 1
            for had_odd in (False, True):
                before = best.get((count - size, had_odd))
                if before is None or (odd and had_odd):
                    continue
                made = before[0] + length + (gap_mm if before[1] else 0.0), (*before[1], size)
                state = count, had_odd or odd
                best[state] = min(best.get(state, made), made)
    found = [best[state] for state in ((whole, False), (whole, True)) if state in best]
    return tuple(sorted(min(found)[1], reverse=True)) if found else ()


def in_a_row(plans: Mapping[int, LayPlan], row: Sequence[int], pieces: Sequence[LayPiece], cloth: LayCloth) -> LayPlan:
    """Small lays one after the other as one; on a stripe each begins a whole repeat further."""
    whole = shares(pieces)
    placements: list[Placement] = []
    start, done = 0.0, 0
    for size in row:
        plan = plans[size]
        per_share = {piece.garment: piece.garments // whole for piece in pieces}
        for placement in plan.placements:
            before = done * per_share[plan.by_key[placement.piece].garment]
            placements.append(replace(placement, x=placement.x + start, garment=placement.garment + before))
        start += plan.length_mm + cloth.gap_mm
        if cloth.repeat_along_mm:
            start = math.ceil(start / cloth.repeat_along_mm - 1e-9) * cloth.repeat_along_mm
        done += size
    return LayPlan(cloth, tuple(pieces), tuple(placements))
