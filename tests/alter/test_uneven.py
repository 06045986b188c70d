"""One shoulder lower: each side comes from its own draft, and the whole garment is as true as both."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tapeline.blocks.parts import ColourBlockChoices
from tapeline.docket import docket_from_text
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer, size_wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError, Severity
from tapeline.project import draft, finished
from tapeline.styles import STYLES
from tests.corrections import correction
from tests.properties.drafts import Drawing, draw, drawing, examples
from tests.properties.invariants import closed, edges_have_steps, joins_run_on, sewn_equal, simple, steps_follow
from tests.properties.test_invariants import REFUSALS
from tests.wearers import random_wearers, wearers

WEARER = size_wearer("92")
APART = ("tee", "vest", "sweatshirt", "cardigan", "pyjama", "dropped", "block")
"""The others have a hood or a collar stand, which is not drafted left and right."""
SOLVED_MM = 1e-6


def uneven(garment_style: str = "tee", /, **cm_by_key: float) -> Garment:
    """A garment with one shoulder lower."""
    return draw(WEARER, garment_style, corrections=correction(**cm_by_key))


@examples(40)
@given(
    wearers((Figure.WOMAN, Figure.MAN)),
    st.sampled_from(APART),
    st.sampled_from(["left", "right"]),
    st.floats(0.1, 2),
    st.booleans(),
)
def test_an_uneven_garment_is_as_true_as_an_even_one(
    wearer: Wearer, style: str, side: str, by: float, surveyed: bool
) -> None:
    """Closed, simple, every seam equal or eased as said, every line runs on, every edge and step told."""
    made = correction(**{f"{side}_shoulder_lower": by})
    found = drawing(wearer, style, "slight", surveyed=surveyed, corrections=made)
    if isinstance(found, InputError):
        assert {problem.code for problem in found.problems} <= REFUSALS
        return
    checks = (closed, sewn_equal, joins_run_on, simple, steps_follow, edges_have_steps)
    wrong = [what for check in checks for what in check(found)]
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize("style", APART)
@pytest.mark.parametrize("side", ["left", "right"])
def test_truing_finds_nothing_wrong(style: str, side: str) -> None:
    """Seams, joins and girths of an uneven garment are what was meant."""
    text = f'wearer = {{ figure = "woman", size = "92" }}\n[garment]\nstyle = "{style}"\n'
    drafted = draft(docket_from_text(f"{text}corrections = {{ {side}_shoulder_lower = 1.5 }}\n"))
    wrong = [problem for problem in drafted.truing.findings if problem.severity is Severity.ERROR]
    usual = draft(docket_from_text(text))
    assert {problem.code for problem in wrong} <= {problem.code for problem in usual.truing.findings}


def test_each_side_comes_from_its_own_draft() -> None:
    """The right half has the lengths of the usual draft, the left half those of one whose shoulders both slope."""
    both, usual = uneven(left_shoulder_lower=1.5), draw(WEARER)
    lower = draw(WEARER, corrections=correction(sloping_shoulders=1.5))
    for edge in ("neckline", "shoulder", "armhole", "side", "hem"):
        back, front = both.piece("back"), both.piece("front")
        # As drawn, right side of the cloth up, a back's half is the right one and a front's the left one.
        assert back.edge(edge).length == pytest.approx(usual.piece("back").edge(edge).length, abs=SOLVED_MM)
        assert back.edge(f"{edge}_left").length == pytest.approx(lower.piece("back").edge(edge).length, abs=SOLVED_MM)
        assert front.edge(edge).length == pytest.approx(lower.piece("front").edge(edge).length, abs=SOLVED_MM)
        assert front.edge(f"{edge}_right").length == pytest.approx(
            usual.piece("front").edge(edge).length, abs=SOLVED_MM
        )
    for edge in ("cap_front", "cap_back"):
        right, left = both.piece("sleeve"), both.piece("left_sleeve")
        assert right.edge(edge).length == pytest.approx(usual.piece("sleeve").edge(edge).length)
        assert left.edge(edge).length == pytest.approx(lower.piece("sleeve").edge(edge).length)


def test_left_and_right_are_mirror_images() -> None:
    """A lower left shoulder gives the mirror image of a lower right one."""
    left, right = uneven(left_shoulder_lower=1.2), uneven(right_shoulder_lower=1.2)
    for name, drawn_other in (("back", "left"), ("front", "right")):
        for edge in ("shoulder", "armhole", "side"):
            one, other = left.piece(name), right.piece(name)
            image = f"{edge}_{drawn_other}"
            assert one.edge(edge).length == pytest.approx(other.edge(image).length, abs=SOLVED_MM)
            assert one.edge(image).length == pytest.approx(other.edge(edge).length, abs=SOLVED_MM)


def test_the_cutting_list_says_that_the_sides_differ() -> None:
    """No piece lies on the fold but the hem's band, and each sleeve is cut once, by its side."""
    text = 'wearer = { figure = "woman", size = "92" }\n[garment]\ncorrections = { right_shoulder_lower = 1 }\n'
    rows = {row.title: row for row in finished(draft(docket_from_text(text))).cutting_list}
    assert not rows["Back"].on_fold
    assert not rows["Front"].on_fold
    assert (rows["Right sleeve"].quantity, rows["Left sleeve"].quantity) == (1, 1)
    assert not rows["Left sleeve"].mirrored


