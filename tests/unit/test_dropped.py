"""A dropped shoulder takes from the cap and the sleeve what it adds to the body, and nothing else."""

from __future__ import annotations

import pytest

from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.problems import InputError
from tests.properties.drafts import draw
from tests.unit.sizes import size

TAPES = {
    "bust": 1020, "upper_chest": 950, "waist": 840, "hip": 1080, "shoulder_width": 405, "back_length": 410,
    "hip_depth": 210, "arm_length": 590,
}  # fmt: skip
YLVA = Wearer("Ylva", Figure.WOMAN, TAPES)


@pytest.mark.parametrize("drop", [2, 6, 9])
def test_what_is_dropped_is_taken_from_cap_and_sleeve(drop: float) -> None:
    """Cap and sleeve are shorter by the drop (common practice, no source), so the sleeve below the cap is as long."""
    set_in = draw(YLVA, "tee", "loose")
    dropped = draw(YLVA, "dropped", "loose", shoulder_drop=cm(drop))
    assert size(dropped, "set_in_armhole") == pytest.approx(size(set_in, "armhole"), abs=0.5)
    assert size(dropped, "cap_height") == pytest.approx(size(set_in, "cap_height") - 10 * drop, abs=0.2)
    below_cap = size(set_in, "sleeve_length") - size(set_in, "cap_height")
    assert size(dropped, "sleeve_length") - size(dropped, "cap_height") == pytest.approx(below_cap, abs=1e-6)


def test_the_shoulder_bends_and_does_not_break() -> None:
    """Straight to the shoulder point, then by the drop further; both shoulders are mirror images of each other."""
    garment = draw(YLVA, "dropped", "loose", shoulder_drop=cm(6))
    back, front = (garment.piece(half).edge("shoulder").path for half in ("back", "front"))
    assert back.length == pytest.approx(front.length, abs=1e-9)
    straight = back.segments[0].length
    assert 60 < back.length - straight < 62
    assert max(back.curvatures()) <= 1e-9


def test_a_drop_that_leaves_no_cap_is_refused() -> None:
    """No cap, no sleeve: refused by name, with a way out."""
    with pytest.raises(InputError) as refused:
        draw(YLVA, "dropped", "loose", shoulder_drop=cm(15))
    assert {p.code for p in refused.value.problems} <= {"cap-too-low", "shoulder-beyond-side"}
    assert all(problem.hint for problem in refused.value.problems)
