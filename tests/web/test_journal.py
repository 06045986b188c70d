"""The journal: nothing that was written is lost."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from tapeline.web.journal import Journal


def test_undo_and_redo_go_back_and_forth_without_limit() -> None:
    """Every change is a step back, and every step back can be taken again."""
    journal = Journal.opened(None, "0")
    for number in range(1, 300):
        journal.change(str(number))
    for number in reversed(range(299)):
        journal.undo()
        assert journal.text == str(number)
    assert not journal.can_undo
    for number in range(1, 300):
        journal.redo()
        assert journal.text == str(number)
    assert not journal.can_redo


def test_a_slider_that_moves_is_one_step() -> None:
    """A run of changes of one value is taken back at once; a settled one is a step of its own."""
    journal = Journal.opened(None, "start")
    for number in range(20):
        journal.change(f"waist = {number}", ("garment", "waist"))
    journal.settle()
    journal.change("waist = 99", ("garment", "waist"))
    journal.undo()
    assert journal.text == "waist = 19"
    journal.undo()
    assert journal.text == "start"


def test_the_step_before_a_slider_is_not_swallowed() -> None:
    """A value changed again after being taken back starts anew."""
    journal = Journal.opened(None, "start")
    journal.change("a", ("k",))
    journal.undo()
    journal.change("b", ("k",))
    journal.undo()
    assert journal.text == "start"


@given(st.lists(st.one_of(st.text(max_size=30), st.sampled_from(["<undo>", "<redo>"])), max_size=25))
def test_a_journal_is_recovered_as_it_was_left(tmp_path_factory: object, moves: list[str]) -> None:
    """Opened again after any sequence of changes, text, undo and redo are what they were."""
    folder = tmp_path_factory.mktemp("journal")  # type: ignore[attr-defined]  # pytest's factory
    path = Path(folder) / "kept.jsonl"
    journal = Journal.opened(path, "first")
    for move in moves:
        if move == "<undo>":
            journal.undo()
        elif move == "<redo>":
            journal.redo()
        else:
            journal.change(move, (move[:1],) if move else ())
    again = Journal.opened(path, "something else")
    assert (again.text, again.texts, again.at) == (journal.text, journal.texts, journal.at)


def test_a_line_cut_short_by_a_crash_is_passed_over(tmp_path: Path) -> None:
    """What was whole before it is there."""
    path = tmp_path / "kept.jsonl"
    journal = Journal.opened(path, "first")
    journal.change("second")
    with path.open("a", encoding="utf-8") as file:
        file.write('{"text": "thi')
    again = Journal.opened(path, "other")
    assert again.text == "second"
    again.change("third")
    assert Journal.opened(path, "other").text == "third"


def test_nobody_else_on_the_machine_reads_it(tmp_path: Path) -> None:
    """The folder of the journals is made for its owner alone."""
    Journal.opened(tmp_path / "tapeline" / "marit.jsonl", "a = 1")
    assert (tmp_path / "tapeline").stat().st_mode & 0o077 == 0
