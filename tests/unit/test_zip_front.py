"""A front that opens with a zip: cut twice, and everything round it ends where it does."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tapeline.blocks.neck_shapes import NECK_SHAPES
from tapeline.blocks.standing_collar import StandingChoices
from tapeline.docket import docket_from_text
from tapeline.lengths import cm
from tapeline.measures import Figure, Wearer
from tapeline.problems import InputError
from tapeline.project import draft
from tests.properties.drafts import draw, style_choices
from tests.unit.sizes import size

TAPES = {
    "chest": 1010, "upper_chest": 1020, "waist": 890, "hip": 1000, "shoulder_width": 450, "back_length": 460,
    "hip_depth": 200, "arm_length": 640,
}  # fmt: skip
HALVOR = Wearer("Halvor", Figure.MAN, TAPES)
DOCKET = "[wearer]\nfigure = 'man'\nsize = 'M'\n[garment]\nstyle = 'cardigan'\n"


def test_the_front_is_cut_twice_and_no_wider_than_on_the_fold() -> None:
    """The edges meet on the centre: half the garment is as wide as that of a sweatshirt (by its meaning, no source)."""
    opened = draw(HALVOR, "cardigan", "easy")
    front, closed = opened.piece("front"), draw(HALVOR, "sweatshirt", "easy").piece("front")
    assert (front.cut.quantity, front.cut.mirrored, front.on_fold) == (2, True, False)
    assert closed.on_fold
    for edge in ("side", "armhole", "hem"):
        assert front.edge(edge).path == closed.edge(edge).path
    assert front.edge("centre").path.start.x == front.edge("centre").path.end.x == 0


@pytest.mark.parametrize(("stretch", "share"), [(0, 1.0), (50, 0.9), (80, 0.85)])
def test_the_collar_is_as_short_as_it_stretches_and_ends_at_the_front(stretch: float, share: float) -> None:
    """Shares by stretch: common practice in the trade, no source; on the fold behind, twice as high as it is worn."""
    garment = draw(HALVOR, "cardigan", "easy", collar=StandingChoices(stretch=stretch))
    collar = garment.piece("collar")
    assert collar.edge("neckline").length == pytest.approx(share * size(garment, "neckline"), abs=1e-6)
    assert collar.edge("front_end").length == pytest.approx(120)
    assert collar.edge("centre_back").fold
    assert not collar.edge("front_end").fold


def test_the_zip_is_as_long_as_everything_it_closes() -> None:
    """Hem band, front edge and collar, measured on the pieces."""
    garment = draw(HALVOR, "cardigan", "easy")
    parts = [
        garment.piece("hem_band").edge("centre_front").length / 2,
        garment.piece("front").edge("centre").length,
        garment.piece("collar").edge("front_end").length / 2,
    ]
    assert size(garment, "zip_length") == pytest.approx(sum(parts), abs=1e-6)


def test_the_hem_band_is_open_at_the_front_and_whole_behind() -> None:
    """Closed, it is as long as that of a sweatshirt, whose seam lies at the centre back."""
    opened, closed = (draw(HALVOR, style, "easy").piece("hem_band") for style in ("cardigan", "sweatshirt"))
    assert opened.edge("hem").length == pytest.approx(closed.edge("hem").length)
    assert opened.edge("centre_back").fold
    assert closed.edge("centre_front").fold
    assert not opened.edge("centre_front").fold


def test_neckline_and_hem_run_on_over_the_zip() -> None:
    """Both meet the front edge square, so that the closed zip shows no point and no dip."""
    trued = draft(docket_from_text(DOCKET)).truing
    bends = {join.line: join.bend for join in trued.joins if join.seam == "centre"}
    assert set(bends) == {"neckline", "hem"}
    assert max(map(abs, bends.values())) < 1e-3


def test_an_opened_front_lets_the_head_through() -> None:
    """A band that does not stretch is no hindrance where the front opens; it is where the top is pulled on."""
    stiff = DOCKET + "collar = { stretch = 0 }\n[cloth]\nstretch_across = 0\n"
    opened = draft(docket_from_text(stiff))
    assert opened.truing.opening is None
    assert "head-does-not-pass" not in {problem.code for problem in opened.problems}
    pulled = draft(docket_from_text(stiff.replace("cardigan", "sweatshirt").replace("collar", "band")))
    assert "head-does-not-pass" in {problem.code for problem in pulled.problems}


def test_a_collar_on_a_v_is_refused() -> None:
    """The strip would end askew at a front that is not square to its neckline."""
    neckline = replace(style_choices("cardigan", "easy").neckline, shape=NECK_SHAPES["v"], widen=cm(1))
    with pytest.raises(InputError) as refused:
        draw(HALVOR, "cardigan", "easy", neckline=neckline)
    assert [problem.code for problem in refused.value.problems] == ["collar-on-v"]
