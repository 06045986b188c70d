"""What is worth knowing about the cloth of a lay, before it is laid."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tapeline.docket import docket_from_text
from tapeline.geometry import bounds
from tapeline.lay import LayCloth
from tapeline.project import LayTask, draft, lay_tasks

TEE = (Path(__file__).resolve().parents[2] / "examples" / "tee.toml").read_text(encoding="utf-8")


def _tasks(text: str = TEE, **changes: float) -> dict[str, LayTask]:
    def changed(cloth: LayCloth) -> LayCloth:
        return replace(cloth, **changes)  # type: ignore[arg-type]  # only numbers are given

    return {task.cloth.name: task for task in lay_tasks([draft(docket_from_text(text))], changed=changed)}


def test_pieces_that_are_laid_larger_are_said_to_be() -> None:
    """Larger by what the docket says that the shell shrinks, and the note says to cut it unwashed; the rib keeps."""
    shrinking, steady = _tasks(), _tasks(shrink_length=0.0)
    for piece, other in zip(shrinking["shell"].pieces, steady["shell"].pieces, strict=True):
        # 5 % of what is cut is lost, so that 95 % of it are left: the docket's own number.
        assert bounds(piece.outline)[2] * 0.95 == pytest.approx(bounds(other.outline)[2], abs=0.01)
    (note,) = (one for one in shrinking["shell"].problems if one.code == "lay-shrinks")
    assert "5 % in length" in note.says
    assert "unwashed" in note.hint
    assert "lay-shrinks" not in {one.code for task in steady.values() for one in task.problems}
    assert "lay-shrinks" not in {one.code for one in shrinking["rib"].problems}


@pytest.mark.parametrize("width_mm", [1400.0, 1600.0])
def test_a_width_that_is_given_is_not_told_as_assumed(width_mm: float) -> None:
    """Even where it is the width that would have been assumed."""
    assert "lay-width-assumed" in {one.code for one in _tasks()["rib"].problems}
    assert "lay-width-assumed" not in {one.code for one in _tasks(width_mm=width_mm)["rib"].problems}


def test_a_cloth_named_twice_is_laid_once() -> None:
    """Naming a cloth again asks for no second lay of it."""
    asked = lay_tasks([draft(docket_from_text(TEE))], cloths=["rib", "rib", "shell"])
    assert [task.cloth.name for task in asked] == ["rib", "shell"]
