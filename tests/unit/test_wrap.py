"""A front that wraps over to the other side seam, with nothing to button or tie."""

from __future__ import annotations

from typing import Any

import pytest

from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.blocks.wrap_front import WrapChoices
from tapeline.geometry import Line, Point
from tapeline.lengths import cm
from tapeline.measures import Wearer
from tapeline.pattern import Garment
from tapeline.problems import InputError
from tapeline.styles.top import NecklineChoices
from tests.alter.altered import errors
from tests.alter.whole import whole
from tests.golden.test_drafts import ARNE, BO, MARIT
from tests.properties.drafts import draw


def wrapped(above_waist: float = 3.0, length: float = 6.0) -> Garment:
    """A wrap top for Marit."""
    return draw(MARIT, "wrap", "slight", wrap=WrapChoices(cm(above_waist)), length=cm(length))


@pytest.mark.parametrize("above_waist", [-10, 0, 3, 8])
def test_the_edge_meets_the_other_side_where_it_was_put(above_waist: float) -> None:
    """Mirrored about the centre, its end lies on the front's own side, so far above the waist; all of it is whole."""
    made = wrapped(above_waist, 14)
    end = made.piece("front").edge("neckline").path.start
    side = made.piece("front").edge("side").path
    assert side.distance_to(Point(-end.x, end.y)) < 1e-6
    assert end.y - made.points["front.waist_level"].y == pytest.approx(10 * above_waist)
    assert whole(made) == []
    assert errors(made, MARIT) == []


def test_what_lies_under_fits_the_side_seam_that_catches_it() -> None:
    """Below the notch on both sides there is as much seam as the other front brings to it."""
    made = wrapped()
    over = made.piece("front").edge("side_over").length
    for half in ("front", "back"):
        side = made.piece(half).edge("side").length
        assert any(side - notch.at_mm == pytest.approx(over) for notch in made.piece(half).notches_on("side"))


def test_the_other_half_is_the_mirror_image_of_its_own() -> None:
    """Hem and lower side lie on those of the other front when both fronts are pinned on each other."""
    front = wrapped().piece("front")
    for name, own in (("hem_over", "hem"), ("side_over", "side")):
        path, other = front.edge(name).path, front.edge(own).path
        for share in (0, 0.3, 0.6, 1):
            place = path.at(path.length * share)
            assert other.distance_to(Point(-place.x, place.y)) < 1e-6


def test_closed_it_is_as_wide_as_a_tee() -> None:
    """What lies double is counted once: round the chest, a wrap top is the tape and its ease."""
    made = wrapped()
    chest = next(girth for girth in made.girths if girth.name == "chest")
    level = made.points["front.chest_level"].y
    across = Line(Point(0, level), Point(1, level))
    halves = [max(p.x for p in made.piece(half).seam_line.crossings(across)) for half in ("front", "back")]
    assert 2 * sum(halves) == pytest.approx(chest.tape.mm + chest.ease.mm, abs=0.1)


def test_the_fronts_cross_below_the_throat_and_lower_for_a_lower_end() -> None:
    """The lower the edge ends at the side, the lower the fronts cross, always below the pit of the neck."""
    crossings = [wrapped(above, 14).points["front.wrap_crossed"].y for above in (8, 3, -10)]
    assert crossings == sorted(crossings, reverse=True)
    assert crossings[0] < wrapped().points["front.front_neck"].y - 10


@pytest.mark.parametrize("shape", ["v", "round", "scoop"])
@pytest.mark.parametrize("person", [MARIT, ARNE, BO], ids=lambda person: person.name)
def test_it_comes_over_the_shoulder_in_one_line(shape: str, person: Wearer) -> None:
    """Whoever wears it and whatever the neck's shape, front edge and back neckline meet without a corner."""
    neckline = NecklineChoices(NECK_SHAPES[shape], cm(1.5), cm(1.5), cm(1))
    made = draw(person, "wrap", "slight", surveyed=person.figure.has_survey, neckline=neckline)
    (join,) = [join for join in made.joins if join.line == "neckline"]
    inside = sum(made.piece(piece).corner(line, seam)[1] for piece, line, seam in join.corners)
    assert inside == pytest.approx(3.14159265, abs=0.001)


@pytest.mark.parametrize(
    ("code", "changes"),
    [
        ("wrap-past-side", {"wrap": WrapChoices(cm(-25)), "length": cm(0)}),
        ("wrap-on-corner", {"neckline": NecklineChoices(NECK_SHAPES["boat"])}),
    ],
)
def test_a_wrap_that_cannot_be_drawn_is_refused(code: str, changes: dict[str, Any]) -> None:
    """The problem names what does not fit."""
    with pytest.raises(InputError) as refused:
        draw(MARIT, "wrap", "slight", **changes)
    assert [problem.code for problem in refused.value.problems] == [code]
