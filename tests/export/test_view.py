"""Views: what is nearer hides what is behind, sizes are true, and the file is a PNG that another reader opens."""

from __future__ import annotations

import io

import numpy as np
from numpy.typing import NDArray
from PIL import Image

from tapeline.export.png import png
from tapeline.export.solid import Drawn, Solid
from tapeline.export.view import SIDES, view

WHITE = 255
RED, BLUE = (200, 0, 0), (0, 0, 200)


def plate(depth: float, half: float, colour: tuple[int, int, int], *lines: Drawn) -> Solid:
    """A square of 2 `half` mm that looks to the front."""
    vertices = np.array([[-half, -half, depth], [half, -half, depth], [half, half, depth], [-half, half, depth]])
    triangles = np.array([[0, 1, 2], [0, 2, 3]])
    return Solid("plate", vertices, triangles, np.tile(np.array(colour, np.uint8), (4, 1)), lines)


def looked_at(*solids: Solid, side: str = "front") -> NDArray[np.uint8]:
    """100 by 100 mm, a dot each."""
    return view(solids, SIDES[side], 1.0, (-50, 50, -50, 50))


def test_a_square_is_as_large_as_it_is() -> None:
    """40 mm are 40 dots, and nothing else is painted."""
    painted = (looked_at(plate(0, 20, RED)) != WHITE).any(axis=2)
    assert painted.shape == (100, 100)
    assert painted.sum() == 40 * 40
    assert painted[30:70, 30:70].all()


def test_what_is_nearer_hides_what_is_behind() -> None:
    """Whichever is drawn first."""
    near, far = plate(10, 10, RED), plate(0, 30, BLUE)
    for order in ((near, far), (far, near)):
        dots = looked_at(*order)
        assert dots[50, 50, 0] > dots[50, 50, 2]
        assert dots[25, 25, 0] < dots[25, 25, 2]


def test_a_side_that_looks_away_is_not_seen() -> None:
    """From behind there is nothing."""
    assert (looked_at(plate(0, 20, RED), side="back") == WHITE).all()


def test_from_the_left_the_front_is_on_the_left() -> None:
    """Who stands at the wearer's left sees the front to their left."""
    vertices = np.array([[0.0, -10, 10], [0, -10, 40], [0, 10, 40], [0, 10, 10]])
    wall = Solid("wall", vertices, np.array([[0, 2, 1], [0, 3, 2]]), np.full((4, 3), 100, np.uint8))
    painted = (looked_at(wall, side="left") != WHITE).any(axis=2)
    assert painted[:, :50].any()
    assert not painted[:, 50:].any()


def test_a_line_on_the_surface_is_seen_and_one_behind_is_not() -> None:
    """A tape lies on the stand; the one at the back is not seen from the front."""
    ends = np.array([[-15.0, 0, 0], [15, 0, 0]])
    on, behind = Drawn("on", ends, (0, 255, 0)), Drawn("behind", ends + np.array([0.0, 10, -60]), (0, 255, 0))
    dots = looked_at(plate(0, 20, RED, on, behind))
    green = (dots[:, :, 1] > 150) & (dots[:, :, 0] < 100)
    assert green[49:51, 40:60].any()
    assert not green[38:42].any()


def test_the_file_opens_elsewhere() -> None:
    """Pillow reads the same dots."""
    dots = looked_at(plate(0, 20, RED))
    assert np.array_equal(np.asarray(Image.open(io.BytesIO(png(dots)))), dots)