def test_the_left_shoulder_is_the_wearer_s_own() -> None:
    """Seen from behind the wearer's left is on the left: there the tip of the back lies lower."""
    back = uneven(left_shoulder_lower=2).piece("back")
    left, right = back.edge("shoulder_left").path, back.edge("shoulder").path
    assert min(knot.x for knot in left.knots) < 0 < max(knot.x for knot in right.knots)
    assert min(knot.y for knot in left.knots) < min(knot.y for knot in right.knots) - 15


def test_both_shoulders_lower_are_refused() -> None:
    """Left and right lower together are sloping shoulders, and said to undo each other."""
    with pytest.raises(InputError, match="corrections-contrary"):
        uneven(left_shoulder_lower=1, right_shoulder_lower=1)


@pytest.mark.parametrize("style", sorted(set(STYLES) - set(APART)))
def test_what_cannot_be_apart_is_refused_by_name(style: str) -> None:
    """Every style is drafted left and right, true, or a part that cannot be is named, with what to do."""
    text = f'wearer = {{ figure = "woman", size = "92" }}\n[garment]\nstyle = "{style}"\n'
    try:
        drafted = draft(docket_from_text(f"{text}corrections = {{ left_shoulder_lower = 1 }}\n"))
    except InputError as refused:
        (problem,) = refused.problems
        assert problem.code == "sides-not-apart"
        assert "both shoulders alike" in problem.hint
    else:
        assert drafted.holds


def test_a_colour_block_is_level_from_side_to_side() -> None:
    """On the side of the lower shoulder it begins nearer the underarm, so that both halves meet at the centre."""
    found = draw(
        WEARER,
        "tee",
        corrections=correction(left_shoulder_lower=1.5),
        colour_block=ColourBlockChoices(cm(8)),
    )
    for half in ("back", "front"):
        line = found.piece(f"{half}_lower")
        heights = [knot.y for edge in line.edges if edge.name.startswith("block") for knot in edge.path.knots]
        assert max(heights) - min(heights) < SOLVED_MM
    checks = (closed, sewn_equal, joins_run_on, simple)
    assert not [what for check in checks for what in check(Drawing(WEARER, "tee", "slight", True, found, frozenset()))]


@pytest.mark.parametrize(
    "lines",
    [
        'front = "zip"\ncorrections = { right_shoulder_lower = 0.64, full_waist = 6 }',
        "hem = { vent = 6.67 }\nlength = 7.16\ncorrections = { left_shoulder_lower = 0.63 }",
    ],
)
def test_a_front_of_two_cut_across_is_told_on_both_sides(lines: str) -> None:
    """A colour block leaves parts whose centre and vents are lines that a step drew, left and right."""
    text = (
        'wearer = { figure = "woman", size = "84" }\n[garment]\nstyle = "pyjama"\n'
        f"colour_block = {{ below = 16.46 }}\n{lines}"
    )
    docket = docket_from_text(text)
    made = Drawing(docket.wearer, "pyjama", "loose", docket.surveyed, draft(docket).garment, frozenset())
    assert {"front_lower", "right_front_lower"} <= {piece.name for piece in made.garment.pieces}
    wrong = [what for check in (steps_follow, edges_have_steps) for what in check(made)]
    assert not wrong, "\n".join(wrong)


@pytest.mark.parametrize("front", ["buttons", "zip"])
@pytest.mark.parametrize("corrections", ["{ left_shoulder_lower = 0.22 }", "{}"])
def test_a_front_cropped_at_the_waist_is_measured_there(front: str, corrections: str) -> None:
    """The hem ends within a millimetre of the waist line, above it at the centre and below it at the side.

    There the waist is measured from the centre, as on a longer front; it was told 26 cm too small.
    """
    text = f"""
        wearer = {{ figure = "woman", tapes = {{ bust = 84, upper_chest = 87, waist = 68, hip = 92, shoulder_width = 39,
            back_length = 39, hip_depth = 21, arm_length = 56 }} }}
        [garment]
        style = "pyjama"
        front = "{front}"
        length = -21.08
        waist = 2.67
        corrections = {corrections}
    """
    made = draft(docket_from_text(text.replace(",\n            ", ", ")))
    assert "girth-mismatch" not in {finding.code for finding in made.truing.findings}


def test_a_hem_that_is_deeper_on_one_side_moves_nothing_else() -> None:
    """A belly makes one side's hem deeper; the necklines still are as drafted, and every edge is told."""
    made = correction(square_shoulders=2.0, left_shoulder_lower=2.5, rounded_back=0.5, sway_back=3.0, full_waist=6.0)
    wearer = next(one for one in random_wearers(Figure.MAN, 25, 11) if one.name == "man 11.24")
    found = drawing(wearer, "raglan", "slight", surveyed=True, corrections=made)
    assert isinstance(found, Drawing)
    assert not [what for check in (closed, sewn_equal, edges_have_steps) for what in check(found)]
