"""Pieces of another program on the cloth: as many, as large and as turned as their file says."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest

from tapeline.docket import read_docket
from tapeline.export import exchange
from tapeline.geometry import ground
from tapeline.lay import LayCloth, Spread, faults
from tapeline.problems import InputError
from tapeline.project import draft, finished, lay_plans, lay_tasks, received_tasks
from tapeline.received import Received, received
from tests.received.theirs import box, typed

TEE = Path(__file__).resolve().parents[2] / "examples" / "tee.toml"
GRAIN = "LINE 8 7 10 50 20 50 11 50 21 250"


@pytest.fixture(scope="module")
def tee() -> Received:
    """Our own tee, as another program would get it."""
    return received(exchange([finished(draft(read_docket(TEE)))]).data, "tee.dxf")


@pytest.mark.parametrize("spread", [Spread.OPEN, Spread.FOLDED])
def test_they_are_laid_like_the_docket_they_came_from(tee: Received, spread: Spread) -> None:
    """Read back from its exchange file a garment gives the same pieces, but for shrinkage, which no file says."""

    def folded(cloth: LayCloth) -> LayCloth:
        return replace(cloth, spread=spread, width_mm=1500, shrink_length=0, shrink_width=0)

    ours = {task.cloth.name: task for task in lay_tasks([draft(read_docket(TEE))], changed=folded)}
    for task in received_tasks([tee], changed=folded):
        meant = ours[task.cloth.name].pieces
        assert len(task.pieces) == len(meant)
        for piece, other in zip(task.pieces, meant, strict=True):
            assert (piece.upright, piece.turned_over, piece.on_fold) == (
                other.upright,
                other.turned_over,
                other.on_fold,
            )
            assert ground(piece.outline) == pytest.approx(ground(other.outline), rel=1e-3)


def test_a_plan_of_them_is_proved(tee: Received) -> None:
    """A first plan of the shell's pieces, two garments, holds by its coordinates alone."""
    (task,) = received_tasks([tee], garments=2, cloths=["shell"])
    plan = next(iter(lay_plans(task, seconds=1.5)))
    assert not faults(plan)
    assert len(plan.placements) == 8
    assert [note.code for note in task.problems] == ["lay-width-assumed"]


@pytest.mark.parametrize(("garments", "code"), [(0, "lay-zero"), (-2, "lay-zero"), (1001, "lay-many")])
def test_a_number_of_garments_is_taken_as_it_is_or_refused(tee: Received, garments: int, code: str) -> None:
    """None, fewer than none and more than can be laid in a day: of a file as of a docket."""
    with pytest.raises(InputError) as of_a_file:
        received_tasks([tee], garments=garments)
    with pytest.raises(InputError) as of_a_docket:
        lay_tasks([draft(read_docket(TEE))], garments=garments)
    for caught in (of_a_file, of_a_docket):
        assert {problem.code for problem in caught.value.problems} == {code}


@pytest.mark.parametrize("angle", [0, 30, 90, 200])
def test_the_grain_lies_along_the_cloth(angle: float) -> None:
    """However the piece is drawn, its grain is turned along the cloth, and its ground stays."""
    x, y = 150 * math.cos(math.radians(angle)), 150 * math.sin(math.radians(angle))
    grain = f"LINE 8 7 10 150 20 150 11 {150 + x:.6f} 21 {150 + y:.6f}"
    (task,) = received_tasks([received(typed(box(0, 0, 300), grain), "sheet.dxf")])
    (piece,) = task.pieces
    (line,) = (line for line in piece.lines if line.kind == "grain")
    assert line.points[0].y == pytest.approx(line.points[1].y, abs=1e-4)
    assert line.points[1].x > line.points[0].x
    assert ground(piece.outline) == pytest.approx(90_000)


@pytest.mark.parametrize(
    ("entities", "code"),
    [
        ((box(0, 0, 300),), "lay-received"),
        ((box(0, 0, 300), GRAIN, "LWPOLYLINE 8 1 70 0 10 500 20 0 10 800 20 0 10 800 20 300"), "lay-received"),
    ],
)
def test_what_cannot_be_laid_is_refused(entities: tuple[str, ...], code: str) -> None:
    """No grain line, or a file with an open outline: nothing is laid."""
    with pytest.raises(InputError) as caught:
        received_tasks([received(typed(*entities), "sheet.dxf")])
    assert caught.value.problems[0].code == code


def test_a_piece_on_both_sides_of_its_fold_is_refused() -> None:
    """A half with a corner 100 mm beyond its fold is not cut off there: nothing is laid on folded cloth."""
    corners = ((0, 0), (300, 0), (300, 400), (-100, 400), (-100, 300), (0, 300))
    outline = "LWPOLYLINE 8 1 70 1 " + " ".join(f"10 {x} 20 {y}" for x, y in corners)
    read = received(typed(outline, GRAIN, "LINE 8 6 10 0 20 0 11 0 21 300"), "sheet.dxf")
    with pytest.raises(InputError, match=r"both sides of its fold, 100\.0 mm beyond it"):
        received_tasks([read], changed=lambda cloth: replace(cloth, spread=Spread.FOLDED))


def test_a_cloth_that_no_piece_has_is_refused(tee: Received) -> None:
    """The nearest name is given."""
    with pytest.raises(InputError) as caught:
        received_tasks([tee], cloths=["shel"])
    assert caught.value.problems[0].code == "lay-cloth-unknown"
    assert "shell" in caught.value.problems[0].hint
