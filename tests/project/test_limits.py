"""Choices at the ends of their ranges: each drafts, or is refused by name."""

from __future__ import annotations

from dataclasses import is_dataclass
from typing import Any

import pytest

from tapeline.docket import docket_from
from tapeline.pattern import choices_of
from tapeline.problems import InputError, Problem
from tapeline.project import document, draft
from tapeline.styles import STYLES


def ends(choices: Any, above: tuple[str, ...] = ()) -> list[tuple[tuple[str, ...], float]]:
    """Every number of a style's choices at both of its limits."""
    found = [((*above, name), end) for name, c in choices_of(type(choices)).items() for end in (c.least, c.most)]
    for name in type(choices).__dataclass_fields__:
        inner = getattr(choices, name)
        if is_dataclass(inner):
            found += [(keys, end) for keys, end in ends(inner, (*above, name)) if keys[-1] != "given"]
    return found


@pytest.mark.slow
@pytest.mark.parametrize("style", sorted(STYLES))
def test_every_choice_may_stand_at_its_limits(style: str) -> None:
    """A hem on the hip line, a cap without height: the garment is drafted, or the problem has a name and a hint."""
    tried = ends(STYLES[style].choices())
    assert len(tried) > 12
    for keys, end in tried:
        for problem in refusals(style, keys, end):
            assert problem.code, (keys, end)
            assert problem.hint, (keys, end)


def refusals(style: str, keys: tuple[str, ...], end: float) -> tuple[Problem, ...]:
    """Why a docket with that one choice is not drafted; empty when it is."""
    garment: dict[str, Any] = {"style": style}
    table = garment
    for key in keys[:-1]:
        table = table.setdefault(key, {})
    table[keys[-1]] = end
    try:
        document(draft(docket_from({"wearer": {"figure": "woman", "size": "88"}, "garment": garment}, "limits")))
    except InputError as error:
        return error.problems
    return ()
