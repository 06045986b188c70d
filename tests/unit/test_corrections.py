"""What each correction changes, by how much, and what it leaves alone.

That these are the changes to make is common practice in the trade, no source; that nothing else changes is proved.
"""

from __future__ import annotations

import pytest

from tapeline.docket import docket_from_text
from tapeline.draft import Draft
from tapeline.geometry import Point
from tapeline.measures import size_wearer
from tapeline.pattern import Corrections, Garment
from tapeline.problems import InputError
from tapeline.project import draft
from tapeline.styles import STYLES
from tests.corrections import KEYS, correction
from tests.properties.drafts import draw

WEARER = size_wearer("92").with_tape("upper_chest", 870)
"""A bust that is 5 cm fuller than the upper chest."""
USUAL = draw(WEARER)
SOLVED_MM = 1e-6


def corrected(garment_style: str = "tee", /, **cm_by_key: float) -> Garment:
    """The same wearer's garment with corrections."""
    return draw(WEARER, garment_style, corrections=correction(**cm_by_key))


def moved(garment: Garment, label: str, usual: Garment = USUAL) -> tuple[float, float]:
    """How far a point went out and down, mm."""
    one, other = usual.points[label], garment.points[label]
    return other.x - one.x, one.y - other.y


def armhole(garment: Garment, half: str) -> float:
    """Along the armhole of one half."""
    return garment.piece(half).edge("armhole").length


def girth(garment: Garment, name: str) -> float:
    """Tape and ease of a girth."""
    found = next(girth for girth in garment.girths if girth.name == name)
    return found.tape.mm + found.ease.mm


def fronts_alike(one: Garment, other: Garment) -> bool:
    """Whether every point of the front lies where it lay."""
    points = {label: place for label, place in one.points.items() if label.startswith("front.")}
    return all(other.points[label].distance_to(place) < SOLVED_MM for label, place in points.items())


@pytest.mark.parametrize(("key", "sign"), [("sloping_shoulders", 1), ("square_shoulders", -1)])
def test_sloping_shoulders_lower_tip_and_armhole_alike(key: str, sign: int) -> None:
    """Shoulder point, underarm and the armhole's point go down (or up) together, so the armhole keeps its length."""
    garment = corrected(**{key: 1.5})
    for half in ("back", "front"):
        assert moved(garment, f"{half}.underarm") == pytest.approx((0, sign * 15))
        # The tape from tip to tip over the nape stays; out by the looseness, the tip goes a little more than the bone.
        assert moved(garment, f"{half}.{half}_shoulder_tip") == pytest.approx((0, sign * 15), abs=2.6)
        assert armhole(garment, half) == pytest.approx(armhole(USUAL, half), abs=4)
    shoulders = [garment.piece(half).edge("shoulder").length for half in ("back", "front")]
    assert shoulders[0] == pytest.approx(shoulders[1], abs=SOLVED_MM)
    assert moved(garment, "back.waist_level") == (0, 0)


def test_a_forward_shoulder_gives_the_back_what_the_front_loses() -> None:
    """The back armhole gains what the front loses, the crown's notch goes with the seam, the underarm stays."""
    garment = corrected(forward_shoulders=1)
    gain = armhole(garment, "back") - armhole(USUAL, "back")
    loss = armhole(USUAL, "front") - armhole(garment, "front")
    assert gain == pytest.approx(10, abs=1.5)
    assert gain == pytest.approx(loss, abs=1.5)
    assert moved(garment, "back.underarm") == (0, 0)
    assert moved(garment, "front.front_armhole_point") == (0, 0)
    sleeve, usual = garment.piece("sleeve"), USUAL.piece("sleeve")
    assert usual.edge("cap_front").length - sleeve.edge("cap_front").length == pytest.approx(loss, abs=SOLVED_MM)
    width = sleeve.edge("cap_front").path.end.x - sleeve.edge("cap_back").path.start.x
    assert width == pytest.approx(usual.edge("cap_front").path.end.x - usual.edge("cap_back").path.start.x, abs=3)


