"""What the tests of alterations share: garments of random wearers, and what truing says of them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from hypothesis import assume
from shapely import Polygon

from tapeline.measures import Wearer
from tapeline.pattern import Cloth, Garment, Piece, StepKind
from tapeline.problems import InputError, Severity
from tapeline.styles import STYLES
from tapeline.truing import Truing, true
from tests.finish.polygons import polygon
from tests.properties.drafts import draw

__all__ = ["drawn", "errors", "in_order", "refused", "shape", "trued"]


def drawn(wearer: Wearer, style: str = "tee", looseness: str = "slight") -> Garment:
    """A garment of a random wearer whom the style serves."""
    try:
        return draw(wearer, style, looseness)
    except InputError:
        assume(False)
        raise


def trued(garment: Garment, wearer: Wearer) -> Truing:
    """True a garment as its style asks."""
    style = STYLES[garment.style]
    meaning = {name: (least.mm, most.mm) for name, (least, most) in style.meaning.items()}
    return true(garment, wearer, Cloth(), meaning=meaning, pull_on=style.pull_on)


def errors(garment: Garment, wearer: Wearer) -> list[str]:
    """Every error that truing finds."""
    return [str(found) for found in trued(garment, wearer).findings if found.severity is Severity.ERROR]


def shape(piece: Piece) -> Any:
    """The piece as shapely sees it: a second opinion on areas."""
    found = polygon(piece.seam_line)
    assert isinstance(found, Polygon)
    assert found.is_valid
    return found


def in_order(before: Garment, after: Garment) -> None:
    """Every step that was there is there unchanged, in its order; labels are told apart; what is needed is there."""
    assert after.steps[: len(before.steps)] == before.steps
    assert len(after.steps) > len(before.steps)
    labels = [step.label for step in after.steps if step.kind is not StepKind.SECTION]
    assert len(set(labels)) == len(labels)
    known = {*labels, *(size.name for size in after.sizes)}
    for step in after.steps[len(before.steps) :]:
        assert step.says
        assert step.kind is StepKind.SECTION or step.how, step.label
        assert set(step.needs) <= known, (step.label, step.needs)


def refused(error: InputError) -> Mapping[str, str]:
    """Codes of what was refused, each with its hint; every one says where."""
    for problem in error.problems:
        assert problem.severity is Severity.ERROR
        assert problem.where
        assert problem.hint
    return {problem.code: problem.hint for problem in error.problems}
