"""The benchmark: what it runs is what it says, and no failure is taken for speed."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchmarks.__main__ import main
from benchmarks.clock import in_turns, medians_of, process
from benchmarks.lay import lay_rows
from benchmarks.orders import write_orders
from tapeline.docket import orders


def test_orders_are_believable_and_the_same_in_every_run(tmp_path: Path) -> None:
    """A list has as many orders as asked for, each can be read as a docket, and two lists are alike."""
    one, other = tmp_path / "one.csv", tmp_path / "other.csv"
    write_orders(one, 12)
    write_orders(other, 12)
    assert one.read_text(encoding="utf-8") == other.read_text(encoding="utf-8")
    read = orders(one)
    assert len(read) == 12
    assert {order.docket().style.name for order in read} == {"tee"}
    assert len({order.docket().wearer["bust"] for order in read}) == 12


def test_a_process_that_fails_is_no_fast_process() -> None:
    """An exit code that was not expected raises, with what was said."""
    assert process("-c", "print(4)")() == "4\n"
    assert process("-c", "raise SystemExit(1)", codes=(0, 1))() == ""
    with pytest.raises(RuntimeError, match="ended with 3"):
        process("-c", "raise SystemExit(3)")()


def test_medians_are_of_the_runs_asked_for() -> None:
    """Each function runs as often as asked, once more to warm up where it does, and takes its turn."""
    calls: list[str] = []
    medians_of(lambda: calls.append("a"), 3)
    assert calls == ["a"] * 4
    calls.clear()
    found = in_turns([lambda: calls.append("a"), lambda: calls.append("b")], 2, first_counts=True)
    assert calls == ["a", "b", "a", "b"]
    assert all(seconds >= 0 for seconds in found)


def test_what_it_does_not_know_it_does_not_do(capsys: pytest.CaptureFixture[str]) -> None:
    """An unknown argument is refused with exit code 2 before anything runs."""
    assert main(["--fast"]) == 2
    assert "--quick" in capsys.readouterr().err


def test_the_seconds_of_a_lay_are_a_number(capsys: pytest.CaptureFixture[str]) -> None:
    """What is no number of seconds is refused before anything is laid."""
    for words in (["--lay", "soon"], ["--lay", "0"], ["--lay", "1", "2"], ["--lay", "-1"], ["--lay", "nan"]):
        assert main(words) == 2
    assert "--lay" in capsys.readouterr().err


@pytest.mark.slow
def test_rows_of_lays_keep_to_the_bound() -> None:
    """A vest in all lays: no row is shorter than its bound, and density is bound over length."""
    rows = list(lay_rows(0.2, ("vest",)))
    assert len(rows) == 12
    for row in rows:
        length, bound, density = float(row[3]), float(row[5]), float(row[6].rstrip("%"))
        assert length >= bound > 0
        assert density == pytest.approx(100 * bound / length, abs=0.2)
