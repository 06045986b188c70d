"""Instances of research: read with care, packed without faults, told by their density."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tapeline.lay import pack, read_instance
from tapeline.problems import InputError
from tests.lay import independent

MARQUES = Path(__file__).with_name("instances") / "marques.json"
BEST_KNOWN = 0.9202
"""Density of MARQUES (Gardeyn, Vanden Berghe, Wauters, arXiv 2509.13329, table 2)."""


@pytest.mark.slow
def test_a_packing_holds_by_a_second_opinion() -> None:
    """MARQUES for three seconds: all pieces, no overlap, inside the strip; denser than two thirds, no record."""
    instance = read_instance(MARQUES.read_text(encoding="utf-8"))
    *_, best = pack(instance, 3)
    corners = [[(p.x, p.y) for p in outline] for outline in best.outlines()]
    assert len(corners) == 24
    ys = [y for one in corners for _, y in one]
    assert max(ys) - min(ys) <= 104 * 1.0001 + 1e-6
    for i, one in enumerate(corners):
        assert all(independent.shared_area(one, other) < 1e-3 for other in corners[:i])
    covered = sum(map(independent.area, corners))
    xs = [x for one in corners for x, _ in one]
    assert best.density == pytest.approx(covered / (104 * (max(xs) - min(xs))))
    assert 0.66 < best.density < BEST_KNOWN + 0.001
    assert best.faults() == []


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda t: t.pop("width"), "width is missing"),
        (lambda t: t.update(width=0), "the width is 0"),
        (lambda t: t.update(items=[]), "no items"),
        (lambda t: t["items"][0].update(demand=0), "wanted 0 times"),
        (lambda t: t["items"][0].update(demand=1.5), "wanted 1.5 times"),
        (lambda t: t["items"][0].update(polygon=[[0, 0], [1, 1]]), "fewer than three"),
        (lambda t: t["items"][0].update(polygon=[[0, 0], [1, 1], [float("nan"), 0]]), "no number"),
        (lambda t: t["items"][0].update(rotations=[float("inf")]), "no number"),
        (lambda t: t.update(width=5), "wider than the strip"),
    ],
)
def test_an_instance_that_is_none_is_refused(change: object, says: str) -> None:
    """What is wrong with it is named."""
    table = json.loads(MARQUES.read_text(encoding="utf-8"))
    change(table)  # type: ignore[operator]  # one of the functions above
    with pytest.raises(InputError, match=says):
        read_instance(json.dumps(table))


@pytest.mark.parametrize("text", ["", "[]", "{", "null", "[[[["])
def test_what_is_no_json_is_refused(text: str) -> None:
    """An empty file too."""
    with pytest.raises(InputError, match="is no instance"):
        read_instance(text)