def test_a_full_bust_takes_its_width_from_the_back() -> None:
    """The front gains at the underarm what the back loses; the hip and all girths stay."""
    garment = corrected(full_bust__width=1)
    assert moved(garment, "front.underarm") == pytest.approx((10, 0))
    assert moved(garment, "back.underarm") == pytest.approx((-10, 0))
    assert moved(garment, "front.side_hip") == (0, 0)
    for name in ("chest", "waist", "hip"):
        assert girth(garment, name) == pytest.approx(girth(USUAL, name))
    sides = [garment.piece(half).edge("side").length for half in ("back", "front")]
    assert sides[0] == pytest.approx(sides[1], abs=SOLVED_MM)


def test_a_full_bust_s_length_is_eased_in_at_the_side() -> None:
    """The front is longer at centre and side; the side seam says by how much it is eased, above the waist's notch."""
    garment = corrected(full_bust__length=1.5)
    side = next(seam for seam in garment.seams if seam.name == "side")
    assert side.ease.mm == 15
    assert "bust" in side.reason
    front, back = (garment.piece(half) for half in ("front", "back"))
    assert front.edge("side").length - back.edge("side").length == pytest.approx(15, abs=SOLVED_MM)
    assert front.notches_on("side")[0].at_mm - back.notches_on("side")[0].at_mm == pytest.approx(15, abs=SOLVED_MM)
    longer = front.edge("centre").length - USUAL.piece("front").edge("centre").length
    assert longer == pytest.approx(15, abs=1)
    assert moved(garment, "back.hem_centre") == (0, 0)


@pytest.mark.parametrize(("key", "sign"), [("rounded_back", 1), ("erect_back", -1)])
def test_a_rounded_back_is_longer_above_the_chest_line_alone(key: str, sign: int) -> None:
    """The centre back grows by the amount between nape and chest line; from there on, and in front, nothing moves."""
    garment = corrected(**{key: 1.5})
    for level in ("chest_level", "waist_level", "hip_level", "hem_centre", "underarm"):
        assert moved(garment, f"back.{level}") == pytest.approx((0, sign * 15)), level
    assert fronts_alike(USUAL, garment)
    centre = garment.piece("back").edge("centre").path
    assert centre.start.x == centre.end.x == 0
    side = garment.piece("back").edge("side").length
    assert side == pytest.approx(USUAL.piece("back").edge("side").length)


def test_a_sway_back_loses_length_at_the_centre_back_alone() -> None:
    """The hem rises by the wedge at the centre back and not at the side, square to the fold."""
    garment = corrected(sway_back=2)
    back, usual = garment.piece("back"), USUAL.piece("back")
    assert usual.edge("centre").length - back.edge("centre").length == pytest.approx(20)
    assert back.edge("side").path == usual.edge("side").path
    assert back.edge("hem").path.arrives.y == pytest.approx(0, abs=1e-9)
    assert fronts_alike(USUAL, garment)


@pytest.mark.parametrize("style", ["tee", "block"])
def test_a_full_waist_is_wider_by_the_amount_on_each_side(style: str) -> None:
    """The waist grows by the amount on both sides, the front hem drops by half of it more, chest and hip stay."""
    usual, garment = draw(WEARER, style), corrected(style, full_waist=3)
    assert girth(garment, "waist") - girth(usual, "waist") == pytest.approx(60, abs=SOLVED_MM)
    for name in ("chest", "hip"):
        assert girth(garment, name) == pytest.approx(girth(usual, name))
    drop, full = (
        g.piece("front").edge("centre").path.start.y - g.piece("front").edge("side").path.end.y
        for g in (usual, garment)
    )
    assert drop - full == pytest.approx(15, abs=1)


def test_shoulder_blades_get_width_that_is_eased_in_at_the_shoulder() -> None:
    """The back is wider at the arms by the amount, its shoulder as much longer than the front's, with the reason."""
    garment = corrected(shoulder_blades=0.8)
    assert moved(garment, "back.back_armhole_point") == pytest.approx((8, 1), abs=0.5)
    shoulder = next(seam for seam in garment.seams if seam.name == "shoulder")
    assert shoulder.ease.mm == -8
    assert "blade" in shoulder.reason
    lengths = [garment.piece(half).edge("shoulder").length for half in ("front", "back")]
    assert lengths[1] - lengths[0] == pytest.approx(8)


