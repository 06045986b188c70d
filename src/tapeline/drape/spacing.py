"""Where the nodes stand along every edge, so that each seam is sewn node to node."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

import numpy as np

from tapeline.drape.compiled import Array
from tapeline.pattern import EdgeRef, Garment, Seam
from tapeline.problems import InputError, Problem, Severity

__all__ = ["Spacing", "runs", "spacing"]

Spacing = dict[tuple[str, str], Array]
"""By piece and edge: mm along the edge from its start, both ends included."""
SAME = 1e-9
NOTHING = "nothing was draped"


def spacing(garment: Garment, seams: Sequence[Seam], side_mm: float) -> Spacing:
    """Both runs of a seam get as many nodes, spread over each by its own length; what is eased in is spread evenly.

    Where one run has several edges, a node stands at the same share of both runs for the corner between them.

    Raises `InputError` (`drape-seam`) where an edge would need the nodes of two seams, or a seam has no length.
    """
    made: Spacing = {}
    for seam in seams:
        shares = [np.cumsum([0.0, *(garment.path(ref).length for ref in run)]) for run in (seam.a, seam.b)]
        lengths = [float(cumulated[-1]) for cumulated in shares]
        if not min(lengths) > 0:
            raise InputError(_problem(seam, "one side has no length"))
        breaks = _merged(*(cumulated / cumulated[-1] for cumulated in shares))
        marks = [0.0]
        for begin, end in pairwise(breaks):
            count = max(1, round((end - begin) * max(lengths) / side_mm))
            marks += [begin + (end - begin) * (k + 1) / count for k in range(count)]
        for run, cumulated in zip((seam.a, seam.b), shares, strict=True):
            for ref, start, end in zip(run, cumulated[:-1], cumulated[1:], strict=True):
                inside = [m * cumulated[-1] for m in marks if start - SAME <= m * cumulated[-1] <= end + SAME]
                along = np.clip(np.array(inside) - start, 0, end - start)
                _put(made, (ref.piece, ref.edge), end - start - along[::-1] if ref.backwards else along, seam)
    for piece in garment.pieces:
        for edge in piece.edges:
            if (piece.name, edge.name) not in made:
                made[piece.name, edge.name] = np.linspace(0, edge.length, 1 + max(1, round(edge.length / side_mm)))
    return made


def runs(
    seam: Seam, counts: Mapping[tuple[str, str], int]
) -> Iterator[tuple[tuple[EdgeRef, int], tuple[EdgeRef, int]]]:
    """Node by node: which node of which edge is sewn to which; nodes are counted from the edge's own start."""
    one, two = ([(ref, k) for ref in run for k in _order(ref, counts)] for run in (seam.a, seam.b))
    one, two = _without_doubles(seam.a, counts, one), _without_doubles(seam.b, counts, two)
    yield from zip(one, two, strict=True)


def _order(ref: EdgeRef, counts: Mapping[tuple[str, str], int]) -> range:
    count = counts[ref.piece, ref.edge]
    return range(count - 1, -1, -1) if ref.backwards else range(count)


def _without_doubles(
    run: Sequence[EdgeRef], counts: Mapping[tuple[str, str], int], nodes: list[tuple[EdgeRef, int]]
) -> list[tuple[EdgeRef, int]]:
    """At the corner between two edges of a run there are two nodes, one of each: both stay, each with its partner.

    The other run has one node there, or two as well; so that both lists are as long, a corner is counted once, by the
    edge that begins there, and the edge that ends there is sewn to it by the seam that joins the two.
    """
    kept: list[tuple[EdgeRef, int]] = []
    at = 0
    for index, ref in enumerate(run):
        count = counts[ref.piece, ref.edge]
        last = index == len(run) - 1
        kept += nodes[at : at + count - (0 if last else 1)]
        at += count
    return kept


def _put(made: Spacing, key: tuple[str, str], along: Array, seam: Seam) -> None:
    there = made.get(key)
    if there is not None and (len(there) != len(along) or np.abs(there - along).max() > 1e-6):
        raise InputError(_problem(seam, f"edge {key[1]} of the {key[0]} is sewn in another seam too"))
    made[key] = along


def _merged(one: Array, two: Array) -> list[float]:
    marks: list[float] = []
    for mark in sorted([*one.tolist(), *two.tolist()]):
        if not marks or mark - marks[-1] > 1e-6:
            marks.append(mark)
    return marks


def _problem(seam: Seam, says: str) -> Problem:
    return Problem(
        "drape-seam", Severity.ERROR, f"the seam {seam.name} cannot be draped yet: {says}", seam.name, NOTHING
    )
