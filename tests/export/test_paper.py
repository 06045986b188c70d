"""Papers by name."""

from __future__ import annotations

from itertools import pairwise

import pytest

from tapeline.export import paper
from tapeline.problems import InputError

# ISO 216:2007: A0 has 1 m2 and sides as 1 to the root of 2, rounded to mm; each next one is half, rounded down.
ISO_216 = {"A0": (841, 1189), "A1": (594, 841), "A2": (420, 594), "A3": (297, 420), "A4": (210, 297)}


@pytest.mark.parametrize("name", ISO_216)
def test_iso_papers(name: str) -> None:
    """The A series is that of ISO 216, in any writing of its name."""
    for written in (name, name.lower(), f"  {name} "):
        found = paper(written)
        assert (found.width_mm, found.height_mm) == ISO_216[name]


def test_each_iso_paper_is_half_of_the_next() -> None:
    """The short side becomes the long one (ISO 216, 3.2), rounded down to whole millimetres."""
    names = ["A0", "A1", "A2", "A3", "A4"]
    for larger, smaller in pairwise(names):
        big, small = paper(larger), paper(smaller)
        assert big.height_mm is not None
        assert (small.width_mm, small.height_mm) == (big.height_mm // 2, big.width_mm)


def test_letter() -> None:
    """8 1/2 x 11 in."""
    found = paper("letter")
    assert found.width_mm == pytest.approx(8.5 * 25.4)
    assert found.height_mm == pytest.approx(11 * 25.4)


@pytest.mark.parametrize(
    ("written", "width"),
    [
        ("roll 914 mm", 914),
        ("roll 36 in", 914.4),
        ("Roll 91,4cm", 914),
        ("roll 24 inch", 609.6),
        ("roll 1067 mm", 1067),
    ],
)
def test_rolls_of_any_width(written: str, width: float) -> None:
    """In mm, cm or inches; as long as it has to be."""
    found = paper(written)
    assert found.width_mm == pytest.approx(width)
    assert found.is_roll


@pytest.mark.parametrize(
    ("written", "code", "hint"),
    [
        ("A44", "paper-unknown", "did you mean A4?"),
        ("leter", "paper-unknown", "did you mean Letter?"),
        ("", "paper-unknown", "roll 914 mm"),
        ("roll", "paper-unknown", "roll 914 mm"),
        ("roll 914", "paper-unknown", "roll 914 mm"),
        ("roll -3 mm", "paper-unknown", "roll 914 mm"),
        ("roll nan mm", "paper-unknown", "roll 914 mm"),
        ("roll 100 mm", "roll-too-narrow", "wider roll"),
        ("roll 5081 mm", "page-too-long", "sheets"),
    ],
)
def test_what_is_no_paper(written: str, code: str, hint: str) -> None:
    """One problem that says what to write instead."""
    with pytest.raises(InputError) as caught:
        paper(written)
    (problem,) = caught.value.problems
    assert problem.code == code
    assert hint in problem.hint
    assert "Nothing was printed" in problem.hint
