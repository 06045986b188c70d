"""A batch: one line for each order, in their order, and no order stops another."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from tapeline.docket import orders
from tapeline.export import schema
from tapeline.project import document, draft
from tests.cli.process import EXAMPLES, tapeline

ORDERS = EXAMPLES / "orders.csv"
pytestmark = pytest.mark.slow
"""Each starts the command several times."""


def lines(text: str) -> list[dict[str, Any]]:
    """The objects of a result."""
    return [json.loads(line) for line in text.splitlines()]


def test_every_order_is_drafted_in_its_place(tmp_path: Path) -> None:
    """With two processes as with one: the same lines, each the same as its docket drafted alone."""
    alone = tapeline("batch", ORDERS, "--json-lines", "--jobs", "1", cwd=tmp_path)
    together = tapeline("batch", ORDERS, "--json-lines", "--jobs", "2", cwd=tmp_path)
    assert alone.code == together.code == 0
    assert alone.out == together.out
    assert alone.err == "10 of 10 orders drafted.\n"
    made = lines(alone.out)
    assert [line["row"] for line in made] == list(range(1, 11))
    for line, order in zip(made, orders(ORDERS), strict=True):
        expected = json.loads(json.dumps(document(draft(order.docket()))))
        assert line == {"row": order.row, "name": order.name, **expected}
        assert set(schema()["required"]) <= line.keys()


def test_a_bad_order_is_told_of_and_the_others_go_on(tmp_path: Path) -> None:
    """Its line has its problems; the exit code says that there was one."""
    rows = ORDERS.read_text(encoding="utf-8").splitlines()
    bad = rows[1].replace(",101,", ",9.8,").replace("slight", "slighty")
    (tmp_path / "orders.csv").write_text("\n".join([rows[0], rows[1], bad, rows[3]]) + "\n", encoding="utf-8")
    done = tapeline("batch", "orders.csv", "--json-lines", cwd=tmp_path)
    assert done.code == 1
    assert done.err == "2 of 3 orders drafted; 1 with problems.\n"
    one, two, three = lines(done.out)
    assert "pieces" in one
    assert "pieces" in three
    assert two.keys() == {"row", "name", "problems"}
    assert (two["row"], two["name"]) == (2, "Marit")
    assert [problem["code"] for problem in two["problems"]] == ["tape-range", "choice-unknown"]
    assert two["problems"][0]["where"] == "orders.csv, order 2 (line 3): hip = 9.8"
    text = tapeline("batch", "orders.csv", cwd=tmp_path)
    assert text.code == 1
    assert "2  Marit  not drafted: hip is 9.8 cm" in text.out
    assert max(map(len, text.out.splitlines())) <= 80


def test_lines_go_into_a_file_whole(tmp_path: Path) -> None:
    """The file has its name when all is in it; another's file is left alone."""
    rows = ORDERS.read_text(encoding="utf-8").splitlines()
    (tmp_path / "orders.csv").write_text("\n".join(rows[:3]) + "\n", encoding="utf-8")
    for _ in range(2):
        done = tapeline("batch", "orders.csv", "--json-lines", "--out", "o.jsonl", cwd=tmp_path)
        assert (done.code, done.err) == (0, "")
        assert done.out.splitlines() == ["2 of 2 orders drafted.", "The lines are in o.jsonl."]
        assert len(lines((tmp_path / "o.jsonl").read_text(encoding="utf-8"))) == 2
    for name in ("orders.csv", "nowhere/o.jsonl"):
        refused = tapeline("batch", "orders.csv", "--json-lines", "--out", name, cwd=tmp_path)
        assert (refused.code, refused.out) == (2, "")
    assert {path.name for path in tmp_path.iterdir()} == {"orders.csv", "o.jsonl"}


@pytest.mark.parametrize(
    ("text", "code"),
    [("", "orders-empty"), ("name,hipp\nMarit,3\n", "column-unknown"), ("name\n\x00", "docket-not-text")],
)
def test_a_file_that_is_no_list_ends_with_2(text: str, code: str, tmp_path: Path) -> None:
    """Nothing is drafted for it."""
    (tmp_path / "orders.csv").write_text(text, encoding="utf-8")
    done = tapeline("batch", "orders.csv", "--json-lines", cwd=tmp_path)
    assert (done.code, done.out) == (2, "")
    assert f"[{code}]" in done.err


def test_a_list_that_is_not_there_is_told(tmp_path: Path) -> None:
    """As for a docket."""
    assert tapeline("batch", "nowhere.csv", cwd=tmp_path).code == 2


def test_a_fault_of_our_own_in_one_order_does_not_stop_the_night(monkeypatch: pytest.MonkeyPatch) -> None:
    """It becomes the line of that order, said to be ours."""
    from tapeline.cli import batch_row

    def fail(*_: object) -> None:
        raise ZeroDivisionError("planted")

    monkeypatch.setattr(batch_row, "draft", fail)
    answer = batch_row.answer(orders(ORDERS)[0], json_lines=True)
    assert not answer.holds
    assert json.loads(answer.line)["problems"][0]["code"] == "own-fault"