@pytest.mark.parametrize("wider", [1, 3])
def test_a_large_arm_gets_a_wider_sleeve_with_a_lower_cap(wider: float) -> None:
    """The sleeve is wider by the amount, its cap is lower, and the cap line still fits the same armholes."""
    garment = corrected(large_arm=wider)
    assert girth(garment, "upper_arm") - girth(USUAL, "upper_arm") == pytest.approx(10 * wider, abs=1e-5)
    assert moved(garment, "sleeve.cap_foot")[1] < 0
    for half in ("front", "back"):
        assert armhole(garment, half) == armhole(USUAL, half)
        assert garment.piece("sleeve").edge(f"cap_{half}").length == pytest.approx(armhole(garment, half))


def test_a_lower_cap_follows_the_triangle() -> None:
    """Half width, cap height and the straight line from underarm to crown: what the width gains the height loses.

    The identity is exact for straight lines (Pythagoras); the cap line bends, so it holds to a few millimetres.
    """
    garment = corrected(large_arm=2)

    def straight(g: Garment) -> float:
        crown = g.points["sleeve.crown"]
        return sum(g.points[f"sleeve.{half}_underarm"].distance_to(crown) for half in ("front", "back"))

    assert straight(garment) == pytest.approx(straight(USUAL), abs=5)


@pytest.mark.parametrize("key", KEYS)
def test_every_correction_is_told_by_a_step_of_its_own(key: str) -> None:
    """Each correction is a size among the steps, and some point, line or size is worked out from it."""
    name = key.replace(".", "_")
    garment = corrected(**{key.replace(".", "__"): 0.5})
    assert garment.step(name).lengths[0].mm == 5
    assert any(name in step.needs for step in garment.steps)
    assert all(step.label != name for step in USUAL.steps)


def test_nothing_corrected_changes_nothing() -> None:
    """Corrections by nothing leave no trace: pieces, steps and sizes are the same."""
    assert draw(WEARER, corrections=Corrections()) == USUAL
    assert corrected(sway_back=0) == USUAL


@pytest.mark.parametrize(
    ("style", "made", "code"),
    [
        ("tee", {"sloping_shoulders": 1, "square_shoulders": 1}, "corrections-contrary"),
        ("tee", {"rounded_back": 1, "erect_back": 1}, "corrections-contrary"),
        ("vest", {"large_arm": 1}, "correction-undrawn"),
        ("tee", {"full_bust__width": 3}, "bust-given-too-much"),
        ("tee", {"forward_shoulders": 2}, "shoulder-too-far-forward"),
    ],
)
def test_nonsense_is_refused_by_name(style: str, made: dict[str, float], code: str) -> None:
    """What undoes itself, what the style has nothing for, and what goes too far is refused, and says what to change."""
    with pytest.raises(InputError) as refused:
        corrected(style, **made)
    (problem,) = refused.value.problems
    assert problem.code == code
    assert problem.where.startswith("garment.corrections.")
    assert "Nothing was drafted" in problem.hint


def test_an_arm_that_no_cap_can_serve_is_refused() -> None:
    """A sleeve wider than a flat cap allows is refused by name."""
    slight = size_wearer("80")
    with pytest.raises(InputError, match="arm-too-large"):
        draw(slight, "block", "close", corrections=correction(large_arm=8))


def test_a_docket_corrects() -> None:
    """A docket's corrections are read, drawn, kept within their limits, and misspelled ones are told."""
    text = 'wearer = { figure = "woman", size = "92" }\n[garment.corrections]\nsway_back = "2 cm"\n'
    drafted = draft(docket_from_text(text))
    assert drafted.garment.points["back.swayed_hem_centre"] != Point(0, 0)
    assert drafted.holds
    with pytest.raises(InputError, match="did you mean sway_back"):
        docket_from_text(text.replace("sway_back", "sway_bak"))
    with pytest.raises(InputError, match="sway_back is 20 cm"):
        docket_from_text(text.replace("2 cm", "20 cm"))


def test_corrections_are_not_lost_on_scratch_paper() -> None:
    """What is tried on scratch paper is tried on the corrected body."""
    d = Draft(WEARER, {}, corrections=correction(large_arm=1))
    assert d.scratch().correction("large_arm").mm == 10
    assert STYLES["tee"].page(d, STYLES["tee"].choices(), surveyed=True).style == "tee"
