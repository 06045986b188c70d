"""Pictures of a draped garment: colours are values, in grey too; seams are lines; what is off the scale is said."""

from __future__ import annotations

from types import SimpleNamespace
from typing import cast

import numpy as np
import pytest

from tapeline.drape import Draped
from tapeline.export.drape_views import MAPS, drape_places, drape_solids, drape_views, legend
from tapeline.export.shades import Scale, scale_for
from tapeline.export.view import SIDES, view


def cloth(air: float = 5.0) -> Draped:
    """Two squares of 100 mm sewn side by side, hanging before a square stand; stretched by nothing and by a tenth."""
    x = np.array([[-100.0, 0, 50], [0, 0, 50], [100, 0, 50], [-100, 100, 50], [0, 100, 50], [100, 100, 50]])
    faces = np.array([[0, 1, 4], [0, 4, 3], [1, 2, 5], [1, 5, 4]])
    panels = [
        SimpleNamespace(name="left", edges={("side", 1): np.array([1, 3]), ("hem", 1): np.array([0, 1])}),
        SimpleNamespace(name="right", edges={("side", 1): np.array([0, 2]), ("hem", 1): np.array([0, 1])}),
    ]
    corners = {"left": np.arange(4), "right": np.arange(4, 8)}
    stand = np.array([[-60.0, -50, 0], [60, -50, 0], [60, 150, 0], [-60, 150, 0]])
    stretch = np.array([0, 0, 0.1, 0, 0, 0.1])
    return cast(
        "Draped",
        SimpleNamespace(
            x=x,
            faces=faces,
            strain=SimpleNamespace(across=stretch, along=-stretch, most=stretch),
            near=np.array([5.0, 5, 5, 5, 5, air]),
            pressure=np.zeros(6),
            fabric=SimpleNamespace(node=np.array([0, 1, 3, 4, 1, 2, 4, 5]), count=6),
            sewn=SimpleNamespace(
                panels=panels, seams={"side": np.array([[1, 4], [3, 6]])}, of=lambda name: corners[name]
            ),
            form=SimpleNamespace(vertices=stand, triangles=np.array([[0, 1, 2], [0, 2, 3]])),
        ),
    )


def test_more_is_darker_for_every_eye() -> None:
    """Red and green both fall at every step: however an eye or a printer weighs the two, dark is much.

    The weight of blue in what is seen as light is 7 per cent (ITU-R BT.709); with it the steps are still even enough
    to be told apart: each of ten is darker by at least a twentieth of the whole range.
    """
    shades = Scale((0.0, 1.0), 0.0, 1.0).colours(np.linspace(0, 1, 11)).astype(float)
    assert (np.diff(shades[:, :2], axis=0) < 0).all()
    grey = shades @ [0.2126, 0.7152, 0.0722]
    assert (-np.diff(grey) > (grey[0] - grey[-1]) / 20).all()


def test_a_dot_has_the_colour_of_its_value() -> None:
    """On the garment nothing is shaded, so that a colour read off the picture is the one of the legend."""
    draped = cloth()
    garment = drape_solids(draped, "round")[1]
    scale = scale_for(MAPS["round"].read(draped))
    dots = view([garment], SIDES["front"], 1.0, (-100, 100, 0, 100))
    assert dots[50, 30].tolist() == scale.colours(np.array([0.0]))[0].tolist()
    # 90.5 mm to the left of the seam, where the stretch is 9.05 per cent; each colour is rounded.
    assert np.abs(dots[50, 190].astype(int) - scale.colours(np.array([9.05]))[0]).max() <= 30
    assert dots[50, 130].sum() > dots[50, 160].sum() > dots[50, 190].sum()


def test_what_lies_beyond_the_scale_is_said() -> None:
    """One value in five hundred does not stretch the scale, and its end says so."""
    scale = scale_for(np.array([*np.linspace(0, 10, 499), 300.0]))
    assert scale.ticks[-1] <= 12
    assert scale.words(" %")[-1].endswith("% or more")
    assert scale.words(" %")[0] == "0 %"


def test_air_that_was_not_measured_is_counted() -> None:
    """A place beyond the reach of the measured distances has no number, and the legend says how many there are."""
    assert "1 of 6 nodes further off than is measured" in legend(cloth(air=1000.0), "air")
    assert drape_places(cloth(air=1000.0))["air"][-2:] == [5.0, None]
    assert "further" not in legend(cloth(), "air")


def test_each_seam_is_one_line() -> None:
    """What two pieces share is drawn once, under the seam's name; hems are drawn beside."""
    lines = {line.name: line.points.tolist() for line in drape_solids(cloth(), "air")[1].lines}
    assert lines == {
        "side": [[0, 0, 50], [0, 100, 50]],
        "left hem": [[-100, 0, 50], [0, 0, 50]],
        "right hem": [[0, 0, 50], [100, 0, 50]],
    }


@pytest.mark.parametrize("name", MAPS)
def test_the_picture_has_three_views_and_a_legend(name: str) -> None:
    """Every map is drawn: from behind the wrong side is grey, and above and below stand dark letters."""
    dots = drape_views(cloth(), name)
    assert (dots[:70] < 60).all(axis=2).any()
    assert (dots[-60:] < 60).all(axis=2).any()
    third = dots[70:-130, -dots.shape[1] // 3 :].astype(int)
    painted = third[(third < 250).any(axis=2)]
    assert len(painted)
    assert (np.ptp(painted, axis=1) <= 2).mean() > 0.9
