"""Hems, vents and lengths: everything that holds of a plain top holds of them, for random wearers."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.blocks.hems import HEM_SHAPES, HemChoices
from tapeline.draft import Draft
from tapeline.finish import FinishChoices, Title, finish
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.problems import InputError
from tapeline.styles import STYLES
from tests.properties.drafts import Drawing, examples, style_choices
from tests.properties.invariants import broken
from tests.wearers import wearers

TITLE = Title("tee.toml", "anybody", "tee", "", "")
REFUSALS = {
    "back-wider-than-chest", "flare-too-wide", "hem-too-high", "hem-too-steep", "shoulder-beyond-side",
    "step-without-vent", "strap-too-narrow", "vent-too-long", "waist-above-chest",
}  # fmt: skip
"""What drafting may say instead of drafting."""
TURNED_UP = ("tee", "vest", "dropped", "raglan")


@pytest.mark.slow
@examples(150)
@given(
    wearers((Figure.WOMAN, Figure.MAN)),
    st.sampled_from(TURNED_UP),
    st.sampled_from(list(HEM_SHAPES)),
    st.tuples(
        st.sampled_from([-25, -12, -3, 0, 1, 8, 30, 70]),
        st.sampled_from([0, 0, 0.5, 4]),
        st.sampled_from([0, 0, 6, 15]),
    ),
)
def test_everything_holds_of_every_hem(
    wearer: Wearer, style: str, shape: str, side: tuple[float, float, float]
) -> None:
    """Seams alike, lines fair over them, girths as meant, nothing crossed, and every piece can be cut; or refused."""
    length, flare, vent = side
    hem = HemChoices(HEM_SHAPES[shape], cm(vent))
    d = Draft(wearer, {})
    choices = style_choices(style, "slight", length=cm(length), flare=cm(flare), hem=hem)
    try:
        garment = STYLES[style].page(d, choices, surveyed=True)
    except InputError as refusal:
        if {problem.code for problem in refusal.problems} <= REFUSALS:
            return
        raise
    wrong = broken(Drawing(wearer, style, "slight", True, garment, frozenset(note.code for note in d.notes)))
    # A hem that rises to the side, or sinks to the back, turns once on its way: that is its shape.
    turns = shape in {"curved", "high-low"}
    assert [what for what in wrong if not (turns and what.endswith("hem turns 1 times"))] == []
    assert len(finish(garment, FinishChoices(hem_mm=10), TITLE).pieces) == len(garment.pieces)
