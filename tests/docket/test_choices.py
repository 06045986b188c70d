"""The choices of every style: read, named and held within their ranges."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from typing import Any

import pytest

from tapeline.docket import docket_from
from tapeline.docket.choices import WORDS, named
from tapeline.lengths import Length
from tapeline.measures import TAPES
from tapeline.pattern import Source, choices_of
from tapeline.problems import InputError
from tapeline.project import draft
from tapeline.styles import STYLES, Style


def docket(garment: dict[str, Any], unit: str = "cm", **tables: Any) -> Any:
    """A docket of a standard woman."""
    wearer = {"figure": "woman", "size": "88", "unit": unit}
    return docket_from({"wearer": wearer, "garment": garment, **tables}, "a.toml")


def lengths(value: Any) -> Iterator[Length]:
    """Every length among choices."""
    if isinstance(value, Length):
        yield value
    elif is_dataclass(value):
        for f in fields(value):
            yield from lengths(getattr(value, f.name))


def plain(value: Any, path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], Any, Any]]:
    """Every field that is no group, with its owner."""
    for f in fields(value):
        inner = getattr(value, f.name)
        if is_dataclass(inner) and not isinstance(inner, Length) and WORDS.get(type(inner)) is None:
            yield from plain(inner, (*path, f.name))
        else:
            yield (*path, f.name), inner, choices_of(type(value)).get(f.name)


@pytest.mark.parametrize("style", STYLES.values(), ids=list(STYLES))
def test_every_choice_of_a_style_can_be_read(style: Style) -> None:
    """A number has a range and a reason; a group of another kind has words: a docket can set it all."""
    for path, value, limits in plain(style.choices()):
        if type(value) in WORDS or isinstance(value, str):
            continue
        assert limits is not None, path
        assert limits.least < limits.most, path
        assert limits.says, path


@pytest.mark.parametrize("style", STYLES.values(), ids=list(STYLES))
def test_no_two_lengths_have_one_name(style: Style) -> None:
    """A formula that says `garment waist` means the choice, and `waist` means the tape."""
    made = draft(docket({"style": style.name}))
    names = [length.name for length in lengths(made.docket.choices)]
    assert all(names)
    assert len(set(names)) == len(names)
    assert not set(names) & set(TAPES)
    found = {size.name for size in made.garment.sizes if size.source is not Source.CHOICE}
    assert found
    assert not set(names) & found


def test_what_is_left_out_keeps_the_default_of_its_style() -> None:
    """A table that sets one number leaves the others as the style has them: the block's are close, the tee's slight."""
    tee = docket({"style": "tee", "looseness": {"hem": 4}}).choices
    block = docket({"style": "block", "looseness": {"hem": 4}}).choices
    assert (tee.looseness.hem.mm, tee.looseness.side.mm) == (40, 20)
    assert (block.looseness.hem.mm, block.looseness.side.mm) == (40, 0)


def test_sleeves_are_words_or_lengths() -> None:
    """Short and long are shares of the arm; a length is one from the crown."""
    assert docket({"sleeve": {"length": "long"}}).choices.sleeve.length.given is None
    assert docket({"sleeve": {"length": "52,5 cm"}}).choices.sleeve.length.given.mm == 525
    assert docket({"sleeve": {"length": 20}}, "inch").choices.sleeve.length.given.mm == 508
    assert docket({"sleeve": {"length": 20}}).choices.sleeve.length.given.name == "sleeve_length"


@pytest.mark.parametrize(("written", "share"), [(0.3, 0.3), ("0,3", 0.3), ("1/3", 1 / 3), ("1 / 4", 0.25)])
def test_shares_may_be_fractions(written: object, share: float) -> None:
    """A third is a third, not 0.33."""
    assert float(docket({"sleeve": {"cap": {"share": written}}}).choices.sleeve.cap.share) == pytest.approx(
        share, abs=1e-12
    )


@pytest.mark.parametrize(
    ("unit", "value", "fits"),
    [
        ("cm", 8, True),
        ("cm", 8.004, True),
        ("cm", 8.01, False),
        ("cm", -0.01, False),
        ("inch", 3.15, True),
        ("inch", 3.16, False),
        ("inch", "8 cm", True),
    ],
)
def test_a_limit_is_met_by_what_is_shown_as_meeting_it(unit: str, value: object, fits: bool) -> None:
    """8 cm is shown as 3.15 in; somebody who writes what was shown is not refused."""
    if fits:
        docket({"neckline": {"widen": value}}, unit)
        return
    with pytest.raises(InputError, match="choice-range"):
        docket({"neckline": {"widen": value}}, unit)


def test_a_size_set_by_hand_replaces_the_rule() -> None:
    """The frame says that it was set by hand, and what the survey and the rule would have said."""
    made = draft(docket({"sizes": {"armhole_depth": 22}}))
    size = next(size for size in made.garment.sizes if size.name == "armhole_depth")
    assert (size.length.mm, str(size.source)) == (220, "by hand")
    assert [other.name for other in size.others] == ["survey", "rule"]


def test_allowances_are_one_number_or_by_name() -> None:
    """A number is for all seams; a table has a default and names, with a dot in quotes or as a table."""
    assert docket({}, finish={"allowance": "5/8 in"}).finish.allowance_mm == 15.875
    finish = docket(
        {}, finish={"allowance": {"default": 1.5, "neckline": 0.6, "front": {"hem": 3}, "back.hem": 4}}
    ).finish
    assert finish.allowance_mm == 15
    assert dict(finish.by_name) == {"neckline": 6, "front.hem": 30, "back.hem": 40}


def test_the_width_of_the_cloth_may_be_left_open() -> None:
    """A cloth that is still to be bought has no width."""
    assert docket({}).cloth.width is None
    assert docket({}, "inch", cloth={"width": 58}).cloth.width == pytest.approx(1473.2)


def test_a_style_that_forgets_a_range_is_our_own_fault() -> None:
    """A number that anybody may set to anything does not slip through."""
    assert named(3) == 3  # what is no length has no name
    from tapeline.docket.choices import _limited

    with pytest.raises(TypeError, match="states no range"):
        _limited(None, ("garment", "x"))
