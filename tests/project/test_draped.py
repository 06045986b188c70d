"""Which hand a docket's cloth has when its garment is draped."""

from __future__ import annotations

import pytest

from tapeline.docket import docket_from_text
from tapeline.drape import HANDS
from tapeline.drape.cloth import HAND_PULL
from tapeline.project import draft
from tapeline.project.draped import _hands

DOCKET = """wearer = {{ figure = "woman", size = "88" }}
[cloth]
kind = "single jersey"
stretch_across = {}
stretch_along = {}
"""


@pytest.mark.parametrize(("across", "along"), [(50, 20), (50, 0), (0, 20), (0, 0)])
def test_a_docket_stretches_its_cloth_each_way(across: float, along: float) -> None:
    """At the pull of a hand each way stretches as the docket says; a way that is 0 there as the named cloth does."""
    usual = HANDS["single jersey"]
    shell = _hands(draft(docket_from_text(DOCKET.format(across, along))), "", washed=False)["shell"]
    assert shell.across.stretch(HAND_PULL) == pytest.approx(across / 100 or usual.across.stretch(HAND_PULL))
    assert shell.along.stretch(HAND_PULL) == pytest.approx(along / 100 or usual.along.stretch(HAND_PULL))
