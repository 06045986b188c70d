"""The mesh and its shapes."""

from __future__ import annotations

from importlib.resources import files

import numpy as np
import pytest

from tapeline.form.modes import modes
from tapeline.form.shapes import PHENOTYPE, Place, shapes, shapes_at
from tests.form.mesh import open_edges


def test_the_stand_is_closed() -> None:
    """Every edge of the mesh belongs to two triangles that walk it in opposite directions."""
    assert open_edges(shapes().triangles) == 0


def test_the_triangles_look_out() -> None:
    """The mean stand holds a grown-up's trunk and arms: between 40 and 80 litres, and not less than nothing."""
    stand = shapes()
    a, b, c = stand.whole(stand.mean.reshape(-1, 3))[stand.triangles].transpose(1, 0, 2)
    assert 40 < np.einsum("ij,ij->", a, np.cross(b, c)) / 6e6 < 80


def test_the_file_is_small_and_has_its_licence_beside_it() -> None:
    """The shapes take less than 2 MB, and the text of CC0 lies in the same folder."""
    folder = files("tapeline.form").joinpath("data")
    assert len(folder.joinpath("shapes.npz").read_bytes()) < 2_000_000
    assert "CC0 1.0 Universal" in folder.joinpath("shapes.LICENSE.md").read_text(encoding="utf-8")


def test_left_and_right_are_mirrors() -> None:
    """For every vertex there is one on the other side, whatever the shape."""
    stand = shapes()
    random = np.random.default_rng(5)
    points = stand.whole(stand.half(random.random(len(PHENOTYPE)), random.uniform(-1, 1, len(stand.local_names))))
    points = np.round(points[: stand.count], 6) + 0.0
    assert {tuple(p) for p in points} == {tuple(p) for p in points * [-1, 1, 1] + 0.0}


@pytest.mark.parametrize("degrees", [35, 60])
def test_arms_turn_and_the_trunk_stays(degrees: float) -> None:
    """Turned arms stand at the angle asked for, and far below the arms nothing has moved a millimetre."""
    rest, turned = shapes(), shapes_at(float(np.radians(degrees)))
    before, after = (s.whole(s.mean.reshape(-1, 3)) for s in (rest, turned))
    along = turned.places["elbow_joint"].of(after) - turned.places["shoulder_joint"].of(after)
    assert np.degrees(np.arctan2(along[0], -along[1])) == pytest.approx(degrees, abs=2)
    trunk = before[:, 1] < rest.places["bust_point"].of(before)[1] - 60
    trunk &= rest.arm == 0
    assert np.abs(after - before)[trunk].max() < 1


def test_a_change_of_a_band_carries_the_arm_whole() -> None:
    """A wider chest moves the arm out without changing it: elbow and hand go as far as the shoulder."""
    stand = shapes()
    wide = next(mode for mode in modes(stand) if mode.name == "chest wide")
    moves = stand.whole(wide.moves.reshape(-1, 3))
    joint = {name: stand.places[f"{name}_joint"].of(moves) for name in ("shoulder", "elbow", "hand")}
    assert joint["shoulder"][0] > 5
    assert joint["elbow"] == pytest.approx(joint["shoulder"])
    assert joint["hand"] == pytest.approx(joint["shoulder"])


def test_a_place_between_two_places() -> None:
    """A third of the way is a third of the way."""
    points = np.array([[0.0, 0, 0], [30.0, 0, 60]])
    a, b = (Place(np.array([i]), np.ones(1)) for i in range(2))
    assert a.towards(b, 1 / 3).of(points) == pytest.approx([10, 0, 20])
