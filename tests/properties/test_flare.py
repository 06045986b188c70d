"""A flared side, as of a dress: everything that holds of a straight one holds of it."""

from __future__ import annotations

import pytest
from hypothesis import given

from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.problems import InputError
from tests.properties.drafts import Drawing, draw, examples
from tests.properties.invariants import broken
from tests.wearers import wearers


@pytest.mark.slow
@examples(100)
@given(wearers((Figure.WOMAN, Figure.MAN)))
def test_everything_holds_of_a_flared_dress(wearer: Wearer) -> None:
    """Hem square to fold and side, seams alike, the hip still as wide as it was."""
    for length, flare in ((20, 4), (45, 8), (60, 20)):
        garment = draw(wearer, "tee", "slight", length=cm(length), flare=cm(flare))
        assert not broken(Drawing(wearer, "tee", "slight", True, garment, frozenset({"bust-wants-dart"})))
        hip, hem = garment.points["back.side_hip"], garment.points["back.side_hem"]
        assert (hem.x - hip.x) / (hip.y - hem.y) == pytest.approx(flare / length, abs=1e-9)


def test_a_flare_as_wide_as_it_is_long_is_refused() -> None:
    """Where the side would run more outward than down."""
    tapes = {
        "bust": 880, "upper_chest": 850, "waist": 700, "hip": 960, "shoulder_width": 385, "back_length": 400,
        "hip_depth": 200, "arm_length": 570,
    }  # fmt: skip
    with pytest.raises(InputError, match="flare"):
        draw(Wearer("Amina", Figure.WOMAN, tapes), "tee", "slight", length=cm(5), flare=cm(5))
