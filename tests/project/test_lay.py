"""Drafted garments on the cloth: what is asked of a lay is told when it cannot be meant."""

from __future__ import annotations

from pathlib import Path

import pytest

from tapeline.docket import read_docket
from tapeline.problems import InputError
from tapeline.project import draft, lay_tasks

TEE = Path(__file__).resolve().parents[2] / "examples" / "tee.toml"


@pytest.mark.parametrize("together", [[["front", "sleeve"], ["front", "back"]], [["front", "front"]]])
def test_a_piece_stays_in_one_block(together: list[list[str]]) -> None:
    """A piece that is named in two blocks, or twice in one, is refused by name; no block wins unsaid."""
    with pytest.raises(InputError) as caught:
        lay_tasks([draft(read_docket(TEE))], together=together)
    (problem,) = caught.value.problems
    assert (problem.code, problem.says) == (
        "lay-block",
        "front is named twice among the pieces that stay together",
    )
